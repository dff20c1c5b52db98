//! What the customer's sheet says of a sealed job.

use crate::{
    handover::{Handover, Headings, Labelled, Table, TableRow},
    judge::{Judged, Wishes},
    known::Known,
    log::Log,
    plan::Aim,
    show::{angle_figures, angle_with_u, figures, line, outlook, person, review, rows, title},
    tell::Tell,
    view::{FigureRow, VerdictCode},
};
use bayhand_procedure::{Event, Status};
use bayhand_vehicle::Place;
use chrono::{DateTime, FixedOffset};

/// The contents of the sheet; none while the job is not sealed or nothing was read at its end. `signed` are code and
/// fingerprint of the seal, when it is a signature.
pub fn handover(log: &Log, signed: Option<(String, String)>, tell: &Tell) -> Option<Handover> {
    let known = Known::of(log);
    let (_, left, wishes) = found_and_left(&known)?;
    let words = |id: &str| tell.text(id, &[]);
    let labelled = |label: &str, text: String| Labelled { label: words(label), text };
    let option =
        |step: &str, key: &str| known.text(step, key).map_or_else(String::new, |o| words(&format!("option-{o}")));
    let sealed = sealed(log)?;
    Some(Handover {
        language: tell.words.language().code().to_owned(),
        title: words("sheet-title"),
        facts: vec![
            labelled("sheet-car", title(log, tell)),
            labelled("sheet-use", option("intake.car", "use")),
            labelled("sheet-first", option("intake.wishes", "first")),
            labelled(
                "sheet-ballast",
                known.value("used.ballast", "ballast").map_or_else(String::new, |kg| tell.kg(kg)),
            ),
            labelled("sheet-fuel", known.text("intake.load", "fuel-level").unwrap_or_default().to_owned()),
            labelled("sheet-date", tell.date(&sealed.0)),
        ],
        tables: tables(&known, tell),
        turned: turned(&known, tell),
        compromise: review::compromise(&known, tell).into_iter().collect(),
        beyond: beyond(&known, &left, &wishes, tell),
        line: line::line(&left, &wishes, None, &[], tell).map(|drawn| drawn.line),
        // A try that was put right at once is told in the record; the customer reads what was let pass.
        departures: rows::departures(log, tell)
            .into_iter()
            .filter(|d| !d.put_right)
            .map(|d| format!("{}. {}", d.title, d.text))
            .collect(),
        cautions: vec![words("caution-retorque"), words("caution-lamps"), words("caution-maker")],
        people: people(log, &sealed.1, tell),
        instruments: super::instruments::of_job(&known, tell)
            .into_iter()
            .map(|row| Labelled { label: row.name, text: row.text })
            .collect(),
        seal: seal_rows(log, &sealed, signed, tell),
        remarks: remarks(log, &sealed.1, tell),
        headings: Headings {
            turned: words("sheet-turned"),
            compromise: words("sheet-compromise"),
            beyond: words("sheet-beyond"),
            departures: words("sheet-departures"),
            cautions: words("sheet-cautions"),
            people: words("sheet-people"),
            instruments: words("sheet-instruments"),
            seal: words("sheet-seal"),
        },
    })
}

/// When a sealed job was sealed, and by whom; none of a job that is not.
pub fn sealed(log: &Log) -> Option<(DateTime<FixedOffset>, String)> {
    let seal = |line: &crate::log::Line| match &line.happened.event {
        Event::Sealed { by } => Some((line.at, by.clone())),
        _ => None,
    };
    log.lines.iter().rev().find_map(seal).filter(|_| log.state.status == Status::Sealed)
}

/// What was read before anything was set and at the end, and what was agreed; none before the end.
pub fn found_and_left(known: &Known) -> Option<(Option<Judged>, Judged, Wishes)> {
    Some((known.judged_group("baseline"), known.judged_group("final")?, known.wishes()?))
}

