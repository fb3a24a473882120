//! How steep the ground may be for a team to hold everybody's fall: asked degree by degree, each question once.
//!
//! *Model:* `holding`; steeper ground towards the lip never holds better, so what is known of one slope answers for all
//! gentler or all steeper ones. *Source:* `[derived]`. *Checked:* tests/physics (the same as asking every slope).

use super::Team;
use crate::{
    fault::refusal::Refusal,
    physics::assumed::{Assumed, Corner},
};

/// What is known of a team whatever the slope it stands on.
///
/// ```
/// use schrund::{physics::{assumed::Snow, holding::{Team, limits::HoldLimits}}, practice::{Rules, set::Source}};
///
/// let rules = Rules::with_practice(&Source::Named("arm-span"))?;
/// let gear = &rules.nature.gear;
/// let team = Team {
///     masses_kg: vec![80.0; 3], spacing_m: 13.0, gap_m: 4.0, knots: None, snow: Snow::Settled, on_skis: false,
///     slope_toward_lip_deg: 0.0, rope_ea_n: gear.rope.usual.modulus_n().expect("a spring"),
/// };
/// let mut limits = HoldLimits::default();
/// let mut at = |deg| limits.at(&team, deg, &rules.nature.assumed).expect("within what the model can be asked");
/// assert!(at(40).in_none, "nobody lies still on settled snow so steep");
/// assert!(!at(0).in_none && at(0).in_centre, "three hold on the flat (pattern of published tests)");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, Default)]
pub struct HoldLimits {
    favourable: Known,
    central: Known,
    adverse: Known,
}

/// Whether everybody's fall is held on one slope.
///
/// ```
/// use schrund::physics::{assumed::Snow, holding::{Team, limits::{HeldOn, HoldLimits}}};
///
/// let nature = schrund::example::job()?.rules.nature;
/// let pair = Team {
///     masses_kg: vec![80.0; 2], spacing_m: 15.0, gap_m: 4.0, knots: None, snow: Snow::Settled, on_skis: false,
///     slope_toward_lip_deg: 0.0, rope_ea_n: nature.gear.rope.usual.modulus_n().expect("a spring"),
/// };
/// let on = |deg| HoldLimits::default().at(&pair, deg, &nature.assumed).expect("within what the model can be asked");
/// // Whether two hold depends on what is assumed; on steep ground they do not, whatever that is.
/// assert_eq!(on(0), HeldOn { in_all: false, in_centre: true, in_none: false });
/// assert_eq!(on(15), HeldOn { in_all: false, in_centre: false, in_none: false });
/// assert_eq!(on(40), HeldOn { in_all: false, in_centre: false, in_none: true });
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HeldOn {
    /// With all assumptions adverse.
    pub in_all: bool,
    /// With all of them central.
    pub in_centre: bool,
    /// Somebody's fall not even with all of them favourable.
    pub in_none: bool,
}

impl HeldOn {
    /// Held whatever is assumed.
    pub const BEST: Self = Self {
        in_all: true,
        in_centre: true,
        in_none: false,
    };
}

/// Steepest slope known to be held and gentlest known not to be, whole degrees.
#[derive(Clone, Copy, Debug, Default)]
struct Known {
    held_on: Option<u8>,
    lost_on: Option<u8>,
}

impl HoldLimits {
    /// The answer on ground that falls so many degrees towards the lip.
    ///
    /// # Errors
    /// Names the first figure that lies outside what it can be.
    pub fn at(&mut self, team: &Team, deg: u8, assumed: &Assumed) -> Result<HeldOn, Refusal> {
        self.worse(team, deg, assumed, HeldOn::BEST)
    }

    /// The worse of an answer and of that of this team on this ground. What cannot make it worse is not asked.
    ///
    /// # Errors
    /// As [`HoldLimits::at`].
    pub fn worse(
        &mut self,
        team: &Team,
        deg: u8,
        assumed: &Assumed,
        than: HeldOn,
    ) -> Result<HeldOn, Refusal> {
        if than.in_none {
            return Ok(than);
        }
        let in_all = than.in_all && self.adverse.at(team, deg, Corner::Adverse, assumed)?;
        let central = &mut self.central;
        let in_centre =
            in_all || than.in_centre && central.at(team, deg, Corner::Central, assumed)?;
        let in_some = in_centre || self.favourable.at(team, deg, Corner::Favourable, assumed)?;
        Ok(HeldOn {
            in_all,
            in_centre,
            in_none: !in_some,
        })
    }
}

impl Known {
    fn at(
        &mut self,
        team: &Team,
        deg: u8,
        corner: Corner,
        assumed: &Assumed,
    ) -> Result<bool, Refusal> {
        if self.held_on.is_some_and(|held| deg <= held) {
            return Ok(true);
        }
        if self.lost_on.is_some_and(|lost| deg >= lost) {
            return Ok(false);
        }
        let held = team.all_held(f64::from(deg), corner, assumed)?;
        if held {
            self.held_on = Some(deg);
        } else {
            self.lost_on = Some(deg);
        }
        Ok(held)
    }
}

impl Team {
    /// Whether everybody's fall is held on such ground with all assumptions at one corner.
    fn all_held(&self, deg: f64, corner: Corner, assumed: &Assumed) -> Result<bool, Refusal> {
        let team = Self {
            slope_toward_lip_deg: deg,
            ..self.clone()
        };
        team.check()?;
        assumed.check()?;
        let case = team.case(assumed, |_| corner);
        for index in 0..team.masses_kg.len() {
            if !team.outcome(index, &case)?.held {
                return Ok(false);
            }
        }
        Ok(true)
    }
}
