//! Toe in its units, thrust, steering centre and set-back, and toe from lines beside the car.

mod common;

use bayhand_chassis::Verdict;
use bayhand_chassis::align::{
    AxleToe, Closing, KnownAngle, LineSpread, Lines, WheelToLine, front_toe_for_straight_deg, set_back, steering_off,
    toe_from_edges_deg, toe_from_mm_deg, toe_minutes, toe_mm,
};
use bayhand_vehicle::{Axle, Corners};
use common::draws::Draws;
use common::{always_alike, near};
use proptest::prelude::*;

/// R: D sin(toe): D 405.6 mm: 0.1 deg = 0.708 mm, 10 min = 1.180 mm, 1 mm = 0.1413 deg (checks.md).
#[test]
fn toe_in_its_units() {
    near(toe_mm(0.1, 405.6), 0.708, 5e-4, "a tenth of a degree");
    near(toe_mm(10.0 / 60.0, 405.6), 1.180, 5e-4, "ten minutes");
    near(toe_from_mm_deg(1.0, 405.6).expect("a toe"), 0.1413, 5e-5, "a millimetre");
    near(toe_minutes(0.1413), 8.478, 1e-9, "in minutes");
}

/// M: specified rim diameters (ETRTO / ISO 4000-1), 13 to 20 in: a degree at each, R: D sin.
#[test]
fn a_millimetre_belongs_to_its_diameter() {
    let rims = [329.4, 354.8, 380.2, 405.6, 436.6, 462.0, 487.4, 512.8];
    let shown: Vec<f64> = rims.iter().map(|d| toe_mm(1.0, *d)).collect();
    for (d, mm) in rims.iter().zip(&shown) {
        near(toe_from_mm_deg(*mm, *d).expect("a toe"), 1.0, 1e-12, "back");
    }
    near(shown[7] / shown[0], 512.8 / 329.4, 1e-12, "in proportion");
    assert!(toe_from_mm_deg(1.0, 0.0).is_err(), "no diameter, no toe");
}

/// R: interchange.md: the line lies outside the wheel; a smaller front distance is toe-out, negative.
#[test]
fn nearer_to_the_line_in_front_is_toe_out() {
    let toe = toe_from_edges_deg(100.0, 101.0, 405.6).expect("a toe");
    near(toe, -0.1413, 5e-5, "a millimetre");
    let why = toe_from_edges_deg(100.0, 101.0, 4.0).expect_err("no rim");
    assert_eq!(why.to_string(), "between_mm is 4; it must be from 100 to 1500 mm");
}

fn axle(left: f64, right: f64) -> AxleToe {
    AxleToe { left: KnownAngle::exact(left), right: KnownAngle::exact(right) }
}

/// R: headings: rear wheels that point left push the tail left, and the front wheels have to point there as well.
#[test]
fn the_steering_wheel_stands_straight() {
    let rear = axle(0.05, 0.25);
    near(rear.heading().deg, 0.1, 1e-12, "thrust to the left");
    let (left, right) = front_toe_for_straight_deg(0.3, rear.heading().deg);
    near(left, 0.05, 1e-12, "half the total less the thrust");
    near(right, 0.25, 1e-12, "half the total plus the thrust");
    near(steering_off(&axle(left, right), &rear).deg, 0.0, 1e-12, "straight");
    near(steering_off(&axle(0.15, 0.15), &rear).deg, -0.1, 1e-12, "even toes then point right of where it goes");
}

/// R: atan: 5 mm on 1500 mm; positive when the right wheel is ahead: the axle then points to the left.
#[test]
fn set_back_has_a_sign() {
    let angle = |mm| set_back(mm, 1.0, 1_500.0).expect("an angle");
    near(angle(5.0).deg, 0.190_985, 5e-7, "right wheel ahead");
    near(angle(-5.0).deg, -0.190_985, 5e-7, "left wheel ahead");
    near(angle(5.0).standard_deg, (1.0_f64 / 1_500.0).to_degrees(), 1e-6, "a millimetre of it");
    assert!(set_back(500.0, 0.0, 1_500.0).is_err(), "that is another wheelbase");
}

/// JCGM 106 through the guard band of `judge`.
#[test]
fn an_angle_is_judged_with_its_uncertainty() {
    let toe = |deg| KnownAngle { deg, standard_deg: 0.02 };
    assert_eq!(toe(0.13).against(0.1, 0.1), Verdict::Inside, "0.03 + 0.04 of 0.1");
    assert_eq!(toe(0.18).against(0.1, 0.1), Verdict::CannotTell, "0.08 + 0.04");
    assert_eq!(toe(0.25).against(0.1, 0.1), Verdict::Outside, "0.15 - 0.04");
}

