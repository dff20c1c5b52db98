//! All that a template can see: its own text, the contents of the sheet, and the embedded typefaces.

use crate::SheetError;
use std::sync::LazyLock;
use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Dict, Duration, Str, Value};
use typst::syntax::{FileId, Source};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World, WorldExt};

/// Origin and licences: `fonts/ORIGIN.md`.
static TYPEFACES: LazyLock<Typefaces> = LazyLock::new(|| {
    let files: [&'static [u8]; 3] = [
        include_bytes!("../fonts/AtkinsonHyperlegibleNext-Regular.ttf"),
        include_bytes!("../fonts/AtkinsonHyperlegibleNext-Bold.ttf"),
        include_bytes!("../fonts/DejaVuSans-Signs.ttf"),
    ];
    let fonts: Vec<Font> = files.into_iter().flat_map(|file| Font::iter(Bytes::new(file))).collect();
    Typefaces { book: LazyHash::new(FontBook::from_fonts(&fonts)), fonts }
});

struct Typefaces {
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
}

/// The world of one sheet.
pub(crate) struct SheetWorld {
    library: LazyHash<Library>,
    template: Source,
}

impl SheetWorld {
    /// A world with `template` as its only file and `handover` (JSON) as its only input.
    pub(crate) fn new(template: &str, handover: String) -> Self {
        let inputs = Dict::from_iter([(Str::from("handover"), Value::Str(handover.into()))]);
        let library = LazyHash::new(Library::builder().with_inputs(inputs).build());
        Self { library, template: Source::detached(template) }
    }

    /// The first of `faults` with its line in the template, as an error of ours.
    ///
    /// When the fault is raised inside a function of the typesetter, the line is that of the nearest call to it.
    pub(crate) fn blame(&self, faults: &[SourceDiagnostic]) -> SheetError {
        let Some(fault) = faults.first() else {
            return SheetError::Template { line: None, message: "it cannot be set".to_owned() };
        };
        let calls = fault.trace.iter().map(|call| self.range(call.span));
        let line = std::iter::once(self.range(fault.span))
            .chain(calls)
            .flatten()
            .find_map(|range| self.template.lines().byte_to_line(range.start))
            .map(|from_zero| from_zero + 1);
        let hints = fault.hints.iter().map(|hint| hint.v.as_str());
        let message = std::iter::once(fault.message.as_str()).chain(hints).collect::<Vec<_>>().join("; ");
        SheetError::Template { line, message }
    }
}

impl World for SheetWorld {
    fn library(&self) -> &LazyHash<Library> {
        &self.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &TYPEFACES.book
    }

    fn main(&self) -> FileId {
        self.template.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.template.id() { Ok(self.template.clone()) } else { Err(absent(id)) }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        Err(absent(id))
    }

    fn font(&self, index: usize) -> Option<Font> {
        TYPEFACES.fonts.get(index).cloned()
    }

    /// None: a sheet that knew the time would differ from one printing to the next.
    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}

/// A template stands alone; it has nothing to read.
fn absent(id: FileId) -> FileError {
    FileError::NotFound(id.get().vpath().get_without_slash().into())
}
