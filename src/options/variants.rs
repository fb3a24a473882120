//! What may be done otherwise to make a rope fit: butterflies, a tighter layout, a long sling, another practice set.

use crate::{
    plan::change::Change,
    practice::Rules,
    rope::otherwise::{self, Otherwise},
};

/// Some changes, and the rules with them made.
pub(super) type Variant = (Vec<Change>, Rules);

/// Rules under which the legs are other ones, and what makes them so: those in force and those under each practice set
/// that stands beside theirs, each also with the tighter layout of brake knots.
pub(super) fn bases(rules: &Rules) -> Vec<Variant> {
    let mut all = practices(rules);
    for (changes, rules) in all.clone() {
        all.extend(otherwise::tighter(&rules).map(|(change, tight)| {
            let changes = changes.iter().cloned().chain([change]);
            (changes.collect(), tight)
        }));
    }
    all
}

fn practices(rules: &Rules) -> Vec<Variant> {
    let under = |name: &String| {
        let other = rules.under_practice(name).ok()?;
        Some((vec![Change::Practice { name: name.clone() }], other))
    };
    std::iter::once((Vec::new(), rules.clone()))
        .chain(rules.beside.iter().filter_map(under))
        .collect()
}

/// The rules as they are and with every mix of changes under which the legs stay the same. Knots are changed only where
/// some are tied.
pub(super) fn of(rules: &Rules, ties_knots: bool) -> Vec<Variant> {
    let knots: &[Otherwise] = &[otherwise::butterflies, otherwise::long_sling];
    let other: &[Otherwise] = &[otherwise::long_sling];
    otherwise::mixes(rules, if ties_knots { knots } else { other })
}
