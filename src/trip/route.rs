//! The line to be walked: stages with their chainage.

mod stretch;

pub use stretch::Stretch;

use std::sync::Arc;

use crate::{geometry::LonLat, trip::points::Points};

/// Everything one route file holds, in the order it is walked.
///
/// ```
/// use schrund::{geometry::LonLat, trip::route::{Route, Stage}};
///
/// let day = |lon: f64| {
///     let mut stage = Stage::new(None);
///     [0.00, 0.01].map(|lat| stage.push(LonLat::new(lon, lat), None));
///     stage
/// };
/// let route = Route::new(Some("Two days".to_owned()), vec![day(7.0), day(8.0)]);
/// assert_eq!(route.stages[1].number, 2);
/// assert!((route.length_m() - 2.0 * 1105.743).abs() < 0.01, "twice a hundredth of a degree of latitude");
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Route {
    /// What the file calls itself.
    pub name: Option<String>,
    /// At least one, each with a line of at least two distinct points.
    pub stages: Vec<Stage>,
    /// Places beside the lines that have a name.
    pub waypoints: Vec<NamedPlace>,
}

/// A place of the route file that has a name.
///
/// ```
/// let text = r#"<gpx><wpt lat="46.505" lon="8.0"><name>Hut</name></wpt><wpt lat="46.506" lon="8.0"/>
///     <trk><trkseg><trkpt lat="46.50" lon="8"/><trkpt lat="46.51" lon="8"/></trkseg></trk></gpx>"#;
/// let route = schrund::read::gpx::route("tour.gpx", text.as_bytes())?.value;
/// let [hut] = &route.waypoints[..] else { panic!("one has a name") };
/// assert_eq!((hut.name.as_str(), hut.at.lat_deg), ("Hut", 46.505));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct NamedPlace {
    /// What the file calls it.
    pub name: String,
    /// Where it is.
    pub at: LonLat,
}

impl Route {
    /// A route of these stages, numbered from 1 in this order.
    #[must_use]
    pub fn new(name: Option<String>, mut stages: Vec<Stage>) -> Self {
        for (i, stage) in stages.iter_mut().enumerate() {
            stage.number = i + 1;
        }
        // A file with one track often names only that.
        let only = stages.first().filter(|_| stages.len() == 1);
        let name = name.or_else(|| only.and_then(|stage| stage.name.clone()));
        Self {
            name,
            stages,
            waypoints: Vec::new(),
        }
    }

    /// Metres walked over all stages.
    #[must_use]
    pub fn length_m(&self) -> f64 {
        self.stages.iter().map(Stage::length_m).sum()
    }
}

/// One `trk` (or `rte`) with a chainage of its own: metres walked by the first person,
/// geodesics on WGS 84. A jump between segments adds none.
///
/// Longitudes are unrolled: neighbouring points of one segment never differ by more than 180°.
///
/// ```
/// use schrund::{geometry::LonLat, trip::route::Stage};
///
/// let mut stage = Stage::new(Some("Day two".to_owned()));
/// for lon in [8.00, 8.01, 8.01, 8.02] {
///     stage.push(LonLat::new(lon, 0.0), None);
/// }
/// assert_eq!(stage.points().len(), 3, "the receiver stood still for a moment");
/// let halfway = stage.at(stage.length_m() / 2.0).expect("it has points");
/// assert!((halfway.lon_deg - 8.01).abs() < 1e-9);
/// assert_eq!(stage.label(), "stage 1 \"Day two\"");
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stage {
    /// Number from 1 in the file, whichever stages are planned; what every output calls it by.
    pub number: usize,
    /// What the file calls it.
    pub name: Option<String>,
    /// Shared among copies: there may be a million points.
    line: Arc<StageLine>,
    /// Index of the first point of each segment after the first one.
    breaks: Vec<usize>,
}

/// As many of each.
#[derive(Clone, Debug, Default, PartialEq)]
struct StageLine {
    points: Points,
    heights_m: Vec<PointHeight>,
    chainage_m: Vec<f64>,
}

/// The height of a point in four bytes, metres: no number where none is known.
#[derive(Clone, Copy, Debug)]
struct PointHeight(f32);

impl PointHeight {
    fn of(height_m: Option<f32>) -> Self {
        Self(height_m.unwrap_or(f32::NAN))
    }

    fn get(self) -> Option<f32> {
        Some(self.0).filter(|height_m| !height_m.is_nan())
    }

    fn or(self, height_m: Option<f32>) -> Self {
        Self::of(self.get().or(height_m))
    }
}

impl PartialEq for PointHeight {
    fn eq(&self, other: &Self) -> bool {
        self.get() == other.get()
    }
}

