//! The procedure document: the job as data. Words stand apart, under the ids that are given here.

use crate::{Condition, Entered, Fact, State, Value};
use schemars::JsonSchema;
use serde::{Deserialize, Deserializer, Serialize};
use std::collections::BTreeMap;

/// The whole procedure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Document {
    /// Format of the document; this program reads format 1.
    pub format: u32,
    /// Id of the procedure.
    pub id: String,
    /// Its version.
    pub version: String,
    /// Things that are not physical facts and that figures rest on, such as `collar-positions`.
    pub topics: Vec<String>,
    /// Hazards, acknowledged at steps.
    pub hazards: Vec<Hazard>,
    /// Facts that are true for the moment only.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub lapses: Vec<Lapse>,
    /// The stages, in order.
    pub stages: Vec<Stage>,
}

/// A fact that is true for the moment only: whatever else is done or tried, or a break, unsets it. So a person counted
/// out or a seat looked into counts for the very next thing, and no step can forget to say so.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Lapse {
    /// The fact.
    pub fact: Fact,
    /// What it becomes.
    pub to: Value,
    /// It lapses only where this holds after the step.
    #[serde(default, skip_serializing_if = "Condition::is_empty")]
    pub when: Condition,
    /// Steps that do not unset it, because they are what makes it so.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub except: Vec<String>,
}

/// A hazard.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Hazard {
    /// Id; its words are `hazard-ID` with the attributes `.line` (one command, for a distance) and `.text`.
    pub id: String,
    /// Signal word.
    pub signal: Signal,
    /// It is met only where this holds, such as on one kind of lift.
    #[serde(default, skip_serializing_if = "Condition::is_empty")]
    pub when: Condition,
}

/// Signal words by ANSI Z535.4.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Signal {
    /// Will result in death or serious injury.
    Danger,
    /// Could result in death or serious injury.
    Warning,
    /// Could result in minor or moderate injury.
    Caution,
    /// No injury.
    Notice,
}

/// A stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Stage {
    /// Id; its name is `stage-ID`.
    pub id: String,
    /// What kind of stage.
    #[serde(default)]
    pub path: Path,
    /// Its steps, in order.
    pub steps: Vec<Step>,
}

/// When the steps of a stage are led to.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Path {
    /// In order, as part of the job.
    #[default]
    Main,
    /// Only when a step needs a fact that one of them brings about: raising, lowering, settling.
    OnDemand,
    /// Only when the job is being stopped: the way to a safe car.
    Stopped,
}

/// A step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// Id, `stage.name`, unique in the document. Its words are `step-STAGE-NAME` with the attribute `.detail`.
    pub id: String,
    /// The least rank that may do it.
    #[serde(default)]
    pub by: Rank,
    /// The step belongs to this job only when this holds.
    #[serde(default, skip_serializing_if = "Condition::is_empty")]
    pub when: Condition,
    /// Physical facts that must hold before it is offered.
    #[serde(default, skip_serializing_if = "Condition::is_empty")]
    pub needs: Condition,
    /// Where somebody's body is while it is done.
    #[serde(default, skip_serializing_if = "Place::is_beside")]
    pub place: Place,
    /// Hazards, acknowledged by hand before anything else.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hazards: Vec<String>,
    /// What is entered.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub inputs: Vec<Input>,
    /// What must hold to go on.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub gates: Vec<Gate>,
    /// The least rank that may waive its gates; absent: nobody may.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub waive: Option<Rank>,
    /// Facts that are so once it is done.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sets: Vec<Becomes>,
    /// Topics that it changes.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub changes: Vec<String>,
    /// Facts, topics and steps that its result rests on.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub rests_on: Vec<String>,
    /// A result that is taken once, such as how the car was found: when void it is not taken again.
    #[serde(default, skip_serializing_if = "is_false")]
    pub once: bool,
    /// The agreed change at the very end of the job (ballast out, cold pressures), which voids nothing.
    #[serde(default, skip_serializing_if = "is_false")]
    pub closing: bool,
    /// The job ends with it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ending: Option<Ending>,
}

fn is_false(b: &bool) -> bool {
    !b
}

/// Where somebody's body is while a step is done. The prover asks of each place what must hold there, whatever the
/// step's `needs` say.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    /// Beside the car.
    #[default]
    Beside,
    /// Under a raised car, or at its hanging wheels: only once this raise is acknowledged, rocked and locked.
    Under,
    /// A hand or an arm in an arch or beneath the sill: of a raised car as above, or of one on its wheels that is held.
    Reach,
}

impl Place {
    fn is_beside(&self) -> bool {
        *self == Place::Beside
    }
}

/// A fact and what it becomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Becomes {
    /// The fact.
    pub fact: Fact,
    /// Its new value.
    pub to: Value,
}

