//! Reading a scenario's file key by key, so that what is wrong is known as data: the key, what stands there, what may.

use super::{FORMAT, MOST, MOST_FAULTS, MOST_SEED, MayBe, Scenario, ScenarioError, Told};
use bayhand_practice::Fault;
use serde_json::{Map, Value};

const KEYS: [&str; 7] = ["format", "id", "title", "story", "seed", "faults", "drawn"];

/// The scenario that a text is.
pub(super) fn scenario(text: &str) -> Result<Scenario, ScenarioError> {
    let read: Value =
        serde_json::from_str(text).map_err(|why| ScenarioError::NoJson { line: why.line(), column: why.column() })?;
    let Value::Object(keys) = &read else { return Err(ScenarioError::NoObject) };
    known(keys, &KEYS, "")?;
    let format = needed(keys, "format")?;
    if format.as_u64() != Some(FORMAT.into()) {
        return Err(wrong("format", format, MayBe::Format));
    }
    let [_, most_title, most_story] = MOST;
    let scenario = Scenario {
        id: id(needed(keys, "id")?)?,
        title: told("title", needed(keys, "title")?, most_title)?,
        story: told("story", needed(keys, "story")?, most_story)?,
        seed: whole("seed", needed(keys, "seed")?, MOST_SEED, MayBe::Seed)?,
        faults: keys.get("faults").map_or(Ok(Vec::new()), faults)?,
        drawn: keys.get("drawn").map_or(Ok(0), |drawn| whole("drawn", drawn, MOST_FAULTS as u64, MayBe::Drawn))? as u8,
    };
    let count = scenario.faults.len() + usize::from(scenario.drawn);
    if count > MOST_FAULTS { Err(ScenarioError::TooMany { count }) } else { Ok(scenario) }
}

/// Most characters of a wrong value that are shown.
const SHOWN: usize = 60;

fn wrong(key: &str, is: &Value, may_be: MayBe) -> ScenarioError {
    let whole = is.to_string();
    let start: String = whole.chars().take(SHOWN).collect();
    let is = if start == whole { whole } else { format!("{start}…") };
    ScenarioError::Value { key: key.to_owned(), is, may_be }
}

/// No key but these.
fn known(keys: &Map<String, Value>, allowed: &[&str], within: &str) -> Result<(), ScenarioError> {
    match keys.keys().find(|key| !allowed.contains(&key.as_str())) {
        Some(key) => Err(ScenarioError::Unknown { key: format!("{within}{key}") }),
        None => Ok(()),
    }
}

fn needed<'v>(keys: &'v Map<String, Value>, key: &str) -> Result<&'v Value, ScenarioError> {
    keys.get(key).ok_or_else(|| ScenarioError::Missing { key: key.to_owned() })
}

fn id(value: &Value) -> Result<String, ScenarioError> {
    let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    let fits = |id: &&str| (1..=MOST[0]).contains(&id.len()) && id.chars().all(plain);
    value.as_str().filter(fits).map(str::to_owned).ok_or_else(|| wrong("id", value, MayBe::Id))
}

fn whole(key: &str, value: &Value, most: u64, may_be: MayBe) -> Result<u64, ScenarioError> {
    value.as_u64().filter(|number| *number <= most).ok_or_else(|| wrong(key, value, may_be))
}

/// A text in English, and in German where its writer knew it.
fn told(key: &str, value: &Value, most: usize) -> Result<Told, ScenarioError> {
    let Value::Object(texts) = value else { return Err(wrong(key, value, MayBe::Texts)) };
    known(texts, &["en", "de"], &format!("{key}."))?;
    let text = |language: &str| {
        let key = format!("{key}.{language}");
        let Some(value) = texts.get(language) else { return Err(ScenarioError::Missing { key }) };
        let Some(text) = value.as_str() else { return Err(wrong(&key, value, MayBe::Text)) };
        let is = text.chars().count();
        if text.trim().is_empty() || is > most {
            return Err(ScenarioError::Length { key, is, most });
        }
        Ok(text.to_owned())
    };
    Ok(Told { en: text("en")?, de: if texts.contains_key("de") { Some(text("de")?) } else { None } })
}

fn faults(value: &Value) -> Result<Vec<Fault>, ScenarioError> {
    let Value::Array(names) = value else { return Err(wrong("faults", value, MayBe::Faults)) };
    let mut faults = Vec::new();
    for name in names {
        let named = Fault::ALL.into_iter().find(|fault| name.as_str() == Some(fault.code()));
        let fault = named.ok_or_else(|| wrong("faults", name, MayBe::Faults))?;
        if faults.contains(&fault) {
            return Err(ScenarioError::Twice { fault });
        }
        faults.push(fault);
    }
    Ok(faults)
}
