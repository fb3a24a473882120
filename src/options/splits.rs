//! The sizes into which a party can be split.

use crate::trip::party::ON_ONE_ROPE;

/// Every split into rope teams, larger teams first; fewer teams before more.
pub(super) fn of(people: usize) -> Vec<Vec<usize>> {
    let mut all = Vec::new();
    grow(people, *ON_ONE_ROPE.end(), &mut Vec::new(), &mut all);
    all.sort_by_key(Vec::len);
    all
}

fn grow(left: usize, most: usize, split: &mut Vec<usize>, all: &mut Vec<Vec<usize>>) {
    if left == 0 {
        all.push(split.clone());
    }
    for size in (*ON_ONE_ROPE.start()..=most.min(left)).rev() {
        split.push(size);
        grow(left - size, size, split, all);
        split.pop();
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn every_split_is_there_once_and_nobody_is_left_over() {
        assert_eq!(super::of(4), [vec![4], vec![2, 2]]);
        assert_eq!(super::of(7), [vec![5, 2], vec![4, 3], vec![3, 2, 2]]);
        for people in 2..=12 {
            let all = super::of(people);
            assert!(!all.is_empty(), "{people} people have a split");
            for (i, split) in all.iter().enumerate() {
                assert_eq!(split.iter().sum::<usize>(), people, "{split:?}");
                assert!(!all[..i].contains(split), "{split:?} twice");
            }
        }
    }
}
