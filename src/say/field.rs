//! The field table in words: which ground a part of it is for, and up to which gap a rope is long enough there.

use crate::{
    plan::field::{FieldAskew, FieldGround, FieldLimit},
    say::{arg::Arg, finding, name::rope, options, round::Round, span::Said, voice::Voice},
};

/// `snow, no knots`.
#[must_use]
pub fn ground(ground: FieldGround, voice: Voice) -> Said {
    let key = match ground {
        FieldGround::Bare => "field-bare",
        FieldGround::Snow => "field-snow",
        FieldGround::SnowWithKnots => "field-snow-with-knots",
    };
    voice.say(key, &[])
}

/// `leg 2`; with several teams `team 1, leg 2`.
#[must_use]
pub fn on(limit: &FieldLimit, teams: usize, voice: Voice) -> Said {
    let on = match limit.legs[..] {
        [] => voice.say("field-nowhere", &[]),
        _ => finding::legs(&limit.legs, voice),
    };
    if teams <= 1 {
        return on;
    }
    let args = [("team", Arg::Count(limit.team)), ("on", Arg::Said(on))];
    voice.say("field-for-team", &args)
}

/// Up to which gap the rope of a team is long enough on one ground; `teams` is how many rope teams there are.
#[must_use]
pub fn limit(limit: &FieldLimit, teams: usize, voice: Voice) -> Said {
    let (key, mut args) = limited(limit, teams, voice);
    args.push(("ways", Arg::Said(ways(limit, false, voice))));
    voice.say(key, &args)
}

/// The same in one line.
#[must_use]
pub fn limit_in_short(limit: &FieldLimit, teams: usize, voice: Voice) -> Said {
    let (key, mut args) = limited(limit, teams, voice);
    args.push(("ways", Arg::Said(ways(limit, true, voice))));
    let short = voice.attribute(key, "short", &args);
    short.unwrap_or_else(|| voice.say(key, &args))
}

/// The message, and what stands in it.
fn limited<'a>(
    limit: &'a FieldLimit,
    teams: usize,
    voice: Voice,
) -> (&'static str, Vec<(&'static str, Arg<'a>)>) {
    let named = limit.rope.as_ref().map(|named| rope(named, voice));
    let sold = |m| voice.say("field-sold", &[("length", Arg::There(m))]);
    let mut args = vec![
        ("on", Arg::Said(on(limit, teams, voice))),
        ("ground", Arg::Said(ground(limit.ground, voice))),
    ];
    let Some(rope) = named.or(limit.length_m.map(sold)) else {
        return ("field-unknown", args);
    };
    args.push(("rope", Arg::Said(rope)));
    if let Some(gap_m) = limit.holds_to_gap_m {
        args.push(("gap", Arg::There(gap_m)));
        args.push(("more", Arg::yes(!limit.otherwise.is_empty())));
        return ("field-holds", args);
    }
    if limit.otherwise.is_empty() {
        return ("field-holds-none", args);
    }
    ("field-holds-otherwise", args)
}

/// The ways to tie otherwise, with a number where there are several.
fn ways(limit: &FieldLimit, in_short: bool, voice: Voice) -> Said {
    let several = limit.otherwise.len() > 1;
    let ways = (1..).zip(&limit.otherwise).map(|(number, tied)| {
        let said = match in_short {
            true => options::change_in_short,
            false => options::change,
        };
        let changes = tied.changes.iter().map(|change| said(change, voice));
        let args = [
            ("several", Arg::yes(several)),
            ("way", Arg::Count(number)),
            ("tied", Arg::yes(!tied.changes.is_empty())),
            ("changes", Arg::Said(Said::join(changes, ", "))),
            ("spacing", Arg::Needed(tied.spacing_m)),
            ("gap", Arg::There(tied.to_gap_m)),
        ];
        let short = voice.attribute("field-otherwise", "short", &args);
        let short = short.filter(|_| in_short);
        short.unwrap_or_else(|| voice.say("field-otherwise", &args))
    });
    Said::join(ways, "; ")
}

/// How much longer the way over a gap is that is met askew.
#[must_use]
pub fn askew(askew: &FieldAskew, voice: Voice) -> Said {
    let along = if askew.along { "yes" } else { "no" };
    let widths = (askew.widths * 100.0 - 1e-9).ceil() / 100.0;
    let args = [
        ("angle", Arg::Degrees(askew.met_deg, 0, Round::Nearest)),
        ("widths", Arg::Number(widths)),
        ("along", Arg::Word(along)),
    ];
    voice.say("field-askew", &args)
}
