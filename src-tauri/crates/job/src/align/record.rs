//! The angles as the record has them: raw readings to angles, and what earlier changes taught.

use super::{
    Agreed, Angle, Angles, AtSweep, AtWheel, Bench, Couplings, Effects, Instruments, Raw, Row, RunOut, Steps,
    WheelPlan, rough_toe, rows, wheel_plan,
};
use crate::judge::JudgeError;
use crate::known::{Known, axle_of};
use bayhand_chassis::align::{FloorSlope, KnownAngle};
use bayhand_vehicle::{Axle, Corners, Place};

/// Where readings and settings of the alignment are written.
const AGREED: &str = "intake.angles";
const ADJUSTERS: &str = "intake.angle-adjusters";
/// How wheel travel and the adjusters move the angles besides.
const GEOMETRY: &str = "intake.angle-geometry";
const INSTRUMENTS: &str = "intake.angle-instruments";
const RUN_OUT: &str = "align.runout";
const LINES: &str = "align.lines";
const SWEEP: &str = "align.caster";
/// The reading that is judged and planned from.
pub const READ: &str = "align.read";
/// The judgement.
pub const JUDGE: &str = "align.judge";
/// A caster that nobody swept again says nothing of what was turned since: standard uncertainty, degrees.
const NOT_SEEN_DEG: f64 = 100.0;

/// A reading of the angles, judged.
#[derive(Clone, Debug, PartialEq)]
pub struct Aligned {
    /// The angles.
    pub angles: Angles,
    /// Caster of the left and the right front wheel; none before a sweep.
    pub caster: Option<[KnownAngle; 2]>,
    /// Each against what was agreed: rear before front, caster, camber, toe.
    pub rows: Vec<Row>,
}

impl Aligned {
    /// The row of an angle of a wheel.
    pub fn row(&self, angle: Angle, place: Place) -> Option<&Row> {
        self.rows.iter().find(|row| row.angle == angle && row.place == place)
    }
}

/// The value under a key of a step, as it stood at some time.
type At<'v> = &'v dyn Fn(&str, &str) -> Option<f64>;

fn corners<T>(make: impl Fn(Place) -> Option<T>) -> Option<Corners<T>> {
    let [fl, fr, rl, rr] = Place::ALL.map(make);
    Some(Corners { fl: fl?, fr: fr?, rl: rl?, rr: rr? })
}

fn instruments(at: At) -> Option<Instruments> {
    // Entered is an interval of about 95 %: two standard uncertainties.
    let half = |key: &str| Some(at(INSTRUMENTS, key)? / 2.0);
    Some(Instruments {
        gauge_deg: half("gauge-accuracy")?,
        plate_deg: half("plate-accuracy")?,
        plate_fraction: half("plate-scale")? / 100.0,
        line_mm: half("line-accuracy")?,
        across_mm: half("across-accuracy")?,
    })
}

fn bench(at: At) -> Option<Bench> {
    let run_out = |p: Place| {
        let both = |input: &str| {
            let of = |end: &str| at(RUN_OUT, &format!("{input}-{end}.{}", p.code()));
            Some([of("up")?, of("down")?])
        };
        Some(RunOut { camber_deg: both("runout-camber")?, edge_mm: both("runout-edge")? })
    };
    Some(Bench {
        instruments: instruments(at)?,
        gauge_deg: [at(RUN_OUT, "gauge-direct")?, at(RUN_OUT, "gauge-turned")?],
        floor: floor(at)?,
        run_out: corners(run_out)?,
    })
}

/// How the plane of the pads lies, from both set-ups of the laser.
fn floor(at: At) -> Option<FloorSlope> {
    let mm = corners(|p| {
        let of = |set_up: &str| at("pads.level", &format!("{set_up}.{}", p.code()));
        Some((of("set-up-1")? + of("set-up-2")?) / 2.0)
    })?;
    let track_mm = (at("intake.car", "track.front")? + at("intake.car", "track.rear")?) / 2.0;
    let slope = |mm: f64, over_mm: f64| (mm / over_mm).atan().to_degrees();
    Some(FloorSlope {
        rise_forward_deg: slope((mm.fl + mm.fr - mm.rl - mm.rr) / 2.0, at("intake.car", "wheelbase")?),
        rise_left_deg: slope((mm.fl + mm.rl - mm.fr - mm.rr) / 2.0, track_mm),
    })
}

fn raw(at: At, step: &str) -> Option<Raw> {
    let wheel = |p: Place| {
        let of = |input: &str| at(step, &format!("{input}.{}", p.code()));
        Some(AtWheel {
            camber_deg: of("camber")?,
            front_mm: of("edge-front")?,
            rear_mm: of("edge-rear")?,
            hub_mm: of("hub")?,
        })
    };
    Some(Raw {
        bench: bench(at)?,
        wheelbase_mm: at("intake.car", "wheelbase")?,
        rim_mm: (at(LINES, "rim-between.front")?, at(LINES, "rim-between.rear")?),
        lines_mm: [at(LINES, "lines-front")?, at(LINES, "lines-rear")?, at(LINES, "lines-apart")?],
        wheels: corners(wheel)?,
    })
}

