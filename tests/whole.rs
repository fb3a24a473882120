//! The plan as a whole.

mod assumptions;
mod keeping;
