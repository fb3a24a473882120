//! Names of files: as they are typed, as text whatever bytes they are of, and such as are free.

use std::{
    ffi::{OsStr, OsString},
    path::{Path, PathBuf},
};

use clap::builder::{OsStringValueParser, TypedValueParser};

/// A byte of a name that is no UTF-8 stands as the sign so far behind this one, where nobody writes.
const SIGNS: u32 = 0x0010_fe00;

/// The name of an input as a flag or an argument gives it.
pub(crate) fn input() -> impl TypedValueParser<Value = String> {
    OsStringValueParser::new().map(|name| text(&name))
}

/// A name as text, whatever bytes it is of: [`path`] is the file that it is the name of.
pub(crate) fn text(name: &OsStr) -> String {
    let mut text = String::new();
    for chunk in name.as_encoded_bytes().utf8_chunks() {
        for c in chunk.valid().chars() {
            // Who has such a sign in a name has it byte by byte too.
            match byte_of(c) {
                Some(_) => push_bytes(&mut text, c.encode_utf8(&mut [0; 4]).as_bytes()),
                None => text.push(c),
            }
        }
        push_bytes(&mut text, chunk.invalid());
    }
    text
}

fn push_bytes(text: &mut String, bytes: &[u8]) {
    let signs = bytes.iter().map(|byte| SIGNS + u32::from(*byte));
    text.extend(signs.filter_map(char::from_u32));
}

/// The byte that a sign stands for.
fn byte_of(c: char) -> Option<u8> {
    u32::from(c).checked_sub(SIGNS)?.try_into().ok()
}

/// The file that a name is of.
pub(crate) fn path(name: &str) -> PathBuf {
    let mut bytes = Vec::with_capacity(name.len());
    for c in name.chars() {
        match byte_of(c) {
            Some(byte) => bytes.push(byte),
            None => bytes.extend_from_slice(c.encode_utf8(&mut [0; 4]).as_bytes()),
        }
    }
    PathBuf::from(os_string(bytes))
}

#[cfg(unix)]
fn os_string(bytes: Vec<u8>) -> OsString {
    std::os::unix::ffi::OsStringExt::from_vec(bytes)
}

/// Elsewhere names are text, or nobody can say of which bytes they are.
#[cfg(not(unix))]
fn os_string(bytes: Vec<u8>) -> OsString {
    String::from_utf8_lossy(&bytes).into_owned().into()
}

/// A name as it can be shown.
pub(crate) fn shown(name: &str) -> String {
    let sign = |c| byte_of(c).map_or(c, |_| char::REPLACEMENT_CHARACTER);
    name.chars().map(sign).collect()
}

/// This name, or else the first with a number behind it that is free.
pub(crate) fn free(path: &Path) -> String {
    let name = |number: u32| {
        let stem = path
            .file_stem()
            .map_or("plan".into(), |stem| stem.to_string_lossy());
        let end = path
            .extension()
            .map(|end| format!(".{}", end.to_string_lossy()));
        path.with_file_name(format!("{stem}-{number}{}", end.unwrap_or_default()))
    };
    let others = (2..1000).map(name);
    let mut all = std::iter::once(path.to_owned()).chain(others);
    let free = all.find(|path| path.symlink_metadata().is_err());
    free.unwrap_or_else(|| path.to_owned())
        .display()
        .to_string()
}

/// A word as it is typed: between quotation marks where the shell would tear it.
pub(crate) fn typed(word: &str) -> String {
    if word.contains([' ', '\'', '*', '$', '(', '&', ';', '|', '<', '>']) {
        format!("\"{word}\"")
    } else {
        word.to_owned()
    }
}

/// A call of these words, as it is typed.
pub(crate) fn call<'w>(words: impl IntoIterator<Item = &'w str>) -> String {
    let words: Vec<String> = words.into_iter().map(typed).collect();
    format!("schrund {}", words.join(" "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[cfg(unix)]
    #[test]
    fn a_name_of_any_bytes_is_that_of_its_file() {
        let names: [&[u8]; 5] = [
            b"route.gpx",
            "Gr\u{fc}n.gpx".as_bytes(),
            b"Gr\xfcn.gpx",
            b"\xff\xfe",
            // Signs that a name already holds.
            "a\u{10fefc}b\u{10ffff}\u{10fe00}".as_bytes(),
        ];
        let named = |bytes: &[u8]| os_string(bytes.to_vec());
        for name in names {
            assert_eq!(path(&text(&named(name))), PathBuf::from(named(name)));
        }
        let all: std::collections::BTreeSet<String> =
            names.iter().map(|name| text(&named(name))).collect();
        assert_eq!(all.len(), names.len(), "no two are one");
        assert_eq!(shown(&text(&named(b"Gr\xfcn.gpx"))), "Gr\u{fffd}n.gpx");
        assert_eq!(text(OsStr::new("route.gpx")), "route.gpx");
    }
}
