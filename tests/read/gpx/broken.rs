//! Broken XML and files that were cut off, joined or are in no encoding: refused with the place.

use std::io::{BufReader, Read};

use schrund::read::gpx;

use super::{PAIR, marked, read, shown, wrong};
use crate::fixture::texts::{gpx_of, segment_of};

/// The complaint about broken text at a place.
fn broken(says: &str, at: &str, cure: &str) -> Vec<String> {
    vec![format!(
        "error[broken-text]: {says}\n  at: tour.gpx, {at}\n  do: {cure}"
    )]
}

const REPAIR: &str = "export the file again, or mend it with a text editor";
const CUT: &str = "the file was cut off: copy or export it again";

#[test]
fn broken_xml_is_refused_with_its_place() {
    let twice = "an attribute is given twice in one tag";
    let unquoted = "an attribute value has no quotation marks";
    let endless =
        "the file ends in the middle of a value between quotation marks in what begins here";
    let bare = "a bare `&` stands in the text";
    let amp = "write `&amp;` in its place";
    for (inside, says, item, cure) in [
        (
            "\n<trkpt lat='1' lon='2'>¦</trk>",
            "\"</trk>\" stands where \"</trkpt>\" is due",
            ", point 1",
            REPAIR,
        ),
        (
            "\n<trkpt lat='1' lon='2' ¦lat='3'/>",
            twice,
            ", point 1",
            REPAIR,
        ),
        ("<trkpt lat=¦1 lon='2'/>", unquoted, ", point 1", REPAIR),
        (
            "<trkpt lat ¦lon='2'/>",
            "an attribute has no value",
            ", point 1",
            REPAIR,
        ),
        (
            "<trkpt lat='1' lon='2'><ele>5 ¦& 6</ele></trkpt>",
            bare,
            ", point 1",
            amp,
        ),
        (
            "<!-- ö\n --> ¦<!-- ",
            "the file ends in the middle of a comment that begins here",
            "",
            CUT,
        ),
        ("<trkpt lat='1' lon='2'/>¦<trkpt lat='1", endless, "", CUT),
        ("¦<!x>", "`<!` begins nothing that XML knows", "", REPAIR),
    ] {
        let (file, at) = marked(&segment_of(inside));
        let mut shown = wrong(file);
        shown.retain(|s| s.contains("broken-text"));
        let at = format!("{at}, track 1, segment 1{item}");
        assert_eq!(shown, broken(says, &at, cure), "{inside}");
    }
}

#[test]
fn reading_goes_on_after_what_can_be_passed_over() {
    let shown = wrong(segment_of(
        "<trkpt lat='1' lon='2' lon='3'/><trkpt lat='1' lon='2'><name>& &</name></trkpt><trkpt lat='99' lon='2'/>",
    ));
    let codes: Vec<_> = shown
        .iter()
        .map(|s| s.split(':').next().unwrap_or_default())
        .collect();
    let text = "error[broken-text]";
    assert_eq!(codes, [text, text, text, "error[bad-position]"]);
}

#[test]
fn a_truncated_file_is_refused_with_the_place_where_it_ends() {
    let begin = "<gpx>\n<trk><trkseg>";
    let extensions = "<trkpt lat='1' lon='2'><extensions><a>";
    for (text, tag, item) in [
        (format!("{begin}{PAIR}¦"), "trkseg", ", track 1, segment 1"),
        (format!("{begin}{PAIR}</trkseg></trk>\n¦"), "gpx", ""),
        (
            format!("{begin}{PAIR}{extensions}¦"),
            "trkpt",
            ", track 1, segment 1, point 3",
        ),
    ] {
        let (file, at) = marked(&text);
        let says = format!("the file ends before `</{tag}>`");
        assert_eq!(wrong(file), broken(&says, &format!("{at}{item}"), CUT));
    }
}

