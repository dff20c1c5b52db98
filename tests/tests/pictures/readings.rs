//! What a level pad and another settle are worth.

use super::drawing::{AMBER, At, BLUE, Drawing, GREY, INK};
use super::example::{WINDOW_PCT, after, car, instruments, reading};
use super::figures::Figures;
use bayhand_chassis::reading::{Figure, Reading, Source};
use bayhand_chassis::{Figures as Shares, twist_limit_mm};
use bayhand_vehicle::Corners;

/// Axes of a diagram, and where a value lies on them.
struct Axes {
    most: (f64, f64),
}

impl Axes {
    const LEFT: f64 = 90.0;
    const RIGHT: f64 = 700.0;
    const TOP: f64 = 100.0;
    const BOTTOM: f64 = 350.0;

    fn draw(drawing: &mut Drawing, most: (f64, f64), ticks: (&[f64], &[f64]), names: (&str, &str)) -> Self {
        let axes = Self { most };
        for x in ticks.0 {
            let at = axes.at(*x, 0.0);
            drawing.line(at, (at.0, at.1 + 6.0), INK, 1.0);
            drawing.text(at.0, at.1 + 24.0, 14.0, At::Middle, INK, &format!("{x}"));
        }
        for y in ticks.1 {
            let at = axes.at(0.0, *y);
            drawing.line((at.0 - 6.0, at.1), at, INK, 1.0);
            drawing.text(at.0 - 12.0, at.1 + 5.0, 14.0, At::End, INK, &format!("{y}"));
        }
        drawing.line((Self::LEFT, Self::BOTTOM), (Self::RIGHT, Self::BOTTOM), INK, 1.5);
        drawing.line((Self::LEFT, Self::TOP), (Self::LEFT, Self::BOTTOM), INK, 1.5);
        drawing.text((Self::LEFT + Self::RIGHT) / 2.0, Self::BOTTOM + 50.0, 15.0, At::Middle, INK, names.0);
        drawing.text(Self::LEFT - 60.0, Self::TOP - 24.0, 15.0, At::Start, INK, names.1);
        axes
    }

    fn at(&self, x: f64, y: f64) -> (f64, f64) {
        let across = (Self::RIGHT - Self::LEFT) * x / self.most.0;
        (Self::LEFT + across, Self::BOTTOM - (Self::BOTTOM - Self::TOP) * y / self.most.1)
    }
}

fn half_the_window(drawing: &mut Drawing, axes: &Axes) {
    let (x, y) = axes.at(axes.most.0, WINDOW_PCT);
    drawing.dashed(axes.at(0.0, WINDOW_PCT), (x, y), GREY);
    drawing.text(x + 10.0, y + 5.0, 15.0, At::Start, GREY, "half the window");
}

/// What a pad that is not level does to the cross weight.
pub fn level_pad(figures: &mut Figures) -> String {
    let mut drawing = Drawing::new(960.0, 430.0, "What pads that are not level do to the cross weight");
    let axes = Axes::draw(
        &mut drawing,
        (3.0, 0.8),
        (&[0.0, 1.0, 2.0, 3.0], &[0.0, 0.2, 0.4, 0.6, 0.8]),
        ("mm too high", "change of cross weight, %"),
    );
    let was = Shares::of(&reading().loads_kg);
    let level = Corners::same(0.0);
    let one = |mm: f64| after(level, Corners { fl: mm, ..level });
    let side = |mm: f64| after(level, Corners { fl: mm, rl: mm, ..level });
    let change = |of: &Shares| (of.cross_pct - was.cross_pct).abs();
    let curve = |of: &dyn Fn(f64) -> f64| {
        (0..=30).map(|n| axes.at(f64::from(n) / 10.0, of(f64::from(n) / 10.0))).collect::<Vec<_>>()
    };
    half_the_window(&mut drawing, &axes);
    drawing.curve(&curve(&|mm| change(&one(mm).figures)), BLUE);
    drawing.curve(&curve(&|mm| change(&side(mm).figures)), AMBER);
    let ends =
        [(change(&one(3.0).figures), BLUE, "one pad"), (change(&side(3.0).figures), AMBER, "both pads of one side")];
    for (pct, colour, name) in ends {
        let (x, y) = axes.at(3.0, pct);
        drawing.text(x + 10.0, y + 2.0, 16.0, At::Start, colour, name);
    }
    let (one, side) = (one(1.0), side(1.0));
    figures.say("a pad too high by", 1.0, 0, "mm");
    figures.say("load that it takes", (one.loads_kg.fl - reading().loads_kg.fl).abs(), 1, "kg");
    figures.say("change of the cross weight by it", change(&one.figures), 2, "%");
    figures.say("by both pads of a side", change(&side.figures), 3, "%");
    let left = |of: &Corners<f64>| of.fl + of.rl;
    figures.say(
        "left less right by both pads of a side",
        2.0 * (left(&side.loads_kg) - left(&reading().loads_kg)).abs(),
        1,
        "kg",
    );
    figures.say("half the window", WINDOW_PCT, 1, "%");
    figures.say("a pad off by this uses it up", twist_limit_mm(&car(), WINDOW_PCT).expect("a window"), 1, "mm");
    drawing.svg()
}

/// How well the cross weight is known after so many looks at one settle, and after so many settles.
pub fn settles(figures: &mut Figures) -> String {
    const MOST: u32 = 8;
    let mut drawing = Drawing::new(960.0, 430.0, "How well the cross weight is known after so many readings");
    let axes = Axes::draw(
        &mut drawing,
        (8.0, 0.4),
        (&[1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0], &[0.0, 0.1, 0.2, 0.3, 0.4]),
        ("readings", "expanded uncertainty (k = 2), %"),
    );
    let once = Reading::of(&car(), &instruments(), &reading().loads_kg, 1, 1).expect("such instruments can be");
    let known = |looks: u32, settles: u32| once.repeated(looks, settles).budget(Figure::CrossPct).expanded;
    half_the_window(&mut drawing, &axes);
    let by_looks = (1..=MOST).map(|n| known(n, 1)).collect();
    let by_settles = (1..=MOST).map(|n| known(1, n)).collect();
    let curves: [(_, _, Vec<f64>); 2] =
        [("looks at one settle", AMBER, by_looks), ("settles, one look each", BLUE, by_settles)];
    for (name, colour, known) in curves {
        let points: Vec<_> = (1..=MOST).zip(known).map(|(n, known)| axes.at(f64::from(n), known)).collect();
        drawing.curve(&points, colour);
        points.iter().for_each(|(x, y)| drawing.dot(*x, *y, 4.0, colour));
        let (x, y) = points[points.len() - 1];
        drawing.text(x + 12.0, y + 5.0, 16.0, At::Start, colour, name);
    }
    let budget = once.budget(Figure::CrossPct);
    let share = |of: Source| budget.parts.iter().filter(|part| part.source == of).map(|part| part.share).sum::<f64>();
    figures.say("part of friction in one reading", 100.0 * share(Source::Friction), 0, "%");
    figures.say("part of looks in one reading", 100.0 * share(Source::Looks), 0, "%");
    figures.say("spread of a look at a pad", instruments().pad_look_kg, 2, "kg");
    figures.say("spread of a settle at FL", instruments().settle_kg, 1, "kg");
    let readings = [("one reading", 1, 1), ("8 looks", 8, 1), ("2 settles", 1, 2), ("4 settles", 1, 4)];
    for (what, looks, settles) in readings {
        figures.say(what, known(looks, settles), 2, "%");
    }
    drawing.svg()
}
