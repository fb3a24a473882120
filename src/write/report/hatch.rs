//! Crevasses on a map: lines in the direction in which those of a zone run, where somebody said which.

use maud::{Markup, html};

use super::layers::{OnPaper, area};

/// From one line to the next, units. Our judgement.
const APART: f64 = 6.0;

/// The hatching of the zones with a strike, on the map of this name.
pub(super) fn strikes(zones: &[OnPaper<'_>], map: &str) -> Markup {
    let known = zones.iter().filter_map(|on| Some((on, on.zone.strike?)));
    let known: Vec<_> = known.collect();
    html! {
        @for (on, strike) in &known {
            @let id = format!("strike-{map}-{}", on.zone.number);
            // North is up and a strike is counted clockwise from it, as turns are on a page.
            pattern id=(id) patternUnits="userSpaceOnUse" width=(APART) height=(APART)
                patternTransform={ "rotate(" (strike.deg) ")" } {
                path class="under" d={ "M3 0V" (APART) } {}
                path d={ "M3 0V" (APART) } {}
            }
            path class="strike" fill={ "url(#" (id) ")" } d=(area(&on.shape)) {}
        }
    }
}
