//! Practice: the figures that people who teach glacier travel use, as data with their standing.
//!
//! `data/rules.toml` holds every figure; a practice set, the trip file and flags lay theirs over it, each
//! leaving its origin behind. Code asks `rules[Rule::MarginM]` and never types a figure in.

pub mod alike;
pub mod choice;
pub mod figure;
pub mod form;
mod laying;
pub mod nature;
pub mod rule;
pub mod rules;
pub mod set;
pub mod sold;
pub mod standing;
pub mod term;
mod toml_shape;
pub mod toml_text;
pub mod words;
mod written;
pub mod zero_bytes;

pub use choice::{Choices, Chosen, Cover, Knots, Pace, Reserve, Travel, UndrawnIce};
pub use figure::Figure;
pub use nature::Nature;
pub use rule::Rule;
pub use rules::{GivenBy, Rules};
pub use sold::SOLD_LENGTHS_M;
pub use standing::{Origin, Standing};
