//! What the fall model assumes: ranges with a favourable and an adverse end, read from `data/holding.toml`.
//!
//! *Model:* none; figures. *Valid:* until the caller replaces them, one by one and by name. *Error:* they are ranges.
//! *Source:* each figure's standing is beside it. *Checked:* on load, below and in tests/physics.

pub mod case;

use crate::fault::refusal::Refusal;
use serde::Deserialize;

use super::bound::{self, Bound};
pub use case::{Case, Corner, Parameter, Snow};

const TEXT: &str = include_str!("../../data/holding.toml");

/// Everything assumed. Public to read; [`Assumed::set`] keeps it within what is possible.
///
/// ```
/// use schrund::physics::assumed::{Assumed, Corner};
///
/// let mut assumed = Assumed::built_in()?;
/// assert_eq!((assumed.delay_s.favourable, assumed.delay_s.adverse), (0.6, 1.6), "our judgement");
/// assumed.set("delay_s", 1.2)?; // somebody measured it
/// assert_eq!(assumed.delay_s.at(Corner::Adverse), 1.2);
/// assert_eq!(assumed.delay_s.standing, "given");
/// assert!(assumed.set("delay_s", 20.0).is_err(), "nobody takes that long");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Assumed {
    /// From the first pull to braking, s.
    pub delay_s: Range,
    /// Loose rope in each span, m.
    pub slack_m: Range,
    /// How far across the gap the bridge breaks, share of its width.
    pub break_point: Range,
    /// Damping of the rope, share of critical.
    pub rope_damping: Range,
    /// How far a knot is dragged through the lip before it is out, m.
    pub knot_bite_m: Range,
    /// On skis.
    pub skis: Skis,
    /// By kind of snow.
    pub snow: Kinds,
}

/// What is different on skis.
///
/// ```
/// use schrund::physics::assumed::{Assumed, Corner, Snow};
///
/// let assumed = Assumed::built_in()?;
/// let on = |skis| assumed.case(Snow::Firm, skis, |_| Corner::Adverse).mu_before;
/// // 0.02: measured, Frontiers Mech. Eng. 7:728722, 2021, as excerpted; 0.12: our judgement
/// assert_eq!((on(true), on(false)), (0.02, 0.12), "skis hold less before anybody brakes");
/// assert_eq!(assumed.skis.mu_before.adverse, 0.02);
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Skis {
    /// Friction before braking.
    pub mu_before: Range,
}

/// The kinds of snow, from the one that holds best.
///
/// ```
/// use schrund::physics::assumed::{Assumed, Snow};
///
/// let kinds = Assumed::built_in()?.snow;
/// let lips = Snow::ALL.map(|snow| kinds.of(snow).lip.favourable);
/// assert!(lips.is_sorted_by(|softer, harder| softer > harder), "a harder lip takes less off the rope: {lips:?}");
/// assert_eq!(kinds.of(Snow::Ice).knot_n.favourable, 0.0, "no knot bites in ice");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Kinds {
    /// See [`Snow::Soft`].
    pub soft: SnowFigures,
    /// See [`Snow::Settled`].
    pub settled: SnowFigures,
    /// See [`Snow::Firm`].
    pub firm: SnowFigures,
    /// See [`Snow::Refrozen`].
    pub refrozen: SnowFigures,
    /// See [`Snow::Ice`].
    pub ice: SnowFigures,
}

/// Figures of one kind of snow.
///
/// ```
/// use schrund::physics::{assumed::Assumed, hold_static::holders_needed};
///
/// let firm = Assumed::built_in()?.snow.firm;
/// let best = holders_needed(firm.lip.favourable, firm.mu_after.favourable, 0.0).expect("they hold");
/// let worst = holders_needed(firm.lip.adverse, firm.mu_after.adverse, 0.0).expect("they hold");
/// // On the flat 1/(λμ) people of the faller's own mass: 0.9 to 2.9 on firm firn, derived from the figures.
/// assert!((best - 0.9).abs() < 0.055 && (worst - 2.9).abs() < 0.055, "{best} to {worst}");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SnowFigures {
    /// Friction of a person pulled over, before braking.
    pub mu_before: Range,
    /// Friction of a person braking.
    pub mu_after: Range,
    /// Lip factor λ over a right angle.
    pub lip: Range,
    /// Force one knot bears at the lip, N.
    pub knot_n: Range,
}

