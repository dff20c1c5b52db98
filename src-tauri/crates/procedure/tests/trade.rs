//! Facts of the trade, one by one: what a good set-up technician would not let happen in the bay.

mod common;
use bayhand_procedure::{Condition, Fact, Intent, Next, Rank, Refusal, Standing, Status, Value, next};
use common::Job;

fn reopen(job: &mut Job, step: &str) {
    let (step, by) = (step.to_owned(), "MT".to_owned());
    job.want(Intent::Reopen { step, by, reason: "seen wrong".into() }).expect("a done step can be opened again");
}

fn choose(job: &mut Job, input: &'static str, option: &'static str) {
    job.choose.insert(input, option);
    job.do_it();
    job.choose.remove(input);
}

fn place(steps: &[String], id: &str) -> usize {
    steps.iter().position(|s| s == id).unwrap_or_else(|| panic!("{id} is not among {steps:?}"))
}

#[test]
fn a_look_into_the_car_counts_for_the_raise_that_follows_at_once() {
    let mut job = Job::begin();
    job.up_to("raise.clear");
    reopen(&mut job, "walk.leaks");
    let steps = job.up_to("raise.clear");
    assert!(steps.contains(&"raise.check".into()), "somebody was at the car in between: {steps:?}");
    job.want(Intent::Hold { by: "RO".into(), reason: "lunch".into() }).expect("a job can be held");
    job.want(Intent::Resume { by: "RO".into() }).expect("and resumed");
    assert_eq!(job.now(), "raise.check", "nobody knows who sat in the car over lunch");
}

#[test]
fn a_count_from_under_the_car_counts_for_the_lowering_that_follows_at_once() {
    let mut job = Job::begin();
    job.up_to("lower.pads");
    reopen(&mut job, "raised.play");
    assert_eq!(job.now(), "raised.play");
    job.try_it();
    assert!(job.is(Fact::Under, Value::Unknown), "people went under for a try too");
    let steps = job.up_to("lower.pads");
    assert_eq!(steps.last().map(String::as_str), Some("lower.people"), "counted out again: {steps:?}");
}

#[test]
fn a_car_that_is_not_steady_comes_down_and_is_raised_anew() {
    let mut job = Job::begin();
    job.up_to("raise.rock");
    choose(&mut job, "rock", "not-steady");
    assert_eq!(job.now(), "raise.abort-ground", "no way leads on up");
    let steps = job.up_to("raise.lock");
    assert!(steps.contains(&"raise.check".into()) && steps.contains(&"raise.rock".into()), "{steps:?}");
    assert!(job.do_it() == "raise.lock" && job.is(Fact::Stance, Value::Locked));
    job.up_to("lower.pads");
    job.do_it();
    job.up_to("raise.rock");
    choose(&mut job, "rock", "not-steady");
    assert_eq!(job.now(), "raise.abort-pads", "a car that came from its pads goes back to them");
}

#[test]
fn a_job_that_is_stopped_at_wheels_clear_puts_the_car_down() {
    let mut job = Job::begin();
    job.up_to("raise.rock");
    job.want(Intent::Stop { by: "RO".into(), reason: "lift leaks".into() }).expect("a job can be stopped");
    while job.state.status == Status::Stopping {
        job.do_it();
    }
    assert!(job.is(Fact::Stance, Value::Ground), "it is neither left just clear nor taken higher");
    assert!(job.is(Fact::Brake, Value::On) || job.is(Fact::Chocks, Value::Set), "and cannot roll away");
}

#[test]
fn turning_under_load_is_done_on_the_pads_with_the_car_held() {
    let mut job = Job::begin();
    job.choose.insert("turn-under-load", "maker-allows-load");
    job.up_to("loop.judge");
    choose(&mut job, "next", "turn-cross");
    let steps = job.up_to("loop.turn-FL");
    assert!(job.is(Fact::Stance, Value::Pads), "its maker allows it, so the car stays down: {steps:?}");
    assert!(job.is(Fact::Brake, Value::On) || job.is(Fact::Chocks, Value::Set), "hands are in the arch");
    let (_, turn) = job.document.step("loop.turn-FL").expect("it stands in the document");
    for hazard in ["crush-low", "stored-spring", "pinch"] {
        assert!(turn.hazards.iter().any(|h| h == hazard), "{hazard}");
    }
}

