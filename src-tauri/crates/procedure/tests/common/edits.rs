//! Edits of the shipped document, as somebody in a workshop might make them.

use bayhand_procedure::prove::Property;
use bayhand_procedure::{Condition, Document, Fact, Gate, Holds, Place, Rank, Step, Value};

/// An edit.
pub type Edit = fn(&mut Document);

/// A harmful edit: what it is, the property that it breaks, and the edit.
pub type Harmful = (&'static str, Property, Edit);

fn step<'d>(d: &'d mut Document, id: &str) -> &'d mut Step {
    let steps = d.stages.iter_mut().flat_map(|stage| stage.steps.iter_mut());
    steps.into_iter().find(|step| step.id == id).unwrap_or_else(|| panic!("there is no step {id}"))
}

fn names(condition: &Condition, fact: Fact) -> bool {
    condition.facts().iter().any(|holds| holds.fact == fact)
}

/// Takes what a step needs of a fact away.
pub fn drop_need(d: &mut Document, id: &str, fact: Fact) {
    let step = step(d, id);
    match &mut step.needs {
        Condition::All(list) => {
            let before = list.len();
            list.retain(|condition| !names(condition, fact));
            assert!(list.len() < before, "{id} did not need {fact:?}");
        }
        needs => *needs = Condition::default(),
    }
}

/// Lets another value do too.
fn widen_need(d: &mut Document, id: &str, fact: Fact, value: Value) {
    fn widen(condition: &mut Condition, fact: Fact, value: Value) {
        match condition {
            Condition::Fact(Holds { fact: f, is }) if *f == fact => is.push(value),
            Condition::Fact(_) => {}
            Condition::All(list) | Condition::Any(list) => list.iter_mut().for_each(|c| widen(c, fact, value)),
            Condition::Not(c) => widen(c, fact, value),
        }
    }
    widen(&mut step(d, id).needs, fact, value);
}

fn drop_gate(d: &mut Document, id: &str, which: fn(&Gate) -> bool) {
    let gates = &mut step(d, id).gates;
    let before = gates.len();
    gates.retain(|gate| !which(gate));
    assert!(gates.len() < before, "{id} had no such gate");
}

fn drop_check(d: &mut Document, id: &str, check: &str) {
    let inputs = &mut step(d, id).inputs;
    let before = inputs.len();
    inputs.retain(|input| input.id != check);
    assert!(inputs.len() < before, "{id} had no {check}");
}

fn drop_set(d: &mut Document, id: &str, fact: Fact) {
    let sets = &mut step(d, id).sets;
    let before = sets.len();
    sets.retain(|b| b.fact != fact);
    assert!(sets.len() < before, "{id} did not set {fact:?}");
}

fn set(d: &mut Document, id: &str, fact: Fact, to: Value) {
    let step = step(d, id);
    step.sets.retain(|b| b.fact != fact);
    step.sets.push(bayhand_procedure::document::Becomes { fact, to });
}

fn rests_only_on(d: &mut Document, ids: &[&str], keep: fn(&str) -> bool) {
    for id in ids {
        step(d, id).rests_on.retain(|node| keep(node));
    }
}

fn remove(d: &mut Document, id: &str) {
    for stage in &mut d.stages {
        stage.steps.retain(|step| step.id != id);
    }
    for stage in &mut d.stages {
        for step in &mut stage.steps {
            step.rests_on.retain(|node| node != id);
        }
    }
    for lapse in &mut d.lapses {
        lapse.except.retain(|e| e != id);
    }
}

const FINAL: [&str; 3] = ["final.read-1", "final.read-2", "final.read-3"];