/// Figures, corners, angles and pressures as found and as left: those that were read.
pub fn tables(known: &Known, tell: &Tell) -> Vec<Table> {
    let Some((found, left, wishes)) = found_and_left(known) else { return Vec::new() };
    let loads =
        [figure_table(found.as_ref(), &left, &wishes, tell), corner_table(found.as_ref(), &left, &wishes, tell)];
    loads.into_iter().chain(angle_table(known, tell)).chain(pressure_table(known, tell)).collect()
}

/// By whom, when, what the seal can be compared by, and what the job was done with.
fn seal_rows(
    log: &Log,
    (at, by): &(DateTime<FixedOffset>, String),
    signed: Option<(String, String)>,
    tell: &Tell,
) -> Vec<Labelled> {
    let labelled = |label: &str, text: String| Labelled { label: tell.text(label, &[]), text };
    let by_at = [("by", person(log, by, tell)), ("at", tell.date(at))];
    let mut rows = vec![labelled("sheet-sealed-by", tell.text("sheet-sealed", &by_at))];
    if let Some((code, fingerprint)) = signed {
        rows.push(labelled("sheet-code", code));
        rows.push(labelled("sheet-key", fingerprint));
    }
    rows.push(labelled("sheet-head", log.head.get(..24).unwrap_or(&log.head).to_owned()));
    let with = [
        ("document", super::procedure_title(&log.document, &log.opened.document_hash)),
        ("program", format!("Bayhand {}", env!("CARGO_PKG_VERSION"))),
    ];
    rows.push(labelled("sheet-procedure", tell.text("sheet-procedure-by", &with)));
    rows
}

fn remarks(log: &Log, sealer: &str, tell: &Tell) -> Vec<String> {
    let mut remarks = Vec::new();
    if let Some(signed) = &log.opened.signed_for {
        let args = [("by", signed.by.clone()), ("name", signed.name.clone()), ("reason", signed.reason.clone())];
        remarks.push(tell.text("remark-not-proved", &args));
    }
    let named = log.state.people().keys().filter(|initials| log.state.worked(initials) || *initials == sealer);
    if named.into_iter().any(|initials| !log.proved.contains(initials)) {
        remarks.push(tell.text("remark-names", &[]));
    }
    if log.opened.practice.is_some() {
        remarks.push(tell.text("remark-practice", &[]));
    }
    remarks
}

fn columns(tell: &Tell) -> Vec<String> {
    ["sheet-found", "sheet-left", "sheet-wanted"].map(|id| tell.text(id, &[])).to_vec()
}

fn figure_table(found: Option<&Judged>, left: &Judged, wishes: &Wishes, tell: &Tell) -> Table {
    let rows = figures::rows(found, Some(left), wishes, tell).into_iter().map(table_row);
    Table {
        title: tell.text("sheet-figures", &[]),
        columns: columns(tell),
        rows: rows.collect(),
        note: tell.text("sheet-figures-note", &[]),
    }
}

fn table_row(row: FigureRow) -> TableRow {
    TableRow {
        name: row.name,
        cells: [row.found, row.left, row.wanted].map(Option::unwrap_or_default).to_vec(),
        verdict: row.verdict.zip(row.verdict_word),
    }
}

fn corner_table(found: Option<&Judged>, left: &Judged, wishes: &Wishes, tell: &Tell) -> Table {
    let pair = |judged: &Judged, p: Place| {
        let load = tell.text(
            "figure-with-u",
            &[("value", tell.kg(*judged.loads_kg.at(p))), ("u", tell.kg(*judged.u_loads_kg.at(p)))],
        );
        format!("{load}, {}", tell.mm(*judged.heights_mm.at(p), 1))
    };
    let row = |p: Place| TableRow {
        name: tell.corner(p),
        cells: vec![
            found.map_or_else(String::new, |j| pair(j, p)),
            pair(left, p),
            tell.mm(*wishes.heights_mm.at(p), 1),
        ],
        verdict: None,
    };
    Table {
        title: tell.text("sheet-corners", &[]),
        columns: columns(tell),
        rows: Place::ALL.into_iter().map(row).collect(),
        note: tell.text("sheet-corners-note", &[]),
    }
}

