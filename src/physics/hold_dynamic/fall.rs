//! The nouns of a fall: who falls, who holds on which side, and how it ended.

use std::f64::consts::TAU;

use crate::{fault::refusal::Refusal, physics::bound};

/// The faller's harness is at least this far beyond the lip, m `[ours]`.
const LEAST_BEYOND_M: f64 = 0.2;

/// One fall, with everything known about it.
///
/// ```
/// use schrund::physics::{hold_dynamic::{Fall, GapSide}, impact::fixed_holder_force_n};
///
/// let rock = GapSide {
///     holders_kg: vec![250.0], spacing_m: 10.0, slack_m: 1.0, beyond_m: 0.0, slope_rad: 0.0, lip_mu: 0.0,
///     mu_before: 3.0, mu_after: 3.0, knots_m: Vec::new(), knot_n: 0.0, bite_m: 0.0,
/// };
/// let fall = Fall { victim_kg: 80.0, sides: vec![rock], modulus_n: 20_000.0, rope_damping: 0.0, delay_s: 0.0 };
/// let felt_n = fall.run()?.holder_n;
/// assert!((felt_n - 2646.9).abs() < 2.7, "derived for a holder that stands like a rock: {felt_n}");
/// assert!((fixed_holder_force_n(20_000.0, 80.0, 10.0, 1.0) - 2646.9).abs() < 0.05, "in closed form");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Fall {
    /// Mass of the faller with pack, kg.
    pub victim_kg: f64,
    /// One for an end person, two for a person in the middle.
    pub sides: Vec<GapSide>,
    /// Rope modulus EA, N.
    pub modulus_n: f64,
    /// Damping of the rope as a share of the critical damping of the faller's bounce; 0 bounces for ever.
    pub rope_damping: f64,
    /// From the first pull to the reaction, s.
    pub delay_s: f64,
}

/// The people on one side of the gap and the rope to them.
///
/// ```
/// use schrund::physics::{assumed::{Assumed, Corner, Snow}, holding::Team};
///
/// let team = Team {
///     masses_kg: vec![80.0, 75.0, 90.0], spacing_m: 12.0, gap_m: 8.0, knots: None, snow: Snow::Firm, on_skis: false,
///     down_deg: [0.0; 2], rope_ea_n: 21_213.0,
/// };
/// let central = Assumed::built_in()?.case(Snow::Firm, false, |_| Corner::Central);
/// let fall = team.fall_of(0, &central); // the first one breaks through half way over
/// assert_eq!(fall.sides[0].holders_kg, [75.0, 90.0], "the nearest first");
/// assert_eq!(fall.sides[0].room_m(), 8.0, "12 m less the 4 m that the first was beyond the lip");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct GapSide {
    /// Masses with pack, kg, nearest to the faller first.
    pub holders_kg: Vec<f64>,
    /// Distance between neighbours, m.
    pub spacing_m: f64,
    /// Rope in each span beyond that distance, m.
    pub slack_m: f64,
    /// How far beyond this lip the faller breaks through, m.
    pub beyond_m: f64,
    /// Slope of the ground towards the lip, rad.
    pub slope_rad: f64,
    /// Friction of the rope on the lip: λ = e^(μ·angle turned).
    pub lip_mu: f64,
    /// Friction of a holder before reacting.
    pub mu_before: f64,
    /// Friction of a holder after.
    pub mu_after: f64,
    /// Where the brake knots are, metres of rope from the faller.
    pub knots_m: Vec<f64>,
    /// What a knot bears while it bites, N.
    pub knot_n: f64,
    /// How far a knot is dragged through the lip before it is out, m.
    pub bite_m: f64,
}

/// How it ended.
///
/// ```
/// use schrund::physics::{capstan::mu_of_square_lip, hold_dynamic::{Fall, GapSide, Outcome}};
///
/// let side = GapSide {
///     holders_kg: vec![80.0], spacing_m: 12.0, slack_m: 0.0, beyond_m: 3.0, slope_rad: 0.0, knots_m: Vec::new(),
///     lip_mu: mu_of_square_lip(1.5), mu_before: 0.2, mu_after: 0.9, knot_n: 0.0, bite_m: 0.0,
/// };
/// let fall = Fall { victim_kg: 80.0, sides: vec![side], modulus_n: 21_212.8, rope_damping: 0.0, delay_s: 1.0 };
/// let outcome: Outcome = fall.run()?;
/// // A rival solver, scipy 1.17.1 LSODA, finds 4.7440 m: see tests/reference/fall.csv and its tolerance.
/// assert!(outcome.held && (outcome.slide_m - 4.744).abs() < 0.01 * 4.744 + 0.02, "{outcome:?}");
/// assert!((outcome.slide_share - outcome.slide_m / 9.0).abs() < 1e-12, "of the 9 m there were");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outcome {
    /// The slide has ended and no holder reached the lip.
    pub held: bool,
    /// Longest slide of a first holder, m; where not held, the slide up to the lip.
    pub slide_m: f64,
    /// The same as a share of the room the holder had.
    pub slide_share: f64,
    /// Least way that was left from a first holder to the lip, m; 0 where not held.
    pub room_left_m: f64,
    /// Largest rope force on a first holder, N.
    pub holder_n: f64,
    /// Largest force of all ropes together on the faller, N.
    pub victim_n: f64,
    /// How deep the faller went, m.
    pub drop_m: f64,
    /// Longest rope force over EA met on a faller's span: how much it stretched, relative.
    pub stretch: f64,
    /// How long it took from the first pull, s.
    pub time_s: f64,
}

