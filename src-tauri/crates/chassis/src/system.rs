//! The equations of a car at rest, for any given set of contacts.
//!
//! Everything counts from a reading in which all forces balance. Unknown are the movements `q` of the body
//! ([`crate::body`]) and the growth `u` of each spring ([`crate::suspension`]); together `z`. A wheel's centre rises by
//! `w = A q - M⁻¹ u`, its pad by `p`. Rest is the least of the energy
//!
//! ```text
//!   E = sum kt (p - w)² / 2              tyres on their pads
//!     + sum ks (MR L - u)² / 2           springs; L: lift of the free height at the wheel by the collar
//!     + sum kb (e left - e right)² / 2   bars, e = M⁻¹ u
//!     + q' (T - N) q / 2                 torsion, less the weight that moves out as the body leans
//! ```
//!
//! so `H z = g` with `H` its second derivative. What is not on its spring and tyre alone changes terms of it:
//!
//! - a wheel off its pad has lost its load `F0`: its tyre's term becomes `-F0 (p - w)`;
//! - a spring loose in its seats has lost its load `f0`: its term becomes `f0 u`;
//! - a bump stop adds `kbump (u + gap)² / 2`;
//! - at the droop limit, or with its coils touching, `u` is given and the stop takes whatever force that needs.
//!
//! `H` positive definite means that the body stands by itself; when it is not, the car tips.

use crate::StaticsError;
use crate::body::Body;
use crate::suspension::Suspension;
use bayhand_vehicle::{Axle, Car};
use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

/// What moves the car from its reading.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Cause {
    /// Lift of the free height at each wheel by its collar, mm.
    pub(crate) free_mm: [f64; 4],
    /// Rise of each pad, mm.
    pub(crate) pads_mm: [f64; 4],
    /// Force of each axle's bar that presses its left wheel down and its right wheel up, N.
    pub(crate) bar_n: [f64; 2],
    /// Moment on the body over an axle, N mm: nose down, left side up.
    pub(crate) moment_n_mm: Option<(Axle, f64, f64)>,
    /// Force on each movement of the body, N per mm, N mm per mm/m.
    pub(crate) body_n: [f64; 4],
}

/// What a corner stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Contact {
    /// The tyre is on its pad.
    pub(crate) down: bool,
    /// The spring is held between its seats.
    pub(crate) seated: bool,
    /// The bump stop is pressed.
    pub(crate) bump: bool,
    /// The end at which the spring's length is given.
    pub(crate) end: Option<End>,
}

/// Where a strut cannot go further.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum End {
    /// At the droop limit.
    Droop,
    /// With its coils touching.
    Coils,
}

impl Contact {
    /// On its spring and tyre alone.
    pub(crate) const ORDINARY: Contact = Contact { down: true, seated: true, bump: false, end: None };
}

/// What is known of a corner in the reading; travels along the spring, mm.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Before {
    /// Load at the pad, N.
    pub(crate) load_n: f64,
    /// Load of the spring along its line, N, when it may come loose: a droop limit then holds its wheel.
    pub(crate) loose_from_n: Option<f64>,
    /// Travel left to the bump stop and the rate of the stop, N/mm, when both are known.
    pub(crate) bump: Option<(f64, f64)>,
    /// Growth left to the droop limit.
    pub(crate) droop_mm: Option<f64>,
    /// Shortening left until the coils touch.
    pub(crate) coils_mm: Option<f64>,
}

/// A value that grows in proportion as the cause is brought on: `start + share x slope`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Ramp {
    pub(crate) start: f64,
    pub(crate) slope: f64,
}

impl Ramp {
    pub(crate) fn at(&self, share: f64) -> f64 {
        self.start + share * self.slope
    }
}

/// A car's body and suspension.
pub(crate) struct System {
    pub(crate) body: Body,
    pub(crate) suspension: Suspension,
}

impl System {
    /// # Errors
    /// A car that cannot be, or one whose springs do not hold it upright.
    pub(crate) fn of(car: &Car) -> Result<System, StaticsError> {
        car.validate()?;
        let system = System { body: Body::of(car), suspension: Suspension::of(car) };
        if system.with(&[Contact::ORDINARY; 4], &[Before::default(); 4]).is_some() {
            Ok(system)
        } else {
            Err(StaticsError::TipsOver { mass_kg: car.sprung.mass_kg, height_mm: system.body.lever_mm })
        }
    }

