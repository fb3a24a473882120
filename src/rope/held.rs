//! Falls judged place by place: on how many metres of a leg they are held in all cases, depend, or are held in none.

use std::collections::BTreeMap;

use crate::{
    fault::refusal::Refusal,
    ground::incline::Incline,
    legs::over::Over,
    meet::Contact,
    physics::{
        assumed::Snow,
        bound,
        holding::{
            Team,
            limits::{HeldOn, HoldLimits},
        },
    },
    plan::fall::{Held, HeldRun},
    practice::Rules,
    rope::{
        draft::Draft,
        legs::RopedLeg,
        stance::{self, Stance},
    },
    trip::{job::Brief, route::Stretch, zone::Zone},
};

/// The answers along one leg, and the place where the team is held worst.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct HeldAlong {
    /// In walking order; neighbours that say the same are one.
    pub(crate) runs: Vec<HeldRun>,
    /// The team as it stands at the worst place.
    pub(crate) worst: Team,
    /// That place.
    pub(crate) piece: Stretch,
    /// Whether heights say how steep it is there.
    pub(crate) slope_known: bool,
}

/// What was asked so far, whichever leg it was asked for.
#[derive(Debug, Default)]
pub(crate) struct AskedSlopes(BTreeMap<Vec<u64>, HoldLimits>);

impl AskedSlopes {
    /// A team all along a leg; `None` where it touches no ice.
    pub(crate) fn along(
        &mut self,
        leg: &RopedLeg<'_>,
        draft: &Draft,
        job: &Brief<'_>,
    ) -> Result<Option<HeldAlong>, Refusal> {
        let Brief {
            zones,
            rules,
            burden,
            ..
        } = *job;
        let mut along: Option<HeldAlong> = None;
        let mut worst: Option<Alarm> = None;
        let on_ice = leg
            .footing
            .inclines
            .iter()
            .filter(|i| !i.contacts.is_empty());
        for incline in on_ice {
            let (drawn, undrawn) = ice_at(leg, incline, zones);
            let over = Over {
                zones: &drawn,
                undrawn,
            };
            let stance = Stance::on(over, rules);
            let mut team = stance::team(draft, stance, rules)?;
            if drawn.is_empty() {
                team.gap_m = 0.0;
            }
            let deg = whole_deg(incline.toward_lip_deg().unwrap_or_default());
            let mut held_on = self.at(&team, deg, rules)?;
            if let Some(loaded) = stance::loaded(&team, &draft.persons, burden) {
                held_on = worse(held_on, self.at(&loaded, deg, rules)?);
            }
            let held_on = told(held_on, !drawn.is_empty());
            team.slope_toward_lip_deg = f64::from(deg);
            let run = run(incline, stance.snow, held_on);
            let alarm = Alarm::of(&run, deg);
            let known = along.get_or_insert_with(|| HeldAlong {
                runs: Vec::new(),
                worst: team.clone(),
                piece: incline.piece,
                slope_known: incline.down_deg.is_some(),
            });
            if worst.is_none_or(|w| alarm > w) {
                worst = Some(alarm);
                known.worst = team;
                known.piece = incline.piece;
                known.slope_known = incline.down_deg.is_some();
            }
            known.add(run);
        }
        Ok(along)
    }

    fn at(&mut self, team: &Team, deg: u8, rules: &Rules) -> Result<HeldOn, Refusal> {
        let limits = self.0.entry(stance::key(team)).or_default();
        limits.at(team, deg, &rules.nature.assumed)
    }
}

impl HeldAlong {
    fn add(&mut self, run: HeldRun) {
        match self.runs.last_mut() {
            Some(last) if last.goes_on(&run) => {
                last.to_m = run.to_m;
                let both = [last.steepest_deg, run.steepest_deg];
                last.steepest_deg = both.into_iter().flatten().reduce(f64::max);
            }
            _ => self.runs.push(run),
        }
    }
}

/// What is worse: held in fewer cases, not in the centre, hidden gaps before bare ice, steeper.
type Rank = (Held, bool, bool, u8);

/// How bad a place is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Alarm(Rank);

impl Alarm {
    fn of(run: &HeldRun, deg: u8) -> Self {
        Self((run.held, !run.in_centre, run.snow != Snow::Ice, deg))
    }
}

fn run(incline: &Incline, snow: Snow, on: HeldOn) -> HeldRun {
    HeldRun {
        from_m: incline.piece.from_m,
        to_m: incline.piece.to_m,
        held: match on {
            HeldOn { in_all: true, .. } => Held::All,
            HeldOn { in_none: true, .. } => Held::None,
            _ => Held::Depends,
        },
        in_centre: on.in_centre,
        snow,
        steepest_deg: incline.toward_lip_deg(),
    }
}

/// What both hold: each says who is held worst by those who hold with their own mass only.
fn worse(a: HeldOn, b: HeldOn) -> HeldOn {
    HeldOn {
        in_all: a.in_all && b.in_all,
        in_centre: a.in_centre && b.in_centre,
        in_none: a.in_none || b.in_none,
    }
}

/// Where nobody gave a gap it is reckoned with one of no width: only what is not held even so can be told.
fn told(on: HeldOn, gap_given: bool) -> HeldOn {
    if gap_given || on.in_none {
        return on;
    }
    HeldOn {
        in_all: false,
        in_centre: true,
        in_none: false,
    }
}

/// The zones that touch a piece, and whether ice does that nobody drew.
fn ice_at<'z>(leg: &RopedLeg<'_>, incline: &Incline, zones: &'z [Zone]) -> (Vec<&'z Zone>, bool) {
    let contacts = incline.contacts.iter();
    let met = contacts.filter_map(|&i| leg.stage.met.contacts.get(i));
    let (drawn, undrawn): (Vec<&Contact>, Vec<&Contact>) = met.partition(|c| c.of.zone().is_some());
    let zone = |contact: &Contact| zones.get(contact.of.zone()?);
    (
        drawn.into_iter().filter_map(zone).collect(),
        !undrawn.is_empty(),
    )
}

/// Rounded up to what is printed, within what the model can be asked.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to 0..=60 first"
)]
fn whole_deg(deg: f64) -> u8 {
    (deg - 1e-6).ceil().clamp(0.0, bound::SLOPE_DEG.max) as u8
}
