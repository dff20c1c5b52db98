//! Units, the quantity each belongs to, and the exact factors between them.

use crate::decimal;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// What is measured. Each has one base unit, in which the rest of the project computes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Quantity {
    /// A mass, or a load as a scale shows it; base kg.
    Mass,
    /// A length; base mm.
    Length,
    /// A gauge pressure; base bar.
    Pressure,
    /// An angle of a wheel or an axis; base degree.
    Angle,
    /// Turns of a collar or a rod; base one turn.
    Turns,
    /// A spring or tyre rate; base N/mm.
    Rate,
    /// A torsional stiffness; base Nm per degree.
    #[serde(rename = "torsional-stiffness")]
    TorsionalStiffness,
    /// A share; base percent.
    Percent,
    /// A bare ratio; base 1.
    Ratio,
    /// A whole number of things; base 1.
    Count,
    /// A time; base second.
    Duration,
}

impl Quantity {
    /// The unit that the rest of the project computes in.
    pub fn base_unit(self) -> Unit {
        match self {
            Quantity::Mass => Unit::Kilogram,
            Quantity::Length => Unit::Millimetre,
            Quantity::Pressure => Unit::Bar,
            Quantity::Angle => Unit::Degree,
            Quantity::Turns => Unit::Turn,
            Quantity::Rate => Unit::NewtonPerMillimetre,
            Quantity::TorsionalStiffness => Unit::NewtonMetrePerDegree,
            Quantity::Percent => Unit::Percent,
            Quantity::Ratio => Unit::Ratio,
            Quantity::Count => Unit::Count,
            Quantity::Duration => Unit::Second,
        }
    }
}

/// A unit that a person can type or read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub enum Unit {
    /// Kilogram.
    #[serde(rename = "kg")]
    Kilogram,
    /// Avoirdupois pound.
    #[serde(rename = "lb")]
    Pound,
    /// Millimetre.
    #[serde(rename = "mm")]
    Millimetre,
    /// Inch.
    #[serde(rename = "in")]
    Inch,
    /// Bar.
    #[serde(rename = "bar")]
    Bar,
    /// Kilopascal.
    #[serde(rename = "kpa")]
    Kilopascal,
    /// Pound-force per square inch.
    #[serde(rename = "psi")]
    Psi,
    /// Degree.
    #[serde(rename = "deg")]
    Degree,
    /// Minute of arc.
    #[serde(rename = "arcmin")]
    ArcMinute,
    /// Degrees and minutes of arc, written together: `-1°30`.
    #[serde(rename = "deg-min")]
    DegreeMinute,
    /// One turn.
    #[serde(rename = "turn")]
    Turn,
    /// Newton per millimetre.
    #[serde(rename = "n-per-mm")]
    NewtonPerMillimetre,
    /// Pound-force per inch.
    #[serde(rename = "lbf-per-in")]
    PoundForcePerInch,
    /// Newton metre per degree.
    #[serde(rename = "nm-per-deg")]
    NewtonMetrePerDegree,
    /// Percent.
    #[serde(rename = "percent")]
    Percent,
    /// A bare ratio.
    #[serde(rename = "ratio")]
    Ratio,
    /// A whole number of things.
    #[serde(rename = "count")]
    Count,
    /// Second.
    #[serde(rename = "s")]
    Second,
}

impl Unit {
    /// All units, siblings next to each other.
    pub const ALL: [Unit; 18] = [
        Unit::Kilogram,
        Unit::Pound,
        Unit::Millimetre,
        Unit::Inch,
        Unit::Bar,
        Unit::Kilopascal,
        Unit::Psi,
        Unit::Degree,
        Unit::ArcMinute,
        Unit::DegreeMinute,
        Unit::Turn,
        Unit::NewtonPerMillimetre,
        Unit::PoundForcePerInch,
        Unit::NewtonMetrePerDegree,
        Unit::Percent,
        Unit::Ratio,
        Unit::Count,
        Unit::Second,
    ];

    /// What it measures.
    pub fn quantity(self) -> Quantity {
        match self {
            Unit::Kilogram | Unit::Pound => Quantity::Mass,
            Unit::Millimetre | Unit::Inch => Quantity::Length,
            Unit::Bar | Unit::Kilopascal | Unit::Psi => Quantity::Pressure,
            Unit::Degree | Unit::ArcMinute | Unit::DegreeMinute => Quantity::Angle,
            Unit::Turn => Quantity::Turns,
            Unit::NewtonPerMillimetre | Unit::PoundForcePerInch => Quantity::Rate,
            Unit::NewtonMetrePerDegree => Quantity::TorsionalStiffness,
            Unit::Percent => Quantity::Percent,
            Unit::Ratio => Quantity::Ratio,
            Unit::Count => Quantity::Count,
            Unit::Second => Quantity::Duration,
        }
    }

