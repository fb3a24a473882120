//! Track points as nearly every device writes them, read without the XML parser in between.
//!
//! `<trkpt lat="…" lon="…">` with `ele` and `time` at most, in ASCII and without references. Whatever is written otherwise,
//! is faulty, or does not stand whole in the text at hand is no plain point: the parser reads it, and complains.

use std::borrow::Cow;

use memchr::{memchr, memmem};

use crate::{cores, geometry::LonLat};

use super::fix::{self, WrittenPosition};

/// A point, and how much of the text it takes.
#[derive(Debug, PartialEq)]
pub(super) struct PlainPoint {
    /// Its longitude may still miss the antimeridian.
    pub(super) at: LonLat,
    pub(super) height_m: Option<f32>,
    pub(super) bytes: usize,
}

/// A shorter text is read sooner on one core, bytes. Our judgement, by the benchmark.
const LONG_BYTES: usize = 16 * 1024;

/// So many points on end are a sign that more come. Our judgement.
const A_RUN: usize = 32;

/// The points that a text begins with, one behind the other; of a long run of them the halves side by side.
pub(super) fn points(text: &[u8]) -> Vec<PlainPoint> {
    let mut points = run(text, A_RUN);
    if points.len() < A_RUN {
        return points;
    }
    let rest = text.get(length(&points)..).unwrap_or_default();
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

/// What points take of a text, bytes.
pub(super) fn length(points: &[PlainPoint]) -> usize {
    points.iter().map(|point| point.bytes).sum()
}

/// A long text in front of a point near its middle and from there on, the white space before it included.
fn halves(text: &[u8]) -> Option<(&[u8], &[u8])> {
    let middle = (text.len() > LONG_BYTES).then_some(text.len() / 2)?;
    let next = memmem::find(text.get(middle..)?, b"<trkpt")?;
    let first = text.get(..middle + next)?.trim_ascii_end();
    text.split_at_checked(first.len())
}

/// So many at most, one by one.
fn run(text: &[u8], most: usize) -> Vec<PlainPoint> {
    let mut rest = text;
    let next = || {
        let point = point(rest)?;
        rest = rest.get(point.bytes..)?;
        Some(point)
    };
    std::iter::from_fn(next).take(most).collect()
}

/// The point that a text begins with, white space before it included.
fn point(text: &[u8]) -> Option<PlainPoint> {
    let mut rest = Rest(text);
    rest.space();
    let written = rest.position()?;
    let at = fix::position(&written).ok()?;
    let height_m = if rest.eat(b"/>") {
        None
    } else {
        rest.tag(b">")?;
        rest.height()?
    };
    Some(PlainPoint {
        at,
        height_m,
        bytes: text.len() - rest.0.len(),
    })
}

/// What is left of a text.
struct Rest<'t>(&'t [u8]);

impl<'t> Rest<'t> {
    fn space(&mut self) {
        self.0 = self.0.trim_ascii_start();
    }

    /// Whether these bytes stood here; they are behind now.
    fn eat(&mut self, bytes: &[u8]) -> bool {
        match self.0.strip_prefix(bytes) {
            Some(rest) => {
                self.0 = rest;
                true
            }
            None => false,
        }
    }

    fn tag(&mut self, bytes: &[u8]) -> Option<()> {
        self.eat(bytes).then_some(())
    }

    /// Plain text up to a character, which is behind then.
    fn until(&mut self, end: u8) -> Option<&'t str> {
        str::from_utf8(self.plain(end)?).ok()
    }

    fn plain(&mut self, end: u8) -> Option<&'t [u8]> {
        let (text, rest) = self.0.split_at_checked(memchr(end, self.0)?)?;
        let plain = |b: &u8| matches!(b, b' '..=b'~') && *b != b'&' && *b != b'<';
        if !text.iter().all(plain) {
            return None;
        }
        self.0 = rest.get(1..)?;
        Some(text)
    }

    fn position(&mut self) -> Option<WrittenPosition<'t>> {
        self.tag(b"<trkpt lat=\"")?;
        let lat = Cow::Borrowed(self.until(b'"')?);
        self.tag(b" lon=\"")?;
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
            if self.eat(b"</trkpt>") {
                return Some(height_m);
            } else if self.eat(b"<ele>") {
                let found_m = fix::height_m(self.until(b'<')?).ok()?;
                self.tag(b"/ele>")?;
                height_m = height_m.or(found_m);
            } else {
                self.tag(b"<time>")?;
                self.plain(b'<')?;
                self.tag(b"/time>")?;
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
        let read = point(text.as_bytes()).expect("a plain point");
        let (lon_deg, lat_deg) = (-7.25, 46.5);
        assert_eq!(read.at, LonLat::new(lon_deg, lat_deg));
        assert_eq!((read.height_m, read.bytes), (Some(2800.5), text.len() - 1));
        let bare = point(b"<trkpt lat=\"1\" lon=\"2\"/>").expect("a plain point");
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
        assert_eq!(all, run(text.as_bytes(), usize::MAX));
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
            assert_eq!(point(text.as_bytes()), None, "{text}");
        }
    }
}