    /// The equations with these contacts, factored; none when the body would not stand on them.
    pub(crate) fn with<'a>(&'a self, contacts: &'a [Contact; 4], before: &'a [Before; 4]) -> Option<Equations<'a>> {
        let modes = self.body.modes();
        let s = &self.suspension;
        let mut stiffness = DMatrix::zeros(modes + 4, modes + 4);
        stiffness.view_mut((0, 0), (modes, modes)).copy_from(&self.body.upright);
        for (i, contact) in contacts.iter().enumerate() {
            if contact.down {
                let press = self.press(i);
                stiffness.ger(s.tyre_n_per_mm[i], &press, &press, 1.0);
            }
            if contact.seated {
                stiffness[(modes + i, modes + i)] += s.spring_n_per_mm[i];
            }
            if let Some((_, rate)) = before[i].bump.filter(|_| contact.bump) {
                stiffness[(modes + i, modes + i)] += rate;
            }
        }
        for (axle, rate) in s.bar_n_per_mm.into_iter().enumerate() {
            let wind = self.wind(axle);
            stiffness.ger(rate, &wind, &wind, 1.0);
        }
        let mut free = stiffness.clone();
        for (i, _) in contacts.iter().enumerate().filter(|(_, c)| c.end.is_some()) {
            free.row_mut(modes + i).fill(0.0);
            free.column_mut(modes + i).fill(0.0);
            free[(modes + i, modes + i)] = s.spring_n_per_mm[i];
        }
        Some(Equations { system: self, contacts, before, stiffness, factor: free.cholesky()? })
    }

    /// How much a tyre is pressed in per unknown: `-w` per `z`.
    fn press(&self, corner: usize) -> DVector<f64> {
        let modes = self.body.modes();
        DVector::from_fn(modes + 4, |k, _| {
            if k < modes {
                -self.body.at_wheels[(corner, k)]
            } else {
                self.suspension.wheel_per_spring[(corner, k - modes)]
            }
        })
    }

    /// How much the left wheel of an axle drops more than the right one per unknown.
    fn wind(&self, axle: usize) -> DVector<f64> {
        let modes = self.body.modes();
        let m = &self.suspension.wheel_per_spring;
        DVector::from_fn(modes + 4, |k, _| {
            if k < modes { 0.0 } else { m[(2 * axle, k - modes)] - m[(2 * axle + 1, k - modes)] }
        })
    }
}

/// `H`, factored, for one set of contacts.
pub(crate) struct Equations<'a> {
    system: &'a System,
    contacts: &'a [Contact; 4],
    before: &'a [Before; 4],
    stiffness: DMatrix<f64>,
    factor: Cholesky<f64, Dyn>,
}

/// How the car moves as a cause is brought on with one set of contacts: all values as [`Ramp`]s.
pub(crate) struct Motion {
    /// Load at each pad, or what it would be with the tyre still on it, N.
    pub(crate) load_n: [Ramp; 4],
    /// Force of each spring, or what it would be still seated, less its force in the reading, N.
    pub(crate) spring_n: [Ramp; 4],
    /// Growth of each spring, mm.
    pub(crate) growth_mm: [Ramp; 4],
    /// Shortening of each spring by collar and movement together, mm.
    pub(crate) shortening_mm: [Ramp; 4],
    /// Force with which an end of the travel holds a spring from growing, N; negative: from shortening.
    pub(crate) held_n: [Ramp; 4],
    /// Rise of the body at each point where a height is measured, mm.
    pub(crate) height_mm: [Ramp; 4],
    /// Movements of the body; the fourth is zero for a rigid one.
    pub(crate) movement: [Ramp; 4],
}

