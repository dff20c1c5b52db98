//! What would follow from turning for a place on the trade line: turns, predicted figures, and why in two sentences.

use crate::{
    judge::{Judged, Wishes},
    known::Known,
    plan::Aim,
    show::line::{Scale, corner},
    tell::Tell,
    view::{CollarTurns, Outlook, Predicted},
};
use bayhand_planner::{LimitName, Plan, ReasonCode, WishName};
use bayhand_vehicle::{Axle, Place};
use chrono::NaiveDate;

/// What would follow from an aim; none before the adjusters are known.
pub fn outlook(
    known: &Known,
    (judged, wishes): (&Judged, &Wishes),
    aim: Aim,
    scale: &Scale,
    tell: &Tell,
) -> Option<Outlook> {
    let planned = known.plan(judged, wishes, aim)?;
    let along = |plan: &Plan| plan.predicted.loads_kg.fl - judged.loads_kg.fl;
    let place = match aim {
        Aim::Place(cross_pct) => Some(cross_pct),
        Aim::Wish(_) => None,
    };
    let (at, reached) = match (&planned, place) {
        (Ok(plan), Some(cross_pct)) => (scale.place_of(cross_pct), Some(scale.place(along(plan)))),
        (Ok(plan), None) => (scale.place(along(plan)), Some(scale.place(along(plan)))),
        (Err(_), _) => (place.map_or(0.5, |cross_pct| scale.place_of(cross_pct)), None),
    };
    let place = place.map(|cross_pct| bayhand_measure::show(cross_pct, bayhand_measure::Unit::Percent, 2));
    Some(match planned {
        Ok(plan) => Outlook {
            place,
            at,
            reached,
            turns: turns(known, &plan, tell),
            figures: figures(&plan, tell),
            stop: plan.stop,
            why: why(known, &plan, judged, wishes, aim, tell),
        },
        Err(why) => Outlook {
            place,
            at,
            reached,
            turns: Vec::new(),
            figures: Vec::new(),
            stop: true,
            why: tell.text("follows-none", &[("why", why.to_string())]),
        },
    })
}

fn turns(known: &Known, plan: &Plan, tell: &Tell) -> Vec<CollarTurns> {
    let one = |place: Place| {
        let steps = *plan.steps.at(place);
        CollarTurns {
            corner: corner(place),
            name: tell.corner(place),
            turns: tell.turns(known.turns_of(steps)),
            still: steps == 0,
        }
    };
    Place::ALL.map(one).to_vec()
}

fn figures(plan: &Plan, tell: &Tell) -> Vec<Predicted> {
    let (f, u) = (&plan.predicted.figures, &plan.uncertainty.figures);
    let with_u = |value: String, u: String| tell.text("figure-with-u", &[("value", value), ("u", u)]);
    let one = |id: &str, value: String| Predicted {
        id: id.to_owned(),
        name: tell.text(&format!("figure-{}", id.replace('_', "-")), &[]),
        value,
    };
    let side = |left: Place, right: Place| {
        let heights = &plan.predicted.heights_mm;
        tell.signed_mm(heights.at(left) - heights.at(right))
    };
    vec![
        one("cross_pct", with_u(tell.percent(f.cross_pct, 2), tell.percent(u.cross_pct, 2))),
        one("front_diff_kg", with_u(tell.signed_kg(f.front_diff_kg), tell.kg(u.front_diff_kg))),
        one("rear_diff_kg", with_u(tell.signed_kg(f.rear_diff_kg), tell.kg(u.rear_diff_kg))),
        one("side_front_mm", side(Place::Fl, Place::Fr)),
        one("side_rear_mm", side(Place::Rl, Place::Rr)),
    ]
}