/// Where things really are, seen from above: tracks over the hubs, toes, and two crooked lines.
#[derive(Clone, Copy, Debug)]
struct Plan {
    wheelbase: f64,
    track_front: f64,
    track_rear: f64,
    toe_deg: Corners<f64>,
    left_deg: f64,
    right_deg: f64,
}

const RIM_MM: f64 = 430.0;
const ENDS_APART_MM: f64 = 4_500.0;

impl Plan {
    /// Distance across the car from a point to a line that passes 300 mm outside the front hub and has this yaw.
    fn distance_mm(&self, place: bayhand_vehicle::Place, x: f64, y: f64) -> f64 {
        let out = if place.is_left() { 1.0 } else { -1.0 };
        let yaw = if place.is_left() { self.left_deg } else { self.right_deg };
        let line_y = out * (self.track_front / 2.0 + 300.0) + (x - self.wheelbase) * yaw.to_radians().tan();
        out * (line_y - y)
    }

    fn lines(&self, by_ends: bool) -> Lines {
        let wheels = Corners::from_fn(|p| {
            let (x, track) = match p.axle() {
                Axle::Front => (self.wheelbase, self.track_front),
                Axle::Rear => (0.0, self.track_rear),
            };
            let out = if p.is_left() { 1.0 } else { -1.0 };
            // Toe-in points inwards.
            let yaw = -out * self.toe_deg.at(p).to_radians();
            let edge = |sign: f64| {
                let (dx, dy) = (sign * RIM_MM / 2.0 * yaw.cos(), sign * RIM_MM / 2.0 * yaw.sin());
                // Square to the line, as a rule is held against it.
                let line_yaw = if p.is_left() { self.left_deg } else { self.right_deg };
                self.distance_mm(p, x + dx, out * track / 2.0 + dy) * line_yaw.to_radians().cos()
            };
            WheelToLine {
                front_mm: edge(1.0),
                rear_mm: edge(-1.0),
                between_mm: RIM_MM,
                hub_mm: self.distance_mm(p, x, out * track / 2.0),
            }
        });
        let end = |x: f64| {
            let [left, right] =
                [bayhand_vehicle::Place::Fl, bayhand_vehicle::Place::Fr].map(|p| self.distance_mm(p, x, 0.0));
            left + right
        };
        let closing = if by_ends {
            let front = self.wheelbase + (ENDS_APART_MM - self.wheelbase) / 2.0;
            Closing::Ends { front_mm: end(front), rear_mm: end(front - ENDS_APART_MM), apart_mm: ENDS_APART_MM }
        } else {
            Closing::Tracks { front_mm: self.track_front, rear_mm: self.track_rear }
        };
        Lines { wheelbase_mm: self.wheelbase, wheels, closing }
    }
}

fn any_plan() -> impl Strategy<Value = Plan> {
    (
        (2_200.0..2_900.0f64, 1_400.0..1_700.0f64, 1_400.0..1_700.0f64),
        [-1.0..1.0f64, -1.0..1.0, -1.0..1.0, -1.0..1.0],
        (-0.5..0.5f64, -0.5..0.5f64),
    )
        .prop_map(|((wheelbase, track_front, track_rear), toes, (left_deg, right_deg))| Plan {
            wheelbase,
            track_front,
            track_rear,
            toe_deg: Corners::from_array(toes),
            left_deg,
            right_deg,
        })
}

proptest! {
    #![proptest_config(always_alike())]

    /// Crooked lines and unequal tracks leave no trace in the toes, whichever way the lines are closed.
    #[test]
    fn skew_and_track_difference_are_taken_out(plan in any_plan(), by_ends in any::<bool>()) {
        let found = plan.lines(by_ends).angles(&LineSpread::default()).expect("angles");
        for (place, toe) in plan.toe_deg.iter() {
            let deg = found.toe.at(place).deg;
            prop_assert!((deg - toe).abs() < 1e-9, "{place:?}: {deg} is not {toe}");
        }
        let t = plan.toe_deg;
        prop_assert!((found.thrust.deg - (t.rr - t.rl) / 2.0).abs() < 1e-9, "thrust");
        prop_assert!((found.total_front.deg - t.fl - t.fr).abs() < 1e-9, "total in front");
        prop_assert!((found.left_line.deg - plan.left_deg).abs() < 1e-9, "left line");
        prop_assert!((found.right_line.deg - plan.right_deg).abs() < 1e-9, "right line");
        prop_assert!((found.track_difference_mm - (plan.track_front - plan.track_rear)).abs() < 1e-6, "tracks");
    }
}

fn crooked() -> Plan {
    Plan {
        wheelbase: 2_500.0,
        track_front: 1_560.0,
        track_rear: 1_525.0,
        toe_deg: Corners { fl: 0.1, fr: 0.2, rl: 0.15, rr: 0.05 },
        left_deg: 0.2,
        right_deg: -0.1,
    }
}

