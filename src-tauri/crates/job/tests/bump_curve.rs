//! What a change of height is expected to have moved of the angles: by a bump curve that is known, or was measured at two
//! heights, or by none.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

mod common;

use bayhand_job::ask::Entry;
use common::{Bay, entry};
use std::collections::BTreeMap;

/// Entries of the bump curve, the same at both axles.
type Bump = [(&'static str, &'static str, Option<&'static str>)];

/// What is told of heights at the judgement of the angles, with this entered of the bump curve.
async fn told(way: &str, bump: &Bump) -> Option<String> {
    let mut bay = Bay::practice_at(1, "intake.angle-geometry").await;
    let mut entries: BTreeMap<String, Entry> = bay.entries();
    entries.retain(|key, _| !key.starts_with("bump"));
    entries.insert("bump".into(), entry(way, None));
    for (input, text, unit) in bump {
        entries.extend(["front", "rear"].map(|axle| (format!("{input}.{axle}"), entry(text, *unit))));
    }
    bay.record(entries).await.unwrap();
    bay.lead_to("align.judge").await;
    let notes = bay.step().angles.clone().unwrap().notes;
    notes.into_iter().find(|note| note.starts_with("Since the rough reading the heights have changed"))
}

/// 0.44 degrees more negative over 20 mm are 0.022 for a millimetre, as the maker may have told it.
#[tokio::test]
async fn a_curve_measured_at_two_heights_tells_what_a_known_one_does() {
    let known = told("bump-known", &[("bump-camber", "-0.022", Some("deg")), ("bump-toe", "0.005", Some("deg"))]).await;
    assert!(known.as_ref().is_some_and(|says| says.contains("camber") && says.contains("toe")), "{known:?}");
    let read = [
        ("bump-travelled", "20", Some("mm")),
        ("bump-camber-change", "-0.44", Some("deg")),
        ("bump-toe-change", "0.10", Some("deg")),
    ];
    assert_eq!(told("bump-measured", &read).await, known);
    assert_eq!(told("bump-unknown", &[]).await, None, "nothing is told of what nobody knows");
}
