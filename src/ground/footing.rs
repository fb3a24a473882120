//! What lies under one leg: climb, slopes, the slope toward the lip, strikes, roll-overs, ice without zones.

use crate::{
    geometry::{LonLat, frame::Frame},
    ground::{
        along::SlopeSpot,
        climb::Climb,
        convex::Convex,
        incline::{Inclines, inclines},
        line::GroundLine,
        proposal::mean_strike_deg,
        steep::Steepness,
        underfoot::Underfoot,
        underway::Underway,
    },
    plan::place::{Piece, RollOver},
    practice::{Rule, Rules},
    trip::{
        route::{Stage, Stretch},
        zone::{ProposedStrike, Strike},
    },
};

/// What lies under one leg.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Footing {
    /// Metres up and down; `None` without heights.
    pub(crate) climb: Option<Climb>,
    /// How steep the line is: either source of heights, the steeper one.
    pub(crate) steepness: Steepness,
    /// Steepest slope of the ground on the line, from the terrain model.
    pub(crate) ground_steepest: Option<SlopeSpot>,
    /// A roped leg in pieces of one spacing, each with the slope that decides there.
    pub(crate) inclines: Inclines,
    /// Where no heights are known, so that it may be steeper than anything told here.
    pub(crate) unknown: Vec<Piece>,
    /// True bearing of a straight leg, degrees.
    pub(crate) bearing_deg: Option<f64>,
    /// Strikes proposed for the zones of the leg that give none, with the index of each zone.
    pub(crate) proposed: Vec<(usize, Vec<ProposedStrike>)>,
    /// Where the line contours, so that the team may run along crevasses of those strikes.
    pub(crate) may_run_along: Vec<Piece>,
    /// The strongest roll-overs, in walking order.
    pub(crate) look_here: Vec<RollOver>,
    /// Ice of the inventory outside every zone.
    pub(crate) ice_without_zone: Vec<Piece>,
}

/// What lies under a leg.
#[must_use]
pub(crate) fn footing(leg: &Underway<'_>, steepness: Steepness, rules: &Rules) -> Footing {
    let (under, stretch) = (&leg.met.under, leg.stretch);
    let line = &under.line;
    let inclines = leg.rope_m.map(|rope_m| inclines(leg, rope_m, rules));
    let inclines = inclines.unwrap_or_default();
    let proposed = leg.rope_m.map(|_| proposed(leg)).unwrap_or_default();
    let strikes: Vec<ProposedStrike> = proposed.iter().flat_map(|(_, p)| p).copied().collect();
    Footing {
        climb: line
            .climbing()
            .climb(stretch, rules[Rule::AscentThresholdM]),
        steepness,
        ground_steepest: line.ground.steepest(stretch).copied(),
        unknown: unknown(line, stretch, &inclines, rules),
        inclines,
        bearing_deg: bearing_deg(leg.stage, stretch, rules),
        may_run_along: contouring(leg, &strikes, rules),
        look_here: roll_overs(under, stretch, rules),
        ice_without_zone: pieces(leg.met.undrawn(), stretch),
        proposed,
    }
}

impl Footing {
    /// Steepest fall in walking direction where gaps are to be expected, degrees, 0 where it only rises: for those behind
    /// when the first person falls.
    #[must_use]
    pub(crate) fn lip_slope_deg(&self) -> Option<f64> {
        self.steepest_fall_deg(|[_, most_deg]| most_deg)
    }

    /// The same against the walking direction: for those ahead when the last person falls.
    #[must_use]
    pub(crate) fn lip_slope_behind_deg(&self) -> Option<f64> {
        self.steepest_fall_deg(|[least_deg, _]| 0.0 - least_deg)
    }

    fn steepest_fall_deg(&self, of: impl Fn([f64; 2]) -> f64) -> Option<f64> {
        let on_ice = self.inclines.iter().filter(|i| !i.contacts.is_empty());
        let falls = on_ice.filter_map(|i| i.down_deg).map(of);
        falls.reduce(f64::max).map(|deg| deg.max(0.0))
    }

