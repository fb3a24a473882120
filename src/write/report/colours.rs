//! The colours of maps and words.

use crate::{plan::leg::Verdict, write::parts::style};

/// The colours of every map, so that the page and the other outputs cannot disagree.
pub(super) fn colours() -> String {
    let names = Verdict::ALL.map(|v| format!("--{}:{}", v.as_str(), style::leg_stroke(v)));
    format!(
        ":root,.drawing,.swatch{{{};--change:{};--zone-edge:{}}}",
        names.join(";"),
        style::CHANGE,
        style::ZONE_STROKE
    )
}
