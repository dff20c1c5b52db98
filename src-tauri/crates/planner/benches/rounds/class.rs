//! The cars, what of them is hidden, and what a reading shows.

use crate::common::Random;
use bayhand_chassis::{DEFAULT_MOTION_RATIO, Figures, RideHz, ride_hz};
use bayhand_practice::{PracticeCar, Reading as FirstReading, Rig};
use bayhand_vehicle::{Car, Corners, Place, SprungLike};

/// Loads (kg) and heights (mm) as read after one settle.
#[derive(Clone, Copy, Debug)]
pub struct Reading {
    pub loads_kg: Corners<f64>,
    pub heights_mm: Corners<f64>,
}

/// A class of cars.
pub struct Class {
    pub name: &'static str,
    pub seed: u64,
    pub window_pct: f64,
    /// Friction that a settle truly holds, kg at FL, one sigma.
    pub settle_kg: f64,
    /// Settles averaged in a reading.
    pub settles: usize,
    /// How springs and ratios are off the sheet.
    pub off: Off,
    /// Shares (%) that are to be inside after one round and after two.
    pub aim: Option<(f64, f64)>,
}

/// How springs and ratios are off what is entered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Off {
    /// Of each axle: normal, 10 % and 3 % one sigma (what entered data is worth when nobody says), cut at 25 % and 10 %.
    Usual,
    /// Such a car, but nothing of springs and ratios is entered, nor said of what it is sprung like.
    Withheld,
    /// Nothing is entered; each axle's ride frequency is one of cars sprung like this, its ratio 0.6 to 1 about 0.8.
    Likely(Option<SprungLike>),
    /// Each corner's own: evenly spread up to 25 % and 10 %.
    EachCorner,
    /// Each axle's own: evenly spread up to 25 % and 10 %, tyres up to 8 %; and a body that gives way in torsion, which
    /// nobody entered.
    EachAxleAndMore,
}

impl Off {
    /// True when neither springs nor ratios are entered.
    pub fn nothing_entered(self) -> bool {
        matches!(self, Off::Withheld | Off::Likely(_))
    }

    /// What is said of springs that are not known.
    pub fn said(self) -> Option<SprungLike> {
        match self {
            Off::Likely(like) => like,
            Off::Usual | Off::Withheld | Off::EachCorner | Off::EachAxleAndMore => None,
        }
    }
}

/// One pad's look at rest, kg, and a height reading, mm; one sigma.
pub const LOOK_KG: f64 = 0.1;
pub const HEIGHT_MM: f64 = 0.3;
pub const RESOLUTION_KG: f64 = 0.1;

pub const CLASSES: [Class; 8] = [
    Class {
        name: "spring data off by up to 25 % (10 % one sigma), ratios by 10 % (3 %); window 0.2 %",
        seed: 10_000,
        window_pct: 0.2,
        settle_kg: 0.2,
        settles: 1,
        off: Off::Usual,
        aim: Some((82.0, 99.5)),
    },
    Class {
        name: "no spring data at all, practice cars; window 0.2 %",
        seed: 20_000,
        window_pct: 0.2,
        settle_kg: 0.2,
        settles: 1,
        off: Off::Withheld,
        aim: Some((46.0, 98.0)),
    },
    Class {
        name: "struts that stick, 1.2 kg a settle; window 0.3 %, one settle a reading",
        seed: 30_000,
        window_pct: 0.3,
        settle_kg: 1.2,
        settles: 1,
        off: Off::Usual,
        aim: Some((72.0, 94.0)),
    },
    Class {
        name: "struts that stick, 1.2 kg a settle; window 0.3 %, three settles a reading",
        seed: 40_000,
        window_pct: 0.3,
        settle_kg: 1.2,
        settles: 3,
        off: Off::Usual,
        aim: Some((82.0, 99.0)),
    },
    Class {
        name: "no spring data at all, said to be sprung like a track car, and so they are; window 0.2 %",
        seed: 80_000,
        window_pct: 0.2,
        settle_kg: 0.2,
        settles: 1,
        off: Off::Likely(Some(SprungLike::Track)),
        aim: None,
    },
    Class {
        name: "harder: no spring data at all, cars of any kind; window 0.2 %",
        seed: 50_000,
        window_pct: 0.2,
        settle_kg: 0.2,
        settles: 1,
        off: Off::Likely(None),
        aim: None,
    },
    Class {
        name: "harder: springs evenly off up to 25 %, ratios up to 10 %, each corner its own; window 0.2 %",
        seed: 60_000,
        window_pct: 0.2,
        settle_kg: 0.2,
        settles: 1,
        off: Off::EachCorner,
        aim: None,
    },
    Class {
        name: "harder: the same alike left and right, tyres up to 8 %, torsion not known; window 0.2 %",
        seed: 70_000,
        window_pct: 0.2,
        settle_kg: 0.2,
        settles: 1,
        off: Off::EachAxleAndMore,
        aim: None,
    },
];