#[test]
fn wheels_that_came_off_are_torqued_with_two_names_again() {
    let mut job = Job::begin();
    job.choose.insert("reach", "reach-wheels-off");
    job.up_to("final.clearance");
    assert!(job.is(Fact::Nuts, Value::Torqued));
    reopen(&mut job, "loop.judge");
    job.up_to("loop.judge");
    choose(&mut job, "next", "turn-front");
    let steps = job.up_to("final.read-1");
    let (crack, off, on) = (place(&steps, "wheels.crack"), place(&steps, "wheels.off"), place(&steps, "wheels.on"));
    let (first, second) = (place(&steps, "lock.nuts"), place(&steps, "lock.nuts-second"));
    assert!(crack < off && off < on && on < first && first < second, "{steps:?}");
    let up = steps[crack..off].iter().filter(|s| *s == "raise.lock").count();
    assert_eq!(up, 1, "nuts are cracked with the car down, then it goes up: {steps:?}");
}

#[test]
fn nuts_that_were_only_cracked_need_both_names_too() {
    let mut job = Job::begin();
    job.choose.insert("reach", "reach-wheels-off");
    job.up_to("final.clearance");
    reopen(&mut job, "loop.judge");
    job.up_to("loop.judge");
    choose(&mut job, "next", "turn-front");
    job.up_to("wheels.crack");
    job.do_it();
    job.choose.insert("reach", "reach-wheels-on");
    reopen(&mut job, "intake.adjusters");
    job.do_it();
    let steps = job.up_to("final.read-1");
    assert!(!steps.contains(&"wheels.off".into()), "the wheels stayed on: {steps:?}");
    assert!(place(&steps, "lock.nuts") < place(&steps, "lock.nuts-second"), "{steps:?}");
}

#[test]
fn a_job_without_a_road_test_is_not_asked_what_a_road_test_needs() {
    let mut job = Job::begin();
    job.up_to("final.road-test");
    job.do_it();
    let steps = job.up_to("final.read-1");
    let settling = |s: &String| s.starts_with("settle.");
    assert!(steps.iter().all(settling), "the car is settled and read, no more: {steps:?}");
}

#[test]
fn after_a_drive_everything_that_it_moved_is_set_again() {
    let mut job = Job::begin();
    job.choose.insert("road-test", "driven");
    job.choose.insert("extinguisher", "plumbed-extinguisher");
    job.choose.insert("high-voltage", "has-high-voltage");
    job.choose.insert("lifting-mode", "has-lifting-mode");
    job.up_to("final.drive");
    assert!(job.is(Fact::Stance, Value::Ground) && job.is(Fact::Ballast, Value::Out));
    assert!(job.is(Fact::Extinguisher, Value::Live) && job.is(Fact::LiftingMode, Value::Ended));
    job.do_it();
    let steps = job.up_to("final.read-1");
    for again in [
        "lock.nuts",
        "lock.nuts-second",
        "final.clearance",
        "restore.fuel",
        "walk.extinguisher",
        "restore.ballast",
        "restore.pressures",
        "restore.onto-pads",
        "settle.touch",
    ] {
        assert!(steps.contains(&again.into()), "{again} is not among {steps:?}");
    }
    for once in ["baseline.read-1", "pads.place", "final.dampers"] {
        assert!(!steps.contains(&once.into()), "{once} is not asked for by a drive: {steps:?}");
    }
}

#[test]
fn alignment_fasteners_get_two_names_after_the_last_change() {
    let mut job = Job::begin();
    job.up_to("final.clearance");
    for step in ["align.fasteners", "align.fasteners-second"] {
        assert_eq!(job.state.standing(step), Standing::Done, "asked also where nothing was turned");
    }
    reopen(&mut job, "align.judge");
    job.up_to("align.judge");
    choose(&mut job, "next", "change-angles");
    let steps = job.up_to("final.read-1");
    let last_change = steps.iter().rposition(|s| s.starts_with("align.change")).expect("angles are changed");
    assert!(last_change < place(&steps, "align.fasteners"), "{steps:?}");
    assert!(place(&steps, "align.fasteners") < place(&steps, "align.fasteners-second"), "{steps:?}");
}

#[test]
fn a_change_of_the_caster_is_swept_and_all_is_read_again() {
    let mut job = Job::begin();
    job.up_to("align.judge");
    choose(&mut job, "next", "change-caster");
    let steps = job.up_to("align.judge");
    let order = ["align.change-rear", "align.change-caster", "align.change-front", "align.caster", "align.read"];
    let places: Vec<_> = order.iter().map(|step| place(&steps, step)).collect();
    assert!(places.is_sorted(), "rear before front, caster before camber and toe, then read: {steps:?}");
    assert!(!steps.contains(&"align.runout".into()), "rims are measured once: {steps:?}");
}

