//! The closed list of codes, each with its level and its explanation.

use serde::Serialize;

/// How much a complaint matters.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, schemars::JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// An input is wrong; nothing is planned from it.
    Error,
    /// Planned, but people can die of ignoring this one.
    Grave,
    /// Planned, and somebody should look.
    Warning,
    /// Worth knowing.
    Note,
}

macro_rules! codes {
    ($($(#[doc = $doc:literal])+ $variant:ident, $name:literal, $level:ident;)+) => {
        /// Every kind of fault and finding there is. The doc comment of each is what `check --explain` prints.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Code { $($(#[doc = $doc])+ $variant,)+ }

        impl Code {
            /// All codes, in the order of the flow.
            pub const ALL: &'static [Code] = &[$(Code::$variant,)+];

            /// The stable name, as printed and as `check --explain` takes it.
            #[must_use]
            pub fn as_str(self) -> &'static str {
                match self { $(Self::$variant => $name,)+ }
            }

            /// How much it matters.
            #[must_use]
            pub fn level(self) -> Level {
                match self { $(Self::$variant => Level::$level,)+ }
            }

            /// What it means and what to do, in a few sentences.
            #[must_use]
            pub fn explain(self) -> &'static str {
                match self { $(Self::$variant => concat!($($doc, "\n",)+),)+ }
            }
        }
    };
}

