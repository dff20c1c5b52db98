//! The angles of the wheels and what to turn for them, in words and as drawn.

use crate::{
    align::{Aligned, Angle, JUDGE, READ, Row, WheelPlan, rough_u_deg},
    known::{Known, axle_of},
    show::{
        line::{self, corner},
        turn::told_turns,
    },
    tell::Tell,
    view::{AdjusterView, AngleView, AnglesView, FigureRow},
};
use bayhand_chassis::{COVERAGE, Sensitivity};
use bayhand_procedure::Step;
use bayhand_vehicle::{Axle, Place};

/// Drawn degrees of half a window: every sliver is drawn in windows, so that they can be compared.
const DRAWN_WINDOW_DEG: f64 = 3.0;
/// No sliver opens further than this: what lies beyond is drawn at the edge, and its figure says how much.
const WIDEST_DEG: f64 = 24.0;
/// How far inside the middle of the tyre a wheel leans about its lower joint, as rise of its corner in mm for one degree:
/// 80 mm, half as much either way (our choice: drawings differ by so much).
const RISE_MM_PER_DEG: f64 = 1.4;

/// Steps at which the angles are judged.
pub fn judges_angles(step: &Step) -> bool {
    step.id == JUDGE
}

/// The angles at a step that judges them.
pub fn angles(known: &Known, step: &Step, tell: &Tell) -> Option<AnglesView> {
    let aligned = judges_angles(step).then(|| known.aligned(READ).ok()).flatten()?;
    let window_deg = aligned.rows.iter().map(|row| row.window_deg).fold(f64::INFINITY, f64::min);
    let times = DRAWN_WINDOW_DEG / window_deg;
    let mut notes = vec![thrust(&aligned, tell)];
    notes.extend(moved_by_height(known, tell));
    notes.extend(loads_again(known, tell));
    Some(AnglesView {
        rows: aligned.rows.iter().map(|row| view(row, times, tell)).collect(),
        scale: tell.text("angle-scale", &[("times", format!("{times:.0}"))]),
        notes,
    })
}

/// Every angle as a row of figures: as found roughly before the heights were set, as it is now, what was wanted.
pub fn figure_rows(known: &Known, left: &Aligned, tell: &Tell) -> Vec<FigureRow> {
    let first = known.recordings().iter().find(|r| r.step == "rough.angles");
    let found = |row: &Row| {
        let read = first?.looks(&row.code()).first().copied()?;
        Some(with_u(read, rough_u_deg(row.angle), tell))
    };
    let figure = |row: &Row| FigureRow {
        id: row.code(),
        name: name(row.angle, row.place, tell),
        found: found(row),
        left: Some(with_u(row.is.deg, row.is.expanded_deg(), tell)),
        made_of: None,
        wanted: Some(wanted(row, tell)),
        verdict: Some(line::code(row.verdict())),
        verdict_word: Some(tell.verdict(row.verdict())),
    };
    left.rows.iter().map(figure).collect()
}

fn wanted(row: &Row, tell: &Tell) -> String {
    let args = [("target", tell.deg(row.target_deg)), ("window", tell.deg(row.window_deg))];
    tell.text("figure-wanted", &args)
}

/// Adjusters to be turned: at a step that changes them, and at the judgement before it.
pub fn adjusters(known: &Known, step: &Step, tell: &Tell) -> Vec<AdjusterView> {
    let with_caster = match step.id.as_str() {
        JUDGE => known.aligned(READ).is_ok_and(|aligned| caster_wanting(&aligned)),
        id if id.starts_with("align.change-") => known.sets_caster(),
        _ => return Vec::new(),
    };
    let Ok(aligned) = known.aligned(READ) else { return Vec::new() };
    let Some(plan) = known.angle_plan(&aligned, with_caster) else { return Vec::new() };
    let mut all = Vec::new();
    for places in [[Place::Rl, Place::Rr], [Place::Fl, Place::Fr]] {
        for angle in [Angle::Caster, Angle::Camber, Angle::Toe] {
            let wanted = match step.id.as_str() {
                "align.change-rear" => places[0].axle() == Axle::Rear && angle != Angle::Caster,
                "align.change-front" => places[0].axle() == Axle::Front && angle != Angle::Caster,
                "align.change-caster" => places[0].axle() == Axle::Front && angle == Angle::Caster,
                _ => places[0].axle() == Axle::Front || angle != Angle::Caster,
            };
            if !wanted || (angle == Angle::Caster && !with_caster) {
                continue;
            }
            let rows = places.into_iter().filter_map(|p| adjuster(known, &aligned, plan.at(p), angle, p, tell));
            all.extend(rows);
        }
    }
    all
}

