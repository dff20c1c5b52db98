//! Figures as rows: as found, now or as left, wanted, verdict.

use crate::{
    budget,
    judge::{Against, Judged, Wishes},
    tell::Tell,
    view::FigureRow,
};
use bayhand_chassis::reading::Figure;
use bayhand_vehicle::Place;

/// How a figure is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Shown {
    Kilograms,
    Percent,
    Millimetres,
}

/// Rows for the figures of a judged reading, with those of an earlier one beside them.
pub fn rows(found: Option<&Judged>, left: Option<&Judged>, wishes: &Wishes, tell: &Tell) -> Vec<FigureRow> {
    let all = |judged: &Judged| -> Vec<(&'static str, Against, Shown)> {
        let (f, u) = (&judged.figures, &judged.u);
        let told = |value, u| Against { value, u, wanted: None };
        vec![
            ("cross_pct", judged.cross(wishes), Shown::Percent),
            ("front_diff_kg", judged.front(wishes), Shown::Kilograms),
            ("rear_diff_kg", judged.rear(wishes), Shown::Kilograms),
            ("front_pct", told(f.front_pct, u.front_pct), Shown::Percent),
            ("left_pct", told(f.left_pct, u.left_pct), Shown::Percent),
            ("total_kg", told(f.total_kg, u.total_kg), Shown::Kilograms),
            ("side_front_mm", judged.side(wishes, Place::Fl, Place::Fr), Shown::Millimetres),
            ("side_rear_mm", judged.side(wishes, Place::Rl, Place::Rr), Shown::Millimetres),
        ]
    };
    let Some(judged) = left.or(found) else { return Vec::new() };
    let before = found.map(all);
    all(judged)
        .into_iter()
        .enumerate()
        .map(|(index, (id, against, shown))| {
            let verdict = if left.is_some() { against.verdict() } else { None };
            FigureRow {
                id: id.to_owned(),
                name: tell.text(&format!("figure-{}", id.replace('_', "-")), &[]),
                found: before.as_ref().map(|rows| with_u(&rows[index].1, shown, tell)),
                left: left.map(|_| with_u(&against, shown, tell)),
                made_of: figure_of(id).map(|figure| budget::made_of(&judged.reading.budget(figure), tell)),
                wanted: against.wanted.map(|(target, window)| {
                    let args = [("target", value(target, shown, tell)), ("window", value(window, shown, tell))];
                    tell.text("figure-wanted", &args)
                }),
                verdict: verdict.map(super::line::code),
                verdict_word: verdict.map(|v| tell.verdict(v)),
            }
        })
        .collect()
}

/// The figure of the loads that a row is about; none for heights.
fn figure_of(id: &str) -> Option<Figure> {
    Some(match id {
        "cross_pct" => Figure::CrossPct,
        "front_diff_kg" => Figure::FrontDiffKg,
        "rear_diff_kg" => Figure::RearDiffKg,
        "front_pct" => Figure::FrontPct,
        "left_pct" => Figure::LeftPct,
        "total_kg" => Figure::TotalKg,
        _ => return None,
    })
}

fn value(value: f64, shown: Shown, tell: &Tell) -> String {
    match shown {
        Shown::Kilograms => tell.kg(value),
        Shown::Percent => tell.percent(value, 2),
        Shown::Millimetres => tell.mm(value, 1),
    }
}

fn with_u(against: &Against, shown: Shown, tell: &Tell) -> String {
    tell.text("figure-with-u", &[("value", value(against.value, shown, tell)), ("u", value(against.u, shown, tell))])
}