#[test]
fn camber_and_toe_are_changed_without_another_sweep() {
    let mut job = Job::begin();
    job.up_to("align.judge");
    choose(&mut job, "next", "change-angles");
    let steps = job.up_to("align.judge");
    assert!(!steps.contains(&"align.caster".into()) && !steps.contains(&"align.change-caster".into()), "{steps:?}");
    assert!(place(&steps, "settle.bounce") < place(&steps, "align.read"), "bounced after each change: {steps:?}");
}

#[test]
fn angles_far_out_are_set_before_the_baseline() {
    let mut job = Job::begin();
    job.up_to("rough.angles");
    choose(&mut job, "next", "set-angles");
    let steps = job.up_to("baseline.read-1");
    assert!(place(&steps, "rough.set-angles") < place(&steps, "rough.angles"), "set, then read again: {steps:?}");
}

#[test]
fn shims_that_are_changed_ask_for_level_and_zeros_again() {
    let mut job = Job::begin();
    job.up_to("used.fuel");
    reopen(&mut job, "pads.shims");
    let steps = job.up_to("baseline.read-1");
    for again in ["pads.shims", "pads.level", "pads.zero"] {
        assert!(steps.contains(&again.into()), "{again}: {steps:?}");
    }
}

#[test]
fn papers_that_are_corrected_do_not_overwrite_what_was_done_to_the_car() {
    let mut job = Job::begin();
    job.up_to("loop.judge");
    reopen(&mut job, "intake.bars");
    let steps = job.up_to("intake.bars");
    assert!(
        steps.contains(&"back.front".into()),
        "a loose link goes back before it may be said to be absent: {steps:?}"
    );
    assert!(job.is(Fact::FrontParts, Value::Aboard) && job.is(Fact::RearParts, Value::Aboard));
}

#[test]
fn a_car_that_is_measured_only_is_sealed_without_windows() {
    let mut job = Job::begin();
    job.choose.insert("springing", "single-spring");
    let steps = job.up_to("review.seal");
    for never in ["raised.collars", "rough.set", "loop.judge", "lock.rings", "final.read-2"] {
        assert!(!steps.contains(&never.into()), "{never} is of a car that is set: {steps:?}");
    }
    assert!(steps.contains(&"loop.advise".into()) && steps.contains(&"final.read-3".into()), "{steps:?}");
    job.want(Intent::Seal { by: "MT".into() }).expect("a measured car is sealed too");
}

#[test]
fn hazards_stand_where_they_are_met() {
    let document = Job::begin().document;
    for (step, hazard) in [
        ("back.front", "wound-bar"),
        ("back.rear", "wound-bar"),
        ("align.caster", "pinch"),
        ("align.runout", "pinch"),
        ("restore.ballast", "airbag-seat"),
        ("final.ballast-out", "airbag-seat"),
        ("final.clearance", "crush-low"),
        ("pads.place", "raised-vehicle"),
        ("settle.brake-on-electric", "parking-brake"),
        ("settle.brake-off-electric", "parking-brake"),
        ("settle.brake-off", "platform-fall"),
        ("settle.roll", "platform-fall"),
        ("final.high-voltage", "high-voltage"),
        ("final.lifting-mode", "self-levelling"),
    ] {
        let (_, step) = document.step(step).expect("it stands in the document");
        assert!(step.hazards.iter().any(|h| h == hazard), "{hazard} at {}", step.id);
    }
}

#[test]
fn a_hazard_of_one_kind_of_lift_is_not_asked_for_at_another() {
    for (lift, met) in [("four-post", true), ("two-post", false)] {
        let mut job = Job::begin();
        job.choose.insert("lift", lift);
        job.up_to("settle.brake-off");
        let (_, step) = job.document.step("settle.brake-off").expect("it stands in the document");
        let step = step.clone();
        let at: Vec<_> = job.document.hazards_at(&job.state, &step).map(|h| h.id.clone()).collect();
        assert_eq!(at.contains(&"platform-fall".into()), met, "{lift}: {at:?}");
        let acknowledge = Intent::Acknowledge { step: step.id.clone(), hazard: "moving-car".into(), by: "RO".into() };
        job.want(acknowledge).expect("it is met at every lift");
        let entries = job.answers(&step);
        let done = job.want(Intent::Record { step: step.id, by: "RO".into(), entries });
        assert_eq!(done.err(), met.then(|| Refusal::HazardOpen("platform-fall".into())), "{lift}");
    }
}

