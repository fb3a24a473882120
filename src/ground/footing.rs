//! What lies under one leg: climb, slopes, the slope toward the lip, strikes, roll-overs, ice without zones.

use crate::{
    geometry::{LonLat, frame::Frame},
    ground::{
        along::SlopeSpot, climb::Climb, convex::Convex, met::MetStage, profile::Steep,
        proposal::mean_strike_deg,
    },
    meet::angle,
    plan::place::{Piece, RollOver},
    practice::{Rule, Rules},
    trip::{
        route::{Stage, Stretch},
        zone::{ProposedStrike, Strike},
    },
};

/// What lies under one leg.
#[derive(Clone, Debug, PartialEq)]
pub struct Footing {
    /// Metres up and down; `None` without heights.
    pub climb: Option<Climb>,
    /// Steepest slope along the line, by either source of heights.
    pub steepest: Option<Steep>,
    /// Steepest slope of the ground on the line, from the terrain model.
    pub ground_steepest: Option<SlopeSpot>,
    /// Steepest fall in walking direction on the crossings, degrees, 0 where it only rises.
    pub lip_slope_deg: Option<f64>,
    /// The same against the walking direction.
    pub lip_slope_behind_deg: Option<f64>,
    /// Where no heights are known, so that it may be steeper than anything told here.
    pub unknown: Vec<Piece>,
    /// True bearing of a straight leg, degrees.
    pub bearing_deg: Option<f64>,
    /// Strikes proposed for the zones of the leg that give none, with the index of each zone.
    pub proposed: Vec<(usize, Vec<ProposedStrike>)>,
    /// Where the line contours, so that the team may run along crevasses of those strikes.
    pub may_run_along: Vec<Piece>,
    /// The strongest roll-overs, in walking order.
    pub look_here: Vec<RollOver>,
    /// Ice of the inventory outside every zone.
    pub ice_without_zone: Vec<Piece>,
}

/// A leg as far as its ground is concerned.
#[derive(Clone, Copy, Debug)]
pub struct Underway<'a> {
    /// Its stage.
    pub stage: &'a Stage,
    /// How that stage meets the ice.
    pub met: &'a MetStage,
    /// From where to where.
    pub stretch: Stretch,
    /// Indices of the contacts on it.
    pub contacts: &'a [usize],
    /// The longest spacing on it, metres: the rope's own direction is taken over it. `None` without a rope.
    pub rope_m: Option<f64>,
}

/// What lies under a leg.
#[must_use]
pub fn footing(leg: &Underway<'_>, rules: &Rules) -> Footing {
    let (under, stretch) = (&leg.met.under, leg.stretch);
    let (lip_slope_deg, lip_slope_behind_deg) = match leg.rope_m {
        Some(rope_m) => lip_slopes_deg(leg, rope_m, rules),
        None => (None, None),
    };
    let proposed = leg.rope_m.map(|_| proposed(leg)).unwrap_or_default();
    let strikes: Vec<ProposedStrike> = proposed.iter().flat_map(|(_, p)| p).copied().collect();
    Footing {
        climb: under
            .climbing()
            .climb(stretch, rules[Rule::AscentThresholdM]),
        steepest: under.steepest(stretch, rules),
        ground_steepest: under.ground.steepest(stretch).copied(),
        lip_slope_deg,
        lip_slope_behind_deg,
        unknown: pieces(&under.unknown(stretch, rules), stretch),
        bearing_deg: bearing_deg(leg.stage, stretch, rules),
        may_run_along: contouring(leg.stage, &strikes, leg.rope_m.unwrap_or(0.0), rules),
        look_here: roll_overs(&under.convex, stretch, rules),
        ice_without_zone: pieces(&under.without_zone, stretch),
        proposed,
    }
}

impl Footing {
    /// Steepest slope toward the lip: that with the walking direction for the first person's fall downhill, that
    /// against it for the last one's uphill. Degrees; `None` where no heights are known.
    #[must_use]
    pub fn toward_lip_deg(&self) -> Option<f64> {
        let both = [self.lip_slope_deg, self.lip_slope_behind_deg];
        both.into_iter().flatten().reduce(f64::max)
    }

    /// The middle of the strikes proposed over the leg, degrees.
    #[must_use]
    pub fn strike_proposed_deg(&self) -> Option<f64> {
        let all: Vec<ProposedStrike> = self.proposed.iter().flat_map(|(_, p)| p).copied().collect();
        mean_strike_deg(&all)
    }
}

/// Longest chord of a straight leg, metres: there the flat frame is off by 0.8 m (its error table).
const LONGEST_CHORD_M: f64 = 5_000.0;

fn pieces(stretches: &[Stretch], leg: Stretch) -> Vec<Piece> {
    let piece = |s: Stretch| Piece {
        from_m: s.from_m,
        to_m: s.to_m,
    };
    leg.clip(stretches).into_iter().map(piece).collect()
}

