//! The schema that an editor checks a procedure document with: it is that of the types, and the shipped document fits it.

use bayhand_procedure::{Document, SHIPPED};
use serde_json::Value;

const SCHEMA: &str = include_str!("../../../../procedures/procedure.schema.json");

#[test]
fn the_schema_is_that_of_the_types() {
    let fresh = serde_json::to_value(schemars::schema_for!(Document)).expect("a schema is JSON");
    let committed: Value = serde_json::from_str(SCHEMA).expect("the committed schema is JSON");
    assert_eq!(committed, fresh, "procedures/procedure.schema.json; `cargo xtask types` writes it again");
}

#[test]
fn the_shipped_document_fits_the_schema() {
    let schema: Value = serde_json::from_str(SCHEMA).expect("the committed schema is JSON");
    let validator = jsonschema::validator_for(&schema).expect("it is a schema");
    let document: Value = serde_json::from_str(SHIPPED).expect("the shipped document is JSON");
    let faults: Vec<_> = validator.iter_errors(&document).map(|e| format!("{}: {e}", e.instance_path())).collect();
    assert_eq!(faults, Vec::<String>::new());
    let mut wrong = document;
    wrong["stages"][0]["steps"][0]["spoken"] = "hello".into();
    assert!(!validator.is_valid(&wrong), "a key that the types do not know is a fault");
}
