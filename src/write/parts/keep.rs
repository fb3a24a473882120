//! Fewer changes of the set-up, in words: what changing costs, what keeping costs, and which set-up is kept where.

use crate::{
    plan::keep::{KeepSetup, KeptRun, KeptStretch, KeptTeam},
    say::{arg::Arg, finding, round::Round, span::Said, voice::Voice},
    write::parts::row::coils,
};

/// `as planned you tie in anew 3 times, 15 min; kept like this 2 times, 13 min (slower walking counted)`.
pub(crate) fn costs(keep: &KeepSetup, voice: Voice) -> Said {
    let args = [
        ("planned", Arg::Count(keep.as_planned.changes)),
        ("planned-time", Arg::Minutes(keep.as_planned.minutes)),
        ("kept", Arg::Count(keep.kept.changes)),
        ("kept-time", Arg::Minutes(keep.kept.minutes)),
    ];
    voice.say("keep-costs", &args)
}

/// `legs 2, 4`.
pub(crate) fn legs(run: &KeptRun, voice: Voice) -> Said {
    finding::legs(&run.legs, voice)
}

/// `13 m, no knots, coils 6.5 m, rope 42 m`, with the team in front where there are several.
pub(crate) fn team(run: &KeptRun, team: &KeptTeam, voice: Voice) -> Said {
    let who = match run.teams.len() {
        1 => Said::default(),
        _ => voice.say("keep-team-of", &[("team", Arg::Count(team.team))]),
    };
    let knots = match team.knots_each_end {
        0 => voice.say("knots-none", &[]),
        n => voice.say("keep-knots", &[("knots", Arg::Count(n))]),
    };
    let args = [
        ("spacing", Arg::Needed(team.spacing_m)),
        ("knots", Arg::Said(knots)),
        ("coils", Arg::Said(coils(team.coil_carried_m, voice))),
        ("rope", Arg::Needed(team.needed_m)),
    ];
    who.then(voice.say("keep-team", &args))
}

/// `roped 0.98–1.46 km, 2.21–2.53 km`, the ends of each rounded as those of legs are.
pub(crate) fn stretches(run: &KeptRun, voice: Voice) -> Said {
    let span = |stretch: &KeptStretch| {
        let ends = Arg::DoneBetween((stretch.from_m, Round::Down), (stretch.to_m, Round::Up));
        voice.say("keep-stretch", &[("span", ends)])
    };
    let spans = Said::join(run.stretches.iter().map(span), ", ");
    voice.say("keep-stretches", &[("spans", Arg::Said(spans))])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_change_is_one_that_comes_once() {
        let plan = crate::plan(&crate::example::pair().unwrap()).unwrap();
        let said = costs(&plan.keep_setup.unwrap(), Voice::default()).to_string();
        let want = "as planned you tie in anew once, 5 min; kept like this never, 1 min (slower walking counted)";
        assert_eq!(said, want);
    }
}
