//! Where the four wheels of the practice car stand: their planes and steering axes, from its linkages and its body.
//!
//! Each wheel hangs on a [`Linkage`] of its own. What the settled car gives it is the travel of its lower joint, its load
//! and the lean of its half of the body; what a person gives it are the turns of its adjusters and the steering. An
//! adjuster that leans a wheel also lifts or drops its contact against the body and shifts it sideways: so angles move
//! heights and loads, and heights move angles.
//!
//! Left out: that steering lifts and leans the car a little, and what lifts a contact by travel alone.

use crate::configuration::{PracticeError, within};
use crate::data_sheet::{Couplings, DataSheet, PerAxle, PerSide};
use crate::linkage::{Link, Linkage, Setting, Turns, Upright, leaning};
use crate::noise::{Draws, to_step};
use crate::pads::signs;
use crate::rig::{Rig, Standing};
use bayhand_vehicle::{Corners, Place, STANDARD_GRAVITY};
use nalgebra::{Matrix3, Vector3};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Most turns of an adjuster either way.
const MOST_TURNS: f64 = 20.0;
/// Height between upper and lower joint that a data sheet reckons with, m.
const BETWEEN_JOINTS_M: f64 = 0.24;

/// Turns made at the adjusters since the car came in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AlignmentState {
    /// Turns of each tie rod or toe link; positive gives toe-in.
    pub tie_rod_turns: Corners<f64>,
    /// Turns of each camber adjuster; positive leans the wheel's top out.
    pub camber_turns: Corners<f64>,
    /// Turns of each front caster adjuster; positive gives more caster.
    pub caster_turns: PerSide<f64>,
}

/// The angles of the car against the plane of its pads and its middle line, degrees.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Angles {
    /// Toe of each wheel; in is positive.
    pub toe_deg: Corners<f64>,
    /// Camber; negative when the top leans in.
    pub camber_deg: Corners<f64>,
    /// Caster of the front wheels.
    pub caster_deg: PerSide<f64>,
    /// Inclination of the front wheels' steering axes.
    pub inclination_deg: PerSide<f64>,
}

/// The true suspension of the car.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Geometry {
    linkages: Corners<Linkage>,
}

/// What a change of the adjusters does to the way from the body down to the tyre's contact, m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Shift {
    pub(crate) forward_m: f64,
    pub(crate) outward_m: f64,
    pub(crate) down_m: f64,
}

/// A wheel as it stands, in the axes of the world: x forward, y left, z up against gravity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct WheelStands {
    pub(crate) centre_m: Vector3<f64>,
    /// Spin axis to the left.
    pub(crate) spin: Vector3<f64>,
    /// Steering axis, upwards.
    pub(crate) axis: Vector3<f64>,
}

/// Where in the car an axis stands that a wheel shall have, degrees.
#[derive(Clone, Copy, Debug)]
struct Wanted {
    toe_deg: f64,
    camber_deg: f64,
    /// None at a wheel whose caster cannot be set.
    caster_deg: Option<f64>,
}

impl Geometry {
    /// Invents linkages whose angles, where the car came in, are out of the agreed ones by what a setter usually meets.
    pub(crate) fn invent(sheet: &DataSheet, came: &Standing, draws: &mut Draws) -> Self {
        let wanted = Corners::from_fn(|p| Wanted {
            toe_deg: sheet.toe_deg.at(p) + draws.either_side(0.05, 0.2),
            camber_deg: sheet.camber_deg.at(p) + draws.either_side(0.1, 0.4),
            caster_deg: side_of(&sheet.caster_deg, p).map(|deg| deg + draws.either_side(0.1, 0.4)),
        });
        let mut geometry = Geometry { linkages: Corners::from_fn(|p| invent(sheet, p, draws)) };
        for place in Place::ALL {
            let came = geometry.adjusted(place, wanted.at(place), came);
            geometry.linkages.at_mut(place).came = came;
        }
        geometry
    }

