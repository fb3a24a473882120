//! Track points as nearly every device writes them, read without the XML parser in between.
//!
//! `<trkpt lat="…" lon="…">` with `ele` and `time` at most, in ASCII and without references. Whatever is written otherwise,
//! is faulty, or does not stand whole in the text at hand is no plain point: the parser reads it, and complains.

use std::{borrow::Cow, io::BufRead};

use memchr::memmem;

use crate::{cores, geometry::LonLat};

use super::{
    fix::{self, WrittenPosition},
    odd::Odd,
    part::Part,
    source::Lines,
};

/// A point, and how much of the text it takes.
#[derive(Debug, PartialEq)]
struct PlainPoint {
    /// Its longitude may still miss the antimeridian.
    at: LonLat,
    height_m: Option<f32>,
    bytes: usize,
}

/// A shorter text is read sooner on one core, bytes. Our judgement, by the benchmark.
const LONG_BYTES: usize = 16 * 1024;

/// So many points on end are a sign that more come. Our judgement.
const A_RUN: usize = 32;

/// They take no more of a text, bytes. Our judgement: more of it is not looked through before there is a run.
const HEAD_BYTES: usize = 8 * 1024;

/// So many points take their places beside the reading of the next ones; fewer are sooner put there at once. Our judgement.
const MANY: usize = 256;

/// The points that come next, for as long as they are written the plain way. While those that were read take their places the
/// next ones are read.
pub(super) fn take(lines: &mut Lines<'_>, odd: &mut Odd, part: &mut Part) {
    let mut read: Vec<PlainPoint> = Vec::new();
    loop {
        let (text, stage) = (lines.at_hand(), &mut part.stage);
        let mut push = |read: Vec<PlainPoint>| {
            for point in read {
                stage.push(odd.taken_back(point.at), point.height_m);
            }
        };
        read = if read.len() < MANY {
            push(read);
            points(text)
        } else {
            cores::both(|| push(read), || points(text)).1
        };
        if read.is_empty() {
            return;
        }
        part.points += read.len();
        part.in_segment += read.len();
        lines.consume(length(&read));
    }
}

/// The points that a text begins with, one behind the other; of a long run of them the halves side by side.
fn points(bytes: &[u8]) -> Vec<PlainPoint> {
    let head = bytes.get(..HEAD_BYTES).unwrap_or(bytes);
    let mut points = run(text(head), A_RUN);
    if points.len() < A_RUN {
        return points;
    }
    let rest = text(bytes.get(length(&points)..).unwrap_or_default());
    let Some((first, second)) = halves(rest) else {
        points.extend(run(rest, usize::MAX));
        return points;
    };
    let (near, far) = cores::both(|| run(first, usize::MAX), || run(second, usize::MAX));
    // Behind something else the second half begins who knows where.
    let far = if length(&near) == first.len() {
        far
    } else {
        Vec::new()
    };
    points.extend(near.into_iter().chain(far));
    points
}

/// Bytes as text as far as they are one: looked through once, not again for each number.
fn text(bytes: &[u8]) -> &str {
    str::from_utf8(bytes).unwrap_or_else(|fault| {
        let whole = bytes.get(..fault.valid_up_to()).unwrap_or_default();
        str::from_utf8(whole).unwrap_or_default()
    })
}

/// What points take of a text, bytes.
fn length(points: &[PlainPoint]) -> usize {
    points.iter().map(|point| point.bytes).sum()
}

/// A long text in front of a point near its middle and from there on, the white space before it included.
fn halves(text: &str) -> Option<(&str, &str)> {
    let middle = (text.len() > LONG_BYTES).then_some(text.len() / 2)?;
    let next = memmem::find(text.as_bytes().get(middle..)?, b"<trkpt")?;
    let first = text.get(..middle + next)?.trim_ascii_end();
    text.split_at_checked(first.len())
}

/// So many at most, one by one.
fn run(text: &str, most: usize) -> Vec<PlainPoint> {
    let mut rest = text;
    let next = || {
        let point = point(rest)?;
        rest = rest.get(point.bytes..)?;
        Some(point)
    };
    std::iter::from_fn(next).take(most).collect()
}

/// The point that a text begins with, white space before it included.
fn point(text: &str) -> Option<PlainPoint> {
    let mut rest = Rest(text);
    rest.space();
    let written = rest.position()?;
    let at = fix::position(&written).ok()?;
    let height_m = if rest.eat("/>") {
        None
    } else {
        rest.tag(">")?;
        rest.height()?
    };
    Some(PlainPoint {
        at,
        height_m,
        bytes: text.len() - rest.0.len(),
    })
}

/// What stands in a value as it is: printable ASCII but for what begins a reference or a tag, or ends an attribute.
const PLAIN: [bool; 256] = {
    let mut plain = [false; 256];
    let mut b = b' ';
    while b <= b'~' {
        plain[b as usize] = !matches!(b, b'&' | b'<' | b'"');
        b += 1;
    }
    plain
};

