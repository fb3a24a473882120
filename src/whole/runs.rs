//! When to keep one set-up over several legs: the cheapest way to cut a sequence of legs into runs.
//!
//! *Model:* a run has a cost of its own, and each cut between two runs costs the same. The cheapest cut of the first
//! legs is found from the cheapest cuts of fewer; runs that cost more alone than the cheapest found are not looked at.
//! *Valid:* where the cost of a run rests on its own legs only, and one more leg never makes a run cheaper. *Error:* none.
//! *Source:* `[derived]`. *Checked:* tests/whole (every cut of up to eight legs tried).

use std::ops::Range;

/// The cheapest runs that cover `0..legs` in order, and their cost with the cuts between them. Of equal ones that with
/// the longer last run. `None` where some leg is in no possible run.
///
/// `growing(end)` gives one after the other the costs of the runs that end before the leg `end`: of its last leg alone, of the
/// last two and so on, as long as they can be told and are not more than asked for. `possible` is asked of runs that are
/// worth it.
#[must_use]
pub fn cheapest<C: FnMut(f64) -> Option<f64>>(
    legs: usize,
    cut: f64,
    growing: impl Fn(usize) -> C,
    possible: impl Fn(Range<usize>) -> bool,
) -> Option<(Vec<Range<usize>>, f64)> {
    // For each number of first legs: the least cost, and where the last run begins.
    let mut best: Vec<Option<(f64, usize)>> = vec![Some((0.0, 0))];
    for end in 1..=legs {
        let mut least: Option<(f64, usize)> = None;
        // Longer runs that cost as much: asked for last, the longest first.
        let mut equal: Vec<usize> = Vec::new();
        let mut grown = growing(end);
        for start in (0..end).rev() {
            let most = least.map_or(f64::INFINITY, |(total, _)| total + 1e-9);
            let Some(cost) = grown(most).filter(|cost| *cost <= most) else {
                break;
            };
            let Some((before, _)) = best.get(start).copied().flatten() else {
                continue;
            };
            let cuts = if start == 0 { 0.0 } else { cut };
            let total = before + cuts + cost;
            if least.is_none_or(|(least, _)| total < least - 1e-9) {
                if possible(start..end) {
                    least = Some((total, start));
                    equal.clear();
                }
            } else if least.is_some_and(|(least, _)| total <= least + 1e-9) {
                equal.push(start);
            }
        }
        let longest = equal.into_iter().rev().find(|start| possible(*start..end));
        best.push(least.map(|(total, start)| (total, longest.unwrap_or(start))));
    }
    let (total, _) = best.last().copied().flatten()?;
    let mut runs = Vec::new();
    let mut end = legs;
    while end > 0 {
        let (_, start) = best.get(end).copied().flatten()?;
        runs.push(start..end);
        end = start;
    }
    runs.reverse();
    Some((runs, total))
}
