//! Nature: one equation a file, SI units, no custom and no decision; what holds a fall and what hauls out of it.
//!
//! Every file opens with the same plate: *Model*, *Valid*, *Error*, *Source*, *Checked*.
//! A model answers for its assumptions only; nothing in here is a promise.

pub mod bound;
pub mod gear;

pub mod capstan;
pub mod impact;
pub mod incline;

pub mod haul;

pub mod hold_dynamic;
pub mod hold_static;
pub mod hold_stiff;

pub mod assumed;
pub mod holding;

/// Standard acceleration of free fall, m/s². Defining value of the 3rd CGPM, 1901 `[from memory]`; the
/// printed digits of the fixed-holder check (1569.1 N) hold it to four places.
pub const GRAVITY_M_S2: f64 = 9.806_65;
