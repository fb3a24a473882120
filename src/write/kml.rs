//! KML 2.2 for globes: zones, legs and the places where the set-up changes, each with its text.
//!
//! Viewers show a description as HTML, so a `<` of the leader's own words is written as the entity of
//! that HTML first and escaped as XML after; balloons show the description alone, with the name above it, since some put
//! the name into their HTML unescaped.

use std::io::{self, Write};

use quick_xml::{
    Writer,
    events::{BytesDecl, BytesEnd, BytesStart, BytesText, Event},
};

use crate::{
    geometry::{LonLat, Polygon, antimeridian},
    plan::leg::{Leg, Verdict},
    say::{plain, span::Said, voice::Voice},
    trip::route::Stretch,
    write::{
        parts::{
            change::{self, ChangePoint},
            halt::{self, HaltPoint},
            look::{self, LookPoint},
            outline::Outlines,
            popup, style,
            zones::{self, ZoneShown, ZonesShown},
        },
        sheet::Sheet,
    },
};

/// Name of the format `[kml22, from memory: OGC 07-147r2]`.
const NAMESPACE: &str = "http://www.opengis.net/kml/2.2";
/// Opacity of zone fills, 0 to 255: what lies under them still shows. Our judgement.
const ZONE_ALPHA: u8 = 0x99;
/// The same of zones that the route does not meet, 15 %. Our judgement.
const NOT_MET_ALPHA: u8 = 0x26;
/// Their style.
const ZONE_NOT_MET: &str = "zone-not-met";

/// Writes the whole document.
///
/// # Errors
/// Whatever `out` refuses.
pub fn globe(out: impl Write, sheet: &Sheet<'_>) -> io::Result<()> {
    let mut kml = Kml(Writer::new_with_indent(out, b' ', 1));
    let declaration = BytesDecl::new("1.0", Some("UTF-8"), None);
    kml.0.write_event(Event::Decl(declaration))?;
    let root = BytesStart::new("kml").with_attributes([("xmlns", NAMESPACE)]);
    kml.0.write_event(Event::Start(root))?;
    kml.within("Document", |kml| document(kml, sheet, sheet.look.voice))?;
    kml.0.write_event(Event::End(BytesEnd::new("kml")))?;
    kml.0.get_mut().write_all(b"\n")
}

fn document(kml: &mut Kml<impl Write>, sheet: &Sheet<'_>, voice: Voice) -> io::Result<()> {
    kml.text("name", &sheet.title().to_string())?;
    let zones = ZonesShown::of(sheet);
    let says = zones.first_line(sheet.plan, voice);
    kml.text("description", &html(&says.to_string()))?;
    styles(kml)?;
    let fit = Outlines::of(sheet);
    kml.folder("folder-zones", voice, |kml| {
        let mut zones = zones.zones.iter();
        zones.try_for_each(|z| zone(kml, *z, &fit, voice))
    })?;
    kml.folder("folder-legs", voice, |kml| {
        let mut legs = sheet.plan.legs.iter();
        legs.try_for_each(|l| leg(kml, l, sheet, voice))
    })?;
    let changes = change::changes(sheet);
    kml.folder("folder-changes", voice, |kml| {
        changes.iter().try_for_each(|c| place(kml, c, voice))
    })?;
    let halts = halt::halts(sheet);
    if !halts.is_empty() {
        kml.folder("folder-halts", voice, |kml| {
            halts.iter().try_for_each(|h| halted(kml, h, voice))
        })?;
    }
    let looks = look::looks(sheet);
    if looks.is_empty() {
        return Ok(());
    }
    kml.folder("folder-looks", voice, |kml| {
        looks.iter().try_for_each(|l| looked_at(kml, l, voice))
    })
}

/// A writer that knows this format's small phrases.
struct Kml<W: Write>(Writer<W>);

