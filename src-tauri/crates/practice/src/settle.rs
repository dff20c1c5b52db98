//! One settle: the car is let down and bounced, and friction keeps a little of every move.
//!
//! The rig is taken through the moves one after the other, at rest after each. Struts and tyres slide, stick and are
//! dragged back; what they hold in the end is what one settle differs by from the next. All of it is forces between the
//! parts of the car, or sideways between pads and tyres, so that the total and the moments of the loads stay as they are
//! by mechanics and not by decree.

use crate::configuration::Freeing;
use crate::data_sheet::PerAxle;
use crate::equilibrium::{self, EquilibriumError};
use crate::friction::DryFriction;
use crate::noise::Draws;
use crate::rig::{Rig, Scrub, Standing};
use bayhand_vehicle::{Corners, Place, STANDARD_GRAVITY};

/// Rate of a strut's friction until it slides, N/m: a tenth of a millimetre for ten newtons (our choice; seals give
/// about as much).
const STRUT_RATE_N_PER_M: f64 = 1e5;
/// First push of the hands at a corner, one sigma, N.
const FIRST_PUSH_N: f64 = 400.0;
/// Each push as a share of the one before: the car is bounced less and less, and swings out.
const PUSH_SHARE: f64 = 0.72;
/// Pushes until the car is left alone; the last is below what any strut holds.
const PUSHES: u32 = 16;
/// Coefficient of friction of a slip plate, and of what is left after a wheel was rolled by a turn (our choice: greased
/// plates hold about one percent).
const FREE_FRICTION: f64 = 0.01;
/// Coefficient of friction of a tyre on a pad (common practice: 0.7 to 0.9 on dry steel).
const GRIP_FRICTION: f64 = 0.8;
/// Way that the wheels of a car on the lift hang below where they will stand, least and most, m.
const HANGS_M: [f64; 2] = [0.025, 0.045];

/// What holds on at a car. Hidden from the person at the bench.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Rubs {
    /// Most that friction holds in each strut, N.
    pub(crate) strut_n: Corners<f64>,
    /// Way outwards of each contact patch for one metre of upward travel of its wheel.
    pub(crate) outwards: Corners<f64>,
    /// Sideways rate of one tyre, N/m.
    pub(crate) tyre_side_n_per_m: PerAxle<f64>,
}

/// Takes the rig, which stands at rest without friction as `free` says, through one settle.
///
/// # Errors
/// No rest was found on the way.
pub(crate) fn settle(
    rig: &Rig,
    free: &Standing,
    rubs: &Rubs,
    freeing: Freeing,
    draws: &mut Draws,
) -> Result<Standing, EquilibriumError> {
    let mut rig = rig.clone();
    hang(&mut rig, free, rubs, freeing, draws);
    let mut push_n = FIRST_PUSH_N;
    for _ in 0..PUSHES {
        rig.pushed_n = [(); 4].map(|()| draws.normal(push_n));
        come_to_rest(&mut rig)?;
        push_n *= PUSH_SHARE;
    }
    rig.pushed_n = [0.0; 4];
    come_to_rest(&mut rig)?;
    Ok(rig.standing(&rig.start))
}

/// Where everything holds on before the car is let down: struts long, wheels close together.
fn hang(rig: &mut Rig, free: &Standing, rubs: &Rubs, freeing: Freeing, draws: &mut Draws) {
    let hung_m = free.struts_mm.map(|mm| mm / 1e3 + draws.even(HANGS_M[0], HANGS_M[1]));
    for place in Place::ALL {
        rig.wheels[place.index()].strut.friction = DryFriction {
            limit_n: *rubs.strut_n.at(place),
            rate_n_per_m: STRUT_RATE_N_PER_M,
            anchor_m: *hung_m.at(place),
        };
    }
    let coefficient = match freeing {
        Freeing::SlipPlates | Freeing::RunOffs => FREE_FRICTION,
        Freeing::Nothing => GRIP_FRICTION,
    };
    for (axle, [left, right]) in [[Place::Fl, Place::Fr], [Place::Rl, Place::Rr]].into_iter().enumerate() {
        // Both tyres give one after the other, and the one that carries less slips first.
        let grip_kg = free.loads_kg.at(left).min(*free.loads_kg.at(right));
        let mut scrub = Scrub {
            outwards: [*rubs.outwards.at(left), *rubs.outwards.at(right)],
            hold: DryFriction {
                limit_n: coefficient * grip_kg * STANDARD_GRAVITY,
                rate_n_per_m: rubs.tyre_side_n_per_m.of(left) / 2.0,
                anchor_m: 0.0,
            },
        };
        scrub.hold.anchor_m = scrub.length_m([*hung_m.at(left), *hung_m.at(right)]);
        rig.scrubs[axle] = scrub;
    }
}

/// Finds rest, and lets everything that slid on the way hold on where it now is.
fn come_to_rest(rig: &mut Rig) -> Result<(), EquilibriumError> {
    rig.start = equilibrium::find(rig)?;
    let lengths_m = rig.strut_lengths(&rig.start);
    for (wheel, length_m) in rig.wheels.iter_mut().zip(lengths_m) {
        wheel.strut.friction = wheel.strut.friction.moved_to(length_m);
    }
    for (axle, scrub) in rig.scrubs.iter_mut().enumerate() {
        scrub.hold = scrub.hold.moved_to(scrub.length_m([lengths_m[2 * axle], lengths_m[2 * axle + 1]]));
    }
    Ok(())
}
