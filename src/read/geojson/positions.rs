//! Polygons as nearly every program writes them, read from their text in one pass.
//!
//! ```text
//! {"type": "Polygon", "coordinates": [[[8.0, 46.0], …]]}   these two members in this order and none besides,
//!                                                          numbers without an exponent
//! ```
//! What is written otherwise is `None` here and left to `shape`, which also says what is wrong with it. The reader of JSON
//! takes some 250 instructions for a number of twelve digits, this one 60 (counted on 8 million of them), and numbers are
//! nearly all that a file of outlines holds. It rounds as that one does: to the nearest number there is.

use super::opening::unspaced;

/// Longitude and latitude as they are written.
pub(super) type WrittenPair = [f64; 2];
/// Polygons, of each its rings.
pub(super) type WrittenPolygons = Vec<Vec<Vec<WrittenPair>>>;

/// Powers of ten that are numbers of their own: what divides by them is rounded once.
const TENS: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
];
/// Whole numbers up to here are numbers of their own.
const MOST_WHOLE: u64 = 1 << f64::MANTISSA_DIGITS;
/// So many digits fit a word of 64 bits.
const MOST_DIGITS: usize = 19;
/// Vertices of a ring that place is made for at once. Our judgement.
const RING: usize = 64;

/// The polygons that a text begins with, and what stands behind them.
pub(super) fn polygons(text: &[u8]) -> Option<(WrittenPolygons, &[u8])> {
    let mut rest = Rest(text);
    rest.sign(b'{')?;
    rest.words(b"\"type\"")?;
    rest.sign(b':')?;
    let several = rest.words(b"\"MultiPolygon\"").is_some();
    if !several {
        rest.words(b"\"Polygon\"")?;
    }
    rest.sign(b',')?;
    rest.words(b"\"coordinates\"")?;
    rest.sign(b':')?;
    let found = if several {
        rest.list(1, Rest::polygon)?
    } else {
        vec![rest.polygon()?]
    };
    rest.sign(b'}')?;
    Some((found, rest.0))
}

/// What was not yet read.
struct Rest<'t>(&'t [u8]);

impl<'t> Rest<'t> {
    fn polygon(&mut self) -> Option<Vec<Vec<WrittenPair>>> {
        self.list(1, |rest| rest.list(RING, Self::position))
    }

    /// Two numbers; a height behind them is passed over.
    fn position(&mut self) -> Option<WrittenPair> {
        self.sign(b'[')?;
        let lon = self.number()?;
        self.sign(b',')?;
        let lat = self.number()?;
        while self.sign(b',').is_some() {
            self.number()?;
        }
        self.sign(b']')?;
        Some([lon, lat])
    }

    /// Elements between brackets, with place for some.
    fn list<T>(&mut self, some: usize, each: impl Fn(&mut Self) -> Option<T>) -> Option<Vec<T>> {
        self.sign(b'[')?;
        let mut list = Vec::with_capacity(some);
        if self.sign(b']').is_some() {
            return Some(list);
        }
        loop {
            list.push(each(self)?);
            if self.sign(b',').is_none() {
                self.sign(b']')?;
                return Some(list);
            }
        }
    }

    /// A number as JSON has it, but for one with an exponent and for minus nothing.
    fn number(&mut self) -> Option<f64> {
        let text = self.next();
        let unsigned = text.strip_prefix(b"-").unwrap_or(text);
        let (whole, mut behind, mut value) = digits(unsigned, 0);
        let mut decimals = 0;
        if let [b'.', fraction @ ..] = behind {
            (decimals, behind, value) = digits(fraction, value);
            (decimals > 0).then_some(())?;
        }
        let led = whole > 1 && unsigned.first() == Some(&b'0');
        if whole == 0 || led || matches!(behind, [b'e' | b'E', ..]) {
            return None;
        }
        self.0 = behind;
        let minus = unsigned.len() < text.len();
        if whole + decimals > MOST_DIGITS || value > MOST_WHOLE || decimals >= TENS.len() {
            let written = text.get(..text.len() - behind.len())?;
            return str::from_utf8(written).ok()?.parse().ok();
        }
        let value = value as f64 / TENS.get(decimals)?;
        match minus {
            true if value == 0.0 => None,
            true => Some(-value),
            false => Some(value),
        }
    }

    /// Goes past a sign, if it comes next.
    fn sign(&mut self, sign: u8) -> Option<()> {
        let (first, behind) = self.next().split_first()?;
        (*first == sign).then(|| self.0 = behind)
    }

