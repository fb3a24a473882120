//! How steep the ground and how wide a gap may be for a team to hold everybody's fall: each question once, and only those that
//! others do not answer.
//!
//! *Model:* `holding`; steeper ground towards the lip never holds better, so what is known of one slope answers for all
//! gentler or all steeper ones; a fall in the middle is asked on each slope; see [`HoldLimits::over`] for widths. *Source:* `[derived]` for slopes, `[ours]` for
//! widths. *Checked:* tests/physics (the same as asking every slope, and every width).

use std::collections::BTreeMap;

use super::{
    Team,
    asking::{FallAsking, KnownSlopes, OneFall},
};
use crate::{
    fault::refusal::Refusal,
    physics::{
        assumed::{Assumed, Corner},
        hold_dynamic::Followed,
    },
};

/// What is known of a team whatever the gap it meets and whatever the slope it stands on.
///
/// ```
/// use schrund::{physics::{assumed::Snow, holding::{Team, limits::HoldLimits}}, practice::{Rules, set::Source}};
///
/// let rules = Rules::with_practice(&Source::Named("arm-span"))?;
/// let gear = &rules.nature.gear;
/// let team = Team {
///     masses_kg: vec![80.0; 3], spacing_m: 13.0, gap_m: 4.0, knots: None, snow: Snow::Settled, on_skis: false,
///     down_deg: [0.0; 2], rope_ea_n: gear.rope.usual.modulus_n().expect("a spring"),
/// };
/// let mut limits = HoldLimits::default();
/// let mut at = |deg| limits.at(&team, [deg; 2], &rules.nature.assumed).expect("within what the model can be asked");
/// assert!(at(40).in_none, "nobody lies still on settled snow so steep");
/// assert!(!at(0).in_none && at(0).in_centre, "three hold on the flat (pattern of published tests)");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default)]
pub struct HoldLimits {
    known: BTreeMap<OneFall, KnownSlopes>,
    /// The slopes that will be asked for, at least and at most, whole degrees in walking direction.
    range_deg: Option<[i8; 2]>,
}

/// Whether everybody's fall is held on one slope.
///
/// ```
/// use schrund::physics::{assumed::Snow, holding::{Team, limits::{HeldOn, HoldLimits}}};
///
/// let nature = schrund::example::job()?.rules.nature;
/// let pair = Team {
///     masses_kg: vec![80.0; 2], spacing_m: 15.0, gap_m: 4.0, knots: None, snow: Snow::Settled, on_skis: false,
///     down_deg: [0.0; 2], rope_ea_n: nature.gear.rope.usual.modulus_n().expect("a spring"),
/// };
/// let on = |deg| HoldLimits::default().at(&pair, [deg; 2], &nature.assumed).expect("within what the model can be asked");
/// // Whether two hold depends on what is assumed; on steep ground they do not, whatever that is.
/// assert_eq!(on(0), HeldOn { in_all: false, in_centre: true, in_none: false });
/// assert_eq!(on(15), HeldOn { in_all: false, in_centre: false, in_none: false });
/// assert_eq!(on(40), HeldOn { in_all: false, in_centre: false, in_none: true });
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HeldOn {
    /// In every corner of what is assumed.
    pub in_all: bool,
    /// With all of them central.
    pub in_centre: bool,
    /// Somebody's fall in no corner.
    pub in_none: bool,
}

/// The widest gap of those asked over which somebody's fall is not held, m, by what is assumed; `None` where all are.
///
/// ```
/// use schrund::physics::{
///     assumed::{Assumed, Snow}, hold_dynamic::Followed, holding::{Team, limits::{HeldOn, HoldLimits, LostOver}},
/// };
///
/// let pair = Team {
///     masses_kg: vec![80.0; 2], spacing_m: 15.0, gap_m: 0.0, knots: None, snow: Snow::Settled, on_skis: false,
///     down_deg: [0.0; 2], rope_ea_n: 21_213.0,
/// };
/// let (assumed, mut followed) = (Assumed::built_in()?, Followed::default());
/// let lost: LostOver = HoldLimits::default().over(&pair, &[20.0, 10.0, 0.0], [0; 2], &assumed, &mut followed)?;
/// assert_eq!((lost.favourable, lost.central), (None, Some(20.0)), "at its best the bridge breaks near the lip");
/// assert_eq!(lost.held_on(), HeldOn { in_all: false, in_centre: false, in_none: false });
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LostOver {
    /// In some corner of what is assumed, all adverse or not.
    pub adverse: Option<f64>,
    /// With all of them central; not asked where all are held with adverse ones.
    pub central: Option<f64>,
    /// In every corner; not asked where all are held with everything central.
    pub favourable: Option<f64>,
    /// Somebody, counted from 0 in rope order, whose fall is held in the fewest cases; `None` where all are held in all.
    pub faller: Option<usize>,
}

