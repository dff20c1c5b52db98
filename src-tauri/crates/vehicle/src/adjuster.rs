//! How a spring collar or another height adjuster moves, and which way to turn it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// The hand of a thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Hand {
    /// The usual screw: clockwise drives it away from the person who turns it.
    Right,
    /// The mirror of it.
    Left,
}

/// Where the spring sits, seen from the collar.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum SpringSeat {
    /// The spring stands on the collar.
    AboveCollar,
    /// The spring hangs below the collar, which is its upper seat.
    BelowCollar,
}

/// Which way a collar is turned, always seen from above.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Turning {
    /// Clockwise, seen from above.
    Clockwise,
    /// Anticlockwise, seen from above.
    Anticlockwise,
}

/// A threaded collar.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Thread {
    /// Travel of the collar for one turn, mm. Always entered, never assumed.
    pub pitch_mm: f64,
    /// Hand of the thread.
    pub hand: Hand,
    /// Where the spring sits.
    pub spring: SpringSeat,
}

impl Thread {
    /// Which way, seen from above, the collar turns so that the car rises at that corner.
    ///
    /// Raising moves the collar towards its spring: up with the spring above it, down with the spring below it.
    /// A right-hand collar climbs its tube when turned anticlockwise seen from above (common practice; it is the
    /// geometry of a right-hand helix).
    pub fn raising(&self) -> Turning {
        match (self.hand, self.spring) {
            (Hand::Right, SpringSeat::AboveCollar) | (Hand::Left, SpringSeat::BelowCollar) => Turning::Anticlockwise,
            (Hand::Right, SpringSeat::BelowCollar) | (Hand::Left, SpringSeat::AboveCollar) => Turning::Clockwise,
        }
    }
}

/// What the planner may do at one corner; the JSON of `bayhand-cli plan`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Adjuster {
    /// Collar travel of one step, mm; above zero.
    pub step_mm: f64,
    /// Steps left that raise the car; zero or more.
    pub up_steps: i32,
    /// Steps left that lower the car; zero or more.
    pub down_steps: i32,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(hand: Hand, spring: SpringSeat, expected: Turning) {
        assert_eq!(Thread { pitch_mm: 2.0, hand, spring }.raising(), expected, "{hand:?} thread, spring {spring:?}");
    }

    /// The four cases of thread hand and spring seat (common practice, no source).
    #[test]
    fn raising_turns_the_right_way() {
        check(Hand::Right, SpringSeat::AboveCollar, Turning::Anticlockwise);
        check(Hand::Right, SpringSeat::BelowCollar, Turning::Clockwise);
        check(Hand::Left, SpringSeat::AboveCollar, Turning::Clockwise);
        check(Hand::Left, SpringSeat::BelowCollar, Turning::Anticlockwise);
    }
}
