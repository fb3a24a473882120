//! One answer of a server: what it says of itself, and its body within the limits.

use std::{
    io::{self, ErrorKind, Read, Write},
    sync::Arc,
    time::{Duration, Instant, SystemTime, UNIX_EPOCH},
};

use flate2::read::MultiGzDecoder;
use reqwest::{blocking::Response, header::HeaderMap};
use serde::{Deserialize, Serialize};

use super::address::Address;
use crate::fault::network::InNetwork;

/// Bytes read at once. Our judgement.
const AT_ONCE: usize = 1 << 16;

/// How far a file has come: its address as it is shown, bytes that are there, bytes that were announced.
///
/// ```
/// use schrund::fetch::{AddressStore, Fetcher, Manners, Progress};
///
/// let bar: Progress = std::sync::Arc::new(|address: &str, got, due| println!("{address}: {got} of {due:?}"));
/// let fetcher = Fetcher::new(Manners::default(), AddressStore::nothing(), true).told_to(bar);
/// assert!(fetcher.is_offline());
/// ```
pub type Progress = Arc<dyn Fn(&str, u64, Option<u64>) + Send + Sync>;

/// Whoever is told how far a file has come.
#[derive(Clone, Default)]
pub(super) struct Tell(pub(super) Option<Progress>);

impl Tell {
    pub(super) fn tell(&self, shown: &str, got: u64, due: Option<u64>) {
        if let Some(tell) = &self.0 {
            tell(shown, got, due);
        }
    }
}

/// Why nothing came of a request.
#[derive(Debug)]
pub(super) enum Trouble {
    /// It may be otherwise in a moment; beside it how long the server wants to be left alone.
    Passing(InNetwork, Option<Duration>),
    /// It will be the same again.
    Lasting(InNetwork),
}

impl Trouble {
    /// The same of a page of outlines.
    pub(super) fn of_a_page(mut self) -> Self {
        let (Self::Passing(what, _) | Self::Lasting(what)) = &mut self;
        if let InNetwork::TooBig { page, .. } = what {
            *page = true;
        }
        self
    }
}

/// What an answer says of itself and must be remembered of it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct AnswerFacts {
    /// Seconds since 1970 when it was asked last.
    pub(super) asked_s: u64,
    /// The day on which it was made, as the server or else this machine has it: `2027-07-04`.
    pub(super) day: String,
    /// For how many seconds nothing is asked again, where the server says so.
    pub(super) fresh_s: Option<u64>,
    /// The server's mark for this state of the file.
    pub(super) etag: Option<String>,
    /// The server's date of this state of the file.
    pub(super) last_modified: Option<String>,
    /// What kind of data it is said to be.
    pub(super) media: Option<String>,
    /// Under which licence, as the server links to it.
    pub(super) licence: Option<String>,
    /// Not to be kept.
    #[serde(skip)]
    pub(super) no_store: bool,
}

impl AnswerFacts {
    fn of(headers: &HeaderMap) -> Self {
        let text = |name: &str| Some(headers.get(name)?.to_str().ok()?.trim().to_owned());
        let control = text("cache-control")
            .unwrap_or_default()
            .to_ascii_lowercase();
        let says = |word: &str| control.split(',').any(|part| part.trim() == word);
        let max_age = control.split(',').find_map(|part| {
            let (name, seconds) = part.trim().split_once('=')?;
            let seconds = seconds.trim_matches('"').parse().ok();
            seconds.filter(|_| name == "max-age")
        });
        let date = text("date").and_then(|date| httpdate::parse_http_date(&date).ok());
        Self {
            asked_s: seconds(SystemTime::now()),
            day: day(date.unwrap_or_else(SystemTime::now)),
            fresh_s: if says("no-cache") { Some(0) } else { max_age },
            etag: text("etag"),
            last_modified: text("last-modified"),
            media: text("content-type"),
            licence: text("link").and_then(|links| licence(&links)),
            no_store: says("no-store"),
        }
    }
}

/// The address behind `rel="license"` (RFC 8288) among the links of an answer.
fn licence(links: &str) -> Option<String> {
    let is_licence = |link: &&str| link.contains("rel=license") || link.contains("rel=\"license\"");
    let link = links.split(',').find(is_licence)?;
    let (_, rest) = link.split_once('<')?;
    Some(rest.split_once('>')?.0.to_owned())
}

/// Seconds since 1970.
pub(super) fn seconds(time: SystemTime) -> u64 {
    time.duration_since(UNIX_EPOCH)
        .map_or(0, |since| since.as_secs())
}

