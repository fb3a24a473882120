//! The closed list of codes, each with its level and its explanation.

use serde::{Serialize, Serializer};

/// How much a complaint matters.
///
/// ```
/// use schrund::fault::{Code, Level};
///
/// let met = [Code::Jump, Code::GapAssumed, Code::LongEdge];
/// let worst = met.iter().map(|code| code.level()).min();
/// assert_eq!(worst, Some(Level::Look), "the gravest stands first, so it is the least");
/// ```
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, schemars::JsonSchema,
)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// An input is wrong; nothing is planned from it.
    Error,
    /// Planned, and roping together is not the answer there.
    Stop,
    /// Planned, and no set-up within the limits or no rope holds it.
    Outside,
    /// Planned, and there is something to decide or to watch.
    Look,
    /// Worth knowing.
    Note,
}

macro_rules! codes {
    ($($(#[doc = $doc:literal])+ $variant:ident, $name:literal, $level:ident;)+) => {
        /// Every kind of fault and finding there is. The doc comment of each is what `check --explain` prints.
        ///
        /// ```
        /// use schrund::fault::{Code, Level};
        ///
        /// let named = |name| Code::ALL.iter().copied().find(|code| code.as_str() == name);
        /// assert_eq!(named("no-zone-met"), Some(Code::NoZoneMet));
        /// assert_eq!(Code::NoZoneMet.level(), Level::Error);
        /// assert!(Code::NoZoneMet.explain().contains("would look like an all-clear"));
        /// ```
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
            pub fn explain(self) -> String {
                told(match self { $(Self::$variant => concat!($($doc, "\n",)+),)+ })
            }
        }
    };
}

codes! {
    /// The call was not understood: a command, a flag or a value that there is not, or something that must be given is
    /// missing. `schrund help plan` lists what a plan takes.
    ///
    /// What to do: write what the line after `do:` says; `schrund help plan` shows every flag with examples.
    Usage, "usage", Error;
    /// The file, address or standard input could not be read at all.
    ///
    /// What to do: check the name and the folder; a file that is there must be one that you may read.
    Unreadable, "unreadable", Error;
    /// A file or folder could not be written: no permission, no room, or no such folder.
    ///
    /// What to do: name a file or folder where you may write and where there is room.
    Unwritable, "unwritable", Error;
    /// An address could not be fetched: no connection, a refusal, a time-out, or too much of it.
    ///
    /// What to do: check the address and the connection, or download the file and name it.
    Network, "network", Error;
    /// A file to be written is there already, or is one of the inputs.
    ///
    /// What to do: name another file or folder; `--force` replaces files that are no input.
    WouldOverwrite, "would-overwrite", Error;
    /// The file is not what its place on the command line calls for, or two files stand in each other's place.
    ///
    /// What to do: give the route first (GPX), the zones second (GeoJSON), and every other file by its flag.
    WrongKind, "wrong-kind", Error;
    /// The text is broken: the XML, JSON or TOML ends early or does not parse.
    ///
    /// What to do: mend the place that is named; where the file was cut off, save or download it again.
    BrokenText, "broken-text", Error;
    /// A number is missing, malformed, not finite or outside what it can be.
    ///
    /// What to do: write a plain number in the unit and within the bounds that are named.
    BadNumber, "bad-number", Error;
    /// A longitude or latitude lies outside its range, is no number, or stands in the place of the other.
    ///
    /// What to do: write longitude and latitude in degrees: GeoJSON holds [longitude, latitude], GPX has `lat` and
    /// `lon`. Where the two are exchanged, export the file again with each in its place.
    BadPosition, "bad-position", Error;
    /// A name holds a NUL character. Many programs end a text there, and no XML can hold one, so the name could not be
    /// handed on. It is mostly a sign of a damaged file.
    ///
    /// What to do: write the name without that character, or save the file again.
    BadName, "bad-name", Error;
    /// A name was given that does not exist: a practice set, a figure, a stage.
    ///
    /// What to do: use one of the names that are listed; `schrund practice` lists the sets, and every plan lists its
    /// figures under `assumptions`.
    UnknownName, "unknown-name", Error;
    /// The trip file or a flag gives something that cannot be: a party of none, a rope without length.
    ///
    /// What to do: write what the line after `do:` says; `schrund new tour` writes a trip file to fill in, `schrund
    /// schema trip` tells all that it can hold.
    BadTrip, "bad-trip", Error;
    /// A practice file lacks something that every set says, or says it in a form that it does not take.
    ///
    /// What to do: `schrund practice arm-span --toml` prints a whole practice file to begin from.
    BadPractice, "bad-practice", Error;
    /// A practice set must give the spacing for 2, 3, 4 and 5 people.
    ///
    /// What to do: give the figures that are named, each with its standing; `schrund practice arm-span --toml` shows
    /// how they stand in a file.
    MissingFigure, "missing-figure", Error;
    /// One person on a glacier cannot be held and cannot be pulled out. Nobody goes alone.
    ///
    /// What to do: take at least one partner.
    Alone, "alone", Error;
    /// Everybody weighs so much, by the masses that were given, that these may be pounds. They count as kilograms, as
    /// given.
    ///
    /// What to do: give the masses with pack in kg, as the line after `do:` has them; nothing, where they are kg.
    Pounds, "perhaps-pounds", Look;
    /// No zone is met by the route. Either the files belong to different places, or longitude and latitude are swapped
    /// in one of them. A plan without a roped leg would look like an all-clear.
    ///
    /// What to do: give the line and the ice of the same place; where the nearest zone lies, and how far off, is told. A
    /// line that only misses the zones may lack ice that nobody drew.
    NoZoneMet, "no-zone-met", Error;
    /// Outlines of the glacier inventory give gap widths. An inventory only says where ice is: its widths are not used, and
    /// where no zone is drawn on its ice the gaps stay unknown.
    ///
    /// What to do: give what tells of gaps as the zones, and as the inventory outlines of all the ice.
    InventoryGaps, "inventory-gaps", Look;
    /// Of a zones file with an index what lies near the line was read, and nothing else: what is wrong with zones elsewhere is
    /// not told, and they are not in the plan.
    ///
    /// What to do: nothing, unless all zones are to be checked: save the file as GeoJSON, which is read whole.
    FarZones, "far-zones", Note;
    /// The route file holds no track or route with two different points in a row, so there is nothing to walk.
    ///
    /// What to do: export the track or the planned route itself, not only its waypoints.
    NoLine, "no-line", Error;
    /// A height in the route file is no finite number, or lies outside -500 to 9000 m, where nobody walks: devices and
    /// programs write such numbers where they know none. It counts as not given.
    ///
    /// What to do: nothing, where a terrain model gives the heights (`--terrain`); else export the route again with its
    /// heights.
    BadHeight, "bad-height", Look;
    /// The route file keeps positions in extensions where no route point tells which way they go. They are not part of
    /// the line.
    ///
    /// What to do: look at the line on a map; if it lacks what you planned, export the route as a track.
    DetailIgnored, "detail-ignored", Look;
    /// A planner kept the detailed line between two route points in extensions. It is used.
    ///
    /// What to do: nothing.
    DetailUsed, "detail-used", Note;
    /// A track, route or segment of the file is not part of the plan: it has no line, or it is a route
    /// beside tracks (a planner often writes the same line twice).
    ///
    /// What to do: nothing, if it is not the line that you mean; else take the others out of the file.
    PartLeftOut, "part-left-out", Note;
    /// The line ends and goes on elsewhere, as when a receiver was off. The jump is never walked: it adds
    /// no length and crosses nothing.
    ///
    /// What to do: nothing where nobody walks, as on a lift; else draw the missing piece.
    Jump, "jump", Note;
    /// Two neighbouring points lie many kilometres apart in a line that is drawn finely elsewhere: a receiver was off,
    /// or somebody took a lift. The line is taken as straight between them, over whatever lies there.
    ///
    /// What to do: look at the line there: take the lone point out, or draw the line as it is walked.
    LongEdge, "long-edge", Look;
    /// One point lies far off the line and the next one is back on it, as when a receiver loses its fix. It is walked
    /// as it stands: it makes the line longer and may touch or miss ice.
    ///
    /// What to do: take the point out of the file, unless the line does go there.
    LonePoint, "lone-point", Look;
    /// One height lies far above or below those of its neighbours, steeper than anybody walks. It counts as it stands,
    /// in climbs, times and slopes.
    ///
    /// What to do: take the height out of the file or write the right one; a terrain model (`--terrain`) shows what it
    /// should be.
    LoneHeight, "lone-height", Look;
    /// A point at longitude 0, latitude 0, far from the rest of the line: what devices write without a fix.
    ///
    /// What to do: take the point out of the file.
    ZeroPoint, "zero-point", Look;
    /// A longitude lies beyond 180 degrees by no more than a thousandth, as programs write that round or project. It is
    /// taken as 180 degrees.
    ///
    /// What to do: nothing.
    LongitudeTakenBack, "longitude-taken-back", Note;
    /// A terrain file is damaged: cut off, empty, or its inner tables contradict each other. Nothing is read from it.
    ///
    /// What to do: fetch or copy the file again; `gdalinfo -checksum` on it shows whether it is whole.
    TerrainBroken, "terrain-broken", Error;
    /// A terrain file is whole, but its heights cannot be taken exactly: an unknown coordinate system, coding, unit or
    /// more than one band; or it is no terrain model at all.
    ///
    /// What to do: what the line after `do:` says: convert it by the command that stands there, or give another file.
    TerrainRefused, "terrain-refused", Error;
    /// What is assumed about a terrain file: its height system, undeclared void cells, cells that hold no height.
    ///
    /// What to do: nothing, where what is assumed is right.
    TerrainNote, "terrain-note", Note;
    /// The JSON is whole, but it is not GeoJSON: a member is missing, doubled or of the wrong kind, or a `type` is
    /// misspelt (the words are case-sensitive).
    ///
    /// What to do: mend the member that is named, or save the zones again as GeoJSON in the map editor.
    BadGeojson, "bad-geojson", Error;
    /// A FlatGeobuf file is damaged: cut off, or what it says of itself contradicts its bytes. Nothing is planned from it.
    ///
    /// What to do: fetch or copy the file again, or save it again from the map editor.
    BrokenFlatgeobuf, "broken-flatgeobuf", Error;
    /// The outline of a feature is made of curves or of surfaces in space. Only polygons with straight edges are read, and to
    /// leave it out could lose ice.
    ///
    /// What to do: convert the file to polygons by the command that is named.
    CurvedOutline, "curved-outline", Error;
    /// The file says that its coordinates are not longitude/latitude on WGS 84.
    ///
    /// What to do: save the zones again from the map editor with WGS 84 (EPSG:4326) as their coordinate system, or
    /// convert the file by the command that is named.
    ForeignCrs, "foreign-crs", Error;
    /// The coordinates are too large for degrees, so they are metres of a map grid.
    ///
    /// What to do: save the zones again from the map editor with WGS 84 (EPSG:4326) as their coordinate system, or
    /// convert the file by the command that is named.
    ProjectedPosition, "projected-position", Error;
    /// The file holds no polygon with an area, so there is no ice to plan for.
    ///
    /// What to do: draw the broken ice as polygons and give each a `gap_m`; `schrund new tour` writes an empty file to
    /// draw in.
    NoZones, "no-zones", Error;
    /// A property that takes one of a few words holds another one.
    ///
    /// What to do: write one of the words that are listed.
    BadWord, "bad-word", Error;
    /// The lower end of a range lies above the upper one.
    ///
    /// What to do: write the smaller number first, or exchange the two.
    RangeOrder, "range-order", Error;
    /// A zone says nothing about how wide its gaps are. No width is ever assumed silently.
    ///
    /// What to do: write `gap_m`, the width of the widest gap expected in metres, into the file, or say what to assume
    /// with `gap_m` of the trip file or `--gap`.
    GapNotGiven, "gap-not-given", Error;
    /// A gap width from the trip or `--gap` stands in for zones that give none. The plan is as good as that guess.
    ///
    /// What to do: write what you expect of each zone into the file as `gap_m`, and look on the spot whether gaps are
    /// wider.
    GapAssumed, "gap-assumed", Look;
    /// Several values or a range were given; the worse one counts: the widest gap, the least snow.
    ///
    /// What to do: nothing, if the worse one is meant; else write the one number that you expect.
    WorseEnd, "worse-end-counts", Look;
    /// A gap width is given that is narrower than a hand is wide. It counts as metres, as given.
    ///
    /// What to do: give it in metres: 25 mm are no gap, 25 m are `25`; nothing, where it is meant so.
    NarrowGap, "perhaps-no-metres", Look;
    /// A property is not known here, but its name is close to one that is. It was not used.
    ///
    /// What to do: rename the property as is said, if it is meant.
    NearMiss, "near-miss", Look;
    /// `NaN` or `Infinity`, which are no JSON, in a place that does not matter for the plan: read as null.
    ///
    /// What to do: nothing for this plan; write `null` there, so that other programs can read the file.
    NotANumber, "not-a-number", Look;
    /// `strike_uncertainty_deg` without `strike_deg` says nothing and was not used.
    ///
    /// What to do: give `strike_deg`, the direction in which the gaps run, or take the other one out.
    StrikeMissing, "strike-missing", Look;
    /// Polygons whose rings have fewer than three different points cover nothing and were left out.
    ///
    /// What to do: draw these polygons again, if there is ice that they were to show.
    NoArea, "no-area", Look;
    /// The first ring of a polygon is its outer one and the others are holes in it. Here a ring lies elsewhere: the
    /// largest ring that holds another was taken as the outer one, a hole was cut out only where it lies in that, and
    /// all the rest counts as ice.
    ///
    /// What to do: look at the polygon in a map editor, and draw each piece of ice as a polygon of its own.
    RingsMisnested, "rings-misnested", Look;
    /// A point, a line or a feature without geometry says how wide gaps are, how deep the snow is, how crevasses run or
    /// whether to rope up, as ice does. Only polygons are zones: nothing is planned for it, and no rope.
    ///
    /// What to do: draw the outline of that ice as a polygon; if it is none, take the property out.
    IceUndrawn, "ice-not-drawn", Look;
    /// Points, lines and features without geometry are no zones and were left out.
    ///
    /// What to do: nothing, where none of them was meant as ice; else draw that as a polygon.
    NotAPolygon, "not-a-polygon", Note;
    /// Rings whose last point is not their first were closed with a straight edge.
    ///
    /// What to do: nothing, where the straight edge is right; else draw the ring to its end.
    RingClosed, "ring-closed", Note;
    /// Rings that touch or cross themselves; everything such a ring winds round counts as ice.
    ///
    /// What to do: nothing, where all of it is ice; else draw the polygon again without the crossing.
    RingTangled, "ring-tangled", Note;
}

/// A doc comment as it is shown: its lines without the space that each begins with.
pub(crate) fn told(doc: &str) -> String {
    let lines: Vec<&str> = doc.lines().map(str::trim).collect();
    lines.join("\n")
}

impl Serialize for Code {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.as_str())
    }
}
