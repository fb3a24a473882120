//! Practice: the figures that people who teach glacier travel use, as data with their standing.
//!
//! `data/rules.toml` holds every figure; a practice set, the trip file and flags lay theirs over it, each
//! leaving its origin behind. Code asks `rules[Rule::MarginM]` and never types a figure in.

pub mod choice;
pub mod figure;
pub mod nature;
pub mod set;
pub mod sold;
pub mod term;
pub mod words;

use std::ops::Index;

use serde::Deserialize;

pub use choice::{Choices, Chosen, Cover, Knots, Pace, Reserve, Travel};
pub use figure::{Figure, Origin, Standing};
pub use nature::Nature;
pub use sold::SOLD_LENGTHS_M;

use sold::Sold;

use crate::fault::{
    Fault, Place,
    refusal::{OutOfBounds, Refusal},
    trip::InPractice,
};

macro_rules! rules {
    ($($variant:ident $name:literal,)+) => {
        /// The name of one figure. What each is stands in `data/rules.toml`.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Rule { $(#[doc = concat!("`", $name, "`")] $variant,)+ }

        impl Rule {
            /// All of them, in the order of the flow.
            pub const ALL: &'static [Rule] = &[$(Rule::$variant,)+];

            /// As it stands in data files and plans; ends in the unit where it has one.
            #[must_use]
            pub fn name(self) -> &'static str {
                match self { $(Self::$variant => $name,)+ }
            }
        }
    };
}

rules! {
    MarginM "margin_m",
    LeastUnropedM "least_unroped_m",
    AlongDeg "along_deg",
    Spacing2M "spacing_2_m",
    Spacing3M "spacing_3_m",
    Spacing4M "spacing_4_m",
    Spacing5M "spacing_5_m",
    NeighbourRoomM "neighbour_room_m",
    GapShareThree "gap_share_three",
    GapShareFour "gap_share_four",
    SpacingFloorM "spacing_floor_m",
    SpacingCapM "spacing_cap_m",
    SpacingStepM "spacing_step_m",
    KnotsNoBiteM "knots_no_bite_m",
    KnotsBiteM "knots_bite_m",
    KnotFirstM "knot_first_m",
    KnotStepM "knot_step_m",
    KnotCount "knot_count",
    KnotRopeM "knot_rope_m",
    ButterflyRopeM "butterfly_rope_m",
    KnotClearM "knot_clear_m",
    HeavierFactor "heavier_factor",
    SteepDescentDeg "steep_descent_deg",
    TieInM "tie_in_m",
    ReachFactor "reach_factor",
    LoopEndsM "loop_ends_m",
    SlingM "sling_m",
    ChestCoilM "chest_coil_m",
    ChestCoils2 "chest_coils_2",
    ChestCoils3 "chest_coils_3",
    ChestCoils4 "chest_coils_4",
    ChestCoils5 "chest_coils_5",
    PersonKg "person_kg",
    ArmSpanM "arm_span_m",
    NearCapM "near_cap_m",
    NearRopeM "near_rope_m",
    AvalancheDeg "avalanche_deg",
    AnchorsDeg "anchors_deg",
    AscentThresholdM "ascent_threshold_m",
    SteepOverM "steep_over_m",
    RopeUpMin "rope_up_min",
    ChangeMin "change_min",
    WalkKmh "walk_kmh",
    ClimbMPerH "climb_m_per_h",
    DescendMPerH "descend_m_per_h",
    DescendOnSkisMPerH "descend_on_skis_m_per_h",
    SnowshoeFactor "snowshoe_factor",
    MunterUp "munter_up",
    MunterDown "munter_down",
    MunterSkiDown "munter_ski_down",
    NaismithKmh "naismith_kmh",
    NaismithMPerH "naismith_m_per_h",
    BreakMinPerH "break_min_per_h",
    EffortClimbM "effort_climb_m",
    EffortDescentM "effort_descent_m",
    EffortSteepShare "effort_steep_share",
    GroundStepM "ground_step_m",
    HeightsApartM "heights_apart_m",
    FallLineDeg "fall_line_deg",
    ProposedStrikeDeg "proposed_strike_deg",
    ConvexDeg "convex_deg",
    ConvexOverM "convex_over_m",
    ConvexMost "convex_most",
    StraightM "straight_m",
    AnchorShare "anchor_share",
    RopeDiameterMm "rope_diameter_mm",
    CoilMostM "coil_most_m",
    CoilMostKg "coil_most_kg",
    LongSlingM "long_sling_m",
    WideMinPerKmM "wide_min_per_km_m",
}

