//! What connecting a bar's link did to the car: its preload, and the turns of the link that take it out.

use crate::{
    judge::{JudgeError, Judged},
    known::Known,
    tell::Tell,
};
use bayhand_chassis::{From, LinkPreload, LinkTurns, link_preload, link_turns};
use bayhand_vehicle::{Axle, Bar, Bars, Car, Corners, Hand, Lengthening, Link};

/// The preload of an axle's bar, and how its link takes it out.
pub struct Preload {
    /// Which axle.
    pub axle: Axle,
    /// The preload.
    pub found: LinkPreload,
    /// Turns of the link that take it out, positive when they press the left wheel down; none where the bar's rate was not
    /// entered.
    pub turns: Option<(f64, LinkTurns)>,
}

impl Known<'_> {
    /// What the link of this axle did, from the readings before and after it was connected. The front one goes on first:
    /// with the rear one the front bar stands in the car in both readings.
    ///
    /// # Errors
    /// What is not known yet; readings that cannot be.
    pub fn preload(&self, axle: Axle, now: &Judged) -> Result<Preload, JudgeError> {
        let front = match axle {
            Axle::Front => None,
            Axle::Rear => self.reading_set("back.front", false),
        };
        let (before, bars) = match front {
            Some(set) => (set, Bars { front: self.bar(Axle::Front), rear: None }),
            None => (
                self.reading_set("locked", false).ok_or(JudgeError::NotKnown("the reading with the rings locked"))?,
                Bars::default(),
            ),
        };
        if axle == Axle::Rear && before.group == "back.front" && bars.front.is_none() {
            return Err(JudgeError::NotKnown("the rate of the front bar"));
        }
        let before = self.judged(before)?;
        let stands = |judged: &Judged| From {
            collar_mm: Corners::same(0.0),
            pads_mm: Corners::same(0.0),
            loads_kg: judged.loads_kg,
            heights_mm: judged.heights_mm,
        };
        let varying = [&before, now].map(|judged| judged.reading.covariance_kg2(false));
        let difference_kg2 = std::array::from_fn(|i| std::array::from_fn(|j| varying[0][i][j] + varying[1][i][j]));
        // Both readings' heights count; the call takes one spread for either.
        let change_mm = |judged: &Judged| judged.spread_of_heights().change_mm / bayhand_chassis::COVERAGE;
        let height_mm = ((change_mm(&before).powi(2) + change_mm(now).powi(2)) / 4.0).sqrt();
        let car = Car { bars, ..before.car };
        let found = link_preload(&car, axle, &stands(&before), &stands(now), &difference_kg2, height_mm)?;
        let turns = match (self.bar(axle), self.lead_mm(axle)) {
            (Some(bar), Some(lead_mm)) => {
                // Counted at the wheel, and positive when the left wheel is pressed down, as the turns are entered.
                let link = Link {
                    pitch_mm: lead_mm,
                    hand: Hand::Right,
                    opposite_threads: false,
                    link_per_wheel: 1.0,
                    longer: Lengthening::PressesWheelDown,
                };
                let turns = link_turns(&found, bar.n_per_mm, &link)?;
                Some((turns.left_longer_mm / lead_mm, turns))
            }
            _ => None,
        };
        Ok(Preload { axle, found, turns })
    }

    /// The bar of an axle as it was entered, taken to have no preload; none when its rate is not known.
    fn bar(&self, axle: Axle) -> Option<Bar> {
        let n_per_mm = self.value("intake.bars", &format!("{}-bar-rate", code(axle)))?;
        (n_per_mm > 0.0).then_some(Bar { n_per_mm, preload_n: 0.0 })
    }

    /// Change at the wheel for one turn of the link, mm; none when it is not known.
    fn lead_mm(&self, axle: Axle) -> Option<f64> {
        self.value("intake.bars", &format!("{}-link-lead", code(axle))).filter(|mm| *mm > 0.0)
    }
}

impl Preload {
    /// In words.
    pub fn says(&self, tell: &Tell) -> String {
        let mut args = vec![
            ("axle", tell.text(&format!("axle-{}", code(self.axle)), &[])),
            ("force", format!("{:+.0} N", self.found.preload_n)),
            ("u", format!("{:.0} N", self.found.expanded_n)),
        ];
        if self.found.preload_n.abs() <= self.found.expanded_n {
            return tell.text("found-no-preload", &args);
        }
        let Some((turns, found)) = &self.turns else { return tell.text("found-preload", &args) };
        args.push(("turns", tell.turns((turns * 10.0).round() / 10.0)));
        args.push(("uturns", format!("{:.1}", found.expanded_turns)));
        tell.text("found-preload-turns", &args)
    }
}

fn code(axle: Axle) -> &'static str {
    match axle {
        Axle::Front => "front",
        Axle::Rear => "rear",
    }
}
