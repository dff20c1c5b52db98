//! What a step does, read from what its person affirms: the ids of checks, options and numbers, its gates, its topics and
//! its place. Its `needs` and `sets` are left out on purpose: those are what is to be proved.

use crate::{ChoiceOption, Document, Ending, Gate, Input, Kind, Path, Place, PressureKind, Signal, Step};

macro_rules! deeds {
    ($($(#[$doc:meta])* $name:ident $(= $word:literal)? ;)+) => {
        /// Something that is done or affirmed at a step.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Deed { $($(#[$doc])* $name,)+ }

        impl Deed {
            /// Every deed.
            pub const ALL: &'static [Deed] = &[$(Deed::$name),+];

            /// The reserved id of the check, option or number that tells of it; none for a deed that is told by a gate,
            /// a topic or a place.
            pub fn word(self) -> Option<&'static str> {
                match self { $(Deed::$name => deeds!(@word $($word)?),)+ }
            }
        }
    };
    (@word) => { None };
    (@word $word:literal) => { Some($word) };
}

deeds! {
    /// Before a raise: nothing in or on the car can slide.
    LoadSecured = "load-secured";
    /// Nobody is in the car.
    NobodyAboard = "nobody-aboard";
    /// The car goes up until the wheels are just clear.
    WheelsClear = "wheels-clear";
    /// Rocked, and steady.
    Steady = "steady";
    /// Rocked, and not steady.
    NotSteady = "not-steady";
    /// Locks or stands carry the car.
    LocksEngaged = "locks-engaged";
    /// The car comes down onto its pads.
    OverPads = "tyres-over-pads";
    /// The car comes down onto the floor.
    FloorClear = "floor-clear";
    /// The car comes down from wheels-clear to where it stood.
    AreaClear = "area-clear";
    /// The car is rolled off its pads.
    OffPads = "car-off-pads";
    /// Each tyre stands in the middle of its pad.
    Centred = "tyres-centred";
    /// Everybody is counted out from under the car.
    PeopleOut = "people-out";
    /// The brake is on and holds.
    BrakeHolds = "brake-holds";
    /// The brake is off.
    BrakeOff = "brake-off";
    /// Chocks both ways.
    ChocksSet = "chocks-both-ways";
    /// Chocks away.
    ChocksAway = "chocks-away";
    /// Only the tyres touch the car.
    OnlyTyres = "only-tyres-touch";
    /// Wheel nuts are cracked loose.
    NutsCracked = "nuts-cracked";
    /// Wheels are taken off.
    WheelsOff = "wheels-off-stored";
    /// Wheels are put on their hubs.
    WheelsOn = "wheels-on-hubs";
    /// Nuts are seated in pattern.
    NutsSeated = "nuts-seated";
    /// Nuts are tightened to the maker's torque.
    NutsTight = "nuts-pattern";
    /// Nuts are checked by whoever affirms it.
    NutsChecked = "nuts-checked";
    /// Springs are captive in their seats.
    SpringsCaptive = "springs-captive";
    /// Locking rings are loosened.
    RingsLoose = "rings-loosened";
    /// Locking rings are tightened.
    RingsTight = "rings-tight";
    /// Clamped bushes are slackened.
    BushesSlack = "bushes-slack";
    /// Bushes are tightened at ride height.
    BushesSet = "bushes-set";
    /// The front link is undone.
    FrontUndone = "front-link-undone";
    /// The rear link is undone.
    RearUndone = "rear-link-undone";
    /// The front link's bolt is in.
    FrontBolt = "front-bolt-by-hand";
    /// The rear link's bolt is in.
    RearBolt = "rear-bolt-by-hand";
    /// Ballast is laid in.
    BallastIn = "ballast";
    /// Ballast is strapped.
    BallastStrapped = "ballast-strapped";
    /// Ballast is out.
    BallastOut = "ballast-out";
    /// Fuel is at its agreed level.
    FuelAgreed = "fuel-agreed";
    /// Loose kit is out.
    KitOut = "kit-out";
    /// Pads are laid out.
    PadsPlaced = "pads-at-wheels";
    /// Shims go under pads.
    Shimmed = "shims";
    /// Zeros are read.
    ZerosRead = "zeros-read";
    /// Pads are put away.
    PadsAway = "pads-away";
    /// Slip plates are free.
    PlatesFree = "plates-free";
    /// The car is rolled off and on.
    Rolled = "rolled-off-on";
    /// Both ends are bounced.
    Bounced = "bounced-both-ends";
    /// The lifting mode is set.
    LiftingSet = "lifting-mode-set";
    /// The lifting mode is ended.
    LiftingEnded = "lifting-mode-ended";
    /// High voltage is made safe.
    VoltageSafe = "maker-high-voltage";
    /// High voltage is back in service.
    VoltageBack = "high-voltage-back";
    /// The extinguisher is pinned.
    Pinned = "extinguisher-pinned";
    /// The extinguisher is live.
    Live = "extinguisher-live";
    /// Damper clicks are counted.
    Clicks = "clicks";
    /// Damper clicks are set back.
    ClicksBack = "clicks-back";
    /// Clearance at full lock.
    LockClear = "lock-clear";
    /// Clearance at full bump.
    BumpClear = "bump-clear";
    /// The brake pedal is firm.
    PedalFirm = "brake-pedal-firm";
    /// Parts are counted.
    PartsCounted = "parts-counted";
    /// Tools are counted.
    ToolsCounted = "tools-counted";
    /// Alignment fasteners are tight.
    FastenersTight = "fasteners-tight";
    /// Alignment fasteners are checked by whoever affirms it.
    FastenersChecked = "fasteners-checked";
    /// The car was driven.
    Driven = "drive-done";
    /// The car is rolled by half a turn of its wheels.
    Runout = "runout-edge-down";
    /// The steering is swept.
    Swept = "sweep-right-gauge";
    /// Loads are read.
    Loads = "loads";
    /// Stated: no front bar.
    FrontNone = "front-none";
    /// Stated: a front bar with fixed links.
    FrontFixed = "front-fixed";
    /// Stated: a front bar with an adjustable link.
    FrontAdjustable = "front-adjustable";
    /// Stated: no rear bar.
    RearNone = "rear-none";
    /// Stated: a rear bar with fixed links.
    RearFixed = "rear-fixed";
    /// Stated: a rear bar with an adjustable link.
    RearAdjustable = "rear-adjustable";
    /// Stated: a collar at each wheel, to be adjusted.
    EachWheel = "each-wheel";
    /// Stated: measured and advised only.
    NotAdjusted;
    /// Stated: the adjuster's maker allows turning under load.
    LoadAllowed = "maker-allows-load";
    /// Stated: no turning under load.
    LoadForbidden = "never-under-load";
    /// Stated: a lifting mode.
    HasLifting = "has-lifting-mode";
    /// Stated: none.
    NoLifting = "no-lifting-mode";
    /// Stated: high voltage aboard.
    HasVoltage = "has-high-voltage";
    /// Stated: none.
    NoVoltage = "no-high-voltage";
    /// Stated: a plumbed-in extinguisher.
    HasExtinguisher = "plumbed-extinguisher";
    /// Stated: none.
    NoExtinguisher = "no-extinguisher";
    /// The front link's parts are counted back.
    FrontCounted;
    /// The rear link's parts are counted back.
    RearCounted;
    /// Tyres are at their working pressures.
    PressureWorking;
    /// Tyres are at their cold pressures.
    PressureCold;
    /// The pads' level is judged.
    PadsLevel;
    /// The wait has passed.
    Waited;
    /// A number is the one of the first time.
    SameAgain;
    /// A collar is turned.
    Collar;
    /// Camber, toe or caster is changed.
    Angles;
    /// Heights or angles are read, or loads are compared.
    Reads;
    /// Somebody is under the car.
    Under;
    /// Somebody reaches into an arch or under a sill.
    Reach;
    /// A danger was acknowledged at the step.
    DangerRead;
    /// A danger or a warning was acknowledged at the step.
    WarningRead;
    /// The step is done on demand, to bring back what was agreed.
    OnDemand;
    /// A reading that the balance is judged by.
    Balances;
    /// A reading that stands on the sheet as left.
    AsLeft;
    /// The job is sealed.
    Seals;
    /// The job ends as stopped.
    Stops;
}

/// A set of deeds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Deeds(u128);

impl Deeds {
    /// With one more.
    #[must_use]
    pub fn with(self, deed: Deed) -> Deeds {
        Deeds(self.0 | 1 << deed as u32)
    }

    /// True when the deed is among them.
    pub fn has(self, deed: Deed) -> bool {
        self.0 & (1 << deed as u32) != 0
    }

    /// True when any of these is among them.
    pub fn any(self, deeds: &[Deed]) -> bool {
        deeds.iter().any(|deed| self.has(*deed))
    }

    /// Both together.
    #[must_use]
    pub fn and(self, other: Deeds) -> Deeds {
        Deeds(self.0 | other.0)
    }
}

/// True for a deed that makes something safe, and that counts only when it is affirmed: a 'no' to 'wheels are off' may
/// still be a wheel that is off.
fn assures(deed: Deed) -> bool {
    use Deed::*;
    !matches!(
        deed,
        WheelsClear
            | BrakeOff
            | NutsCracked
            | WheelsOff
            | WheelsOn
            | RingsLoose
            | BushesSlack
            | FrontUndone
            | RearUndone
            | OverPads
            | FloorClear
            | AreaClear
            | OffPads
            | ChocksAway
            | PadsPlaced
            | Driven
    )
}

/// What a step does, whichever options are chosen. `affirmed` is whether its checks are answered with yes.
pub fn of_step(document: &Document, step: &Step, affirmed: bool) -> Deeds {
    let mut deeds = Deeds::default();
    for input in &step.inputs {
        let told = Deed::ALL.iter().filter(|deed| deed.word() == Some(&input.id));
        for deed in told.filter(|deed| affirmed || !assures(**deed) || !matches!(input.kind, Kind::Check)) {
            deeds = deeds.with(*deed);
        }
        if ["heights", "camber", "toe"].contains(&input.id.as_str()) {
            deeds = deeds.with(Deed::Reads);
        }
    }
    for gate in &step.gates {
        deeds = deeds.and(of_gate(document, gate));
    }
    if deeds.has(Deed::Loads) {
        deeds = deeds.with(Deed::Reads);
    }
    deeds = deeds.and(of_topics(step.changes.iter()));
    let signals = step.hazards.iter().filter_map(|id| document.hazard(id)).map(|hazard| hazard.signal);
    for signal in signals {
        if signal == Signal::Danger {
            deeds = deeds.with(Deed::DangerRead);
        }
        if signal <= Signal::Warning {
            deeds = deeds.with(Deed::WarningRead);
        }
    }
    let on_demand = document.step(&step.id).is_some_and(|(stage, _)| stage.path == Path::OnDemand);
    for (so, deed) in [
        (step.place == Place::Under, Deed::Under),
        (step.place == Place::Reach, Deed::Reach),
        (on_demand, Deed::OnDemand),
        (deeds.has(Deed::Reads) && balances(document, step), Deed::Balances),
        (deeds.has(Deed::Reads) && as_left(document).contains(&step.id.as_str()), Deed::AsLeft),
        (step.ending == Some(Ending::Seal), Deed::Seals),
        (step.ending == Some(Ending::Stopped), Deed::Stops),
    ] {
        if so {
            deeds = deeds.with(deed);
        }
    }
    deeds
}

fn reads(step: &Step) -> bool {
    let told = |input: &Input| ["loads", "heights", "camber", "toe"].contains(&input.id.as_str());
    step.inputs.iter().any(told)
}

/// True for a reading that a step which judges the windows, and reads nothing itself, rests on.
fn balances(document: &Document, reading: &Step) -> bool {
    let judges = |step: &Step| step.gates.contains(&Gate::Windows) && !reads(step);
    document.steps().any(|(_, step)| judges(step) && step.rests_on.contains(&reading.id))
}

/// The readings that the seal rests on, and those that these rest on: what stands on the sheet as left.
pub fn as_left(document: &Document) -> Vec<&str> {
    let seal = document.steps().find(|(_, step)| step.ending == Some(Ending::Seal));
    let mut found: Vec<&str> = Vec::new();
    let mut from: Vec<&Step> = seal.map(|(_, step)| step).into_iter().collect();
    while let Some(step) = from.pop() {
        let readings = step.rests_on.iter().filter_map(|id| document.step(id)).map(|(_, step)| step);
        for reading in readings.filter(|step| reads(step)) {
            if !found.contains(&reading.id.as_str()) {
                found.push(&reading.id);
                from.push(reading);
            }
        }
    }
    found
}

/// What an option does when it is chosen.
pub fn of_option(option: &ChoiceOption) -> Deeds {
    let told = Deed::ALL.iter().filter(|deed| deed.word() == Some(&option.id));
    let told = told.fold(Deeds::default(), |deeds, deed| deeds.with(*deed));
    let advises = ["not-adjustable", "single-spring", "interconnected", "active"].contains(&option.id.as_str());
    let told = if advises { told.with(Deed::NotAdjusted) } else { told };
    // The plan's topics are no change of the car.
    told.and(of_topics(option.changes.iter()))
}

fn of_topics<'t>(topics: impl Iterator<Item = &'t String>) -> Deeds {
    topics.fold(Deeds::default(), |deeds, topic| match topic.as_str() {
        "collar-positions" => deeds.with(Deed::Collar),
        "camber" | "toe" | "caster" => deeds.with(Deed::Angles),
        _ => deeds,
    })
}

