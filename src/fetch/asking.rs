//! Asking a server: at most so many requests at once, sent on a few times, asked again where that may help.

use std::{
    collections::hash_map::RandomState,
    error::Error as _,
    fmt,
    hash::BuildHasher,
    io,
    sync::{Arc, Condvar, Mutex, OnceLock, PoisonError},
    thread,
    time::{Duration, Instant, SystemTime},
};

use reqwest::{
    blocking::{Client, RequestBuilder},
    header, redirect,
};

use super::{
    address::Address,
    answer::{Progress, Reply, Tell, Trouble, late},
    manners::{BUSY, Manners, USER_AGENT},
    store::AddressStore,
};
use crate::fault::{
    Fault,
    network::{InNetwork, NotFollowed},
};

/// Whoever asks: by its manners, for what its store does not keep. A copy asks under the same limits.
///
/// ```
/// use schrund::fetch::{Address, AddressStore, Fetcher, Manners, Wanted};
///
/// let offline = Fetcher::new(Manners::default(), AddressStore::nothing(), true);
/// let ice = Address::parse("https://maps.example/ice.geojson?key=1234")?;
/// let fault = offline.whole(&ice, Wanted::Data).map(|_| ()).expect_err("nothing is kept, nothing may be asked");
/// assert!(fault.to_string().contains("nothing is kept of this address"));
/// assert!(!fault.to_string().contains("1234"));
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Clone)]
pub struct Fetcher {
    pub(super) manners: Arc<Manners>,
    pub(super) store: Arc<AddressStore>,
    offline: bool,
    tell: Tell,
    gate: Arc<Gate>,
    line: Arc<OnceLock<Line>>,
    /// What broke off while it was read.
    broke_off: Arc<Mutex<Vec<Fault>>>,
}

impl fmt::Debug for Fetcher {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Fetcher(offline: {})", self.offline)
    }
}

/// What is asked beside the address.
#[derive(Clone, Debug, Default)]
pub(super) struct Question {
    /// First and last byte.
    pub(super) range: Option<(u64, u64)>,
    /// Only if the file is no longer in this state.
    pub(super) unless: Option<String>,
    /// Only if it was changed since.
    pub(super) since: Option<String>,
    /// The part only of the file in this state.
    pub(super) only_of: Option<String>,
    /// Which kinds of data.
    pub(super) kinds: Option<&'static str>,
}

impl Fetcher {
    /// With nothing asked yet. Offline no request is made at all.
    #[must_use]
    pub fn new(manners: Manners, store: AddressStore, offline: bool) -> Self {
        Self {
            gate: Arc::new(Gate::new(manners.at_once)),
            manners: Arc::new(manners),
            store: Arc::new(store),
            offline,
            tell: Tell::default(),
            line: Arc::default(),
            broke_off: Arc::default(),
        }
    }

    /// The same, with somebody who is told how far a file has come.
    #[must_use]
    pub fn told_to(self, progress: Progress) -> Self {
        let tell = Tell(Some(progress));
        Self { tell, ..self }
    }

    /// The same, which reads files here and there in blocks of so many bytes.
    pub(super) fn in_blocks(&self, block_bytes: u64) -> Self {
        let manners = Manners {
            block_bytes,
            ..Manners::clone(&self.manners)
        };
        let manners = Arc::new(manners);
        Self {
            manners,
            ..self.clone()
        }
    }

    /// Whether no request is made.
    #[must_use]
    pub fn is_offline(&self) -> bool {
        self.offline
    }

    /// The faults of files that broke off while they were read here and there: whoever read them may tell of a damaged file.
    #[must_use]
    pub fn broke_off(&self) -> Vec<Fault> {
        let broke_off = self.broke_off.lock();
        broke_off.unwrap_or_else(PoisonError::into_inner).clone()
    }

    pub(super) fn breaks_off(&self, fault: Fault) {
        let broke_off = self.broke_off.lock();
        let mut broke_off = broke_off.unwrap_or_else(PoisonError::into_inner);
        broke_off.push(fault);
    }

    /// Asks until something comes of it, or nothing will.
    pub(super) fn ask<T>(
        &self,
        address: &Address,
        asked: &Question,
        take: &mut dyn FnMut(Reply) -> Result<T, Trouble>,
    ) -> Result<T, Fault> {
        if self.offline {
            return Err(address.fault(InNetwork::NotKept));
        }
        for tries in 1.. {
            let tried = self.gate.through(|| {
                let reply = self.once(address, asked)?;
                take(reply)
            });
            let (what, wants) = match tried {
                Ok(taken) => return Ok(taken),
                Err(Trouble::Lasting(what)) => return Err(address.fault(what)),
                Err(Trouble::Passing(what, wants)) => (what, wants),
            };
            let wait = wants.unwrap_or_else(|| self.pause(tries));
            if tries >= self.manners.tries || wait > self.manners.longest_wait {
                return Err(address.fault(after(what, tries)));
            }
            thread::sleep(wait);
        }
        Err(address.fault(InNetwork::NotKept))
    }

