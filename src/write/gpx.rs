//! GPX 1.1 for devices: a waypoint at each change, each halt and each place to look at, and the line as planned, one `trk` a
//! stage.
//!
//! The `gpx` crate writes the head, its metadata and the waypoints. The points of the line are streamed
//! after them with quick-xml: a `gpx::Waypoint` takes hundreds of bytes, so a line of a million points
//! would take hundreds of megabytes before the first byte is written; this way it takes none.
//!
//! Coordinates have 9 decimals (a tenth of a millimetre) at most, so the line read back crosses the zones
//! where the planned one does; heights have one.

use std::io::{self, Write};

use gpx::{Gpx, GpxVersion, Metadata, Waypoint};
use quick_xml::{
    Writer,
    events::{BytesEnd, BytesStart, BytesText, Event},
};

use crate::{
    geometry::LonLat,
    say::{arg::Arg, name, plain, span::Said, voice::Voice},
    trip::route::{Route, Stage},
    write::{
        parts::{
            change::{self, ChangeKind, ChangePoint},
            findings,
            halt::{self, HaltPoint},
            look::{self, LookPoint, NAME_MOST},
            zones,
        },
        sheet::Sheet,
        text,
    },
};

/// Decimals kept of a coordinate: a tenth of a millimetre.
const SCALE: f64 = 1e9;
const CREATOR: &str = concat!("schrund ", env!("CARGO_PKG_VERSION"));

/// Writes the whole document.
///
/// # Errors
/// Whatever `out` refuses.
pub fn device(mut out: impl Write, sheet: &Sheet<'_>) -> io::Result<()> {
    out.write_all(&head(sheet, sheet.look.voice)?)?;
    for stage in &sheet.route.stages {
        track(&mut out, sheet.route, stage)?;
    }
    out.write_all(b"</gpx>\n")
}

/// Everything up to the tracks: the crate's own document without its end.
fn head(sheet: &Sheet<'_>, voice: Voice) -> io::Result<Vec<u8>> {
    let document = Gpx {
        version: GpxVersion::Gpx11,
        creator: Some(CREATOR.to_owned()),
        metadata: Some(Metadata {
            name: sheet.name().map(plain::line),
            description: Some(findings::first_line(sheet.plan, voice).to_string()),
            ..Metadata::default()
        }),
        waypoints: waypoints(sheet, voice),
        ..Gpx::default()
    };
    let mut text = Vec::new();
    gpx::write(&document, &mut text).map_err(io::Error::other)?;
    let end = b"</gpx>";
    let at = text.windows(end.len()).rposition(|w| w == end);
    text.truncate(at.ok_or_else(|| io::Error::other("the GPX head has no end"))?);
    Ok(text)
}

// --- waypoints ---

fn waypoints(sheet: &Sheet<'_>, voice: Voice) -> Vec<Waypoint> {
    let changes = change::changes(sheet);
    let changes = changes
        .iter()
        .map(|c| waypoint(c, &zones_told(sheet, c, voice), voice));
    let halts = halt::halts(sheet);
    let halts = halts.iter().map(|h| halted(h, voice));
    let looks = look::looks(sheet);
    let looks = looks.iter().map(|l| looked_at(l, voice));
    changes.chain(halts).chain(looks).collect()
}

/// `STOP 4.1` or `LOOK 6.2`, what is to be seen there, and what to do about it.
fn looked_at(look: &LookPoint<'_>, voice: Voice) -> Waypoint {
    let says = look.description(voice).to_string();
    let mut waypoint = flag(look.at, &look.line(voice).to_string(), &says);
    waypoint.elevation = look.height_m.map(tenths);
    waypoint.name = Some(look.code(voice));
    waypoint.type_ = Some(if look.stops() { "stop" } else { "look" }.to_owned());
    waypoint
}

/// `HALT 1`, with its name, its minutes and its hours.
fn halted(halt: &HaltPoint<'_>, voice: Voice) -> Waypoint {
    let title = halt.title(voice).to_string();
    let mut waypoint = flag(halt.at, &title, &halt.description(voice).to_string());
    waypoint.elevation = halt.part.end_height_m.map(tenths);
    waypoint.name = Some(
        voice
            .say("device-halt", &[("number", Arg::Count(halt.number))])
            .to_string(),
    );
    waypoint.type_ = Some("halt".to_owned());
    waypoint
}

/// The zones of the leg that begins here, with what the leader wrote of them.
fn zones_told(sheet: &Sheet<'_>, change: &ChangePoint<'_>, voice: Voice) -> String {
    let begins = change.kind == ChangeKind::RopeUp;
    let met = sheet
        .zones
        .iter()
        .filter(|z| begins && change.leg.zones.contains(&z.number));
    let told = met.map(|z| {
        let label = name::zone(&z.into(), voice).capital();
        format!(" {label}: {}", zones::told(z, voice))
    });
    told.collect()
}

