//! What may be said and what it means: each form of a number as a technician says it.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_speech::spoken::Corner;
use bayhand_speech::spoken::grammar::{Corners, Expect, Form, Grammar, GrammarError};
use bayhand_speech::spoken::number::{Tongue, words};
use bayhand_speech::spoken::reading::parse;
use proptest::prelude::*;
use std::sync::LazyLock;

fn of(form: Form) -> Grammar {
    Grammar::new(Expect { phrases: vec![], reading: Some(form) }).unwrap()
}

static ANY: LazyLock<Grammar> = LazyLock::new(|| of(Form::default()));
static LOAD: LazyLock<Grammar> = LazyLock::new(|| {
    of(Form { corner: Some(Corner::FrontLeft), digits: 3, decimals: 1, minus: false, looks: 3, ..Form::default() })
});

fn check(said: &str, corner: Option<Corner>, looks: &[&str], unit: Option<&str>) {
    assert!(ANY.allows(said) || LOAD.allows(said), "{said:?} may be said");
    let read = parse(said).unwrap_or_else(|| panic!("{said:?} is a reading"));
    assert_eq!((read.corner, read.unit), (corner, unit), "{said:?}");
    assert_eq!(read.looks, looks, "{said:?}");
}

#[test]
fn digit_by_digit() {
    check("front left two one four point five", Some(Corner::FrontLeft), &["214.5"], None);
    check("rear right nine oh eight point zero", Some(Corner::RearRight), &["908.0"], None);
    check("front right one double four point five", Some(Corner::FrontRight), &["144.5"], None);
    check("rear left double eight point three", Some(Corner::RearLeft), &["88.3"], None);
    check("front left minus one point two five", Some(Corner::FrontLeft), &["-1.25"], None);
    check("rear left five point double nine", Some(Corner::RearLeft), &["5.99"], None);
}

#[test]
fn the_natural_way() {
    check("front left six hundred and eighty four point four", Some(Corner::FrontLeft), &["684.4"], None);
    check("rear left two hundred and five point nine", Some(Corner::RearLeft), &["205.9"], None);
    check("rear right nine hundred eight", Some(Corner::RearRight), &["908"], None);
    check("front right two fourteen point five", Some(Corner::FrontRight), &["214.5"], None);
    check("front right two sixty five", Some(Corner::FrontRight), &["265"], None);
    check("front left nineteen", Some(Corner::FrontLeft), &["19"], None);
    check("rear left one thousand two hundred and six", Some(Corner::RearLeft), &["1206"], None);
    check("rear left a hundred", Some(Corner::RearLeft), &["100"], None);
    check("front right one point eighty six", Some(Corner::FrontRight), &["1.86"], None);
}

#[test]
fn trailing_zeros_units_and_several_looks() {
    check("front left two one four point zero kilograms", Some(Corner::FrontLeft), &["214.0"], Some("kilograms"));
    check("two one four point five then two one four point six", None, &["214.5", "214.6"], None);
    check("two one four point five and two one four point six", None, &["214.5", "214.6"], None);
    let natural = "two hundred and five point one and two hundred and five then two hundred and six";
    check(natural, None, &["205.1", "205", "206"], None);
    assert!(!LOAD.allows("two one four and two one five"), "without decimals only `then` parts two looks");
    check("front right point five", Some(Corner::FrontRight), &["0.5"], None);
    check("front right zero two point five", Some(Corner::FrontRight), &["2.5"], None);
}

#[test]
fn what_is_not_waited_for_cannot_be_heard() {
    for said in [
        "front right two one four",
        "two one four point five six",
        "two one four five",
        "minus two",
        "one double four five",
        "",
        "point",
        "next",
        "one then two then three then four",
    ] {
        assert!(!LOAD.allows(said), "{said:?} is not of the form");
    }
    for bare in ["two one four", "oh", "two"] {
        assert!(!ANY.allows(bare), "{bare:?} names no corner");
    }
}

#[test]
fn other_corners_or_none_may_be_said_where_the_form_says_so() {
    let load = Form { corner: Some(Corner::FrontLeft), digits: 3, decimals: 1, minus: false, ..Form::default() };
    let any = of(Form { corners: Corners::Any, ..load.clone() });
    for said in ["two one four", "front left two one four", "rear right two one four"] {
        assert!(any.allows(said), "{said:?}");
    }
    let none = of(Form { corner: None, corners: Corners::None, ..load });
    assert!(none.allows("two one four point five kilograms") && !none.allows("front left two one four"));
}

#[test]
fn phrases_are_words_and_forms_have_bounds() {
    let error = |phrases: &[&str], reading: Option<Form>| {
        let phrases = phrases.iter().map(|phrase| (*phrase).to_owned()).collect();
        Grammar::new(Expect { phrases, reading }).err()
    };
    assert_eq!(error(&[], None), Some(GrammarError::Nothing));
    for wrong in ["", "step 2", "go(", "café"] {
        assert!(matches!(error(&["next", wrong], None), Some(GrammarError::Phrase { place: 1, .. })), "{wrong:?}");
    }
    assert_eq!(error(&["where am I", "driver's door"], None), None);
    for form in [
        Form { digits: 0, ..Form::default() },
        Form { digits: 5, ..Form::default() },
        Form { decimals: 4, ..Form::default() },
        Form { looks: 0, ..Form::default() },
        Form { looks: 6, ..Form::default() },
    ] {
        assert!(matches!(error(&[], Some(form.clone())), Some(GrammarError::Range { .. })), "{form:?}");
    }
}

proptest! {
    /// What is read back digit by digit may be said so, and means the same number.
    #[test]
    fn a_number_said_is_the_number_heard(whole in 0_u32..1000, decimals in "[0-9]{0,3}", minus in any::<bool>()) {
        let sign = if minus { "-" } else { "" };
        let text = if decimals.is_empty() { format!("{sign}{whole}") } else { format!("{sign}{whole}.{decimals}") };
        let said = format!("rear left {}", words(&text, Tongue::English).unwrap());
        prop_assert!(ANY.allows(&said), "{}", said);
        prop_assert_eq!(parse(&said).map(|read| read.looks), Some(vec![text]));
    }

    /// Any way through the automaton ends in a reading within the form's digits.
    #[test]
    fn whatever_may_be_said_is_a_reading(choices in proptest::collection::vec(0_usize..1000, 30)) {
        const WORDS: [&str; 41] = [
            "front left", "minus", "point", "double", "oh", "o", "zero", "one", "two", "three", "four", "five", "six",
            "seven", "eight", "nine", "ten", "eleven", "fourteen", "nineteen", "twenty", "thirty", "ninety", "hundred", "and",
            "a", "thousand", "then", "kilograms", "pounds", "degrees", "turns", "millimetres", "fifty", "sixty", "seventy",
            "eighty", "forty", "thirteen", "fifteen", "twelve",
        ];
        let mut said = String::new();
        let mut place = LOAD.begin();
        for choice in choices {
            let open: Vec<_> = WORDS.iter().filter_map(|word| Some((*word, LOAD.after(place, format!(" {word}").as_bytes())?))).collect();
            if open.is_empty() {
                break;
            }
            let (word, after) = open[choice % open.len()];
            said = format!("{said} {word}");
            place = after;
            if LOAD.may_end(place) {
                let read = parse(said.trim());
                prop_assert!(read.is_some(), "{}", said);
                for look in read.unwrap().looks {
                    let (whole, fraction) = look.split_once('.').unwrap_or((&look, ""));
                    prop_assert!((1..=3).contains(&whole.len()) && fraction.len() <= 1, "{}: {}", said, look);
                }
            }
        }
    }
}