    /// How it is written after a number; empty for a ratio and a count.
    pub fn symbol(self) -> &'static str {
        match self {
            Unit::Kilogram => "kg",
            Unit::Pound => "lb",
            Unit::Millimetre => "mm",
            Unit::Inch => "in",
            Unit::Bar => "bar",
            Unit::Kilopascal => "kPa",
            Unit::Psi => "psi",
            Unit::Degree => "deg",
            Unit::ArcMinute => "min",
            Unit::DegreeMinute => "° ′",
            Unit::Turn => "turn",
            Unit::NewtonPerMillimetre => "N/mm",
            Unit::PoundForcePerInch => "lbf/in",
            Unit::NewtonMetrePerDegree => "Nm/deg",
            Unit::Percent => "%",
            Unit::Ratio | Unit::Count => "",
            Unit::Second => "s",
        }
    }

    /// One of this unit in the base unit of its quantity, as numerator and denominator, so that a factor which is
    /// exact in decimals stays exact for as long as a double allows.
    ///
    /// Source: NIST SP 811 (2008), appendix B.8: pound (avoirdupois) 0.453 592 37 kg exactly, inch 25.4 mm exactly,
    /// bar 100 kPa exactly, minute of arc 1/60 degree; pound-force 4.448 221 615 260 5 N (0.453 592 37 kg × 9.806 65 m/s²),
    /// from which psi 6.894 757 293 168 361 kPa.
    fn factor(self) -> (f64, f64) {
        match self {
            Unit::Pound => (0.453_592_37, 1.0),
            Unit::Inch => (25.4, 1.0),
            Unit::Kilopascal => (1.0, 100.0),
            Unit::Psi => (6.894_757_293_168_361, 100.0),
            Unit::ArcMinute => (1.0, 60.0),
            Unit::PoundForcePerInch => (4.448_221_615_260_5, 25.4),
            Unit::Kilogram
            | Unit::Millimetre
            | Unit::Bar
            | Unit::Degree
            | Unit::DegreeMinute
            | Unit::Turn
            | Unit::NewtonPerMillimetre
            | Unit::NewtonMetrePerDegree
            | Unit::Percent
            | Unit::Ratio
            | Unit::Count
            | Unit::Second => (1.0, 1.0),
        }
    }

    /// A number of this unit in the base unit of its quantity.
    pub fn to_base(self, value: f64) -> f64 {
        let (up, down) = self.factor();
        value * up / down
    }

    /// A number of the base unit in this unit.
    pub fn from_base(self, base: f64) -> f64 {
        let (up, down) = self.factor();
        base * down / up
    }
}

/// Decimals that a figure in this unit is shown with, about a tenth of what workshop instruments resolve.
pub fn decimals_for(unit: Unit) -> usize {
    match unit {
        Unit::Kilopascal
        | Unit::PoundForcePerInch
        | Unit::NewtonMetrePerDegree
        | Unit::DegreeMinute
        | Unit::Count
        | Unit::Second => 0,
        Unit::Kilogram | Unit::Pound | Unit::Millimetre | Unit::Psi | Unit::ArcMinute | Unit::NewtonPerMillimetre => 1,
        Unit::Bar | Unit::Degree | Unit::Turn | Unit::Percent => 2,
        Unit::Inch | Unit::Ratio => 3,
    }
}

/// A number of the base unit as decimal text in `unit`, rounded half away from zero in the decimal digits of the
/// double, with a point, without the symbol, and never as minus zero.
///
/// Degrees and minutes are written together, `-1°30′`; `decimals` are those of the minutes.
///
/// A number that is not finite gives a dash: there is nothing to show.
pub fn show(base: f64, unit: Unit, decimals: usize) -> String {
    let value = unit.from_base(base);
    if !value.is_finite() {
        return "–".to_owned();
    }
    if unit == Unit::DegreeMinute {
        return decimal::degrees_and_minutes(value, decimals);
    }
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(rest) if rest.bytes().all(|b| matches!(b, b'0' | b'.')) => rest.to_owned(),
        _ => text,
    }
}
