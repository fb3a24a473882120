//! Damaged files: no panic, no hang, no wild memory, whatever the bytes.

use std::{io::Cursor, sync::LazyLock, time::Instant};

use schrund::{
    example,
    fault::Fault,
    read::{
        as_text::near_text,
        input::{Input, Seekable},
        lay::{self, Sources},
        trip,
    },
    trip::route::Route,
};

use super::near::inventory;
use crate::fixture::flatgeobuf::{Form, flatgeobuf};

/// A small generator of numbers (xorshift), so that the damage is the same every time.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 % n as u64) as usize
    }
}

fn file(bytes: &[u8]) -> Seekable {
    Box::new(Cursor::new(bytes.to_vec()))
}

static ROUTE: LazyLock<Route> = LazyLock::new(|| {
    let route = lay::route(Input::text("route.gpx", example::PAIR_ROUTE_GPX.as_bytes()));
    route.expect("a line").value
});

/// Reads it as zones, and as an inventory of which what is near is written down and read.
fn ask(bytes: &[u8]) -> [Result<(), Vec<Fault>>; 2] {
    let zones = lay::zones(Input::text("ice.fgb", bytes), Some(3.0));
    let near = near_text(Input::new("ice.fgb", file(bytes)), &ROUTE);
    let near = near.inspect(|text| {
        let text = text.as_deref().unwrap_or_default();
        // Its numbers may be no longitudes; it is JSON all the same.
        let read = lay::zones(Input::text("ice", text.as_bytes()), Some(3.0));
        let told = read.err().unwrap_or_default();
        assert!(
            told.iter().all(|fault| fault.code() != "broken-text"),
            "{told:?} {text}"
        );
    });
    [zones.map(drop), near.map(drop)]
}

/// The same as the inventory of a job.
fn job(bytes: &[u8]) -> Result<(), Vec<Fault>> {
    let mut sources = Sources::new(
        Input::text("route.gpx", example::PAIR_ROUTE_GPX.as_bytes()),
        Input::text("zones.geojson", example::PAIR_ZONES_GEOJSON.as_bytes()),
    );
    sources.trip = Some(trip::file(Input::text("trip.toml", &b"party = 3"[..])));
    sources.glaciers_near = Some(Input::new("ice.fgb", file(bytes)));
    sources.job().map(drop)
}

#[test]
fn three_thousand_damaged_files_are_told_or_read() {
    let sound = [
        flatgeobuf(&inventory(40), Form::default()),
        flatgeobuf(
            example::PAIR_ZONES_GEOJSON,
            Form {
                index: false,
                ..Form::default()
            },
        ),
    ];
    let mut dice = Dice(0x5EED_F6B3);
    let begun = Instant::now();
    let (mut told, mut read) = (0, 0);
    for round in 0..3000 {
        let mut bytes = sound[round % sound.len()].clone();
        // Half of the damage is where lengths and offsets stand: at the beginning.
        let reach = if round % 4 < 2 {
            bytes.len().min(700)
        } else {
            bytes.len()
        };
        for _ in 0..=dice.below(4) {
            let at = dice.below(reach);
            match dice.below(4) {
                0 => bytes[at] = 0xFF,
                1 => bytes[at] = 0,
                2 => bytes[at] ^= 1 << dice.below(8),
                _ => bytes[at] = u8::try_from(dice.below(256)).expect("a byte"),
            }
        }
        if dice.below(10) == 0 {
            bytes.truncate(dice.below(bytes.len()));
        }
        let answers = ask(&bytes);
        if round % 25 == 0 && bytes.starts_with(b"fgb") {
            let of_job = job(&bytes);
            assert!(
                answers[1].is_ok() || of_job.is_err(),
                "what is no text is no inventory"
            );
        }
        match answers {
            [Ok(()), Ok(())] => read += 1,
            _ => told += 1,
        }
    }
    assert!(told > 500 && read > 100, "told {told}, read {read}");
    // Far above what it takes, so that a slow machine passes and a hang does not; our judgement.
    assert!(
        begun.elapsed().as_secs() < 300,
        "it hangs: {:?}",
        begun.elapsed()
    );
}

#[test]
fn a_file_that_ends_anywhere_is_told() {
    let whole = flatgeobuf(&inventory(3), Form::default());
    assert!(ask(&whole).iter().all(Result::is_ok), "{:?}", ask(&whole));
    for end in 4..whole.len() {
        let [zones, _] = ask(&whole[..end]);
        let faults = zones.expect_err("cut off");
        assert_eq!(
            faults[0].code(),
            "broken-flatgeobuf",
            "at {end}: {faults:?}"
        );
    }
}

#[test]
fn no_more_features_are_believed_than_the_file_has_room_for() {
    let whole = flatgeobuf(&inventory(3), Form::default());
    let three = 3_u64.to_le_bytes();
    let at = whole
        .windows(8)
        .position(|eight| eight == three)
        .expect("their number");
    for count in [4, 1_000_000, u64::MAX / 64, u64::MAX] {
        let mut bytes = whole.clone();
        bytes[at..at + 8].copy_from_slice(&count.to_le_bytes());
        for answer in ask(&bytes).into_iter().chain([job(&bytes)]) {
            let faults = answer.expect_err("there are three");
            assert_eq!(faults[0].code(), "broken-flatgeobuf", "{count}: {faults:?}");
        }
    }
}

#[test]
fn a_length_of_gigabytes_is_not_set_aside() {
    let whole = flatgeobuf(
        &inventory(3),
        Form {
            index: false,
            ..Form::default()
        },
    );
    let header = u32::from_le_bytes([whole[8], whole[9], whole[10], whole[11]]);
    let feature = 12 + usize::try_from(header).expect("short");
    for at in [8, feature] {
        let mut bytes = whole.clone();
        bytes[at..at + 4].copy_from_slice(&u32::MAX.to_le_bytes());
        for answer in ask(&bytes) {
            let told = answer.expect_err("four gigabytes")[0].to_string();
            assert!(told.contains("is said to be longer than"), "{told}");
        }
    }
}

#[test]
fn another_version_is_told() {
    let mut bytes = flatgeobuf(&inventory(3), Form::default());
    bytes[3] = 2;
    let [zones, near] = ask(&bytes);
    for answer in [zones, near] {
        let told = answer.expect_err("version 2")[0].to_string();
        assert!(
            told.starts_with("error[wrong-kind]: this is FlatGeobuf of version 2"),
            "{told}"
        );
    }
}
