//! Every figure of the rules, with its standing, written down a second time.

/// Margin along and beside the line: our judgement.
pub(super) const MARGIN_M: f64 = 20.0;
/// Nobody unropes for less: our judgement.
pub(super) const LEAST_UNROPED_M: f64 = 150.0;
/// Pieces of a crossing that meet within a micrometre are one.
pub(super) const MEETS_M: f64 = 1e-6;

/// Below this angle between rope and strike the team runs along the crevasses: our judgement.
pub(super) const ALONG_DEG: f64 = 30.0;
/// There the way over a gap stops growing for the arithmetic: our judgement.
pub(super) const ALONG_FACTOR: f64 = 2.0;

/// A slope is taken over so much of the line, and over no less than two spacings where it decides: our judgement.
pub(super) const STEEP_OVER_M: f64 = 50.0;
/// A height that dips or sticks out alone decides no slope, where those beside it are no farther: our judgement.
pub(super) const LONE_HEIGHT_M: f64 = 30.0;

/// Room of a pair beyond the gap: our judgement; published accounts speak of 4 to 5 m with knots.
pub(super) const NEIGHBOUR_ROOM_M: f64 = 5.0;
/// Spacing of three as a share of the gap: common practice for the direction, the figure is our judgement.
pub(super) const SHARE_OF_THREE: f64 = 0.9;
/// Spacing of four and more as a share of the gap: common practice, no source.
pub(super) const SHARE_OF_FOUR: f64 = 0.8;
/// Least spacing: our judgement.
pub(super) const FLOOR_M: f64 = 7.0;
/// Greatest spacing: the widest figure in print.
pub(super) const CAP_M: f64 = 30.0;
/// Spacings are rounded up to this: our judgement.
pub(super) const STEP_M: f64 = 0.5;

/// Snow up to which brake knots do not bite, and above which they do: common practice, no source.
pub(super) const NO_BITE_M: f64 = 0.3;
pub(super) const BITE_M: f64 = 1.0;
/// A bulky brake knot takes this much rope: common practice, no source.
pub(super) const KNOT_ROPE_M: f64 = 1.2;
/// Rope left clear in the middle between two sets: derived, 15 m with 3 m, 2 m and three leaves it.
pub(super) const KNOT_CLEAR_M: f64 = 1.0;
/// Clearly heavier than the mean of the others: our judgement.
pub(super) const HEAVIER: f64 = 1.3;
/// A descent from which three tie knots too: our judgement.
pub(super) const STEEP_DESCENT_DEG: f64 = 20.0;

/// Rope for hands and hitches: our judgement.
pub(super) const HANDS_M: f64 = 2.5;
/// The holder keeps at least this far from the lip: our judgement.
pub(super) const FROM_LIP_M: f64 = 3.0;

/// What one person carries at an end, whichever comes first: our judgement.
pub(super) const COIL_MOST_M: f64 = 30.0;
pub(super) const COIL_MOST_KG: f64 = 2.0;

/// A rope with less than this to spare is something to look at: our judgement.
pub(super) const NEAR_ROPE_M: f64 = 1.0;

/// Lengths sold: common practice, no source.
pub(super) const SOLD_M: [f64; 6] = [30.0, 40.0, 50.0, 60.0, 70.0, 80.0];

/// Mass of rope in grams a metre by diameter in millimetres: makers' figures, no single source; the last from memory.
const GRAMS: [(f64, f64); 3] = [(8.0, 43.0), (9.0, 49.0), (9.5, 60.0)];
/// Diameter where none is given: our judgement.
const DIAMETER_MM: f64 = 9.0;

/// Mass of a metre of rope of a diameter in the table, kilograms.
pub(super) fn kg_per_m(diameter_mm: Option<f64>) -> f64 {
    let diameter = diameter_mm.unwrap_or(DIAMETER_MM);
    let row = GRAMS.iter().find(|(mm, _)| *mm == diameter);
    row.expect("a diameter of the table").1 / 1000.0
}

/// Three layouts in print: common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Layout {
    pub(super) first_m: f64,
    pub(super) step_m: f64,
    pub(super) knots: u8,
}

pub(super) const LAYOUTS: [Layout; 3] = [
    Layout {
        first_m: 3.0,
        step_m: 2.0,
        knots: 3,
    },
    Layout {
        first_m: 2.0,
        step_m: 1.0,
        knots: 3,
    },
    Layout {
        first_m: 4.0,
        step_m: 2.0,
        knots: 2,
    },
];

impl Layout {
    /// From the end person to the last knot.
    pub(super) fn reach_m(self) -> f64 {
        self.first_m + (f64::from(self.knots) - 1.0) * self.step_m
    }

    /// The spacing that a whole layout needs: two sets in the one span of a pair, one set in each span of three.
    pub(super) fn needs_m(self, people: usize) -> f64 {
        let sets = if people == 2 { 2.0 } else { 1.0 };
        sets * self.reach_m() + KNOT_CLEAR_M
    }
}

/// How the spare rope is measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Reserve {
    /// The reach factor.
    Reach(f64),
    /// Chest coils at each end for 2, 3, 4 and 5 people.
    Chest { coil_m: f64, coils: [f64; 4] },
}

/// One practice set.
#[derive(Debug)]
pub(super) struct Practice {
    pub(super) name: &'static str,
    /// Base spacing of 2, 3, 4 and 5 people.
    pub(super) base_m: [f64; 4],
    pub(super) reserve: Reserve,
    pub(super) tie_in_m: f64,
    pub(super) ties_knots: bool,
}

/// One arm span: common practice, no source.
const ARM_SPAN_M: f64 = 1.8;
/// Tie-ins of 1 m: aai2006, as excerpted, three of them take 10 to 15 ft; the lower end.
const TIE_IN_M: f64 = 1.0;

pub(super) const PRACTICES: [Practice; 4] = [
    // Common practice, no source.
    Practice {
        name: "arm-span",
        base_m: [
            8.0 * ARM_SPAN_M,
            7.0 * ARM_SPAN_M,
            6.0 * ARM_SPAN_M,
            5.0 * ARM_SPAN_M,
        ],
        reserve: Reserve::Reach(1.5),
        tie_in_m: TIE_IN_M,
        ties_knots: true,
    },
    // Common practice, no source; 15 m also in print (cicerone).
    Practice {
        name: "short-alpine",
        base_m: [15.0, 12.0, 10.0, 8.0],
        reserve: Reserve::Reach(1.5),
        tie_in_m: TIE_IN_M,
        ties_knots: true,
    },
    // usap17 and foh, as excerpted.
    Practice {
        name: "constant",
        base_m: [13.7; 4],
        reserve: Reserve::Reach(2.0),
        tie_in_m: TIE_IN_M,
        ties_knots: true,
    },
    // trekmountain; five people, the tie-in of 0.6 m that the 50 m rope of a pair leaves, and "no knots" as the
    // program prints them: the source stops at four.
    Practice {
        name: "club-coils",
        base_m: [8.0; 4],
        reserve: Reserve::Chest {
            coil_m: 1.7,
            coils: [12.0, 9.0, 6.0, 6.0],
        },
        tie_in_m: 0.6,
        ties_knots: false,
    },
];
