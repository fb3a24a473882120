//! Where a line turns back on itself, on lines whose turns are known as they are drawn.

use schrund::{
    geometry::LonLat,
    meet::turns::{TurnBack, turns},
};

use crate::fixture::{
    any::{at, stage},
    close,
};

type Spot = (f64, f64);

const NEAR_M: f64 = 20.0;
const LEAST_M: f64 = 300.0;

fn found(spots: &[Spot]) -> Vec<TurnBack> {
    let points: Vec<LonLat> = spots.iter().map(|(x, y)| at(*x, *y)).collect();
    turns(&stage(&points), NEAR_M, LEAST_M)
}

#[track_caller]
fn only(spots: &[Spot]) -> TurnBack {
    let found = found(spots);
    assert_eq!(found.len(), 1, "{found:?}");
    found[0]
}

/// Out over these spots and back over the same.
fn out_and_back(out: &[Spot]) -> Vec<Spot> {
    out.iter()
        .chain(out.iter().rev().skip(1))
        .copied()
        .collect()
}

/// A kilometre north to a square that stands on its corner, round it, and back.
fn round_a_square(side_m: f64) -> Vec<Spot> {
    let half_m = side_m * std::f64::consts::FRAC_1_SQRT_2;
    vec![
        (0.0, 0.0),
        (0.0, 1000.0),
        (half_m, 1000.0 + half_m),
        (0.0, 1000.0 + 2.0 * half_m),
        (-half_m, 1000.0 + half_m),
        (0.0, 1000.0),
        (0.0, 0.0),
    ]
}

#[test]
fn who_goes_round_no_farther_than_two_ways_may_part_turns_at_the_far_corner() {
    // Each of two who part may go 300 m alone: half of a loop of 600 m.
    let turn = only(&round_a_square(150.0));
    close("the far corner", turn.at_m, 1000.0 + 300.0, 0.1);
    close("down to the begin", turn.back_m, 300.0 + 1000.0, NEAR_M);
    assert_eq!(found(&round_a_square(250.0)), [], "half of it is 500 m");
}

#[test]
fn the_tip_is_what_lies_farthest_from_the_line_shortly_before_it() {
    // From the east, round a bend, 200 m north to a loop. From where the line was half of 300 m earlier, 150 m south of the
    // loop, its northern corner is farther (290 m) than its western (208 m). Seen from the loop's own begin, from its
    // northern corner, from the bend or from the begin of the line the western corner would be.
    let north_m = 140.0;
    let before = [(1000.0, -200.0), (0.0, -200.0), (0.0, 0.0)];
    let mut line = before.to_vec();
    line.extend([(0.0, north_m), (-170.0, -30.0)]);
    line.extend(before.iter().rev());
    close("north", only(&line).at_m, 1200.0 + north_m, 0.1);
}

#[test]
fn the_way_back_is_followed_to_within_half_of_what_is_near() {
    // However the length falls on the steps: the last of them is at most 10 m before the end.
    for extra in 0..8_u32 {
        let top_m = 1000.0 + 2.5 * f64::from(extra);
        let turn = only(&[(0.0, 0.0), (0.0, top_m), (0.0, 0.0)]);
        close("at the top", turn.at_m, top_m, 0.1);
        close(
            "all of it",
            turn.back_m,
            top_m - NEAR_M / 4.0,
            NEAR_M / 4.0 + 0.1,
        );
    }
}

#[test]
fn a_short_hairpin_before_a_turn_hides_nothing_of_it() {
    // A spur of 40 m on the way out, which is not gone into again, and a turn 400 m from the begin.
    let line = [
        (0.0, 0.0),
        (0.0, 100.0),
        (40.0, 100.0),
        (0.0, 100.0),
        (0.0, 400.0),
        (0.0, 0.0),
    ];
    close("at the top", only(&line).at_m, 480.0, 0.1);
}

