//! The nouns of the question whether a rope team holds: who stands where, and the answer.
//!
//! *Model, valid, error, source, checked:* see `holding`.

use crate::physics::assumed::{Parameter, Snow};

/// A rope team on one leg.
///
/// ```
/// use schrund::physics::{assumed::{Assumed, Snow}, hold_dynamic::Followed, holding::{HoldingAnswer, Team}};
///
/// let team = |people| Team {
///     masses_kg: vec![80.0; people], spacing_m: 15.0, gap_m: 6.0, knots: None, snow: Snow::Settled, on_skis: false,
///     down_deg: [0.0; 2], rope_ea_n: 21_213.0,
/// };
/// let (assumed, mut followed) = (Assumed::built_in()?, Followed::default());
/// assert!(matches!(team(2).verdicts(&assumed, &mut followed)?.verdict, HoldingAnswer::DependsOn(_)));
/// assert_eq!(team(5).verdicts(&assumed, &mut followed)?.verdict, HoldingAnswer::HeldInAll, "more people hold more");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Team {
    /// Masses with pack, kg, in rope order from the first to the last person.
    pub masses_kg: Vec<f64>,
    /// Walking distance between neighbours, m.
    pub spacing_m: f64,
    /// Effective gap width along the route, m.
    pub gap_m: f64,
    /// Brake knots tied from each end person, if any.
    pub knots: Option<BrakeKnots>,
    /// What the team stands on.
    pub snow: Snow,
    /// On skis: friction before braking is that of skis.
    pub on_skis: bool,
    /// How steeply the ground falls in walking direction, at least and at most, degrees, negative where it climbs. On a
    /// descent those behind the gap stand above their lip and those ahead below theirs, on a climb the other way round;
    /// each fall is judged on the worse of both figures.
    pub down_deg: [f64; 2],
    /// Rope modulus EA, N.
    pub rope_ea_n: f64,
}

/// A set of brake knots in the spans at both ends of the rope.
///
/// ```
/// use schrund::physics::{assumed::{Assumed, Corner, Snow}, holding::{BrakeKnots, Team}};
///
/// let team = Team {
///     masses_kg: vec![80.0; 3], spacing_m: 12.0, gap_m: 5.0, snow: Snow::Settled, on_skis: false,
///     knots: Some(BrakeKnots { count_per_side: 3, first_m: 3.0, step_m: 2.0 }),
///     down_deg: [0.0; 2], rope_ea_n: 21_213.0,
/// };
/// let case = Assumed::built_in()?.case(team.snow, false, |_| Corner::Central);
/// assert_eq!(team.fall_of(0, &case).sides[0].knots_m, [3.0, 5.0, 7.0], "metres of rope from the first, who falls");
/// assert_eq!(team.fall_of(1, &case).sides[0].knots_m, [9.0, 7.0, 5.0], "the same knots as the middle one sees them");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BrakeKnots {
    /// Knots tied from each end person.
    pub count_per_side: u32,
    /// First one, m from the end person.
    pub first_m: f64,
    /// From each to the next, m.
    pub step_m: f64,
}

/// What the model says for its assumptions.
///
/// ```
/// use schrund::physics::{assumed::{Assumed, Parameter, Snow}, holding::{HoldingAnswer, Team}};
///
/// let pair = |snow| Team {
///     masses_kg: vec![80.0; 2], spacing_m: 15.0, gap_m: 6.0, knots: None, snow, on_skis: false,
///     down_deg: [0.0; 2], rope_ea_n: 21_213.0,
/// };
/// let assumed = Assumed::built_in()?;
/// assert_eq!(pair(Snow::Ice).holding(&assumed)?.verdict, HoldingAnswer::HeldInNone);
/// let open = pair(Snow::Settled).holding(&assumed)?.verdict;
/// assert!(matches!(&open, HoldingAnswer::DependsOn(on) if on.contains(&Parameter::Delay)), "{open:?}");
/// assert_eq!(open.rank(), 1, "between held in all and held in none");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HoldingAnswer {
    /// Held with everything favourable, central and adverse.
    HeldInAll,
    /// Held or not with these; empty only where they were not asked for.
    DependsOn(Vec<Parameter>),
    /// Not held with anything favourable, central or adverse.
    HeldInNone,
}

