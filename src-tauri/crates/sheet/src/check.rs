//! Contents that contradict themselves are refused before they are set: a drawing or a shifted cell would hide the fault.

use crate::SheetError;
use bayhand_job::{handover::Handover, view::TradeLine};

/// Checks that every row fills its table and every place on the trade line is on it.
pub(crate) fn consistent(handover: &Handover) -> Result<(), SheetError> {
    for (table, data) in handover.tables.iter().enumerate() {
        let columns = data.columns.len();
        for (row, cells) in data.rows.iter().map(|row| row.cells.len()).enumerate() {
            if cells != columns {
                return Err(SheetError::Cells { table, row, cells, columns });
            }
        }
    }
    handover.line.as_ref().map_or(Ok(()), on_the_line)
}

fn on_the_line(line: &TradeLine) -> Result<(), SheetError> {
    let marks = line.marks.iter().enumerate().map(|(n, mark)| (format!("line.marks[{n}].at"), mark.at));
    let stops = line.stops.iter().enumerate().map(|(n, &at)| (format!("line.stops[{n}]"), at));
    let ends = line.ends.iter().enumerate().map(|(n, &at)| (format!("line.ends[{n}]"), at));
    let after = line.after.iter().map(|after| ("line.after.at".to_owned(), after.at));
    let others = [
        ("line.now.at", line.now.at),
        ("line.now_band.from", line.now_band.from),
        ("line.now_band.to", line.now_band.to),
        ("line.window.from", line.window.from),
        ("line.window.to", line.window.to),
    ];
    let others = others.into_iter().map(|(field, at)| (field.to_owned(), at));
    for (field, value) in marks.chain(stops).chain(ends).chain(after).chain(others) {
        if !(0.0..=1.0).contains(&value) {
            return Err(SheetError::Place { field, value });
        }
    }
    Ok(())
}
