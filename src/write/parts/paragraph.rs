//! Text for a terminal of some width: cells, paragraphs, nothing that leaves its line.

use textwrap::{Options, WordSeparator, WordSplitter, WrapAlgorithm};
use unicode_width::UnicodeWidthStr;

use crate::say::plain;

/// Fewest columns for text: narrower, nothing can be read. Our judgement.
const LEAST: usize = 20;

/// A cell filled up with spaces to a width.
pub(crate) fn padded(text: &str, width: usize, right: bool) -> String {
    let pad = " ".repeat(width.saturating_sub(text.width()));
    if right {
        format!("{pad}{text}")
    } else {
        format!("{text}{pad}")
    }
}

/// How wide the column is in which labels stand, columns: those that are longer than `most` or a third of the line stand above.
pub(crate) fn label_column<'l>(
    labels: impl Iterator<Item = &'l str>,
    most: usize,
    width: usize,
) -> usize {
    let widest = most.min(width / 3);
    let short = labels.map(UnicodeWidthStr::width).filter(|w| *w <= widest);
    short.max().unwrap_or(0)
}

/// What a line begins with under its label: the label itself, or room for it where it is too long and stands above.
pub(crate) fn labelled(out: &mut String, label: &str, column: usize, width: usize) -> String {
    if label.width() <= column {
        return format!("  {}  ", padded(label, column, false));
    }
    bullet(out, "  ", label, width);
    " ".repeat(column + 4)
}

/// A paragraph behind a sign, wrapped at spaces (and inside words longer than a line), with the following lines
/// indented under it.
pub(crate) fn bullet(out: &mut String, sign: &str, text: &str, width: usize) {
    wrapped(out, [sign, &" ".repeat(sign.width())], text, width);
}

/// A paragraph that holds names: its following lines are indented, so that none begins with what a file says.
pub(crate) fn hanging(out: &mut String, text: &str, width: usize) {
    wrapped(out, ["", "  "], text, width);
}

fn wrapped(out: &mut String, [sign, indent]: [&str; 2], text: &str, width: usize) {
    let options = Options::new(width.max(indent.len() + LEAST))
        .initial_indent(sign)
        .subsequent_indent(indent)
        .word_separator(WordSeparator::AsciiSpace)
        .word_splitter(WordSplitter::NoHyphenation)
        .wrap_algorithm(WrapAlgorithm::FirstFit);
    let glued = glued(&plain::line(text));
    let filled = textwrap::fill(&glued, options);
    out.push_str(&filled.replace(GLUE, " "));
    out.push('\n');
}

/// Stands for a space at which no line breaks: of no script, and one column wide.
const GLUE: char = '\u{E000}';
/// Units that stay on the line of their figure.
const UNITS: [&str; 8] = ["m", "km", "ft", "mi", "kg", "kN", "h", "min"];

/// The text with figure and unit in one piece.
fn glued(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut after_figure = false;
    for (i, word) in text.split(' ').enumerate() {
        if i > 0 {
            let unit = word.trim_end_matches([',', ';', ':', '.', ')']);
            let glue = after_figure && UNITS.contains(&unit);
            out.push(if glue { GLUE } else { ' ' });
        }
        out.push_str(word);
        after_figure = word.ends_with(|c: char| c.is_ascii_digit());
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_stays_with_its_figure() {
        let mut out = String::new();
        bullet(&mut out, "", "gaps wider than 12.4 m, 7.2 m (leg 10)", 21);
        assert_eq!(out, "gaps wider than\n12.4 m, 7.2 m (leg\n10)\n");
    }
}
