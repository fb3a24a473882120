//! What the ground means for one leg: slopes, the slope toward the lip, strikes, roll-overs, ice without zones.

use crate::{
    fault::{Code, Place, Problem},
    geometry::{LonLat, frame::Frame},
    ground::mean_strike_deg,
    legs::angle,
    plan::leg::{Leg, Piece, RollOver},
    practice::{Rule, Rules},
    trip::{
        route::{Stage, Stretch},
        zone::{ProposedStrike, Strike, Zone},
    },
};
use crate::{
    legs::sketch::{LegSketch, Sketch},
    trip::job::Case,
};

/// Longest chord of a straight leg, metres: there the flat frame is off by 0.8 m (its error table).
const LONGEST_CHORD_M: f64 = 5_000.0;

/// Fills in what the ground says about the leg.
pub(crate) fn fill(job: &Case<'_>, stage: &Sketch<'_>, sketch: &LegSketch, leg: &mut Leg) {
    let stretch = sketch.stretch;
    if let Some(steepest) = stage.under.ground.steepest(stretch) {
        leg.ground_steepest_deg = Some(steepest.slope_deg);
        leg.ground_steepest_at = Some(lon_lat(steepest.at));
        leg.ground_aspect_deg = steepest.aspect_deg;
    }
    leg.ice_without_zone = pieces(&stage.under.without_zone, stretch);
    leg.look_here = roll_overs(stage, stretch, job.rules);
    if sketch.roped {
        (leg.lip_slope_deg, leg.lip_slope_behind_deg) = lip_slopes_deg(stage, sketch, job.rules);
        let proposed: Vec<ProposedStrike> = proposed(stage, sketch).flat_map(|(_, p)| p).collect();
        leg.strike_proposed_deg = mean_strike_deg(&proposed);
        leg.may_run_along = contouring(stage.stage, &proposed, rope_m(sketch), job.rules);
    }
}

fn lon_lat(at: LonLat) -> [f64; 2] {
    [at.normal().lon_deg, at.lat_deg]
}

/// The parts of these stretches that lie on the leg.
fn clipped(stretches: &[Stretch], leg: Stretch) -> Vec<Stretch> {
    let clip = |s: &Stretch| Stretch {
        from_m: s.from_m.max(leg.from_m),
        to_m: s.to_m.min(leg.to_m),
    };
    let mut parts: Vec<Stretch> = stretches.iter().map(clip).collect();
    parts.retain(|s| s.from_m < s.to_m);
    parts
}

fn pieces(stretches: &[Stretch], leg: Stretch) -> Vec<Piece> {
    let piece = |s: Stretch| Piece {
        from_m: s.from_m,
        to_m: s.to_m,
    };
    clipped(stretches, leg).into_iter().map(piece).collect()
}

/// The strongest roll-overs of the leg, in walking order.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "bounded to 0..=20 by data/rules.toml"
)]
fn roll_overs(stage: &Sketch<'_>, leg: Stretch, rules: &Rules) -> Vec<RollOver> {
    let on_leg = |c: &&crate::ground::Convex| c.at_m >= leg.from_m && c.at_m < leg.to_m;
    let mut found: Vec<_> = stage.under.convex.iter().filter(on_leg).collect();
    found.sort_by(|a, b| b.steepens_deg.total_cmp(&a.steepens_deg));
    found.truncate(rules[Rule::ConvexMost].round() as usize);
    found.sort_by(|a, b| a.at_m.total_cmp(&b.at_m));
    let roll_over = |c: &crate::ground::Convex| RollOver {
        at_m: c.at_m,
        at: lon_lat(c.at),
        steepens_deg: c.steepens_deg,
    };
    found.into_iter().map(roll_over).collect()
}

/// The longest spacing on the leg: the rope's own direction is taken over it.
fn rope_m(sketch: &LegSketch) -> f64 {
    let spacings = sketch.teams.iter().map(|t| t.spacing.spacing_m);
    spacings.fold(0.0, f64::max)
}

