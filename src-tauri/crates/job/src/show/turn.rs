//! What to turn at one corner, in words: what the car does, then what the collar does.

use crate::{
    known::Known,
    tell::Tell,
    view::{DirectionCode, TurnView},
};
use bayhand_vehicle::{Hand, Place, SpringSeat, Thread, Turning};

/// What the accepted plan asks at a corner; none when there is no plan.
pub fn turn(known: &Known, place: Place, tell: &Tell) -> Option<TurnView> {
    let plan = known.accepted_plan()?;
    let thread = thread(known, place)?;
    let steps = plan.steps[place.index()];
    let raise = steps > 0;
    let towards_spring = raise;
    let direction = match (raise, thread.raising()) {
        _ if steps == 0 => DirectionCode::Leave,
        (true, Turning::Clockwise) | (false, Turning::Anticlockwise) => DirectionCode::Clockwise,
        (true, Turning::Anticlockwise) | (false, Turning::Clockwise) => DirectionCode::Anticlockwise,
    };
    let corner = tell.corner(place);
    let per_turn = known.value("intake.adjusters", "steps-per-turn").unwrap_or(1.0).max(1.0) as u32;
    let turns = known.turns_of(steps);
    let (car, collar) = match direction {
        DirectionCode::Leave => ("turn-leave-car", "turn-leave-collar"),
        _ if raise => ("turn-raise-car", "turn-collar"),
        _ => ("turn-lower-car", "turn-collar"),
    };
    let way = if direction == DirectionCode::Clockwise { "turn-clockwise" } else { "turn-anticlockwise" };
    let spring = if towards_spring { "turn-towards" } else { "turn-away" };
    Some(TurnView {
        corner: super::line::corner(place),
        count: tell.text("turn-count", &[("number", (place.index() + 1).to_string())]),
        car_does: tell.text(car, &[("corner", corner)]),
        collar_does: tell.text(
            collar,
            &[
                ("turns", told_turns(steps.unsigned_abs(), per_turn, tell)),
                ("spring", tell.text(spring, &[])),
                ("way", tell.text(way, &[])),
                ("mm", tell.mm((turns * known.pitch_mm(place)).abs(), 2)),
            ],
        ),
        turns: tell.turns(turns),
        direction,
        towards_spring,
        spring_above: thread.spring == SpringSeat::AboveCollar,
    })
}

fn thread(known: &Known, place: Place) -> Option<Thread> {
    let hand = if known.text("intake.adjusters", "hand")? == "left-hand" { Hand::Left } else { Hand::Right };
    let below = known.text("intake.adjusters", "spring-seat")? == "spring-below";
    let spring = if below { SpringSeat::BelowCollar } else { SpringSeat::AboveCollar };
    Some(Thread { pitch_mm: known.pitch_mm(place), hand, spring })
}

/// 'one and a quarter turns' where it is quarters of a turn, else a fraction in steps: '1 5/6 turns'. `per_turn`: steps of a
/// turn, above zero.
pub(super) fn told_turns(steps: u32, per_turn: u32, tell: &Tell) -> String {
    let (whole, part) = (steps / per_turn, steps % per_turn);
    let quarters = part * 4;
    let id = match (whole, quarters.is_multiple_of(per_turn), quarters / per_turn) {
        (1, true, 0) => "turns-one",
        (_, true, 0) => "turns-whole",
        (0, true, 1) => "turns-quarter",
        (0, true, 2) => "turns-half",
        (0, true, _) => "turns-three-quarters",
        (_, true, 1) => "turns-and-quarter",
        (_, true, 2) => "turns-and-half",
        (_, true, _) => "turns-and-three-quarters",
        (0, false, _) => "turns-part",
        (_, false, _) => "turns-and-part",
    };
    let shared = greatest_common_divisor(part, per_turn);
    let part = format!("{}/{}", part / shared, per_turn / shared);
    tell.text(id, &[("whole", whole.to_string()), ("part", part)])
}

fn greatest_common_divisor(a: u32, b: u32) -> u32 {
    if b == 0 { a.max(1) } else { greatest_common_divisor(b, a % b) }
}
