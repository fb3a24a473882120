//! Faults and oddities in the order they were met, repeats grouped.

use std::collections::HashMap;

use crate::fault::{Code, Problem};

/// Complaints of one kind that are shown in full before they are only counted; our judgement.
const SHOWN_FAULTS: usize = 5;
/// The same for warnings and notes.
const SHOWN_NOTES: usize = 1;

/// Everything there is to say about a file.
#[derive(Debug)]
pub(super) struct Log {
    faults: Groups,
    notes: Groups,
}

impl Log {
    pub(super) fn new() -> Self {
        Self {
            faults: Groups::new(SHOWN_FAULTS),
            notes: Groups::new(SHOWN_NOTES),
        }
    }

    /// Files a complaint under its level.
    pub(super) fn add(&mut self, problem: Problem) {
        match problem.level() {
            crate::fault::Level::Error => self.faults.add(problem),
            _ => self.notes.add(problem),
        }
    }

    /// Whether a complaint of this kind was met.
    pub(super) fn holds(&self, code: Code) -> bool {
        let mut all = self.faults.shown.iter().chain(&self.notes.shown);
        all.any(|p| p.code == code)
    }

    /// Takes out every complaint of one kind.
    pub(super) fn forget(&mut self, code: Code) {
        self.faults.forget(code);
    }

    /// Faults and notes.
    pub(super) fn finish(self) -> (Vec<Problem>, Vec<Problem>) {
        (self.faults.finish(), self.notes.finish())
    }
}

/// What makes two complaints alike: same kind, same property, same cure.
type Kind = (Code, Option<String>, Option<String>);

#[derive(Debug)]
struct Groups {
    limit: usize,
    shown: Vec<Problem>,
    /// How many of a kind were met, and where in `shown` the last one is.
    met: HashMap<Kind, (usize, usize)>,
}

impl Groups {
    fn new(limit: usize) -> Self {
        Self {
            limit,
            shown: Vec::new(),
            met: HashMap::new(),
        }
    }

    fn add(&mut self, problem: Problem) {
        let (count, last) = self.met.entry(kind(&problem)).or_insert((0, 0));
        *count += 1;
        if *count <= self.limit {
            *last = self.shown.len();
            self.shown.push(problem);
        }
    }

    fn forget(&mut self, code: Code) {
        let kept = std::mem::take(&mut self.shown);
        let met = std::mem::take(&mut self.met);
        for problem in kept.into_iter().filter(|p| p.code != code) {
            let kind = kind(&problem);
            let count = met.get(&kind).map_or(1, |(count, _)| *count);
            self.met.insert(kind, (count, self.shown.len()));
            self.shown.push(problem);
        }
    }

    fn finish(mut self) -> Vec<Problem> {
        for (index, problem) in self.shown.iter_mut().enumerate() {
            let Some((count, last)) = self.met.get(&kind(problem)) else {
                continue;
            };
            if *last == index && *count > self.limit {
                let more = count - self.limit;
                problem.says = format!("{} (and {more} more like this)", problem.says);
            }
        }
        self.shown
    }
}

fn kind(problem: &Problem) -> Kind {
    let property = problem.place.property.clone();
    (problem.code, property, problem.hint.clone())
}
