//! The sizes into which a party can be split.

use crate::trip::party::ON_ONE_ROPE;

/// Parties up to this are split in every way; there are thirty ways then, and of sixty people four hundred. Our judgement.
pub(super) const IN_EVERY_WAY: usize = 21;

/// The splits into rope teams that are weighed, larger teams first; fewer teams before more. Of a large party only those into
/// teams as alike as can be.
pub(super) fn of(people: usize) -> Vec<Vec<usize>> {
    match people <= IN_EVERY_WAY {
        true => every(people),
        false => even(people),
    }
}

/// A split for each number of teams, none of which has two people more than another.
fn even(people: usize) -> Vec<Vec<usize>> {
    let (least, most) = (*ON_ONE_ROPE.start(), *ON_ONE_ROPE.end());
    let teams = people.div_ceil(most)..=people / least;
    let split = |teams: usize| {
        let larger = people % teams;
        let size = |team: usize| people / teams + usize::from(team < larger);
        (0..teams).map(size).collect()
    };
    teams.map(split).collect()
}

fn every(people: usize) -> Vec<Vec<usize>> {
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
    fn even_splits_are_among_all_of_them() {
        assert_eq!(super::even(7), [vec![4, 3], vec![3, 2, 2]]);
        for people in 2..=30 {
            let (even, every) = (super::even(people), super::every(people));
            let mut alike = every.clone();
            alike.retain(|split| split.iter().all(|size| split[0] - size <= 1));
            assert_eq!(even, alike, "{people}");
        }
    }

    #[test]
    fn every_split_is_there_once_and_nobody_is_left_over() {
        assert_eq!(super::of(4), [vec![4], vec![2, 2]]);
        assert_eq!(super::of(7), [vec![5, 2], vec![4, 3], vec![3, 2, 2]]);
        for people in (2..=12).chain([21, 22, 60]) {
            let all = super::of(people);
            assert!(!all.is_empty(), "{people} people have a split");
            for (i, split) in all.iter().enumerate() {
                assert_eq!(split.iter().sum::<usize>(), people, "{split:?}");
                assert!(!all[..i].contains(split), "{split:?} twice");
            }
        }
    }
}