/// Edits that hurt somebody or spoil a figure. Each is without a fault to the schema and to the lint.
pub const HARMFUL: &[Harmful] = &[
    ("the danger at the look before a raise is not acknowledged", Property::SecuredRaise, |d| {
        step(d, "raise.check").hazards.clear();
    }),
    ("the danger at the locks is not acknowledged", Property::SecuredRaise, |d| step(d, "raise.lock").hazards.clear()),
    ("the raised look is taken on a car just clear", Property::SecuredRaise, |d| {
        widen_need(d, "raised.play", Fact::Stance, Value::Clear);
    }),
    ("pads are placed with the car on the ground or up", Property::SecuredRaise, |d| {
        drop_need(d, "pads.place", Fact::Stance);
    }),
    ("a car that was not rocked is taken up", Property::SecuredRaise, |d| drop_need(d, "raise.lock", Fact::Rocked)),
    ("a car that rocked unsteadily goes on up", Property::SecuredRaise, |d| {
        for input in &mut step(d, "raise.rock").inputs {
            if let bayhand_procedure::Kind::Choice(options) = &mut input.kind {
                let steady = options[0].sets.clone();
                options[1].sets = steady;
            }
        }
    }),
    ("rocking counts for the next raise too", Property::SecuredRaise, |d| d.lapses.retain(|l| l.fact != Fact::Rocked)),
    ("one acknowledgement counts for every raise", Property::SecuredRaise, |d| {
        d.lapses.retain(|l| l.fact != Fact::RaiseCheck);
        d.lapses.retain(|l| l.fact != Fact::Aboard);
    }),
    ("the lifting mode is not asked for", Property::SecuredRaise, |d| drop_need(d, "raise.check", Fact::LiftingMode)),
    ("the high voltage is not asked for", Property::SecuredRaise, |d| drop_need(d, "raise.check", Fact::HighVoltage)),
    ("collars are turned on a car that stands", Property::CollarUnloaded, |d| {
        drop_need(d, "loop.turn-FL", Fact::TurnUnderLoad);
    }),
    ("collars are turned with the front link on", Property::CollarUnloaded, |d| {
        drop_need(d, "loop.turn-RR", Fact::FrontLink);
    }),
    ("rough turning forgets the rear link", Property::CollarUnloaded, |d| drop_need(d, "rough.set", Fact::RearLink)),
    ("collars are turned against their rings", Property::CollarUnloaded, |d| drop_need(d, "rough.set", Fact::Rings)),
    ("sealed with ballast in", Property::WholeCar, |d| {
        for id in ["review.seal", "final.off-pads", "final.drive"] {
            drop_need(d, id, Fact::Ballast);
        }
        remove(d, "final.ballast-out");
    }),
    ("sealed although the ballast was only said to be out", Property::WholeCar, |d| {
        drop_gate(d, "final.ballast-out", |g| *g == Gate::ChecksYes);
    }),
    ("parts of the front link are not counted back", Property::WholeCar, |d| {
        drop_gate(d, "back.front", |g| matches!(g, Gate::CountedBack { .. }));
    }),
    ("the rear parts are compared with the front ones", Property::WholeCar, |d| {
        for gate in &mut step(d, "back.rear").gates {
            if let Gate::CountedBack { of } = gate {
                "links.front-release".clone_into(of);
            }
        }
    }),
    ("nuts are checked by the one who tightened them", Property::WholeCar, |d| {
        drop_gate(d, "lock.nuts-second", |g| matches!(g, Gate::SecondPerson { .. }));
    }),
    ("nuts seated are good enough for the seal", Property::WholeCar, |d| {
        widen_need(d, "review.seal", Fact::Nuts, Value::Seated);
        step(d, "lock.nuts").rests_on.clear();
        step(d, "lock.nuts-second").rests_on.clear();
    }),
    ("a wheel that was off leaves the nuts as torqued", Property::WholeCar, |d| {
        for id in ["wheels.off", "wheels.on", "wheels.nuts"] {
            set(d, id, Fact::Nuts, Value::Torqued);
        }
    }),
    ("alignment fasteners are not checked after a change", Property::WholeCar, |d| {
        rests_only_on(d, &["align.fasteners", "align.fasteners-second"], |_| false);
    }),
    ("cold pressures are said and not read", Property::WholeCar, |d| {
        drop_gate(d, "final.cold", |g| matches!(g, Gate::Pressures { .. }));
    }),
    ("a slack bush is handed over", Property::WholeCar, |d| {
        drop_need(d, "review.seal", Fact::Bushes);
        drop_need(d, "final.drive", Fact::Bushes);
        for id in FINAL {
            drop_need(d, id, Fact::Bushes);
        }
        drop_need(d, "final.angles", Fact::Bushes);
        step(d, "lock.bushes").rests_on.clear();
    }),
    ("turning does not void the clearances", Property::WholeCar, |d| {
        for corner in ["FL", "FR", "RL", "RR"] {
            drop_set(d, &format!("loop.turn-{corner}"), Fact::Clearance);
        }
        step(d, "final.clearance").rests_on.clear();
    }),
    ("tools are not counted again", Property::WholeCar, |d| d.lapses.retain(|l| l.fact != Fact::Tools)),
    ("the final readings do not rest on the collars", Property::TrueFigures, |d| {
        rests_only_on(d, &FINAL, |node| node.starts_with("final."));
    }),
    ("the final readings do not rest on the angles", Property::TrueFigures, |d| {
        rests_only_on(d, &FINAL, |node| !["camber", "toe", "caster"].contains(&node));
    }),
    ("the final readings do not rest on the pads", Property::TrueFigures, |d| {
        rests_only_on(d, &FINAL, |node| node != "pads.level");
    }),
    ("the final readings do not rest on the working pressures", Property::TrueFigures, |d| {
        rests_only_on(d, &FINAL, |node| node != "used.pressures");
    }),
    ("the second settle does not rest on the first", Property::TrueFigures, |d| {
        rests_only_on(d, &["final.read-2"], |node| node != "final.read-1");
        rests_only_on(d, &["final.read-1"], |_| false);
        rests_only_on(d, &["review.seal"], |node| node != "final.read-1");
        step(d, "final.read-2").rests_on.push("final.read-1".into());
    }),
    ("a void final reading is not taken again", Property::TrueFigures, |d| step(d, "final.read-1").once = true),
    ("turning is called a closing change", Property::TrueFigures, |d| {
        for corner in ["FL", "FR", "RL", "RR"] {
            step(d, &format!("loop.turn-{corner}")).closing = true;
        }
    }),
    ("readings are taken before the car has settled", Property::TrueFigures, |d| {
        drop_need(d, "baseline.read-2", Fact::Settle);
    }),
    ("a reading does not use the settle up", Property::TrueFigures, |d| drop_set(d, "loop.read-1", Fact::Settle)),
    ("the balance is read with the links on", Property::TrueFigures, |d| {
        drop_need(d, "baseline.read-1", Fact::FrontLink);
        drop_need(d, "baseline.read-1", Fact::RearLink);
        remove(d, "links.front-release");
        for gate in &mut step(d, "back.front").gates {
            if let Gate::CountedBack { of } = gate {
                "links.rear-release".clone_into(of);
            }
        }
    }),
    ("pads are not levelled again after shims", Property::TrueFigures, |d| {
        drop_set(d, "pads.shims", Fact::Pads);
        step(d, "pads.level").rests_on.clear();
    }),
    ("zeros are not read before the car comes down", Property::TrueFigures, |d| {
        drop_need(d, "lower.pads", Fact::Zeros);
        step(d, "pads.zero").rests_on.clear();
    }),
    ("readings without the driver's ballast", Property::TrueFigures, |d| {
        drop_need(d, "final.read-1", Fact::Ballast);
        drop_need(d, "final.read-2", Fact::Ballast);
    }),
    ("the trainee waives the second person", Property::NamedPeople, |d| {
        step(d, "lock.nuts-second").waive = Some(Rank::Trainee);
    }),
    ("a supervisor waives the parts that are missing", Property::NamedPeople, |d| {
        step(d, "back.rear").waive = Some(Rank::Supervisor);
    }),
    ("a technician waives that people are out", Property::NamedPeople, |d| {
        step(d, "lower.people").waive = Some(Rank::Technician);
    }),
    ("the trainee waives the windows", Property::NamedPeople, |d| {
        step(d, "loop.judge").waive = Some(Rank::Trainee);
    }),
    ("a look into the car counts for ever", Property::NobodyAboard, |d| {
        d.lapses.retain(|l| l.fact != Fact::Aboard);
        d.lapses.retain(|l| l.fact != Fact::RaiseCheck);
    }),
    ("nobody looks into the car before a raise", Property::NobodyAboard, |d| {
        drop_check(d, "raise.check", "nobody-aboard");
    }),
    ("the car goes up with ballast that was not strapped", Property::NobodyAboard, |d| {
        drop_check(d, "used.ballast", "ballast-strapped");
    }),
    ("somebody leans in under a live extinguisher", Property::NobodyAboard, |d| {
        drop_need(d, "used.ballast", Fact::Extinguisher);
        step(d, "walk.extinguisher").sets.clear();
    }),
    ("the car comes down with a wheel off", Property::SafeLowering, |d| {
        for id in ["lower.pads", "lower.people"] {
            drop_need(d, id, Fact::Wheels);
            drop_need(d, id, Fact::Nuts);
        }
    }),
    ("the car comes down on loose nuts", Property::SafeLowering, |d| {
        for id in ["lower.pads", "lower.people", "lower.ground"] {
            widen_need(d, id, Fact::Nuts, Value::Loose);
        }
    }),
    ("the car comes down without counting people out", Property::SafeLowering, |d| {
        drop_need(d, "lower.pads", Fact::Under);
    }),
    ("a count of people counts for ever", Property::SafeLowering, |d| d.lapses.retain(|l| l.fact != Fact::Under)),
    ("springs are not looked at after a collar moved", Property::SafeLowering, |d| {
        for corner in ["FL", "FR", "RL", "RR"] {
            drop_set(d, &format!("loop.turn-{corner}"), Fact::Springs);
        }
    }),
    ("the car comes down with nobody warned", Property::SafeLowering, |d| step(d, "lower.pads").hazards.clear()),
    ("the car is rolled on nuts that were only cracked", Property::SafeLowering, |d| {
        drop_need(d, "restore.off-pads", Fact::Nuts);
        drop_need(d, "settle.roll", Fact::Nuts);
    }),
    ("bushes are set on a car free to roll", Property::HeldOrFree, |d| drop_need(d, "lock.bushes", Fact::Brake)),
    ("a link goes on with the car free to roll", Property::HeldOrFree, |d| drop_need(d, "back.front", Fact::Brake)),
    ("a reading with the brake on", Property::HeldOrFree, |d| {
        drop_need(d, "baseline.read-1", Fact::Brake);
        drop_need(d, "baseline.read-1", Fact::Settle);
    }),
    ("a look at what touches the car counts for ever", Property::HeldOrFree, |d| {
        d.lapses.retain(|l| l.fact != Fact::Touching && l.fact != Fact::Aboard);
    }),
    ("nuts are cracked on a raised car", Property::HeldOrFree, |d| {
        step(d, "wheels.crack").needs = Condition::default();
    }),
    ("the car goes up with nothing to hold it", Property::HeldOrFree, |d| {
        drop_need(d, "raise.check", Fact::Brake);
        drop_need(d, "raise.clear", Fact::Brake);
    }),
    ("a stopped job leaves the car just clear", Property::HeldOrFree, |d| {
        step(d, "stop.car").needs = Condition::default();
        step(d, "stop.tag").needs = Condition::default();
    }),
];

