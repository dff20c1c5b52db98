//! What the practice car's data sheet, its order and the labels on the workshop's instruments say.

use super::{by_suffix, fixed, one, two};
use bayhand_practice::{Instruments, PracticeCar};
use bayhand_vehicle::{Corners, Hand, Place, SpringSeat};

/// A number, in the unit of its field.
pub(super) fn number(car: &PracticeCar, step: &str, key: &str) -> Option<String> {
    let sheet = car.data_sheet();
    let (input, suffix) = key.split_once('.').unwrap_or((key, ""));
    let corner = |values: &Corners<f64>| {
        let place = Place::ALL.into_iter().find(|p| p.code() == suffix)?;
        Some(*values.at(place))
    };
    let axle_mean = |values: &Corners<f64>| match suffix {
        "front" => Some((values.fl + values.fr) / 2.0),
        "rear" => Some((values.rl + values.rr) / 2.0),
        _ => None,
    };
    let text = match (step, input) {
        ("intake.car", "wheelbase") => one(sheet.wheelbase_mm),
        ("intake.car", "track") => one(by_suffix(key, &sheet.track_mm)?),
        ("intake.car", "total") => one(sheet.total_kg),
        ("intake.car", "cg-height") => one(sheet.cg_height_mm),
        ("intake.car", "roll-axis-height") => one(sheet.roll_axis_height_mm),
        ("intake.springs", "spring") => one(by_suffix(key, &sheet.spring_n_per_mm)?),
        ("intake.springs", "motion-ratio") => two(by_suffix(key, &sheet.motion_ratio)?),
        ("intake.springs", "tyre") => one(by_suffix(key, &sheet.tyre_n_per_mm)?),
        ("intake.springs", "unsprung") => one(by_suffix(key, &sheet.unsprung_kg)?),
        ("intake.springs", "tyre-radius") => one(by_suffix(key, &sheet.tyre_radius_mm)?),
        ("intake.adjusters", "pitch") => two(sheet.thread.pitch_mm),
        ("intake.adjusters", "steps-per-turn") => sheet.steps_per_turn.to_string(),
        ("intake.adjusters", "turns-up") => two(sheet.collar_travel_up_mm / sheet.thread.pitch_mm),
        ("intake.adjusters", "turns-down") => two(sheet.collar_travel_down_mm / sheet.thread.pitch_mm),
        ("intake.bars", "front-bar-rate") => one(sheet.bar_n_per_mm.front),
        ("intake.bars", "rear-bar-rate") => one(sheet.bar_n_per_mm.rear),
        ("intake.bars", "front-link-lead" | "rear-link-lead") => two(sheet.link_pitch_mm * sheet.wheel_per_link),
        ("intake.pressures", "cold") => two(corner(&sheet.cold_bar)?),
        ("intake.pressures", "working") => two(corner(&sheet.working_bar)?),
        ("intake.heights", _) => one(corner(&sheet.heights_mm)?),
        ("intake.travel", "bump-travel") => one(by_suffix(key, &sheet.bump_mm)?),
        ("intake.travel", "droop-travel") => one(by_suffix(key, &sheet.droop_mm)?),
        ("intake.travel", "travel-kept") => "15".into(),
        ("intake.angles", "agreed-camber") => two(axle_mean(&sheet.camber_deg)?),
        ("intake.angles", "agreed-toe") => two(axle_mean(&sheet.toe_deg)?),
        ("intake.angles", "agreed-caster") => two((sheet.caster_deg.left + sheet.caster_deg.right) / 2.0),
        ("intake.angles", "angle-window") => "0.2".into(),
        ("intake.angles", "caster-window") => "0.4".into(),
        ("intake.angles", "toe-window") => "0.15".into(),
        ("intake.angle-adjusters", "toe-per-turn") => {
            let rod = by_suffix(key, &sheet.tie_rod)?;
            let travel_mm = rod.pitch_mm * if rod.opposite_threads { 2.0 } else { 1.0 };
            two((travel_mm / rod.arm_mm).atan().to_degrees())
        }
        ("intake.angle-adjusters", "toe-steps") => "12".into(),
        ("intake.angle-adjusters", "camber-per-turn") => two(by_suffix(key, &sheet.camber_deg_per_turn)?),
        ("intake.angle-adjusters", "camber-steps" | "caster-steps") => "4".into(),
        ("intake.angle-adjusters", "caster-per-turn") => two(sheet.caster_deg_per_turn),
        ("intake.angle-adjusters", "inclination") => one(sheet.inclination_deg),
        ("intake.angle-geometry", "bump-camber") => fixed(sheet.bump_camber_deg_per_mm, 3),
        ("intake.angle-geometry", "bump-toe") => "0".into(),
        ("intake.angle-geometry", "camber-moves-toe") => two(by_suffix(key, &sheet.couplings.camber_moves_toe_deg)?),
        ("intake.angle-geometry", "caster-moves-camber") => two(sheet.couplings.caster_moves_camber_deg),
        ("intake.angle-geometry", "caster-moves-toe") => two(sheet.couplings.caster_moves_toe_deg),
        ("intake.angle-instruments", _) => return accuracy(&sheet.instruments, input),
        ("intake.wishes", "cross-target") => one(sheet.cross_pct),
        ("intake.wishes", "cross-window") => "0.5".into(),
        ("intake.wishes", "axle-window") => "5".into(),
        ("intake.wishes", "height-window") => "3".into(),
        ("intake.wishes", "side-limit") => "7.5".into(),
        ("intake.load", "driver") | ("used.ballast" | "restore.ballast", "ballast") => one(sheet.ballast_kg),
        ("used.ballast", "footwell") => one(sheet.ballast_kg / 5.0),
        ("intake.place", "wait") => "2".into(),
        ("intake.pads", "pads-resolution") => fixed(sheet.instruments.pad_resolution_kg, 2),
        // Intervals of about 95 %, as a certificate states them.
        ("intake.pads", "pads-zero") => fixed(2.0 * sheet.instruments.pad_zero_kg, 2),
        ("intake.pads", "pads-calibration") => fixed(2.0 * sheet.instruments.pad_calibration_pct, 2),
        ("intake.instruments", "laser-accuracy") => {
            // An interval of about 95 %. Two set-ups half a turn apart lose the tilt of the laser's plane, so that the
            // label says what the readings of the staff leave.
            fixed(2.0 * sheet.instruments.level_mm(), 2)
        }
        (_, "parts") => "2".into(),
        _ => return None,
    };
    Some(text)
}