/// Steepest fall with and against the walking direction on the crossings, from the ground and from the line.
pub(crate) fn lip_slopes_deg(
    stage: &Sketch<'_>,
    sketch: &LegSketch,
    rules: &Rules,
) -> (Option<f64>, Option<f64>) {
    let contacts = sketch
        .contacts
        .iter()
        .filter_map(|&i| stage.contacts.get(i));
    let touches: Vec<Stretch> = contacts
        .flat_map(|c| clipped(&c.touches, sketch.stretch))
        .collect();
    let touches = Stretch::merged(touches, 0.0);
    let mut falls: Vec<f64> = Vec::new();
    for touch in touches {
        for spot in stage.under.ground.around(touch) {
            let heading = heading_deg(stage.stage, spot.at_m, rope_m(sketch));
            falls.extend(heading.map(|h| spot.fall_deg(h)));
        }
        for profile in [&stage.under.profile, &stage.under.second] {
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
pub(crate) fn bearing_deg(stage: &Stage, stretch: Stretch, rules: &Rules) -> Option<f64> {
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

/// For every zone of the leg that gives no strike, the proposals that lie on the leg.
fn proposed<'a>(
    stage: &'a Sketch<'_>,
    sketch: &'a LegSketch,
) -> impl Iterator<Item = (usize, Vec<ProposedStrike>)> + 'a {
    sketch.contacts.iter().filter_map(|&i| {
        let (contact, all) = (stage.contacts.get(i)?, stage.under.proposed.get(i)?);
        let on_leg = all
            .iter()
            .copied()
            .filter(|p| p.stretch.meets(&sketch.stretch));
        Some((contact.zone, on_leg.collect()))
    })
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

/// What must be said about the ground of the leg.
pub(crate) fn says(
    job: &Case<'_>,
    stage: &Sketch<'_>,
    sketch: &LegSketch,
    leg: &Leg,
) -> Vec<Problem> {
    let say =
        |code, says: String| Problem::new(code, Place::item(format!("leg {}", leg.leg)), says);
    let mut said = Vec::new();
    said.extend(leg.ice_without_zone.iter().map(|piece| {
        let length_m = piece.to_m - piece.from_m;
        let says = format!(
            "{:.0} m on a glacier, {}: no gap width given",
            length_m,
            span(piece)
        );
        say(Code::GlacierWithoutZone, says).hint("draw a zone there with the gaps you expect")
    }));
    if let Some(places) = listed(leg.look_here.iter().map(|c| {
        format!(
            "{:.2} km ({:.0}° steeper below)",
            c.at_m / 1000.0,
            c.steepens_deg
        )
    })) {
        said.push(say(Code::ConvexGround, format!("the ice rolls over near {places}: look here for crevasses; what the model does not show may be broken too")));
    }
    if !sketch.roped {
        return said;
    }
    said.extend(
        slopes_say(stage, sketch.stretch, job.rules)
            .into_iter()
            .map(|(code, says)| say(code, says)),
    );
    for (index, proposed) in proposed(stage, sketch) {
        let strike = mean_strike_deg(&proposed);
        said.extend(
            strike
                .zip(job.zones.get(index))
                .map(|(deg, zone)| say(Code::StrikeProposed, strike_says(deg, zone, job.rules))),
        );
    }
    if let Some(places) = contours_where(&leg.may_run_along) {
        let says = format!(
            "the line contours {places}: the team may run along crevasses that lie across the fall line"
        );
        said.push(say(Code::MayRunAlong, says).hint("look at the strike from afar and give `strike_deg`; where it runs along, walk in echelon or take another line"));
    }
    said
}

/// `7.03–7.24 km`, or how often, how far in all and the longest piece.
fn contours_where(pieces: &[Piece]) -> Option<String> {
    let length_m = |p: &Piece| p.to_m - p.from_m;
    let longest = pieces
        .iter()
        .max_by(|a, b| length_m(a).total_cmp(&length_m(b)))?;
    if pieces.len() == 1 {
        return Some(span(longest));
    }
    let all_m: f64 = pieces.iter().map(length_m).sum();
    let (times, longest) = (pieces.len(), span(longest));
    Some(format!(
        "{times} times, {all_m:.0} m in all, longest {longest}"
    ))
}

fn span(piece: &Piece) -> String {
    format!("{:.2}–{:.2} km", piece.from_m / 1000.0, piece.to_m / 1000.0)
}

fn listed(items: impl Iterator<Item = String>) -> Option<String> {
    let items: Vec<String> = items.collect();
    (!items.is_empty()).then(|| items.join(", "))
}

/// How steep the line is, and the ground under it where the line itself is not as steep.
fn slopes_say(stage: &Sketch<'_>, stretch: Stretch, rules: &Rules) -> Vec<(Code, String)> {
    let near =
        |what: &str, deg: f64, at_m: f64| format!("{what}{deg:.0}° near {:.2} km", at_m / 1000.0);
    let line = stage.under.steepest(stretch, rules);
    let line = line.map(|s| (s.deg.abs(), near("", s.deg.abs(), s.at_m)));
    let line_deg = line.as_ref().map_or(0.0, |(deg, _)| *deg);
    let ground = stage.under.ground.steepest(stretch);
    let ground = ground.map(|s| (s.slope_deg, near("the ground has ", s.slope_deg, s.at_m)));
    let (anchors_deg, avalanche_deg) = (rules[Rule::AnchorsDeg], rules[Rule::AvalancheDeg]);
    let mut said = Vec::new();
    let worse = [(line, 0.0), (ground, line_deg)];
    for ((deg, near), known_deg) in worse.into_iter().filter_map(|(s, known)| Some((s?, known))) {
        if deg > anchors_deg && known_deg <= anchors_deg {
            let says = format!("{near}: roping together without anchors is no longer the answer");
            said.push((Code::TooSteep, says));
        }
        if deg >= avalanche_deg && known_deg < avalanche_deg {
            let says = format!("{near}: avalanche terrain; that is a matter for the bulletin");
            said.push((Code::AvalancheTerrain, says));
        }
    }
    said
}

fn strike_says(deg: f64, zone: &Zone, rules: &Rules) -> String {
    let counts = if rules.choices.use_proposed_strike.value {
        "it counts, since the leader wants it to"
    } else {
        "it changes no figure"
    };
    format!(
        "{} gives no strike; across the fall line it would be {deg:.0}° ± {:.0}°, assumed from the ground; {counts}",
        zone.label(),
        rules[Rule::ProposedStrikeDeg]
    )
}
