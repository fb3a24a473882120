//! One leg of the plan and the set-up of each rope team on it.

use crate::{
    plan::{
        belay::LegBelays,
        fall::{Arrest, HaulTable, HeldMetres},
        finding::Finding,
        name::PersonOnRope,
        off::RopeOff,
        part::{LegPart, WalkedPlace},
        place::{Piece, RollOver},
        reach::Reach,
        why::{KnotsWhy, SpacingWhy},
    },
    trip::clock::Clock,
};
use schemars::JsonSchema;
use serde::Serialize;

pub use crate::plan::{
    judged::JudgedStretch,
    mark::{Mark, MarkKind, NoPlace},
    verdict::Verdict,
};

/// A part of a stage that is walked in one way. Legs tile their stage.
///
/// ```
/// let legs = schrund::plan(&schrund::example::job()?)?.legs;
/// for pair in legs.windows(2) {
///     assert_eq!(pair[0].end_m, pair[1].start_m, "each begins where the last one ended");
///     assert_eq!(pair[0].end_clock, pair[1].start_clock);
/// }
/// assert_eq!(legs[1].gap_m, Some(15.0));
/// assert!(legs[0].gap_m.is_none() && legs[0].teams.is_empty(), "unroped");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct Leg {
    /// Number from 1 over the whole plan.
    pub leg: usize,
    /// Number of its stage, from 1.
    pub stage: usize,
    /// Whether the team is on the rope.
    pub roped: bool,
    /// Chainage of the first person where it begins, metres from the start of the stage.
    pub start_m: f64,
    /// Chainage of the first person where it ends.
    pub end_m: f64,
    /// Whether its stage ends with it; a document shows it by the next leg.
    #[serde(skip)]
    pub ends_stage: bool,
    /// Metres walked.
    pub length_m: f64,
    /// Where it begins: longitude, latitude.
    pub start: [f64; 2],
    /// Where it ends: longitude, latitude.
    pub end: [f64; 2],
    /// Height where it begins, metres; absent where none is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub start_height_m: Option<f64>,
    /// Height where it ends, likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_height_m: Option<f64>,
    /// Metres up, counted by turning points; absent without heights.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ascent_m: Option<f64>,
    /// Metres down, counted likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub descent_m: Option<f64>,
    /// Steepest slope along the line, degrees, up or down; a height that dips or sticks out alone decides nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub steepest_deg: Option<f64>,
    /// Where that is: longitude, latitude.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub steepest_at: Option<[f64; 2]>,
    /// Steepest slope of the ground on the line, degrees, from the terrain model.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ground_steepest_deg: Option<f64>,
    /// Where that is: longitude, latitude.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ground_steepest_at: Option<[f64; 2]>,
    /// Which way the ground falls there, degrees clockwise from true north.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ground_aspect_deg: Option<f64>,
    /// Steepest fall in walking direction on the crossings, degrees, 0 where it only rises: the slope toward
    /// the lip for those behind when the first person falls. Absent without heights and on unroped legs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lip_slope_deg: Option<f64>,
    /// The same against the walking direction: for those ahead when the last person falls.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lip_slope_behind_deg: Option<f64>,
    /// True bearing of a straight leg, degrees clockwise from true north; absent where the line bends.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bearing_deg: Option<f64>,
    /// Numbers of the zones met, margin included.
    pub zones: Vec<usize>,
    /// How the rope comes off at its end; absent on unroped legs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rope_off: Option<RopeOff>,
    /// Whether the zones give a gap width for all ice of the leg; false where an inventory knows more.
    pub gap_known: bool,
    /// Widest gap of those zones, metres across; absent on unroped legs and where no zone gives one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap_m: Option<f64>,
    /// Longest way over a gap along the route, metres, where a zone gives one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub effective_gap_m: Option<f64>,
    /// Whether one of these two is a width that nobody gave and that was assumed.
    pub gap_assumed: bool,
    /// Whether the team runs along the crevasses somewhere on it.
    pub along: bool,
    /// Strike assumed across the fall line where zones give none, degrees; a hint, the middle over the leg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub strike_proposed_deg: Option<f64>,
    /// Where the line contours, so that the team may run along crevasses of that strike; a hint.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub may_run_along: Vec<Piece>,
    /// Roll-overs on the ice; a hint.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub look_here: Vec<RollOver>,
    /// Where the glacier inventory has ice and no zone gives a gap width.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub ice_without_zone: Vec<Piece>,
    /// Least snow on the ice that was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub snow_depth_m: Option<f64>,
    /// Minutes of walking; rope changes and breaks are not counted.
    pub time_min: f64,
    /// Minutes of roping up before and unroping after; 0 on unroped legs.
    pub rope_min: f64,
    /// Minutes of rest that go with the walking.
    pub break_min: f64,
    /// Minutes of the leader's halts.
    pub halt_min: f64,
    /// Belays that its findings ask for, counted in all times of day; absent where none does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub belays: Option<LegBelays>,
    /// The leg from halt to halt and turn to turn; empty where it has none.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub parts: Vec<LegPart>,
    /// Time of day when the leg begins, roping up included: `04:30`, `00:10 +1` past midnight.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub start_clock: Option<Clock>,
    /// Places of the leg with the time of day at which each is left, about a hundred metres apart, the first and the last
    /// place among them; empty without a clock. A document shows begin and end.
    #[serde(skip)]
    pub walk: Vec<WalkedPlace>,
    /// Time of day when it ends.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub end_clock: Option<Clock>,
    /// How the leg stands against the limits: the gravest word of its stretches.
    pub verdict: Verdict,
    /// Where each graver word holds, in walking order.
    pub stretches: Vec<JudgedStretch>,
    /// One set-up for each rope team; empty on unroped legs.
    pub teams: Vec<TeamSetup>,
    /// What must be said about it.
    pub findings: Vec<Finding>,
}

