//! The command as its users meet it.

mod address;
mod cases;
mod hostile;
mod project;
mod reference;
mod saving;
mod saying;

use std::{
    path::{Path, PathBuf},
    process::{Command, Output},
};

/// The program, run in a folder.
fn schrund(folder: &Path, args: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_schrund"));
    command
        .current_dir(folder)
        .args(args)
        .env_remove("NO_COLOR")
        .env_remove("CLICOLOR_FORCE");
    command.output().expect("the program runs")
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).expect("output is UTF-8")
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// The folder of real data, or a loud word that a check was skipped.
fn real_data(what: &str) -> Option<PathBuf> {
    let folder = std::env::var_os("SCHRUND_REAL_DATA")
        .map(PathBuf::from)
        .filter(|p| p.is_dir());
    if folder.is_none() {
        eprintln!("SKIPPED: {what}: SCHRUND_REAL_DATA names no folder");
    }
    folder
}
