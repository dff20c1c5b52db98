//! What must never happen, as questions to the bay at the moment when a step is offered. The eight properties are those
//! of the trade; each rule says what it asks about, so that it can be explored with everything else forgotten.

use super::bay::{Ballast, Bar, Bay, Look, Nuts, Pads, Part, Raise, Stands, Tyres};
use super::deeds::{Deed, Deeds};
use crate::{Fact, Gate, Rank, Step};

/// The safety properties, in the order in which they are always printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Property {
    /// No step under or at a raised car without that raise's own acknowledgements, locks or stands included.
    SecuredRaise,
    /// No collar is turned with load on the axle unless its adjuster allows it, with a link on or against its ring.
    CollarUnloaded,
    /// No seal, and no drive, with the car not whole.
    WholeCar,
    /// No figure on the sheet from a void reading, or from readings of unlike state.
    TrueFigures,
    /// No step done by nobody; no gate waived by somebody not allowed to or at work on it.
    NamedPeople,
    /// The car does not go up, and nobody goes under it, with a person inside or ballast loose.
    NobodyAboard,
    /// The car does not come down, or roll, with a wheel, nut or spring loose, off its pads, or on somebody.
    SafeLowering,
    /// Nobody reaches under a car that can roll; no reading of a car that something holds.
    HeldOrFree,
}

impl Property {
    /// All eight.
    pub const ALL: [Property; 8] = [
        Property::SecuredRaise,
        Property::CollarUnloaded,
        Property::WholeCar,
        Property::TrueFigures,
        Property::NamedPeople,
        Property::NobodyAboard,
        Property::SafeLowering,
        Property::HeldOrFree,
    ];

    /// What it says, in plain words.
    pub fn says(self) -> &'static str {
        match self {
            Property::SecuredRaise => {
                "nobody is under or at a raised car that this raise did not acknowledge and secure"
            }
            Property::CollarUnloaded => "no collar is turned under load, with a link on, or against its ring",
            Property::WholeCar => "no car is sealed or driven that is not whole",
            Property::TrueFigures => "no figure comes from a void reading or from readings of unlike state",
            Property::NamedPeople => "every step has a name, and no gate is waived by the wrong person",
            Property::NobodyAboard => "no car goes up with somebody inside or ballast loose",
            Property::SafeLowering => "no car comes down or rolls on loose parts or on somebody",
            Property::HeldOrFree => "nobody reaches under a car that can roll, and no reading is taken of a held one",
        }
    }
}

/// One rule.
pub struct Rule {
    /// The property that it is part of.
    pub property: Property,
    /// What is wrong when it is broken.
    pub says: &'static str,
    /// True when doing a step of these deeds now breaks it.
    pub broken: fn(&Bay, Deeds) -> bool,
}

/// Rules that ask about the same things, and what is kept while they are explored.
pub struct Theme {
    /// A name for the report.
    pub name: &'static str,
    /// Facts of the document that are kept.
    pub facts: &'static [Fact],
    /// Parts of the bay that are kept.
    pub parts: &'static [Part],
    /// The rules.
    pub rules: &'static [Rule],
}

const fn rule(property: Property, says: &'static str, broken: fn(&Bay, Deeds) -> bool) -> Rule {
    Rule { property, says, broken }
}

/// A car is handed over, or driven.
fn leaves(deeds: Deeds) -> bool {
    deeds.any(&[Deed::Seals, Deed::Driven])
}

fn comes_down(bay: &Bay, deeds: Deeds) -> bool {
    bay.stands == Stands::Locks && deeds.any(&[Deed::OverPads, Deed::FloorClear, Deed::AreaClear, Deed::Centred])
}

fn rolls(bay: &Bay, deeds: Deeds) -> bool {
    deeds.any(&[Deed::Rolled, Deed::OffPads, Deed::Driven])
        || (deeds.has(Deed::Centred) && bay.stands == Stands::Ground)
}

use Property::*;