/// The book of energy, J. The start is zero when the rope has just come taut, plus what the drop gave.
///
/// ```
/// use schrund::physics::{assumed::{Assumed, Corner, Snow}, hold_dynamic::{Energy, LONGEST_STEP_S}, holding::Team};
///
/// let team = Team {
///     masses_kg: vec![80.0, 80.0], spacing_m: 15.0, gap_m: 6.0, knots: None, snow: Snow::Settled, on_skis: false,
///     down_deg: [0.0; 2], rope_ea_n: 21_213.0,
/// };
/// let central = Assumed::built_in()?.case(Snow::Settled, false, |_| Corner::Central);
/// let book: Energy = team.fall_of(0, &central).energy(LONGEST_STEP_S)?;
/// assert!(book.gain_j <= 0.001 * (book.start_j + book.turned_j), "steps of second order create next to none");
/// assert!(book.friction_j > book.lip_j && book.lip_j > book.rope_j, "the snow takes most of it: {book:?}");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Energy {
    /// Kinetic energy at the first pull.
    pub start_j: f64,
    /// Lost to friction under holders.
    pub friction_j: f64,
    /// Lost at lips and knots.
    pub lip_j: f64,
    /// Lost inside the rope.
    pub rope_j: f64,
    /// Largest sum of energy present and lost above the start met at any step: 0 for exact integration.
    pub gain_j: f64,
    /// Energy turned over, the ruler for `gain_j`: start plus all the weight of the faller did.
    pub turned_j: f64,
}

impl Fall {
    pub(super) fn check(&self) -> Result<(), Refusal> {
        if self.sides.is_empty() || self.sides.len() > 2 {
            return Err(Refusal::Sides(self.sides.len()));
        }
        bound::MASS_KG.check(self.victim_kg)?;
        bound::MODULUS_N.check(self.modulus_n)?;
        bound::DELAY_S.check(self.delay_s)?;
        bound::SHARE.check(self.rope_damping)?;
        self.sides.iter().try_for_each(GapSide::check)
    }

    /// Inverse of the highest angular frequency there can be, s.
    pub(super) fn quickest_s(&self) -> f64 {
        let lightest_kg = self
            .sides
            .iter()
            .flat_map(|s| s.holders_kg.iter().copied())
            .fold(self.victim_kg, f64::min);
        let shortest_m = self
            .sides
            .iter()
            .flat_map(|s| [s.beyond(), s.spacing_m / 2.0])
            .fold(f64::INFINITY, f64::min);
        (lightest_kg * shortest_m / (2.0 * self.modulus_n)).sqrt()
    }

    /// Angular period of the slowest bounce, s: the whole rope, the whole faller.
    pub(super) fn bounce_s(&self) -> f64 {
        let longest_m = self
            .sides
            .iter()
            .map(|s| s.spacing_m + s.slack_m)
            .fold(0.0, f64::max);
        TAU * (self.victim_kg * longest_m / self.modulus_n).sqrt()
    }
}

impl Outcome {
    /// A first holder stood over the same gap: nobody slid, nobody held.
    pub(super) const OVER_THE_GAP: Self = Self {
        held: false,
        slide_m: 0.0,
        slide_share: 1.0,
        room_left_m: 0.0,
        holder_n: 0.0,
        victim_n: 0.0,
        drop_m: 0.0,
        stretch: 0.0,
        time_s: 0.0,
    };
}

impl GapSide {
    /// From the lip to the first holder, m; not above zero where two people stand over one gap.
    #[must_use]
    pub fn room_m(&self) -> f64 {
        self.spacing_m - self.beyond()
    }

    pub(super) fn beyond(&self) -> f64 {
        self.beyond_m.max(LEAST_BEYOND_M)
    }

    fn check(&self) -> Result<(), Refusal> {
        if self.holders_kg.is_empty() {
            return Err(Refusal::NoHolder);
        }
        for mass_kg in &self.holders_kg {
            bound::MASS_KG.check(*mass_kg)?;
        }
        for length_m in self.knots_m.iter().chain([&self.bite_m]) {
            bound::LENGTH_M.check(*length_m)?;
        }
        bound::SPACING_M.check(self.spacing_m)?;
        bound::SLACK_M.check(self.slack_m)?;
        bound::GAP_M.check(self.beyond_m)?;
        bound::SLOPE_DEG.check(self.slope_rad.to_degrees())?;
        bound::MU.check(self.lip_mu)?;
        bound::MU.check(self.mu_before)?;
        bound::MU.check(self.mu_after)?;
        bound::FORCE_N.check(self.knot_n)?;
        Ok(())
    }
}
