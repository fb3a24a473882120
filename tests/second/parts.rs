//! What of a plan is compared, part by part; each can be switched on alone.

use super::case::Reading;

/// A part of the comparison.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Part {
    /// Bare crossings of each zone.
    Crossings,
    /// From where to where each leg runs, roped or not, and the zones it meets.
    Legs,
    Spacing,
    /// Gap, way over it, running along.
    Gaps,
    /// Steepest along the line, and toward the lip.
    Slopes,
    Knots,
    Coils,
    Ledger,
    /// The widest gap as tied, and the one that the rope covers.
    Covers,
    /// No spacing within the limits; two over one gap; no rope that fits.
    Limits,
    /// Which rope at hand, and what is left of it.
    AtHand,
    /// Trips in which a pair walks farther apart so that its whole layout of knots fits.
    WholeLayouts,
    /// Coils and bag of the rope as carried.
    Carried,
    /// How deep a drop loop reaches.
    Reach,
    /// Ice of an inventory that nobody has drawn; without this part no trip has an inventory.
    KnownIce,
}

/// Every part, and whether a difference in it fails the tests. One that is off is compared and counted all the same.
pub(super) const PARTS: [(Part, bool); 15] = [
    (Part::Crossings, true),
    (Part::Legs, true),
    (Part::Spacing, true),
    (Part::Gaps, true),
    (Part::Slopes, true),
    (Part::Knots, true),
    (Part::Coils, true),
    (Part::Ledger, true),
    (Part::Covers, true),
    (Part::Limits, true),
    (Part::AtHand, true),
    (Part::WholeLayouts, false),
    (Part::Carried, false),
    (Part::Reach, false),
    (Part::KnownIce, false),
];

pub(super) fn is_on(part: Part) -> bool {
    PARTS.contains(&(part, true))
}

/// One difference between the library and the second implementation.
#[derive(Debug)]
pub(super) struct Difference {
    pub(super) part: Part,
    pub(super) says: String,
    pub(super) slight: Option<Slight>,
}

/// What makes a difference a slight one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Slight {
    /// The same legs begin and end elsewhere by so many metres at most.
    Off(f64),
    /// Two figures are equal but for the last digits.
    Even,
}

/// How far a place may be off that is set by the margin, metres.
pub(super) const MARGIN_OFF_M: f64 = 0.05;

/// How a known difference is told from others.
pub(super) enum How {
    /// By itself.
    Alone(fn(&Difference) -> bool),
    /// All differences of a trip vanish when the rules are read otherwise.
    Read(Reading),
}

/// A difference that is known and explained.
pub(super) struct Explained {
    pub(super) name: &'static str,
    pub(super) why: &'static str,
    pub(super) how: How,
}

const WHOLE_TOUCHES: &str = "the library counts all of a zone that says `never` where the team is roped on a part of \
    it, also what is walked unroped; a leg is set up for what it holds";
const FOLDS: &str = "the library lets a rope that folds at a turning point, out and back on one line, point in every \
    direction; it lies along that line all the time";

pub(super) const EXPLAINED: [Explained; 5] = [
    Explained {
        name: "margin in a plane",
        why: "the library takes the margin beside a zone in a plane, off by up to 0.03 % of it; geodesics agree with \
              the second implementation",
        how: How::Alone(|one| matches!(one.slight, Some(Slight::Off(m)) if m <= MARGIN_OFF_M)),
    },
    Explained {
        name: "even but for the last digits",
        why: "the library says that two can stand over a gap just as long as the spacing where the team runs along, as if \
              2·w were w / sin 30° and a last digit longer",
        how: How::Alone(|one| one.slight == Some(Slight::Even)),
    },
    Explained {
        name: "never beyond the leg",
        why: WHOLE_TOUCHES,
        how: How::Read(Reading {
            whole_touches: true,
            folds_turn: false,
        }),
    },
    Explained {
        name: "folds",
        why: FOLDS,
        how: How::Read(Reading {
            whole_touches: false,
            folds_turn: true,
        }),
    },
    Explained {
        name: "folds on never beyond the leg",
        why: "both",
        how: How::Read(Reading {
            whole_touches: true,
            folds_turn: true,
        }),
    },
];

/// Where a plan lacks a member that it is to have.
pub(super) const NOT_YET: &str = "not in the plan yet";
