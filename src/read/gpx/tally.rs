//! Complaints in input order, repeats of one kind counted after the first twenty.

use crate::fault::{Code, Level, Place, Problem};

/// Repeats of one kind that are given singly. \[ours\]
const GIVEN_SINGLY: usize = 20;

/// One kind: the code, and which of the things it can mean.
pub(super) type Kind = (Code, &'static str);

/// Everything complained about so far; bounded, however many faults a file has.
#[derive(Debug, Default)]
pub(super) struct Tally {
    problems: Vec<Problem>,
    kinds: Vec<Count>,
}

#[derive(Debug)]
struct Count {
    kind: Kind,
    met: usize,
    /// Index of the last one given singly.
    last: usize,
}

impl Tally {
    /// Adds a complaint; `problem` is only asked for what is given singly.
    pub(super) fn add(&mut self, kind: Kind, problem: impl FnOnce() -> Problem) {
        let next = self.problems.len();
        if let Some(count) = self.kinds.iter_mut().find(|c| c.kind == kind) {
            count.met += 1;
            if count.met > GIVEN_SINGLY {
                return;
            }
            count.last = next;
        } else {
            self.kinds.push(Count {
                kind,
                met: 1,
                last: next,
            });
        }
        self.problems.push(problem());
    }

    /// Whether the input is wrong.
    pub(super) fn has_errors(&self) -> bool {
        self.problems.iter().any(|p| p.level() == Level::Error)
    }

    /// All complaints, each long row of repeats closed with a count.
    pub(super) fn into_problems(mut self) -> Vec<Problem> {
        self.kinds.retain(|count| count.met > GIVEN_SINGLY);
        self.kinds
            .sort_by_key(|count| std::cmp::Reverse(count.last));
        for count in self.kinds {
            let more = self.problems.get(count.last).map(|last| {
                let place = Place {
                    line: None,
                    column: None,
                    item: None,
                    ..last.place.clone()
                };
                let says = format!("and {} more like this", count.met - GIVEN_SINGLY);
                Problem::new(last.code, place, says)
            });
            if let Some(more) = more {
                self.problems.insert(count.last + 1, more);
            }
        }
        self.problems
    }
}
