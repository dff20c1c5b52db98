//! What people type, and what becomes of it.

use bayhand_measure::{EntryError, Range, Unit, parse, parse_looks, parse_within, show};

fn check(text: &str, unit: Unit, expected: f64) {
    match parse(text, unit) {
        Ok(value) => {
            let near = (value.base - expected).abs() <= 1e-12 * expected.abs();
            assert!(near, "'{text}' in {unit:?}: {} is not {expected}", value.base);
            assert_eq!(value.text, text.trim(), "the text as typed stays beside the value");
        }
        Err(why) => panic!("'{text}' in {unit:?} was refused: {why}"),
    }
}

fn refused(text: &str, says: &str) {
    let why = parse(text, Unit::Kilogram).expect_err(text);
    assert_eq!(why.to_string(), says);
}

fn refused_within(text: &str, unit: Unit, says: &str) {
    let corner = Range::new("50", "400", Unit::Kilogram).expect("a range");
    let why = parse_within("load FL", text, unit, &corner).expect_err(text);
    assert_eq!(why.to_string(), says);
}

#[test]
fn comma_and_point_and_signs_are_read() {
    check("12,5", Unit::Kilogram, 12.5);
    check(" 12.5\t", Unit::Kilogram, 12.5);
    check("+3", Unit::Millimetre, 3.0);
    check("-1,25", Unit::Degree, -1.25);
    check("\u{2212}1.25", Unit::Degree, -1.25);
    check(",5", Unit::Bar, 0.5);
    assert!(parse("-0", Unit::Kilogram).expect("zero").base.is_sign_positive(), "minus zero is zero");
}

/// NIST SP 811 (2008), appendix B.8; published.
#[test]
fn units_convert_by_the_published_factors() {
    check("1", Unit::Pound, 0.453_592_37);
    check("1", Unit::Inch, 25.4);
    check("1", Unit::Psi, 0.068_947_572_931_683_6);
    check("250", Unit::Kilopascal, 2.5);
    check("30", Unit::ArcMinute, 0.5);
    // SP 811 lists pound-force per inch as 1.751 268 E+02 N/m.
    let rate = parse("1", Unit::PoundForcePerInch).expect("a rate").base;
    assert!((rate - 0.175_126_8).abs() < 5e-8, "one lbf/in is {rate} N/mm");
}

#[test]
fn what_is_no_number_is_refused_in_words() {
    refused("", "value is empty; type a number");
    refused("   ", "value is empty; type a number");
    for text in ["abc", "12kg", "1e3", "NaN", "inf", "1 234", "1'234", "--1", "+-1", "-", "5.", ".", "0x10", "١"] {
        refused(text, &format!("value: '{text}' is not a number; type digits with one decimal comma or point"));
    }
    for text in ["1.234,5", "1,2,3", "1..2"] {
        let says = "has two separators; type one decimal comma or point and no thousands separator";
        refused(text, &format!("value: '{text}' {says}"));
    }
    refused("1234567890123", "value: '1234567890123' has more than 12 digits");
    assert!(matches!(parse("2,5", Unit::Count), Err(EntryError::NotWhole { .. })), "a count is whole");
}

#[test]
fn ranges_are_named_in_the_unit_that_was_typed() {
    refused_within("5", Unit::Kilogram, "load FL: 5 kg is below the range 50 to 400 kg");
    refused_within("5000", Unit::Kilogram, "load FL: 5000 kg is above the range 50 to 400 kg");
    // 400 kg is 881.849 lb and 50 kg is 110.231 lb: rounded inwards.
    refused_within("5000", Unit::Pound, "load FL: 5000 lb is above the range 110.3 to 881.8 lb");
    refused_within("20", Unit::Inch, "load FL: in measures Length; this field takes Mass");
}