impl<W: Write> Kml<W> {
    fn within(
        &mut self,
        name: &str,
        inside: impl FnOnce(&mut Self) -> io::Result<()>,
    ) -> io::Result<()> {
        self.0.write_event(Event::Start(BytesStart::new(name)))?;
        inside(self)?;
        self.0.write_event(Event::End(BytesEnd::new(name)))
    }

    fn text(&mut self, name: &str, text: &str) -> io::Result<()> {
        let text = plain::line(text);
        self.0
            .create_element(name)
            .write_text_content(BytesText::new(&text))?;
        Ok(())
    }

    fn folder(
        &mut self,
        key: &str,
        voice: Voice,
        inside: impl FnOnce(&mut Self) -> io::Result<()>,
    ) -> io::Result<()> {
        self.within("Folder", |kml| {
            kml.text("name", &voice.say(key, &[]).to_string())?;
            inside(kml)
        })
    }

    fn placemark(
        &mut self,
        name: &str,
        description: &str,
        style: &str,
        geometry: impl FnOnce(&mut Self) -> io::Result<()>,
    ) -> io::Result<()> {
        self.within("Placemark", |kml| {
            kml.text("name", name)?;
            let [title, says] = [name, description].map(html);
            kml.text("description", &format!("<b>{title}</b><br/>{says}"))?;
            kml.text("styleUrl", &format!("#{style}"))?;
            geometry(kml)
        })
    }

    /// `lon,lat lon,lat …`, 7 decimals (a centimetre).
    fn coordinates(&mut self, points: &[LonLat]) -> io::Result<()> {
        let pairs: Vec<String> = points.iter().map(|&p| pair(p)).collect();
        self.text("coordinates", &pairs.join(" "))
    }
}

/// Words as the HTML of a balloon.
fn html(text: &str) -> String {
    text.replace('<', "&lt;")
}

fn pair(p: LonLat) -> String {
    let round = |deg: f64| (deg * 1e7).round() / 1e7 + 0.0;
    format!("{},{}", round(p.lon_deg), round(p.lat_deg))
}

// --- styles ---

fn styles(kml: &mut Kml<impl Write>) -> io::Result<()> {
    for (i, fill) in style::ZONE_FILLS.iter().enumerate() {
        styled(kml, &format!("zone{i}"), |kml| {
            line_style(kml, style::ZONE_STROKE, 1.0)?;
            kml.within("PolyStyle", |kml| {
                kml.text("color", &colour(fill, ZONE_ALPHA))
            })?;
            balloon(kml)
        })?;
    }
    styled(kml, ZONE_NOT_MET, |kml| {
        line_style(kml, style::ZONE_STROKE, style::NOT_MET_WIDTH)?;
        kml.within("PolyStyle", |kml| {
            kml.text("color", &colour(style::ZONE_STROKE, NOT_MET_ALPHA))
        })?;
        balloon(kml)
    })?;
    for verdict in Verdict::ALL {
        styled(kml, verdict.as_str(), |kml| {
            line_style(kml, style::leg_stroke(verdict), style::leg_width(verdict))?;
            balloon(kml)
        })?;
    }
    styled(kml, "change", balloon)
}

fn styled<W: Write>(
    kml: &mut Kml<W>,
    id: &str,
    inside: impl FnOnce(&mut Kml<W>) -> io::Result<()>,
) -> io::Result<()> {
    let start = BytesStart::new("Style").with_attributes([("id", id)]);
    kml.0.write_event(Event::Start(start))?;
    inside(kml)?;
    kml.0.write_event(Event::End(BytesEnd::new("Style")))
}

fn line_style(kml: &mut Kml<impl Write>, stroke: &str, width: f64) -> io::Result<()> {
    kml.within("LineStyle", |kml| {
        kml.text("color", &colour(stroke, 0xFF))?;
        kml.text("width", &width.to_string())
    })
}

fn balloon(kml: &mut Kml<impl Write>) -> io::Result<()> {
    kml.within("BalloonStyle", |kml| kml.text("text", "$[description]"))
}

