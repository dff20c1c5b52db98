//! What is entered at a step, as fields.

use crate::{
    draft::{field_name, unit, unit_code},
    known::Known,
    show::line::corner,
    tell::Tell,
    view::{Choice, Field, FieldKind, OnlyWith, Outlook, UnitChoice},
};
use bayhand_measure::{Quantity, Range, Unit};
use bayhand_procedure::{Input, Kind, Number, Per, Step};
use bayhand_vehicle::Place;

/// What would follow from an option, by its id.
pub type Follows<'a> = &'a dyn Fn(&str) -> Option<Outlook>;

/// The fields of a step, each with what was entered in it last.
pub fn fields(known: &Known, step: &Step, tell: &Tell, follows: Follows) -> Vec<Field> {
    let field = |input, key| field(known, step, input, key, tell, follows);
    step.inputs.iter().flat_map(|input| input.keys().into_iter().map(move |key| field(input, key))).collect()
}

fn field(known: &Known, step: &Step, input: &Input, key: String, tell: &Tell, follows: Follows) -> Field {
    let suffix = key.split_once('.').map(|(_, suffix)| suffix);
    let place = Place::ALL.into_iter().find(|p| Some(p.code()) == suffix);
    let group = match input.per {
        Per::Once => None,
        Per::Corner | Per::Axle | Per::FrontWheels | Per::RearWheels => Some(tell.input(&step.id, &input.id)),
    };
    let (kind, range) = match &input.kind {
        Kind::Number(number) => {
            (FieldKind::Number { units: units(number, tell), looks: number.looks }, Some(range(number, tell)))
        }
        Kind::Choice(options) => {
            let choice = |o: &bayhand_procedure::ChoiceOption| Choice {
                code: o.id.clone(),
                label: tell.text(&format!("option-{}", o.id), &[]),
                outlook: follows(&o.id),
            };
            (FieldKind::Choice { options: options.iter().map(choice).collect() }, None)
        }
        Kind::Check => (FieldKind::Check { yes: tell.text("check-yes", &[]), no: tell.text("check-no", &[]) }, None),
        Kind::Text => (FieldKind::Text, Some(tell.text("text-none", &[]))),
    };
    let brought_by = step.brought_by(input);
    Field {
        label: field_name(tell.words, &step.id, &key),
        corner: place.map(corner),
        group,
        kind,
        range,
        last: last(known, step, &key, tell),
        only_with: brought_by.map(|choice| OnlyWith { key: choice.to_owned(), options: input.with.clone() }),
        key,
    }
}

/// What was entered here when the step was done before, as it was typed: for a number, so that a slip is seen.
fn last(known: &Known, step: &Step, key: &str, tell: &Tell) -> Option<String> {
    let recorded = known.last(&step.id)?;
    let entry = recorded.entries.get(key)?;
    let Kind::Number(number) = &step.input_of(key)?.kind else { return None };
    let symbol = unit(entry.unit.as_deref().unwrap_or(&number.unit)).map_or("", Unit::symbol);
    let args = [("at", super::clock(&recorded.at)), ("text", format!("{} {symbol}", entry.text).trim().to_owned())];
    Some(tell.text("field-last", &args))
}

/// The unit of the person first, then its siblings.
fn units(number: &Number, tell: &Tell) -> Vec<UnitChoice> {
    let Some(own) = preset(number, tell) else { return Vec::new() };
    let siblings = Unit::ALL.into_iter().filter(|u| *u != own && u.quantity() == own.quantity());
    let choice = |u: Unit| UnitChoice { code: unit_code(u), symbol: u.symbol().to_owned() };
    [own].into_iter().chain(siblings).map(choice).collect()
}

/// The unit that a number is typed in at first: the person's, where they have one of its kind.
pub fn preset(number: &Number, tell: &Tell) -> Option<Unit> {
    let own = unit(&number.unit)?;
    Some(match own.quantity() {
        Quantity::Mass | Quantity::Length | Quantity::Pressure | Quantity::Angle => tell.units.of(own.quantity()),
        _ => own,
    })
}

fn range(number: &Number, tell: &Tell) -> String {
    let ends = (number.min.clone(), number.max.clone());
    let shown = unit(&number.unit).zip(preset(number, tell)).and_then(|(own, preset)| {
        let range = Range::new(&number.min, &number.max, own).ok()?;
        Some((range.shown_in(preset), if preset == Unit::DegreeMinute { "" } else { preset.symbol() }))
    });
    let ((min, max), symbol) = shown.unwrap_or((ends, ""));
    let args = [("min", min), ("max", max), ("unit", symbol.to_owned())];
    let id = if number.looks > 1 { "range-looks" } else { "range" };
    tell.text(id, &args).trim().to_owned()
}
