//! The network: whatever is given as an http(s) address, and nothing else ever asks for anything.
//!
//! A [`Fetcher`] asks for addresses by its [`Manners`], keeps what came in its [`AddressStore`], and gives it on: whole, or a
//! file of which only the parts that are read come ([`Fetcher::model`]). On it stand the outlines of glaciers from a
//! collection ([`outlines`]) and heights cut out of large models ([`heights`]). Every fault is one of
//! [`crate::fault::network::InNetwork`]; user, password and query of an address are in none, and in no name or file of the
//! store.

mod address;
mod answer;
mod asking;
mod cells;
mod features;
pub mod heights;
mod manners;
pub mod outlines;
mod ranges;
mod store;
mod whole;

pub use self::{
    address::Address,
    answer::Progress,
    asking::Fetcher,
    cells::TileTemplate,
    manners::Manners,
    store::AddressStore,
    whole::{Wanted, WholeAnswer},
};
