//! Whole files: what is kept of them as long as it is fresh, or still as it was, and else what comes.

use std::{io::Read, time::SystemTime};

use super::{
    address::Address,
    answer::{AnswerFacts, Reply, Trouble, seconds},
    asking::{Fetcher, Question},
    store::{KeptBytes, KeptFile},
};
use crate::{
    fault::{Fault, files::InFiles, network::InNetwork},
    raster::RasterSource,
};

/// What is asked for.
///
/// ```
/// use schrund::fetch::Wanted;
///
/// assert_ne!(Wanted::Data, Wanted::Outlines, "a page of outlines may be smaller, and says in what form it is wanted");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// Any data: a route, zones, heights.
    Data,
    /// GeoJSON, in pages.
    Outlines,
}

impl Wanted {
    pub(super) fn kinds(self) -> Option<&'static str> {
        match self {
            Self::Data => None,
            Self::Outlines => Some("application/geo+json, application/json;q=0.9, */*;q=0.1"),
        }
    }
}

/// A whole file that came from an address, or was kept of it.
///
/// ```
/// use schrund::fetch::{Address, AddressStore, Fetcher, Manners, Wanted, WholeAnswer};
///
/// fn bytes(fetcher: &Fetcher, ice: &Address) -> Result<Vec<u8>, schrund::fault::Fault> {
///     let answer: WholeAnswer = fetcher.whole(ice, Wanted::Data)?;
///     answer.bytes()
/// }
/// let ice = Address::parse("https://maps.example/ice.geojson")?;
/// assert!(bytes(&Fetcher::new(Manners::default(), AddressStore::nothing(), true), &ice).is_err());
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Debug)]
pub struct WholeAnswer {
    address: Address,
    kept: KeptFile,
}

impl WholeAnswer {
    /// The file, to be read from any place of it.
    ///
    /// # Errors
    /// What was kept can no longer be read.
    pub fn open(&self) -> Result<RasterSource, Fault> {
        self.kept.bytes.open().map_err(|why| {
            let stopped = InFiles::Stopped(why.to_string());
            Fault::new(stopped, self.address.place())
        })
    }

    /// All of it.
    ///
    /// # Errors
    /// What was kept can no longer be read.
    pub fn bytes(&self) -> Result<Vec<u8>, Fault> {
        if let KeptBytes::Memory(bytes) = &self.kept.bytes {
            return Ok(bytes.to_vec());
        }
        let mut bytes = Vec::new();
        let read = self.open()?.read_to_end(&mut bytes);
        let stopped = |why: std::io::Error| InFiles::Stopped(why.to_string());
        read.map_err(|why| Fault::new(stopped(why), self.address.place()))?;
        Ok(bytes)
    }

    /// The day it came, `2027-07-04`, as its server counts.
    #[must_use]
    pub fn day(&self) -> &str {
        &self.kept.facts.day
    }

    /// Under which licence it is given, where the server links to one.
    #[must_use]
    pub fn licence(&self) -> Option<&str> {
        self.kept.facts.licence.as_deref()
    }
}

impl Fetcher {
    /// A whole file: what is kept as long as it is fresh, and else what the server has now.
    ///
    /// # Errors
    /// The network, a limit, or offline nothing that is kept.
    pub fn whole(&self, address: &Address, wanted: Wanted) -> Result<WholeAnswer, Fault> {
        let kept = self.store.get(&address.key());
        let usable = |kept: &KeptFile| self.is_offline() || self.is_fresh(&kept.facts);
        let address = address.clone();
        if let Some(kept) = kept.clone().filter(usable) {
            return Ok(WholeAnswer { address, kept });
        }
        let old = kept.as_ref().map(|kept| &kept.facts);
        let asked = Question {
            unless: old.and_then(|old| old.etag.clone()),
            since: old.and_then(|old| old.last_modified.clone()),
            kinds: wanted.kinds(),
            ..Question::default()
        };
        let most = match wanted {
            Wanted::Data => self.manners.most_bytes,
            Wanted::Outlines => self.manners.most_page_bytes,
        };
        let take = &mut |reply: Reply| match (reply.status(), &kept) {
            (304, Some(kept)) => Ok(self.still(&address, kept, &reply)),
            (200, _) => {
                let taken = self.taken(&address, reply, most);
                taken.map_err(|trouble| match wanted {
                    Wanted::Data => trouble,
                    Wanted::Outlines => trouble.of_a_page(),
                })
            }
            _ => Err(other(&reply)),
        };
        let kept = self.ask(&address, &asked, take)?;
        Ok(WholeAnswer { address, kept })
    }

    /// Whether nothing need be asked.
    pub(super) fn is_fresh(&self, facts: &AnswerFacts) -> bool {
        let fresh_s = facts.fresh_s.unwrap_or(self.manners.fresh.as_secs());
        let now_s = seconds(SystemTime::now());
        // What was asked in the future was asked by another clock.
        facts.asked_s <= now_s && now_s - facts.asked_s < fresh_s
    }

    /// What is kept, which is still what the server has.
    fn still(&self, address: &Address, kept: &KeptFile, reply: &Reply) -> KeptFile {
        let facts = renewed(&kept.facts, reply.facts());
        self.store.renew(address, &facts);
        KeptFile {
            facts,
            bytes: kept.bytes.clone(),
        }
    }

    /// A whole file as it comes; kept when all of it is there.
    pub(super) fn taken(
        &self,
        address: &Address,
        reply: Reply,
        most: u64,
    ) -> Result<KeptFile, Trouble> {
        let facts = reply.facts();
        let mut room = self.store.room();
        reply.body(most, &mut room)?;
        if is_web_page(room.head()) {
            return Err(Trouble::Lasting(InNetwork::WebPage));
        }
        let kept = self.store.keep(address, facts, room);
        kept.map_err(|why| Trouble::Lasting(InNetwork::Other(why.to_string())))
    }
}

/// What is known of a file that is still as it was: marks and licence may be left out of such an answer.
pub(super) fn renewed(old: &AnswerFacts, new: AnswerFacts) -> AnswerFacts {
    AnswerFacts {
        etag: new.etag.or_else(|| old.etag.clone()),
        last_modified: new.last_modified.or_else(|| old.last_modified.clone()),
        media: old.media.clone(),
        licence: new.licence.or_else(|| old.licence.clone()),
        ..new
    }
}

/// A good answer, but to another question.
pub(super) fn other(reply: &Reply) -> Trouble {
    let status = reply.response.status().to_string();
    Trouble::Lasting(InNetwork::Answered { status })
}

/// Whether a file that begins so is for a browser.
pub(super) fn is_web_page(head: &[u8]) -> bool {
    let head = head.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(head);
    let head = head.trim_ascii_start().to_ascii_lowercase();
    head.starts_with(b"<!doctype html") || head.starts_with(b"<html")
}