/// True when a caster is not known to be inside.
pub fn caster_wanting(aligned: &Aligned) -> bool {
    let inside = |row: &Row| row.verdict() == bayhand_chassis::Verdict::Inside;
    aligned.rows.iter().any(|row| row.angle == Angle::Caster && !inside(row))
}

/// 'Camber, front left'.
pub fn name(angle: Angle, place: Place, tell: &Tell) -> String {
    let angle = tell.text(&format!("angle-{}", angle.code()), &[]);
    tell.text("angle-at", &[("angle", angle), ("corner", tell.corner(place))])
}

/// 'top out': the way of a change.
fn way(angle: Angle, change: f64, tell: &Tell) -> String {
    let more = if change > 0.0 { "more" } else { "less" };
    tell.text(&format!("angle-{}-{more}", angle.code()), &[])
}

/// '-2.31° ± 0.05°'.
pub fn with_u(deg: f64, u_deg: f64, tell: &Tell) -> String {
    tell.text("figure-with-u", &[("value", tell.deg(deg)), ("u", tell.deg(u_deg))])
}

fn view(row: &Row, times: f64, tell: &Tell) -> AngleView {
    let off_deg = row.is.deg - row.target_deg;
    let window = times * row.window_deg;
    AngleView {
        id: row.code(),
        corner: corner(row.place),
        name: name(row.angle, row.place, tell),
        value: with_u(row.is.deg, row.is.expanded_deg(), tell),
        wanted: wanted(row, tell),
        to_go: go(row.angle, -off_deg, tell),
        verdict: line::code(row.verdict()),
        verdict_word: tell.verdict(row.verdict()),
        off: (times * off_deg).clamp(-WIDEST_DEG, WIDEST_DEG),
        window,
        band: (times * row.is.expanded_deg()).min(WIDEST_DEG),
    }
}

/// '0.42° top out'.
fn go(angle: Angle, change_deg: f64, tell: &Tell) -> String {
    tell.text("angle-to-go", &[("deg", tell.deg(change_deg.abs())), ("way", way(angle, change_deg, tell))])
}

fn adjuster(
    known: &Known,
    aligned: &Aligned,
    plan: &WheelPlan,
    angle: Angle,
    place: Place,
    tell: &Tell,
) -> Option<AdjusterView> {
    let row = aligned.row(angle, place)?;
    let effects = known.effects(place)?;
    let turns = plan.turns[angle.index()];
    let off_deg = row.target_deg - row.is.deg;
    let steps = known.angle_steps(place)?.steps[angle.index()];
    let told = told_turns((turns * steps).abs().round() as u32, steps.max(1.0) as u32, tell);
    let args = [
        ("name", name(angle, place, tell)),
        ("told", told),
        ("turns", tell.turns(turns)),
        ("way", way(angle, turns, tell)),
    ];
    let text = |id: &str| tell.text(if turns == 0.0 { "adjuster-still" } else { id }, &args);
    let left_deg = (off_deg - plan.change_deg[angle.index()]).abs();
    let others = [Angle::Toe, Angle::Camber, Angle::Caster];
    let own = |of: Angle| place.axle() == Axle::Front || of != Angle::Caster;
    let each = others.into_iter().filter(|of| own(*of)).map(|of| {
        let angle_name = tell.text(&format!("angle-{}", of.code()), &[]);
        format!("{angle_name} {}", tell.signed_deg(effects.per_turn_deg(angle, of)))
    });
    Some(AdjusterView {
        id: format!("{}.{}", angle.code(), place.code()),
        name: args[0].1.clone(),
        does: text("adjuster-does"),
        short: text("adjuster-short"),
        said: text("adjuster-said"),
        left: tell.text("adjuster-left", &[("go", go(angle, off_deg, tell)), ("left", tell.deg(left_deg))]),
        besides: tell.text("adjuster-besides", &[("each", each.collect::<Vec<_>>().join(", "))]),
        still: turns == 0.0,
    })
}