codes! {
    /// The file, address or standard input could not be read at all.
    Unreadable, "unreadable", Error;
    /// A file or folder could not be written: no permission, no room, or no such folder.
    Unwritable, "unwritable", Error;
    /// An address could not be fetched: no connection, a refusal, a time-out, or too much of it.
    Network, "network", Error;
    /// A file to be written is there already, or is one of the inputs.
    WouldOverwrite, "would-overwrite", Error;
    /// The file is not what its place on the command line calls for.
    WrongKind, "wrong-kind", Error;
    /// The text is broken: the XML, JSON or TOML ends early or does not parse.
    BrokenText, "broken-text", Error;
    /// A number is missing, malformed, not finite or outside what it can be.
    BadNumber, "bad-number", Error;
    /// A longitude or latitude lies outside its range or is no number.
    BadPosition, "bad-position", Error;
    /// A name was given that does not exist: a practice set, a figure, a stage.
    UnknownName, "unknown-name", Error;
    /// The trip file or a flag gives something that cannot be: a party of none, a rope without length.
    BadTrip, "bad-trip", Error;
    /// A practice set must give the spacing for 2, 3, 4 and 5 people.
    MissingFigure, "missing-figure", Error;
    /// One person on a glacier cannot be held and cannot be pulled out. Nobody goes alone.
    Alone, "alone", Error;
    /// No zone is met by the route. Either the files belong to different places, or longitude and
    /// latitude are swapped in one of them. A plan without a roped leg would look like an all-clear.
    NoZoneMet, "no-zone-met", Error;
    /// A zone with hidden gaps says `rope` = `never`, and the route meets it. The leader's word is kept,
    /// and it is the most dangerous thing a zones file can say: hidden gaps are where people fall in.
    NeverOnHidden, "never-on-hidden-gaps", Grave;
    /// The gaps ask for a spacing above the greatest one. Another line, a detour round the ends of the
    /// crevasses or more people on the rope can help; a longer rope cannot.
    NoSetup, "no-setup", Grave;
    /// The set-up of this leg takes more rope than the team has at hand.
    NoRope, "no-rope-fits", Grave;
    /// The line along this leg is steeper than roping together without anchors can answer for: on hard
    /// snow one slip takes all.
    TooSteep, "too-steep-to-rope-without-anchors", Grave;
    /// In the fall model this team holds that fall in none of the cases assumed, not even the favourable one. It is
    /// a model's answer for assumed ranges, which are our judgement; nothing was measured on your ground. Take it as a
    /// reason to look for other means than the rope team alone.
    HeldInNone, "fall-held-in-none", Grave;
    /// The team runs along the crevasses: several people can stand over one gap, and no spacing helps.
    /// Walk in echelon (staggered) or take another line.
    Along, "along-the-crevasses", Warning;
    /// The spacing is shorter than the way over a gap, so two people can stand over one at once.
    TwoOverGap, "two-over-one-gap", Warning;
    /// The spacing is close to the greatest one: a slightly wider gap has no set-up.
    NearCap, "spacing-near-limit", Warning;
    /// The rope has little to spare: a slightly wider gap asks for another one.
    NearRope, "rope-near-limit", Warning;
    /// The snow may be too thin for brake knots to bite. They are tied and not to be counted on.
    KnotsDoubtful, "knots-doubtful", Warning;
    /// Nobody said how much snow lies on the ice, so whether brake knots bite is unknown.
    SnowUnknown, "snow-depth-not-given", Warning;
    /// Knots are tied for one part of the leg and do not bite in another.
    KnotsNoBite, "knots-do-not-bite-everywhere", Warning;
    /// One person alone must hold a fall, without brake knots to help.
    PairWithoutKnots, "pair-without-knots", Warning;
    /// The route begins or ends on the ice: the leg is cut off there, and the team is still on rope.
    CutOff, "cut-off-by-route-end", Warning;
    /// The route ends before the last person has left the ice and its margin.
    LastOnIce, "last-person-still-on-ice", Warning;
    /// A spare coil so long or heavy that it hinders who carries it.
    CoilHeavy, "coil-is-a-burden", Note;
    /// From this steepness the avalanche bulletin decides.
    AvalancheTerrain, "avalanche-terrain", Note;
    /// The spare rope reaches a fallen end person, not one in the middle.
    MiddleNotReached, "middle-person-not-reached", Note;
    /// Brake knots and a rope cut into the lip block the loaded strand, so a haul needs its own.
    KnotsBlockHaul, "knots-block-the-loaded-strand", Note;
    /// Those left on the rope cannot pull the fallen person out by any haul that their free rope allows. It rests
    /// on what one person pulls on snow and on turns round karabiners; both can be changed.
    HaulTooWeak, "haul-beyond-those-left", Note;
    /// A figure lies outside what the model of falls or hauls can be asked, so it says nothing about this leg.
    NoAnswer, "model-has-no-answer", Note;
    /// Where every gap is in sight, many teach to go without a rope, because a slip of one pulls all.
    /// Others rope where the ice is badly broken. The plan shows the roped view unless the practice set
    /// or the zone says otherwise.
    BareIce, "bare-ice-two-views", Note;
    /// A strike was given without saying how sure it is, and is taken as exact. Met askew, a few degrees
    /// make the way over a gap a good deal longer.
    StrikeExact, "strike-taken-as-exact", Note;
    /// No heights say how steep the ground is towards the lip, so the fall model takes it as flat. On ground that
    /// falls towards the lip holding is harder than it says. Give a terrain model or a route with heights.
    SlopeUnknown, "slope-unknown", Note;
    /// No direction of the crevasses is known, so they are taken to be crossed squarely.
    StrikeUnknown, "strike-not-given", Note;
    /// A zone in the file that the route does not meet.
    ZoneMissed, "zone-not-met", Note;
    /// The route file gives no heights, so there are no ascents, slopes and times for them.
    NoHeights, "no-heights", Note;
    /// On skis many go unroped in good snow and rope up for danger signs.
    OnSkis, "on-skis", Note;
    /// No rope at hand was named, so the plan says which length to take and checks none.
    NoRopeNamed, "no-rope-named", Note;
    /// The route file holds no track or route with two different points in a row, so there is nothing
    /// to walk. Export the track or the planned route itself, not only its waypoints.
    NoLine, "no-line", Error;
    /// A height in the route file is no finite number. It counts as not given.
    BadHeight, "bad-height", Warning;
    /// The route file keeps positions in extensions where no route point tells which way they go.
    /// They are not part of the line. If the line is in there, export it as a track.
    DetailIgnored, "detail-ignored", Warning;
    /// A planner kept the detailed line between two route points in extensions. It is used.
    DetailUsed, "detail-used", Note;
    /// A track, route or segment of the file is not part of the plan: it has no line, or it is a route
    /// beside tracks (a planner often writes the same line twice).
    PartLeftOut, "part-left-out", Note;
    /// The line ends and goes on elsewhere, as when a receiver was off. The jump is never walked: it adds
    /// no length and crosses nothing. If it was walked, draw the missing piece.
    Jump, "jump", Note;
    /// Two neighbouring points lie unusually far apart. The line is taken as straight between them.
    LongEdge, "long-edge", Note;
    /// A terrain file is damaged: cut off, empty, or its inner tables contradict each other. Nothing is read from it.
    TerrainBroken, "terrain-broken", Error;
    /// A terrain file is whole, but its heights cannot be taken exactly: an unknown coordinate system, coding, unit
    /// or more than one band. The hint is a command that converts it.
    TerrainRefused, "terrain-refused", Error;
    /// What is assumed about a terrain file: its height system, undeclared void cells, cells that hold no height.
    TerrainNote, "terrain-note", Note;
    /// The JSON is whole, but it is not GeoJSON: a member is missing, doubled or of the wrong kind, or a
    /// `type` is misspelt (the words are case-sensitive).
    BadGeojson, "bad-geojson", Error;
    /// The file says that its coordinates are not longitude/latitude on WGS 84. Convert it first; the
    /// command stands in the message.
    ForeignCrs, "foreign-crs", Error;
    /// The coordinates are too large for degrees, so they are metres of a map grid. Convert the file first.
    ProjectedPosition, "projected-position", Error;
    /// The file holds no polygon with an area, so there is no ice to plan for.
    NoZones, "no-zones", Error;
    /// A property that takes one of a few words holds another one.
    BadWord, "bad-word", Error;
    /// The lower end of a range lies above the upper one.
    RangeOrder, "range-order", Error;
    /// A zone says nothing about how wide its gaps are. Give `gap_m` in the file, or say what to assume
    /// with `--gap`; no width is ever assumed silently.
    GapNotGiven, "gap-not-given", Error;
    /// A gap width from `--gap` stands in for zones that give none. The plan is as good as that guess.
    GapAssumed, "gap-assumed", Warning;
    /// Several values or a range were given; the worse one counts: the widest gap, the least snow.
    WorseEnd, "worse-end-counts", Warning;
    /// A property is not known here, but its name is close to one that is. It was not used.
    NearMiss, "near-miss", Warning;
    /// `NaN` or `Infinity`, which are no JSON, in a place that does not matter for the plan: read as null.
    NotANumber, "not-a-number", Warning;
    /// `strike_uncertainty_deg` without `strike_deg` says nothing and was not used.
    StrikeMissing, "strike-missing", Warning;
    /// Polygons whose rings have fewer than three different points cover nothing and were left out.
    NoArea, "no-area", Warning;
    /// Points, lines and features without geometry are no zones and were left out.
    NotAPolygon, "not-a-polygon", Note;
    /// Rings whose last point is not their first were closed with a straight edge.
    RingClosed, "ring-closed", Note;
    /// Rings that touch or cross themselves; everything such a ring winds round counts as ice.
    RingTangled, "ring-tangled", Note;
    /// The route file and the terrain model both give heights; this says how far they differ and which
    /// are used. The steeper of both counts for steepness.
    HeightsCompared, "heights-compared", Note;
    /// The heights of the route file and of the terrain model differ so much that one of them is doubtful:
    /// another height system, a receiver's error, or files of different places.
    HeightsApart, "heights-far-apart", Warning;
    /// The terrain model has no height for a part of the line. Nothing is filled in there.
    TerrainVoid, "terrain-void", Warning;
    /// A model of the ground flattens whatever is shorter than a few of its cells: steps, walls, rolls. No
    /// figure is relaxed because of it.
    TerrainFlattens, "terrain-flattens", Note;
    /// No strike was given, and one is proposed across the fall line of the terrain model. It is assumed,
    /// never known, and never makes a set-up lighter.
    StrikeProposed, "strike-proposed", Note;
    /// The line contours where crevasses are proposed across the fall line, so the team may run along
    /// them. `use_proposed_strike = true` in the trip file lets it count.
    MayRunAlong, "may-run-along", Note;
    /// The ground steepens down the fall line: crevasses prefer convex ground. A hint to look, drawn from
    /// a terrain model; ground without such a mark may be broken as well.
    ConvexGround, "convex-ground", Note;
    /// The glacier inventory has ice here, and no zone says how wide its gaps are. Nothing is planned for it.
    GlacierWithoutZone, "glacier-without-zone", Warning;
    /// Snow bridges weaken through the day, and the planned time on hidden gaps is later than the leader trusts them.
    BridgesLate, "bridges-late", Warning;
}
