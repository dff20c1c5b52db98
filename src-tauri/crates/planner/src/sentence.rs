//! Why, in plain English sentences. Each says what other fields carry as codes and numbers; tests hold them to it.

use crate::answer::UnreachableBecause;
use crate::answer::{Binding, Excess, LimitName, Proof, Reason, ReasonCode, SettleAgain, Unreachable};
use crate::knowledge::Learned;
use bayhand_vehicle::Axle;

/// What the sentences are about.
pub(crate) struct About<'a> {
    pub reason: &'a Reason,
    /// True when the best plan turns nothing.
    pub turns_nothing: bool,
    /// True when limits are broken now and kept by the plan.
    pub mends_limits: bool,
    pub excess: Option<&'a Excess>,
    pub binding: &'a [Binding],
    pub unreachable: &'a [Unreachable],
    pub settle_again: &'a SettleAgain,
    pub learned: Option<&'a Learned>,
    pub proof: &'a Proof,
}

/// All that is to be said, the main reason first.
pub(crate) fn why(about: &About<'_>) -> String {
    let sentences = [
        main_reason(about),
        nearest(about),
        dearest_limit(about),
        mass(about),
        doubted(about),
        settle(about),
        cut_off(about),
    ];
    sentences.into_iter().flatten().collect::<Vec<String>>().join(" ")
}

fn percent(chance: f64) -> String {
    format!("{:.0} %", 100.0 * chance)
}

fn main_reason(about: &About<'_>) -> Option<String> {
    let r = about.reason;
    let (now, planned, best) = (percent(r.chance_now), percent(r.chance_planned), percent(r.chance_best));
    Some(match r.code {
        ReasonCode::Turn => {
            format!("Turning as planned takes the chance that all wishes are inside from {now} to {planned}.")
        }
        ReasonCode::NothingToGain => {
            format!("No steps raise the chance that all wishes are inside by two points: {now} now, {best} at best.")
        }
        ReasonCode::TurningCostsMore => {
            format!("Turning costs more than it brings, although the chance could rise from {now} to {best}.")
        }
        ReasonCode::LimitsCannotBeMet => {
            let excess = about.excess?;
            let least =
                if excess.least { "this plan breaks them least" } else { "this plan breaks them least of those seen" };
            format!("The limits cannot be met with the steps left; {least}, by {:.1} mm.", excess.planned_mm)
        }
    })
}

fn nearest(about: &About<'_>) -> Option<String> {
    if about.mends_limits {
        return Some("The steps given bring the car back inside its limits.".to_owned());
    }
    let stays = about.reason.code == ReasonCode::NothingToGain && !about.turns_nothing;
    stays.then(|| "The steps given still bring the car nearest.".to_owned())
}

fn dearest_limit(about: &About<'_>) -> Option<String> {
    let dearest = about.binding.first()?;
    let from = about.reason.cost_planned;
    let least = if dearest.exact { "" } else { "at least " };
    let (limit, unit) = (limit(dearest.limit), unit(dearest.limit));
    let saves = dearest.saves_per_unit;
    Some(format!("What binds most is {limit}: {unit} more would take {least}{saves:.3} off the cost of {from:.3}."))
}

fn unit(limit: LimitName) -> &'static str {
    match limit {
        LimitName::UpSteps { .. } | LimitName::DownSteps { .. } => "one step",
        _ => "one mm",
    }
}

fn limit(limit: LimitName) -> String {
    match limit {
        LimitName::UpSteps { place } => format!("the travel left to raise {}", place.code()),
        LimitName::DownSteps { place } => format!("the travel left to lower {}", place.code()),
        LimitName::CollarChange => "the largest change of a collar in one round".to_owned(),
        LimitName::HeightDiff { axle: Axle::Front } => "the height difference in front".to_owned(),
        LimitName::HeightDiff { axle: Axle::Rear } => "the height difference behind".to_owned(),
        LimitName::RakeLeast => "the least rake".to_owned(),
        LimitName::RakeMost => "the greatest rake".to_owned(),
        LimitName::BumpGap { place } => format!("the gap to the bump stop at {}", place.code()),
        LimitName::DroopGap { place } => format!("the gap to the droop limit at {}", place.code()),
        LimitName::Clearance { index } => format!("the clearance of point {}", index + 1),
    }
}

fn mass(about: &About<'_>) -> Option<String> {
    if about.unreachable.iter().any(|u| u.because == UnreachableBecause::Contradiction) {
        return Some("The load wishes contradict each other; no car meets all of them.".to_owned());
    }
    let moment = about.unreachable.iter().find_map(|u| u.move_left_kg_mm)?;
    let side = if moment > 0.0 { "left" } else { "right" };
    // Ten kilograms is what a person can picture.
    let (kg_m, mm) = (moment.abs() / 1_000.0, moment.abs() / 10.0);
    Some(format!(
        "Collars cannot meet all load wishes at once; moving mass to the {side} can: {kg_m:.1} kg m, such as 10 kg by {mm:.0} mm."
    ))
}

fn doubted(about: &About<'_>) -> Option<String> {
    let worst = about.learned?.doubted.iter().max_by(|a, b| a.chance.total_cmp(&b.chance))?;
    let (number, chance) = (worst.round + 1, percent(worst.chance));
    Some(format!(
        "Reading {number} does not fit the others ({chance}): see what was turned or changed before it; it taught less."
    ))
}

fn settle(about: &About<'_>) -> Option<String> {
    let s = about.settle_again;
    s.worth.then(|| {
        let (saves, costs, chance) = (s.saves_min, s.costs_min, percent(s.inside_chance));
        format!(
            "Settle and read once more before turning: it takes {costs:.0} min and saves {saves:.1} on average (chance {chance})."
        )
    })
}

fn cut_off(about: &About<'_>) -> Option<String> {
    let gap = about.proof.gap;
    (gap > 0.0).then(|| format!("The search was cut off: a plan that costs up to {gap:.3} less may exist."))
}
