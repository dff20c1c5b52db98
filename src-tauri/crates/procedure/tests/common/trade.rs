//! What must never happen, as a person who stands in the bay would see it.
//!
//! [`Bay`] follows a job by the names of its steps alone. It never looks at the document's facts, needs or sets, so a
//! document that forgets to say what a step does is found out. The rules are facts of the trade (common practice, no
//! published source).

use bayhand_procedure::Event;
use std::collections::{BTreeMap, BTreeSet};

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Stands {
    #[default]
    Ground,
    Pads,
    JustClear,
    OnLocks,
}

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd)]
pub enum Nuts {
    /// As the car came.
    #[default]
    Untouched,
    /// Cracked, or loose after a wheel was off.
    Loose,
    Seated,
    /// At torque by one person.
    OneName,
    /// At torque by two.
    TwoNames,
}

/// The bay as it is.
#[derive(Clone, Debug, Default)]
pub struct Bay {
    pub stands: Stands,
    /// Steps of this raise, in order.
    raise: Vec<String>,
    /// The last thing that anybody did or tried at the car; none after a break.
    last: Option<String>,
    brake_on: bool,
    chocked: bool,
    wheels_off: bool,
    nuts: Nuts,
    first_name: String,
    springs_moved: bool,
    rings_loose: bool,
    bushes_slack: bool,
    loose_links: BTreeSet<&'static str>,
    ballast_in: bool,
    pressures: &'static str,
    fuel_agreed: bool,
    lifting_mode_set: bool,
    voltage_off: bool,
    pinned: bool,
    dampers_noted: bool,
    pads_out: bool,
    tools_out: bool,
    cleared: bool,
    fastener_names: BTreeSet<String>,
    at_rest: bool,
    /// How many things were done.
    now: usize,
    /// When each step was last done.
    at: BTreeMap<String, usize>,
    /// When the car was last changed in a way that moves loads, heights or angles.
    changed: usize,
    /// By which step.
    pub changed_by: String,
    /// What the job says of the car.
    said: BTreeMap<String, String>,
}

fn starts(step: &str, with: &[&str]) -> bool {
    with.iter().any(|w| step.starts_with(w))
}

/// Hands and head under, or inside the arches of, a raised car.
const UNDER: &[&str] = &[
    "raised.",
    "pads.",
    "links.",
    "wheels.off",
    "wheels.on",
    "wheels.nuts",
    "wheels.springs",
    "lift.look",
    "lock.rings",
    "align.plates",
    "align.runout",
];
/// An arm under, or in the arch of, a car on its wheels.
const REACHES: &[&str] =
    &["lock.bushes", "lock.gap", "align.change", "align.fasteners", "rough.set-angles", "final.clearance"];

/// True for a step that reads the car as it stands.
pub fn reads(step: &str) -> bool {
    let name = step.rsplit('.').next().unwrap_or_default();
    name.starts_with("read")
        || name.ends_with("-read")
        || ["rough.heights", "rough.angles", "final.angles"].contains(&step)
}

fn turns(step: &str) -> bool {
    step.starts_with("loop.turn") || step == "rough.set"
}

impl Bay {
    fn says(&self, input: &str, option: &str) -> bool {
        self.said.get(input).is_some_and(|o| o == option)
    }

    fn down(&self) -> bool {
        matches!(self.stands, Stands::Ground | Stands::Pads)
    }

    fn held(&self) -> bool {
        self.brake_on || self.chocked
    }

    /// This raise was acknowledged, stopped at wheels-clear, rocked and locked.
    fn raised_properly(&self) -> bool {
        let order = ["raise.check", "raise.clear", "raise.rock", "raise.lock"];
        self.stands == Stands::OnLocks && self.raise.iter().map(String::as_str).eq(order)
    }

    fn just_did(&self, step: &str) -> bool {
        self.last.as_deref() == Some(step)
    }

