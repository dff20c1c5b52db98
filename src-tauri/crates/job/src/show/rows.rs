//! The record, entry by entry, in words.

use crate::{
    body::SignedFor,
    draft::{field_name, unit},
    log::{Amendment, Line, Log, recorded},
    show::person,
    tell::Tell,
    view::{Departure, EntryRow, EntryText, StateCode},
};
use bayhand_measure::{decimals_for, show};
use bayhand_procedure::{Entered, Event, Found, Input, Kind, Standing, Step};
use std::collections::BTreeMap;

/// Every entry, the opening first.
pub fn rows(log: &Log, tell: &Tell) -> Vec<EntryRow> {
    let mut rows: Vec<_> =
        std::iter::once(opening(log, tell)).chain(log.lines.iter().map(|line| row(log, line, tell))).collect();
    for Amendment { number, at, amended } in &log.amendments {
        let step = log.line(amended.of).and_then(|line| recorded(&line.happened.event)).map_or("", |(step, _)| step);
        let field = field_name(tell.words, step, &amended.key);
        let by = person(log, &amended.by, tell);
        if let Some(row) = rows.iter_mut().find(|row| row.number == amended.of) {
            let args = [("number", number.to_string()), ("field", field.clone())];
            row.note = format!("{} {}", tell.text("row-corrected-by", &args), row.note).trim().to_owned();
        }
        rows.push(EntryRow {
            number: *number,
            when: super::clock(at),
            what: tell.text("row-corrected", &[("step", short(step, tell)), ("number", amended.of.to_string())]),
            who: by,
            entered: tell.text(
                "row-corrected-text",
                &[("field", field), ("from", amended.from.clone()), ("to", amended.to.clone())],
            ),
            used: String::new(),
            note: amended.reason.clone(),
            state: StateCode::Done,
            texts: Vec::new(),
            step: None,
        });
    }
    rows.sort_by_key(|row| row.number);
    rows
}

/// How the job was opened: with which procedure, and who signed for it where it is not proved.
fn opening(log: &Log, tell: &Tell) -> EntryRow {
    let signed = log.opened.signed_for.as_ref();
    let document = super::procedure_title(&log.document, &log.opened.document_hash);
    EntryRow {
        number: 1,
        when: super::clock(&log.opened_at),
        what: tell.text("row-opened", &[]),
        who: signed.map(|signed| signed.by.clone()).unwrap_or_default(),
        entered: tell.text("row-opened-with", &[("car", log.opened.car.clone()), ("document", document)]),
        used: String::new(),
        note: signed.map(|signed| not_proved(signed, tell)).unwrap_or_default(),
        state: StateCode::Done,
        texts: Vec::new(),
        step: None,
    }
}

/// That a supervisor signed for a procedure that is not proved, and why.
fn not_proved(signed: &SignedFor, tell: &Tell) -> String {
    let args = [("by", signed.by.clone()), ("name", signed.name.clone()), ("reason", signed.reason.clone())];
    tell.text("remark-not-proved", &args)
}

fn row(log: &Log, line: &Line, tell: &Tell) -> EntryRow {
    let mut row = EntryRow {
        number: line.number,
        when: super::clock(&line.at),
        what: String::new(),
        who: String::new(),
        entered: String::new(),
        used: String::new(),
        note: String::new(),
        state: StateCode::Done,
        texts: Vec::new(),
        step: None,
    };
    match &line.happened.event {
        Event::SignedOn { person: initials, .. } => {
            row.what = tell.text("row-signed-on", &[]);
            row.who = person(log, initials, tell);
            row.entered = line.happened.name.clone().unwrap_or_default();
        }
        Event::Acknowledged { step, hazard, by } => {
            row.what = tell.text(
                "row-acknowledged",
                &[("hazard", tell.text(&format!("hazard-{hazard}"), &[])), ("step", short(step, tell))],
            );
            row.who = tell.text("row-by-hand", &[("by", person(log, by, tell))]);
        }
        Event::Done { step, by, entries, .. } | Event::Tried { step, by, entries, .. } => {
            row.what = short(step, tell);
            row.who = person(log, by, tell);
            if let Some((_, document_step)) = log.document.step(step) {
                row.entered = entered(document_step, entries, tell);
                row.used = used(document_step, line);
                row.texts = texts(log, document_step, line.number, tell);
            }
            let by_voice = by_voice(step, line, tell);
            let says = line.happened.seen.iter().flat_map(|s| s.gates.iter()).filter(|g| !g.says.is_empty());
            row.note = says.map(|g| g.says.clone()).chain(by_voice).collect::<Vec<_>>().join(" ");
            row.state = standing_of(log, line, step);
            let current = row.state == StateCode::Done && log.state.standing(step) == Standing::Done;
            row.step = current.then(|| step.clone());
            if row.state == StateCode::Again {
                row.note = format!("{} {}", tell.text("row-void", &[]), row.note).trim().to_owned();
            }
        }
        Event::Waived { step, by, reason, .. } => {
            row.what = tell.text("row-waived", &[("step", short(step, tell))]);
            row.who = person(log, by, tell);
            row.note = reason.clone();
        }
        Event::Reopened { step, by, reason, voided } => {
            row.what = tell.text("row-reopened", &[("step", short(step, tell))]);
            row.who = person(log, by, tell);
            let names: Vec<_> = voided.iter().map(|id| short(id, tell)).collect();
            row.entered = names.join(", ");
            row.note = reason.clone();
        }
        Event::Held { by, reason } => simple(&mut row, "row-held", by, reason, log, tell),
        Event::Resumed { by } => simple(&mut row, "row-resumed", by, "", log, tell),
        Event::StopBegun { by, reason } => simple(&mut row, "row-stop", by, reason, log, tell),
        Event::Sealed { by } => simple(&mut row, "row-sealed", by, "", log, tell),
    }
    row
}

