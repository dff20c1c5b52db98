//! The cars of the book: their visits, what was learned of each, and how it was handed over last.

use crate::{
    card::Card,
    known::Known,
    log::Log,
    show::{card_row, sheet},
    tell::Tell,
    view::{CarView, CollarRow, FactorRow, JobRow, LearnedView},
};
use bayhand_chassis::Confidence;
use bayhand_planner::{Knowledge, LearnedScale, Scaled, collar_effects};
use bayhand_procedure::Status;
use bayhand_vehicle::{Corners, Place};
use chrono::{DateTime, FixedOffset, NaiveDate};

/// One car, from the records of its visits, the newest first, at this time.
pub fn car(logs: &[Log], now: &DateTime<FixedOffset>, tell: &Tell) -> Option<CarView> {
    let newest = logs.first()?;
    let sealed = logs.iter().find(|log| log.state.status == Status::Sealed);
    let taught = logs.iter().filter(|log| log.state.status == Status::Sealed).find_map(|log| {
        let known = Known::of(log);
        Some(learned(&known, &known.learned()?, now, tell))
    });
    let left = sealed.map(|log| (log, sheet::tables(&Known::of(log), tell)));
    let left_says = match &left {
        Some((log, tables)) if !tables.is_empty() => {
            let args = [("on", tell.day(&log.at())), ("number", log.id.to_string())];
            tell.text("car-left", &args)
        }
        _ => tell.text("car-left-none", &[]),
    };
    Some(CarView {
        id: logs.last()?.id,
        name: newest.opened.car.clone(),
        says: newest.opened.practice.as_ref().map(|p| tell.text("car-practice", &[("seed", p.seed.to_string())])),
        visits: logs.iter().map(|log| visit(log, tell)).collect(),
        learned: taught,
        learned_none: tell.text("car-learned-none", &[]),
        left_says,
        left: left.map(|(_, tables)| tables).unwrap_or_default(),
    })
}

/// A job in the list of its car: how it stands, and who signed on.
fn visit(log: &Log, tell: &Tell) -> JobRow {
    let card = Card::of(log);
    let row = card_row(log.id, &card, tell);
    let args = [("job", row.says), ("people", card.people.join(", ")), ("count", card.departures.to_string())];
    JobRow { says: tell.text("car-visit", &args), ..row }
}

fn learned(known: &Known, taught: &Knowledge, now: &DateTime<FixedOffset>, tell: &Tell) -> LearnedView {
    let on = NaiveDate::parse_from_str(&taught.on, "%Y-%m-%d").ok();
    let days = on.map_or(0, |on| (now.date_naive() - on).num_days());
    let args = [("on", taught.on.clone()), ("days", days.to_string())];
    LearnedView {
        says: tell.text("car-learned", &args),
        collars: collars(known, taught, tell).unwrap_or_default(),
        factors: taught.scales.iter().map(|scale| factor(scale, tell)).collect(),
        settle: tell.text("car-learned-settle", &[("kg", tell.kg(taught.settle_kg))]),
    }
}

/// What one turn of each collar does at its own corner; none while the car's data is not entered.
fn collars(known: &Known, taught: &Knowledge, tell: &Tell) -> Option<Vec<CollarRow>> {
    let set = known.last_set()?;
    let car = known.judged(set).ok()?.car;
    let turn_mm = Corners::from_fn(|p| known.pitch_mm(p));
    let effects = collar_effects(&car, &Confidence::default(), turn_mm, Some(taught)).ok()?;
    let with_u = |value: String, u: String| tell.text("figure-with-u", &[("value", value), ("u", u)]);
    let row = |p: Place| {
        let does = effects.at(p);
        CollarRow {
            corner: tell.corner(p),
            travel: tell.mm(*turn_mm.at(p), 2),
            load: with_u(tell.signed_kg(does.load_kg), tell.kg(does.u_load_kg)),
            height: with_u(tell.signed_mm(does.height_mm), tell.mm(does.u_height_mm, 1)),
        }
    };
    Some(Place::ALL.into_iter().map(row).collect())
}

/// A spring or a ratio against what was entered or assumed of it.
fn factor(scale: &LearnedScale, tell: &Tell) -> FactorRow {
    let what = match scale.what {
        Scaled::SpringRate => "learned-spring",
        Scaled::MotionRatio => "learned-ratio",
    };
    let corners: Vec<_> = scale.places.iter().map(|p| tell.corner(*p)).collect();
    let percent = |value: f64| tell.percent(value, 1);
    let id = if scale.entered { "learned-of-entered" } else { "learned-of-assumed" };
    let args = [
        ("percent", percent(100.0 * scale.factor)),
        ("u", percent(bayhand_chassis::COVERAGE * scale.sigma_pct)),
        ("before", percent(bayhand_chassis::COVERAGE * scale.prior_sigma_pct)),
    ];
    FactorRow { name: tell.text(what, &[("corners", corners.join(", "))]), text: tell.text(id, &args) }
}
