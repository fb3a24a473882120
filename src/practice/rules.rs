//! Every figure and choice in force for one plan.

use std::ops::Index;

use crate::{
    fault::{Fault, refusal::OutOfBounds},
    practice::{
        choice::{Choices, Pace, Reserve, Travel},
        figure::Figure,
        nature::Nature,
        rule::Rule,
        set,
        standing::Origin,
    },
};

/// Every figure and choice in force for one plan.
///
/// ```
/// use schrund::practice::{Origin, Rule, Rules, set::Source};
///
/// let mut rules = Rules::with_practice(&Source::Named("arm-span"))?;
/// for (people, spans) in [(2, 8.0), (3, 7.0), (4, 6.0), (5, 5.0)] {
///     assert!((rules[Rule::base_spacing(people)] - 1.8 * spans).abs() < 1e-9, "(10 − n) arm spans of 1.8 m");
/// }
/// rules.set(Rule::MarginM, 40.0, Origin::Flag).expect("0 to 1000 m");
/// let other = rules.under_practice("constant")?;
/// assert_eq!((other[Rule::MarginM], other.practice.as_str()), (40.0, "constant"), "the leader's word stays");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Rules {
    pub(super) figures: Vec<Figure>,
    /// The words that are not figures.
    pub choices: Choices,
    /// What the models of falls and hauls take as given.
    pub nature: Nature,
    /// Name of the practice set they come from.
    pub practice: String,
    /// The embedded sets that options weigh beside it: those the set names, or else the default and its neighbours.
    pub beside: Vec<String>,
    /// Who chose the practice set.
    pub practice_origin: Origin,
    /// Who gave what is not a figure of practice.
    pub given: GivenBy,
}

/// Who gave the party, the ropes, the terrain models and the gap width of zones that give none.
///
/// ```
/// use schrund::{example, practice::Origin, read::{input::Input, lay::Sources, trip::Folk}};
///
/// let line = Input::text("line.gpx", example::ROUTE_GPX.as_bytes());
/// let ice = Input::text("ice.geojson", example::ZONES_GEOJSON.as_bytes());
/// let mut sources = Sources::new(line, ice);
/// sources.flags.party = Some(Folk::Number(4));
/// let given = sources.job()?.rules.given;
/// assert_eq!((given.party, given.ropes), (Origin::Flag, Origin::Trip));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
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

impl Rules {
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
            Rule::DescendOnSkisMPerH | Rule::DescendRopedOnSkisMPerH => {
                pace == Pace::Din && on_skis
            }
            Rule::MunterUp | Rule::MunterDown => pace == Pace::Munter,
            Rule::MunterSkiDown | Rule::MunterSkiDownRoped => pace == Pace::Munter && on_skis,
            Rule::NaismithKmh | Rule::NaismithMPerH => pace == Pace::Naismith,
            Rule::SnowshoeFactor => self.choices.travel.value == Travel::Snowshoe,
            _ => true,
        })
    }

    /// Every figure that this origin put in force, whether or not this plan can rest on it, in the order of the flow.
    pub(super) fn figures_of(&self, origin: Origin) -> impl Iterator<Item = &Figure> {
        self.figures.iter().filter(move |f| f.origin == origin)
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
