//! Set-ups in words: knots, falls, hauls, marks.

use crate::{
    physics::{
        assumed::{Parameter, Snow},
        haul::{Can, System},
    },
    plan::{
        fall::{Arrest, HaulAnswer, Held, OrderAdvice},
        name::PersonOnRope,
        place::HeightsFrom,
        reach::{Reach, Side},
        why::{KnotsWanted, KnotsWhy},
    },
    practice::Origin,
    say::{
        arg::Arg,
        name::{person, position},
        round::Round,
        span::Said,
        voice::Voice,
    },
};

/// `settled snow`, `ice`.
#[must_use]
pub fn snow(snow: Snow, voice: Voice) -> Said {
    let key = match snow {
        Snow::Soft => "snow-soft",
        Snow::Settled => "snow-settled",
        Snow::Firm => "snow-firm",
        Snow::Refrozen => "snow-refrozen",
        Snow::Ice => "snow-ice",
    };
    voice.say(key, &[])
}

/// `settled`, `ice`.
#[must_use]
pub fn snow_word(snow: Snow, voice: Voice) -> Said {
    let key = match snow {
        Snow::Soft => "snow-word-soft",
        Snow::Settled => "snow-word-settled",
        Snow::Firm => "snow-word-firm",
        Snow::Refrozen => "snow-word-refrozen",
        Snow::Ice => "snow-word-ice",
    };
    voice.say(key, &[])
}

/// `terrain model`.
#[must_use]
pub fn heights_from(from: HeightsFrom, voice: Voice) -> Said {
    let key = match from {
        HeightsFrom::RouteFile => "heights-route-file",
        HeightsFrom::TerrainModel => "heights-terrain-model",
    };
    voice.say(key, &[])
}

/// Why brake knots are tied or not.
#[must_use]
pub fn knots_why(why: &KnotsWhy, voice: Voice) -> Said {
    match why {
        KnotsWhy::WouldNotBite => voice.say("knots-would-not-bite", &[]),
        KnotsWhy::Unwanted { by } => {
            voice.say("knots-unwanted", &[("by", Arg::Said(said_by(*by, voice)))])
        }
        KnotsWhy::Many => voice.say("knots-many", &[]),
        KnotsWhy::Three { heights_known } => {
            let known = if *heights_known { "known" } else { "unknown" };
            voice.say("knots-three", &[("heights", Arg::Word(known))])
        }
        KnotsWhy::NoRoom { wanted, spacing_m } => {
            let args = [
                ("wanted", Arg::Said(knots_wanted(wanted, voice))),
                ("spacing", Arg::Needed(*spacing_m)),
            ];
            voice.say("knots-no-room", &args)
        }
        KnotsWhy::Tied {
            wanted,
            fewer: None,
        } => knots_wanted(wanted, voice),
        KnotsWhy::Tied {
            wanted,
            fewer: Some(fewer),
        } => {
            let args = [
                ("wanted", Arg::Said(knots_wanted(wanted, voice))),
                ("tied", Arg::Count(fewer.tied)),
                ("asked", Arg::Count(fewer.asked)),
                ("spacing", Arg::Needed(fewer.spacing_m)),
            ];
            voice.say("knots-fewer", &args)
        }
    }
}

fn knots_wanted(wanted: &KnotsWanted, voice: Voice) -> Said {
    match wanted {
        KnotsWanted::Word { by } => voice.say(
            "knots-wanted-word",
            &[("by", Arg::Said(said_by(*by, voice)))],
        ),
        KnotsWanted::OneAlone => voice.say("knots-wanted-alone", &[]),
        KnotsWanted::Heavier { who } => {
            let who = Arg::Said(person(who, voice));
            voice.say("knots-wanted-heavier", &[("who", who)])
        }
        KnotsWanted::SteepDescent { deg } => {
            let slope = Arg::Degrees(*deg, 0, Round::Nearest);
            voice.say("knots-wanted-steep", &[("slope", slope)])
        }
    }
}