#[test]
fn two_ways_go_on_as_one_only_where_each_is_alone_for_no_longer_than_asked() {
    // 200 m along each other, a lens with so many metres on either side, and 200 m along each other again.
    let lens = |side_m: f64| {
        let half_m = side_m / 2.0;
        let (x, y) = (half_m * 0.6, half_m * 0.8);
        let (low, high) = (200.0, 200.0 + 2.0 * y);
        vec![
            (0.0, 0.0),
            (0.0, low),
            (x, low + y),
            (0.0, high),
            (0.0, high + 200.0),
            (0.0, high),
            (-x, low + y),
            (0.0, low),
            (0.0, 0.0),
        ]
    };
    // Neither 200 m alone are enough for a turn; both together are.
    let top_m = 200.0 + 260.0 + 200.0;
    let turn = only(&lens(260.0));
    close("at the top", turn.at_m, top_m, 0.1);
    close("to the begin", turn.back_m, top_m, NEAR_M);
    assert_eq!(
        found(&lens(400.0)),
        [],
        "twice 200 m, and nothing that joins them"
    );
}

#[test]
fn what_is_walked_to_and_fro_within_a_few_metres_is_not_the_way_back() {
    // A spur of 200 m, on one of the two ways in zigzags of 16 m each: three times as far.
    let zigzag = |i: i32| (if i % 2 == 0 { 7.5 } else { -7.5 }, 5.0 * f64::from(i));
    let zigzag: Vec<Spot> = (0..=40).map(zigzag).collect();
    let back = zigzag.iter().rev().copied();
    let from_west = [(-600.0, 0.0), (0.0, 0.0)];
    let to_east = [(0.0, 0.0), (600.0, 0.0)];
    let back_in_zigzags: Vec<Spot> = from_west.into_iter().chain(back).chain(to_east).collect();
    let out_in_zigzags: Vec<Spot> = from_west.into_iter().chain(zigzag).chain(to_east).collect();
    assert_eq!(found(&back_in_zigzags), [], "200 m out");
    assert_eq!(found(&out_in_zigzags), [], "200 m back");
}

#[test]
fn who_is_about_one_place_for_twice_the_least_on_either_way_did_not_turn_there() {
    // 500 m to a field of rows 11 m apart, all within 150 m, through it to its end, and the same way back.
    let rows = |count: i32| {
        let mut out = vec![(0.0, -500.0)];
        for row in 0..count {
            let y = 11.0 * f64::from(row);
            let ends = [(0.0, y), (98.0, y)];
            out.extend(if row % 2 == 0 {
                ends
            } else {
                [ends[1], ends[0]]
            });
        }
        let points: Vec<LonLat> = out_and_back(&out).iter().map(|(x, y)| at(*x, *y)).collect();
        let stage = stage(&points);
        (turns(&stage, 10.0, 301.0), stage.length_m() / 2.0)
    };
    // 643 m of rows: two who begin 150 m from their end are away from there before they walked 602 m each.
    let (few, middle_m) = rows(6);
    assert_eq!(few.len(), 1, "{few:?}");
    close("among the rows", few[0].at_m, middle_m, 643.0);
    close(
        "out of them",
        few[0].at_m + few[0].back_m,
        2.0 * middle_m,
        10.0,
    );
    // 1188 m of rows: two who begin near each other do so at most 310 m from the end, and after 602 m are still among them.
    assert_eq!(rows(11).0, [], "nobody gets away from them");
}

#[test]
fn a_line_of_a_thousand_kilometres_is_not_followed_and_one_of_nine_hundred_is() {
    let line = |km: f64| {
        let lat = 46.0 + km / 2.0 / 111.3;
        stage(&[46.0, lat, 46.0].map(|lat| LonLat::new(8.0, lat)))
    };
    let (shorter, longer) = (line(900.0), line(1020.0));
    assert!(shorter.length_m() < 1e6 && longer.length_m() > 1e6);
    assert_eq!(turns(&shorter, 1000.0, 5000.0).len(), 1);
    assert_eq!(turns(&longer, 1000.0, 5000.0), []);
}

