//! Caster and inclination from a sweep: the values of the check list, and 1000 axles swept by an independent library.

mod common;

use bayhand_chassis::StaticsError;
use bayhand_chassis::align::{
    CamberReading, CamberSpread, FloorSlope, GaugeCamber, KnownAngle, Side, SteeringAxis, Sweep, SweepReading,
    SweepSpread, Wheel, caster_of_symmetric_sweep_deg,
};
use common::draws::Draws;
use common::near;
use serde::Deserialize;

/// R: checks.md: caster 7, inclination 14, camber -2, 20 degrees; caster 3 alone.
#[test]
fn the_symmetric_sweep_of_the_check_list() {
    let caster = |d, out, inward, inclination| caster_of_symmetric_sweep_deg(d, out, inward, inclination).expect("one");
    near(caster(20.0, 1.262_121, -3.525_174, 14.0), 7.0, 2e-6, "caster 7");
    near(caster(20.0, 1.026_889, -1.026_889, 0.0), 3.0, 2e-6, "caster 3");
}

fn two_readings(d: f64, out: f64, inward: f64, inclination: Option<KnownAngle>) -> Sweep {
    let at = |plate_deg, gauge_deg| SweepReading { plate_deg, gauge_deg, along_deg: None };
    Sweep {
        side: Side::Left,
        straight_plate_deg: 0.0,
        toe_deg: 0.0,
        gauge_bias_deg: 0.0,
        floor: FloorSlope::default(),
        inclination,
        readings: vec![at(d, out), at(-d, inward)],
    }
}

/// R: the usual factor 1 / (2 sin d): 10, 15, 20, 22.5, 25 degrees; C: '1.5 at 20 degrees' overstates by 2.6 %.
#[test]
fn the_usual_factor_stands_beside_it() {
    for (d, factor) in [(10.0, 2.8794), (15.0, 1.9319), (20.0, 1.4619), (22.5, 1.3066), (25.0, 1.1831)] {
        let sweep = two_readings(d, 1.0, -1.0, Some(KnownAngle::exact(0.0)));
        let found = sweep.solve(&SweepSpread::default()).expect("a caster");
        near(found.usual.factor, factor, 5e-5, "factor");
        near(found.usual.caster_deg, 2.0 * found.usual.factor, 1e-12, "of two degrees");
        near(found.usual.error_deg, found.usual.caster_deg - found.caster.deg, 1e-12, "and its error is shown");
    }
    let twenty = two_readings(20.0, 1.0, -1.0, Some(KnownAngle::exact(0.0)));
    let factor = twenty.solve(&SweepSpread::default()).expect("a caster").usual.factor;
    near(1.5 / factor - 1.0, 0.026, 5e-4, "1.5 overstates by 2.6 %");
    let steep = two_readings(20.0, 1.262_121, -3.525_174, Some(KnownAngle::exact(14.0)));
    let found = steep.solve(&SweepSpread::default()).expect("a caster");
    near(found.caster.deg, 7.0, 2e-6, "the equations give what the closed form gives");
    near(found.usual.error_deg, 4.787_295 * 1.461_902 - 7.0, 1e-5, "the usual one is off by a thousandth here");
}

/// R: JCGM 100:2008, 5.1.2, by hand from tan caster = tan(D/2) / sin d: two independent readings of 0.05 degrees, and
/// a turn plate whose scale is off by 2 %.
#[test]
fn the_uncertainty_of_a_caster() {
    let sweep = two_readings(20.0, 1.026_889, -1.026_889, Some(KnownAngle::exact(0.0)));
    let standard = |spread: SweepSpread| sweep.solve(&spread).expect("a caster").caster.standard_deg;
    let none = SweepSpread::default();
    let (d, caster, half) = (20.0_f64.to_radians(), 3.0_f64.to_radians(), 1.026_889_f64.to_radians());
    let per_degree = caster.cos().powi(2) / half.cos().powi(2) / (2.0 * d.sin());
    let gauge = 0.05 * 2.0_f64.sqrt() * per_degree;
    near(standard(SweepSpread { gauge_deg: 0.05, ..none }), gauge, 1e-4 * gauge, "gauge");
    let plate = (0.02 * d / d.tan() * caster.sin() * caster.cos()).to_degrees();
    near(standard(SweepSpread { plate_fraction: 0.02, ..none }), plate, 1e-3 * plate, "scale of the plate");
    near(standard(SweepSpread { bias_deg: 0.2, ..none }), 0.0, 1e-3, "a bias drops out of the difference");
    let known = two_readings(20.0, 1.262_121, -3.525_174, Some(KnownAngle { deg: 14.0, standard_deg: 1.0 }));
    let found = known.solve(&none).expect("a caster");
    assert!(found.caster.standard_deg < 0.01, "the inclination hardly matters: {}", found.caster.standard_deg);
    near(found.inclination.standard_deg, 1.0, 1e-9, "and is handed on as it was given");
}