/// A place where the receiver was off: the line ends and goes on elsewhere.
///
/// ```
/// use schrund::{geometry::LonLat, trip::route::{Jump, Stage}};
///
/// let mut stage = Stage::new(None);
/// [8.00, 8.01].map(|lon| stage.push(LonLat::new(lon, 0.0), None));
/// stage.break_segment(); // the receiver was off
/// [8.03, 8.04].map(|lon| stage.push(LonLat::new(lon, 0.0), None));
/// let jumps: Vec<Jump> = stage.jumps().collect();
/// assert!((jumps[0].length_m - 2.0 * jumps[0].at_m).abs() < 0.001, "0.02° away after 0.01° walked");
/// assert!((stage.length_m() - 2.0 * jumps[0].at_m).abs() < 0.001, "what was not walked adds no length");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Jump {
    /// Chainage of the jump, metres.
    pub at_m: f64,
    /// Geodesic from one end to the other, metres; not part of the chainage.
    pub length_m: f64,
    /// Where the line ends.
    pub from: LonLat,
    /// Where it goes on.
    pub to: LonLat,
}

impl Stage {
    /// A stage without a point yet.
    #[must_use]
    pub fn new(name: Option<String>) -> Self {
        Self {
            number: 1,
            name,
            ..Self::default()
        }
    }

    /// `stage 2 "Day two"`, or without the name where there is none.
    #[must_use]
    pub fn label(&self) -> String {
        match &self.name {
            Some(name) => format!("stage {} \"{name}\"", self.number),
            None => format!("stage {}", self.number),
        }
    }

    /// Adds the next point of the running segment. Repeats of the last position are dropped (their
    /// height is kept where the first had none), also where a new segment begins with them.
    pub fn push(&mut self, at: LonLat, height_m: Option<f32>) {
        let starts_segment = self.breaks.last() == Some(&self.line.points.len());
        let Some(last) = self.line.points.last() else {
            self.append(at, height_m, 0.0);
            return;
        };
        let here = unrolled(last, at);
        let chainage_m = self.length_m();
        if here == last {
            // A segment that goes on where the last one ended is no jump.
            self.breaks.pop_if(|_| starts_segment);
            if let Some(height) = Arc::make_mut(&mut self.line).heights_m.last_mut() {
                *height = height.or(height_m);
            }
        } else if starts_segment {
            self.append(here, height_m, chainage_m);
        } else {
            self.append(here, height_m, chainage_m + last.distance_m(here));
        }
    }

    fn append(&mut self, at: LonLat, height_m: Option<f32>, chainage_m: f64) {
        let line = Arc::make_mut(&mut self.line);
        line.points.push(at);
        line.heights_m.push(PointHeight::of(height_m));
        line.chainage_m.push(chainage_m);
    }

    /// Ends the running segment: the next point begins a new one. Empty segments leave no trace.
    pub fn break_segment(&mut self) {
        if !self.line.points.is_empty() && self.breaks.last() != Some(&self.line.points.len()) {
            self.breaks.push(self.line.points.len());
        }
    }

    /// Removes the only point of the running segment, which no line leads to or from.
    /// Returns whether there was such a point.
    pub fn drop_lone_point(&mut self) -> bool {
        let start = self.breaks.last().copied().unwrap_or(0);
        let lone = self.line.points.len() == start + 1;
        if lone {
            let line = Arc::make_mut(&mut self.line);
            line.points.pop();
            line.heights_m.pop();
            line.chainage_m.pop();
        }
        lone
    }

    /// Metres walked.
    #[must_use]
    pub fn length_m(&self) -> f64 {
        self.line.chainage_m.last().copied().unwrap_or(0.0)
    }

    /// All of it.
    #[must_use]
    pub fn whole(&self) -> Stretch {
        Stretch {
            from_m: 0.0,
            to_m: self.length_m(),
        }
    }

    /// The points, repeats dropped, in walking order.
    #[must_use]
    pub fn points(&self) -> &Points {
        &self.line.points
    }

    /// The height the file gives for a point, by its place among them.
    #[must_use]
    pub fn height_m(&self, point: usize) -> Option<f32> {
        self.line.heights_m.get(point)?.get()
    }

    /// The height the file gives for each point.
    pub fn heights_m(&self) -> impl ExactSizeIterator<Item = Option<f32>> {
        self.line.heights_m.iter().map(|height| height.get())
    }

    /// Whether it gives one for every point.
    #[must_use]
    pub(crate) fn knows_all_heights(&self) -> bool {
        self.heights_m().all(|height_m| height_m.is_some())
    }

    /// Chainage of each point; equal values only on both sides of a jump.
    #[must_use]
    pub fn chainage_m(&self) -> &[f64] {
        &self.line.chainage_m
    }

