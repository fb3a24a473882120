//! Zones along the line by kilometre, for whoever has a guidebook and no map: the strip of ground from one kilometre to
//! another, as a feature of a zones file, and the file with one more.

pub mod append;
pub mod asked;
mod feature;

use self::{asked::AskedStretch, feature::FeatureText};
use crate::{
    fault::{Fault, Noted, strip::InStrip},
    geometry::corridor::{area_m2, corridor, stretching},
    meet::Ice,
    trip::{
        route::{Route, Stage, Stretch},
        zone::{Outline, Zone},
    },
};

/// How far a strip reaches to either side where nobody says it, metres: our judgement. Wider than a receiver and a track
/// drawn on a map are off together, narrower than most glaciers.
pub const HALF_WIDTH_M: f64 = 150.0;
/// Least and greatest half width, metres: our judgement. Nobody keeps nearer to a line than ten metres, and a kilometre
/// beside it is another way up the mountain.
pub const HALF_WIDTHS_M: [f64; 2] = [10.0, 1000.0];
/// By which share the half width may be wrong somewhere along a strip. Our judgement.
const MOST_STRETCHED: f64 = 0.05;
/// So far beside what was asked the line may be in its strip without a word, metres: less than a margin. Our judgement.
const ALIKE_M: f64 = 1.0;

/// What a strip is to be.
///
/// ```
/// use schrund::strip::{HALF_WIDTH_M, StripWanted};
///
/// let wanted = StripWanted { typed: vec![("gap_m", "3-5".to_owned())], ..StripWanted::default() };
/// assert_eq!(wanted.half_width_m, HALF_WIDTH_M);
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct StripWanted {
    /// How far it reaches to either side, metres.
    pub half_width_m: f64,
    /// Properties of the zone as they were typed, by their names in a zones file; a property that is not there is not
    /// given.
    pub typed: Vec<(&'static str, String)>,
}

impl Default for StripWanted {
    fn default() -> Self {
        Self {
            half_width_m: HALF_WIDTH_M,
            typed: Vec::new(),
        }
    }
}

/// A zone along the line.
///
/// ```
/// use schrund::strip::{StripWanted, append, asked, strips};
///
/// let route = schrund::example::job()?.route;
/// let wanted = StripWanted { typed: vec![("gap_m", "4".to_owned())], ..StripWanted::default() };
/// let stretch = asked::stretch("0.5-0.9").map_err(|fault| vec![fault])?;
/// let made = strips(&route, &[stretch], &wanted)?;
/// let strip = &made.value[0];
/// assert!(strip.again.is_empty(), "the line is in it from 0.5 to 0.9 km and nowhere else");
/// assert!((strip.area_m2 - 400.0 * 300.0).abs() < 100.0, "a straight line: {}", strip.area_m2);
/// let file = append::to("zones.geojson", None, std::slice::from_ref(strip))?;
/// assert_eq!(file.zones, Some(1));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct LineStrip {
    /// From where to where along its stage.
    pub stretch: Stretch,
    /// How far it reaches to either side, metres.
    pub half_width_m: f64,
    /// Its area, square metres.
    pub area_m2: f64,
    /// Where else the line is in it: on its way back, or past a bend at an end.
    pub again: Vec<Stretch>,
    /// The zone, as the file is read.
    pub zone: Zone,
}

/// The strips from kilometre to kilometre of a line, each a zone with the same properties.
///
/// # Errors
/// Everything that is wrong with what was asked.
pub fn strips(
    route: &Route,
    asked: &[AskedStretch],
    wanted: &StripWanted,
) -> Result<Noted<Vec<LineStrip>>, Vec<Fault>> {
    let mut faults = Vec::new();
    let said = feature::said(&wanted.typed);
    let half_m = half_width(wanted.half_width_m);
    faults.extend(half_m.as_ref().err().cloned());
    // Where it is none, whatever else is wrong is told beside it.
    let half_m = half_m.unwrap_or(HALF_WIDTH_M);
    let drawn: Vec<Result<Drawn<'_>, Fault>> = match route.stages.as_slice() {
        [stage] => asked
            .iter()
            .map(|asked| asked.drawn(stage, half_m))
            .collect(),
        stages => vec![Err(which_stage(stages))],
    };
    let mut made = Vec::new();
    for drawn in drawn {
        match drawn {
            Ok(drawn) => made.push(drawn),
            Err(fault) => faults.push(fault),
        }
    }
    match said {
        Ok(said) if faults.is_empty() => {
            let strips = made
                .into_iter()
                .map(|drawn| drawn.strip(half_m, &said.value));
            Ok(Noted {
                value: strips.collect(),
                notes: said.notes,
            })
        }
        said => {
            faults.extend(said.err().unwrap_or_default());
            Err(faults)
        }
    }
}

fn half_width(half_width_m: f64) -> Result<f64, Fault> {
    let (within_m, [least, most]) = (HALF_WIDTHS_M, HALF_WIDTHS_M);
    if (least..=most).contains(&half_width_m) {
        return Ok(half_width_m);
    }
    let what = InStrip::HalfWidth {
        half_width_m,
        within_m,
    };
    Err(Fault::new(what, asked::flag("--half-width")))
}

fn which_stage(stages: &[Stage]) -> Fault {
    let known = |stage: &Stage| (stage.number, stage.name.clone());
    let has = stages.iter().map(known).collect();
    Fault::new(InStrip::WhichStage { has }, asked::flag("--stage"))
}

/// A strip before anything is said of its ice.
struct Drawn<'s> {
    stage: &'s Stage,
    stretch: Stretch,
    outline: Outline,
}

impl AskedStretch {
    fn drawn<'s>(&self, stage: &'s Stage, half_m: f64) -> Result<Drawn<'s>, Fault> {
        let stretch = self.on(stage)?;
        let lines = stage.line(stretch);
        let stretched = lines.iter().map(|line| stretching(line, half_m));
        if stretched.fold(0.0, f64::max) > MOST_STRETCHED {
            let (found, most) = (self.found.clone(), MOST_STRETCHED);
            return Err(self.fault(InStrip::Stretched { found, most }));
        }
        let outline = corridor(&lines, half_m);
        Ok(Drawn {
            stage,
            stretch,
            outline,
        })
    }
}

impl Drawn<'_> {
    fn strip(self, half_width_m: f64, said: &Zone) -> LineStrip {
        let area_m2 = area_m2(&self.outline);
        let zone = Zone {
            outline: self.outline,
            ..said.clone()
        };
        let ice = Ice::of(std::slice::from_ref(&zone));
        let met = ice
            .contacts(self.stage, 0.0)
            .into_iter()
            .flat_map(|contact| contact.crossings);
        let again = met
            .flat_map(|crossing| beside(crossing, self.stretch))
            .collect();
        LineStrip {
            stretch: self.stretch,
            half_width_m,
            area_m2,
            again,
            zone,
        }
    }
}

impl LineStrip {
    /// The feature of a zones file that it is, on one line.
    #[must_use]
    pub fn feature(&self) -> String {
        FeatureText(&self.zone).to_string()
    }
}

/// What of a crossing lies before and behind a stretch, by more than nobody would notice.
fn beside(crossing: Stretch, stretch: Stretch) -> Vec<Stretch> {
    let before = Stretch {
        from_m: crossing.from_m,
        to_m: crossing.to_m.min(stretch.from_m),
    };
    let behind = Stretch {
        from_m: crossing.from_m.max(stretch.to_m),
        to_m: crossing.to_m,
    };
    let mut beside = vec![before, behind];
    beside.retain(|part| part.length_m() > ALIKE_M);
    beside
}
