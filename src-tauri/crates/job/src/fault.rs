//! What the storage, a record and the system answer, in words. The job book itself says it in English alone, for logs and
//! scripts; here each kind has its id and its arguments.

use crate::{log::LogError, tell::Tell, whole::Unsound};
use bayhand_jobbook::{BadEntry, BookError, Defect, Instead};
use bayhand_procedure::Wrong;
use std::{io, path::Path};

/// What the book answered; none where the list of people did, which has its own words.
pub fn book(error: &BookError, tell: &Tell) -> Option<String> {
    let at = |path: &Path| ("path", path.display().to_string());
    let args = match error {
        BookError::Denied(_) => return None,
        BookError::NoSuchFolder { folder } => vec![("folder", folder.display().to_string())],
        BookError::NotABook { path, found } => vec![at(path), ("found", tell.text(instead(*found), &[]))],
        BookError::NewerThanProgram { path, book, program } | BookError::OlderThanProgram { path, book, program } => {
            vec![at(path), ("book", book.to_string()), ("program", program.to_string())]
        }
        BookError::LogWithoutBook { path, log } => vec![at(path), ("log", log.display().to_string())],
        BookError::Gone { path, rescued } => {
            let rescued = match rescued {
                Some(place) => tell.text("book-rescued", &[("place", place.display().to_string())]),
                None => tell.text("book-not-rescued", &[]),
            };
            vec![at(path), ("rescued", rescued)]
        }
        BookError::NotDurable { path, setting, wanted, found } => vec![
            at(path),
            ("setting", (*setting).to_owned()),
            ("wanted", (*wanted).to_owned()),
            ("found", found.clone()),
        ],
        BookError::NoSuchJob { job } | BookError::Ended { job } => vec![("job", job.to_string())],
        BookError::Stale { job, expected, found } => {
            vec![("job", job.to_string()), ("expected", expected.to_string()), ("found", found.to_string())]
        }
        BookError::BadExport(why) => vec![("why", why.clone())],
        BookError::BadEntry(entry) => vec![("what", bad_entry(entry, tell))],
        BookError::Damaged { path, detail } => vec![at(path), ("detail", detail.clone())],
        BookError::File { path, source } => vec![at(path), ("why", system(source, tell))],
        BookError::Storage { path, source } => vec![at(path), ("why", source.to_string())],
        BookError::NoSuchBook { path }
        | BookError::LockedByAnother { path }
        | BookError::ReadOnly { path }
        | BookError::DiskFull { path } => vec![at(path)],
    };
    let id = match error {
        // The procedure says of an ended job what is said at the car.
        BookError::Ended { .. } => "refused-book-ended".to_owned(),
        other => format!("refused-{}", other.code()),
    };
    Some(tell.text(&id, &args))
}

fn instead(found: Instead) -> &'static str {
    match found {
        Instead::Folder => "instead-folder",
        Instead::NoPlainName => "instead-no-plain-name",
        Instead::Empty => "instead-empty",
        Instead::OtherKind => "instead-other-kind",
        Instead::OtherProgram => "instead-other-program",
    }
}

fn bad_entry(entry: &BadEntry, tell: &Tell) -> String {
    let (id, why) = match &entry.what {
        Defect::Missing => ("defect-missing", None),
        Defect::HashDiffers => ("defect-hash", None),
        Defect::NotTheFirst => ("defect-not-the-first", None),
        Defect::JobRowDiffers => ("defect-job-row", None),
        Defect::NotAnOpening => ("defect-not-an-opening", None),
        Defect::Newer => ("defect-newer", None),
        Defect::NoEvent(why) => ("defect-no-event", Some(why.clone())),
        Defect::NotPermitted(why) => ("defect-not-permitted", Some(why.clone())),
        Defect::SealDoesNotFit => ("defect-seal", None),
        Defect::NotTheJobThatEnded => ("defect-not-the-job", None),
        Defect::ApartGone => ("defect-apart-gone", None),
        Defect::ApartBack => ("defect-apart-back", None),
        Defect::NotAsInTheCopy => ("defect-copy", None),
        Defect::NotTheCode => ("defect-code", None),
        Defect::ImportChanged => ("defect-import", None),
        Defect::EarlierOnesGone { missing } => ("defect-earlier-gone", Some(missing.to_string())),
    };
    let what = tell.text(id, &[("why", why.unwrap_or_default())]);
    let args = [("job", entry.job.to_string()), ("number", entry.number.to_string()), ("what", what)];
    tell.text("bad-entry", &args)
}

