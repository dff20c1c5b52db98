//! What can be wrong with a practice job, each as it acts on car and bench and not as a label.

use crate::configuration::LinkState;
use crate::noise::{Draws, Purpose};
use crate::reality::Reality;
use bayhand_vehicle::Place;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Pounds in a kilogram (NIST SP 811 (2008), appendix B.8: 1 lb = 0.453 592 37 kg exactly).
const POUNDS_PER_KG: f64 = 1.0 / 0.453_592_37;

/// A fault that is hidden from the person at the job.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Fault {
    /// The pad at front right shows 2 kg too much: its zero has moved.
    PadZero,
    /// The pad at rear right has sunk by 1.5 mm: a foot stands on something soft.
    PadLow,
    /// The wheel at rear left stands at the edge of its pad, which shows 2 % less there.
    OffPadMiddle,
    /// The pads were switched over and show pounds.
    PoundsShown,
    /// The ballast was never put in.
    BallastForgotten,
    /// The ballast has slid 120 mm outwards on its seat and 80 mm back.
    BallastSlides,
    /// The link of the front bar stays bolted up though it is taken for released.
    LinkLeftOn,
    /// The link of the rear bar went in three turns longer than was noted.
    BarPreload,
    /// The tyre at front left holds 0.4 bar less than it was set to.
    TyreDown,
    /// The pressures were set hot; every tyre has lost 0.25 bar since.
    HotPressure,
    /// The strut at rear left sticks: its friction holds up to 250 N, more than a hand frees.
    StickyStrut,
    /// The car stands on its bump stop at rear right.
    OnBumpStop,
    /// An arm of the lift touches the sill at front left and carries 12 kg.
    ArmTouches,
    /// The collar at front right slips back by 1 mm.
    CollarSlips,
    /// One turn that was meant for the collar at rear left was made at rear right.
    WrongCorner,
    /// The rim at front left is bent: two millimetres and more between its nearest and its furthest place.
    RimRunOut,
    /// The lower arm at front right is bent and 5 mm short.
    BentArm,
    /// The steering stands a quarter of a degree to the left at the wheels when it is taken for straight.
    SteeringOff,
}

impl Fault {
    /// All faults.
    pub const ALL: [Fault; 18] = [
        Fault::PadZero,
        Fault::PadLow,
        Fault::OffPadMiddle,
        Fault::PoundsShown,
        Fault::BallastForgotten,
        Fault::BallastSlides,
        Fault::LinkLeftOn,
        Fault::BarPreload,
        Fault::TyreDown,
        Fault::HotPressure,
        Fault::StickyStrut,
        Fault::OnBumpStop,
        Fault::ArmTouches,
        Fault::CollarSlips,
        Fault::WrongCorner,
        Fault::RimRunOut,
        Fault::BentArm,
        Fault::SteeringOff,
    ];

