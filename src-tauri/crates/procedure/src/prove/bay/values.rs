//! What the parts of the bay can be.

/// How the car stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Stands {
    /// On the ground.
    #[default]
    Ground,
    /// On the pads.
    Pads,
    /// Just clear of the ground.
    ClearOfGround,
    /// Just clear of the pads.
    ClearOfPads,
    /// On locks or stands.
    Locks,
}

/// How far this raise has come, in the one right order.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Raise {
    /// Nothing of it, or out of order.
    #[default]
    None,
    /// Looked into and a danger acknowledged.
    Looked,
    /// Stopped at wheels-clear.
    Stopped,
    /// Rocked, and steady.
    Rocked,
    /// On its locks.
    Secured,
}

/// A look that is true for the moment only.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Look {
    /// None, or something happened since.
    #[default]
    None,
    /// Nobody aboard, nothing can slide.
    BeforeRaise,
    /// Rocked.
    Rocked,
    /// Everybody counted out from under the car.
    PeopleOut,
    /// Only the tyres touch, nobody aboard.
    OnlyTyres,
}

/// Wheel nuts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Nuts {
    /// As the car came.
    #[default]
    Untouched,
    /// Cracked, or loose.
    Loose,
    /// Seated in pattern.
    Seated,
    /// At torque, by one person.
    OneName,
    /// By two.
    TwoNames,
}

/// Ballast.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Ballast {
    /// None aboard.
    #[default]
    Out,
    /// Laid in and not strapped.
    Loose,
    /// Strapped.
    Strapped,
}

/// Tyre pressures.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Tyres {
    /// As they came, or after a drive.
    #[default]
    Unknown,
    /// Working.
    Working,
    /// Cold.
    Cold,
}

/// Pads.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Pads {
    /// Put away.
    #[default]
    Away,
    /// Laid out.
    Out,
    /// Judged level.
    Level,
}

/// One of two people, by turn.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Name {
    /// Nobody.
    #[default]
    Nobody,
    /// One.
    First,
    /// Another.
    Second,
}

/// What was stated of an axle's bar.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Bar {
    /// Not stated, none, or fixed: nothing to release.
    #[default]
    NotReleased,
    /// With an adjustable link.
    Adjustable,
}
