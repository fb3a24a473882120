//! Ice as text, for those who hand their inputs on: GeoJSON as it is, FlatGeobuf written down as GeoJSON.

use super::{
    input::{Input, Seekable},
    signature,
};
use crate::{fault::Fault, geometry::Bounds, limits::InputLimits, trip::route::Route};

/// The bytes of a zones file as text: of FlatGeobuf all features, anything else as it is. `None` is as it is.
///
/// # Errors
/// It is FlatGeobuf and damaged, or of outlines that are no polygons; or this build does not read it.
///
/// ```
/// use schrund::read::as_text::zones_text;
///
/// assert_eq!(zones_text("zones.geojson", schrund::example::ZONES_GEOJSON.as_bytes(), &Default::default())?, None);
/// assert!(zones_text("zones.fgb", b"fgb\x03fgb\x00", &Default::default()).is_err(), "it ends there");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn zones_text(
    name: &str,
    bytes: &[u8],
    limits: &InputLimits,
) -> Result<Option<String>, Vec<Fault>> {
    if !signature::is_flatgeobuf(bytes) {
        return Ok(None);
    }
    flatgeobuf::all(name, bytes, limits).map(Some)
}

/// The outlines of an inventory in FlatGeobuf that lie near a route, as text; `None` where the file is anything else. Only what
/// is needed of it is read.
///
/// # Errors
/// As [`zones_text`], or it cannot be read.
///
/// ```
/// use schrund::{example, read::{as_text::near_text, input::{Input, Seekable}}};
///
/// let route = example::job()?.route;
/// let open = |bytes: &'static [u8]| Input::new("ice.geojson", Box::new(std::io::Cursor::new(bytes)) as Seekable);
/// let text = near_text(open(example::PAIR_GLACIERS_GEOJSON.as_bytes()), &route)?;
/// assert_eq!(text, None, "it is text already");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn near_text(input: Input<Seekable>, route: &Route) -> Result<Option<String>, Vec<Fault>> {
    packed(input, |name, file| flatgeobuf::near(name, file, route))
}

/// Outlines of a file that lie within boxes.
///
/// ```
/// use schrund::read::{as_text::{TextWithin, text_within}, input::{Input, Seekable}};
///
/// let held: Seekable = Box::new(std::io::Cursor::new(schrund::example::PAIR_GLACIERS_GEOJSON.as_bytes()));
/// let found: Option<TextWithin> = text_within(Input::new("ice.geojson", held), &[])?;
/// assert_eq!(found, None, "it is text already");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TextWithin {
    /// GeoJSON: a collection of those whose box meets one of the boxes.
    pub text: String,
    /// How many the file holds, as far as was seen.
    pub features: usize,
}

/// The outlines of a file in FlatGeobuf within boxes, as text; `None` where the file is anything else. Only what is needed of it
/// is read.
///
/// # Errors
/// As [`near_text`].
pub fn text_within(
    input: Input<Seekable>,
    boxes: &[Bounds],
) -> Result<Option<TextWithin>, Vec<Fault>> {
    packed(input, |name, file| flatgeobuf::within(name, file, boxes))
}

/// What is read of a file in FlatGeobuf; `None` where it is anything else.
fn packed<T>(
    input: Input<Seekable>,
    read: impl FnOnce(&str, (Seekable, &InputLimits)) -> Result<T, Vec<Fault>>,
) -> Result<Option<T>, Vec<Fault>> {
    let (name, mut file) = (&input.name, input.source?);
    match signature::begins_flatgeobuf(name, &mut file)? {
        true => read(name, (file, &input.limits)).map(Some),
        false => Ok(None),
    }
}

#[cfg(feature = "flatgeobuf")]
mod flatgeobuf {
    use super::{Bounds, Fault, InputLimits, Route, Seekable, TextWithin};
    use crate::read::flatgeobuf::{Near, text, text_near};

    pub(super) fn within(
        name: &str,
        file: (Seekable, &InputLimits),
        boxes: &[Bounds],
    ) -> Result<TextWithin, Vec<Fault>> {
        let (text, features) = text_near(name, file, Near::within(boxes))?;
        Ok(TextWithin { text, features })
    }

    pub(super) fn all(
        name: &str,
        bytes: &[u8],
        limits: &InputLimits,
    ) -> Result<String, Vec<Fault>> {
        text(name, bytes, limits)
    }

    pub(super) fn near(
        name: &str,
        file: (Seekable, &InputLimits),
        route: &Route,
    ) -> Result<String, Vec<Fault>> {
        Ok(text_near(name, file, Near::of(Some(route), &[]))?.0)
    }
}

#[cfg(not(feature = "flatgeobuf"))]
mod flatgeobuf {
    use super::{Bounds, Fault, InputLimits, Route, Seekable, TextWithin};
    use crate::fault::{Place, geojson::InGeojson, instead::Instead};

    pub(super) fn all(name: &str, _: &[u8], _: &InputLimits) -> Result<String, Vec<Fault>> {
        let is = InGeojson::Is(Instead::FlatGeobuf);
        Err(vec![Fault::new(is, Place::file(name))])
    }

    pub(super) fn near(
        name: &str,
        (_, limits): (Seekable, &InputLimits),
        _: &Route,
    ) -> Result<String, Vec<Fault>> {
        all(name, &[], limits)
    }

    pub(super) fn within(
        name: &str,
        (_, limits): (Seekable, &InputLimits),
        _: &[Bounds],
    ) -> Result<TextWithin, Vec<Fault>> {
        all(name, &[], limits).map(|text| TextWithin { text, features: 0 })
    }
}