    /// Where the adjusters must stand for these angles, by Newton's method with measured slopes.
    fn adjusted(&self, place: Place, wanted: &Wanted, came: &Standing) -> Turns {
        let mut linkage = *self.linkages.at(place);
        let setting = Setting { load_n: came.loads_kg.at(place) * STANDARD_GRAVITY, ..Setting::default() };
        let off = |linkage: &Linkage| {
            // Invented linkages close at their drawn place and near it.
            let upright = linkage.upright(&setting).expect("a linkage closes where it was drawn");
            let stands = in_world(linkage, &upright, place, came, Vector3::zeros());
            let angles = stands.against(&Matrix3::identity(), place);
            let caster = wanted.caster_deg.map_or(0.0, |deg| angles[2] - deg);
            Vector3::new(angles[0] - wanted.toe_deg, angles[1] - wanted.camber_deg, caster)
        };
        for _ in 0..20 {
            let now = off(&linkage);
            if now.amax() < 1e-10 {
                break;
            }
            let column = |which: usize| {
                let mut moved = linkage;
                *knob(&mut moved.came, which) += 0.01;
                (off(&moved) - now) / 0.01
            };
            let mut slopes = Matrix3::from_columns(&[column(0), column(1), column(2)]);
            if wanted.caster_deg.is_none() {
                slopes.set_column(2, &Vector3::z());
                slopes[(2, 0)] = 0.0;
                slopes[(2, 1)] = 0.0;
            }
            let step = slopes.lu().solve(&now).expect("toe, camber and caster each have an adjuster");
            for which in 0..if wanted.caster_deg.is_none() { 2 } else { 3 } {
                *knob(&mut linkage.came, which) -= step[which];
            }
        }
        linkage.came
    }

    /// The same with lower arms that are shorter by so much, mm.
    pub(crate) fn bent(&self, short_mm: &Corners<f64>) -> Self {
        let bent = |p: Place| Linkage { lower_short_m: short_mm.at(p) / 1e3, ..*self.linkages.at(p) };
        Geometry { linkages: Corners::from_fn(bent) }
    }

    /// What the turns made do to the contacts of the tyres, against the body as it came in.
    ///
    /// # Errors
    /// Turns by which a linkage cannot be closed.
    pub(crate) fn shifts(&self, turned: &AlignmentState) -> Result<Corners<Shift>, PracticeError> {
        let contact = |place: Place, turns: Turns| {
            let linkage = self.linkages.at(place);
            let upright = linkage.upright(&Setting { turns, ..Setting::default() });
            upright.map(|u| u.contact(linkage.radius_m)).ok_or_else(|| apart(place))
        };
        let mut shifts = Corners::same(Shift::default());
        for place in Place::ALL {
            let turns = turned.at(place);
            if turns != Turns::default() {
                let by = contact(place, turns)? - contact(place, Turns::default())?;
                *shifts.at_mut(place) = Shift { forward_m: by.x, outward_m: by.y, down_m: -by.z };
            }
        }
        Ok(shifts)
    }

    /// Where the wheels stand with the rack shifted to the left.
    ///
    /// # Errors
    /// A setting by which a linkage cannot be closed.
    pub(crate) fn wheels(
        &self,
        turned: &AlignmentState,
        rig: &Rig,
        stands: &Standing,
        came: &Standing,
        rack_left_m: f64,
    ) -> Result<Corners<WheelStands>, PracticeError> {
        let shifts = self.shifts(turned)?;
        let wheel = |place: Place| -> Result<WheelStands, PracticeError> {
            let linkage = self.linkages.at(place);
            let setting = Setting {
                travel_m: (came.struts_mm.at(place) - stands.struts_mm.at(place)) / 1e3 + shifts.at(place).down_m,
                rack_m: if place.index() < 2 { signs(place).1 * rack_left_m } else { 0.0 },
                turns: turned.at(place),
                load_n: stands.loads_kg.at(place) * STANDARD_GRAVITY,
            };
            let upright = linkage.upright(&setting).ok_or_else(|| apart(place))?;
            let wheel = &rig.wheels[place.index()];
            let drawn = Vector3::new(wheel.x_m, wheel.y_m, wheel.tyre_radius_m);
            Ok(in_world(linkage, &upright, place, stands, drawn))
        };
        let [fl, fr, rl, rr] = Place::ALL.map(wheel);
        Ok(Corners { fl: fl?, fr: fr?, rl: rl?, rr: rr? })
    }
}

/// An upright's place in the axes of the world, on the body as it leans. `drawn` is where the wheel's centre was drawn.
fn in_world(linkage: &Linkage, upright: &Upright, place: Place, stands: &Standing, drawn: Vector3<f64>) -> WheelStands {
    let (_, side) = signs(place);
    let leans = leaning(stands.pitch_rad, stands.roll_rad[place.index() / 2]);
    let mirrored = |v: Vector3<f64>| Vector3::new(v.x, side * v.y, v.z);
    WheelStands {
        centre_m: drawn + leans * mirrored(upright.centre),
        // Outwards on the right is to the right.
        spin: leans * mirrored(upright.spin()) * side,
        axis: leans * mirrored(linkage.axis(upright)),
    }
}

