//! What to move, and how far, to reach a wanted left or front share; or why it cannot be reached.

use super::change::{Carriers, MassChange, MassEffect, Spot};
use crate::error::{check_loads, within};
use crate::{Figures, StaticsError, mass_centre};
use bayhand_vehicle::{Car, Corners};

/// A share that only the place of the mass can change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Share {
    /// FL + RL of the total: mass moves sideways.
    Left,
    /// FL + FR of the total: mass moves lengthwise.
    Front,
}

/// Something aboard that may be moved, inside a rectangle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Movable {
    /// Its mass, kg.
    pub kg: f64,
    /// Where it is.
    pub at: Spot,
    /// The corner of the rectangle furthest to the front and to the right: the least of both numbers.
    pub least: Spot,
    /// The corner furthest to the rear and to the left: the greatest of both numbers.
    pub most: Spot,
}

/// One thing moved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Move {
    /// Which of the movable things, by its number from 0.
    pub item: usize,
    /// How far: to the left for the left share, forward for the front share; negative the other way, mm.
    pub by_mm: f64,
    /// Where it goes.
    pub to: Spot,
}

/// Why a share is not reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Short {
    /// Nothing can be moved in the direction that it takes.
    NothingToMove,
    /// Everything is as far as it may go; load that would still have to change sides, kg.
    AtBounds {
        /// kg, positive.
        still_kg: f64,
    },
    /// Mass at this place draws the share to the place's own, which is not beyond the wanted one.
    WrongPlace {
        /// Share that is carried of a mass at this place, percent.
        own_pct: f64,
    },
}

/// How a wanted share is reached by moving what is aboard.
#[derive(Clone, Debug, PartialEq)]
pub struct Reach {
    /// The share now, percent.
    pub now_pct: f64,
    /// Mass × distance that has to move at the mass centre's place, kg mm: to the left for the left share, forward
    /// for the front share; negative the other way. What it takes, whatever is there to be moved.
    pub moment_kg_mm: f64,
    /// What to move: as few things as possible, each as far as it may go before the next is touched.
    pub moves: Vec<Move>,
    /// How far each thing alone would have to go, bounds left aside, mm; the sign as in [`Move::by_mm`].
    pub alone_mm: Vec<f64>,
    /// Loads and figures after the moves.
    pub effect: MassEffect,
    /// What is missing; `None` when the share is reached.
    pub short: Option<Short>,
}

/// How much mass at one place reaches a wanted share.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ballast {
    /// Mass to add, kg; negative: to take away.
    pub kg: f64,
    /// Loads and figures with it.
    pub effect: MassEffect,
    /// What is missing; `None` when the share is reached.
    pub short: Option<Short>,
}

impl Share {
    /// The share in figures, percent.
    pub fn of(self, figures: &Figures) -> f64 {
        match self {
            Share::Left => figures.left_pct,
            Share::Front => figures.front_pct,
        }
    }

    /// The part of four loads on this side.
    fn part(self, loads: &Corners<f64>) -> f64 {
        match self {
            Share::Left => loads.fl + loads.rl,
            Share::Front => loads.fl + loads.fr,
        }
    }

    /// A spot moved towards this side.
    fn towards(self, at: &Spot, by_mm: f64) -> Spot {
        match self {
            Share::Left => Spot { left_mm: at.left_mm + by_mm, ..*at },
            Share::Front => Spot { behind_front_axle_mm: at.behind_front_axle_mm - by_mm, ..*at },
        }
    }

    /// How far a thing may go towards this side (`up`) or away from it, mm, not below 0.
    fn room_mm(self, item: &Movable, up: bool) -> f64 {
        match (self, up) {
            (Share::Left, true) => item.most.left_mm - item.at.left_mm,
            (Share::Left, false) => item.at.left_mm - item.least.left_mm,
            (Share::Front, true) => item.at.behind_front_axle_mm - item.least.behind_front_axle_mm,
            (Share::Front, false) => item.most.behind_front_axle_mm - item.at.behind_front_axle_mm,
        }
    }
}

/// Load that counts as nothing, kg: far below what any scale shows.
const NOTHING_KG: f64 = 1e-9;

