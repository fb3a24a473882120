//! Outlines in pages: all of them or none, whatever the server does.

use schrund::{
    fault::{Code, Fault, network::InNetwork},
    fetch::{Address, AddressStore, Fetcher, Manners, outlines::OutlinesNear},
    geometry::{Bounds, LonLat},
};
use serde_json::{Value, json};

use super::{quick, why};
use crate::fixture::server::{Play, Request, Server, answer, ok};

/// A square of ice by its south-west corner.
fn ice(name: &str, lon: f64, lat: f64) -> Value {
    let ring = [
        [0.0, 0.0],
        [0.01, 0.0],
        [0.01, 0.01],
        [0.0, 0.01],
        [0.0, 0.0],
    ];
    let ring = ring.map(|[x, y]| json!([lon + x, lat + y]));
    json!({"type": "Feature", "properties": {"glac_name": name, "gap_m": 12},
        "geometry": {"type": "Polygon", "coordinates": [ring]}})
}

/// Five pieces of ice, the last of which lies far away.
fn five() -> Vec<Value> {
    let near = (0..4).map(|i| ice(&format!("Ice {i}"), 8.0 + 0.02 * f64::from(i), 46.5));
    near.chain([ice("Elsewhere", 20.0, 46.5)]).collect()
}

fn page(features: &[Value], next: Option<&str>, matched: Option<usize>) -> Vec<u8> {
    let mut page = json!({"type": "FeatureCollection", "features": features,
        "links": [{"rel": "self", "href": "/never"}, {"rel": "prev", "href": "/never"}]});
    if let Some(next) = next {
        let links = page["links"].as_array_mut().unwrap();
        links.push(json!({"rel": "next", "type": "text/html", "href": "/never"}));
        links.push(json!({"rel": "next", "type": "application/geo+json", "href": next}));
    }
    if let Some(matched) = matched {
        page["numberMatched"] = json!(matched);
    }
    ok(page.to_string().as_bytes())
}

fn number(request: &Request, of: &str) -> Option<usize> {
    let (_, query) = request.path.split_once('?')?;
    let found = query
        .split('&')
        .find_map(|pair| pair.strip_prefix(of)?.strip_prefix('='))?;
    found.parse().ok()
}

/// A server that gives at most two a page, whatever is asked for.
fn capped(link: impl Fn(usize) -> String + Send + Sync + 'static, says: Option<usize>) -> Server {
    Server::start(move |request, _| {
        let at = number(request, "offset").unwrap_or(0);
        let all = five();
        let end = (at + 2).min(all.len());
        let next = (end < all.len()).then(|| link(end));
        Play::Bytes(page(&all[at..end], next.as_deref(), says))
    })
}

fn asked(server: &Server, path: &str) -> Result<OutlinesNear, Fault> {
    asked_with(server, path, quick())
}

fn asked_with(server: &Server, path: &str, manners: Manners) -> Result<OutlinesNear, Fault> {
    let fetcher = Fetcher::new(manners, AddressStore::nothing(), false);
    let line = Bounds::of(&[LonLat::new(8.0, 46.5), LonLat::new(8.07, 46.51)]).unwrap();
    fetcher.outlines(&Address::parse(&server.at(path))?, &[line], 500.0)
}

#[test]
fn all_pages_are_taken_and_only_what_lies_near_is_kept() {
    let links: [fn(usize) -> String; 3] = [
        |at| format!("items?offset={at}"),
        |at| format!("/ice/items?offset={at}&limit=2"),
        |at| format!("?offset={at}"),
    ];
    for (link, says) in links.into_iter().zip([None, Some(5), Some(5)]) {
        let server = capped(link, says);
        let near = asked(&server, "/ice/items?key=secret").expect("all of them");
        assert_eq!((near.came, near.count()), (5, 4));
        assert_eq!(server.asked().len(), 3, "no other link is followed");
        assert_eq!(near.address, server.at("/ice/items"));
    }
}