    /// The pause before the next try: doubled from try to try, and half of it by chance, so that many who were cut off
    /// together do not come back together.
    fn pause(&self, tries: u32) -> Duration {
        let doubled = 2_u32.saturating_pow(tries.saturating_sub(1));
        let whole = self.manners.first_wait.saturating_mul(doubled);
        let whole = whole.min(self.manners.longest_wait);
        let chance = RandomState::new().hash_one(tries) % 1000;
        let chance = u32::try_from(chance).unwrap_or(0);
        whole / 2 + whole / 2 * chance / 1000
    }

    /// One request, sent on where the server says so.
    fn once(&self, address: &Address, asked: &Question) -> Result<Reply, Trouble> {
        let start = Instant::now();
        let mut at = address.clone();
        for _ in 0..=self.manners.redirects {
            let request = self.line()?.client.get(at.url().clone());
            let response = with(request, asked).send();
            let response = response.map_err(|why| self.unsent(&why))?;
            let status = response.status();
            let sent_on = response.headers().get(header::LOCATION);
            let sent_on =
                sent_on.filter(|_| matches!(status.as_u16(), 301 | 302 | 303 | 307 | 308));
            if let Some(to) = sent_on.and_then(|to| to.to_str().ok()) {
                at = at.leads_to(to).map_err(Trouble::Lasting)?;
                continue;
            }
            if status.is_success() || status.as_u16() == 304 {
                return Ok(Reply {
                    from: at,
                    response,
                    asked: start,
                    allowed: self.manners.total,
                    tell: self.tell.clone(),
                });
            }
            let later = response.headers().get(header::RETRY_AFTER);
            let later = later.and_then(|later| later.to_str().ok());
            return Err(refused(status, later));
        }
        let (to, most) = (at.to_string(), self.manners.redirects);
        let why = NotFollowed::TooOften(most);
        Err(Trouble::Lasting(InNetwork::SentOn { to, why }))
    }

    /// What asks, made at the first request.
    fn line(&self) -> Result<&Line, Trouble> {
        if let Some(line) = self.line.get() {
            return Ok(line);
        }
        let made = Line::with(&self.manners);
        let made = made.map_err(|why| Trouble::Lasting(InNetwork::Insecure(innermost(&why))))?;
        Ok(self.line.get_or_init(|| made))
    }

    /// Why no answer came.
    fn unsent(&self, why: &reqwest::Error) -> Trouble {
        let words = innermost(why);
        let lasting = |what| Trouble::Lasting(what);
        if why.is_timeout() {
            let Manners { connect, total, .. } = *self.manners;
            return late(if why.is_connect() {
                connect.min(total)
            } else {
                total
            });
        }
        if is_insecure(why) {
            let believes = self.line.get().is_none_or(|line| line.believes_authorities);
            return lasting(if believes {
                InNetwork::Insecure(words)
            } else {
                InNetwork::NoAuthorities
            });
        }
        if why.is_connect() {
            let all = format!("{why:?}");
            return lasting(if all.contains("dns error") {
                InNetwork::NoServer
            } else {
                InNetwork::NoConnection(words)
            });
        }
        if why.is_builder() {
            return lasting(InNetwork::NoAddress);
        }
        let cut = InNetwork::Cut {
            got: 0,
            due: None,
            tries: 1,
        };
        Trouble::Passing(cut, None)
    }
}

/// What asks, and whom it believes.
struct Line {
    client: Client,
    /// The system holds certificates of authorities. Where it holds none, what asks for no secrecy is fetched all the same.
    believes_authorities: bool,
}

impl Line {
    fn with(manners: &Manners) -> reqwest::Result<Self> {
        // A second call finds a provider installed; that is as good.
        let _ = rustls::crypto::ring::default_provider().install_default();
        let asker = || {
            Client::builder()
                .connect_timeout(manners.connect)
                .timeout(manners.total)
                .user_agent(USER_AGENT)
                .redirect(redirect::Policy::none())
        };
        let believing = asker().build();
        let believes_authorities = believing.is_ok();
        let client = believing.or_else(|_| asker().tls_certs_only([]).build())?;
        Ok(Self {
            client,
            believes_authorities,
        })
    }
}

