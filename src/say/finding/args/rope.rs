//! What is said of ropes: too short, near, a burden, and what would make them fit.

use crate::{
    plan::{
        change::Change,
        cure::{CureCost, RopeCure, RopeLack},
        fact::Fact,
        name::RopeName,
    },
    say::{
        arg::Arg,
        finding::placeable::FactArgs,
        name::{person, rope},
        options,
        round::Round,
        span::Said,
        voice::Voice,
    },
};

/// All of one fact.
pub(super) fn of(fact: &Fact, voice: Voice) -> FactArgs<'_> {
    match fact {
        Fact::NoRope {
            needed_m,
            lack,
            cure,
        } => {
            let mut args = rope_lack(*needed_m, lack, voice);
            args.extend(cured(cure.as_ref(), voice));
            args
        }
        Fact::NearRope { rope: r, spare_m } => vec![
            ("rope", Arg::Said(rope(r, voice))),
            ("spare", Arg::There(*spare_m)),
        ],
        Fact::ThinRope {
            ropes,
            thinnest_mm,
            limit_mm,
        } => thin(ropes, [*thinnest_mm, *limit_mm], voice).into(),
        Fact::ReserveShort { short_m, coil_m } => vec![
            ("short", Arg::Needed(*short_m)),
            ("coil", Arg::Needed(*coil_m)),
        ],
        Fact::NoReserve {
            short_m,
            coil_m,
            rope_short_m,
        } => vec![
            ("short", Arg::Needed(*short_m)),
            ("coil", Arg::Needed(*coil_m)),
            ("rope-short", Arg::Needed(*rope_short_m)),
        ],
        Fact::NotReached {
            falls,
            short_m,
            sized_for_anyone,
            longer,
            spare,
        } => {
            let [named, at_hand] = left_at_hand(longer.as_ref(), spare.as_ref(), voice);
            let who = Arg::Said(person(&falls.called, voice));
            vec![
                named,
                at_hand,
                ("anyone", Arg::yes(*sized_for_anyone)),
                ("who", who),
                ("short", Arg::Needed(*short_m)),
            ]
        }
        Fact::CoilHeavy {
            coil_m,
            coil_kg,
            most_m,
            most_kg,
        } => heavy([*coil_m, *most_m], [*coil_kg, *most_kg]).into(),
        _ => Vec::new(),
    }
}

/// A coil and the most that somebody carries, metres and kilograms.
fn heavy(
    [coil_m, most_m]: [f64; 2],
    [coil_kg, most_kg]: [f64; 2],
) -> [(&'static str, Arg<'static>); 4] {
    [
        ("coil", Arg::There(coil_m)),
        ("mass", Arg::Kilograms(coil_kg, Round::Up)),
        ("most", Arg::There(most_m)),
        ("most-mass", Arg::Kilograms(most_kg, Round::Down)),
    ]
}

/// Which ropes are as thin as cord, and the thinnest of them.
fn thin(
    ropes: &[RopeName],
    across_mm: [f64; 2],
    voice: Voice,
) -> [(&'static str, Arg<'static>); 4] {
    let names = ropes.iter().map(|named| rope(named, voice));
    // So that nothing under the limit is shown as no less than it.
    let [across, limit] = across_mm.map(|mm| {
        let shown = voice.number(mm, Round::Down);
        Arg::Figure(format!("{shown} mm"))
    });
    [
        ("count", Arg::Count(ropes.len())),
        ("ropes", Arg::Said(Said::join(names, ", "))),
        ("across", across),
        ("limit", limit),
    ]
}

fn rope_lack(needed_m: f64, lack: &RopeLack, voice: Voice) -> FactArgs<'_> {
    let mut args = vec![("needed", Arg::Needed(needed_m))];
    let word = match lack {
        RopeLack::Short { rope: r, short_m } => {
            args.push(("rope", Arg::Said(rope(r, voice))));
            args.push(("short", Arg::Needed(*short_m)));
            "short"
        }
        RopeLack::NoneLeft { team } => {
            args.push(("team", Arg::Count(*team)));
            "none-left"
        }
        RopeLack::NoneSold => "none-sold",
    };
    args.push(("lack", Arg::Word(word)));
    args
}

fn cured<'a>(cure: Option<&RopeCure>, voice: Voice) -> FactArgs<'a> {
    let said = cure.map_or_else(Said::default, |cure| self::cure(cure, voice));
    vec![
        ("cured", Arg::yes(cure.is_some())),
        ("cure", Arg::Said(said)),
    ]
}

