//! The leader's own words made fit to stand in somebody else's line: text stays text, in its place.

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

/// Embeddings, overrides and isolates of the Unicode bidirectional algorithm `[from memory: UAX 9]`.
fn turns_direction(c: char) -> bool {
    matches!(c, '\u{202A}'..='\u{202E}' | '\u{2066}'..='\u{2069}' | '\u{200E}' | '\u{200F}')
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