/// Who decided about knots.
fn said_by(origin: Origin, voice: Voice) -> Said {
    let key = match origin {
        Origin::Default | Origin::Practice => "by-practice-set",
        Origin::Trip => "by-trip-file",
        Origin::Flag => "by-flag",
    };
    voice.say(key, &[])
}

/// Whether the worst fall is held: `held in all assumed cases`, `depends on: …`.
#[must_use]
pub fn held(arrest: &Arrest, voice: Voice) -> Said {
    match arrest.verdict {
        Held::All => voice.say("held-all", &[]),
        // A gap of no width is one that nobody gave.
        Held::None => voice.say("held-none", &[("given", Arg::yes(arrest.gap_m > 0.0))]),
        Held::Depends => {
            let named = arrest.depends_on.iter().map(|p| parameter(*p, voice));
            let alone = if arrest.alone { "yes" } else { "no" };
            let args = [
                ("parameters", Arg::Said(Said::join(named, ", "))),
                ("alone", Arg::Word(alone)),
            ];
            voice.say("held-depends", &args)
        }
    }
}

/// How the usual fall stands, the first person going through a bridge, where another one is the worst: `the usual fall, Ada
/// first through a bridge: held in all assumed cases`.
#[must_use]
pub fn usual_fall(arrest: &Arrest, persons: &[PersonOnRope], voice: Voice) -> Option<Said> {
    usual("usual-fall", arrest, persons, voice)
}

/// The same where there is little room and a legend, and only where it stands otherwise than the worst: `Ada first: in all
/// cases`.
#[must_use]
pub fn usual_fall_brief(arrest: &Arrest, persons: &[PersonOnRope], voice: Voice) -> Option<Said> {
    let other = arrest.everybody.first() != Some(&arrest.verdict);
    usual("usual-fall-brief", arrest, persons, voice).filter(|_| other)
}

fn usual(key: &str, arrest: &Arrest, persons: &[PersonOnRope], voice: Voice) -> Option<Said> {
    let usual = arrest.everybody.first().filter(|_| arrest.falls > 1)?;
    let args = [
        ("who", Arg::Said(position(persons, 1, voice))),
        ("verdict", Arg::Word(usual.as_str())),
    ];
    Some(voice.say(key, &args))
}

/// How steep, and whether that is downhill, for a message to choose by: a slope in whole degrees, negative where it climbs.
#[must_use]
pub fn down<'a>(down_deg: f64) -> [(&'static str, Arg<'a>); 2] {
    let way = match down_deg {
        deg if deg >= 0.5 => "down",
        deg if deg <= -0.5 => "up",
        _ => "level",
    };
    [
        ("way", Arg::Word(way)),
        ("slope", Arg::Degrees(down_deg.abs(), 0, Round::Up)),
    ]
}

/// How the ground lies under those who hold a fall: `12° downhill to the lip`.
#[must_use]
pub fn lip_slope(arrest: &Arrest, voice: Voice) -> Said {
    voice.say("lip-slope", &down(arrest.slope_deg))
}

/// Why a fall in the middle is held worst: `1 ahead and 1 behind the gap, the rope bent in a V: each side holds for itself`.
#[must_use]
pub fn in_the_middle(arrest: &Arrest, persons: &[PersonOnRope], voice: Voice) -> Option<Said> {
    let ahead = arrest.falls.checked_sub(1)?;
    let behind = persons.len().checked_sub(arrest.falls)?;
    let args = [("ahead", Arg::Count(ahead)), ("behind", Arg::Count(behind))];
    (ahead > 0 && behind > 0).then(|| voice.say("in-the-middle", &args))
}

fn parameter(parameter: Parameter, voice: Voice) -> Said {
    let key = match parameter {
        Parameter::MuBefore => "depends-mu-before",
        Parameter::MuAfter => "depends-mu-after",
        Parameter::Lip => "depends-lip",
        Parameter::KnotForce => "depends-knot-force",
        Parameter::KnotBite => "depends-knot-bite",
        Parameter::Delay => "depends-delay",
        Parameter::Slack => "depends-slack",
        Parameter::BreakPoint => "depends-break-point",
        Parameter::RopeDamping => "depends-rope-damping",
    };
    voice.say(key, &[])
}

