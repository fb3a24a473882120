//! One page of outlines: GeoJSON, as a file or as a server of OGC API – Features (OGC 17-069r4, from memory) gives it.

use serde_json::Value;

use crate::geometry::{Bounds, LonLat};

/// What a page holds.
pub(super) struct OutlinePage {
    pub(super) features: Vec<Value>,
    /// How many there are on all pages, where the server says so.
    pub(super) matched: Option<u64>,
    /// Where the next page is.
    pub(super) next: Option<String>,
    /// Under which licence.
    pub(super) licence: Option<String>,
}

impl OutlinePage {
    /// The page in a text; `None` where it holds no features.
    pub(super) fn parse(text: &[u8]) -> Option<Self> {
        let text = text.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(text);
        let mut page: Value = serde_json::from_slice(text).ok()?;
        let kind = page.get("type")?.as_str()?.to_owned();
        let features = match kind.as_str() {
            "FeatureCollection" => match page.get_mut("features")?.take() {
                Value::Array(features) => features,
                _ => return None,
            },
            "Feature" => return Some(Self::alone(page)),
            _ => return None,
        };
        Some(Self {
            features,
            matched: page.get("numberMatched").and_then(Value::as_u64),
            next: link(&page, "next"),
            licence: link(&page, "license"),
        })
    }

    fn alone(feature: Value) -> Self {
        Self {
            features: vec![feature],
            matched: None,
            next: None,
            licence: None,
        }
    }
}

/// Where a link of the page leads; of several the one that gives JSON.
fn link(page: &Value, rel: &str) -> Option<String> {
    let links = page.get("links")?.as_array()?;
    let text = |link: &Value, member: &str| Some(link.get(member)?.as_str()?.to_owned());
    let is = |link: &&Value| text(link, "rel").is_some_and(|of| of == rel);
    let gives_json = |link: &&Value| text(link, "type").is_none_or(|kind| kind.contains("json"));
    let mut of_rel = links.iter().filter(is);
    let json = links.iter().filter(is).find(gives_json);
    text(json.or_else(|| of_rel.next())?, "href")
}

/// The box of an outline; `None` of what has no area.
pub(super) fn bounds(feature: &Value) -> Option<Bounds> {
    let geometry = feature.get("geometry")?;
    let kind = geometry.get("type")?.as_str()?;
    if !matches!(kind, "Polygon" | "MultiPolygon") {
        return None;
    }
    let mut points = Vec::new();
    positions(geometry.get("coordinates")?, &mut points);
    Bounds::of(&points)
}

/// All positions in lists of lists, however deep.
fn positions(of: &Value, points: &mut Vec<LonLat>) {
    let Value::Array(list) = of else { return };
    match list.as_slice() {
        [Value::Number(lon), Value::Number(lat), ..] => {
            let numbers = lon.as_f64().zip(lat.as_f64());
            points.extend(numbers.map(|(lon, lat)| LonLat::new(lon, lat)));
        }
        inside => inside.iter().for_each(|inside| positions(inside, points)),
    }
}

/// What an outline is called: under `name`, or a name that ends so (`glacier_name`), however it is written.
pub(super) fn called(feature: &Value) -> Option<String> {
    let properties = feature.get("properties")?.as_object()?;
    let named = |exact: bool| {
        let found = properties.iter().find(|(key, value)| {
            let key = key.to_ascii_lowercase();
            let is = key == "name" || !exact && (key.ends_with("_name") || key.ends_with("name"));
            is && value.as_str().is_some_and(|name| !name.trim().is_empty())
        });
        found.and_then(|(_, value)| value.as_str().map(|name| name.trim().to_owned()))
    };
    named(true).or_else(|| named(false))
}
