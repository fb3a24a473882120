//! Text for a terminal of some width: cells, paragraphs, nothing that leaves its line.

use unicode_width::UnicodeWidthStr;

use super::plain;

/// A cell filled up with spaces to a width.
pub(super) fn padded(text: &str, width: usize, right: bool) -> String {
    let pad = " ".repeat(width.saturating_sub(text.width()));
    if right {
        format!("{pad}{text}")
    } else {
        format!("{text}{pad}")
    }
}

/// A paragraph behind a sign, wrapped at spaces, with the following lines indented under it.
pub(super) fn bullet(out: &mut String, sign: &str, text: &str, width: usize) {
    let room = width.saturating_sub(sign.width()).max(20);
    let mut line = String::new();
    let mut lead = sign.to_owned();
    for word in plain::line(text).split(' ') {
        if !line.is_empty() && line.width() + 1 + word.width() > room {
            out.push_str(&format!("{lead}{line}\n"));
            lead = " ".repeat(sign.width());
            line.clear();
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    out.push_str(&format!("{lead}{line}\n"));
}