/// Figures that are not inside their windows as left; what stood against more turning at the last judgement; and the advice
/// of a job that only measured.
fn beyond(known: &Known, left: &Judged, wishes: &Wishes, tell: &Tell) -> Vec<String> {
    let rows = figures::rows(None, Some(left), wishes, tell);
    let outside = rows.into_iter().filter(|row| row.verdict.is_some_and(|code| code != VerdictCode::Inside));
    let mut told: Vec<_> = outside
        .map(|row| {
            let args = [
                ("name", row.name),
                ("left", row.left.unwrap_or_default()),
                ("wanted", row.wanted.unwrap_or_default()),
                ("verdict", row.verdict_word.unwrap_or_default()),
            ];
            tell.text("sheet-beyond-figure", &args)
        })
        .collect();
    if !told.is_empty() {
        let last = known.judged_set().and_then(|set| known.judged(set).ok());
        let plan = last.and_then(|judged| known.plan(&judged, wishes, Aim::Wish(wishes.first))?.ok());
        let bound = plan.and_then(|plan| outlook::binds(&plan, wishes, tell));
        told.push(bound.unwrap_or_else(|| tell.text("sheet-beyond-nothing", &[])));
    }
    told.extend(known.text("loop.advise", "advice").map(str::to_owned));
    told
}

/// Camber, toe and caster of each wheel: as found roughly before the balance, as left with what is known of them, and
/// what was wanted.
fn angle_table(known: &Known, tell: &Tell) -> Option<Table> {
    let left = known.aligned("final.angles").ok()?;
    let thrust = &left.angles.thrust;
    let args = [("thrust", angle_with_u(thrust.deg, thrust.expanded_deg(), tell))];
    Some(Table {
        title: tell.text("sheet-angles", &[]),
        columns: columns(tell),
        rows: angle_figures(known, &left, tell).into_iter().map(table_row).collect(),
        note: tell.text("sheet-angles-note", &args),
    })
}

fn pressure_table(known: &Known, tell: &Tell) -> Option<Table> {
    let cold = known.corners("final.cold", "pressures")?;
    let working = known.corners("used.pressures", "pressures")?;
    let row = |p: Place| TableRow {
        name: tell.corner(p),
        cells: vec![tell.bar(*working.at(p)), tell.bar(*cold.at(p))],
        verdict: None,
    };
    Some(Table {
        title: tell.text("sheet-pressures", &[]),
        columns: vec![tell.text("sheet-working", &[]), tell.text("sheet-cold", &[])],
        rows: Place::ALL.into_iter().map(row).collect(),
        note: tell.text("sheet-pressures-note", &[]),
    })
}

fn turned(known: &Known, tell: &Tell) -> Vec<Labelled> {
    let turns = known.turns_made();
    Place::ALL
        .into_iter()
        .map(|p| {
            let made = *turns.at(p);
            let args = [("turns", tell.turns(made)), ("mm", tell.signed_mm(made * known.pitch_mm(p)))];
            Labelled { label: tell.corner(p), text: tell.text("sheet-turns", &args) }
        })
        .collect()
}

fn people(log: &Log, sealer: &str, tell: &Tell) -> Vec<Labelled> {
    let worked = log.state.people().keys().filter(|initials| log.state.worked(initials));
    let named = |initials: &str| {
        let name = log.names.get(initials).cloned().unwrap_or_default();
        format!("{name} ({})", person(log, initials, tell))
    };
    let mut all: Vec<_> =
        worked.map(|initials| Labelled { label: tell.text("sheet-worked", &[]), text: named(initials) }).collect();
    all.push(Labelled { label: tell.text("sheet-sealed-by", &[]), text: named(sealer) });
    all
}
