//! What may be done otherwise than the rules in force say to make a rope fit: each change with the rules that it makes.

use crate::{
    legs::knots,
    plan::options::Change,
    practice::{Origin, Rule, Rules},
    trip::{party::ON_ONE_ROPE, rope::Rope},
};

/// A change, and the rules with it made.
pub(crate) type Changed = (Change, Rules);

/// Makes a change to rules, where it changes anything.
pub(crate) type Otherwise = fn(&Rules) -> Option<Changed>;

/// The rules as they are, and with every mix of changes.
pub(crate) fn mixes(rules: &Rules, makes: &[Otherwise]) -> Vec<(Vec<Change>, Rules)> {
    let mut mixes = vec![(Vec::new(), rules.clone())];
    for make in makes {
        for (changes, rules) in mixes.clone() {
            mixes.extend(make(&rules).map(|(change, changed)| {
                let changes = changes.into_iter().chain([change]);
                (changes.collect(), changed)
            }));
        }
    }
    mixes
}

/// Butterflies for brake knots, where they take less rope.
pub(crate) fn butterflies(rules: &Rules) -> Option<Changed> {
    let butterfly_m = rules[Rule::ButterflyRopeM];
    let shorter = butterfly_m < rules[Rule::KnotRopeM];
    let changed = with(rules, &[(Rule::KnotRopeM, butterfly_m)])?;
    shorter.then_some((Change::Butterflies, changed))
}

/// The tighter layout of brake knots, where that is another one.
pub(crate) fn tighter(rules: &Rules) -> Option<Changed> {
    let (first_m, step_m) = (rules[Rule::TightFirstM], rules[Rule::TightStepM]);
    let set = [(Rule::KnotFirstM, first_m), (Rule::KnotStepM, step_m)];
    let tight = with(rules, &set)?;
    let shorter = knots::layout_m(2, &tight) < knots::layout_m(2, rules);
    shorter.then_some((Change::TighterLayout { first_m, step_m }, tight))
}

/// A long sling in the drop loop.
pub(crate) fn long_sling(rules: &Rules) -> Option<Changed> {
    let sling_m = rules[Rule::LongSlingM];
    let changed = with(rules, &[(Rule::SlingM, sling_m)])?;
    (sling_m > rules[Rule::SlingM]).then_some((Change::LongSling { sling_m }, changed))
}

/// Nobody further apart than this, metres, unless a gap or a layout of knots asks for it.
pub(crate) fn closer(rules: &Rules, spacing_m: f64) -> Option<Changed> {
    let habits = ON_ONE_ROPE.map(Rule::base_spacing);
    let wider: Vec<_> = habits
        .filter(|habit| rules[*habit] > spacing_m)
        .map(|habit| (habit, spacing_m))
        .collect();
    let changed = with(rules, &wider)?;
    (!wider.is_empty()).then_some((Change::Closer { spacing_m }, changed))
}

/// Two ropes joined: `None` where a bend would leave nothing of them. The thicker diameter counts for what it weighs.
pub(crate) fn joined(first: &Rope, second: &Rope, rules: &Rules) -> Option<Rope> {
    let length_m = first.length_m + second.length_m - rules[Rule::JoinBendM];
    let across = [first.diameter_mm, second.diameter_mm];
    let assumed = |mm: Option<f64>| mm.unwrap_or(rules[Rule::RopeDiameterMm]);
    (length_m > 0.0).then(|| Rope {
        length_m,
        diameter_mm: across.map(assumed).into_iter().reduce(f64::max),
        name: None,
        joined: true,
    })
}

fn with(rules: &Rules, figures: &[(Rule, f64)]) -> Option<Rules> {
    let mut changed = rules.clone();
    for (rule, value) in figures {
        changed.set(*rule, *value, Origin::Flag).ok()?;
    }
    Some(changed)
}
