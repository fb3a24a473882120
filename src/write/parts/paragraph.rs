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

/// A paragraph behind a sign, wrapped at spaces (and inside words longer than a line), with the following lines
/// indented under it.
pub(crate) fn bullet(out: &mut String, sign: &str, text: &str, width: usize) {
    let indent = " ".repeat(sign.width());
    let options = Options::new(width.max(indent.len() + LEAST))
        .initial_indent(sign)
        .subsequent_indent(&indent)
        .word_separator(WordSeparator::AsciiSpace)
        .word_splitter(WordSplitter::NoHyphenation)
        .wrap_algorithm(WrapAlgorithm::FirstFit);
    out.push_str(&textwrap::fill(&plain::line(text), options));
    out.push('\n');
}