/// How a job ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Ending {
    /// By a supervisor's seal.
    Seal,
    /// Stopped half-way, with the car made safe.
    Stopped,
}

/// A person's rank, the least first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Rank {
    /// Follows the steps at the car.
    #[default]
    Trainee,
    /// A chassis set-up technician.
    Technician,
    /// Audits, waives what may be waived, seals.
    Supervisor,
}

/// Something to enter. Its words are `input-ID`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Input {
    /// Id, unique in the step; with `per` the keys are `ID.FL` or `ID.front`.
    pub id: String,
    /// Asked once, for each corner, or for each axle.
    #[serde(default)]
    pub per: Per,
    /// What kind of answer.
    pub kind: Kind,
    /// Asked only when one of these options of an earlier choice of the step is chosen; absent: always.
    #[serde(default, skip_serializing_if = "Vec::is_empty", deserialize_with = "one_or_several")]
    pub with: Vec<String>,
}

/// Documents that older jobs carry name a single option, without brackets.
fn one_or_several<'de, D: Deserializer<'de>>(from: D) -> Result<Vec<String>, D::Error> {
    #[derive(Deserialize)]
    #[serde(untagged)]
    enum Named {
        One(String),
        Several(Vec<String>),
    }
    Ok(match Named::deserialize(from)? {
        Named::One(option) => vec![option],
        Named::Several(options) => options,
    })
}

/// How often an input is asked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Per {
    /// Once.
    #[default]
    Once,
    /// FL, FR, RL, RR.
    Corner,
    /// FL, FR.
    FrontWheels,
    /// RL, RR.
    RearWheels,
    /// front, rear.
    Axle,
}

/// What kind of answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Kind {
    /// A number with a unit, in a range of decimal texts.
    Number(Number),
    /// One of some options.
    Choice(Vec<ChoiceOption>),
    /// Yes; or no, when it was found wrong.
    Check,
    /// Text; 'none' is written where nothing is meant.
    Text,
}

/// A number's form.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Number {
    /// Unit of the range, by the codes of `measure` (`kg`, `mm`, `bar`, `deg`, `turn`, `n-per-mm`, ...). Another unit
    /// of the same quantity may be entered.
    pub unit: String,
    /// Least value, decimal text.
    pub min: String,
    /// Greatest value, decimal text.
    pub max: String,
    /// How many looks at the instrument may be entered.
    #[serde(default = "one")]
    pub looks: u8,
}

fn one() -> u8 {
    1
}

/// An option of a choice. Its words are `option-ID`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ChoiceOption {
    /// Id.
    pub id: String,
    /// Facts that are so when it is chosen.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sets: Vec<Becomes>,
    /// Topics that are changed when it is chosen.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub changes: Vec<String>,
}

/// What must hold to go on. Its words are `gate-NAME`. A closed list: a new kind of gate is Rust.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Gate {
    /// Every check is answered with yes.
    ChecksYes,
    /// The entries make a car that can be.
    CarPossible,
    /// Each instrument's calibration is not past due.
    InstrumentsInDate,
    /// These instruments can judge the chosen windows at all.
    InstrumentsResolve,
    /// Done by somebody else than the named step.
    SecondPerson {
        /// The step that the other person did.
        of: String,
    },
    /// The parts counted here are as many as were counted at the named step.
    CountedBack {
        /// The step with an input `parts`.
        of: String,
    },
    /// The twist of the pads and their side tilt are inside what the windows bear.
    PadsLevel,
    /// Each tyre is at its agreed pressure.
    Pressures {
        /// Which of the agreed pressures.
        at: PressureKind,
        /// Allowed difference, decimal text, bar.
        within_bar: String,
    },
    /// Heights near what was agreed, and the difference side to side too.
    HeightsNear {
        /// Allowed difference from the agreed height, decimal text, mm.
        within_mm: String,
        /// Allowed error of the difference side to side, decimal text, mm.
        side_mm: String,
    },
    /// Camber and total toe, as read roughly, near what was agreed.
    AnglesNear {
        /// Allowed difference, decimal text, degrees.
        within_deg: String,
    },
    /// The pads stand to each other as they did at the named step.
    PadsStill {
        /// The step at which they were levelled.
        since: String,
        /// Allowed change of a pad against the mean of all, decimal text, mm.
        within_mm: String,
    },
    /// No rim is further out of true than it may be.
    RimsTrue {
        /// Most between the nearest and the furthest place of a rim, at the diameter that is measured, decimal text, mm.
        most_mm: String,
    },
    /// Camber, toe and caster are inside their windows, with what is known of them.
    AnglesAgreed,
    /// These instruments can judge the windows of the angles at all.
    AnglesResolve,
    /// The settles of this reading agree with each other.
    SettlesAgree {
        /// Allowed spread of a corner, decimal text, kg.
        within_kg: String,
    },
    /// The reading can be true of the car (total near the agreed one, corners not implausible).
    Plausible,
    /// Cross weight and height differences are inside their windows.
    Windows,
    /// Loads and heights are those of the named step within the spread of settles.
    Unchanged {
        /// The reading to compare with.
        since: String,
    },
    /// The workshop's wait after settling has passed since the step was offered.
    Waited,
    /// The collar has the travel that was entered.
    TravelLeft,
    /// No wheel stands on its bump stop, and each has the travel to it that is to stay free.
    BumpGap,
    /// A number is the one that was entered at the named step.
    SameAs {
        /// The step.
        of: String,
        /// The input, the same in both steps.
        input: String,
        /// Allowed difference, decimal text, in the input's unit.
        within: String,
    },
}