#[test]
fn the_first_page_is_that_of_the_surroundings() {
    let server = capped(|at| format!("items?offset={at}"), None);
    asked(&server, "/ice/items?f=json&bbox=1,2,3,4").expect("all of them");
    let first = &server.asked()[0];
    assert_eq!(number(first, "limit"), Some(1000));
    let (_, bbox) = first.path.split_once("bbox=").unwrap();
    let bbox = bbox.split('&').next().unwrap().replace("%2C", ",");
    let bbox: Vec<f64> = bbox.split(',').map(|v| v.parse().unwrap()).collect();
    let [west, south, east, north] = bbox[..] else {
        panic!("{bbox:?}");
    };
    assert!(
        west < 8.0 && south < 46.5 && east > 8.07 && north > 46.51,
        "{bbox:?}"
    );
    assert!(east - west < 0.1 && north - south < 0.03, "{bbox:?}");
    assert!(first.path.contains("f=json") && !first.path.contains("1,2,3,4"));
    assert!(first.headers["accept"].starts_with("application/geo+json"));
    // A file is taken as it is.
    let server = Server::saying(page(&five(), None, None));
    assert_eq!(asked(&server, "/ice.geojson").expect("a file").count(), 4);
    assert_eq!(server.asked()[0].path, "/ice.geojson");
}

#[test]
fn what_is_written_is_a_zones_file_without_a_gap() {
    let server = Server::saying(page(&five(), None, None));
    let near = asked(&server, "/ice.geojson").expect("a file");
    let zones: Value = serde_json::from_str(&near.zones("from there")).unwrap();
    let first = &zones["features"][0];
    let properties = json!({"name": "Ice 0", "gap_m": null, "source": "from there"});
    assert_eq!(
        first["properties"], properties,
        "nobody's width is taken over"
    );
    assert_eq!(first["geometry"], five()[0]["geometry"]);
    let ice: Value = serde_json::from_str(&near.inventory("from there")).unwrap();
    assert_eq!(ice["features"].as_array().unwrap().len(), 4);
    assert_eq!(
        ice["features"][3]["properties"],
        json!({"name": "Ice 3", "source": "from there"})
    );
}

#[test]
fn a_page_that_comes_again_ends_it() {
    let round = || capped(|_| "items?offset=2".to_owned(), None);
    assert_eq!(
        why(asked(&round(), "/items")),
        InNetwork::SamePage { page: 3 }
    );
    // Other addresses, the same page: as servers do that do not know `offset`.
    let same = Server::start(|_, before| {
        Play::Bytes(page(
            &five()[..2],
            Some(&format!("items?offset={before}")),
            None,
        ))
    });
    let manners = Manners {
        most_pages: 4,
        ..quick()
    };
    let again = why(asked_with(&same, "/items", manners.clone()));
    assert_eq!(again, InNetwork::SamePage { page: 2 });
    let never = Server::start(|_, before| {
        let one = [ice(&before.to_string(), 8.0, 46.5)];
        Play::Bytes(page(&one, Some(&format!("items?offset={before}")), None))
    });
    let endless = why(asked_with(&never, "/items", manners));
    assert_eq!(
        (endless, never.asked().len()),
        (InNetwork::ManyPages { most: 4 }, 4)
    );
}

#[test]
fn the_last_page_may_name_itself_where_all_is_there() {
    let server = Server::start(|_, _| Play::Bytes(page(&five(), Some("items"), Some(5))));
    assert_eq!(asked(&server, "/items").expect("all came").came, 5);
}

#[test]
fn fewer_than_were_said_are_not_taken_for_all() {
    let server = Server::saying(page(&five()[..2], None, Some(5)));
    let few = InNetwork::FewOutlines { got: 2, said: 5 };
    assert_eq!(why(asked(&server, "/items")), few);
}

#[test]
fn pages_that_break_off_are_told() {
    let server = Server::start(|_, before| {
        Play::Bytes(match before {
            0 => page(&five()[..2], Some("items?offset=2"), Some(5)),
            _ => answer("500 Internal Server Error", &[], b""),
        })
    });
    assert!(matches!(
        why(asked(&server, "/items")),
        InNetwork::Answered { .. }
    ));
    let elsewhere = Server::saying(page(&five()[..2], Some("file:///etc/hosts"), None));
    assert!(matches!(
        why(asked(&elsewhere, "/items")),
        InNetwork::SentOn { .. }
    ));
    for text in [
        "{}",
        "[1, 2]",
        "{\"type\": \"FeatureCollection\"}",
        "{\"type\": \"Feat",
    ] {
        let server = Server::saying(ok(text.as_bytes()));
        assert_eq!(
            why(asked(&server, "/items")),
            InNetwork::NoOutlines,
            "{text}"
        );
    }
}

#[test]
fn nothing_near_is_no_file() {
    let server = Server::saying(page(&five()[4..], None, None));
    let fault = asked(&server, "/items").expect_err("far away");
    assert_eq!(fault.kind(), Code::NoZoneMet);
    let told = fault.to_string();
    assert!(
        told.contains("the one outline does not come within 500 m of the route"),
        "{told}"
    );
}