fn thrust(aligned: &Aligned, tell: &Tell) -> String {
    let angles = &aligned.angles;
    let known = |angle: &bayhand_chassis::align::KnownAngle| with_u(angle.deg, angle.expanded_deg(), tell);
    tell.text(
        "angle-thrust",
        &[
            ("thrust", known(&angles.thrust)),
            ("steering", known(&angles.steering_off)),
            ("front", known(&angles.total.0)),
            ("rear", known(&angles.total.1)),
        ],
    )
}

/// How far the change of height since the rough reading is expected to have moved camber and toe; none where the bump
/// curve is not known or the car stands as it did.
fn moved_by_height(known: &Known, tell: &Tell) -> Option<String> {
    let (then, now) = (known.corners("rough.heights", "heights")?, known.last_set()?.heights_mm());
    let (camber, toe) = known.bump_curve()?;
    let at = |p: Place| {
        let (camber, toe) = (axle_of(p, camber.0, camber.1), axle_of(p, toe.0, toe.1));
        // Lower than before is further into bump.
        let bump_mm = then.at(p) - now.at(p);
        let told = (camber != 0.0 || toe != 0.0) && bump_mm.abs() >= 0.5;
        told.then(|| {
            tell.text(
                "angle-by-height-at",
                &[
                    ("corner", tell.corner(p)),
                    ("mm", tell.signed_mm(-bump_mm)),
                    ("camber", tell.signed_deg(camber * bump_mm)),
                    ("toe", tell.signed_deg(toe * bump_mm)),
                ],
            )
        })
    };
    let told: Vec<_> = Place::ALL.into_iter().filter_map(at).collect();
    (!told.is_empty()).then(|| tell.text("angle-by-height", &[("each", told.join("; "))]))
}

/// Whether the changes since the loads were read last can have moved them by more than settles resolve. They are read at
/// the end in any case; this says what to expect there.
fn loads_again(known: &Known, tell: &Tell) -> Option<String> {
    let judged = known.judged(known.last_set()?).ok()?;
    let read = judged.set.readings.iter().filter_map(|r| r.number).max()?;
    let per_mm = Sensitivity::of(&judged.car).ok()?.load_per_mm_wheel;
    let mut most: Option<(Place, f64, f64)> = None;
    for place in Place::ALL {
        let effects = known.effects(place)?;
        let changed = known.recordings().iter().filter(|r| r.number > read && r.step.starts_with("align.change-"));
        let camber_deg: f64 = changed
            .map(|r| {
                let made = |input: &str| r.looks(&format!("{input}.{}", place.code())).first().copied().unwrap_or(0.0);
                effects.change_deg([made("toe-turns"), made("camber-turns"), made("caster-turns")]).0[1]
            })
            .sum();
        let kg = (camber_deg * RISE_MM_PER_DEG * 1.5 * per_mm[place.index()][place.index()]).abs();
        if most.is_none_or(|(_, _, before)| kg > before) {
            most = Some((place, camber_deg, kg));
        }
    }
    let (place, camber_deg, kg) = most?;
    let variance = judged.reading.covariance_kg2(false)[place.index()][place.index()];
    let resolved_kg = COVERAGE * (2.0 * variance).sqrt();
    let id = if camber_deg == 0.0 {
        return None;
    } else if kg > resolved_kg {
        "angle-loads-again"
    } else {
        "angle-loads-same"
    };
    let args = [
        ("corner", tell.corner(place)),
        ("deg", tell.signed_deg(camber_deg)),
        ("kg", tell.kg(kg)),
        ("resolved", tell.kg(resolved_kg)),
    ];
    Some(tell.text(id, &args))
}
