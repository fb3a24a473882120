//! Models that are read here and there: the same heights as from the file, and only the bytes that they take.

use std::io::{Cursor, Read, Seek, SeekFrom};

use schrund::{
    fault::network::InNetwork,
    fetch::{Address, AddressStore, Fetcher, Manners, TileTemplate},
    geometry::{Bounds, LonLat},
    raster::Terrain,
};
use tempfile::tempdir;

use super::{keeping, listed, quick, why};
use crate::fixture::{
    raster::Tiled,
    server::{Play, Server, answer, file, head, ok},
};

/// A model of 46 MB in tiles of 256 × 256: cells of 30 m or so, as open models of the world have them.
fn large() -> Tiled {
    Tiled {
        across: 13,
        down: 13,
        corner: (7.0, 47.0),
        cell_deg: 1.0 / 3600.0,
    }
}

/// A line of 20 km from west to east, and what lies round it.
fn line() -> Bounds {
    let from = LonLat::new(7.3, 46.6);
    Bounds::of(&[from, from.toward(90.0, 20_000.0)]).expect("two points")
}

fn terrain(name: &str, of: impl Read + Seek + Send + 'static) -> Terrain {
    let mut terrain = Terrain::new();
    terrain.add(name, Box::new(of)).expect("a sound model");
    terrain
}

/// Heights every 100 m along the line.
fn heights(of: &Terrain) -> Vec<Option<f64>> {
    let (from, to) = (line().low, line().high);
    let at = |i: i32| from.along_edge(to, f64::from(i) / 200.0);
    (0..=200)
        .map(|i| of.height_m(at(i)).expect("readable"))
        .collect()
}

#[test]
fn heights_from_parts_are_those_of_the_file() {
    let whole = large().write();
    assert!(whole.len() > 40_000_000, "{}", whole.len());
    let server = Server::of_files(vec![("/large.tif", whole.clone())]);
    let folder = tempdir().unwrap();
    let fetcher = keeping(folder.path(), Manners::default());
    let address = Address::parse(&server.at("/large.tif")).unwrap();
    let there = terrain("large.tif", fetcher.model(&address).expect("it opens"));
    let got = heights(&there);
    assert_eq!(got, heights(&terrain("large.tif", Cursor::new(whole))));
    assert!(got.iter().all(Option::is_some));
    assert!(server.sent() < 3_000_000, "{} bytes", server.sent());
    assert!(
        server
            .asked()
            .iter()
            .all(|asked| asked.headers.contains_key("range"))
    );

    // Once more from what is kept, without a request; so too offline.
    let asked = server.asked().len();
    for offline in [false, true] {
        let store = AddressStore::in_folder(folder.path().to_owned());
        let again = Fetcher::new(Manners::default(), store, offline);
        let again = terrain("large.tif", again.model(&address).expect("it is kept"));
        assert_eq!(heights(&again), got);
    }
    assert_eq!(server.asked().len(), asked);
}

#[test]
fn an_excerpt_has_the_same_heights_and_says_whose_they_are() {
    let whole = large().write();
    let server = Server::of_files(vec![("/N46E007.tif", whole.clone())]);
    let fetcher = Fetcher::new(Manners::default(), AddressStore::nothing(), false);
    let tiles = TileTemplate::parse(&server.at("/{NS}{lat}{EW}{lon}.tif")).unwrap();
    let near = fetcher
        .heights(&tiles, &[line()], 1000.0, Some("© the surveyors"))
        .expect("heights");
    assert!(near.absent.is_empty(), "{:?}", near.absent);
    let [cut] = near.excerpts.as_slice() else {
        panic!("{} files", near.excerpts.len());
    };
    assert_eq!(cut.name, "N46E007.tif");
    assert_eq!(cut.credit.as_deref(), Some("© the surveyors"));
    assert!(
        cut.bytes.len() < 3_000_000 && server.sent() < 3_000_000,
        "{}",
        server.sent()
    );
    let cut = terrain("cut.tif", Cursor::new(cut.bytes.clone()));
    let all = terrain("large.tif", Cursor::new(whole));
    assert_eq!(cut.credits().collect::<Vec<_>>(), [Some("© the surveyors")]);
    assert_eq!(all.credits().collect::<Vec<_>>(), [None]);
    for (i, (cut, all)) in heights(&cut).into_iter().zip(heights(&all)).enumerate() {
        // The corner of the excerpt is reckoned anew: a last digit of a degree.
        crate::fixture::close_if(&format!("at {i}"), cut, all, 1e-4);
    }
    let far = line().high.toward(0.0, 3000.0);
    assert_eq!(cut.height_m(far), Ok(None), "no more than was asked for");
}