/// The advice on the order of the team.
#[must_use]
pub fn order(advice: &OrderAdvice, voice: Voice) -> Said {
    let named = advice.order.iter().map(|p| person(&p.called, voice));
    let order = Arg::Said(Said::join(named, ", "));
    if advice.worth_it {
        voice.say("order-better", &[("order", order)])
    } else {
        voice.say("order-as-good", &[])
    }
}

/// `3:1 on the loaded strand`.
#[must_use]
pub fn system(system: System, voice: Voice) -> Said {
    let key = match system {
        System::LoopAtLip => "system-loop-at-lip",
        System::LoopAtAnchor => "system-loop-at-anchor",
        System::ThreeLoaded => "system-three-loaded",
        System::ThreeNew => "system-three-new",
        System::SixLoopOnThree => "system-six-loop-on-three",
        System::Nine => "system-nine",
    };
    voice.say(key, &[])
}

/// `yes`, `perhaps`, `no`.
#[must_use]
pub fn can(can: Can, voice: Voice) -> Said {
    let key = match can {
        Can::No => "can-no",
        Can::Perhaps => "can-perhaps",
        Can::Yes => "can-yes",
    };
    voice.say(key, &[])
}

/// What those left can do with the rope they have.
#[must_use]
pub fn haul_answer(answer: &HaulAnswer, voice: Voice) -> Said {
    let who = |haulers: usize| ("haulers", Arg::Count(haulers));
    match *answer {
        HaulAnswer::Best {
            system: best,
            can,
            haulers,
            ..
        } => {
            let key = match can {
                Can::Yes => "haul-yes",
                Can::Perhaps => "haul-perhaps",
                Can::No => "haul-no",
            };
            let best = ("system", Arg::Said(system(best, voice)));
            voice.say(key, &[who(haulers), best])
        }
        HaulAnswer::TooShort {
            system: nearest,
            missing_m,
            haulers,
        } => {
            let nearest = ("system", Arg::Said(system(nearest, voice)));
            let missing = ("missing", Arg::Needed(missing_m));
            voice.say("haul-too-short", &[who(haulers), nearest, missing])
        }
        HaulAnswer::AnchorTooNear { haulers } => voice.say("haul-anchor-too-near", &[who(haulers)]),
    }
}

/// What is shown as no depth, metres: it would be rounded to 0.
const NO_DEPTH_M: f64 = 0.1;

/// How deep a drop loop reaches for one person: `reaches 5 m below the lip`.
#[must_use]
pub fn reach(reach: &Reach, persons: &[PersonOnRope], voice: Voice) -> Said {
    let reaches = if let Some(short_m) = reach.short_m() {
        voice.say("reach-short", &[("depth", Arg::Needed(short_m))])
    } else if reach.depth_m < NO_DEPTH_M {
        voice.say("reach-lip", &[])
    } else if reach.whoever {
        voice.say("reach-whoever", &[])
    } else {
        voice.say("reach-depth", &[("depth", Arg::There(reach.depth_m))])
    };
    if reach.needs_untied.is_empty() {
        return reaches;
    }
    let who = reach.needs_untied.iter();
    let who = Said::join(
        who.map(|&p| position(persons, p, voice)),
        voice.say("and", &[]),
    );
    let args = [
        ("reaches", Arg::Said(reaches)),
        ("who", Arg::Said(who)),
        ("count", Arg::Count(reach.needs_untied.len())),
    ];
    voice.say("reach-untied", &args)
}

/// The side with more free rope: `ahead`, `behind`.
#[must_use]
pub fn side(side: Side, voice: Voice) -> Said {
    let key = match side {
        Side::Ahead => "side-ahead",
        Side::Behind => "side-behind",
    };
    voice.say(key, &[])
}
