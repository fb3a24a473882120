//! The command as its users meet it.

mod address;
mod cases;
mod ground;
mod hostile;
mod saving;
mod saying;
