//! The law of propagation of uncertainty for any measurement equation (JCGM 100:2008, the GUM).
//!
//! Inputs are independent. Sensitivities are taken as the GUM does it by numbers (5.1.3, note 2): the change of the
//! result when one input moves by its standard uncertainty, half of the way from minus to plus.

use statrs::distribution::{Continuous, ContinuousCDF, Normal, StudentsT};

/// One input quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Best estimate.
    pub value: f64,
    /// Standard uncertainty, in the same unit.
    pub standard: f64,
    /// Degrees of freedom of the standard uncertainty; infinite when it is taken as exactly known.
    pub dof: f64,
}

/// A result with its uncertainty.
#[derive(Clone, Debug, PartialEq)]
pub struct Propagated {
    /// The equation at the best estimates.
    pub value: f64,
    /// Contribution of each input, `c_i u(x_i)`, with its sign (5.1.3).
    pub contributions: Vec<f64>,
    /// Combined standard uncertainty of first order (5.1.2, equation 10).
    pub standard: f64,
    /// The same with the terms of next higher order (note to 5.1.2).
    pub standard_second_order: f64,
    /// Effective degrees of freedom (G.4.1, the formula of Welch and Satterthwaite).
    pub dof: f64,
}

/// Propagates independent inputs through an equation.
///
/// The higher-order terms are `sum over i, j of [ f_ij² / 2 + f_i f_ijj ] u_i² u_j²`, by central differences of half a
/// standard uncertainty.
pub fn propagate(equation: impl Fn(&[f64]) -> f64, inputs: &[Input]) -> Propagated {
    let at = |moved: &[(usize, f64)]| {
        let mut x: Vec<f64> = inputs.iter().map(|i| i.value).collect();
        for &(i, sigmas) in moved {
            x[i] += sigmas * inputs[i].standard;
        }
        equation(&x)
    };
    let value = at(&[]);
    let moving: Vec<usize> = (0..inputs.len()).filter(|&i| inputs[i].standard > 0.0).collect();
    // In units of one sigma each, so that u_i is one.
    let mut contributions = vec![0.0; inputs.len()];
    for &i in &moving {
        contributions[i] = (at(&[(i, 1.0)]) - at(&[(i, -1.0)])) / 2.0;
    }
    let variance: f64 = contributions.iter().map(|c| c * c).sum();
    const H: f64 = 0.5;
    let mut higher = 0.0;
    for &i in &moving {
        for &j in &moving {
            let (second, third) = if i == j {
                let (far, near) = (at(&[(i, 2.0 * H)]), at(&[(i, H)]));
                let (back, back_far) = (at(&[(i, -H)]), at(&[(i, -2.0 * H)]));
                ((near - 2.0 * value + back) / (H * H), (far - 2.0 * near + 2.0 * back - back_far) / (2.0 * H.powi(3)))
            } else {
                let corner = |a: f64, b: f64| at(&[(i, a * H), (j, b * H)]);
                let (pp, pm, mp, mm) = (corner(1.0, 1.0), corner(1.0, -1.0), corner(-1.0, 1.0), corner(-1.0, -1.0));
                let curve = |side: f64, plus: f64, minus: f64| (plus - 2.0 * at(&[(i, side * H)]) + minus) / (H * H);
                ((pp - pm - mp + mm) / (4.0 * H * H), (curve(1.0, pp, pm) - curve(-1.0, mp, mm)) / (2.0 * H))
            };
            higher += second * second / 2.0 + contributions[i] * third;
        }
    }
    let dof = effective_dof(contributions.iter().zip(inputs).map(|(c, i)| (*c, i.dof)));
    Propagated {
        value,
        standard: variance.sqrt(),
        standard_second_order: (variance + higher).max(0.0).sqrt(),
        contributions,
        dof,
    }
}

/// Effective degrees of freedom of a sum of contributions, each with its own: `u_c⁴ / sum(u_i⁴ / dof_i)` (G.4.1).
/// Infinite when only contributions that are exactly known count.
pub fn effective_dof(contributions: impl Iterator<Item = (f64, f64)>) -> f64 {
    let (mut variance, mut fourth) = (0.0, 0.0);
    for (contribution, dof) in contributions {
        variance += contribution * contribution;
        fourth += contribution.powi(4) / dof;
    }
    if fourth > 0.0 { variance * variance / fourth } else { f64::INFINITY }
}

/// Coverage factor for a level of confidence (0 to 1) at these degrees of freedom, truncated to the next whole number
/// below as in G.4.1, note 1: the quantile of Student's t.
pub fn coverage_factor(confidence: f64, dof: f64) -> f64 {
    let dof = dof.floor().max(1.0);
    let upper = 0.5 + confidence.clamp(0.0, 1.0) / 2.0;
    // Beyond ten million degrees of freedom Student's t is normal to seven figures.
    if dof > 1e7 {
        return Normal::standard().inverse_cdf(upper);
    }
    let Ok(t) = StudentsT::new(0.0, 1.0, dof) else { return f64::INFINITY };
    // The library's inverse is good to three figures with many degrees of freedom; its own cumulative is good to all.
    let mut k = t.inverse_cdf(upper);
    for _ in 0..3 {
        let step = (t.cdf(k) - upper) / t.pdf(k);
        if step.is_finite() {
            k -= step;
        }
    }
    k
}
