//! One leg as every reading output shows it; table, text and report start here, so they cannot disagree.

use crate::{
    plan::leg::{Bite, Leg, TeamSetup, Verdict},
    say::{arg::Arg, round::Round, span::Said, units::minutes, voice::Voice},
};

/// One leg in words. Empty strings where there is nothing to say.
///
/// ```
/// use schrund::{say::{units::Units, voice::Voice}, write::parts::row::LegRow};
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let shown = |voice| {
///     let row = LegRow::new(&plan.legs[3], voice);
///     (row.from_to, row.gap)
/// };
/// // The second zone is crossed askew: gaps of 10 m are longer along the line. Its margin lies on ice nobody drew.
/// assert_eq!(shown(Voice::default()), ("2.21–3.12".to_owned(), "10 (11.6) ?".to_owned()));
/// let feet = Voice { units: Units::Imperial, ..Voice::default() };
/// assert_eq!(shown(feet), ("1.37–1.94".to_owned(), "32.9 (37.9) ?".to_owned()));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct LegRow<'a> {
    /// Number of the leg.
    pub leg: usize,
    /// Number of the stage.
    pub stage: usize,
    /// `0.98–1.44`, in km or miles, rounded as [`ends`] has it.
    pub from_to: String,
    /// Length in whole metres or feet.
    pub length: String,
    /// `+120 −30`; empty without heights.
    pub heights: String,
    /// Time on the way, without rope changes.
    pub time: String,
    /// Numbers of the zones met.
    pub zones: &'a [usize],
    /// `6`, or `6 (8.4)` with the way along the route where that is longer, and that it was assumed; `?` where there is ice
    /// without a gap width.
    pub gap: String,
    /// One for each rope team; empty on unroped legs.
    pub teams: Vec<TeamRow<'a>>,
    /// Whether the team is on the rope.
    pub roped: bool,
    /// The verdict.
    pub verdict: Verdict,
}

/// One rope team's set-up in words.
///
/// ```
/// use schrund::{say::voice::Voice, write::parts::row::TeamRow};
///
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let [first, last] = [1, 3].map(|leg| TeamRow::new(&plan.legs[leg].teams[0], Voice::default()));
/// assert_eq!(first.setup(), "2 people, 15 m apart, 6 knots, coils 27.9 m");
/// assert_eq!(last.knots, "6 knots?", "in doubt whether they bite");
/// assert_eq!(last.rope(), "77.2/80", "needed, and at hand");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct TeamRow<'a> {
    /// The set-up itself.
    pub setup: &'a TeamSetup,
    /// `3 people, 13 m apart`.
    pub spacing: String,
    /// `6 knots`, `6 knots?` where it is doubtful that they bite, `no knots`.
    pub knots: String,
    /// `coils 6.5 m`, `coils 0.0 m of 9.5 m` where the rope is too short for them, or `no coils`.
    pub coils: String,
    /// Rope needed.
    pub needed: String,
    /// The rope at hand; empty where none was named.
    pub at_hand: String,
    /// The next length sold; empty above the longest.
    pub sold: String,
    voice: Voice,
}

impl<'a> LegRow<'a> {
    /// The leg in this voice.
    #[must_use]
    pub fn new(leg: &'a Leg, voice: Voice) -> Self {
        let units = voice.units;
        Self {
            leg: leg.leg,
            stage: leg.stage,
            from_to: from_to(leg, voice),
            length: units.whole(leg.length_m),
            heights: heights(leg, voice),
            time: minutes(leg.time_min),
            zones: &leg.zones,
            gap: gap(leg, voice),
            teams: leg.teams.iter().map(|t| TeamRow::new(t, voice)).collect(),
            roped: leg.roped,
            verdict: leg.verdict,
        }
    }

    /// Numbers of the zones met, apart by spaces.
    #[must_use]
    pub fn zone_numbers(&self) -> String {
        let numbers: Vec<String> = self.zones.iter().map(usize::to_string).collect();
        numbers.join(" ")
    }
}

/// Where a leg begins and ends, metres, each with the side to which it is rounded where it is shown: nobody is told to
/// rope up later than was worked out, or to unrope earlier.
#[must_use]
pub fn ends(leg: &Leg) -> [(f64, Round); 2] {
    let (begin, end) = match (leg.roped, leg.ends_stage) {
        (true, false) => (Round::Down, Round::Up),
        (true, true) => (Round::Down, Round::Nearest),
        (false, false) => (Round::Up, Round::Down),
        (false, true) => (Round::Up, Round::Nearest),
    };
    [(leg.start_m, begin), (leg.end_m, end)]
}

/// Whether the way over the gaps of a leg is longer than they are wide, by as much as is shown.
fn is_longer_along(leg: &Leg, voice: Voice) -> bool {
    let shown = |m| voice.number(m, Round::Up);
    let both = leg.gap_m.zip(leg.effective_gap_m);
    both.is_some_and(|(gap_m, along_m)| shown(gap_m) != shown(along_m))
}

/// The head of the column of [`gap`]s.
pub(crate) fn gap_head(legs: &[Leg], voice: Voice) -> Said {
    let along = legs.iter().any(|leg| is_longer_along(leg, voice));
    let unit = Said::words(voice.units.short());
    let args = [("unit", Arg::Said(unit)), ("along", Arg::yes(along))];
    voice.say("column-gap", &args)
}

