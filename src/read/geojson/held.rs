//! As much of a source as is looked at.

use std::io::{self, Read};

/// Bytes read from the source at a time.
pub(super) const BLOCK: usize = 64 * 1024;

/// A source of which the bytes that are looked at are held.
pub(super) struct HeldText<R> {
    source: R,
    held: Vec<u8>,
    /// Where what is left begins in what is held.
    from: usize,
}

impl<R: Read> HeldText<R> {
    pub(super) fn new(source: R) -> Self {
        Self {
            source,
            held: Vec::new(),
            from: 0,
        }
    }

    /// What is held and was not taken.
    #[inline]
    pub(super) fn left(&self) -> &[u8] {
        self.held.get(self.from..).unwrap_or_default()
    }

    pub(super) fn left_mut(&mut self) -> &mut [u8] {
        self.held.get_mut(self.from..).unwrap_or_default()
    }

    /// Goes on by so many bytes of what is held.
    #[inline]
    pub(super) fn take(&mut self, bytes: usize) {
        self.from = self.held.len().min(self.from + bytes);
    }

    /// Reads on until at least so many bytes are left or the source ends.
    pub(super) fn fill(&mut self, wanted: usize) -> io::Result<()> {
        self.held.drain(..self.from);
        self.from = 0;
        while self.held.len() < wanted {
            let had = self.held.len();
            let room = u64::try_from(BLOCK.max(wanted) - had).unwrap_or(u64::MAX);
            (&mut self.source).take(room).read_to_end(&mut self.held)?;
            if self.held.len() == had {
                break;
            }
        }
        Ok(())
    }

    /// What is left of what is held, and of the source.
    pub(super) fn into_parts(mut self) -> (Vec<u8>, R) {
        self.held.drain(..self.from);
        (self.held, self.source)
    }
}