/// How one rope team is set up on a leg.
///
/// ```
/// let plan = schrund::plan(&schrund::example::job()?)?;
/// let team = &plan.legs[1].teams[0];
/// // Three walk 0.9 of the gap apart (our judgement), so 13.5 m suit 15 m and no more.
/// assert_eq!((team.spacing_m, team.as_tied_gap_m, team.as_tied_along_m), (13.5, Some(15.0), Some(15.0)));
/// // The 60 m rope would do for more, tied anew.
/// assert!(team.covers_gap_m > Some(21.0) && team.covers_at_spacing_m == Some(19.0));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct TeamSetup {
    /// Number of the rope team, from 1.
    pub team: usize,
    /// How many people are on the rope.
    pub people: usize,
    /// Who they are, in rope order, the first ahead.
    pub persons: Vec<PersonOnRope>,
    /// Walking distance between neighbours, metres.
    pub spacing_m: f64,
    /// Why it is that.
    pub spacing_why: SpacingWhy,
    /// Brake knots.
    pub knots: KnotSet,
    /// Spare rope that each end person needs, metres.
    pub coil_m: f64,
    /// Spare rope that each end person carries with this rope, metres: what is left over goes there.
    pub coil_carried_m: f64,
    /// What is carried in a bag, metres.
    pub bag_m: f64,
    /// Where the rope goes.
    pub ledger: Ledger,
    /// Next length sold that is long enough for the total; absent above the longest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sold_length_m: Option<f64>,
    /// What comes where along the rope, from the first person's free end; never beyond its end.
    pub marks: Vec<Mark>,
    /// What finds no place on the rope because it is too short, from its near end on.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub no_place: Vec<NoPlace>,
    /// The rope at hand that this team carries; absent where none was named.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rope: Option<RopeAtHand>,
    /// Widest gap across for which a team on this rope (without one: the length sold), tied anew, still keeps the spacing
    /// rule on this leg, metres. It says nothing about holding a fall.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub covers_gap_m: Option<f64>,
    /// How far apart it is tied anew for that gap, metres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub covers_at_spacing_m: Option<f64>,
    /// Widest gap across for which this set-up, as it is tied, still keeps the spacing rule, metres; absent where no
    /// rope is long enough to be tied so, and where no gap is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub as_tied_gap_m: Option<f64>,
    /// The same along the line of travel, however a gap is met, metres: as it is measured on the spot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub as_tied_along_m: Option<f64>,
    /// Least snow on the ice from which the brake knots count, metres; absent without knots.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub knots_count_from_snow_m: Option<f64>,
    /// Mass of one coil carried, kilograms, for the rope at hand or one of the assumed diameter.
    pub coil_kg: f64,
    /// How deep a drop loop reaches for each person who falls, with the rope as carried, in rope order; empty where the rope
    /// ends before somebody's place.
    pub reach: Vec<Reach>,
    /// Whether the team holds the worst fall; absent where the model has no answer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub arrest: Option<Arrest>,
    /// On how many metres falls are held; absent where the model has no answer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub held: Option<HeldMetres>,
    /// How the person who is hardest to haul can be hauled out; absent where the model has no answer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub haul: Option<HaulTable>,
}

/// Brake knots of one rope team.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let team = &plan.legs[1].teams[0];
/// let walked_m = team.knots.in_span(0, 1, team.spacing_m);
/// // 3 m to the first, 2 m to the next (common practice), from Dag and from Eli.
/// assert_eq!(walked_m, [3.0, 5.0, 7.0, 15.0 - 7.0, 15.0 - 5.0, 15.0 - 3.0]);
/// assert_eq!(walked_m.len(), team.knots.count);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct KnotSet {
    /// How many in all.
    pub count: usize,
    /// How many from each end person.
    pub each_end: usize,
    /// Distance walked from the end person to the first, metres.
    pub first_m: f64,
    /// Distance walked from one to the next, metres.
    pub step_m: f64,
    /// Rope that each takes, metres.
    pub rope_each_m: f64,
    /// Whether the snow lets them work.
    pub bite: Bite,
    /// Why they are tied or not.
    pub why: KnotsWhy,
}

