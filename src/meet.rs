//! Route × ice → contacts: where the line crosses each zone, and where it comes within the margin; where it is on ice
//! that nobody drew; where it turns back on itself.

pub mod angle;
pub mod contact;
mod covered;
mod crossing;
pub mod ice;
pub mod missed;
pub(crate) mod touching;
pub mod turns;
pub mod undrawn;

pub use contact::Contact;
pub use ice::Ice;
