//! One strut: a spring worked through a motion ratio, its collar, its bump stop, its droop limit and what rubs on it.

use crate::friction::DryFriction;

/// Rate of a bump stop where it begins, as a multiple of the wheel rate (our choice; a rubber stop is about as stiff
/// as the spring beside it when it is first touched).
const BUMP_RATE_RATIO: f64 = 1.0;
/// Penetration at which a bump stop has doubled its mean rate, m (our choice).
const BUMP_PROGRESSION_M: f64 = 0.010;
/// Rate of the droop limit, N/m: a damper that has come to its end, stiff against any spring (our choice).
const DROOP_RATE_N_PER_M: f64 = 2.0e6;

/// A strut as the line between a wheel and the body sees it. SI units; lengths along that line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strut {
    /// Length at which the spring carries nothing, with the collar at zero, m.
    pub free_m: f64,
    /// Travel of the collar, m; positive raises the car.
    pub collar_m: f64,
    /// Lengthening at the wheel for one metre of collar travel.
    pub adjuster_ratio: f64,
    /// Rate of the spring at the spring, N/m.
    pub spring_n_per_m: f64,
    /// Spring travel / wheel travel.
    pub motion_ratio: f64,
    /// Length at which the bump stop is touched, m.
    pub bump_m: Option<f64>,
    /// Length beyond which the strut cannot droop, m.
    pub droop_m: Option<f64>,
    /// What rubs in it: seals, piston, joints.
    pub friction: DryFriction,
}

/// Energy along the line and its first two derivatives by length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct LineEnergy {
    /// Energy, J.
    pub(crate) energy_j: f64,
    /// First derivative, N: minus the force that presses wheel and body apart.
    pub(crate) slope_n: f64,
    /// Second derivative, N/m.
    pub(crate) rate_n_per_m: f64,
}

impl Strut {
    /// Moves the wheel down against the body by this much, spring, stop and limit as they are.
    pub(crate) fn longer_by(&mut self, down_m: f64) {
        self.free_m += down_m;
        for limit_m in [&mut self.bump_m, &mut self.droop_m].into_iter().flatten() {
            *limit_m += down_m;
        }
    }

    /// Rate at the wheel, N/m.
    pub fn wheel_rate_n_per_m(&self) -> f64 {
        self.spring_n_per_m * self.motion_ratio * self.motion_ratio
    }

    /// True when the bump stop is touched at this length.
    pub fn on_bump_stop(&self, length_m: f64) -> bool {
        self.bump_m.is_some_and(|limit| length_m < limit)
    }

    /// True when the strut hangs at its droop limit, or when its spring is loose, at this length.
    pub fn topped_out(&self, length_m: f64) -> bool {
        self.droop_m.is_some_and(|limit| length_m > limit) || self.compression_m(length_m) <= 0.0
    }

    /// Shortening at the wheel since the spring was free, m.
    fn compression_m(&self, length_m: f64) -> f64 {
        self.free_m + self.adjuster_ratio * self.collar_m - length_m
    }

    /// Energy, slope and rate at a length. A spring never pulls: it comes loose in its seat.
    pub(crate) fn at(&self, length_m: f64) -> LineEnergy {
        let mut sum = self.friction.at(length_m);
        let travel = self.compression_m(length_m) * self.motion_ratio;
        if travel > 0.0 {
            sum.energy_j += 0.5 * self.spring_n_per_m * travel * travel;
            sum.slope_n -= self.spring_n_per_m * travel * self.motion_ratio;
            sum.rate_n_per_m += self.wheel_rate_n_per_m();
        }
        if let Some(limit) = self.bump_m
            && length_m < limit
        {
            let rate = BUMP_RATE_RATIO * self.wheel_rate_n_per_m();
            let depth = limit - length_m;
            let progress = depth / BUMP_PROGRESSION_M;
            sum.energy_j += rate * depth * depth * (0.5 + progress / 3.0);
            sum.slope_n -= rate * depth * (1.0 + progress);
            sum.rate_n_per_m += rate * (1.0 + 2.0 * progress);
        }
        if let Some(limit) = self.droop_m
            && length_m > limit
        {
            let stretch = length_m - limit;
            sum.energy_j += 0.5 * DROOP_RATE_N_PER_M * stretch * stretch;
            sum.slope_n += DROOP_RATE_N_PER_M * stretch;
            sum.rate_n_per_m += DROOP_RATE_N_PER_M;
        }
        sum
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STRUT: Strut = Strut {
        free_m: 0.30,
        collar_m: 0.0,
        adjuster_ratio: 1.25,
        spring_n_per_m: 50_000.0,
        motion_ratio: 0.8,
        bump_m: Some(0.22),
        droop_m: Some(0.31),
        friction: DryFriction::NONE,
    };

    fn check(length_m: f64, expected_n: f64) {
        let force = -STRUT.at(length_m).slope_n;
        assert!((force - expected_n).abs() < 1e-6, "force {force} N at {length_m} m, expected {expected_n} N");
    }

    /// Wheel rate = spring rate x ratio squared (Barton & Fieldhouse, p. 179): 50 x 0.64 = 32 N/mm.
    #[test]
    fn force_follows_each_part_of_the_travel() {
        check(0.25, 1_600.0); // 50 mm of spring alone
        check(0.305, 0.0); // loose in its seat, not yet at the droop limit
        check(0.311, -2_000.0); // held at the droop limit
        check(0.21, 2_880.0 + 640.0); // 90 mm of spring and 10 mm into the stop, whose rate has doubled
    }

    /// The derivatives are those of the energy (central differences, away from the kinks).
    #[test]
    fn derivatives_are_those_of_the_energy() {
        let d = 1e-6;
        for length in [0.20, 0.215, 0.25, 0.305, 0.32] {
            let (low, here, high) = (STRUT.at(length - d), STRUT.at(length), STRUT.at(length + d));
            let slope = (high.energy_j - low.energy_j) / (2.0 * d);
            let rate = (high.slope_n - low.slope_n) / (2.0 * d);
            assert!((slope - here.slope_n).abs() < 1e-3, "slope at {length} m: {slope} and {}", here.slope_n);
            assert!((rate - here.rate_n_per_m).abs() < 1.0, "rate at {length} m: {rate} and {}", here.rate_n_per_m);
        }
    }
}
