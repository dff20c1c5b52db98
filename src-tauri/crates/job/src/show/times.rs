//! Where the time of a job went.

use crate::{log::Log, tell::Tell, view::StageTime};
use bayhand_procedure::{Event, Path};
use std::collections::BTreeMap;

/// Time by stage of the main path, in its order; stages that took none are left out. The time before an entry belongs
/// to that entry's stage; what passes while the job is on hold belongs to none, and what is done on demand, such as
/// raising the car, to the stage that it was done for.
pub fn stage_times(log: &Log, tell: &Tell) -> Vec<StageTime> {
    let mut seconds: BTreeMap<&str, i64> = BTreeMap::new();
    let (mut before, mut waiting) = (log.opened_at, 0);
    for line in &log.lines {
        let passed = (line.at - before).num_seconds().max(0);
        before = line.at;
        match &line.happened.event {
            Event::Resumed { .. } => {}
            Event::Done { step, .. } | Event::Tried { step, .. } | Event::Acknowledged { step, .. } => {
                waiting += passed;
                let stage = log.document.step(step).filter(|(stage, _)| stage.path == Path::Main);
                if let Some((stage, _)) = stage {
                    *seconds.entry(stage.id.as_str()).or_default() += std::mem::take(&mut waiting);
                }
            }
            _ => waiting += passed,
        }
    }
    let longest = seconds.values().copied().max().unwrap_or(0).max(1);
    let stages = log.document.stages.iter().filter_map(|stage| Some((stage, *seconds.get(stage.id.as_str())?)));
    stages
        .filter(|(_, seconds)| *seconds > 0)
        .map(|(stage, seconds)| StageTime {
            title: tell.text(&format!("stage-{}", stage.id), &[]),
            text: duration(seconds, tell),
            share: seconds as f64 / longest as f64,
        })
        .collect()
}

fn duration(seconds: i64, tell: &Tell) -> String {
    let minutes = (seconds + 30) / 60;
    let args = [("hours", (minutes / 60).to_string()), ("minutes", (minutes % 60).to_string())];
    match (minutes, minutes / 60) {
        (0, _) => tell.text("time-under-a-minute", &[]),
        (_, 0) => tell.text("time-minutes", &args),
        _ => tell.text("time-hours", &args),
    }
}
