//! One feature as GeoJSON.

use flatgeobuf::{Feature, GeometryType, size_prefixed_root_as_feature_with_opts};

use super::{
    near::Near,
    opening::{self, Column, Preamble},
    outline, properties,
};
use crate::fault::flatgeobuf::{FlatgeobufPart, InFlatgeobuf};

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
    let broken = |part| move || InFlatgeobuf::Broken(part);
    let options = opening::limits(bytes.len());
    let feature = size_prefixed_root_as_feature_with_opts(&options, bytes);
    let feature = feature.map_err(|_| InFlatgeobuf::Broken(FlatgeobufPart::Feature))?;
    if let Some(near) = near {
        let corners = feature
            .geometry()
            .and_then(|shape| outline::corners(&shape));
        if !corners.is_some_and(|corners| near.may_hold(corners)) {
            return Ok(Lies::Far);
        }
    }
    text.extend(br#"{"type":"Feature","properties":"#);
    let held = feature.properties().map(|held| held.bytes());
    let own = own_columns(&feature);
    let columns = own.as_deref().unwrap_or(&opening.columns);
    properties::write(held.unwrap_or_default(), columns, text)
        .ok_or_else(broken(FlatgeobufPart::Properties))?;
    text.extend(br#","geometry":"#);
    shape(&feature, opening.outlines, text)?;
    text.push(b'}');
    Ok(Lies::Near)
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
