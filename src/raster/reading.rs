//! From a stored number to a height in metres, or to "void".

/// Heights outside this are taken as void: below the Dead Sea (−430 m) and above Everest (8849 m), both from memory,
/// with room for geoid undulations (−107 to +86 m, from memory). Flag values such as −9999 fall outside.
pub(crate) const BELIEVABLE_M: std::ops::RangeInclusive<f64> = -600.0..=9000.0;

/// A number as the raster stores it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Stored {
    /// Any whole-number type.
    Whole(i64),
    /// 32-bit floating point.
    Single(f32),
    /// 64-bit floating point.
    Double(f64),
}

/// What one stored number turned out to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Meaning {
    /// Metres.
    HeightM(f64),
    /// Declared void, or no number.
    Void,
    /// A number that cannot be a height on earth; treated as void, and told.
    Unbelievable,
}

/// How the numbers of one raster are to be read.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Reading {
    /// The value declared to mean void, compared in the raster's own type.
    pub(crate) nodata: Option<Nodata>,
    /// Height in the raster's unit is stored × scale + offset.
    pub(crate) scale: f64,
    /// See `scale`.
    pub(crate) offset: f64,
    /// Metres in one unit of height.
    pub(crate) unit_m: f64,
}

/// A void value as declared, in the forms it may have to be compared in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Nodata {
    double: f64,
    whole: Option<i64>,
}

impl Nodata {
    /// From the text of the tag; a decimal comma is understood.
    pub(crate) fn parse(text: &str) -> Option<Self> {
        let text = text.trim_matches(|c: char| c.is_whitespace() || c == '\0');
        let text = text.replace(',', ".");
        let double: f64 = text.parse().ok()?;
        Some(Self {
            double,
            whole: text.parse().ok().or_else(|| exactly_whole(double)),
        })
    }

    /// A whole void value.
    pub(crate) fn whole(value: i32) -> Self {
        Self {
            double: f64::from(value),
            whole: Some(i64::from(value)),
        }
    }

    #[expect(
        clippy::float_cmp,
        clippy::cast_possible_truncation,
        reason = "a void value is written, never computed; the cast is the comparison in the raster's type"
    )]
    fn is(self, stored: Stored) -> bool {
        match stored {
            Stored::Whole(value) => self.whole == Some(value),
            Stored::Single(value) => value == self.double as f32,
            Stored::Double(value) => value == self.double,
        }
    }
}

#[expect(
    clippy::float_cmp,
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    reason = "asks whether the cast is exact"
)]
fn exactly_whole(value: f64) -> Option<i64> {
    let whole = value as i64;
    (whole as f64 == value).then_some(whole)
}

impl Default for Reading {
    fn default() -> Self {
        Self {
            nodata: None,
            scale: 1.0,
            offset: 0.0,
            unit_m: 1.0,
        }
    }
}

impl Reading {
    /// What a stored number means.
    #[expect(
        clippy::cast_precision_loss,
        reason = "whole heights beyond 2^53 are not believable anyway"
    )]
    pub(crate) fn meaning(&self, stored: Stored) -> Meaning {
        let number = match stored {
            Stored::Whole(value) => value as f64,
            Stored::Single(value) => f64::from(value),
            Stored::Double(value) => value,
        };
        if number.is_nan() || self.nodata.is_some_and(|void| void.is(stored)) {
            return Meaning::Void;
        }
        let height_m = (number * self.scale + self.offset) * self.unit_m;
        if BELIEVABLE_M.contains(&height_m) {
            Meaning::HeightM(height_m)
        } else {
            Meaning::Unbelievable
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reading(nodata: &str) -> Reading {
        Reading {
            nodata: Nodata::parse(nodata),
            ..Reading::default()
        }
    }

    #[test]
    fn void_is_compared_in_the_type_of_the_raster() {
        let low = reading("-3.4028234663852886e+38");
        assert_eq!(
            low.meaning(Stored::Single(f32::MIN)),
            Meaning::Void,
            "float minimum"
        );
        let tenth = reading("0.1");
        assert_eq!(
            tenth.meaning(Stored::Single(0.1)),
            Meaning::Void,
            "0.1 as float"
        );
        assert_eq!(
            tenth.meaning(Stored::Whole(0)),
            Meaning::HeightM(0.0),
            "0 is not 0.1"
        );
        let zero = reading("0.0\0");
        assert_eq!(zero.meaning(Stored::Whole(0)), Meaning::Void, "0.0 means 0");
    }

    #[test]
    fn flags_without_a_declaration_are_no_heights() {
        for flag in [-32768, -9999, 32767, i64::from(i32::MIN)] {
            let got = reading("nan").meaning(Stored::Whole(flag));
            assert_eq!(got, Meaning::Unbelievable, "{flag}");
        }
        assert_eq!(
            reading("nan").meaning(Stored::Single(f32::NAN)),
            Meaning::Void,
            "NaN"
        );
    }
}
