//! What to turn, shim or shift, and what else that changes.

mod common;

use bayhand_chassis::align::{Adjuster, Learned, Response, RodPlace, Unit, tie_rod_turns};
use common::draws::Draws;
use common::{always_alike, near};
use proptest::prelude::*;

/// R: ISO 724: one turn is a pitch, a turnbuckle of opposite threads two; arm 110 mm, pitch 1.5 mm, a quarter degree.
#[test]
fn turns_of_a_tie_rod() {
    let turns = |deg, opposite| tie_rod_turns(deg, 110.0, 1.5, opposite).expect("turns");
    near(turns(0.25, false), 110.0 * 0.25_f64.to_radians().sin() / 1.5, 1e-12, "arm sin(change) / pitch");
    near(turns(0.25, false), 0.32, 1e-3, "about a third of a turn");
    near(turns(0.25, true), turns(0.25, false) / 2.0, 1e-12, "opposite threads");
    near(turns(-0.25, true), -turns(0.25, true), 1e-12, "toe-out is negative");
    let why = tie_rod_turns(0.25, 110.0, 0.0, false).expect_err("no thread");
    assert_eq!(why.to_string(), "pitch_mm is 0; it must be from 0.2 to 6 mm");
    assert!(RodPlace::Behind.longer_is_toe_in(), "pushed out behind, the wheel turns in before");
    assert!(!RodPlace::Ahead.longer_is_toe_in(), "and the other way round");
}

/// R: by hand: tan: one degree over 200 mm is 3.491 mm.
#[test]
fn shims_and_slots() {
    let shims = Adjuster::Shims { lever_mm: 200.0, thickness_mm: 0.5, now: 3, most: 8 };
    let set = shims.setting(0.5).expect("a setting");
    near(set.exact, 200.0 * 0.5_f64.to_radians().tan() / 0.5, 1e-12, "3.49 shims");
    assert_eq!((set.unit, set.settable, set.ends), (Unit::Shims, 3.0, false), "three of them");
    near(set.leaves_deg, 0.5 - (1.5_f64 / 200.0).atan().to_degrees(), 1e-12, "what is left");
    let out = shims.setting(-1.0).expect("a setting");
    assert_eq!((out.settable, out.ends), (-3.0, true), "no more than are in can be taken out");
    let slot = Adjuster::Slot { lever_mm: 200.0, at_mm: 1.0, half_travel_mm: 3.0, step_mm: 0.25 };
    let set = slot.setting(1.0).expect("a setting");
    assert_eq!((set.unit, set.settable, set.ends), (Unit::Millimetres, 2.0, true), "two millimetres are left of it");
    near(set.leaves_deg, 1.0 - (2.0_f64 / 200.0).atan().to_degrees(), 1e-12, "the rest stays");
    near(slot.setting(-0.5).expect("a setting").exact, -200.0 * 0.5_f64.to_radians().tan(), 1e-12, "the other way");
}

/// R: by hand: a cam moves its pivot by throw (sin at' - sin at).
#[test]
fn an_eccentric_does_less_near_its_end() {
    let cam = |at_deg| Adjuster::Eccentric { lever_mm: 300.0, throw_mm: 4.0, at_deg, step_deg: 5.0 };
    let middle = cam(0.0).setting(0.3).expect("a setting");
    near(middle.exact, (300.0 * 0.3_f64.to_radians().tan() / 4.0).asin().to_degrees(), 1e-9, "from the middle");
    let late = cam(60.0).setting(0.1).expect("a setting");
    assert!(late.exact > 1.8 * cam(0.0).setting(0.1).expect("a setting").exact, "half as much per degree at 60");
    let beyond = cam(60.0).setting(0.3).expect("a setting");
    assert_eq!((beyond.exact, beyond.ends), (30.0, true), "it ends at 90 degrees");
    near(
        beyond.leaves_deg,
        0.3 - (4.0 * (1.0 - 60.0_f64.to_radians().sin()) / 300.0).atan().to_degrees(),
        1e-9,
        "rest",
    );
}

fn any_adjuster() -> impl Strategy<Value = Adjuster> {
    (50.0..400.0f64, 0.5..2.0f64, any::<bool>(), 0u32..5).prop_flat_map(
        |(lever_mm, pitch_mm, opposite_threads, now)| {
            prop_oneof![
                Just(Adjuster::TieRod { lever_mm, pitch_mm, opposite_threads, step_turns: 1.0 / 12.0 }),
                Just(Adjuster::ThreadedArm { lever_mm, pitch_mm, opposite_threads, step_turns: 0.5 }),
                Just(Adjuster::Shims { lever_mm, thickness_mm: pitch_mm, now, most: 8 }),
                Just(Adjuster::Slot { lever_mm, at_mm: pitch_mm, half_travel_mm: 6.0, step_mm: 0.1 }),
                Just(Adjuster::Eccentric { lever_mm, throw_mm: 3.0 * pitch_mm, at_deg: 20.0, step_deg: 1.0 }),
            ]
        },
    )
}

