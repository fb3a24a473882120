//! The field table: which set-up suits the gap that is seen on the spot, for the rope teams and ropes of the trip.

use schemars::JsonSchema;
use serde::Serialize;

use crate::plan::{change::Change, name::RopeName};

/// What a leader reads where the ground differs from what was drawn. By the spacing rule and the ledger of the plan: it
/// says nothing about holding a fall.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let (field, team) = (&plan.field, &plan.legs[1].teams[0]);
/// // The leg over gaps of 15 m, met square, is set up as the table says.
/// let row = field.rows.iter().find(|row| row.gap_m == 15.0).expect("one of the widths");
/// let set_up = row.set_up.as_ref().expect("within the limits");
/// assert_eq!((set_up.spacing_m, set_up.rope_m), (team.spacing_m, team.ledger.total_m));
/// // A wider gap never needs less.
/// assert!(field.rows.windows(2).all(|pair| pair[0].need_m <= pair[1].need_m));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Field {
    /// One row for each rope team, ground and width, in this order.
    #[serde(rename = "field")]
    pub rows: Vec<FieldRow>,
    /// One for each rope team and ground: up to which gap its rope is long enough.
    #[serde(rename = "field_limits")]
    pub limits: Vec<FieldLimit>,
    /// How much longer the way over a gap is that is met askew.
    #[serde(rename = "field_askew")]
    pub askew: Vec<FieldAskew>,
    /// Below this angle between the line of travel and the crevasse the team runs along it, degrees: not in file.
    #[serde(rename = "field_along_below_deg")]
    pub along_below_deg: f64,
}

impl Field {
    /// How many rope teams it is for.
    #[must_use]
    pub fn teams(&self) -> usize {
        self.limits
            .iter()
            .map(|limit| limit.team)
            .max()
            .unwrap_or(0)
    }
}

/// The ground that a row is for, as far as a set-up goes by it.
///
/// ```
/// use schrund::plan::field::FieldGround;
///
/// let ground = |plan: schrund::plan::Plan| plan.field.limits[0].ground;
/// // Three tie no knots on this leg; two do wherever the snow may let them bite (common practice, no source).
/// assert_eq!(ground(schrund::plan(&schrund::example::job()?)?), FieldGround::Snow);
/// assert_eq!(ground(schrund::plan(&schrund::example::pair()?)?), FieldGround::SnowWithKnots);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum FieldGround {
    /// All gaps in sight: no knots, and as close as the floor where the gaps allow it.
    Bare,
    /// Hidden gaps, no brake knots.
    Snow,
    /// Hidden gaps, brake knots tied.
    SnowWithKnots,
}

/// The set-up of one rope team for one gap.
///
/// ```
/// let mut job = schrund::example::job()?;
/// job.ropes[0].length_m = 45.0;
/// let plan = schrund::plan(&job)?;
/// let fits: Vec<_> = plan.field.rows.iter().map(|row| (row.gap_m, row.fits == Some(true))).collect();
/// // Three at 14 m need 45 m: enough for gaps of 15 m, not for 20.
/// assert!(fits.contains(&(15.0, true)) && fits.contains(&(20.0, false)), "{fits:?}");
/// assert_eq!(fits.len(), 9);
/// // With 40 m nobody is tied as is taught; closer they are, where the gap allows it.
/// job.ropes[0].length_m = 40.0;
/// let rows = schrund::plan(&job)?.field.rows;
/// let closer = rows[0].otherwise.as_ref().map(|tied| tied.spacing_m);
/// assert_eq!((rows[0].fits, closer), (Some(false), Some(12.0)));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FieldRow {
    /// Number of the rope team.
    pub team: usize,
    /// The ground.
    pub ground: FieldGround,
    /// The gap as seen on the spot, metres, measured along the line of travel.
    pub gap_m: f64,
    /// Spacing that it asks for by itself, metres, not rounded.
    pub need_m: f64,
    /// The set-up; absent where none within the limits suits.
    #[serde(flatten)]
    pub set_up: Option<FieldSetUp>,
    /// Whether the rope that the team carries is long enough for it; absent where no rope was named.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fits: Option<bool>,
    /// Where it is too short: how the team is tied otherwise so that it is long enough with this gap; absent where nothing helps.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub otherwise: Option<RowOtherwise>,
}

