//! One value for each corner, and the names of corners and axles.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// A corner of the car, seen by its driver: front left, front right, rear left, rear right.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "UPPERCASE")]
pub enum Place {
    /// Front left.
    Fl,
    /// Front right.
    Fr,
    /// Rear left.
    Rl,
    /// Rear right.
    Rr,
}

impl Place {
    /// All corners in the project's order.
    pub const ALL: [Place; 4] = [Place::Fl, Place::Fr, Place::Rl, Place::Rr];

    /// Position in the order FL, FR, RL, RR.
    pub fn index(self) -> usize {
        self as usize
    }

    /// The axle that this corner belongs to.
    pub fn axle(self) -> Axle {
        match self {
            Place::Fl | Place::Fr => Axle::Front,
            Place::Rl | Place::Rr => Axle::Rear,
        }
    }

    /// True for the left-hand side.
    pub fn is_left(self) -> bool {
        matches!(self, Place::Fl | Place::Rl)
    }

    /// The name as JSON writes it: `FL`, `FR`, `RL`, `RR`.
    pub fn code(self) -> &'static str {
        ["FL", "FR", "RL", "RR"][self.index()]
    }
}

/// Front or rear.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Axle {
    /// The front axle.
    Front,
    /// The rear axle.
    Rear,
}

/// One value for each corner, in the order FL, FR, RL, RR.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "UPPERCASE", deny_unknown_fields)]
pub struct Corners<T> {
    /// Front left.
    pub fl: T,
    /// Front right.
    pub fr: T,
    /// Rear left.
    pub rl: T,
    /// Rear right.
    pub rr: T,
}

impl<T> Corners<T> {
    /// Makes one value for each corner.
    pub fn from_fn(mut make: impl FnMut(Place) -> T) -> Self {
        Corners { fl: make(Place::Fl), fr: make(Place::Fr), rl: make(Place::Rl), rr: make(Place::Rr) }
    }

    /// The value at a corner.
    pub fn at(&self, place: Place) -> &T {
        match place {
            Place::Fl => &self.fl,
            Place::Fr => &self.fr,
            Place::Rl => &self.rl,
            Place::Rr => &self.rr,
        }
    }

    /// The value at a corner, to change it.
    pub fn at_mut(&mut self, place: Place) -> &mut T {
        match place {
            Place::Fl => &mut self.fl,
            Place::Fr => &mut self.fr,
            Place::Rl => &mut self.rl,
            Place::Rr => &mut self.rr,
        }
    }

    /// Each value made into another.
    pub fn map<U>(&self, mut make: impl FnMut(&T) -> U) -> Corners<U> {
        Corners::from_fn(|p| make(self.at(p)))
    }

    /// Corner and value, in order.
    pub fn iter(&self) -> impl Iterator<Item = (Place, &T)> {
        Place::ALL.into_iter().map(|p| (p, self.at(p)))
    }
}

impl<T: Copy> Corners<T> {
    /// The four values as an array in the order FL, FR, RL, RR.
    pub fn to_array(&self) -> [T; 4] {
        [self.fl, self.fr, self.rl, self.rr]
    }

    /// From an array in the order FL, FR, RL, RR.
    pub fn from_array(v: [T; 4]) -> Self {
        Corners { fl: v[0], fr: v[1], rl: v[2], rr: v[3] }
    }

    /// The same value at every corner.
    pub fn same(v: T) -> Self {
        Corners::from_array([v; 4])
    }
}
