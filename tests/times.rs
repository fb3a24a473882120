//! Hours on the way.

mod backwards;
mod belays;
mod both;
mod clock;
mod firm;
mod halts;
mod inside;
mod off;
mod partly;
mod sun;
