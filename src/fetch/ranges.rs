//! Files that are read here and there: only the parts that are asked for come, in blocks.

use std::{
    collections::BTreeMap,
    io::{self, ErrorKind, Read, Seek, SeekFrom},
    sync::Arc,
};

use super::{
    address::Address,
    answer::{AnswerFacts, Reply, Trouble},
    asking::{Fetcher, Question},
    outlines::{OutlineFile, is_collection},
    store::{KeptFile, PartsSidecar},
    whole::{Wanted, is_web_page, other, renewed},
};
use crate::{
    fault::{Fault, network::InNetwork},
    raster::RasterSource,
};

/// Most blocks in one request: what is read from front to back comes in longer and longer pieces. Our judgement: what is too
/// much of the last one is less than a tile of heights.
const LONGEST_RUN: u64 = 4;

/// What the first question brought.
enum FirstAnswer {
    /// The file as it was; its parts are kept.
    Still(PartsSidecar),
    /// The beginning of a file that is given in parts.
    Parts(PartsSidecar, Vec<u8>),
    /// All of it: the server gives no parts.
    Whole(KeptFile),
}

impl Fetcher {
    /// A file that is read here and there: where the server gives parts only those that are read come, and else all of it.
    ///
    /// # Errors
    /// The network, a limit, or offline nothing that is kept.
    pub fn model(&self, address: &Address) -> Result<RasterSource, Fault> {
        Ok(self.opened(address, None)?.0)
    }

    /// A file of outlines that is read here and there, as an index tells, in small blocks; and what its server says of it. `None`
    /// of a collection, which is asked page by page.
    ///
    /// # Errors
    /// As [`Fetcher::model`].
    pub fn outline_file(
        &self,
        address: &Address,
    ) -> Result<Option<(RasterSource, OutlineFile)>, Fault> {
        if is_collection(address) {
            return Ok(None);
        }
        let small = self.in_blocks(self.manners.index_block_bytes);
        let (source, facts) = small.opened(address, Wanted::Outlines.kinds())?;
        let file = OutlineFile {
            address: address.to_string(),
            place: address.clone(),
            day: facts.day,
            licence: facts.licence,
        };
        Ok(Some((source, file)))
    }

    fn opened(
        &self,
        address: &Address,
        kinds: Option<&'static str>,
    ) -> Result<(RasterSource, AnswerFacts), Fault> {
        let key = address.key();
        let usable = |facts: &AnswerFacts| self.is_offline() || self.is_fresh(facts);
        let broken = |why: io::Error| address.fault(InNetwork::Other(why.to_string()));
        let of_whole = |kept: KeptFile| {
            let source = kept.bytes.open().map_err(broken)?;
            Ok((source, kept.facts))
        };
        let remote = |parts: PartsSidecar, first: Option<Vec<u8>>| {
            let mut file = RemoteFile::new(self, address, &parts);
            if let Some(bytes) = first {
                file.put(0, bytes);
            }
            (Box::new(file) as RasterSource, parts.facts)
        };
        let whole = self.store.get(&key);
        if let Some(whole) = whole.filter(|kept| usable(&kept.facts)) {
            return of_whole(whole);
        }
        let parts = self.store.parts(&key);
        if let Some(parts) = parts.clone().filter(|parts| usable(&parts.facts)) {
            return Ok(remote(parts, None));
        }
        let (parts, bytes) = match self.first(address, parts, kinds)? {
            FirstAnswer::Whole(kept) => return of_whole(kept),
            FirstAnswer::Still(parts) => (parts, None),
            FirstAnswer::Parts(parts, bytes) => (parts, Some(bytes)),
        };
        self.store.keep_parts(&key, &parts);
        Ok(remote(parts, bytes))
    }

