//! The lengths in which ropes are sold, from `data/ropes_sold.toml`.

use std::sync::LazyLock;

use serde::Deserialize;

use crate::{fault::refusal::Refusal, practice::standing::Standing};

/// Lengths in which ropes are sold, metres, rising. Standing: [`Sold::standing`].
pub static SOLD_LENGTHS_M: LazyLock<[f64; 6]> =
    LazyLock::new(|| Sold::built_in().map_or([0.0; 6], |sold| sold.lengths_m));

/// What the file holds.
///
/// ```
/// use schrund::practice::{Standing, sold::Sold};
///
/// let sold = Sold::built_in()?;
/// assert_eq!(sold.standing, Standing::Practice);
/// let needed_m = 43.5;
/// let buy_m = sold.lengths_m.into_iter().find(|length_m| *length_m >= needed_m);
/// assert_eq!(buy_m, Some(50.0), "the shortest that is long enough");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sold {
    /// What the lengths are, in words.
    pub says: String,
    /// Metres, rising.
    pub lengths_m: [f64; 6],
    /// What stands behind them.
    pub standing: Standing,
}

impl Sold {
    /// The lengths that come with the program.
    ///
    /// # Errors
    /// What the file lacks, when the embedded file is broken or its lengths do not rise.
    pub fn built_in() -> Result<Self, Refusal> {
        let text = include_str!("../../data/ropes_sold.toml");
        let sold: Self =
            toml::from_str(text).map_err(|e| Refusal::BuiltIn(e.message().to_owned()))?;
        let rising = sold.lengths_m.is_sorted_by(|a, b| a < b);
        if rising && sold.lengths_m[0] > 0.0 {
            Ok(sold)
        } else {
            let says = "the lengths of ropes sold do not rise from above nothing";
            Err(Refusal::BuiltIn(says.to_owned()))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_lengths_in_force_are_those_of_the_file() {
        let sold = Sold::built_in().unwrap();
        assert!(
            SOLD_LENGTHS_M.iter().eq(&sold.lengths_m),
            "broken data leaves noughts in force"
        );
        assert_ne!(sold.standing, Standing::Published, "no source is named");
    }
}
