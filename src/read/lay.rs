//! Files, trip and flags laid together into a job; all their faults told at once.

use std::borrow::Cow;

use crate::{
    cores,
    fault::{Fault, Item, Noted, Place, code::Code, trip::InTrip},
    limits::InputLimits,
    practice::{GivenBy, Origin, Rule, Rules, set},
    raster::{self, Terrain},
    read::{
        both,
        gathered::Faults,
        geojson::{Given, KnownShapes},
        grid, ice,
        input::{Input, Seekable, Text},
        inventory::{Inventory, apart},
        timed,
        trip::{self, HaltEntry, Laid, StageWord, Trip},
        unlaid,
    },
    trip::{
        halt::Halt, job::Job, language::Language, party::Party, rope::Rope, route::Route,
        zone::Zone,
    },
};

pub use crate::read::{
    alone::{practice, route, terrain, zones},
    ice::zones_near,
    inventory::{glaciers_near, has_index},
};

/// Everything a job can be read from. Only the line and the ice must be there.
///
/// ```
/// use schrund::{plan, read::{input::Input, lay::Sources, trip}};
///
/// let line = br#"<gpx><trk><trkseg><trkpt lat="66.50" lon="2.0"/><trkpt lat="66.52" lon="2.0"/></trkseg></trk></gpx>"#;
/// let ice = br#"{"type": "Feature", "properties": {"gap_m": 4}, "geometry": {"type": "Polygon",
///     "coordinates": [[[1.9, 66.505], [2.1, 66.505], [2.1, 66.51], [1.9, 66.51], [1.9, 66.505]]]}}"#;
/// let file = b"party = [82, 75, 90]\nknots = \"always\"\n[[rope]]\nlength_m = 60";
///
/// let mut sources = Sources::new(
///     Input::text("line.gpx", &line[..]),
///     Input::text("ice.geojson", &ice[..]),
/// );
/// sources.trip = Some(trip::file(Input::text("trip.toml", &file[..])));
/// sources.flags.start = "04:30".parse().ok();
/// let job = sources.job().expect("good files");
///
/// let plan = plan(&job).expect("three people who meet the ice");
/// assert_eq!(plan.legs.iter().filter(|leg| leg.roped).count(), 1);
/// ```
pub struct Sources<'a> {
    /// The line: GPX. Without one the job has no stages, for whoever holds many lines against one set of ice.
    pub route: Option<Input<Text<'a>>>,
    /// The ice: GeoJSON or FlatGeobuf.
    pub zones: Input<Text<'a>>,
    /// The same as a file of which only what lies near the route is read, where it is FlatGeobuf with an index and something
    /// lies there; otherwise `zones` is read.
    pub zones_near: Option<Input<Seekable>>,
    /// A glacier inventory: GeoJSON or FlatGeobuf, read from its beginning to its end.
    pub glaciers: Option<Input<Text<'a>>>,
    /// The same as a file of which only what lies near the route is read, where it is FlatGeobuf with an index. One of the
    /// two is given; this one counts.
    pub glaciers_near: Option<Input<Seekable>>,
    /// Without a line: the zones stand in a file of which nothing is read yet; [`zones_near`] reads what lies near each line.
    pub zones_later: bool,
    /// Without a line: an inventory stands beside the job of which nothing is read yet; [`glaciers_near`] reads what lies near
    /// each line.
    pub glaciers_later: bool,
    /// Terrain models.
    pub terrain: Vec<Input<raster::RasterSource>>,
    /// The same, where they were opened before, with what was noticed then: nothing of `terrain` is opened.
    pub opened: Option<Noted<Terrain>>,
    /// Geometries of zones and inventory that were read before, where they are read again and again.
    pub known: Option<&'a KnownShapes>,
    /// The trip file; see [`super::trip::file`]. Files it asks for are listed by [`Trip::files`], and have to be laid
    /// here: one that is missing is a fault, because the plan would look as if it had been read.
    pub trip: Option<Input<Trip>>,
    /// A practice file, where flags or trip file name one that is not among the embedded sets.
    pub practice: Option<Input<Text<'a>>>,
    /// What is said beside the trip file and wins over it.
    pub flags: Trip,
}

