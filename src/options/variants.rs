//! What may be done otherwise to make a rope fit: butterflies, a tighter layout, a long sling, another practice set.

use crate::legs::knots;
use crate::plan::options::Change;
use crate::practice::{Origin, Rule, Rules};

/// The rules with some changes, and the changes in words.
#[derive(Clone, Debug)]
pub(super) struct Variant {
    pub(super) rules: Rules,
    pub(super) changes: Vec<Change>,
}

/// Rules under which the legs are other ones, and what makes them so: those in force and those under each practice set
/// that stands beside theirs, each also with the tighter layout of brake knots.
pub(super) fn bases(rules: &Rules) -> Vec<(Vec<Change>, Rules)> {
    let mut all = practices(rules);
    for (changes, rules) in all.clone() {
        all.extend(tighter(&rules).map(|(change, tight)| {
            let changes = changes.iter().cloned().chain([change]);
            (changes.collect(), tight)
        }));
    }
    all
}

fn practices(rules: &Rules) -> Vec<(Vec<Change>, Rules)> {
    let under = |name: &String| {
        let other = rules.under_practice(name).ok()?;
        Some((vec![Change::Practice { name: name.clone() }], other))
    };
    std::iter::once((Vec::new(), rules.clone()))
        .chain(rules.beside.iter().filter_map(under))
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
    }
    mix(&mut all, &[long_sling(rules)]);
    all
}

/// A figure to be set, and the change that it is.
type FigureChange = (Rule, f64, Change);

/// Adds every variant so far with one of the changes made.
fn mix(all: &mut Vec<Variant>, changes: &[Option<FigureChange>]) {
    let so_far = all.clone();
    for (rule, value, change) in changes.iter().flatten() {
        for variant in &so_far {
            let mut changed = variant.clone();
            if changed.rules.set(*rule, *value, Origin::Flag).is_ok() {
                changed.changes.push(change.clone());
                all.push(changed);
            }
        }
    }
}

fn butterflies(rules: &Rules) -> Option<FigureChange> {
    let butterfly_m = rules[Rule::ButterflyRopeM];
    let set = (Rule::KnotRopeM, butterfly_m, Change::Butterflies);
    (butterfly_m < rules[Rule::KnotRopeM]).then_some(set)
}

/// The rules with the tighter layout of brake knots, where that is another one.
fn tighter(rules: &Rules) -> Option<(Change, Rules)> {
    let (first_m, step_m) = (rules[Rule::TightFirstM], rules[Rule::TightStepM]);
    let mut tight = rules.clone();
    tight.set(Rule::KnotFirstM, first_m, Origin::Flag).ok()?;
    tight.set(Rule::KnotStepM, step_m, Origin::Flag).ok()?;
    let shorter = knots::layout_m(2, &tight) < knots::layout_m(2, rules);
    shorter.then_some((Change::TighterLayout { first_m, step_m }, tight))
}

fn long_sling(rules: &Rules) -> Option<FigureChange> {
    let sling_m = rules[Rule::LongSlingM];
    let set = (Rule::SlingM, sling_m, Change::LongSling { sling_m });
    (sling_m > rules[Rule::SlingM]).then_some(set)
}
