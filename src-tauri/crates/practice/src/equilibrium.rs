//! Where a [`Rig`] comes to rest: the least of its potential energy, found by damped Newton steps.
//!
//! Eight coordinates: heave, pitch, roll and twist of the body, and the height of each wheel. The energy is that of
//! weight, struts, friction, bars, body torsion, tyres and pushing hands; its slope is the force that is left over, and rest is where none is.
//! The energy is smooth but for kinks of its second derivative where a wheel lifts, a spring comes loose or a stop is
//! touched; a step is accepted only when it lowers the energy, so that these cannot make the search wander.

use crate::pose::Attitude;
use crate::rig::Rig;
use bayhand_vehicle::STANDARD_GRAVITY;
use nalgebra::{SMatrix, SVector, Vector3};
use thiserror::Error;

/// Number of coordinates.
pub(crate) const STATES: usize = 8;
/// Rest is where no force above this is left over, N (moments in Nm): under a microgram per corner.
const TOLERANCE_N: f64 = 1e-6;
/// Steps before the search gives up; ordinary cars need fewer than ten.
const MOST_STEPS: usize = 400;
/// Longest step in any coordinate, m or rad. Far less than a strut is long: a longer step could leap over the energy of
/// its bump stop and find rest with the strut turned over.
const LONGEST_STEP: f64 = 0.02;
/// Stiffness of the locked hinge, Nm/rad. Any value does: a rigid body has no twist for it to act on.
const LOCKED_NM_PER_RAD: f64 = 1e4;

type State = SVector<f64, STATES>;
type Slope = SVector<f64, STATES>;
type Curvature = SMatrix<f64, STATES, STATES>;

/// Lean beyond which a car on its pads is taken to fall over, rad.
const FALLS_RAD: f64 = 0.5;

/// No position of rest was found.
#[derive(Clone, Copy, Debug, PartialEq, Error)]
pub enum EquilibriumError {
    /// The search did not settle.
    #[error("the simulated car finds no rest: {left_over_n} N are left over after {steps} steps")]
    NoRest {
        /// Largest force (N) or moment (Nm) that is left over.
        left_over_n: f64,
        /// Steps that were tried.
        steps: usize,
    },
    /// The car leans ever more.
    #[error("the simulated car falls over: it leans by {lean_deg:.0} degrees and finds no rest before")]
    FallsOver {
        /// Lean at which the search was given up, degrees.
        lean_deg: f64,
    },
}

/// The attitude of both halves of the body.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Frame {
    /// Front and rear half.
    pub(crate) halves: [Attitude; 2],
    shares: [f64; 2],
}

impl Frame {
    /// Reads the attitudes out of a state.
    pub(crate) fn of(rig: &Rig, state: &State) -> Self {
        let shares = if rig.torsion_nm_per_rad.is_some() { [0.5, -0.5] } else { [0.0, 0.0] };
        let halves = shares.map(|share| Attitude {
            heave_m: state[0],
            pitch_rad: state[1],
            roll_rad: state[2] + share * state[3],
        });
        Frame { halves, shares }
    }

    /// How much of the twist a half rolls with.
    pub(crate) fn twist_share(&self, half: usize) -> f64 {
        self.shares[half]
    }

    /// The matrix that takes a small change of the state to (heave, pitch, roll) of one half and, if given, the
    /// height of a wheel.
    fn spread(&self, half: usize, wheel: Option<usize>) -> SMatrix<f64, 4, STATES> {
        let mut spread = SMatrix::<f64, 4, STATES>::zeros();
        spread[(0, 0)] = 1.0;
        spread[(1, 1)] = 1.0;
        spread[(2, 2)] = 1.0;
        spread[(2, 3)] = self.shares[half];
        if let Some(corner) = wheel {
            spread[(3, 4 + corner)] = 1.0;
        }
        spread
    }
}

/// Energy with its derivatives by the state.
struct Potential {
    energy_j: f64,
    slope: Slope,
    curvature: Curvature,
}

/// Length of a strut with its derivatives by the state.
struct Length {
    value_m: f64,
    slope: Slope,
    curvature: Curvature,
}

/// The state of rest.
///
/// # Errors
/// None was found within the allowed steps.
pub(crate) fn find(rig: &Rig) -> Result<State, EquilibriumError> {
    let mut state = rig.start;
    let mut here = potential(rig, &state);
    let mut damping = 0.0;
    for steps in 0..MOST_STEPS {
        let lean_rad = state[1].abs().max(state[2].abs());
        if lean_rad > FALLS_RAD {
            return Err(EquilibriumError::FallsOver { lean_deg: lean_rad.to_degrees() });
        }
        let left_over_n = here.slope.amax();
        if left_over_n < TOLERANCE_N {
            return Ok(state);
        }
        if !left_over_n.is_finite() {
            return Err(EquilibriumError::NoRest { left_over_n, steps });
        }
        let damped = here.curvature + Curvature::identity() * damping;
        let moved = damped.cholesky().map(|c| state - shortened(c.solve(&here.slope)));
        let tried = moved.map(|s| (s, potential(rig, &s)));
        match tried {
            Some((next, there)) if improves(&here, &there) => {
                state = next;
                here = there;
                damping = if damping > 1.0 { damping * 0.1 } else { 0.0 };
            }
            // Not convex here, or too long a step across a kink: shorter, and more downhill.
            _ => damping = (damping * 10.0).max(100.0),
        }
    }
    Err(EquilibriumError::NoRest { left_over_n: here.slope.amax(), steps: MOST_STEPS })
}

