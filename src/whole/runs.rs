//! When to keep one set-up over several legs: the cheapest way to cut a sequence of legs into runs.
//!
//! *Model:* a run has a cost of its own, and each cut between two runs costs the same. The cheapest cut of the first
//! legs is found from the cheapest cuts of fewer. *Valid:* where the cost of a run rests on its own legs only.
//! *Error:* none. *Source:* `[derived]`. *Checked:* tests/whole (every cut of up to eight legs tried).

use std::ops::Range;

/// The cheapest runs that cover `0..legs` in order, and their cost with the cuts between them. Of equal ones that with
/// the longer last run. `None` where some leg is in no possible run.
#[must_use]
pub fn cheapest(
    legs: usize,
    cut: f64,
    cost: &dyn Fn(Range<usize>) -> Option<f64>,
) -> Option<(Vec<Range<usize>>, f64)> {
    // For each number of first legs: the least cost, and where the last run begins.
    let mut best: Vec<Option<(f64, usize)>> = vec![Some((0.0, 0))];
    for end in 1..=legs {
        let with_last = |start: usize| {
            let (before, _) = best.get(start).copied().flatten()?;
            let cuts = if start == 0 { 0.0 } else { cut };
            Some((before + cuts + cost(start..end)?, start))
        };
        let least = (0..end)
            .filter_map(with_last)
            .reduce(|a, b| if b.0 < a.0 - 1e-9 { b } else { a });
        best.push(least);
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
