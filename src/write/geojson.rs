//! The annotated map `[rfc7946]`: zones, then legs, then the places where the set-up changes, then halts, then places to
//! look at.
//!
//! One feature is written at a time, so a long line needs little memory. Styling members follow
//! simplestyle-spec 1.1.0 and can be left out.

pub(super) mod form;
mod points;

use std::io::{self, Write};

use geojson::{Feature, GeometryValue, JsonObject, Position};
use serde_json::{Value, json};

use crate::{
    cores,
    geometry::{Bounds, LonLat, Polygon, antimeridian},
    plan::leg::{Leg, TeamSetup},
    say::{finding, name},
    trip::route::{Stage, Stretch},
    write::{
        json_text,
        parts::{
            change, halt, look as looks,
            outline::Outlines,
            popup, sentence, style,
            zones::{ZoneShown, ZonesShown},
        },
        sheet::{Look, Sheet},
    },
};

use form::{feature, mm, position, put};

/// Writes the whole collection.
///
/// # Errors
/// Whatever `out` refuses.
pub fn map(mut out: impl Write, sheet: &Sheet<'_>) -> io::Result<()> {
    let look = sheet.look;
    let shown = ZonesShown::of(sheet);
    write!(out, "{{\"type\":\"FeatureCollection\"")?;
    if let Some(bounds) = bounds(sheet, &shown) {
        let (low, high) = (position(bounds.low), position(bounds.high));
        write!(
            out,
            ",\"bbox\":[{},{},{},{}]",
            low[0], low[1], high[0], high[1]
        )?;
    }
    // Members of its own beside the features `[rfc7946 allows them]`.
    let says = shown.first_line(sheet.plan, look.voice).to_string();
    write!(out, ",\"says\":{}", json_text::line(&says)?)?;
    if shown.left_out > 0 {
        write!(out, ",\"left_out\":{}", json!({ "zones": shown.left_out }))?;
    }
    write!(out, ",\"features\":[")?;
    let fit = Outlines::of(sheet);
    let zones = shown.zones.iter();
    let mut zones = zones.filter_map(|z| zone(*z, &fit, look));
    let changes = change::changes(sheet);
    let places = changes.iter().map(|c| points::place(c, look));
    let halts = halt::halts(sheet);
    let halts = halts.iter().map(|h| points::halted(h, look));
    let looks = looks::looks(sheet);
    let looks = looks.iter().map(|l| points::looked_at(l, look));
    let mut features = Features {
        out: &mut out,
        separator: "\n",
    };
    zones.try_for_each(|zone| features.write(&zone))?;
    features.legs(sheet)?;
    let mut others = places.chain(halts).chain(looks);
    others.try_for_each(|place| features.write(&place))?;
    writeln!(out, "\n]}}")
}

/// Legs that are put into words and figures side by side: what is not written yet is kept. Our judgement.
const SIDE_BY_SIDE: usize = 16;

/// Features while they are written one behind the other.
struct Features<'o, W> {
    out: &'o mut W,
    separator: &'static str,
}

impl<W: Write> Features<'_, W> {
    fn write(&mut self, feature: &Feature) -> io::Result<()> {
        self.separate()?;
        Ok(json_text::write(&mut *self.out, feature)?)
    }

    fn separate(&mut self) -> io::Result<()> {
        let separator = std::mem::replace(&mut self.separator, ",\n");
        self.out.write_all(separator.as_bytes())
    }

    /// Some legs at a time; one that is alone, which may be all of a long line, is not kept as a text besides.
    fn legs(&mut self, sheet: &Sheet<'_>) -> io::Result<()> {
        for some in sheet.plan.legs.chunks(SIDE_BY_SIDE) {
            if let [alone] = some {
                let feature = leg(alone, sheet, sheet.look);
                feature.map_or(Ok(()), |feature| self.write(&feature))?;
                continue;
            }
            let texts = cores::map(some, |one| {
                let feature = leg(one, sheet, sheet.look)?;
                Some(json_text::line(&feature))
            });
            for text in texts.into_iter().flatten() {
                self.separate()?;
                self.out.write_all(text?.as_bytes())?;
            }
        }
        Ok(())
    }
}

/// Box round all that is written. Over the antimeridian its west lies above its east `[rfc7946]`.
fn bounds(sheet: &Sheet<'_>, shown: &ZonesShown<'_>) -> Option<Bounds> {
    let lines = sheet.route.stages.iter().flat_map(|stage| {
        let lines = stage.segments().filter(|line| line.len() > 1);
        lines.map(|line| stage.points().part(line))
    });
    let rings = shown
        .zones
        .iter()
        .flat_map(|shown| &shown.zone.outline.polygons)
        .flat_map(antimeridian::cut_polygon);
    let rings = rings.filter_map(|p| Bounds::of(&p.outer));
    let boxes: Vec<Bounds> = lines.flat_map(boxes_of).chain(rings).collect();
    let all = boxes.iter().copied().reduce(Bounds::with)?;
    let (west, east) = without_widest_gap(&boxes, all);
    Some(Bounds {
        low: LonLat::new(west, all.low.lat_deg),
        high: LonLat::new(east, all.high.lat_deg),
    })
}

