//! What earlier visits taught about a car.

use super::Desk;
use crate::{ask::Refused, card::Card, known::Known};
use bayhand_planner::Knowledge;

impl Desk {
    /// What the newest sealed job on this car taught; none when there is none or it taught nothing. On a simulated car only
    /// jobs on the same one count.
    pub(super) async fn learned_of(&self, car: &str, seed: Option<u64>) -> Result<Option<Knowledge>, Refused> {
        let jobs = self.book.jobs().await.map_err(|e| self.by_book(&e))?;
        for job in jobs.iter().rev() {
            let card = job.card.as_deref().and_then(Card::read);
            let of_car = |card: Card| card.car == car && card.state == "sealed" && card.practice == seed.is_some();
            if !card.is_some_and(of_car) {
                continue;
            }
            // A record that cannot be read teaches nothing; that it cannot is told where it is opened.
            let Ok(log) = self.read(job.id.0).await else { continue };
            if log.opened.practice.as_ref().map(|p| p.seed) == seed
                && let Some(known) = Known::of(&log).learned()
            {
                return Ok(Some(known));
            }
        }
        Ok(None)
    }
}
