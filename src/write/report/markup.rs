//! Text as markup: what the leader wrote is escaped and isolated, what is typed stands as code.

use maud::{Markup, html};

use crate::say::{
    plain,
    span::{Said, Span},
};

/// What the leader wrote, on one line and isolated from the direction of what stands beside it.
pub(super) fn said(text: &str) -> Markup {
    html! { bdi { (plain::line(text)) } }
}

/// Something said as markup: what is typed as code, names isolated, figures kept on one line.
pub(super) fn spans(says: &Said) -> Markup {
    html! {
        @for span in says.spans() {
            @match span {
                Span::Words(_) | Span::Figure(_) => { (span.text()) }
                Span::Name(name) => { (said(name)) }
                Span::Code(code) => { code { (said(code)) } }
            }
        }
    }
}