fn simple(row: &mut EntryRow, what: &str, by: &str, note: &str, log: &Log, tell: &Tell) {
    row.what = tell.text(what, &[]);
    row.who = person(log, by, tell);
    row.note = note.to_owned();
}

/// Which entries were spoken, as what they were heard and how sure that was.
fn by_voice(step: &str, line: &Line, tell: &Tell) -> Option<String> {
    let heard = &line.happened.seen.as_ref()?.heard;
    let one = |(key, heard): (&String, &crate::body::HeardSeen)| {
        let args = [
            ("field", field_name(tell.words, step, key)),
            ("words", heard.words.clone()),
            ("score", heard.score.clone()),
        ];
        tell.text("row-by-voice-one", &args)
    };
    let fields: Vec<_> = heard.iter().map(one).collect();
    (!fields.is_empty()).then(|| tell.text("row-by-voice", &[("fields", fields.join(", "))]))
}

/// A step in few words.
pub fn short(step: &str, tell: &Tell) -> String {
    let key = bayhand_words::id("step", &[step]);
    tell.words.attr(&key, "short", &[]).unwrap_or_else(|| tell.text(&key, &[]))
}

/// Void when the step is now, or when it was recorded again later.
fn standing_of(log: &Log, line: &Line, step: &str) -> StateCode {
    let on_demand = log.document.step(step).is_some_and(|(stage, _)| stage.path == bayhand_procedure::Path::OnDemand);
    if on_demand {
        return StateCode::Done;
    }
    let recorded = |l: &&Line| match &l.happened.event {
        Event::Done { step: s, .. } => s == step,
        _ => false,
    };
    let last = log.lines.iter().rev().find(recorded).map(|l| l.number);
    let superseded = last.is_some_and(|last| last > line.number);
    if superseded || log.state.standing(step) == Standing::Void { StateCode::Again } else { StateCode::Done }
}

fn entered(step: &Step, entries: &BTreeMap<String, Entered>, tell: &Tell) -> String {
    let mut parts = Vec::new();
    for input in &step.inputs {
        for key in input.keys() {
            let Some(text) = entries.get(&key).and_then(|entry| value_text(input, entry, tell)) else { continue };
            parts.push(format!("{}: {text}", field_name(tell.words, &step.id, &key)));
        }
    }
    let checks = step.inputs.iter().filter(|i| i.kind == Kind::Check);
    let all_yes =
        checks.clone().count() > 0 && checks.clone().all(|i| entries.get(&i.id).is_some_and(|e| e.text == "yes"));
    if all_yes {
        parts.push(tell.text("row-checks", &[("count", checks.count().to_string())]));
    }
    parts.join("; ")
}

/// One value as it was entered, with its unit; none for a check that is all in order.
pub fn value_text(input: &Input, entry: &Entered, tell: &Tell) -> Option<String> {
    Some(match &input.kind {
        Kind::Check if entry.text == "yes" => return None,
        Kind::Check => tell.text("check-no", &[]),
        Kind::Choice(_) => tell.text(&format!("option-{}", entry.text), &[]),
        Kind::Number(number) => {
            let code = entry.unit.as_deref().unwrap_or(&number.unit);
            let symbol = unit(code).map_or("", |u| u.symbol());
            format!("{} {symbol}", entry.text).trim().to_owned()
        }
        Kind::Text => entry.text.clone(),
    })
}

/// Texts of an entry that may be corrected: no gate and no figure rests on them.
fn texts(log: &Log, step: &Step, entry: u64, tell: &Tell) -> Vec<EntryText> {
    if log.ended() || !step.gates.is_empty() {
        return Vec::new();
    }
    let Some(entries) = log.entered_at(entry) else { return Vec::new() };
    let inputs = step.inputs.iter().filter(|input| input.kind == Kind::Text);
    let text = |key: String| {
        let text = entries.get(&key)?.text.clone();
        Some(EntryText { label: field_name(tell.words, &step.id, &key), text, key })
    };
    inputs.flat_map(|input| input.keys()).filter_map(text).collect()
}

