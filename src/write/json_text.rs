//! JSON as text: characters that act on a terminal, or turn what stands beside them about, are written as escapes, which every
//! reader of JSON takes for the same characters (RFC 8259, section 7).

use std::io::{self, Write};

use serde::Serialize;
use serde_json::{Serializer, ser::Formatter};

use crate::say::plain;

/// A value on one line.
pub(crate) fn write<T: Serialize + ?Sized>(out: impl Write, value: &T) -> serde_json::Result<()> {
    value.serialize(&mut Serializer::with_formatter(out, Escaping))
}

/// A value on one line, as a text.
pub(crate) fn line<T: Serialize + ?Sized>(value: &T) -> serde_json::Result<String> {
    Ok(plain::json(serde_json::to_string(value)?.into()).into_owned())
}

/// A value over several lines, indented.
pub(crate) fn pretty<T: Serialize + ?Sized>(value: &T) -> serde_json::Result<String> {
    Ok(plain::json(serde_json::to_string_pretty(value)?.into()).into_owned())
}

struct Escaping;

impl Formatter for Escaping {
    fn write_string_fragment<W: Write + ?Sized>(
        &mut self,
        out: &mut W,
        text: &str,
    ) -> io::Result<()> {
        out.write_all(plain::json(text.into()).as_bytes())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_acts_is_an_escape_and_reads_as_the_same() {
        let evil =
            "a\u{1b}[2J\u{7f}\u{9b}\u{85}\n\u{2028}\u{202E}b\u{2066}\u{200F}\u{61C}\u{FFFF}氷河";
        let value = serde_json::json!({ evil: [evil] });
        let mut written = Vec::new();
        write(&mut written, &value).unwrap();
        let texts = [
            String::from_utf8(written).unwrap(),
            line(&value).unwrap(),
            pretty(&value).unwrap(),
        ];
        for text in texts {
            assert!(
                text.contains("氷河") && !text.replace('\n', "").chars().any(plain::acts),
                "{text}"
            );
            let read: serde_json::Value = serde_json::from_str(&text).unwrap();
            assert_eq!(read, value);
        }
    }
}
