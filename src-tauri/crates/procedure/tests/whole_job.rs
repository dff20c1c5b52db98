//! The shipped document from intake to seal, by a setter who does what is at hand.

mod common;
use bayhand_procedure::{Fact, Found, Intent, Refusal, Standing, Status, Value, replay};
use common::Job;

#[test]
fn a_job_without_a_round_ends_sealed() {
    let mut job = Job::begin();
    let steps = job.up_to("review.seal");
    println!("{} steps\n{}", steps.len(), steps.join("\n"));
    assert_eq!(
        job.want(Intent::Seal { by: "RO".into() }),
        Err(Refusal::Rank {
            by: "RO".into(),
            rank: bayhand_procedure::Rank::Trainee,
            needed: bayhand_procedure::Rank::Supervisor
        }),
        "a trainee does not seal"
    );
    job.want(Intent::Seal { by: "MT".into() }).expect("a supervisor who did not work seals");
    assert_eq!(job.state.status, Status::Sealed);
    assert_eq!(replay(&job.document, &job.events), job.state, "the state is nothing but its events replayed");
}

#[test]
fn two_rounds_turn_read_and_judge_again() {
    let mut job = Job::begin();
    job.up_to("loop.judge");
    for number in 0..2 {
        job.choose.insert("next", "turn-cross");
        job.do_it();
        job.choose.remove("next");
        if number == 0 {
            assert_eq!(job.state.standing("baseline.read-1"), Standing::Done, "as found stands until a collar moves");
        }
        let round = job.up_to("loop.judge");
        let raised = round.iter().position(|s| s == "raise.lock").expect("the car is raised before collars are turned");
        let turned = round.iter().position(|s| s == "loop.turn-FL").expect("a collar is turned");
        let seated = round.iter().position(|s| s == "wheels.springs").expect("springs are looked at");
        let lowered = round.iter().position(|s| s == "lower.pads").expect("the car comes down");
        let read = round.iter().position(|s| s == "loop.read-1").expect("it is read again");
        assert!(raised < turned && turned < seated && seated < lowered && lowered < read, "{round:?}");
        assert_eq!(job.state.standing("baseline.read-1"), Standing::Void, "as found no longer says how the car stands");
    }
    job.choose.insert("next", "go-on");
    job.do_it();
    job.choose.remove("next");
    job.up_to("review.seal");
}

#[test]
fn reopening_pressures_leads_back_to_the_readings_that_rest_on_them() {
    let mut job = Job::begin();
    job.up_to("final.ballast-out");
    job.want(Intent::Reopen { step: "used.pressures".into(), by: "RO".into(), reason: "one gauge was wrong".into() })
        .expect("a done step can be opened again");
    for void in ["baseline.read-1", "loop.judge", "locked.read", "final.read-1", "final.read-2"] {
        assert_eq!(job.state.standing(void), Standing::Void, "{void} rests on the pressures");
    }
    for stands in ["walk.tyres", "pads.level", "links.front-release", "used.ballast", "lock.nuts"] {
        assert_eq!(job.state.standing(stands), Standing::Done, "{stands} does not rest on the pressures");
    }
    let again = job.up_to("review.seal");
    assert!(again.contains(&"final.read-2".into()), "{again:?}");
    assert!(!again.contains(&"walk.tyres".into()), "only what rests on it is done again: {again:?}");
}

#[test]
fn a_gate_that_fails_holds_the_step_and_is_waived_by_somebody_else() {
    let mut job = Job::begin();
    job.up_to("loop.judge");
    let (_, step) = job.document.step("loop.judge").expect("it stands in the document");
    let entries = job.answers(&step.clone());
    job.want_with(Intent::Record { step: "loop.judge".into(), by: "LB".into(), entries }, vec![Found::CannotTell])
        .expect("a try is recorded");
    assert_eq!(job.now(), "loop.judge", "the step stays at hand");
    let waive =
        |by: &str, reason: &str| Intent::Waive { step: "loop.judge".into(), by: by.into(), reason: reason.into() };
    assert!(matches!(job.want(waive("RO", "good enough")), Err(Refusal::Rank { .. })), "a trainee waives nothing");
    assert_eq!(job.want(waive("LB", "good enough")), Err(Refusal::AtWork("LB".into())), "nobody waives their own step");
    assert_eq!(job.want(waive("MT", "  ")), Err(Refusal::NoReason), "a waiver has a reason");
    job.want(waive("MT", "window is finer than the floor")).expect("a supervisor who was not at work may");
    assert_eq!(job.state.step("loop.judge").waived.as_deref(), Some("MT"));
}

