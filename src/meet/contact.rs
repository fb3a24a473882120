//! Where one stage meets one zone, and the runs of edges that are looked up together.

use crate::{geometry::Bounds, trip::route::Stretch};

/// Pieces that meet within this many metres are one, shorter ones are mere touches.
pub const SAME_PLACE_M: f64 = 1e-6;

/// Where one stage meets one zone.
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
/// assert_eq!(job.zones[contact.zone].name.as_deref(), Some("Middle icefall"));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Contact {
    /// Index of the zone in the slice it came from.
    pub zone: usize,
    /// The bare crossings of the polygon, without margin, in walking order; never across a jump.
    pub crossings: Vec<Stretch>,
    /// The same widened by the margin along and beside the line, cut off at the ends of the stage.
    pub touches: Vec<Stretch>,
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