/// The same step, no longer than allowed.
fn shortened(step: State) -> State {
    let longest = step.amax();
    if longest > LONGEST_STEP { step * (LONGEST_STEP / longest) } else { step }
}

/// Lower energy; or, where the energy can no longer resolve it, less force left over.
fn improves(here: &Potential, there: &Potential) -> bool {
    let resolution_j = 1e-12 * here.energy_j.abs().max(1.0);
    there.energy_j < here.energy_j - resolution_j
        || (there.energy_j < here.energy_j + resolution_j && there.slope.amax() < here.slope.amax())
}

fn potential(rig: &Rig, state: &State) -> Potential {
    let frame = Frame::of(rig, state);
    let mut sum = Potential { energy_j: 0.0, slope: Slope::zeros(), curvature: Curvature::zeros() };
    add_body_weight(rig, &frame, &mut sum);
    let twist_nm_per_rad = rig.torsion_nm_per_rad.unwrap_or(LOCKED_NM_PER_RAD);
    sum.energy_j += 0.5 * twist_nm_per_rad * state[3] * state[3];
    sum.slope[3] += twist_nm_per_rad * state[3];
    sum.curvature[(3, 3)] += twist_nm_per_rad;
    let lengths: [Length; 4] = std::array::from_fn(|c| strut_length(rig, &frame, c, state[4 + c]));
    for (corner, length) in lengths.iter().enumerate() {
        add_wheel(rig, corner, state[4 + corner], &mut sum);
        add_push(rig, &frame, corner, &mut sum);
        let line = rig.wheels[corner].strut.at(length.value_m);
        sum.energy_j += line.energy_j;
        sum.slope += length.slope * line.slope_n;
        sum.curvature += length.slope * length.slope.transpose() * line.rate_n_per_m + length.curvature * line.slope_n;
    }
    for (axle, scrub) in rig.scrubs.iter().enumerate() {
        let (left, right) = (&lengths[2 * axle], &lengths[2 * axle + 1]);
        let line = scrub.hold.at(scrub.length_m([left.value_m, right.value_m]));
        let slope = left.slope * scrub.outwards[0] + right.slope * scrub.outwards[1];
        let curvature = left.curvature * scrub.outwards[0] + right.curvature * scrub.outwards[1];
        sum.energy_j += line.energy_j;
        sum.slope += slope * line.slope_n;
        sum.curvature += slope * slope.transpose() * line.rate_n_per_m + curvature * line.slope_n;
    }
    for (axle, bar) in rig.bars.iter().enumerate() {
        if let Some(bar) = bar {
            let (left, right) = (&lengths[2 * axle], &lengths[2 * axle + 1]);
            let wound_m = right.value_m - left.value_m - bar.rest_m;
            let slope = right.slope - left.slope;
            sum.energy_j += 0.5 * bar.n_per_m * wound_m * wound_m;
            sum.slope += slope * (bar.n_per_m * wound_m);
            sum.curvature +=
                slope * slope.transpose() * bar.n_per_m + (right.curvature - left.curvature) * (bar.n_per_m * wound_m);
        }
    }
    sum
}

/// Weight of both halves. Each acts at its axle's place along the car, so that together they act at the mass centre.
fn add_body_weight(rig: &Rig, frame: &Frame, sum: &mut Potential) {
    for (index, half) in rig.halves.iter().enumerate() {
        // Heights are linear in the point: the height of the first moments is the moment of the heights.
        let moments = Vector3::new(half.mass_kg * rig.wheels[2 * index].x_m, half.left_kg_m, half.up_kg_m);
        let attitude = Attitude { heave_m: 0.0, ..frame.halves[index] };
        let z = attitude.place(moments).z;
        let heave = half.mass_kg * frame.halves[index].heave_m;
        sum.energy_j += STANDARD_GRAVITY * (z.value + heave);
        let spread = frame.spread(index, None).fixed_rows::<3>(0).into_owned();
        let slope = Vector3::new(half.mass_kg, z.gradient.y, z.gradient.z);
        sum.slope += spread.transpose() * slope * STANDARD_GRAVITY;
        sum.curvature += spread.transpose() * z.hessian * spread * STANDARD_GRAVITY;
    }
}

