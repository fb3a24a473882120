//! JSON Schemas of documents: what rustdoc says of a type, without its examples in Rust.

use schemars::{JsonSchema, Schema, generate::SchemaSettings, transform::RecursiveTransform};
use serde_json::Value;

/// Around an example.
const FENCE: &str = "```";

/// The schema of a document that is read or written, as the settings say.
pub(crate) fn of<T: JsonSchema>(settings: SchemaSettings) -> Schema {
    let settings = settings.with_transform(RecursiveTransform(without_examples));
    settings.into_generator().into_root_schema_for::<T>()
}

fn without_examples(schema: &mut Schema) {
    if let Some(Value::String(text)) = schema.get_mut("description")
        && text.contains(FENCE)
    {
        // Every other piece lies between two fences.
        let said = text.split(FENCE).step_by(2).map(str::trim);
        let said: Vec<&str> = said.filter(|piece| !piece.is_empty()).collect();
        *text = said.join("\n\n");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A rope.
    ///
    /// ```
    /// assert_eq!(2 + 2, 4);
    /// ```
    ///
    /// It has `two` ends.
    #[derive(JsonSchema)]
    struct Cord {
        /// Both.
        _ends: Vec<CordEnd>,
    }

    /// An end.
    ///
    /// ```
    /// assert!(true);
    /// ```
    #[derive(JsonSchema)]
    struct CordEnd {}

    #[test]
    fn what_is_said_stays_and_examples_go() {
        let schema = of::<Cord>(SchemaSettings::default());
        let said = |at: &str| schema.pointer(at).and_then(Value::as_str);
        assert_eq!(
            said("/description"),
            Some("A rope.\n\nIt has `two` ends."),
            "{schema:?}"
        );
        assert_eq!(said("/$defs/CordEnd/description"), Some("An end."));
        assert_eq!(said("/properties/_ends/description"), Some("Both."));
    }
}
