//! Predicted and came, over the rounds: the figures that were agreed, and the loads.

use crate::{
    body::PlanSeen,
    judge::{Against, Judged, Wishes},
    known::Known,
    tell::Tell,
    view::{PairPlot, PairPoint},
};
use bayhand_chassis::Figures;
use bayhand_vehicle::{Corners, Place};

/// One round: what came, and what its plan had foretold.
struct Round {
    came: Judged,
    foretold: Option<Corners<f64>>,
}

/// The readings of the rounds, judged, as found first.
pub fn rounds(known: &Known) -> Vec<Judged> {
    known.rounds_read().into_iter().filter_map(|set| known.judged(set).ok()).collect()
}

/// The rounds with the loads that the plan before each had foretold.
fn with_plans(known: &Known) -> Vec<Round> {
    let judgements = known.recordings().iter().filter(|r| r.step == "loop.judge");
    let plans: Vec<&PlanSeen> = judgements.filter_map(|r| r.seen.and_then(|s| s.plan.as_ref())).collect();
    let loads = |plan: &&PlanSeen| {
        let [fl, fr, rl, rr] = plan.loads_kg.each_ref().map(|text| text.parse().ok());
        Some(Corners { fl: fl?, fr: fr?, rl: rl?, rr: rr? })
    };
    let foretold = |index: usize| index.checked_sub(1).and_then(|i| plans.get(i)).and_then(loads);
    let round = |(index, came)| Round { came, foretold: foretold(index) };
    rounds(known).into_iter().enumerate().map(round).collect()
}

/// The figures with a wish: cross weight, front and rear difference.
pub fn of_wishes(known: &Known, wishes: &Wishes, tell: &Tell) -> Vec<PairPlot> {
    let rounds = with_plans(known);
    let figure = |id: &str, came: &dyn Fn(&Judged) -> Against, foretold: &dyn Fn(&Figures) -> f64, show: Show| {
        let name = tell.text(&format!("figure-{}", id.replace('_', "-")), &[]);
        let foretold = |loads: &Corners<f64>| foretold(&Figures::of(loads));
        plot(id, name, &rounds, came, &foretold, show, tell)
    };
    let kg: Show = &|v| tell.signed_kg(v);
    let percent: Show = &|v| tell.percent(v, 2);
    [
        figure("cross_pct", &|j| j.cross(wishes), &|f| f.cross_pct, percent),
        figure("front_diff_kg", &|j| j.front(wishes), &|f| f.front_diff_kg, kg),
        figure("rear_diff_kg", &|j| j.rear(wishes), &|f| f.rear_diff_kg, kg),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// The same, and the four loads.
pub fn all(known: &Known, wishes: &Wishes, tell: &Tell) -> Vec<PairPlot> {
    let rounds = with_plans(known);
    let load = |place: Place| {
        let came = |judged: &Judged| Against {
            value: *judged.loads_kg.at(place),
            u: *judged.u_loads_kg.at(place),
            wanted: None,
        };
        let title = tell.text("plot-load", &[("corner", tell.corner(place))]);
        let id = format!("load_kg.{}", place.code());
        plot(&id, title, &rounds, &came, &|loads| *loads.at(place), &|v| tell.kg(v), tell)
    };
    let mut plots = of_wishes(known, wishes, tell);
    plots.extend(Place::ALL.into_iter().filter_map(load));
    plots
}

/// How a value is written.
type Show<'a> = &'a dyn Fn(f64) -> String;

fn plot(
    id: &str,
    title: String,
    rounds: &[Round],
    came: &dyn Fn(&Judged) -> Against,
    foretold: &dyn Fn(&Corners<f64>) -> f64,
    show: Show,
    tell: &Tell,
) -> Option<PairPlot> {
    let points: Vec<(Against, Option<f64>)> =
        rounds.iter().map(|round| (came(&round.came), round.foretold.as_ref().map(foretold))).collect();
    let wanted = points.first()?.0.wanted;
    let ends =
        points.iter().flat_map(|(came, foretold)| [Some(came.value - came.u), Some(came.value + came.u), *foretold]);
    let ends = ends.flatten().chain(wanted.into_iter().flat_map(|(target, window)| [target - window, target + window]));
    let (low, high) = ends.fold((f64::MAX, f64::MIN), |(low, high), v| (low.min(v), high.max(v)));
    let margin = 0.1 * (high - low).max(0.1);
    let (low, span) = (low - margin, high - low + 2.0 * margin);
    let height = |v: f64| (v - low) / span;
    let point = |(index, (came, foretold)): (usize, &(Against, Option<f64>))| PairPoint {
        label: match index {
            0 => tell.text("plot-found", &[]),
            _ => tell.text("plot-round", &[("round", index.to_string())]),
        },
        came: height(came.value),
        u: came.u / span,
        came_text: tell.text("figure-with-u", &[("value", show(came.value)), ("u", show(came.u))]),
        predicted: foretold.map(height),
        predicted_text: foretold.map(show),
    };
    Some(PairPlot {
        id: id.to_owned(),
        title,
        window: wanted.map(|(target, window)| (height(target - window), height(target + window))),
        target: wanted
            .map(|(target, window)| tell.text("figure-wanted", &[("target", show(target)), ("window", show(window))])),
        points: points.iter().enumerate().map(point).collect(),
    })
}