#[derive(Deserialize)]
struct Reference {
    axles: Vec<[Vec<f64>; 2]>,
}

/// One wheel of data/sweep.json; origin in data/ORIGIN.md.
struct Swung {
    axis: SteeringAxis,
    toe_deg: f64,
    standard_camber_deg: f64,
    gauge_camber_deg: f64,
    floor: FloorSlope,
    bias_deg: f64,
    /// Change of heading, rotation about the axis, gauge across, gauge along.
    positions: Vec<[f64; 4]>,
}

impl Swung {
    fn of(row: &[f64]) -> Swung {
        let side = if row[0] > 0.0 { Side::Left } else { Side::Right };
        Swung {
            axis: SteeringAxis { side, caster_deg: row[1], inclination_deg: row[2] },
            toe_deg: row[3],
            standard_camber_deg: row[4],
            gauge_camber_deg: row[5],
            floor: FloorSlope { rise_forward_deg: row[6], rise_left_deg: row[7] },
            bias_deg: row[8],
            positions: row[9..].chunks_exact(4).map(|p| [p[0], p[1], p[2], p[3]]).collect(),
        }
    }

    /// The sweep as it would be read, at the positions of these numbers.
    fn sweep(&self, which: &[usize], along: bool, inclination: Option<KnownAngle>) -> Sweep {
        let reading = |&i: &usize| {
            let [plate_deg, _, gauge_deg, along_deg] = self.positions[i];
            SweepReading { plate_deg, gauge_deg, along_deg: along.then_some(along_deg) }
        };
        Sweep {
            side: self.axis.side,
            straight_plate_deg: 0.0,
            toe_deg: self.toe_deg,
            gauge_bias_deg: self.bias_deg,
            floor: self.floor,
            inclination,
            readings: which.iter().map(reading).collect(),
        }
    }
}

fn swung() -> Vec<Swung> {
    let reference: Reference = serde_json::from_str(include_str!("data/sweep.json")).expect("axles");
    assert_eq!(reference.axles.len(), 1_000, "all axles were read");
    reference.axles.iter().flatten().map(|row| Swung::of(row)).collect()
}

/// I: scipy.spatial.transform: definitions and rotations of 2000 wheels.
#[test]
fn an_independent_library_turns_wheels_alike() {
    for w in swung() {
        let camber = GaugeCamber { deg: w.gauge_camber_deg };
        let straight = Wheel::from_gauge(w.axis.side, w.toe_deg, camber).expect("a wheel");
        near(straight.standard_camber().deg, w.standard_camber_deg, 1e-9, "camber by the standard");
        for [change, rotation, across, along] in &w.positions {
            let (there, turned) = w.axis.turned_to(&straight, *change).expect("a steered wheel");
            near(turned, *rotation, 1e-9, "rotation about the axis");
            let shown = GaugeCamber { deg: across - w.bias_deg };
            let heading_deg = there.heading_deg();
            let on_floor = w.floor.taken_out(w.axis.side, heading_deg, shown).expect("a camber");
            near(on_floor.deg, there.gauge_camber().deg, 1e-9, "inclination, floor and bias taken out");
            let up = w.floor.taken_out_along(w.axis.side, heading_deg, on_floor, *along).expect("an angle");
            assert!(up.abs() < 20.0, "the gauge along the wheel lies within the wheel: {up}");
        }
    }
}

