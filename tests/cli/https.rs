//! Addresses that are asked in secret: whom the program believes.

use std::fs;

use crate::fixture::{
    program::{command, root, text},
    secret::{authorities, secretly_saying},
    server::{Server, ok},
};

/// Exit code, standard output and standard error of a plan with its ice from there, where the system holds these certificates.
fn planned(ice: &str, certificates: &str) -> (Option<i32>, String, String) {
    let dir = root().join("examples/vordalen");
    let args = ["plan", "route.gpx", ice, "--party", "3", "--format", "csv"];
    let mut command = command(&dir, &args);
    let held = match certificates {
        "" => "/dev/null".into(),
        name => authorities(name),
    };
    command
        .env("SSL_CERT_FILE", held)
        .env_remove("SSL_CERT_DIR");
    let ran = command.output().expect("it runs");
    (ran.status.code(), text(&ran.stdout), text(&ran.stderr))
}

fn zones() -> Vec<u8> {
    ok(&fs::read(root().join("examples/vordalen/zones.geojson")).expect("the example"))
}

#[test]
fn a_server_that_is_vouched_for_is_believed() {
    let (secret, plain) = (secretly_saying(zones()), Server::saying(zones()));
    let (code, table, told) = planned(&format!("{secret}/ice.geojson"), "server.pem");
    assert!(matches!(code, Some(0 | 5)), "{told}");
    let open = planned(&plain.at("/ice.geojson"), "server.pem");
    assert_eq!(table, open.1);
}

#[test]
fn one_that_nobody_vouches_for_is_not() {
    let secret = secretly_saying(zones());
    let (code, table, told) = planned(&format!("{secret}/ice.geojson"), "other.pem");
    assert_eq!((code, table.as_str()), (Some(6), ""), "{told}");
    assert!(
        told.contains("no secure connection: invalid peer certificate"),
        "{told}"
    );
}

/// As in a bare container.
#[test]
fn where_the_system_holds_no_certificates_that_is_said_and_what_is_not_secret_is_fetched() {
    let (secret, plain) = (secretly_saying(zones()), Server::saying(zones()));
    let (code, table, told) = planned(&format!("{secret}/ice.geojson"), "");
    assert_eq!((code, table.as_str()), (Some(6), ""), "{told}");
    assert!(
        told.contains("this system holds no certificates of authorities"),
        "{told}"
    );
    assert!(told.contains("SSL_CERT_FILE"), "{told}");
    let (code, table, told) = planned(&plain.at("/ice.geojson"), "");
    assert!(matches!(code, Some(0 | 5)) && !table.is_empty(), "{told}");
}
