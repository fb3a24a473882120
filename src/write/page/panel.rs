//! A plan as a page shows it: facts for its map, and the parts of its panel in the report's own words. In JSON.

use maud::html;
use serde::Serialize;

use crate::{
    fault::{Fault, Item, place::Place},
    geometry::LonLat,
    ground::profile::Profile,
    plan::{Plan, ZoneSummary, fact::Fact, finding::Finding, leg::Leg, verdict::Verdict},
    say::{self, span::Said, voice::Voice},
    trip::route::Stage,
    write::{
        geojson::form::{mm, position, positions},
        page::hours::{PanelHour, PanelPlace, hours, walk},
        parts::{
            change::{self, ChangePoint},
            clock::belays,
            look::{self, LookPoint},
            popup,
            row::{self, TeamRow},
            sentence,
        },
        report::{self, drawn::LegLine, markup::spans},
        sheet::Sheet,
    },
};

/// The plan, as JSON. Of the scene it shows the profiles; of the parts of the report, and of its drawn ropes, those that are
/// open.
///
/// # Errors
/// Only if a value cannot stand in JSON, which no plan holds.
///
/// ```
/// use schrund::{Planner, write::{Sheet, page::panel}};
///
/// let job = schrund::example::pair()?;
/// let planner = Planner::new(&job)?;
/// let plan = planner.plan()?;
/// let scene = planner.profiles();
/// let open = ["field".to_owned()];
/// let json = panel::planned(&Sheet::of(&job, &plan, &scene), &job.notices, &open).expect("it can stand in JSON");
/// let panel: serde_json::Value = serde_json::from_str(&json).expect("it is JSON");
/// assert_eq!(panel["legs"].as_array().map(Vec::len), Some(plan.legs.len()));
/// assert_eq!(panel["verdict"], plan.verdict().as_str());
/// let parts = panel["parts"].as_array().expect("parts");
/// let written: Vec<_> = parts.iter().filter(|part| part["html"].is_string()).map(|part| &part["id"]).collect();
/// assert_eq!(written, ["field"]);
/// assert!(panel["head"].as_str().is_some_and(|head| head.contains("Stop: leg 2")), "{}", panel["head"]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn planned(
    sheet: &Sheet<'_>,
    notices: &[Fault],
    open: &[String],
) -> Result<String, serde_json::Error> {
    let is_open = |id: &str| open.iter().any(|open| open == id);
    let (plan, voice) = (sheet.plan, sheet.look.voice);
    let changes = change::changes(sheet);
    let looks = look::looks(sheet);
    let met = plan.zones_met();
    let zones = sheet.zones.iter().zip(&plan.zones);
    let profiles = sheet.route.stages.iter().zip(&sheet.scene.profiles);
    serde_json::to_string(&Planned {
        faults: [],
        verdict: plan.verdict().as_str(),
        title: sheet.title().to_string(),
        notices: told(notices, voice),
        head: report::sheet::first(sheet).into_string(),
        reading: markup(&reading(plan, voice)),
        hours: hours(plan, voice),
        legs: plan
            .legs
            .iter()
            .map(|leg| PanelLeg::of(leg, sheet))
            .collect(),
        zones: zones
            .map(|(zone, summary)| PanelZone::of(zone.feature, summary, &met))
            .collect(),
        changes: changes.iter().map(|c| PanelChange::of(c, voice)).collect(),
        looks: looks.iter().map(|l| PanelLook::of(l, voice)).collect(),
        ropes: is_open(ROPES)
            .then(|| report::rope::each(&plan.legs, voice))
            .into_iter()
            .flatten()
            .map(|(legs, rope)| PanelRope {
                legs,
                html: rope.into_string(),
            })
            .collect(),
        parts: report::parts(sheet)
            .into_iter()
            .map(|part| PanelPart {
                html: is_open(part.id).then(|| part.body().into_string()),
                id: part.id,
                title: part.title,
            })
            .collect(),
        profiles: profiles
            .map(|(stage, profile)| PanelProfile::of(stage, profile))
            .collect(),
    })
}

/// The part with the drawn ropes; where it is open, those of the legs are written too.
const ROPES: &str = "ropes";

