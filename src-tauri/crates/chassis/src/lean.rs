//! What a body that leans much does beyond the linear equations.
//!
//! With the direction that is up in the body, `(a, b, n)`, `a = sin pitch`, `b = cos pitch sin roll`,
//! `n = cos pitch cos roll = sqrt(1 - a² - b²)`, a point at `(x, y, z)` from the roll axis below the mass centre stands
//! at
//!
//! ```text
//!   heave - x a + y b + z n
//! ```
//!
//! whatever the angles (rotation by pitch, then roll). Counted in `a` and `b`, then, springs and tyres are exactly
//! linear, and only three things are not: the weight's energy `W h n`, the torsion `T (roll front - roll rear)² / 2`
//! with `roll = asin(b / sqrt(1 - a²))`, and the term `z n` in a measured height. They grow with the third and second
//! power of the lean: nothing to see on a level car, some hundredths of a kg and mm on one that stands on a diagonal.
//!
//! How a car leans in a reading is taken from its heights, left against right: the points at which they are measured
//! are taken to be as high on the one side of the body as on the other. Pitch is counted from the reading, for a
//! body's rake by design cannot be told from its pitch.

use crate::body::Body;
use crate::geometry::track_mm;
use crate::predict::From;
use bayhand_vehicle::{Axle, Car, Place, STANDARD_GRAVITY};
use nalgebra::DVector;

/// Movements are counted in mm per metre.
const PER_MM_PER_M: f64 = 1e-3;

/// The lean of a car in a reading, and what its body weighs.
pub(crate) struct Lean {
    /// `b` of the front and rear half in the reading.
    roll: [f64; 2],
    /// `W h` of the halves, N mm.
    tipping_n_mm: [f64; 2],
    /// `T`, N mm per radian; none: rigid.
    torsion_n_mm: Option<f64>,
    /// Share of the rear half's roll in each measured height.
    rear_share: [f64; 4],
    /// Height of each measuring point over the roll axis, mm.
    over_axis_mm: [f64; 4],
}

impl Lean {
    pub(crate) fn of(car: &Car, from: &From) -> Lean {
        let s = &car.sprung;
        let to_rear = s.cg_behind_front_axle_mm / car.wheelbase_mm;
        let tipping = s.mass_kg * STANDARD_GRAVITY * (s.cg_height_mm - car.roll_axis_height_mm);
        let over_floor_mm = |place: Place| {
            let pad_mm = if car.height_points.is_none() { *from.pads_mm.at(place) } else { 0.0 };
            from.heights_mm.at(place) + pad_mm
        };
        let leans = |left: Place, right: Place, axle: Axle| {
            let apart_mm = match &car.height_points {
                None => track_mm(car, axle),
                Some(points) => points.at(left).left_mm - points.at(right).left_mm,
            };
            // Points one above the other on the middle plane, or crossed over, say nothing of roll.
            if apart_mm >= 100.0 {
                ((over_floor_mm(left) - over_floor_mm(right)) / apart_mm).clamp(-0.5, 0.5)
            } else {
                0.0
            }
        };
        let axles = [leans(Place::Fl, Place::Fr, Axle::Front), leans(Place::Rl, Place::Rr, Axle::Rear)];
        let rigid = (axles[0] + axles[1]) / 2.0;
        Lean {
            roll: if car.torsion_nm_per_deg.is_some() { axles } else { [rigid; 2] },
            tipping_n_mm: [tipping * (1.0 - to_rear), tipping * to_rear],
            torsion_n_mm: car.torsion_nm_per_deg.map(|t| t * 1_000.0 / 1.0_f64.to_radians()),
            rear_share: Place::ALL.map(|p| match &car.height_points {
                None => f64::from(p.axle() == Axle::Rear),
                Some(points) => (points.at(p).behind_front_axle_mm / car.wheelbase_mm).clamp(0.0, 1.0),
            }),
            over_axis_mm: Place::ALL.map(|p| over_floor_mm(p) - car.roll_axis_height_mm),
        }
    }

    /// Force on the movements that the linear equations leave out once the body has moved by `q`: the linear change of
    /// the energy's slope less the true one.
    pub(crate) fn left_out(&self, body: &Body, q: &DVector<f64>) -> DVector<f64> {
        let now = self.slope(q);
        let before = self.slope(&DVector::zeros(q.len()));
        &body.upright * q - (now - before)
    }

    /// What `z n` adds to each measured height once the body has moved by `q`, mm.
    pub(crate) fn height_mm(&self, q: &DVector<f64>) -> [f64; 4] {
        let upright = |q: Option<&DVector<f64>>, i: usize| {
            let (a, [front, rear]) = self.up(q);
            let b = front + self.rear_share[i] * (rear - front);
            (1.0 - a * a - b * b).sqrt()
        };
        std::array::from_fn(|i| self.over_axis_mm[i] * (upright(Some(q), i) - upright(None, i)))
    }

    /// `a`, and `b` of the halves, after the body has moved by `q`; none: in the reading.
    fn up(&self, q: Option<&DVector<f64>>) -> (f64, [f64; 2]) {
        let moved = |mode: usize| q.map_or(0.0, |q| q[mode] * PER_MM_PER_M);
        let last = q.map_or(2, |q| q.len() - 1);
        // A body that has turned further lies on its side; the bound keeps the roots real on the way to saying so.
        let bound = |v: f64| v.clamp(-0.6, 0.6);
        (bound(moved(1)), [bound(self.roll[0] + moved(2)), bound(self.roll[1] + moved(last))])
    }

    /// Slope of the energy of weight and torsion along the movements, N mm per mm/m.
    fn slope(&self, q: &DVector<f64>) -> DVector<f64> {
        let (a, b) = self.up(Some(q));
        let mut slope = DVector::zeros(q.len());
        let last = q.len() - 1;
        let roll = b.map(|b| (b / (1.0 - a * a).sqrt()).asin());
        for (half, mode) in [(0, 2), (1, last)] {
            let n = (1.0 - a * a - b[half] * b[half]).sqrt();
            slope[1] -= self.tipping_n_mm[half] * a / n * PER_MM_PER_M;
            slope[mode] -= self.tipping_n_mm[half] * b[half] / n * PER_MM_PER_M;
            if let Some(torsion) = self.torsion_n_mm {
                let moment = torsion * (roll[half] - roll[1 - half]);
                slope[mode] += moment / n * PER_MM_PER_M;
                slope[1] += moment * a * b[half] / (n * (1.0 - a * a)) * PER_MM_PER_M;
            }
        }
        slope
    }
}
