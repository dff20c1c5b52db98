//! Tyres: pressure and temperature, and what a pressure difference does to heights and loads.
//!
//! Pressures are gauge, kPa (100 kPa are 1 bar), unless a name says otherwise; temperatures are of the air inside, in
//! degrees Celsius.

use crate::error::{check_loads, each_within, within};
use crate::pads::times;
use crate::{Figures, Sensitivity, StaticsError};
use bayhand_vehicle::{Car, Corners, STANDARD_GRAVITY};

/// Pressure of the standard atmosphere at sea level, kPa (ISO 2533:1975). In a bay 500 m up it is about 6 kPa less.
pub const STANDARD_ATMOSPHERE_KPA: f64 = 101.325;

/// 0 degrees Celsius, kelvin (definition).
const ZERO_CELSIUS_K: f64 = 273.15;

/// Share of a tyre's vertical stiffness that follows its pressure, when nothing better is known; the rest is carcass.
/// **An assumption**, class M (from memory, no source seen): the coefficient of pressure in [`stiffness_n_per_mm`]
/// lies about 0.6 to 0.9 for road tyres. A tyre measured at two pressures gives its own.
pub const DEFAULT_PRESSURE_SHARE: f64 = 0.7;

/// The gauge pressure after the air has changed its temperature at constant volume: `p / T` stays, both absolute.
/// From cold to hot and back; a tyre's volume changes by far less than a hundredth.
///
/// # Errors
/// Pressures outside 0 to 2000 kPa, temperatures outside -60 to 200 °C, an atmosphere outside 50 to 110 kPa.
pub fn at_temperature_kpa(
    gauge_kpa: f64,
    from_celsius: f64,
    to_celsius: f64,
    atmosphere_kpa: f64,
) -> Result<f64, StaticsError> {
    within("gauge_kpa", gauge_kpa, 0.0, 2_000.0, "from 0 to 2000 kPa")?;
    within("from_celsius", from_celsius, -60.0, 200.0, "from -60 to 200 °C")?;
    within("to_celsius", to_celsius, -60.0, 200.0, "from -60 to 200 °C")?;
    within("atmosphere_kpa", atmosphere_kpa, 50.0, 110.0, "from 50 to 110 kPa")?;
    let hotter = (to_celsius + ZERO_CELSIUS_K) / (from_celsius + ZERO_CELSIUS_K);
    Ok((gauge_kpa + atmosphere_kpa) * hotter - atmosphere_kpa)
}

/// Vertical stiffness at another pressure, N/mm: `k = k0 (1 + share (p - p0) / p0)`, the form of Besselink, Schmeitz
/// and Pacejka, An improved Magic Formula/Swift tyre model that can handle inflation pressure changes, Vehicle System
/// Dynamics 48 (2010), equation 5 (class M: the paper itself was not seen).
pub fn stiffness_n_per_mm(stated_n_per_mm: f64, stated_kpa: f64, at_kpa: f64, pressure_share: f64) -> f64 {
    stated_n_per_mm * (1.0 + pressure_share * (at_kpa - stated_kpa) / stated_kpa)
}

/// Four tyres pumped from one pressure to another, and what is assumed of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureChange {
    /// Pressure at which each tyre has the vertical rate of the car's data, kPa.
    pub stated_kpa: Corners<f64>,
    /// Pressure at which the loads were read, kPa.
    pub from_kpa: Corners<f64>,
    /// Pressure after, kPa.
    pub to_kpa: Corners<f64>,
    /// Share of the stiffness that follows the pressure, 0 to 1; see [`DEFAULT_PRESSURE_SHARE`].
    pub pressure_share: f64,
}

/// What a pressure difference does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureEffect {
    /// Vertical rate of each tyre then, N/mm.
    pub tyre_n_per_mm: Corners<f64>,
    /// Rise of each wheel centre under its present load, mm: as if its pad came up by this.
    pub rise_mm: Corners<f64>,
    /// Change of each load, kg.
    pub change_kg: Corners<f64>,
    /// Change of the height of the body over each wheel's pad, mm.
    pub height_change_mm: Corners<f64>,
    /// The loads then, kg.
    pub loads_kg: Corners<f64>,
    /// Their figures.
    pub figures: Figures,
}

/// Loads and heights after tyres were pumped from one pressure to another, the assumption being that of
/// [`PressureChange::pressure_share`].
///
/// A tyre is a spring from its free radius, so one that carries F and goes from rate k to k' lifts its wheel by
/// `F/k - F/k'`; with the new rates the car answers as to pads raised by that. Exact for linear springs.
///
/// # Errors
/// A car, loads or pressures that cannot be; a wheel that would leave its pad.
pub fn pressure_effect(
    car: &Car,
    loads_kg: &Corners<f64>,
    change: &PressureChange,
) -> Result<PressureEffect, StaticsError> {
    car.validate()?;
    check_loads("loads_kg", loads_kg)?;
    for (at, kpa) in [("stated_kpa", &change.stated_kpa), ("from_kpa", &change.from_kpa), ("to_kpa", &change.to_kpa)] {
        each_within(at, kpa, 20.0, 2_000.0, "from 20 to 2000 kPa")?;
    }
    within("pressure_share", change.pressure_share, 0.0, 1.0, "from 0 to 1")?;
    let rate = |kpa: &Corners<f64>| {
        Corners::from_fn(|p| {
            let stated = car.corners.at(p).tyre_n_per_mm;
            stiffness_n_per_mm(stated, *change.stated_kpa.at(p), *kpa.at(p), change.pressure_share)
        })
    };
    let (before, tyre_n_per_mm) = (rate(&change.from_kpa), rate(&change.to_kpa));
    let rise_mm =
        Corners::from_fn(|p| loads_kg.at(p) * STANDARD_GRAVITY * (1.0 / before.at(p) - 1.0 / tyre_n_per_mm.at(p)));
    let mut pumped = *car;
    for place in bayhand_vehicle::Place::ALL {
        pumped.corners.at_mut(place).tyre_n_per_mm = *tyre_n_per_mm.at(place);
    }
    let sensitivity = Sensitivity::of(&pumped)?;
    let change_kg = Corners::from_array(times(&sensitivity.load_per_mm_pad, &rise_mm.to_array()));
    let over_pad = Corners::from_array(times(&sensitivity.height_per_mm_pad, &rise_mm.to_array()));
    let loads_kg = Corners::from_fn(|p| loads_kg.at(p) + change_kg.at(p));
    each_within("to_kpa.loads_kg", &loads_kg, 0.0, 5_000.0, "a load from 0 to 5000 kg: the wheel stays on its pad")?;
    Ok(PressureEffect {
        tyre_n_per_mm,
        rise_mm,
        change_kg,
        // A raised pad takes itself off the height over it; a pumped tyre does not.
        height_change_mm: Corners::from_fn(|p| over_pad.at(p) + rise_mm.at(p)),
        loads_kg,
        figures: Figures::of(&loads_kg),
    })
}
