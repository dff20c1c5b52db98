//! What one millimetre of collar, pad or contact patch does: the Jacobian of loads and heights at the reading.

use crate::suspension::Suspension;
use crate::system::{Before, Cause, Contact, System};
use crate::{StaticsError, diagonal};
use bayhand_vehicle::{Car, Corners, Place, STANDARD_GRAVITY};
use nalgebra::Vector4;

/// What one millimetre does. Rows are the corner that answers, columns the corner that is moved, both in the order
/// FL, FR, RL, RR.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sensitivity {
    /// Load change per mm of lift of the free height at a wheel (collar travel × adjuster ratio), kg/mm.
    pub load_per_mm_wheel: [[f64; 4]; 4],
    /// Change of a measured height per mm of lift at a wheel, mm/mm.
    pub height_per_mm_wheel: [[f64; 4]; 4],
    /// Load change per mm of pad, kg/mm. The same as for lift unless a bar or a beam joins the wheels of an axle.
    pub load_per_mm_pad: [[f64; 4]; 4],
    /// Change of a measured height per mm of pad, mm/mm. Over the wheel's own pad it is what the body rises less the
    /// pad itself; at a point measured over the floor it is what the body rises.
    pub height_per_mm_pad: [[f64; 4]; 4],
    /// What a contact patch off its place does, per mm and per kg that stands on it.
    pub patch: PatchShift,
}

/// What a contact patch away from its place does to the four loads, kg per mm of shift and kg of load on that patch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PatchShift {
    /// The patch forward by one mm; columns are the corner whose patch it is.
    pub forward: [[f64; 4]; 4],
    /// The patch to the left by one mm; columns are the corner whose patch it is.
    pub left: [[f64; 4]; 4],
}

impl Sensitivity {
    /// The sensitivities of a car as it is entered, every wheel on its pad and no stop touched; missing data as in
    /// [`crate::Rates::of`].
    ///
    /// # Errors
    /// A car that cannot be, or one whose springs do not hold it upright.
    pub fn of(car: &Car) -> Result<Sensitivity, StaticsError> {
        let system = System::of(car)?;
        let before = [Before::default(); 4];
        let Some(equations) = system.with(&[Contact::ORDINARY; 4], &before) else {
            return Err(StaticsError::TipsOver { mass_kg: car.sprung.mass_kg, height_mm: system.body.lever_mm });
        };
        // Every load and height per unit of a cause at each corner in turn.
        let per = |cause: &dyn Fn(Place) -> Cause| {
            let (mut load, mut height) = ([[0.0; 4]; 4], [[0.0; 4]; 4]);
            for place in Place::ALL {
                let motion = equations.motion(&cause(place));
                for row in 0..4 {
                    load[row][place.index()] = motion.load_n[row].slope / STANDARD_GRAVITY;
                    height[row][place.index()] = motion.height_mm[row].slope;
                }
            }
            (load, height)
        };
        let one = |place: Place| std::array::from_fn(|i| if i == place.index() { 1.0 } else { 0.0 });
        let (load_per_mm_wheel, height_per_mm_wheel) = per(&|p| Cause { free_mm: one(p), ..Cause::default() });
        let (load_per_mm_pad, mut height_per_mm_pad) = per(&|p| Cause { pads_mm: one(p), ..Cause::default() });
        if car.height_points.is_none() {
            for (i, row) in height_per_mm_pad.iter_mut().enumerate() {
                row[i] -= 1.0;
            }
        }
        // One kg is as many newtons as gravity has m/s²; a load further forward turns the nose up.
        let moment = |nose_down, left_up| {
            per(&|p| Cause { moment_n_mm: Some((p.axle(), nose_down, left_up)), ..Cause::default() }).0
        };
        let patch = PatchShift { forward: moment(-STANDARD_GRAVITY, 0.0), left: moment(0.0, STANDARD_GRAVITY) };
        Ok(Sensitivity { load_per_mm_wheel, height_per_mm_wheel, load_per_mm_pad, height_per_mm_pad, patch })
    }
}

/// Load that one mm of lift at each wheel moves along the diagonal pattern, N at FL, for a rigid body with its mass
/// centre on the roll axis. With bars released and wheels sprung apart it is `n_i / sum(n_j² / ke_j)`; in general, of
/// the flexibility `X` and the lift `C` that collars give their axles, `(n' C)_i / (n' X n)`.
pub fn diagonal_gain(car: &Car) -> Corners<f64> {
    let n = Vector4::from(diagonal(car).to_array());
    let s = Suspension::of(car);
    let gain = s.collar_lift.transpose() * n / n.dot(&(s.flexibility * n));
    Corners::from_array([gain[0], gain[1], gain[2], gain[3]])
}

/// The four-corner pattern: lifts at the wheels (mm) that move `along_kg` at FL along the diagonal pattern and change
/// no height at all: each corner gives way by just what its lift raises, `C L = X (a n)`. With bars released and
/// wheels sprung apart, `L_i = a n_i / ke_i`. True for any springs of a rigid body; a body in torsion has no such
/// pattern, for every change of load twists it.
pub fn lift_without_height(car: &Car, along_kg: f64) -> Corners<f64> {
    let n = Vector4::from(diagonal(car).to_array());
    let s = Suspension::of(car);
    let lift = s.free_lift(&(s.flexibility * n * along_kg * STANDARD_GRAVITY));
    Corners::from_array([lift[0], lift[1], lift[2], lift[3]])
}