/// How a rope team is tied for a gap.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let narrow = plan.field.rows[0].set_up.clone().expect("2 m are within the limits");
/// // A pair at 15 m with six knots of 1.2 m and coils of 22.5 m (common practice), two tie-ins of 1 m.
/// assert_eq!((narrow.spacing_m, narrow.knots, narrow.coil_m), (15.0, 6, 22.5));
/// assert!((narrow.rope_m - 69.2).abs() < 1e-9 && narrow.over_one_gap == 1);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FieldSetUp {
    /// Walking distance between neighbours, metres.
    pub spacing_m: f64,
    /// Brake knots in all.
    pub knots: usize,
    /// Spare rope that each end person needs, metres.
    pub coil_m: f64,
    /// Spare rope that each end person carries with the rope of the team, metres: what is left over goes there.
    pub coil_carried_m: f64,
    /// Rope needed, metres.
    pub rope_m: f64,
    /// How many people can stand over one such gap at once.
    pub over_one_gap: usize,
}

/// How far the rope of a team goes on one ground.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let (limit, team) = (&plan.field.limits[0], &plan.legs[1].teams[0]);
/// // Where a leg meets its gaps square, its rope is good for what the table says.
/// assert_eq!((limit.holds_to_gap_m, &limit.legs[..]), (team.covers_gap_m, &[2][..]));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FieldLimit {
    /// Number of the rope team.
    pub team: usize,
    /// How many are on it.
    pub people: usize,
    /// The ground.
    pub ground: FieldGround,
    /// The legs that are such ground for this team; empty where no leg is roped: then snow of unknown depth is meant.
    pub legs: Vec<usize>,
    /// The rope at hand; absent where none was named.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rope: Option<RopeName>,
    /// Its length, or the length sold that the plan says to take, metres; absent where neither is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length_m: Option<f64>,
    /// The widest gap along the line of travel for which that rope keeps the spacing rule, metres; absent where it is too short
    /// for the closest set-up that is taught.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub holds_to_gap_m: Option<f64>,
    /// The ways to tie otherwise with which it is long enough for rows for which it is too short as is taught; the least changed
    /// first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub otherwise: Vec<FieldOtherwise>,
}

/// How a team is tied for one gap with a rope that is too short for what is taught.
///
/// ```
/// let mut job = schrund::example::job()?;
/// job.ropes[0].length_m = 40.0;
/// let rows = schrund::plan(&job)?.field.rows;
/// let tied = rows[0].otherwise.as_ref().expect("closer");
/// // Three at 12 m take two spans, two coils of half of it and three tie-ins of 1 m (common practice, no source).
/// assert_eq!((tied.way, tied.coil_m, tied.rope_m), (1, 6.0, 39.0));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RowOtherwise {
    /// Which of the ways of the limit, from 1.
    pub way: usize,
    /// The widest walking distance between neighbours with which the rope is long enough, metres.
    pub spacing_m: f64,
    /// Spare rope that each end person needs, metres.
    pub coil_m: f64,
    /// Rope needed, metres.
    pub rope_m: f64,
}

/// How a team is tied otherwise than is taught, for a rope that is too short for that.
///
/// ```
/// use schrund::plan::change::Change;
///
/// // A pair with knots takes 69.2 m as is taught. Nobody walks closer than the layout of knots is long, so that is tied closer too.
/// let mut job = schrund::example::pair()?;
/// job.ropes[0].length_m = 60.0;
/// let otherwise = schrund::plan(&job)?.field.limits[0].otherwise[0].clone();
/// assert!(matches!(otherwise.changes[..], [Change::TighterLayout { .. }]) && otherwise.spacing_m < 15.0);
/// // A pair needs the gap and 5 m (common practice, no source).
/// assert_eq!(otherwise.to_gap_m, otherwise.spacing_m - 5.0);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FieldOtherwise {
    /// What is tied or carried otherwise; empty where walking closer is all.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub changes: Vec<Change>,
    /// Walking distance between neighbours with the narrowest gap that it is used for, metres.
    pub spacing_m: f64,
    /// The widest gap along the line of travel for which the rope then keeps the spacing rule, metres.
    pub to_gap_m: f64,
}

/// A gap that is met askew.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let askew: Vec<_> = plan.field.askew.iter().map(|a| (a.met_deg, a.widths, a.along)).collect();
/// assert_eq!(askew.len(), 2);
/// assert!((askew[0].1 - 2_f64.sqrt()).abs() < 1e-9 && (askew[1].1 - 2.0).abs() < 1e-9);
/// assert!(askew.iter().all(|(.., along)| !along), "at 30° a team does not yet run along the crevasses (our judgement)");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Serialize, JsonSchema)]
pub struct FieldAskew {
    /// Angle between the line of travel and the crevasse, degrees; flatter ones are not crossed in file.
    pub met_deg: f64,
    /// How many of its widths the way over the gap is long.
    pub widths: f64,
    /// Whether the team runs along the crevasses there: no spacing helps.
    pub along: bool,
}
