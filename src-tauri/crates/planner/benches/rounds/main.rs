//! Rounds until inside: the planner on simulated cars, beside two models of habit and a reference filter.
//!
//! A car is read, a plan is made, collars are turned, and the car is read again. What counts is where the car truly
//! stands, friction apart: a car is inside after `n` rounds when its true cross weight has come inside the window after
//! `n` turnings or fewer. Every way of working sees the same cars; readings differ only by their draws.
//!
//! - [`class`]: the cars, what of them is hidden, and what a reading shows.
//! - [`ours`]: the planner, told only what a person at the car would enter.
//! - [`habit`]: one corner at a time by a rule of thumb that adapts, and all four corners by quarter turns. Each has one
//!   parameter, tuned on the same cars, which no person could do.
//! - [`reference`]: told the true noise and the true prior; a particle filter that shares no code with the planner. Where
//!   nothing is entered it also runs told no more of the car than the planner is: what nobody knows nobody can use.

mod class;
#[path = "../../tests/common/mod.rs"]
mod common;
mod habit;
mod ours;
mod reference;

use class::{CLASSES, Class, Subject};

const CARS: u64 = 1_000;

/// A way of working: turns collars (whole steps) by what was read.
pub trait Work {
    /// The readings since the last turning, the oldest first, and what was turned before them.
    fn turn(&mut self, subject: &Subject, class: &Class, readings: &[class::Reading], turned: [i32; 4]) -> [i32; 4];
}

/// Rounds after which the car was first inside, ten when it never was, and the greatest side-to-side height difference.
fn rounds(subject: &Subject, class: &Class, work: &mut dyn Work) -> (usize, f64) {
    let mut draws = common::Random(subject.seed.wrapping_mul(3) + 1);
    let (mut collars, mut turned) = ([0; 4], [0; 4]);
    let mut greatest_mm = 0.0_f64;
    for round in 1..=10 {
        let readings: Vec<_> = (0..class.settles).map(|_| subject.read(&collars, class, &mut draws)).collect();
        turned = work.turn(subject, class, &readings, turned);
        for (collar, steps) in collars.iter_mut().zip(turned) {
            *collar += steps;
        }
        let (cross_pct, side_mm) = subject.truly(&collars);
        greatest_mm = greatest_mm.max(side_mm);
        if (cross_pct - 50.0).abs() <= class.window_pct {
            return (round, greatest_mm);
        }
    }
    (10, greatest_mm)
}

/// Share (%) of the cars inside after one round and after two, the 95th percentile of rounds, the greatest difference.
struct Score {
    one: f64,
    two: f64,
    percentile_95: usize,
    greatest_mm: f64,
}

fn score(subjects: &[Subject], class: &Class, make: impl Fn() -> Box<dyn Work>) -> Score {
    let seen: Vec<(usize, f64)> = subjects.iter().map(|subject| rounds(subject, class, &mut *make())).collect();
    let share = |most: usize| 100.0 * seen.iter().filter(|(n, _)| *n <= most).count() as f64 / seen.len() as f64;
    let mut numbers: Vec<usize> = seen.iter().map(|(n, _)| *n).collect();
    numbers.sort_unstable();
    Score {
        one: share(1),
        two: share(2),
        percentile_95: numbers[numbers.len() * 95 / 100],
        greatest_mm: seen.iter().map(|(_, mm)| *mm).fold(0.0, f64::max),
    }
}

fn print(who: &str, score: &Score) {
    let Score { one, two, percentile_95, greatest_mm } = score;
    println!("  {who:<44} {one:6.1} % {two:6.1} %   {percentile_95:>4} {greatest_mm:9.1} mm");
}

/// A line for the table of all benchmarks.
fn compare(class: &Class, ours: &Score, with: &str, theirs: &Score, aim: &str) {
    let (name, here, there) = (class.name, ours.two, theirs.two);
    println!(
        "table: inside after 2 rounds, {name} | {here:.1} % | {with} | {there:.1} % | {:.2} | {aim}",
        here / there
    );
}

fn main() {
    println!("Rounds until the true cross weight is inside; {CARS} cars a class.");
    println!(
        "Columns: inside after 1 round, after 2, 95th percentile of rounds, greatest side-to-side height difference."
    );
    // The first word that is no option of cargo's: only classes whose name has it.
    let only = std::env::args().skip(1).find(|word| !word.starts_with("--")).unwrap_or_default();
    for class in CLASSES.iter().filter(|class| class.name.contains(&only)) {
        println!("\n{} (seeds {} to {})", class.name, class.seed, class.seed + CARS - 1);
        let subjects: Vec<Subject> = (0..CARS).map(|i| Subject::of(class.seed + i, class)).collect();
        if let Some((one, two)) = class.aim {
            println!("  {:<44} {one:6.1} % {two:6.1} %", "aim");
        }
        let ours = score(&subjects, class, || Box::new(ours::Ours::default()));
        print("ours", &ours);
        let reference = score(&subjects, class, || Box::new(reference::Reference::told(class)));
        print("reference, told noise and prior", &reference);
        if class.off == class::Off::Withheld {
            let no_more = score(&subjects, class, || Box::new(reference::Reference::told_no_more(class)));
            print("reference, told noise and what ours is told", &no_more);
            compare(class, &ours, "reference that is told noise and no more of the car", &no_more, "");
        }
        let aim = class.aim.map(|(_, two)| format!("{two} %")).unwrap_or_default();
        compare(class, &ours, "reference that is told noise and prior", &reference, &aim);
        let tuned = |name: &str, values: &[f64], make: &dyn Fn(f64) -> Box<dyn Work>| {
            let scores = values.iter().map(|value| (*value, score(&subjects, class, || make(*value))));
            let best = scores.max_by(|a, b| (a.1.two + a.1.one * 1e-3).total_cmp(&(b.1.two + b.1.one * 1e-3)));
            if let Some((value, score)) = best {
                print(&format!("{name}, tuned to {value:.2}"), &score);
                compare(class, &ours, &format!("habit: {name}, tuned"), &score, "");
            }
        };
        let grid: Vec<f64> = (2..=20).map(|i| 0.03 * f64::from(i)).collect();
        tuned("one corner at a time, % per mm", &grid, &|value| Box::new(habit::OneCorner::of(value)));
        tuned("four corners, % per quarter turn", &grid, &|value| Box::new(habit::FourCorners::of(value)));
    }
}
