//! Text as markup: what the leader wrote is escaped and isolated, what is typed stands as code.

use maud::{Markup, html};

use crate::say::{
    arg::Arg,
    plain,
    span::{Said, Span},
    voice::Voice,
};

/// What the leader wrote, on one line and isolated from the direction of what stands beside it.
pub(in crate::write) fn said(text: &str) -> Markup {
    html! { bdi { (plain::line(text)) } }
}

/// Something said as markup: what is typed as code, names isolated, figures kept on one line.
pub(in crate::write) fn spans(says: &Said) -> Markup {
    html! {
        @for span in says.spans() {
            @match span {
                Span::Figure(figure) if figure.contains([' ', '–']) => { span class="w" { (figure) } }
                Span::Words(_) | Span::Figure(_) => { (span.text()) }
                Span::Name(name) => { (said(name)) }
                Span::Code(code) => { code { (said(code)) } }
            }
        }
    }
}

/// A word or a sentence of the page that takes nothing.
pub(super) fn word(key: &str, voice: Voice) -> Said {
    voice.say(key, &[])
}

/// The title of a column, with the unit of what stands under it.
pub(super) fn column(key: &str, unit: &str, voice: Voice) -> Markup {
    html! { (word(key, voice)) " " small { (unit) } }
}

/// The same beside each value, where columns stand under one another: `Gap, m`.
pub(super) fn label(key: &str, unit: &'static str, voice: Voice) -> Said {
    let args = [
        ("column", Arg::Said(word(key, voice))),
        ("unit", Arg::Said(unit.into())),
    ];
    voice.say("report-label", &args)
}