impl LostOver {
    /// Over how many of these gaps falls are held: over all of them, or not.
    #[must_use]
    pub fn held_on(&self) -> HeldOn {
        HeldOn {
            in_all: self.adverse.is_none(),
            in_centre: self.central.is_none(),
            in_none: self.favourable.is_some(),
        }
    }

    /// The widest gap over which falls are held in the fewest cases; `None` where all are held in all.
    #[must_use]
    pub fn worst_gap_m(&self) -> Option<f64> {
        self.favourable.or(self.central).or(self.adverse)
    }

    /// What is lost here or there.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        let wider = |a: Option<f64>, b: Option<f64>| a.into_iter().chain(b).reduce(f64::max);
        let graver = |of: &Self| (of.favourable.is_some(), of.central.is_some());
        Self {
            faller: if self.faller.is_none() || graver(&other) > graver(&self) {
                other.faller
            } else {
                self.faller
            },
            adverse: wider(self.adverse, other.adverse),
            central: wider(self.central, other.central),
            favourable: wider(self.favourable, other.favourable),
        }
    }
}

/// The widest gap over which somebody's fall is not held, m, and whose.
#[derive(Clone, Copy, Debug)]
struct Lost {
    gap_m: f64,
    faller: usize,
}

impl HoldLimits {
    /// Says between which slopes, degrees in walking direction, the next questions lie: whoever falls at an end of the rope is
    /// asked on the worst of them first, because what is held there is held on all.
    pub fn expect(&mut self, range_deg: [i8; 2]) {
        self.range_deg = Some(range_deg);
    }

    /// The answer over the gap that the team meets, on ground that falls at least and at most so many degrees in walking
    /// direction; that of the team does not count.
    ///
    /// # Errors
    /// Names the first figure that lies outside what it can be.
    pub fn at(
        &mut self,
        team: &Team,
        down_deg: [i8; 2],
        assumed: &Assumed,
    ) -> Result<HeldOn, Refusal> {
        let lost = self.over(
            team,
            &[team.gap_m],
            down_deg,
            assumed,
            &mut Followed::default(),
        )?;
        Ok(lost.held_on())
    }

    /// The answer over gaps of several widths, the greatest first; that of the team does not count.
    ///
    /// A narrow gap may be worse than a wide one: in the middle the rope bends in a V, and where a slide ends at the very lip
    /// little decides. So the narrowest is asked, and of those between as many as the way left to the lip does not answer.
    /// Knots are asked width by width.
    ///
    /// # Errors
    /// As [`HoldLimits::at`].
    pub fn over(
        &mut self,
        team: &Team,
        gaps_m: &[f64],
        down_deg: [i8; 2],
        assumed: &Assumed,
        followed: &mut Followed,
    ) -> Result<LostOver, Refusal> {
        if self.known.is_empty() {
            assumed.check()?;
        }
        let mut widest =
            |corner| self.widest_lost(team, gaps_m, down_deg, corner, assumed, followed);
        let adverse = widest(Corner::Adverse)?;
        let central = adverse.map(|_| widest(Corner::Central)).transpose()?;
        let central = central.flatten();
        let favourable = central.map(|_| widest(Corner::Favourable)).transpose()?;
        let favourable = favourable.flatten();
        let gap_m = |lost: Option<Lost>| lost.map(|lost| lost.gap_m);
        Ok(LostOver {
            adverse: gap_m(adverse),
            central: gap_m(central),
            favourable: gap_m(favourable),
            faller: favourable.or(central).or(adverse).map(|lost| lost.faller),
        })
    }

    fn widest_lost(
        &mut self,
        team: &Team,
        gaps_m: &[f64],
        down_deg: [i8; 2],
        corner: Corner,
        assumed: &Assumed,
        followed: &mut Followed,
    ) -> Result<Option<Lost>, Refusal> {
        let mut asking = FallAsking {
            team,
            down_deg,
            corner,
            assumed,
            known: &mut self.known,
            range_deg: self.range_deg.unwrap_or(down_deg),
            followed,
        };
        let fallers = 0..team.masses_kg.len();
        let greatest = gaps_m.get(..1).unwrap_or_default();
        for faller in fallers.clone() {
            if let Some(gap_m) = asking.every(faller, greatest, None)? {
                return Ok(Some(Lost { gap_m, faller }));
            }
        }
        let mut widest: Option<Lost> = None;
        for faller in fallers {
            let known_m = widest.map(|lost| lost.gap_m);
            let lost = match team.knots {
                Some(_) => asking.every(faller, gaps_m, known_m)?,
                None => asking.sparsely(faller, gaps_m, known_m)?,
            };
            let wider = lost.filter(|gap_m| known_m.is_none_or(|known_m| *gap_m > known_m));
            widest = wider.map(|gap_m| Lost { gap_m, faller }).or(widest);
        }
        Ok(widest)
    }
}
