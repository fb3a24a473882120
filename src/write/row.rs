//! One leg as every reading output shows it; table, CSV, text and report start here, so they cannot disagree.

use crate::plan::leg::{Bite, Leg, TeamSetup, Verdict};
use crate::say::units::{Side, Units, minutes};

/// One leg in words. Empty strings where there is nothing to say.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Number of the leg.
    pub leg: usize,
    /// Number of the stage.
    pub stage: usize,
    /// `0.98–1.44`, in km or miles.
    pub from_to: String,
    /// Length in whole metres or feet.
    pub length: String,
    /// `+120 −30`; empty without heights.
    pub heights: String,
    /// Time on the way, without rope changes.
    pub time: String,
    /// Zone numbers.
    pub zones: String,
    /// `6`, or `6 (8.4)` with the way along the route where that is longer.
    pub gap: String,
    /// One for each rope team; empty on unroped legs.
    pub teams: Vec<TeamRow>,
    /// Whether the team is on the rope.
    pub roped: bool,
    /// The verdict.
    pub verdict: Verdict,
}

/// One rope team's set-up in words.
#[derive(Clone, Debug, PartialEq)]
pub struct TeamRow {
    /// Number of the team.
    pub team: usize,
    /// `3 × 13 m`.
    pub spacing: String,
    /// `6 knots`, `6 knots?` where it is doubtful that they bite, `no knots`.
    pub knots: String,
    /// `coils 6.5 m`, or `no coils`.
    pub coils: String,
    /// Rope needed.
    pub needed: String,
    /// The rope at hand; empty where none was named.
    pub at_hand: String,
    /// The next length sold; empty above the longest.
    pub sold: String,
}

impl Row {
    /// The leg in these units.
    #[must_use]
    pub fn new(leg: &Leg, units: Units) -> Self {
        let numbers: Vec<String> = leg.zones.iter().map(usize::to_string).collect();
        Self {
            leg: leg.leg,
            stage: leg.stage,
            from_to: format!(
                "{}–{}",
                units.chainage(leg.start_m),
                units.chainage(leg.end_m)
            ),
            length: units.whole(leg.length_m),
            heights: heights(leg, units),
            time: minutes(leg.time_min),
            zones: numbers.join(" "),
            gap: gap(leg, units),
            teams: leg.teams.iter().map(|t| TeamRow::new(t, units)).collect(),
            roped: leg.roped,
            verdict: leg.verdict,
        }
    }
}

fn heights(leg: &Leg, units: Units) -> String {
    match (leg.ascent_m, leg.descent_m) {
        (Some(up), Some(down)) => format!("+{} −{}", units.whole(up), units.whole(down)),
        _ => String::new(),
    }
}

fn gap(leg: &Leg, units: Units) -> String {
    let (Some(gap_m), Some(effective_m)) = (leg.gap_m, leg.effective_gap_m) else {
        return String::new();
    };
    let (gap, effective) = (
        units.number(gap_m, Side::Demand),
        units.number(effective_m, Side::Demand),
    );
    if gap == effective {
        gap
    } else {
        format!("{gap} ({effective})")
    }
}

impl TeamRow {
    /// The set-up in these units.
    #[must_use]
    pub fn new(setup: &TeamSetup, units: Units) -> Self {
        let doubt = match setup.knots.bite {
            Bite::Yes => "",
            Bite::Doubtful | Bite::Unknown | Bite::No => "?",
        };
        Self {
            team: setup.team,
            spacing: format!(
                "{} × {}",
                setup.people,
                units.length(setup.spacing_m, Side::Demand)
            ),
            knots: match setup.knots.count {
                0 => "no knots".to_owned(),
                n => format!("{n} knots{doubt}"),
            },
            coils: if setup.coil_m > 0.0 {
                format!("coils {}", units.length(setup.coil_m, Side::Demand))
            } else {
                "no coils".to_owned()
            },
            needed: units.number(setup.ledger.total_m, Side::Demand),
            at_hand: setup
                .rope
                .as_ref()
                .map_or_else(String::new, |r| units.number(r.length_m, Side::AtHand)),
            sold: setup
                .sold_length_m
                .map_or_else(String::new, |m| units.number(m, Side::Measured)),
        }
    }

    /// `2×14.5 m, 4 knots?, 21.8 m`: spacing, knots, coil of each end person.
    #[must_use]
    pub fn short_setup(&self) -> String {
        let coil = self
            .coils
            .trim_start_matches("coils ")
            .replace("no coils", "no coil");
        format!(
            "{}, {}, {coil}",
            self.spacing.replace(" × ", "×"),
            self.knots
        )
    }

    /// `3 × 13 m, 6 knots, coils 6.5 m`.
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