impl<'a> Sources<'a> {
    /// A line and the ice; the rest is still to be filled in, at least who goes.
    #[must_use]
    pub fn new(route: Input<Text<'a>>, zones: Input<Text<'a>>) -> Self {
        Self {
            route: Some(route),
            zones,
            zones_near: None,
            zones_later: false,
            glaciers: None,
            glaciers_near: None,
            glaciers_later: false,
            terrain: Vec::new(),
            opened: None,
            known: None,
            trip: None,
            practice: None,
            flags: Trip::default(),
        }
    }

    /// The ice alone, for many lines.
    #[must_use]
    pub fn of_ice(zones: Input<Text<'a>>) -> Self {
        let mut sources = Self::new(Input::text("", &b""[..]), zones);
        sources.route = None;
        sources
    }

    /// Reads everything and lays trip file and flags over the rules.
    ///
    /// # Errors
    /// Every fault of every input.
    pub fn job(self) -> Result<Job, Vec<Fault>> {
        let mut faults = Faults::default();
        let inventory = self.names_ice();
        let (trip, trip_place) = opened(self.trip);
        let trip = faults.take(trip);
        // Who goes and when may stand in the part that could not be read.
        let (trip_read, by_flag) = (trip.is_some(), self.flags.party.is_some());
        let line = self.route.as_ref().map(|route| route.name.clone());
        let said = Layered {
            flags: self.flags,
            trip: trip.unwrap_or_default(),
            trip_place,
            limits: self.zones.limits,
        }
        .on_a_line(line.is_some());
        faults.0.extend(said.not_laid(&self.terrain, inventory));
        let laid = faults.take(said.laid(self.practice));
        let names = [line.unwrap_or_default(), self.zones.name.clone()];
        let ice = both::IceSources(self.zones, self.zones_near, self.zones_later);
        let ((route, zones), glaciers) = cores::both(
            || both::ice_and_perhaps_a_line(self.route, ice, said.gap(), self.known),
            || Inventory::begun(self.glaciers, self.glaciers_near, self.known),
        );
        let route = faults.take(route);
        let zones = ice::drawn(zones, inventory);
        let zones = faults.take(zones.map_err(|told| grid::named(told, route.as_ref())));
        let terrain = faults.take(self.opened.map_or_else(|| terrain(self.terrain), Ok));
        let glaciers = faults.take(glaciers.near(route.as_ref(), zones.as_ref(), &names));
        let party =
            (trip_read || by_flag).then(|| said.party(laid.as_ref().map(|laid| &laid.rules)));
        let party = party.and_then(|party| faults.take(party));
        let ropes = faults.take(said.ropes());
        let ice = [zones.as_ref(), glaciers.as_ref()];
        faults.check(said.at_odds(route.as_ref(), ice, &names));
        let timed = laid.as_ref().filter(|_| trip_read);
        let halts = faults.take(said.halts(timed, route.as_ref().map(|route| &route.value)));
        match ((laid, route, zones, terrain, glaciers), party, ropes) {
            (
                (Some(laid), Some(route), Some(zones), Some(terrain), Some(glaciers)),
                Some(party),
                Some(ropes),
            ) if faults.0.is_empty() => Ok(Job {
                notices: said.noticed(
                    &party,
                    [route.notes, zones.notes, terrain.notes, glaciers.notes],
                ),
                route: said.staged(route.value)?,
                language: said.language(),
                name: said.trip.name,
                terrain: terrain.value,
                glaciers: glaciers.value,
                has_inventory: inventory,
                zones: zones.value,
                party,
                ropes,
                rules: laid.rules,
                timetable: laid.timetable,
                halts: halts.unwrap_or_default(),
                emergency: said.trip.emergency,
            }),
            _ => Err(unless_assumed(faults.0, trip_read)),
        }
    }

    /// Whether there is ice beside the drawn one.
    fn names_ice(&self) -> bool {
        self.glaciers.is_some() || self.glaciers_near.is_some() || self.glaciers_later
    }
}

