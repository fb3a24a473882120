//! The elements of a GPX file that matter for a line, by where they stand.

/// What an open element means here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Element {
    Gpx,
    Metadata,
    Track,
    Segment,
    TrackPoint,
    Route,
    RoutePoint,
    Waypoint,
    Name,
    Height,
    /// Anything else inside a route point: may hold the detailed line to the next one.
    Detail,
    /// Anything else inside the file, a track or a route: positions in it belong nowhere.
    Aside,
    /// Anything inside what is not read.
    Other,
}

impl Element {
    /// What `local`, standing inside `self`, means. `native`: it has the prefix of the GPX elements around it.
    pub(super) fn child(self, local: &str, native: bool) -> Self {
        match (self, local) {
            (Self::Gpx, "trk") => Self::Track,
            (Self::Gpx, "rte") => Self::Route,
            (Self::Gpx, "wpt") => Self::Waypoint,
            (Self::Gpx, "metadata") => Self::Metadata,
            (Self::Track, "trkseg") => Self::Segment,
            (Self::Segment, "trkpt") => Self::TrackPoint,
            (Self::Route, "rtept") => Self::RoutePoint,
            (Self::Gpx | Self::Metadata | Self::Track | Self::Route | Self::Waypoint, "name")
                if native =>
            {
                Self::Name
            }
            (Self::TrackPoint | Self::RoutePoint, "ele") if native => Self::Height,
            (Self::RoutePoint | Self::Detail, _) => Self::Detail,
            (Self::Gpx | Self::Track | Self::Segment, _)
            | (Self::TrackPoint | Self::Route | Self::Aside, _) => Self::Aside,
            _ => Self::Other,
        }
    }

    /// How the element is written, where that is known.
    pub(super) fn tag(self) -> Option<&'static str> {
        Some(match self {
            Self::Gpx => "gpx",
            Self::Metadata => "metadata",
            Self::Track => "trk",
            Self::Segment => "trkseg",
            Self::TrackPoint => "trkpt",
            Self::Route => "rte",
            Self::RoutePoint => "rtept",
            Self::Waypoint => "wpt",
            Self::Name => "name",
            Self::Height => "ele",
            Self::Detail | Self::Aside | Self::Other => return None,
        })
    }
}