impl WheelStands {
    /// Toe, camber, caster and inclination against a plane, whose axes are the rows: forward, left, up; degrees.
    pub(crate) fn against(&self, plane: &Matrix3<f64>, place: Place) -> [f64; 4] {
        let (_, side) = signs(place);
        let (spin, axis) = (plane * self.spin, plane * self.axis);
        [
            (side * spin.x).atan2(spin.y),
            (-side * spin.z).atan2(spin.y),
            (-axis.x).atan2(axis.z),
            (-side * axis.y).atan2(axis.z),
        ]
        .map(f64::to_degrees)
    }

    /// Heading of the wheel, to the left, as seen from above, degrees.
    pub(crate) fn heading_deg(&self) -> f64 {
        (-self.spin.x).atan2(self.spin.y).to_degrees()
    }

    /// What a gravity gauge across the wheel would show if it were true, degrees; positive with the top out.
    pub(crate) fn lean_deg(&self, place: Place) -> f64 {
        (-signs(place).1 * self.spin.z).clamp(-1.0, 1.0).asin().to_degrees()
    }
}

/// The axes of the car on the plane of its contacts: forward along the middle line of both axles, left, and up, as rows.
pub(crate) fn axes_of(wheels: &Corners<WheelStands>, pads_m: &Corners<f64>) -> Matrix3<f64> {
    let ground = Corners::from_fn(|p| {
        let at = wheels.at(p).centre_m;
        Vector3::new(at.x, at.y, *pads_m.at(p))
    });
    let forward = (ground.fl + ground.fr - ground.rl - ground.rr).normalize();
    let across = ground.fl + ground.rl - ground.fr - ground.rr;
    let up = forward.cross(&across).normalize();
    Matrix3::from_rows(&[forward.transpose(), up.cross(&forward).transpose(), up.transpose()])
}

/// The angles of all wheels.
pub(crate) fn angles(wheels: &Corners<WheelStands>, pads_m: &Corners<f64>) -> Angles {
    let axes = axes_of(wheels, pads_m);
    let of = Corners::from_fn(|p| wheels.at(p).against(&axes, p));
    let front = |which: usize| PerSide { left: of.fl[which], right: of.fr[which] };
    Angles { toe_deg: of.map(|a| a[0]), camber_deg: of.map(|a| a[1]), caster_deg: front(2), inclination_deg: front(3) }
}

/// The joints of a wheel of a small coupe, in m, with what a maker's drawing does not tell.
fn invent(sheet: &DataSheet, place: Place, draws: &mut Draws) -> Linkage {
    let front = place.index() < 2;
    let near = |draws: &mut Draws, x: f64, y: f64, z: f64| {
        Vector3::new(x + draws.even(-0.003, 0.003), y + draws.even(-0.004, 0.004), z + draws.even(-0.002, 0.002))
    };
    let caster = side_of(&sheet.caster_deg, place).unwrap_or(1.0).to_radians().tan();
    let inclination = if front { draws.even(9.0, 12.0) } else { draws.even(3.0, 6.0) }.to_radians().tan();
    let (low, high) = (-0.105 + draws.even(-0.003, 0.003), 0.135 + draws.even(-0.005, 0.005));
    let joint = |z: f64| Vector3::new(0.006 - caster * z, -0.078 - inclination * (z - low), z);
    let (lower, upper) = (joint(low), joint(high));
    let lower_legs = [near(draws, 0.14, -0.43, low + 0.020), near(draws, -0.17, -0.43, low + 0.018)];
    let upper_legs = [near(draws, 0.09, -0.36, high - 0.018), near(draws, -0.13, -0.36, high - 0.020)];
    // The rod runs a third up between the arms, where a wheel's travel hardly steers it; a few millimetres off, it does.
    let share = draws.even(0.3, 0.4);
    let rod = sheet.tie_rod.of(place);
    let arm = Vector3::new(-rod.arm_mm / 1e3 * draws.even(0.97, 1.03), if front { -0.018 } else { 0.0 }, 0.0);
    let outer = lower.lerp(&upper, share) + arm;
    let middle = |legs: [Vector3<f64>; 2]| legs[0].lerp(&legs[1], 0.5);
    let inner = middle(lower_legs).lerp(&middle(upper_legs), share);
    let inner = Vector3::new(outer.x + 0.012, inner.y, inner.z + draws.either_side(0.001, 0.005));
    let stiff = |draws: &mut Draws, n_per_m: f64| n_per_m * draws.even(0.8, 1.2);
    let mut link = |body: Vector3<f64>, upright: Vector3<f64>, n_per_m: f64| Link {
        body,
        upright,
        n_per_m: stiff(draws, n_per_m),
    };
    let links = [
        link(upper_legs[0], upper, 5e6),
        link(upper_legs[1], upper, 5e6),
        link(lower_legs[0], lower, 8e6),
        link(lower_legs[1], lower, 8e6),
        link(inner, outer, 6e6),
    ];
    let pitches = if rod.opposite_threads { 2.0 } else { 1.0 };
    // The upper joint moves by that much for the sheet's degrees; each leg follows by its slant.
    let slant = (upper_legs[0] - upper).normalize();
    let outwards_m = BETWEEN_JOINTS_M * sheet.camber_deg_per_turn.of(place).to_radians().tan();
    let back_m = BETWEEN_JOINTS_M * sheet.caster_deg_per_turn.to_radians().tan();
    Linkage {
        links,
        per_turn_m: [
            pitches * rod.pitch_mm / 1e3,
            outwards_m * slant.y.abs() * draws.even(0.93, 1.07),
            back_m * slant.x.abs() * draws.even(0.93, 1.07),
        ],
        came: Turns::default(),
        lower_short_m: 0.0,
        radius_m: sheet.tyre_radius_mm.of(place) / 1e3,
    }
}