/// Every rule, by theme.
pub const THEMES: &[Theme] = &[
    Theme {
        name: "raise",
        facts: &[
            Fact::Stance,
            Fact::Brake,
            Fact::Chocks,
            Fact::Aboard,
            Fact::Under,
            Fact::RaiseCheck,
            Fact::Rocked,
            Fact::Ballast,
            Fact::Pads,
        ],
        parts: &[Part::Stands, Part::Raise, Part::Look, Part::Brake, Part::Chocks, Part::Ballast],
        rules: &[
            rule(SecuredRaise, "somebody is under a car that this raise did not secure", |bay, deeds| {
                deeds.has(Deed::Under) && !bay.secured()
            }),
            rule(SecuredRaise, "the car goes on up without having been rocked just now", |bay, deeds| {
                deeds.has(Deed::LocksEngaged)
                    && matches!(bay.stands, Stands::ClearOfGround | Stands::ClearOfPads)
                    && !(bay.look == Look::Rocked && bay.raise == Raise::Rocked)
            }),
            rule(SecuredRaise, "the locks are affirmed with no danger acknowledged", |bay, deeds| {
                deeds.has(Deed::LocksEngaged) && bay.stands != Stands::Locks && !deeds.has(Deed::DangerRead)
            }),
            rule(SecuredRaise, "the car goes up with no danger of this raise acknowledged", |bay, deeds| {
                deeds.has(Deed::WheelsClear) && bay.raise != Raise::Looked
            }),
            rule(NobodyAboard, "the car goes up on a look that is stale", |bay, deeds| {
                deeds.has(Deed::WheelsClear) && bay.look != Look::BeforeRaise
            }),
            rule(NobodyAboard, "the car goes up, or somebody goes under it, with ballast loose", |bay, deeds| {
                deeds.any(&[Deed::WheelsClear, Deed::Under]) && bay.ballast == Ballast::Loose
            }),
            rule(HeldOrFree, "the car goes up free to roll", |bay, deeds| {
                deeds.has(Deed::WheelsClear) && !(bay.down() && bay.held())
            }),
            rule(HeldOrFree, "somebody reaches under a car that can roll", |bay, deeds| {
                deeds.has(Deed::Reach) && !(bay.secured() || (bay.down() && bay.held()))
            }),
            rule(SafeLowering, "the car comes down on somebody", |bay, deeds| {
                comes_down(bay, deeds) && bay.look != Look::PeopleOut
            }),
            rule(SafeLowering, "the car comes down with no warning acknowledged", |bay, deeds| {
                (comes_down(bay, deeds) || deeds.has(Deed::AreaClear)) && !deeds.has(Deed::WarningRead)
            }),
            rule(HeldOrFree, "the job stops with the car left free to roll or just clear", |bay, deeds| {
                deeds.has(Deed::Stops) && !(bay.stands == Stands::Locks || (bay.down() && bay.held()))
            }),
        ],
    },
    Theme {
        name: "moves by itself",
        facts: &[Fact::LiftingMode, Fact::RaiseCheck],
        parts: &[Part::HasLifting, Part::Lifting],
        rules: &[
            rule(SecuredRaise, "the car goes up without its lifting mode", |bay, deeds| {
                deeds.has(Deed::WheelsClear) && bay.has_lifting && !bay.lifting_set
            }),
            rule(WholeCar, "the lifting mode is on", |bay, deeds| leaves(deeds) && bay.lifting_set),
        ],
    },
    Theme {
        name: "high voltage",
        facts: &[Fact::HighVoltage, Fact::RaiseCheck],
        parts: &[Part::HasVoltage, Part::Voltage],
        rules: &[
            rule(SecuredRaise, "the car goes up with its high voltage on", |bay, deeds| {
                deeds.has(Deed::WheelsClear) && bay.has_voltage && !bay.voltage_safe
            }),
            rule(WholeCar, "the high voltage is off", |bay, deeds| leaves(deeds) && bay.voltage_safe),
        ],
    },
    Theme {
        name: "extinguisher",
        facts: &[Fact::Extinguisher],
        parts: &[Part::HasExtinguisher, Part::Pinned],
        rules: &[
            rule(NobodyAboard, "somebody leans in under a live extinguisher", |bay, deeds| {
                deeds.any(&[Deed::BallastIn, Deed::BallastOut]) && bay.has_extinguisher && !bay.pinned
            }),
            rule(WholeCar, "the extinguisher is pinned", |bay, deeds| leaves(deeds) && bay.pinned),
        ],
    },
    Theme {
        name: "wheels",
        facts: &[Fact::Stance, Fact::Wheels, Fact::Nuts, Fact::Springs, Fact::Brake, Fact::Chocks, Fact::Pads],
        parts: &[Part::Stands, Part::Wheels, Part::Nuts, Part::NutsBy, Part::Springs, Part::Brake, Part::Chocks],
        rules: &[
            rule(SafeLowering, "the car comes down with a wheel off", |bay, deeds| {
                comes_down(bay, deeds) && bay.wheels_off
            }),
            rule(SafeLowering, "the car comes down with nuts not seated in pattern", |bay, deeds| {
                comes_down(bay, deeds) && bay.nuts == Nuts::Loose
            }),
            rule(SafeLowering, "the car comes down with springs not looked at", |bay, deeds| {
                comes_down(bay, deeds) && bay.springs_moved
            }),
            rule(SafeLowering, "the car rolls on loose nuts", |bay, deeds| {
                rolls(bay, deeds) && (bay.wheels_off || bay.nuts == Nuts::Loose)
            }),
            rule(SafeLowering, "the car rolls against its chocks", |bay, deeds| {
                rolls(bay, deeds) && !deeds.has(Deed::Driven) && bay.chocked
            }),
            rule(HeldOrFree, "nuts are cracked on a raised car or on one free to roll", |bay, deeds| {
                deeds.has(Deed::NutsCracked) && !(bay.down() && bay.held())
            }),
            rule(HeldOrFree, "a tight nut is undone on a raised car", |bay, deeds| {
                deeds.has(Deed::WheelsOff) && bay.nuts != Nuts::Loose
            }),
            rule(TrueFigures, "a reading on loose wheels or springs", |bay, deeds| {
                deeds.has(Deed::Reads) && (bay.wheels_off || bay.springs_moved || bay.nuts == Nuts::Loose)
            }),
            rule(WholeCar, "a wheel is off", |bay, deeds| leaves(deeds) && bay.wheels_off),
            rule(WholeCar, "the wheel nuts do not have two names", |bay, deeds| {
                leaves(deeds) && bay.nuts != Nuts::TwoNames
            }),
            rule(WholeCar, "a spring was not looked at", |bay, deeds| leaves(deeds) && bay.springs_moved),
        ],
    },
    Theme {
        name: "collars and load",
        facts: &[
            Fact::Stance,
            Fact::Brake,
            Fact::Chocks,
            Fact::Aboard,
            Fact::RaiseCheck,
            Fact::Rocked,
            Fact::Pads,
            Fact::TurnUnderLoad,
        ],
        parts: &[Part::Stands, Part::Raise, Part::Look, Part::Brake, Part::Chocks, Part::LoadAllowed],
        rules: &[rule(CollarUnloaded, "a collar is turned under load", |bay, deeds| {
            let loaded = bay.load_allowed && bay.stands == Stands::Pads && bay.held();
            deeds.has(Deed::Collar) && !(bay.secured() || loaded)
        })],
    },
    Theme {
        name: "front link",
        facts: &[Fact::FrontLink, Fact::FrontParts],
        parts: &[Part::FrontBar, Part::FrontLink, Part::FrontParts],
        rules: &[
            rule(CollarUnloaded, "a collar is turned with the front link on", |bay, deeds| {
                deeds.has(Deed::Collar) && bay.front_bar == Bar::Adjustable && !bay.front_loose
            }),
            rule(TrueFigures, "the balance is read with the front link on", |bay, deeds| {
                deeds.has(Deed::Balances) && bay.front_bar == Bar::Adjustable && !bay.front_loose
            }),
            rule(TrueFigures, "the sheet's reading is taken with the front link off", |bay, deeds| {
                deeds.has(Deed::AsLeft) && bay.front_loose
            }),
            rule(WholeCar, "the front link is loose", |bay, deeds| leaves(deeds) && bay.front_loose),
            rule(WholeCar, "parts of the front link are not counted back", |bay, deeds| {
                leaves(deeds) && bay.front_parts_out
            }),
        ],
    },
    Theme {
        name: "rear link",
        facts: &[Fact::RearLink, Fact::RearParts],
        parts: &[Part::RearBar, Part::RearLink, Part::RearParts],
        rules: &[
            rule(CollarUnloaded, "a collar is turned with the rear link on", |bay, deeds| {
                deeds.has(Deed::Collar) && bay.rear_bar == Bar::Adjustable && !bay.rear_loose
            }),
            rule(TrueFigures, "the balance is read with the rear link on", |bay, deeds| {
                deeds.has(Deed::Balances) && bay.rear_bar == Bar::Adjustable && !bay.rear_loose
            }),
            rule(TrueFigures, "the sheet's reading is taken with the rear link off", |bay, deeds| {
                deeds.has(Deed::AsLeft) && bay.rear_loose
            }),
            rule(WholeCar, "the rear link is loose", |bay, deeds| leaves(deeds) && bay.rear_loose),
            rule(WholeCar, "parts of the rear link are not counted back", |bay, deeds| {
                leaves(deeds) && bay.rear_parts_out
            }),
        ],
    },
    Theme {
        name: "rings and bushes",
        facts: &[Fact::Rings, Fact::Bushes, Fact::Method],
        parts: &[Part::Rings, Part::Bushes, Part::Adjusts],
        rules: &[
            rule(CollarUnloaded, "a collar is turned against its ring", |bay, deeds| {
                deeds.has(Deed::Collar) && !bay.rings_loose
            }),
            rule(TrueFigures, "the balance is read on clamped bushes", |bay, deeds| {
                deeds.has(Deed::Balances) && bay.adjusts && !bay.bushes_slack
            }),
            rule(TrueFigures, "the sheet's reading is taken on slack bushes", |bay, deeds| {
                deeds.has(Deed::AsLeft) && bay.bushes_slack
            }),
            rule(WholeCar, "a collar is not locked", |bay, deeds| leaves(deeds) && bay.rings_loose),
            rule(WholeCar, "a bush is slack", |bay, deeds| leaves(deeds) && bay.bushes_slack),
        ],
    },
    Theme {
        name: "held or free",
        facts: &[Fact::Stance, Fact::Brake, Fact::Chocks, Fact::Touching, Fact::Aboard, Fact::Pads],
        parts: &[Part::Stands, Part::Look, Part::Brake, Part::Chocks],
        rules: &[
            rule(HeldOrFree, "a reading off the pads, with the brake on or a chock touching", |bay, deeds| {
                deeds.has(Deed::Reads) && (bay.stands != Stands::Pads || bay.held())
            }),
            rule(HeldOrFree, "a reading without a look at what touches the car", |bay, deeds| {
                deeds.has(Deed::Reads) && bay.look != Look::OnlyTyres
            }),
        ],
    },
    Theme {
        name: "settle",
        facts: &[Fact::Stance, Fact::Settle, Fact::Brake, Fact::Chocks],
        parts: &[Part::Stands, Part::Freed, Part::Bounced, Part::Rested],
        rules: &[
            rule(TrueFigures, "a reading of a car that has not settled", |bay, deeds| {
                deeds.has(Deed::Reads) && !bay.rested
            }),
            rule(TrueFigures, "a link is put on a car that has not settled", |bay, deeds| {
                deeds.any(&[Deed::FrontBolt, Deed::RearBolt]) && !bay.rested
            }),
        ],
    },
    Theme {
        name: "ballast",
        facts: &[Fact::Ballast],
        parts: &[Part::Ballast],
        rules: &[
            rule(TrueFigures, "a reading without the driver's ballast", |bay, deeds| {
                deeds.has(Deed::Reads) && bay.ballast != Ballast::Strapped
            }),
            rule(WholeCar, "ballast is in", |bay, deeds| leaves(deeds) && bay.ballast != Ballast::Out),
        ],
    },
    Theme {
        name: "tyres",
        facts: &[Fact::Pressures],
        parts: &[Part::Tyres],
        rules: &[
            rule(TrueFigures, "a reading at other pressures than agreed", |bay, deeds| {
                deeds.has(Deed::Reads) && bay.tyres != Tyres::Working
            }),
            rule(WholeCar, "a tyre is not at its hand-over pressure", |bay, deeds| {
                deeds.has(Deed::Seals) && bay.tyres != Tyres::Cold
            }),
        ],
    },
    Theme {
        name: "fuel",
        facts: &[Fact::Fuel],
        parts: &[Part::Fuel],
        rules: &[rule(TrueFigures, "a reading with another fuel level than agreed", |bay, deeds| {
            deeds.has(Deed::Reads) && !bay.fuel_agreed
        })],
    },
    Theme {
        name: "pads",
        facts: &[Fact::Pads, Fact::Zeros, Fact::Stance],
        parts: &[Part::Stands, Part::Pads, Part::Zeros],
        rules: &[
            rule(TrueFigures, "a reading on pads that were not judged level or not zeroed", |bay, deeds| {
                deeds.has(Deed::Reads) && (bay.pads != Pads::Level || !bay.zeros_read)
            }),
            rule(SafeLowering, "the car comes down onto pads that are not there", |bay, deeds| {
                deeds.has(Deed::OverPads) && bay.stands == Stands::Locks && bay.pads == Pads::Away
            }),
            rule(WholeCar, "the pads are still out", |bay, deeds| deeds.has(Deed::Seals) && bay.pads != Pads::Away),
            rule(WholeCar, "it does not stand on the floor", |bay, deeds| {
                leaves(deeds) && bay.stands != Stands::Ground
            }),
        ],
    },
    Theme {
        name: "clearance and clicks",
        facts: &[Fact::Clearance, Fact::Dampers],
        parts: &[Part::Clearance, Part::Clicks],
        rules: &[
            rule(WholeCar, "clearances and pedal were not checked since the last change", |bay, deeds| {
                leaves(deeds) && !bay.cleared
            }),
            rule(WholeCar, "the dampers are not set back", |bay, deeds| deeds.has(Deed::Seals) && bay.clicks_out),
        ],
    },
    Theme {
        name: "tools",
        facts: &[Fact::Tools, Fact::Stance],
        parts: &[Part::Tools],
        rules: &[rule(WholeCar, "tools and parts were not counted since the last work", |bay, deeds| {
            leaves(deeds) && bay.tools_out
        })],
    },
];

/// The least rank that may waive a step's gates, whatever the document says; none: nobody may.
///
/// A measurement is let pass by a technician. What was looked at and found wrong is let pass by a supervisor, unless the
/// step makes the car safe by it. A missing second person, a missing part and ballast that differs are let pass by nobody.
pub fn may_waive(step: &Step) -> Option<Rank> {
    let mut least = Rank::Trainee;
    for gate in &step.gates {
        let rank = match gate {
            Gate::SecondPerson { .. } | Gate::CountedBack { .. } | Gate::SameAs { .. } => return None,
            Gate::Waited | Gate::TravelLeft | Gate::CarPossible => return None,
            // Clicks of a damper are a note about the car; somebody's body relies on every other fact that is affirmed.
            Gate::ChecksYes if step.sets.iter().any(|b| b.fact != Fact::Dampers) => return None,
            Gate::ChecksYes | Gate::InstrumentsInDate | Gate::InstrumentsResolve | Gate::PadsLevel => Rank::Supervisor,
            _ => Rank::Technician,
        };
        least = least.max(rank);
    }
    Some(least)
}
