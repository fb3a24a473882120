//! What is filled in by hand: whom to call, and empty lines.

use maud::{Markup, html};

use super::markup::{said, word};
use crate::{say::voice::Voice, trip::party::EmergencyContact};

/// Empty lines for notes. Our judgement.
const NOTE_LINES: usize = 5;
/// Empty lines for contacts where the trip file gives none.
const CONTACT_LINES: usize = 3;

/// Whom to call; empty lines to fill in where nobody was named.
pub(super) fn emergency(contacts: &[EmergencyContact], voice: Voice) -> Markup {
    html! {
        @if contacts.is_empty() {
            p { (word("emergency-fill-in", voice)) }
            (lines(CONTACT_LINES))
        } @else {
            dl class="emergency" {
                @for contact in contacts {
                    div {
                        dt { (said(&contact.name)) }
                        dd { strong { (said(&contact.contact)) }
                            @if let Some(note) = &contact.note { " " (said(note)) } }
                    }
                }
            }
        }
    }
}

/// Empty lines.
pub(super) fn notes() -> Markup {
    lines(NOTE_LINES)
}

fn lines(count: usize) -> Markup {
    html! { div class="lines" aria-hidden="true" { @for _ in 0..count { div {} } } }
}
