//! Figures as rows: as found, now or as left, wanted, verdict.

use crate::{
    budget,
    judge::{Against, Judged, Wishes},
    tell::Tell,
    view::FigureRow,
};
use bayhand_chassis::reading::Figure;
use bayhand_vehicle::Place;

/// What a row is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Of {
    /// A figure of the loads.
    Loads(Figure),
    /// A difference of heights.
    Heights,
}

/// Rows for the figures of a judged reading, with those of an earlier one beside them.
pub fn rows(found: Option<&Judged>, left: Option<&Judged>, wishes: &Wishes, tell: &Tell) -> Vec<FigureRow> {
    let all = |judged: &Judged| -> Vec<(&'static str, Against, Of)> {
        let (f, u) = (&judged.figures, &judged.u);
        let told = |value, u| Against { value, u, wanted: None };
        vec![
            ("cross_pct", judged.cross(wishes), Of::Loads(Figure::CrossPct)),
            ("front_diff_kg", judged.front(wishes), Of::Loads(Figure::FrontDiffKg)),
            ("rear_diff_kg", judged.rear(wishes), Of::Loads(Figure::RearDiffKg)),
            ("front_pct", told(f.front_pct, u.front_pct), Of::Loads(Figure::FrontPct)),
            ("left_pct", told(f.left_pct, u.left_pct), Of::Loads(Figure::LeftPct)),
            ("total_kg", told(f.total_kg, u.total_kg), Of::Loads(Figure::TotalKg)),
            ("side_front_mm", judged.side(wishes, Place::Fl, Place::Fr), Of::Heights),
            ("side_rear_mm", judged.side(wishes, Place::Rl, Place::Rr), Of::Heights),
        ]
    };
    let Some(judged) = left.or(found) else { return Vec::new() };
    let before = found.map(all);
    all(judged)
        .into_iter()
        .enumerate()
        .map(|(index, (id, against, of))| {
            let verdict = if left.is_some() { against.verdict() } else { None };
            FigureRow {
                id: id.to_owned(),
                name: tell.text(&format!("figure-{}", id.replace('_', "-")), &[]),
                found: before.as_ref().map(|rows| with_u(&rows[index].1, of, tell)),
                left: left.map(|_| with_u(&against, of, tell)),
                made_of: match of {
                    Of::Loads(figure) => Some(budget::made_of(&judged.reading.budget(figure), tell)),
                    Of::Heights => None,
                },
                wanted: against.wanted.map(|(target, window)| {
                    let args = [("target", value(target, of, tell)), ("window", value(window, of, tell))];
                    tell.text("figure-wanted", &args)
                }),
                verdict: verdict.map(super::line::code),
                verdict_word: verdict.map(|v| tell.verdict(v)),
            }
        })
        .collect()
}

fn value(value: f64, of: Of, tell: &Tell) -> String {
    match of {
        Of::Loads(figure) => budget::value(figure, value, tell),
        Of::Heights => tell.mm(value, 1),
    }
}

fn with_u(against: &Against, of: Of, tell: &Tell) -> String {
    tell.text("figure-with-u", &[("value", value(against.value, of, tell)), ("u", value(against.u, of, tell))])
}
