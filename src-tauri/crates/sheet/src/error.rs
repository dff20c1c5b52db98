//! What can go wrong when a sheet is set.

/// Why there is no sheet.
#[derive(Debug, thiserror::Error)]
pub enum SheetError {
    /// A place on the trade line that is not on it.
    #[error("{field} = {value}: a place on the trade line is from 0 (left end) to 1 (right end)")]
    Place {
        /// Path of the field in the handover, such as `line.stops[2]`.
        field: String,
        /// What stands there.
        value: f64,
    },
    /// A row with more or fewer cells than its table has columns.
    #[error("tables[{table}].rows[{row}] has {cells} cells, its table has {columns} columns")]
    Cells {
        /// Index of the table.
        table: usize,
        /// Index of the row.
        row: usize,
        /// How many cells the row has.
        cells: usize,
        /// How many columns the table has, its first (the names) not counted.
        columns: usize,
    },
    /// The template does not compile, or not with these contents.
    #[error("the sheet's template, {}: {message}", .line.map_or("line unknown".to_owned(), |line| format!("line {line}")))]
    Template {
        /// Line in the template from 1, when the fault has one.
        line: Option<usize>,
        /// What the typesetter says, with its hints.
        message: String,
    },
    /// The contents could not be written as JSON.
    #[error("the sheet's contents cannot be written as JSON: {0}")]
    Contents(#[from] serde_json::Error),
    /// The figures could not be written as CSV.
    #[error("the figures cannot be written as CSV: {0}")]
    Csv(#[from] csv::Error),
}
