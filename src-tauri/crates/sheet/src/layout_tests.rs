//! What can only be seen in the set pages: that no word stands outside the margins, and that the PDF is accessible.
#![allow(clippy::unwrap_used, reason = "a test that cannot be set up should stop")]

use crate::{TEMPLATE, document, world_of};
use bayhand_job::handover::Handover;
use typst::layout::{Frame, FrameItem, Point};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

const RICH: &str = include_str!("../tests/data/rich.json");
const LONG: &str = include_str!("../tests/data/long.json");

/// Left and right margin of the template, mm.
const MARGIN_MM: f64 = 15.0;
/// A4 (ISO 216), mm.
const PAGE_MM: (f64, f64) = (210.0, 297.0);

fn set(handover: &str) -> PagedDocument {
    let handover: Handover = serde_json::from_str(handover).unwrap();
    document(&world_of(&handover, TEMPLATE).unwrap()).unwrap()
}

/// Left end, right end and baseline (mm) and words of every text in `frame`, which stands at `at`.
fn texts(frame: &Frame, at: Point, found: &mut Vec<(f64, f64, f64, String)>) {
    for (place, item) in frame.items() {
        let place = at + *place;
        match item {
            FrameItem::Group(group) => texts(&group.frame, place, found),
            FrameItem::Text(text) => {
                let right = (place.x + text.width()).to_mm();
                found.push((place.x.to_mm(), right, place.y.to_mm(), text.text.to_string()));
            }
            _ => {}
        }
    }
}

fn check_inside_margins(handover: &str, pages: usize) {
    let document = set(handover);
    assert_eq!(document.pages().len(), pages, "pages of the sheet");
    for page in document.pages() {
        let mut found = Vec::new();
        texts(&page.frame, Point::zero(), &mut found);
        for (left, right, baseline, words) in found {
            // 0.1 mm for the side bearing of a letter.
            assert!(left >= MARGIN_MM - 0.1, "{words:?} begins {left} mm from the left edge");
            assert!(right <= PAGE_MM.0 - MARGIN_MM + 0.1, "{words:?} ends {right} mm from the left edge");
            assert!((0.0..PAGE_MM.1 - 5.0).contains(&baseline), "{words:?} stands {baseline} mm from the top");
        }
    }
}

#[test]
fn a_usual_job_is_one_page() {
    check_inside_margins(RICH, 1);
}

#[test]
fn long_texts_wrap_and_long_lists_go_on_overleaf() {
    check_inside_margins(LONG, 3);
}

#[test]
fn no_words_stand_on_each_other() {
    for handover in [RICH, LONG] {
        for page in set(handover).pages() {
            let mut found = Vec::new();
            texts(&page.frame, Point::zero(), &mut found);
            for (n, (left, right, baseline, words)) in found.iter().enumerate() {
                for (other_left, other_right, other_baseline, other) in &found[n + 1..] {
                    let same_line = (baseline - other_baseline).abs() < 2.0;
                    let overlap = right.min(*other_right) - left.max(*other_left);
                    assert!(!same_line || overlap < 0.2, "{words:?} and {other:?} overlap by {overlap} mm");
                }
            }
        }
    }
}

#[test]
fn no_type_is_smaller_than_eight_and_a_half_points() {
    fn smallest(frame: &Frame) -> f64 {
        let sizes = frame.items().map(|(_, item)| match item {
            FrameItem::Group(group) => smallest(&group.frame),
            FrameItem::Text(text) => text.size.to_pt(),
            _ => f64::INFINITY,
        });
        sizes.fold(f64::INFINITY, f64::min)
    }
    for page in set(LONG).pages() {
        let size_pt = smallest(&page.frame);
        assert!((8.5..10.0).contains(&size_pt), "smallest type is {size_pt} pt");
    }
}

#[test]
fn every_sign_of_a_usual_job_has_a_glyph() {
    fn boxes(frame: &Frame, found: &mut Vec<String>) {
        for (_, item) in frame.items() {
            match item {
                FrameItem::Group(group) => boxes(&group.frame, found),
                FrameItem::Text(text) if text.glyphs.iter().any(|glyph| glyph.id == 0) => {
                    found.push(text.text.to_string());
                }
                _ => {}
            }
        }
    }
    let glyphless = |handover: &str| {
        let mut found = Vec::new();
        set(handover).pages().iter().for_each(|page| boxes(&page.frame, &mut found));
        found
    };
    assert_eq!(glyphless(RICH), Vec::<String>::new(), "glyph 0 prints as a box");
    let with_names = RICH.replace("Wren Ashdown", "Łucja Dvořáková, Αλέξης, Оксана ≤ ½ → Δ ≈ ′");
    assert_eq!(glyphless(&with_names), Vec::<String>::new(), "Latin Extended, Greek, Cyrillic and signs have glyphs");
    let outside = RICH.replace("Wren Ashdown", "山");
    assert_eq!(glyphless(&outside), vec!["山".to_owned()], "the documented limit of the embedded typefaces");
}

/// The typesetter refuses the standard when a title, a language, a table head or the order of headings is missing.
#[test]
fn the_sheet_can_be_read_out() {
    let standards = PdfStandards::new(&[PdfStandard::Ua_1]).unwrap();
    let options = PdfOptions { standards, ..PdfOptions::default() };
    for handover in [RICH, LONG] {
        let made = typst_pdf::pdf(&set(handover), &options);
        assert!(made.is_ok(), "PDF/UA-1 (ISO 14289-1): {made:?}");
    }
}
