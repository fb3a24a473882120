//! Each different set-up once, for people who were not there when it was planned: who where, what to tie, what is not
//! covered.

use crate::{
    plan::{
        Assumption, Plan,
        fall::{Arrest, CanPull, FallReserve, HaulTable, Held},
        leg::{Bite, Leg, Mark, MarkKind, PersonOnRope, TeamSetup},
    },
    practice::Origin,
    rope::{haul, marks::called},
};
use crate::{
    say::{
        units::{Side, Units},
        words::{self, capital},
    },
    write::{Sheet, paragraph::bullet, rope_line},
};

/// Columns for what a line is about.
const LABEL: usize = 12;

/// A label and what is said under it.
type Line = (&'static str, String);

/// Legs set up alike, with one of their set-ups.
struct Alike<'a> {
    legs: Vec<usize>,
    setup: &'a TeamSetup,
    lines: Vec<Line>,
    /// What differs from leg to leg, with the legs it holds for.
    of_legs: Vec<(Line, Vec<usize>)>,
}

/// A block for each different set-up, the legs that share it named together.
pub(super) fn blocks(out: &mut String, sheet: &Sheet<'_>, width: usize, units: Units) {
    let taken = Taken::of(sheet.plan);
    let alike = alike(&sheet.plan.legs, taken, units);
    if alike.is_empty() {
        return;
    }
    out.push_str("\nSet-ups\n");
    let modelled = alike.iter().any(|a| a.setup.arrest.is_some());
    let teams = alike.iter().any(|a| a.setup.team > 1);
    for block in alike {
        let title = title(&block, teams, units);
        bullet(out, "  ", &title, width);
        let drawn = rope_line::drawn(block.setup, units, width.saturating_sub(LABEL + 2).max(20));
        for (i, line) in drawn.iter().enumerate() {
            let label = if i == 0 { "rope" } else { "" };
            out.push_str(&format!("    {label:<10}{line}\n"));
        }
        for (label, text) in block.lines.iter().chain(&block.of_legs()) {
            bullet(out, &format!("    {label:<10}"), text, width);
        }
    }
    bullet(
        out,
        "  ",
        &format!("In the drawings: {}.", rope_line::LEGEND),
        width,
    );
    if modelled {
        bullet(out, "  ", MODEL, width);
    }
}

/// What the answers about falls and hauls are worth.
const MODEL: &str = "Falls and hauls: a model's answer for assumed ranges, our judgement.";

/// What of the plan's assumptions is said with each set-up.
#[derive(Clone, Copy, Debug, Default)]
struct Taken {
    /// Nobody said what snow there is.
    snow_by_default: bool,
    /// Rope that hands and hitches take in a haul, metres.
    hands_m: Option<f64>,
}

impl Taken {
    fn of(plan: &Plan) -> Self {
        let find = |name: &str| plan.assumptions.iter().find(|a| a.name == name);
        let by_default = |a: &Assumption| a.origin == Origin::Default.as_str();
        Self {
            snow_by_default: find("snow").is_some_and(by_default),
            hands_m: find("haul.rest_m").and_then(|a| a.value.as_f64()),
        }
    }
}

impl Alike<'_> {
    fn add(&mut self, leg: usize, of_leg: Vec<Line>) {
        self.legs.push(leg);
        for line in of_leg {
            match self.of_legs.iter_mut().find(|(l, _)| *l == line) {
                Some((_, legs)) => legs.push(leg),
                None => self.of_legs.push((line, vec![leg])),
            }
        }
    }

    /// What differs, by label; legs are named where it does not hold for all.
    fn of_legs(&self) -> Vec<Line> {
        let mut lines: Vec<Line> = Vec::new();
        for ((label, text), legs) in &self.of_legs {
            let text = if legs.len() == self.legs.len() {
                text.clone()
            } else {
                format!("{}: {text}", words::legs(legs))
            };
            lines.push((label, text));
        }
        lines.sort_by_key(|(label, _)| *label);
        lines
    }
}

fn alike(legs: &[Leg], taken: Taken, units: Units) -> Vec<Alike<'_>> {
    let mut all: Vec<Alike<'_>> = Vec::new();
    let setups = legs
        .iter()
        .flat_map(|l| l.teams.iter().map(move |t| (l, t)));
    for (leg, setup) in setups {
        let (lines, of_leg) = (lines(setup, taken, units), of_leg(leg, setup, taken, units));
        let same = |a: &Alike<'_>| a.setup.team == setup.team && a.lines == lines;
        let known = all.iter().position(same).unwrap_or_else(|| {
            all.push(Alike {
                legs: Vec::new(),
                setup,
                lines,
                of_legs: Vec::new(),
            });
            all.len() - 1
        });
        if let Some(alike) = all.get_mut(known) {
            alike.add(leg.leg, of_leg);
        }
    }
    all
}

