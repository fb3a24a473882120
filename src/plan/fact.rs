//! The closed list of what a plan can find: each kind with its numbers, places and names, never with a sentence.

mod kinds;

use schemars::JsonSchema;
use serde::Serialize;
use serde_json::Value;

use crate::{
    fault::{Level, code::told, refusal::Refusal},
    physics::assumed::Snow,
    plan::{
        cure::{OneByOne, RopeCure, RopeLack},
        fall::HaulAnswer,
        heights::{HeightsApart, TerrainVoid},
        in_time::{StartBy, TripHour, TurnInTime, WayOff},
        name::{IceNames, PersonName, RopeName, ZoneName},
        place::{HeightsFrom, JumpSummary, Piece, RollOver, RouteEnd},
        why::KnotsWhy,
    },
    trip::{clock::Clock, day::Day},
};
use kinds::facts;

facts! {
    /// A zone with hidden gaps says `rope` = `never`, and the route meets it. The leader's word is kept, and it is the
    /// most dangerous thing a zones file can say: hidden gaps are where people fall in.
    ///
    /// What to do: set `rope` = `auto` in the zone, so that it is planned roped, or take another line.
    NeverOnHidden { zone: ZoneName } = "never-on-hidden-gaps", Stop;
    /// The line along this leg is steeper than roping together without anchors can answer for: on hard snow one slip
    /// takes all.
    ///
    /// What to do: belay from anchors, or take another line.
    TooSteep { slope_deg: f64, of: Slope, length_m: f64 } = "too-steep-to-rope-without-anchors", Stop;
    /// In the fall model this team holds that fall in none of the cases assumed, not even the favourable one. It is a
    /// model's answer for assumed ranges, which are our judgement; nothing was measured on your ground. Take it as a
    /// reason to look for other means than the rope team alone. Where nobody gave a gap the fall is judged as if it had
    /// no width, the mildest.
    ///
    /// What to do: more people on the rope, the order that is named where one was tried and is better, a belay from an
    /// anchor, or another line.
    HeldInNone { falls: PersonName, snow: Snow, length_m: f64, down_deg: Option<f64>, gap_given: bool, order: Vec<PersonName> } = "fall-held-in-none", Stop;
    /// Bare ice this steep is no ground for a rope team without anchors: one slip takes all, and the model holds no
    /// fall on ice.
    ///
    /// What to do: belay from anchors, go unroped where every gap is in sight, or take another line.
    SteepBareIce { slope_deg: f64, length_m: f64 } = "bare-ice-too-steep", Stop;
    /// The gaps ask for a spacing above the greatest one.
    ///
    /// What to do: take another line, make a detour round the ends of the crevasses, or put more people on the rope; a
    /// longer rope cannot help.
    NoSetup { people: usize, effective_gap_m: f64, need_m: f64, cap_m: f64 } = "no-setup", Outside;
    /// The set-up of this leg takes more rope than the team has at hand.
    ///
    /// What to do: take the longer rope that is named, or the change of set-up that is named because a rope at hand is
    /// long enough for it; where none is, turn back, or belay each across from an anchor. `schrund options` weighs other
    /// ropes and splits of the party.
    NoRope { needed_m: f64, lack: RopeLack, cure: Option<RopeCure> } = "no-rope-fits", Outside;
    /// Brake knots block the loaded strand, so a rescue takes a strand of its own, and the rope at hand cannot give it:
    /// the set-up that is asked for leaves the reserve short, and a whole one does not fit on this rope.
    ///
    /// What to do: take a longer rope, tie butterflies for bulky knots, carry a long sling, or use the closer knot
    /// layout.
    NoReserve { short_m: f64, coil_m: f64, rope_short_m: f64 } = "no-rope-for-the-reserve", Outside;
    /// Bare ice is walked without a rope, and it is so steep that a slip does not end by itself. That every gap is in
    /// sight is no answer to a slip.
    ///
    /// What to do: set anchors there, wear crampons that bite, or take another line.
    SteepBareUnroped { slope_deg: f64, length_m: f64 } = "unroped-on-steep-bare-ice", Look;
    /// The team runs along the crevasses: several people can stand over one gap, and no spacing helps.
    ///
    /// What to do: walk in echelon (staggered), or take another line.
    Along { zone: ZoneName } = "along-the-crevasses", Look;
    /// At one place of no more than a spacing the model holds that fall in none of the cases assumed.
    ///
    /// What to do: cross that place one by one, belayed from an anchor, or take a line round it; put people in the
    /// order that is named, where one is.
    HeldInNoneOnce { falls: PersonName, snow: Snow, length_m: f64, down_deg: Option<f64>, gap_given: bool, order: Vec<PersonName> } = "fall-held-in-none-at-one-place", Look;
    /// Whether this team holds that fall depends on what is assumed, and with everything central it does not.
    ///
    /// What to do: put more people on the rope, belay from an anchor there, or put people in the order that is named,
    /// where one is.
    HeldOffCentre { falls: PersonName, snow: Snow, length_m: f64, down_deg: Option<f64>, order: Vec<PersonName> } = "fall-not-held-in-the-middle-case", Look;
    /// A zone with hidden gaps says `rope` = `never`, and the party is on skis in deep snow over narrow gaps. The
    /// leader's word is kept. Skis spread the load; they do not hold a bridge up.
    ///
    /// What to do: rope up where the snow thins, where it sags, and where you stop; `rope` = `auto` in the zone plans
    /// it roped.
    SkiedUnroped { zone: ZoneName, snow_depth_m: f64, gap_m: f64 } = "hidden-gaps-skied-unroped", Look;
    /// The zone has hidden gaps, and so little snow lies on its ice that a bridge over them may not hold a person
    /// (`thin_snow_m`, our judgement). Wind and melt make bridges thicker or thinner than the snow beside them.
    ///
    /// What to do: probe ahead and cross one at a time on a tight rope, or take another line; where the gaps lie open,
    /// `surface` = `bare` says so.
    ThinSnow { zone: ZoneName, snow_depth_m: f64 } = "thin-snow-on-hidden-gaps", Look;
    /// The spacing is shorter than the way over a gap, so two people can stand over one at once, and as they are tied
    /// nobody is over it alone.
    ///
    /// What to do: where the rope is long enough, tie as far apart as is named, so that people cross it one by one;
    /// else belay each across from an anchor, or take another line.
    TwoOverGap { over: usize, left: usize, effective_gap_m: f64, spacing_m: f64, one_by_one: Option<OneByOne> } = "two-over-one-gap", Look;
    /// A halt lies on ice with hidden gaps, or within the margin of it. Whoever stands or sits still together puts the
    /// weight of all on one bridge (common practice, no source). The place named is the nearest one of the stage
    /// outside all drawn and known ice, the margin counted.
    ///
    /// What to do: stay spread on a tight rope, or rest at the place that is named.
    HaltOnHidden { zone: Option<ZoneName>, minutes: f64, beside: bool, rest_m: Option<f64> } = "halt-on-hidden-gaps", Look;
    /// With the rope as carried no drop loop reaches this person: it ends short of the lip.
    ///
    /// What to do: plan another rescue for them, take a longer rope (the one named, where a rope at hand that nobody
    /// carries is long enough) or one at hand as a spare that is long enough for a loop by itself, or let `cover = "anyone"`
    /// size the coils.
    NotReached { falls: PersonName, short_m: f64, sized_for_anyone: bool, longer: Option<RopeName>, spare: Option<RopeName> } = "loop-ends-short-of-the-lip", Look;
    /// Knots make a rescue strand obligatory, and the reserve that a practice set or the leader asks for leaves it
    /// short.
    ///
    /// What to do: carry longer coils or a long sling, or take a set that sizes the coils by `reach_factor`.
    ReserveShort { short_m: f64, coil_m: f64 } = "reserve-left-short", Look;
    /// The spacing is close to the greatest one: a slightly wider gap has no set-up.
    ///
    /// What to do: look at the gaps from close by before you tie in, and have a way round or one more person on the
    /// rope in mind, should they be wider.
    NearCap { spacing_m: f64, cap_m: f64 } = "spacing-near-limit", Look;
    /// The rope has little to spare: a slightly wider gap asks for another one.
    ///
    /// What to do: take a longer rope where you have one, and look at the gaps before you tie in, should they be wider
    /// than was given.
    NearRope { rope: RopeName, spare_m: f64 } = "rope-near-limit", Look;
    /// Teams tie into, or take beside, ropes thinner than `thin_rope_mm` (our judgement). Where a thicker one does they tie into that. Most of what is sold as thin is cord and made for no fall; lines made for
    /// glaciers are as thin, and knots, cords and clamps hold on them otherwise.
    ///
    /// What to do: tie into it only where its maker sells it for roped travel on glaciers, with cords and clamps tried on it; else
    /// take a thicker rope.
    ThinRope { ropes: Vec<RopeName>, thinnest_mm: f64, limit_mm: f64 } = "rope-thin-as-cord", Look;
    /// The snow may be too thin in these zones for brake knots to bite.
    ///
    /// What to do: tie them and do not count on them; give `snow_depth_m` in the zones file if you know it better.
    KnotsDoubtful { zones: Vec<ZoneName> } = "knots-doubtful", Look;
    /// Fewer knots are tied than a whole layout has: by the leader's word, or because the greatest spacing has no room.
    ///
    /// What to do: tie the whole layout, walk farther apart, or take a third person on the rope.
    KnotsFewer { tied: usize, layout: usize } = "fewer-knots-than-a-layout", Look;
    /// Nobody said how much snow lies on the ice of these zones, so whether brake knots bite there is unknown.
    ///
    /// What to do: give `snow_depth_m` of these zones in the zones file; until it is known, tie the knots that are
    /// planned and do not count on them.
    SnowUnknown { zones: Vec<ZoneName> } = "snow-depth-not-given", Look;
    /// Knots are tied for one part of the leg and do not bite in another.
    ///
    /// What to do: tie them as planned for the part where they bite, and do not count on them in the zones that are
    /// named: there people hold by themselves.
    KnotsNoBite { zones: Vec<ZoneName> } = "knots-do-not-bite-everywhere", Look;
    /// The trip or the practice set says `knots` = `always`, and on this leg none are tied: they would not bite, have
    /// no room, or are not tied by so many.
    ///
    /// What to do: walk as planned and count on no knots; where the spacing has no room for them, walk farther apart.
    /// `knots` = `auto` takes the word back.
    AlwaysTiesNone { why: KnotsWhy } = "knots-always-and-none-tied", Look;
    /// One person alone must hold a fall, without brake knots to help.
    ///
    /// What to do: take a third person on the rope, or another line; on ice that bears no knots, belay from anchors.
    PairWithoutKnots { why: KnotsWhy } = "pair-without-knots", Look;
    /// The route begins or ends on the ice: the leg is cut off there, and the team is still on rope.
    ///
    /// What to do: draw the line on until it is off the ice, and plan again; where it truly begins or ends on the ice,
    /// rope up before its first point and stay on rope beyond its last one.
    CutOff { at: RouteEnd } = "cut-off-by-route-end", Look;
    /// The route ends before the last person has left the ice and its margin.
    ///
    /// What to do: draw the line on until the whole rope is off the ice and its margin; without it, let nobody unrope
    /// before the last one is off.
    LastOnIce {} = "last-person-still-on-ice", Look;
    /// The line jumps, and the straight way from where it ends to where it goes on passes over ice. A jump is never
    /// walked, so nothing is planned for that ice.
    ///
    /// What to do: if it is walked, draw the missing piece of the line and plan again.
    JumpOverIce { jumps: Vec<JumpSummary>, ice: IceNames } = "jump-over-ice", Look;
    /// One stage ends and the next one begins elsewhere, and the straight way between them passes over ice. Nothing is
    /// planned for it.
    ///
    /// What to do: if it is walked, draw it as part of a stage and plan again.
    StageGapOverIce { before: usize, after: usize, length_m: f64, ice: IceNames } = "stage-gap-over-ice", Look;
    /// The leg is walked without a rope on ice, because a zone says `rope` = `never` or the trip says `undrawn_ice` =
    /// `tell`. The leader's word is kept; the gaps are there all the same. When and how high it comes onto that ice
    /// stands beside it.
    ///
    /// What to do: set `rope` = `auto` in the zone, or `undrawn_ice` = `rope`, and it is planned roped; else go there
    /// only where you see every gap.
    UnropedByWord { zones: Vec<ZoneName>, undrawn: bool, onto_clock: Option<Clock>, onto_height_m: Option<f64> } = "unroped-on-ice-by-your-word", Look;
    /// The glacier inventory has ice here, and no zone says how wide its gaps are: they are unknown, not absent. It is
    /// roped with the base spacing of the practice set, unless `undrawn_ice` = `tell` says that it is only told. All
    /// such stretches of the stage are listed.
    ///
    /// What to do: draw a zone there with the gaps that you expect.
    IceWithoutGap { pieces: Vec<Piece>, roped: bool } = "ice-without-a-gap-width", Look;
    /// A zone says that its ice is bare and that snow lies on it. Both cannot be: it is planned as snow that hides
    /// gaps, the more careful reading, in spacing, knots, falls and verdicts.
    ///
    /// What to do: set `surface` to what it is, or take `snow_depth_m` out.
    SnowOnBare { zone: ZoneName, snow_depth_m: f64 } = "snow-on-bare-ice", Look;
    /// Snow bridges weaken through the day, and the planned time on hidden gaps is later than the leader trusts them.
    /// Without a zone it is ice that only the inventory knows. The start told leaves all hidden gaps of the stage in
    /// time; without heights none is told. Of who is under way it is told of what lies ahead.
    ///
    /// What to do: start by the hour that is named, or earlier where none is, or turn round in time; where no turn ahead is
    /// (`turns`), stay off that ice, or leave it the shorter way (`off`).
    BridgesLate { zone: Option<ZoneName>, left_at: Clock, until: Clock, start_by: StartBy, turns: TurnInTime, off: Option<WayOff> } = "bridges-late", Look;
    /// The leader calls the snow soft, fresh or wet, and the leg is roped over hidden gaps: such bridges are weak at any hour, also
    /// before the one until which they are trusted (our judgement).
    ///
    /// What to do: probe each bridge, belay over what is doubtful, or wait for a frost.
    BridgesSoft {} = "bridges-in-soft-snow", Look;
    /// No height is known on long pieces of a stage: climbs go straight across or end there and hours are too few, so
    /// no hour is worked backwards for it.
    ///
    /// What to do: give a route with heights, or a terrain model that covers the line.
    ClimbUnknown { unknown_m: f64, first_m: f64 } = "climb-partly-unknown", Look;
    /// An hour of the trip lies before its start, and is taken to be on the same day: what is late by it is told.
    ///
    /// What to do: start earlier; where the morning after is meant, write the days that lie between behind it: `05:00
    /// +1`.
    HourBeforeStart { hour: TripHour, at: Clock, start: Clock } = "hour-before-start", Look;
    /// A gap width from the trip or `--gap` stands in for zones that give none. The plan is as good as that guess.
    ///
    /// What to do: write what you expect of each zone into the file as `gap_m`, and look on the spot whether gaps are
    /// wider.
    GapAssumed { zone: ZoneName, gap_m: f64 } = "gap-assumed", Look;
    /// Zones on the way were observed longer before the day of the trip than `observed_days` (our judgement). Gaps open,
    /// bridges go, snow falls and melts within weeks, so their widths are guesses by then. The oldest stands beside it.
    ///
    /// What to do: look again before you go, and write what you see into the zones with its day.
    ObservedLongAgo { zones: Vec<ZoneName>, observed_on: Day, days: i32 } = "observed-long-before", Look;
    /// Roped without anchors on sloping bare ice: no team holds a fall on ice, so one slip pulls all.
    ///
    /// What to do: go unroped where every gap is in sight, or belay from anchors.
    SlipPullsAll { slope_deg: f64, length_m: f64 } = "one-slip-pulls-all", Look;
    /// Where every gap is in sight, many teach to go without a rope, because a slip of one pulls all. Others rope where
    /// the ice is badly broken. The plan shows the roped view unless the practice set or the zone says otherwise.
    ///
    /// What to do: decide for your party: `rope_on_bare = false` goes unroped where every gap is in sight, `rope` =
    /// `always` or `never` says it for one zone.
    BareIce { zone: ZoneName, roped: bool } = "bare-ice-two-views", Look;
    /// By the clock the line is done later than the leader wants to be back.
    ///
    /// What to do: start by the hour that is named, early enough for the bridges too, or turn round in time: the clock of the plan
    /// says where and when. Where no turn ahead is in time, off the bridges too (`turns`), be late, or stay where it is safe.
    BackLate { arrival: Clock, back_by: Clock, start_by: StartBy, turns: TurnInTime } = "back-late", Look;
    /// A team is on the way for longer than `longest_stage_h` (our judgement) on one stage, halts and belays not counted: whoever walks
    /// on without sleep falls more easily.
    ///
    /// What to do: give the line of each day a track of its own in the route file; the plan then begins anew where you sleep.
    LongStage { minutes: f64, most_h: f64 } = "very-long-stage", Look;
    /// A party that takes `slower_factor` as long is done later than the leader wants to be back; as planned it is not.
    SlowerBackLate { arrival: Clock, back_by: Clock } = "slower-back-late", Note;
    /// A party that takes `slower_factor` as long is on hidden gaps later than the leader trusts bridges; as planned it is
    /// not.
    SlowerBridgesLate { left_at: Clock, until: Clock } = "slower-bridges-late", Note;
    /// A spare coil so long or heavy that it hinders who carries it.
    CoilHeavy { coil_m: f64, coil_kg: f64, most_m: f64, most_kg: f64 } = "coil-is-a-burden", Note;
    /// From this steepness the avalanche bulletin decides.
    AvalancheTerrain { slope_deg: f64, of: Slope } = "avalanche-terrain", Note;
    /// Two ropes are joined in this one. A haul on the loaded strand does not run over the bend, and needs its own.
    BendBlocksHaul {} = "bend-blocks-the-loaded-strand", Note;
    /// Brake knots and a rope cut into the lip block the loaded strand, so a haul needs its own.
    KnotsBlockHaul {} = "knots-block-the-loaded-strand", Note;
    /// Those left on the rope cannot pull the fallen person out by any haul that their free rope allows. It rests
    /// on what one person pulls on snow and on turns round karabiners; both can be changed.
    HaulTooWeak { falls: PersonName, haul: HaulAnswer } = "haul-beyond-those-left", Note;
    /// A figure lies outside what the model of falls or hauls can be asked, so it says nothing about this leg.
    ///
    /// What to do: look at the figure that is named and give it right if it is wrong; if it is right, judge this leg
    /// without the model, as one that nobody reckoned.
    NoAnswer { reason: Refusal } = "model-has-no-answer", Look;
    /// A strike was given without saying how sure it is, and is taken as exact. Met askew, a few degrees
    /// make the way over a gap a good deal longer.
    StrikeExact { zone: ZoneName } = "strike-taken-as-exact", Note;
    /// No heights say how steep the ground is towards the lip, so the fall model takes it as flat. On ground that
    /// falls towards the lip holding is harder than it says. Give a terrain model or a route with heights.
    SlopeUnknown {} = "slope-unknown", Note;
    /// Heights are known for a part of the leg only. How steep the rest is, along the line and towards the lip, is
    /// unknown, and what is told of slopes and falls is told of the part that is known. Give a terrain model.
    SlopePartlyUnknown { unknown_m: f64, pieces: Vec<Piece> } = "slope-partly-unknown", Note;
    /// No direction of the crevasses is known, so they are taken to be crossed squarely.
    StrikeUnknown { zone: ZoneName } = "strike-not-given", Note;
    /// A zone in the file that the route does not meet.
    ZoneMissed { zones: Vec<usize> } = "zone-not-met", Note;
    /// No glacier inventory was given, so the plan knows no ice but the zones that somebody drew. Where none is drawn
    /// there may be ice all the same.
    NoInventory {} = "no-inventory", Note;
    /// The route file gives no heights, so there are no ascents, slopes and times for them.
    NoHeights {} = "no-heights", Note;
    /// On skis many go unroped in good snow and rope up for danger signs.
    OnSkis {} = "on-skis", Note;
    /// No rope at hand was named, so the plan says which length to take and checks none.
    NoRopeNamed {} = "no-rope-named", Note;
    /// The route file and the terrain model both give heights; this says how far they differ and which
    /// are used. The steeper of both counts for steepness.
    HeightsCompared { apart: HeightsApart } = "heights-compared", Note;
    /// The heights of the route file and of the terrain model differ so much that one of them is doubtful: another
    /// height system, a receiver's error, or files of different places.
    ///
    /// What to do: look at some places of the line on a map: use the file whose heights agree with it, and leave the
    /// other one out.
    HeightsFarApart { apart: HeightsApart } = "heights-far-apart", Look;
    /// The ascent by the heights of the route file and that by the terrain model differ a good deal, so climb and time
    /// are as good as the source that is used. Receivers and rasters both add noise; a coarse model also cuts off what
    /// is shorter than its cells.
    AscentsApart { file_m: f64, model_m: f64, used: HeightsFrom } = "ascents-apart", Note;
    /// The terrain model has no height for a part of the line. Nothing is filled in there.
    ///
    /// What to do: give a terrain model that covers that part too; `--terrain` can be given again.
    TerrainVoid { void: TerrainVoid } = "terrain-void", Look;
    /// A model of the ground flattens whatever is shorter than a few of its cells: steps, walls, rolls. No
    /// figure is relaxed because of it.
    TerrainFlattens { cell_m: f64 } = "terrain-flattens", Note;
    /// The line turns back on itself and stays within the margin of itself on its way back for more than `turn_back_m`. It
    /// parts its leg: what stands before and behind is told apart, and the set-up stays one. A halt there is given by
    /// `[[halt]]` in the trip file.
    TurnFound { back_m: f64 } = "line-turns-back", Note;
    /// A day was given without `utc_offset`, so sunrise and sunset are told in UTC, while all other times are those of
    /// the clocks of the trip.
    SunInUtc {} = "sun-in-utc", Note;
    /// So many minutes of the roped legs lie before sunrise, or between sunset and the next sunrise, as planned. The sun is
    /// that at a level horizon where the stage begins: mountains hide it. Without an hour until when, it does not rise.
    DarkOnRope { from: Option<Clock>, until: Option<Clock>, minutes: f64 } = "dark-on-the-rope", Note;
    /// No strike was given, and one is proposed across the fall line of the terrain model. It is assumed,
    /// never known, and never makes a set-up lighter.
    StrikeProposed { zone: ZoneName, strike_deg: f64, doubt_deg: f64, counts: bool } = "strike-proposed", Note;
    /// The line contours where crevasses are proposed across the fall line, so the team may run along
    /// them. `use_proposed_strike = true` in the trip file lets it count.
    MayRunAlong { pieces: Vec<Piece> } = "may-run-along", Note;
    /// The ground steepens down the fall line: crevasses prefer convex ground. A hint to look, drawn from
    /// a terrain model; ground without such a mark may be broken as well.
    ConvexGround { places: Vec<RollOver> } = "convex-ground", Note;
}

/// What is steep.
///
/// ```
/// use schrund::{plan::fact::{Fact, Slope}, practice::{Origin, Rule}};
///
/// let mut job = schrund::example::job()?;
/// job.rules.set(Rule::AvalancheDeg, 5.0, Origin::Flag).expect("inside its bounds");
/// let plan = schrund::plan(&job)?;
/// let steep = plan.legs[1].findings.iter().filter_map(|f| match f.fact()? {
///     Fact::AvalancheTerrain { of, .. } => Some(*of),
///     _ => None,
/// });
/// assert_eq!(steep.collect::<Vec<_>>(), [Slope::Line], "no terrain model knows the ground");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Slope {
    /// The line itself.
    Line,
    /// The ground under it.
    Ground,
}
