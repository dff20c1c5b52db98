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
                ("turns", spoken_turns(turns.abs(), tell)),
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

/// 'one and a quarter turns' where it is quarters of a turn, else '1.125 turns'.
pub fn spoken_turns(turns: f64, tell: &Tell) -> String {
    let quarters = turns * 4.0;
    if (quarters - quarters.round()).abs() > 1e-6 {
        return tell.text("turns-decimal", &[("turns", tell.turns(turns).trim_start_matches('+').to_owned())]);
    }
    let (whole, part) = ((quarters.round() as i64).div_euclid(4), (quarters.round() as i64).rem_euclid(4));
    let id = match (whole, part) {
        (0, 1) => "turns-quarter",
        (0, 2) => "turns-half",
        (0, 3) => "turns-three-quarters",
        (1, 0) => "turns-one",
        (_, 0) => "turns-whole",
        (_, 1) => "turns-and-quarter",
        (_, 2) => "turns-and-half",
        _ => "turns-and-three-quarters",
    };
    tell.text(id, &[("whole", whole.to_string())])
}