#[test]
fn unknown_repeated_and_early_intents_are_refused() {
    let mut job = Job::begin();
    let record = |step: &str| Intent::Record { step: step.into(), by: "RO".into(), entries: Default::default() };
    assert_eq!(job.want(record("nowhere.at-all")), Err(Refusal::NoSuchStep("nowhere.at-all".into())));
    assert_eq!(
        job.want(record("final.read-1")),
        Err(Refusal::NotNow { step: "final.read-1".into(), now: "intake.car".into() })
    );
    assert_eq!(job.want(record("intake.car")), Err(Refusal::Missing("use".into())), "an empty record is incomplete");
    job.up_to("walk.leaks");
    let hazard =
        |hazard: &str| Intent::Acknowledge { step: "walk.leaks".into(), hazard: hazard.into(), by: "RO".into() };
    assert_eq!(job.want(record("walk.leaks")), Err(Refusal::HazardOpen("fuel-fire".into())), "hazards come first");
    assert_eq!(job.want(hazard("laser")), Err(Refusal::NoSuchHazard("laser".into())));
    job.want(hazard("fuel-fire")).expect("it stands there");
    assert_eq!(job.want(hazard("fuel-fire")), Err(Refusal::AlreadyAcknowledged("fuel-fire".into())));
    job.want(Intent::Hold { by: "RO".into(), reason: "lunch".into() }).expect("a job can be held");
    assert_eq!(job.want(hazard("hot-parts")), Err(Refusal::OnHold));
    job.want(Intent::Resume { by: "LB".into() }).expect("somebody else may go on with it");
}

#[test]
fn a_stopped_job_makes_the_car_safe_and_ends() {
    let mut job = Job::begin();
    job.up_to("raise.rock");
    assert!(job.is(Fact::Stance, Value::Clear));
    job.want(Intent::Stop { by: "RO".into(), reason: "lift leaks".into() }).expect("a job can be stopped at any step");
    let mut steps = Vec::new();
    while job.state.status == Status::Stopping {
        steps.push(job.do_it());
    }
    assert_eq!(job.state.status, Status::Stopped);
    assert!(job.is(Fact::Stance, Value::Ground), "a car at wheels-clear comes down again: {steps:?}");
    assert_eq!(job.want(Intent::Seal { by: "MT".into() }), Err(Refusal::Ended), "a stopped job is not sealed");
}

/// The physical safety properties hold at every step of the whole job with a round and a reopened step.
#[test]
fn nothing_dangerous_is_offered() {
    let mut job = Job::begin();
    let mut reopened = false;
    let mut rounds = 0;
    loop {
        let now = job.now();
        if now == "review.seal" {
            break;
        }
        let at_or_under = ["raised.", "links.", "wheels."].iter().any(|s| now.starts_with(s));
        if at_or_under || now.contains("loop.turn") {
            assert!(job.is(Fact::Stance, Value::Locked), "{now} on a car that is not locked");
            assert!(job.is(Fact::RaiseCheck, Value::Given), "{now} without this raise's acknowledgement");
        }
        if now.contains("read") && !now.starts_with("align") {
            assert!(job.is(Fact::Brake, Value::Off) && job.is(Fact::Chocks, Value::Away), "{now} with the brake on");
            assert!(job.is(Fact::Ballast, Value::Strapped) && job.is(Fact::Pressures, Value::Working), "{now}");
        }
        if now == "raise.clear" {
            assert!(job.is(Fact::Aboard, Value::Nobody), "a car goes up with somebody aboard");
        }
        if now.starts_with("lower.pads") || now.starts_with("lower.ground") {
            assert!(job.is(Fact::Under, Value::Nobody) && job.is(Fact::Springs, Value::Seated), "{now}");
            assert!(job.is(Fact::Wheels, Value::On) && !job.is(Fact::Nuts, Value::Loose), "{now}");
        }
        if now == "loop.judge" && rounds < 2 {
            rounds += 1;
            job.choose.insert("next", "turn-front");
        }
        if now == "final.cold" && !reopened {
            reopened = true;
            job.want(Intent::Reopen { step: "pads.level".into(), by: "RO".into(), reason: "a pad was kicked".into() })
                .expect("a done step can be opened again");
            continue;
        }
        job.do_it();
        job.choose.remove("next");
        assert!(job.events.len() < 2000, "the job does not end");
    }
    assert!(
        job.is(Fact::Ballast, Value::Out) && job.is(Fact::Pressures, Value::Cold) && job.is(Fact::Nuts, Value::Torqued)
    );
}
