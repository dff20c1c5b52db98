//! The sheet as a reader of the PDF sees it.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use bayhand_job::handover::Handover;
use bayhand_sheet::{SheetError, pdf, pdf_with_template};
use serde_json::Value;

const RICH: &str = include_str!("data/rich.json");
const LONG: &str = include_str!("data/long.json");

fn handover(json: &str) -> Handover {
    serde_json::from_str(json).unwrap()
}

/// All text of a PDF without its white space, which depends on where lines break.
fn words(pdf: &[u8]) -> String {
    let document = lopdf::Document::load_mem(pdf).unwrap();
    let pages: Vec<u32> = document.get_pages().into_keys().collect();
    closed_up(&document.extract_text(&pages).unwrap())
}

fn closed_up(text: &str) -> String {
    text.chars().filter(|sign| !sign.is_whitespace()).collect()
}

/// Every text of the handover that a reader should find: all but the codes.
fn texts(value: &Value, found: &mut Vec<String>) {
    match value {
        Value::String(text) => found.push(text.clone()),
        Value::Array(items) => items.iter().for_each(|item| texts(item, found)),
        Value::Object(fields) => {
            for (name, field) in fields {
                match name.as_str() {
                    "language" => {}
                    // In a row the pair of code and word; on the line the code alone.
                    "verdict" => texts(&field[1], found),
                    _ => texts(field, found),
                }
            }
        }
        _ => {}
    }
}

fn check_all_found(json: &str) {
    let seen = words(&pdf(&handover(json)).unwrap());
    let mut wanted = Vec::new();
    texts(&serde_json::from_str(json).unwrap(), &mut wanted);
    assert!(wanted.len() > 100, "the sample is rich");
    for text in wanted {
        assert!(seen.contains(&closed_up(&text)), "{text:?} cannot be found in the PDF");
    }
}

#[test]
fn every_text_can_be_selected() {
    check_all_found(RICH);
}

#[test]
fn no_long_text_is_cut() {
    check_all_found(LONG);
}

#[test]
fn equal_contents_give_equal_bytes() {
    let first = pdf(&handover(RICH)).unwrap();
    assert!(first == pdf(&handover(RICH)).unwrap(), "no clock and no chance in the sheet");
    let other = pdf(&handover(&RICH.replace("Marrow GT", "Marrow GS"))).unwrap();
    assert!(first != other, "another car, another sheet");
}

#[test]
fn title_and_language_are_set_and_no_date() {
    let document = lopdf::Document::load_mem(&pdf(&handover(&RICH.replace("\"en\"", "\"en-GB\""))).unwrap()).unwrap();
    let language = document.catalog().unwrap().get(b"Lang").unwrap().as_str().unwrap();
    assert_eq!(language, b"en-GB", "language of the handover, as a screen reader needs it");
    let info = document.trailer.get(b"Info").unwrap().as_reference().unwrap();
    let info = document.get_dictionary(info).unwrap();
    assert_eq!(info.get(b"Title").unwrap().as_str().unwrap(), b"Corner balance and alignment", "title of the handover");
    assert!(info.get(b"CreationDate").is_err(), "the time of printing is no fact of the job");
}

#[test]
fn an_empty_list_leaves_no_section() {
    let mut bare = handover(RICH);
    bare.facts.clear();
    bare.tables.clear();
    bare.turned.clear();
    bare.compromise.clear();
    bare.beyond.clear();
    bare.departures.clear();
    bare.cautions.clear();
    bare.people.clear();
    bare.instruments.clear();
    bare.seal.clear();
    bare.remarks.clear();
    bare.line = None;
    assert_eq!(words(&pdf(&bare).unwrap()), closed_up(&bare.title), "only the title is left, no heading");
}

#[test]
fn markup_in_a_text_is_only_text() {
    let mut odd = handover(RICH);
    odd.remarks = vec!["#panic() *not bold* $x$ [1] <a> \\ \" // no comment".to_owned()];
    assert!(
        words(&pdf(&odd).unwrap()).contains(&closed_up(&odd.remarks[0])),
        "the typesetter's signs print as they are"
    );
}

#[test]
fn a_workshop_can_bring_its_own_template() {
    let own = "#let sheet = json(bytes(sys.inputs.handover))\nOurs: #sheet.facts.first().text";
    assert_eq!(
        words(&pdf_with_template(&handover(RICH), own).unwrap()),
        "Ours:MarrowGT",
        "the template gets the handover"
    );
}

fn check_template_fault(template: &str, line: usize, says: &str) {
    match pdf_with_template(&handover(RICH), template) {
        Err(SheetError::Template { line: Some(at), message }) => {
            assert_eq!(at, line, "line of the fault in {template:?}");
            assert!(message.contains(says), "{message:?} says {says:?}");
        }
        other => panic!("{template:?} gave {other:?}"),
    }
}

#[test]
fn a_bad_template_is_told_where() {
    check_template_fault("= Ours\n\n#unknown-name", 3, "unknown variable: unknown-name");
    check_template_fault("= Ours\n#let x = (1, 2", 2, "unclosed delimiter");
    check_template_fault("#let sheet = json(bytes(sys.inputs.handover))\n#sheet.owner", 2, "owner");
}

#[test]
fn a_template_reads_nothing_but_the_handover() {
    check_template_fault("\n#read(\"notes.txt\")", 2, "file not found");
    check_template_fault("#import \"@preview/any:1.0.0\": thing", 1, "not found");
    check_template_fault("#datetime.today()", 1, "date");
}

#[test]
fn a_language_that_is_none_is_refused() {
    let odd = handover(&RICH.replace("\"en\"", "\"english\""));
    assert!(
        matches!(pdf(&odd), Err(SheetError::Template { line: Some(_), .. })),
        "no word to a screen reader is wrong"
    );
}

#[test]
fn a_place_off_the_trade_line_is_refused() {
    for value in [-0.01, 1.01, f64::NAN, f64::INFINITY] {
        let mut odd = handover(RICH);
        odd.line.as_mut().unwrap().stops[2] = value;
        let fault = pdf(&odd).unwrap_err().to_string();
        let wanted =
            format!("line.stops[2] = {value}: a place on the trade line is from 0 (left end) to 1 (right end)");
        assert_eq!(fault, wanted, "field, value and range");
    }
}

#[test]
fn a_row_that_does_not_fill_its_table_is_refused() {
    let mut odd = handover(RICH);
    odd.tables[1].rows[2].cells.pop();
    let fault = pdf(&odd).unwrap_err().to_string();
    assert_eq!(fault, "tables[1].rows[2] has 2 cells, its table has 3 columns", "a cell would move to a wrong column");
}
