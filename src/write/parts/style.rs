//! Colours and line weights, all at least 3 : 1 on white and apart under the three colour-blindnesses.
//! Our own; not those of avalanche, slope, piste or waymark maps, which mean something else here.

use crate::plan::leg::Verdict;

/// Zone fills from narrow gaps to wide ones.
pub const ZONE_FILLS: [&str; 5] = ["#D6E4EE", "#A9C4DA", "#7A9EC2", "#4F76A5", "#2E4A80"];
/// Upper ends of the first four gap classes, metres. Our judgement.
pub const ZONE_CLASSES_M: [f64; 4] = [2.0, 5.0, 10.0, 20.0];
/// Outline of zones.
pub const ZONE_STROKE: &str = "#2E4A80";
/// Width of the outline of zones that the route does not meet, pixels, and how opaque they and it are. Our judgement.
pub const NOT_MET_WIDTH: f64 = 0.5;
/// Opacity of their fill, 0 to 1.
pub const NOT_MET_FILL: f64 = 0.15;
/// Opacity of their outline.
pub const NOT_MET_STROKE: f64 = 0.5;
/// Places where the set-up changes.
pub const CHANGE: &str = "#310A45";

/// Class of a zone by its gap width in metres: an index of [`ZONE_FILLS`].
#[must_use]
pub fn zone_class(gap_m: f64) -> usize {
    ZONE_CLASSES_M
        .iter()
        .take_while(|&&upper| gap_m > upper)
        .count()
        .min(ZONE_FILLS.len() - 1)
}

/// Fill of a zone by its gap width in metres.
#[must_use]
pub fn zone_fill(gap_m: f64) -> &'static str {
    ZONE_FILLS[zone_class(gap_m)]
}

/// Colour of a leg's line.
#[must_use]
pub fn leg_stroke(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Unroped => "#8A8F96",
        Verdict::Inside => "#1273B5",
        Verdict::Look => "#8F3F00",
        Verdict::Outside => "#310A45",
        Verdict::Stop => "#B3005E",
    }
}

/// Width of a leg's line, pixels.
#[must_use]
pub fn leg_width(verdict: Verdict) -> f64 {
    match verdict {
        Verdict::Unroped => 2.0,
        Verdict::Inside | Verdict::Look => 4.0,
        Verdict::Outside => 6.0,
        Verdict::Stop => 8.0,
    }
}

/// The sign set beside a leg, so that colour is never alone.
#[must_use]
pub fn sign(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Unroped | Verdict::Inside => "",
        Verdict::Look => "?",
        Verdict::Outside => "✕",
        Verdict::Stop => "■",
    }
}