/// The values used, where they are not simply what was typed: means of several looks, and units changed.
fn used(step: &Step, line: &Line) -> String {
    let Some(seen) = &line.happened.seen else { return String::new() };
    let (Event::Done { entries, .. } | Event::Tried { entries, .. }) = &line.happened.event else {
        return String::new();
    };
    let mut parts = Vec::new();
    for (key, texts) in &seen.used {
        let values: Vec<f64> = texts.iter().filter_map(|t| t.parse().ok()).collect();
        let Some(Kind::Number(number)) = step.input_of(key).map(|i| &i.kind) else { continue };
        let other_unit = entries.get(key).and_then(|e| e.unit.as_ref()).is_some_and(|u| *u != number.unit);
        if values.len() > 1 || other_unit {
            let mean = values.iter().sum::<f64>() / values.len().max(1) as f64;
            let Some(own) = unit(&number.unit) else { continue };
            let suffix = key.split_once('.').map_or(key.as_str(), |(_, s)| s);
            parts.push(format!("{suffix} {} {}", show(mean, own, decimals_for(own)), own.symbol()));
        }
    }
    parts.join(", ")
}

/// What departed from the procedure: waivers, tries that failed, voided and repeated steps, holds.
pub fn departures(log: &Log, tell: &Tell) -> Vec<Departure> {
    let mut all = Vec::new();
    if let Some(signed) = &log.opened.signed_for {
        let text = format!("{} {}", not_proved(signed, tell), signed.found.join(" "));
        all.push(Departure { put_right: false, title: tell.text("departure-not-proved", &[]), text });
    }
    for line in &log.lines {
        let at = super::clock(&line.at);
        match &line.happened.event {
            Event::Waived { step, by, reason, .. } => {
                let tried = log.lines.iter().rev().filter(|l| l.number < line.number);
                let said = tried.into_iter().find_map(|l| match &l.happened.event {
                    Event::Tried { step: s, .. } if s == step => l.happened.seen.as_ref(),
                    _ => None,
                });
                let said = said.map(|s| {
                    s.gates
                        .iter()
                        .filter(|g| g.found != Found::Pass)
                        .map(|g| g.says.clone())
                        .collect::<Vec<_>>()
                        .join(" ")
                });
                all.push(Departure {
                    put_right: false,
                    title: tell.text("departure-waived", &[("step", short(step, tell))]),
                    text: tell.text(
                        "departure-waived-text",
                        &[
                            ("said", said.unwrap_or_default()),
                            ("at", at),
                            ("by", person(log, by, tell)),
                            ("reason", reason.clone()),
                        ],
                    ),
                });
            }
            Event::Reopened { step, by, reason, voided } => all.push(Departure {
                put_right: false,
                title: tell.text("departure-reopened", &[("step", short(step, tell))]),
                text: tell.text(
                    "departure-reopened-text",
                    &[
                        ("at", at),
                        ("by", person(log, by, tell)),
                        ("reason", reason.clone()),
                        ("count", voided.len().to_string()),
                    ],
                ),
            }),
            Event::Tried { step, by, .. } => {
                let says = line.happened.seen.iter().flat_map(|s| s.gates.iter()).filter(|g| g.found != Found::Pass);
                let says = says.map(|g| g.says.clone()).collect::<Vec<_>>().join(" ");
                all.push(Departure {
                    put_right: put_right(log, line.number, step),
                    title: tell.text("departure-tried", &[("step", short(step, tell))]),
                    text: tell
                        .text("departure-tried-text", &[("said", says), ("at", at), ("by", person(log, by, tell))]),
                });
            }
            Event::StopBegun { by, reason } => all.push(Departure {
                put_right: false,
                title: tell.text("departure-stopped", &[]),
                text: tell.text(
                    "departure-stopped-text",
                    &[("at", at), ("by", person(log, by, tell)), ("reason", reason.clone())],
                ),
            }),
            _ => {}
        }
    }
    all
}

/// True when the step was done later without a waiver of this try.
fn put_right(log: &Log, number: u64, step: &str) -> bool {
    let later = log.lines.iter().filter(|l| l.number > number);
    let next = later.into_iter().find_map(|l| match &l.happened.event {
        Event::Done { step: s, .. } if s == step => Some(true),
        Event::Tried { step: s, .. } | Event::Waived { step: s, .. } if s == step => {
            Some(matches!(l.happened.event, Event::Tried { .. }))
        }
        _ => None,
    });
    next.unwrap_or(false)
}
