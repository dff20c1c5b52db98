//! The linear statics of the body on its springs, tyres, bars and pads.
//!
//! Unknown are the four load changes `dF` (N) and the movements `q` of the body: heave, pitch, roll; with torsion the
//! roll of each half. With the corner body heights `c = A q`, the lift `s` that springs and pads give each corner,
//! the flexibility `X` of springs, bars and tyres, the tipping stiffness `N` (weight × height above the roll axis) and
//! the torsion `T`:
//!
//! ```text
//!   X dF + A q        = s          each corner: lift = what springs and tyres give way + rise of the body
//!   A' dF + (N - T) q = -m         the body: no resultant force or moment; m: moment from elsewhere
//! ```
//!
//! Without bars `X` is diagonal, `1 / ke`. A connected bar of rate `b` makes the springs of its axle
//! `S = diag(kw) + b [1 -1; -1 1]`; then `X = S⁻¹ + diag(1/kt)`, and a collar lifts its axle by `S⁻¹ diag(kw) L`.
//! A wheel off its pad has its first row replaced by `dF = -F` (all of its load is gone).

use crate::geometry::wheel;
use crate::{Rates, StaticsError, diagonal};
use bayhand_vehicle::{Axle, Car, Corners, Place, STANDARD_GRAVITY};
use nalgebra::{DMatrix, DVector, Dyn, LU, Matrix2, Matrix4};

/// What one millimetre does. Rows are the corner that answers, columns the corner that is moved, both in the order
/// FL, FR, RL, RR.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sensitivity {
    /// Load change per mm of lift of the free height at a wheel (collar travel × adjuster ratio), kg/mm.
    pub load_per_mm_wheel: [[f64; 4]; 4],
    /// Height change of the body at a wheel per mm of lift at a wheel, mm/mm.
    pub height_per_mm_wheel: [[f64; 4]; 4],
    /// Load change per mm of pad, kg/mm. The same as for lift unless a bar is connected.
    pub load_per_mm_pad: [[f64; 4]; 4],
    /// Change of the height over the wheel's own pad per mm of pad, mm/mm: what the body rises less the pad itself.
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
    /// The sensitivities of a car as it is entered, missing data as in [`Rates::of`].
    ///
    /// # Errors
    /// A car that cannot be, or one whose springs do not hold it upright.
    pub fn of(car: &Car) -> Result<Sensitivity, StaticsError> {
        let system = System::of(car)?;
        let solver = system.solver([false; 4]);
        let lifts = |lift: Matrix4<f64>| {
            let mut load = [[0.0; 4]; 4];
            let mut height = [[0.0; 4]; 4];
            for column in 0..4 {
                let s = lift.column(column);
                let answer =
                    system.answer(&solver, &Cause { lift_mm: [s[0], s[1], s[2], s[3]], ..Cause::default() })?;
                for row in 0..4 {
                    load[row][column] = answer.load_n[row] / STANDARD_GRAVITY;
                    height[row][column] = answer.rise_mm[row];
                }
            }
            Ok::<_, StaticsError>((load, height))
        };
        let (load_per_mm_wheel, height_per_mm_wheel) = lifts(system.collar_lift)?;
        let (load_per_mm_pad, mut height_per_mm_pad) = lifts(Matrix4::identity())?;
        for (i, row) in height_per_mm_pad.iter_mut().enumerate() {
            row[i] -= 1.0;
        }
        let patch = PatchShift {
            forward: system.patch_shift(&solver, Shift::Forward)?,
            left: system.patch_shift(&solver, Shift::Left)?,
        };
        Ok(Sensitivity { load_per_mm_wheel, height_per_mm_wheel, load_per_mm_pad, height_per_mm_pad, patch })
    }
}

/// Load that one mm of lift at each wheel moves along the diagonal pattern, N at FL: `n_i / sum(n_j² / ke_j)`, in
/// closed form for a rigid body with its bars released and its mass centre on the roll axis.
pub fn diagonal_gain(car: &Car) -> Corners<f64> {
    let n = diagonal(car);
    let ride = Rates::of(car).ride_n_per_mm;
    let flexibility: f64 = Place::ALL.into_iter().map(|p| n.at(p).powi(2) / ride.at(p)).sum();
    n.map(|n| n / flexibility)
}