/// Why a job cannot be read.
pub fn log(why: &LogError, tell: &Tell) -> String {
    match why {
        LogError::Newer { number, v, program } => {
            let args = [
                ("number", number.to_string()),
                ("form", v.to_string()),
                ("program", program.clone()),
                ("own", crate::body::VERSION.to_string()),
            ];
            tell.text("log-newer", &args)
        }
        LogError::Entry { number, why } => {
            tell.text("log-entry", &[("number", number.to_string()), ("why", why.clone())])
        }
        LogError::Document(fault) => {
            tell.text("log-document", &[("at", fault.at.clone()), ("why", procedure(&fault.what, tell))])
        }
    }
}

/// What is wrong with a procedure document. What its reader says of its form, and what a proof met, is told in English.
pub fn procedure(what: &Wrong, tell: &Tell) -> String {
    let (id, args): (&str, Vec<(&str, String)>) = match what {
        Wrong::Form(says) | Wrong::Unmeetable(says) | Wrong::Stuck(says) => return says.clone(),
        Wrong::Format { is, reads } => ("wrong-format", vec![("is", is.to_string()), ("reads", reads.to_string())]),
        Wrong::NotOfItsStage(stage) => ("wrong-stage", vec![("stage", stage.clone())]),
        Wrong::Nothing { within, kind, name } => {
            let kind = tell.text(&format!("wrong-kind-{}", kind.split([',', ' ']).next().unwrap_or_default()), &[]);
            ("wrong-nothing", vec![("within", within.clone()), ("kind", kind), ("name", name.clone())])
        }
        Wrong::CannotBe { within, fact, value } => {
            ("wrong-cannot-be", vec![("within", within.clone()), ("fact", fact.clone()), ("value", value.clone())])
        }
        Wrong::Endings { count, ending } => {
            ("wrong-endings", vec![("count", count.to_string()), ("ending", ending.clone())])
        }
        Wrong::NotInNeeds => ("wrong-needs", Vec::new()),
        Wrong::NoSuchChoice { input, option } => {
            ("wrong-choice-of", vec![("input", input.clone()), ("option", option.clone())])
        }
        Wrong::TooDeep(within) => ("wrong-deep", vec![("within", within.clone())]),
        Wrong::NoValue { within, fact } => ("wrong-value", vec![("within", within.clone()), ("fact", fact.clone())]),
        Wrong::NotDecimal { input, limit, text } => {
            ("wrong-decimal", vec![("input", input.clone()), ("limit", (*limit).to_owned()), ("text", text.clone())])
        }
        Wrong::NoLook(input) => ("wrong-look", vec![("input", input.clone())]),
        Wrong::NoChoice(input) => ("wrong-choice", vec![("input", input.clone())]),
        Wrong::Twice(id) => ("wrong-twice", vec![("id", id.clone())]),
        Wrong::Unreached => ("wrong-unreached", Vec::new()),
    };
    tell.text(id, &args)
}

/// What is wrong with a whole book beside what [`book`] says.
pub fn unsound(why: &Unsound, tell: &Tell) -> Option<String> {
    let of = |job: &i64| ("job", job.to_string());
    Some(match why {
        Unsound::Book(error) => return book(error, tell),
        Unsound::Job { job, why } => tell.text("unsound-job", &[of(job), ("why", log(why, tell))]),
        Unsound::Card { job } => tell.text("unsound-card", &[of(job)]),
        Unsound::End { job, entry } => tell.text("unsound-end", &[of(job), ("entry", entry.to_string())]),
    })
}

/// What the system said of a file or a program, where that is one of the usual things; else its own words.
pub fn system(error: &io::Error, tell: &Tell) -> String {
    let id = match error.kind() {
        io::ErrorKind::NotFound => "system-not-found",
        io::ErrorKind::PermissionDenied => "system-denied",
        io::ErrorKind::ReadOnlyFilesystem => "system-read-only",
        io::ErrorKind::StorageFull => "system-full",
        io::ErrorKind::IsADirectory => "system-folder",
        io::ErrorKind::NotADirectory => "system-no-folder",
        io::ErrorKind::InvalidData => "system-no-text",
        _ => return error.to_string(),
    };
    tell.text(id, &[])
}

/// The text of a file that a person named; or why it cannot be read, in words.
///
/// # Errors
/// There is no such file, it may not be read, it has more than `most_bytes`, or it is no text.
pub async fn text_of(place: &Path, most_bytes: u64, tell: &Tell<'_>) -> Result<String, String> {
    let file = tokio::fs::metadata(place).await.map_err(|error| system(&error, tell))?;
    if !file.is_file() || file.len() > most_bytes {
        return Err(tell.text("system-no-file", &[]));
    }
    tokio::fs::read_to_string(place).await.map_err(|error| system(&error, tell))
}
