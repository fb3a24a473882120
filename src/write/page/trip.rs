//! What a trip can say, with the words and bounds of all that it can change. In JSON.

use serde::Serialize;
use serde_json::Value;

use crate::{
    fault::Fault,
    physics::assumed::Snow,
    plan::Assumption,
    practice::{
        Cover, Figure, Knots, Pace, Reserve, Rules, Travel, UndrawnIce,
        set::{EMBEDDED, Source},
        term::Terms,
    },
    say::{assumption, voice::Voice},
    trip::language::Language,
    write::{FORMATS, Format},
};

/// A trip (its members in JSON) and all that it can say, the figures as these rules have them.
///
/// # Errors
/// Only if a value cannot stand in JSON, which none does.
///
/// ```
/// use schrund::{practice::{Rules, set::Source}, read::trip::trip, write::page::trip::json};
///
/// let said = trip("trip.toml", "party = 3\n")?.json().expect("it can stand in JSON");
/// let rules = Rules::with_practice(&Source::Named("arm-span"))?;
/// let all = json(&said, &rules, Default::default()).expect("it can stand in JSON");
/// let all: serde_json::Value = serde_json::from_str(&all).expect("it is JSON");
/// assert_eq!((&all["trip"]["party"], &all["terms"]["travel"][2]["name"]), (&3.into(), &"ski".into()));
/// let margin = all["figures"].as_array().and_then(|all| all.iter().find(|f| f["name"] == "margin_m"));
/// assert_eq!(margin.map(|f| (&f["value"], &f["standing"])), Some((&20.0.into(), &"our judgement".into())));
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn json(trip: &Value, rules: &Rules, voice: Voice) -> Result<String, serde_json::Error> {
    let figures = rules.figures().map(|figure| TripFigure::of(figure, voice));
    serde_json::to_string(&TripDoor {
        trip,
        terms: TripTerms::said(voice),
        figures: figures.collect(),
        practices: practices(voice).unwrap_or_default(),
        outputs: outputs(),
        snow: rules.choices.snow.value.name(),
    })
}

#[derive(Serialize)]
struct TripDoor<'a> {
    trip: &'a Value,
    terms: TripTerms,
    figures: Vec<TripFigure<'a>>,
    practices: Vec<TripTerm>,
    outputs: Vec<TripOutput>,
    /// What the team stands on where nobody says otherwise.
    snow: &'static str,
}

/// What a plan can be handed out as.
#[derive(Serialize)]
struct TripOutput {
    format: &'static str,
    file: &'static str,
    media_type: &'static str,
}

fn outputs() -> Vec<TripOutput> {
    let output = |format: &dyn Format| {
        Some(TripOutput {
            format: format.name(),
            file: format.file()?,
            media_type: format.media_type(),
        })
    };
    FORMATS.into_iter().filter_map(output).collect()
}

/// The words of each member that is a choice.
#[derive(Serialize)]
struct TripTerms {
    language: Vec<TripTerm>,
    travel: Vec<TripTerm>,
    knots: Vec<TripTerm>,
    reserve: Vec<TripTerm>,
    cover: Vec<TripTerm>,
    undrawn_ice: Vec<TripTerm>,
    pace: Vec<TripTerm>,
    snow: Vec<TripTerm>,
}

#[derive(Serialize)]
struct TripTerm {
    name: String,
    means: String,
}

impl TripTerms {
    fn said(voice: Voice) -> Self {
        Self {
            language: terms::<Language>("language", voice),
            travel: terms::<Travel>("travel", voice),
            knots: terms::<Knots>("knots", voice),
            reserve: terms::<Reserve>("reserve", voice),
            cover: terms::<Cover>("cover", voice),
            undrawn_ice: terms::<UndrawnIce>("undrawn_ice", voice),
            pace: terms::<Pace>("pace", voice),
            snow: terms::<Snow>("snow", voice),
        }
    }
}

/// The English words stand beside the terms; another language has them under `says-`, the member and the name.
fn terms<T: Terms>(member: &str, voice: Voice) -> Vec<TripTerm> {
    let term = |term: &crate::practice::term::Term<T>| {
        let own = own(&format!("says-{member}-{}", term.name), voice);
        TripTerm {
            name: term.name.to_owned(),
            means: own.unwrap_or_else(|| term.means.trim().to_owned()),
        }
    };
    T::TERMS.iter().map(term).collect()
}

/// What a language says itself of something that is said in English beside the figures.
fn own(key: &str, voice: Voice) -> Option<String> {
    voice.knows(key).then(|| voice.say(key, &[]).to_string())
}

/// The embedded sets, in the English words of their files; another language has them under `says-practice-`.
fn practices(voice: Voice) -> Result<Vec<TripTerm>, Vec<Fault>> {
    let set = |(name, _): &(&str, &str)| {
        let set = Source::Named(name).read()?;
        Ok(TripTerm {
            means: own(&format!("says-practice-{}", set.name), voice).unwrap_or(set.says),
            name: set.name,
        })
    };
    EMBEDDED.iter().map(set).collect()
}

/// A figure that a trip may set otherwise under `assume`.
#[derive(Serialize)]
struct TripFigure<'a> {
    name: &'static str,
    says: String,
    unit: &'a str,
    value: f64,
    least: f64,
    most: f64,
    standing: String,
}

impl<'a> TripFigure<'a> {
    fn of(figure: &'a Figure, voice: Voice) -> Self {
        let listed = Assumption {
            name: figure.rule.name().to_owned(),
            says: figure.says.clone(),
            value: figure.value.into(),
            unit: figure.unit.clone(),
            standing: figure.standing_shown(),
            origin: figure.origin,
        };
        Self {
            name: figure.rule.name(),
            says: assumption::says(&listed, voice).to_string(),
            unit: &figure.unit,
            value: figure.value,
            least: figure.min,
            most: figure.max,
            standing: assumption::standing(&listed, voice).to_string(),
        }
    }
}