/// I: a sweep of 1000 axles gives caster and inclination back to 1e-6 degrees, by each way of sweeping: toe, unequal
/// angles, floor slope and gauge bias included.
#[test]
fn a_sweep_gives_the_axis_back() {
    let mut worst = [0.0_f64; 4];
    for w in swung() {
        let given = Some(KnownAngle::exact(w.axis.inclination_deg));
        let ways = [
            w.sweep(&[0, 2], false, given),
            w.sweep(&[0, 1, 2], false, None),
            w.sweep(&[0, 2], true, None),
            w.sweep(&[0, 1, 2], true, None),
        ];
        for (way, worst) in ways.iter().zip(&mut worst) {
            let found = way.solve(&SweepSpread::default()).expect("an axis");
            let off = (found.caster.deg - w.axis.caster_deg).abs();
            *worst = worst.max(off.max((found.inclination.deg - w.axis.inclination_deg).abs()));
        }
    }
    println!(
        "worst of 2000 wheels: known inclination {:.1e}, across {:.1e}, along {:.1e}, all {:.1e} degrees",
        worst[0], worst[1], worst[2], worst[3]
    );
    for worst in worst {
        assert!(worst < 1e-6, "{worst} degrees");
    }
}

/// I and R: with noise on every reading, on the plate, its scale, the bias, the toe and the floor, the stated interval
/// (k = 2) holds the truth as often as it says.
#[test]
fn a_noisy_sweep_stays_inside_its_uncertainty() {
    let spread = SweepSpread {
        gauge_deg: 0.02,
        plate_deg: 0.1,
        plate_fraction: 0.005,
        bias_deg: 0.02,
        toe_deg: 0.05,
        floor_deg: 0.02,
    };
    let mut draws = Draws::from_seed(8_855);
    let mut check = |name: &str, make: &dyn Fn(&Swung) -> Sweep| {
        let (mut caster_held, mut inclination_held, mut sweeps, mut wide) = (0, 0, 0, 0.0);
        for w in swung() {
            let mut sweep = make(&w);
            let scale = 1.0 + draws.normal(spread.plate_fraction);
            for r in &mut sweep.readings {
                r.plate_deg = r.plate_deg / scale + draws.normal(spread.plate_deg);
                r.gauge_deg += draws.normal(spread.gauge_deg);
                r.along_deg = r.along_deg.map(|deg| deg + draws.normal(spread.gauge_deg));
            }
            sweep.straight_plate_deg += draws.normal(spread.plate_deg);
            sweep.gauge_bias_deg += draws.normal(spread.bias_deg);
            sweep.toe_deg += draws.normal(spread.toe_deg);
            sweep.floor.rise_forward_deg += draws.normal(spread.floor_deg);
            sweep.floor.rise_left_deg += draws.normal(spread.floor_deg);
            let found = sweep.solve(&spread).expect("an axis");
            caster_held += usize::from((found.caster.deg - w.axis.caster_deg).abs() <= found.caster.expanded_deg());
            let off = (found.inclination.deg - w.axis.inclination_deg).abs();
            inclination_held += usize::from(off <= found.inclination.expanded_deg());
            sweeps += 1;
            wide += found.inclination.expanded_deg();
        }
        let pct = |held: usize| 100.0 * held as f64 / f64::from(sweeps);
        let (caster, inclination) = (pct(caster_held), pct(inclination_held));
        let wide = wide / f64::from(sweeps);
        println!("{name}: caster {caster:.2} %, inclination {inclination:.2} % inside (95.45 stated), U {wide:.2} deg");
        for held in [caster, inclination] {
            assert!((94.0..=97.0).contains(&held), "{name}: {held} %");
        }
        wide
    };
    let across = check("three across", &|w| w.sweep(&[0, 1, 2], false, None));
    let along = check("two across and along", &|w| w.sweep(&[0, 2], true, None));
    assert!(along < across / 3.0, "the gauge along the wheel is what knows the inclination: {along} against {across}");
}

