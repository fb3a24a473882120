//! How servers are treated, and what is taken from them: one table, each figure with its standing.

use std::time::Duration;

use crate::limits::{InputLimit, InputLimits};

/// What servers are told that asks: program and version (RFC 9110, section 10.1.5).
pub(super) const USER_AGENT: &str = concat!("schrund/", env!("CARGO_PKG_VERSION"));

/// Numbers of answers after which it is worth asking again: too many requests (RFC 6585, section 4), and a server or what
/// stands behind it that is busy (RFC 9110, section 15.6).
pub(super) const BUSY: [u16; 4] = [429, 502, 503, 504];

/// How servers are asked. Tests wait less.
///
/// | figure | in use | standing |
/// |---|---|---|
/// | `connect` | 10 s | our judgement: a hut's network answers in two |
/// | `total`, `most_bytes`, `most_page_bytes`, `most_pages`, `most_tiles` | see [`crate::limits`] | there |
/// | `at_once` | 2 | our judgement: data are given for nothing |
/// | `tries` | 4 | our judgement |
/// | `first_wait`, `longest_wait` | 1 s, 30 s | our judgement; doubled from try to try, and what the server asks for (`Retry-After`, RFC 9110, section 10.2.3) counts in its place |
/// | `redirects` | 5 | our judgement; RFC 9110, section 15.4 asks for a limit |
/// | `page_limit` | 1000 | our judgement |
/// | `fresh` | a day | our judgement, where the server names no time (`Cache-Control`, RFC 9111, section 5.2.2.1) |
/// | `block_bytes`, `blocks_held` | 64 KiB, 128 | our judgement: a header of a model is a block, and 8 MiB are held in memory |
/// | `index_block_bytes` | 16 KiB | our judgement: a piece of an index or of outlines near each other takes one or two |
///
/// ```
/// use schrund::fetch::Manners;
///
/// let usual = Manners::default();
/// assert_eq!((usual.at_once, usual.redirects), (2, 5));
/// assert!(usual.first_wait < usual.longest_wait);
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Manners {
    /// Longest wait for a connection.
    pub connect: Duration,
    /// Longest wait for a whole answer.
    pub total: Duration,
    /// Requests under way at once.
    pub at_once: usize,
    /// How often the same is asked for where the server is busy or the answer breaks off.
    pub tries: u32,
    /// The wait before the second try; half of it to all of it, by chance.
    pub first_wait: Duration,
    /// No wait is longer: a server that asks for more is told of.
    pub longest_wait: Duration,
    /// How often a request is sent on to another address.
    pub redirects: usize,
    /// Most bytes of a file, unpacked ones too.
    pub most_bytes: u64,
    /// Most bytes of a page of outlines, unpacked ones too.
    pub most_page_bytes: u64,
    /// Outlines asked for in a page; servers may give fewer.
    pub page_limit: u32,
    /// Most pages of outlines.
    pub most_pages: usize,
    /// How long nothing is asked again.
    pub fresh: Duration,
    /// Bytes of one part of a file that is read here and there.
    pub block_bytes: u64,
    /// The same of a file of outlines with an index, of which less is read at a place.
    pub index_block_bytes: u64,
    /// Parts of such a file in memory at once.
    pub blocks_held: usize,
    /// Most tiles that a route is looked up in.
    pub most_tiles: usize,
    /// Those of files, which what is fetched is read within too.
    pub limits: InputLimits,
}

impl Default for Manners {
    fn default() -> Self {
        Self::of(&InputLimits::default())
    }
}

impl Manners {
    /// The usual ones, with these limits of what is taken.
    #[must_use]
    pub fn of(limits: &InputLimits) -> Self {
        Self {
            connect: Duration::from_secs(10),
            total: Duration::from_secs(limits[InputLimit::AnswerSeconds]),
            at_once: 2,
            tries: 4,
            first_wait: Duration::from_secs(1),
            longest_wait: Duration::from_secs(30),
            redirects: 5,
            most_bytes: limits.bytes(InputLimit::AnswerMib),
            most_page_bytes: limits.bytes(InputLimit::PageMib),
            page_limit: 1000,
            most_pages: limits.count(InputLimit::Pages),
            fresh: Duration::from_secs(24 * 60 * 60),
            block_bytes: 1 << 16,
            index_block_bytes: 1 << 14,
            blocks_held: 128,
            most_tiles: limits.count(InputLimit::Tiles),
            limits: *limits,
        }
    }
}
