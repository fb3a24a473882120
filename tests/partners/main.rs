//! What partners get: the report, the files for devices and globes, the message.
#![expect(
    clippy::unwrap_used,
    reason = "helpers of tests fail like the tests they serve"
)]

mod fixture;
mod gpx;
mod holding;
mod hostile;
mod kml;
mod report;
mod structure;
mod text;