/// What is left of a text.
struct Rest<'t>(&'t str);

impl<'t> Rest<'t> {
    fn space(&mut self) {
        self.0 = self.0.trim_ascii_start();
    }

    /// Whether this stood here; it is behind now.
    fn eat(&mut self, text: &str) -> bool {
        match self.0.strip_prefix(text) {
            Some(rest) => {
                self.0 = rest;
                true
            }
            None => false,
        }
    }

    fn tag(&mut self, text: &str) -> Option<()> {
        self.eat(text).then_some(())
    }

    /// Plain text up to a character, which is behind then.
    fn until(&mut self, end: u8) -> Option<&'t str> {
        let bytes = self.0.bytes();
        let length = bytes.take_while(|b| PLAIN[usize::from(*b)]).count();
        let (text, rest) = self.0.split_at_checked(length)?;
        self.0 = rest.strip_prefix(char::from(end))?;
        Some(text)
    }

    fn position(&mut self) -> Option<WrittenPosition<'t>> {
        self.tag("<trkpt lat=\"")?;
        let lat = Cow::Borrowed(self.until(b'"')?);
        self.tag(" lon=\"")?;
        let lon = Cow::Borrowed(self.until(b'"')?);
        Some(WrittenPosition {
            lat: Some(lat),
            lon: Some(lon),
        })
    }

    /// The first height that counts, and everything up to the end of the point.
    fn height(&mut self) -> Option<Option<f32>> {
        let mut height_m = None;
        loop {
            self.space();
            if self.eat("</trkpt>") {
                return Some(height_m);
            } else if self.eat("<ele>") {
                let found_m = fix::height_m(self.until(b'<')?).ok()?;
                self.tag("/ele>")?;
                height_m = height_m.or(found_m);
            } else {
                self.tag("<time>")?;
                self.until(b'<')?;
                self.tag("/time>")?;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plain_point_is_read_whole() {
        let text = "\n  <trkpt lat=\"46.5\" lon=\"-7.25\"><ele>2800.5</ele><time>2026-07-01T00:00:00Z</time></trkpt>\n";
        let read = point(text).expect("a plain point");
        let (lon_deg, lat_deg) = (-7.25, 46.5);
        assert_eq!(read.at, LonLat::new(lon_deg, lat_deg));
        assert_eq!((read.height_m, read.bytes), (Some(2800.5), text.len() - 1));
        let bare = point("<trkpt lat=\"1\" lon=\"2\"/>").expect("a plain point");
        assert_eq!(bare.height_m, None);
    }

    #[test]
    fn of_a_long_text_the_halves_are_read_to_the_first_other_element() {
        let point = |i: usize| {
            format!(
                "\n  <trkpt lat=\"46.5\" lon=\"{}.5\"><ele>1</ele></trkpt>",
                i % 180
            )
        };
        let text: String = (0..1000).map(point).collect();
        assert!(text.len() > 2 * LONG_BYTES, "{}", text.len());
        let all = points(text.as_bytes());
        assert_eq!(all, run(&text, usize::MAX));
        assert_eq!(all.len(), 1000);
        for other in [3, 499, 500, 501, 997] {
            let comment = point(other).replace("</ele>", "</ele><!-- -->");
            let parts = [
                (0..other).map(point).collect(),
                comment,
                (other..1000).map(point).collect::<String>(),
            ];
            assert_eq!(
                points(parts.concat().as_bytes()),
                all[..other],
                "as far as number {other}"
            );
        }
    }

    #[test]
    fn whatever_is_written_otherwise_is_left_to_the_parser() {
        for text in [
            "",
            "<trkpt lat=\"1\" lon=\"2\">",
            "<trkpt lat=\"1\" lon=\"2\"><ele>3</ele>",
            "<trkpt lat=\"1\" lon=\"2\"><ele>3</ele></trk",
            "<trkpt lon=\"2\" lat=\"1\"/>",
            "<trkpt lat='1' lon='2'/>",
            "<trkpt lat=\"91\" lon=\"2\"/>",
            "<trkpt lat=\"x\" lon=\"2\"/>",
            "<trkpt lat=\"1\" lon=\"2\" id=\"3\"/>",
            "<trkpt lat=\"1\" lon=\"2\"><ele>99999</ele></trkpt>",
            "<trkpt lat=\"1\" lon=\"2\"><ele>&#51;</ele></trkpt>",
            "<trkpt lat=\"1\" lon=\"2\"><time>\u{e9}</time></trkpt>",
            "<trkpt lat=\"1\" lon=\"2\"><hdop>1</hdop></trkpt>",
            "<trkpt lat=\"1\" lon=\"2\"><!-- --></trkpt>",
            "<wpt lat=\"1\" lon=\"2\"/>",
        ] {
            assert_eq!(point(text), None, "{text}");
        }
    }
}