/// Why there is no plan, as JSON.
///
/// # Errors
/// Only if a value cannot stand in JSON, which no fault holds.
///
/// ```
/// use schrund::{fault::{Fault, Place, trip::InTrip}, write::page::panel};
///
/// let fault = Fault::new(InTrip::NobodySaid, Place::default());
/// let json = panel::refused(&[fault], Default::default()).expect("it can stand in JSON");
/// assert!(json.contains(r#""code":"bad-trip""#), "{json}");
/// ```
pub fn refused(faults: &[Fault], voice: Voice) -> Result<String, serde_json::Error> {
    serde_json::to_string(&Refused {
        faults: told(faults, voice),
    })
}

#[derive(Serialize)]
struct Refused<'a> {
    faults: Vec<PanelFault<'a>>,
}

#[derive(Serialize)]
struct Planned<'a> {
    faults: [(); 0],
    verdict: &'static str,
    title: String,
    notices: Vec<PanelFault<'a>>,
    head: String,
    reading: String,
    hours: Vec<PanelHour>,
    legs: Vec<PanelLeg>,
    zones: Vec<PanelZone<'a>>,
    changes: Vec<PanelChange>,
    looks: Vec<PanelLook>,
    ropes: Vec<PanelRope>,
    parts: Vec<PanelPart>,
    profiles: Vec<PanelProfile>,
}

#[derive(Serialize)]
struct PanelFault<'a> {
    code: &'static str,
    file: Option<&'a str>,
    feature: Option<usize>,
    property: Option<&'a str>,
    says: String,
    hint: Option<String>,
}

fn told(faults: &[Fault], voice: Voice) -> Vec<PanelFault<'_>> {
    let told = |fault| PanelFault::of(fault, voice);
    faults.iter().map(told).collect()
}

impl<'a> PanelFault<'a> {
    fn of(fault: &'a Fault, voice: Voice) -> Self {
        let Place { file, item, .. } = &fault.at;
        let feature = match item {
            Some(Item::Feature { number, .. }) => Some(*number),
            _ => None,
        };
        Self {
            code: fault.code(),
            file: file.as_deref(),
            feature,
            property: fault.at.property.as_deref(),
            says: markup(&say::fault::says(fault, voice)),
            hint: say::fault::hint(fault, voice).map(|hint| markup(&hint)),
        }
    }
}

#[derive(Serialize)]
struct PanelLeg {
    leg: usize,
    stage: usize,
    roped: bool,
    verdict: &'static str,
    /// Whether a frozen crust stops the team there.
    frozen_stop: bool,
    /// Whether its bridges are weak at any hour.
    weak_bridges: bool,
    start_m: f64,
    end_m: f64,
    from_to: String,
    title: String,
    told: String,
    act: String,
    /// How many belays are reckoned with; empty where none is asked for.
    belays: String,
    /// How it is walked by who comes back over it, where the rope is too short as it is planned; else empty.
    back: String,
    /// Loops and hauls after a fall; empty where nobody is roped.
    rescue: String,
    walk: Vec<PanelPlace>,
    pieces: Vec<Piece>,
    figures: Vec<LegFigure>,
}

#[derive(Serialize)]
struct Piece {
    verdict: &'static str,
    from_m: f64,
    to_m: f64,
    lines: Vec<Vec<[f64; 2]>>,
}

/// A figure of a set-up as it is shown.
#[derive(Serialize)]
struct LegFigure {
    id: String,
    value: String,
}

impl PanelLeg {
    fn of(leg: &Leg, sheet: &Sheet<'_>) -> Self {
        let voice = sheet.look.voice;
        let falls_on = sheet.plan.falls_on.as_ref();
        let if_frozen = falls_on.and_then(|on| on.if_frozen.as_ref());
        let lines = LegLine::new(sheet.route, leg).pieces;
        let pieces = leg.pieces().into_iter().zip(lines);
        let soft = |found: &Finding| matches!(found.fact(), Some(Fact::BridgesSoft {}));
        let piece = |(piece, (verdict, lines)): (_, (Verdict, Vec<Vec<LonLat>>))| {
            let piece: crate::plan::pieces::WordPiece = piece;
            Piece {
                verdict: verdict.as_str(),
                from_m: mm(piece.from_m),
                to_m: mm(piece.to_m),
                lines: lines.iter().map(|line| positions(line)).collect(),
            }
        };
        Self {
            leg: leg.leg,
            stage: leg.stage,
            roped: leg.roped,
            verdict: leg.verdict.as_str(),
            frozen_stop: if_frozen.is_some_and(|frozen| frozen.stop.contains(&leg.leg)),
            weak_bridges: leg.findings.iter().any(soft),
            start_m: mm(leg.start_m),
            end_m: mm(leg.end_m),
            from_to: row::from_to(leg, voice),
            title: markup(&popup::leg_title(leg, voice)),
            told: popup::leg_paragraphs(leg, voice)
                .iter()
                .map(|says| html! { p { (spans(says)) } }.into_string())
                .collect(),
            act: popup::leg_act(leg, voice)
                .map(|act| markup(&act))
                .unwrap_or_default(),
            belays: leg.belays.as_ref().map_or_else(String::new, |asked| {
                let many = belays::many(asked.belays, asked.minutes, voice);
                markup(&many.capital().then("."))
            }),
            back: popup::leg_back(leg, voice)
                .map(|back| markup(&back))
                .unwrap_or_default(),
            rescue: report::sheet::rescue(leg, sheet).into_string(),
            walk: walk(leg, sheet.plan),
            pieces: pieces.map(piece).collect(),
            figures: leg
                .teams
                .iter()
                .flat_map(|t| figures(&TeamRow::new(t, voice)))
                .collect(),
        }
    }
}

