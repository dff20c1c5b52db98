//! What the windows see. Words stand here already rendered, beside the codes that a window may react to.
//!
//! A window computes nothing: places on the trade line are fractions from 0 (left end) to 1 (right end), footprints
//! carry the factors by which they are drawn, and every number is text with its unit.

mod angles;
mod bay;
mod cars;
mod coach;
mod heard;
mod instruments;
mod manual;
mod origin;
mod parts;
mod people;
mod procedure;
mod review;
mod settings;
mod step;

pub use angles::{AdjusterView, AngleView, AnglesView};
pub use bay::BayView;
pub use cars::{CarRow, CarView, CarsView, CollarRow, FactorRow, LearnedView};
pub use coach::{CoachRow, CoachView, ScoreRow};
pub use heard::{HeardAct, HeardPending, HeardView};
pub use instruments::{DueCode, InstrumentView, InstrumentsView};
pub use manual::{ManualHazard, ManualStage, ManualStep, ManualView};
pub use origin::{OriginPart, OriginReading, OriginView};
pub use parts::{
    CornerCode, DirectionCode, Footprint, HazardView, LinePoint, LineSpan, SignalCode, StateCode, TimerView, TradeLine,
    TurnView, VerdictCode,
};
pub use people::{PeopleView, PersonRow};
pub use procedure::{ProcedureView, TrustCode};
pub use review::{
    BookView, Departure, EntryRow, EntryText, FigureRow, InstrumentRow, JobRow, PairPlot, PairPoint, PersonRecord,
    ReviewJob, ReviewView, SendBackTarget, StageCount, StageTime,
};
pub use settings::{ScreenChoice, SettingsView};
pub use step::{
    Choice, CollarTurns, Display, Field, FieldKind, GateView, JobHead, OnlyWith, Outlook, PathStage, PersonView,
    Predicted, ReadBack, ReadNumber, ScenarioView, Screen, StartView, StepBody, StepView, UnitChoice,
};
