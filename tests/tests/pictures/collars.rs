//! What collars do to loads and heights.

use super::drawing::{AMBER, At, BLUE, Drawing, GREY, INK};
use super::example::{WANTED_PCT, after, car, reading};
use super::figures::Figures;
use bayhand_chassis::{Figures as Shares, Mark, lift_without_height, trade_line};
use bayhand_vehicle::{Corners, Place};

/// How far each collar is turned up in the first picture, mm.
const TURNED_MM: f64 = 5.0;

/// Four bars with their values over a base line; `scale` is pixels for one unit.
fn bars(drawing: &mut Drawing, left: f64, base: f64, scale: f64, values: &Corners<f64>, digits: usize) {
    drawing.line((left, base), (left + 200.0, base), GREY, 1.0);
    for (place, value) in values.iter() {
        let x = left + 8.0 + 49.0 * place.index() as f64;
        let top = base - value * scale;
        drawing.bar(x, 36.0, base, top, if *value >= 0.0 { BLUE } else { AMBER });
        let beyond = if *value >= 0.0 { top - 6.0 } else { top + 18.0 };
        let shown = format!("{value:+.digits$}");
        // A change that is nothing has no sign.
        let shown = if shown.trim_start_matches(['+', '-']).parse() == Ok(0.0) { "0".to_owned() } else { shown };
        drawing.text(x + 18.0, beyond, 15.0, At::Middle, INK, &shown);
    }
}

fn corners_below(drawing: &mut Drawing, left: f64, y: f64) {
    for place in Place::ALL {
        drawing.text(left + 26.0 + 49.0 * place.index() as f64, y, 14.0, At::Middle, GREY, place.code());
    }
}

fn one(place: Place, mm: f64) -> Corners<f64> {
    Corners::from_fn(|p| if p == place { mm } else { 0.0 })
}

fn changes(now: &Corners<f64>, before: &Corners<f64>) -> Corners<f64> {
    Corners::from_fn(|p| now.at(p) - before.at(p))
}

/// Whichever collar is turned, the four loads change in one pattern.
pub fn one_number(figures: &mut Figures) -> String {
    let mut drawing = Drawing::new(960.0, 330.0, "Any collar 5 mm up: the change of the four loads, kg");
    for place in Place::ALL {
        let left = 30.0 + 230.0 * place.index() as f64;
        let then = after(one(place, TURNED_MM), Corners::same(0.0));
        let change = changes(&then.loads_kg, &reading().loads_kg);
        drawing.text(left + 100.0, 80.0, 16.0, At::Middle, INK, &format!("{} collar", place.code()));
        bars(&mut drawing, left, 190.0, 9.0, &change, 1);
        corners_below(&mut drawing, left, 310.0);
        if place == Place::Fl {
            figures.say("one collar turned up by", TURNED_MM, 0, "mm");
            for kg in [change.fl, -change.fr, -change.rl, change.rr] {
                figures.say("load that a corner gains or loses", kg, 1, "kg");
            }
            let (was, now) = (Shares::of(&reading().loads_kg), then.figures);
            figures.say("left share", was.left_pct, 2, "%");
            figures.say("its change by the collar", now.left_pct - was.left_pct, 2, "%");
            figures.say("change of the front share by the collar", now.front_pct - was.front_pct, 2, "%");
            figures.say("change of the cross weight by the collar", now.cross_pct - was.cross_pct, 2, "%");
        }
    }
    drawing.svg()
}