/// The answer for one person falling.
///
/// ```
/// use schrund::physics::{assumed::{Assumed, Snow}, hold_dynamic::Followed, holding::{Faller, Team}};
///
/// let three = Team {
///     masses_kg: vec![80.0; 3], spacing_m: 15.0, gap_m: 6.0, knots: None, snow: Snow::Firm, on_skis: false,
///     down_deg: [0.0; 2], rope_ea_n: 21_213.0,
/// };
/// let fallers: Vec<Faller> = three.verdicts(&Assumed::built_in()?, &mut Followed::default())?.fallers;
/// let in_centre: Vec<bool> = fallers.iter().map(|faller| faller.held_in_centre).collect();
/// assert_eq!(in_centre, [true, false, true], "the one in the middle has one holder on either side");
/// assert_eq!(fallers[1].slide_share.1, 1.0, "at worst a holder comes to the lip");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Faller {
    /// Who, counted from 0 in rope order.
    pub index: usize,
    /// Whether the others hold.
    pub verdict: HoldingAnswer,
    /// Each parameter named flips the answer from the centre by itself; otherwise only together do they.
    pub alone: bool,
    /// Whether they hold with everything central.
    pub held_in_centre: bool,
    /// Least and most slide of a first holder over the corners, m; where not held, the way to the lip.
    pub slide_m: (f64, f64),
    /// Least and most of the slide as a share of the room there was, 1 being at the lip.
    pub slide_share: (f64, f64),
    /// Least and most peak force on a first holder over the corners, N; zeros where he stood over the gap himself.
    pub peak_holder_force_n: (f64, f64),
}

/// The answer for a team.
///
/// ```
/// use schrund::physics::{assumed::{Assumed, Snow}, hold_dynamic::Followed, holding::{Holding, Team}};
///
/// let three = Team {
///     masses_kg: vec![70.0, 80.0, 90.0], spacing_m: 15.0, gap_m: 4.0, knots: None, snow: Snow::Settled,
///     on_skis: false, down_deg: [0.0; 2], rope_ea_n: 21_213.0,
/// };
/// let holding: Holding = three.worst_holding(&Assumed::built_in()?, &mut Followed::default())?;
/// let worst = &holding.fallers[holding.worst];
/// assert!(holding.fallers.iter().all(|faller| faller.verdict.rank() <= worst.verdict.rank()));
/// assert!(holding.slide_m.1 < three.spacing_m, "a slide ends at the lip, at the latest");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Holding {
    /// The verdict for the worst faller.
    pub verdict: HoldingAnswer,
    /// As in [`Faller::alone`], for the worst faller.
    pub alone: bool,
    /// Who the worst faller is, counted from 0 in rope order.
    pub worst: usize,
    /// Least and most slide over all fallers and corners, m.
    pub slide_m: (f64, f64),
    /// Least and most peak force on a first holder over all fallers and corners, N.
    pub peak_holder_force_n: (f64, f64),
    /// Everybody's fall, in rope order.
    pub fallers: Vec<Faller>,
}

impl HoldingAnswer {
    /// 0 held in all, 1 depends, 2 held in none.
    #[must_use]
    pub fn rank(&self) -> u8 {
        match self {
            Self::HeldInAll => 0,
            Self::DependsOn(_) => 1,
            Self::HeldInNone => 2,
        }
    }
}

impl BrakeKnots {
    /// Distances walked from the end person, m.
    pub(super) fn distances_m(self) -> impl Iterator<Item = f64> {
        (0..self.count_per_side).map(move |i| self.first_m + f64::from(i) * self.step_m)
    }
}
