//! The preload of an anti-roll bar, from what changes when its links are connected.
//!
//! A bar that presses the left wheel down by `B` and the right one up by as much moves loads and heights in
//! proportion: `y = g B`, with `y` the four load changes and the four height changes and `g` from the equations of the
//! car without this bar ([`crate::system`]). Weighted least squares on all eight (JCGM 100:2008, H.3 does the same on
//! a line) give
//!
//! ```text
//!   B = g' V⁻¹ y / (g' V⁻¹ g)        u(B)² = 1 / (g' V⁻¹ g)        chi² = (y - g B)' V⁻¹ (y - g B), 7 degrees
//! ```
//!
//! Friction in the struts moves load along nearly the same pattern as a bar does; `V` carries it, and the heights then
//! decide most. To take the preload out, the links must give way by what the bar is wound up, `B / kb`, and by what
//! the axle has given way to it: the left wheel's drop out of the body less the right one's.

use crate::error::within;
use crate::predict::From;
use crate::system::{Before, Cause, Contact, System};
use crate::{COVERAGE, StaticsError};
use bayhand_vehicle::{Axle, Bars, Car, Lengthening, Link, Place, STANDARD_GRAVITY, Turning};
use nalgebra::{SMatrix, SVector};

/// What connecting the links of an axle did.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LinkPreload {
    /// Force at the left wheel, N, positive when the bar presses it down: [`bayhand_vehicle::Bar::preload_n`].
    pub preload_n: f64,
    /// Its expanded uncertainty, N (k = 2).
    pub expanded_n: f64,
    /// What is left unexplained, as chi-square with seven degrees of freedom; far above 14, more than a link changed.
    pub chi2: f64,
    /// Drop of the left wheel out of the body less that of the right one for one newton of preload, mm/N.
    pub gives_mm_per_n: f64,
}

/// How to turn a link so that the bar carries nothing on the car as it stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LinkTurns {
    /// By how much the bar's ends are off at the wheels, mm, positive when they press the left wheel down.
    pub misfit_mm: f64,
    /// Change of the length of the left link, mm; on the right link the opposite does the same.
    pub left_longer_mm: f64,
    /// Turns of one link's middle piece; never negative.
    pub turns: f64,
    /// Their expanded uncertainty (k = 2).
    pub expanded_turns: f64,
    /// Which way the left link turns, seen from the end whose thread is described.
    pub left: Turning,
    /// Which way the right link turns when it is that one which is adjusted.
    pub right: Turning,
}

/// The preload of an axle's bar from a reading with its links released and one with them connected, at the same
/// collars and on the same pads. The other axle's bar stands in `car` if it is connected in both. `difference_kg2` is
/// the covariance of the difference of two such readings' loads ([`crate::Spread::difference_kg2`]), `height_mm` one
/// height reading's spread.
///
/// # Errors
/// A car or readings that cannot be, collars or pads that were moved between them, a covariance that is none.
pub fn link_preload(
    car: &Car,
    axle: Axle,
    released: &From,
    connected: &From,
    difference_kg2: &[[f64; 4]; 4],
    height_mm: f64,
) -> Result<LinkPreload, StaticsError> {
    released.check("released")?;
    connected.check("connected")?;
    within("height_mm", height_mm, 1e-3, 100.0, "from 0.001 to 100 mm")?;
    for (what, was, is) in
        [("collar_mm", &released.collar_mm, &connected.collar_mm), ("pads_mm", &released.pads_mm, &connected.pads_mm)]
    {
        for (place, v) in was.iter() {
            let at = format!("connected.{what}.{}", place.code());
            within(&at, *is.at(place), *v, *v, "the same as with the links released")?;
        }
    }
    let bars = match axle {
        Axle::Front => Bars { front: None, ..car.bars },
        Axle::Rear => Bars { rear: None, ..car.bars },
    };
    let system = System::of(&Car { bars, ..*car })?;
    let before = [Before::default(); 4];
    let Some(equations) = system.with(&[Contact::ORDINARY; 4], &before) else { return Err(StaticsError::TooFewWheels) };
    let first = 2 * (axle as usize);
    let mut cause = Cause::default();
    cause.bar_n[axle as usize] = 1.0;
    let motion = equations.motion(&cause);
    let growth = nalgebra::Vector4::from_fn(|i, _| motion.growth_mm[i].slope);
    let drop = system.suspension.wheel_per_spring * growth;

    let mut per_n = SVector::<f64, 8>::zeros();
    let mut changed = SVector::<f64, 8>::zeros();
    let mut covariance = SMatrix::<f64, 8, 8>::zeros();
    for place in Place::ALL {
        let i = place.index();
        per_n[i] = motion.load_n[i].slope / STANDARD_GRAVITY;
        per_n[4 + i] = motion.height_mm[i].slope;
        changed[i] = connected.loads_kg.at(place) - released.loads_kg.at(place);
        changed[4 + i] = connected.heights_mm.at(place) - released.heights_mm.at(place);
        for j in 0..4 {
            covariance[(i, j)] = difference_kg2[i][j];
        }
        covariance[(4 + i, 4 + i)] = 2.0 * height_mm * height_mm;
    }
    let Some(factor) = covariance.cholesky() else {
        return Err(StaticsError::Value {
            at: "difference_kg2".to_owned(),
            value: "not positive definite".to_owned(),
            must: "a covariance in which every load has a spread of its own",
        });
    };
    let weighted = factor.solve(&per_n);
    let information = weighted.dot(&per_n);
    let preload_n = weighted.dot(&changed) / information;
    let rest = changed - per_n * preload_n;
    Ok(LinkPreload {
        preload_n,
        expanded_n: COVERAGE / information.sqrt(),
        chi2: rest.dot(&factor.solve(&rest)),
        gives_mm_per_n: drop[first] - drop[first + 1],
    })
}

/// The turns of one link that take a preload out of a bar of this rate (at the wheels).
///
/// # Errors
/// A rate, pitch or link ratio that cannot be.
pub fn link_turns(preload: &LinkPreload, bar_n_per_mm: f64, link: &Link) -> Result<LinkTurns, StaticsError> {
    within("bar.n_per_mm", bar_n_per_mm, 0.1, 1e4, "from 0.1 to 10000 N/mm")?;
    within("link.pitch_mm", link.pitch_mm, 0.2, 10.0, "from 0.2 to 10 mm")?;
    within("link.link_per_wheel", link.link_per_wheel, 0.05, 5.0, "from 0.05 to 5")?;
    let per_n = 1.0 / bar_n_per_mm + preload.gives_mm_per_n;
    let misfit_mm = preload.preload_n * per_n;
    // The left link must let its wheel up by the misfit.
    let left_longer_mm = link.link_per_wheel
        * match link.longer {
            Lengthening::PressesWheelDown => -misfit_mm,
            Lengthening::PullsWheelUp => misfit_mm,
        };
    let (longer, shorter) = (link.lengthening(), link.shortening());
    let (left, right) = if left_longer_mm > 0.0 { (longer, shorter) } else { (shorter, longer) };
    let turns = left_longer_mm.abs() / link.lead_mm();
    // Everything is in proportion to the preload, and so is its uncertainty.
    let expanded_turns = preload.expanded_n * per_n * link.link_per_wheel / link.lead_mm();
    Ok(LinkTurns { misfit_mm, left_longer_mm, turns, expanded_turns, left, right })
}