/// All that collars can reach: a line from front even to rear even.
pub fn line(figures: &mut Figures) -> String {
    let mut drawing = Drawing::new(960.0, 300.0, "All that collars can reach with this car: one line");
    let points = trade_line(&car(), &reading().loads_kg, WANTED_PCT).expect("a reading of this car");
    let shown = |mark: Mark| points.iter().find(|point| point.mark == mark).expect("each mark is on the line");
    let x = |along_kg: f64| 480.0 + 42.0 * (along_kg + 6.6);
    let y = 130.0;
    drawing.line((x(-17.0), y), (x(3.8), y), INK, 3.0);
    let now = Shares::of(&reading().loads_kg);
    let mut mark = |along_kg: f64, name: &str, of: &Shares, colour: &str| {
        drawing.dot(x(along_kg), y, 9.0, colour);
        drawing.text(x(along_kg), y - 22.0, 18.0, At::Middle, colour, name);
        let difference = |kg: f64| if kg.abs() < 0.05 { "even".to_owned() } else { format!("{kg:+.1} kg") };
        let rows = [
            format!("cross {:.2} %", of.cross_pct),
            format!("front {}", difference(of.front_diff_kg)),
            format!("rear {}", difference(of.rear_diff_kg)),
        ];
        for (row, says) in rows.iter().enumerate() {
            drawing.text(x(along_kg), y + 36.0 + 24.0 * row as f64, 15.0, At::Middle, INK, says);
        }
    };
    mark(0.0, "as it stands", &now, AMBER);
    let named = [(Mark::FrontEven, "front even"), (Mark::CrossWanted, "cross wanted"), (Mark::RearEven, "rear even")];
    for (which, name) in named {
        mark(shown(which).along_kg, name, &shown(which).figures, BLUE);
    }
    drawing.text(
        480.0,
        270.0,
        14.0,
        At::Middle,
        GREY,
        "Differences are left less right. Left share, front share and total are the same all along.",
    );
    let (front, cross, rear) = (shown(Mark::FrontEven), shown(Mark::CrossWanted), shown(Mark::RearEven));
    figures.say("cross weight wanted", WANTED_PCT, 0, "%");
    figures.say("cross weight where the front is even", front.figures.cross_pct, 2, "%");
    figures.say("cross weight where the rear is even", rear.figures.cross_pct, 2, "%");
    figures.say("front difference at the wanted cross weight", cross.figures.front_diff_kg, 1, "kg");
    figures.say("rear difference there", cross.figures.rear_diff_kg, 1, "kg");
    figures.say("cross weight now", now.cross_pct, 2, "%");
    figures.say("front difference now", now.front_diff_kg, 1, "kg");
    drawing.svg()
}

/// The same change of loads by one collar and by four: only the four leave the car where it stood.
pub fn no_height(figures: &mut Figures) -> String {
    let mut drawing =
        Drawing::new(960.0, 360.0, "Two ways to the wanted cross weight, and what they do to the heights, mm");
    let points = trade_line(&car(), &reading().loads_kg, WANTED_PCT).expect("a reading of this car");
    let wanted = points.iter().find(|point| point.mark == Mark::CrossWanted).expect("it is on the line");
    let four = lift_without_height(&car(), wanted.along_kg);
    // The adjuster ratio of a spring seat is one by the motion ratio.
    let ratio = |place: Place| car().corners.at(place).motion_ratio.expect("entered");
    let four = Corners::from_fn(|p| four.at(p) * ratio(p));
    let per_mm =
        after(one(Place::Fl, -1.0), Corners::same(0.0)).figures.cross_pct - Shares::of(&reading().loads_kg).cross_pct;
    let alone = one(Place::Fl, -(WANTED_PCT - Shares::of(&reading().loads_kg).cross_pct) / per_mm);
    for (left, name, collars) in [(40.0, "FL alone", &alone), (540.0, "all four", &four)] {
        let then = after(*collars, Corners::same(0.0));
        let heights = changes(&then.heights_mm, &reading().heights_mm);
        drawing.text(
            left,
            84.0,
            17.0,
            At::Start,
            INK,
            &format!("{name}: cross weight {:.2} %", then.figures.cross_pct),
        );
        drawing.text(left + 100.0, 112.0, 15.0, At::Middle, GREY, "collar, mm");
        drawing.text(left + 310.0, 112.0, 15.0, At::Middle, GREY, "height, mm");
        bars(&mut drawing, left, 175.0, 14.0, collars, 2);
        bars(&mut drawing, left + 210.0, 175.0, 14.0, &heights, 2);
        corners_below(&mut drawing, left, 340.0);
        corners_below(&mut drawing, left + 210.0, 340.0);
        assert!((then.figures.cross_pct - WANTED_PCT).abs() < 0.01, "both come to the wanted cross weight");
        if name == "FL alone" {
            figures.say("FL collar alone down by", -collars.fl, 1, "mm");
            figures.say("which lowers FL by", -heights.fl, 1, "mm");
        } else {
            let greatest = heights.iter().map(|(_, mm)| mm.abs()).fold(0.0, f64::max);
            figures.say("greatest change of a height by all four", greatest, 2, "mm");
            collars.iter().for_each(|(_, mm)| figures.say("a collar of the four-corner pattern", mm.abs(), 2, "mm"));
        }
    }
    drawing.svg()
}