/// What a page marks when it changes, each team's own.
fn figures(team: &TeamRow<'_>) -> Vec<LegFigure> {
    let each = [
        ("spacing", &team.spacing),
        ("knots", &team.knots),
        ("coils", &team.coils),
        ("rope", &team.rope()),
    ];
    let figure = |(name, value): (&str, &String)| LegFigure {
        id: format!("{}-{name}", team.setup.team),
        value: value.clone(),
    };
    each.into_iter().map(figure).collect()
}

#[derive(Serialize)]
struct PanelZone<'a> {
    zone: usize,
    feature: usize,
    met: bool,
    name: Option<&'a str>,
    gap_m: f64,
    gap_assumed: bool,
    strike_deg: Option<f64>,
    crossings: &'a [crate::plan::CrossingSummary],
}

impl<'a> PanelZone<'a> {
    fn of(feature: usize, zone: &'a ZoneSummary, met: &[usize]) -> Self {
        Self {
            zone: zone.zone,
            feature,
            met: met.binary_search(&zone.zone).is_ok(),
            name: zone.name.as_deref(),
            gap_m: zone.gap_m,
            gap_assumed: zone.gap_assumed,
            strike_deg: zone.strike_deg,
            crossings: &zone.crossings,
        }
    }
}

#[derive(Serialize)]
struct PanelChange {
    letter: String,
    at: [f64; 2],
    stage: usize,
    at_m: f64,
    title: String,
    told: String,
}

impl PanelChange {
    fn of(change: &ChangePoint<'_>, voice: Voice) -> Self {
        Self {
            letter: change.letter(),
            at: change.at,
            stage: change.stage,
            at_m: mm(change.at_m),
            title: markup(&change.title(voice)),
            told: markup(&change.told(voice)),
        }
    }
}

#[derive(Serialize)]
struct PanelLook {
    at: [f64; 2],
    verdict: &'static str,
    leg: usize,
    title: String,
    told: String,
}

impl PanelLook {
    fn of(look: &LookPoint<'_>, voice: Voice) -> Self {
        let word = if look.stops() {
            Verdict::Stop
        } else {
            Verdict::Look
        };
        Self {
            at: position(look.at),
            verdict: word.as_str(),
            leg: look.leg.leg,
            title: markup(&look.title(voice)),
            told: markup(&look.description(voice)),
        }
    }
}

#[derive(Serialize)]
struct PanelRope {
    legs: Vec<usize>,
    html: String,
}

#[derive(Serialize)]
struct PanelPart {
    id: &'static str,
    title: String,
    html: Option<String>,
}

#[derive(Serialize)]
struct PanelProfile {
    stage: usize,
    samples: Vec<(f64, Option<f64>)>,
}

impl PanelProfile {
    /// Between two runs stands a break.
    fn of(stage: &Stage, profile: &Profile) -> Self {
        let mut samples = Vec::new();
        for run in profile.runs() {
            if let Some((at_m, _)) = samples.last().copied() {
                samples.push((at_m, None));
            }
            samples.extend(run.iter().map(|s| (mm(s.at_m), Some(mm(s.height_m)))));
        }
        Self {
            stage: stage.number,
            samples,
        }
    }
}

/// How the words of the legs that nobody is warned of are to be read.
fn reading(plan: &Plan, voice: Voice) -> Said {
    let inside = sentence::of_inside(plan, voice);
    let all = inside.into_iter().chain(sentence::of_unroped(plan, voice));
    Said::join(all, " ")
}

fn markup(says: &Said) -> String {
    spans(says).into_string()
}
