//! A fall into a crevasse, followed through time until everybody lies still or a holder reaches the lip.
//!
//! *Model:* the faller drops the slack, then hangs on an elastic rope that runs over a lip (`lip`) to holders
//! lying in a row (`row`), tied by ropes of the same kind. The faller's span is
//! damped; damping only ever takes energy. Before the first pull nobody moves; from then on
//! friction is μ_before, and `delay_s` later μ_after, for everybody at once (all hear the same shout `[ours]`).
//! A faller in the middle hangs in a V between two lips, each rope turning only as far as the V makes it.
//! *Valid:* lips that hold their shape apart from the knots' bite, Coulomb friction, no walking speed, no
//! stretching of harness or body, no wall. An end person drops straight: the swing towards the near wall is not
//! modelled, the slack stands for it. In the V the faller goes straight down.
//! *Error:* numerical below 0.5 % of the slide (steps halved); physical unknown, hence corners instead of one answer.
//! *Source:* Newton, Hooke, Coulomb, Euler–Eytelwein; `[derived]`.   *Checked:* tests/physics against `hold_stiff`,
//! against the fixed-holder force of `impact`, by energy, by length of rope, by halving the step.
//!
//! **Why an own stepper.** Libraries for ordinary differential equations locate events of a smooth right-hand
//! side and restart. Here friction at rest is set-valued: every holder and every lip sticks, slides forwards or
//! slides backwards, and at each event the new combination has to be found before a restart. Time stepping with
//! friction taken implicitly (a kick may stop a body but never turn it round) has no events to locate; it is the
//! usual method for dry friction. Rope forces are taken at the positions (Störmer–Verlet: kick, drift, kick), so
//! the scheme is of second order while nothing changes state. The first pull and the reaction fall on steps.

mod fall;
mod followed;
mod lip;
mod rope;
mod row;
mod run;
mod wrap;

use super::bound;
use crate::fault::refusal::Refusal;
use run::Run;

pub use fall::{Energy, Fall, GapSide, Outcome};
pub use followed::Followed;

/// Longest step, s `[ours]`: halving it changes no slide by as much as 0.5 % (tests/physics).
pub const LONGEST_STEP_S: f64 = 0.010;
/// Longest step as a share of the quickest bounce's inverse angular frequency `[ours]`.
const STEP_SHARE: f64 = 0.2;
impl Fall {
    /// Follows the fall in the usual steps.
    ///
    /// # Errors
    /// Names the first figure that lies outside what it can be.
    pub fn run(&self) -> Result<Outcome, Refusal> {
        self.run_in_steps(LONGEST_STEP_S)
    }

    /// Follows the fall in steps of at most `step_s`, for judging the steps themselves.
    ///
    /// # Errors
    /// As [`Fall::run`].
    pub fn run_in_steps(&self, step_s: f64) -> Result<Outcome, Refusal> {
        match self.start::<false>(step_s)? {
            Start::OverTheGap => Ok(Outcome::OVER_THE_GAP),
            Start::Straight(run) => Ok(followed(run).outcome()),
            Start::Vee(run) => Ok(followed(run).outcome()),
        }
    }

    /// The book of energy of the same, for judging the model: a fall with a book takes longer to follow.
    ///
    /// # Errors
    /// As [`Fall::run`].
    pub fn energy(&self, step_s: f64) -> Result<Energy, Refusal> {
        match self.start::<true>(step_s)? {
            Start::OverTheGap => Ok(Energy::default()),
            Start::Straight(run) => Ok(followed::<1, true>(run).energy()),
            Start::Vee(run) => Ok(followed::<2, true>(run).energy()),
        }
    }

    fn start<const BOOK: bool>(&self, step_s: f64) -> Result<Start<BOOK>, Refusal> {
        self.check()?;
        bound::DELAY_S.check(step_s)?;
        if self.sides.iter().any(|s| s.room_m() <= 0.0) {
            return Ok(Start::OverTheGap);
        }
        let quick_s = self.quickest_s();
        let share = step_s / LONGEST_STEP_S;
        let longest_s = step_s.min(STEP_SHARE * share * quick_s).max(1e-6);
        let before_reaction = (self.delay_s / longest_s).ceil();
        let step_s = if before_reaction >= 1.0 {
            self.delay_s / before_reaction
        } else {
            longest_s
        };
        match self.sides.as_slice() {
            [one] => Ok(Start::Straight(Run::start(self, [one], step_s))),
            [one, other] => Ok(Start::Vee(Run::start(self, [one, other], step_s))),
            sides => Err(Refusal::Sides(sides.len())),
        }
    }
}

/// The moment at which the rope comes taut.
#[expect(
    clippy::large_enum_variant,
    reason = "lives until the fall is followed, never in a list"
)]
enum Start<const BOOK: bool> {
    /// A first holder stands over the same gap.
    OverTheGap,
    /// The faller hangs on one rope.
    Straight(Run<1, BOOK>),
    /// The faller hangs between two.
    Vee(Run<2, BOOK>),
}

fn followed<const SIDES: usize, const BOOK: bool>(mut run: Run<SIDES, BOOK>) -> Run<SIDES, BOOK> {
    while run.goes_on() {}
    run
}