fn of_gate(document: &Document, gate: &Gate) -> Deeds {
    let none = Deeds::default();
    match gate {
        Gate::Pressures { at: PressureKind::Working, .. } => none.with(Deed::PressureWorking),
        Gate::Pressures { at: PressureKind::Cold, .. } => none.with(Deed::PressureCold),
        Gate::PadsLevel => none.with(Deed::PadsLevel),
        Gate::Waited => none.with(Deed::Waited),
        Gate::SameAs { .. } => none.with(Deed::SameAgain),
        Gate::CountedBack { of } => {
            let undone = |deed: Deed| {
                document.step(of).is_some_and(|(_, step)| step.inputs.iter().any(|i| deed.word() == Some(&i.id)))
            };
            let front = if undone(Deed::FrontUndone) { none.with(Deed::FrontCounted) } else { none };
            if undone(Deed::RearUndone) { front.with(Deed::RearCounted) } else { front }
        }
        Gate::Unchanged { .. } | Gate::SettlesAgree { .. } | Gate::HeightsNear { .. } | Gate::AnglesNear { .. } => {
            none.with(Deed::Reads)
        }
        _ => none,
    }
}

/// True when an input is part of what a deed is told by, so that a smaller document must keep it.
pub fn tells(input: &Input) -> bool {
    Deed::ALL.iter().any(|deed| deed.word() == Some(&input.id))
}