/// The lifts at the wheels (mm) that move `along_kg` at FL along the diagonal pattern and change no height at all:
/// `a n_i / ke_i`. True for any springs of a rigid body with its bars released.
pub fn lift_without_height(car: &Car, along_kg: f64) -> Corners<f64> {
    let n = diagonal(car);
    let ride = Rates::of(car).ride_n_per_mm;
    Corners::from_fn(|p| along_kg * STANDARD_GRAVITY * n.at(p) / ride.at(p))
}

/// What moves the car.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Cause {
    /// Lift at each corner, mm.
    pub lift_mm: [f64; 4],
    /// Moments on the body over each axle, N mm: nose down, and left side up.
    pub moment_n_mm: [(f64, f64); 2],
    /// The load that a wheel off its pad has lost, N.
    pub lost_n: [Option<f64>; 4],
}

/// What the car does.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Answer {
    /// Load changes, N.
    pub load_n: [f64; 4],
    /// Rise of the body over each wheel, mm.
    pub rise_mm: [f64; 4],
}

#[derive(Clone, Copy)]
enum Shift {
    Forward,
    Left,
}

/// The left side of the equations, factored.
type Solver = LU<f64, Dyn, Dyn>;

/// The equations above for one car.
pub(crate) struct System {
    /// `A`: rise of the body at each wheel per movement of the body.
    rise: DMatrix<f64>,
    /// `T - N`: what holds the body against its own lean, less what tips it.
    upright: DMatrix<f64>,
    /// `X`, mm/N.
    flexibility: Matrix4<f64>,
    /// Lift at each wheel (row) per mm of lift by each collar (column), mm/mm.
    collar_lift: Matrix4<f64>,
}

impl System {
    pub(crate) fn of(car: &Car) -> Result<System, StaticsError> {
        car.validate()?;
        let rates = Rates::of(car);
        let s = &car.sprung;
        let lever_mm = s.cg_height_mm - car.roll_axis_height_mm;
        let tipping = s.mass_kg * STANDARD_GRAVITY * lever_mm;
        let to_rear = s.cg_behind_front_axle_mm / car.wheelbase_mm;
        // Heave, pitch (nose down positive) and roll (left side up positive); with torsion the roll of either half.
        let (rise, upright) = match car.torsion_nm_per_deg {
            None => {
                let rise = DMatrix::from_fn(4, 3, |row, mode| {
                    let w = wheel(car, Place::ALL[row]);
                    [1.0, -w.x, w.y][mode]
                });
                (rise, DMatrix::from_diagonal(&DVector::from_vec(vec![0.0, -tipping, -tipping])))
            }
            Some(torsion) => {
                let rise = DMatrix::from_fn(4, 4, |row, mode| {
                    let place = Place::ALL[row];
                    let w = wheel(car, place);
                    let front = place.axle() == Axle::Front;
                    [1.0, -w.x, if front { w.y } else { 0.0 }, if front { 0.0 } else { w.y }][mode]
                });
                // Nm per degree to N mm per radian.
                let twist = torsion * 1_000.0 * 1.0_f64.to_radians().recip();
                let mut upright = DMatrix::from_diagonal(&DVector::from_vec(vec![
                    0.0,
                    -tipping,
                    twist - tipping * (1.0 - to_rear),
                    twist - tipping * to_rear,
                ]));
                upright[(2, 3)] = -twist;
                upright[(3, 2)] = -twist;
                (rise, upright)
            }
        };
        let (flexibility, collar_lift) = springs(car, &rates)?;
        let system = System { rise, upright, flexibility, collar_lift };
        if system.is_upright() {
            Ok(system)
        } else {
            Err(StaticsError::TipsOver { mass_kg: s.mass_kg, height_mm: lever_mm })
        }
    }

    /// Lift at each wheel that collars give, mm, from their lift of the free heights, mm.
    pub(crate) fn lift_of_collars(&self, free_mm: [f64; 4]) -> [f64; 4] {
        let lift = self.collar_lift * nalgebra::Vector4::from(free_mm);
        [lift[0], lift[1], lift[2], lift[3]]
    }

    /// Solves the equations above.
    pub(crate) fn solve(&self, cause: &Cause) -> Result<Answer, StaticsError> {
        self.answer(&self.solver(cause.lost_n.map(|lost| lost.is_some())), cause)
    }

