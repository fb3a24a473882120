//! The plan as a whole.

mod assumptions;
mod field;
mod gear;
mod keeping;
mod without;
