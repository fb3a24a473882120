//! One feature as GeoJSON.

use flatgeobuf::{Feature, GeometryType, size_prefixed_root_as_feature_with_opts};

use super::{
    near::Near,
    opening::{self, Column, Preamble},
    outline, properties,
};
use crate::{
    fault::flatgeobuf::{FlatgeobufPart, InFlatgeobuf},
    read::geojson::PlainFeature,
};

/// Where the outline of a feature lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lies {
    /// Near, or nobody asked.
    Near,
    /// Elsewhere: nothing of it is written.
    Far,
}

/// Writes a feature behind a text.
///
/// # Errors
/// Its bytes make no sense, or its outline is no polygon and might be ice.
pub(super) fn write(
    bytes: &[u8],
    opening: &Preamble,
    near: Option<&Near>,
    text: &mut Vec<u8>,
) -> Result<Lies, InFlatgeobuf> {
    let feature = opened(bytes)?;
    if !may_be_near(&feature, near) {
        return Ok(Lies::Far);
    }
    text.extend(br#"{"type":"Feature","properties":"#);
    properties_of(&feature, opening, text)?;
    text.extend(br#","geometry":"#);
    shape(&feature, opening.outlines, text)?;
    text.push(b'}');
    Ok(Lies::Near)
}

/// A feature as it can be taken over.
pub(super) enum Taken {
    Far,
    Ice(Box<PlainFeature>),
    /// It makes no sense, or is no polygon: [`write()`] knows.
    Other,
}

/// What a feature holds, its outline as numbers and its properties as JSON.
pub(super) fn taken(bytes: &[u8], opening: &Preamble, near: Option<&Near>) -> Taken {
    let ice = || {
        let feature = opened(bytes).ok()?;
        if !may_be_near(&feature, near) {
            return Some(Taken::Far);
        }
        let polygons = outline::polygons(&feature.geometry()?, opening.outlines);
        let mut properties = Vec::new();
        properties_of(&feature, opening, &mut properties).ok()?;
        let properties = String::from_utf8(properties).ok()?;
        let plain = PlainFeature::of(polygons.ok()??, properties)?;
        Some(Taken::Ice(Box::new(plain)))
    };
    ice().unwrap_or(Taken::Other)
}

fn opened(bytes: &[u8]) -> Result<Feature<'_>, InFlatgeobuf> {
    let options = opening::verified(bytes.len());
    let feature = size_prefixed_root_as_feature_with_opts(&options, bytes);
    feature.map_err(|_| InFlatgeobuf::Broken(FlatgeobufPart::Feature))
}

fn may_be_near(feature: &Feature<'_>, near: Option<&Near>) -> bool {
    let corners = || outline::corners(&feature.geometry()?);
    near.is_none_or(|near| corners().is_some_and(|corners| near.may_hold(corners)))
}

fn properties_of(
    feature: &Feature<'_>,
    opening: &Preamble,
    text: &mut Vec<u8>,
) -> Result<(), InFlatgeobuf> {
    let held = feature.properties().map(|held| held.bytes());
    let own = own_columns(feature);
    let columns = own.as_deref().unwrap_or(&opening.columns);
    properties::write(held.unwrap_or_default(), columns, text)
        .ok_or(InFlatgeobuf::Broken(FlatgeobufPart::Properties))
}

fn own_columns(feature: &Feature<'_>) -> Option<Vec<Column>> {
    let own = feature.columns().filter(|own| !own.is_empty());
    own.map(|own| opening::columns(Some(own)))
}

fn shape(
    feature: &Feature<'_>,
    of_all: GeometryType,
    text: &mut Vec<u8>,
) -> Result<(), InFlatgeobuf> {
    match feature.geometry() {
        Some(shape) => outline::write(&shape, of_all, text),
        None => {
            text.extend(b"null");
            Ok(())
        }
    }
}
