//! What is handed over: the contents of the customer's sheet, in words and already rounded.
//!
//! The crate `sheet` sets it as a page; nothing is computed there.

use crate::view::VerdictCode;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

/// Contents of the sheet of one sealed job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Handover {
    /// Language of the words, as BCP 47 (`en`).
    pub language: String,
    /// Title of the sheet.
    pub title: String,
    /// Car, use, job number, dates: label and text.
    pub facts: Vec<Labelled>,
    /// Loads, heights, figures as found and as left.
    pub tables: Vec<Table>,
    /// What was turned, a line for each corner, over all rounds.
    pub turned: Vec<Labelled>,
    /// The compromise chosen on the trade line, and why.
    pub compromise: Vec<String>,
    /// What the collars could not do, and what would.
    pub beyond: Vec<String>,
    /// The trade line as a drawing, as left: places from 0 to 1.
    pub line: Option<crate::view::TradeLine>,
    /// Waivers and other departures.
    pub departures: Vec<String>,
    /// Cautions and advice.
    pub cautions: Vec<String>,
    /// People: who worked, who sealed.
    pub people: Vec<Labelled>,
    /// Instruments.
    pub instruments: Vec<Labelled>,
    /// Seal: time, head of the chain, program version.
    pub seal: Vec<Labelled>,
    /// What must be known of this sheet, such as that names are not authenticated yet.
    pub remarks: Vec<String>,
    /// Headings of the sections above, in the sheet's language.
    pub headings: Headings,
}

/// A label and its text.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Labelled {
    /// The label.
    pub label: String,
    /// The text.
    pub text: String,
}

/// A table with figures as found and as left.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct Table {
    /// Its title.
    pub title: String,
    /// Words at the head of the columns after the first.
    pub columns: Vec<String>,
    /// Its rows.
    pub rows: Vec<TableRow>,
    /// In which configuration it was read.
    pub note: String,
}

/// A row.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, TS)]
pub struct TableRow {
    /// What it is.
    pub name: String,
    /// A text for each column.
    pub cells: Vec<String>,
    /// The verdict, when it was judged, and its word.
    pub verdict: Option<(VerdictCode, String)>,
}

/// Headings of the sections.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Headings {
    /// What was turned.
    pub turned: String,
    /// The compromise.
    pub compromise: String,
    /// What the collars could not do.
    pub beyond: String,
    /// Departures.
    pub departures: String,
    /// Cautions.
    pub cautions: String,
    /// People.
    pub people: String,
    /// Instruments.
    pub instruments: String,
    /// Seal.
    pub seal: String,
}

/// The figures of a sealed job as numbers, for other programs: always in the units that their names end in, whatever
/// units people read.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Figures {
    /// Number of the job in its book.
    pub job: i64,
    /// The car's name.
    pub car: String,
    /// True for a simulated car.
    pub practice: bool,
    /// When it was sealed, RFC 3339.
    pub sealed_at: String,
    /// Code of the seal; none where it was sealed without a key.
    pub seal_code: Option<String>,
    /// As found, as far as it was read.
    pub as_found: Vec<FigureNumber>,
    /// As left.
    pub as_left: Vec<FigureNumber>,
}

/// One figure as a number.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FigureNumber {
    /// What it is, such as `cross` or `load_fl`.
    pub name: String,
    /// Its unit as a name ends in it: `kg`, `mm`, `pct`, `deg`, `bar`.
    pub unit: String,
    /// The value.
    pub value: f64,
    /// Its expanded uncertainty (k = 2); none where it is not known.
    pub u: Option<f64>,
    /// Target and half width of its window, where something was agreed.
    pub wanted: Option<(f64, f64)>,
    /// How it stands to that; none as found, where nothing was judged.
    pub verdict: Option<VerdictCode>,
}
