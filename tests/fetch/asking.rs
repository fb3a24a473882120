//! Servers that are busy, slow, broken, lying, or send elsewhere; after each of them nothing is left in the folder.

use std::{
    io::Write,
    sync::{
        Arc,
        atomic::{AtomicUsize, Ordering},
    },
    thread,
    time::{Duration, Instant},
};

use flate2::{Compression, write::GzEncoder};
use schrund::{
    fault::network::{InNetwork, NotFollowed},
    fetch::{AddressStore, Fetcher, Manners},
};

use super::{fetched, keeping, listed, quick, why};
use crate::fixture::server::{Play, Server, answer, head, ok};

const ICE: &[u8] = b"{\"type\": \"FeatureCollection\", \"features\": []}";

/// What a server that always does the same leads to, and how often it is asked.
#[track_caller]
fn fails(with: Vec<u8>, manners: Manners) -> (InNetwork, usize) {
    fails_at(&Server::saying(with), manners)
}

#[track_caller]
fn fails_at(server: &Server, manners: Manners) -> (InNetwork, usize) {
    let folder = tempfile::tempdir().expect("a folder");
    let why = why(fetched(
        &keeping(folder.path(), manners),
        &server.at("/ice"),
    ));
    assert_eq!(listed(folder.path()), [""; 0], "something was left");
    (why, server.asked().len())
}

/// What comes of a server that answers so at first.
fn in_the_end(first: Vec<Vec<u8>>) -> (Vec<u8>, usize) {
    let server = Server::start(move |_, before| {
        Play::Bytes(first.get(before).cloned().unwrap_or_else(|| ok(ICE)))
    });
    let fetcher = Fetcher::new(quick(), AddressStore::nothing(), false);
    let got = fetched(&fetcher, &server.at("/ice")).expect("it comes in the end");
    (got, server.asked().len())
}

#[test]
fn a_busy_server_is_asked_again() {
    for (status, later) in [
        ("429 Too Many Requests", "0"),
        ("503 Service Unavailable", "Sun, 06 Nov 1994 08:49:37 GMT"),
        ("502 Bad Gateway", "soon"),
        ("504 Gateway Timeout", "0"),
    ] {
        let busy = answer(status, &[("retry-after", later)], b"");
        let (got, asked) = in_the_end(vec![busy.clone(), busy]);
        assert_eq!((got.as_slice(), asked), (ICE, 3), "{status}");
    }
}

#[test]
fn a_server_that_wants_a_long_rest_gets_it() {
    let later = answer("429 Too Many Requests", &[("retry-after", "3600")], b"");
    let busy = InNetwork::Busy {
        status: "429 Too Many Requests".to_owned(),
        tries: 1,
        wait_s: Some(3600),
    };
    assert_eq!(fails(later, quick()), (busy, 1));
}

#[test]
fn a_server_that_stays_busy_is_left_after_a_few_tries() {
    let (why, asked) = fails(answer("503 Service Unavailable", &[], b""), quick());
    let busy = InNetwork::Busy {
        status: "503 Service Unavailable".to_owned(),
        tries: 4,
        wait_s: None,
    };
    assert_eq!((why, asked), (busy, 4));
}

#[test]
fn other_refusals_are_told_at_once() {
    for status in [
        "400 Bad Request",
        "404 Not Found",
        "500 Internal Server Error",
    ] {
        let answered = InNetwork::Answered {
            status: status.to_owned(),
        };
        assert_eq!(fails(answer(status, &[], b""), quick()), (answered, 1));
    }
}

#[test]
fn an_answer_that_breaks_off_is_asked_for_again() {
    let cut = head("200 OK", &[], Some("1000"));
    let short = [cut.clone(), ICE.to_vec()].concat();
    assert_eq!(
        in_the_end(vec![short.clone(), Vec::new()]),
        (ICE.to_vec(), 3)
    );
    let (why, asked) = fails(short, quick());
    let (got, due, tries) = (ICE.len() as u64, Some(1000), 4);
    assert_eq!((why, asked), (InNetwork::Cut { got, due, tries }, 4));
}

#[test]
fn a_slow_drip_ends_with_its_time() {
    let drip = || {
        Server::start(|_, _| {
            let head = head("200 OK", &[], Some("100000"));
            Play::Again(head, b"x".to_vec(), Duration::from_millis(20))
        })
    };
    let total = Duration::from_millis(300);
    let started = Instant::now();
    let (why, asked) = fails_at(&drip(), Manners { total, ..quick() });
    assert_eq!((why, asked), (InNetwork::Late { allowed_s: 1 }, 1));
    assert!(
        started.elapsed() < 4 * total,
        "the client alone counts anew at every byte"
    );
}

#[test]
fn a_server_that_never_answers_is_left() {
    let silent = Server::start(|_, _| {
        thread::sleep(Duration::from_secs(1));
        Play::Bytes(Vec::new())
    });
    let total = Duration::from_millis(100);
    let (why, _) = fails_at(&silent, Manners { total, ..quick() });
    assert_eq!(why, InNetwork::Late { allowed_s: 1 });
}

