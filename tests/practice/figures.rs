//! Which figures a plan can rest on: what belongs to another pace, travel or reserve is not listed.

use schrund::practice::{Pace, Reserve, Rule, Rules, Travel, set::Source};

const REACH: [&str; 3] = ["reach_factor", "loop_ends_m", "sling_m"];
const COILS: [&str; 5] = [
    "chest_coil_m",
    "chest_coils_2",
    "chest_coils_3",
    "chest_coils_4",
    "chest_coils_5",
];
const DIN: [&str; 3] = ["walk_kmh", "climb_m_per_h", "descend_m_per_h"];
const DIN_ON_SKIS: [&str; 2] = ["descend_on_skis_m_per_h", "descend_roped_on_skis_m_per_h"];
const MUNTER: [&str; 2] = ["munter_up", "munter_down"];
const MUNTER_ON_SKIS: [&str; 2] = ["munter_ski_down", "munter_ski_down_roped"];
const NAISMITH: [&str; 2] = ["naismith_kmh", "naismith_m_per_h"];
const SNOWSHOES: [&str; 1] = ["snowshoe_factor"];

/// Every figure that hangs on a choice, with whether it is one of the plan's.
fn hanging(pace: Pace, travel: Travel, reserve: Reserve) -> Vec<(&'static str, bool)> {
    let on_skis = travel == Travel::Ski;
    let groups: [(&[&str], bool); 8] = [
        (&REACH, reserve == Reserve::Reach),
        (&COILS, reserve == Reserve::ChestCoils),
        (&DIN, pace == Pace::Din),
        (&DIN_ON_SKIS, pace == Pace::Din && on_skis),
        (&MUNTER, pace == Pace::Munter),
        (&MUNTER_ON_SKIS, pace == Pace::Munter && on_skis),
        (&NAISMITH, pace == Pace::Naismith),
        (&SNOWSHOES, travel == Travel::Snowshoe),
    ];
    let each = groups
        .into_iter()
        .flat_map(|(names, listed)| names.iter().map(move |name| (*name, listed)));
    each.collect()
}

#[test]
fn only_figures_of_the_chosen_pace_travel_and_reserve_are_listed() {
    let mut rules = Rules::with_practice(&Source::Named("arm-span")).expect("an embedded set");
    for pace in [Pace::Din, Pace::Munter, Pace::Naismith] {
        for travel in [Travel::Foot, Travel::Ski, Travel::Snowshoe] {
            for reserve in [Reserve::Reach, Reserve::ChestCoils] {
                rules.choices.pace.value = pace;
                rules.choices.travel.value = travel;
                rules.choices.reserve.value = reserve;
                let hanging = hanging(pace, travel, reserve);
                let left_out = |name: &str| hanging.contains(&(name, false));
                let all = Rule::ALL.iter().map(|rule| rule.name());
                let want: Vec<&str> = all.filter(|name| !left_out(name)).collect();
                let listed = rules.figures().map(|figure| figure.rule.name());
                let listed: Vec<&str> = listed.collect();
                assert_eq!(listed, want, "{pace:?}, {travel:?}, {reserve:?}");
            }
        }
    }
}