    /// Goes past a text, if it comes next.
    fn words(&mut self, words: &[u8]) -> Option<()> {
        self.0 = self.next().strip_prefix(words)?;
        Some(())
    }

    /// What comes next behind white space.
    fn next(&mut self) -> &'t [u8] {
        if self.0.first().is_some_and(|byte| *byte <= b' ') {
            self.0 = unspaced(self.0);
        }
        self.0
    }
}

/// How many digits a text begins with, what stands behind them, and their value put behind another's; of too many digits
/// the value means nothing.
fn digits(text: &[u8], before: u64) -> (usize, &[u8], u64) {
    let (mut behind, mut value) = (text, before);
    while let [digit @ b'0'..=b'9', rest @ ..] = behind {
        value = value.wrapping_mul(10).wrapping_add(u64::from(digit - b'0'));
        behind = rest;
    }
    (text.len() - behind.len(), behind, value)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn read(number: &str) -> Option<f64> {
        let mut rest = Rest(number.as_bytes());
        let value = rest.number()?;
        rest.0.is_empty().then_some(value)
    }

    #[test]
    fn numbers_that_are_none_and_rare_ones_are_left_alone() {
        for rare in [
            "", "-", ".5", "5.", "05", "+5", "1e3", "-0", "-0.0", "0x5", "NaN", "5 5", "--5",
        ] {
            assert_eq!(read(rare), None, "{rare}");
        }
        let third = "0.33333333333333333333333333333333";
        for (text, value) in [
            ("0", 0.0),
            ("-8.5", -8.5),
            (third, 1.0 / 3.0),
            ("9007199254740993", 9_007_199_254_740_992.0),
        ] {
            assert_eq!(read(text), Some(value), "{text}");
        }
    }

    #[test]
    fn lists_are_as_deep_as_the_kind_says() {
        let ring = "[[8,46],[8.1 , 46,3000] ,[8,46.1],\n[8,46]]";
        let written = vec![[8.0, 46.0], [8.1, 46.0], [8.0, 46.1], [8.0, 46.0]];
        let one = format!(r#" {{ "type" : "Polygon","coordinates":[{ring}]}} ,"#);
        assert_eq!(
            polygons(one.as_bytes()),
            Some((vec![vec![written.clone()]], &b" ,"[..]))
        );
        let many =
            format!(r#"{{"type":"MultiPolygon","coordinates":[[{ring},{ring}],[{ring}],[]]}}"#);
        let found = polygons(many.as_bytes()).map(|(found, _)| found);
        assert_eq!(
            found,
            Some(vec![
                vec![written.clone(), written.clone()],
                vec![written],
                Vec::new()
            ])
        );
        for other in [
            format!(r#"{{"type":"Polygon","coordinates":{ring}}}"#),
            format!(r#"{{"type":"MultiPolygon","coordinates":[{ring}]}}"#),
            format!(r#"{{"type":"Polygon","coordinates":[{ring}],"bbox":[]}}"#),
            format!(r#"{{"coordinates":[{ring}],"type":"Polygon"}}"#),
            r#"{"type":"Polygon","coordinates":[[[8]]]}"#.to_owned(),
            r#"{"type":"Polygon","coordinates":[[[8,46],]]}"#.to_owned(),
        ] {
            assert_eq!(polygons(other.as_bytes()), None, "{other}");
        }
    }

    proptest! {
        /// The reader of JSON says the same, to the last bit.
        #[test]
        fn a_number_is_what_it_is_elsewhere(text in r"-?(0|[1-9][0-9]{0,24})(\.[0-9]{1,24})?") {
            if let Some(value) = read(&text) {
                let elsewhere: f64 = serde_json::from_str(&text).expect("a number");
                prop_assert_eq!(value.to_bits(), elsewhere.to_bits());
            } else {
                prop_assert!(text.trim_start_matches(['-', '0', '.']).is_empty(), "{}", text);
            }
        }

        #[test]
        fn numbers_as_programs_print_them(value in -400.0..400.0_f64, decimals in 0..20_usize) {
            for text in [format!("{value}"), format!("{value:.decimals$}")] {
                let elsewhere: f64 = serde_json::from_str(&text).expect("a number");
                prop_assert!(read(&text).is_none_or(|value| value.to_bits() == elsewhere.to_bits()), "{}", text);
            }
        }
    }
}
