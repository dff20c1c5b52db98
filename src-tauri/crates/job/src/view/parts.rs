//! Parts that more than one window shows.

use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// A corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "UPPERCASE")]
pub enum CornerCode {
    /// Front left.
    Fl,
    /// Front right.
    Fr,
    /// Rear left.
    Rl,
    /// Rear right.
    Rr,
}

/// Signal words of ANSI Z535.4.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, TS)]
#[serde(rename_all = "lowercase")]
pub enum SignalCode {
    /// Will result in death or serious injury.
    Danger,
    /// Could result in death or serious injury.
    Warning,
    /// Could result in minor or moderate injury.
    Caution,
    /// No injury.
    Notice,
}

/// A judgement against a window.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum VerdictCode {
    /// Inside its window beyond the uncertainty.
    Inside,
    /// Outside its window beyond the uncertainty.
    Outside,
    /// The uncertainty is too large to say.
    CannotTell,
}

/// How far a stage or a step has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum StateCode {
    /// Done and standing.
    Done,
    /// At work now.
    Now,
    /// Was done; a later change made it void; to do again.
    Again,
    /// To come.
    ToCome,
}

/// A hazard with its words.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct HazardView {
    /// Code of the hazard.
    pub id: String,
    /// Signal word's code, for the colour that the standard gives it.
    pub signal: SignalCode,
    /// The signal word.
    pub word: String,
    /// One line for a distance: the command.
    pub line: String,
    /// The whole text: command, hazard, what it does, to whom to defer.
    pub text: String,
    /// Whose hand acknowledged it for this step, and when; none: still to do.
    pub acknowledged: Option<String>,
}

/// One corner's contact patch.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Footprint {
    /// The corner.
    pub corner: CornerCode,
    /// Its name in words.
    pub name: String,
    /// Load in the person's unit, without the unit.
    pub load: String,
    /// The difference in words, such as '3.0 too heavy'.
    pub difference: String,
    /// Area of the dotted outline (wanted load), 0 to 1 of the largest.
    pub wanted_area: f64,
    /// Area of the filled shape: the wanted one plus the difference drawn several times larger.
    pub shown_area: f64,
}

/// A place on the trade line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct LinePoint {
    /// 0 at the left end, 1 at the right end.
    pub at: f64,
    /// Its words.
    pub label: String,
    /// True for the one that matters most.
    pub strong: bool,
}

/// A stretch of the trade line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct LineSpan {
    /// Left end, 0 to 1.
    pub from: f64,
    /// Right end, 0 to 1.
    pub to: f64,
    /// Its words.
    pub label: String,
}

/// The one line along which collars move load.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TradeLine {
    /// 'front even', 'cross wanted', 'rear even'.
    pub marks: Vec<LinePoint>,
    /// Places that whole collar steps reach.
    pub stops: Vec<f64>,
    /// The stretch inside the cross weight's window.
    pub window: LineSpan,
    /// Where the car is.
    pub now: LinePoint,
    /// Its uncertainty (k = 2).
    pub now_band: LineSpan,
    /// Where the plan leads.
    pub after: Option<LinePoint>,
    /// Where limits end the line on the left and on the right, if they do.
    pub ends: Vec<f64>,
    /// The readings of earlier rounds, 'as found' first; only where rounds are looked back on.
    #[serde(default)]
    pub rounds: Vec<LinePoint>,
    /// Cross weight, its diagonal, and the verdict in one line.
    pub says: String,
    /// The verdict on the cross weight.
    pub verdict: VerdictCode,
}

/// A turning direction seen from above.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, TS)]
#[serde(rename_all = "kebab-case")]
pub enum DirectionCode {
    /// Clockwise from above.
    Clockwise,
    /// Anticlockwise from above.
    Anticlockwise,
    /// Not to be turned.
    Leave,
}

/// What to turn at one corner.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TurnView {
    /// The corner.
    pub corner: CornerCode,
    /// Which of the four, such as 'corner 1 of 4'.
    pub count: String,
    /// What the car does: 'Raise the car at front right'.
    pub car_does: String,
    /// What the collar does: 'Collar a quarter turn towards the spring, anticlockwise from above'.
    pub collar_does: String,
    /// The same as a signed number to be entered when just that was turned: '+0.25'; positive raises the car.
    pub turns: String,
    /// The direction, for the drawing.
    pub direction: DirectionCode,
    /// True when the collar moves towards the spring.
    pub towards_spring: bool,
    /// True when the spring stands above the collar.
    pub spring_above: bool,
}

/// A wait.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TimerView {
    /// Length, s.
    pub seconds: u32,
    /// When it began, ms since 1970 UTC.
    #[ts(type = "number")]
    pub began_ms: i64,
    /// What is waited for.
    pub label: String,
}
