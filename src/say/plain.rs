//! The leader's own words made fit to stand in somebody else's line: text stays text, in its place.

use std::borrow::Cow;

/// The text on one line: line breaks and other control characters become spaces, and what XML 1.0 forbids
/// or what turns the reading direction of its neighbours is left out. Letters of every script stay.
#[must_use]
pub fn line(text: &str) -> String {
    text.chars()
        .filter(|&c| !turns_direction(c) && !is_noncharacter(c))
        .map(|c| {
            if c.is_control() || is_break(c) {
                ' '
            } else {
                c
            }
        })
        .collect()
}

/// The text with what would act on a terminal or on the lines round it written out: nothing of it is lost, as becomes what
/// somebody looks for, and nothing of it breaks a line, moves a cursor or turns its neighbours about.
///
/// ```
/// use schrund::say::plain;
///
/// assert_eq!(plain::visible("tour\u{1b}[2J\u{202E}\n.gpx"), "tour\\u{1b}[2J\\u{202e}\\n.gpx");
/// assert_eq!(plain::visible("Übergang 氷河.gpx"), "Übergang 氷河.gpx");
/// ```
#[must_use]
pub fn visible(text: &str) -> String {
    let mut shown = String::with_capacity(text.len());
    for c in text.chars() {
        match acts(c) {
            true => shown.extend(c.escape_default()),
            false => shown.push(c),
        }
    }
    shown
}

/// The same of a text of several lines.
///
/// ```
/// assert_eq!(schrund::say::plain::visible_lines("a\u{9b}\nb"), "a\\u{9b}\nb");
/// ```
#[must_use]
pub fn visible_lines(text: &str) -> String {
    let lines: Vec<String> = text.split('\n').map(visible).collect();
    lines.join("\n")
}

/// A document in JSON whose strings act on nothing either: what does stands as an escape, which every reader takes for the same
/// character (RFC 8259, section 7). Outside strings there is no such character.
///
/// ```
/// use schrund::say::plain;
///
/// assert_eq!(plain::json("{\"name\":\"a\u{202E}b\"}".into()), "{\"name\":\"a\\u202eb\"}");
/// ```
#[must_use]
pub fn json(text: Cow<'_, str>) -> Cow<'_, str> {
    if text.bytes().all(|byte| byte < 0x7f) || !text.chars().any(is_escaped) {
        return text;
    }
    let mut escaped = String::with_capacity(text.len());
    for c in text.chars() {
        match is_escaped(c) {
            true => escaped += &format!("\\u{:04x}", u32::from(c)),
            false => escaped.push(c),
        }
    }
    escaped.into()
}

/// The first controls are escaped in every JSON.
fn is_escaped(c: char) -> bool {
    c >= '\u{7f}' && acts(c)
}

/// Whether a character does something instead of being seen.
pub(crate) fn acts(c: char) -> bool {
    c.is_control() || turns_direction(c) || is_break(c) || is_noncharacter(c)
}

/// At most so many characters; what was cut shows as an ellipsis.
#[must_use]
pub fn short(text: &str, most: usize) -> String {
    let text = line(text);
    if text.chars().count() <= most {
        return text;
    }
    let kept: String = text.chars().take(most.saturating_sub(1)).collect();
    format!("{}…", kept.trim_end())
}

/// Embeddings, overrides, isolates and marks of the Unicode bidirectional algorithm (UAX 9, section 2).
fn turns_direction(c: char) -> bool {
    matches!(c, '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}' | '\u{200E}' | '\u{200F}' | '\u{061C}')
}

fn is_break(c: char) -> bool {
    matches!(c, '\u{2028}' | '\u{2029}')
}

/// Forbidden by the `Char` production of XML 1.0 beside the controls `[from memory]`.
fn is_noncharacter(c: char) -> bool {
    matches!(c, '\u{FFFE}' | '\u{FFFF}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_stays_on_its_line_and_in_its_direction() {
        assert_eq!(line("a\u{0}b\nc\u{202E}d\u{FFFF}"), "a b cd");
        assert_eq!(line("Гляцио 氷河 جليد 🧗"), "Гляцио 氷河 جليد 🧗");
        assert_eq!(short("Upper icefall", 6), "Upper…");
        assert_eq!(short("Upper", 6), "Upper");
    }
}