proptest! {
    #![proptest_config(always_alike())]

    /// The exact amount makes the change, the settable one is the best of its neighbours, and where the adjuster ends
    /// it goes as far as it can.
    #[test]
    fn a_setting_does_what_it_says(adjuster in any_adjuster(), change in -1.5..1.5f64) {
        let set = adjuster.setting(change).expect("a setting");
        prop_assert!((adjuster.change_deg(set.settable) + set.leaves_deg - change).abs() < 1e-9, "what is left");
        if set.ends {
            prop_assert!((change - adjuster.change_deg(set.exact)) * change > 0.0, "it stops short");
        } else {
            prop_assert!((adjuster.change_deg(set.exact) - change).abs() < 1e-9, "the exact amount");
            let step = match adjuster {
                Adjuster::TieRod { step_turns, .. } | Adjuster::ThreadedArm { step_turns, .. } => step_turns,
                Adjuster::Shims { .. } => 1.0,
                Adjuster::Slot { step_mm, .. } => step_mm,
                Adjuster::Eccentric { step_deg, .. } => step_deg,
            };
            prop_assert!((set.settable - set.exact).abs() <= step / 2.0 + 1e-9, "the nearest step");
        }
    }
}

/// R: the update of a mean with a normal prior: precisions add (JCGM 101:2008, or any textbook).
#[test]
fn an_effect_is_learned_from_the_last_change() {
    let wide = Learned {
        per_unit: Response { toe_deg: 0.5, ..Response::default() },
        standard: Response { toe_deg: 0.2, camber_deg: 0.5, ..Response::default() },
    };
    let seen = Response { toe_deg: 1.6, camber_deg: -0.2, load_kg: 3.0, ..Response::default() };
    let spread = Response { toe_deg: 0.1, camber_deg: 0.1, load_kg: 1.0, ..Response::default() };
    let now = wide.after(2.0, &seen, &spread).expect("an update");
    // Precision 25 of the prior, (2/0.1)² = 400 of what was seen: 0.8 per turn.
    near(now.per_unit.toe_deg, (25.0 * 0.5 + 400.0 * 0.8) / 425.0, 1e-12, "mean");
    near(now.standard.toe_deg, 425.0_f64.sqrt().recip(), 1e-12, "uncertainty");
    near(now.per_unit.load_kg, 0.0, 0.0, "what was known exactly stays");
    let (expected, standard) = now.expected(-1.0);
    near(expected.toe_deg, -now.per_unit.toe_deg, 1e-12, "turned back");
    near(standard.toe_deg, now.standard.toe_deg, 1e-12, "as surely");
    let same = wide.after(0.0, &seen, &spread).expect("an update");
    assert_eq!(same, wide, "nothing turned, nothing learned");
    assert!(wide.after(f64::NAN, &seen, &spread).is_err(), "no number of turns");
}

/// With nothing entered, a few changes find the true effect, and the stated interval holds it.
#[test]
fn nothing_entered_still_learns() {
    const RUNS: usize = 2_000;
    let mut draws = Draws::from_seed(77_013);
    let prior =
        Learned { per_unit: Response::default(), standard: Response { camber_deg: 1.0, ..Response::default() } };
    let spread = Response { camber_deg: 0.05, ..Response::default() };
    let held = (0..RUNS)
        .filter(|_| {
            let truth = draws.normal(1.0);
            let mut known = prior;
            for units in [1.0, -0.5, 2.0] {
                let camber_deg = units * truth + draws.normal(0.05);
                known =
                    known.after(units, &Response { camber_deg, ..Response::default() }, &spread).expect("an update");
            }
            assert!(known.standard.camber_deg < 0.025, "three changes: {}", known.standard.camber_deg);
            (known.per_unit.camber_deg - truth).abs() <= 2.0 * known.standard.camber_deg
        })
        .count();
    let pct = 100.0 * held as f64 / RUNS as f64;
    println!("{pct:.2} % of {RUNS} inside, 95.45 stated");
    assert!((94.0..=97.0).contains(&pct), "{pct} %");
}
