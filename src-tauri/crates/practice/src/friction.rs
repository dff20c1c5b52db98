//! Dry friction along a line: it gives a little before it slides, and where it slid to it stays.
//!
//! An elastic and a sliding part in series (Jenkins' element): a spring to an anchor that is dragged along as soon as
//! the spring is asked for more than the friction can hold. Over one quasi-static move the element has an energy, that
//! of the spring up to the limit and of the constant limit beyond, so that rest under friction is a least of energy
//! like any other.

use crate::strut::LineEnergy;

/// Friction along a line, in the state in which its last move left it. SI units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DryFriction {
    /// Most that it holds either way, N.
    pub limit_n: f64,
    /// Rate until it slides, N/m.
    pub rate_n_per_m: f64,
    /// Length at which it holds nothing, m.
    pub anchor_m: f64,
}

impl DryFriction {
    /// Nothing rubs.
    pub const NONE: DryFriction = DryFriction { limit_n: 0.0, rate_n_per_m: 0.0, anchor_m: 0.0 };

    /// Force at a length, N; positive presses the ends apart.
    pub fn force_n(&self, length_m: f64) -> f64 {
        (self.rate_n_per_m * (self.anchor_m - length_m)).clamp(-self.limit_n, self.limit_n)
    }

    /// The same friction after the line came to this length: where it slid, its anchor came along.
    #[must_use]
    pub fn moved_to(&self, length_m: f64) -> DryFriction {
        let asked_n = self.rate_n_per_m * (self.anchor_m - length_m);
        if asked_n.abs() <= self.limit_n {
            return *self;
        }
        DryFriction { anchor_m: length_m + self.force_n(length_m) / self.rate_n_per_m, ..*self }
    }

    /// Energy of the coming move, with its slope and rate.
    pub(crate) fn at(&self, length_m: f64) -> LineEnergy {
        let stretch_m = length_m - self.anchor_m;
        let asked_n = self.rate_n_per_m * stretch_m;
        if asked_n.abs() <= self.limit_n {
            let energy_j = 0.5 * asked_n * stretch_m;
            return LineEnergy { energy_j, slope_n: asked_n, rate_n_per_m: self.rate_n_per_m };
        }
        let until_m = self.limit_n / self.rate_n_per_m;
        LineEnergy {
            energy_j: self.limit_n * (stretch_m.abs() - 0.5 * until_m),
            slope_n: self.limit_n * stretch_m.signum(),
            rate_n_per_m: 0.0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const FRICTION: DryFriction = DryFriction { limit_n: 20.0, rate_n_per_m: 1e5, anchor_m: 0.3 };

    /// Up to 0.2 mm the spring gives, then it slides at 20 N; moved back by 0.4 mm it slides the other way.
    #[test]
    fn friction_gives_then_slides_then_turns_round() {
        let check = |friction: DryFriction, length_m: f64, expected_n: f64| {
            let force_n = friction.force_n(length_m);
            assert!((force_n - expected_n).abs() < 1e-9, "{force_n} N at {length_m} m, expected {expected_n} N");
        };
        check(FRICTION, 0.2999, 10.0);
        check(FRICTION, 0.29, 20.0);
        let slid = FRICTION.moved_to(0.29);
        check(slid, 0.29, 20.0);
        check(slid, 0.2902, 0.0);
        check(slid, 0.2904, -20.0);
        assert_eq!(FRICTION.moved_to(0.2999), FRICTION, "what only gives goes back");
    }

    /// Slope and rate are the derivatives of the energy (central differences, away from the kinks).
    #[test]
    fn derivatives_are_those_of_the_energy() {
        let d = 1e-7;
        for length_m in [0.29, 0.2999, 0.30005, 0.31] {
            let (low, here, high) = (FRICTION.at(length_m - d), FRICTION.at(length_m), FRICTION.at(length_m + d));
            let slope_n = (high.energy_j - low.energy_j) / (2.0 * d);
            let rate = (high.slope_n - low.slope_n) / (2.0 * d);
            assert!((slope_n - here.slope_n).abs() < 1e-5, "slope at {length_m} m: {slope_n} and {}", here.slope_n);
            assert!((rate - here.rate_n_per_m).abs() < 1.0, "rate at {length_m} m: {rate}");
            assert!((here.slope_n + FRICTION.force_n(length_m)).abs() < 1e-9, "force is minus the slope");
        }
    }

    /// Where nothing rubs nothing is held, and no number is undefined.
    #[test]
    fn no_friction_holds_nothing() {
        let none = DryFriction::NONE;
        assert_eq!(none.force_n(0.3), 0.0);
        assert_eq!(none.at(0.3), LineEnergy { energy_j: 0.0, slope_n: 0.0, rate_n_per_m: 0.0 });
        assert_eq!(none.moved_to(0.4), none);
    }
}
