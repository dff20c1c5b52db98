//! A wheel's suspension as five links between body and upright, and where the upright stands.
//!
//! Two legs to the upper joint, two to the lower one, and the tie rod or toe link: a double wishbone, or a multi-link
//! axle whose outer joints fall together. The upright's place (turn and shift, six unknowns) is found by Newton's method
//! from five lengths and the height of the lower joint, on which spring and damper act. What angles, bump steer, scrub
//! and couplings there are follows from the places of ten joints; there is no formula of any angle here.
//!
//! Axes of one wheel: x forward, y outwards to the wheel's own side, z up; the origin is the wheel's centre as it was
//! drawn. SI units.

use nalgebra::{Matrix6, Rotation3, Unit, UnitQuaternion, Vector3, Vector6};

/// Steps of Newton's method; three are enough for any setting that a person can make.
const MOST_STEPS: usize = 30;
/// The position is found when no length is off by more, m.
const CLOSE_M: f64 = 1e-13;

/// Numbers of the links.
const UPPER_FRONT: usize = 0;
const UPPER_REAR: usize = 1;
const LOWER_FRONT: usize = 2;
const LOWER_REAR: usize = 3;
const TIE_ROD: usize = 4;

/// A link by its joints, as drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Link {
    /// Joint at the body.
    pub(crate) body: Vector3<f64>,
    /// Joint at the upright.
    pub(crate) upright: Vector3<f64>,
    /// Stiffness of link and bushes along it, N/m.
    pub(crate) n_per_m: f64,
}

/// Turns of the three adjusters of a wheel.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Turns {
    /// Of the tie rod; positive lengthens it: toe-in, for it stands behind the axle.
    pub(crate) toe: f64,
    /// Of both upper legs; positive lengthens them: the top leans out.
    pub(crate) camber: f64,
    /// Of the upper legs against each other; positive moves the upper joint back: more caster.
    pub(crate) caster: f64,
}

/// A wheel's suspension.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Linkage {
    /// Upper front leg, upper rear leg, lower front leg, lower rear leg, tie rod.
    pub(crate) links: [Link; 5],
    /// Lengthening for one turn: of the tie rod, of both upper legs, of the upper legs against each other, m.
    pub(crate) per_turn_m: [f64; 3],
    /// Where its adjusters stand as the car comes in.
    pub(crate) came: Turns,
    /// How much shorter its lower legs are than they were drawn, m.
    pub(crate) lower_short_m: f64,
    /// Radius of the tyre where it stands, m.
    pub(crate) radius_m: f64,
}

/// How a wheel is set and loaded.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Setting {
    /// Height of the lower joint over its drawn place in the body, m: wheel travel into bump.
    pub(crate) travel_m: f64,
    /// Shift of the tie rod's inner joint towards the wheel's own side, m: the rack's.
    pub(crate) rack_m: f64,
    /// Turns made since the car came in.
    pub(crate) turns: Turns,
    /// Load of the pad on the tyre, N.
    pub(crate) load_n: f64,
}

/// Where an upright stands in the axes of its body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Upright {
    turn: UnitQuaternion<f64>,
    /// Centre of the wheel.
    pub(crate) centre: Vector3<f64>,
}

impl Upright {
    fn place(&self, drawn: &Vector3<f64>) -> Vector3<f64> {
        self.turn * drawn + self.centre
    }

    /// Spin axis, outwards, to unit length.
    pub(crate) fn spin(&self) -> Vector3<f64> {
        self.turn * Vector3::y()
    }

    /// Middle of the tyre's contact.
    pub(crate) fn contact(&self, radius_m: f64) -> Vector3<f64> {
        let spin = self.spin();
        // Up in the wheel's plane: a wheel never lies flat.
        let up = (Vector3::z() - spin * spin.z).normalize();
        self.centre - up * radius_m
    }
}

impl Linkage {
    /// Where the upright stands; none when the links cannot be closed in that setting.
    pub(crate) fn upright(&self, setting: &Setting) -> Option<Upright> {
        let mut lengths_m = self.lengths_m(&setting.turns);
        let stiff = self.close(&lengths_m, setting)?;
        let tension_n = self.tensions_n(&stiff, setting)?;
        for (length_m, (tension, link)) in lengths_m.iter_mut().zip(tension_n.iter().zip(&self.links)) {
            *length_m += tension / link.n_per_m;
        }
        self.close(&lengths_m, setting)
    }