/// Edits that a workshop may make: another way of working, as safe as before.
pub const HARMLESS: &[(&str, Edit)] = &[
    ("a second look at leaks", |d| {
        let mut again = step(d, "walk.leaks").clone();
        again.id = "walk.leaks-again".into();
        let walk = d.stages.iter_mut().find(|s| s.id == "walk").expect("it stands in the document");
        walk.steps.push(again);
    }),
    ("one more hazard at the raise", |d| step(d, "raise.clear").hazards.push("raised-vehicle".into())),
    ("only a technician raises", |d| step(d, "raise.clear").by = Rank::Technician),
    ("only a supervisor waives a reading", |d| step(d, "baseline.read-1").waive = Some(Rank::Supervisor)),
    ("nobody waives the level of the pads", |d| step(d, "pads.level").waive = None),
    ("two settles at the baseline are enough", |d| {
        let gates = step(d, "baseline.read-3").gates.clone();
        remove(d, "baseline.read-3");
        step(d, "baseline.read-2").gates = gates;
        step(d, "baseline.read-2").rests_on.push("baseline.read-1".into());
        step(d, "loop.advise").rests_on.push("baseline.read-2".into());
    }),
    ("the settles agree within two kilograms", |d| {
        for gate in &mut step(d, "loop.read-2").gates {
            if let Gate::SettlesAgree { within_kg } = gate {
                "2".clone_into(within_kg);
            }
        }
    }),
    ("heights within eight millimetres", |d| {
        for gate in &mut step(d, "rough.heights").gates {
            if let Gate::HeightsNear { within_mm, .. } = gate {
                "8".clone_into(within_mm);
            }
        }
    }),
    ("loose kit is taken out before the fuel", |d| swap(d, "used.fuel", "used.kit")),
    ("the rear link comes off before the front one", |d| swap(d, "links.front-release", "links.rear-release")),
    ("the rear collars are turned first", |d| {
        swap(d, "loop.turn-FL", "loop.turn-RL");
        swap(d, "loop.turn-FR", "loop.turn-RR");
    }),
    ("no road test is offered", |d| {
        remove(d, "final.road-test");
        remove(d, "final.drive");
        for id in ["restore.fuel", "restore.onto-pads", "restore.off-pads"] {
            remove(d, id);
        }
    }),
    ("a photograph is noted at the end", |d| {
        let mut note = step(d, "final.advice").clone();
        note.id = "final.photograph".into();
        let last = d.stages.iter_mut().find(|s| s.id == "final").expect("it stands in the document");
        last.steps.push(note);
    }),
    ("the baseline rests on the bars too", |d| step(d, "baseline.read-1").rests_on.push("raised.bars".into())),
    ("chocks hold the car for every link", |d| {
        let chocks = Condition::Fact(Holds { fact: Fact::Chocks, is: vec![Value::Set] });
        for id in ["back.front", "back.rear"] {
            drop_need(d, id, Fact::Brake);
            let Condition::All(list) = &mut step(d, id).needs else { continue };
            list.push(chocks.clone());
        }
    }),
    ("the gap to the bump stop is not noted", |d| remove(d, "lock.gap")),
    ("an arm, with a tool in it, is said to be in the arch at the caster", |d| {
        step(d, "align.caster").place = Place::Reach;
        set(d, "align.caster", Fact::Tools, Value::Unknown);
    }),
    ("the ballast is weighed to half a kilogram", |d| {
        for gate in &mut step(d, "restore.ballast").gates {
            if let Gate::SameAs { within, .. } = gate {
                "0.5".clone_into(within);
            }
        }
    }),
    ("the walk-round is done before the instruments are noted", |d| {
        let instruments = step(d, "intake.instruments").clone();
        remove(d, "intake.instruments");
        let walk = d.stages.iter_mut().find(|s| s.id == "walk").expect("it stands in the document");
        walk.steps.push(Step { id: "walk.instruments".into(), ..instruments });
    }),
    ("a third look at the nuts by a supervisor", |d| {
        let mut third = step(d, "lock.nuts-second").clone();
        third.id = "lock.nuts-third".into();
        third.by = Rank::Supervisor;
        third.sets.retain(|b| b.fact != Fact::Nuts);
        third.rests_on.push("lock.nuts-second".into());
        let lock = d.stages.iter_mut().find(|s| s.id == "lock").expect("it stands in the document");
        lock.steps.push(third);
    }),
    ("the advice is written by a supervisor", |d| step(d, "loop.advise").by = Rank::Supervisor),
    ("clearances are looked at on the ground only", |d| {
        let ground = Condition::Fact(Holds { fact: Fact::Stance, is: vec![Value::Ground] });
        let Condition::All(list) = &mut step(d, "final.clearance").needs else { return };
        list[0] = ground;
    }),
];

fn swap(d: &mut Document, one: &str, other: &str) {
    let (a, b) = (step(d, one).clone(), step(d, other).clone());
    *step(d, one) = Step { id: "swapping".into(), ..b.clone() };
    *step(d, other) = a;
    step(d, "swapping").id = b.id;
}
