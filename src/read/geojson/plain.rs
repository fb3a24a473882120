//! Features of a collection read from slices of the text, for as long as they are whole and sound JSON.
//!
//! ```text
//! {"type": "FeatureCollection", … "features": [   the opening, sound as far as it goes
//!   {…}, {…}, …                                   from brace to brace, a megabyte of text in memory at a time,
//!                                                 on all cores; taken over one after the other, as they stand
//! ]}                                              and whatever is written otherwise: left to `document`
//! ```
//! What is left over is handed on behind the opening, at the lines and columns at which it stands in the file, so that
//! every complaint and its place is made in one way.

use std::io::{self, Read};

use serde_json::value::RawValue;

use super::{
    blocks::Blocks,
    document::{self, MEMBERS},
    known::Shape,
    members::{MemberText, Members},
    opening, positions,
    properties::{Pairs, Properties},
    reading::{HeldFeature, ZonesReading},
    text::Spot,
};
use crate::cores;

/// Stands in the list for the features that were read.
pub(in crate::read) const READ: &[u8] = b"0";

/// Reads all of a text into `reading`: features from slices while they are plain, the rest in its way.
pub(super) fn read(source: impl Read, reading: &mut ZonesReading<'_>) {
    let mut text = Blocks::new(source);
    let Some(opening) = opening::of(text.first_block()).map(<[u8]>::to_vec) else {
        return document::read(text.rest(), reading);
    };
    text.take(opening.len());
    let begins = text.at();
    let before = reading.some_read && text.skip(READ);
    if features(&mut text, reading, before) == 0 && !before {
        return document::read(opening.chain(text.rest()), reading);
    }
    reading.some_read = true;
    let (lines, columns) = blank(begins, text.at());
    // Behind the last feature nearly always nothing comes whose place could matter.
    let (lines, columns) = if text.ends_plainly() {
        (0, 0)
    } else {
        (lines, columns)
    };
    let blank = io::repeat(b'\n')
        .take(lines)
        .chain(io::repeat(b' ').take(columns));
    document::read(opening.chain(READ).chain(blank).chain(text.rest()), reading);
}

/// Lines and columns from behind what stands for the features to where they end.
fn blank(begins: Spot, ends: Spot) -> (u64, u64) {
    let lines = ends.line - begins.line;
    let from = if lines == 0 {
        begins.column + READ.len() as u64
    } else {
        1
    };
    (lines, ends.column - from)
}

/// Takes feature after feature, the first behind others or not; how many there were.
fn features(text: &mut Blocks<impl Read>, reading: &mut ZonesReading<'_>, before: bool) -> usize {
    let mut taken = 0;
    loop {
        let some = text.features(before || taken > 0);
        let anew = !reading.shapes.remembers();
        let left = text.left();
        let read = cores::map(&some, |feature| {
            let json = feature.json(left);
            let plain = anew.then(|| read_at_once(json, feature.at)).flatten();
            plain.or_else(|| members(json, feature.at).map(HeldFeature::unread))
        });
        let whole = read.iter().take_while(|held| held.is_some()).count();
        for (feature, held) in some.iter().zip(read.into_iter().flatten()).take(whole) {
            reading.held_feature(held, feature.at);
        }
        taken += whole;
        if let Some(last) = whole.checked_sub(1).and_then(|last| some.get(last)) {
            text.pass(last);
        }
        if whole == 0 || whole < some.len() {
            return taken;
        }
    }
}

/// The members of a feature that mean something, its geometry and properties read with them, where all of it is sound and
/// no name stands twice.
fn read_at_once(json: &[u8], at: Spot) -> Option<HeldFeature> {
    let (mut members, mut shape) = (Members::begun(at), None);
    let mut rest = json;
    let mut here = (json, at);
    opening::sign(&mut rest, b'{')?;
    loop {
        let name: &str = opening::value(&mut rest)?;
        opening::sign(&mut rest, b':')?;
        rest = opening::unspaced(rest);
        let name = MEMBERS.into_iter().find(|member| *member == name);
        if name == Some("geometry")
            && shape.is_none()
            && let Some((polygons, behind)) = positions::polygons(rest)
        {
            shape = Some(Shape::written(polygons)?);
            rest = behind;
        } else {
            let begins = rest;
            let value: &RawValue = opening::value(&mut rest)?;
            if let Some(name) = name {
                let between = here.0.get(..here.0.len() - begins.len())?;
                here = (begins, here.1.past(between));
                members.keep(
                    name,
                    MemberText {
                        json: value.get().to_owned(),
                        at: here.1,
                        lead: 0,
                    },
                );
            }
        }
        if opening::sign(&mut rest, b',').is_none() {
            break;
        }
    }
    opening::sign(&mut rest, b'}')?;
    let twice = shape.is_some() && members.get("geometry").is_some();
    if twice || members.doubled.is_some() || !rest.is_empty() {
        return None;
    }
    let properties = shape.as_ref();
    let properties = properties.map(|_| Properties::read(members.get("properties")));
    Some(HeldFeature {
        members,
        shape,
        properties,
    })
}