/// Casters of the last sweep, left and right; none before one.
fn caster(at: At, toe: &Corners<KnownAngle>) -> Option<Result<[KnownAngle; 2], JudgeError>> {
    let bench = bench(at)?;
    let inclination_deg = at(ADJUSTERS, "inclination")?;
    let of = |p: Place| {
        let both = |input: &str| {
            let at = |side: &str| at(SWEEP, &format!("sweep-{side}-{input}.{}", p.code()));
            Some([at("left")?, at("right")?])
        };
        let read = AtSweep { plate_deg: both("plate")?, gauge_deg: both("gauge")? };
        Some(bench.caster(p, &read, *toe.at(p), inclination_deg).map_err(JudgeError::from))
    };
    let (left, right) = (of(Place::Fl)?, of(Place::Fr)?);
    Some(left.and_then(|left| Ok([left, right?])))
}

fn aligned(at: At, step: &str, agreed: &Agreed) -> Result<Aligned, JudgeError> {
    let angles = raw(at, step).ok_or(JudgeError::NotKnown("a reading of the angles"))?.angles()?;
    let caster = caster(at, &angles.toe).transpose()?;
    let rows = rows(agreed, &angles, caster.as_ref());
    Ok(Aligned { angles, caster, rows })
}

impl Known<'_> {
    /// What was agreed of the angles; none before intake.
    pub fn agreed_angles(&self) -> Option<Agreed> {
        Some(Agreed {
            camber_deg: self.axles(AGREED, "agreed-camber")?,
            toe_deg: self.axles(AGREED, "agreed-toe")?,
            caster_deg: self.value(AGREED, "agreed-caster")?,
            window_deg: self.value(AGREED, "angle-window")?,
            caster_window_deg: self.value(AGREED, "caster-window")?,
            toe_window_deg: self.value(AGREED, "toe-window")?,
        })
    }

    /// What is known of the instruments of the alignment.
    pub fn angle_instruments(&self) -> Option<Instruments> {
        instruments(&|step, key| self.value(step, key))
    }

    /// The angles of a reading step, the step at hand included.
    ///
    /// # Errors
    /// What is not known yet; readings that cannot be.
    pub fn aligned(&self, step: &str) -> Result<Aligned, JudgeError> {
        let agreed = self.agreed_angles().ok_or(JudgeError::NotKnown("an agreed angle"))?;
        let read = self.recordings().iter().rposition(|r| r.step == step).filter(|_| self.draft_of(step).is_none());
        // Lines that were set up again since say nothing of this reading; a sweep that was made since does.
        let at = |of: &str, key: &str| match read {
            Some(read) if of == LINES || of == step => self.value_then(read, of, key),
            _ => self.value(of, key),
        };
        aligned(&at, step, &agreed)
    }

    /// The value under a key of a step, as it stood when the recording of that place was made.
    fn value_then(&self, index: usize, step: &str, key: &str) -> Option<f64> {
        let last = self.recordings()[..=index].iter().rev().find(|r| r.step == step)?;
        last.looks(key).first().copied()
    }

    /// Caster of the sweep at hand, with the toe that is known then.
    pub fn swept(&self) -> Option<Result<[KnownAngle; 2], JudgeError>> {
        let at = |step: &str, key: &str| self.value(step, key);
        let careful = raw(&at, READ).and_then(|raw| raw.angles().ok()).map(|angles| angles.toe);
        let toe = careful.or_else(|| Some(self.corners("rough.angles", "toe")?.map(|deg| rough_toe(*deg))))?;
        caster(&at, &toe)
    }

    /// What one turn of a wheel's adjusters is entered to do; none before intake.
    pub fn angle_steps(&self, place: Place) -> Option<Steps> {
        let of = |key: &str| self.axles(ADJUSTERS, key).map(|both| axle_of(place, both.0, both.1));
        Some(Steps {
            per_turn_deg: [of("toe-per-turn")?, of("camber-per-turn")?, self.value(ADJUSTERS, "caster-per-turn")?],
            steps: [of("toe-steps")?, of("camber-steps")?, self.value(ADJUSTERS, "caster-steps")?],
        })
    }

    /// What the adjusters of a wheel are entered to move besides; none where that is not known.
    fn couplings(&self, place: Place) -> Option<Couplings> {
        let toe = self.axles(GEOMETRY, "camber-moves-toe")?;
        Some(Couplings {
            camber_moves_toe_deg: axle_of(place, toe.0, toe.1),
            caster_moves_camber_deg: self.value(GEOMETRY, "caster-moves-camber")?,
            caster_moves_toe_deg: self.value(GEOMETRY, "caster-moves-toe")?,
        })
    }

    /// Camber and toe for one mm of wheel travel into bump, front and rear, degrees: as entered, or from what changed between
    /// two heights; none where it is not known.
    pub fn bump_curve(&self) -> Option<((f64, f64), (f64, f64))> {
        let at = |input: &str| self.axles(GEOMETRY, input);
        if let (Some(camber), Some(toe)) = (at("bump-camber"), at("bump-toe")) {
            return Some((camber, toe));
        }
        // The travel is at least five millimetres, as the step asks.
        let travelled_mm = at("bump-travelled")?;
        let slope = |changed: (f64, f64)| (changed.0 / travelled_mm.0, changed.1 / travelled_mm.1);
        Some((slope(at("bump-camber-change")?), slope(at("bump-toe-change")?)))
    }

    /// What the adjusters of a wheel do: as entered, and as every change since showed that was read before and after.
    pub fn effects(&self, place: Place) -> Option<Effects> {
        let agreed = self.agreed_angles()?;
        let mut effects = Effects::entered(&self.angle_steps(place)?, self.couplings(place).as_ref());
        let mut before: Option<Aligned> = None;
        let (mut turned, mut swept) = ([0.0; 3], false);
        for (index, recording) in self.recordings().iter().enumerate() {
            let made = |input: &str| recording.looks(&format!("{input}.{}", place.code())).first().copied();
            match recording.step {
                step if step.starts_with("align.change-") => {
                    for (turned, input) in turned.iter_mut().zip(["toe-turns", "camber-turns", "caster-turns"]) {
                        *turned += made(input).unwrap_or(0.0);
                    }
                    swept = false;
                }
                SWEEP => swept = true,
                READ => {
                    let then = |step: &str, key: &str| self.value_then(index, step, key);
                    let Ok(now) = aligned(&then, READ, &agreed) else { continue };
                    if let Some(before) = before.as_ref().filter(|_| turned != [0.0; 3]) {
                        let (seen, spread) = change(before, &now, place, swept);
                        effects = effects.after(turned, seen, spread).unwrap_or(effects);
                    }
                    (before, turned) = (Some(now), [0.0; 3]);
                }
                _ => {}
            }
        }
        Some(effects)
    }

    /// True when the last judgement chose to set the caster too.
    pub fn sets_caster(&self) -> bool {
        self.text(JUDGE, "next") == Some("change-caster")
    }

    /// What to turn at every wheel, from the last reading: the rear first, and the front wheels for the line that the rear
    /// axle will push the car along then.
    pub fn angle_plan(&self, aligned: &Aligned, with_caster: bool) -> Option<Corners<WheelPlan>> {
        let agreed = self.agreed_angles()?;
        let plan = |p: Place, thrust_deg: f64| {
            let caster = if p.is_left() { 0 } else { 1 };
            let caster = aligned.caster.filter(|_| with_caster && p.axle() == Axle::Front).map(|both| both[caster]);
            let toe_deg = aligned.angles.toe.at(p).deg - agreed.toe_target_deg(p, thrust_deg);
            let camber_deg = aligned.angles.camber.at(p).deg - axle_of(p, agreed.camber_deg.0, agreed.camber_deg.1);
            let off_deg = [toe_deg, camber_deg, caster.map_or(0.0, |c| c.deg - agreed.caster_deg)];
            let window =
                [Some(agreed.toe_window_deg), Some(agreed.window_deg), caster.map(|_| agreed.caster_window_deg)];
            wheel_plan(&self.effects(p)?, &self.angle_steps(p)?, off_deg, window, [true, true, caster.is_some()])
        };
        let (rl, rr) = (plan(Place::Rl, 0.0)?, plan(Place::Rr, 0.0)?);
        let toe = &aligned.angles.toe;
        let (left, right) = (toe.rl.deg + rl.change_deg[0], toe.rr.deg + rr.change_deg[0]);
        let thrust_deg = (right - left) / 2.0;
        Some(Corners { fl: plan(Place::Fl, thrust_deg)?, fr: plan(Place::Fr, thrust_deg)?, rl, rr })
    }
}

/// Change of toe, camber and caster of a wheel between two readings, and its standard uncertainty.
fn change(before: &Aligned, now: &Aligned, place: Place, swept: bool) -> ([f64; 3], [f64; 3]) {
    let of = |aligned: &Aligned| {
        let caster = match place {
            Place::Fl => aligned.caster.map(|both| both[0]),
            Place::Fr => aligned.caster.map(|both| both[1]),
            Place::Rl | Place::Rr => None,
        };
        [Some(*aligned.angles.toe.at(place)), Some(*aligned.angles.camber.at(place)), caster.filter(|_| swept)]
    };
    let (before, now) = (of(before), of(now));
    let (mut seen, mut spread) = ([0.0; 3], [NOT_SEEN_DEG; 3]);
    for i in 0..3 {
        if let (Some(before), Some(now)) = (before[i], now[i]) {
            seen[i] = now.deg - before.deg;
            spread[i] = now.standard_deg.hypot(before.standard_deg);
        }
    }
    (seen, spread)
}
