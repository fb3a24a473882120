//! What colours, lines and signs of the map mean.

use maud::{Markup, html};

use super::markup::word;
use crate::{
    plan::leg::Verdict,
    say::voice::Voice,
    write::{
        parts::{look::LookSort, style},
        report::{drawn::MapPicture, layers, signs},
    },
};

/// The key under a map: what it shows and nothing else.
pub(super) fn legend(picture: &MapPicture<'_>, voice: Voice) -> Markup {
    html! {
        figcaption {
            ul class="legend" {
                (lines(picture, voice))
                (ground(picture, voice))
                @for sort in LookSort::ALL.into_iter().filter(|sort| picture.signs.iter().any(|look| look.sort == *sort)) {
                    (entry(&signs::drawn(sort, (15.0, 6.0)), &sort.says(voice).to_string()))
                }
                (entry(&html! { circle class="change" cx="15" cy="6" r="5" {} }, &told("legend-change", voice)))
                (entry(
                    &html! { rect class="pill" x="6" y="0" width="18" height="12" rx="6" {} },
                    &told("legend-leg", voice),
                ))
            }
        }
    }
}

fn entry(swatch: &Markup, says: &str) -> Markup {
    html! {
        li {
            svg class="swatch" viewBox="0 0 30 12" aria-hidden="true" { (swatch) }
            (says)
        }
    }
}

fn told(key: &str, voice: Voice) -> String {
    word(key, voice).to_string()
}

/// The styles of legs.
fn lines(picture: &MapPicture<'_>, voice: Voice) -> Markup {
    let legs = &picture.sheet.plan.legs;
    let shown = |verdict: Verdict| legs.iter().any(|l| l.verdict == verdict);
    let verdicts = [
        (Verdict::Unroped, "legend-unroped"),
        (Verdict::Inside, "legend-inside"),
        (Verdict::Look, "legend-look"),
        (Verdict::Outside, "legend-outside"),
        (Verdict::Stop, "legend-stop"),
    ];
    html! {
        @for (verdict, says) in verdicts.into_iter().filter(|(v, _)| shown(*v)) {
            (entry(&layers::stroke(verdict, "M2 6H28"), &format!("{} {}", word(says, voice), style::sign(verdict))))
        }
    }
}

/// The ice.
fn ground(picture: &MapPicture<'_>, voice: Voice) -> Markup {
    let sheet = picture.sheet;
    let fills = html! {
        @for (i, fill) in style::ZONE_FILLS.iter().enumerate() {
            rect x=(i * 6) width="6" height="12" fill=(fill) {}
        }
    };
    let strike = html! {
        rect width="30" height="12" fill=(style::ZONE_FILLS[1]) {}
        path class="strike-key" d="M4 12L10 0M12 12L18 0M20 12L26 0" {}
    };
    let ice = html! { rect class="ice" x="1" y="1" width="28" height="10" {} };
    html! {
        (entry(&fills, &told("legend-zones", voice)))
        @if sheet.zones.iter().any(|zone| zone.strike.is_some()) {
            (entry(&strike, &told("legend-strike", voice)))
        }
        @if !sheet.glaciers.is_empty() { (entry(&ice, &told("legend-ice", voice))) }
    }
}