/// Two sentences: what turning is worth, and what stands against more of it; and a third where an earlier visit's knowledge
/// is used, with its age, or where springs are a guess that no turn has tried yet.
pub fn why(known: &Known, plan: &Plan, judged: &Judged, wishes: &Wishes, aim: Aim, tell: &Tell) -> String {
    let two = format!("{} {}", worth(known, plan, aim, tell), against(plan, judged, wishes, tell));
    let since = plan.learned.as_ref().and_then(|learned| learned.known_since.as_deref());
    let Some(since) = since else {
        let guessed = judged.car.corners.iter().any(|(_, c)| c.spring_n_per_mm.is_none() || c.motion_ratio.is_none());
        let untried = known.sets_until(&judged.set).len() == 1;
        return if guessed && untried { format!("{two} {}", tell.text("why-assumed", &[])) } else { two };
    };
    let then = NaiveDate::parse_from_str(since, "%Y-%m-%d").ok();
    let days = then.zip(judged.set.at()).map_or(0, |(then, now)| (now.date_naive() - then).num_days());
    let args = [("on", since.to_owned()), ("days", days.to_string())];
    format!("{two} {}", tell.text("why-known", &args))
}

fn worth(known: &Known, plan: &Plan, aim: Aim, tell: &Tell) -> String {
    let chance = |chance: f64| tell.percent(100.0 * chance, 0);
    let reason = &plan.reason;
    let aim = match aim {
        Aim::Wish(_) => tell.text(&bayhand_words::id("aim", &[aim.option()]), &[]),
        Aim::Place(cross_pct) => tell.text("aim-turn-place", &[("cross", tell.percent(cross_pct, 2))]),
    };
    let turned = Place::ALL.into_iter().filter(|p| *plan.steps.at(*p) != 0);
    let turned: Vec<_> =
        turned.map(|p| format!("{} {}", tell.corner(p), tell.turns(known.turns_of(*plan.steps.at(p))))).collect();
    let args = [
        ("aim", aim),
        ("collars", turned.join(", ")),
        ("now", chance(reason.chance_now)),
        ("planned", chance(reason.chance_planned)),
        ("best", chance(reason.chance_best)),
    ];
    let id = match reason.code {
        ReasonCode::Turn => "worth-turn",
        ReasonCode::NothingToGain => "worth-nothing",
        ReasonCode::TurningCostsMore => "worth-costs",
        ReasonCode::LimitsCannotBeMet => "worth-limits",
    };
    tell.text(id, &args)
}

fn against(plan: &Plan, judged: &Judged, wishes: &Wishes, tell: &Tell) -> String {
    binds(plan, wishes, tell).unwrap_or_else(|| {
        let moved = |p: Place| (plan.predicted.heights_mm.at(p) - judged.heights_mm.at(p)).abs();
        let most = Place::ALL.into_iter().map(moved).fold(0.0, f64::max);
        tell.text("against-heights", &[("mm", tell.mm(most, 1))])
    })
}

/// What keeps collars from doing more than a plan does; none where nothing does.
pub fn binds(plan: &Plan, wishes: &Wishes, tell: &Tell) -> Option<String> {
    if let Some(excess) = &plan.excess {
        return Some(tell.text("against-excess", &[("mm", tell.mm(excess.planned_mm, 1))]));
    }
    if let Some(binding) = plan.binding.first() {
        let args = |place: &Place| [("corner", tell.corner(*place))];
        return Some(match &binding.limit {
            LimitName::UpSteps { place } => tell.text("against-up", &args(place)),
            LimitName::DownSteps { place } => tell.text("against-down", &args(place)),
            LimitName::HeightDiff { axle } => {
                let axle = if *axle == Axle::Front { "axle-front" } else { "axle-rear" };
                let args = [("axle", tell.text(axle, &[])), ("limit", tell.mm(wishes.side_limit_mm, 1))];
                tell.text("against-height", &args)
            }
            LimitName::BumpGap { place } => tell.text("against-bump", &args(place)),
            LimitName::DroopGap { place } => tell.text("against-droop", &args(place)),
            // Limits that the intake does not ask for yet.
            _ => tell.text("against-other", &[]),
        });
    }
    let loads = |wish: &WishName| matches!(wish, WishName::CrossPct | WishName::FrontDiffKg | WishName::RearDiffKg);
    plan.unreachable.iter().any(|u| loads(&u.wish)).then(|| tell.text("against-unreachable", &[]))
}
