//! The plan as a whole.

mod assumptions;
mod field;
mod gaps;
mod gear;
mod keeping;
mod without;
