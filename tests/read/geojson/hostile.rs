//! Corrupted, endless and real files.

use std::path::Path;

use schrund::{
    fault::{Code, Fault, Level, Noted},
    read::geojson::{Given, zones},
    say::{fault::says, voice::Voice},
    trip::zone::Zone,
};

use super::{SQUARE, bad, feature};
use crate::fixture::real::{files_below, real_data};
use crate::fixture::texts::{collection, feature_of};

/// Small numbers from a fixed start (Marsaglia's xorshift), so that a failure can be repeated.
struct Dice(u64);

impl Dice {
    fn below(&mut self, end: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 % end.max(1) as u64).expect("below end")
    }
}

/// One to three changes: cut off, drop or change a byte, slip a token in.
fn corrupt(bytes: &mut Vec<u8>, dice: &mut Dice) {
    let tokens: [&[u8]; 14] = [
        b"\"",
        b"{",
        b"}",
        b"[",
        b"]",
        b",",
        b":",
        b"NaN",
        b"-Infinity",
        b"1e999",
        b"null",
        b"\xff",
        b"\x1e",
        b"\xef\xbb\xbf",
    ];
    for _ in 0..=dice.below(3) {
        let (at, token) = (dice.below(bytes.len()), tokens[dice.below(tokens.len())]);
        match dice.below(4) {
            0 => bytes.truncate(at),
            1 => drop(bytes.remove(at)),
            2 => bytes[at] = u8::try_from(dice.below(256)).expect("a byte"),
            _ => drop(bytes.splice(at..at, token.iter().copied())),
        }
        if bytes.is_empty() {
            break;
        }
    }
}

#[test]
fn no_corruption_makes_the_reader_panic_or_accept_in_silence() {
    let sound = collection(&[
        feature(r#"{"name":"Éisfall","gap_m":"2-4","area":NaN}"#),
        feature_of(
            r#"{"gap_m":3,"surface":"bare","strike_deg":-10}"#,
            &format!(
                r#"{{"type":"MultiPolygon","coordinates":[[{SQUARE},[[7.01,46.01],[7.02,46.01],[7.01,46.02]]]]}}"#
            ),
        ),
    ]);
    let mut dice = Dice(0x9E37_79B9_7F4A_7C15);
    let (mut read, mut refused) = (0, 0);
    for _ in 0..5000 {
        let mut bytes = sound.clone().into_bytes();
        corrupt(&mut bytes, &mut dice);
        match zones("z", bytes.as_slice(), &Given { gap_m: Some(6.0) }) {
            Ok(noted) => {
                read += 1;
                let sound = |z: &Zone| {
                    z.outline
                        .polygons
                        .iter()
                        .all(|p| p.outer.len() >= 4 && p.outer.first() == p.outer.last())
                };
                assert!(
                    !noted.value.is_empty() && noted.value.iter().all(sound),
                    "what is read is whole"
                );
            }
            Err(problems) => {
                refused += 1;
                assert!(
                    problems.iter().any(|p| p.level() == Level::Error),
                    "refused with a reason"
                );
            }
        }
    }
    assert!(
        read > 100 && refused > 1000,
        "both happen: {read} read, {refused} refused"
    );
}

#[test]
fn endless_nesting_is_refused() {
    let deep = format!("{}{}", "[".repeat(100_000), "]".repeat(100_000));
    let geometry = format!(r#"{{"type":"Polygon","coordinates":{deep}}}"#);
    let shown = bad(&collection(&[feature_of(
        &format!(r#"{{"gap_m":1,"x":{deep}}}"#),
        &geometry,
    )]));
    assert!(
        shown[0].starts_with("error[bad-geojson]: the geometry is nested too deeply to be read\n"),
        "{}",
        shown[0]
    );
    assert!(
        shown[1].contains("cannot be read as a value"),
        "{}",
        shown[1]
    );
}

#[test]
fn a_reader_that_fails_is_reported_as_such() {
    struct Failing;
    impl std::io::Read for Failing {
        fn read(&mut self, _: &mut [u8]) -> std::io::Result<usize> {
            Err(std::io::Error::other("the card was pulled"))
        }
    }
    let Err(problems) = zones("z", Failing, &Given::default()) else {
        panic!("nothing was read")
    };
    let want = "error[unreadable]: reading stopped: the card was pulled\n  at: z\n  do: read the file again";
    assert_eq!(problems[0].to_string(), want, "the reason");
}

/// Rings that are not simple, doubled vertices dropped: counted with `LinearRing.is_simple` of Shapely
/// 2.2.0 (GEOS) over every ring of the five outline files; the other three hold none.
const TANGLED: [(&str, usize); 2] = [
    ("ne_10m_glaciated_subset.geojson", 3),
    ("rgi60_exploradores_47.geojson", 49),
];

fn read(path: &Path) -> Result<Noted<Vec<Zone>>, Vec<Fault>> {
    let file = std::fs::File::open(path).expect("a file that was listed");
    zones(
        &path.display().to_string(),
        file,
        &Given { gap_m: Some(6.0) },
    )
}

#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn real_outlines_are_read() {
    let root = real_data();
    for path in files_below(&root.join("outlines")) {
        let noted = read(&path).unwrap_or_else(|p| panic!("{}: {}", path.display(), p[0]));
        let name = path.file_name().expect("a name").to_string_lossy();
        let tangled = noted.notes.iter().find(|n| n.kind() == Code::RingTangled);
        let shown = tangled.map(|n| {
            says(n, Voice::default())
                .to_string()
                .split(' ')
                .next()
                .unwrap_or_default()
                .to_owned()
        });
        let known = TANGLED.iter().find(|(file, _)| *file == name);
        let want = known.map(|(_, count)| count.to_string());
        assert_eq!(shown, want, "tangled rings of {name}");
    }
}

/// Counts of zones from an independent reader, wherever both can read the file.
#[test]
#[ignore = "needs the folder that SCHRUND_REAL_DATA names"]
fn real_hostile_files_do_no_harm() {
    let root = real_data();
    let text =
        std::fs::read_to_string(root.join("reference/hostile_oracle.json")).expect("the oracle");
    let oracle: serde_json::Value = serde_json::from_str(&text).expect("the oracle");
    let mut compared = 0;
    for folder in [
        "hostile/geojson_check_geojson",
        "hostile/geojson_georust",
        "hostile/geojson_turf",
    ] {
        for path in files_below(&root.join(folder)) {
            let name = path.file_name().expect("a name").to_string_lossy();
            let expected = &oracle[format!("{folder}/{name}")];
            let result = read(&path);
            let valid = expected["polygons"]
                .as_object()
                .is_some_and(|kinds| !kinds.contains_key("unbuildable"));
            let Some(kinds) = expected["polygons"]
                .as_object()
                .filter(|_| valid && result.is_ok())
            else {
                let broken = expected["json_ok_strict"] == false;
                assert!(!broken || result.is_err(), "{} is no JSON", path.display());
                continue;
            };
            let want: u64 = kinds.values().filter_map(serde_json::Value::as_u64).sum();
            let got = result.map(|noted| noted.value.len());
            assert_eq!(
                got.map(|n| n as u64),
                Ok(want),
                "zones of {}",
                path.display()
            );
            compared += 1;
        }
    }
    assert!(compared >= 10, "only {compared} files compared");
}
