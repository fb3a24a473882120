//! Complaints in input order, repeats of one kind counted after the first twenty.

use crate::fault::{Code, Fault, Level, Place, Wrong};

/// Repeats of one kind that are given singly. \[ours\]
const GIVEN_SINGLY: usize = 20;

/// Numbers with a comma for a point: who writes one so writes all so, and one is shown.
pub(super) const COMMA: &str = "comma";

/// How many of a kind are given singly.
fn singly((_, which): FaultKind) -> usize {
    if which == COMMA { 1 } else { GIVEN_SINGLY }
}

/// One kind: the code, and which of the things it can mean.
pub(super) type FaultKind = (Code, &'static str);

/// Everything complained about so far; bounded, however many faults a file has.
#[derive(Debug, Default)]
pub(super) struct Tally {
    faults: Vec<Fault>,
    kinds: Vec<Count>,
}

#[derive(Debug)]
struct Count {
    kind: FaultKind,
    met: usize,
    /// Index of the last one given singly.
    last: usize,
}

impl Tally {
    /// Adds a complaint; `fault` is only asked for what is given singly.
    pub(super) fn add(&mut self, kind: FaultKind, fault: impl FnOnce() -> Fault) {
        let next = self.faults.len();
        if let Some(count) = self.kinds.iter_mut().find(|c| c.kind == kind) {
            count.met += 1;
            if count.met > singly(kind) {
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
        self.faults.push(fault());
    }

    /// Whether the input is wrong.
    pub(super) fn has_errors(&self) -> bool {
        self.faults.iter().any(|p| p.level() == Level::Error)
    }

    /// All complaints, each long row of repeats closed with a count.
    pub(super) fn into_faults(mut self) -> Vec<Fault> {
        self.kinds.retain(|count| count.met > singly(count.kind));
        self.kinds
            .sort_by_key(|count| std::cmp::Reverse(count.last));
        for count in self.kinds {
            let more = self.faults.get(count.last).map(|last| {
                let place = Place {
                    line: None,
                    column: None,
                    item: None,
                    property: last.at.property.clone().filter(|_| count.kind.1 != COMMA),
                    ..last.at.clone()
                };
                let more = Wrong::More(last.kind(), count.met - singly(count.kind));
                Fault::new(more, place)
            });
            if let Some(more) = more {
                self.faults.insert(count.last + 1, more);
            }
        }
        self.faults
    }
}
