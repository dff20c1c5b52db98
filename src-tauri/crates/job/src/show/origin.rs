//! Where one figure comes from: exactly the readings that it was made from, as they were typed, with instrument, person,
//! time and how the car stood.

use crate::{
    align::{Angle, READ},
    draft::unit,
    known::Known,
    log::{Log, Recording},
    reading::{ReadingSet, group_of},
    show::{clock, instruments, person, review, rows},
    tell::Tell,
    view::{OriginPart, OriginReading, OriginView},
};
use bayhand_measure::{decimals_for, show};
use bayhand_procedure::{Fact, Kind, State, apply};
use bayhand_vehicle::{Axle, Place};

/// What a figure is made from.
enum Of {
    /// Loads at these corners.
    Loads(Vec<Place>),
    /// Heights at these corners.
    Heights(Vec<Place>),
    /// An angle of a wheel.
    Angle(Angle, Place),
}

/// Some values of a step that a figure is made from.
struct Source {
    step: &'static str,
    keys: Vec<String>,
    /// The kind of instrument; none where intake names none.
    instrument: Option<&'static str>,
}

/// Facts that tell in which configuration a reading was taken.
const CONFIGURATION: [Fact; 5] = [Fact::FrontLink, Fact::RearLink, Fact::Ballast, Fact::Pressures, Fact::Fuel];

/// Where a figure of the review comes from; none for a figure that the job does not have.
pub fn origin(log: &Log, figure: &str, tell: &Tell) -> Option<OriginView> {
    let known = Known::of(log);
    let (found, left) = review::found_and_left(&known);
    let row = review::figures(&known, found.as_ref(), left.as_ref(), tell).into_iter().find(|row| row.id == figure)?;
    let of = Of::figure(figure)?;
    let part = |id: &str, value: Option<&String>, readings: Vec<OriginReading>| {
        let says = tell.text(id, &[("value", value?.clone())]);
        Some(OriginPart { says, made_of: None, readings })
    };
    let (first, last) = match &of {
        Of::Angle(angle, place) => (rough(&known, *angle, *place, tell), aligned(&known, *angle, *place, tell)),
        Of::Loads(places) => {
            let of_set = |set: &ReadingSet| of_loads(&known, set, places, tell);
            (found.as_ref().map(|j| of_set(&j.set)), left.as_ref().map(|j| of_set(&j.set)))
        }
        Of::Heights(places) => {
            let of_set = |set: &ReadingSet| of_settles(&known, set, "heights", places, "height-gauge", tell);
            (found.as_ref().map(|j| of_set(&j.set)), left.as_ref().map(|j| of_set(&j.set)))
        }
    };
    let first = part("origin-found", row.found.as_ref(), first.unwrap_or_default());
    let last = part("origin-left", row.left.as_ref(), last.unwrap_or_default());
    let mut parts: Vec<_> = first.into_iter().chain(last).collect();
    if let Some(newest) = parts.last_mut() {
        newest.made_of = row.made_of.filter(|text| !text.is_empty());
    }
    Some(OriginView { title: row.name, parts })
}

impl Of {
    fn figure(id: &str) -> Option<Of> {
        let at = |code: &str| Place::ALL.into_iter().find(|p| p.code() == code);
        if let Some((of, code)) = id.split_once('.') {
            let place = at(code)?;
            return match of {
                "load_kg" => Some(Of::Loads(vec![place])),
                "height_mm" => Some(Of::Heights(vec![place])),
                _ => {
                    let angles = [Angle::Toe, Angle::Camber, Angle::Caster];
                    Some(Of::Angle(angles.into_iter().find(|angle| angle.code() == of)?, place))
                }
            };
        }
        let (front, rear) = (vec![Place::Fl, Place::Fr], vec![Place::Rl, Place::Rr]);
        match id {
            "cross_pct" | "front_pct" | "left_pct" | "total_kg" => Some(Of::Loads(Place::ALL.to_vec())),
            "front_diff_kg" => Some(Of::Loads(front)),
            "rear_diff_kg" => Some(Of::Loads(rear)),
            "side_front_mm" => Some(Of::Heights(front)),
            "side_rear_mm" => Some(Of::Heights(rear)),
            _ => None,
        }
    }
}

fn keys(input: &str, places: &[Place]) -> Vec<String> {
    places.iter().map(|p| format!("{input}.{}", p.code())).collect()
}