/// The members of a feature that mean something, where it is sound JSON.
fn members(json: &[u8], at: Spot) -> Option<Members> {
    let written: Pairs<'_> = serde_json::from_slice(json).ok()?;
    let mut members = Members::begun(at);
    for (name, value) in written.0 {
        let Some(name) = MEMBERS.into_iter().find(|member| *member == name) else {
            continue;
        };
        let offset = value.get().as_ptr() as usize - json.as_ptr() as usize;
        let before = json.get(..offset)?;
        let piece = MemberText {
            json: value.get().to_owned(),
            at: at.past(before),
            lead: 0,
        };
        members.keep(name, piece);
    }
    Some(members)
}

#[cfg(test)]
mod tests {
    use std::fmt::Write;

    use proptest::prelude::*;

    use super::*;
    use crate::read::geojson::Given;

    /// Hands out a few bytes at a time.
    struct Drops<'t>(&'t [u8], usize);

    impl Read for Drops<'_> {
        fn read(&mut self, out: &mut [u8]) -> io::Result<usize> {
            let most = self.1.min(out.len());
            self.0.read(&mut out[..most])
        }
    }

    fn said(text: &[u8], read: impl Fn(&[u8], &mut ZonesReading<'_>)) -> String {
        let mut reading = ZonesReading::new("zones.geojson", Given::default(), None);
        read(text, &mut reading);
        let mut said = String::new();
        match reading.finish() {
            Ok(noted) => write!(said, "{:?} {:?}", noted.value, noted.notes),
            Err(faults) => write!(said, "{faults:?}"),
        }
        .expect("a text");
        said
    }

    /// Both ways say the same, whatever the blocks are.
    fn agree(text: &[u8], drops: usize) -> Result<(), TestCaseError> {
        let slow = said(text, |text, reading| document::read(text, reading));
        let fast = said(text, |text, reading| read(Drops(text, drops), reading));
        prop_assert_eq!(slow, fast, "{}", String::from_utf8_lossy(text));
        Ok(())
    }

    fn feature(number: usize, gap: &str, space: &str) -> String {
        let lon = 7.0 + number as f64 * 0.1;
        format!(
            r#"{{{space}"type":"Feature",{space}"properties":{{"name":"Gletscher é {number} {{\"x\\","gap_m":{gap}}},"geometry":{{"type":"Polygon",{space}"coordinates":[[[{lon},46],[{lon}5,46],[{lon}5,46.01],[{lon},46]]]}}}}"#
        )
    }

    fn any_text() -> impl Strategy<Value = String> {
        let gap = prop_oneof![
            4 => Just("3"), 1 => Just("NaN"), 1 => Just("-2"), 1 => Just("\"2-4\""), 1 => Just("-Infinity"), 1 => Just("null")
        ];
        let space = prop_oneof![Just(""), Just(" "), Just("\n"), Just("\r\n\t")];
        let opening = prop_oneof![
            Just(r#"{"type":"FeatureCollection","features":["#),
            Just(
                "\u{feff} {\n \"name\": \"é [{\", \"type\" : \"FeatureCollection\",\n\"features\" : ["
            ),
            Just(r#"{"crs":{"properties":{"name":"EPSG:2056"}},"features":["#),
            Just(r#"{"type":tru,"features":["#),
            Just(r#"{"features":[],"features":["#),
        ];
        let ending = prop_oneof![
            3 => Just("]}"), 1 => Just("\n ] \n}\n\n"), 1 => Just(r#"],"type":"FeatureCollection"}"#), 1 => Just("]"), 1 => Just(",]}"),
            1 => Just(r#"],"features":[{"type":"Feature"}],"crs":3}"#), 1 => Just("]} x"), 1 => Just("]}{\"type\":\"Feature\"}"),
            1 => Just(", 5, {\"type\":\"Feature\"}]}"),
        ];
        let features = prop::collection::vec((gap, space), 0..5);
        (
            opening,
            features,
            prop_oneof![4 => Just(","), 1 => Just(" ,\n"), 1 => Just(";")],
            ending,
        )
            .prop_map(|(opening, features, comma, ending)| {
                let list = features.iter().enumerate();
                let list: Vec<String> = list
                    .map(|(i, (gap, space))| feature(i, gap, space))
                    .collect();
                format!("{opening}{}{ending}", list.join(comma))
            })
    }

    #[test]
    fn columns_are_characters_also_where_a_line_ends_in_a_word() {
        let text =
            "{\"type\":\"FeatureCollection\",\"features\":[{\"name\":\"éé\",\"note\":\"\r\n\"}]}";
        let at = 1 + text.chars().take_while(|c| *c != '\r').count();
        let said = said(text.as_bytes(), |text, reading| read(text, reading));
        assert!(said.contains(&format!("column: Some({at})")), "{said}");
    }

    proptest! {
        #[test]
        fn a_collection_is_read_as_if_byte_by_byte(text in any_text(), drops in 1..200_usize) {
            agree(text.as_bytes(), drops)?;
        }

        #[test]
        fn what_is_broken_is_broken_at_the_same_place(
            text in any_text(), at in any::<prop::sample::Index>(), byte in any::<u8>(), cut in any::<bool>(),
        ) {
            let mut bytes = text.into_bytes();
            let at = at.index(bytes.len());
            if cut {
                bytes.truncate(at);
            } else {
                bytes[at] = byte;
            }
            agree(&bytes, usize::MAX)?;
        }
    }
}