/// The gaps of a leg for a message: whether they are met askew, their width, the way over them, whether there are others.
#[must_use]
pub(crate) fn gap_args(leg: &Leg, voice: Voice) -> [(&'static str, Arg<'static>); 4] {
    let (gap_m, along_m) = (leg.gap_m, leg.effective_gap_m);
    let kind = match (gap_m.is_some(), is_longer_along(leg, voice)) {
        (false, _) => "none",
        (true, true) => "askew",
        (true, false) => "square",
    };
    [
        ("kind", Arg::Word(kind)),
        ("gap", Arg::Needed(gap_m.unwrap_or_default())),
        ("along", Arg::Needed(along_m.unwrap_or_default())),
        ("known", Arg::yes(leg.gap_known)),
    ]
}

/// `0.98–1.44`, in km or miles, rounded as [`ends`] has it.
pub(crate) fn from_to(leg: &Leg, voice: Voice) -> String {
    let shown = ends(leg).map(|(m, round)| voice.chainage(m, round));
    shown.join("–")
}

/// Where a leg begins and ends, for a message.
#[must_use]
pub fn span<'a>(leg: &Leg) -> Arg<'a> {
    let [begin, end] = ends(leg);
    Arg::DoneBetween(begin, end)
}

fn heights(leg: &Leg, voice: Voice) -> String {
    let whole = |m| voice.units.whole(m);
    match (leg.ascent_m, leg.descent_m) {
        (Some(up), Some(down)) => format!("+{} −{}", whole(up), whole(down)),
        _ => String::new(),
    }
}

fn gap(leg: &Leg, voice: Voice) -> String {
    let unknown = if leg.gap_known || !leg.roped { "" } else { "?" };
    let (Some(gap_m), Some(effective_m)) = (leg.gap_m, leg.effective_gap_m) else {
        return unknown.to_owned();
    };
    let (gap, effective) = (
        voice.number(gap_m, Round::Up),
        voice.number(effective_m, Round::Up),
    );
    let drawn = if is_longer_along(leg, voice) {
        format!("{gap} ({effective})")
    } else {
        gap
    };
    let drawn = match leg.gap_assumed {
        true => voice
            .say("row-gap-assumed", &[("gap", Arg::Figure(drawn))])
            .to_string(),
        false => drawn,
    };
    if unknown.is_empty() {
        drawn
    } else {
        format!("{drawn} {unknown}")
    }
}

/// `6 knots`, `6 knots?` where it is doubtful that they bite, `no knots`.
fn knots(setup: &TeamSetup, voice: Voice) -> Said {
    if setup.knots.count == 0 {
        return voice.say("knots-none", &[]);
    }
    let count = Arg::Count(setup.knots.count);
    voice.say("knots-some", &[("knots", count), ("bite", bite(setup))])
}

/// Whether knots bite, as messages are told of them.
pub(crate) fn bite(setup: &TeamSetup) -> Arg<'static> {
    Arg::Word(match setup.knots.bite {
        Bite::Yes => "yes",
        Bite::Doubtful | Bite::Unknown | Bite::No => "doubtful",
    })
}

/// What each end person carries; beside it what is needed where the rope is too short for that.
#[must_use]
pub(crate) fn coils_of(setup: &TeamSetup, voice: Voice) -> Said {
    let carried_m = setup.coil_carried_m;
    if setup.rope_short_m().is_none() || carried_m >= setup.coil_m {
        return coils(carried_m, voice);
    }
    let args = [
        ("coil", Arg::There(carried_m)),
        ("needed", Arg::Needed(setup.coil_m)),
    ];
    voice.say("coils-short", &args)
}

/// `coils 6.5 m`, or `no coils`: what there is, so rounded down.
#[must_use]
pub fn coils(coil_m: f64, voice: Voice) -> Said {
    if coil_m > 0.0 {
        voice.say("coils-some", &[("coil", Arg::There(coil_m))])
    } else {
        voice.say("coils-none", &[])
    }
}

impl<'a> TeamRow<'a> {
    /// The set-up in this voice.
    #[must_use]
    pub fn new(setup: &'a TeamSetup, voice: Voice) -> Self {
        let at_hand = setup.rope.as_ref().map(|r| r.length_m);
        let number = |m: Option<f64>, round| m.map(|m| voice.number(m, round));
        Self {
            setup,
            spacing: spacing(setup, voice),
            knots: knots(setup, voice).to_string(),
            coils: coils_of(setup, voice).to_string(),
            needed: voice.number(setup.ledger.total_m, Round::Up),
            at_hand: number(at_hand, Round::Down).unwrap_or_default(),
            sold: number(setup.sold_length_m, Round::Nearest).unwrap_or_default(),
            voice,
        }
    }

    /// `2 people, 14.5 m apart, 4 knots?, 21.8 m`: spacing, knots, coil that each end person carries.
    #[must_use]
    pub fn short_setup(&self) -> String {
        let coil = if self.setup.coil_carried_m > 0.0 {
            self.voice
                .units
                .length(self.setup.coil_carried_m, Round::Down)
        } else {
            self.voice.say("coil-none", &[]).to_string()
        };
        format!("{}, {}, {coil}", self.spacing, self.knots)
    }

    /// `3 people, 13 m apart, 6 knots, coils 6.5 m`.
    #[must_use]
    pub fn setup(&self) -> String {
        format!("{}, {}, {}", self.spacing, self.knots, self.coils)
    }

    /// `43.2/60`, needed and at hand; without a rope at hand `43.2`.
    #[must_use]
    pub fn rope(&self) -> String {
        if self.at_hand.is_empty() {
            self.needed.clone()
        } else {
            format!("{}/{}", self.needed, self.at_hand)
        }
    }
}

fn spacing(setup: &TeamSetup, voice: Voice) -> String {
    let args = [
        ("people", Arg::Count(setup.people)),
        ("spacing", Arg::Needed(setup.spacing_m)),
    ];
    voice.say("team-spacing", &args).to_string()
}