/// Both set-ups of the laser over the pads.
fn pads_level() -> Source {
    let both = ["set-up-1", "set-up-2"].into_iter().flat_map(|set_up| keys(set_up, &Place::ALL));
    Source { step: "pads.level", keys: both.collect(), instrument: Some("laser") }
}

/// The looks at the pads of each settle, and the heights of the pads that were taken out of them.
fn of_loads(known: &Known, set: &ReadingSet, places: &[Place], tell: &Tell) -> Vec<OriginReading> {
    let before = set.readings.iter().find_map(|r| r.number).unwrap_or(u64::MAX);
    let level = known.recordings().iter().rev().find(|r| r.step == "pads.level" && r.number < before);
    let level = level.and_then(|recording| reading(known, recording, &pads_level(), None, tell));
    level.into_iter().chain(of_settles(known, set, "loads", places, "pads", tell)).collect()
}

/// An input at each settle of a set.
fn of_settles(
    known: &Known,
    set: &ReadingSet,
    input: &str,
    places: &[Place],
    instrument: &'static str,
    tell: &Tell,
) -> Vec<OriginReading> {
    let numbers = set.readings.iter().filter_map(|r| r.number);
    let recordings = numbers.filter_map(|number| known.recordings().iter().find(|r| r.number == number));
    let one = |(settle, recording): (usize, &Recording)| {
        let source = Source { step: "", keys: keys(input, places), instrument: Some(instrument) };
        reading(known, recording, &source, Some((settle + 1, set.readings.len())), tell)
    };
    recordings.enumerate().filter_map(one).collect()
}

/// An angle as it was read roughly before the heights were set.
fn rough(known: &Known, angle: Angle, place: Place, tell: &Tell) -> Option<Vec<OriginReading>> {
    let first = known.recordings().iter().find(|r| r.step == "rough.angles")?;
    // Toe is not read with the gauge, and intake names nothing else for it.
    let instrument = (angle == Angle::Camber).then_some("angle-gauge");
    let source = Source { step: "rough.angles", keys: keys(angle.code(), &[place]), instrument };
    Some(reading(known, first, &source, None, tell).into_iter().collect())
}

/// An angle from raw readings: those of the last reading, and what was measured beside it.
fn aligned(known: &Known, angle: Angle, place: Place, tell: &Tell) -> Option<Vec<OriginReading>> {
    let step = if known.aligned("final.angles").is_ok() { "final.angles" } else { READ };
    let gauge = ["gauge-direct", "gauge-turned"].map(str::to_owned);
    let run_out = |of: &str| ["up", "down"].map(|end| format!("runout-{of}-{end}.{}", place.code())).to_vec();
    let sources = match angle {
        Angle::Camber => vec![
            pads_level(),
            Source {
                step: "align.runout",
                keys: [run_out("camber"), gauge.to_vec()].concat(),
                instrument: Some("angle-gauge"),
            },
            Source { step, keys: keys("camber", &[place]), instrument: Some("angle-gauge") },
        ],
        Angle::Toe => {
            // In front toe is along the line that the rear wheels push the car along.
            let wheels = match place.axle() {
                Axle::Front => vec![place, Place::Rl, Place::Rr],
                Axle::Rear => vec![place],
            };
            let edges = [keys("edge-front", &wheels), keys("edge-rear", &wheels), keys("hub", &Place::ALL)];
            let lines = ["rim-between.front", "rim-between.rear", "lines-front", "lines-rear", "lines-apart"];
            vec![
                Source { step: "align.runout", keys: run_out("edge"), instrument: None },
                Source { step: "align.lines", keys: lines.map(str::to_owned).to_vec(), instrument: None },
                Source { step, keys: edges.concat(), instrument: None },
            ]
        }
        Angle::Caster => {
            let swept = ["left-plate", "left-gauge", "right-plate", "right-gauge"];
            let swept = swept.map(|of| format!("sweep-{of}.{}", place.code())).to_vec();
            vec![
                Source { step: "align.runout", keys: gauge.to_vec(), instrument: Some("angle-gauge") },
                Source { step: "align.caster", keys: swept, instrument: Some("angle-gauge") },
            ]
        }
    };
    let read = known.last(step)?.number;
    let of = |source: &Source| {
        // Lines that were set up again since say nothing of this reading; a sweep that was made since does.
        let until = if source.step == "align.lines" { read } else { u64::MAX };
        let recording = known.recordings().iter().rev().find(|r| r.step == source.step && r.number <= until)?;
        reading(known, recording, source, None, tell)
    };
    Some(sources.iter().filter_map(of).collect())
}