    /// The left side of the equations, factored; `off` says which wheels are off their pads.
    fn solver(&self, off: [bool; 4]) -> Solver {
        let modes = self.rise.ncols();
        let mut equations = DMatrix::zeros(4 + modes, 4 + modes);
        for corner in 0..4 {
            if off[corner] {
                equations[(corner, corner)] = 1.0;
            } else {
                for other in 0..4 {
                    equations[(corner, other)] = self.flexibility[(corner, other)];
                }
                for mode in 0..modes {
                    equations[(corner, 4 + mode)] = self.rise[(corner, mode)];
                }
            }
        }
        for mode in 0..modes {
            for corner in 0..4 {
                equations[(4 + mode, corner)] = self.rise[(corner, mode)];
            }
            for other in 0..modes {
                equations[(4 + mode, 4 + other)] = -self.upright[(mode, other)];
            }
        }
        equations.lu()
    }

    /// The answer to a cause whose lost wheels are those of the solver.
    fn answer(&self, solver: &Solver, cause: &Cause) -> Result<Answer, StaticsError> {
        let modes = self.rise.ncols();
        let mut right = DVector::zeros(4 + modes);
        for corner in 0..4 {
            right[corner] = cause.lost_n[corner].map_or(cause.lift_mm[corner], |lost_n| -lost_n);
        }
        for (axle, (pitch, roll)) in cause.moment_n_mm.into_iter().enumerate() {
            right[5] -= pitch;
            right[if modes == 4 { 6 + axle } else { 6 }] -= roll;
        }
        let Some(found) = solver.solve(&right) else { return Err(StaticsError::TooFewWheels) };
        if !found.iter().all(|v| v.is_finite()) {
            return Err(StaticsError::TooFewWheels);
        }
        let rise = &self.rise * found.rows(4, modes);
        Ok(Answer { load_n: std::array::from_fn(|i| found[i]), rise_mm: std::array::from_fn(|i| rise[i]) })
    }

    /// Loads (kg) per mm that one patch is off its place and per kg on it: the load there has another lever.
    fn patch_shift(&self, solver: &Solver, shift: Shift) -> Result<[[f64; 4]; 4], StaticsError> {
        let mut loads = [[0.0; 4]; 4];
        for place in Place::ALL {
            let mut cause = Cause::default();
            // One kg is as many newtons as gravity has m/s²; a load further forward turns the nose up.
            cause.moment_n_mm[place.axle() as usize] = match shift {
                Shift::Forward => (-STANDARD_GRAVITY, 0.0),
                Shift::Left => (0.0, STANDARD_GRAVITY),
            };
            let answer = self.answer(solver, &cause)?;
            for (row, load_n) in loads.iter_mut().zip(answer.load_n) {
                row[place.index()] = load_n / STANDARD_GRAVITY;
            }
        }
        Ok(loads)
    }

    /// True when the body resists every movement: its stiffness on the springs, less what tips it, is positive.
    fn is_upright(&self) -> bool {
        let Some(stiffness) = self.flexibility.try_inverse() else { return false };
        let stiffness = DMatrix::from_fn(4, 4, |i, j| stiffness[(i, j)]);
        (self.rise.transpose() * stiffness * &self.rise + &self.upright).cholesky().is_some()
    }
}

/// Flexibility of springs, bars and tyres, and the lift that collars give through them.
fn springs(car: &Car, rates: &Rates) -> Result<(Matrix4<f64>, Matrix4<f64>), StaticsError> {
    let mut flexibility = Matrix4::zeros();
    let mut collar_lift = Matrix4::zeros();
    for (first, bar) in [(0, car.bars.front), (2, car.bars.rear)] {
        let wheel = rates.wheel_n_per_mm.to_array();
        let rate = bar.map_or(0.0, |b| b.n_per_mm);
        let axle = Matrix2::new(wheel[first] + rate, -rate, -rate, wheel[first + 1] + rate);
        // A sum of a positive diagonal and a bar that only adds: it has an inverse for every valid car.
        let Some(give) = axle.try_inverse() else { return Err(StaticsError::TooFewWheels) };
        for i in 0..2 {
            for j in 0..2 {
                let tyre = if i == j { 1.0 / car.corners.at(Place::ALL[first + i]).tyre_n_per_mm } else { 0.0 };
                flexibility[(first + i, first + j)] = give[(i, j)] + tyre;
                collar_lift[(first + i, first + j)] = give[(i, j)] * wheel[first + j];
            }
        }
    }
    Ok((flexibility, collar_lift))
}
