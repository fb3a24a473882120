//! The page itself: one file that holds a trip, the program as WebAssembly, and what draws and replans it.
//!
//! It asks nothing of any network: a content policy in its head forbids every request. Where no script runs it shows the sheet
//! and the field table of the plan that it was made with.

use std::io::{self, Write};

use base64::{Engine, engine::general_purpose::STANDARD};
use flate2::{Compression, write::GzEncoder};
use maud::{DOCTYPE, Markup, PreEscaped, html};
use serde::Serialize;
use serde_json::{Map, Value};

use super::{letters, packed};
use crate::{
    say::{drawing, language::Language, voice::Voice},
    write::{report, sheet::Sheet},
};

/// What a page is made with. Without a line it is a planner for whatever is dropped on it.
///
/// ```
/// use schrund::write::page::file::{PageInputs, PageText, document};
///
/// let route = PageText { name: "line.gpx".to_owned(), text: schrund::example::ROUTE_GPX.to_owned() };
/// let page = document(&PageInputs { route: Some(route), ..PageInputs::default() }, None).expect("memory takes everything");
/// assert!(page.contains("default-src 'none'"), "no request can leave it");
/// assert!(page.contains(r#""name":"line.gpx""#), "it holds the line");
/// ```
#[derive(Clone, Debug, Default)]
pub struct PageInputs {
    /// The line, in GPX.
    pub route: Option<PageText>,
    /// The ice, in GeoJSON.
    pub zones: Option<PageText>,
    /// The members of the trip in JSON; paths in it are names of the files.
    pub trip: Value,
    /// Terrain models, the inventory, a practice file.
    pub files: Vec<PageFile>,
    /// The language that it begins with.
    pub language: Language,
}

/// A text with the name of its file.
///
/// ```
/// use schrund::write::page::file::{PageInputs, PageText};
///
/// let zones = PageText { name: "ice.geojson".to_owned(), text: "{}".to_owned() };
/// assert!(PageInputs { zones: Some(zones), ..PageInputs::default() }.route.is_none(), "a page can hold ice alone");
/// ```
#[derive(Clone, Debug, Serialize)]
pub struct PageText {
    /// The name, without a folder.
    pub name: String,
    /// All of it.
    pub text: String,
}

/// A file with its name.
///
/// ```
/// use schrund::write::page::file::{PageInputs, PageFile, document};
///
/// let files = vec![PageFile { name: "N66E002.hgt".to_owned(), bytes: vec![7; 1000], cut: false }];
/// let page = document(&PageInputs { files, ..PageInputs::default() }, None).expect("memory takes everything");
/// assert!(page.contains("N66E002.hgt"));
/// ```
#[derive(Clone, Debug)]
pub struct PageFile {
    /// The name, without a folder.
    pub name: String,
    /// All of it.
    pub bytes: Vec<u8>,
    /// Whether only what lies round the line is left in it.
    pub cut: bool,
}

/// What stands in the head of the page: nothing is asked for, its own script and its own program run.
const POLICY: &str = "default-src 'none'; script-src 'unsafe-inline' 'wasm-unsafe-eval' blob:; worker-src blob:; \
                      style-src 'unsafe-inline'; img-src data: blob:; base-uri 'none'; form-action 'none'";

/// The file; `still` is what it shows where no script runs.
///
/// # Errors
/// Only if what it was given cannot be packed, which memory never refuses.
pub fn document(given: &PageInputs, still: Option<&Sheet<'_>>) -> io::Result<String> {
    let voice = Voice {
        language: given.language,
        ..Voice::default()
    };
    let members = inline(&serde_json::to_string(&InPage::of(given)?)?);
    let page = html! {
        (DOCTYPE)
        html lang=(given.language.tag()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="generator" content={ "schrund " (env!("CARGO_PKG_VERSION")) ", " (packed::NAMES) };
                meta http-equiv="Content-Security-Policy" content=(POLICY);
                title { (voice.say("draw-title", &[])) }
                style { (PreEscaped(report::styles())) (PreEscaped(packed::STYLE)) }
            }
            body {
                (PreEscaped(packed::BODY))
                div id="still" { (fallback(still, voice)) }
                script type="application/json" id="given" { (PreEscaped(members)) }
                script type="application/octet-stream" id="core" { (PreEscaped(letters::of(packed::CORE))) }
                script { (PreEscaped(packed::SCRIPT)) }
            }
        }
    };
    Ok(page.into_string())
}

/// Two sides of paper answer without any script; without a plan a sentence says what the page needs.
fn fallback(still: Option<&Sheet<'_>>, voice: Voice) -> Markup {
    match still {
        Some(sheet) => report::sheet::body(sheet, &html! {}),
        None => html! { p { (voice.say("draw-needs-script", &[])) } },
    }
}

/// JSON that no script element ends in.
fn inline(json: &str) -> String {
    json.replace('<', "\\u003c")
}

/// As the page reads it.
#[derive(Serialize)]
struct InPage<'a> {
    version: &'static str,
    language: &'static str,
    words: Map<String, Value>,
    route: Option<&'a PageText>,
    zones: Option<&'a PageText>,
    trip: &'a Value,
    files: Vec<PackedFile<'a>>,
}

#[derive(Serialize)]
struct PackedFile<'a> {
    name: &'a str,
    packed: String,
    cut: bool,
}

impl<'a> InPage<'a> {
    fn of(given: &'a PageInputs) -> io::Result<Self> {
        let files = given.files.iter().map(|file| {
            Ok(PackedFile {
                name: &file.name,
                packed: STANDARD.encode(gzip(&file.bytes)?),
                cut: file.cut,
            })
        });
        Ok(Self {
            version: env!("CARGO_PKG_VERSION"),
            language: given.language.tag(),
            words: words(),
            route: given.route.as_ref(),
            zones: given.zones.as_ref(),
            trip: &given.trip,
            files: files.collect::<io::Result<_>>()?,
        })
    }
}

/// The words of every language, since whoever opens the page may have another one than who made it.
fn words() -> Map<String, Value> {
    let of = |language: &Language| {
        let words = drawing::words(*language).into_iter();
        let words: Map<String, Value> = words
            .map(|(name, word)| (name.to_owned(), word.into()))
            .collect();
        (language.tag().to_owned(), words.into())
    };
    Language::ALL.iter().map(of).collect()
}

fn gzip(bytes: &[u8]) -> io::Result<Vec<u8>> {
    let mut packed = GzEncoder::new(Vec::new(), Compression::best());
    packed.write_all(bytes)?;
    packed.finish()
}