fn title(block: &Alike<'_>, teams: bool, units: Units) -> String {
    let team = if teams {
        format!(", team {}", block.setup.team)
    } else {
        String::new()
    };
    format!(
        "{}{team}: {} people, {} between neighbours, {}",
        capital(&words::legs(&block.legs)),
        block.setup.people,
        units.length(block.setup.spacing_m, Side::Demand),
        rope_words(block.setup, units)
    )
}

fn rope_words(setup: &TeamSetup, units: Units) -> String {
    let needed = units.length(setup.ledger.total_m, Side::Demand);
    let of = |metres: f64| units.length(metres, Side::AtHand);
    match (&setup.rope, setup.sold_length_m) {
        (Some(rope), _) if rope.spare_m < 0.0 => {
            format!(
                "{needed} of rope, rope {} holds only {}",
                rope.number,
                of(rope.length_m)
            )
        }
        (Some(rope), _) => format!("{needed} of rope {} ({})", rope.number, of(rope.length_m)),
        (None, Some(sold_m)) => format!("{needed} of rope, sold as {}", of(sold_m)),
        (None, None) => format!("{needed} of rope, more than any sold"),
    }
}

fn lines(setup: &TeamSetup, taken: Taken, units: Units) -> Vec<Line> {
    let mut lines = vec![
        ("people", people(setup)),
        ("tie", ties(setup, units)),
        ("knots", knots(setup, units)),
        ("reserve", reserve(setup, taken, units)),
    ];
    let haul = setup.haul.as_ref();
    lines.extend(haul.map(|table| ("hauling", hauling(setup, table, units))));
    lines
}

/// What rests on the leg too.
fn of_leg(leg: &Leg, setup: &TeamSetup, taken: Taken, units: Units) -> Vec<Line> {
    let mut lines = Vec::new();
    if let Some(arrest) = &setup.arrest {
        let flat = leg.lip_slope_deg.or(leg.lip_slope_behind_deg).is_none();
        let ground = ground(arrest, flat, taken);
        lines.push(("a fall", fall(setup, arrest, &ground, units)));
        let order = arrest.order.as_ref().filter(|o| o.worth_it);
        lines.extend(order.map(|o| ("order", o.says.clone())));
    }
    lines.push(("covers", covers(setup, units)));
    lines
}

/// `person 1 (80 kg), 2 Ada (75 kg)`, the first ahead; the position too where it is not the number of a person
/// without a name.
fn people(setup: &TeamSetup) -> String {
    let unnamed = |p: &PersonOnRope| p.name.parse::<usize>().ok();
    let numbered = || setup.persons.iter().map(unnamed).zip(1..);
    let apart = numbered().any(|(number, position)| number.is_some_and(|n| n != position));
    let person = |(person, position): (&PersonOnRope, usize)| {
        let who = called(&setup.persons, position);
        let who = match (unnamed(person), apart) {
            (None, _) => format!("{position} {who}"),
            (Some(_), true) => format!("position {position} {who}"),
            (Some(_), false) => who,
        };
        format!("{who} ({:.0} kg)", person.mass_kg)
    };
    let all: Vec<String> = setup.persons.iter().zip(1..).map(person).collect();
    format!("{}; the first walks ahead", all.join(", "))
}

/// Where along the rope each thing is tied, from the first person's free end.
fn ties(setup: &TeamSetup, units: Units) -> String {
    let mut knots = 0;
    let mark = |mark: &Mark| {
        let what = match mark.kind {
            MarkKind::Knot => {
                knots += 1;
                format!("x{knots}")
            }
            MarkKind::TieIn => mark.what.trim_end_matches(" ties in").to_owned(),
            MarkKind::End => mark.what.clone(),
        };
        format!("{what} {}", units.number(mark.at_m, Side::Measured))
    };
    let all: Vec<String> = setup.marks.iter().map(mark).collect();
    format!("{} from the free end: {}", units.short(), all.join(" · "))
}

fn knots(setup: &TeamSetup, units: Units) -> String {
    let knots = &setup.knots;
    if knots.count == 0 {
        return format!("none: {}", units.sentence(&knots.why));
    }
    let bite = match knots.bite {
        Bite::Yes => "snow deep enough for them by the rule".to_owned(),
        Bite::Doubtful | Bite::Unknown | Bite::No => {
            let from = setup.knots_count_from_snow_m.unwrap_or_default();
            format!(
                "count on them only above {} of snow",
                units.length(from, Side::Demand)
            )
        }
    };
    format!(
        "{} from each end person, the first after {}, then every {}; {bite}; {}",
        knots.each_end,
        units.length(knots.first_m, Side::Measured),
        units.length(knots.step_m, Side::Measured),
        units.sentence(&knots.why)
    )
}

