//! How wide the gaps of a zone are, and what to say about zones that do not tell.

use super::{
    Given, nowhere,
    number::GAP,
    properties::{Properties, number},
};
use crate::{
    fault::{Code, Level, Place, Problem},
    trip::zone::Gap,
};

/// Zones without a width that an error names before it only counts them; our judgement.
const NAMED: usize = 50;
/// The same for the warning about an assumed width; our judgement.
const NAMED_ASSUMED: usize = 10;

/// What a zone says about its gaps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Told {
    Width(Gap),
    /// No width, at most that it is not below this one.
    Nothing(Option<f64>),
    /// Something that is wrong and was complained about.
    Nonsense,
}

/// Reads `gap_m`, `gap_min_m` and `gap_max_m`; of all of them the widest counts.
pub(super) fn told(properties: &mut Properties, problems: &mut Vec<Problem>) -> Told {
    let mut met = Vec::new();
    let one = number(properties, "gap_m", &GAP, &mut met);
    let min = number(properties, "gap_min_m", &GAP, &mut met);
    let max = number(properties, "gap_max_m", &GAP, &mut met);
    let wrong = met.iter().any(|p| p.level() == Level::Error);
    problems.append(&mut met);
    if wrong {
        return Told::Nonsense;
    }
    let min_m = min.low.or(min.high).or(one.low).or(max.low);
    let (upper, differ) = match (one.high, max.high) {
        (Some(a), Some(b)) => (a.max(b), a < b || b < a),
        (Some(a), None) | (None, Some(a)) => (a, false),
        (None, None) => return Told::Nothing(min.high),
    };
    if differ {
        let says = format!("`gap_m` and `gap_max_m` differ: the wider one counts, {upper} m");
        problems.push(Problem::new(
            Code::WorseEnd,
            nowhere().with_property("gap_max_m"),
            says,
        ));
    }
    if let Some(low) = min_m.filter(|low| *low > upper) {
        let says = format!("the lower gap width {low} m is above the upper one, {upper} m");
        let place = nowhere().with_property("gap_min_m");
        problems.push(
            Problem::new(Code::RangeOrder, place, says).hint("correct the one that is wrong"),
        );
        return Told::Nonsense;
    }
    Told::Width(Gap {
        min_m,
        max_m: upper,
        assumed: false,
    })
}

/// The zones that give no width.
#[derive(Debug, Default)]
pub(super) struct Missing {
    named: Vec<String>,
    count: usize,
    /// Whether any of them gives a lower end, which counts where it is the wider one.
    some_lower_end: bool,
}

impl Missing {
    /// Remembers a zone, with the property in which its width may stand, or the lower end that was given.
    pub(super) fn add(&mut self, label: &str, near: Option<&str>, at_least_m: Option<f64>) {
        self.count += 1;
        if self.named.len() < NAMED {
            let told = match (near, at_least_m) {
                (Some(name), _) => format!(" (`{name}` is no name; write `gap_m`)"),
                (None, Some(low_m)) => format!(" (at least {low_m} m by `gap_min_m`)"),
                (None, None) => String::new(),
            };
            self.named.push(format!("{label}{told}"));
        }
        self.some_lower_end |= at_least_m.is_some();
    }

    /// The one complaint about all of them: an error, or a warning where a width was assumed.
    pub(super) fn problem(mut self, file: &str, given: &Given, zones: usize) -> Option<Problem> {
        if self.count == 0 {
            return None;
        }
        let place = Place::file(file).with_property("gap_m");
        let Some(gap_m) = given.gap_m else {
            let verb = if self.count == 1 {
                "zone gives"
            } else {
                "zones give"
            };
            let says = format!("{} {verb} no gap width: {}", self.count, self.list());
            return Some(Problem::new(Code::GapNotGiven, place, says).hint(
                "write `gap_m`, the width of the widest gap expected in metres, into the file, \
                 or say what to assume with `--gap`, such as `--gap 6`",
            ));
        };
        self.named.truncate(NAMED_ASSUMED);
        let who = match (self.count, zones) {
            (1, 1) => "the only zone, which gives none".to_owned(),
            (count, zones) if count == zones => format!("all {zones} zones, which give none"),
            (1, zones) => format!("1 of {zones} zones, which gives none"),
            (count, zones) => format!("{count} of {zones} zones, which give none"),
        };
        let lower = if self.some_lower_end {
            ", or the lower end given where that is wider,"
        } else {
            ""
        };
        let says = format!(
            "{gap_m} m{lower} assumed as the gap width of {who}: {}",
            self.list()
        );
        Some(
            Problem::new(Code::GapAssumed, place, says)
                .hint("write `gap_m` into the file where the ice is known"),
        )
    }

    fn list(&self) -> String {
        let named = self.named.join(", ");
        match self.count - self.named.len() {
            0 => named,
            more => format!("{named} and {more} more"),
        }
    }
}