/// What to move of what may be moved so that `share` becomes `wanted_pct`.
///
/// The front share follows from moments alone. The left share does so too on equal tracks; on unequal tracks the
/// springs divide a moment between the axles, which is accounted for.
///
/// # Errors
/// A car, loads, masses or places that cannot be; a thing outside its own rectangle; a share outside 0 to 100 %; a
/// wheel that would leave its pad.
pub fn reach(
    car: &Car,
    loads_kg: &Corners<f64>,
    share: Share,
    wanted_pct: f64,
    items: &[Movable],
) -> Result<Reach, StaticsError> {
    let carriers = Carriers::of(car)?;
    check_loads("loads_kg", loads_kg)?;
    within("wanted_pct", wanted_pct, 0.0, 100.0, "from 0 to 100 %")?;
    let figures = Figures::of(loads_kg);
    let needed_kg = (wanted_pct - share.of(&figures)) / 100.0 * figures.total_kg;
    let up = needed_kg > 0.0;
    let direction = if up { 1.0 } else { -1.0 };
    // Load that changes sides for one kilogram moved by one mm; the same all along the way (Carriers is bilinear).
    let per_kg_mm = |at: &Spot| -> Result<f64, StaticsError> {
        Ok(share.part(&carriers.carried(&share.towards(at, 1.0))?) - share.part(&carriers.carried(at)?))
    };
    let centre = mass_centre(car, loads_kg)?;
    let centre = Spot { behind_front_axle_mm: centre.behind_front_axle_mm, left_mm: centre.left_mm };
    let mut alone_mm = Vec::new();
    let mut capacity = Vec::new();
    for (number, item) in items.iter().enumerate() {
        item.validate(number)?;
        let per_mm = item.kg * per_kg_mm(&item.at)?;
        alone_mm.push(needed_kg / per_mm);
        capacity.push((number, per_mm, share.room_mm(item, up)));
    }
    // Who can do most goes first: then the fewest are touched.
    capacity.sort_by(|a, b| (b.1 * b.2).total_cmp(&(a.1 * a.2)));
    let mut still_kg = needed_kg.abs();
    let mut moves = Vec::new();
    for (item, per_mm, room_mm) in capacity {
        let by_mm = room_mm.min(still_kg / per_mm);
        if still_kg > NOTHING_KG && by_mm > 0.0 {
            still_kg -= by_mm * per_mm;
            moves.push(Move { item, by_mm: direction * by_mm, to: share.towards(&items[item].at, direction * by_mm) });
        }
    }
    let changes: Vec<MassChange> =
        moves.iter().map(|m| MassChange::Moved { kg: items[m.item].kg, from: items[m.item].at, to: m.to }).collect();
    let short = match (still_kg > NOTHING_KG, moves.is_empty()) {
        (false, _) => None,
        (true, true) => Some(Short::NothingToMove),
        (true, false) => Some(Short::AtBounds { still_kg }),
    };
    Ok(Reach {
        now_pct: share.of(&figures),
        moment_kg_mm: needed_kg / per_kg_mm(&centre)?,
        moves,
        alone_mm,
        effect: carriers.after(loads_kg, &changes)?,
        short,
    })
}

/// How much mass at `at` makes `share` become `wanted_pct`: of the total W with the share s, `m = W (w - s) / (g - w)`
/// where g is the place's own share. Between `least_kg` (0, or below 0 where that much can be taken away) and
/// `most_kg`.
///
/// # Errors
/// As [`reach`]; bounds that do not hold 0 between them.
pub fn ballast_to_reach(
    car: &Car,
    loads_kg: &Corners<f64>,
    share: Share,
    wanted_pct: f64,
    at: &Spot,
    (least_kg, most_kg): (f64, f64),
) -> Result<Ballast, StaticsError> {
    let carriers = Carriers::of(car)?;
    check_loads("loads_kg", loads_kg)?;
    within("wanted_pct", wanted_pct, 0.0, 100.0, "from 0 to 100 %")?;
    within("least_kg", least_kg, -5_000.0, 0.0, "from -5000 to 0 kg")?;
    within("most_kg", most_kg, 0.0, 5_000.0, "from 0 to 5000 kg")?;
    let figures = Figures::of(loads_kg);
    let (now, wanted) = (share.of(&figures) / 100.0, wanted_pct / 100.0);
    let own = share.part(&carriers.carried(at)?);
    let needed_kg = (wanted - now) * figures.total_kg;
    let lever = own - wanted;
    let (kg, short) = if needed_kg.abs() <= NOTHING_KG {
        (0.0, None)
    } else {
        let kg = needed_kg / lever;
        // No lever gives an infinite mass, which no bound allows.
        if kg >= least_kg && kg <= most_kg {
            (kg, None)
        } else {
            let bound = if kg > 0.0 { most_kg } else { least_kg };
            let still_kg = (needed_kg - bound * lever).abs();
            let wrong = bound == 0.0 || lever == 0.0;
            let short = if wrong { Short::WrongPlace { own_pct: own * 100.0 } } else { Short::AtBounds { still_kg } };
            (if wrong { 0.0 } else { bound }, Some(short))
        }
    };
    let change = if kg < 0.0 { MassChange::Removed { kg: -kg, at: *at } } else { MassChange::Added { kg, at: *at } };
    Ok(Ballast { kg, effect: carriers.after(loads_kg, &[change])?, short })
}

impl Movable {
    fn validate(&self, number: usize) -> Result<(), StaticsError> {
        let at = |field: &str| format!("items[{number}].{field}");
        within(&at("kg"), self.kg, 0.01, 5_000.0, "from 0.01 to 5000 kg")?;
        let (least, most) = (&self.least, &self.most);
        within(
            &at("at.behind_front_axle_mm"),
            self.at.behind_front_axle_mm,
            least.behind_front_axle_mm,
            most.behind_front_axle_mm,
            "inside its rectangle",
        )?;
        within(&at("at.left_mm"), self.at.left_mm, least.left_mm, most.left_mm, "inside its rectangle")
    }
}
