//! Answers that are kept by what was asked, to the last bit, for those who ask again and again. It changes none.

use std::{
    collections::HashMap,
    hash::Hash,
    sync::{Mutex, MutexGuard, PoisonError},
};

/// Answers, each of some weight. Once all weigh too much they are forgotten.
#[derive(Debug)]
pub(crate) struct Answered<Key, Answer>(Mutex<Weighed<Key, Answer>>);

#[derive(Debug)]
struct Weighed<Key, Answer> {
    by_key: HashMap<Key, Answer>,
    weight: usize,
}

impl<Key, Answer> Default for Answered<Key, Answer> {
    fn default() -> Self {
        Self(Mutex::new(Weighed::default()))
    }
}

impl<Key, Answer> Default for Weighed<Key, Answer> {
    fn default() -> Self {
        Self {
            by_key: HashMap::new(),
            weight: 0,
        }
    }
}

impl<Key: Eq + Hash, Answer: Clone> Answered<Key, Answer> {
    /// What was answered before, or is now. Nothing is held while it is asked.
    pub(crate) fn to(
        &self,
        key: Key,
        most: usize,
        weight: impl FnOnce(&Key, &Answer) -> usize,
        ask: impl FnOnce() -> Answer,
    ) -> Answer {
        if let Some(known) = self.all().by_key.get(&key) {
            return known.clone();
        }
        let answer = ask();
        let mut all = self.all();
        if all.weight > most {
            *all = Weighed::default();
        }
        all.weight += weight(&key, &answer);
        all.by_key.insert(key, answer.clone());
        answer
    }

    fn all(&self) -> MutexGuard<'_, Weighed<Key, Answer>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_asked_is_not_asked_again_until_too_much_is_kept() {
        let answered = Answered::default();
        let mut asked = Vec::new();
        for key in [1, 1, 2, 1, 3, 1] {
            let answer = answered.to(
                key,
                10,
                |_, _| 6,
                || {
                    asked.push(key);
                    key * key
                },
            );
            assert_eq!(answer, key * key);
        }
        assert_eq!(
            asked,
            [1, 2, 3, 1],
            "two weigh more than ten: before the third both are forgotten"
        );
    }
}
