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
                wanted: against.wanted.map(|of_it| wanted(of_it, of, tell)),
                verdict: verdict.map(super::line::code),
                verdict_word: verdict.map(|v| tell.verdict(v)),
            }
        })
        .collect()
}

/// Rows for load and height of each corner, as found and as left. Loads are only told: what is agreed of them are the figures.
pub fn corners(found: Option<&Judged>, left: Option<&Judged>, wishes: &Wishes, tell: &Tell) -> Vec<FigureRow> {
    let load = |judged: &Judged, p: Place| Against {
        value: *judged.loads_kg.at(p),
        u: *judged.u_loads_kg.at(p),
        wanted: None,
    };
    let height = |judged: &Judged, p: Place| Against {
        value: *judged.heights_mm.at(p),
        u: judged.spread_of_heights().one_mm,
        wanted: Some((*wishes.heights_mm.at(p), wishes.height_window_mm)),
    };
    let row = |id: &str, p: Place, of: Of, against: &dyn Fn(&Judged, Place) -> Against| {
        let told = |judged: &Judged| with_u(&against(judged, p), of, tell);
        let verdict = left.and_then(|judged| against(judged, p).verdict());
        FigureRow {
            id: format!("{id}.{}", p.code()),
            name: tell.text(&format!("figure-{}", id.replace('_', "-")), &[("corner", tell.corner(p))]),
            found: found.map(told),
            left: left.map(told),
            made_of: None,
            wanted: left.or(found).and_then(|judged| against(judged, p).wanted).map(|w| wanted(w, of, tell)),
            verdict: verdict.map(super::line::code),
            verdict_word: verdict.map(|v| tell.verdict(v)),
        }
    };
    // Shown as the total is: in the unit of a load.
    let loads = Place::ALL.into_iter().map(|p| row("load_kg", p, Of::Loads(Figure::TotalKg), &load));
    let heights = Place::ALL.into_iter().map(|p| row("height_mm", p, Of::Heights, &height));
    if left.or(found).is_none() { Vec::new() } else { loads.chain(heights).collect() }
}

fn wanted((target, window): (f64, f64), of: Of, tell: &Tell) -> String {
    tell.text("figure-wanted", &[("target", value(target, of, tell)), ("window", value(window, of, tell))])
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
