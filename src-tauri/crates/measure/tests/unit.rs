//! Units, their codes, and numbers shown.

use bayhand_measure::{Quantity, Unit, decimals_for, show};

fn check(base: f64, unit: Unit, expected: &str) {
    assert_eq!(show(base, unit, decimals_for(unit)), expected, "{base} shown in {unit:?}");
}

#[test]
fn numbers_are_shown_rounded_and_without_minus_zero() {
    check(295.354, Unit::Kilogram, "295.4");
    check(-0.04, Unit::Kilogram, "0.0");
    check(-0.06, Unit::Kilogram, "-0.1");
    check(0.453_592_37, Unit::Pound, "1.0");
    check(25.4, Unit::Inch, "1.000");
    check(2.2, Unit::Kilopascal, "220");
    check(-1.25, Unit::Degree, "-1.25");
    check(f64::NAN, Unit::Kilogram, "–");
}

#[test]
fn every_unit_goes_to_its_base_and_back() {
    for unit in Unit::ALL {
        let back = unit.from_base(unit.to_base(123.456));
        assert!((back - 123.456).abs() < 1e-12 * 123.456, "{unit:?} came back as {back}");
        let base = unit.quantity().base_unit();
        assert_eq!(base.quantity(), unit.quantity(), "the base of {unit:?} measures the same");
        assert_eq!(base.to_base(1.0), 1.0, "{base:?} is a base unit");
    }
}

#[test]
fn codes_are_those_of_the_documents() {
    let codes: Vec<String> =
        Unit::ALL.iter().map(|u| serde_json::to_string(u).expect("a code").trim_matches('"').to_owned()).collect();
    let expected = [
        "kg",
        "lb",
        "mm",
        "in",
        "bar",
        "kpa",
        "psi",
        "deg",
        "arcmin",
        "deg-min",
        "turn",
        "n-per-mm",
        "lbf-per-in",
        "nm-per-deg",
        "percent",
        "ratio",
        "count",
        "s",
    ];
    assert_eq!(codes, expected, "codes are part of the procedure document");
    assert_eq!(serde_json::to_string(&Quantity::Rate).expect("a code"), "\"rate\"", "quantities are lowercase");
}
