//! The ice as the leader drew it: outlines with the gaps expected in them.

use schemars::JsonSchema;
use serde::Serialize;
use serde_json::{Map, Value};

use crate::trip::route::Stretch;

pub use crate::geometry::{Outline, Polygon};

/// One polygon of glaciated ground with the widest crevasse expected in it.
///
/// No `Ord`: the wider gap is worse for a fall, the bigger polygon for a detour. Compare the field you mean.
///
/// ```
/// let zone = &schrund::example::job()?.zones[0];
/// assert_eq!(zone.label(), "zone 1 \"Middle icefall\"");
/// assert_eq!((zone.gap.max_m, zone.snow_depth_m), (15.0, Some(1.5)));
/// assert!(zone.strike.is_none(), "nobody drew in which direction the gaps run");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Zone {
    /// Number from 1, in file order over all polygon features; what every output calls it by.
    pub number: usize,
    /// Number of the feature in its file, from 1 (points and lines count too).
    pub feature: usize,
    /// What the leader calls it.
    pub name: Option<String>,
    /// Where it is.
    pub outline: Outline,
    /// How wide the gaps are.
    pub gap: Gap,
    /// Snow lying on the ice, metres, where given.
    pub snow_depth_m: Option<f64>,
    /// Whether snow hides the gaps.
    pub surface: Surface,
    /// In which direction the gaps run, where given.
    pub strike: Option<Strike>,
    /// The leader's word about roping here.
    pub rope: RopeWord,
    /// `observed_on`, as written.
    pub observed_on: Option<String>,
    /// `source`, as written.
    pub source: Option<String>,
    /// `note`, as written.
    pub note: Option<String>,
    /// Properties that mean nothing here, passed through untouched.
    pub other: Map<String, Value>,
}

/// Width of the crevasses of a zone, metres, **across** the gap, not along the route.
///
/// ```
/// use schrund::{read::geojson::zones, trip::zone::Gap};
///
/// let ice = r#"{"type": "Feature", "properties": {"gap_m": "4-6"}, "geometry": {"type": "Polygon",
///     "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}}"#;
/// let read = zones("ice.geojson", ice.as_bytes(), &Default::default())?;
/// let gap = Gap { min_m: Some(4.0), max_m: 6.0, assumed: false };
/// assert_eq!(read.value[0].gap, gap, "the widest counts");
/// assert_eq!(read.notes[0].code(), "worse-end-counts");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// Lower end, where a range was given.
    pub min_m: Option<f64>,
    /// The widest expected; the one that counts.
    pub max_m: f64,
    /// Not in the file: taken from `--gap`.
    pub assumed: bool,
}

/// What lies on the ice.
///
/// ```
/// use schrund::trip::zone::Surface;
///
/// let mut job = schrund::example::job()?;
/// assert_eq!(job.zones[0].surface, Surface::Snow, "what nobody says is snow, which hides gaps");
/// (job.zones[0].surface, job.zones[0].snow_depth_m) = (Surface::Bare, None);
/// job.rules.choices.rope_on_bare.value = false;
/// let plan = schrund::plan(&job)?;
/// assert!(plan.legs.iter().all(|leg| !leg.roped), "gaps in sight, and no rope on bare ice");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Surface {
    /// Snow: gaps are hidden.
    #[default]
    Snow,
    /// Bare (dry) ice: gaps are in sight.
    Bare,
}

/// Direction in which crevasses run, an axis: 10° and 190° are the same.
///
/// ```
/// use schrund::{read::geojson::zones, trip::zone::Strike};
///
/// let ice = r#"{"type": "Feature", "properties": {"gap_m": 6, "strike_deg": 190}, "geometry": {"type": "Polygon",
///     "coordinates": [[[8.0, 46.0], [8.1, 46.0], [8.1, 46.1], [8.0, 46.0]]]}}"#;
/// let read = zones("ice.geojson", ice.as_bytes(), &Default::default())?;
/// let strike = read.value[0].strike.expect("it is drawn");
/// assert_eq!(strike, Strike { deg: 10.0, uncertainty_deg: None }, "an axis: 190° is 10°");
/// assert_eq!(strike.doubt_deg(), 0.0);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strike {
    /// Degrees clockwise from true north, 0 ≤ s < 180.
    pub deg: f64,
    /// Half-width of the range it may lie in, degrees, 0 to 90, where the leader said how sure it is.
    pub uncertainty_deg: Option<f64>,
}

impl Strike {
    /// Half-width to reckon with: a strike without one is taken as exact, and the plan says so.
    #[must_use]
    pub fn doubt_deg(self) -> f64 {
        self.uncertainty_deg.unwrap_or(0.0)
    }
}

/// A strike assumed for a piece of the line, where a zone gives none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct ProposedStrike {
    /// Where along the stage.
    pub(crate) stretch: Stretch,
    /// Across the fall line there.
    pub(crate) strike: Strike,
}

/// What the leader decided about a zone.
///
/// ```
/// use schrund::trip::zone::RopeWord;
///
/// let mut job = schrund::example::job()?;
/// job.zones[0].rope = RopeWord::Never;
/// let plan = schrund::plan(&job)?;
/// assert!(plan.legs.iter().all(|leg| !leg.roped), "the leader's word puts nobody on the rope");
/// let codes: Vec<&str> = plan.legs.iter().flat_map(|leg| &leg.findings).map(|found| found.code()).collect();
/// assert!(codes.contains(&"never-on-hidden-gaps"), "and over hidden gaps that is the gravest finding: {codes:?}");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum RopeWord {
    /// Decide by the practice set.
    #[default]
    Auto,
    /// Rope here whatever the rules say.
    Always,
    /// Do not rope because of this zone.
    Never,
}

impl Zone {
    /// What counts of its surface: bare ice on which snow lies is a contradiction, and snow, which hides gaps, is the
    /// more careful reading.
    #[must_use]
    pub fn surface_counted(&self) -> Surface {
        match self.snow_on_bare_m() {
            Some(_) => Surface::Snow,
            None => self.surface,
        }
    }

    /// Whether its gaps are hidden under snow, as its surface counts.
    #[must_use]
    pub fn hides_gaps(&self) -> bool {
        self.surface_counted() == Surface::Snow
    }

    /// How much snow lies on ice that is called bare, metres.
    #[must_use]
    pub fn snow_on_bare_m(&self) -> Option<f64> {
        let depth_m = self.snow_depth_m.filter(|depth_m| *depth_m > 0.0);
        depth_m.filter(|_| self.surface == Surface::Bare)
    }

    /// `zone 3 "Upper icefall"`, or without the name where there is none.
    #[must_use]
    pub fn label(&self) -> String {
        match &self.name {
            Some(name) => format!("zone {} \"{name}\"", self.number),
            None => format!("zone {}", self.number),
        }
    }
}