#[test]
fn a_tile_that_the_server_does_not_have_is_no_ground() {
    let server = Server::of_files(vec![("/n46e007.tif", small())]);
    let fetcher = Fetcher::new(quick(), AddressStore::nothing(), false);
    let tiles = TileTemplate::parse(&server.at("/{ns}{lat}{ew}{lon}.tif")).unwrap();
    let ends = [LonLat::new(6.99, 46.99), LonLat::new(7.01, 46.985)];
    let shore = Bounds::of(&ends).expect("two points");
    let near = fetcher
        .heights(&tiles, &[shore], 100.0, None)
        .expect("some");
    assert_eq!(near.absent, [server.at("/n46e006.tif")]);
    assert_eq!(near.excerpts.len(), 1);
    let sea = Bounds::of(&[LonLat::new(3.5, 46.5)]).expect("a point");
    let none = why(fetcher.heights(&tiles, &[sea], 100.0, None));
    assert_eq!(none, InNetwork::NoHeights);
    let file = TileTemplate::parse(&server.at("/none.tif")).unwrap();
    let gone = why(fetcher.heights(&file, &[shore], 100.0, None));
    assert!(
        matches!(gone, InNetwork::Answered { .. }),
        "one file is either there or not: {gone:?}"
    );
    let globe = Bounds::of(&[LonLat::new(-19.5, 40.2), LonLat::new(19.5, 40.5)]).expect("two");
    let many = InNetwork::ManyTiles {
        tiles: 40,
        most: 16,
    };
    assert_eq!(why(fetcher.heights(&tiles, &[globe], 1.0, None)), many);
}

#[test]
fn tiles_that_are_called_alike_become_two_files() {
    let other = Tiled {
        across: 1,
        down: 1,
        corner: (6.95, 47.0),
        ..large()
    };
    let files = vec![
        ("/N46/E007/dem.tif", small()),
        ("/N46/E006/dem.tif", other.write()),
    ];
    let server = Server::of_files(files);
    let fetcher = Fetcher::new(quick(), AddressStore::nothing(), false);
    let tiles = TileTemplate::parse(&server.at("/{NS}{lat}/{EW}{lon}/dem.tif")).unwrap();
    let ends = [LonLat::new(6.99, 46.99), LonLat::new(7.01, 46.985)];
    let line = Bounds::of(&ends).expect("two points");
    let near = fetcher.heights(&tiles, &[line], 100.0, None).expect("both");
    let names: Vec<&str> = near.excerpts.iter().map(|cut| cut.name.as_str()).collect();
    assert_eq!(names, ["dem.tif", "2-dem.tif"]);
}

/// A model of one tile.
fn small() -> Vec<u8> {
    let of = Tiled {
        across: 1,
        down: 1,
        ..large()
    };
    of.write()
}

fn all(fetcher: &Fetcher, server: &Server) -> Result<Vec<u8>, schrund::fault::Fault> {
    let address = Address::parse(&server.at("/small.tif"))?;
    let mut source = fetcher.model(&address)?;
    let mut bytes = Vec::new();
    let read = source.read_to_end(&mut bytes);
    match read {
        Ok(_) => Ok(bytes),
        Err(_) => Err(fetcher.broke_off().remove(0)),
    }
}

