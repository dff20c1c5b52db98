//! The window at the car.

use super::parts::{CornerCode, Footprint, HazardView, StateCode, TimerView, TradeLine, TurnView, VerdictCode};
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Everything that the step window shows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct StepView {
    /// The revision that an answer must name.
    #[ts(type = "number")]
    pub revision: u64,
    /// The open job.
    pub job: Option<JobHead>,
    /// The stages as a ribbon of words.
    pub path: Vec<PathStage>,
    /// Who is signed on at this job.
    pub people: Vec<PersonView>,
    /// What of this computer is missing, said once: a voice, a loudspeaker. The job goes on without it.
    pub notice: Option<String>,
    /// Who is in the list of people, and who of them is at the car by PIN.
    pub staff: super::PeopleView,
    /// What the window is for now.
    pub screen: Screen,
}

/// The open job in a line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct JobHead {
    /// Number in the book.
    #[ts(type = "number")]
    pub id: i64,
    /// Car and job, such as 'Practice coupe, job 3'.
    pub title: String,
    /// True for a simulated car.
    pub practice: bool,
}

/// One stage.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PathStage {
    /// Code of the stage.
    pub id: String,
    /// Its name.
    pub title: String,
    /// How far it has come.
    pub state: StateCode,
    /// The state in a word, for a screen reader and for those who do not see shapes.
    pub state_word: String,
}

/// A person at this job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PersonView {
    /// Initials, unique in the job.
    pub initials: String,
    /// Code of the rank: `trainee`, `technician`, `supervisor`.
    pub rank: String,
    /// 'RO, trainee'.
    pub label: String,
}

/// What the step window is for now.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum Screen {
    /// No job is open.
    Start(StartView),
    /// Nobody is signed on yet at the open job.
    SignOn {
        /// What to do.
        says: String,
    },
    /// A step.
    Step(Box<StepBody>),
    /// The job is on hold.
    Held {
        /// Since when, by whom and why.
        says: String,
    },
    /// The job has ended: sealed or stopped.
    Ended {
        /// How.
        says: String,
    },
}

/// The choice of a job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct StartView {
    /// What to do first.
    pub says: String,
    /// Jobs that can be taken up.
    pub open_jobs: Vec<super::JobRow>,
    /// Practice jobs that somebody thought out.
    pub scenarios: Vec<ScenarioView>,
    /// The procedure that the next job begins with.
    pub procedure: super::ProcedureView,
}

/// A practice job that somebody thought out.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ScenarioView {
    /// Its id; of a file that is none, its name.
    pub id: String,
    /// What it is called.
    pub title: String,
    /// What the trainee is told, or why the file is no scenario.
    pub story: String,
    /// True for a file that is no scenario.
    pub wrong: bool,
}

/// One step.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct StepBody {
    /// Code of the step.
    pub id: String,
    /// 'Read and adjust, round 2, step 3 of 9'.
    pub count: String,
    /// The one instruction, as it is spoken.
    pub instruction: String,
    /// Why this step comes now, when the job did not simply go on: 'First, because the car must stand on the pads'.
    pub because: Option<String>,
    /// Details and the why, a text with paragraphs.
    pub detail: String,
    /// Hazards, first to be acknowledged.
    pub hazards: Vec<HazardView>,
    /// What is entered.
    pub fields: Vec<Field>,
    /// What the practice car's instruments or papers show for this step; empty at a real car.
    pub displays: Vec<Display>,
    /// Words on the main action.
    pub action: String,
    /// True while a hazard is still to be acknowledged.
    pub hazards_open: bool,
    /// The gate of the last try, when it did not pass.
    pub gate: Option<GateView>,
    /// What to turn.
    pub turn: Option<TurnView>,
    /// The trade line, at steps that judge.
    pub line: Option<TradeLine>,
    /// Footprints, at steps that judge.
    pub footprints: Vec<Footprint>,
    /// The factor that footprints' differences are drawn with, in words.
    pub footprint_scale: Option<String>,
    /// Figures with uncertainty and verdict, at steps that judge.
    pub figures: Vec<super::FigureRow>,
    /// The angles of the wheels, at steps that judge them.
    pub angles: Option<super::AnglesView>,
    /// What to turn at the adjusters of the angles.
    pub adjusters: Vec<super::AdjusterView>,
    /// Predicted and came, figure by figure, once a round was read.
    pub came: Vec<super::PairPlot>,
    /// A running wait.
    pub timer: Option<TimerView>,
    /// True for the step that a supervisor ends with a seal in the review window.
    pub seal_in_review: bool,
    /// True once a job is being made safe to be stopped.
    pub stopping: bool,
    /// Steps that can be opened again from here.
    pub reopen: Vec<super::SendBackTarget>,
}

