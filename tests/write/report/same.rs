//! Set-ups drawn once for all legs and teams that share them, and never for those that do not.

use scraper::Html;

use crate::fixture::{
    page::select,
    trip::{SNOW, Trip},
};

fn drawn(trip: &Trip) -> usize {
    let page = Html::parse_document(&trip.planned().written("html"));
    select(&page, "article.rope").len()
}

#[test]
fn teams_on_ropes_of_their_own_are_drawn_each() {
    // Eight are two teams of four, set up alike.
    let eight = Trip::straight(&[SNOW]).people(8);
    assert_eq!(drawn(&eight), 1, "a length sold is the same for both");
    assert_eq!(drawn(&eight.clone().ropes(&[60.0, 60.0])), 2, "two ropes");
    assert_eq!(drawn(&eight.ropes(&[60.0, 70.0])), 2, "of two lengths");
}

#[test]
fn legs_on_one_rope_are_drawn_once_and_another_set_up_beside_them() {
    let wide = r#"{"gap_m":17,"snow_depth_m":2}"#;
    let twice = Trip::straight(&[SNOW, SNOW]).ropes(&[80.0]);
    assert_eq!(drawn(&twice), 1, "one set-up");
    let other = Trip::straight(&[SNOW, wide, SNOW]).ropes(&[80.0]);
    assert_eq!(drawn(&other), 2, "two set-ups");
}