/// One simulated car.
pub struct Subject {
    pub seed: u64,
    /// The car as its data sheet has a person enter it, springs and ratios included.
    pub sheet: Car,
    /// As it is entered in this class.
    pub entered: Car,
    pub step_mm: f64,
    /// Steps of a quarter turn: the finer thread has six to a turn, the coarser eight.
    pub quarter_turn_steps: f64,
    /// Steps left either way when it comes in.
    pub steps: i32,
    pub wanted_mm: Corners<f64>,
    rig: Rig,
}

/// The truth behind a data sheet: springs and ratios, as the class spreads them.
pub fn true_car(sheet: &Car, off: Off, r: &mut Random) -> Car {
    let mut car = *sheet;
    for axle in [[Place::Fl, Place::Fr], [Place::Rl, Place::Rr]] {
        let shared = off_by(off, r);
        for place in axle {
            let by = if off == Off::EachCorner { off_by(off, r) } else { shared };
            let corner = car.corners.at_mut(place);
            match off {
                Off::Usual | Off::Withheld | Off::EachCorner | Off::EachAxleAndMore => {
                    corner.spring_n_per_mm = corner.spring_n_per_mm.map(|v| v * by.spring);
                    corner.motion_ratio = corner.motion_ratio.map(|v| v * by.ratio);
                    corner.tyre_n_per_mm *= by.tyre;
                }
                Off::Likely(_) => {
                    let wheel_n_per_mm = wheel_rate_of(sheet, place, by.spring);
                    corner.spring_n_per_mm = Some(wheel_n_per_mm / (by.ratio * by.ratio));
                    corner.motion_ratio = Some(by.ratio);
                }
            }
        }
    }
    if off == Off::EachAxleAndMore {
        car.torsion_nm_per_deg = Some(r.within(7_000.0, 15_000.0));
    }
    car
}

/// Factors on the sheet; of a car of any kind the ride frequency (Hz) in place of the spring, and the ratio itself.
#[derive(Clone, Copy)]
struct OffBy {
    spring: f64,
    ratio: f64,
    tyre: f64,
}

fn off_by(off: Off, r: &mut Random) -> OffBy {
    match off {
        Off::Usual | Off::Withheld => OffBy {
            spring: 1.0 + cut_normal(r, 0.10, -0.25, 0.25),
            ratio: 1.0 + cut_normal(r, 0.03, -0.10, 0.10),
            tyre: 1.0,
        },
        Off::EachCorner => OffBy { spring: r.within(0.75, 1.25), ratio: r.within(0.9, 1.1), tyre: 1.0 },
        Off::EachAxleAndMore => {
            OffBy { spring: r.within(0.75, 1.25), ratio: r.within(0.9, 1.1), tyre: r.within(0.92, 1.08) }
        }
        Off::Likely(like) => {
            let RideHz { usual, span } = ride_hz(like);
            OffBy { spring: likely(r, usual, span), ratio: likely(r, DEFAULT_MOTION_RATIO, (0.6, 1.0)), tyre: 1.0 }
        }
    }
}

/// Of a span that is two sigmas either way, on a scale of logarithms.
fn likely(r: &mut Random, usual: f64, (low, high): (f64, f64)) -> f64 {
    usual * cut_normal(r, (high / low).ln() / 4.0, (low / usual).ln(), (high / usual).ln()).exp()
}

/// The rate at the wheel that gives a ride frequency on half of the axle's sprung load.
fn wheel_rate_of(sheet: &Car, place: Place, hz: f64) -> f64 {
    let to_rear = sheet.sprung.cg_behind_front_axle_mm / sheet.wheelbase_mm;
    let share = if place.index() < 2 { 1.0 - to_rear } else { to_rear };
    (std::f64::consts::TAU * hz).powi(2) * sheet.sprung.mass_kg * share / 2.0 / 1_000.0
}

/// A Gaussian about zero, drawn again outside these ends.
fn cut_normal(r: &mut Random, sigma: f64, low: f64, high: f64) -> f64 {
    loop {
        let drawn = sigma * r.gauss();
        if (low..=high).contains(&drawn) {
            return drawn;
        }
    }
}