    /// Asks for the beginning, or whether what is known of the file still holds.
    fn first(
        &self,
        address: &Address,
        known: Option<PartsSidecar>,
        kinds: Option<&'static str>,
    ) -> Result<FirstAnswer, Fault> {
        let old = known.as_ref().map(|known| &known.facts);
        let asked = Question {
            range: Some((0, self.manners.block_bytes.saturating_sub(1))),
            unless: old.and_then(|old| old.etag.clone()),
            since: old.and_then(|old| old.last_modified.clone()),
            kinds,
            ..Question::default()
        };
        let take = &mut |reply: Reply| match (reply.status(), &known) {
            (304, Some(known)) => {
                let facts = renewed(&known.facts, reply.facts());
                let known = known.clone();
                Ok(FirstAnswer::Still(PartsSidecar { facts, ..known }))
            }
            (206, _) => {
                let (facts, range) = (reply.facts(), Range::of(&reply));
                let Some(range) = range.filter(|range| range.from == 0) else {
                    return Err(other(&reply));
                };
                let bytes = part(reply, self.manners.block_bytes)?;
                if is_web_page(&bytes) {
                    return Err(Trouble::Lasting(InNetwork::WebPage));
                }
                let parts = PartsSidecar {
                    address: address.to_string(),
                    bytes: range.of,
                    facts,
                };
                Ok(FirstAnswer::Parts(parts, bytes))
            }
            (200, _) => {
                let whole = self.taken(address, reply, self.manners.most_bytes)?;
                Ok(FirstAnswer::Whole(whole))
            }
            _ => Err(other(&reply)),
        };
        self.ask(address, &asked, take)
    }
}

/// `Content-Range: bytes 0-499/1234` (RFC 9110, section 14.4).
struct Range {
    from: u64,
    of: u64,
}

impl Range {
    fn of(reply: &Reply) -> Option<Self> {
        let text = reply
            .header("content-range")?
            .trim()
            .strip_prefix("bytes")?;
        let (range, of) = text.trim().split_once('/')?;
        let (from, _) = range.split_once('-')?;
        Some(Self {
            from: from.trim().parse().ok()?,
            of: of.trim().parse().ok()?,
        })
    }
}

fn part(reply: Reply, most: u64) -> Result<Vec<u8>, Trouble> {
    let mut bytes = Vec::new();
    reply.body(most, &mut bytes)?;
    Ok(bytes)
}

/// A file on a server in one state of it. The first fault stays: what is read after it is no part of anything.
struct RemoteFile {
    fetcher: Fetcher,
    address: Address,
    key: String,
    state: String,
    etag: Option<String>,
    length: u64,
    position: u64,
    /// Blocks by their number, each with when it was used last.
    held: BTreeMap<u64, (u64, Arc<[u8]>)>,
    clock: u64,
    /// The last run that came: the block behind it, and how many it was.
    last_run: (u64, u64),
    failed: Option<Fault>,
}

impl RemoteFile {
    fn new(fetcher: &Fetcher, address: &Address, parts: &PartsSidecar) -> Self {
        let etag = parts.facts.etag.clone();
        Self {
            key: address.key(),
            state: parts.state(),
            // Weak marks do not tell whether bytes are the same (RFC 9110, section 13.1.5).
            etag: etag.filter(|etag| !etag.starts_with("W/")),
            length: parts.bytes,
            position: 0,
            held: BTreeMap::new(),
            clock: 0,
            last_run: (0, 0),
            failed: None,
            fetcher: fetcher.clone(),
            address: address.clone(),
        }
    }

    fn block_bytes(&self) -> u64 {
        self.fetcher.manners.block_bytes.max(1)
    }

    fn put(&mut self, number: u64, bytes: Vec<u8>) -> Arc<[u8]> {
        let store = &self.fetcher.store;
        store.keep_part(&self.key, &self.state, number, &bytes);
        self.hold(number, bytes)
    }

    fn hold(&mut self, number: u64, bytes: Vec<u8>) -> Arc<[u8]> {
        let bytes: Arc<[u8]> = bytes.into();
        self.clock += 1;
        self.held.insert(number, (self.clock, Arc::clone(&bytes)));
        while self.held.len() > self.fetcher.manners.blocks_held.max(1) {
            let oldest = self.held.iter().min_by_key(|(_, (used, _))| *used);
            let Some(oldest) = oldest.map(|(number, _)| *number) else {
                break;
            };
            self.held.remove(&oldest);
        }
        bytes
    }

    /// How long a block is.
    fn due(&self, number: u64) -> u64 {
        let from = number.saturating_mul(self.block_bytes());
        self.length.saturating_sub(from).min(self.block_bytes())
    }

    /// A block; where it must be asked for, those up to another one with it.
    fn block(&mut self, number: u64, to: u64) -> Result<Arc<[u8]>, Fault> {
        self.clock += 1;
        if let Some((used, bytes)) = self.held.get_mut(&number) {
            *used = self.clock;
            return Ok(Arc::clone(bytes));
        }
        if let Some(bytes) = self.kept(number) {
            return Ok(self.hold(number, bytes));
        }
        let bytes = self.run(number, to)?;
        Ok(bytes)
    }

