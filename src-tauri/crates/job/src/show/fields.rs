//! What is entered at a step, as fields.

use crate::{
    draft::{field_name, unit, unit_code},
    show::line::corner,
    tell::Tell,
    view::{Choice, Field, FieldKind, UnitChoice},
};
use bayhand_measure::Unit;
use bayhand_procedure::{Input, Kind, Number, Per, Step};
use bayhand_vehicle::Place;

/// The fields of a step. `follows` says what would follow from an option.
pub fn fields(step: &Step, tell: &Tell, follows: impl Fn(&str) -> Option<String>) -> Vec<Field> {
    step.inputs
        .iter()
        .flat_map(|input| input.keys().into_iter().map(|key| field(step, input, key, tell, &follows)))
        .collect()
}

fn field(step: &Step, input: &Input, key: String, tell: &Tell, follows: &impl Fn(&str) -> Option<String>) -> Field {
    let suffix = key.split_once('.').map(|(_, suffix)| suffix);
    let place = Place::ALL.into_iter().find(|p| Some(p.code()) == suffix);
    let group = match input.per {
        Per::Once => None,
        Per::Corner | Per::Axle | Per::FrontWheels | Per::RearWheels => Some(tell.input(&step.id, &input.id)),
    };
    let (kind, range) = match &input.kind {
        Kind::Number(number) => {
            (FieldKind::Number { units: units(number), looks: number.looks }, Some(range(number, tell)))
        }
        Kind::Choice(options) => {
            let choice = |o: &bayhand_procedure::ChoiceOption| Choice {
                code: o.id.clone(),
                label: tell.text(&format!("option-{}", o.id), &[]),
                follows: follows(&o.id),
            };
            (FieldKind::Choice { options: options.iter().map(choice).collect() }, None)
        }
        Kind::Check => (FieldKind::Check { yes: tell.text("check-yes", &[]), no: tell.text("check-no", &[]) }, None),
        Kind::Text => (FieldKind::Text, Some(tell.text("text-none", &[]))),
    };
    Field { label: field_name(tell.words, &step.id, &key), corner: place.map(corner), key, group, kind, range }
}

/// The unit of the document first, then its siblings.
fn units(number: &Number) -> Vec<UnitChoice> {
    let Some(own) = unit(&number.unit) else { return Vec::new() };
    let siblings = Unit::ALL.into_iter().filter(|u| *u != own && u.quantity() == own.quantity());
    let choice = |u: Unit| UnitChoice { code: unit_code(u), symbol: u.symbol().to_owned() };
    [own].into_iter().chain(siblings).map(choice).collect()
}

fn range(number: &Number, tell: &Tell) -> String {
    let symbol = unit(&number.unit).map_or("", Unit::symbol);
    let args = [("min", number.min.clone()), ("max", number.max.clone()), ("unit", symbol.to_owned())];
    let id = if number.looks > 1 { "range-looks" } else { "range" };
    tell.text(id, &args).trim().to_owned()
}
