//! What GDAL writes beside the numbers: scale, offset, unit and description of band 1.

use quick_xml::{Reader, events::Event};

/// The items of band 1 in the GDAL metadata tag.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct BandNotes {
    /// Factor from stored to unit.
    pub(crate) scale: Option<String>,
    /// Added after the factor.
    pub(crate) offset: Option<String>,
    /// `m`, `ft` …
    pub(crate) unit: Option<String>,
    /// What the band is called.
    pub(crate) description: Option<String>,
}

impl BandNotes {
    /// From the XML of the tag; what does not parse is left out, except that a broken text is an error.
    pub(crate) fn parse(xml: &str) -> Result<Self, String> {
        let mut reader = Reader::from_str(xml.trim_matches('\0'));
        let mut notes = Self::default();
        let mut role: Option<String> = None;
        loop {
            match reader.read_event().map_err(|e| e.to_string())? {
                Event::Start(tag) => role = role_of_band_1(&tag),
                Event::Text(text) => notes.set(role.as_deref(), text.trim()),
                Event::End(_) => role = None,
                Event::Eof => return Ok(notes),
                _ => {}
            }
        }
    }

    fn set(&mut self, role: Option<&str>, text: &str) {
        let slot = match role {
            Some("scale") => &mut self.scale,
            Some("offset") => &mut self.offset,
            Some("unittype") => &mut self.unit,
            Some("description") => &mut self.description,
            _ => return,
        };
        if !text.is_empty() {
            slot.get_or_insert_default().push_str(text);
        }
    }

    /// The band calls itself heights.
    pub(crate) fn names_heights(&self) -> bool {
        let words = ["height", "elevation", "altitude", "dem", "dtm", "dsm"];
        let said = self
            .description
            .as_deref()
            .unwrap_or_default()
            .to_lowercase();
        let mut said = said.split(|c: char| !c.is_alphabetic());
        said.any(|word| words.contains(&word))
    }
}

fn role_of_band_1(tag: &quick_xml::events::BytesStart<'_>) -> Option<String> {
    let get = |name: &str| -> Option<String> {
        let attribute = tag.try_get_attribute(name).ok()??;
        Some(attribute.value.into_owned())
    };
    let role = get("role")?;
    let sample = get("sample").unwrap_or_else(|| "0".to_owned());
    (sample == "0").then(|| role.to_lowercase())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_band_1_counts() {
        let xml = r#"<GDALMetadata>
            <Item name="OFFSET" sample="0" role="offset">3000</Item>
            <Item name="SCALE" sample="1" role="scale">7</Item>
            <Item name="UNITTYPE" sample="0" role="unittype">ft</Item>
            <Item name="DESCRIPTION" sample="0" role="description">Surface elevation (m)</Item>
            <Item name="COMPRESSION_REVERSIBILITY" domain="IMAGE_STRUCTURE">LOSSLESS</Item>
        </GDALMetadata>"#;
        let notes = BandNotes::parse(xml).unwrap();
        assert_eq!(notes.offset.as_deref(), Some("3000"), "{notes:?}");
        assert_eq!(notes.scale, None, "band 2 has its own: {notes:?}");
        assert_eq!(notes.unit.as_deref(), Some("ft"), "{notes:?}");
        assert!(notes.names_heights(), "{notes:?}");
    }
}