    /// Whether gaps are to be expected, and nowhere there is known how steep it is; [`Footing::unknown`] holds where a leg
    /// is known in part only.
    #[must_use]
    pub(crate) fn slope_unknown(&self) -> bool {
        let on_ice = self.inclines.iter().filter(|i| !i.contacts.is_empty());
        let mut slopes = on_ice.map(|i| i.down_deg).peekable();
        slopes.peek().is_some() && slopes.all(|deg| deg.is_none())
    }

    /// The middle of the strikes proposed over the leg, degrees.
    #[must_use]
    pub(crate) fn strike_proposed_deg(&self) -> Option<f64> {
        let all: Vec<ProposedStrike> = self.proposed.iter().flat_map(|(_, p)| p).copied().collect();
        mean_strike_deg(&all)
    }
}

/// Longest chord of a straight leg, metres: there the flat frame is off by 0.8 m (its error table).
const LONGEST_CHORD_M: f64 = 5_000.0;

fn pieces(stretches: &[Stretch], leg: Stretch) -> Vec<Piece> {
    leg.clip(stretches).into_iter().map(Piece::from).collect()
}

/// Where neither source knows heights: over more than a slope is taken over, or so that a piece is left without one.
fn unknown(line: &GroundLine, leg: Stretch, inclines: &Inclines, rules: &Rules) -> Vec<Piece> {
    let unjudged = |part: &Stretch| {
        let mut without = inclines.iter().filter(|i| i.down_deg.is_none());
        without.any(|i| i.piece.meets(part))
    };
    let mut unknown = line.unknown(leg);
    unknown.retain(|part| part.length_m() > rules[Rule::SteepOverM] || unjudged(part));
    pieces(&unknown, leg)
}

/// The strongest roll-overs of the leg, in walking order.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "bounded to 0..=20 by data/rules.toml"
)]
fn roll_overs(under: &Underfoot, leg: Stretch, rules: &Rules) -> Vec<RollOver> {
    let on_leg = |c: &&Convex| c.at_m >= leg.from_m && c.at_m < leg.to_m;
    let mut found: Vec<_> = under.convex.iter().filter(on_leg).collect();
    found.sort_by(|a, b| b.steepens_deg.total_cmp(&a.steepens_deg));
    found.truncate(rules[Rule::ConvexMost].round() as usize);
    found.sort_by(|a, b| a.at_m.total_cmp(&b.at_m));
    let roll_over = |c: &Convex| RollOver {
        at_m: c.at_m,
        at: [c.at.normal().lon_deg, c.at.lat_deg],
        height_m: under.line.profile.height_m(c.at_m),
        steepens_deg: c.steepens_deg,
    };
    found.into_iter().map(roll_over).collect()
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
        Some((contact.of.zone()?, on_leg.collect()))
    };
    leg.contacts.iter().filter_map(of_contact).collect()
}

/// Where a rope of this length comes nearer to the proposed strike itself than the angle of running along;
/// what the proposal may be off is left out here, or every slanting line would be marked.
fn contouring(leg: &Underway<'_>, proposed: &[ProposedStrike], rules: &Rules) -> Vec<Piece> {
    let rope_m = leg.rope_m.unwrap_or_default();
    let angles = &leg.met.under.line.angles;
    let runs_along = |p: &&ProposedStrike| {
        let strike = Strike {
            uncertainty_deg: None,
            ..p.strike
        };
        angles
            .worst(leg.stage, &[p.stretch], rope_m, strike)
            .is_some_and(|a| a.deg < rules[Rule::AlongDeg])
    };
    let along = proposed.iter().filter(runs_along).map(|p| p.stretch);
    let merged = Stretch::merged(along.collect(), rope_m);
    merged.into_iter().map(Piece::from).collect()
}