    /// The place at a chainage, on the edge that holds it (the later side of a jump); chainages outside
    /// the stage give its ends. `None` only for a stage without points.
    #[must_use]
    pub fn at(&self, chainage_m: f64) -> Option<LonLat> {
        let after = self.line.chainage_m.partition_point(|&c| c <= chainage_m);
        let (Some(from), Some(end)) = (after.checked_sub(1), self.line.points.last()) else {
            return self.line.points.first();
        };
        let Some(to) = self.line.points.get(after) else {
            return Some(end);
        };
        let walked_m = chainage_m - self.line.chainage_m[from];
        let edge_m = self.line.chainage_m[after] - self.line.chainage_m[from];
        Some(self.line.points.at(from).walked(to, edge_m, walked_m))
    }

    /// The line of a stretch with its ends, in as many parts as jumps cut it into.
    #[must_use]
    pub fn line(&self, stretch: Stretch) -> Vec<Vec<LonLat>> {
        let mut parts = Vec::new();
        for range in self.segments() {
            let (start_m, end_m) = (
                self.line.chainage_m[range.start],
                self.line.chainage_m[range.end - 1],
            );
            let (from_m, to_m) = (stretch.from_m.max(start_m), stretch.to_m.min(end_m));
            if from_m < to_m {
                parts.push(self.line_in_segment(&range, from_m, to_m));
            }
        }
        parts
    }

    fn line_in_segment(
        &self,
        range: &std::ops::Range<usize>,
        from_m: f64,
        to_m: f64,
    ) -> Vec<LonLat> {
        let chainage = &self.line.chainage_m[range.clone()];
        let first = range.start + chainage.partition_point(|&c| c <= from_m);
        let last = range.start + chainage.partition_point(|&c| c < to_m);
        let end = |m: f64, after: usize| {
            let before = after.saturating_sub(1).max(range.start);
            let after = after.min(range.end - 1);
            let edge_m = self.line.chainage_m[after] - self.line.chainage_m[before];
            self.line.points.at(before).walked(
                self.line.points.at(after),
                edge_m,
                m - self.line.chainage_m[before],
            )
        };
        let inner = self.line.points.part(first..last.max(first));
        std::iter::once(end(from_m, first))
            .chain(inner)
            .chain(std::iter::once(end(to_m, last)))
            .collect()
    }

    /// Ranges of point indices that are walked in one piece.
    pub fn segments(&self) -> impl Iterator<Item = std::ops::Range<usize>> + '_ {
        let starts = std::iter::once(0).chain(self.breaks.iter().copied());
        let ends = self
            .breaks
            .iter()
            .copied()
            .chain(std::iter::once(self.line.points.len()));
        starts
            .zip(ends)
            .map(|(from, to)| from..to)
            .filter(|r| !r.is_empty())
    }

    /// The jumps between segments, in walking order.
    pub fn jumps(&self) -> impl Iterator<Item = Jump> + '_ {
        self.breaks
            .iter()
            .filter(|&&i| i > 0 && i < self.line.points.len())
            .map(|&i| Jump {
                at_m: self.line.chainage_m[i],
                length_m: self
                    .line
                    .points
                    .at(i - 1)
                    .distance_m(self.line.points.at(i)),
                from: self.line.points.at(i - 1),
                to: self.line.points.at(i),
            })
    }

    /// The part of the line about a place that no jump breaks; a place at a jump lies behind it.
    #[must_use]
    pub fn unbroken(&self, at_m: f64) -> Stretch {
        let at = |i: &usize| self.line.chainage_m.get(*i).copied();
        // Breaks stand in walking order, so do their chainages.
        let passed = |i: &usize| at(i).is_some_and(|jump_m| jump_m <= at_m);
        let (behind, ahead) = self.breaks.split_at(self.breaks.partition_point(passed));
        Stretch {
            from_m: behind.last().and_then(at).unwrap_or(0.0),
            to_m: (ahead.first().and_then(at)).map_or(self.length_m(), f64::next_down),
        }
    }

    /// So many metres about a place, on its own side of every jump and on the stage.
    #[must_use]
    pub fn about(&self, at_m: f64, over_m: f64) -> Stretch {
        let unbroken = self.unbroken(at_m);
        Stretch {
            from_m: (at_m - over_m / 2.0).max(unbroken.from_m),
            to_m: (at_m + over_m / 2.0).min(unbroken.to_m),
        }
    }

    /// The way that nobody drew from the end of this stage to the beginning of the next one; `None` where either has
    /// no point.
    #[must_use]
    pub fn gap_to(&self, next: &Self) -> Option<Jump> {
        let (from, to) = (self.line.points.last()?, next.points().first()?);
        Some(Jump {
            at_m: self.length_m(),
            length_m: from.distance_m(to),
            from,
            to,
        })
    }
}

/// `next` with its longitude moved by whole turns to lie within 180° of `last`.
fn unrolled(last: LonLat, next: LonLat) -> LonLat {
    let turns = ((last.lon_deg - next.lon_deg) / 360.0).round();
    if turns == 0.0 {
        next
    } else {
        LonLat::new(next.lon_deg + 360.0 * turns, next.lat_deg)
    }
}
