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

/// The figures of a judged reading, each against what was agreed of it; an id ends in its unit.
fn all(judged: &Judged, wishes: &Wishes) -> Vec<(&'static str, Against, Of)> {
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
}

/// Load and height of each corner. Loads are only told: what is agreed of them are the figures.
fn each_corner(judged: &Judged, wishes: &Wishes) -> Vec<(&'static str, Place, Against, Of)> {
    // Shown as the total is: in the unit of a load.
    let load = |p: Place| {
        let against = Against { value: *judged.loads_kg.at(p), u: *judged.u_loads_kg.at(p), wanted: None };
        ("load_kg", p, against, Of::Loads(Figure::TotalKg))
    };
    let height = |p: Place| {
        let wanted = Some((*wishes.heights_mm.at(p), wishes.height_window_mm));
        let against = Against { value: *judged.heights_mm.at(p), u: judged.spread_of_heights().one_mm, wanted };
        ("height_mm", p, against, Of::Heights)
    };
    Place::ALL.into_iter().map(load).chain(Place::ALL.into_iter().map(height)).collect()
}

/// Figures, loads and heights as numbers: name and unit apart.
pub fn numbers(judged: &Judged, wishes: &Wishes) -> Vec<(String, String, Against)> {
    let apart = |id: &str| id.rsplit_once('_').map_or((id.to_owned(), String::new()), |(a, b)| (a.into(), b.into()));
    let figures = all(judged, wishes).into_iter().map(|(id, against, _)| {
        let (name, unit) = apart(id);
        (name, unit, against)
    });
    let corners = each_corner(judged, wishes).into_iter().map(|(id, p, against, _)| {
        let (name, unit) = apart(id);
        (format!("{name}_{}", p.code().to_lowercase()), unit, against)
    });
    figures.chain(corners).collect()
}

/// Rows for the figures of a judged reading, with those of an earlier one beside them.
pub fn rows(found: Option<&Judged>, left: Option<&Judged>, wishes: &Wishes, tell: &Tell) -> Vec<FigureRow> {
    let all = |judged: &Judged| all(judged, wishes);
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

/// Rows for load and height of each corner, as found and as left.
pub fn corners(found: Option<&Judged>, left: Option<&Judged>, wishes: &Wishes, tell: &Tell) -> Vec<FigureRow> {
    let Some(judged) = left.or(found) else { return Vec::new() };
    let before = found.map(|judged| each_corner(judged, wishes));
    let rows = each_corner(judged, wishes).into_iter().enumerate();
    rows.map(|(index, (id, p, against, of))| {
        let verdict = left.and_then(|_| against.verdict());
        FigureRow {
            id: format!("{id}.{}", p.code()),
            name: tell.text(&format!("figure-{}", id.replace('_', "-")), &[("corner", tell.corner(p))]),
            found: before.as_ref().map(|rows| with_u(&rows[index].2, of, tell)),
            left: left.map(|_| with_u(&against, of, tell)),
            made_of: None,
            wanted: against.wanted.map(|it| wanted(it, of, tell)),
            verdict: verdict.map(super::line::code),
            verdict_word: verdict.map(|v| tell.verdict(v)),
        }
    })
    .collect()
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
