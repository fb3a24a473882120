//! One rope drawn in a line of text: coils, people, knots, and the metres between them.

use unicode_width::UnicodeWidthStr;

use crate::{
    plan::leg::TeamSetup,
    say::{
        mark::{no_place, rope_ends},
        plain,
        round::Round,
        voice::Voice,
    },
};

/// The rope from the first person's free end, in as many lines as the width asks for.
#[must_use]
pub fn drawn(setup: &TeamSetup, voice: Voice, width: usize) -> Vec<String> {
    let mut lines = vec![String::new()];
    for piece in pieces(setup, voice) {
        let full = lines
            .last()
            .is_some_and(|l| !l.is_empty() && l.width() + piece.width() > width);
        match lines.last_mut() {
            Some(line) if !full => line.push_str(&piece),
            _ => lines.push(piece),
        }
    }
    lines
}

/// Coil, then each person with the rope before them, then coil, as far as the rope goes. A line breaks between pieces
/// only.
fn pieces(setup: &TeamSetup, voice: Voice) -> Vec<String> {
    let coil = if setup.coil_carried_m > 0.0 {
        format!("~{}~", voice.number(setup.coil_carried_m, Round::Down))
    } else {
        String::new()
    };
    let spans = setup.people.saturating_sub(1);
    // One piece a mark.
    let placed = setup.marks.len().saturating_sub(1);
    let mut pieces = vec![format!("{coil}(1)")];
    for span in 0..spans {
        let mut at_m = 0.0;
        for knot_m in setup.knots.in_span(span, spans, setup.spacing_m) {
            pieces.push(format!("{}x", line(knot_m - at_m, voice)));
            at_m = knot_m;
        }
        let rest = line(setup.spacing_m - at_m, voice);
        pieces.push(format!("{rest}({})", span + 2));
    }
    if setup.no_place.is_empty() {
        pieces.push(coil);
    } else {
        pieces.truncate(placed);
        pieces.push("─".to_owned());
    }
    let says = |said: String| format!("▏ {said}");
    let short_m = setup.rope_short_m();
    pieces.extend(short_m.map(|m| says(rope_ends(m, voice).to_string())));
    pieces.extend(no_place(setup, voice).map(|none| format!("; {}", none.map_names(plain::line))));
    pieces.retain(|p| !p.is_empty());
    pieces
}

fn line(metres: f64, voice: Voice) -> String {
    format!("─{}─", voice.number(metres, Round::Nearest))
}