impl Rule {
    /// The figure of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|rule| rule.name() == name)
    }

    /// Least spacing of a practice set for a rope team of 2 to 5.
    #[must_use]
    pub fn base_spacing(people: usize) -> Self {
        match people {
            ..=2 => Self::Spacing2M,
            3 => Self::Spacing3M,
            4 => Self::Spacing4M,
            _ => Self::Spacing5M,
        }
    }

    /// Chest coils at each end for a rope team of 2 to 5.
    #[must_use]
    pub fn chest_coils(people: usize) -> Self {
        match people {
            ..=2 => Self::ChestCoils2,
            3 => Self::ChestCoils3,
            4 => Self::ChestCoils4,
            _ => Self::ChestCoils5,
        }
    }

    const fn index(self) -> usize {
        self as usize
    }
}

/// Every figure and choice in force for one plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Rules {
    figures: Vec<Figure>,
    /// The words that are not figures.
    pub choices: Choices,
    /// What the models of falls and hauls take as given.
    pub nature: Nature,
    /// Name of the practice set they come from.
    pub practice: String,
    /// Who chose the practice set.
    pub practice_origin: Origin,
    /// Who gave what is not a figure of practice.
    pub given: GivenBy,
}

/// Who gave the party, the ropes, the terrain models and the gap width of zones that give none.
#[derive(Clone, Debug, PartialEq)]
pub struct GivenBy {
    /// Who goes.
    pub party: Origin,
    /// The ropes at hand.
    pub ropes: Origin,
    /// The terrain models.
    pub terrain: Origin,
    /// The gap width.
    pub gap: Origin,
}

/// A caller that says nothing stands for the trip file.
impl Default for GivenBy {
    fn default() -> Self {
        Self {
            party: Origin::Trip,
            ropes: Origin::Trip,
            terrain: Origin::Trip,
            gap: Origin::Trip,
        }
    }
}

impl Index<Rule> for Rules {
    type Output = f64;

    fn index(&self, rule: Rule) -> &f64 {
        &self.figures[rule.index()].value
    }
}

/// What `data/rules.toml` and practice files say about one figure.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Entry {
    says: Option<String>,
    value: f64,
    unit: Option<String>,
    min: Option<f64>,
    max: Option<f64>,
    standing: Standing,
    #[serde(default)]
    sources: Vec<String>,
    note: Option<String>,
}

impl Rules {
    /// The figures of `data/rules.toml` under those of the practice set `name` or, where `file` gives a
    /// text, under those of that text.
    ///
    /// # Errors
    /// Every fault of the practice text: what does not parse, is unknown, missing or out of bounds.
    pub fn with_practice(practice: &set::Source<'_>) -> Result<Self, Vec<Fault>> {
        let set = practice.read()?;
        let mut rules = Self::defaults()?;
        set::lay_over(&mut rules, set, practice.file())?;
        Ok(rules)
    }

    fn defaults() -> Result<Self, Vec<Fault>> {
        let table: std::collections::BTreeMap<String, Entry> =
            toml::from_str(include_str!("../data/rules.toml")).map_err(|e| {
                let refusal = Refusal::BuiltIn(e.message().to_owned());
                broken("data/rules.toml", refusal)
            })?;
        let figures = Rule::ALL.iter().map(|&rule| match table.get(rule.name()) {
            Some(entry) => Figure::from_entry(rule, entry, Origin::Default),
            None => Figure::base_spacing(rule),
        });
        let nature = Nature::built_in().map_err(|why| broken("data/holding.toml", why))?;
        Sold::built_in().map_err(|why| broken("data/ropes_sold.toml", why))?;
        Ok(Self {
            figures: figures.collect(),
            choices: Choices::default(),
            nature,
            practice: String::new(),
            practice_origin: Origin::Default,
            given: GivenBy::default(),
        })
    }

