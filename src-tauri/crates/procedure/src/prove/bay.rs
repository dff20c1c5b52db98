//! The bay as somebody in it would see it: what is true of the car by what was done and affirmed, whatever the document's
//! facts say. A document or an `apply` that forgets what a step does is found out, because the two then differ.

mod values;

use super::deeds::{Deed, Deeds};
pub use values::{Ballast, Bar, Look, Name, Nuts, Pads, Raise, Stands, Tyres};

macro_rules! bay {
    ($($(#[$doc:meta])* $field:ident $name:ident : $kind:ty ;)+) => {
        /// What is true of the car and the bay.
        #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
        pub struct Bay { $($(#[$doc])* pub $field: $kind,)+ }

        /// The parts of [`Bay`], to say which of them a question is about.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[allow(missing_docs)] // Each is the field of the same name.
        pub enum Part { $($name,)+ }

        impl Bay {
            /// The same with every other part forgotten.
            #[must_use]
            pub fn only(self, parts: &[Part]) -> Bay {
                let mut kept = Bay::default();
                for part in parts {
                    match part { $(Part::$name => kept.$field = self.$field,)+ }
                }
                kept
            }
        }
    };
}

bay! {
    /// How the car stands.
    stands Stands: Stands;
    /// How far this raise has come.
    raise Raise: Raise;
    /// The last look.
    look Look: Look;
    /// The brake is on.
    brake_on Brake: bool;
    /// Chocks both ways.
    chocked Chocks: bool;
    /// A wheel is off.
    wheels_off Wheels: bool;
    /// Wheel nuts.
    nuts Nuts: Nuts;
    /// Who tightened them.
    nuts_by NutsBy: Name;
    /// A collar was turned and the springs not looked at since.
    springs_moved Springs: bool;
    /// Locking rings are loose.
    rings_loose Rings: bool;
    /// Bushes are slack.
    bushes_slack Bushes: bool;
    /// The front bar.
    front_bar FrontBar: Bar;
    /// The rear bar.
    rear_bar RearBar: Bar;
    /// The front link is undone.
    front_loose FrontLink: bool;
    /// The rear link is undone.
    rear_loose RearLink: bool;
    /// Parts of the front link are not counted back.
    front_parts_out FrontParts: bool;
    /// Parts of the rear link are not counted back.
    rear_parts_out RearParts: bool;
    /// Ballast.
    ballast Ballast: Ballast;
    /// Tyre pressures.
    tyres Tyres: Tyres;
    /// Fuel is at its agreed level.
    fuel_agreed Fuel: bool;
    /// Pads.
    pads Pads: Pads;
    /// Zeros were read since the car went up or a pad moved.
    zeros_read Zeros: bool;
    /// The tyres were freed since something moved the car.
    freed Freed: bool;
    /// And the ends bounced.
    bounced Bounced: bool;
    /// And the car has rested.
    rested Rested: bool;
    /// The car has a lifting mode.
    has_lifting HasLifting: bool;
    /// It is set.
    lifting_set Lifting: bool;
    /// High voltage is aboard.
    has_voltage HasVoltage: bool;
    /// It is made safe.
    voltage_safe Voltage: bool;
    /// An extinguisher is plumbed in.
    has_extinguisher HasExtinguisher: bool;
    /// It is pinned.
    pinned Pinned: bool;
    /// Damper clicks are noted and not set back.
    clicks_out Clicks: bool;
    /// Clearances, pedal and hoses were checked since something that bears on them changed.
    cleared Clearance: bool;
    /// Tools were at the car and not counted since.
    tools_out Tools: bool;
    /// Who tightened the alignment fasteners.
    fasteners_by FastenersBy: Name;
    /// They have two names.
    fasteners_two Fasteners: bool;
    /// The springs are set by this job.
    adjusts Adjusts: bool;
    /// The adjuster's maker allows turning under load.
    load_allowed LoadAllowed: bool;
}

impl Bay {
    /// On the ground or on the pads.
    pub fn down(&self) -> bool {
        matches!(self.stands, Stands::Ground | Stands::Pads)
    }

    /// Brake on or chocks both ways.
    pub fn held(&self) -> bool {
        self.brake_on || self.chocked
    }

    /// Raised by this raise's own acknowledgement, stop, rocking and locks, in that order.
    pub fn secured(&self) -> bool {
        self.stands == Stands::Locks && self.raise == Raise::Secured
    }

    /// A break: nobody knows who went where.
    pub fn paused(&mut self) {
        self.look = Look::None;
    }

    /// A step was tried: people were at the car for it, but a reading touches nothing.
    pub fn tried(&mut self, deeds: Deeds) {
        if !(deeds.has(Deed::Reads) && self.look == Look::OnlyTyres) {
            self.look = Look::None;
        }
    }

    /// A step was done by somebody.
    pub fn did(&mut self, deeds: Deeds, by: Name) {
        // Readings may follow on one another at one look.
        self.tried(deeds);
        self.moves(deeds);
        self.holds(deeds);
        self.settles(deeds);
        self.wheels(deeds, by);
        self.works(deeds);
        self.fasteners(deeds, by);
        self.carries(deeds);
        self.states(deeds);
    }

    fn moves(&mut self, deeds: Deeds) {
        if deeds.has(Deed::LoadSecured) && deeds.has(Deed::NobodyAboard) && self.down() {
            self.raise = if deeds.has(Deed::DangerRead) { Raise::Looked } else { Raise::None };
            self.look = Look::BeforeRaise;
        }
        if deeds.has(Deed::WheelsClear) && self.down() {
            self.stands = if self.stands == Stands::Pads { Stands::ClearOfPads } else { Stands::ClearOfGround };
            self.raise = if self.raise == Raise::Looked { Raise::Stopped } else { Raise::None };
        }
        if deeds.has(Deed::Steady) {
            let stopped = matches!(self.raise, Raise::Stopped | Raise::Rocked);
            self.raise = if stopped { Raise::Rocked } else { Raise::None };
            self.look = Look::Rocked;
        }
        if deeds.has(Deed::NotSteady) {
            self.raise = Raise::None;
        }
        if deeds.has(Deed::LocksEngaged) && !self.down() && self.stands != Stands::Locks {
            self.stands = Stands::Locks;
            let right = self.raise == Raise::Rocked && deeds.has(Deed::DangerRead);
            self.raise = if right { Raise::Secured } else { Raise::None };
            (self.chocked, self.zeros_read) = (false, false);
        }
        if deeds.has(Deed::PeopleOut) {
            self.look = Look::PeopleOut;
        }
        if deeds.has(Deed::OnlyTyres) && deeds.has(Deed::NobodyAboard) {
            self.look = Look::OnlyTyres;
        }
        let from_clear = if self.stands == Stands::ClearOfPads { Stands::Pads } else { Stands::Ground };
        for (deed, stands) in [
            (Deed::OverPads, Stands::Pads),
            (Deed::Centred, Stands::Pads),
            (Deed::FloorClear, Stands::Ground),
            (Deed::OffPads, Stands::Ground),
            (Deed::Driven, Stands::Ground),
            (Deed::AreaClear, from_clear),
        ] {
            if deeds.has(deed) {
                (self.stands, self.raise) = (stands, Raise::None);
            }
        }
    }

    fn holds(&mut self, deeds: Deeds) {
        if deeds.any(&[Deed::BrakeOff, Deed::Runout, Deed::Driven]) {
            self.brake_on = false;
        }
        if deeds.any(&[Deed::BrakeHolds, Deed::OffPads]) {
            self.brake_on = true;
        }
        if deeds.has(Deed::ChocksAway) {
            self.chocked = false;
        }
        if deeds.has(Deed::ChocksSet) {
            self.chocked = true;
        }
    }

    /// Freed, bounced, rested, in this order, and undone by whatever moves the car or the wheels.
    fn settles(&mut self, deeds: Deeds) {
        let moved = [
            Deed::WheelsClear,
            Deed::LocksEngaged,
            Deed::OverPads,
            Deed::FloorClear,
            Deed::AreaClear,
            Deed::OffPads,
            Deed::Driven,
            Deed::BrakeOff,
            Deed::ChocksAway,
            Deed::Collar,
            Deed::Angles,
            Deed::FrontBolt,
            Deed::RearBolt,
            Deed::FrontUndone,
            Deed::RearUndone,
            Deed::BushesSet,
            Deed::Runout,
            Deed::FastenersTight,
            // A reading of the loads has a settle of its own; angles may be read at the settle of the heights.
            Deed::Loads,
        ];
        if deeds.any(&moved) {
            (self.freed, self.bounced, self.rested) = (false, false, false);
        }
        if deeds.any(&[Deed::PlatesFree, Deed::Rolled]) {
            (self.freed, self.bounced, self.rested) = (true, false, false);
        }
        if deeds.has(Deed::Bounced) {
            (self.bounced, self.rested) = (self.freed, false);
        }
        if deeds.has(Deed::Waited) {
            self.rested = self.bounced;
        }
    }

    fn wheels(&mut self, deeds: Deeds, by: Name) {
        if deeds.any(&[Deed::NutsCracked, Deed::WheelsOff, Deed::WheelsOn]) {
            self.nuts = Nuts::Loose;
        }
        if deeds.has(Deed::WheelsOff) {
            (self.wheels_off, self.cleared) = (true, false);
        }
        if deeds.has(Deed::WheelsOn) {
            self.wheels_off = false;
        }
        if deeds.has(Deed::NutsSeated) || (deeds.has(Deed::Driven) && self.nuts > Nuts::Seated) {
            self.nuts = Nuts::Seated;
        }
        if deeds.has(Deed::NutsTight) {
            (self.nuts, self.nuts_by) = (Nuts::OneName, by);
        }
        if deeds.has(Deed::NutsChecked) && self.nuts >= Nuts::OneName && by != self.nuts_by {
            self.nuts = Nuts::TwoNames;
        }
        if self.nuts < Nuts::OneName || self.nuts == Nuts::TwoNames {
            self.nuts_by = Name::Nobody;
        }
    }

    fn works(&mut self, deeds: Deeds) {
        let hands = [Deed::Under, Deed::Reach, Deed::NutsTight, Deed::NutsChecked];
        if deeds.any(&hands) {
            self.tools_out = true;
        }
        if deeds.has(Deed::ToolsCounted) && deeds.has(Deed::PartsCounted) {
            self.tools_out = false;
        }
        if deeds.has(Deed::Collar) {
            self.springs_moved = true;
        }
        if deeds.has(Deed::SpringsCaptive) {
            self.springs_moved = false;
        }
        if deeds.any(&[Deed::Collar, Deed::Angles, Deed::Driven]) {
            self.cleared = false;
        }
        if deeds.has(Deed::LockClear) && deeds.has(Deed::BumpClear) && deeds.has(Deed::PedalFirm) {
            self.cleared = true;
        }
        switch(&mut self.rings_loose, deeds, Deed::RingsLoose, Deed::RingsTight);
        switch(&mut self.bushes_slack, deeds, Deed::BushesSlack, Deed::BushesSet);
        switch(&mut self.front_loose, deeds, Deed::FrontUndone, Deed::FrontBolt);
        switch(&mut self.rear_loose, deeds, Deed::RearUndone, Deed::RearBolt);
        switch(&mut self.front_parts_out, deeds, Deed::FrontUndone, Deed::FrontCounted);
        switch(&mut self.rear_parts_out, deeds, Deed::RearUndone, Deed::RearCounted);
    }

    fn fasteners(&mut self, deeds: Deeds, by: Name) {
        if deeds.has(Deed::Angles) {
            (self.fasteners_by, self.fasteners_two) = (Name::Nobody, false);
        }
        if deeds.has(Deed::FastenersTight) {
            (self.fasteners_by, self.fasteners_two) = (by, false);
        }
        if deeds.has(Deed::FastenersChecked) && self.fasteners_by != Name::Nobody && by != self.fasteners_by {
            (self.fasteners_by, self.fasteners_two) = (Name::Nobody, true);
        }
    }

    fn carries(&mut self, deeds: Deeds) {
        if deeds.has(Deed::BallastIn) {
            self.ballast = Ballast::Loose;
        }
        if deeds.has(Deed::BallastStrapped) && self.ballast == Ballast::Loose {
            self.ballast = Ballast::Strapped;
        }
        if deeds.has(Deed::BallastOut) {
            self.ballast = Ballast::Out;
        }
        if deeds.has(Deed::Driven) {
            (self.tyres, self.fuel_agreed) = (Tyres::Unknown, false);
        }
        if deeds.has(Deed::PressureWorking) {
            self.tyres = Tyres::Working;
        }
        if deeds.has(Deed::PressureCold) {
            self.tyres = Tyres::Cold;
        }
        if deeds.has(Deed::FuelAgreed) {
            self.fuel_agreed = true;
        }
        if deeds.any(&[Deed::PadsPlaced, Deed::Shimmed]) {
            (self.pads, self.zeros_read) = (Pads::Out, false);
        }
        if deeds.has(Deed::PadsLevel) && self.pads != Pads::Away {
            self.pads = Pads::Level;
        }
        if deeds.has(Deed::ZerosRead) {
            self.zeros_read = true;
        }
        if deeds.has(Deed::PadsAway) {
            self.pads = Pads::Away;
        }
        if deeds.has(Deed::ClicksBack) {
            self.clicks_out = false;
        } else if deeds.has(Deed::Clicks) {
            self.clicks_out = true;
        }
    }

    fn states(&mut self, deeds: Deeds) {
        switch(&mut self.lifting_set, deeds, Deed::LiftingSet, Deed::LiftingEnded);
        switch(&mut self.has_lifting, deeds, Deed::HasLifting, Deed::NoLifting);
        switch(&mut self.voltage_safe, deeds, Deed::VoltageSafe, Deed::VoltageBack);
        switch(&mut self.has_voltage, deeds, Deed::HasVoltage, Deed::NoVoltage);
        switch(&mut self.pinned, deeds, Deed::Pinned, Deed::Live);
        switch(&mut self.has_extinguisher, deeds, Deed::HasExtinguisher, Deed::NoExtinguisher);
        switch(&mut self.adjusts, deeds, Deed::EachWheel, Deed::NotAdjusted);
        switch(&mut self.load_allowed, deeds, Deed::LoadAllowed, Deed::LoadForbidden);
        for (bar, adjustable, others) in [
            (&mut self.front_bar, Deed::FrontAdjustable, [Deed::FrontFixed, Deed::FrontNone]),
            (&mut self.rear_bar, Deed::RearAdjustable, [Deed::RearFixed, Deed::RearNone]),
        ] {
            if deeds.any(&others) {
                *bar = Bar::NotReleased;
            }
            if deeds.has(adjustable) {
                *bar = Bar::Adjustable;
            }
        }
    }
}

/// One deed makes it so, another undoes it.
fn switch(part: &mut bool, deeds: Deeds, on: Deed, off: Deed) {
    if deeds.has(off) {
        *part = false;
    }
    if deeds.has(on) {
        *part = true;
    }
}