/// The strongest roll-overs of the leg, in walking order.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "bounded to 0..=20 by data/rules.toml"
)]
fn roll_overs(convex: &[Convex], leg: Stretch, rules: &Rules) -> Vec<RollOver> {
    let on_leg = |c: &&Convex| c.at_m >= leg.from_m && c.at_m < leg.to_m;
    let mut found: Vec<_> = convex.iter().filter(on_leg).collect();
    found.sort_by(|a, b| b.steepens_deg.total_cmp(&a.steepens_deg));
    found.truncate(rules[Rule::ConvexMost].round() as usize);
    found.sort_by(|a, b| a.at_m.total_cmp(&b.at_m));
    let roll_over = |c: &Convex| RollOver {
        at_m: c.at_m,
        at: [c.at.normal().lon_deg, c.at.lat_deg],
        steepens_deg: c.steepens_deg,
    };
    found.into_iter().map(roll_over).collect()
}

/// Steepest fall with and against the walking direction on the crossings, from the ground and from the line.
fn lip_slopes_deg(leg: &Underway<'_>, rope_m: f64, rules: &Rules) -> (Option<f64>, Option<f64>) {
    let (met, under) = (leg.met, &leg.met.under);
    let contacts = leg.contacts.iter().filter_map(|&i| met.contacts.get(i));
    let touches: Vec<Stretch> = contacts
        .flat_map(|c| leg.stretch.clip(&c.touches))
        .collect();
    let touches = Stretch::merged(touches, 0.0);
    let mut falls: Vec<f64> = Vec::new();
    for touch in touches {
        for spot in under.ground.around(touch).flat_map(|(_, spots)| spots) {
            let heading = heading_deg(leg.stage, spot.at_m, rope_m);
            falls.extend(heading.map(|h| spot.fall_deg(h)));
        }
        for profile in [&under.profile, &under.second] {
            falls.extend(
                profile
                    .slopes_deg(touch, rules[Rule::SteepOverM])
                    .map(|up| -up),
            );
        }
    }
    let worst = |falls: &mut dyn Iterator<Item = f64>| falls.reduce(f64::max).map(|f| f.max(0.0));
    (
        worst(&mut falls.iter().copied()),
        worst(&mut falls.iter().map(|f| -f)),
    )
}

/// True direction of a rope whose middle is here; never across a jump.
fn heading_deg(stage: &Stage, at_m: f64, rope_m: f64) -> Option<f64> {
    let (mut from_m, mut to_m) = (at_m - rope_m / 2.0, at_m + rope_m / 2.0);
    for jump in stage.jumps() {
        if jump.at_m <= at_m {
            from_m = from_m.max(jump.at_m);
        } else {
            to_m = to_m.min(jump.at_m.next_down());
        }
    }
    let (from, to) = (stage.at(from_m)?, stage.at(to_m)?);
    (from != to).then(|| from.bearing_deg(to))
}

/// True bearing from the beginning of a stretch to its end, where the line stays near its chord.
fn bearing_deg(stage: &Stage, stretch: Stretch, rules: &Rules) -> Option<f64> {
    let parts = stage.line(stretch);
    let [line] = parts.as_slice() else {
        return None;
    };
    let (&from, &to) = (line.first()?, line.last()?);
    let frame = Frame::at(from.along_edge(to, 0.5));
    let (a, b) = (frame.local(from), frame.local(to));
    let chord = a.to(b);
    let length_m = chord.length_m();
    if !(rules[Rule::StraightM]..=LONGEST_CHORD_M).contains(&length_m) {
        return None;
    }
    let near = |p: &LonLat| {
        let here = a.to(frame.local(*p));
        let along_m = chord.dot(here) / length_m;
        let beyond_m = (-along_m).max(along_m - length_m).max(0.0);
        let aside_m = (chord.cross(here) / length_m).abs();
        aside_m.hypot(beyond_m) <= rules[Rule::StraightM]
    };
    line.iter().all(near).then(|| from.bearing_deg(to))
}

/// For every zone of the leg that gives no strike, its index and the proposals that lie on the leg.
fn proposed(leg: &Underway<'_>) -> Vec<(usize, Vec<ProposedStrike>)> {
    let of_contact = |&i: &usize| {
        let (contact, all) = (leg.met.contacts.get(i)?, leg.met.under.proposed.get(i)?);
        let on_leg = all
            .iter()
            .copied()
            .filter(|p| p.stretch.meets(&leg.stretch));
        Some((contact.zone, on_leg.collect()))
    };
    leg.contacts.iter().filter_map(of_contact).collect()
}

/// Where a rope of this length comes nearer to the proposed strike itself than the angle of running along;
/// what the proposal may be off is left out here, or every slanting line would be marked.
fn contouring(
    stage: &Stage,
    proposed: &[ProposedStrike],
    rope_m: f64,
    rules: &Rules,
) -> Vec<Piece> {
    let runs_along = |p: &&ProposedStrike| {
        let strike = Strike {
            uncertainty_deg: None,
            ..p.strike
        };
        angle::worst_angle(stage, &[p.stretch], rope_m, strike)
            .is_some_and(|a| a.deg < rules[Rule::AlongDeg])
    };
    let along = proposed.iter().filter(runs_along).map(|p| p.stretch);
    let merged = Stretch::merged(along.collect(), rope_m);
    let piece = |s: Stretch| Piece {
        from_m: s.from_m,
        to_m: s.to_m,
    };
    merged.into_iter().map(piece).collect()
}
