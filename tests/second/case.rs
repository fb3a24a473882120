//! A trip as the second implementation sees it: whole millionths of a degree and plain figures.

use super::figures::{Layout, Practice};

/// Longitude and latitude in millionths of a degree, so that questions about lines have exact answers.
pub(super) type Spot = (i64, i64);

/// One polygon: its outer ring and its holes, not closed.
#[derive(Clone, Debug)]
pub(super) struct Patch {
    pub(super) outer: Vec<Spot>,
    pub(super) holes: Vec<Vec<Spot>>,
}

impl Patch {
    pub(super) fn rings(&self) -> impl Iterator<Item = &Vec<Spot>> {
        std::iter::once(&self.outer).chain(&self.holes)
    }
}

/// The edges of a ring, the closing one too.
pub(super) fn edges(ring: &[Spot]) -> impl Iterator<Item = (Spot, Spot)> {
    let next = ring.iter().cycle().skip(1);
    ring.iter().copied().zip(next.copied())
}

/// The leader's word about a zone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Word {
    Auto,
    Always,
    Never,
}

/// A zone as drawn.
#[derive(Clone, Debug)]
pub(super) struct Zone {
    pub(super) patches: Vec<Patch>,
    pub(super) gap_m: f64,
    /// Degrees, and how far it may be off where that is said.
    pub(super) strike: Option<(f64, Option<f64>)>,
    pub(super) snow_m: Option<f64>,
    pub(super) bare: bool,
    pub(super) word: Word,
}

impl Zone {
    /// Ice called bare with snow on it counts as snow.
    pub(super) fn lies_bare(&self) -> bool {
        self.bare && self.snow_m.is_none_or(|m| m <= 0.0)
    }
}

/// When brake knots are tied.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum KnotsWord {
    Auto,
    Always,
    Never,
}

/// Readings of the rules that are not ours, to tell what they would change.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Reading {
    /// A zone that asks for no rope counts with all of where it is touched, as soon as a part is walked on the rope.
    pub(super) whole_touches: bool,
    /// A rope that folds, out and back on one line, turns through every direction while it does.
    pub(super) folds_turn: bool,
}

/// A rope at hand.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rope {
    pub(super) length_m: f64,
    pub(super) diameter_mm: Option<f64>,
}

/// A whole trip: at least two people on one rope.
#[derive(Clone, Debug)]
pub(super) struct Case {
    pub(super) seed: u64,
    pub(super) segments: Vec<Vec<Spot>>,
    /// Degrees by which the line falls in walking direction everywhere; without it no heights are given.
    pub(super) fall_deg: Option<f64>,
    /// What the heights are off, metres, by the number of the point of the line.
    pub(super) off_m: Vec<(usize, f64)>,
    pub(super) zones: Vec<Zone>,
    /// What a glacier inventory says.
    pub(super) inventory: Vec<Patch>,
    /// `undrawn_ice = "tell"`: the leader's word that ice without a zone is not roped.
    pub(super) only_tell: bool,
    pub(super) people: usize,
    /// Masses with pack in kilograms, where given.
    pub(super) masses_kg: Option<Vec<f64>>,
    pub(super) ropes: Vec<Rope>,
    pub(super) practice: &'static Practice,
    pub(super) knots: Option<KnotsWord>,
    pub(super) cover_anyone: bool,
    pub(super) rope_on_bare: bool,
    pub(super) margin_m: f64,
    pub(super) least_unroped_m: f64,
    pub(super) layout: Layout,
    pub(super) tie_in_m: Option<f64>,
    pub(super) sling_m: f64,
    pub(super) coil_most_m: f64,
    pub(super) coil_most_kg: f64,
    pub(super) reading: Reading,
}

impl Case {
    /// When knots are tied: the trip file's word, else that of the practice set.
    pub(super) fn knots_word(&self) -> KnotsWord {
        let of_set = if self.practice.ties_knots {
            KnotsWord::Auto
        } else {
            KnotsWord::Never
        };
        self.knots.unwrap_or(of_set)
    }

    pub(super) fn tie_in_m(&self) -> f64 {
        self.tie_in_m.unwrap_or(self.practice.tie_in_m)
    }
}