    /// The name as JSON and the command line write it.
    pub fn code(self) -> &'static str {
        match self {
            Fault::PadZero => "pad-zero",
            Fault::PadLow => "pad-low",
            Fault::OffPadMiddle => "off-pad-middle",
            Fault::PoundsShown => "pounds-shown",
            Fault::BallastForgotten => "ballast-forgotten",
            Fault::BallastSlides => "ballast-slides",
            Fault::LinkLeftOn => "link-left-on",
            Fault::BarPreload => "bar-preload",
            Fault::TyreDown => "tyre-down",
            Fault::HotPressure => "hot-pressure",
            Fault::StickyStrut => "sticky-strut",
            Fault::OnBumpStop => "on-bump-stop",
            Fault::ArmTouches => "arm-touches",
            Fault::CollarSlips => "collar-slips",
            Fault::WrongCorner => "wrong-corner",
            Fault::RimRunOut => "rim-run-out",
            Fault::BentArm => "bent-arm",
            Fault::SteeringOff => "steering-off",
        }
    }

    /// Adds faults to those that there are until there are `many`: which follow from the seed. Two that act on the same
    /// thing are not drawn together.
    pub fn draw(seed: u64, many: usize, faults: &mut Vec<Fault>) {
        let mut draws = Draws::new(seed, Purpose::Faults, 0, 0);
        while faults.len() < many {
            let apart = |fault: &Fault| faults.iter().all(|other| fault.acts_on() != other.acts_on());
            let left: Vec<Fault> = Fault::ALL.into_iter().filter(apart).collect();
            // Even between 0 and 1, so the place lies within the list; an empty one ends the drawing.
            let Some(fault) = left.get((draws.even(0.0, 1.0) * left.len() as f64) as usize) else { return };
            faults.push(*fault);
        }
    }

    fn acts_on(self) -> ActsOn {
        match self {
            Fault::PadZero | Fault::PadLow | Fault::OffPadMiddle | Fault::PoundsShown => ActsOn::Pads,
            Fault::BallastForgotten | Fault::BallastSlides => ActsOn::Ballast,
            Fault::LinkLeftOn | Fault::BarPreload => ActsOn::Links,
            Fault::TyreDown | Fault::HotPressure => ActsOn::Tyres,
            Fault::StickyStrut | Fault::OnBumpStop => ActsOn::Struts,
            Fault::ArmTouches => ActsOn::Sill,
            Fault::CollarSlips | Fault::WrongCorner => ActsOn::Collars,
            Fault::RimRunOut => ActsOn::Rims,
            Fault::BentArm => ActsOn::Arms,
            Fault::SteeringOff => ActsOn::Steering,
        }
    }

    /// True when it is there from the start; else it comes once a sound reading stands and turning has begun.
    pub fn from_the_start(self) -> bool {
        match self {
            Fault::BallastForgotten
            | Fault::LinkLeftOn
            | Fault::BarPreload
            | Fault::StickyStrut
            | Fault::OnBumpStop
            | Fault::RimRunOut
            | Fault::BentArm => true,
            Fault::PadZero
            | Fault::PadLow
            | Fault::OffPadMiddle
            | Fault::PoundsShown
            | Fault::BallastSlides
            | Fault::TyreDown
            | Fault::HotPressure
            | Fault::ArmTouches
            | Fault::CollarSlips
            | Fault::WrongCorner
            | Fault::SteeringOff => false,
        }
    }

    /// Makes it so. `turn_mm` is what one turn of a collar moves, `bump_mm` the free wheel travel at the rear.
    pub(crate) fn act(self, is: &mut Reality, turn_mm: f64, bump_mm: f64) {
        match self {
            Fault::PadZero => is.zero_kg.fr += 2.0,
            Fault::PadLow => is.pad_mm.rr -= 1.5,
            Fault::OffPadMiddle => is.gain_error.rl -= 0.02,
            Fault::PoundsShown => is.shown_per_kg = POUNDS_PER_KG,
            Fault::BallastForgotten => is.ballast_kg = 0.0,
            Fault::BallastSlides => is.ballast_moved_m = [0.08, 0.12],
            Fault::LinkLeftOn => {
                if is.links.front == LinkState::Released {
                    is.links.front = LinkState::Connected { adjust_turns: 0.0 };
                }
            }
            Fault::BarPreload => {
                if let LinkState::Connected { adjust_turns } = &mut is.links.rear {
                    *adjust_turns += 3.0;
                }
            }
            Fault::TyreDown => is.pressures_bar.fl = (is.pressures_bar.fl - 0.4).max(0.0),
            Fault::HotPressure => is.pressures_bar = is.pressures_bar.map(|bar| (bar - 0.25).max(0.0)),
            Fault::StickyStrut => is.strut_n.rl = 250.0,
            // All the travel at the agreed height, and six millimetres of the stop.
            Fault::OnBumpStop => is.bump_lost_mm.rr = bump_mm + 6.0,
            Fault::ArmTouches => is.held_kg.fl = 12.0,
            Fault::CollarSlips => is.collar_mm.fr -= 1.0,
            Fault::WrongCorner => {
                *is.collar_mm.at_mut(Place::Rl) -= turn_mm;
                *is.collar_mm.at_mut(Place::Rr) += turn_mm;
            }
            Fault::RimRunOut => is.rim_deg.fl = [0.35, 0.30],
            Fault::BentArm => is.arm_short_mm.fr = 5.0,
            Fault::SteeringOff => is.steering_deg = 0.25,
        }
    }
}

/// What a fault acts on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum ActsOn {
    Pads,
    Ballast,
    Links,
    Tyres,
    Struts,
    Sill,
    Collars,
    Rims,
    Arms,
    Steering,
}

/// A fault and when it begins.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Planted {
    pub(crate) fault: Fault,
    pub(crate) from_settle: u64,
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]
mod tests {
    use super::*;

    /// The code is what serde writes, so that command line and record agree.
    #[test]
    fn codes_are_the_serialised_names() {
        for fault in Fault::ALL {
            assert_eq!(serde_json::to_value(fault).unwrap(), fault.code(), "{fault:?}");
        }
    }

    /// Every fault is drawn by some seed, and two at once never act on the same thing.
    #[test]
    fn seeds_draw_every_fault() {
        let mut met = Vec::new();
        for seed in 0..200 {
            let mut faults = Vec::new();
            Fault::draw(seed, 2, &mut faults);
            assert_eq!(faults.len(), 2, "seed {seed}");
            assert_ne!(faults[0].acts_on(), faults[1].acts_on(), "seed {seed}: {faults:?}");
            let mut again = Vec::new();
            Fault::draw(seed, 2, &mut again);
            assert_eq!(faults, again, "the same seed draws the same");
            met.extend(faults);
        }
        assert!(Fault::ALL.into_iter().all(|fault| met.contains(&fault)), "each of them is met");
        let mut named = vec![Fault::PadZero];
        Fault::draw(1, 3, &mut named);
        assert_eq!((named[0], named.len()), (Fault::PadZero, 3), "what was named stays");
    }
}
