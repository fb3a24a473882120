//! Where one stage meets one piece of ice, and the runs of edges that are looked up together.

use crate::{geometry::Bounds, trip::route::Stretch};

/// Pieces that meet within this many metres are one, shorter ones are mere touches.
pub const SAME_PLACE_M: f64 = 1e-6;

/// Where one stage meets one zone, or the ice that only an inventory knows.
///
/// ```
/// use schrund::meet::Ice;
///
/// let job = schrund::example::job()?;
/// let ice = Ice::of(&job.zones);
/// let [contact] = &ice.contacts(&job.route.stages[0], 20.0)[..] else { panic!("one zone") };
/// let (crossing, touch) = (contact.crossings[0], contact.touches[0]);
/// // The line crosses squarely, so the margin of 20 m lies before and behind.
/// assert!((touch.length_m() - crossing.length_m() - 40.0).abs() < 0.001);
/// let zone = contact.of.zone().expect("drawn");
/// assert_eq!(job.zones[zone].name.as_deref(), Some("Middle icefall"));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Contact {
    /// Which ice it is.
    pub of: Of,
    /// The bare crossings of the polygon, without margin, in walking order; never across a jump.
    pub crossings: Vec<Stretch>,
    /// The same widened by the margin along and beside the line, cut off at the ends of the stage.
    pub touches: Vec<Stretch>,
}

/// Which ice a stage meets.
///
/// ```
/// use schrund::meet::contact::Of;
///
/// assert_eq!(Of::Zone(2).zone(), Some(2));
/// assert_eq!(Of::KnownIce.zone(), None, "nobody drew it, so it has no gap width");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Of {
    /// A drawn zone, by its index in the slice it came from.
    Zone(usize),
    /// Ice of the inventory on which no zone is drawn: there are gaps, and nobody said how wide.
    KnownIce,
}

impl Of {
    /// The index of the zone; `None` where none is drawn.
    #[must_use]
    pub fn zone(self) -> Option<usize> {
        match self {
            Self::Zone(zone) => Some(zone),
            Self::KnownIce => None,
        }
    }
}

/// A run of route edges inside one segment, with its box.
#[derive(Clone, Copy, Debug)]
pub(super) struct Block {
    /// Index of the first point.
    pub(super) first: usize,
    /// Index of the last point; the next block may begin with it.
    pub(super) last: usize,
    /// Which segment of the stage it belongs to.
    pub(super) segment: usize,
    /// Box round its points.
    pub(super) bounds: Bounds,
}