/// The boxes round what the antimeridian cuts a line into: nearly always nothing.
fn boxes_of(line: impl Iterator<Item = LonLat> + Clone) -> Vec<Bounds> {
    match Bounds::over(line.clone()) {
        Some(all) if all.low.lon_deg >= -180.0 && all.high.lon_deg <= 180.0 => vec![all],
        _ => antimeridian::cut_line(&line.collect::<Vec<_>>())
            .iter()
            .filter_map(|part| Bounds::of(part))
            .collect(),
    }
}

/// West and east of the shortest span that holds all boxes on the circle.
fn without_widest_gap(boxes: &[Bounds], all: Bounds) -> (f64, f64) {
    let mut spans: Vec<(f64, f64)> = boxes
        .iter()
        .map(|b| (b.low.lon_deg, b.high.lon_deg))
        .collect();
    spans.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut reached = all.low.lon_deg;
    let mut widest = (
        all.low.lon_deg + 360.0 - all.high.lon_deg,
        (all.low.lon_deg, all.high.lon_deg),
    );
    for (west, east) in spans {
        if west - reached > widest.0 {
            widest = (west - reached, (west, reached));
        }
        reached = reached.max(east);
    }
    widest.1
}

fn positions(line: &[LonLat]) -> Vec<Position> {
    let mut rounded: Vec<[f64; 2]> = line.iter().map(|&p| position(p)).collect();
    let ends = (rounded.first().copied(), rounded.last().copied());
    rounded.dedup();
    if let ([_], (Some(first), Some(last))) = (rounded.as_slice(), ends) {
        rounded = vec![first, last];
    }
    rounded.into_iter().map(Position::from).collect()
}

// --- zones ---

fn zone(shown: ZoneShown<'_>, fit: &Outlines, look: Look) -> Option<Feature> {
    let polygons = fit.polygons(shown.zone);
    let mut rings: Vec<Vec<Vec<Position>>> = polygons.iter().filter_map(polygon).collect();
    let value = match rings.len() {
        0 => return None,
        1 => GeometryValue::Polygon {
            coordinates: rings.remove(0),
        },
        _ => GeometryValue::MultiPolygon { coordinates: rings },
    };
    Some(feature(value, zone_properties(shown, look)))
}

fn zone_properties(shown: ZoneShown<'_>, look: Look) -> JsonObject {
    let ZoneShown { zone, summary, met } = shown;
    let mut properties = JsonObject::new();
    put(&mut properties, Value::Object(scalars(&zone.other)));
    put(
        &mut properties,
        json!({
            "role": "zone",
            "name": zone.name.clone().unwrap_or_else(|| name::zone(&zone.into(), look.voice).to_string()),
            "title": shown.title(look.voice).to_string(),
            "description": sentence::zone_description(zone, look.voice).to_string(),
            "zone": zone.number,
            "met": met,
            "gap_m": zone.gap.max_m,
            "gap_min_m": zone.gap.min_m,
            "gap_assumed": zone.gap.assumed,
            "snow_depth_m": zone.snow_depth_m,
            "surface": summary.surface,
            "strike_deg": summary.strike_deg,
            "strike_uncertainty_deg": summary.strike_uncertainty_deg,
            "strike_proposed_deg": summary.strike_proposed_deg.map(mm),
            "rope": summary.rope,
            "observed_on": zone.observed_on,
            "source": zone.source,
            "note": zone.note,
            "crossings": summary.crossings.len(),
        }),
    );
    if look.styled {
        let (fill, width, stroke) = match met {
            true => (0.6, 1.0, 1.0),
            false => (
                style::NOT_MET_FILL,
                style::NOT_MET_WIDTH,
                style::NOT_MET_STROKE,
            ),
        };
        put(
            &mut properties,
            json!({
                "fill": style::zone_fill(zone.gap.max_m),
                "fill-opacity": fill,
                "stroke": style::ZONE_STROKE,
                "stroke-width": width,
                "stroke-opacity": stroke,
            }),
        );
    }
    properties
}

/// The leader's own properties as flat values: what is nested is passed on as its JSON text.
fn scalars(other: &JsonObject) -> JsonObject {
    let flat = |v: &Value| match v {
        Value::Array(_) | Value::Object(_) => Value::String(v.to_string()),
        v => v.clone(),
    };
    other
        .iter()
        .filter(|(_, v)| !v.is_null())
        .map(|(k, v)| (k.clone(), flat(v)))
        .collect()
}

/// Rings closed, outer ones counter-clockwise, holes clockwise; rings that rounding left without an
/// area are dropped.
fn polygon(polygon: &Polygon) -> Option<Vec<Vec<Position>>> {
    let outer = ring(&polygon.outer, false)?;
    let holes = polygon.holes.iter().filter_map(|h| ring(h, true));
    Some(std::iter::once(outer).chain(holes).collect())
}

fn ring(points: &[LonLat], clockwise: bool) -> Option<Vec<Position>> {
    let mut rounded: Vec<[f64; 2]> = points.iter().map(|&p| position(p)).collect();
    rounded.dedup();
    if rounded.len() < 4 {
        return None;
    }
    if (doubled_area(&rounded) < 0.0) != clockwise {
        rounded.reverse();
    }
    Some(rounded.into_iter().map(Position::from).collect())
}

