//! Files, addresses and flags in words.

use crate::fault::{
    files::{InFiles, Network, Refused},
    place::STANDARD_INPUT,
};

pub(super) fn says(what: &InFiles) -> String {
    match what {
        InFiles::Unreadable { name, why } => format!("cannot read {name}: {}", refused(why)),
        InFiles::Stopped(why) => format!("reading stopped: {why}"),
        InFiles::OneStandardInput => "standard input can give only one of the inputs".to_owned(),
        InFiles::NotSeekable => {
            "a terrain model is read here and there, so it must be a file".to_owned()
        }
        InFiles::NotUtf8 => "the file is not UTF-8 text".to_owned(),
        InFiles::Toml(says) => says.clone(),
        InFiles::Swapped { route, zones } => {
            format!("the two files look swapped: {route} is GeoJSON and {zones} is GPX")
        }
        InFiles::Network(why) => network(why),
        InFiles::NoFolder { path, why } => {
            format!("cannot make the folder {path}: {}", refused(why))
        }
        InFiles::Unwritable { path, why } => format!("cannot write {path}: {}", refused(why)),
        InFiles::IsInput(path) => format!("{path} is an input and is never written over"),
        InFiles::There(paths) => there(paths),
        InFiles::NoCode { name, .. } => format!("there is no code \"{name}\""),
        InFiles::NoPlace(found) => format!("\"{found}\" is no longitude,latitude in degrees"),
    }
}

pub(super) fn hint(what: &InFiles) -> Option<String> {
    let hint = match what {
        InFiles::Unreadable { .. } => "check the name and that you may read it",
        InFiles::Stopped(_) => "read the file again",
        InFiles::OneStandardInput => "name files for the others",
        InFiles::NotSeekable => "save it first and name the file",
        InFiles::Swapped { route, zones } => {
            let (route, zones) = (typed(route), typed(zones));
            return Some(format!("name the line first: `{zones} {route}`"));
        }
        InFiles::Network(why) => return network_hint(why).map(str::to_owned),
        InFiles::Unwritable { .. } => "write to a folder that is there and that you may write to",
        InFiles::IsInput(_) => "write to another place",
        InFiles::There(paths) if paths.len() == 1 => "`--force` replaces it",
        InFiles::There(_) => "`--force` replaces them",
        InFiles::NoCode {
            near: Some(near), ..
        } => return Some(format!("did you mean `{}`?", near)),
        InFiles::NoCode { near: None, .. } => {
            "codes stand in brackets in what schrund says, as in error[gap-not-given]"
        }
        InFiles::NoPlace(_) => "write it as 7.65,45.97, longitude first",
        InFiles::NotUtf8 | InFiles::Toml(_) | InFiles::NoFolder { .. } => return None,
    };
    Some(hint.to_owned())
}

/// An input as it is typed.
fn typed(name: &str) -> &str {
    if name == STANDARD_INPUT { "-" } else { name }
}

fn there(paths: &[String]) -> String {
    match paths {
        [path] => format!("{path} is there already"),
        paths => format!(
            "{} files are there already: {}",
            paths.len(),
            paths.join(", ")
        ),
    }
}

fn refused(why: &Refused) -> &str {
    match why {
        Refused::Folder => "it is a folder, not a file",
        Refused::NotFound => "there is no such file or folder",
        Refused::Permission => "you have no permission",
        Refused::Other(words) => words,
    }
}

fn network(why: &Network) -> String {
    match why {
        Network::NotBuilt => "this build of schrund cannot fetch addresses".to_owned(),
        Network::Answered(status) => format!("the server answered {status}"),
        Network::TooMuch(mb) => format!("the answer is larger than {mb} MB"),
        Network::Late => "cannot fetch it: no answer in time".to_owned(),
        Network::NoConnection => "cannot fetch it: no connection".to_owned(),
        Network::Other(words) => format!("cannot fetch it: {words}"),
    }
}

fn network_hint(why: &Network) -> Option<&'static str> {
    match why {
        Network::NotBuilt => Some("download the file and name it"),
        Network::Answered(_) => Some("check the address"),
        Network::TooMuch(_) => None,
        Network::Late | Network::NoConnection | Network::Other(_) => {
            Some("check the address and the connection, or download the file and name it")
        }
    }
}
