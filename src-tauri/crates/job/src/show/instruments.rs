//! The instruments of a job, and of all jobs of the book: what was written of them, when they are due, how they were
//! checked.

use crate::{
    card::Card,
    draft::field_name,
    handover::Labelled,
    known::Known,
    log::{Log, Recording},
    show::{card_row, rows},
    tell::Tell,
    view::{DueCode, InstrumentRow, InstrumentView, InstrumentsView},
};
use bayhand_vehicle::Place;
use chrono::NaiveDate;

/// A kind of instrument: where intake asks for it, and for how well it measures.
struct Kind {
    id: &'static str,
    step: &'static str,
    stated: &'static [&'static str],
}

const KINDS: [Kind; 5] = [
    Kind { id: "pads", step: "intake.pads", stated: &["pads-resolution", "pads-zero", "pads-calibration"] },
    Kind { id: "laser", step: "intake.instruments", stated: &["laser-accuracy"] },
    Kind { id: "height-gauge", step: "intake.instruments", stated: &[] },
    Kind { id: "pressure-gauge", step: "intake.instruments", stated: &[] },
    // Plates and lines have no names of their own: they are written down with the gauge.
    Kind {
        id: "angle-gauge",
        step: "intake.angle-instruments",
        stated: &["gauge-accuracy", "plate-accuracy", "plate-scale", "line-accuracy", "across-accuracy"],
    },
];

impl Kind {
    fn written<'k>(&self, known: &'k Known, suffix: &str) -> Option<&'k str> {
        known.text(self.step, &format!("{}-{suffix}", self.id)).map(str::trim).filter(|text| !text.is_empty())
    }

    fn name(&self, tell: &Tell) -> String {
        tell.text(&format!("instrument-{}", self.id), &[])
    }
}

/// The instruments of a job as they were written at intake, with their calibration.
pub fn of_job(known: &Known, tell: &Tell) -> Vec<InstrumentRow> {
    let row = |kind: &Kind| {
        let args = [("id", kind.written(known, "id")?.to_owned()), ("due", kind.written(known, "due")?.to_owned())];
        Some(InstrumentRow { name: kind.name(tell), text: tell.text("sheet-due", &args) })
    };
    KINDS.iter().filter_map(row).collect()
}

/// The instrument of a kind as this job wrote it down: 'Pads: pad set 3'.
pub fn named(id: &str, known: &Known, tell: &Tell) -> Option<String> {
    let kind = KINDS.iter().find(|kind| kind.id == id)?;
    Some(format!("{}: {}", kind.name(tell), kind.written(known, "id")?))
}

/// Every instrument of these jobs, the newest job first, as they stand on this day.
pub fn of_book(logs: &[Log], today: NaiveDate, tell: &Tell) -> InstrumentsView {
    let mut found: Vec<(Option<NaiveDate>, InstrumentView)> = Vec::new();
    for log in logs {
        let known = Known::of(log);
        for kind in &KINDS {
            let Some(serial) = kind.written(&known, "id") else { continue };
            let id = format!("{}: {serial}", kind.id);
            let place = match found.iter().position(|(_, one)| one.id == id) {
                Some(place) => place,
                None => {
                    found.push(newly_met(kind, id, serial, &known, today, tell));
                    found.len() - 1
                }
            };
            let one = &mut found[place].1;
            one.checks.extend(checks(kind.id, log, &known, tell));
            one.jobs.push(card_row(log.id, &Card::of(log), tell));
        }
    }
    found.sort_by_key(|(due, one)| (one.due, *due));
    let instruments: Vec<_> = found.into_iter().map(|(_, one)| finished(one, tell)).collect();
    InstrumentsView { says: instruments.is_empty().then(|| tell.text("instruments-empty", &[])), instruments }
}

/// What the newest of its jobs wrote of an instrument.
fn newly_met(
    kind: &Kind,
    id: String,
    serial: &str,
    known: &Known,
    today: NaiveDate,
    tell: &Tell,
) -> (Option<NaiveDate>, InstrumentView) {
    let written = kind.written(known, "due");
    let day = written.and_then(|text| NaiveDate::parse_from_str(text, "%Y-%m-%d").ok());
    let (due, due_says) = match (written, day) {
        (_, Some(day)) => {
            let days = (day - today).num_days();
            let args = [("due", day.to_string()), ("days", days.abs().to_string())];
            let (code, id) =
                if days < 0 { (DueCode::Overdue, "due-overdue") } else { (DueCode::InDate, "due-in-date") };
            (code, tell.text(id, &args))
        }
        (Some(text), None) => (DueCode::Unknown, tell.text("due-unknown", &[("text", text.to_owned())])),
        (None, None) => (DueCode::Unknown, tell.text("due-not-recorded", &[])),
    };
    let view = InstrumentView {
        id,
        name: kind.name(tell),
        serial: serial.to_owned(),
        stated: kind.stated.iter().filter_map(|key| stated(kind, key, known, tell)).collect(),
        calibrated: tell.text("calibrated-not-recorded", &[]),
        due,
        due_says,
        checks: Vec::new(),
        jobs: Vec::new(),
        jobs_title: String::new(),
    };
    (day, view)
}

/// A value as it was entered, under its label.
fn stated(kind: &Kind, key: &str, known: &Known, tell: &Tell) -> Option<Labelled> {
    let input = known.log.document.step(kind.step)?.1.input_of(key)?;
    let entry = known.last(kind.step)?.entries.get(key)?;
    Some(Labelled { label: field_name(tell.words, kind.step, key), text: rows::value_text(input, entry, tell)? })
}

/// That nothing is recorded is said, not left out.
fn finished(mut one: InstrumentView, tell: &Tell) -> InstrumentView {
    if one.checks.is_empty() {
        one.checks.push(tell.text("checks-not-recorded", &[]));
    }
    one.jobs_title = tell.text("instrument-jobs", &[("count", one.jobs.len().to_string())]);
    one
}

/// How an instrument was checked in a job, in a line; none where the job asks for no check of it.
fn checks(kind: &str, log: &Log, known: &Known, tell: &Tell) -> Option<String> {
    let last = |wanted: &dyn Fn(&Recording) -> bool| known.recordings().iter().rev().find(|r| wanted(r));
    let by = |recording: &Recording| {
        vec![
            ("at", tell.date(&recording.at)),
            ("by", recording.by.to_owned()),
            ("job", log.id.to_string()),
            ("entry", recording.number.to_string()),
        ]
    };
    match kind {
        "pads" => {
            let zero = |r: &Recording| r.entries.get("zeros-read").is_some_and(|entry| entry.text == "yes");
            let mut args = by(last(&zero)?);
            args.push(("count", known.recordings().iter().filter(|r| zero(r)).count().to_string()));
            Some(tell.text("check-zeros", &args))
        }
        "laser" => {
            let read = last(&|r| r.step == "pads.level")?;
            let (one, two) = (read.corners("set-up-1")?, read.corners("set-up-2")?);
            let apart_mm = Place::ALL.into_iter().map(|p| (one.at(p) - two.at(p)).abs()).fold(0.0, f64::max);
            let mut args = by(read);
            args.push(("mm", tell.mm(apart_mm, 2)));
            Some(tell.text("check-set-ups", &args))
        }
        "angle-gauge" => {
            let read = last(&|r| r.step == "align.runout")?;
            let of = |key: &str| Some(tell.deg(*read.looks(key).first()?));
            let mut args = by(read);
            args.extend([("direct", of("gauge-direct")?), ("turned", of("gauge-turned")?)]);
            Some(tell.text("check-turned", &args))
        }
        _ => None,
    }
}
