//! The book by its cars and instruments: who was here, with what was measured, and what earlier visits taught about a car.

use super::{Desk, listing::Listed};
use crate::{
    ask::Refused,
    known::Known,
    log::Log,
    show,
    view::{CarRow, CarView, CarsView, InstrumentsView},
};
use bayhand_planner::Knowledge;
use std::collections::BTreeMap;

/// A car as the book tells it: its name, and the seed of a simulated one. Two simulated cars of one name are two.
type Car = (String, Option<u64>);

impl Desk {
    /// The cars of the book whose name, people or jobs hold the searched text (any, when it is empty), the one that was here
    /// last first.
    ///
    /// # Errors
    /// The book cannot be read.
    pub async fn cars(&self, search: &str) -> Result<CarsView, Refused> {
        let _ordered = self.open.lock().await;
        let tell = self.tell();
        let all = self.visits().await?;
        let wanted = search.trim().to_lowercase();
        let holds = |name: &str, visits: &[Listed]| {
            let cards = visits.iter().filter_map(|visit| visit.card.as_ref().ok());
            let people = cards.flat_map(|card| card.people.iter().map(|one| one.to_lowercase()));
            name.to_lowercase().contains(&wanted)
                || people.into_iter().any(|one| one == wanted)
                || visits.iter().any(|visit| visit.id.to_string() == wanted)
        };
        let mut found: Vec<_> = all.iter().filter(|((name, _), visits)| holds(name, visits)).collect();
        // Jobs are listed the newest first, so each car's first one here is its newest.
        found.sort_by_key(|(_, visits)| std::cmp::Reverse(visits.first().map_or(0, |visit| visit.id)));
        let row = |((name, seed), visits): (&Car, &Vec<Listed>)| {
            let (newest, first) = (visits.first()?, visits.last()?);
            let last = show::card_row(newest.id, newest.card.as_ref().ok()?, &tell).says;
            let args = [("count", visits.len().to_string()), ("last", last)];
            let simulated = seed.map(|seed| tell.text("car-practice", &[("seed", seed.to_string())]));
            let says =
                [simulated, Some(tell.text("car-row", &args))].into_iter().flatten().collect::<Vec<_>>().join(" ");
            Some(CarRow { id: first.id, name: name.clone(), says })
        };
        let cars: Vec<CarRow> = found.into_iter().filter_map(row).collect();
        let says = match (all.is_empty(), cars.is_empty()) {
            (true, _) => Some("cars-empty"),
            (false, true) => Some("cars-not-found"),
            _ => None,
        };
        Ok(CarsView { says: says.map(|id| tell.text(id, &[])), cars })
    }

    /// One car, by the number of its first job.
    ///
    /// # Errors
    /// There is no such car, or a job cannot be read.
    pub async fn car(&self, id: i64) -> Result<CarView, Refused> {
        let _ordered = self.open.lock().await;
        let all = self.visits().await?;
        let visits = all.values().find(|visits| visits.last().is_some_and(|first| first.id == id));
        let mut logs = Vec::new();
        for visit in visits.into_iter().flatten() {
            logs.push(self.read(visit.id).await?);
        }
        show::car(&logs, &self.clock.now(), &self.tell()).ok_or_else(|| self.refuse("no-such-car"))
    }

    /// The instruments of the book, from every job that can be read.
    ///
    /// # Errors
    /// The book cannot be read.
    pub async fn instruments(&self) -> Result<InstrumentsView, Refused> {
        let _ordered = self.open.lock().await;
        let mut logs = Vec::new();
        for listed in self.listed_jobs().await {
            // That a job cannot be read is told where it is opened.
            logs.extend(self.read(listed.id).await.ok());
        }
        Ok(show::instruments(&logs, self.clock.now().date_naive(), &self.tell()))
    }

    /// The jobs of each car, the newest first. A job that cannot be read is the list's affair.
    async fn visits(&self) -> Result<BTreeMap<Car, Vec<Listed>>, Refused> {
        let mut cars: BTreeMap<Car, Vec<Listed>> = BTreeMap::new();
        for listed in self.listed_jobs().await {
            let Ok(card) = &listed.card else { continue };
            // The card tells that a car is simulated, its opening which one.
            let seed = if card.practice { self.read(listed.id).await.ok().and_then(|log| seed_of(&log)) } else { None };
            cars.entry((card.car.clone(), seed)).or_default().push(listed);
        }
        Ok(cars)
    }

    /// What the newest sealed job on this car taught; none when there is none or it taught nothing. On a simulated car only
    /// jobs on the same one count.
    pub(super) async fn learned_of(&self, car: &str, seed: Option<u64>) -> Result<Option<Knowledge>, Refused> {
        for listed in self.listed_jobs().await {
            let of_car = listed
                .card
                .as_ref()
                .is_ok_and(|card| card.car == car && card.state == "sealed" && card.practice == seed.is_some());
            if !of_car {
                continue;
            }
            // A record that cannot be read teaches nothing; that it cannot is told where it is opened.
            let Ok(log) = self.read(listed.id).await else { continue };
            if seed_of(&log) == seed
                && let Some(known) = Known::of(&log).learned()
            {
                return Ok(Some(known));
            }
        }
        Ok(None)
    }
}

/// The seed of a simulated car; none of a real one.
fn seed_of(log: &Log) -> Option<u64> {
    log.opened.practice.as_ref().map(|practice| practice.seed)
}
