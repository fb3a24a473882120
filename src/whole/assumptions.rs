//! Everything a plan rests on, with what stands behind it and who put it in force.

use serde_json::Value;

use crate::{
    plan::Assumption,
    practice::{
        Figure, Origin, Rule, Rules, SOLD_LENGTHS_M, Standing, nature, sold::Sold,
        words::WordInForce,
    },
    raster::Terrain,
    trip::{job::Brief, party::Person, rope::Rope, zone::Zone},
    whole::findings::file_name,
};

/// The practice set, what was given, the words, the figures of practice, and those of nature.
pub(crate) fn assumptions(job: &Brief<'_>) -> Vec<Assumption> {
    let rules = job.rules;
    let words = rules.choices.said().into_iter();
    let words = words
        .chain(job.timetable.said())
        .filter(|w| !w.value.is_null());
    std::iter::once(practice(rules))
        .chain(given(job))
        .chain(words.map(word))
        .chain(rules.figures().map(figure))
        .chain(sold())
        .chain(rules.nature.figures().into_iter().map(natural))
        .collect()
}

fn practice(rules: &Rules) -> Assumption {
    Assumption {
        name: "practice".to_owned(),
        says: "the practice set".to_owned(),
        value: Value::from(rules.practice.clone()),
        unit: String::new(),
        standing: "see its figures".to_owned(),
        origin: rules.practice_origin,
    }
}

/// Who goes, with what, over which gaps: numbered under the name that sets them all.
fn given(job: &Brief<'_>) -> Vec<Assumption> {
    let rules = job.rules;
    let people = (1..).zip(&job.party.people);
    let people = people.map(|(i, p)| person(i, p, rules));
    let ropes = (1..).zip(job.ropes);
    let ropes = ropes.map(|(i, r)| rope(i, r, rules));
    let models = job.terrain.into_iter().flat_map(Terrain::models);
    let credits = job.terrain.into_iter().flat_map(Terrain::credits);
    let models = (1..).zip(models.zip(credits));
    let models = models.map(|(i, ((name, cell_m), credit))| {
        let listed = leaders(
            format!("terrain.{i}"),
            format!("terrain model with cells of {cell_m:.1} m"),
            "",
            &rules.given.terrain,
        );
        let credit = credit.map(|credit| format!("{} ({credit})", listed.standing));
        Assumption {
            value: Value::from(file_name(name)),
            standing: credit.unwrap_or_else(|| listed.standing.clone()),
            ..listed
        }
    });
    people
        .chain(ropes)
        .chain(models)
        .chain(gap(job.zones, &rules.given.gap))
        .collect()
}

/// Something the leader said; its value is still to be filled in.
fn leaders(name: String, says: String, unit: &str, origin: &Origin) -> Assumption {
    Assumption {
        name,
        says,
        value: Value::Null,
        unit: unit.to_owned(),
        standing: Standing::Leader.as_str().to_owned(),
        origin: *origin,
    }
}

fn person(number: usize, person: &Person, rules: &Rules) -> Assumption {
    let name = format!("party.{number}");
    let assumed = rules.figure(Rule::PersonKg);
    let (how, origin) = if person.mass_given {
        ("as given", &rules.given.party)
    } else {
        ("not given, so assumed", &assumed.origin)
    };
    let number_or_name = person.called.name.clone();
    let who = number_or_name.unwrap_or_else(|| person.called.number.to_string());
    let says = format!("mass of person {who} with pack, {how}");
    let mut listed = leaders(name, says, "kg", origin);
    listed.value = Value::from(person.mass_kg);
    if !person.mass_given {
        listed.standing = assumed.standing_shown();
    }
    listed
}

fn rope(number: usize, rope: &Rope, rules: &Rules) -> Assumption {
    let named = rope.name.as_ref();
    let named = named.map_or_else(String::new, |name| format!(", \"{name}\""));
    let across = match rope.diameter_mm {
        Some(mm) => format!(", {mm} mm across"),
        None => format!(", taken as {} mm across", rules[Rule::RopeDiameterMm]),
    };
    let says = format!("rope {number} at hand{named}{across}");
    Assumption {
        value: Value::from(rope.length_m),
        ..leaders(format!("rope.{number}"), says, "m", &rules.given.ropes)
    }
}

/// The width assumed for zones that give none; a lower end that is wider counts in its own zone.
fn gap(zones: &[Zone], origin: &Origin) -> Option<Assumption> {
    let assumed: Vec<f64> = zones
        .iter()
        .filter(|z| z.gap.assumed)
        .map(|z| z.gap.max_m)
        .collect();
    let width_m = assumed.iter().copied().reduce(f64::min)?;
    let says = format!(
        "gap width where a zone gives none, {} of {}",
        assumed.len(),
        zones.len()
    );
    Some(Assumption {
        value: Value::from(width_m),
        ..leaders("gap_m".to_owned(), says, "m", origin)
    })
}

fn sold() -> Option<Assumption> {
    let sold = Sold::built_in().ok()?;
    let lengths = SOLD_LENGTHS_M.map(|m| m.to_string());
    Some(Assumption {
        name: "sold_lengths_m".to_owned(),
        says: sold.says,
        value: Value::from(lengths.join(", ")),
        unit: "m".to_owned(),
        standing: sold.standing.as_str().to_owned(),
        origin: Origin::Default,
    })
}

fn natural(figure: nature::NatureFigure) -> Assumption {
    Assumption {
        name: figure.name,
        says: figure.says,
        value: Value::from(figure.value),
        unit: figure.unit,
        standing: figure.standing,
        origin: figure.origin,
    }
}

fn word(said: WordInForce) -> Assumption {
    Assumption {
        name: said.name.to_owned(),
        says: said.says.to_owned(),
        value: said.value,
        unit: String::new(),
        standing: said.standing.as_str().to_owned(),
        origin: said.origin,
    }
}

fn figure(figure: &Figure) -> Assumption {
    Assumption {
        name: figure.rule.name().to_owned(),
        says: figure.says.clone(),
        value: Value::from(figure.value),
        unit: figure.unit.clone(),
        standing: figure.standing_shown(),
        origin: figure.origin,
    }
}
