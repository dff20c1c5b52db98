//! What was entered for the step at hand, checked: texts made values through `measure`.

use crate::{
    ask::Refused,
    tell::Tell,
    view::{ReadBack, ReadNumber},
};
use bayhand_measure::{EntryError, Range, Unit, parse_looks, show};
use bayhand_procedure::{Entered, Input, Kind, Number, Step};
use bayhand_words::Words;
use std::collections::BTreeMap;

/// The step at hand as entered.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// The step.
    pub step: String,
    /// As entered.
    pub entries: BTreeMap<String, Entered>,
    /// Numbers in base units, one for each look.
    pub used: BTreeMap<String, Vec<f64>>,
}

impl Draft {
    /// Checks every number that was entered. Missing and unasked keys are left to `decide`.
    ///
    /// # Errors
    /// The first field that is wrong, with its name, value and range.
    pub fn check(step: &Step, entries: &BTreeMap<String, Entered>, words: &Words) -> Result<Draft, Refused> {
        let mut used = BTreeMap::new();
        for input in &step.inputs {
            let Kind::Number(number) = &input.kind else { continue };
            for key in input.keys() {
                let Some(entered) = entries.get(&key) else { continue };
                let label = field_name(words, &step.id, &key);
                let values = numbers(&label, number, entered).map_err(|says| Refused {
                    code: says.0.into(),
                    field: Some(key.clone()),
                    says: says.1,
                })?;
                used.insert(key, values);
            }
        }
        Ok(Draft { step: step.id.clone(), entries: entries.clone(), used })
    }

    /// What was understood of each number, in the order of the fields, to be read back before it counts.
    pub fn read_back(&self, step: &Step, tell: &Tell) -> ReadBack {
        let keys = step.inputs.iter().flat_map(Input::keys);
        ReadBack { numbers: keys.filter_map(|key| self.read_number(step, key, tell)).collect() }
    }

    fn read_number(&self, step: &Step, key: String, tell: &Tell) -> Option<ReadNumber> {
        let (used, entered) = (self.used.get(&key)?, self.entries.get(&key)?);
        let Kind::Number(number) = &step.input_of(&key)?.kind else { return None };
        let typed = unit(entered.unit.as_deref().unwrap_or(&number.unit))?;
        // As many decimals as were typed: what is read back is what was understood, not what it rounds to.
        let typed_decimals = |look: &str| look.split_once(['.', ',']).map_or(0, |(_, part)| part.chars().count());
        let decimals = entered.text.split_whitespace().map(typed_decimals).max().unwrap_or(0);
        let say = |base: f64| show(base, typed, if typed == Unit::DegreeMinute { 0 } else { decimals });
        let looks: Vec<String> = used.iter().map(|base| say(*base)).collect();
        let (least, most) = used.iter().fold((f64::MAX, f64::MIN), |(low, high), v| (low.min(*v), high.max(*v)));
        let apart = format!("{} {}", say(most - least), typed.symbol());
        Some(ReadNumber {
            label: field_name(tell.words, &step.id, &key),
            text: format!("{} {}", looks.join("  "), if typed == Unit::DegreeMinute { "" } else { typed.symbol() })
                .trim()
                .to_owned(),
            apart: (used.len() > 1).then(|| tell.text("read-apart", &[("apart", apart)])),
            key,
        })
    }

    /// The values used, as the record keeps them: the shortest decimal text that gives the value again.
    pub fn used_texts(&self) -> BTreeMap<String, Vec<String>> {
        let text = |values: &Vec<f64>| values.iter().map(f64::to_string).collect();
        self.used.iter().map(|(key, values)| (key.clone(), text(values))).collect()
    }
}

/// The words for a field, with its corner or axle.
pub fn field_name(words: &Words, step: &str, key: &str) -> String {
    let (input, suffix) = key.split_once('.').unwrap_or((key, ""));
    let label = words.input(step, input);
    match suffix {
        "" => label,
        "front" | "rear" => format!("{label}, {}", words.text(&format!("axle-{suffix}"), &[])),
        corner => format!("{label}, {}", words.text(&format!("corner-{corner}"), &[])),
    }
}

/// The unit of this code, as `measure` writes it.
pub fn unit(code: &str) -> Option<Unit> {
    serde_json::from_value(serde_json::Value::String(code.to_owned())).ok()
}

/// The code of a unit.
pub fn unit_code(unit: Unit) -> String {
    match serde_json::to_value(unit) {
        Ok(serde_json::Value::String(code)) => code,
        _ => String::new(),
    }
}

fn numbers(label: &str, number: &Number, entered: &Entered) -> Result<Vec<f64>, (&'static str, String)> {
    let code = entered.unit.as_deref().unwrap_or(&number.unit);
    let typed = unit(code).ok_or_else(|| ("unknown-unit", format!("{label}: there is no unit '{code}'.")))?;
    let own = unit(&number.unit).ok_or_else(|| ("unknown-unit", format!("{label}: no unit '{}'.", number.unit)))?;
    let refused = |e: EntryError| (entry_code(&e), e.to_string());
    let range = Range::new(&number.min, &number.max, own).map_err(refused)?;
    let values = parse_looks(label, &entered.text, typed, &range, usize::from(number.looks)).map_err(refused)?;
    Ok(values.into_iter().map(|v| v.base).collect())
}

fn entry_code(error: &EntryError) -> &'static str {
    match error {
        EntryError::Empty { .. } => "empty",
        EntryError::TooLow { .. } | EntryError::TooHigh { .. } => "out-of-range",
        EntryError::WrongQuantity { .. } => "wrong-quantity",
        EntryError::TooManyLooks { .. } => "too-many-looks",
        _ => "not-a-number",
    }
}
