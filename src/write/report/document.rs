//! One HTML file that asks for nothing: its head with all that it looks like, and a body.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::colours;
use crate::say::{span::Said, voice::Voice};

/// What the report looks like, then the sheet and the folds behind it.
const STYLES: [&str; 2] = [include_str!("report.css"), include_str!("sheet/sheet.css")];

/// All of it, with the colours.
pub(in crate::write) fn styles() -> String {
    STYLES.concat() + &colours::colours()
}

/// A document of its own class is printed on paper of its own.
pub(super) struct OwnPaper {
    pub(super) class: &'static str,
    pub(super) page: &'static str,
}

/// The whole file; `window` is the title of its window.
pub(super) fn of(window: &Said, body: &Markup, own: Option<OwnPaper>, voice: Voice) -> String {
    html! {
        (DOCTYPE)
        html lang=(voice.language.tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta http-equiv="Content-Security-Policy"
                    content="default-src 'none'; style-src 'unsafe-inline'; img-src data:";
                title { (window) }
                style {
                    (PreEscaped(styles()))
                    @if let Some(own) = &own { (PreEscaped(own.page)) }
                }
            }
            body class=[own.as_ref().map(|own| own.class)] { (body) }
        }
    }
    .into_string()
}