#[test]
fn one_document_is_enough() {
    let file = segment_of(PAIR);
    let joined = "a second document begins inside or behind the first";
    let split = "two files were joined: split them again";
    let outside = "text stands outside the root element";
    let out = "take it out, or export the file again";
    let stray = "\"</gpx>\" closes nothing that is open";
    for (text, says, cure) in [
        (format!("{file}\n¦{file}"), joined, split),
        (
            format!("{file}\n¦<?xml version=\"1.0\"?>{file}"),
            joined,
            split,
        ),
        (
            format!("<gpx> ¦<?xml version=\"1.0\"?>{file}"),
            joined,
            split,
        ),
        (format!("{file}¦\n junk"), outside, out),
        (format!("{file}¦&amp;"), outside, out),
        (format!("<?xml version=\"1.0\"?>¦junk{file}"), outside, out),
        (format!("{file}¦</gpx>"), stray, REPAIR),
    ] {
        let (file, at) = marked(&text);
        assert_eq!(wrong(file), broken(says, &at, cure));
    }
}

#[test]
fn names_from_the_file_cannot_steer_the_terminal() {
    let file = gpx_of(
        "<trk><name>a&#27;[31m\u{202e}'b'</name><trkseg><trkpt lat='99' lon='1'/></trkseg></trk>",
    );
    let shown = wrong(file).join("");
    let name = "track 1 \"a\\u{1b}[31m\\u{202e}'b'\", segment 1, point 1";
    assert!(shown.contains(name), "{shown}");
}

/// Hands out a few bytes at a time.
struct Drip<'t>(&'t [u8], usize);

impl Read for Drip<'_> {
    fn read(&mut self, into: &mut [u8]) -> std::io::Result<usize> {
        let some = self.1.min(self.0.len());
        let read = (&self.0[..some]).read(into)?;
        self.0 = &self.0[read..];
        Ok(read)
    }
}

#[test]
fn the_place_is_right_wherever_the_text_comes_apart() {
    let lines = "ö\n".repeat(500);
    let text = segment_of(&format!(
        "<!-- {lines} -->\n é<trkpt lat='99' lon='1'><!-- \n --> <ele\n> 5,5 </ele></trkpt>{lines}<a\n>"
    ));
    let position = marked(&text.replace("<trkpt", "¦<trkpt")).1;
    let height = marked(&text.replace("<ele", "¦<ele")).1;
    let end = marked(&text.replace("</trkseg", "¦</trkseg")).1;
    for bytes in 1..60 {
        let drip = BufReader::new(Drip(text.as_bytes(), bytes));
        let shown = shown(&gpx::route("tour.gpx", drip).expect_err("faulty"));
        assert_eq!(shown.len(), 3, "{bytes} bytes at a time");
        for (shown, at) in shown.iter().zip([&position, &height, &end]) {
            assert!(
                shown.contains(&format!("tour.gpx, {at}, ")),
                "{bytes} bytes at a time: {at}, but {shown}"
            );
        }
    }
}

#[test]
fn bytes_that_are_no_utf_8_are_refused_where_they_stand() {
    let (file, at) = marked(&gpx_of("<trk>\n<name>Mönch M¦?nch</name></trk>"));
    let mut file = file.into_bytes();
    *file.iter_mut().rfind(|b| **b == b'?').expect("mark") = 0xF6;
    let cure = "save it as UTF-8, or begin it with <?xml version=\"1.0\" encoding=\"windows-1252\"?> (or what it is)";
    assert_eq!(
        wrong(file),
        broken("the text is not UTF-8", &format!("{at}, track 1"), cure)
    );
}

#[test]
fn endless_text_is_refused_before_it_fills_the_memory() {
    let (begin, at) = marked("<gpx>¦<!-- ");
    let text = begin.as_bytes().chain(std::io::repeat(b'x'));
    let problems = gpx::route("tour.gpx", BufReader::new(text)).expect_err("endless");
    let says = "one tag, text or comment is longer than 64 MiB";
    assert_eq!(shown(&problems), broken(says, &at, REPAIR));
}

#[test]
fn an_attribute_list_of_any_length_takes_linear_time() {
    let list: String = (0..200_000).map(|n| format!(" a{n}='1'")).collect();
    assert!(read(segment_of(&format!("<a{list}/>{PAIR}"))).is_ok());
    let (file, at) = marked(&segment_of(&format!("<a{list} ¦a7=''/>{PAIR}")));
    let says = "an attribute is given twice in one tag";
    assert_eq!(
        wrong(file),
        broken(says, &format!("{at}, track 1, segment 1"), REPAIR)
    );
}
