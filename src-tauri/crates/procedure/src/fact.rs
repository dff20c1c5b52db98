//! Physical facts: what is true of the car and the bay now. A closed list; each fact has a closed list of values.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

macro_rules! facts {
    ($($(#[$doc:meta])* $name:ident : $($value:ident)+ ;)+) => {
        /// A physical fact, or a property of the car that was stated at intake.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
        #[serde(rename_all = "kebab-case")]
        pub enum Fact { $($(#[$doc])* $name,)+ }

        impl Fact {
            /// Every fact.
            pub const ALL: &'static [Fact] = &[$(Fact::$name),+];

            /// The values that the fact can take; the first one holds when a job begins.
            pub fn values(self) -> &'static [Value] {
                match self { $(Fact::$name => &[$(Value::$value),+],)+ }
            }
        }
    };
}

facts! {
    /// How the car stands: on the ground, on the pads, just clear of both and not secured, or raised and secured.
    Stance: Ground Pads Clear Locked;
    /// The brake that holds the car.
    Brake: Unknown On Off;
    /// Chocks at the wheels, both ways.
    Chocks: Away Set;
    /// Whether anyone is in the car.
    Aboard: Unknown Nobody;
    /// Whether anyone is under or at the raised car.
    Under: Unknown Nobody;
    /// The acknowledgement that belongs to this raise.
    RaiseCheck: None Given;
    /// Whether the car was rocked at wheels-clear on this raise.
    Rocked: No Yes;
    /// Wheels on the car.
    Wheels: On Off;
    /// Wheel nuts: as they came, cracked with the car down, loose after a wheel was off, seated in pattern, tightened to
    /// the maker's torque by one person, or checked by a second.
    Nuts: AsFound Cracked Loose Seated Tightened Torqued;
    /// Springs: in their seats, or to be looked at after a collar moved.
    Springs: Seated Moved;
    /// Locking rings of the collars.
    Rings: Locked Loose;
    /// Parts of the front link that were taken off the car.
    FrontParts: Aboard Out;
    /// Parts of the rear link that were taken off the car.
    RearParts: Aboard Out;
    /// The front anti-roll bar's link.
    FrontLink: Unstated Absent Fixed Connected Released;
    /// The rear anti-roll bar's link.
    RearLink: Unstated Absent Fixed Connected Released;
    /// Ballast for the driver.
    Ballast: Out Strapped;
    /// Tyre pressures.
    Pressures: AsFound Working Cold;
    /// Fuel and fluids.
    Fuel: AsFound Agreed;
    /// The weighing pads.
    Pads: Away Placed Level;
    /// Zeros of the pads, read on this raise.
    Zeros: Unread Read;
    /// How far the car has settled since it came down or was read.
    Settle: Unsettled Freed Bounced Rested;
    /// Whether anything but the tyres touches the car.
    Touching: Unknown Clear;
    /// Steering.
    Steering: Unknown Straight;
    /// Clicks of the dampers.
    Dampers: AsFound Noted Back;
    /// Plumbed-in extinguisher.
    Extinguisher: Unstated Absent Pinned Live;
    /// The maker's lifting mode.
    LiftingMode: Unstated Needless Set Ended;
    /// How the tyres are freed.
    Freeing: Unstated SlipPlates RunOffs;
    /// How the car is raised.
    Lift: Unstated FourPost TwoPost Stands;
    /// Whether the collars may be turned with load on the axle, by their maker's word.
    TurnUnderLoad: Unstated Never Allowed;
    /// Whether the job adjusts, or measures and advises only.
    Method: Unstated Adjust Advise;
    /// High voltage: none aboard, in service, or made safe.
    HighVoltage: Unstated No Yes Safe;
    /// How the collars are reached.
    Reach: Unstated WheelsOn WheelsOff;
    /// Whether heights are being set roughly before the baseline.
    Rough: None Begun;
    /// Whether a round of turning collars was ever begun.
    Round: None Begun;
    /// Which kind of parking brake.
    ParkingBrake: Unstated Mechanical Electric;
    /// Whether angles are being set roughly before the baseline.
    RoughAngles: None Begun;
    /// Whether the car is driven before the final reading.
    Drive: Unstated NotDriven Driven;
    /// Clamped rubber bushes.
    Bushes: AsFound Slack Set;
    /// Clearances, brake pedal and hoses, since something that bears on them was changed.
    Clearance: Unknown Checked;
    /// Tools and parts, since a tool was last at the car.
    Tools: Unknown Counted;
    /// Whether a change of the alignment was ever begun.
    Alignment: AsFound Begun;
    /// Whether a change of the caster was ever begun.
    Caster: AsFound Begun;
}

/// A value of a fact.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[allow(missing_docs)] // Each value's meaning stands at the fact that takes it.
pub enum Value {
    Unstated,
    Unknown,
    None,
    Absent,
    Needless,
    Ground,
    Pads,
    Clear,
    Locked,
    On,
    Off,
    Set,
    Away,
    Nobody,
    Given,
    No,
    Yes,
    AsFound,
    Loose,
    Seated,
    Torqued,
    Moved,
    Aboard,
    Out,
    Fixed,
    Connected,
    Released,
    Strapped,
    Working,
    Cold,
    Agreed,
    Placed,
    Level,
    Unread,
    Read,
    Unsettled,
    Freed,
    Bounced,
    Rested,
    Straight,
    Noted,
    Back,
    Pinned,
    Live,
    SlipPlates,
    RunOffs,
    FourPost,
    TwoPost,
    Stands,
    WheelsOn,
    WheelsOff,
    Never,
    Allowed,
    Adjust,
    Advise,
    Begun,
    Ended,
    Cracked,
    Mechanical,
    Electric,
    NotDriven,
    Driven,
    Tightened,
    Safe,
    Slack,
    Checked,
    Counted,
}

impl Fact {
    /// The fact's name as the document writes it.
    pub fn code(self) -> String {
        code_of(&self)
    }
}

impl Value {
    /// The value's name as the document writes it.
    pub fn code(self) -> String {
        code_of(&self)
    }
}

/// The name that serde gives a unit variant.
pub(crate) fn code_of<T: Serialize>(value: &T) -> String {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(s)) => s,
        _ => String::new(),
    }
}
