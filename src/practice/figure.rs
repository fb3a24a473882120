//! One figure with its unit, bounds, standing and origin.

use serde::Deserialize;

use crate::{
    fault::refusal::OutOfBounds,
    practice::{
        rule::Rule,
        standing::{Origin, Standing},
    },
};

/// What `data/rules.toml` and practice files say about one figure.
#[derive(Clone, Debug, Deserialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields)]
pub(crate) struct FigureEntry {
    /// What it is, where the set says it otherwise.
    pub(super) says: Option<String>,
    /// The number.
    pub(super) value: f64,
    /// Its unit; a practice file cannot change it.
    pub(super) unit: Option<String>,
    /// Least value; a practice file cannot change it.
    pub(super) min: Option<f64>,
    /// Greatest value; a practice file cannot change it.
    pub(super) max: Option<f64>,
    /// What stands behind it.
    pub(super) standing: Standing,
    /// Keys of `data/sources.toml`.
    #[serde(default)]
    pub(super) sources: Vec<String>,
    /// What else must be said.
    pub(super) note: Option<String>,
}

/// A number of the trade with all that must be known to question it.
///
/// ```
/// use schrund::practice::{Figure, Rule, Standing};
///
/// let rules = schrund::example::job()?.rules;
/// let share: &Figure = rules.figure(Rule::GapShareThree);
/// assert_eq!((share.value, share.standing), (0.9, Standing::Judgement));
/// assert!(share.check(1.2).is_ok() && share.check(f64::NAN).is_err(), "{} to {}", share.min, share.max);
/// assert_eq!(rules.figure(Rule::MarginM).unit_shown(), " m");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// Which one it is.
    pub rule: Rule,
    /// What it is, in words.
    pub says: String,
    /// The number, in `unit`.
    pub value: f64,
    /// `m`, `°`, `kg`, `min`; `1` for a pure number.
    pub unit: String,
    /// Least value a trip file may set.
    pub min: f64,
    /// Greatest value a trip file may set.
    pub max: f64,
    /// What stands behind it.
    pub standing: Standing,
    /// Keys of `data/sources.toml`.
    pub sources: Vec<String>,
    /// What else must be said.
    pub note: Option<String>,
    /// Who put it in force.
    pub origin: Origin,
}

impl Figure {
    pub(super) fn from_entry(rule: Rule, entry: &FigureEntry, origin: Origin) -> Self {
        Self {
            rule,
            says: entry.says.clone().unwrap_or_default(),
            value: entry.value,
            unit: entry.unit.clone().unwrap_or_else(|| "1".to_owned()),
            min: entry.min.unwrap_or(f64::NEG_INFINITY),
            max: entry.max.unwrap_or(f64::INFINITY),
            standing: entry.standing,
            sources: entry.sources.clone(),
            note: entry.note.clone(),
            origin,
        }
    }

    /// A spacing, which only practice sets give: no default, so NaN until a set is laid over it.
    pub(super) fn base_spacing(rule: Rule) -> Self {
        let people = rule
            .name()
            .trim_start_matches("spacing_")
            .trim_end_matches("_m");
        Self {
            rule,
            says: format!("least spacing of {people} people where the gaps ask for no more"),
            value: f64::NAN,
            unit: "m".to_owned(),
            min: 1.0,
            max: 60.0,
            standing: Standing::Judgement,
            sources: Vec::new(),
            note: None,
            origin: Origin::Default,
        }
    }

    /// Checks a value against the bounds. NaN fails.
    ///
    /// # Errors
    /// The figure, the value and its bounds.
    pub fn check(&self, value: f64) -> Result<(), OutOfBounds> {
        if value >= self.min && value <= self.max {
            return Ok(());
        }
        Err(OutOfBounds {
            name: None,
            what: self.rule.name().to_owned(),
            value,
            unit: self.unit.clone(),
            min: self.min,
            max: self.max,
        })
    }

    /// The unit with a space before it; nothing for a pure number.
    #[must_use]
    pub fn unit_shown(&self) -> String {
        match self.unit.as_str() {
            "1" => String::new(),
            "°" => "°".to_owned(),
            unit => format!(" {unit}"),
        }
    }

    pub(super) fn replace(&mut self, value: f64, origin: Origin) -> Result<(), OutOfBounds> {
        self.check(value)?;
        self.value = value;
        self.standing = Standing::Leader;
        self.sources.clear();
        self.note = None;
        self.origin = origin;
        Ok(())
    }

    /// What stands behind it, with the sources named: `published (foh)`.
    #[must_use]
    pub fn standing_shown(&self) -> String {
        self.standing.with_sources(&self.sources)
    }
}