/// Which agreed pressures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PressureKind {
    /// Warm, as driven: for the readings.
    Working,
    /// Cold: as handed over.
    Cold,
}

impl Document {
    /// Every step with its stage, in order.
    pub fn steps(&self) -> impl Iterator<Item = (&Stage, &Step)> {
        self.stages.iter().flat_map(|stage| stage.steps.iter().map(move |step| (stage, step)))
    }

    /// A step by its id, with its stage.
    pub fn step(&self, id: &str) -> Option<(&Stage, &Step)> {
        self.steps().find(|(_, step)| step.id == id)
    }

    /// A hazard by its id.
    pub fn hazard(&self, id: &str) -> Option<&Hazard> {
        self.hazards.iter().find(|h| h.id == id)
    }

    /// The hazards that are met at a step of this job: those of its list that hold for this car and bay.
    pub fn hazards_at<'a>(&'a self, state: &'a State, step: &'a Step) -> impl Iterator<Item = &'a Hazard> + 'a {
        step.hazards.iter().filter_map(|id| self.hazard(id)).filter(|hazard| hazard.when.met(state))
    }
}

impl Input {
    /// The keys under which this input is entered.
    pub fn keys(&self) -> Vec<String> {
        let suffixed = |list: &[&str]| list.iter().map(|s| format!("{}.{s}", self.id)).collect();
        match self.per {
            Per::Once => vec![self.id.clone()],
            Per::Corner => suffixed(&["FL", "FR", "RL", "RR"]),
            Per::FrontWheels => suffixed(&["FL", "FR"]),
            Per::RearWheels => suffixed(&["RL", "RR"]),
            Per::Axle => suffixed(&["front", "rear"]),
        }
    }
}

impl Step {
    /// The choice whose options bring an input with them, by its id; none for an input that is always asked.
    pub fn brought_by(&self, input: &Input) -> Option<&str> {
        input.with.first()?;
        let offers = |i: &&Input| {
            matches!(&i.kind, Kind::Choice(options)
                if input.with.iter().all(|with| options.iter().any(|option| option.id == *with)))
        };
        self.inputs.iter().take_while(|i| i.id != input.id).find(offers).map(|choice| choice.id.as_str())
    }

    /// True when an input is asked for beside these answers: always, or because an option that brings it was chosen.
    pub fn asks(&self, input: &Input, entries: &BTreeMap<String, Entered>) -> bool {
        self.brought_by(input).is_none_or(|choice| entries.get(choice).is_some_and(|e| input.with.contains(&e.text)))
    }

    /// The input that an entry's key belongs to.
    pub fn input_of(&self, key: &str) -> Option<&Input> {
        self.inputs.iter().find(|input| input.keys().iter().any(|k| k == key))
    }

    /// Everything that the given answers make so: the step's own facts, then those of the chosen options.
    pub fn becomes<'a>(&'a self, chosen: &'a [String]) -> impl Iterator<Item = Becomes> + 'a {
        self.sets.iter().copied().chain(self.chosen(chosen).flat_map(|o| o.sets.iter().copied()))
    }

    /// Every topic that the given answers change.
    pub fn topics_changed<'a>(&'a self, chosen: &'a [String]) -> impl Iterator<Item = &'a str> + 'a {
        self.changes
            .iter()
            .map(String::as_str)
            .chain(self.chosen(chosen).flat_map(|o| o.changes.iter().map(String::as_str)))
    }

    /// The options of all its choices.
    pub fn options(&self) -> impl Iterator<Item = &ChoiceOption> {
        let choices = self.inputs.iter().filter_map(|input| match &input.kind {
            Kind::Choice(options) => Some(options),
            _ => None,
        });
        choices.flatten()
    }

    fn chosen<'a>(&'a self, chosen: &'a [String]) -> impl Iterator<Item = &'a ChoiceOption> + 'a {
        self.options().filter(move |o| chosen.contains(&o.id))
    }
}
