//! What the instruments of the alignment show at the practice car.

use super::{Bench, one, two};
use bayhand_practice::{Configuration, PracticeError};
use bayhand_vehicle::Place;

type Shows = Option<(&'static str, String)>;

impl Bench<'_> {
    /// What is shown for an input of a step of the alignment; `suffix` is its corner or axle.
    pub(super) fn angles(
        &self,
        step: &str,
        input: &str,
        suffix: &str,
        set: &Configuration,
    ) -> Result<Shows, PracticeError> {
        let place = Place::ALL.into_iter().find(|p| p.code() == suffix);
        Ok(match (step, place) {
            ("align.runout", Some(place)) => self.run_out(input, place, set),
            ("align.runout", None) => {
                let [direct, turned] = self.car.gauge_reversed_seen(0);
                Some(("shows-angle-gauge", two(if input == "gauge-direct" { direct } else { turned })))
            }
            ("align.lines", _) => Some(("shows-tape", one(self.line(input)))),
            ("align.caster", Some(place)) => self.sweep(input, place, set)?,
            (_, Some(place)) => self.wheel(input, place, set)?,
            (_, None) => None,
        })
    }

    fn run_out(&self, input: &str, place: Place, set: &Configuration) -> Shows {
        let seen = *self.car.run_out_seen(set, self.settle(), 0).at(place);
        Some(match input {
            "runout-camber-up" => ("shows-angle-gauge", two(seen.camber_deg[0])),
            "runout-camber-down" => ("shows-angle-gauge", two(seen.camber_deg[1])),
            "runout-edge-up" => ("shows-rule", one(seen.edge_mm[0])),
            _ => ("shows-rule", one(seen.edge_mm[1])),
        })
    }

    fn line(&self, input: &str) -> f64 {
        let lines = self.car.lines_seen(self.set_ups());
        match input {
            "lines-front" => lines.front_mm,
            "lines-rear" => lines.rear_mm,
            "lines-apart" => lines.apart_mm,
            _ => self.car.rim_mm(),
        }
    }

    fn wheel(&self, input: &str, place: Place, set: &Configuration) -> Result<Shows, PracticeError> {
        let seen = self.car.wheels_seen(set, self.settle(), self.set_ups().saturating_sub(1), 0)?;
        let seen = seen.at(place);
        Ok(Some(match input {
            "camber" => ("shows-angle-gauge", two(seen.camber_deg)),
            "edge-front" => ("shows-rule", one(seen.front_mm)),
            "edge-rear" => ("shows-rule", one(seen.rear_mm)),
            _ => ("shows-rule", one(seen.hub_mm)),
        }))
    }

    fn sweep(&self, input: &str, place: Place, set: &Configuration) -> Result<Shows, PracticeError> {
        let seen = self.car.sweep_seen(set, self.settle(), 0)?;
        let seen = if place.is_left() { seen.left } else { seen.right };
        let side = usize::from(input.starts_with("sweep-right"));
        Ok(Some(if input.ends_with("plate") {
            ("shows-plate", one(seen.plate_deg[side]))
        } else {
            ("shows-angle-gauge", two(seen.gauge_deg[side]))
        }))
    }

    /// How often the lines were set up.
    fn set_ups(&self) -> u64 {
        self.known.recordings().iter().filter(|r| r.step == "align.lines").count() as u64
    }
}
