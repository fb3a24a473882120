//! Belays that legs ask for: how many are counted, and the hours with them.

use proptest::prelude::*;
use schrund::plan::{
    Plan,
    belay::LegBelays,
    clock::{Backwards, StageClock},
};

use crate::{
    fixture::{
        ground::tilted,
        planned::codes,
        trip::{NORTHWARD, SNOW, Trip},
    },
    times::{
        backwards::{any_trip, with},
        inside::same,
    },
};

fn stage(plan: &Plan) -> &StageClock {
    &plan.clock.as_ref().expect("a start").first
}

fn without(plan: &Plan) -> Option<Backwards> {
    stage(plan).belays.as_ref().map(|belays| belays.without)
}

/// Four kilometres on level ground with a start at four, gaps under snow from 1000 to 1830 m: a pair holds no fall on hard
/// snow there. 830 m are nine belays of twelve minutes.
#[test]
fn a_belay_is_counted_for_every_hundred_metres_that_ask_for_it() {
    let line: Vec<(f64, f64)> = (0..=40).map(|i| (0.0, 100.0 * f64::from(i))).collect();
    let trip =
        Trip::along(&line)
            .heights(|_, _| 2500.0)
            .zone((-300.0, 1000.0), (300.0, 1830.0), SNOW);
    let hours =
        "start = \"04:00\"\nbridges_until = \"10:00\"\nback_by = \"12:00\"\nsnow = \"refrozen\"\n";
    let soft = hours.replace("refrozen", "soft");
    let three = trip.clone().rules(&soft).plan();
    assert!(three.legs.iter().all(|leg| leg.belays.is_none()), "held");
    assert_eq!(stage(&three).belays, None);
    assert_eq!(three.route.time.belay_min, 0.0);

    let plan = trip.party(&[82.0, 75.0]).rules(hours).plan();
    let roped = plan.legs.iter().find(|leg| leg.roped).expect("roped");
    assert!(codes(&roped.findings).contains(&"fall-held-in-none"));
    let belays = roped.belays.as_ref().expect("asked for");
    let [piece] = belays.pieces[..] else {
        panic!("{belays:?}");
    };
    let length_m = piece.to_m - piece.from_m;
    // The invented frame errs by a few metres.
    assert!((length_m - 830.0).abs() < 5.0, "{piece:?}");
    assert_eq!((belays.belays, piece.belays), (9, 9));
    // Six minutes for the anchor and three for each of two.
    let min = 9.0 * 12.0;
    assert_eq!(belays.minutes, min);

    let (with, without) = (stage(&plan).as_planned, without(&plan).expect("asked for"));
    assert_eq!(plan.route.time.belay_min, min);
    let later = |of: fn(Backwards) -> Option<schrund::trip::clock::Clock>| {
        of(with).expect("an hour").min() - of(without).expect("an hour").min()
    };
    assert!((later(|b| b.arrival) - min).abs() < 1e-6);
    assert!((later(|b| b.latest_start) + min).abs() <= 1.0);
    // Nobody is told to go on to ice on which roping up is no answer.
    for times in [with, without] {
        let turn = times.turn_round.expect("before that leg");
        assert_eq!(turn.before, Some(roped.leg));
        assert!((turn.at_m - roped.start_m).abs() < 1e-6, "{turn:?}");
    }
}

/// On ground of 48° a belay is counted for every thirty metres, and none again for the fall that is not held there.
#[test]
fn steep_ground_is_belayed_from_rope_length_to_rope_length() {
    let trip = Trip::along(&NORTHWARD)
        .middle(SNOW)
        .heights(tilted(48.0, 180.0));
    let plan = trip.plan();
    let leg = plan.legs.iter().find(|leg| leg.roped).expect("roped");
    assert!(codes(&leg.findings).contains(&"too-steep-to-rope-without-anchors"));
    let LegBelays { belays, pieces, .. } = leg.belays.as_ref().expect("asked for");
    let steep = leg.stretches.iter();
    let steep = steep.filter(|s| s.code == "too-steep-to-rope-without-anchors");
    let steep_m: f64 = steep.map(|s| s.to_m - s.from_m).sum();
    let whole = |count: &usize| f64::from(u32::try_from(*count).expect("few"));
    let on_steep = pieces
        .iter()
        .find(|p| (p.to_m - p.from_m - steep_m).abs() < 1e-6);
    let on_steep = on_steep.expect("the steep piece");
    assert_eq!(whole(&on_steep.belays), (steep_m / 30.0 - 1e-9).ceil());
    let others_m: f64 = leg.length_m - steep_m;
    let most = whole(&on_steep.belays) + (others_m / 100.0).ceil() + 1.0;
    assert!(whole(belays) <= most, "{pieces:?}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Belays that take no time change no hour, and others take theirs, out and back.
    #[test]
    fn belays_take_their_minutes(made in any_trip(), each_min in 1.0..40.0_f64, hard in any::<bool>()) {
        let plan = |each_min: f64| {
            let words = with(&[], "05:00");
            let snow = if hard { "refrozen" } else { "settled" };
            let assume = format!(
                "snow = \"{snow}\"\n{words}[assume]\nbelay_min = {each_min}\nbelay_each_min = 0"
            );
            made.trip().party(&[95.0, 62.0]).rules(&assume).plan()
        };
        let (none, some) = (plan(0.0), plan(each_min));
        let (Some(without), Some(belays)) = (without(&none), stage(&some).belays.as_ref()) else {
            return Ok(());
        };
        same(stage(&none).as_planned, without)?;
        same(without, belays.without)?;
        let planned = stage(&some).as_planned;
        let min = |b: Backwards| b.arrival.map_or(0.0, |at| at.min());
        prop_assert!((min(planned) - min(without) - belays.minutes).abs() < 1e-6);
        let ends = some.legs.last().and_then(|leg| leg.end_clock).map_or(0.0, |at| at.min());
        prop_assert!((ends - min(planned)).abs() < 1e-6);
        let count = f64::from(u32::try_from(belays.belays).expect("few"));
        prop_assert!((belays.minutes - each_min * count).abs() < 1e-6);
        let far_m = |b: Backwards| b.turn_round_back_by.or(b.turn_round).map_or(0.0, |t| t.at_m);
        prop_assert!(far_m(planned) <= far_m(without) + 1e-6, "{:?} {:?}", planned, without);
    }
}