/// Control: taken as parallel to the car, those lines are wrong by their skew.
#[test]
fn skew_matters() {
    let lines = crooked().lines(false);
    let w = lines.wheels.fl;
    let taken_straight = toe_from_edges_deg(w.front_mm, w.rear_mm, w.between_mm).expect("a toe");
    near(taken_straight - 0.1, 0.2, 1e-9, "the left line's yaw");
}

/// R: JCGM 100:2008, 5.1.2, by hand. Edges: u √2 / D. Hubs, tracks known: u √2 / L on each line. What both rear toes
/// share through the lines goes into the thrust as it does.
#[test]
fn the_uncertainty_of_toe_from_lines() {
    let angles = |spread| crooked().lines(false).angles(&spread).expect("angles");
    let edges = angles(LineSpread { edge_mm: 0.2, ..LineSpread::default() });
    near(edges.toe.rl.standard_deg, (0.2 * 2.0_f64.sqrt() / RIM_MM).to_degrees(), 1e-6, "edges");
    near(edges.thrust.standard_deg, edges.toe.rl.standard_deg / 2.0_f64.sqrt(), 1e-6, "mean of two independent ones");
    let hubs = angles(LineSpread { hub_mm: 0.5, ..LineSpread::default() });
    near(hubs.toe.rl.standard_deg, (0.5 * 2.0_f64.sqrt() / 2_500.0).to_degrees(), 1e-6, "hubs");
    near(hubs.left_line.standard_deg, hubs.toe.fl.standard_deg, 1e-9, "both toes on a side share their line");
    let tracks = angles(LineSpread { across_mm: 1.0, ..LineSpread::default() });
    // Two lines of unlike yaw have unlike slopes of the arctangent: 1e-7 of a degree.
    near(tracks.thrust.standard_deg, 0.0, 1e-6, "a wrong track turns both toes alike: the thrust does not feel it");
    near(tracks.total_rear.standard_deg, 2.0 * tracks.toe.rl.standard_deg, 1e-6, "the total feels it twice");
}

/// R: JCGM 101:2008: 100,000 draws against the propagated uncertainty, within 2 %.
#[test]
fn drawn_lines_spread_as_stated() {
    const DRAWS: usize = 100_000;
    let spread = LineSpread { edge_mm: 0.2, hub_mm: 0.5, across_mm: 1.0 };
    let lines = crooked().lines(true);
    let stated = lines.angles(&spread).expect("angles");
    let mut draws = Draws::from_seed(101_2008);
    let (mut toe, mut thrust) = ((0.0, 0.0), (0.0, 0.0));
    for _ in 0..DRAWS {
        let mut other = lines;
        for place in bayhand_vehicle::Place::ALL {
            let w = other.wheels.at_mut(place);
            w.front_mm += draws.normal(spread.edge_mm);
            w.rear_mm += draws.normal(spread.edge_mm);
            w.hub_mm += draws.normal(spread.hub_mm);
        }
        if let Closing::Ends { front_mm, rear_mm, .. } = &mut other.closing {
            *front_mm += draws.normal(spread.across_mm);
            *rear_mm += draws.normal(spread.across_mm);
        }
        let found = other.angles(&LineSpread::default()).expect("angles");
        for (sums, off) in
            [(&mut toe, found.toe.fl.deg - stated.toe.fl.deg), (&mut thrust, found.thrust.deg - stated.thrust.deg)]
        {
            *sums = (sums.0 + off, sums.1 + off * off);
        }
    }
    let check = |name: &str, (sum, squares): (f64, f64), stated: f64| {
        let n = DRAWS as f64;
        let drawn = (squares / n - (sum / n).powi(2)).sqrt();
        println!("{name}: propagated {stated:.6}, drawn {drawn:.6} degrees");
        assert!((stated / drawn - 1.0).abs() < 0.02, "{name}: {stated} is not {drawn} within 2 %");
    };
    check("toe", toe, stated.toe.fl.standard_deg);
    check("thrust", thrust, stated.thrust.standard_deg);
}

#[test]
fn lines_that_cannot_be_are_refused() {
    let mut lines = crooked().lines(true);
    lines.wheels.rr.between_mm = f64::NAN;
    let why = lines.angles(&LineSpread::default()).expect_err("no rim");
    assert_eq!(why.to_string(), "wheels.RR.between_mm is NaN; it must be from 100 to 1500 mm");
    let mut lines = crooked().lines(true);
    lines.closing = Closing::Ends { front_mm: 1_900.0, rear_mm: 1_900.0, apart_mm: 300.0 };
    let why = lines.angles(&LineSpread::default()).expect_err("ends too near");
    assert_eq!(why.at(), "closing.apart_mm");
}
