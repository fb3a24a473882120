//! What is kept: asked for again only when it must be, never half, never with a secret.

use std::{fs, path::Path};

use schrund::{
    fault::network::InNetwork,
    fetch::{AddressStore, Fetcher},
};
use tempfile::tempdir;

use super::{fetched, keeping, listed, quick, why};
use crate::fixture::server::{Play, Server, answer, file};

const OLD: &[u8] = b"{\"old\": 1}";
const NEW: &[u8] = b"{\"new\": 1}";

/// A server whose file is another one from the third request on, and which says how long it is fresh.
fn changing(control: &'static str) -> Server {
    Server::start(move |request, before| {
        let (bytes, etag) = if before < 2 {
            (OLD, "\"1\"")
        } else {
            (NEW, "\"2\"")
        };
        if request.headers.get("if-none-match").map(String::as_str) == Some(etag) {
            return Play::Bytes(answer(
                "304 Not Modified",
                &[("cache-control", control)],
                b"",
            ));
        }
        let headers = [("etag", etag), ("cache-control", control)];
        Play::Bytes(answer("200 OK", &headers, bytes))
    })
}

fn get(folder: &Path, address: &str) -> Vec<u8> {
    fetched(&keeping(folder, quick()), address).expect("it comes")
}

#[test]
fn what_is_fresh_is_not_asked_for() {
    for control in ["max-age=600", "public"] {
        let (folder, server) = (tempdir().unwrap(), changing(control));
        for _ in 0..3 {
            assert_eq!(get(folder.path(), &server.at("/ice")), OLD);
        }
        assert_eq!(server.asked().len(), 1, "{control}");
    }
}

#[test]
fn what_is_old_is_asked_whether_it_is_the_same() {
    let (folder, server) = (tempdir().unwrap(), changing("max-age=0"));
    let got = [0; 3].map(|_| get(folder.path(), &server.at("/ice")));
    assert_eq!(got, [OLD, OLD, NEW]);
    let asked = server.asked();
    let unless = asked.iter().map(|asked| asked.headers.get("if-none-match"));
    let unless: Vec<_> = unless.map(|mark| mark.map(String::as_str)).collect();
    assert_eq!(unless, [None, Some("\"1\""), Some("\"1\"")]);
    assert_eq!(
        listed(folder.path()).len(),
        2,
        "a file and what stands beside it"
    );
}

#[test]
fn a_server_that_wants_nothing_kept_is_obeyed() {
    let (folder, server) = (tempdir().unwrap(), changing("no-store"));
    assert_eq!(get(folder.path(), &server.at("/ice")), OLD);
    assert_eq!(listed(folder.path()), [""; 0]);
}

#[test]
fn a_broken_file_is_none() {
    let damage: [fn(&Path); 4] = [
        |data| fs::write(data, b"{\"odd\": 1}").unwrap(),
        |data| fs::write(data, b"{").unwrap(),
        |data| fs::remove_file(data).unwrap(),
        |data| fs::write(data.with_extension("json"), b"{}").unwrap(),
    ];
    for damage in damage {
        let (folder, server) = (tempdir().unwrap(), changing("max-age=600"));
        get(folder.path(), &server.at("/ice"));
        let names = listed(folder.path());
        let data = names.iter().find(|name| name.ends_with(".data")).unwrap();
        damage(&folder.path().join(data));
        assert_eq!(get(folder.path(), &server.at("/ice")), OLD);
        assert_eq!(server.asked().len(), 2);
    }
}

#[test]
fn offline_there_is_what_was_kept() {
    let (folder, server) = (tempdir().unwrap(), changing("max-age=0"));
    get(folder.path(), &server.at("/ice"));
    let store = AddressStore::in_folder(folder.path().to_owned());
    let offline = Fetcher::new(quick(), store, true);
    assert_eq!(
        fetched(&offline, &server.at("/ice")).as_deref(),
        Ok(OLD),
        "however old"
    );
    assert_eq!(
        why(fetched(&offline, &server.at("/rock"))),
        InNetwork::NotKept
    );
    assert_eq!(server.asked().len(), 1);
}

#[test]
fn no_secret_is_in_any_name_or_file() {
    let folder = tempdir().unwrap();
    let server = Server::start(|request, _| Play::Bytes(file(request, OLD, "\"1\"")));
    let secret = "hunter2";
    let address = server.at(&format!("/ice?token={secret}#{secret}"));
    let address = address.replace("http://", &format!("HTTP://{secret}:{secret}@"));
    get(folder.path(), &address);
    let asked = server.asked();
    assert_eq!(
        asked[0].path,
        format!("/ice?token={secret}"),
        "the server has to know it"
    );
    assert!(asked[0].headers.contains_key("authorization"));
    for name in listed(folder.path()) {
        let text = fs::read_to_string(folder.path().join(&name)).unwrap();
        assert!(
            !text.contains(secret) && !name.contains(secret),
            "{name}: {text}"
        );
        let shown = server.at("/ice");
        assert!(!name.ends_with("json") || text.contains(&shown), "{text}");
    }
}
