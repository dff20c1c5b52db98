//! What is generated from the Rust types and committed is what the Rust types say today.
//!
//! `cargo xtask types` runs these same tests with `BAYHAND_WRITE_GENERATED` set, and then they write instead of compare.

use bayhand_job::ask::{Ask, Attention, CorrectAsk, JobFilter, PersonAsk, Refused, StaffAsk};
use bayhand_job::view::{
    BayView, BookView, CarView, CarsView, CoachView, HeardView, InstrumentsView, ManualView, OriginView, PeopleView,
    PersonRecord, ReadBack, ReviewView, SettingsView, StepView,
};
use bayhand_procedure::Document;
use std::collections::BTreeMap;
use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};
use ts_rs::{Config, TS};

type Tested = Result<(), Box<dyn Error>>;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn writing() -> bool {
    std::env::var_os("BAYHAND_WRITE_GENERATED").is_some()
}

/// Every type that goes to a window or comes from one, with all that they are made of.
#[test]
fn types_of_the_windows() -> Tested {
    let fresh = tempfile::tempdir()?;
    let config = Config::new().with_out_dir(fresh.path());
    StepView::export_all(&config)?;
    BayView::export_all(&config)?;
    ReviewView::export_all(&config)?;
    PeopleView::export_all(&config)?;
    BookView::export_all(&config)?;
    CarsView::export_all(&config)?;
    ManualView::export_all(&config)?;
    CarView::export_all(&config)?;
    InstrumentsView::export_all(&config)?;
    OriginView::export_all(&config)?;
    PersonAsk::export_all(&config)?;
    StaffAsk::export_all(&config)?;
    CorrectAsk::export_all(&config)?;
    JobFilter::export_all(&config)?;
    PersonRecord::export_all(&config)?;
    SettingsView::export_all(&config)?;
    CoachView::export_all(&config)?;
    ReadBack::export_all(&config)?;
    Ask::export_all(&config)?;
    Attention::export_all(&config)?;
    HeardView::export_all(&config)?;
    Refused::export_all(&config)?;

    let committed = root().join("ui/src/generated");
    let fresh = files(fresh.path())?;
    if writing() {
        for old in files(&committed)?.keys().filter(|name| !fresh.contains_key(*name)) {
            fs::remove_file(committed.join(old))?;
        }
        for (name, text) in &fresh {
            fs::write(committed.join(name), text)?;
        }
    }
    let committed = files(&committed)?;
    let names = |files: &BTreeMap<String, String>| files.keys().cloned().collect::<Vec<_>>();
    assert_eq!(names(&committed), names(&fresh), "files in ui/src/generated; `cargo xtask types` writes them again");
    for (name, text) in &fresh {
        assert_eq!(&committed[name], text, "ui/src/generated/{name}; `cargo xtask types` writes it again");
    }
    Ok(())
}

/// The schema that an editor checks a procedure document with.
#[test]
fn schema_of_the_procedure() -> Tested {
    let path = root().join("procedures/procedure.schema.json");
    let fresh = serde_json::to_string_pretty(&schemars::schema_for!(Document))? + "\n";
    if writing() {
        fs::write(&path, &fresh)?;
    }
    let committed = fs::read_to_string(&path).unwrap_or_default();
    assert_eq!(committed, fresh, "{}; `cargo xtask types` writes it again", path.display());
    Ok(())
}

fn files(folder: &Path) -> Result<BTreeMap<String, String>, Box<dyn Error>> {
    fs::read_dir(folder)?
        .map(|entry| {
            let path = entry?.path();
            let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
            Ok((name, fs::read_to_string(path)?))
        })
        .collect()
}
