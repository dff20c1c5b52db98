//! The window at the desk.

use super::parts::{Footprint, StateCode, TradeLine, VerdictCode};
use super::step::PersonView;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Everything that the review window shows.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ReviewView {
    /// Revision of the job that is shown, or 0.
    #[ts(type = "number")]
    pub revision: u64,
    /// All jobs of the book, the newest first.
    pub jobs: Vec<JobRow>,
    /// Cars of all jobs, to choose from.
    pub cars: Vec<String>,
    /// Initials of everybody who signed on at a job, to choose from.
    pub persons: Vec<String>,
    /// What to do when there is no job.
    pub says: Option<String>,
    /// Who is in the list of people.
    pub staff: super::PeopleView,
    /// The job that is shown.
    pub job: Option<ReviewJob>,
}

/// The book as a whole: its copies, and the jobs of other bays.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct BookView {
    /// The folder for copies; none: no copies are made.
    pub copies_in: Option<String>,
    /// What became of the last copy since the program was started, in words.
    pub copy_told: Option<String>,
    /// Jobs that other bays exported and that were taken in; their numbers count them.
    pub imported: Vec<JobRow>,
}

/// A job in a line.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct JobRow {
    /// Number in the book.
    #[ts(type = "number")]
    pub id: i64,
    /// 'Practice coupe, job 3'.
    pub title: String,
    /// Code: `working`, `held`, `for-review`, `sealed`, `stopped`, `unreadable`.
    pub state: String,
    /// The state in words, with stage and time.
    pub says: String,
}

/// One job for review.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct ReviewJob {
    /// Number in the book.
    #[ts(type = "number")]
    pub id: i64,
    /// 'Practice coupe, job 3'.
    pub title: String,
    /// Who, when, and what the check of the chain found.
    pub says: String,
    /// Title of the list of departures, with their number.
    pub departures_title: String,
    /// What departed from the procedure.
    pub departures: Vec<Departure>,
    /// The record, step by step, the first entry first.
    pub entries: Vec<EntryRow>,
    /// Figures as found and as left.
    pub figures: Vec<FigureRow>,
    /// The instruments of the job, with their calibration.
    pub instruments: Vec<InstrumentRow>,
    /// The cross weight over the rounds, then the differences of the axles and the four loads.
    pub plots: Vec<PairPlot>,
    /// The trade line with the last judged reading.
    pub line: Option<TradeLine>,
    /// Footprints as found.
    pub footprints_found: Vec<Footprint>,
    /// Footprints as left.
    pub footprints: Vec<Footprint>,
    /// How much larger than life their differences are drawn, in words.
    pub footprint_scale: Option<String>,
    /// Where the time went, stage by stage.
    pub stage_times: Vec<StageTime>,
    /// The compromise and its reason.
    pub compromise: Option<String>,
    /// People signed on.
    pub people: Vec<PersonView>,
    /// True when the job waits for the seal.
    pub may_seal: bool,
    /// Why it can or cannot be sealed now.
    pub seal_says: String,
    /// Steps that it can be sent back to.
    pub send_back: Vec<SendBackTarget>,
    /// True when the sheet can be written.
    pub sheet_ready: bool,
    /// True for a practice job that has ended: its coach can be asked.
    pub coach_ready: bool,
}

/// What somebody did over all jobs.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct PersonRecord {
    /// Jobs, steps, tries that a gate held, and waivers of them, in words.
    pub says: String,
    /// By stage, those in which they did something.
    pub stages: Vec<StageCount>,
    /// The jobs at which they signed on, the newest first.
    pub jobs: Vec<JobRow>,
}

/// What somebody did in a stage over all jobs.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct StageCount {
    /// The stage's name.
    pub title: String,
    /// Steps done.
    pub done: u32,
    /// Tries that a gate held.
    pub held: u32,
}

/// A text of an entry that may be corrected.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct EntryText {
    /// Its key.
    pub key: String,
    /// Its words.
    pub label: String,
    /// What it says now.
    pub text: String,
}

/// One instrument.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct InstrumentRow {
    /// What it is.
    pub name: String,
    /// Its id, and when its calibration is due.
    pub text: String,
}

/// The time that a stage took.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct StageTime {
    /// The stage's name.
    pub title: String,
    /// '1 h 12 min'.
    pub text: String,
    /// Share of the longest stage, 0 to 1.
    pub share: f64,
}

/// A step that a job can be sent back to.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct SendBackTarget {
    /// Code of the step.
    pub step: String,
    /// Its stage and instruction.
    pub label: String,
    /// What would have to be done again.
    pub voids: String,
}

/// A departure from the procedure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Departure {
    /// What it was.
    pub title: String,
    /// Where, when, who, and the reason given.
    pub text: String,
    /// True for a try that did not pass and was followed by one that did.
    pub put_right: bool,
}

/// One entry of the record.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct EntryRow {
    /// Place in the chain.
    #[ts(type = "number")]
    pub number: u64,
    /// Time at the car.
    pub when: String,
    /// What was done.
    pub what: String,
    /// By whom.
    pub who: String,
    /// As entered.
    pub entered: String,
    /// As used.
    pub used: String,
    /// Verdict, waiver, or why it is void.
    pub note: String,
    /// How it stands: done, or again (void).
    pub state: StateCode,
    /// Texts that may be corrected: nothing rests on them.
    pub texts: Vec<EntryText>,
    /// Code of its step, when it is withdrawn by doing that step again.
    pub step: Option<String>,
}

/// A figure as found and as left.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct FigureRow {
    /// Code, such as `cross_pct`.
    pub id: String,
    /// Its name.
    pub name: String,
    /// As found, with uncertainty and unit.
    pub found: Option<String>,
    /// Now or as left, with uncertainty and unit.
    pub left: Option<String>,
    /// What its uncertainty comes from, where that is worked out.
    pub made_of: Option<String>,
    /// Target and window, when there is one.
    pub wanted: Option<String>,
    /// The verdict.
    pub verdict: Option<VerdictCode>,
    /// The verdict in words.
    pub verdict_word: Option<String>,
}

/// Predicted and came, over the rounds.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PairPlot {
    /// Code of the figure, or `load_kg.FL`.
    pub id: String,
    /// What is plotted, with its unit.
    pub title: String,
    /// Window, lower and upper, as heights from 0 (bottom) to 1 (top); none where nothing was agreed.
    pub window: Option<(f64, f64)>,
    /// Label of the target, where there is one.
    pub target: Option<String>,
    /// The points, in order of rounds.
    pub points: Vec<PairPoint>,
}

/// One round.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct PairPoint {
    /// 'as found', 'round 1'.
    pub label: String,
    /// What came, 0 to 1.
    pub came: f64,
    /// Its uncertainty (k = 2), 0 to 1.
    pub u: f64,
    /// What came, in words.
    pub came_text: String,
    /// What had been predicted, 0 to 1.
    pub predicted: Option<f64>,
    /// What had been predicted, in words.
    pub predicted_text: Option<String>,
}
