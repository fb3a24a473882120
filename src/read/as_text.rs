//! Ice as text, for those who hand their inputs on: GeoJSON as it is, FlatGeobuf written down as GeoJSON.

use super::{input::Seekable, signature};
use crate::{fault::Fault, trip::route::Route};

/// The bytes of a zones file as text: of FlatGeobuf all features, anything else as it is. `None` is as it is.
///
/// # Errors
/// It is FlatGeobuf and damaged, or of outlines that are no polygons; or this build does not read it.
///
/// ```
/// use schrund::read::as_text::zones_text;
///
/// assert_eq!(zones_text("zones.geojson", schrund::example::ZONES_GEOJSON.as_bytes())?, None);
/// assert!(zones_text("zones.fgb", b"fgb\x03fgb\x00").is_err(), "it ends there");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn zones_text(name: &str, bytes: &[u8]) -> Result<Option<String>, Vec<Fault>> {
    if !signature::is_flatgeobuf(bytes) {
        return Ok(None);
    }
    flatgeobuf::all(name, bytes).map(Some)
}

/// The outlines of an inventory in FlatGeobuf that lie near a route, as text; `None` where the file is anything else. Only what
/// is needed of it is read.
///
/// # Errors
/// As [`zones_text`], or it cannot be read.
///
/// ```
/// use schrund::{example, read::{as_text::near_text, input::Seekable}};
///
/// let route = example::job()?.route;
/// let open = |bytes: &'static [u8]| -> Seekable { Box::new(std::io::Cursor::new(bytes)) };
/// let text = near_text("ice.geojson", open(example::PAIR_GLACIERS_GEOJSON.as_bytes()), &route)?;
/// assert_eq!(text, None, "it is text already");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn near_text(
    name: &str,
    mut file: Seekable,
    route: &Route,
) -> Result<Option<String>, Vec<Fault>> {
    if !signature::begins_flatgeobuf(name, &mut file)? {
        return Ok(None);
    }
    flatgeobuf::near(name, file, route).map(Some)
}

#[cfg(feature = "flatgeobuf")]
mod flatgeobuf {
    use super::{Fault, Route, Seekable};
    use crate::read::flatgeobuf::{Near, text, text_near};

    pub(super) fn all(name: &str, bytes: &[u8]) -> Result<String, Vec<Fault>> {
        text(name, bytes)
    }

    pub(super) fn near(name: &str, file: Seekable, route: &Route) -> Result<String, Vec<Fault>> {
        text_near(name, file, Near::of(Some(route), &[]))
    }
}

#[cfg(not(feature = "flatgeobuf"))]
mod flatgeobuf {
    use super::{Fault, Route, Seekable};
    use crate::fault::{Place, geojson::InGeojson, instead::Instead};

    pub(super) fn all(name: &str, _: &[u8]) -> Result<String, Vec<Fault>> {
        let is = InGeojson::Is(Instead::FlatGeobuf);
        Err(vec![Fault::new(is, Place::file(name))])
    }

    pub(super) fn near(name: &str, _: Seekable, _: &Route) -> Result<String, Vec<Fault>> {
        all(name, &[])
    }
}
