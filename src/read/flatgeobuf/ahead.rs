//! Features that stand near each other, read at once: over a network every request costs as much as some kilobytes do.

use std::{
    io::{self, Read, Seek, SeekFrom},
    ops::Range,
};

use super::index::FoundFeature;
use crate::read::input::Seekable;

/// Bytes between two features that are read with them: 16 kB, which take no longer to come than a server takes to answer.
/// Our judgement.
const BYTES_BETWEEN: u64 = 16_000;
/// Bytes that are read ahead at most, and so held in memory. Our judgement.
const MOST_AHEAD: u64 = 1 << 20;

/// Where a row of features ends that are worth reading at once, from the first of them on; offsets as the index has them.
pub(super) fn runs_to(offset: u64, next: Option<u64>, behind: &[FoundFeature]) -> u64 {
    let far = offset.saturating_add(MOST_AHEAD);
    let mut ends = next.unwrap_or(offset);
    for found in behind {
        if found.offset < ends || found.offset - ends > BYTES_BETWEEN {
            break;
        }
        // How long the last one is nobody may know: what is known of it is where it begins.
        let next = found.next.unwrap_or(found.offset);
        if next > far {
            break;
        }
        ends = next.max(ends);
    }
    ends.min(far)
}

/// A file of which a piece is held in memory.
pub(super) struct ReadAhead {
    bytes: Seekable,
    held: Vec<u8>,
    /// Where that piece begins, bytes.
    from: u64,
    at: u64,
}

impl ReadAhead {
    pub(super) fn of(bytes: Seekable) -> Self {
        Self {
            bytes,
            held: Vec::new(),
            from: 0,
            at: 0,
        }
    }

    /// Holds a piece, unless its beginning is held already. It may be shorter where the file ends.
    pub(super) fn hold(&mut self, piece: Range<u64>) -> io::Result<()> {
        if !self.held_from(piece.start).is_empty() || piece.is_empty() {
            return Ok(());
        }
        self.held.clear();
        self.bytes.seek(SeekFrom::Start(piece.start))?;
        self.from = piece.start;
        // The most that is read ahead is known, so that much may be set aside.
        let long = (piece.end - piece.start).min(MOST_AHEAD);
        self.held.resize(usize::try_from(long).unwrap_or(0), 0);
        self.bytes.read_exact(&mut self.held)
    }

    fn held_from(&self, at: u64) -> &[u8] {
        let inside = at.checked_sub(self.from);
        let inside = inside.and_then(|inside| usize::try_from(inside).ok());
        let held = inside.and_then(|inside| self.held.get(inside..));
        held.unwrap_or_default()
    }
}

impl Read for ReadAhead {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let mut held = self.held_from(self.at);
        let count = if held.is_empty() {
            self.bytes.seek(SeekFrom::Start(self.at))?;
            self.bytes.read(into)?
        } else {
            held.read(into)?
        };
        self.at += count as u64;
        Ok(count)
    }
}

impl Seek for ReadAhead {
    fn seek(&mut self, to: SeekFrom) -> io::Result<u64> {
        let at = match to {
            SeekFrom::Start(at) => Some(at),
            SeekFrom::Current(by) => self.at.checked_add_signed(by),
            SeekFrom::End(_) => return self.bytes.seek(to).inspect(|at| self.at = *at),
        };
        self.at = at.ok_or(io::ErrorKind::InvalidInput)?;
        Ok(self.at)
    }
}

#[cfg(test)]
mod tests {
    use std::io::Cursor;

    use super::*;

    fn found(offset: u64, next: u64) -> FoundFeature {
        FoundFeature {
            number: 1,
            offset,
            next: Some(next),
        }
    }

    #[test]
    fn what_stands_near_is_read_at_once_and_no_more() {
        let near = [found(100, 200), found(10_000, 10_500)];
        assert_eq!(runs_to(0, Some(100), &near), 10_500);
        let far = [found(100, 200), found(30_000, 30_500)];
        assert_eq!(runs_to(0, Some(100), &far), 200);
        assert_eq!(runs_to(0, None, &[]), 0, "nobody knows how long it is");
        assert_eq!(
            runs_to(500, Some(900), &[found(100, 200)]),
            900,
            "it goes back"
        );
        let endless = [found(100, u64::MAX)];
        assert_eq!(runs_to(0, Some(100), &endless), 100);
        assert_eq!(runs_to(0, Some(u64::MAX), &[]), MOST_AHEAD);
    }

    #[test]
    fn what_is_held_and_what_is_not_are_the_file() {
        let whole: Vec<u8> = (0..=255).collect();
        let mut file = ReadAhead::of(Box::new(Cursor::new(whole.clone())));
        file.hold(50..60).expect("memory");
        for from in [0_u8, 49, 55, 59, 60, 200] {
            file.seek(SeekFrom::Start(from.into())).expect("memory");
            let mut rest = Vec::new();
            file.read_to_end(&mut rest).expect("memory");
            assert_eq!(
                Some(rest.as_slice()),
                whole.get(usize::from(from)..),
                "from {from}"
            );
        }
    }
}
