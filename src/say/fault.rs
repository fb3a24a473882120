//! Faults of inputs in words: what is wrong, where, and how to mend it.

mod files;
mod flatgeobuf;
mod geojson;
mod gpx;
mod instead;
mod limit;
#[cfg(feature = "fetch")]
mod network;
mod numbers;
mod phrase;
mod place;
mod quote;
mod refusal;
mod stages;
mod strip;
mod terrain;
mod tiff;
mod toml;
mod trip;

use std::fmt;

use self::phrase::Phrase;
use crate::{
    fault::{Fault, Item, Level, Wrong, refusal::Refusal},
    say::{arg::Arg, plain, span::Said, voice::Voice},
};

pub use self::place::place;

/// What is wrong, a sentence without a full stop; quotes the value found.
///
/// ```
/// use schrund::{fault::{Fault, Place, gpx::InGpx}, say};
///
/// let jump = InGpx::Jump { length_m: 1200.0, at_m: 350.0 };
/// let fault = Fault::new(jump, Place::file("tour.gpx"));
/// assert_eq!(
///     say::fault::says(&fault, Default::default()).to_string(),
///     "the line jumps 1200 m at 350 m; the jump is not walked and adds no length"
/// );
/// ```
#[must_use]
pub fn says(fault: &Fault, voice: Voice) -> Said {
    let says = harmless(phrase(fault, voice).says(voice));
    match fault.more {
        0 => says,
        more => {
            let args = [("says", Arg::Said(says)), ("more", Arg::Count(more))];
            voice.say("fault-and-more", &args)
        }
    }
}

/// How to mend it, if there is a way.
#[must_use]
pub fn hint(fault: &Fault, voice: Voice) -> Option<Said> {
    let cure = phrase(fault, voice).hint(voice)?;
    Some(harmless(limit::raised(cure, &fault.what, voice)))
}

/// What came from files, addresses and flags does nothing where it is shown.
fn harmless(said: Said) -> Said {
    said.map_names(plain::visible).map_code(plain::visible)
}

/// Why a model has no answer.
#[must_use]
pub fn refusal(why: &Refusal, voice: Voice) -> Said {
    refusal::phrase(why).says(voice)
}

fn phrase(fault: &Fault, voice: Voice) -> Phrase {
    let file = fault.at.file.as_deref().unwrap_or_default();
    match &fault.what {
        Wrong::Files(what) => files::phrase(what),
        #[cfg(feature = "fetch")]
        Wrong::Network(what) => network::phrase(what),
        // A build that fetches nothing says no more than that.
        #[cfg(not(feature = "fetch"))]
        Wrong::Network(_) => Phrase::plain("network-not-built"),
        Wrong::Gpx(what) => gpx::phrase(what, file, voice),
        Wrong::Geojson(what) => {
            let typed = matches!(fault.at.item, Some(Item::Flag(_)));
            geojson::phrase(what, file, voice).and(vec![("typed", Arg::yes(typed))])
        }
        Wrong::Flatgeobuf(what) => flatgeobuf::phrase(what, file),
        Wrong::Terrain(what) => terrain::phrase(what, file),
        Wrong::Toml(what) => toml::phrase(what),
        Wrong::Practice(what) => trip::practice(what),
        Wrong::Trip(what) => trip::phrase(what, voice),
        Wrong::Strip(what) => strip::phrase(what, voice),
        Wrong::Plan(what) => trip::plan(what, voice),
        Wrong::More(_, more) => Phrase::of("fault-more", [("more", Arg::Count(*more))]),
    }
}

/// `error[code]: what is wrong`, then where, then how to mend it, each on a line.
#[must_use]
pub fn told(fault: &Fault, voice: Voice) -> String {
    let head = format!("{}[{}]", head(fault.level()), fault.code());
    let mut told = format!("{head}: {}", says(fault, voice));
    let place = place(&fault.at, voice);
    if !place.is_empty() {
        told += &format!("\n  {}: {place}", voice.say("fault-at", &[]));
    }
    if let Some(hint) = hint(fault, voice) {
        told += &format!("\n  {}: {hint}", voice.say("fault-do", &[]));
    }
    told
}

/// The word in front of a message: what is to be looked at is a warning there, as in every program.
fn head(level: Level) -> &'static str {
    match level {
        Level::Look => "warning",
        level => level.as_str(),
    }
}

/// As [`told`] says it, in English and metres, to somebody who gives no flags.
impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&told(self, Voice::default()))
    }
}

impl std::error::Error for Fault {}

impl Level {
    /// Its stable name.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::Error => "error",
            Self::Stop => "stop",
            Self::Outside => "outside",
            Self::Look => "look",
            Self::Note => "note",
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::say::language::Language;

    /// What faults are made of: everything in the catalogue that begins so.
    const BEGINNINGS: [&str; 15] = [
        "alone",
        "file-",
        "figure-",
        "gpx-",
        "inventory-",
        "network-",
        "no-",
        "practice-",
        "relief-",
        "stretch-",
        "terrain-",
        "toml-",
        "trip-",
        "xml-",
        "zones-",
    ];

    /// Parts of other messages, notes about what was done, and answers of the models: nothing is to be mended.
    const NOTHING_TO_MEND: &[&str] = &[
        "figure-built-in",
        "figure-no-holder",
        "figure-no-turn",
        "figure-nobody",
        "figure-orders",
        "figure-sides",
        "gpx-detail-used",
        "gpx-export",
        "gpx-holds-nothing",
        "gpx-holds-routes",
        "gpx-holds-tracks",
        "gpx-holds-waypoints",
        "gpx-jump",
        "gpx-lone-segments",
        "gpx-no-two-points",
        "no-folder-for-outputs",
        "terrain-egm96",
        "terrain-ellipsoid",
        "terrain-fetch-again",
        "terrain-flattens",
        "terrain-heights",
        "terrain-no-void",
        "terrain-nothing-here",
        "terrain-shifted",
        "terrain-taken",
        "terrain-turned",
        "terrain-unbelievable",
        "terrain-unsaid",
        "toml-table",
        "trip-members",
        "trip-stage",
        "trip-stage-named",
        "xml-cut-off",
        "xml-repair",
        "zones-collection",
        "zones-flatgeobuf-near-only",
        "zones-gaps-differ",
        "zones-no-area",
        "zones-not-a-number",
        "zones-not-polygons",
        "zones-one-end",
        "zones-rings-closed",
        "zones-rings-tangled",
    ];

    #[test]
    fn every_fault_says_how_it_is_mended() {
        let catalogue = Language::English.catalogue();
        let is_fault = |key: &&str| BEGINNINGS.iter().any(|begins| key.starts_with(begins));
        let without = catalogue.messages().filter(is_fault).filter(|key| {
            let entry = catalogue.entry(key);
            entry.is_some_and(|entry| entry.attribute("hint").is_none())
        });
        let mut without: Vec<&str> = without.collect();
        without.sort_unstable();
        assert_eq!(without, NOTHING_TO_MEND);
    }
}
