//! The gates of the procedure, computed: pass, fail or cannot tell, and what was found, in words.

mod angles;
mod readings;

use crate::{
    judge::JudgeError,
    known::{Known, axle_of},
    tell::Tell,
};
use bayhand_chassis::{Sensitivity, Verdict};
use bayhand_procedure::{Found, Gate, Kind, PressureKind, Step};
use bayhand_vehicle::{Corners, Place, RatioConvention};
use chrono::{DateTime, FixedOffset, NaiveDate};

/// What a gate found, and what to say of it; nothing is said of a gate that passed without figures.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// Pass, fail or cannot tell.
    pub found: Found,
    /// In words.
    pub says: String,
}

/// Everything that a gate may look at.
pub struct Scene<'a> {
    /// The record with the step at hand on top.
    pub known: &'a Known<'a>,
    /// The step at hand.
    pub step: &'a Step,
    /// What time it is.
    pub now: DateTime<FixedOffset>,
    /// Makes words.
    pub tell: &'a Tell<'a>,
    /// Who records it.
    pub by: &'a str,
}

impl Scene<'_> {
    /// What every gate of the step found, in order.
    pub fn answers(&self) -> Vec<Answer> {
        self.step.gates.iter().map(|gate| self.answer(gate)).collect()
    }

    fn answer(&self, gate: &Gate) -> Answer {
        match gate {
            Gate::ChecksYes => self.checks_yes(),
            Gate::CarPossible => self.car_possible(),
            Gate::InstrumentsInDate => self.instruments_in_date(),
            Gate::InstrumentsResolve => self.instruments_resolve(),
            Gate::SecondPerson { of } => self.second_person(of),
            Gate::CountedBack { of } => self.counted_back(of),
            Gate::PadsLevel => self.pads_level(),
            Gate::PadsStill { since, within_mm } => self.pads_still(since, decimal(within_mm)),
            Gate::Pressures { at, within_bar } => self.pressures(*at, decimal(within_bar)),
            Gate::HeightsNear { within_mm, side_mm } => self.heights_near(decimal(within_mm), decimal(side_mm)),
            Gate::AnglesNear { within_deg } => self.angles_near(decimal(within_deg)),
            Gate::RimsTrue { most_mm } => self.rims_true(decimal(most_mm)),
            Gate::AnglesAgreed => self.angles_agreed(),
            Gate::AnglesResolve => self.angles_resolve(),
            Gate::SettlesAgree { within_kg } => self.settles_agree(decimal(within_kg)),
            Gate::Plausible => self.plausible(),
            Gate::Windows => self.windows(),
            Gate::Unchanged { since } => self.unchanged(since),
            Gate::Waited => self.waited(),
            Gate::TravelLeft => self.travel_left(),
            Gate::BumpGap => self.bump_gap(),
            Gate::SameAs { of, input, within } => self.same_as(of, input, decimal(within)),
        }
    }

    fn pass(&self) -> Answer {
        Answer { found: Found::Pass, says: String::new() }
    }

    fn say(&self, found: Found, id: &str, args: &[(&str, String)]) -> Answer {
        Answer { found, says: self.tell.text(id, args) }
    }

    fn if_else(&self, ok: bool, id: &str, args: &[(&str, String)]) -> Answer {
        if ok { self.pass() } else { self.say(Found::Fail, id, args) }
    }

    /// Something needed for the computation is missing: the gate cannot say.
    fn unknown(&self, why: &JudgeError) -> Answer {
        self.say(Found::CannotTell, "found-unknown", &[("why", why.to_string())])
    }

    fn text(&self, key: &str) -> &str {
        self.known.text(&self.step.id, key).unwrap_or_default()
    }

    fn checks_yes(&self) -> Answer {
        let checks = self.step.inputs.iter().filter(|i| i.kind == Kind::Check);
        let wrong = checks.filter(|i| self.text(&i.id) != "yes").map(|i| self.tell.input(&self.step.id, &i.id));
        let wrong: Vec<_> = wrong.collect();
        self.if_else(wrong.is_empty(), "found-checks", &[("wrong", wrong.join("; "))])
    }

    fn car_possible(&self) -> Answer {
        let total = self.known.value("intake.car", "total").unwrap_or(0.0);
        // Before anything was weighed the mass stands in the middle; what cannot be then cannot be at all.
        match self.known.car(&Corners::same(total / 4.0)) {
            // Its statics refuse values that cannot be, and springs that cannot hold the body upright.
            Ok(car) => match Sensitivity::of(&car) {
                Ok(_) => self.ratio_meant(),
                Err(why) => self.say(Found::Fail, "found-car", &[("why", why.to_string())]),
            },
            Err(JudgeError::Statics(why)) => self.say(Found::Fail, "found-car", &[("why", why.to_string())]),
            Err(why) => self.unknown(&why),
        }
    }

    /// Asks back where a spring would move more than its wheel, unless that was said to be meant.
    fn ratio_meant(&self) -> Answer {
        let Some(ratios) = self.known.ratios() else { return self.pass() };
        let doubtful = ratios
            .into_iter()
            .zip(["axle-front", "axle-rear"])
            .find_map(|(entered, axle)| Some((entered, entered.ask_back()?, self.tell.text(axle, &[]))));
        match doubtful {
            Some((entered, other, axle)) if self.text("ratio-way") != "ratio-above-one" => {
                let other_way = match other.convention {
                    RatioConvention::SpringPerWheel => "option-ratio-spring-per-wheel",
                    RatioConvention::WheelPerSpring => "option-ratio-wheel-per-spring",
                };
                let args = [
                    ("axle", axle),
                    ("value", format!("{}", entered.value)),
                    ("other", self.tell.text(other_way, &[])),
                    ("meant", self.tell.text("option-ratio-above-one", &[])),
                ];
                self.say(Found::Fail, "found-ratio", &args)
            }
            _ => self.pass(),
        }
    }

    fn instruments_in_date(&self) -> Answer {
        let today = self.now.date_naive();
        let keys: Vec<_> = self.step.inputs.iter().filter(|i| i.id.ends_with("-due")).map(|i| i.id.as_str()).collect();
        let mut wrong = Vec::new();
        for key in keys {
            let text = self.text(key).trim();
            let in_date = match NaiveDate::parse_from_str(text, "%Y-%m-%d") {
                Ok(due) => due >= today,
                Err(_) => false,
            };
            if !in_date {
                wrong.push(format!("{}: {text}", self.tell.input(&self.step.id, key)));
            }
        }
        self.if_else(wrong.is_empty(), "found-instruments", &[("wrong", wrong.join("; "))])
    }

    fn second_person(&self, of: &str) -> Answer {
        let other = self.known.last(of).map_or("", |r| r.by);
        self.if_else(other != self.by, "found-second", &[("by", other.to_owned())])
    }

    fn counted_back(&self, of: &str) -> Answer {
        let (off, on) = (self.known.value(of, "parts"), self.known.value(&self.step.id, "parts"));
        let show = |v: Option<f64>| v.map_or("?".to_owned(), |v| format!("{v:.0}"));
        self.if_else(off.is_some() && off == on, "found-counted", &[("off", show(off)), ("on", show(on))])
    }

    fn same_as(&self, of: &str, input: &str, within: f64) -> Answer {
        let (then, now) = (self.known.value(of, input), self.known.value(&self.step.id, input));
        let (Some(then), Some(now)) = (then, now) else {
            return self.unknown(&JudgeError::NotKnown("the first value"));
        };
        let args = [("then", format!("{then:.1}")), ("now", format!("{now:.1}"))];
        self.if_else((then - now).abs() <= within, "found-same", &args)
    }

    fn pressures(&self, at: PressureKind, within: f64) -> Answer {
        let agreed = match at {
            PressureKind::Working => "working",
            PressureKind::Cold => "cold",
        };
        let agreed = self.known.corners("intake.pressures", agreed);
        let (Some(agreed), Some(read)) = (agreed, self.known.corners(&self.step.id, "pressures")) else {
            return self.unknown(&JudgeError::NotKnown("a pressure"));
        };
        // Decimal texts of two places: what is shown as 0.03 apart is 0.03 apart.
        let off = |p: &Place| (read.at(*p) - agreed.at(*p)).abs() > within + 1e-9;
        let line = |p: Place| {
            let (has, wants) = (self.tell.bar(*read.at(p)), self.tell.bar(*agreed.at(p)));
            format!("{} {has} ({wants})", self.tell.corner(p))
        };
        let wrong: Vec<_> = Place::ALL.into_iter().filter(off).map(line).collect();
        let args = [("wrong", wrong.join("; ")), ("within", self.tell.bar(within))];
        self.if_else(wrong.is_empty(), "found-pressures", &args)
    }

    /// True when the person chose to change something first: then the gate has nothing to hold.
    fn changes_first(&self) -> bool {
        !matches!(self.text("next"), "" | "go-on" | "heights-near" | "angles-near" | "angles-good" | "link-right")
    }

    fn heights_near(&self, within: f64, side: f64) -> Answer {
        if self.changes_first() {
            return self.pass();
        }
        let read = self.known.corners(&self.step.id, "heights");
        let (Some(read), Some(wishes)) = (read, self.known.wishes()) else {
            return self.unknown(&JudgeError::NotKnown("a height"));
        };
        let off = Corners::from_fn(|p| read.at(p) - wishes.heights_mm.at(p));
        let worst = off.to_array().into_iter().fold(0.0, |a: f64, b| a.max(b.abs()));
        let sides = (off.fl - off.fr).abs().max((off.rl - off.rr).abs());
        let args = [
            ("worst", self.tell.mm(worst, 1)),
            ("within", self.tell.mm(within, 1)),
            ("sides", self.tell.mm(sides, 1)),
            ("side", self.tell.mm(side, 1)),
        ];
        self.if_else(worst <= within && sides <= side, "found-heights", &args)
    }

    fn waited(&self) -> Answer {
        let wait = self.known.value("intake.place", "wait").unwrap_or(0.0);
        let passed = (self.now - self.known.log.step_began()).num_milliseconds() as f64 / 1000.0;
        let left = (wait - passed).max(0.0).ceil();
        self.if_else(passed >= wait, "found-wait", &[("left", format!("{left:.0} s"))])
    }

    /// A wheel on its bump stop is held whatever was agreed: its loads are those of the stop, not of the spring.
    fn bump_gap(&self) -> Answer {
        let kept_mm = self.known.value("intake.travel", "travel-kept").unwrap_or(0.0);
        let gap_mm =
            |place: Place| self.known.value(&self.step.id, &format!("bump-gap.{}", place.code())).unwrap_or(0.0);
        let short: Vec<_> = Place::ALL
            .into_iter()
            .filter(|p| gap_mm(*p) <= 0.0 || gap_mm(*p) < kept_mm)
            .map(|p| format!("{} {}", self.tell.corner(p), self.tell.mm(gap_mm(p), 1)))
            .collect();
        let args = [("wrong", short.join("; ")), ("kept", self.tell.mm(kept_mm, 1))];
        self.if_else(short.is_empty(), "found-bump-gap", &args)
    }

    fn travel_left(&self) -> Answer {
        let (up, down) =
            (self.known.axles("intake.adjusters", "turns-up"), self.known.axles("intake.adjusters", "turns-down"));
        let (Some(up), Some(down)) = (up, down) else { return self.unknown(&JudgeError::NotKnown("the travel")) };
        let made = self.known.turns_made();
        for place in Place::ALL {
            let key = match self.step.id.strip_prefix("loop.turn-") {
                Some(corner) if corner == place.code() => "turns".to_owned(),
                Some(_) => continue,
                None => format!("turns.{}", place.code()),
            };
            let turns = made.at(place) + self.known.value(&self.step.id, &key).unwrap_or(0.0);
            let (most, least) = (axle_of(place, up.0, up.1), -axle_of(place, down.0, down.1));
            if turns > most || turns < least {
                let args = [
                    ("where", self.tell.corner(place)),
                    ("turns", self.tell.turns(turns)),
                    ("least", self.tell.turns(least)),
                    ("most", self.tell.turns(most)),
                ];
                return self.say(Found::Fail, "found-travel", &args);
            }
        }
        self.pass()
    }
}

fn of_verdict(verdict: Verdict) -> Found {
    match verdict {
        Verdict::Inside => Found::Pass,
        Verdict::Outside => Found::Fail,
        Verdict::CannotTell => Found::CannotTell,
    }
}

fn worse(a: Found, b: Found) -> Found {
    let rank = |f| match f {
        Found::Pass => 0,
        Found::CannotTell => 1,
        Found::Fail => 2,
    };
    if rank(b) > rank(a) { b } else { a }
}

/// A decimal text of the document; the lint has seen to its form.
fn decimal(text: &str) -> f64 {
    text.parse().unwrap_or(0.0)
}
