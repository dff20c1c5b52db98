//! One language, ready to be asked.

use crate::{Arg, Language, sources};
use fluent_bundle::{FluentArgs, FluentResource, concurrent::FluentBundle};
use fluent_syntax::ast::{Entry, Pattern};
use std::{
    borrow::Cow,
    collections::{BTreeMap, BTreeSet},
};

/// The words of one language. Shared freely between threads.
pub struct Words {
    language: Language,
    bundle: FluentBundle<FluentResource>,
    ids: BTreeSet<String>,
}

impl Words {
    /// The words of a language.
    pub fn of(language: Language) -> Words {
        Words::made_of(language, language.files())
    }

    /// The language.
    pub fn language(&self) -> Language {
        self.language
    }

    /// The English words.
    pub fn english() -> Words {
        Words::of(Language::English)
    }

    /// An entry that does not parse or that stands twice is left out; the tests over [`sources`] see to it that the
    /// embedded files have none.
    fn made_of(language: Language, files: &[sources::File]) -> Words {
        let mut bundle = FluentBundle::new_concurrent(vec![language.identifier()]);
        // Isolating marks are for mixed writing directions; a speaker and a PDF would stumble over them.
        bundle.set_use_isolating(false);
        bundle.set_transform(Some(one_line));
        let mut ids = BTreeSet::new();
        for file in files {
            let resource = match FluentResource::try_new(file.text.to_owned()) {
                Ok(resource) => resource,
                Err((rest, _)) => rest,
            };
            ids.extend(resource.entries().filter_map(|entry| match entry {
                Entry::Message(message) => Some(message.id.name.to_owned()),
                _ => None,
            }));
            // Of two messages with the same id the first is kept.
            let _ = bundle.add_resource(resource);
        }
        Words { language, bundle, ids }
    }

    /// The text of a message, with its arguments put in. Without such a message: its id in brackets, `[step-x]`.
    /// An argument that is not given stays visible as `{$name}`.
    pub fn text(&self, id: &str, args: &[(&str, Arg)]) -> String {
        match self.bundle.get_message(id).and_then(|message| message.value()) {
            Some(pattern) => self.format(pattern, args),
            None => format!("[{id}]"),
        }
    }

    /// The text of an attribute of a message (`.detail` is asked for as `detail`); none when there is no such one.
    pub fn attr(&self, id: &str, attribute: &str, args: &[(&str, Arg)]) -> Option<String> {
        let message = self.bundle.get_message(id)?;
        let attribute = message.get_attribute(attribute)?;
        Some(self.format(attribute.value(), args))
    }

    /// True when there is a message of this id.
    pub fn has(&self, id: &str) -> bool {
        self.ids.contains(id)
    }

    /// Every label of the windows: the messages whose id begins with `ui-`, by id.
    pub fn labels(&self) -> BTreeMap<String, String> {
        self.ids.iter().filter(|id| id.starts_with("ui-")).map(|id| (id.clone(), self.text(id, &[]))).collect()
    }

    /// The label of an input at a step: `input-STEP-INPUT` when the input means something else there, or else `input-INPUT`.
    pub fn input(&self, step: &str, input: &str) -> String {
        let own = id("input", &[step, input]);
        if self.has(&own) { self.text(&own, &[]) } else { self.text(&id("input", &[input]), &[]) }
    }

    fn format(&self, pattern: &Pattern<&str>, args: &[(&str, Arg)]) -> String {
        let args: FluentArgs = args.iter().map(|(name, arg)| (*name, *arg)).collect();
        // Errors are the arguments not given, and those stay visible in the text.
        self.bundle.format_pattern(pattern, Some(&args), &mut Vec::new()).into_owned()
    }
}

/// Line ends in the files are for the reader of the files; a text is one paragraph.
fn one_line(text: &str) -> Cow<'_, str> {
    if text.contains('\n') { Cow::Owned(text.replace('\n', " ")) } else { Cow::Borrowed(text) }
}

/// The id of a message: a kind and the ids from the document, joined by hyphens, with dots made hyphens.
/// `id("step", &["loop.turn-FL"])` is `step-loop-turn-FL`; `id("need", &["stance", "locked"])` is `need-stance-locked`.
pub fn id(kind: &str, parts: &[&str]) -> String {
    let mut id = kind.to_owned();
    for part in parts {
        id.push('-');
        id.push_str(&part.replace('.', "-"));
    }
    id
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(file: &'static str, args: &[(&str, Arg)], expected: &str, reason: &str) {
        let words = Words::made_of(Language::English, &[sources::File { path: "test.ftl", text: file }]);
        assert_eq!(words.text("m", args), expected, "{reason}");
    }

    #[test]
    fn arguments_are_put_in() {
        check(
            "m = At { $load }.",
            &[("load", Arg::Text("312.4 kg"))],
            "At 312.4 kg.",
            "formatted text is shown as it is",
        );
        check("m = At { $load }.", &[], "At {$load}.", "what was not given is seen, not left out");
        check("m = { $a }", &[("a", Arg::Text("x\ny"))], "x\ny", "only the file's own line ends are undone");
    }

    #[test]
    fn a_count_chooses_the_plural() {
        let file = "m = { $n ->\n    [one] { $n } part\n   *[other] { $n } parts\n }";
        check(file, &[("n", Arg::Count(1))], "1 part", "English has a singular");
        check(file, &[("n", Arg::Count(3))], "3 parts", "and a plural");
        check(file, &[("n", Arg::Text("1"))], "1 parts", "text is no count, whatever it looks like");
    }

    #[test]
    fn a_faulty_file_costs_only_the_faulty_entry() {
        check("junk\nm = Good", &[], "Good", "the rest of the file is kept");
        check("m = First\nm = Second", &[], "First", "of two the first is kept");
    }
}
