//! Which of many are marked, in one bit each: there may be a million.

use std::ops::Range;

/// In a word so many.
const BITS: usize = 64;

/// A mark or none for each index.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Marks {
    words: Vec<u64>,
}

impl Marks {
    /// In order.
    pub(super) fn of(marks: impl Iterator<Item = bool>) -> Self {
        let mut words = Vec::new();
        for (i, marked) in marks.enumerate() {
            if i % BITS == 0 {
                words.push(0);
            }
            if let Some(word) = words.last_mut() {
                *word |= u64::from(marked) << (i % BITS);
            }
        }
        Self { words }
    }

    /// The marked ones of a range, in order.
    pub(super) fn within(&self, range: Range<usize>) -> impl Iterator<Item = usize> + use<'_> {
        range.filter(|i| {
            let word = self.words.get(i / BITS);
            word.is_some_and(|word| word >> (i % BITS) & 1 == 1)
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_mark_is_found_where_it_was_made() {
        let marked = |i: usize| i % 7 == 3 || i % 64 == 63 || i == 128;
        for count in [0, 1, 63, 64, 65, 200] {
            let marks = Marks::of((0..count).map(marked));
            for range in [0..count, 3..4, 60..130, 190..400, 5..5] {
                let want = range.clone().filter(|&i| i < count && marked(i));
                assert!(marks.within(range.clone()).eq(want), "{range:?} of {count}");
            }
        }
    }
}
