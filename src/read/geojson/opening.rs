//! The opening of a collection: what stands before its first feature.

use serde::de::{Deserialize, IgnoredAny};

use super::text::BYTE_ORDER_MARK;

/// A text up to the bracket of its features, if that lies in this block and all before it is sound.
pub(super) fn of(block: &[u8]) -> Option<&[u8]> {
    let mut rest = block.strip_prefix(BYTE_ORDER_MARK).unwrap_or(block);
    sign(&mut rest, b'{')?;
    loop {
        let name: String = value(&mut rest)?;
        sign(&mut rest, b':')?;
        if name == "features" {
            sign(&mut rest, b'[')?;
            let opening = block.get(..block.len() - rest.len())?;
            return str::from_utf8(opening).is_ok().then_some(opening);
        }
        let IgnoredAny = value(&mut rest)?;
        sign(&mut rest, b',')?;
    }
}

/// Takes the JSON value that comes next.
pub(super) fn value<'t, T: Deserialize<'t>>(rest: &mut &'t [u8]) -> Option<T> {
    let mut values = serde_json::Deserializer::from_slice(rest).into_iter();
    let value = values.next()?.ok()?;
    *rest = rest.get(values.byte_offset()..)?;
    Some(value)
}

/// Takes the sign that comes next, if it is this one.
pub(super) fn sign(rest: &mut &[u8], sign: u8) -> Option<()> {
    let (first, behind) = unspaced(rest).split_first()?;
    (*first == sign).then(|| *rest = behind)
}

/// A text without the white space, as JSON has it, before it.
pub(super) fn unspaced(text: &[u8]) -> &[u8] {
    let blank = |byte: &u8| matches!(byte, b' ' | b'\n' | b'\r' | b'\t');
    let spaces = text.iter().take_while(|byte| blank(byte)).count();
    text.get(spaces..).unwrap_or_default()
}
