//! The files: they parse, and nothing stands in them twice.

use bayhand_words::{Language, sources::File};
use fluent_syntax::{
    ast::{Entry, Expression, InlineExpression, Pattern, PatternElement},
    parser,
};
use std::collections::{BTreeMap, BTreeSet};

#[test]
fn every_file_parses() {
    for file in Language::ALL.into_iter().flat_map(Language::files) {
        let faults = match parser::parse(file.text) {
            Ok(_) => Vec::new(),
            Err((_, faults)) => faults,
        };
        assert!(faults.is_empty(), "{}: {faults:?}", file.path);
    }
}

#[test]
fn no_id_stands_twice() {
    for language in Language::ALL {
        let mut seen: BTreeMap<String, &str> = BTreeMap::new();
        for file in language.files() {
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
}

/// Every message and attribute of some files, each with the arguments that it waits for.
fn asked(files: &[File]) -> BTreeMap<String, BTreeSet<String>> {
    let mut all = BTreeMap::new();
    for file in files {
        let resource = parser::parse(file.text).unwrap_or_else(|(rest, _)| rest);
        for entry in resource.body {
            let (name, value, attributes) = match entry {
                Entry::Message(m) => (m.id.name.to_owned(), m.value, m.attributes),
                Entry::Term(t) => (format!("-{}", t.id.name), Some(t.value), t.attributes),
                _ => continue,
            };
            for attribute in attributes {
                all.insert(format!("{name}.{}", attribute.id.name), arguments(&attribute.value));
            }
            all.insert(name, value.as_ref().map(arguments).unwrap_or_default());
        }
    }
    all
}

fn arguments(pattern: &Pattern<&str>) -> BTreeSet<String> {
    let mut all = BTreeSet::new();
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression } = element {
            of_expression(expression, &mut all);
        }
    }
    all
}

fn of_expression(expression: &Expression<&str>, all: &mut BTreeSet<String>) {
    let of_inline = |inline: &InlineExpression<&str>, all: &mut BTreeSet<String>| match inline {
        InlineExpression::VariableReference { id } => drop(all.insert(id.name.to_owned())),
        InlineExpression::TermReference { id, .. } => drop(all.insert(format!("-{}", id.name))),
        InlineExpression::Placeable { expression } => of_expression(expression, all),
        _ => {}
    };
    match expression {
        Expression::Inline(inline) => of_inline(inline, all),
        Expression::Select { selector, variants } => {
            of_inline(selector, all);
            for variant in variants {
                all.extend(arguments(&variant.value));
            }
        }
    }
}

#[test]
fn every_language_says_the_same_things() {
    let english = asked(Language::English.files());
    assert!(english.len() > 900, "control: {} texts were found", english.len());
    for language in Language::ALL {
        let other = asked(language.files());
        let ids = |texts: &BTreeMap<String, BTreeSet<String>>| texts.keys().cloned().collect::<BTreeSet<_>>();
        let (wanted, has) = (ids(&english), ids(&other));
        let missing: Vec<_> = wanted.difference(&has).collect();
        let unknown: Vec<_> = has.difference(&wanted).collect();
        assert!(missing.is_empty() && unknown.is_empty(), "{language:?}: missing {missing:#?}, unknown {unknown:#?}");
        for (id, arguments) in &english {
            assert_eq!(&other[id], arguments, "{language:?}: {id} waits for the same arguments and terms");
        }
    }
}

#[test]
fn every_language_has_its_own_files() {
    for language in Language::ALL {
        let folder = format!("/{}/", language.code());
        for file in language.files() {
            assert!(file.path.contains(&folder), "{} is not of {language:?}", file.path);
        }
        assert_eq!(Language::asked_for(language.code()), Some(language), "a code asks for its language");
    }
    assert_eq!(Language::asked_for("de_AT.UTF-8"), Some(Language::German), "a locale asks for its language");
    assert_eq!(Language::asked_for("xx"), None, "a language that is not spoken here");
}