impl Subject {
    /// Sizes, sheet and steps are those of the practice car of this seed; how far it is off, and how it comes in, is
    /// drawn as the classes say: 1 to 4 % out of cross, a few millimetres out of height.
    pub fn of(seed: u64, class: &Class) -> Subject {
        let practice = PracticeCar::from_seed(seed);
        let sheet = practice.data_sheet();
        let entered = sheet.entered();
        let mut r = Random(seed);
        let mut car = true_car(&entered, class.off, &mut r);
        let reading = comes_in(&practice, &mut r);
        mass_of(&mut car, &reading.loads_kg);
        let mut told = entered;
        if class.off.nothing_entered() {
            told.corners =
                told.corners.map(|c| bayhand_vehicle::Corner { spring_n_per_mm: None, motion_ratio: None, ..*c });
            told.sprung_like = class.off.said();
        }
        Subject {
            seed,
            sheet: entered,
            entered: told,
            step_mm: sheet.step_mm(),
            quarter_turn_steps: f64::from(sheet.steps_per_turn) / 4.0,
            steps: (sheet.collar_travel_up_mm.min(sheet.collar_travel_down_mm) / sheet.step_mm()) as i32,
            wanted_mm: sheet.heights_mm,
            rig: Rig::from_reading(&car, &reading).expect("invented values lie inside the ranges of a car"),
        }
    }

    fn stands(&self, collars: &[i32; 4]) -> Reading {
        let mut rig = self.rig.clone();
        for (wheel, steps) in rig.wheels.iter_mut().zip(collars) {
            wheel.strut.collar_m = f64::from(*steps) * self.step_mm / 1e3;
        }
        let standing = rig.stand().expect("a few millimetres of collar tip no car over");
        Reading { loads_kg: standing.loads_kg, heights_mm: standing.heights_mm }
    }

    /// What one settle and look shows.
    pub fn read(&self, collars: &[i32; 4], class: &Class, r: &mut Random) -> Reading {
        let stands = self.stands(collars);
        let held = r.gauss() * class.settle_kg;
        let t = self.sheet.track_front_mm / self.sheet.track_rear_mm;
        let pattern = [1.0, -1.0, -t, t];
        let loads_kg = Corners::from_fn(|p| {
            let load = stands.loads_kg.at(p) + held * pattern[p.index()] + r.gauss() * LOOK_KG;
            (load / RESOLUTION_KG).round() * RESOLUTION_KG
        });
        Reading { loads_kg, heights_mm: stands.heights_mm.map(|mm| mm + r.gauss() * HEIGHT_MM) }
    }

    /// The true cross weight (%), and the greatest side-to-side height difference (mm).
    pub fn truly(&self, collars: &[i32; 4]) -> (f64, f64) {
        let Reading { loads_kg, heights_mm: h } = self.stands(collars);
        (Figures::of(&loads_kg).cross_pct, (h.fl - h.fr).abs().max((h.rl - h.rr).abs()))
    }
}

/// The first state: out of cross by 1 to 4 %, its left share near the middle, heights a few millimetres out.
fn comes_in(practice: &PracticeCar, r: &mut Random) -> FirstReading {
    let sheet = practice.data_sheet();
    let either =
        |r: &mut Random, low: f64, high: f64| if r.chance(0.5) { r.within(low, high) } else { -r.within(low, high) };
    let front_kg = sheet.total_kg * (sheet.front_share_pct + r.within(-0.4, 0.4)) / 100.0;
    let rear_kg = sheet.total_kg - front_kg;
    let left = 0.5 + r.within(-0.005, 0.005);
    let cross = 0.5 + either(r, 0.01, 0.04);
    let t = sheet.track_mm.front / sheet.track_mm.rear;
    let moved_kg = (front_kg * (1.0 - left) + rear_kg * left - cross * sheet.total_kg) / (1.0 + t);
    let loads_kg = Corners {
        fl: front_kg * left + moved_kg,
        fr: front_kg * (1.0 - left) - moved_kg,
        rl: rear_kg * left - t * moved_kg,
        rr: rear_kg * (1.0 - left) + t * moved_kg,
    };
    let (front, rear, roll) = (either(r, 1.0, 3.5), either(r, 1.0, 3.5), r.within(-0.002, 0.002));
    let heights_mm = Corners::from_fn(|p| {
        let (out, track) = if p.index() < 2 { (front, sheet.track_mm.front) } else { (rear, sheet.track_mm.rear) };
        sheet.heights_mm.at(p) + out + if p.is_left() { 0.5 } else { -0.5 } * roll * track
    });
    FirstReading { loads_kg, heights_mm, pads_mm: Corners::same(0.0), design_heights_mm: sheet.heights_mm }
}

/// The sprung mass and its place follow from the loads less the unsprung masses, by moments.
fn mass_of(car: &mut Car, loads_kg: &Corners<f64>) {
    let sprung = Corners::from_fn(|p| loads_kg.at(p) - car.corners.at(p).unsprung_kg);
    let total = sprung.fl + sprung.fr + sprung.rl + sprung.rr;
    car.sprung.mass_kg = total;
    car.sprung.cg_behind_front_axle_mm = car.wheelbase_mm * (sprung.rl + sprung.rr) / total;
    car.sprung.cg_left_mm =
        (car.track_front_mm * (sprung.fl - sprung.fr) + car.track_rear_mm * (sprung.rl - sprung.rr)) / (2.0 * total);
}
