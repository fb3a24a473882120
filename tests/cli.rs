//! The command as its users meet it.

mod address;
mod cases;
mod checking;
mod drawing;
mod explaining;
mod fetch;
mod ground;
mod helping;
mod hostile;
#[cfg(all(unix, not(target_vendor = "apple")))]
mod https;
mod inputs;
mod interrupted;
mod kinds;
mod limits;
mod mistakes;
mod numbers;
mod planet;
mod practising;
mod saving;
mod saying;
mod secret;
mod survey;
mod terminal;
mod zone;