/// What the adjusters move besides, by the drawing: links whose joints all stand where they were meant to.
pub(crate) fn as_drawn(sheet: &DataSheet) -> Couplings {
    // The angles that an adjuster moves by one turn: half of what it moves from a turn back to a turn on.
    let moved = |place: Place, which: usize| {
        let linkage = invent(sheet, place, &mut Draws::middle());
        let angles = |way: f64| {
            let mut turns = Turns::default();
            *knob(&mut turns, which) = way;
            // A drawn linkage closes a turn from where it was drawn.
            let upright = linkage.upright(&Setting { turns, ..Setting::default() }).expect("a drawn linkage closes");
            // On the left, outwards is to the left.
            let (spin, axis) = (upright.spin(), linkage.axis(&upright));
            WheelStands { centre_m: upright.centre, spin, axis }.against(&Matrix3::identity(), place)
        };
        let (back, on) = (angles(-1.0), angles(1.0));
        std::array::from_fn::<f64, 2, _>(|i| to_step((on[i] - back[i]) / 2.0, 0.01))
    };
    let [caster_moves_toe_deg, caster_moves_camber_deg] = moved(Place::Fl, 2);
    Couplings {
        camber_moves_toe_deg: PerAxle { front: moved(Place::Fl, 1)[0], rear: moved(Place::Rl, 1)[0] },
        caster_moves_camber_deg,
        caster_moves_toe_deg,
    }
}

fn knob(turns: &mut Turns, which: usize) -> &mut f64 {
    match which {
        0 => &mut turns.toe,
        1 => &mut turns.camber,
        _ => &mut turns.caster,
    }
}

/// The value of a front wheel's side; none at the rear.
pub(crate) fn side_of(sides: &PerSide<f64>, place: Place) -> Option<f64> {
    match place {
        Place::Fl => Some(sides.left),
        Place::Fr => Some(sides.right),
        Place::Rl | Place::Rr => None,
    }
}

fn apart(place: Place) -> PracticeError {
    PracticeError::Linkage { place }
}

impl AlignmentState {
    /// Checks that these turns can have been made.
    ///
    /// # Errors
    /// The first number of turns out of its range.
    pub fn validate(&self) -> Result<(), PracticeError> {
        for (field, turns) in [("tie_rod_turns", &self.tie_rod_turns), ("camber_turns", &self.camber_turns)] {
            for (place, value) in turns.iter() {
                within(format!("turned.{field}.{}", place.code()), *value, -MOST_TURNS, MOST_TURNS, "turns")?;
            }
        }
        for (side, value) in [("left", self.caster_turns.left), ("right", self.caster_turns.right)] {
            within(format!("turned.caster_turns.{side}"), value, -MOST_TURNS, MOST_TURNS, "turns")?;
        }
        Ok(())
    }

    fn at(&self, place: Place) -> Turns {
        Turns {
            toe: *self.tie_rod_turns.at(place),
            camber: *self.camber_turns.at(place),
            caster: side_of(&self.caster_turns, place).unwrap_or(0.0),
        }
    }
}
