//! What is handed over: the customer's sheet as a PDF, and its figures as CSV and JSON.
//!
//! The contents are a [`Handover`], already in words and rounded; a template sets them as a page. The template gets the
//! whole `Handover` as a JSON text in `sys.inputs.handover` and nothing else: no clock, no files, no packages. So equal
//! input gives equal bytes, and a workshop's own template can change how the sheet looks but not what is true.

mod check;
mod error;
#[cfg(test)]
mod layout_tests;
mod numbers;
mod world;

pub use error::SheetError;
pub use numbers::{csv, json};

use bayhand_job::handover::Handover;
use typst::foundations::Smart;
use typst_layout::PagedDocument;
use typst_pdf::PdfOptions;
use world::SheetWorld;

/// The template that comes with the program: A4, a page for a usual job.
pub const TEMPLATE: &str = include_str!("../template/sheet.typ");

/// Sets `handover` with the program's own [`TEMPLATE`].
///
/// Returns the bytes of a tagged PDF with its title and language set, its fonts embedded and no date in its metadata.
/// Equal `handover`, equal bytes.
///
/// Signs that neither of the embedded typefaces has (Latin, Greek, Cyrillic and common signs are there) print as a box.
///
/// # Errors
/// [`SheetError::Place`] or [`SheetError::Cells`] when `handover` contradicts itself; [`SheetError::Template`] when the
/// contents cannot be set, for instance because `language` is no BCP 47 language.
pub fn pdf(handover: &Handover) -> Result<Vec<u8>, SheetError> {
    pdf_with_template(handover, TEMPLATE)
}

/// Sets `handover` with a workshop's own `template`, a typst text that reads `json(bytes(sys.inputs.handover))`.
///
/// # Errors
/// As [`pdf`]; [`SheetError::Template`] names the line of `template` that is at fault.
pub fn pdf_with_template(handover: &Handover, template: &str) -> Result<Vec<u8>, SheetError> {
    let world = world_of(handover, template)?;
    let document = document(&world)?;
    let options = PdfOptions { creator: Smart::Custom(Some("Bayhand".into())), ..PdfOptions::default() };
    let bytes = typst_pdf::pdf(&document, &options).map_err(|faults| world.blame(&faults))?;
    // typst remembers parts of earlier pages for the whole life of the program; a sheet is made seldom, so let them go.
    typst::comemo::evict(0);
    Ok(bytes)
}

fn world_of(handover: &Handover, template: &str) -> Result<SheetWorld, SheetError> {
    check::consistent(handover)?;
    Ok(SheetWorld::new(template, serde_json::to_string(handover)?))
}

fn document(world: &SheetWorld) -> Result<PagedDocument, SheetError> {
    typst::compile::<PagedDocument>(world).output.map_err(|faults| world.blame(&faults))
}