/// One recording with those of its values that count; none when it has none of them.
fn reading(
    known: &Known,
    recording: &Recording,
    source: &Source,
    settle: Option<(usize, usize)>,
    tell: &Tell,
) -> Option<OriginReading> {
    let raw = raw(known, recording, &source.keys, tell);
    if raw.is_empty() {
        return None;
    }
    let what = match settle {
        Some((number, count)) if group_of(recording.step).is_some() => {
            tell.text("origin-settle", &[("number", number.to_string()), ("count", count.to_string())])
        }
        _ => rows::short(recording.step, tell),
    };
    let named = source.instrument.and_then(|kind| instruments::named(kind, known, tell));
    Some(OriginReading {
        entry: recording.number,
        what,
        when: clock(&recording.at),
        who: person(known.log, recording.by, tell),
        raw,
        instrument: named.unwrap_or_else(|| tell.text("origin-no-instrument", &[])),
        configuration: configuration(known, recording.number, tell),
    })
}

/// What was typed, a line for each input: 'Height: front left 120.5 mm, front right 121.0 mm'.
fn raw(known: &Known, recording: &Recording, keys: &[String], tell: &Tell) -> Vec<String> {
    let mut lines: Vec<(&str, Vec<String>)> = Vec::new();
    for key in keys {
        let (input, suffix) = key.split_once('.').unwrap_or((key, ""));
        let Some(typed) = typed(known, recording, key, tell) else { continue };
        let typed = match suffix {
            "" => typed,
            "front" | "rear" => format!("{} {typed}", tell.text(&format!("axle-{suffix}"), &[])),
            corner => format!("{} {typed}", tell.text(&format!("corner-{corner}"), &[])),
        };
        match lines.last_mut().filter(|(of, _)| *of == input) {
            Some((_, values)) => values.push(typed),
            None => lines.push((input, vec![typed])),
        }
    }
    let line =
        |(input, values): (&str, Vec<String>)| format!("{}: {}", tell.input(recording.step, input), values.join(", "));
    lines.into_iter().map(line).collect()
}

/// A value as it was typed; with the mean where it is several looks.
fn typed(known: &Known, recording: &Recording, key: &str, tell: &Tell) -> Option<String> {
    let input = known.log.document.step(recording.step)?.1.input_of(key)?;
    let typed = rows::value_text(input, recording.entries.get(key)?, tell)?;
    let looks = recording.looks(key);
    let own = match &input.kind {
        Kind::Number(number) if looks.len() > 1 => unit(&number.unit),
        _ => None,
    };
    let Some(own) = own else { return Some(typed) };
    let mean = looks.iter().sum::<f64>() / looks.len() as f64;
    let mean = format!("{} {}", show(mean, own, decimals_for(own) + 1), own.symbol());
    Some(tell.text("origin-looks", &[("typed", typed), ("mean", mean)]))
}

/// How the car stood when an entry was written, and how its collars had been turned until then.
fn configuration(known: &Known, number: u64, tell: &Tell) -> String {
    let before = known.log.lines.iter().filter(|line| line.number < number);
    let state = before.fold(State::default(), |state, line| apply(&known.log.document, state, &line.happened.event));
    let facts = CONFIGURATION.into_iter().filter_map(|fact| {
        let id = bayhand_words::id("stood", &[&fact.code(), &state.fact(fact).code()]);
        // What was not stated yet has no words and is not told.
        tell.words.has(&id).then(|| tell.text(&id, &[]))
    });
    let turns = known.turns_made_before(number);
    let turned: Vec<_> = Place::ALL
        .into_iter()
        .filter(|p| *turns.at(*p) != 0.0)
        .map(|p| format!("{} {}", tell.corner(p), tell.turns(*turns.at(p))))
        .collect();
    let collars = match turned.is_empty() {
        true => tell.text("stood-collars-as-found", &[]),
        false => tell.text("stood-collars-turned", &[("turns", turned.join(", "))]),
    };
    facts.chain([collars]).collect::<Vec<_>>().join("; ")
}
