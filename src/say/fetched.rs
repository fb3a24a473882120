//! What is told of data that came from a server.

use crate::say::{arg::Arg, span::Said, voice::Voice};

/// Where outlines come from, for who reads of them later.
///
/// ```
/// use schrund::say::fetched::source;
///
/// let said = source("https://maps.example/ice/items", "2027-07-04", Some("CC BY 4.0"), Default::default());
/// assert_eq!(
///     said.to_string(),
///     "outline of an inventory, https://maps.example/ice/items, fetched 2027-07-04, licence CC BY 4.0"
/// );
/// ```
#[must_use]
pub fn source(address: &str, day: &str, licence: Option<&str>, voice: Voice) -> Said {
    let args = [
        ("address", Arg::Name(address)),
        ("day", Arg::Name(day)),
        ("known", Arg::yes(licence.is_some())),
        ("licence", Arg::Name(licence.unwrap_or_default())),
    ];
    voice.say("fetched-source", &args)
}

/// What was made of so many outlines: so many of them lie near the route. A sentence a line, without full stops.
#[must_use]
pub fn outlines(near: usize, came: usize, by_index: bool, voice: Voice) -> Vec<Said> {
    let args = [
        ("near", Arg::Count(near)),
        ("came", Arg::Count(came)),
        ("found", Arg::yes(by_index)),
    ];
    vec![
        voice.say("fetched-outlines", &args),
        voice.say("fetched-no-gap", &[]),
    ]
}

/// A file of heights, and whose they are.
#[must_use]
pub fn heights(file: &str, credit: Option<&str>, voice: Voice) -> Said {
    let args = [
        ("file", Arg::Name(file)),
        ("known", Arg::yes(credit.is_some())),
        ("credit", Arg::Name(credit.unwrap_or_default())),
    ];
    voice.say("fetched-heights", &args)
}

/// A tile that the server does not have.
#[must_use]
pub fn no_tile(address: &str, voice: Voice) -> Said {
    voice.say("fetched-no-tile", &[("address", Arg::Name(address))])
}