/// `walk 12 m apart instead of 14 m: the blue rope of 40 m is long enough, spaced for gaps up to 15 m`.
fn cure(cure: &RopeCure, voice: Voice) -> Said {
    let key = if cure.joined_to.is_some() {
        "rope-cure-joined"
    } else {
        "rope-cure"
    };
    let given = cure.as_tied_gap_m;
    let gaps = match given {
        Some(_) if cure.gaps_differ => "each",
        Some(_) => "yes",
        None => "no",
    };
    let args = [
        ("how", Arg::Said(how(cure, voice))),
        ("costs", Arg::Said(costs(cure, voice))),
        ("rope", Arg::Said(rope(&cure.rope, voice))),
        ("gap-given", Arg::Word(gaps)),
        ("gap", Arg::There(given.unwrap_or_default())),
    ];
    voice.say(key, &args)
}

/// `; but 2 people over one gap at once, 1 left to hold`; nothing where it costs nothing.
fn costs(cure: &RopeCure, voice: Voice) -> Said {
    if cure.costs.is_empty() {
        return Said::default();
    }
    let others = cure.costs.iter().filter_map(|cost| self::cost(cost, voice));
    let said = Said::join(others.chain(loops(&cure.costs, voice)), ", ");
    voice.say("rope-cure-costs", &[("costs", Arg::Said(said))])
}

/// For whom drop loops end short of the lip, those together for whom it is by as much.
fn loops(costs: &[CureCost], voice: Voice) -> Vec<Said> {
    let mut short: Vec<(f64, Vec<Said>)> = Vec::new();
    for cost in costs {
        let CureCost::NotReached { falls, short_m } = cost else {
            continue;
        };
        let who = person(&falls.called, voice);
        match short.iter_mut().find(|(m, _)| (m - short_m).abs() < 1e-9) {
            Some((_, people)) => people.push(who),
            None => short.push((*short_m, vec![who])),
        }
    }
    let one = |(short_m, people): (f64, Vec<Said>)| {
        let args = [
            ("count", Arg::Count(people.len())),
            ("who", Arg::Said(Said::join(people, ", "))),
            ("short", Arg::Needed(short_m)),
        ];
        voice.say("rope-cure-loop", &args)
    };
    short.into_iter().map(one).collect()
}

/// What is told beside drop loops.
fn cost(cost: &CureCost, voice: Voice) -> Option<Said> {
    Some(match cost {
        CureCost::FallLessHeld => voice.say("rope-cure-fall", &[]),
        CureCost::MoreOverGap { over, left } => {
            let args = [("over", Arg::Count(*over)), ("left", Arg::Count(*left))];
            voice.say("rope-cure-over", &args)
        }
        CureCost::ShorterCoil { coil_m, planned_m } => {
            let args = [
                ("coil", Arg::There(*coil_m)),
                ("planned", Arg::Needed(*planned_m)),
            ];
            voice.say("rope-cure-coil", &args)
        }
        CureCost::NotReached { .. } => return None,
    })
}

fn how(cure: &RopeCure, voice: Voice) -> Said {
    let apart_m = cure.spacing_m - cure.planned_spacing_m;
    let walked = (apart_m.abs() > 1e-9).then(|| {
        let args = [
            ("spacing", Arg::Needed(cure.spacing_m)),
            ("planned", Arg::Needed(cure.planned_spacing_m)),
        ];
        voice.say("rope-cure-spacing", &args)
    });
    let others = cure.changes.iter();
    let others = others.filter(|change| !matches!(change, Change::Closer { .. }));
    let others = others.map(|change| options::change(change, voice));
    Said::join(walked.into_iter().chain(others), ", ")
}

/// The rope at hand that helps whom no loop reaches, and how.
fn left_at_hand<'f>(
    longer: Option<&RopeName>,
    spare: Option<&RopeName>,
    voice: Voice,
) -> [(&'static str, Arg<'f>); 2] {
    let named = match (longer, spare) {
        (Some(_), _) => "longer",
        (None, Some(_)) => "spare",
        (None, None) => "none",
    };
    let at_hand = longer.or(spare).map(|named| rope(named, voice));
    [
        ("named", Arg::Word(named)),
        ("rope", Arg::Said(at_hand.unwrap_or_default())),
    ]
}
