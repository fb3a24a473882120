//! How wide the gaps of a zone are, and what to say about zones that do not tell.

use super::{
    given::Given,
    number::GAP,
    properties::{self, NearMiss, Properties, number},
};
use crate::{
    fault::{
        Fault, Item, Level, Place,
        geojson::{InGeojson, Silent, Widthless},
    },
    trip::zone::Gap,
};

/// Zones without a width that are named before they are only counted; our judgement.
const NAMED: usize = 10;

/// A gap that is narrower, metres, may have been given in another unit. \[ours\]
const NARROW_M: f64 = 0.08;

/// What a zone says about its gaps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum GapTold {
    Width(Gap),
    /// No width.
    Nothing(NotGiven),
    /// Something that is wrong and was complained about.
    Nonsense,
}

/// What is known of gaps whose width nobody gave.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct NotGiven {
    /// They are not below this one, metres.
    pub(super) at_least_m: Option<f64>,
    /// A width stands there that was assumed, by `gap_assumed`.
    pub(super) guessed: bool,
}

/// Reads `gap_m`, `gap_min_m` and `gap_max_m`; of all of them the widest counts. What `gap_assumed` says was assumed is no
/// width: a guess that a plan wrote out does not come back as something that was given.
pub(super) fn told(properties: &mut Properties, faults: &mut Vec<Fault>) -> GapTold {
    let mut met = Vec::new();
    let one = number(properties, "gap_m", GAP, &mut met);
    let min = number(properties, "gap_min_m", GAP, &mut met);
    let max = number(properties, "gap_max_m", GAP, &mut met);
    let guessed = match properties.word("gap_assumed", &properties::TRUTHS) {
        Ok(guessed) => guessed,
        Err(fault) => {
            met.push(fault);
            false
        }
    };
    let wrong = met.iter().any(|p| p.level() == Level::Error);
    faults.append(&mut met);
    if wrong {
        return GapTold::Nonsense;
    }
    if guessed {
        return GapTold::Nothing(NotGiven {
            at_least_m: min.high,
            guessed,
        });
    }
    let min_m = min.low.or(min.high).or(one.low).or(max.low);
    let (upper, differ) = match (one.high, max.high) {
        (Some(a), Some(b)) => (a.max(b), a < b || b < a),
        (Some(a), None) | (None, Some(a)) => (a, false),
        (None, None) => {
            return GapTold::Nothing(NotGiven {
                at_least_m: min.high,
                guessed,
            });
        }
    };
    if differ {
        let place = Place::default().with_property("gap_max_m");
        faults.push(Fault::new(InGeojson::GapsDiffer(upper), place));
    }
    if let Some(low_m) = min_m.filter(|low| *low > upper) {
        let crossed = InGeojson::GapsCrossed {
            low_m,
            high_m: upper,
        };
        let place = Place::default().with_property("gap_min_m");
        faults.push(Fault::new(crossed, place));
        return GapTold::Nonsense;
    }
    if (f64::MIN_POSITIVE..NARROW_M).contains(&upper) {
        let property = match max.high {
            Some(widest) if widest >= upper => "gap_max_m",
            _ => "gap_m",
        };
        let place = Place::default().with_property(property);
        faults.push(Fault::new(InGeojson::GapNarrow(upper), place));
    }
    GapTold::Width(Gap {
        min_m,
        max_m: upper,
        assumed: false,
    })
}

/// Properties of theirs that are named. \[ours\]
const FOUND: usize = 8;

/// The zones that give no width.
#[derive(Debug, Default)]
pub(super) struct Missing(Widthless);

impl Missing {
    /// Remembers a zone, with the property in which its width may stand, or the lower end that was given.
    pub(super) fn add<'p>(
        &mut self,
        feature: &Item,
        near: Option<&NearMiss>,
        not_given: NotGiven,
        others: impl Iterator<Item = &'p String>,
    ) {
        let NotGiven {
            at_least_m,
            guessed,
        } = not_given;
        self.0.count += 1;
        self.0.guessed += usize::from(guessed);
        self.0.lower_end |= at_least_m.is_some();
        for other in others.filter(|_| near.is_none() && !guessed) {
            let found = &mut self.0.found;
            if found.len() < FOUND && !found.contains(other) {
                found.push(other.clone());
            }
        }
        if self.0.named.len() < NAMED {
            self.0.named.push(Silent {
                feature: feature.clone(),
                near: near.map(|miss| miss.given.clone()),
                unit: near.and_then(|miss| miss.unit),
                at_least_m,
                guessed,
            });
        }
    }

    /// The one complaint about all of them: an error, or a warning where a width was assumed.
    pub(super) fn fault(self, file: &str, given: &Given, of: usize) -> Option<Fault> {
        let zones = self.0;
        if zones.count == 0 {
            return None;
        }
        let what = match given.gap_m {
            Some(gap_m) => InGeojson::GapAssumed { gap_m, zones, of },
            None => InGeojson::GapNotGiven(zones),
        };
        let place = Place::file(file).with_property("gap_m");
        Some(Fault::new(what, place))
    }
}