fn doubled_area(ring: &[[f64; 2]]) -> f64 {
    let Some(&[x0, y0]) = ring.first() else {
        return 0.0;
    };
    let cross = |pair: &[[f64; 2]]| {
        let ([ax, ay], [bx, by]) = (pair[0], pair[1]);
        (ax - x0) * (by - y0) - (bx - x0) * (ay - y0)
    };
    ring.windows(2).map(cross).sum()
}

// --- legs ---

fn leg(leg: &Leg, sheet: &Sheet<'_>, look: Look) -> Option<Feature> {
    let stage: &Stage = sheet.route.stages.iter().find(|s| s.number == leg.stage)?;
    let parts = stage.line(Stretch {
        from_m: leg.start_m,
        to_m: leg.end_m,
    });
    let mut lines: Vec<Vec<Position>> = parts
        .iter()
        .flat_map(|part| antimeridian::cut_line(part))
        .map(|part| positions(&part))
        .collect();
    let has_length = |line: &Vec<Position>| line.first() != line.last() || line.len() > 2;
    lines.retain(|line| line.len() > 1);
    if lines.iter().any(has_length) {
        lines.retain(has_length);
    }
    let value = match lines.len() {
        0 => return None,
        1 => GeometryValue::LineString {
            coordinates: lines.remove(0),
        },
        _ => GeometryValue::MultiLineString { coordinates: lines },
    };
    Some(feature(value, leg_properties(leg, look)))
}

fn leg_properties(leg: &Leg, look: Look) -> JsonObject {
    let zones: Vec<String> = leg.zones.iter().map(usize::to_string).collect();
    let mut properties = JsonObject::new();
    put(
        &mut properties,
        json!({
            "role": "leg",
            "name": finding::legs(&[leg.leg], look.voice).capital().to_string(),
            "title": popup::leg_title(leg, look.voice).to_string(),
            "description": popup::leg_told(leg, look.voice).to_string(),
            "leg": leg.leg,
            "stage": leg.stage,
            "roped": leg.roped,
            "start_m": mm(leg.start_m),
            "end_m": mm(leg.end_m),
            "length_m": mm(leg.length_m),
            "start_height_m": leg.start_height_m.map(mm),
            "end_height_m": leg.end_height_m.map(mm),
            "ascent_m": leg.ascent_m.map(mm),
            "descent_m": leg.descent_m.map(mm),
            "steepest_deg": leg.steepest_deg.map(mm),
            "ground_steepest_deg": leg.ground_steepest_deg.map(mm),
            "lip_slope_deg": leg.lip_slope_deg.map(mm),
            "bearing_deg": leg.bearing_deg.map(mm),
            "strike_proposed_deg": leg.strike_proposed_deg.map(mm),
            "zones": zones.join(" "),
            "gap_known": leg.gap_known,
            "gap_m": leg.gap_m,
            "effective_gap_m": leg.effective_gap_m.map(mm),
            "gap_assumed": leg.roped.then_some(leg.gap_assumed),
            "along": leg.along,
            "snow_depth_m": leg.snow_depth_m,
            "time_min": mm(leg.time_min),
            "rope_min": mm(leg.rope_min),
            "break_min": mm(leg.break_min),
            "halt_min": mm(leg.halt_min),
            "start_clock": leg.start_clock,
            "end_clock": leg.end_clock,
            "verdict": leg.verdict.as_str(),
        }),
    );
    for team in &leg.teams {
        put_team(&mut properties, team, leg.teams.len());
    }
    if look.styled {
        put(
            &mut properties,
            json!({
                "stroke": style::leg_stroke(leg.verdict),
                "stroke-width": style::leg_width(leg.verdict),
                "stroke-opacity": 1,
            }),
        );
    }
    properties
}

/// The set-up as flat values; with several teams the names end in the team's number.
fn put_team(properties: &mut JsonObject, team: &TeamSetup, teams: usize) {
    let name = |what: &str| {
        if teams > 1 {
            format!("{what}_team_{}", team.team)
        } else {
            what.to_owned()
        }
    };
    let members = [
        ("people", json!(team.people)),
        ("spacing_m", json!(team.spacing_m)),
        ("knots", json!(team.knots.count)),
        ("coil_m", json!(mm(team.coil_m))),
        ("coil_carried_m", json!(mm(team.coil_carried_m))),
        ("bag_m", json!(mm(team.bag_m))),
        ("rope_m", json!(mm(team.ledger.total_m))),
        ("sold_length_m", json!(team.sold_length_m)),
        ("spare_m", json!(team.rope.as_ref().map(|r| mm(r.spare_m)))),
        ("as_tied_gap_m", json!(team.as_tied_gap_m.map(mm))),
        ("covers_gap_m", json!(team.covers_gap_m.map(mm))),
    ];
    let given = members.into_iter().filter(|(_, v)| !v.is_null());
    properties.extend(given.map(|(what, value)| (name(what), value)));
}