fn waypoint(change: &ChangePoint<'_>, zones: &str, voice: Voice) -> Waypoint {
    let at = LonLat::new(change.at[0], change.at[1]);
    let title = change.title(voice);
    let first = match change.kind {
        ChangeKind::RopeUp => text::set_up(change.leg, voice),
        ChangeKind::OntoIce => text::warned(change.leg, title.clone(), voice).to_string(),
        _ => title.to_string(),
    };
    let says = [title.then("."), change.description(voice)];
    let says = Said::join(change.alarm(voice).into_iter().chain(says), " ");
    let mut waypoint = flag(at, &first, &format!("{says}{zones}"));
    waypoint.elevation = change.height_m.map(tenths);
    waypoint.name = Some(code(change, voice));
    waypoint.type_ = Some(change.kind.as_str().to_owned());
    waypoint
}

/// A place with what a watch has room for, one line, and all that is told of it.
fn flag(at: LonLat, line: &str, detail: &str) -> Waypoint {
    let (lon_deg, lat_deg) = degrees(at);
    let mut waypoint = Waypoint::new((lon_deg, lat_deg).into());
    waypoint.comment = Some(plain::line(line));
    waypoint.description = Some(plain::line(detail));
    waypoint.symbol = Some("Flag".to_owned());
    waypoint
}

/// `A UP 2`, `B OFF 2`, the letter of the change and the leg, `OFF! 2` where the rope comes off on ice by the leader's word,
/// `ICE 2` where the line ends on ice, `ICE! 3` by its own number where ice is walked onto without a rope: at most 10 ASCII
/// characters up to a hundred thousand legs, and unique; the letter is left out where it has no room.
fn code(change: &ChangePoint<'_>, voice: Voice) -> String {
    let (key, number) = match change.kind {
        ChangeKind::RopeUp => ("device-rope-up", change.leg.leg),
        ChangeKind::Unrope => ("device-unrope", change.leg.leg),
        ChangeKind::OffByWord => ("device-off-by-word", change.leg.leg),
        ChangeKind::EndsOnIce => ("device-ends-on-ice", change.leg.leg),
        ChangeKind::OntoIce => ("device-onto-ice", change.number),
    };
    let code = voice
        .say(key, &[("number", Arg::Count(number))])
        .to_string();
    let lettered = format!("{} {code}", change.letter());
    if lettered.len() > NAME_MOST {
        code
    } else {
        lettered
    }
}

// --- the line ---

fn track(out: &mut impl Write, route: &Route, stage: &Stage) -> io::Result<()> {
    let mut xml = Writer::new_with_indent(out, b' ', 2);
    xml.write_event(Event::Start(BytesStart::new("trk")))?;
    let name = stage.name.as_ref().or(route.name.as_ref());
    if let Some(name) = name {
        xml.create_element("name")
            .write_text_content(BytesText::new(&plain::line(name)))?;
    }
    for segment in stage.segments() {
        xml.write_event(Event::Start(BytesStart::new("trkseg")))?;
        for i in segment {
            point(&mut xml, stage, i)?;
        }
        xml.write_event(Event::End(BytesEnd::new("trkseg")))?;
    }
    xml.write_event(Event::End(BytesEnd::new("trk")))?;
    xml.get_mut().write_all(b"\n")
}

fn point(xml: &mut Writer<&mut impl Write>, stage: &Stage, i: usize) -> io::Result<()> {
    let Some(at) = stage.points().get(i) else {
        return Ok(());
    };
    let (lon_deg, lat_deg) = degrees(at);
    let mut start = BytesStart::new("trkpt");
    start.push_attribute(("lat", lat_deg.to_string().as_str()));
    start.push_attribute(("lon", lon_deg.to_string().as_str()));
    let Some(height_m) = stage.height_m(i) else {
        return xml.write_event(Event::Empty(start));
    };
    xml.write_event(Event::Start(start))?;
    xml.create_element("ele")
        .write_text_content(BytesText::new(&tenths(f64::from(height_m)).to_string()))?;
    xml.write_event(Event::End(BytesEnd::new("trkpt")))
}

/// Longitude from −180 up to but not including 180, as the schema's `longitudeType` has it `[gpx11, as
/// excerpted]`, and latitude; rounded.
fn degrees(at: LonLat) -> (f64, f64) {
    let round = |deg: f64| (deg * SCALE).round() / SCALE + 0.0;
    let lon_deg = round(at.normal().lon_deg);
    let lon_deg = if lon_deg >= 180.0 {
        lon_deg - 360.0
    } else {
        lon_deg
    };
    (lon_deg, round(at.lat_deg))
}

fn tenths(metres: f64) -> f64 {
    (metres * 10.0).round() / 10.0 + 0.0
}
