//! The plan on a terminal: every set-up once, drawn ropes, nothing wider than asked for.

use schrund::{plan::leg::MarkKind, say::voice::Voice, write::parts::rope_line};
use unicode_width::UnicodeWidthStr;

use crate::fixture::trip::Trip;

const ZONES: [&str; 3] = [
    "{\"gap_m\":4,\"snow_depth_m\":2}",
    "{\"gap_m\":17,\"snow_depth_m\":0.6}",
    "{\"gap_m\":4,\"snow_depth_m\":2}",
];

fn shown(trip: &Trip, width: usize) -> String {
    let mut planned = trip.planned();
    planned.look.width = width;
    planned.written("table")
}

#[test]
fn a_stranger_finds_rope_people_spacing_knots_and_what_is_not_planned_for() {
    let text = shown(
        &Trip::straight(&ZONES[..1])
            .party(&[82.0, 75.0])
            .ropes(&[80.0]),
        100,
    );
    for words in [
        "Leg 2: 2 people, 15 m apart, 69.2 m of rope 1 (80 m)",
        "rope      ~27.9~(1)─3─x─2─x─2─x─1─x─2─x─2─x─3─(2)~27.9~",
        "people    person 1 (82 kg), person 2 (75 kg); the first walks ahead",
        "3 from each end person, the first after 3 m, then every 2 m; snow deep",
        "27.9 m in the coil of each end person, 22.5 m of it needed; a drop loop from where the",
        "gaps      as tied: gaps to 10 m; re-tied 17.5 m apart: to 12.5 m; not covered: wider gaps",
    ] {
        assert!(text.contains(words), "no \"{words}\" in\n{text}");
    }
}

#[test]
fn legs_set_up_alike_share_a_block_and_lines_fit() {
    for people in 2..=5 {
        let made = Trip::straight(&ZONES)
            .party(&vec![80.0; people])
            .ropes(&[80.0, 60.0]);
        for width in [80, 100] {
            let text = shown(&made, width);
            let blocks = text.lines().filter(|l| l.starts_with("  Leg")).count();
            assert_eq!(blocks, 2, "{people} people:\n{text}");
            assert!(text.contains("  Legs 2, 6: "), "{text}");
            for line in text.lines() {
                assert!(line.width() <= width, "{} wide: {line}", line.width());
            }
        }
    }
}

#[test]
fn a_drawn_rope_is_as_long_as_its_ledger() {
    for people in 2..=5 {
        let plan = Trip::straight(&ZONES)
            .party(&vec![80.0; people])
            .ropes(&[80.0])
            .rules("knots = \"always\"")
            .plan();
        for setup in plan.legs.iter().flat_map(|l| &l.teams) {
            for width in [30, 86] {
                let lines = rope_line::drawn(setup, Voice::default(), width);
                assert!(lines.iter().all(|l| l.width() <= width), "{lines:?}");
                let drawn = lines.concat();
                assert_eq!(drawn.matches('x').count(), setup.knots.count, "{drawn}");
                assert_eq!(drawn.matches('(').count(), people, "{drawn}");
                let between = drawn
                    .split(['─', '~'])
                    .filter_map(|n| n.parse::<f64>().ok())
                    .sum::<f64>();
                let want = setup.ledger.spans_m + 2.0 * setup.coil_carried_m;
                // Each number drawn is rounded to a decimetre.
                assert!(
                    (between - want).abs()
                        <= 0.1 * f64::from(2 + u8::try_from(setup.knots.count).unwrap()),
                    "{drawn}: {between}, {want}"
                );
            }
        }
    }
}

/// A mark at a place that the rope does not have is one that nobody can tie.
#[test]
fn a_rope_too_short_is_drawn_and_marked_to_its_end_and_no_further() {
    for (people, rope_m) in [
        (2, 0.5),
        (2, 20.0),
        (2, 44.0),
        (3, 28.0),
        (3, 29.9),
        (4, 30.0),
    ] {
        let plan = Trip::straight(&ZONES[..1])
            .party(&vec![80.0; people])
            .ropes(&[rope_m])
            .plan();
        let setup = plan.legs.iter().find_map(|l| l.teams.first()).unwrap();
        let last = setup.marks.last().unwrap();
        assert_eq!((last.kind, last.at_m), (MarkKind::End, rope_m), "{people}");
        assert!(setup.marks.iter().all(|m| m.at_m <= rope_m), "{setup:?}");
        let ties = |kind| setup.marks.iter().filter(|m| m.kind == kind).count();
        let lost = |kind| setup.no_place.iter().filter(|m| m.kind == kind).count();
        assert_eq!(ties(MarkKind::TieIn) + lost(MarkKind::TieIn), people);
        let knots = ties(MarkKind::Knot) + lost(MarkKind::Knot);
        assert_eq!(knots, setup.knots.count, "each is on the rope or told");
        let short_m = setup.ledger.total_m - rope_m;
        assert!(
            setup
                .no_place
                .iter()
                .all(|none| none.missing_m <= short_m + 1e-9)
        );
        let drawn = rope_line::drawn(setup, Voice::default(), 500).concat();
        assert_eq!(drawn.matches('x').count(), ties(MarkKind::Knot), "{drawn}");
        assert_eq!(drawn.matches('(').count(), ties(MarkKind::TieIn), "{drawn}");
        assert!(drawn.contains("rope ends here, "), "{drawn}");
    }
}

/// Where nobody is roped no letter says that a rope goes on.
#[test]
fn letters_are_told_for_what_they_stand_for() {
    let legend = |zones: &[&str]| {
        let mut page = Trip::straight(zones)
            .people(3)
            .ropes(&[60.0])
            .planned()
            .first_page();
        page.look.width = 100;
        let all = page.written("table");
        let line = all.lines().find(|line| line.starts_with("Letters: "));
        line.expect("a legend").to_owned()
    };
    let never = "{\"gap_m\":4,\"snow_depth_m\":2,\"rope\":\"never\"}";
    assert_eq!(
        legend(&[never]),
        "Letters: ice begins that you go unroped, by your word. unroped: no ice drawn, or your word"
    );
    assert_eq!(
        legend(&ZONES[..1]),
        "Letters: rope on or off. Rope needed/carried. inside: no promise for falls. unroped: no ice drawn"
    );
    let askew = "{\"gap_m\":4,\"snow_depth_m\":2,\"strike_deg\":45}";
    let heads = |zone: &str| -> String {
        let planned = Trip::straight(&[zone]).ropes(&[60.0]).planned();
        let all = planned.first_page().written("table");
        let head = all.lines().find(|line| line.starts_with("leg "));
        head.expect("a head").to_owned()
    };
    assert!(heads(askew).contains(" gap (along) m "), "{}", heads(askew));
    assert!(heads(ZONES[0]).contains(" gap m "), "{}", heads(ZONES[0]));
}
