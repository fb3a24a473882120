//! How much room words take on a drawing: on narrow screens, where they are set larger, and elsewhere.

/// A size of print in units, on narrow screens and elsewhere; as in the style sheet.
#[derive(Clone, Copy, Debug)]
pub(super) struct Font {
    narrow: f64,
    wide: f64,
    bold: bool,
}

/// Letters, numbers and widths.
pub(super) const NUMBER: Font = Font {
    narrow: 14.0,
    wide: 10.0,
    bold: true,
};
/// Degrees along the edges.
pub(super) const DEGREES: Font = Font {
    narrow: 12.0,
    wide: 9.0,
    bold: false,
};
/// Names of zones.
pub(super) const NAME: Font = Font {
    narrow: 10.5,
    wide: 8.5,
    bold: false,
};
/// Heights on their lines.
pub(super) const HEIGHT: Font = Font {
    narrow: 9.0,
    wide: 7.5,
    bold: false,
};
/// Letters above a profile.
pub(super) const LETTER: Font = Font {
    narrow: 11.0,
    wide: 9.0,
    bold: true,
};

/// Parts of the size of print above and below the line that it stands on, and how much narrower what is not bold is. Of the
/// widest of the usual fonts; our judgement.
const ABOVE: f64 = 0.95;
const BELOW: f64 = 0.25;
const LIGHTER: f64 = 0.92;
/// Left free on each side of a word, units. Our judgement.
const ASIDE: f64 = 1.0;
/// Height of a pill, and how far its edge reaches out on narrow screens and elsewhere, units.
pub(super) const PILL: f64 = 14.0;
const PILL_EDGE: (f64, f64) = (2.0, 0.5);

/// What something takes about its spot, units.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Extent {
    pub(super) left: f64,
    pub(super) right: f64,
    pub(super) up: f64,
    pub(super) down: f64,
}

impl Extent {
    fn about(width: f64, height: f64) -> Self {
        Self {
            left: width / 2.0,
            right: width / 2.0,
            up: height / 2.0,
            down: height / 2.0,
        }
    }
}

/// The same on narrow screens and elsewhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Footprint {
    pub(super) narrow: Extent,
    pub(super) wide: Extent,
}

impl Footprint {
    /// A sign that is the same everywhere.
    pub(super) fn square(size: f64) -> Self {
        let extent = Extent::about(size, size);
        Self {
            narrow: extent,
            wide: extent,
        }
    }

    /// A text whose middle stands over a spot, on a line so far below it.
    pub(super) fn text(text: &str, font: Font, line: f64) -> Self {
        let of = |size: f64| {
            let half = width(text, font.bold) * size / 2.0 + ASIDE;
            Extent {
                left: half,
                right: half,
                up: ABOVE * size - line,
                down: BELOW * size + line,
            }
        };
        Self {
            narrow: of(font.narrow),
            wide: of(font.wide),
        }
    }

    /// The same of a text that begins at the spot.
    pub(super) fn text_from(text: &str, font: Font, line: f64) -> Self {
        let from = |extent: Extent| Extent {
            left: 0.0,
            right: extent.left + extent.right,
            ..extent
        };
        let middle = Self::text(text, font, line);
        Self {
            narrow: from(middle.narrow),
            wide: from(middle.wide),
        }
    }

    /// A text on a plate.
    pub(super) fn pill(text: &str) -> Self {
        let of = |edge: f64| Extent::about(pill_width(text) + 2.0 * edge, PILL + 2.0 * edge);
        Self {
            narrow: of(PILL_EDGE.0),
            wide: of(PILL_EDGE.1),
        }
    }

    /// On a drawing that sets its words alike everywhere.
    pub(super) fn same_everywhere(self) -> Self {
        Self {
            narrow: self.wide,
            ..self
        }
    }
}

/// Width of a plate under a text.
pub(super) fn pill_width(text: &str) -> f64 {
    width(text, true) * NUMBER.wide + 8.0
}

/// Width of a text for its size.
fn width(text: &str, bold: bool) -> f64 {
    let sum: f64 = text.chars().map(sign_width).sum();
    if bold { sum } else { LIGHTER * sum }
}

/// Width of a sign of bold print for its size, of the widest of the usual fonts. Measured on one of them, rounded up.
fn sign_width(sign: char) -> f64 {
    match sign {
        ' ' | '\u{a0}' | 'i' | 'j' | 'l' | 'I' => 0.38,
        '.' | ',' | ':' | ';' | '\'' | '·' | '-' => 0.42,
        'f' | 'r' | 't' | '°' | '–' | '?' => 0.58,
        'm' | 'w' | 'M' | 'W' | '■' => 1.11,
        '0'..='9' | 'a'..='z' => 0.72,
        '\0'..='\u{24f}' => 0.86,
        _ => 1.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn larger_print_and_longer_words_take_more_room() {
        let short = Footprint::text("4 m", NUMBER, 3.6);
        let long = Footprint::text("14 m", NUMBER, 3.6);
        assert!(long.wide.left > short.wide.left, "{long:?}");
        assert!(short.narrow.left > short.wide.left, "{short:?}");
        assert!(short.narrow.up > short.wide.up, "{short:?}");
        assert_eq!(short.same_everywhere().narrow, short.wide);
    }

    #[test]
    fn what_begins_at_a_spot_takes_nothing_before_it() {
        let from = Footprint::text_from("66.52° N", DEGREES, 0.0);
        let middle = Footprint::text("66.52° N", DEGREES, 0.0);
        assert!(from.wide.left.abs() < 1e-9, "{from:?}");
        let (a, b) = (from.wide.right, 2.0 * middle.wide.right);
        assert!((a - b).abs() < 1e-9, "{a} {b}");
    }
}