/// What to assume of a width that nobody gave may stand in a trip file that could not be read.
fn unless_assumed(mut told: Vec<Fault>, trip_read: bool) -> Vec<Fault> {
    told.retain(|fault| trip_read || fault.kind() != Code::GapNotGiven);
    told
}

fn opened(trip: Option<Input<Trip>>) -> (Result<Trip, Vec<Fault>>, Place) {
    match trip {
        Some(trip) => (trip.source, Place::file(&trip.name)),
        None => (Ok(Trip::default()), Place::file("trip file")),
    }
}

/// Flags over trip file.
struct Layered {
    flags: Trip,
    trip: Trip,
    trip_place: Place,
    limits: InputLimits,
}

impl Layered {
    /// The same; where there is no line, what lies on one is not asked for.
    fn on_a_line(mut self, there_is_one: bool) -> Self {
        if !there_is_one {
            self.trip.halt.clear();
            (self.trip.stage, self.flags.stage) = (None, None);
        }
        self
    }

    /// What to assume of zones that give no width.
    fn gap(&self) -> Result<Given, Fault> {
        let gap_m = self.flags.gap_m.or(self.trip.gap_m);
        let given = Given { gap_m };
        let place = self.place(self.flags.gap_m.is_some());
        given.fault(&place).map_or(Ok(given), Err)
    }

    fn laid(&self, file: Option<Input<Text<'_>>>) -> Result<Laid, Vec<Fault>> {
        let (name, origin) = match (&self.flags.practice, &self.trip.practice) {
            (Some(name), _) => (name.as_str(), Origin::Flag),
            (None, Some(name)) => (name.as_str(), Origin::Trip),
            (None, None) => (set::EMBEDDED[0].0, Origin::Default),
        };
        let place = self.place(origin == Origin::Flag);
        let mut rules = match (file, unlaid::practice(name, &place)) {
            (Some(file), _) => practice(file)?,
            (None, Some(fault)) => return Err(vec![fault]),
            (None, None) => Rules::with_practice(&set::Source::Named(name)).map_err(|faults| {
                let at = place.with_property("practice");
                let here = |fault| Fault {
                    at: at.clone(),
                    ..fault
                };
                faults.into_iter().map(here).collect::<Vec<_>>()
            })?,
        };
        rules.practice_origin = origin;
        rules.given = self.given_by();
        let mut laid = Laid::of(rules);
        let mut faults = Faults::default();
        let (trip, flags) = (&self.trip_place, &Place::item(Item::Flags));
        faults.take(self.trip.lay_over(&mut laid, trip, &Origin::Trip));
        faults.take(self.flags.lay_over(&mut laid, flags, &Origin::Flag));
        match faults.0.is_empty() {
            true => Ok(laid),
            false => Err(faults.0),
        }
    }

    /// Where what a flag or else the trip file says stands.
    fn place(&self, flag: bool) -> Place {
        if flag {
            Place::item(Item::Flags)
        } else {
            self.trip_place.clone()
        }
    }

    /// Faults of terrain models and of an inventory that are named, and that the caller did not lay beside the trip.
    fn not_laid(&self, terrain: &[Input<raster::RasterSource>], glaciers: bool) -> Vec<Fault> {
        let laid: Vec<String> = terrain.iter().map(|model| model.name.clone()).collect();
        let says = |flag: bool| if flag { &self.flags } else { &self.trip };
        let by_flag = !self.flags.terrain.is_empty();
        let mut faults = unlaid::terrain(says(by_flag), &laid, &self.place(by_flag));
        let by_flag = self.flags.glaciers.is_some();
        faults.extend(unlaid::glaciers(
            says(by_flag),
            glaciers,
            &self.place(by_flag),
        ));
        faults
    }

    /// A flag wins over the trip file.
    fn given_by(&self) -> GivenBy {
        let by = |flag: bool| if flag { Origin::Flag } else { Origin::Trip };
        GivenBy {
            party: by(self.flags.party.is_some()),
            ropes: by(self.flags.rope.is_some()),
            terrain: by(!self.flags.terrain.is_empty()),
            gap: by(self.flags.gap_m.is_some()),
        }
    }