fn with(request: RequestBuilder, asked: &Question) -> RequestBuilder {
    let parts = asked.range.map(|(from, to)| format!("bytes={from}-{to}"));
    // What is packed has no parts that could be read alone.
    let coding = if parts.is_some() { "identity" } else { "gzip" };
    let headers = [
        (header::RANGE, parts.as_deref()),
        (header::ACCEPT_ENCODING, Some(coding)),
        (header::IF_NONE_MATCH, asked.unless.as_deref()),
        (header::IF_MODIFIED_SINCE, asked.since.as_deref()),
        (header::IF_RANGE, asked.only_of.as_deref()),
        (header::ACCEPT, asked.kinds),
    ];
    let given = headers
        .into_iter()
        .filter_map(|(name, value)| Some((name, value?)));
    given.fold(request, |request, (name, value)| {
        request.header(name, value)
    })
}

/// An answer that is no file.
fn refused(status: reqwest::StatusCode, later: Option<&str>) -> Trouble {
    let (number, status) = (status.as_u16(), status.to_string());
    if !BUSY.contains(&number) {
        return Trouble::Lasting(InNetwork::Answered { status });
    }
    let wants = later.and_then(|later| wanted(later, SystemTime::now()));
    let busy = InNetwork::Busy {
        status,
        tries: 1,
        wait_s: wants.map(|wants| wants.as_secs()),
    };
    Trouble::Passing(busy, wants)
}

/// How long a server wants to be left alone: in seconds, or until a date (RFC 9110, section 10.2.3).
fn wanted(later: &str, now: SystemTime) -> Option<Duration> {
    if let Ok(seconds) = later.trim().parse() {
        return Some(Duration::from_secs(seconds));
    }
    let date = httpdate::parse_http_date(later.trim()).ok()?;
    Some(date.duration_since(now).unwrap_or_default())
}

/// What is told after so many tries.
fn after(what: InNetwork, tries: u32) -> InNetwork {
    match what {
        InNetwork::Cut { got, due, .. } => InNetwork::Cut { got, due, tries },
        InNetwork::Busy { status, wait_s, .. } => InNetwork::Busy {
            status,
            tries,
            wait_s,
        },
        other => other,
    }
}

/// The reasons of a fault, from the outside inwards.
fn reasons<'e>(
    why: &'e reqwest::Error,
) -> impl Iterator<Item = &'e (dyn std::error::Error + 'static)> {
    std::iter::successors(why.source(), |why| (*why).source())
}

/// The innermost reason; the outer ones repeat the address, and with it its secrets.
fn innermost(why: &reqwest::Error) -> String {
    let last = reasons(why).last();
    last.map_or_else(|| "the request failed".to_owned(), ToString::to_string)
}

fn is_insecure(why: &reqwest::Error) -> bool {
    // A server that hangs up while the secret is agreed on does not take https.
    let hung_up = |why: &(dyn std::error::Error + 'static)| why.to_string() == "tls handshake eof";
    reasons(why).any(|why| holds_tls(why) || hung_up(why))
}

/// Whether it is a fault of TLS, however deep it lies in faults of reading.
fn holds_tls(why: &(dyn std::error::Error + 'static)) -> bool {
    let inside = why.downcast_ref::<io::Error>().and_then(io::Error::get_ref);
    why.is::<rustls::Error>() || inside.is_some_and(|inside| holds_tls(inside))
}

/// Lets so many through at once.
struct Gate {
    free: Mutex<usize>,
    one_left: Condvar,
}

impl Gate {
    fn new(at_once: usize) -> Self {
        Self {
            free: Mutex::new(at_once.max(1)),
            one_left: Condvar::new(),
        }
    }

    fn through<T>(&self, run: impl FnOnce() -> T) -> T {
        let free = self.free.lock().unwrap_or_else(PoisonError::into_inner);
        let waited = self.one_left.wait_while(free, |free| *free == 0);
        *waited.unwrap_or_else(PoisonError::into_inner) -= 1;
        let done = run();
        *self.free.lock().unwrap_or_else(PoisonError::into_inner) += 1;
        self.one_left.notify_one();
        done
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_server_asks_to_be_left_alone_in_seconds_or_until_a_date() {
        let now = httpdate::parse_http_date("Sun, 06 Nov 1994 08:49:37 GMT").expect("a date");
        let secs = |later| wanted(later, now).map(|wait| wait.as_secs());
        assert_eq!(secs("120"), Some(120));
        assert_eq!(secs("Sun, 06 Nov 1994 08:50:07 GMT"), Some(30));
        assert_eq!(
            secs("Sun, 06 Nov 1994 08:00:00 GMT"),
            Some(0),
            "that is over"
        );
        assert_eq!(secs("soon"), None);
    }

    #[test]
    fn pauses_grow_and_end() {
        let fetcher = Fetcher::new(Manners::default(), AddressStore::nothing(), true);
        for tries in 1..40 {
            let pause = fetcher.pause(tries);
            let most = fetcher.manners.longest_wait;
            let due = Duration::from_secs(1_u64 << (tries - 1).min(5)).min(most);
            assert!(pause >= due / 2 && pause <= due, "{tries}: {pause:?}");
        }
    }
}