    /// Puts another value in force.
    ///
    /// # Errors
    /// The figure, the value and its bounds.
    pub fn set(&mut self, rule: Rule, value: f64, origin: Origin) -> Result<(), OutOfBounds> {
        self.figures[rule.index()].replace(value, origin)
    }

    /// The figure with all that is known of it.
    #[must_use]
    pub fn figure(&self, rule: Rule) -> &Figure {
        &self.figures[rule.index()]
    }

    /// The figures that this plan can rest on, in the order of the flow.
    pub fn figures(&self) -> impl Iterator<Item = &Figure> {
        let pace = self.choices.pace.value;
        let on_skis = self.choices.travel.value == Travel::Ski;
        self.figures.iter().filter(move |figure| match figure.rule {
            Rule::ReachFactor | Rule::LoopEndsM | Rule::SlingM => {
                self.choices.reserve.value == Reserve::Reach
            }
            Rule::ChestCoils2
            | Rule::ChestCoils3
            | Rule::ChestCoils4
            | Rule::ChestCoils5
            | Rule::ChestCoilM => self.choices.reserve.value == Reserve::ChestCoils,
            Rule::WalkKmh | Rule::ClimbMPerH | Rule::DescendMPerH => pace == Pace::Din,
            Rule::DescendOnSkisMPerH => pace == Pace::Din && on_skis,
            Rule::MunterUp | Rule::MunterDown => pace == Pace::Munter,
            Rule::MunterSkiDown => pace == Pace::Munter && on_skis,
            Rule::NaismithKmh | Rule::NaismithMPerH => pace == Pace::Naismith,
            Rule::SnowshoeFactor => self.choices.travel.value == Travel::Snowshoe,
            _ => true,
        })
    }

    /// These rules under another of the embedded practice sets; what the trip file or a flag put in force stays.
    ///
    /// # Errors
    /// There is no such set, or a figure kept contradicts it.
    pub fn under_practice(&self, name: &str) -> Result<Self, Vec<Fault>> {
        let mut other = Self::with_practice(&set::Source::Named(name))?;
        let kept = self
            .figures
            .iter()
            .filter(|f| matches!(f.origin, Origin::Trip | Origin::Flag));
        for figure in kept {
            *other.figure_mut(figure.rule) = figure.clone();
        }
        other.choices.keep_leaders(&self.choices);
        other.nature = self.nature.clone();
        other.given = self.given.clone();
        Ok(other)
    }

    pub(crate) fn figure_mut(&mut self, rule: Rule) -> &mut Figure {
        &mut self.figures[rule.index()]
    }
}

/// A file that comes with the program and is broken; a test proves that none is.
fn broken(file: &str, why: Refusal) -> Vec<Fault> {
    vec![Fault::new(InPractice::BuiltIn(why), Place::file(file))]
}

#[cfg(test)]
mod tests {
    use super::*;

    const SPACINGS: [Rule; 4] = [
        Rule::Spacing2M,
        Rule::Spacing3M,
        Rule::Spacing4M,
        Rule::Spacing5M,
    ];

    #[test]
    fn every_rule_but_the_spacings_stands_in_the_data_file_and_nothing_else_does() {
        let table: toml::Table = toml::from_str(include_str!("../data/rules.toml")).unwrap();
        for name in table.keys() {
            assert!(
                Rule::named(name).is_some(),
                "{name} stands in rules.toml and no code asks for it"
            );
        }
        for rule in Rule::ALL.iter().filter(|r| !SPACINGS.contains(r)) {
            assert!(
                table.contains_key(rule.name()),
                "{} is missing from rules.toml",
                rule.name()
            );
        }
    }

    #[test]
    fn a_value_out_of_bounds_is_refused_by_name() {
        let mut rules = Rules::with_practice(&set::Source::Named("arm-span")).unwrap();
        let refused = rules.set(Rule::MarginM, -1.0, Origin::Flag).unwrap_err();
        assert_eq!(refused.to_string(), "margin_m -1 m is outside 0 to 1000 m");
        assert!(
            rules.set(Rule::MarginM, f64::NAN, Origin::Flag).is_err(),
            "NaN is no margin"
        );
        assert!(
            (rules[Rule::MarginM] - 20.0).abs() < 1e-12,
            "a refused value changes nothing"
        );
    }
}
