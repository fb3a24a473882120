//! The trip file: names with dots, tables, and figures out of order.

use schrund::{
    fault::Place,
    practice::{Origin, Rule, Rules},
    read::trip::{Laid, trip},
    say::{fault::says, voice::Voice},
};

use crate::fixture::trip::rules;

#[test]
fn dotted_names_may_be_quoted_or_tables_and_an_end_out_of_order_is_told() {
    let read = |text: &str| {
        let mut laid = Laid::of(rules());
        let trip = trip("trip.toml", text).unwrap();
        let place = Place::file("trip.toml");
        trip.lay_over(&mut laid, &place, &Origin::Trip)
            .map(|()| laid.rules)
    };
    let ways = [
        "[assume]\n\"snow.settled.mu_after.adverse\" = 0.5",
        "[assume]\nsnow.settled.mu_after.adverse = 0.5",
        "[assume.snow.settled.mu_after]\nadverse = 0.5",
    ];
    let rules: Vec<Rules> = ways.iter().map(|text| read(text).unwrap()).collect();
    assert!(
        rules.iter().all(|r| *r == rules[0]),
        "three ways to say the same"
    );
    assert!((rules[0].nature.assumed.snow.settled.mu_after.adverse - 0.5).abs() < 1e-12);
    assert!(
        (rules[0][Rule::MarginM] - 20.0).abs() < 1e-12,
        "nothing else is touched"
    );
    let told = |text: &str| {
        read(text)
            .unwrap_err()
            .iter()
            .map(|p| says(p, Voice::default()).to_string())
            .collect::<Vec<_>>()
    };
    assert_eq!(
        told("[assume]\ndelay_s.adverse = 0.1"),
        ["delay_s: adverse 0.1, central 0.35 and favourable 0.6 are out of order"]
    );
    assert_eq!(
        told("[assume]\nsnow.settled.mu = 1"),
        ["there is no figure \"snow.settled.mu\""]
    );
    assert_eq!(
        told("[assume]\nturn.karabiner = 2"),
        ["turn.karabiner: share 2 is outside 0 to 1"]
    );
}
