//! Each different set-up once, for people who were not there when it was planned: who where, what to tie, what is not
//! covered.

use super::{
    Sheet,
    paragraph::bullet,
    rope_line,
    units::{Side, Units},
    words::{self, capital},
};
use crate::leg::{
    Bite, Leg, TeamSetup,
    fall::{Arrest, FallReserve, HaulTable},
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
    let alike = alike(&sheet.plan.legs, units);
    if alike.is_empty() {
        return;
    }
    out.push_str("\nSet-ups\n");
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

fn alike(legs: &[Leg], units: Units) -> Vec<Alike<'_>> {
    let mut all: Vec<Alike<'_>> = Vec::new();
    let setups = legs.iter().flat_map(|l| l.teams.iter().map(|t| (l.leg, t)));
    for (leg, setup) in setups {
        let (lines, of_leg) = (lines(setup, units), of_leg(setup, units));
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
            alike.add(leg, of_leg);
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

fn lines(setup: &TeamSetup, units: Units) -> Vec<Line> {
    let mut lines = vec![
        ("people", people(setup)),
        ("tie", ties(setup, units)),
        ("knots", knots(setup, units)),
        ("reserve", reserve(setup, units)),
    ];
    let haul = setup.haul.as_ref();
    lines.extend(haul.map(|table| ("hauling", self::haul(table, units))));
    lines
}

/// What rests on the leg too.
fn of_leg(setup: &TeamSetup, units: Units) -> Vec<Line> {
    let mut lines = Vec::new();
    if let Some(arrest) = &setup.arrest {
        lines.push(("a fall", fall(arrest, units)));
        let order = arrest.order.as_ref().filter(|o| o.worth_it);
        lines.extend(order.map(|o| ("order", o.says.clone())));
    }
    lines.push(("covers", covers(setup, units)));
    lines
}

/// `1 (80 kg), 2 Ada (75 kg)`, the first ahead.
fn people(setup: &TeamSetup) -> String {
    let person = |(i, p): (usize, &crate::leg::PersonOnRope)| {
        let position = (i + 1).to_string();
        let name = if p.name == position {
            position
        } else {
            format!("{position} {}", p.name)
        };
        format!("{name} ({:.0} kg)", p.mass_kg)
    };
    let all: Vec<String> = setup.persons.iter().enumerate().map(person).collect();
    format!("{}; 1 walks ahead", all.join(", "))
}

/// Where along the rope each thing is tied, from the first person's free end.
fn ties(setup: &TeamSetup, units: Units) -> String {
    let mut knots = 0;
    let mark = |mark: &crate::leg::Mark| {
        let what = if mark.what == "brake knot" {
            knots += 1;
            format!("x{knots}")
        } else {
            mark.what.trim_end_matches(" ties in").to_owned()
        };
        format!("{what} {}", units.number(mark.at_m, Side::Measured))
    };
    let all: Vec<String> = setup.marks.iter().map(mark).collect();
    format!("{} from the free end: {}", units.short(), all.join(" · "))
}

fn knots(setup: &TeamSetup, units: Units) -> String {
    let knots = &setup.knots;
    if knots.count == 0 {
        return format!("none: {}", knots.why);
    }
    let bite = match knots.bite {
        Bite::Yes => "they bite".to_owned(),
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
        knots.why
    )
}

/// Free rope for everybody's fall, those who have enough together.
fn reserve(setup: &TeamSetup, units: Units) -> String {
    let needs_m = setup.falls.first().map_or(0.0, |f| f.needs_m);
    let (short, enough): (Vec<&FallReserve>, Vec<&FallReserve>) =
        setup.falls.iter().partition(|f| f.missing_m > 1e-9);
    let mut says = Vec::new();
    if !enough.is_empty() {
        let who: Vec<String> = enough.iter().map(|f| f.person.to_string()).collect();
        says.push(format!("enough if {} falls", who.join(" or ")));
    }
    let missing = |f: &&FallReserve| {
        format!(
            "{} missing if {} falls",
            units.length(f.missing_m, Side::Demand),
            f.person
        )
    };
    says.extend(short.iter().map(missing));
    format!(
        "a drop loop takes {}: {}",
        units.length(needs_m, Side::Demand),
        says.join("; ")
    )
}

fn fall(arrest: &Arrest, units: Units) -> String {
    let [least_m, most_m] = arrest.slide_m;
    let [least_kn, most_kn] = arrest.holder_force_kn;
    let snow = if arrest.snow == "ice" {
        "ice".to_owned()
    } else {
        format!("{} snow", arrest.snow)
    };
    format!(
        "worst if {} falls: {} ({snow}, {:.0}° downhill; slide {} to {}, {least_kn:.1} to {most_kn:.1} kN on the holder)",
        arrest.falls,
        arrest.says,
        arrest.slope_deg.ceil(),
        units.number(least_m, Side::AtHand),
        units.length(most_m, Side::Demand),
    )
}

fn haul(table: &HaulTable, units: Units) -> String {
    let own = if table.needs_own_strand {
        "; it needs a strand of its own, the knots block the loaded one"
    } else {
        ""
    };
    let possible = table.systems.iter().filter(|s| s.possible);
    let most = possible.map(|s| s.pull_kn).reduce(f64::min);
    let pull = most.map_or_else(String::new, |kn| format!(" (least pull {kn:.2} kN)"));
    let depth = units.length(table.lip_to_person_m, Side::Demand);
    format!(
        "{} out with {} below the lip: {}{pull}{own}",
        table.person, depth, table.says
    )
}

/// How wide a gap the rope still covers, and what nothing here covers.
fn covers(setup: &TeamSetup, units: Units) -> String {
    let mut not = Vec::new();
    let gaps = match setup.covers_gap_m {
        Some(gap_m) => {
            not.push("wider gaps".to_owned());
            format!(
                "gaps up to {} here with that rope",
                units.length(gap_m, Side::AtHand)
            )
        }
        None => "no gap: the rope is too short".to_owned(),
    };
    let short = setup.falls.iter().filter(|f| f.missing_m > 1e-9);
    not.extend(short.map(|f| format!("a drop loop for {}", f.person)));
    not.push("two people in a gap at once".to_owned());
    format!("{gaps}; not covered: {}", not.join(", "))
}