    /// Direction of the line through both joints of the upright, upwards.
    pub(crate) fn axis(&self, upright: &Upright) -> Vector3<f64> {
        upright.turn * (self.links[UPPER_FRONT].upright - self.lower_joint()).normalize()
    }

    fn lower_joint(&self) -> Vector3<f64> {
        self.links[LOWER_FRONT].upright
    }

    fn lengths_m(&self, turns: &Turns) -> [f64; 5] {
        let mut lengths_m = self.links.map(|link| (link.upright - link.body).norm());
        let [toe, camber, caster] = self.per_turn_m;
        lengths_m[TIE_ROD] += toe * (self.came.toe + turns.toe);
        let (both, against) = (camber * (self.came.camber + turns.camber), caster * (self.came.caster + turns.caster));
        lengths_m[UPPER_FRONT] += both + against;
        lengths_m[UPPER_REAR] += both - against;
        lengths_m[LOWER_FRONT] -= self.lower_short_m;
        lengths_m[LOWER_REAR] -= self.lower_short_m;
        lengths_m
    }

    /// The upright for these lengths.
    fn close(&self, lengths_m: &[f64; 5], setting: &Setting) -> Option<Upright> {
        let mut upright = Upright { turn: UnitQuaternion::identity(), centre: Vector3::z() * setting.travel_m };
        for _ in 0..MOST_STEPS {
            let (slopes, places) = self.slopes(&upright, setting);
            let mut off = Vector6::zeros();
            for ((row, place_m), length_m) in off.iter_mut().zip(places).zip(lengths_m) {
                *row = length_m - place_m;
            }
            let lower = self.lower_joint();
            off[5] = lower.z + setting.travel_m - upright.place(&lower).z;
            if off.amax() < CLOSE_M {
                return Some(upright);
            }
            let step = slopes.lu().solve(&off)?;
            let about = Vector3::new(step[0], step[1], step[2]);
            upright.turn = UnitQuaternion::from_scaled_axis(about) * upright.turn;
            upright.centre += Vector3::new(step[3], step[4], step[5]);
        }
        None
    }

    /// How the five lengths and the lower joint's height change with a small turn and shift of the upright, and the lengths.
    fn slopes(&self, upright: &Upright, setting: &Setting) -> (Matrix6<f64>, [f64; 5]) {
        let mut slopes = Matrix6::zeros();
        let mut lengths_m = [0.0; 5];
        for (number, link) in self.links.iter().enumerate() {
            let arm = upright.turn * link.upright;
            let rack = if number == TIE_ROD { Vector3::y() * setting.rack_m } else { Vector3::zeros() };
            let along = arm + upright.centre - link.body - rack;
            lengths_m[number] = along.norm();
            set_row(&mut slopes, number, &arm, &(along / lengths_m[number]));
        }
        set_row(&mut slopes, 5, &(upright.turn * self.lower_joint()), &Vector3::z());
        (slopes, lengths_m)
    }

    /// Pull in each link while the pad carries the wheel: by virtual work, for no small movement of the upright may do any.
    fn tensions_n(&self, upright: &Upright, setting: &Setting) -> Option<[f64; 5]> {
        let (slopes, _) = self.slopes(upright, setting);
        let arm = upright.contact(self.radius_m) - upright.centre;
        let mut lifts = Matrix6::zeros();
        set_row(&mut lifts, 0, &arm, &Vector3::z());
        let work = lifts.row(0).transpose() * setting.load_n;
        let held = slopes.transpose().lu().solve(&work)?;
        Some([held[0], held[1], held[2], held[3], held[4]])
    }
}

/// Change of a place along a direction, by a small turn (about x, y, z) and a small shift of what carries it.
fn set_row(slopes: &mut Matrix6<f64>, row: usize, arm: &Vector3<f64>, along: &Vector3<f64>) {
    let about = arm.cross(along);
    for k in 0..3 {
        slopes[(row, k)] = about[k];
        slopes[(row, 3 + k)] = along[k];
    }
}