#[test]
fn too_much_is_not_taken() {
    let too_big = |unpacked| InNetwork::TooBig {
        most_mib: 1,
        unpacked,
        page: false,
    };
    let announced = head("200 OK", &[], Some("1048577"));
    assert_eq!(
        fails(announced, quick()),
        (too_big(false), 1),
        "told before"
    );
    let endless = Server::start(|_, _| {
        Play::Again(
            head("200 OK", &[], None),
            vec![b' '; 1 << 16],
            Duration::ZERO,
        )
    });
    assert_eq!(
        fails_at(&endless, quick()),
        (too_big(false), 1),
        "seen on the way"
    );
    let mut bomb = GzEncoder::new(Vec::new(), Compression::best());
    bomb.write_all(&vec![0; (1 << 20) + 1]).unwrap();
    let bomb = bomb.finish().unwrap();
    assert!(
        bomb.len() < 1 << 12,
        "small while it is packed: {}",
        bomb.len()
    );
    let packed = answer("200 OK", &[("content-encoding", "gzip")], &bomb);
    assert_eq!(
        fails(packed, quick()),
        (too_big(true), 1),
        "seen while unpacking"
    );
}

#[test]
fn what_is_packed_is_unpacked() {
    let mut packed = GzEncoder::new(Vec::new(), Compression::best());
    packed.write_all(ICE).unwrap();
    let packed = packed.finish().unwrap();
    let headers = [("content-encoding", "gzip")];
    let server = Server::saying(answer("200 OK", &headers, &packed));
    let fetcher = Fetcher::new(quick(), AddressStore::nothing(), false);
    assert_eq!(fetched(&fetcher, &server.at("/ice")).as_deref(), Ok(ICE));
    let asked = server.asked();
    assert_eq!(asked[0].headers["accept-encoding"], "gzip");
    let version = env!("CARGO_PKG_VERSION");
    assert_eq!(asked[0].headers["user-agent"], format!("schrund/{version}"));
    let torn = answer("200 OK", &headers, &packed[..packed.len() / 2]);
    assert!(matches!(fails(torn, quick()), (InNetwork::Cut { .. }, 4)));
    let other = answer("200 OK", &[("content-encoding", "br")], b"x");
    assert_eq!(
        fails(other, quick()),
        (InNetwork::Coding("br".to_owned()), 1)
    );
}

#[test]
fn a_page_for_browsers_is_no_data() {
    for page in [
        "<!DOCTYPE html>\n<title>Log in</title>",
        "\n <HTML lang=\"en\">",
    ] {
        assert_eq!(fails(ok(page.as_bytes()), quick()), (InNetwork::WebPage, 1));
    }
}

#[test]
fn a_server_sends_on_so_often_and_nowhere_else() {
    let sent_on = |to: &str| answer("302 Found", &[("location", to)], b"");
    let (got, asked) = in_the_end(vec![sent_on("/a"), sent_on("b?c=d"), sent_on("/")]);
    assert_eq!((got.as_slice(), asked), (ICE, 4));
    let (why, asked) = fails(sent_on("/round"), quick());
    let why_not = |why| {
        matches!(
            why,
            InNetwork::SentOn {
                why: NotFollowed::TooOften(5),
                ..
            }
        )
    };
    assert!(why_not(why) && asked == 6, "{asked}");
    let file = InNetwork::SentOn {
        to: "file:///etc/hosts".to_owned(),
        why: NotFollowed::NoWeb,
    };
    assert_eq!(fails(sent_on("file:///etc/hosts"), quick()), (file, 1));
}

#[test]
fn a_server_without_a_secret_is_not_taken_for_one() {
    let plain = Server::saying(ok(ICE));
    let secret = plain.at("/ice").replace("http://", "https://");
    let fetcher = Fetcher::new(quick(), AddressStore::nothing(), false);
    let why = why(fetched(&fetcher, &secret));
    assert!(matches!(why, InNetwork::Insecure(_)), "{why:?}");
}

#[test]
fn nobody_there() {
    let listener = std::net::TcpListener::bind("127.0.0.1:0").unwrap();
    let address = format!("http://{}/ice", listener.local_addr().unwrap());
    drop(listener);
    let fetcher = Fetcher::new(quick(), AddressStore::nothing(), false);
    let refused = why(fetched(&fetcher, &address));
    assert!(matches!(refused, InNetwork::NoConnection(_)), "{refused:?}");
    // RFC 6761, section 6.4: no server is ever called so.
    let unknown = why(fetched(&fetcher, "http://no-such.invalid/ice"));
    assert_eq!(unknown, InNetwork::NoServer);
}

#[test]
fn no_more_than_two_are_asked_at_once() {
    let (now, most) = (Arc::new(AtomicUsize::new(0)), Arc::new(AtomicUsize::new(0)));
    let (inside, seen) = (Arc::clone(&now), Arc::clone(&most));
    let server = Server::start(move |_, _| {
        let at_once = inside.fetch_add(1, Ordering::SeqCst) + 1;
        seen.fetch_max(at_once, Ordering::SeqCst);
        thread::sleep(Duration::from_millis(60));
        inside.fetch_sub(1, Ordering::SeqCst);
        Play::Bytes(ok(ICE))
    });
    let fetcher = Fetcher::new(quick(), AddressStore::nothing(), false);
    thread::scope(|scope| {
        for number in 0..6 {
            let (fetcher, address) = (fetcher.clone(), server.at(&format!("/{number}")));
            scope.spawn(move || fetched(&fetcher, &address).expect("it comes"));
        }
    });
    assert_eq!((server.asked().len(), most.load(Ordering::SeqCst)), (6, 2));
}
