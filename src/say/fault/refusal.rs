//! Why a figure is not taken, in words.

use std::fmt;

use crate::fault::refusal::{OutOfBounds, Refusal};

impl fmt::Display for OutOfBounds {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            what,
            value,
            unit,
            min,
            max,
            ..
        } = self;
        let unit = match unit.as_str() {
            "" | "1" => String::new(),
            "°" => "°".to_owned(),
            unit => format!(" {unit}"),
        };
        if let Some(name) = &self.name {
            write!(f, "{name}: ")?;
        }
        write!(f, "{what} {value}{unit} is outside {min} to {max}{unit}")
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfBounds(out) => out.fmt(f),
            Self::Disorder {
                name,
                adverse,
                central,
                favourable,
            } => write!(
                f,
                "{name}: adverse {adverse}, central {central} and favourable {favourable} are out of order"
            ),
            Self::NoSpringPeak(peak_n) => write!(f, "peak force {peak_n} N fits no spring"),
            Self::NoSpringStretch(share) => write!(f, "static elongation {share} fits no spring"),
            Self::Unknown(name) => write!(f, "no assumption is called `{name}`"),
            Self::BuiltIn(says) => f.write_str(says),
            Self::NobodyOnRope => f.write_str("nobody is on the rope"),
            Self::Sides(sides) => {
                write!(f, "a faller has one or two sides to hold him, not {sides}")
            }
            Self::NoHolder => f.write_str("a side without a holder holds nobody"),
            Self::Orders(people) => write!(f, "orders of {people} people are too many to try"),
            Self::NoTurn(turn) => write!(
                f,
                "no figure says what a turn round a {turn} leaves of the force"
            ),
        }
    }
}
