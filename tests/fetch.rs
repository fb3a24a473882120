//! The network: against a server on this machine that does what servers do.

mod asking;
mod keeping;
mod outlines;
mod parts;

use std::{path::Path, time::Duration};

use schrund::{
    fault::{Fault, Wrong, network::InNetwork},
    fetch::{Address, AddressStore, Fetcher, Manners, Wanted},
};

/// The manners of tests: nobody waits long.
fn quick() -> Manners {
    Manners {
        connect: Duration::from_secs(2),
        total: Duration::from_secs(2),
        first_wait: Duration::from_millis(2),
        longest_wait: Duration::from_millis(50),
        most_bytes: 1 << 20,
        ..Manners::default()
    }
}

/// Whoever asks with these manners, keeping it in a folder.
fn keeping(folder: &Path, manners: Manners) -> Fetcher {
    Fetcher::new(manners, AddressStore::in_folder(folder.to_owned()), false)
}

fn fetched(fetcher: &Fetcher, address: &str) -> Result<Vec<u8>, Fault> {
    fetcher
        .whole(&Address::parse(address)?, Wanted::Data)?
        .bytes()
}

/// Why it failed.
#[track_caller]
fn why<T>(got: Result<T, Fault>) -> InNetwork {
    match got.map(|_| ()).expect_err("it fails").what {
        Wrong::Network(what) => what,
        other => panic!("no fault of the network: {other:?}"),
    }
}

/// The names in a folder, sorted.
fn listed(folder: &Path) -> Vec<String> {
    let entries = folder.read_dir().into_iter().flatten().flatten();
    let mut names: Vec<String> = entries
        .map(|entry| entry.file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}
