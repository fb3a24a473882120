//! What is counted while heights are read.

/// What was met while reading cells of one model.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct CellsMet {
    /// Positions that lay on the raster.
    pub(crate) inside: u64,
    /// Positions it gave a height for.
    pub(crate) answered: u64,
    /// Cells whose number cannot be a height.
    pub(crate) unbelievable: u64,
}

impl CellsMet {
    /// What was met since an earlier count.
    pub(super) fn since(self, before: Self) -> Self {
        Self {
            inside: self.inside.saturating_sub(before.inside),
            answered: self.answered.saturating_sub(before.answered),
            unbelievable: self.unbelievable.saturating_sub(before.unbelievable),
        }
    }

    /// Counts what was met as met once more.
    pub(super) fn add(&mut self, more: Self) {
        self.inside += more.inside;
        self.answered += more.answered;
        self.unbelievable += more.unbelievable;
    }
}

/// What was met in each model of a terrain, in the order they were added.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct ModelsAsked(pub(super) Vec<CellsMet>);

impl ModelsAsked {
    /// What was asked since an earlier count.
    pub(crate) fn since(&self, before: &Self) -> Self {
        let pairs = self.0.iter().zip(&before.0);
        Self(pairs.map(|(now, before)| now.since(*before)).collect())
    }
}