/// `#RRGGBB` as `aabbggrr`, the order of this format.
fn colour(rrggbb: &str, alpha: u8) -> String {
    let byte = |at: usize| rrggbb.get(at..at + 2).unwrap_or("00").to_lowercase();
    format!("{alpha:02x}{}{}{}", byte(5), byte(3), byte(1))
}

// --- zones ---

fn zone(
    kml: &mut Kml<impl Write>,
    shown: ZoneShown<'_>,
    fit: &Outlines,
    voice: Voice,
) -> io::Result<()> {
    let parts = fit.polygons(shown.zone);
    let class = match shown.met {
        true => format!("zone{}", style::zone_class(shown.zone.gap.max_m)),
        false => ZONE_NOT_MET.to_owned(),
    };
    let (title, says) = (
        shown.title(voice).to_string(),
        zones::told(shown.zone, voice).to_string(),
    );
    kml.placemark(&title, &says, &class, |kml| {
        kml.within("MultiGeometry", |kml| {
            parts.iter().try_for_each(|part| polygon(kml, part))
        })
    })
}

fn polygon(kml: &mut Kml<impl Write>, polygon: &Polygon) -> io::Result<()> {
    kml.within("Polygon", |kml| {
        ring(kml, "outerBoundaryIs", &polygon.outer)?;
        let mut holes = polygon.holes.iter();
        holes.try_for_each(|hole| ring(kml, "innerBoundaryIs", hole))
    })
}

fn ring(kml: &mut Kml<impl Write>, side: &str, points: &[LonLat]) -> io::Result<()> {
    kml.within(side, |kml| {
        kml.within("LinearRing", |kml| kml.coordinates(points))
    })
}

// --- legs and changes ---

fn leg(kml: &mut Kml<impl Write>, leg: &Leg, sheet: &Sheet<'_>, voice: Voice) -> io::Result<()> {
    let Some(stage) = sheet.route.stages.iter().find(|s| s.number == leg.stage) else {
        return Ok(());
    };
    let parts = stage.line(Stretch {
        from_m: leg.start_m,
        to_m: leg.end_m,
    });
    let lines = parts.iter().flat_map(|part| antimeridian::cut_line(part));
    let lines: Vec<Vec<LonLat>> = lines.filter(|line| line.len() > 1).collect();
    if lines.is_empty() {
        return Ok(());
    }
    let (title, says) = (
        popup::leg_title(leg, voice).to_string(),
        popup::leg_told(leg, voice).to_string(),
    );
    kml.placemark(&title, &says, leg.verdict.as_str(), |kml| {
        kml.within("MultiGeometry", |kml| {
            lines.iter().try_for_each(|line| {
                kml.within("LineString", |kml| {
                    kml.text("tessellate", "1")?;
                    kml.coordinates(line)
                })
            })
        })
    })
}

fn place(kml: &mut Kml<impl Write>, change: &ChangePoint<'_>, voice: Voice) -> io::Result<()> {
    let at = LonLat::new(change.at[0], change.at[1]).normal();
    point(kml, &change.title(voice), &change.told(voice), at)
}

fn halted(kml: &mut Kml<impl Write>, halt: &HaltPoint<'_>, voice: Voice) -> io::Result<()> {
    point(kml, &halt.title(voice), &halt.description(voice), halt.at)
}

fn looked_at(kml: &mut Kml<impl Write>, look: &LookPoint<'_>, voice: Voice) -> io::Result<()> {
    point(kml, &look.title(voice), &look.description(voice), look.at)
}

fn point(kml: &mut Kml<impl Write>, title: &Said, says: &Said, at: LonLat) -> io::Result<()> {
    kml.placemark(&title.to_string(), &says.to_string(), "change", |kml| {
        kml.within("Point", |kml| kml.coordinates(&[at]))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn colours_turn_round() {
        assert_eq!(colour("#1273B5", 0xFF), "ffb57312");
    }
}