#[test]
fn the_first_lift_is_prepared_by_a_technician_and_every_raise_may_be_a_trainee() {
    let document = Job::begin().document;
    let by = |id: &str| document.step(id).map(|(_, s)| s.by);
    assert_eq!(by("lift.equipment"), Some(Rank::Technician));
    assert_eq!(by("final.drive"), Some(Rank::Technician));
    assert_eq!(by("raise.check"), Some(Rank::Trainee));
}

/// Each of these is missing once, at the step that is about to be sealed: the job leads back to what brings it about.
#[test]
fn the_seal_asks_for_the_whole_car() {
    let document = Job::begin().document;
    let (_, seal) = document.step("review.seal").expect("it stands in the document");
    let Condition::All(needs) = &seal.needs else { panic!("the seal asks for all of its needs") };
    let asked = |fact, value| {
        let holds = |c: &Condition| c.facts().iter().any(|h| h.fact == fact && !h.is.contains(&value));
        needs.iter().any(holds)
    };
    for (fact, wrong, says) in [
        (Fact::FrontLink, Value::Released, "a link is loose"),
        (Fact::RearLink, Value::Released, "a link is loose"),
        (Fact::Wheels, Value::Off, "a wheel is off"),
        (Fact::Nuts, Value::Tightened, "nuts have one name"),
        (Fact::Rings, Value::Loose, "a collar is not locked"),
        (Fact::Springs, Value::Moved, "a spring was not looked at"),
        (Fact::Bushes, Value::Slack, "a bush is slack"),
        (Fact::Ballast, Value::Strapped, "ballast is in"),
        (Fact::FrontParts, Value::Out, "a part is off"),
        (Fact::RearParts, Value::Out, "a part is off"),
        (Fact::Pressures, Value::Working, "tyres are not at their cold pressures"),
        (Fact::Dampers, Value::Noted, "dampers are not set back"),
        (Fact::LiftingMode, Value::Set, "the lifting mode is on"),
        (Fact::HighVoltage, Value::Safe, "the high voltage is off"),
        (Fact::Extinguisher, Value::Pinned, "the extinguisher is pinned"),
        (Fact::Tools, Value::Unknown, "tools were not counted"),
        (Fact::Clearance, Value::Unknown, "clearances were not checked"),
        (Fact::Stance, Value::Pads, "it stands on the pads"),
        (Fact::Pads, Value::Level, "the pads are still out"),
    ] {
        assert!(asked(fact, wrong), "a car is sealed although {says}");
    }
}

/// A waived reading stays a reading of a car that nothing touches: a failed try does not send the person round again.
#[test]
fn a_reading_that_failed_can_be_waived_where_it_stands() {
    let mut job = Job::begin();
    job.up_to("baseline.read-1");
    job.try_it();
    job.want(Intent::Waive { step: "baseline.read-1".into(), by: "MT".into(), reason: "known of this car".into() })
        .expect("it is still the step at hand");
    assert!(job.is(Fact::Aboard, Value::Unknown) && job.is(Fact::Touching, Value::Unknown), "and then it lapses");
    assert!(matches!(next(&job.document, &job.state), Next::Step { id, .. } if id.starts_with("settle.")));
}

#[test]
fn a_lapse_that_cannot_be_is_a_fault_of_the_document() {
    let mut document = Job::begin().document;
    document.lapses[0].to = Value::Slack;
    document.lapses[1].except.push("raise.nothing".into());
    let says: Vec<_> = bayhand_procedure::lint(&document).iter().map(ToString::to_string).collect();
    assert_eq!(
        says,
        [
            "lapses raise-check: to: raise-check cannot be slack",
            "lapses rocked: except: there is no step \"raise.nothing\""
        ]
    );
}

/// Whoever reaches in beside the wheels of a car that stands on them has first read of what it does when it rolls or drops.
#[test]
fn who_reaches_in_has_read_that_the_brake_is_on_first() {
    let document = Job::begin().document;
    let steps = document.stages.iter().flat_map(|stage| &stage.steps);
    let reaching: Vec<_> = steps.filter(|step| step.place == bayhand_procedure::Place::Reach).collect();
    assert!(reaching.len() > 10, "control: many steps reach in");
    for step in reaching {
        assert!(step.hazards.iter().any(|id| id == "crush-low"), "{}: {:?}", step.id, step.hazards);
    }
}
