//! The files: they parse, and nothing stands in them twice.

use bayhand_words::sources::ENGLISH;
use fluent_syntax::{ast::Entry, parser};
use std::collections::BTreeMap;

#[test]
fn every_file_parses() {
    for file in ENGLISH {
        let faults = match parser::parse(file.text) {
            Ok(_) => Vec::new(),
            Err((_, faults)) => faults,
        };
        assert!(faults.is_empty(), "{}: {faults:?}", file.path);
    }
}

#[test]
fn no_id_stands_twice() {
    let mut seen: BTreeMap<String, &str> = BTreeMap::new();
    for file in ENGLISH {
        let resource = parser::parse(file.text).unwrap_or_else(|(rest, _)| rest);
        for entry in resource.body {
            let name = match entry {
                Entry::Message(m) => m.id.name.to_owned(),
                Entry::Term(t) => format!("-{}", t.id.name),
                _ => continue,
            };
            if let Some(first) = seen.insert(name.clone(), file.path) {
                panic!("{name} stands in {first} and in {}; the second would never be shown", file.path);
            }
        }
    }
}