/// I: the same wheels straight ahead: bias and floor taken out, both cambers come out, and with noise as surely as
/// stated; two looks half a turn apart are surer than one with its run-out.
#[test]
fn a_gauge_reading_gives_both_cambers() {
    const ROUNDS: usize = 10;
    let spread = CamberSpread { gauge_deg: 0.02, bias_deg: 0.02, toe_deg: 0.05, floor_deg: 0.02, run_out_deg: 0.05 };
    let mut draws = Draws::from_seed(7_117);
    let (mut held, mut wheels) = ([0_usize; 2], 0.0);
    let swung = swung();
    for w in swung.iter().cycle().take(ROUNDS * swung.len()) {
        let reading = CamberReading {
            side: w.axis.side,
            toe_deg: w.toe_deg,
            shown_deg: w.positions[1][2],
            half_a_turn_on_deg: None,
            bias_deg: w.bias_deg,
            floor: w.floor,
        };
        let found = reading.camber(&CamberSpread::default()).expect("a camber");
        near(found.gauge.deg, w.gauge_camber_deg, 1e-9, "gauge");
        near(found.standard.deg, w.standard_camber_deg, 1e-9, "standard");
        near(found.standard.standard_deg, 0.0, 0.0, "nothing uncertain");
        let wobble = draws.normal(spread.run_out_deg);
        let mut noisy = |run_out: f64, second: bool| {
            let looks = [run_out, -run_out].map(|wobble| reading.shown_deg + wobble + draws.normal(spread.gauge_deg));
            let seen = CamberReading {
                shown_deg: looks[0],
                half_a_turn_on_deg: second.then_some(looks[1]),
                bias_deg: reading.bias_deg + draws.normal(spread.bias_deg),
                toe_deg: reading.toe_deg + draws.normal(spread.toe_deg),
                floor: FloorSlope {
                    rise_forward_deg: w.floor.rise_forward_deg + draws.normal(spread.floor_deg),
                    rise_left_deg: w.floor.rise_left_deg + draws.normal(spread.floor_deg),
                },
                ..reading
            };
            seen.camber(&spread).expect("a camber").standard
        };
        let inside = |found: KnownAngle| (found.deg - w.standard_camber_deg).abs() <= found.expanded_deg();
        // A wobble that is drawn for the single look, and a great one that two looks must not feel.
        let (one, two) = (noisy(wobble, false), noisy(0.5, true));
        assert!(two.standard_deg < one.standard_deg, "two looks are surer");
        held[0] += usize::from(inside(one));
        held[1] += usize::from(inside(two));
        wheels += 1.0;
    }
    for (name, held) in [("one look", held[0]), ("two looks", held[1])] {
        let pct = 100.0 * held as f64 / wheels;
        println!("{name}: {pct:.2} % of {wheels} inside, 95.45 stated");
        assert!((95.0..=96.0).contains(&pct), "{name}: {pct} %");
    }
}

#[test]
fn too_little_of_a_sweep_is_refused() {
    fn check(sweep: &Sweep, says: &str) {
        let why: StaticsError = sweep.solve(&SweepSpread::default()).expect_err(says);
        assert_eq!(why.to_string(), says);
    }
    let few = "it must be two across the wheel with the inclination known, or with two along it, or three across";
    check(&two_readings(20.0, 1.0, -1.0, None), &format!("readings is 2 readings; {few}"));
    let known = Some(KnownAngle::exact(10.0));
    check(&two_readings(2.0, 1.0, -1.0, known), "readings.plate_deg is 4; it must be a sweep of at least 5 degrees");
    let mut far = two_readings(20.0, 1.0, -1.0, known);
    far.readings[1].plate_deg = -75.0;
    check(&far, "readings[1].plate_deg is -75; it must be at most 60 degrees from straight ahead");
    let why = caster_of_symmetric_sweep_deg(0.0, 1.0, -1.0, 0.0).expect_err("no sweep");
    assert_eq!(why.to_string(), "angle_deg is 0; it must be from 5 to 60 degrees");
}

/// A spread that cannot be is named by its field, with its value and range.
#[test]
fn a_spread_that_cannot_be_is_refused() {
    let sweep = two_readings(20.0, 1.026_889, -1.026_889, Some(KnownAngle::exact(0.0)));
    let none = SweepSpread::default();
    for (spread, says) in [
        (SweepSpread { gauge_deg: -0.1, ..none }, "spread.gauge_deg is -0.1; it must be from 0 to 5 degrees"),
        (SweepSpread { plate_deg: 5.1, ..none }, "spread.plate_deg is 5.1; it must be from 0 to 5 degrees"),
        (SweepSpread { bias_deg: f64::NAN, ..none }, "spread.bias_deg is NaN; it must be from 0 to 5 degrees"),
        (SweepSpread { toe_deg: f64::INFINITY, ..none }, "spread.toe_deg is inf; it must be from 0 to 5 degrees"),
        (SweepSpread { floor_deg: -1.0, ..none }, "spread.floor_deg is -1; it must be from 0 to 5 degrees"),
        (SweepSpread { plate_fraction: 0.6, ..none }, "spread.plate_fraction is 0.6; it must be from 0 to 0.5"),
    ] {
        assert_eq!(sweep.solve(&spread).expect_err(says).to_string(), says);
    }
}
