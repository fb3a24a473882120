//! What may be done otherwise than the rules in force say to make a rope fit: each change with the rules that it makes.

use crate::{
    legs::knots,
    plan::change::Change,
    practice::{Origin, Rule, Rules},
    rope::share,
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

/// The figures that a change sets, under the rules that it is made to; none where it is no matter of figures.
pub(crate) fn figures(change: &Change, rules: &Rules) -> Vec<(Rule, f64)> {
    match change {
        Change::Butterflies => vec![(Rule::KnotRopeM, rules[Rule::ButterflyRopeM])],
        Change::TighterLayout { first_m, step_m } => {
            vec![(Rule::KnotFirstM, *first_m), (Rule::KnotStepM, *step_m)]
        }
        Change::LongSling { sling_m } => vec![(Rule::SlingM, *sling_m)],
        Change::Closer { spacing_m } => {
            let habits = ON_ONE_ROPE.map(Rule::base_spacing);
            let wider = habits.filter(|habit| rules[*habit] > *spacing_m);
            wider.map(|habit| (habit, *spacing_m)).collect()
        }
        Change::Practice { .. } | Change::JoinedRopes { .. } => Vec::new(),
    }
}

/// Butterflies for brake knots, where they take less rope.
pub(crate) fn butterflies(rules: &Rules) -> Option<Changed> {
    let shorter = rules[Rule::ButterflyRopeM] < rules[Rule::KnotRopeM];
    made(Change::Butterflies, rules).filter(|_| shorter)
}

/// The tighter layout of brake knots, where that is another one.
pub(crate) fn tighter(rules: &Rules) -> Option<Changed> {
    let (first_m, step_m) = (rules[Rule::TightFirstM], rules[Rule::TightStepM]);
    let tighter = made(Change::TighterLayout { first_m, step_m }, rules);
    tighter.filter(|(_, tight)| knots::layout_m(2, tight) < knots::layout_m(2, rules))
}

/// A long sling in the drop loop.
pub(crate) fn long_sling(rules: &Rules) -> Option<Changed> {
    let sling_m = rules[Rule::LongSlingM];
    let longer = sling_m > rules[Rule::SlingM];
    made(Change::LongSling { sling_m }, rules).filter(|_| longer)
}

/// Nobody further apart than this, metres, unless a gap or a layout of knots asks for it.
pub(crate) fn closer(rules: &Rules, spacing_m: f64) -> Option<Changed> {
    let change = Change::Closer { spacing_m };
    let any = !figures(&change, rules).is_empty();
    made(change, rules).filter(|_| any)
}

/// Two ropes joined: `None` where a bend would leave nothing of them. The thicker diameter counts for what it weighs.
pub(crate) fn joined(first: &Rope, second: &Rope, rules: &Rules) -> Option<Rope> {
    let length_m = first.length_m + second.length_m - rules[Rule::JoinBendM];
    let across = [first.diameter_mm, second.diameter_mm];
    let assumed = |mm: Option<f64>| mm.unwrap_or(rules[Rule::RopeDiameterMm]);
    // What weighs most, unless one is as thin as cord: that is told of both.
    let cord = [first, second]
        .into_iter()
        .any(|rope| share::is_cord(rope, rules));
    let of_both = if cord { f64::min } else { f64::max };
    (length_m > 0.0).then(|| Rope {
        length_m,
        diameter_mm: across.map(assumed).into_iter().reduce(of_both),
        name: None,
        joined: true,
    })
}

fn made(change: Change, rules: &Rules) -> Option<Changed> {
    let mut changed = rules.clone();
    for (rule, value) in figures(&change, rules) {
        changed.set(rule, value, Origin::Flag).ok()?;
    }
    Some((change, changed))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::set::Source;

    /// The rules of a set with some figures of the leader's.
    fn rules(set: &str, figures: &[(Rule, f64)]) -> Rules {
        let mut rules = Rules::with_practice(&Source::Named(set)).unwrap();
        for (rule, value) in figures {
            rules.set(*rule, *value, Origin::Trip).unwrap();
        }
        rules
    }

    fn made(otherwise: Otherwise, figures: &[(Rule, f64)]) -> Option<Change> {
        otherwise(&rules("arm-span", figures)).map(|(change, _)| change)
    }

    #[test]
    fn a_change_is_offered_only_where_it_changes_something_for_the_better() {
        let (first_m, step_m, sling_m) = (2.0, 1.0, 2.4);
        assert_eq!(made(butterflies, &[]), Some(Change::Butterflies));
        assert_eq!(
            made(butterflies, &[(Rule::KnotRopeM, 0.6)]),
            None,
            "they take as much"
        );
        assert_eq!(
            made(butterflies, &[(Rule::KnotRopeM, 0.5)]),
            None,
            "they take more"
        );
        assert_eq!(
            made(tighter, &[]),
            Some(Change::TighterLayout { first_m, step_m })
        );
        let tight = [(Rule::KnotFirstM, first_m), (Rule::KnotStepM, step_m)];
        assert_eq!(made(tighter, &tight), None, "they are tied so");
        assert_eq!(
            made(tighter, &[tight[0], (Rule::KnotStepM, 0.5)]),
            None,
            "they are closer"
        );
        let more = [(Rule::TightStepM, step_m), (Rule::SlingM, 0.0)];
        assert_eq!(made(long_sling, &more), Some(Change::LongSling { sling_m }));
        assert_eq!(
            made(long_sling, &[(Rule::SlingM, sling_m)]),
            None,
            "it is there"
        );
        assert_eq!(
            made(long_sling, &[(Rule::SlingM, 3.0)]),
            None,
            "a longer one is there"
        );
    }

    #[test]
    fn nobody_walks_closer_than_the_habit_at_the_habit_itself() {
        // 13.7 m for all (published, `usap17`).
        let constant = rules("constant", &[]);
        assert!(closer(&constant, 13.7).is_none());
        let spacings_m = |changed: Option<Changed>| -> Vec<f64> {
            let (_, changed) = changed.expect("somebody walks closer");
            let habits = ON_ONE_ROPE.map(Rule::base_spacing);
            habits.map(|habit| changed[habit]).collect()
        };
        assert_eq!(spacings_m(closer(&constant, 13.5)), [13.5; 4]);
        // Four and five walk 10.8 and 9 m apart anyway (common practice).
        let closer = closer(&rules("arm-span", &[]), 11.0);
        assert_eq!(spacings_m(closer), [11.0, 11.0, 10.8, 9.0]);
    }

    #[test]
    fn a_bend_that_takes_both_ropes_joins_nothing() {
        let rope = |length_m: f64| Rope {
            length_m,
            diameter_mm: None,
            name: None,
            joined: false,
        };
        let joined_m = |a: f64, b: f64| joined(&rope(a), &rope(b), &rules("arm-span", &[]));
        assert!(joined_m(0.3, 0.3).is_none(), "0.6 m for the bend (ours)");
        let length_m = joined_m(30.0, 20.0).expect("joined").length_m;
        assert!((length_m - 49.4).abs() < 1e-9, "{length_m}");
    }
}
