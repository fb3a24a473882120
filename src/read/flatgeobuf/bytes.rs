//! Bytes as a file has them: a length, and as many behind it; and why there are no more.

use std::io::{self, ErrorKind, Read};

use crate::fault::{
    Fault, Item, Place,
    files::InFiles,
    flatgeobuf::{FlatgeobufPart, InFlatgeobuf},
};

/// Bytes that hold a length.
pub(super) const LENGTH_BYTES: usize = 4;

/// A length and as many bytes behind it, the length too; nothing where the file ends before them.
///
/// # Errors
/// The file ends within them, or they are more than so many MiB.
pub(super) fn read_exactly(
    from: &mut impl Read,
    (part, most_mib): (FlatgeobufPart, u64),
) -> Result<Option<Vec<u8>>, Fault> {
    let mut held = Vec::new();
    let mut more = |held: &mut Vec<u8>, long: u64| {
        // What comes is set aside, not what is said to come.
        let read = (&mut *from).take(long).read_to_end(held);
        read.map_err(|why| stopped(&why))
    };
    if more(&mut held, LENGTH_BYTES as u64)? == 0 {
        return Ok(None);
    }
    let Some(said) = held.first_chunk::<LENGTH_BYTES>() else {
        return Err(fault(InFlatgeobuf::CutOff));
    };
    let long = u64::from(u32::from_le_bytes(*said));
    if long > most_mib << 20 {
        return Err(fault(InFlatgeobuf::TooLong { part, most_mib }));
    }
    if (more(&mut held, long)? as u64) < long {
        return Err(fault(InFlatgeobuf::CutOff));
    }
    Ok(Some(held))
}

/// Why a file could not be read on: it ends, or the system says so.
pub(super) fn stopped(why: &io::Error) -> Fault {
    match why.kind() {
        ErrorKind::UnexpectedEof => fault(InFlatgeobuf::CutOff),
        _ => Fault::new(InFiles::Stopped(why.to_string()), Place::default()),
    }
}

/// A fault of the file as a whole, which is still to be named.
pub(super) fn fault(what: InFlatgeobuf) -> Fault {
    Fault::new(what, Place::default())
}

/// A place in the file that is still to be named.
pub(super) fn at_feature(number: u64) -> Place {
    let number = usize::try_from(number).unwrap_or(usize::MAX);
    Place::item(Item::Feature { number, name: None })
}
