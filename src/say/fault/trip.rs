//! Trip files, flags and practice sets in words.

use crate::{
    fault::trip::{Asked, InPlan, InPractice, InTrip, Setter},
    trip::clock::Clock,
};

/// What each member of a trip file takes, for those that take more than a number or a word.
const TAKES: [(&str, &str); 9] = [
    (
        "party",
        "how many, a list of masses in kg, or [[party]] blocks with `name` and `mass_kg`",
    ),
    (
        "rope",
        "[[rope]] blocks with `length_m`, and `diameter_mm` and `name` where known",
    ),
    ("stage", "the number or the name of a stage"),
    ("assume", "a table [assume] of figures and words by name"),
    ("terrain", "a list of files"),
    (
        "emergency",
        "[[emergency]] blocks with `name`, `contact` and `note`",
    ),
    ("travel", "\"foot\", \"snowshoe\" or \"ski\""),
    ("knots", "\"auto\", \"always\" or \"never\""),
    ("cover", "\"ends\" or \"anyone\""),
];

const NEW: &str = "`schrund new DIR` writes a trip file that shows every member";

pub(super) fn says(what: &InTrip) -> String {
    match what {
        InTrip::NoMember { name, .. } => format!("a trip file has no `{name}`"),
        InTrip::Member { name, .. } if takes(name).is_some() => {
            format!("`{name}` is not in a form that is understood")
        }
        InTrip::Member { name, says } => format!("`{name}`: {says}"),
        InTrip::Nobody => "a party of 0: nobody goes".to_owned(),
        InTrip::TooMany { people, most } => {
            let many = people.map_or("so many".to_owned(), |n| n.to_string());
            format!("a party of {many} is more than the {most} that are planned for")
        }
        InTrip::NobodySaid => "nobody said how many go".to_owned(),
        InTrip::Mass {
            person,
            kg,
            min_kg,
            max_kg,
        } => format!("person {person} weighs {kg} kg, outside {min_kg} to {max_kg} kg"),
        InTrip::RopeLength {
            length_m,
            within_m: [min, max],
        } => format!("a rope of {length_m} m is outside {min} to {max} m"),
        InTrip::RopeAcross {
            diameter_mm,
            within_mm: [min, max],
        } => format!("a rope of {diameter_mm} mm across is outside {min} to {max} mm"),
        InTrip::NoStage { asked, .. } => {
            format!("the route has no such stage: {}", stage_asked(asked))
        }
        InTrip::BridgesWithoutStart { until_min } => format!(
            "bridges are trusted until {}, but nobody said when the party starts",
            Clock::of_min(*until_min)
        ),
        InTrip::NoFigure(name) => format!("there is no figure \"{name}\""),
        InTrip::SetElsewhere { name, .. } => format!("\"{name}\" is not set as an assumption"),
        InTrip::NoWord { name, found, .. } => format!("{name} does not take the word \"{found}\""),
        InTrip::NoTime { name, found } => {
            format!("{name} takes a time of day, and \"{found}\" is none")
        }
        InTrip::NoNumber { name, found } => {
            format!("{name} takes a number, and \"{found}\" is none")
        }
        InTrip::Figure(refusal) => refusal.to_string(),
    }
}

pub(super) fn hint(what: &InTrip) -> Option<String> {
    let hint = match what {
        InTrip::NoMember {
            near: Some(near), ..
        } => {
            return Some(format!(
                "perhaps `{near}` is meant; figures go under [assume]"
            ));
        }
        InTrip::NoMember { near: None, .. } => NEW,
        InTrip::Member { name, .. } => {
            let takes = takes(name).map(|takes| format!("it takes {takes}"));
            return Some(takes.unwrap_or_else(|| NEW.to_owned()));
        }
        InTrip::Nobody => "name who goes: how many, or their masses with pack in kg",
        InTrip::TooMany { .. } => "one number is a head count; masses in kg come for two and more",
        InTrip::NobodySaid => "`--party 3`, or their masses with pack: `--party 82,75,90`",
        InTrip::Mass { .. } => "give kilograms with pack",
        InTrip::RopeLength { .. } => "give its length in metres",
        InTrip::RopeAcross { .. } => "give millimetres",
        InTrip::NoStage { has, .. } => return Some(format!("it has {}", stages(has))),
        InTrip::BridgesWithoutStart { .. } => {
            "`--start 04:30`, or `start = \"04:30\"` in the trip file"
        }
        InTrip::NoFigure(_) => "`schrund practice arm-span` prints the figures and words there are",
        InTrip::SetElsewhere { by, .. } => setter(*by),
        InTrip::NoWord { words, .. } => return Some(format!("use one of {}", words.join(", "))),
        InTrip::NoTime { .. } => "write it as 04:30",
        InTrip::NoNumber { .. } | InTrip::Figure(_) => return None,
    };
    Some(hint.to_owned())
}