    /// The party; where the rules themselves are at fault, the default ones are enough to find its faults.
    fn party(&self, rules: Option<&Rules>) -> Result<Party, Vec<Fault>> {
        let first = set::Source::Named(set::EMBEDDED[0].0);
        let default = || Rules::with_practice(&first).map(Cow::Owned);
        let rules = &*rules.map_or_else(default, |rules| Ok(Cow::Borrowed(rules)))?;
        let given = match self.flags.party(&self.place(true), rules, &self.limits)? {
            Some(party) => Some(party),
            None => self.trip.party(&self.place(false), rules, &self.limits)?,
        };
        let party = given.ok_or_else(|| vec![Fault::new(InTrip::NobodySaid, Place::default())])?;
        let by_flag = !self.flags.teams.is_empty();
        let said = if by_flag { &self.flags } else { &self.trip };
        trip::who::in_teams(party, &said.teams, self.place(by_flag))
    }

    /// What was noticed in the files, and what may be meant otherwise.
    fn noticed(&self, party: &Party, of_files: [Vec<Fault>; 4]) -> Vec<Fault> {
        let place = self.place(self.flags.party.is_some());
        let asked = trip::who::perhaps_pounds(party, place);
        of_files.into_iter().flatten().chain(asked).collect()
    }

    fn ropes(&self) -> Result<Vec<Rope>, Vec<Fault>> {
        if self.flags.rope.is_none() {
            self.trip.ropes(&self.place(false), &self.limits)
        } else {
            self.flags.ropes(&self.place(true), &self.limits)
        }
    }

    /// Which stage is asked for, and where that is said.
    fn language(&self) -> Language {
        let said = self.flags.language.or(self.trip.language);
        said.unwrap_or_default()
    }

    fn stage(&self) -> (Option<&StageWord>, Place) {
        let flag = self.flags.stage.as_ref();
        let place = self.place(flag.is_some());
        (flag.or(self.trip.stage.as_ref()), place)
    }

    fn no_stage(&self, route: &Route) -> Option<Fault> {
        let (word, place) = self.stage();
        word?.missing(route, &place)
    }

    /// A stage that the line has not, and files that would meet if longitude and latitude were exchanged in one of them.
    fn at_odds(
        &self,
        route: Option<&Noted<Route>>,
        [zones, glaciers]: [Option<&Noted<Vec<Zone>>>; 2],
        names: &[String; 2],
    ) -> Vec<Fault> {
        let Some(Noted { value: route, .. }) = route else {
            return Vec::new();
        };
        let known = glaciers.map_or(&[][..], |ice| &ice.value);
        let apart = apart(route, zones, known, names);
        self.no_stage(route).into_iter().chain(apart).collect()
    }

    /// The stage asked for, or all.
    fn staged(&self, route: Route) -> Result<Route, Vec<Fault>> {
        let (word, place) = self.stage();
        match word {
            Some(word) => word.of(route, &place).map_err(|fault| vec![fault]),
            None => Ok(route),
        }
    }

    /// Where the party halts, times without a start told with it; where one stage alone is planned, a halt without a stage is
    /// on that one.
    fn halts(&self, laid: Option<&Laid>, route: Option<&Route>) -> Result<Vec<Halt>, Vec<Fault>> {
        let place = |origin: Origin| self.place(origin == Origin::Flag);
        let mut faults = Faults(
            laid.map(|laid| timed::without_start(&laid.timetable, &place))
                .unwrap_or_default(),
        );
        let Some((laid, route)) = laid.zip(route) else {
            return Err(faults.0);
        };
        faults
            .0
            .extend(timed::start_beyond(&laid.timetable, route, &place));
        let (word, place) = self.stage();
        let asked = word.filter(|word| word.missing(route, &place).is_none());
        let of_stage = |entry: &HaltEntry| HaltEntry {
            stage: entry.stage.clone().or(asked.cloned()),
            ..entry.clone()
        };
        let trip = Trip {
            halt: self.trip.halt.iter().map(of_stage).collect(),
            ..Trip::default()
        };
        let margin_m = laid.rules[Rule::MarginM];
        let halts = faults.take(trip.halts(route, margin_m, &self.trip_place));
        halts.filter(|_| faults.0.is_empty()).ok_or(faults.0)
    }
}
