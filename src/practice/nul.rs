//! Places in the text of trip and practice files, and what in it holds a NUL.

use toml::{
    Spanned,
    de::{DeTable, DeValue},
};

use crate::fault::{Fault, Place, name};

/// Every text of a file that holds a NUL, in no order but that of its members.
#[must_use]
pub fn with_nul(file: &str, text: &str) -> Vec<Fault> {
    let mut found = Vec::new();
    if let Ok(table) = DeTable::parse(text) {
        let place = |at: usize, path: &str| {
            let (line, column) = line_column(text, at);
            Place::file(file).at_line(line, column).with_property(path)
        };
        look_through(table.get_ref(), "", &mut |path, value, text| {
            let nul = name::nul(text);
            found.extend(nul.map(|nul| Fault::new(nul, place(value.span().start, path))));
        });
    }
    found
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

/// Line and column, from 1, of a byte of a text.
#[must_use]
pub fn line_column(text: &str, at: usize) -> (u64, u64) {
    let before = text.get(..at).unwrap_or(text);
    let line = before.matches('\n').count() as u64 + 1;
    let column = before.rsplit('\n').next().unwrap_or("").chars().count() as u64 + 1;
    (line, column)
}