impl Equations<'_> {
    /// Solves for a cause.
    pub(crate) fn motion(&self, cause: &Cause) -> Motion {
        let System { body, suspension: s } = self.system;
        let modes = body.modes();
        let (mut steady, mut growing) = (DVector::zeros(modes + 4), DVector::zeros(modes + 4));
        let seat_mm: [f64; 4] = std::array::from_fn(|i| s.ratio[i] * cause.free_mm[i]);
        for (i, (contact, before)) in self.contacts.iter().zip(self.before).enumerate() {
            let press = self.system.press(i);
            if contact.down {
                growing.axpy(-s.tyre_n_per_mm[i] * cause.pads_mm[i], &press, 1.0);
            } else {
                steady.axpy(before.load_n, &press, 1.0);
            }
            if contact.seated {
                growing[modes + i] += s.spring_n_per_mm[i] * seat_mm[i];
            } else {
                steady[modes + i] -= before.loose_from_n.unwrap_or(0.0);
            }
            if let Some((gap_mm, rate)) = before.bump.filter(|_| contact.bump) {
                steady[modes + i] -= rate * gap_mm;
            }
        }
        for (axle, force_n) in cause.bar_n.into_iter().enumerate() {
            growing.axpy(force_n, &self.system.wind(axle), 1.0);
        }
        if let Some((axle, nose_down, left_up)) = cause.moment_n_mm {
            for (mode, force) in body.push(axle, nose_down, left_up).into_iter().enumerate() {
                growing[mode] += force;
            }
        }
        for (mode, force) in cause.body_n.into_iter().enumerate().take(modes) {
            growing[mode] += force;
        }
        let given = self.contacts.iter().zip(self.before).zip(seat_mm).map(|((contact, before), seat)| {
            contact.end.map(|end| match end {
                End::Droop => (before.droop_mm.unwrap_or(0.0), 0.0),
                End::Coils => (-before.coils_mm.unwrap_or(0.0), seat),
            })
        });
        let given: Vec<Option<(f64, f64)>> = given.collect();
        let start = self.solve(&steady, given.iter().map(|g| g.map(|(start, _)| start)));
        let slope = self.solve(&growing, given.iter().map(|g| g.map(|(_, slope)| slope)));
        let held = (&steady - &self.stiffness * &start, &growing - &self.stiffness * &slope);
        let both = |of: &dyn Fn(&DVector<f64>) -> f64| Ramp { start: of(&start), slope: of(&slope) };
        let pressed = |i: usize| {
            let press = self.system.press(i);
            let by = both(&|z: &DVector<f64>| press.dot(z));
            Ramp { slope: by.slope + cause.pads_mm[i], ..by }
        };
        let growth_mm: [Ramp; 4] = std::array::from_fn(|i| both(&|z: &DVector<f64>| z[modes + i]));
        let shortening_mm =
            std::array::from_fn(|i| Ramp { start: -growth_mm[i].start, slope: seat_mm[i] - growth_mm[i].slope });
        Motion {
            load_n: std::array::from_fn(|i| {
                let (rate, by) = (s.tyre_n_per_mm[i], pressed(i));
                Ramp { start: self.before[i].load_n + rate * by.start, slope: rate * by.slope }
            }),
            spring_n: std::array::from_fn(|i| {
                let (rate, by): (f64, Ramp) = (s.spring_n_per_mm[i], shortening_mm[i]);
                Ramp { start: rate * by.start, slope: rate * by.slope }
            }),
            held_n: std::array::from_fn(|i| Ramp { start: held.0[modes + i], slope: held.1[modes + i] }),
            height_mm: std::array::from_fn(|i| {
                both(&|z: &DVector<f64>| (0..modes).map(|k| body.at_height_points[(i, k)] * z[k]).sum())
            }),
            movement: std::array::from_fn(|k| both(&|z: &DVector<f64>| if k < modes { z[k] } else { 0.0 })),
            growth_mm,
            shortening_mm,
        }
    }

    /// `H z = g` with the springs whose growth is given.
    fn solve(&self, forces: &DVector<f64>, given: impl Iterator<Item = Option<f64>>) -> DVector<f64> {
        let modes = self.system.body.modes();
        let mut right = forces.clone();
        let given: Vec<(usize, f64)> =
            given.enumerate().filter_map(|(i, value)| value.map(|value| (modes + i, value))).collect();
        for &(k, value) in &given {
            right.axpy(-value, &self.stiffness.column(k), 1.0);
        }
        for &(k, value) in &given {
            right[k] = value * self.system.suspension.spring_n_per_mm[k - modes];
        }
        self.factor.solve(&right)
    }
}
