//! A careful person at the practice car's instruments, and what the papers of a practice job say.

use bayhand_chassis::Verdict;
use bayhand_chassis::align::{FloorSlope, KnownAngle};
use bayhand_job::align::{
    Agreed, Angle, Angles, AtSweep, AtWheel, Bench, Couplings, Instruments, Raw, Row, RunOut, Steps, rows,
};
use bayhand_practice::{Configuration, PracticeCar};
use bayhand_vehicle::{Axle, Corners, Place};

/// What was agreed.
pub fn agreed(car: &PracticeCar) -> Agreed {
    let sheet = car.data_sheet();
    Agreed {
        camber_deg: (sheet.camber_deg.fl, sheet.camber_deg.rl),
        toe_deg: (sheet.toe_deg.fl, sheet.toe_deg.rl),
        caster_deg: sheet.caster_deg.left,
        window_deg: 0.2,
        caster_window_deg: 0.4,
        toe_window_deg: 0.15,
    }
}

/// What the papers of the practice job say that one turn does, in its whole steps.
pub fn steps(car: &PracticeCar, place: Place) -> Steps {
    let sheet = car.data_sheet();
    let rod = sheet.tie_rod.of(place);
    let travel_mm = rod.pitch_mm * if rod.opposite_threads { 2.0 } else { 1.0 };
    let toe_deg = (travel_mm / rod.arm_mm).atan().to_degrees();
    Steps {
        per_turn_deg: [toe_deg, *sheet.camber_deg_per_turn.of(place), sheet.caster_deg_per_turn],
        steps: [12.0, 4.0, 4.0],
    }
}

/// What the papers say that the camber and caster adjusters move besides.
pub fn couplings(car: &PracticeCar, place: Place) -> Couplings {
    let drawn = car.data_sheet().couplings;
    Couplings {
        camber_moves_toe_deg: *drawn.camber_moves_toe_deg.of(place),
        caster_moves_camber_deg: drawn.caster_moves_camber_deg,
        caster_moves_toe_deg: drawn.caster_moves_toe_deg,
    }
}

/// A reading of everything, judged.
pub struct Reading {
    /// Toe and camber.
    pub angles: Angles,
    /// Caster, left and right.
    pub caster: [KnownAngle; 2],
    rows: Vec<Row>,
}

impl Reading {
    pub fn of(car: &PracticeCar, set: &Configuration, agreed: &Agreed, settle: u64) -> Reading {
        let sheet = car.data_sheet();
        let bench = bench(car, set);
        let lines = car.lines_seen(0);
        let wheels = car.wheels_seen(set, settle, 0, 0).unwrap().map(|seen| AtWheel {
            camber_deg: seen.camber_deg,
            front_mm: seen.front_mm,
            rear_mm: seen.rear_mm,
            hub_mm: seen.hub_mm,
        });
        let raw = Raw {
            bench,
            wheelbase_mm: sheet.wheelbase_mm,
            rim_mm: (car.rim_mm(), car.rim_mm()),
            lines_mm: [lines.front_mm, lines.rear_mm, lines.apart_mm],
            wheels,
        };
        let angles = raw.angles().unwrap();
        let swept = car.sweep_seen(set, settle, 0).unwrap();
        let caster = [(Place::Fl, swept.left, angles.toe.fl), (Place::Fr, swept.right, angles.toe.fr)];
        let caster = caster.map(|(place, seen, toe)| {
            let at = AtSweep { plate_deg: seen.plate_deg, gauge_deg: seen.gauge_deg };
            bench.caster(place, &at, toe, sheet.inclination_deg).unwrap()
        });
        Reading { rows: rows(agreed, &angles, Some(&caster)), angles, caster }
    }

    pub fn inside(&self, axle: Axle) -> bool {
        let of = |row: &&Row| row.place.axle() == axle;
        self.rows.iter().filter(of).all(|row| row.verdict() == Verdict::Inside)
    }

    fn row(&self, angle: Angle, place: Place) -> Option<&Row> {
        self.rows.iter().find(|row| row.angle == angle && row.place == place)
    }

    pub fn off_deg(&self, place: Place) -> [f64; 3] {
        [Angle::Toe, Angle::Camber, Angle::Caster]
            .map(|angle| self.row(angle, place).map_or(0.0, |row| row.is.deg - row.target_deg))
    }

    pub fn windows(&self, place: Place) -> [Option<f64>; 3] {
        [Angle::Toe, Angle::Camber, Angle::Caster].map(|angle| self.row(angle, place).map(|row| row.window_deg))
    }

    fn all(&self, place: Place) -> [KnownAngle; 3] {
        let caster = self.caster[usize::from(!place.is_left())];
        [*self.angles.toe.at(place), *self.angles.camber.at(place), caster]
    }

    pub fn change_to(&self, now: &Reading, place: Place) -> ([f64; 3], [f64; 3]) {
        let (before, now) = (self.all(place), now.all(place));
        let spread = std::array::from_fn(|i| before[i].standard_deg.hypot(now[i].standard_deg));
        (std::array::from_fn(|i| now[i].deg - before[i].deg), spread)
    }
}

fn bench(car: &PracticeCar, set: &Configuration) -> Bench {
    let sheet = car.data_sheet();
    let of = sheet.instruments;
    let with = |look: f64, resolution: f64| look.hypot(resolution / 12.0_f64.sqrt());
    let none = Corners::same(0.0);
    let (one, two) = (car.pad_heights_seen(&none, 0, 0), car.pad_heights_seen(&none, 0, 1));
    let mm = Corners::from_fn(|p| (one.at(p) + two.at(p)) / 2.0);
    let slope = |mm: f64, over_mm: f64| (mm / over_mm).atan().to_degrees();
    let track_mm = (sheet.track_mm.front + sheet.track_mm.rear) / 2.0;
    Bench {
        instruments: Instruments {
            gauge_deg: with(of.angle_look_deg, of.angle_resolution_deg),
            plate_deg: with(of.plate_look_deg, of.plate_resolution_deg),
            plate_fraction: of.plate_scale_pct / 100.0,
            line_mm: with(of.line_look_mm, of.line_resolution_mm),
            across_mm: with(of.across_look_mm, of.across_resolution_mm),
        },
        gauge_deg: car.gauge_reversed_seen(0),
        floor: FloorSlope {
            rise_forward_deg: slope((mm.fl + mm.fr - mm.rl - mm.rr) / 2.0, sheet.wheelbase_mm),
            rise_left_deg: slope((mm.fl + mm.rl - mm.fr - mm.rr) / 2.0, track_mm),
        },
        run_out: car.run_out_seen(set, 0, 0).map(|seen| RunOut { camber_deg: seen.camber_deg, edge_mm: seen.edge_mm }),
    }
}
