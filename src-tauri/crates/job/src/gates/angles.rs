//! The gates over angles: near enough before the balance, inside their windows after it, and whether the instruments can
//! ever tell.

use super::{Answer, Scene, of_verdict, worse};
use crate::align::{Agreed, Aligned, Row, USUAL_RIM_MM};
use crate::judge::JudgeError;
use crate::known::axle_of;
use crate::show::{angle_name, angle_with_u};
use bayhand_chassis::Verdict;
use bayhand_chassis::align::KnownAngle;
use bayhand_procedure::Found;
use bayhand_vehicle::{Corners, Place};

/// More than this between the wheels of an axle is seldom wear or setting, degrees (common practice, no source).
const ONE_SIDED_DEG: f64 = 0.75;

impl Scene<'_> {
    /// Camber of each wheel and total toe of each axle as read roughly: near what was agreed.
    pub(super) fn angles_near(&self, within: f64) -> Answer {
        if self.changes_first() {
            return self.pass();
        }
        let (camber, toe) = (self.known.corners(&self.step.id, "camber"), self.known.corners(&self.step.id, "toe"));
        let (Some(camber), Some(toe), Some(agreed)) = (camber, toe, self.known.agreed_angles()) else {
            return self.unknown(&JudgeError::NotKnown("an angle"));
        };
        let mut wrong = Vec::new();
        let mut check = |id: &str, place: String, read: f64, target: f64| {
            if (read - target).abs() > within + 1e-9 {
                let args = [("where", place), ("has", self.tell.deg(read)), ("wants", self.tell.deg(target))];
                wrong.push(self.tell.text(id, &args));
            }
        };
        for place in Place::ALL {
            let target = axle_of(place, agreed.camber_deg.0, agreed.camber_deg.1);
            check("found-camber-at", self.tell.corner(place), *camber.at(place), target);
        }
        // Total toe of an axle: the sum of its wheels (ISO 8855:2011, 7.1.7).
        for (axle, total, one) in
            [("front", toe.fl + toe.fr, agreed.toe_deg.0), ("rear", toe.rl + toe.rr, agreed.toe_deg.1)]
        {
            check("found-toe-at", self.tell.text(&format!("axle-{axle}"), &[]), total, 2.0 * one);
        }
        let args = [("wrong", wrong.join("; ")), ("within", self.tell.deg(within))];
        let mut answer = self.if_else(wrong.is_empty(), "found-angles", &args);
        let apart = |left: Place, right: Place| {
            let by = |of: &Corners<f64>| (of.at(left) - of.at(right)).abs();
            by(&camber).max(by(&toe))
        };
        for (axle, deg) in [("front", apart(Place::Fl, Place::Fr)), ("rear", apart(Place::Rl, Place::Rr))] {
            if answer.found != Found::Pass && deg > ONE_SIDED_DEG {
                let axle = self.tell.text(&format!("axle-{axle}"), &[]);
                let args = [("axle", axle), ("deg", self.tell.deg(deg))];
                answer.says = format!("{} {}", answer.says, self.tell.text("found-one-sided", &args));
            }
        }
        answer
    }

    /// Each rim, from two readings half a turn apart: between its nearest and its furthest place. A rim of another size than
    /// the usual one is told a quarter wrong at most, which is enough to tell a bent one.
    pub(super) fn rims_true(&self, most_mm: f64) -> Answer {
        let run_out = |place: Place| {
            let of = |input: &str| self.known.value(&self.step.id, &format!("{input}.{}", place.code()));
            let lean_deg = of("runout-camber-up")? - of("runout-camber-down")?;
            // The edge goes to and fro by the toe part of the lean; the gauge tells the part with the top out.
            let by_edge_mm = of("runout-edge-up")? - of("runout-edge-down")?;
            let by_gauge_mm = USUAL_RIM_MM * (lean_deg / 2.0).to_radians().tan();
            Some((place, by_edge_mm.hypot(by_gauge_mm)))
        };
        let Some(rims) = Place::ALL.into_iter().map(run_out).collect::<Option<Vec<_>>>() else {
            return self.unknown(&JudgeError::NotKnown("a reading of a rim"));
        };
        let bent = rims.into_iter().filter(|(_, mm)| *mm > most_mm);
        let wrong = bent.map(|(place, mm)| {
            self.tell.text("found-rim-at", &[("where", self.tell.corner(place)), ("mm", self.tell.mm(mm, 1))])
        });
        let wrong: Vec<_> = wrong.collect();
        let args = [("wrong", wrong.join("; ")), ("most", self.tell.mm(most_mm, 1))];
        self.if_else(wrong.is_empty(), "found-rims", &args)
    }

    /// Every angle inside its window, with what is known of it.
    pub(super) fn angles_agreed(&self) -> Answer {
        if self.changes_first() {
            return self.pass();
        }
        let reads = self.step.inputs.iter().any(|input| input.id == "camber");
        match self.known.aligned(if reads { &self.step.id } else { "align.read" }) {
            Ok(aligned) => self.all_inside(&aligned),
            Err(why) => self.unknown(&why),
        }
    }

    fn all_inside(&self, aligned: &Aligned) -> Answer {
        let mut found = Found::Pass;
        let mut lines = Vec::new();
        for row in &aligned.rows {
            let verdict = row.verdict();
            found = worse(found, of_verdict(verdict));
            if verdict != Verdict::Inside {
                lines.push(self.row_line(row, verdict));
            }
        }
        if found == Found::Pass {
            return self.pass();
        }
        self.say(found, "found-angles-agreed", &[("wrong", lines.join("; "))])
    }

    fn row_line(&self, row: &Row, verdict: Verdict) -> String {
        let args = [
            ("name", angle_name(row.angle, row.place, self.tell)),
            ("value", angle_with_u(row.is.deg, row.is.expanded_deg(), self.tell)),
            ("target", self.tell.deg(row.target_deg)),
            ("window", self.tell.deg(row.window_deg)),
            ("verdict", self.tell.verdict(verdict)),
        ];
        self.tell.text("found-angle-at", &args)
    }

    /// As planned, with these instruments: can an angle in the middle of its window ever be seen to be inside?
    pub(super) fn angles_resolve(&self) -> Answer {
        let (Some(agreed), Some(instruments)) = (self.known.agreed_angles(), self.known.angle_instruments()) else {
            return self.unknown(&JudgeError::NotKnown("an accuracy"));
        };
        let wheelbase_mm = self.known.value("intake.car", "wheelbase").unwrap_or(0.0);
        match instruments.planned(wheelbase_mm, &agreed) {
            Ok(planned) => self.resolve(&agreed, &planned),
            Err(why) => self.unknown(&JudgeError::Statics(why)),
        }
    }

    fn resolve(&self, agreed: &Agreed, [toe, camber, caster]: &[KnownAngle; 3]) -> Answer {
        let enough = toe.expanded_deg() < agreed.toe_window_deg
            && camber.expanded_deg() < agreed.window_deg
            && caster.expanded_deg() < agreed.caster_window_deg;
        let args = [
            ("toe", self.tell.deg(toe.expanded_deg())),
            ("toewindow", self.tell.deg(agreed.toe_window_deg)),
            ("camber", self.tell.deg(camber.expanded_deg())),
            ("caster", self.tell.deg(caster.expanded_deg())),
            ("window", self.tell.deg(agreed.window_deg)),
            ("casterwindow", self.tell.deg(agreed.caster_window_deg)),
        ];
        self.say(if enough { Found::Pass } else { Found::CannotTell }, "found-angles-resolve", &args)
    }
}
