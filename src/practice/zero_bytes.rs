//! Texts of trip and practice files that hold a NUL.

use toml::{
    Spanned,
    de::{DeTable, DeValue},
};

use super::toml_text::TomlText;
use crate::fault::{Fault, name};

impl TomlText<'_> {
    /// Every text in it that holds a NUL.
    #[must_use]
    pub fn nul(&self) -> Vec<Fault> {
        let mut found = Vec::new();
        look_through(&self.root, "", &mut |path, value, text| {
            let place = || self.place_of(&value.span()).with_property(path);
            let fault = name::nul(text).map(|nul| Fault::new(nul, place()));
            found.extend(fault.map(|fault| (value.span().start, fault)));
        });
        found.sort_by_key(|(at, _)| *at);
        found.into_iter().map(|(_, fault)| fault).collect()
    }
}

fn look_through(
    table: &DeTable<'_>,
    path: &str,
    look: &mut impl FnMut(&str, &Spanned<DeValue<'_>>, &str),
) {
    for (key, value) in table {
        let path = match path {
            "" => key.get_ref().to_string(),
            path => format!("{path}.{}", key.get_ref()),
        };
        look_at(value, &path, look);
    }
}

fn look_at(
    value: &Spanned<DeValue<'_>>,
    path: &str,
    look: &mut impl FnMut(&str, &Spanned<DeValue<'_>>, &str),
) {
    match value.get_ref() {
        DeValue::String(text) => look(path, value, text),
        DeValue::Array(items) => items.iter().for_each(|item| look_at(item, path, look)),
        DeValue::Table(inner) => look_through(inner, path, look),
        _ => {}
    }
}
