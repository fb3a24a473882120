//! What must be said of falls: held or not, hauled or not, and coils that are a burden.

use crate::{
    fault::{Code, Place, Problem},
    plan::{
        fall::{CanPull, Held},
        leg::TeamSetup,
    },
    practice::{Rule, Rules},
    rope::{haul, marks::called},
};
use crate::{judge::of_team::up, legs::sketch::Sketch, trip::job::Case};

/// The findings of one team on one leg.
pub(crate) fn say(setup: &TeamSetup, place: &Place, rules: &Rules) -> Vec<Problem> {
    let said = [
        held_in_none(setup, place),
        haul_too_weak(setup, place),
        coil(setup, place, rules),
    ];
    said.into_iter().flatten().collect()
}

fn held_in_none(setup: &TeamSetup, place: &Place) -> Option<Problem> {
    let arrest = setup.arrest.as_ref()?;
    if arrest.verdict != Held::None {
        return None;
    }
    let says = format!(
        "in the model the fall of {} is {} on {}",
        called(&setup.persons, arrest.falls),
        arrest.verdict.as_str(),
        snow_words(&arrest.snow)
    );
    let hint = if arrest.snow == "ice" {
        "where every gap is in sight many go unroped; else a belay from an anchor, or another line"
    } else {
        "more people on the rope, a belay from an anchor, or another line"
    };
    Some(Problem::new(Code::HeldInNone, place.clone(), says).hint(hint))
}

/// `settled snow`, `ice`.
pub(crate) fn snow_words(snow: &str) -> String {
    if snow == "ice" {
        snow.to_owned()
    } else {
        format!("{snow} snow")
    }
}

fn haul_too_weak(setup: &TeamSetup, place: &Place) -> Option<Problem> {
    let table = setup.haul.as_ref()?;
    let middle = setup.middle.as_ref();
    if middle.is_some_and(|m| m.person == table.person && m.missing_m > 1e-9) {
        return None; // said already: the drop loop does not reach them
    }
    let can = haul::best(&table.systems).map_or(CanPull::No, |best| best.can);
    if can != CanPull::No {
        return None;
    }
    let says = format!(
        "if {} falls, {}",
        called(&setup.persons, table.person),
        table.says
    );
    Some(
        Problem::new(Code::HaulTooWeak, place.clone(), says)
            .hint("a second rope team near by, pulleys, or a person who can climb out on the rope"),
    )
}

fn coil(setup: &TeamSetup, place: &Place, rules: &Rules) -> Option<Problem> {
    let (most_m, most_kg) = (rules[Rule::CoilMostM], rules[Rule::CoilMostKg]);
    if setup.coil_m <= most_m + 1e-9 && setup.coil_kg <= most_kg + 1e-9 {
        return None;
    }
    let says = format!(
        "each end person carries a coil of {} m, about {} kg; more than {most_m} m or {most_kg} kg is a burden",
        up(setup.coil_m),
        up(setup.coil_kg)
    );
    Some(
        Problem::new(Code::CoilHeavy, place.clone(), says)
            .hint("more people on the rope, a long sling in the loop, or a thinner rope"),
    )
}

/// Roped legs where no heights say how steep the ground falls towards a lip; once for the plan.
pub(crate) fn slope_unknown(job: &Case<'_>, stages: &[Sketch<'_>]) -> Option<Problem> {
    let legs = stages
        .iter()
        .flat_map(|s| s.legs.iter().map(move |l| (s, l)));
    let roped = legs.enumerate().filter(|(_, (_, leg))| leg.roped);
    let unknown = roped.filter(|(_, (stage, leg))| {
        let ground = stage.ground(leg, false, job.rules);
        ground.slope_deg.is_none()
    });
    let numbers: Vec<String> = unknown.map(|(i, _)| (i + 1).to_string()).collect();
    let place = match numbers.as_slice() {
        [] => return None,
        [only] => format!("leg {only}"),
        [..] => format!("legs {}", numbers.join(", ")),
    };
    let says =
        "no heights say how steep it is towards the lip: falls are reckoned as on flat ground";
    Some(
        Problem::new(Code::SlopeUnknown, Place::item(place), says)
            .hint("give a terrain model: `--terrain FILE`"),
    )
}

/// The model could not be asked.
pub(crate) fn no_answer(says: &str, place: Place) -> Problem {
    let says = format!("the model of falls and hauls has no answer here: {says}");
    Problem::new(Code::NoAnswer, place, says)
}
