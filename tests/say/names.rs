//! The leader's names: whatever units are shown, a name with a length in it stays that name.

use schrund::{
    say::{units::Units, voice::Voice},
    write::FORMATS,
};

use crate::fixture::trip::Trip;

const ROPE: &str = "blue 60 m static";
const ZONE: &str = "The 30 m step";

#[test]
fn in_feet_ropes_and_zones_keep_their_names_in_every_format() {
    // Bare ice with two views, and a rope with little to spare: findings that name both.
    let zone = format!(r#"{{"name":"{ZONE}","gap_m":9,"surface":"bare","strike_deg":45}}"#);
    let mut trip = Trip::straight(&[&zone]).people(3).ropes(&[60.0]);
    trip.ropes[0].name = Some(ROPE.to_owned());
    let planned = trip.planned().spoken(Voice {
        units: Units::Imperial,
        ..Voice::default()
    });
    for format in FORMATS {
        let (name, text) = (format.name(), planned.written(format.name()));
        assert_eq!(
            text.matches("static").count(),
            text.matches(ROPE).count(),
            "{name}"
        );
        assert!(!text.contains("ft step"), "{name}");
        let shows = (text.contains(ROPE), text.contains(ZONE));
        let want = match name {
            "table" | "json" | "html" | "sheet" => (true, true),
            "text" => (false, false),
            _ => (false, true),
        };
        assert_eq!(shows, want, "{name} shows the rope, the zone");
    }
}
