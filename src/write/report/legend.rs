//! What colours, lines and signs of the map mean.

use maud::{Markup, html};

use crate::{
    plan::leg::Verdict,
    write::{
        parts::style,
        report::{drawn::MapPicture, layers, signs::Sign},
    },
};

/// The key under a map: what it shows and nothing else.
pub(super) fn legend(picture: &MapPicture<'_>) -> Markup {
    html! {
        figcaption {
            ul class="legend" {
                (lines(picture))
                (ground(picture))
                @for sign in Sign::ALL.into_iter().filter(|sign| picture.signs.iter().any(|(s, _)| s == sign)) {
                    (entry(&sign.drawn((15.0, 6.0)), sign_says(sign)))
                }
                (entry(&html! { circle class="change" cx="15" cy="6" r="5" {} }, "rope up or rope off, lettered as below"))
                (entry(
                    &html! { rect class="pill" x="6" y="0" width="18" height="12" rx="6" {} },
                    "number of the leg, in its colour",
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

/// The styles of legs.
fn lines(picture: &MapPicture<'_>) -> Markup {
    let legs = &picture.sheet.plan.legs;
    let shown = |verdict: Verdict| legs.iter().any(|l| l.verdict == verdict);
    let verdicts = [
        (Verdict::Unroped, "unroped"),
        (Verdict::Inside, "roped, inside the planning limits"),
        (Verdict::Look, "look: something to decide or to watch"),
        (Verdict::Outside, "outside the limits"),
        (Verdict::Stop, "stop: not as planned"),
    ];
    html! {
        @for (verdict, says) in verdicts.into_iter().filter(|(v, _)| shown(*v)) {
            (entry(&layers::stroke(verdict, "M2 6H28"), &format!("{says} {}", style::sign(verdict))))
        }
    }
}

/// The ice.
fn ground(picture: &MapPicture<'_>) -> Markup {
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
        (entry(&fills, "zones, darker with wider gaps; the number is the width, \"?\" where it is assumed; faint where the route does not go"))
        @if sheet.zones.iter().any(|zone| zone.strike.is_some()) {
            (entry(&strike, "the direction in which its crevasses run, where it was drawn"))
        }
        @if !sheet.glaciers.is_empty() { (entry(&ice, "known ice")) }
    }
}

fn sign_says(sign: Sign) -> &'static str {
    match sign {
        Sign::Along => "along the crevasses",
        Sign::Fall => "where a fall is held worst",
        Sign::RollOver => "the ground steepens: gaps are to be expected",
    }
}
