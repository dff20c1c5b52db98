//! Cars that nobody has seen, standing on a rig that is not the model of this crate, and what is read of them.
#![allow(dead_code, reason = "each test file uses its own part")]

use bayhand_chassis::plausible::{LikeReading, LikeReadings};
use bayhand_chassis::{Confidence, Pads};
use bayhand_practice::{PointMass, Reading, Rig};
use bayhand_vehicle::{Adjuster, Bars, Beams, Car, Corner, Corners, Place, Sprung};

/// SplitMix64 (Steele, Lea, Flood 2014): small, and the same everywhere.
pub struct Random(pub u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn within(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    pub fn whole(&mut self, low: i32, high: i32) -> i32 {
        low + (self.next() % (high - low + 1) as u64) as i32
    }

    pub fn sign(&mut self) -> f64 {
        if self.unit() < 0.5 { -1.0 } else { 1.0 }
    }

    /// A standard Gaussian (Box and Muller 1958).
    pub fn gauss(&mut self) -> f64 {
        let (u, v) = (1.0 - self.unit(), self.unit());
        (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
    }
}

/// What is said of pads and readings, and what they truly do.
pub const PADS: Pads =
    Pads { resolution_kg: 0.1, look_kg: 0.3, settle_kg: 0.3, level_mm: 0.05, height_mm: 0.3, patch_mm: 0.0 };

/// Travel of one step of every collar, mm.
pub const STEP_MM: f64 = 0.5;

/// One sigma of the entered spring rates.
pub const SPRING_SIGMA: f64 = 0.1;

/// A car over the whole span of the reference cars of `data/statics.json`.
pub fn car(r: &mut Random) -> Car {
    let wheelbase_mm = r.within(2_200.0, 2_850.0).round();
    let (tyre_front, tyre_rear) = (r.within(180.0, 285.0).round(), r.within(180.0, 285.0).round());
    let sprung = Sprung {
        mass_kg: r.within(600.0, 1_480.0).round(),
        cg_behind_front_axle_mm: (wheelbase_mm * r.within(0.43, 0.6)).round(),
        cg_left_mm: r.within(-45.0, 45.0).round(),
        cg_height_mm: r.within(365.0, 560.0).round(),
    };
    let unsprung = (r.within(25.0, 40.0).round(), r.within(25.0, 40.0).round());
    let rear_share = sprung.cg_behind_front_axle_mm / wheelbase_mm;
    let mut corner = |share: f64, tyre: f64, unsprung_kg: f64| {
        let motion_ratio = (r.within(0.6, 1.0) * 100.0).round() / 100.0;
        let hertz = r.within(1.6, 3.0);
        let wheel = (std::f64::consts::TAU * hertz).powi(2) * sprung.mass_kg * share / 2.0 / 1e3;
        Corner {
            spring_n_per_mm: Some((wheel / motion_ratio.powi(2)).round()),
            motion_ratio: Some(motion_ratio),
            tyre_n_per_mm: tyre,
            unsprung_kg,
            tyre_radius_mm: 300.0,
            adjuster_ratio: None,
            bump_mm: None,
            droop_mm: None,
            bump_stop_n_per_mm: None,
            coil_bind_mm: None,
        }
    };
    let (front, rear) = (corner(1.0 - rear_share, tyre_front, unsprung.0), corner(rear_share, tyre_rear, unsprung.1));
    let track_front_mm = r.within(1_350.0, 1_640.0).round();
    Car {
        wheelbase_mm,
        track_front_mm,
        track_rear_mm: (track_front_mm + r.within(-55.0, 55.0)).round(),
        roll_axis_height_mm: r.within(20.0, 112.0).round(),
        sprung,
        torsion_nm_per_deg: (r.unit() < 0.33).then(|| (r.within(5.0, 16.0)).round() * 1e3),
        corners: Corners { fl: front, fr: front, rl: rear, rr: rear },
        bars: Bars::default(),
        beams: Beams::default(),
        sprung_like: None,
        height_points: None,
    }
}

/// A car as it stands: what was entered of it, and the rig of its true springs.
pub struct Standing {
    pub entered: Car,
    pub rig: Rig,
}

/// Whether the springs of an axle are off alike, or each by itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Springs {
    ByAxle,
    ByCorner,
}

/// A car whose springs are not those entered.
pub fn standing(r: &mut Random, springs: Springs) -> Standing {
    let entered = car(r);
    let off: [f64; 4] = std::array::from_fn(|_| 1.0 + SPRING_SIGMA * r.gauss().clamp(-3.0, 3.0));
    let mut truth = entered;
    for p in Place::ALL {
        let which = if springs == Springs::ByAxle { p.index() / 2 } else { p.index() };
        let corner = truth.corners.at_mut(p);
        corner.spring_n_per_mm = corner.spring_n_per_mm.map(|k| k * off[which]);
    }
    let s = &entered.sprung;
    let rear = s.cg_behind_front_axle_mm / entered.wheelbase_mm;
    let along = r.within(-20.0, 20.0);
    let t = entered.track_front_mm / entered.track_rear_mm;
    let loads_kg = Corners::from_fn(|p| {
        let (share, track, n) = match p {
            Place::Fl => (1.0 - rear, entered.track_front_mm, 1.0),
            Place::Fr => (1.0 - rear, -entered.track_front_mm, -1.0),
            Place::Rl => (rear, entered.track_rear_mm, -t),
            Place::Rr => (rear, -entered.track_rear_mm, t),
        };
        s.mass_kg * share * (0.5 + s.cg_left_mm / track) + entered.corners.at(p).unsprung_kg + n * along
    });
    let heights_mm = Corners::from_fn(|_| entered.roll_axis_height_mm + r.within(-4.0, 4.0));
    let reading = Reading {
        loads_kg,
        heights_mm,
        pads_mm: Corners::same(0.0),
        design_heights_mm: Corners::same(entered.roll_axis_height_mm),
    };
    let rig = Rig::from_reading(&truth, &reading).expect("such a car stands");
    Standing { entered, rig }
}

/// One look at one settle of what stands there.
pub fn read(r: &mut Random, car: &Car, rig: &Rig, turned_steps: Corners<f64>) -> LikeReading {
    let stands = rig.stand().expect("it finds its rest");
    let held = PADS.settle_kg * r.gauss();
    let t = car.track_front_mm / car.track_rear_mm;
    let n = Corners { fl: 1.0, fr: -1.0, rl: -t, rr: t };
    let to_step = |v: f64| (v / 0.1).round() * 0.1;
    LikeReading {
        turned_steps,
        loads_kg: Corners::from_fn(|p| {
            to_step(stands.loads_kg.at(p) + held * n.at(p) + PADS.look_kg * r.gauss()).max(0.0)
        }),
        heights_mm: Corners::from_fn(|p| stands.heights_mm.at(p) + PADS.height_mm * r.gauss()),
    }
}

/// Turns collars by whole steps.
pub fn turn(rig: &mut Rig, steps: &Corners<f64>) {
    for (p, steps) in steps.iter() {
        rig.wheels[p.index()].strut.collar_m += steps * STEP_MM / 1e3;
    }
}

/// Adds mass (or takes it), places in parts of wheelbase and half front track.
pub fn load(rig: &mut Rig, car: &Car, mass_kg: f64, along: f64, left_m: f64) {
    rig.add(&PointMass { mass_kg, behind_front_axle_m: along * car.wheelbase_mm / 1e3, left_m, height_m: 0.4 });
}

/// The question of these readings.
pub fn question(car: &Car, rounds: Vec<LikeReading>, confidence: Confidence) -> LikeReadings {
    let adjusters = Corners::same(Adjuster { step_mm: STEP_MM, up_steps: 30, down_steps: 30 });
    LikeReadings { car: *car, confidence, adjusters, pads: PADS, rounds }
}
