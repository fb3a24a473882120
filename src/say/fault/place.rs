//! Places and things in files, as people call them.

use std::fmt;

use crate::fault::place::{Excerpt, Item, Place, Way};

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut parts: Vec<String> = Vec::new();
        if let Some(file) = &self.file {
            parts.push(file.clone());
        }
        match (self.line, self.column) {
            (Some(line), Some(column)) => parts.push(format!("line {line} column {column}")),
            (Some(line), None) => parts.push(format!("line {line}")),
            _ => {}
        }
        parts.extend(self.item.as_ref().map(Item::to_string));
        parts.extend(self.property.as_ref().map(|p| format!("`{p}`")));
        f.write_str(&parts.join(", "))
    }
}

impl fmt::Display for Item {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Feature { number, name } => numbered(f, "feature", *number, name.as_deref()),
            Self::Line(way) => way.fmt(f),
            Self::Flags => f.write_str("flags"),
            Self::Flag(name) => f.write_str(name),
            Self::Party => f.write_str("party"),
            Self::Start => f.write_str("start"),
            Self::Stage => f.write_str("stage"),
            Self::Practice => f.write_str("practice"),
            Self::Zones => f.write_str("zones"),
            Self::Relief => f.write_str("relief"),
        }
    }
}

fn numbered(
    f: &mut fmt::Formatter<'_>,
    what: &str,
    number: usize,
    name: Option<&str>,
) -> fmt::Result {
    write!(f, "{what} {number}")?;
    name.map_or(Ok(()), |name| write!(f, " \"{name}\""))
}

impl fmt::Display for Way {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.sort.word(), self.number)?;
        if let Some(name) = &self.name {
            write!(f, " {}", in_quotes(name))?;
        }
        let inside = [
            ("segment", self.segment),
            ("point", self.point),
            ("detail", self.detail),
        ];
        let mut inside = inside.into_iter().filter_map(|(what, n)| Some((what, n?)));
        inside.try_for_each(|(what, n)| write!(f, ", {what} {n}"))
    }
}

/// Something from a file, fit to be printed: in quotes, without control characters.
pub(super) fn in_quotes(excerpt: &Excerpt) -> String {
    let mut shown = String::new();
    for character in excerpt.text.chars() {
        match character {
            '\'' => shown.push(character),
            _ => shown.extend(character.escape_debug()),
        }
    }
    let cut = if excerpt.cut { "…" } else { "" };
    format!("\"{shown}{cut}\"")
}

/// Something from a file as it stands there.
pub(super) fn as_it_stands(excerpt: &Excerpt) -> String {
    let cut = if excerpt.cut { "…" } else { "" };
    format!("{}{cut}", excerpt.text)
}
