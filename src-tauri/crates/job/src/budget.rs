//! Figures of a reading, what makes them uncertain and what would help, in words.

use crate::tell::Tell;
use bayhand_chassis::reading::{Budget, Capability, Figure, Help, Judgement, Source};

/// Parts of a variance below this share are not told.
const LEAST_SHARE: f64 = 0.05;

/// The name of a figure.
pub fn name(figure: Figure, tell: &Tell) -> String {
    let id = match figure {
        Figure::TotalKg => "figure-total-kg",
        Figure::FrontPct => "figure-front-pct",
        Figure::LeftPct => "figure-left-pct",
        Figure::CrossPct => "figure-cross-pct",
        Figure::FrontDiffKg => "figure-front-diff-kg",
        Figure::RearDiffKg => "figure-rear-diff-kg",
    };
    tell.text(id, &[])
}

/// A value of a figure, with its unit.
pub fn value(figure: Figure, value: f64, tell: &Tell) -> String {
    match figure {
        Figure::FrontPct | Figure::LeftPct | Figure::CrossPct => tell.percent(value, 2),
        Figure::TotalKg | Figure::FrontDiffKg | Figure::RearDiffKg => tell.kg(value),
    }
}

/// 'settles 61 %, the pads' zero 20 %': each source's part of the variance, most first.
pub fn made_of(budget: &Budget, tell: &Tell) -> String {
    let told = budget.parts.iter().filter(|part| part.share >= LEAST_SHARE);
    let one = |source, share: f64| format!("{} {}", self::source(source, tell), tell.percent(100.0 * share, 0));
    told.map(|part| one(part.source, part.share)).collect::<Vec<_>>().join(", ")
}

/// What would make a reading tell; none when it tells.
pub fn helps(judgement: &Judgement, figure: Figure, tell: &Tell) -> Option<String> {
    let one = |help: &Help| match help {
        Help::MoreLooks { looks } => tell.text("help-looks", &[("looks", looks.to_string())]),
        Help::MoreSettles { settles } => tell.text("help-settles", &[("settles", settles.to_string())]),
        Help::BetterLevel { twist_mm } => tell.text("help-level", &[("twist", tell.mm(*twist_mm, 2))]),
        Help::WiderWindow { window } => tell.text("help-window", &[("window", value(figure, *window, tell))]),
    };
    let helps: Vec<_> = judgement.helps.iter().map(one).collect();
    let args = [("parts", made_of(&judgement.budget, tell)), ("helps", helps.join("; "))];
    (!helps.is_empty()).then(|| tell.text("found-helps", &args))
}

/// Why a window cannot be judged with these instruments as it is planned, and whether more settles would do.
pub fn falls_short(capability: &Capability, tell: &Tell) -> String {
    let show = |v: f64| value(capability.figure, v, tell);
    let mut args = vec![
        ("name", name(capability.figure, tell)),
        ("planned", show(capability.planned)),
        ("window", show(capability.window)),
    ];
    if let Some(settles) = capability.settles_needed {
        args.push(("settles", settles.to_string()));
        return tell.text("found-resolve-settles", &args);
    }
    args.push(("best", show(capability.at_best)));
    args.push(("source", capability.greatest.map_or_else(String::new, |greatest| source(greatest, tell))));
    tell.text("found-resolve-never", &args)
}

fn source(source: Source, tell: &Tell) -> String {
    let id = match source {
        Source::Looks => "source-looks",
        Source::Rounding => "source-rounding",
        Source::Friction => "source-friction",
        Source::Patches => "source-patches",
        Source::Zero => "source-zero",
        Source::Calibration => "source-calibration",
        Source::LevelTwist => "source-twist",
        Source::LevelTilt => "source-tilt",
    };
    tell.text(id, &[])
}