#[test]
fn a_server_without_parts_gives_all() {
    let server = Server::saying(ok(&small()));
    let folder = tempdir().unwrap();
    for _ in 0..2 {
        assert_eq!(all(&keeping(folder.path(), quick()), &server), Ok(small()));
    }
    assert_eq!(server.asked().len(), 1);
}

#[test]
fn what_was_exchanged_on_the_server_is_not_mixed() {
    let server = Server::start(|request, before| {
        let etag = if before < 2 { "\"1\"" } else { "\"2\"" };
        Play::Bytes(file(request, &small(), etag))
    });
    let folder = tempdir().unwrap();
    let fetcher = keeping(folder.path(), quick());
    assert_eq!(why(all(&fetcher, &server)), InNetwork::Changed);
    assert_eq!(
        all(&keeping(folder.path(), quick()), &server),
        Ok(small()),
        "read anew"
    );
    let sidecars = listed(folder.path());
    let states = sidecars
        .iter()
        .filter_map(|name| Some(name.split('-').nth(1)?.to_owned()));
    let states: std::collections::BTreeSet<String> = states.collect();
    assert_eq!(
        states.len(),
        1,
        "parts of the old state are gone: {sidecars:?}"
    );
}

#[test]
fn a_part_that_breaks_off_is_asked_for_again_and_then_told() {
    let server = Server::start(|request, before| {
        let whole = file(request, &small(), "\"1\"");
        let half = whole[..whole.len() / 2].to_vec();
        Play::Bytes(if before % 2 == 1 { half } else { whole })
    });
    let fetcher = Fetcher::new(quick(), AddressStore::nothing(), false);
    assert_eq!(all(&fetcher, &server), Ok(small()));
    let server = Server::start(|request, before| {
        let whole = file(request, &small(), "\"1\"");
        Play::Bytes(if before < 2 {
            whole
        } else {
            whole[..200].to_vec()
        })
    });
    let fetcher = Fetcher::new(quick(), AddressStore::nothing(), false);
    assert!(matches!(
        why(all(&fetcher, &server)),
        InNetwork::Cut { tries: 4, .. }
    ));
}

#[test]
fn broken_parts_are_none() {
    let server = Server::of_files(vec![("/small.tif", small())]);
    let folder = tempdir().unwrap();
    all(&keeping(folder.path(), quick()), &server).expect("it comes");
    let asked = server.asked().len();
    let names = listed(folder.path());
    let part = names.iter().find(|name| name.ends_with("-1.part")).unwrap();
    let path = folder.path().join(part);
    let mut bytes = std::fs::read(&path).unwrap();
    bytes[100] ^= 1;
    std::fs::write(&path, bytes).unwrap();
    assert_eq!(all(&keeping(folder.path(), quick()), &server), Ok(small()));
    assert_eq!(server.asked().len(), asked + 1, "that part alone");
}

#[test]
fn places_far_apart_are_read_alone() {
    let server = Server::of_files(vec![("/small.tif", small())]);
    let fetcher = Fetcher::new(quick(), AddressStore::nothing(), false);
    let address = Address::parse(&server.at("/small.tif")).unwrap();
    let mut source = fetcher.model(&address).unwrap();
    let length = small().len();
    let mut last = [0; 4];
    source.seek(SeekFrom::End(-4)).unwrap();
    source.read_exact(&mut last).unwrap();
    assert_eq!(last, small()[length - 4..]);
    assert_eq!(
        source.read(&mut last).unwrap(),
        0,
        "behind the end is nothing"
    );
    assert_eq!(server.asked().len(), 2);
    let page = Server::saying(ok(b"<!doctype html>"));
    assert_eq!(why(all(&fetcher, &page)), InNetwork::WebPage);
    let none = Server::saying(answer("500 Oops", &[], b""));
    assert!(matches!(
        why(all(&fetcher, &none)),
        InNetwork::Answered { .. }
    ));
    let big = Server::saying(head("200 OK", &[], Some("99999999")));
    assert!(matches!(why(all(&fetcher, &big)), InNetwork::TooBig { .. }));
}