/// The day of a time in UTC, `2027-07-04`. Counting of days in the Gregorian calendar, by eras of 400 years.
fn day(time: SystemTime) -> String {
    let days = seconds(time) / 86_400 + 719_468;
    let (era, of_era) = (days / 146_097, days % 146_097);
    let year = (of_era - of_era / 1460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let month = (5 * of_year + 2) / 153;
    let date = of_year - (153 * month + 2) / 5 + 1;
    let (month, next) = if month < 10 {
        (month + 3, 0)
    } else {
        (month - 9, 1)
    };
    format!("{:04}-{month:02}-{date:02}", year + era * 400 + next)
}

/// A good answer whose body is still to come.
pub(super) struct Reply {
    pub(super) from: Address,
    pub(super) response: Response,
    pub(super) asked: Instant,
    pub(super) allowed: Duration,
    pub(super) tell: Tell,
}

impl Reply {
    pub(super) fn status(&self) -> u16 {
        self.response.status().as_u16()
    }

    pub(super) fn facts(&self) -> AnswerFacts {
        AnswerFacts::of(self.response.headers())
    }

    pub(super) fn header(&self, name: &str) -> Option<&str> {
        self.response.headers().get(name)?.to_str().ok()
    }

    /// The body, unpacked, into a file or the memory; how many bytes it was.
    pub(super) fn body(mut self, most: u64, into: &mut dyn Write) -> Result<u64, Trouble> {
        let too_big = |unpacked| {
            let most_mib = most >> 20;
            let page = false;
            Trouble::Lasting(InNetwork::TooBig {
                most_mib,
                unpacked,
                page,
            })
        };
        let due = self.response.content_length();
        if due.is_some_and(|due| due > most) {
            return Err(too_big(false));
        }
        let coding = self.header("content-encoding").unwrap_or("identity");
        let coding = coding.trim().to_ascii_lowercase();
        let (tell, allowed) = (self.tell.clone(), self.allowed);
        let shown = self.from.to_string();
        let mut taken = Taken {
            until: self.asked + allowed,
            response: &mut self.response,
            got: 0,
            most,
        };
        let packed = matches!(coding.as_str(), "gzip" | "x-gzip");
        if !packed && !matches!(coding.as_str(), "" | "identity") {
            return Err(Trouble::Lasting(InNetwork::Coding(coding)));
        }
        let mut buffer = vec![0; AT_ONCE];
        let mut whole = 0;
        let copied = if packed {
            let mut unpacked = MultiGzDecoder::new(&mut taken);
            copy(
                &mut unpacked,
                &mut buffer,
                most,
                into,
                &mut whole,
                &mut |_| (),
            )
        } else {
            let tell = &mut |got| tell.tell(&shown, got, due);
            copy(&mut taken, &mut buffer, most, into, &mut whole, tell)
        };
        let got = taken.got;
        match copied {
            Ok(()) => Ok(whole),
            Err(Stop::Room(words)) => Err(Trouble::Lasting(InNetwork::Other(words))),
            Err(Stop::Big) => Err(too_big(packed && got <= most)),
            Err(Stop::Late) => Err(late(allowed)),
            Err(Stop::Cut) => {
                let tries = 1;
                Err(Trouble::Passing(InNetwork::Cut { got, due, tries }, None))
            }
        }
    }
}

/// No whole answer in time.
pub(super) fn late(allowed: Duration) -> Trouble {
    let allowed_s = allowed.as_secs().max(1);
    Trouble::Lasting(InNetwork::Late { allowed_s })
}

/// Why the copying of a body ended before it.
enum Stop {
    Late,
    Big,
    Cut,
    /// There is no room for it, in the words of the system.
    Room(String),
}

fn copy(
    from: &mut dyn Read,
    buffer: &mut [u8],
    most: u64,
    into: &mut dyn Write,
    whole: &mut u64,
    tell: &mut dyn FnMut(u64),
) -> Result<(), Stop> {
    loop {
        let count = match from.read(buffer) {
            Ok(0) => return Ok(()),
            Ok(count) => count,
            Err(why) if why.kind() == ErrorKind::Interrupted => continue,
            Err(why) => return Err(stopped(&why)),
        };
        *whole += count as u64;
        if *whole > most {
            return Err(Stop::Big);
        }
        let piece = buffer.get(..count).unwrap_or_default();
        into.write_all(piece)
            .map_err(|why| Stop::Room(why.to_string()))?;
        tell(*whole);
    }
}

fn stopped(why: &io::Error) -> Stop {
    let inner = why
        .get_ref()
        .and_then(|inner| inner.downcast_ref::<reqwest::Error>());
    match why.kind() {
        ErrorKind::TimedOut => Stop::Late,
        ErrorKind::FileTooLarge => Stop::Big,
        _ if inner.is_some_and(reqwest::Error::is_timeout) => Stop::Late,
        _ => Stop::Cut,
    }
}

/// A body as it comes, within its time and size. The client alone counts its time anew at every read.
struct Taken<'r> {
    response: &'r mut Response,
    until: Instant,
    got: u64,
    most: u64,
}

impl Read for Taken<'_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        if Instant::now() > self.until {
            return Err(ErrorKind::TimedOut.into());
        }
        let count = self.response.read(into)?;
        self.got += count as u64;
        if self.got > self.most {
            return Err(ErrorKind::FileTooLarge.into());
        }
        Ok(count)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_those_of_the_calendar() {
        // Checked with the dates of RFC 9110, section 5.6.7, and by counting.
        let told = |text: &str| day(httpdate::parse_http_date(text).expect("a date"));
        assert_eq!(told("Sun, 06 Nov 1994 08:49:37 GMT"), "1994-11-06");
        assert_eq!(told("Tue, 29 Feb 2028 23:59:59 GMT"), "2028-02-29");
        assert_eq!(told("Thu, 01 Jan 1970 00:00:00 GMT"), "1970-01-01");
        assert_eq!(told("Fri, 31 Dec 2100 12:00:00 GMT"), "2100-12-31");
    }

    #[test]
    fn a_licence_is_the_link_that_says_so() {
        let links =
            "</items?page=2>; rel=\"next\", <https://licence.example/by/4.0>; rel=\"license\"";
        assert_eq!(
            licence(links).as_deref(),
            Some("https://licence.example/by/4.0")
        );
        assert_eq!(licence("</items>; rel=\"next\""), None);
    }
}
