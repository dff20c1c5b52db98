//! The gates over readings: pads, settles, plausibility, windows, and whether something moved.

use super::{Answer, Scene, of_verdict, worse};
use crate::{
    budget,
    instruments::PLANNED,
    judge::{Against, JudgeError, Judged},
    reading::group_of,
    suspicion,
};
use bayhand_chassis::reading::{Capability, Figure, capability, judge_figure};
use bayhand_chassis::{COVERAGE, PadPlane, Verdict, side_tilt_limit_mm, twist_limit_mm};
use bayhand_procedure::Found;
use bayhand_vehicle::{Axle, Corners, Place};

/// Share of the left side that the side tilt of the pads may pretend, %.
const LEFT_WINDOW_PCT: f64 = 0.2;
/// How far the total may lie from the entered one before a reading is thought unlikely, as a share of it.
const TOTAL_SHARE: f64 = 0.06;
/// How unlike the loads of an axle's two wheels may be before a reading is thought unlikely, as a share of their sum.
const SIDE_SHARE: f64 = 0.35;

impl Scene<'_> {
    /// Readings as planned, by these instruments, on a car that settles as usual: can a figure in the middle of its window
    /// ever be seen to be inside?
    pub(super) fn instruments_resolve(&self) -> Answer {
        let Some(wishes) = self.known.wishes() else { return self.unknown(&JudgeError::NotKnown("a window")) };
        let total = self.known.value("intake.car", "total").unwrap_or(0.0);
        let windows = [
            (Figure::CrossPct, wishes.cross_window_pct),
            (Figure::FrontDiffKg, wishes.axle_window_kg),
            (Figure::RearDiffKg, wishes.axle_window_kg),
        ];
        let found = self.known.car(&Corners::same(total / 4.0)).and_then(|car| {
            let instruments = self.known.instruments(&car)?;
            Ok(capability(&car, &instruments, PLANNED.0, PLANNED.1, &windows)?)
        });
        match found {
            Ok(found) => {
                let short = |c: &&Capability| c.planned >= c.window;
                let lines: Vec<_> = found.iter().filter(short).map(|c| budget::falls_short(c, self.tell)).collect();
                if lines.is_empty() {
                    let u = |at: usize| found.get(at).map_or(0.0, |c| c.planned);
                    let args = [
                        ("u", self.tell.percent(u(0), 2)),
                        ("window", self.tell.percent(wishes.cross_window_pct, 2)),
                        ("axle", self.tell.kg(u(1).max(u(2)))),
                        ("axlewindow", self.tell.kg(wishes.axle_window_kg)),
                    ];
                    self.say(Found::Pass, "found-resolve", &args)
                } else {
                    Answer { found: Found::CannotTell, says: lines.join(" ") }
                }
            }
            Err(why) => self.unknown(&why),
        }
    }

    /// Heights of the pads at a step, mm: the mean of both set-ups of the laser.
    fn pad_heights(&self, step: &str) -> Option<Corners<f64>> {
        let (one, two) = (self.known.corners(step, "set-up-1")?, self.known.corners(step, "set-up-2")?);
        Some(Corners::from_fn(|p| (one.at(p) + two.at(p)) / 2.0))
    }

    /// The pads stand to each other as they did: the laser may stand at another height, so each is held against the mean.
    pub(super) fn pads_still(&self, since: &str, within_mm: f64) -> Answer {
        let (Some(now), Some(then)) = (self.pad_heights(&self.step.id), self.pad_heights(since)) else {
            return self.unknown(&JudgeError::NotKnown("a height of the pads"));
        };
        let moved = Corners::from_fn(|p| now.at(p) - then.at(p));
        let mean = moved.to_array().iter().sum::<f64>() / 4.0;
        let wrong = Place::ALL.into_iter().map(|p| (p, moved.at(p) - mean)).filter(|(_, mm)| mm.abs() > within_mm);
        let wrong: Vec<_> = wrong
            .map(|(p, mm)| {
                self.tell.text("found-pad-at", &[("where", self.tell.corner(p)), ("mm", self.tell.signed_mm(mm))])
            })
            .collect();
        let args = [("wrong", wrong.join("; ")), ("within", self.tell.mm(within_mm, 1))];
        self.if_else(wrong.is_empty(), "found-pads-moved", &args)
    }

    pub(super) fn pads_level(&self) -> Answer {
        let (Some(heights), Some(wishes)) = (self.pad_heights(&self.step.id), self.known.wishes()) else {
            return self.unknown(&JudgeError::NotKnown("a height of the pads"));
        };
        let total = self.known.value("intake.car", "total").unwrap_or(0.0);
        let found = self.known.car(&Corners::same(total / 4.0)).and_then(|car| {
            let plane = PadPlane::of(&car, &heights)?;
            Ok((plane, twist_limit_mm(&car, wishes.cross_window_pct)?, side_tilt_limit_mm(&car, LEFT_WINDOW_PCT)?))
        });
        match found {
            Ok((plane, twist, tilt)) => {
                let ok = plane.twist_mm.abs() <= twist && plane.side_tilt_mm.abs() <= tilt;
                let args = [
                    ("twist", self.tell.mm(plane.twist_mm, 2)),
                    ("twistlimit", self.tell.mm(twist, 2)),
                    ("tilt", self.tell.mm(plane.side_tilt_mm, 2)),
                    ("tiltlimit", self.tell.mm(tilt, 1)),
                ];
                self.say(if ok { Found::Pass } else { Found::Fail }, "found-pads", &args)
            }
            Err(why) => self.unknown(&why),
        }
    }

    fn set_at_hand(&self) -> Result<Judged, JudgeError> {
        let group = group_of(&self.step.id).map(str::to_owned);
        let set = match group {
            Some(group) => self.known.reading_set(&group, false),
            None => self.known.judged_set(),
        };
        self.known.judged(set.ok_or(JudgeError::NotKnown("a reading"))?)
    }

    pub(super) fn settles_agree(&self, within: f64) -> Answer {
        match self.set_at_hand() {
            Ok(judged) => {
                let spread = judged.set.spread_kg();
                let args = [("spread", self.tell.kg(spread)), ("within", self.tell.kg(within))];
                self.if_else(spread <= within, "found-settles", &args)
            }
            Err(why) => self.unknown(&why),
        }
    }

    pub(super) fn plausible(&self) -> Answer {
        let total = self.known.value("intake.car", "total").unwrap_or(0.0);
        let loads = Place::ALL.map(|p| {
            let looks = self.known.looks(&self.step.id, &format!("loads.{}", p.code()));
            looks.iter().sum::<f64>() / looks.len().max(1) as f64
        });
        let sum: f64 = loads.iter().sum();
        if (sum - total).abs() > TOTAL_SHARE * total {
            let args = [("sum", self.tell.kg(sum)), ("total", self.tell.kg(total))];
            return self.say(Found::Fail, "found-total", &args);
        }
        for (axle, left, right) in [("front", loads[0], loads[1]), ("rear", loads[2], loads[3])] {
            if (left - right).abs() > SIDE_SHARE * (left + right) {
                let axle = self.tell.text(&format!("axle-{axle}"), &[]);
                let args = [("axle", axle), ("left", self.tell.kg(left)), ("right", self.tell.kg(right))];
                return self.say(Found::Fail, "found-sides", &args);
            }
        }
        self.fits_together()
    }

    /// The reading at hand against those before it. A person decides: it cannot be told from here what happened.
    fn fits_together(&self) -> Answer {
        let Some(set) = group_of(&self.step.id).and_then(|group| self.known.reading_set(group, false)) else {
            return self.unknown(&JudgeError::NotKnown("a reading"));
        };
        match self.known.fit_together(&set) {
            Ok(found) if found.consistent => self.pass(),
            Ok(found) => {
                let causes = suspicion::causes(&found, self.tell);
                self.say(Found::Fail, "found-unlike", &[("causes", causes)])
            }
            Err(why) => self.unknown(&why),
        }
    }

    pub(super) fn windows(&self) -> Answer {
        if self.changes_first() {
            return self.pass();
        }
        let Some(wishes) = self.known.wishes() else { return self.unknown(&JudgeError::NotKnown("a window")) };
        let judged = match self.set_at_hand() {
            Ok(judged) => judged,
            Err(why) => return self.unknown(&why),
        };
        let checks = [
            ("figure-first", judged.first(&wishes), Some(wishes.first.figure())),
            ("figure-side-front", judged.side(&wishes, Place::Fl, Place::Fr), None),
            ("figure-side-rear", judged.side(&wishes, Place::Rl, Place::Rr), None),
        ];
        let mut found = Found::Pass;
        let mut lines = Vec::new();
        for (name, against, figure) in checks {
            let verdict = against.verdict().unwrap_or(Verdict::Inside);
            found = worse(found, of_verdict(verdict));
            if verdict != Verdict::Inside {
                lines.push(self.window_line(name, &against, figure, verdict));
                let judgement = figure
                    .zip(against.wanted)
                    .map(|(figure, (target, window))| (figure, judge_figure(&judged.reading, figure, target, window)));
                lines.extend(judgement.and_then(|(figure, j)| budget::helps(&j, figure, self.tell)));
            }
        }
        if found == Found::Pass { self.pass() } else { Answer { found, says: lines.join(" ") } }
    }

    fn window_line(&self, name: &str, against: &Against, figure: Option<Figure>, verdict: Verdict) -> String {
        let show = |v: f64| figure.map_or_else(|| self.tell.mm(v, 1), |figure| budget::value(figure, v, self.tell));
        let (target, window) = against.wanted.unwrap_or((0.0, 0.0));
        let args = [
            ("name", self.tell.text(name, &[])),
            ("value", show(against.value)),
            ("u", show(against.u)),
            ("target", show(target)),
            ("window", show(window)),
            ("verdict", self.tell.verdict(verdict)),
        ];
        self.tell.text("found-window", &args)
    }

    /// Loads and heights equal to the earlier ones within what settles can do: twice the standard uncertainty of the
    /// difference, what is constant over the job left out.
    pub(super) fn unchanged(&self, since: &str) -> Answer {
        if self.changes_first() {
            return self.pass();
        }
        let before = match group_of(since) {
            Some(group) => self.known.reading_set(group, false),
            None => self.known.judged_set(),
        };
        let before =
            before.ok_or(JudgeError::NotKnown("the reading to compare with")).and_then(|s| self.known.judged(s));
        let (before, now) = match (before, self.set_at_hand()) {
            (Ok(before), Ok(now)) => (before, now),
            (Err(why), _) | (_, Err(why)) => return self.unknown(&why),
        };
        let variance = |judged: &Judged, p: Place| judged.reading.covariance_kg2(false)[p.index()][p.index()];
        let change_mm = |judged: &Judged| judged.spread_of_heights().change_mm;
        // A change of two readings of one kind is the root of two of what one of them leaves.
        let height_u = (change_mm(&before).powi(2) / 2.0 + change_mm(&now).powi(2) / 2.0).sqrt();
        let mut wrong = Vec::new();
        for place in Place::ALL {
            let load = now.loads_kg.at(place) - before.loads_kg.at(place);
            let height = now.heights_mm.at(place) - before.heights_mm.at(place);
            let u = COVERAGE * (variance(&before, place) + variance(&now, place)).sqrt();
            // Three standard uncertainties: eight values are compared at once, and a false alarm costs an hour.
            if load.abs() > 1.5 * u || height.abs() > 1.5 * height_u {
                let args = [
                    ("where", self.tell.corner(place)),
                    ("load", self.tell.signed_kg(load)),
                    ("height", self.tell.signed_mm(height)),
                    ("u", self.tell.kg(1.5 * u)),
                    ("hu", self.tell.mm(1.5 * height_u, 1)),
                ];
                wrong.push(self.tell.text("found-moved-at", &args));
            }
        }
        let mut answer = self.if_else(wrong.is_empty(), "found-moved", &[("wrong", wrong.join("; "))]);
        let axle = match group_of(&self.step.id) {
            Some("back.front") => Axle::Front,
            Some("back.rear") => Axle::Rear,
            _ => return answer,
        };
        let preload = match self.known.preload(axle, &now) {
            Ok(preload) => preload.says(self.tell),
            Err(why) => self.tell.text("found-preload-unknown", &[("why", why.to_string())]),
        };
        answer.says = [answer.says, preload].into_iter().filter(|says| !says.is_empty()).collect::<Vec<_>>().join(" ");
        answer
    }
}
