//! The members of an object that mean something, each with its place.

use super::text::{Spot, TextClock};
use crate::fault::geojson::Thing;

/// JSON text of one member and where it began.
#[derive(Debug)]
pub(super) struct MemberText {
    pub(super) json: String,
    pub(super) at: Spot,
    /// Bytes at the front that the file does not hold.
    pub(super) lead: usize,
}

impl MemberText {
    /// The spot of a byte of the text.
    pub(super) fn spot(&self, offset: usize) -> Spot {
        let before = self.json.get(self.lead..offset.max(self.lead));
        self.at.after(before.unwrap_or_default())
    }
}

/// An object without the members that mean nothing here.
#[derive(Debug, Default)]
pub(super) struct Members {
    /// Where its brace opens.
    at: Spot,
    kept: Vec<(&'static str, MemberText)>,
    /// A member that stands there twice.
    pub(super) doubled: Option<&'static str>,
    /// What `features` was, where it was there.
    pub(super) features: Option<Found>,
}

impl Members {
    /// No member yet of an object whose brace opens here.
    pub(super) fn begun(at: Spot) -> Self {
        Self {
            at,
            ..Self::default()
        }
    }

    pub(super) fn get(&self, name: &str) -> Option<&MemberText> {
        let found = self.kept.iter().find(|(key, _)| *key == name);
        found.map(|(_, piece)| piece)
    }

    pub(super) fn take(&mut self, name: &str) -> Option<MemberText> {
        let index = self.kept.iter().position(|(key, _)| *key == name)?;
        Some(self.kept.swap_remove(index).1)
    }

    pub(super) fn keep(&mut self, name: &'static str, piece: MemberText) {
        if self.get(name).is_some() {
            self.doubled = Some(name);
        } else {
            self.kept.push((name, piece));
        }
    }
}

/// What a value turned out to be.
#[derive(Debug)]
pub(super) enum Found {
    Object(Box<Members>),
    List,
    Other(Thing),
}

impl Found {
    /// Where it began; the clock still knows unless members were read since.
    pub(super) fn spot(&self, clock: &TextClock) -> Spot {
        match self {
            Self::Object(members) => members.at,
            _ => clock.start().unwrap_or_default(),
        }
    }

    /// What it is.
    pub(super) fn thing(&self) -> Thing {
        match self {
            Self::Object(_) => Thing::Object,
            Self::List => Thing::List,
            Self::Other(thing) => thing.clone(),
        }
    }
}