#[test]
fn the_least_that_is_near_is_two_metres() {
    let line = stage(&[at(0.0, 0.0), at(0.0, 400.0), at(0.0, 0.0)]);
    assert_eq!(turns(&line, 2.0, LEAST_M).len(), 1);
    assert_eq!(turns(&line, 1.99, LEAST_M), [], "no receiver is so good");
}

#[test]
fn where_any_way_back_counts_a_short_one_is_told() {
    let line = stage(&[at(0.0, 0.0), at(0.0, 150.0), at(0.0, 0.0)]);
    let found = turns(&line, NEAR_M, 0.0);
    assert_eq!(found.len(), 1, "{found:?}");
    close("at the top", found[0].at_m, 150.0, 0.1);
}

#[test]
fn a_way_back_is_counted_in_steps_and_one_of_just_the_least_is_no_turn() {
    // Steps of 10 m, and two who begin five steps apart round the top: of 330 m they walk 30 together, of 340 m 31.
    let up = |top_m: f64| found(&[(0.0, 0.0), (0.0, top_m), (0.0, 0.0)]);
    assert_eq!(up(330.0), [], "300 m");
    assert_eq!(up(340.0).len(), 1, "310 m");
}

#[test]
fn a_step_that_falls_on_the_end_of_a_line_is_none_of_its_places() {
    let line = stage(&[at(0.0, 0.0), at(0.0, 640.0), at(0.0, 0.0)]);
    // Half of what is near is a step: 128 of them to the bit.
    let step_m = line.length_m() / 128.0;
    let found = turns(&line, 2.0 * step_m, LEAST_M);
    assert_eq!(found.len(), 1, "{found:?}");
    close("a step less", found[0].back_m, 63.0 * step_m, 0.1);
}

#[test]
fn a_hairpin_shortly_before_a_turn_is_no_turn_of_its_own() {
    // 30 m aside and back, 50 m before the top.
    let line = [
        (0.0, 0.0),
        (0.0, 300.0),
        (30.0, 300.0),
        (0.0, 300.0),
        (0.0, 350.0),
        (0.0, 0.0),
    ];
    close("at the top", only(&line).at_m, 410.0, 0.1);
}

#[test]
fn five_steps_behind_a_place_where_a_line_did_not_turn_it_is_tried_again() {
    // Aside after 305 m: from 350 m on, the line is near that place and does not go back there. Two who set out from 400 m walk
    // 31 steps of 10 m together up to the end, a step later 300 m, which are not more than the least.
    let line = [
        (0.0, 0.0),
        (0.0, 305.0),
        (30.0, 305.0),
        (0.0, 305.0),
        (0.0, 330.0),
        (0.0, 0.0),
    ];
    close("at the top", only(&line).at_m, 390.0, 0.1);
}

#[test]
fn who_is_about_one_place_for_no_more_than_twice_the_least_turned_there() {
    // To a field of rows 25 m apart, through it to its end, and the same way back. Were two who walk back together given up
    // after just 600 m about it, and not behind them, the turn would be told 130 m from the end (by trial).
    let field = [
        (104.0, 700.0),
        (104.0, 100.0),
        (0.0, 100.0),
        (0.0, 75.0),
        (104.0, 75.0),
        (104.0, 50.0),
        (0.0, 50.0),
        (0.0, 25.0),
        (104.0, 25.0),
        (104.0, 0.0),
        (0.0, 0.0),
        (20.0, -18.0),
    ];
    let end_m = 600.0 + 5.0 * 104.0 + 4.0 * 25.0 + 20_f64.hypot(18.0);
    close("at the end", only(&out_and_back(&field)).at_m, end_m, 0.5);
}

#[test]
fn a_way_back_is_followed_for_ten_thousand_steps_and_one_more() {
    // Steps of 1 m; two set out 2 m behind the top.
    let line = stage(&[at(0.0, 0.0), at(0.0, 10_100.0), at(0.0, 0.0)]);
    let found = turns(&line, 2.0, LEAST_M);
    let [turn] = found[..] else {
        panic!("one: {found:?}")
    };
    let set_out_m = (turn.at_m + 1.5).ceil() - turn.at_m;
    close("back", turn.back_m, set_out_m + 10_001.0, 0.6);
}
