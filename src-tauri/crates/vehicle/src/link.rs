//! The link of an anti-roll bar: what one turn does to its length, and which way to turn.

use crate::{Hand, Turning};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The adjustable link between an anti-roll bar and a wheel.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Link {
    /// Pitch of the thread, mm per turn. Always entered, never assumed.
    pub pitch_mm: f64,
    /// Hand of the thread at the end from which it is looked at.
    pub hand: Hand,
    /// True when the other end has a thread of the opposite hand, so that a turn of the middle piece moves both ends.
    pub opposite_threads: bool,
    /// Link travel / wheel travel: mm of link length for one mm at the wheel.
    pub link_per_wheel: f64,
    /// What a longer link does to its own wheel.
    pub longer: Lengthening,
}

/// What a longer link does to the wheel at its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Lengthening {
    /// It presses the wheel down: the bar sits above the wheel's end of the link.
    PressesWheelDown,
    /// It pulls the wheel up: the bar sits below the wheel's end of the link.
    PullsWheelUp,
}

impl Link {
    /// Length that one turn of the middle piece adds or takes, mm: the pitch, and twice the pitch with opposite
    /// threads (ISO 724: one turn of a single thread moves it by its pitch).
    pub fn lead_mm(&self) -> f64 {
        if self.opposite_threads { 2.0 * self.pitch_mm } else { self.pitch_mm }
    }

    /// Which way the middle piece turns to make the link longer, seen from the end with [`Link::hand`] and looking
    /// along the link. A right-hand thread screws in when its own part turns clockwise; the middle piece turning
    /// clockwise is the same as that part turning anticlockwise, so it screws out. With opposite threads the far end
    /// does the same, for it is the mirror of this one.
    pub fn lengthening(&self) -> Turning {
        match self.hand {
            Hand::Right => Turning::Clockwise,
            Hand::Left => Turning::Anticlockwise,
        }
    }

    /// Which way it turns to make the link shorter, seen from the same end.
    pub fn shortening(&self) -> Turning {
        match self.lengthening() {
            Turning::Clockwise => Turning::Anticlockwise,
            Turning::Anticlockwise => Turning::Clockwise,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// R: ISO 724 (checks.md): one turn = P; a turnbuckle of opposite threads 2 P. C: the turning of a thread.
    #[test]
    fn one_turn_and_its_direction() {
        let check = |hand, opposite_threads, lead_mm: f64, longer| {
            let link =
                Link { pitch_mm: 1.5, hand, opposite_threads, link_per_wheel: 1.0, longer: Lengthening::PullsWheelUp };
            assert_eq!(link.lead_mm(), lead_mm, "{link:?}");
            assert_eq!(link.lengthening(), longer, "{link:?}");
            assert_ne!(link.shortening(), longer, "the other way shortens");
        };
        check(Hand::Right, false, 1.5, Turning::Clockwise);
        check(Hand::Right, true, 3.0, Turning::Clockwise);
        check(Hand::Left, false, 1.5, Turning::Anticlockwise);
        check(Hand::Left, true, 3.0, Turning::Anticlockwise);
    }
}
