//! What may be done otherwise to make a rope fit: butterflies, fewer knots, a long sling, another practice set.

use crate::practice::{Origin, Rule, Rules, set};

/// The rules with some changes, and the changes in words.
#[derive(Clone, Debug)]
pub(super) struct Variant {
    pub(super) rules: Rules,
    pub(super) changes: Vec<String>,
}

/// The rules in force, then those under each other embedded practice set.
pub(super) fn practices(rules: &Rules) -> Vec<(Vec<String>, Rules)> {
    let others = set::EMBEDDED
        .iter()
        .filter(|(name, _)| *name != rules.practice);
    let under = |(name, _): &(&str, &str)| {
        let other = rules.under_practice(name).ok()?;
        Some((vec![format!("practice set {name}")], other))
    };
    std::iter::once((Vec::new(), rules.clone()))
        .chain(others.filter_map(under))
        .collect()
}

/// The rules as they are and with every mix of changes. Knots are changed only where some are tied.
pub(super) fn of(rules: &Rules, ties_knots: bool) -> Vec<Variant> {
    let mut all = vec![Variant {
        rules: rules.clone(),
        changes: Vec::new(),
    }];
    if ties_knots {
        mix(&mut all, &[butterflies(rules)]);
        mix(&mut all, &fewer(rules));
    }
    mix(&mut all, &[long_sling(rules)]);
    all
}

/// A figure to be set, with the words for it.
type Change = (Rule, f64, String);

/// Adds every variant so far with one of the changes made.
fn mix(all: &mut Vec<Variant>, changes: &[Option<Change>]) {
    let so_far = all.clone();
    for (rule, value, words) in changes.iter().flatten() {
        for variant in &so_far {
            let mut changed = variant.clone();
            if changed.rules.set(*rule, *value, Origin::Flag).is_ok() {
                changed.changes.push(words.clone());
                all.push(changed);
            }
        }
    }
}

fn butterflies(rules: &Rules) -> Option<Change> {
    let butterfly_m = rules[Rule::ButterflyRopeM];
    let words = "butterflies for brake knots (they bite less)".to_owned();
    (butterfly_m < rules[Rule::KnotRopeM]).then_some((Rule::KnotRopeM, butterfly_m, words))
}

/// One knot fewer in each set, and so on down to one.
fn fewer(rules: &Rules) -> Vec<Option<Change>> {
    let asked = rules[Rule::KnotCount];
    std::iter::successors(Some(asked - 1.0), |n| Some(n - 1.0))
        .take_while(|n| *n >= 1.0)
        .map(|n| {
            let words = if n > 1.0 {
                format!("{n} brake knots in a set")
            } else {
                "one brake knot in a set".to_owned()
            };
            Some((Rule::KnotCount, n, words))
        })
        .collect()
}

fn long_sling(rules: &Rules) -> Option<Change> {
    let sling_m = rules[Rule::LongSlingM];
    let words = format!("a long sling of {sling_m} m in the drop loop");
    (sling_m > rules[Rule::SlingM]).then_some((Rule::SlingM, sling_m, words))
}