/// Turns a vector of the body into the axes of the world: first the lean about x, then the pitch about y.
pub(crate) fn leaning(pitch_rad: f64, roll_rad: f64) -> Rotation3<f64> {
    let about = |axis: Unit<Vector3<f64>>, angle| Rotation3::from_axis_angle(&axis, angle);
    about(Vector3::y_axis(), pitch_rad) * about(Vector3::x_axis(), roll_rad)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::*;

    fn link(body: [f64; 3], upright: [f64; 3]) -> Link {
        Link { body: body.into(), upright: upright.into(), n_per_m: 1e12 }
    }

    /// Equal, parallel, level arms, square to the car: a parallelogram, whose wheel only shifts.
    fn parallelogram() -> Linkage {
        Linkage {
            links: [
                link([0.1, -0.4, 0.1], [0.0, -0.1, 0.1]),
                link([-0.1, -0.4, 0.1], [0.0, -0.1, 0.1]),
                link([0.1, -0.4, -0.1], [0.0, -0.1, -0.1]),
                link([-0.1, -0.4, -0.1], [0.0, -0.1, -0.1]),
                link([-0.12, -0.4, 0.0], [-0.12, -0.1, 0.0]),
            ],
            per_turn_m: [0.0015, 0.001, 0.001],
            came: Turns::default(),
            lower_short_m: 0.0,
            radius_m: 0.3,
        }
    }

    /// A parallelogram keeps its wheel upright and straight over the whole travel, and swings it in by 0.3 (1 - cos).
    #[test]
    fn a_parallelogram_only_shifts() {
        for travel_m in [-0.05, -0.01, 0.0, 0.02, 0.05] {
            let upright = parallelogram().upright(&Setting { travel_m, ..Setting::default() }).unwrap();
            assert!((upright.spin() - Vector3::y()).amax() < 1e-12, "{travel_m}: {:?}", upright.spin());
            let inwards = 0.3 - (0.3_f64.powi(2) - travel_m * travel_m).sqrt();
            assert!((upright.centre - Vector3::new(0.0, -inwards, travel_m)).amax() < 1e-12, "{:?}", upright.centre);
        }
    }

    /// A tie rod of 1.5 mm more on an arm of 120 mm turns the wheel about its joints by 2 asin(0.75 / 120), nearly: the rod
    /// is long against the arm.
    #[test]
    fn a_longer_rod_behind_the_axle_is_toe_in() {
        let turns = Turns { toe: 1.0, ..Turns::default() };
        let upright = parallelogram().upright(&Setting { turns, ..Setting::default() }).unwrap();
        let toe_deg = upright.spin().x.atan2(upright.spin().y).to_degrees();
        assert!((toe_deg - 0.7162).abs() < 2e-3, "{toe_deg} degrees");
        assert!(upright.spin().z.abs() < 1e-12, "an upright axis leaves the camber alone");
    }

    /// A lower arm that is short draws the wheel's foot in: 5 mm over 200 mm between the arms are 1.43 degrees, top out.
    #[test]
    fn a_short_lower_arm_leans_the_top_out() {
        let bent = Linkage { lower_short_m: 0.005, ..parallelogram() };
        let upright = bent.upright(&Setting::default()).unwrap();
        let lean_deg = (-upright.spin().z).asin().to_degrees();
        // The legs slant by atan(1 / 3), so that the joint comes in by a little more than they are short.
        assert!((1.3..1.65).contains(&lean_deg), "{lean_deg} degrees");
    }

    /// Virtual work is moments: a load 0.1 m outside the joints, 0.2 m of height between them, presses the top in: the upper
    /// arm is pressed with half of it, the lower arm pulled as hard.
    #[test]
    fn links_carry_the_overhanging_load() {
        let linkage = parallelogram();
        let setting = Setting { load_n: 2_400.0, ..Setting::default() };
        let upright = linkage.upright(&setting).unwrap();
        let pulls = linkage.tensions_n(&upright, &setting).unwrap();
        // Two legs at atan(1/3) to the arm share it.
        let leg_n = 1_200.0 / 2.0 / (1.0_f64 / 3.0).atan().cos();
        for (number, due) in [-leg_n, -leg_n, leg_n, leg_n, 0.0].into_iter().enumerate() {
            assert!((pulls[number] - due).abs() < 1e-6 * 2_400.0, "link {number}: {} N, due {due} N", pulls[number]);
        }
    }

    /// Links that are too short for the way between their joints are told, not guessed at.
    #[test]
    fn links_that_cannot_be_closed_are_told() {
        assert_eq!(parallelogram().upright(&Setting { travel_m: 0.5, ..Setting::default() }), None);
    }
}
