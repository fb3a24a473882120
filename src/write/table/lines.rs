//! Rows of legs as lines: columns in line, left out one after the other where the width is short, and told below.

use std::iter::once;

use unicode_width::UnicodeWidthStr;

use crate::{
    plan::leg::Verdict,
    write::{
        parts::paragraph::{bullet, padded},
        table::painted::Table,
    },
};

pub(super) const COLUMNS: usize = 11;
pub(super) const LETTER: usize = 1;
pub(super) const GRID: usize = 5;
pub(super) const ZONES: usize = 6;
pub(super) const GAP: usize = 7;
pub(super) const APART: usize = 8;
pub(super) const ROPE: usize = 9;
pub(super) const VERDICT: usize = 10;
/// Columns that are read as numbers and stand to the right.
const RIGHT: [usize; 3] = [0, 3, 4];
/// Columns left out where the width is short, more and more; set-up, gap and grid then stand on lines of their own.
const LEFT_OUT: [&[usize]; 4] = [
    &[],
    &[ZONES],
    &[ZONES, APART, ROPE],
    &[ZONES, APART, ROPE, GAP, GRID],
];
/// What stands on a line of its own begins here.
const BELOW: &str = "      ";

/// A printed row before padding.
#[derive(Default)]
pub(super) struct Row {
    /// Stands above it on a line of its own: the stage.
    pub(super) above: Option<String>,
    pub(super) cells: [String; COLUMNS],
    pub(super) verdict: Option<Verdict>,
    /// What is done here, where that is no leg.
    pub(super) done: Option<String>,
    /// Lines below it whatever the width.
    pub(super) below: Vec<String>,
    /// The set-up of each team in words, for where its columns are left out, and with the gap where that is too.
    pub(super) setups: [Vec<String>; 2],
}

/// All rows under their head; the columns that had no room are handed back.
pub(super) fn print(out: &mut Table, head: &Row, rows: &[Row], width: usize) -> &'static [usize] {
    let widths = widths(once(head).chain(rows));
    let fits = |left_out: &&&[usize]| total(&widths, left_out) <= width;
    let left_out: &[usize] = LEFT_OUT.iter().find(fits).unwrap_or(&LEFT_OUT[3]);
    for row in once(head).chain(rows) {
        row.print(out, &widths, left_out, width);
    }
    left_out
}

fn widths<'r>(rows: impl Iterator<Item = &'r Row>) -> [usize; COLUMNS] {
    let mut widths = [0; COLUMNS];
    let mut filled = [false; COLUMNS];
    for (i, row) in rows.enumerate() {
        for (column, cell) in row.cells.iter().enumerate() {
            widths[column] = widths[column].max(cell.width());
            // A column with nothing but its title says nothing.
            filled[column] |= i > 0 && !cell.is_empty();
        }
    }
    for (width, filled) in widths.iter_mut().zip(filled) {
        *width = if filled { *width } else { 0 };
    }
    widths
}

/// Spaces before a column: its letter stands close to its leg.
fn before(column: usize) -> &'static str {
    match column {
        0 => "",
        LETTER => " ",
        _ => "  ",
    }
}

fn shown<'w>(
    widths: &'w [usize; COLUMNS],
    left_out: &'w [usize],
) -> impl Iterator<Item = (usize, usize)> + 'w {
    let all = widths.iter().copied().enumerate();
    all.filter(|(column, width)| *width > 0 && !left_out.contains(column))
}

fn total(widths: &[usize; COLUMNS], left_out: &[usize]) -> usize {
    let shown = shown(widths, left_out);
    shown
        .map(|(column, width)| before(column).len() + width)
        .sum()
}

impl Row {
    fn print(&self, out: &mut Table, widths: &[usize; COLUMNS], left_out: &[usize], width: usize) {
        if let Some(above) = &self.above {
            bullet(&mut out.text, "", above, width);
        }
        let mut line = self.line(widths, left_out);
        if let Some(done) = &self.done {
            line = format!("{}  {done}", line.trim_end());
        }
        let line = line.trim_end();
        if line.width() <= width {
            out.text.push_str(line);
            out.text.push('\n');
        } else {
            bullet(&mut out.text, "", line, width);
        }
        self.paint(out);
        let folded = left_out.contains(&APART);
        let grid = left_out.contains(&GRID).then_some(&self.cells[GRID]);
        let grid = grid.filter(|grid| !grid.is_empty());
        let with_gap = usize::from(left_out.contains(&GAP));
        let setups = self.setups[with_gap].iter().filter(|_| folded);
        for text in grid.into_iter().chain(setups).chain(&self.below) {
            bullet(&mut out.text, BELOW, text, width);
        }
    }

    fn line(&self, widths: &[usize; COLUMNS], left_out: &[usize]) -> String {
        let cells = shown(widths, left_out).map(|(column, width)| {
            let cell = padded(&self.cells[column], width, RIGHT.contains(&column));
            format!("{}{cell}", before(column))
        });
        cells.collect()
    }

    /// The verdict is the last cell.
    fn paint(&self, out: &mut Table) {
        let Some(verdict) = self.verdict else {
            return;
        };
        let end = out.text.trim_end().len();
        let start = end.saturating_sub(self.cells[VERDICT].len());
        out.verdicts.push((start..end, verdict));
    }
}