    fn kept(&self, number: u64) -> Option<Vec<u8>> {
        let kept = self.fetcher.store.part(&self.key, &self.state, number);
        kept.filter(|bytes| bytes.len() as u64 == self.due(number))
    }

    /// Asks for a block, those behind it that are wanted too and, where the last one was that before it, some more.
    fn run(&mut self, number: u64, to: u64) -> Result<Arc<[u8]>, Fault> {
        let follows = self.last_run.1 > 0 && self.last_run.0 == number;
        let wanted = if follows { 2 * self.last_run.1 } else { 1 };
        let blocks = self.length.div_ceil(self.block_bytes());
        // What comes at once is held until it is read.
        let at_once = (self.fetcher.manners.blocks_held as u64 / 2).max(1);
        let wanted = wanted.min(LONGEST_RUN).max(to.saturating_sub(number) + 1);
        let end = (number + wanted.min(at_once)).min(blocks);
        let known = |at: &u64| self.held.contains_key(at) || self.kept(*at).is_some();
        let end = (number + 1..end).find(known).unwrap_or(end);
        let bytes = self.fetched(number, end)?;
        self.last_run = (end, end.saturating_sub(number));
        let size = usize::try_from(self.block_bytes()).unwrap_or(usize::MAX);
        let mut first = None;
        for (at, bytes) in (number..).zip(bytes.chunks(size)) {
            let block = self.put(at, bytes.to_vec());
            first = first.or(Some(block));
        }
        first.ok_or_else(|| self.address.fault(InNetwork::Changed))
    }

    fn fetched(&self, number: u64, end: u64) -> Result<Vec<u8>, Fault> {
        let from = number * self.block_bytes();
        let to = (end * self.block_bytes()).min(self.length);
        let asked = Question {
            range: Some((from, to.saturating_sub(1))),
            only_of: self.etag.clone(),
            ..Question::default()
        };
        let changed = || Trouble::Lasting(InNetwork::Changed);
        let take = &mut |reply: Reply| {
            let range = Range::of(&reply).filter(|range| range.from == from);
            let same = range.is_some_and(|range| range.of == self.length);
            let mark = reply.facts().etag;
            let same_mark = self.etag.is_none() || mark.is_none() || self.etag == mark;
            match reply.status() {
                206 if same && same_mark => {
                    let bytes = part(reply, to - from)?;
                    let whole = bytes.len() as u64 == to - from;
                    whole.then_some(bytes).ok_or_else(changed)
                }
                // Another state of the file, or a server that does not give parts any more.
                200 | 206 => Err(changed()),
                _ => Err(other(&reply)),
            }
        };
        self.fetcher.ask(&self.address, &asked, take)
    }
}

impl Read for RemoteFile {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        if self.position >= self.length || into.is_empty() {
            return Ok(0);
        }
        if let Some(fault) = &self.failed {
            return Err(io::Error::other(fault.clone()));
        }
        let (number, inside) = (
            self.position / self.block_bytes(),
            self.position % self.block_bytes(),
        );
        let last = self.position.saturating_add(into.len() as u64 - 1);
        let to = last.min(self.length - 1) / self.block_bytes();
        let block = self.block(number, to).map_err(|fault| {
            if fault.what == InNetwork::Changed.into() {
                self.fetcher.store.forget_parts(&self.key);
            }
            self.failed = Some(fault.clone());
            self.fetcher.breaks_off(fault.clone());
            io::Error::other(fault)
        })?;
        let from = usize::try_from(inside).unwrap_or(usize::MAX);
        let mut rest = block.get(from..).unwrap_or_default();
        let count = rest.read(into)?;
        if count == 0 {
            return Err(ErrorKind::UnexpectedEof.into());
        }
        self.position += count as u64;
        Ok(count)
    }
}

impl Seek for RemoteFile {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        let at = match to {
            SeekFrom::Start(at) => Some(at),
            SeekFrom::End(by) => self.length.checked_add_signed(by),
            SeekFrom::Current(by) => self.position.checked_add_signed(by),
        };
        let at = at.ok_or(ErrorKind::InvalidInput)?;
        self.position = at;
        Ok(at)
    }
}