#[test]
fn a_probable_wrong_unit_is_asked_back() {
    refused_within("480", Unit::Kilogram, "load FL: 480 kg is above the range 50 to 400 kg; did you mean lb?");
    refused_within("100", Unit::Pound, "load FL: 100 lb is below the range 110.3 to 881.8 lb; did you mean kg?");
    let tyre = Range::new("1,0", "3.5", Unit::Bar).expect("a range");
    let why = parse_within("tyre FL", "220", Unit::Bar, &tyre).expect_err("220 bar");
    assert_eq!(why.to_string(), "tyre FL: 220 bar is above the range 1,0 to 3.5 bar; did you mean kPa?");
}

#[test]
fn the_ends_of_a_range_are_inside_it() {
    let narrow = Range::new("-0.3", "0.3", Unit::Millimetre).expect("a range");
    for text in ["-0.3", "0,3"] {
        assert!(parse_within("pad", text, Unit::Millimetre, &narrow).is_ok(), "{text} is an end");
    }
    assert!(parse_within("pad", "0.31", Unit::Millimetre, &narrow).is_err(), "beyond the end");
}

#[test]
fn a_range_that_is_none_is_the_documents_fault() {
    for (min, max) in [("3", "1"), ("", "1"), ("a", "1"), ("1", "NaN")] {
        assert!(matches!(Range::new(min, max, Unit::Bar), Err(EntryError::BadRange { .. })), "{min} to {max}");
    }
}

#[test]
fn several_looks_in_one_field() {
    let corner = Range::new("50", "400", Unit::Kilogram).expect("a range");
    let looks = |text: &str| {
        parse_looks("load FL", text, Unit::Kilogram, &corner, 3).map(|v| v.iter().map(|l| l.base).collect::<Vec<_>>())
    };
    assert_eq!(looks("295,1 295,2; 295.0"), Ok(vec![295.1, 295.2, 295.0]), "comma is always decimal");
    assert_eq!(looks("295.1/295.3"), Ok(vec![295.1, 295.3]), "a slash separates");
    assert!(matches!(looks(" ; "), Err(EntryError::Empty { .. })), "no look at all");
    assert!(matches!(looks("1 2 3 4"), Err(EntryError::TooManyLooks { got: 4, most: 3, .. })), "one too many");
    assert!(matches!(looks("295.1 x"), Err(EntryError::NotANumber { .. })), "each look is checked");
    assert!(matches!(looks("295.1 5"), Err(EntryError::TooLow { .. })), "each look is inside the range");
}

#[test]
fn degrees_and_minutes_are_read_and_shown_together() {
    for (text, degrees) in [
        ("1°30", 1.5),
        ("-1°30′", -1.5),
        ("-0:15", -0.25),
        ("0°07.5'", 0.125),
        ("2", 2.0),
        ("-1,25", -1.25),
        ("-0°00", 0.0),
    ] {
        check(text, Unit::DegreeMinute, degrees);
    }
    for text in ["1°60", "1.5°30", "1°-5", "°", "1°30°5", "1 30", "-1°30 5"] {
        assert!(parse(text, Unit::DegreeMinute).is_err(), "{text:?} is no angle");
    }
    assert!(parse("1°30", Unit::Degree).is_err(), "decimal degrees have no minutes");
    for (degrees, text) in
        [(-1.5, "-1°30′"), (0.25, "0°15′"), (-0.001, "0°00′"), (0.9999, "1°00′"), (1.0 + 7.0 / 60.0, "1°07′")]
    {
        assert_eq!(show(degrees, Unit::DegreeMinute, 0), text);
    }
    assert_eq!(show(0.125, Unit::DegreeMinute, 1), "0°07.5′");
}

#[test]
fn a_range_is_shown_in_another_unit_rounded_inwards() {
    let range = Range::new("10", "1500", Unit::Kilogram).expect("a range");
    assert_eq!(
        range.shown_in(Unit::Pound),
        ("22.1".into(), "3306.9".into()),
        "10 kg are 22.046 lb, 1500 kg 3306.93 lb"
    );
    assert_eq!(range.shown_in(Unit::Kilogram), ("10".into(), "1500".into()), "as they stand in the document");
    assert_eq!(range.shown_in(Unit::Bar), ("10".into(), "1500".into()), "a pressure is no mass");
}