/// What the certificate of an instrument of the alignment states: an interval of about 95 %, resolution included.
fn accuracy(of: &Instruments, input: &str) -> Option<String> {
    let twice = |look: f64, resolution: f64| 2.0 * look.hypot(resolution / 12.0_f64.sqrt());
    Some(match input {
        "gauge-accuracy" => two(twice(of.angle_look_deg, of.angle_resolution_deg)),
        "plate-accuracy" => two(twice(of.plate_look_deg, of.plate_resolution_deg)),
        "plate-scale" => one(2.0 * of.plate_scale_pct),
        "line-accuracy" => two(twice(of.line_look_mm, of.line_resolution_mm)),
        "across-accuracy" => two(twice(of.across_look_mm, of.across_resolution_mm)),
        _ => return None,
    })
}

/// The id of the option that the papers name.
pub(super) fn choice(car: &PracticeCar, key: &str) -> Option<String> {
    let sheet = car.data_sheet();
    let option = match key {
        "use" => "fast-road",
        "driver-side" => match sheet.driver {
            bayhand_practice::DriverSide::Left => "left",
            bayhand_practice::DriverSide::Right => "right",
        },
        "front-axle" => "front-independent",
        "rear-axle" => "rear-independent",
        "stops" => "stops-known",
        "body" => "body-stiff",
        "couplings" => "couplings-known",
        "bump" => "bump-known",
        "drive" => "rear-drive",
        "ratio-way" => "ratio-spring-per-wheel",
        "springing" => "each-wheel",
        "high-voltage" => "no-high-voltage",
        "parking-brake" => "mechanical-brake",
        "extinguisher" => "no-extinguisher",
        "lifting-mode" => "no-lifting-mode",
        "bar-front" => "front-adjustable",
        "bar-rear" => "rear-adjustable",
        "hand" => match sheet.thread.hand {
            Hand::Right => "right-hand",
            Hand::Left => "left-hand",
        },
        "spring-seat" => match sheet.thread.spring {
            SpringSeat::AboveCollar => "spring-above",
            SpringSeat::BelowCollar => "spring-below",
        },
        "turn-under-load" => "never-under-load",
        "reach" => "reach-wheels-on",
        "first" => "cross-first",
        "lift" => "four-post",
        "freeing" => "slip-plates",
        "rock" => "steady",
        "road-test" => "not-driven",
        _ => return None,
    };
    Some(option.to_owned())
}

/// What is written on papers and labels; 'none' where nothing is meant.
pub(super) fn text(car: &PracticeCar, step: &str, key: &str) -> Option<String> {
    let fuel = || format!("{} l", one(car.data_sheet().fuel_l));
    let text = match (step, key.split('.').next().unwrap_or(key)) {
        ("intake.adjusters", _) => "lower lock ring of each damper".into(),
        ("intake.heights", _) => "sill seams above each wheel centre".into(),
        ("intake.load", "fuel-level") => fuel(),
        ("intake.load", _) => "full to the marks".into(),
        ("intake.place", _) => "MT".into(),
        ("intake.pads", "pads-id") => "pad set 3".into(),
        ("intake.instruments", "laser-id") => "site laser 1".into(),
        ("intake.instruments", "height-gauge-id") => "height gauge 2".into(),
        ("intake.instruments", "pressure-gauge-id") => "pressure gauge 5".into(),
        ("intake.angle-instruments", "angle-gauge-id") => "angle gauge 2".into(),
        // Labels of the invented workshop's instruments, renewed long before any of today's jobs.
        ("intake.instruments" | "intake.angle-instruments" | "intake.pads", _) => "2099-12-31".into(),
        ("walk.lifting-points", _) => "owner's handbook of the practice car, sheet 4".into(),
        (_, "clicks") => "8 from full hard".into(),
        (_, "parts-place") => "tray A on the bench".into(),
        ("lock.nuts", _) => "110 Nm".into(),
        ("align.fasteners", _) => "65 Nm at the tie rods, 90 Nm at the arms".into(),
        _ => return None,
    };
    Some(text)
}
