//! Inputs given as addresses, against a server on this machine.

use std::{
    io::{BufRead, BufReader, Write},
    net::{TcpListener, TcpStream},
    thread,
};

use crate::fixture::program::{root, schrund, text};

/// A server that answers every request with the same bytes, for as many requests as said.
fn server(answer: Vec<u8>, requests: usize) -> String {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a free port");
    let address = format!("http://{}", listener.local_addr().expect("an address"));
    thread::spawn(move || {
        for stream in listener.incoming().take(requests).flatten() {
            respond(stream, &answer);
        }
    });
    address
}

fn respond(mut stream: TcpStream, answer: &[u8]) {
    let mut lines = BufReader::new(stream.try_clone().expect("a second handle")).lines();
    while lines
        .next()
        .is_some_and(|line| line.is_ok_and(|l| !l.is_empty()))
    {}
    let _ = stream.write_all(answer);
}

fn ok(body: &[u8]) -> Vec<u8> {
    let mut answer = format!(
        "HTTP/1.1 200 OK\r\ncontent-length: {}\r\nconnection: close\r\n\r\n",
        body.len()
    )
    .into_bytes();
    answer.extend(body);
    answer
}

#[test]
fn zones_are_fetched_from_an_address() {
    let dir = root().join("examples/vordalen");
    let zones = std::fs::read(dir.join("zones.geojson")).unwrap();
    let address = server(ok(&zones), 1);
    let fetched = schrund(
        &dir,
        &[
            "plan",
            "route.gpx",
            &address,
            "--party",
            "3",
            "--format",
            "csv",
        ],
    );
    let named = schrund(
        &dir,
        &[
            "plan",
            "route.gpx",
            "zones.geojson",
            "--party",
            "3",
            "--format",
            "csv",
        ],
    );
    assert_eq!(fetched.status.code(), Some(0), "{}", text(&fetched.stderr));
    assert_eq!(text(&fetched.stdout), text(&named.stdout));
}

#[test]
fn a_refusal_is_a_network_failure_with_its_status() {
    let address = server(
        b"HTTP/1.1 404 Not Found\r\ncontent-length: 0\r\nconnection: close\r\n\r\n".to_vec(),
        1,
    );
    let refused = schrund(
        &root().join("examples/vordalen"),
        &["plan", "route.gpx", &address, "--party", "3"],
    );
    assert_eq!(refused.status.code(), Some(6));
    assert!(
        text(&refused.stderr).contains("the server answered 404 Not Found"),
        "{}",
        text(&refused.stderr)
    );
}

#[test]
fn nobody_listening_is_a_network_failure() {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = format!("http://{}/zones", listener.local_addr().unwrap());
    drop(listener);
    let failed = schrund(
        &root().join("examples/vordalen"),
        &["plan", "route.gpx", &address, "--party", "3"],
    );
    assert_eq!(failed.status.code(), Some(6));
    assert!(
        text(&failed.stderr).contains("error[network]: no connection"),
        "{}",
        text(&failed.stderr)
    );
}

#[test]
fn an_answer_that_breaks_off_is_never_planned_with() {
    let zones = std::fs::read(root().join("examples/vordalen/zones.geojson")).unwrap();
    let mut answer = ok(&zones);
    answer.truncate(answer.len() / 2);
    let broken = schrund(
        &root().join("examples/vordalen"),
        &["plan", "route.gpx", &server(answer, 1), "--party", "3"],
    );
    let code = broken.status.code();
    assert!(
        matches!(code, Some(3 | 4 | 6)),
        "{code:?} {}",
        text(&broken.stderr)
    );
    assert!(broken.stdout.is_empty(), "half a file was planned with");
}
