//! The bars' links: what preload a bolted link holds, and how far a released one is from slipping in.

use crate::configuration::LinkState;
use crate::noise::to_step;
use crate::rig::BarState;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The bolt goes in by hand when its holes are no farther apart, mm (half of a usual bolt's play and a little).
const SLIDES_IN_MM: f64 = 0.4;
/// What can be seen of the distance between the holes, mm.
const SEEN_MM: f64 = 0.5;

/// How a released link fits.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct LinkFit {
    /// Distance of the link's hole from the bar's, mm, to 0.5 mm; positive asks for negative turns.
    pub gap_mm: f64,
    /// The bolt slides in by hand.
    pub bolt_slides_in: bool,
}

/// The truth about one axle's bar and its link.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct TrueLink {
    /// Rate of the bar at the wheels, N/mm.
    pub(crate) n_per_mm: f64,
    /// Difference of the strut lengths, right minus left, at which the link as it came in winds up nothing, mm.
    pub(crate) rest_mm: f64,
    /// Thread pitch of the link, mm per turn.
    pub(crate) pitch_mm: f64,
    /// mm at the wheels for one mm at the link.
    pub(crate) wheel_per_link: f64,
}

impl TrueLink {
    /// The bar as it acts in that state of its link.
    pub(crate) fn bar(&self, link: LinkState) -> Option<BarState> {
        match link {
            LinkState::Released => None,
            LinkState::Connected { adjust_turns } => {
                Some(BarState { n_per_m: self.n_per_mm * 1e3, rest_m: self.rest_after_mm(adjust_turns) / 1e3 })
            }
        }
    }

    /// How the link fits with that difference of the strut lengths, right minus left, in mm.
    pub(crate) fn fit(&self, difference_mm: f64, adjust_turns: f64) -> LinkFit {
        let gap_mm = (difference_mm - self.rest_after_mm(adjust_turns)) / self.wheel_per_link;
        LinkFit { gap_mm: to_step(gap_mm, SEEN_MM), bolt_slides_in: gap_mm.abs() <= SLIDES_IN_MM }
    }

    /// A positive turn winds the bar so that it presses the left wheel down.
    fn rest_after_mm(&self, adjust_turns: f64) -> f64 {
        self.rest_mm - adjust_turns * self.pitch_mm * self.wheel_per_link
    }
}
