//! Text for a terminal of some width: cells, paragraphs, nothing that leaves its line.

use unicode_width::{UnicodeWidthChar, UnicodeWidthStr};

use crate::say::plain;

/// A cell filled up with spaces to a width.
pub(super) fn padded(text: &str, width: usize, right: bool) -> String {
    let pad = " ".repeat(width.saturating_sub(text.width()));
    if right {
        format!("{pad}{text}")
    } else {
        format!("{text}{pad}")
    }
}

/// A word in pieces that fit a width; nearly always the word itself.
fn pieces(word: &str, width: usize) -> Vec<String> {
    let mut pieces = vec![String::new()];
    for sign in word.chars() {
        let last = pieces.last().map_or(0, |p| p.width());
        if last > 0 && last + sign.width().unwrap_or(0) > width {
            pieces.push(String::new());
        }
        if let Some(piece) = pieces.last_mut() {
            piece.push(sign);
        }
    }
    pieces
}

/// A paragraph behind a sign, wrapped at spaces (and inside words longer than a line), with the following lines indented under it.
pub(super) fn bullet(out: &mut String, sign: &str, text: &str, width: usize) {
    let room = width.saturating_sub(sign.width()).max(20);
    let mut line = String::new();
    let mut lead = sign.to_owned();
    let text = plain::line(text);
    for word in text.split(' ').flat_map(|word| pieces(word, room)) {
        if !line.is_empty() && line.width() + 1 + word.width() > room {
            out.push_str(&format!("{lead}{line}\n"));
            lead = " ".repeat(sign.width());
            line.clear();
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(&word);
    }
    out.push_str(&format!("{lead}{line}\n"));
}