/// Free rope for everybody's fall, those for whom it is there together.
fn reserve(setup: &TeamSetup, taken: Taken, units: Units) -> String {
    let needs_m = setup.falls.first().map_or(0.0, |f| f.needs_m);
    let (short, there): (Vec<&FallReserve>, Vec<&FallReserve>) =
        setup.falls.iter().partition(|f| f.missing_m > 1e-9);
    let who = |f: &FallReserve| called(&setup.persons, f.person);
    let mut says = Vec::new();
    if !there.is_empty() {
        let who: Vec<String> = there.iter().map(|f| who(f)).collect();
        says.push(format!("there for {}", who.join(" and ")));
    }
    says.extend(short.iter().map(|f| {
        let missing = units.length(f.missing_m, Side::Demand);
        format!("{missing} missing for {}", who(f))
    }));
    says.extend(taken.hands_m.map(|hands_m| {
        let more = units.length(hands_m, Side::Demand);
        format!("hands and hitches take {more} more")
    }));
    format!(
        "a drop loop takes {}: {}",
        units.length(needs_m, Side::Demand),
        says.join("; ")
    )
}

/// `snow assumed: settled, 12° downhill`.
fn ground(arrest: &Arrest, flat: bool, taken: Taken) -> String {
    let snow = match arrest.snow.as_str() {
        "ice" => "ice".to_owned(),
        snow if taken.snow_by_default => format!("snow assumed: {snow}"),
        snow => format!("{snow} snow"),
    };
    if flat {
        format!("{snow}, slope unknown, taken as flat")
    } else {
        format!("{snow}, {:.0}° downhill", arrest.slope_deg.ceil())
    }
}

fn fall(setup: &TeamSetup, arrest: &Arrest, ground: &str, units: Units) -> String {
    let [least_m, most_m] = arrest.slide_m;
    let [least_kn, most_kn] = arrest.holder_force_kn;
    let (slide, then) = match arrest.verdict {
        Held::All => ("slide", ""),
        Held::Depends => ("slide", ", to the lip where not held"),
        Held::None => ("dragged to the lip after", ""),
    };
    format!(
        "worst if {} falls: {} ({ground}; {slide} {} to {}{then}; {least_kn:.1} to {most_kn:.1} kN on the holder)",
        called(&setup.persons, arrest.falls),
        arrest.says,
        units.number(least_m, Side::AtHand),
        units.length(most_m, Side::Demand),
    )
}

fn hauling(setup: &TeamSetup, table: &HaulTable, units: Units) -> String {
    let own = if table.needs_own_strand {
        "; it needs a strand of its own, the knots block the loaded one"
    } else {
        ""
    };
    format!(
        "getting {} out, {} below the lip: {}{}{own}",
        called(&setup.persons, table.person),
        units.length(table.lip_to_person_m, Side::Demand),
        units.sentence(&table.says),
        pull(table)
    )
}

/// What the hauling named in the table pulls with; where none will do, the least that any would ask for.
fn pull(table: &HaulTable) -> String {
    match haul::best(&table.systems) {
        Some(best) if best.can != CanPull::No => format!(" ({:.2} kN to pull)", best.pull_kn),
        _ => {
            let possible = table.systems.iter().filter(|s| s.possible);
            let least = possible.map(|s| s.pull_kn).reduce(f64::min);
            least.map_or_else(String::new, |kn| format!(" (at least {kn:.2} kN to pull)"))
        }
    }
}

/// How wide a gap the rope still covers, and what nothing here covers.
fn covers(setup: &TeamSetup, units: Units) -> String {
    let mut not = Vec::new();
    let gaps = match setup.covers_gap_m {
        Some(gap_m) => {
            not.push("wider gaps".to_owned());
            let apart = setup.covers_at_spacing_m.map_or_else(String::new, |m| {
                format!(", tied anew at {} apart", units.length(m, Side::Measured))
            });
            format!(
                "this rope is long enough for gaps up to {}{apart}; as tied here, up to {} by the spacing rule; it says nothing about holding a fall",
                units.length(gap_m, Side::AtHand),
                units.length(setup.as_tied_gap_m, Side::AtHand)
            )
        }
        None => "no gap: the rope is too short".to_owned(),
    };
    let short = setup.falls.iter().filter(|f| f.missing_m > 1e-9);
    not.extend(short.map(|f| format!("a drop loop for {}", called(&setup.persons, f.person))));
    not.push("two people in a gap at once".to_owned());
    format!("{gaps}; not covered: {}", not.join(", "))
}