    /// What is wrong with this step at this moment; none when it may be done.
    pub fn danger(&self, step: &str) -> Option<&'static str> {
        let reaches = starts(step, REACHES) || step == "back.front" || step == "back.rear";
        let loaded = self.says("turn-under-load", "maker-allows-load") && self.stands == Stands::Pads && self.held();
        let comes_down = step == "lower.pads" || step == "lower.ground";
        let rolls =
            ["settle.roll", "restore.onto-pads", "restore.off-pads", "final.off-pads", "final.drive"].contains(&step);
        let reading = reads(step);
        let bar_on =
            |bar: &str, axle| self.says(bar, &format!("{axle}-adjustable")) && !self.loose_links.contains(axle);
        let wrong = [
            (
                (starts(step, UNDER) || step == "rough.set") && !self.raised_properly(),
                "under a car that this raise did not secure",
            ),
            (turns(step) && !(self.raised_properly() || loaded), "a collar is turned under load"),
            (
                turns(step) && (bar_on("bar-front", "front") || bar_on("bar-rear", "rear")),
                "a collar is turned with a link on",
            ),
            (turns(step) && !self.rings_loose, "a collar is turned against its ring"),
            (step == "raise.clear" && !self.just_did("raise.check"), "the car goes up on a stale look"),
            (step == "raise.clear" && !(self.held() && self.down()), "the car goes up free to roll"),
            (
                step == "raise.clear" && self.says("lifting-mode", "has-lifting-mode") && !self.lifting_mode_set,
                "the car goes up without its lifting mode",
            ),
            (
                step == "raise.clear" && self.says("high-voltage", "has-high-voltage") && !self.voltage_off,
                "the car goes up to be worked on with its high voltage on",
            ),
            (
                step == "raise.lock" && !self.just_did("raise.rock"),
                "the car goes on up without having been rocked just now",
            ),
            (comes_down && !self.just_did("lower.people"), "the car comes down on somebody"),
            (
                comes_down && (self.wheels_off || self.springs_moved || self.nuts == Nuts::Loose),
                "the car comes down with a wheel, a nut or a spring loose",
            ),
            (rolls && self.nuts == Nuts::Loose, "the car rolls on loose nuts"),
            (rolls && step != "final.drive" && self.chocked, "the car is rolled against chocks"),
            (step == "wheels.off" && !matches!(self.nuts, Nuts::Loose), "nuts are cracked on a raised car"),
            (
                step == "wheels.crack" && !(self.down() && self.held()),
                "nuts are cracked on a raised car or one free to roll",
            ),
            (reaches && !(self.held() && self.down()), "somebody reaches under a car that can roll"),
            (
                step.starts_with("back.") && !reading && step != "back.fixed" && !self.at_rest,
                "a link is put on a car that has not settled",
            ),
            (
                ["used.ballast", "restore.ballast", "final.ballast-out"].contains(&step)
                    && self.says("extinguisher", "plumbed-extinguisher")
                    && !self.pinned,
                "somebody leans in under a live extinguisher",
            ),
            (
                reading && (self.stands != Stands::Pads || self.held()),
                "a reading with the brake on, a chock touching or off the pads",
            ),
            (
                reading && !(self.ballast_in && self.fuel_agreed && self.pressures == "working"),
                "a reading of another car than agreed",
            ),
            (reading && !self.at_rest, "a reading of a car that has not settled"),
            (
                reading && !(self.just_did("settle.touch") || self.last.as_deref().is_some_and(reads)),
                "a reading without a look at what touches the car",
            ),
            (
                reading && (self.wheels_off || self.springs_moved || self.nuts == Nuts::Loose),
                "a reading on loose parts",
            ),
            (
                starts(step, &["baseline.read", "loop.read"])
                    && self.says("springing", "each-wheel")
                    && !self.bushes_slack,
                "the balance is read on clamped bushes",
            ),
            (
                starts(step, &["locked.read", "back.front-read", "back.rear-read", "final."])
                    && reading
                    && self.bushes_slack,
                "a reading of the finished car on slack bushes",
            ),
            (step == "final.drive" && self.not_fit().is_some(), "a drive in a car that is not fit"),
        ];
        wrong.into_iter().find(|(broken, _)| *broken).map(|(_, says)| says)
    }

    /// Why the car may not be driven; none when it may.
    fn not_fit(&self) -> Option<&'static str> {
        let wrong = [
            (!self.loose_links.is_empty(), "a link or a part is off"),
            (self.wheels_off || self.nuts != Nuts::TwoNames, "wheel nuts without two names"),
            (self.rings_loose || self.springs_moved, "a collar is not locked or a spring not looked at"),
            (self.bushes_slack, "a bush is slack"),
            (self.ballast_in, "ballast is in"),
            (self.pinned, "the extinguisher is pinned"),
            (self.lifting_mode_set, "it is in its lifting mode"),
            (self.voltage_off, "its high voltage is off"),
            (!self.cleared, "clearances and pedal were not checked since"),
            (self.tools_out, "tools were not counted since"),
            (self.fastener_names.len() < 2, "alignment fasteners without two names"),
            (self.stands != Stands::Ground, "it does not stand on the floor"),
        ];
        wrong.into_iter().find(|(broken, _)| *broken).map(|(_, says)| says)
    }

    /// What is wrong with a job that is about to be sealed.
    pub fn wrong_at_seal(&self) -> Option<&'static str> {
        let read = |step: &str| self.at.get(step).copied().unwrap_or(0);
        let second = read("final.read-2").max(read("final.read-3"));
        let wrong = [
            (self.pressures != "cold", "a tyre is not at its hand-over pressure"),
            (self.dampers_noted, "dampers are not set back"),
            (self.pads_out, "the pads are still out"),
            (read("final.read-1") <= self.changed, "the first figure on the sheet is of another car"),
            (second <= self.changed, "the second figure on the sheet is of another car"),
            (read("final.angles") <= self.changed, "the angles on the sheet are of another car"),
        ];
        self.not_fit().or_else(|| wrong.into_iter().find(|(broken, _)| *broken).map(|(_, says)| says))
    }

    /// Follows an event.
    pub fn saw(&mut self, event: &Event) {
        match event {
            Event::Resumed { .. } => self.last = None,
            Event::Tried { step, .. } => self.last = Some(step.clone()),
            Event::Done { step, by, entries, .. } => {
                for (key, entered) in entries {
                    self.said.insert(key.clone(), entered.text.clone());
                }
                self.did(step, by);
            }
            Event::Waived { step, by, .. } => self.did(step, by),
            _ => {}
        }
    }

    fn did(&mut self, step: &str, by: &str) {
        self.now += 1;
        self.at.insert(step.to_owned(), self.now);
        self.last = Some(step.to_owned());
        self.moves(step);
        self.works(step, by);
        // Each reading of the loads has a settle of its own; angles may be read at the settle of the heights.
        if reads(step) && !step.starts_with("rough.") {
            self.at_rest = false;
        }
    }

    fn moves(&mut self, step: &str) {
        let stands = match step {
            "raise.clear" => Some(Stands::JustClear),
            "raise.lock" => Some(Stands::OnLocks),
            "lower.pads" | "raise.abort-pads" | "restore.onto-pads" => Some(Stands::Pads),
            "lower.ground" | "raise.abort-ground" | "restore.off-pads" | "final.off-pads" | "final.drive" => {
                Some(Stands::Ground)
            }
            _ => None,
        };
        if step == "raise.check" {
            self.raise.clear();
        }
        if step.starts_with("raise.") && !(step == "raise.rock" && self.says("rock", "not-steady")) {
            // Rocked twice is rocked.
            self.raise.retain(|s| s != step);
            self.raise.push(step.to_owned());
        }
        if let Some(stands) = stands {
            self.stands = stands;
            self.at_rest = false;
        }
        match step {
            "settle.brake-on"
            | "settle.brake-on-electric"
            | "lower.people"
            | "restore.onto-pads"
            | "restore.off-pads"
            | "final.off-pads"
            | "final.drive" => self.brake_on = true,
            "settle.brake-off" | "settle.brake-off-electric" | "align.runout" => {
                (self.brake_on, self.at_rest) = (false, false)
            }
            "settle.chocks-on" => self.chocked = true,
            "settle.chocks-away" => (self.chocked, self.at_rest) = (false, false),
            "raise.lock" => self.chocked = false,
            "settle.steering" | "settle.plates" | "settle.roll" | "settle.bounce" | "align.caster" => {
                self.at_rest = false
            }
            "settle.wait" => self.at_rest = true,
            _ => {}
        }
    }

    fn works(&mut self, step: &str, by: &str) {
        let mut changes = turns(step) || step.starts_with("align.change") || step == "rough.set-angles";
        if self.stands == Stands::OnLocks
            || starts(step, &["back.front", "back.rear", "lock.", "align.change", "align.fasteners", "rough.set"])
                && !reads(step)
        {
            self.tools_out = true;
        }
        if changes {
            (self.cleared, self.at_rest) = (false, false);
            if !turns(step) {
                self.fastener_names.clear();
            }
        }
        match step {
            _ if turns(step) => self.springs_moved = true,
            "walk.extinguisher" => self.pinned = true,
            "final.extinguisher" => self.pinned = false,
            "walk.lifting-mode" => self.lifting_mode_set = true,
            "final.lifting-mode" => self.lifting_mode_set = false,
            "walk.high-voltage" => self.voltage_off = true,
            "final.high-voltage" => self.voltage_off = false,
            "raised.dampers" => self.dampers_noted = true,
            "final.dampers" => self.dampers_noted = false,
            "raised.collars" => self.rings_loose = true,
            "lock.rings" => (self.rings_loose, self.springs_moved) = (false, false),
            "wheels.springs" => self.springs_moved = false,
            "raised.bushes" => (self.bushes_slack, changes) = (true, true),
            "lock.bushes" => (self.bushes_slack, self.at_rest, changes) = (false, false, true),
            "pads.place" => (self.pads_out, changes) = (true, true),
            "pads.shims" => changes = true,
            "final.off-pads" => self.pads_out = false,
            "links.front-release" => changes = self.loose_links.insert("front"),
            "links.rear-release" => changes = self.loose_links.insert("rear"),
            "back.front" => (self.at_rest, changes) = (false, self.loose_links.remove("front")),
            "back.rear" => (self.at_rest, changes) = (false, self.loose_links.remove("rear")),
            "used.ballast" => (self.ballast_in, changes) = (true, true),
            "restore.ballast" => self.ballast_in = true,
            "final.ballast-out" => self.ballast_in = false,
            "used.fuel" => (self.fuel_agreed, changes) = (true, true),
            "restore.fuel" => self.fuel_agreed = true,
            "used.pressures" | "restore.pressures" => self.pressures = "working",
            "final.cold" => self.pressures = "cold",
            "wheels.crack" => self.nuts = Nuts::Loose,
            "wheels.off" => (self.wheels_off, self.nuts, self.cleared) = (true, Nuts::Loose, false),
            "wheels.on" => (self.wheels_off, self.nuts) = (false, Nuts::Loose),
            "wheels.nuts" => self.nuts = Nuts::Seated,
            "lock.nuts" => (self.nuts, self.first_name) = (Nuts::OneName, by.to_owned()),
            "lock.nuts-second" if self.nuts >= Nuts::OneName && by != self.first_name => self.nuts = Nuts::TwoNames,
            "align.fasteners" => self.fastener_names = BTreeSet::from([by.to_owned()]),
            "align.fasteners-second" => drop(self.fastener_names.insert(by.to_owned())),
            "final.clearance" => self.cleared = true,
            "final.count" => self.tools_out = false,
            "final.drive" => {
                (self.nuts, self.cleared, self.fuel_agreed, self.pressures, changes) =
                    (Nuts::Seated, false, false, "warm", true);
            }
            _ => {}
        }
        if changes {
            self.changed = self.now;
            self.changed_by = step.to_owned();
        }
    }
}
