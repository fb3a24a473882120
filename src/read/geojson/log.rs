//! Faults and oddities in the order they were met, repeats grouped.

use std::collections::BTreeMap;

use crate::fault::{Code, Fault, Level, Wrong};

/// Complaints of one kind that are shown in full before they are only counted; our judgement.
const SHOWN_FAULTS: usize = 5;
/// The same for warnings and notes.
const SHOWN_NOTES: usize = 1;
/// Complaints of one code, of whatever property and with whatever cure, that are shown before more of them are only counted; our
/// judgement.
const SHOWN_OF_CODE: usize = 20;

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
    pub(super) fn add(&mut self, fault: Fault) {
        match fault.level() {
            Level::Error => self.faults.add(fault),
            _ => self.notes.add(fault),
        }
    }

    /// Whether a complaint of this kind was met.
    pub(super) fn holds(&self, code: Code) -> bool {
        let mut all = self.faults.shown.iter().chain(&self.notes.shown);
        all.any(|f| f.kind() == code)
    }

    /// Takes out every complaint of one kind.
    pub(super) fn forget(&mut self, code: Code) {
        self.faults.forget(code);
    }

    /// Faults and notes.
    pub(super) fn finish(self) -> (Vec<Fault>, Vec<Fault>) {
        (self.faults.finish(), self.notes.finish())
    }
}

/// Complaints of one code and property with one cure.
#[derive(Debug)]
struct ComplaintKind {
    like: Fault,
    met: usize,
    /// Where in `shown` the last one is.
    last: usize,
}

impl ComplaintKind {
    fn holds(&self, fault: &Fault) -> bool {
        match (&self.like.what, &fault.what) {
            (Wrong::Geojson(one), Wrong::Geojson(two)) => one.is_like(two),
            _ => true,
        }
    }
}

#[derive(Debug)]
struct Groups {
    limit: usize,
    shown: Vec<Fault>,
    /// By code and property, and there in the order they were met.
    kinds: BTreeMap<(Code, Option<String>), Vec<ComplaintKind>>,
    codes: BTreeMap<Code, CodeCount>,
}

/// Complaints of one code.
#[derive(Debug, Default)]
struct CodeCount {
    shown: usize,
    /// Those beyond what is shown of a code.
    more: usize,
}

impl Groups {
    fn new(limit: usize) -> Self {
        Self {
            limit,
            shown: Vec::new(),
            kinds: BTreeMap::new(),
            codes: BTreeMap::new(),
        }
    }

    fn add(&mut self, fault: Fault) {
        let code = fault.kind();
        let key = (code, fault.at.property.clone());
        let kinds = self.kinds.entry(key).or_default();
        let of_code = self.codes.entry(code).or_default();
        let next = self.shown.len();
        let kind = kinds.iter_mut().find(|kind| kind.holds(&fault));
        let is_shown = match kind {
            None if of_code.shown >= SHOWN_OF_CODE => {
                of_code.more += 1;
                false
            }
            None => {
                kinds.push(ComplaintKind {
                    like: fault.clone(),
                    met: 1,
                    last: next,
                });
                true
            }
            Some(kind) => {
                kind.met += 1;
                let few = kind.met <= self.limit;
                kind.last = if few { next } else { kind.last };
                few
            }
        };
        if is_shown {
            of_code.shown += 1;
            self.shown.push(fault);
        }
    }

    fn forget(&mut self, code: Code) {
        self.kinds.retain(|(of, _), _| *of != code);
        self.codes.remove(&code);
        let kept = std::mem::take(&mut self.shown);
        let mut moved = Vec::with_capacity(kept.len());
        for fault in kept {
            moved.push(self.shown.len());
            if fault.kind() != code {
                self.shown.push(fault);
            }
        }
        for kind in self.kinds.values_mut().flatten() {
            kind.last = moved.get(kind.last).copied().unwrap_or(kind.last);
        }
    }

    fn finish(mut self) -> Vec<Fault> {
        for kind in self.kinds.values().flatten() {
            if let Some(last) = self.shown.get_mut(kind.last) {
                last.more = kind.met.saturating_sub(self.limit);
            }
        }
        for fault in self.shown.iter_mut().rev() {
            if let Some(count) = self.codes.remove(&fault.kind()) {
                fault.more += count.more;
            }
        }
        self.shown
    }
}