impl KnotSet {
    /// Distances walked from the front end of span `span` (from 0, of `spans`) to its knots, nearest first: one set
    /// from each end person.
    #[must_use]
    pub fn in_span(&self, span: usize, spans: usize, spacing_m: f64) -> Vec<f64> {
        let set: Vec<f64> = std::iter::successors(Some(self.first_m), |d| Some(d + self.step_m))
            .take(self.each_end)
            .collect();
        let from_front = set.iter().copied().filter(|_| span == 0);
        let from_rear = set
            .iter()
            .rev()
            .map(|d| spacing_m - d)
            .filter(|_| span + 1 == spans);
        from_front.chain(from_rear).collect()
    }
}

/// Whether brake knots bite into the lip.
///
/// ```
/// use schrund::plan::leg::Bite;
///
/// // Knots bite above 1 m of snow and do not up to 0.3 m (common practice, no source).
/// let legs = schrund::plan(&schrund::example::pair()?)?.legs;
/// let bite = legs.iter().flat_map(|leg| Some((leg.snow_depth_m?, leg.teams.first()?.knots.bite)));
/// assert_eq!(bite.collect::<Vec<_>>(), [(1.5, Bite::Yes), (0.8, Bite::Doubtful)]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Bite {
    /// Deep snow everywhere on the leg.
    Yes,
    /// Deep enough to try, not to count on.
    Doubtful,
    /// Bare ice or too little snow.
    No,
    /// Nobody said how much snow lies there.
    Unknown,
}

/// Where the rope goes, line by line, metres.
///
/// ```
/// let plan = schrund::plan(&schrund::example::pair()?)?;
/// let ledger = plan.legs[1].teams[0].ledger;
/// // Six brake knots of 1.2 m (common practice) and two tie-ins of 1 m (published, `aai2006`).
/// assert!((ledger.knots_m - 6.0 * 1.2).abs() < 1e-9 && ledger.tie_ins_m == 2.0);
/// let lines_m = ledger.spans_m + ledger.knots_m + ledger.tie_ins_m + ledger.coils_m;
/// assert!((lines_m - ledger.total_m).abs() < 1e-9, "the lines add up");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, JsonSchema)]
pub struct Ledger {
    /// Between the people.
    pub spans_m: f64,
    /// In brake knots.
    pub knots_m: f64,
    /// In tie-ins.
    pub tie_ins_m: f64,
    /// In the spare coils of both ends.
    pub coils_m: f64,
    /// All of it.
    pub total_m: f64,
}

/// The rope that a team carries.
///
/// ```
/// let mut job = schrund::example::job()?;
/// job.ropes[0].length_m = 40.0;
/// let plan = schrund::plan(&job)?;
/// let team = &plan.legs[1].teams[0];
/// let rope = team.rope.as_ref().expect("named");
/// assert_eq!(rope.spare_m, rope.length_m - team.ledger.total_m);
/// assert!(rope.spare_m < 0.0, "too short by 3.5 m");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct RopeAtHand {
    /// Which of the ropes named, from 1.
    pub number: usize,
    /// What the leader calls it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Metres.
    pub length_m: f64,
    /// What is left on this leg; negative where it is too short.
    pub spare_m: f64,
}

impl RopeAtHand {
    /// By how much it is too short for the set-up, metres; `None` where it is long enough.
    #[must_use]
    pub fn short_m(&self) -> Option<f64> {
        (self.spare_m < -1e-9).then_some(-self.spare_m)
    }
}

impl Leg {
    /// Whether nobody of a team can be tied as planned: no rope is long enough.
    #[must_use]
    pub fn lacks_rope(&self) -> bool {
        self.teams.iter().any(TeamSetup::lacks_rope)
    }

    /// Minutes on it, with rope changes, rests, halts and belays.
    #[must_use]
    pub fn all_min(&self) -> f64 {
        let belays = self.belays.as_ref();
        let belay_min = belays.map_or(0.0, |belays| belays.minutes);
        self.time_min + self.rope_min + self.break_min + self.halt_min + belay_min
    }
}

impl TeamSetup {
    /// By how much the rope at hand is too short for it, metres; `None` where it is long enough or none was named.
    #[must_use]
    pub fn rope_short_m(&self) -> Option<f64> {
        self.rope.as_ref()?.short_m()
    }

    /// Whether nobody can be tied so: the rope at hand is too short, or none was named and none that is sold is long enough.
    #[must_use]
    pub fn lacks_rope(&self) -> bool {
        match &self.rope {
            Some(rope) => rope.short_m().is_some(),
            None => self.sold_length_m.is_none(),
        }
    }
}