/// Weight of a wheel and the spring of its tyre.
fn add_wheel(rig: &Rig, corner: usize, wheel_m: f64, sum: &mut Potential) {
    let wheel = &rig.wheels[corner];
    let weight_n = wheel.unsprung_kg * STANDARD_GRAVITY;
    let force_n = wheel.tyre_force_n(wheel_m);
    sum.energy_j += weight_n * wheel_m + 0.5 * force_n * force_n / wheel.tyre_n_per_m;
    sum.slope[4 + corner] += weight_n - force_n;
    if force_n > 0.0 {
        sum.curvature[(4 + corner, 4 + corner)] += wheel.tyre_n_per_m;
    }
}

/// Hands that press on the body above a wheel.
fn add_push(rig: &Rig, frame: &Frame, corner: usize, sum: &mut Potential) {
    let pushed_n = rig.pushed_n[corner];
    if pushed_n == 0.0 {
        return;
    }
    let z = frame.halves[corner / 2].place(rig.strut_top(corner)).z;
    let spread = frame.spread(corner / 2, None).fixed_rows::<3>(0).into_owned();
    sum.energy_j += pushed_n * z.value;
    sum.slope += spread.transpose() * z.gradient * pushed_n;
    sum.curvature += spread.transpose() * z.hessian * spread * pushed_n;
}

fn strut_length(rig: &Rig, frame: &Frame, corner: usize, wheel_m: f64) -> Length {
    let half = corner / 2;
    let top = frame.halves[half].place(rig.strut_top(corner));
    let foot = rig.strut_foot(corner, wheel_m);
    let line = Vector3::new(top.x.value, top.y.value, top.z.value) - foot;
    let value_m = line.norm();
    let along = line / value_m;
    // By (heave, pitch, roll, wheel): the wheel's end moves straight up.
    let mut ends = SMatrix::<f64, 3, 4>::zeros();
    let mut bends = SMatrix::<f64, 4, 4>::zeros();
    for (row, coordinate) in [top.x, top.y, top.z].iter().enumerate() {
        ends.fixed_view_mut::<1, 3>(row, 0).copy_from(&coordinate.gradient.transpose());
        let mut block = bends.fixed_view_mut::<3, 3>(0, 0);
        block += coordinate.hessian * along[row];
    }
    ends[(2, 3)] = -1.0;
    let slope = ends.transpose() * along;
    let curvature = (ends.transpose() * ends - slope * slope.transpose()) / value_m + bends;
    let spread = frame.spread(half, Some(corner));
    Length { value_m, slope: spread.transpose() * slope, curvature: spread.transpose() * curvature * spread }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::*;
    use crate::bench::PracticeCar;
    use crate::noise::{Draws, Purpose};

    /// Rest is the least of the energy: whatever way the car is moved a little, the energy rises. Moves are of a size
    /// that the energy still resolves.
    #[test]
    fn rest_is_the_least_of_the_energy() {
        for seed in 1..=20 {
            let rig = PracticeCar::from_seed(seed).truth.rig;
            let state = find(&rig).unwrap();
            let least_j = potential(&rig, &state).energy_j;
            let mut draws = Draws::new(seed, Purpose::Car, 1, 1);
            for _ in 0..50 {
                let moved = State::from_fn(|_, _| draws.normal(1e-4));
                let energy_j = potential(&rig, &(state + moved)).energy_j;
                assert!(energy_j > least_j, "seed {seed}: {energy_j} J after {moved:?}, {least_j} J at rest");
            }
        }
    }

    /// Slope and curvature of the whole are those of its energy, friction, side load and pushing hands included
    /// (central differences).
    #[test]
    fn derivatives_are_those_of_the_energy() {
        use crate::friction::DryFriction;
        let mut rig = PracticeCar::from_seed(3).truth.rig;
        let at = find(&rig).unwrap();
        let lengths_m = rig.strut_lengths(&at);
        for (wheel, length_m) in rig.wheels.iter_mut().zip(lengths_m) {
            wheel.strut.friction = DryFriction { limit_n: 50.0, rate_n_per_m: 1e5, anchor_m: length_m + 2e-4 };
        }
        for scrub in &mut rig.scrubs {
            scrub.outwards = [0.1, 0.12];
            scrub.hold = DryFriction { limit_n: 900.0, rate_n_per_m: 6e4, anchor_m: 0.06 };
        }
        rig.pushed_n = [100.0, -50.0, 30.0, 20.0];
        let here = potential(&rig, &at);
        let d = 1e-6;
        for k in 0..STATES {
            let step = State::from_fn(|i, _| if i == k { d } else { 0.0 });
            let (low, high) = (potential(&rig, &(at - step)), potential(&rig, &(at + step)));
            let slope = (high.energy_j - low.energy_j) / (2.0 * d);
            assert!((slope - here.slope[k]).abs() < 1e-2, "slope by {k}: {slope} and {}", here.slope[k]);
            let curve = (high.slope - low.slope) / (2.0 * d);
            let given = here.curvature.column(k);
            assert!((curve - given).amax() < 1e-5 * given.amax(), "curvature by {k}: {curve} and {given}");
        }
    }
}