fn takes(member: &str) -> Option<&'static str> {
    let known = TAKES.iter().find(|(name, _)| *name == member);
    known.map(|(_, takes)| *takes)
}

fn setter(by: Setter) -> &'static str {
    match by {
        Setter::Practice => "`--practice NAME`, or `practice` in the trip file",
        Setter::Party => "`--party 82,75`, or `party` in the trip file",
        Setter::Rope => "`--rope 60`, or `[[rope]]` in the trip file",
        Setter::Terrain => "`--terrain FILE`, or `terrain` in the trip file",
        Setter::Gap => "`--gap 6`, `gap_m` in the trip file, or better `gap_m` of the zone",
        Setter::Sold => "name the ropes at hand: `--rope 60`, or `[[rope]]` in the trip file",
    }
}

fn stage_asked(asked: &Asked) -> String {
    match asked {
        Asked::Number(n) => n.to_string(),
        Asked::Name(name) => format!("\"{name}\""),
    }
}

fn stages(has: &[(usize, Option<String>)]) -> String {
    let label = |(number, name): &(usize, Option<String>)| match name {
        Some(name) => format!("stage {number} \"{name}\""),
        None => format!("stage {number}"),
    };
    has.iter().map(label).collect::<Vec<_>>().join(", ")
}

pub(super) fn practice_says(what: &InPractice) -> String {
    match what {
        InPractice::NoSet { name, .. } => format!("there is no practice set \"{name}\""),
        InPractice::NoFigure(name) => format!("there is no figure \"{name}\""),
        InPractice::Missing(name) => format!("the practice set does not give {name}"),
        InPractice::Growing { few, many } => {
            format!("the spacing of {many} people is greater than that of {few}")
        }
        InPractice::Figure(refusal) | InPractice::BuiltIn(refusal) => refusal.to_string(),
    }
}

pub(super) fn practice_hint(what: &InPractice) -> Option<String> {
    match what {
        InPractice::NoSet { sets, .. } => Some(format!(
            "use one of {}, or the path of a practice file",
            sets.join(", ")
        )),
        InPractice::NoFigure(_) => {
            Some("`schrund practice arm-span` prints the figures a set can give".to_owned())
        }
        InPractice::Missing(name) => Some(format!(
            "add [{name}] with `value` in metres and `standing`"
        )),
        InPractice::Growing { .. } => {
            Some("more people hold more, so a spacing never grows with their number".to_owned())
        }
        InPractice::Figure(_) | InPractice::BuiltIn(_) => None,
    }
}

pub(super) fn plan_says(what: &InPlan) -> String {
    match what {
        InPlan::Alone(people) => {
            format!("a party of {people} cannot rope up: nobody goes alone")
        }
        InPlan::NoZoneMet(0) => "the zones file holds no zone".to_owned(),
        InPlan::NoZoneMet(1) => "the one zone is not met by the route".to_owned(),
        InPlan::NoZoneMet(n) => format!("none of the {n} zones is met by the route"),
        InPlan::Window {
            columns,
            rows,
            most,
        } => format!("a relief of {columns} × {rows} heights is empty or above {most}"),
    }
}

pub(super) fn plan_hint(what: &InPlan) -> Option<String> {
    let hint = match what {
        InPlan::Alone(_) => "take at least one partner: `--party 2`",
        InPlan::NoZoneMet(_) => {
            "check that both files belong to the same place and that coordinates are longitude, latitude"
        }
        InPlan::Window { .. } => return None,
    };
    Some(hint.to_owned())
}