/// A figure nobody knows better than from here to there.
///
/// ```
/// use schrund::physics::assumed::{Assumed, Corner};
///
/// let assumed = Assumed::built_in()?;
/// assert_eq!(assumed.slack_m.at(Corner::Central), 0.75, "the middle of 0 and 1.5 m where nothing else is given");
/// assert_eq!(assumed.break_point.at(Corner::Central), 0.5, "given: the middle of 0.25 and 1 is another");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Range {
    /// What it is, in a few words.
    pub says: String,
    /// Its unit; `1` for a plain number.
    pub unit: String,
    /// The end that makes holding harder.
    pub adverse: f64,
    /// The likeliest value where that is not the middle.
    pub central: Option<f64>,
    /// The end that makes holding easier.
    pub favourable: f64,
    /// How sure: a source key, `ours`, or `given` once replaced.
    pub standing: String,
}

/// One assumed figure, ready to be listed.
///
/// ```
/// use schrund::physics::assumed::{Assumed, AssumedFigure};
///
/// let mut assumed = Assumed::built_in()?;
/// let soft = |figure: &AssumedFigure<'_>| figure.name == "snow.soft.lip.adverse";
/// let lip = assumed.figures().find(soft).expect("it is listed");
/// assert_eq!((lip.value, lip.unit, lip.standing), (1.48, "1", "ours"));
/// let name = lip.name;
/// assumed.set(&name, 1.3)?;
/// assert_eq!(assumed.snow.soft.lip.adverse, 1.3, "the name it is listed under sets it");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct AssumedFigure<'a> {
    /// The name [`Assumed::set`] takes: `snow.soft.mu_after.adverse`.
    pub name: String,
    /// Its value.
    pub value: f64,
    /// Its unit; `1` for a plain number.
    pub unit: &'a str,
    /// How sure.
    pub standing: &'a str,
    /// What it is.
    pub says: &'a str,
}

impl Range {
    /// The value at one end or in between.
    #[must_use]
    pub fn at(&self, corner: Corner) -> f64 {
        match corner {
            Corner::Favourable => self.favourable,
            Corner::Adverse => self.adverse,
            Corner::Central => self
                .central
                .unwrap_or(0.5 * (self.adverse + self.favourable)),
        }
    }

    fn check(&self, name: &str, bound: Bound, more_is_better: bool) -> Result<(), Refusal> {
        let ends = [self.adverse, self.at(Corner::Central), self.favourable];
        for value in ends {
            bound.check(value).map_err(|out| out.under(name))?;
        }
        let [adverse, central, favourable] = ends;
        let in_order = if more_is_better {
            adverse <= central && central <= favourable
        } else {
            adverse >= central && central >= favourable
        };
        if in_order {
            return Ok(());
        }
        Err(Refusal::Disorder {
            name: name.to_owned(),
            adverse,
            central,
            favourable,
        })
    }
}

impl Kinds {
    /// The figures of one kind.
    #[must_use]
    pub fn of(&self, snow: Snow) -> &SnowFigures {
        match snow {
            Snow::Soft => &self.soft,
            Snow::Settled => &self.settled,
            Snow::Firm => &self.firm,
            Snow::Refrozen => &self.refrozen,
            Snow::Ice => &self.ice,
        }
    }

    fn of_mut(&mut self, snow: Snow) -> &mut SnowFigures {
        match snow {
            Snow::Soft => &mut self.soft,
            Snow::Settled => &mut self.settled,
            Snow::Firm => &mut self.firm,
            Snow::Refrozen => &mut self.refrozen,
            Snow::Ice => &mut self.ice,
        }
    }
}

impl Assumed {
    /// The assumptions that come with the program.
    ///
    /// # Errors
    /// Says so when the embedded file is broken; a test proves it is not.
    pub fn built_in() -> Result<Self, Refusal> {
        Self::from_toml(TEXT)
    }

    /// Assumptions from a text like `data/holding.toml`.
    ///
    /// # Errors
    /// Names what does not parse, lies outside what it can be, or stands in the wrong order.
    pub fn from_toml(text: &str) -> Result<Self, Refusal> {
        let assumed: Self = toml::from_str(text).map_err(|e| Refusal::BuiltIn(e.to_string()))?;
        assumed.check()?;
        Ok(assumed)
    }

    /// Whether every range lies within bounds, its ends in order.
    ///
    /// # Errors
    /// Names the first range that does not.
    pub fn check(&self) -> Result<(), Refusal> {
        for (name, range) in self.ranges() {
            let (bound, more_is_better) = limits(&name);
            range.check(&name, bound, more_is_better)?;
        }
        Ok(())
    }