/// One thing to enter.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Field {
    /// Key of the entry, such as `loads.FL`.
    pub key: String,
    /// Its words.
    pub label: String,
    /// The corner, when there is one for each corner.
    pub corner: Option<CornerCode>,
    /// What is asked for all corners together, such as 'Load'; fields of one group make a table.
    pub group: Option<String>,
    /// What kind of answer.
    pub kind: FieldKind,
    /// The range in words, such as '10 to 1500 kg'.
    pub range: Option<String>,
    /// What was entered here when the step was done before, in words; none: never, or nothing to compare with.
    pub last: Option<String>,
    /// The field belongs to the step only while this option is chosen.
    pub only_with: Option<OnlyWith>,
}

/// The options that bring a field with them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct OnlyWith {
    /// Key of the choice.
    pub key: String,
    /// Codes of its options.
    pub options: Vec<String>,
}

/// What kind of answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
#[serde(tag = "kind", rename_all = "kebab-case")]
pub enum FieldKind {
    /// A number with a unit.
    Number {
        /// Units to choose from; the first is preset.
        units: Vec<UnitChoice>,
        /// How many looks may be typed, separated by blanks.
        looks: u8,
    },
    /// One of several.
    Choice {
        /// The options.
        options: Vec<Choice>,
    },
    /// Yes, or no: found wrong.
    Check {
        /// Words for yes.
        yes: String,
        /// Words for no.
        no: String,
    },
    /// Free text; 'none' is written where nothing is meant.
    Text,
}

/// A unit to choose.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct UnitChoice {
    /// Code, sent back with the entry.
    pub code: String,
    /// Symbol.
    pub symbol: String,
}

/// An option.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Choice {
    /// Code, sent back as the entry's text.
    pub code: String,
    /// Its words.
    pub label: String,
    /// What would follow from turning for this place on the trade line.
    pub outlook: Option<Outlook>,
}

/// What would follow from turning for a place on the trade line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Outlook {
    /// The place in words, to be entered as it stands: the cross weight aimed at, %; none where an option names it.
    pub place: Option<String>,
    /// Where it is aimed, 0 to 1 on the step's trade line.
    pub at: f64,
    /// Where whole steps lead, 0 to 1; none: nowhere, `why` says it.
    pub reached: Option<f64>,
    /// What would be turned, in the order of corners; empty: nothing can be.
    pub turns: Vec<CollarTurns>,
    /// What is predicted, figure by figure.
    pub figures: Vec<Predicted>,
    /// True when leaving the car as it is would be as good.
    pub stop: bool,
    /// Why, in two sentences.
    pub why: String,
}

/// What would be turned at one collar.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct CollarTurns {
    /// The corner.
    pub corner: CornerCode,
    /// Its name in words.
    pub name: String,
    /// Signed turns, '+1.25'; positive raises the car.
    pub turns: String,
    /// True when it is left as it is.
    pub still: bool,
}

/// A predicted figure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Predicted {
    /// Code of the figure, as in [`super::FigureRow`].
    pub id: String,
    /// Its name.
    pub name: String,
    /// The value with its uncertainty.
    pub value: String,
}

/// What was understood of the entries of a step, to be read back before they count.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ReadBack {
    /// Every number that was entered, in the order of the fields.
    pub numbers: Vec<ReadNumber>,
}

/// A number as it was understood.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ReadNumber {
    /// Key of the field.
    pub key: String,
    /// Its words: 'Load, front left'.
    pub label: String,
    /// The looks with their unit, as understood: '221.4  221.5  221.5 kg'.
    pub text: String,
    /// How far the looks lie apart, in words; none for one look.
    pub apart: Option<String>,
}

/// What an instrument or a paper of the practice car shows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Display {
    /// Key of the field that it belongs to; a window may place it beside the field, and never fills it in.
    pub key: Option<String>,
    /// What shows it: 'Pad FL'.
    pub label: String,
    /// What is shown, with its unit; looks separated by blanks.
    pub text: String,
}

/// A gate that did not pass.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct GateView {
    /// Outside, or cannot tell.
    pub verdict: VerdictCode,
    /// What was found and what to do.
    pub says: String,
    /// Who may waive it, in words; none: nobody.
    pub may_waive: Option<String>,
}
