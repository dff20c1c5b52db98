//! The car and the instruments that the pictures are about: invented, a stiff car of one tonne.

use bayhand_chassis::reading::{HeightGauge, Instruments, Level};
use bayhand_chassis::{From, Predicted, To, predict};
use bayhand_vehicle::{Bars, Beams, Car, Corner, Corners, Sprung};

/// Wanted cross weight and half the width of its window, %.
pub const WANTED_PCT: f64 = 50.0;
pub const WINDOW_PCT: f64 = 0.2;

/// The car. Its mass centre is where the loads of [`reading`] say, unsprung masses apart.
pub fn car() -> Car {
    let corner = |spring: f64, ratio: f64| Corner {
        spring_n_per_mm: Some(spring),
        motion_ratio: Some(ratio),
        tyre_n_per_mm: 230.0,
        unsprung_kg: 38.0,
        tyre_radius_mm: 310.0,
        adjuster_ratio: None,
        bump_mm: None,
        droop_mm: None,
        bump_stop_n_per_mm: None,
        coil_bind_mm: None,
    };
    let (front, rear) = (corner(65.0, 0.96), corner(85.0, 0.82));
    Car {
        wheelbase_mm: 2_500.0,
        track_front_mm: 1_520.0,
        track_rear_mm: 1_480.0,
        roll_axis_height_mm: 80.0,
        sprung: Sprung { mass_kg: 848.0, cg_behind_front_axle_mm: 1_235.3, cg_left_mm: 15.3, cg_height_mm: 430.0 },
        torsion_nm_per_deg: None,
        corners: Corners { fl: front, fr: front, rl: rear, rr: rear },
        bars: Bars::default(),
        beams: Beams::default(),
        sprung_like: None,
        height_points: None,
    }
}

/// Its first reading: the left side is the heavier one, and the cross weight is short.
pub fn reading() -> From {
    From {
        collar_mm: Corners::same(0.0),
        pads_mm: Corners::same(0.0),
        loads_kg: Corners { fl: 266.0, fr: 239.0, rl: 242.5, rr: 252.5 },
        heights_mm: Corners { fl: 121.0, fr: 121.0, rl: 134.0, rr: 134.0 },
    }
}

/// What it reads after collars and pads were moved, mm.
pub fn after(collar_mm: Corners<f64>, pads_mm: Corners<f64>) -> Predicted {
    predict(&car(), &reading(), &To { collar_mm, pads_mm }).expect("a small move of an ordinary car")
}

/// Ordinary instruments, and struts that stick a little.
pub fn instruments() -> Instruments {
    Instruments {
        pad_resolution_kg: 0.1,
        pad_look_kg: 0.15,
        pad_zero_kg: 0.1,
        pad_calibration_pct: 0.03,
        settle_kg: 0.6,
        settle_dof: None,
        patch_mm: 1.0,
        level: Level { resolution_mm: 0.1, look_mm: 0.1, plane_mm_per_m: 0.1, set_ups: 2, turned: true },
        heights: HeightGauge { resolution_mm: 0.5, look_mm: 0.3, settle_mm: 0.5, zero_mm: 0.3 },
    }
}