    /// Every figure by the name [`Assumed::set`] takes, in the order of the file.
    pub fn figures(&self) -> impl Iterator<Item = AssumedFigure<'_>> {
        self.ranges().into_iter().flat_map(|(name, range)| {
            let corners = [
                ("adverse", Some(range.adverse)),
                ("central", range.central),
                ("favourable", Some(range.favourable)),
            ];
            corners.into_iter().filter_map(move |(end, value)| {
                Some(AssumedFigure {
                    name: format!("{name}.{end}"),
                    value: value?,
                    unit: &range.unit,
                    standing: &range.standing,
                    says: &range.says,
                })
            })
        })
    }

    /// Replaces a figure by name: `delay_s` both ends at once, `delay_s.adverse` one of them.
    /// Ends may pass each other on the way; [`Assumed::check`] tells whether they still do at the end.
    ///
    /// # Errors
    /// Says so when there is no such figure or the value is outside what it can be; nothing is changed then.
    pub fn set(&mut self, name: &str, value: f64) -> Result<(), Refusal> {
        let (whole, end) = match name.rsplit_once('.') {
            Some((whole, end @ ("adverse" | "central" | "favourable"))) => (whole, Some(end)),
            _ => (name, None),
        };
        let range = self
            .range_mut(whole)
            .ok_or_else(|| Refusal::Unknown(name.to_owned()))?;
        let (bound, _) = limits(whole);
        bound.check(value).map_err(|out| out.under(name))?;
        match end {
            Some("adverse") => range.adverse = value,
            Some("favourable") => range.favourable = value,
            Some(_) => range.central = Some(value),
            None => {
                range.adverse = value;
                range.favourable = value;
                range.central = None;
            }
        }
        "given".clone_into(&mut range.standing);
        Ok(())
    }

    /// One value for each parameter, each from the corner `corner_of` names.
    #[must_use]
    pub fn case(&self, snow: Snow, on_skis: bool, corner_of: impl Fn(Parameter) -> Corner) -> Case {
        let kind = self.snow.of(snow);
        let mu_before = if on_skis {
            &self.skis.mu_before
        } else {
            &kind.mu_before
        };
        Case {
            mu_before: mu_before.at(corner_of(Parameter::MuBefore)),
            mu_after: kind.mu_after.at(corner_of(Parameter::MuAfter)),
            lip: kind.lip.at(corner_of(Parameter::Lip)),
            knot_n: kind.knot_n.at(corner_of(Parameter::KnotForce)),
            knot_bite_m: self.knot_bite_m.at(corner_of(Parameter::KnotBite)),
            delay_s: self.delay_s.at(corner_of(Parameter::Delay)),
            slack_m: self.slack_m.at(corner_of(Parameter::Slack)),
            break_point: self.break_point.at(corner_of(Parameter::BreakPoint)),
            rope_damping: self.rope_damping.at(corner_of(Parameter::RopeDamping)),
        }
    }

    fn ranges(&self) -> Vec<(String, &Range)> {
        let mut all = vec![
            ("delay_s".to_owned(), &self.delay_s),
            ("slack_m".to_owned(), &self.slack_m),
            ("break_point".to_owned(), &self.break_point),
            ("rope_damping".to_owned(), &self.rope_damping),
            ("knot_bite_m".to_owned(), &self.knot_bite_m),
            ("skis.mu_before".to_owned(), &self.skis.mu_before),
        ];
        for snow in Snow::ALL {
            let kind = self.snow.of(snow);
            let name = |field: &str| format!("snow.{}.{field}", snow.as_str());
            all.push((name("mu_before"), &kind.mu_before));
            all.push((name("mu_after"), &kind.mu_after));
            all.push((name("lip"), &kind.lip));
            all.push((name("knot_n"), &kind.knot_n));
        }
        all
    }

    fn range_mut(&mut self, name: &str) -> Option<&mut Range> {
        match name {
            "delay_s" => return Some(&mut self.delay_s),
            "slack_m" => return Some(&mut self.slack_m),
            "break_point" => return Some(&mut self.break_point),
            "rope_damping" => return Some(&mut self.rope_damping),
            "knot_bite_m" => return Some(&mut self.knot_bite_m),
            "skis.mu_before" => return Some(&mut self.skis.mu_before),
            _ => {}
        }
        let (snow, field) = name.strip_prefix("snow.")?.split_once('.')?;
        let snow = Snow::ALL.into_iter().find(|s| s.as_str() == snow)?;
        let kind = self.snow.of_mut(snow);
        match field {
            "mu_before" => Some(&mut kind.mu_before),
            "mu_after" => Some(&mut kind.mu_after),
            "lip" => Some(&mut kind.lip),
            "knot_n" => Some(&mut kind.knot_n),
            _ => None,
        }
    }
}

/// What a range of this name must lie in, and whether more of it makes holding easier.
fn limits(name: &str) -> (Bound, bool) {
    match name.rsplit('.').next().unwrap_or(name) {
        "delay_s" => (bound::DELAY_S, false),
        "slack_m" => (bound::SLACK_M, false),
        "break_point" => (bound::SHARE, false),
        "rope_damping" => (bound::SHARE, true),
        "knot_bite_m" => (bound::LENGTH_M, true),
        "lip" => (bound::LIP, true),
        "knot_n" => (bound::FORCE_N, true),
        _ => (bound::MU, true),
    }
}
