//! A trip file → [`Trip`].

use super::{form::Trip, forms, laid::Laid, names, rest};
use crate::{
    fault::{Fault, Place},
    limits::InputLimits,
    practice::{Origin, Rules, set, toml_text::TomlText},
    read::{
        geojson::Given,
        input::{Input, Text},
    },
    schema,
};

/// Reads a trip file.
///
/// # Errors
/// Every line that does not parse; or else every member that means nothing here or holds what it does not take.
pub fn trip(name: &str, text: &str) -> Result<Trip, Vec<Fault>> {
    let text = TomlText::parse(name, text).map_err(|broken| rest::told(name, text, broken))?;
    let mut faults = forms::faults(&text);
    if !faults.is_empty() {
        faults.extend(rest::masses(&text));
    }
    faults.extend(text.nul());
    if faults.is_empty() {
        text.read().map(names::tidied)
    } else {
        Err(faults)
    }
}

/// Reads a trip file as an input among others.
#[must_use]
pub fn file(input: Input<Text<'_>>) -> Input<Trip> {
    let (name, limits) = (input.name.clone(), input.limits);
    let source = input.whole().and_then(|text| trip(&name, &text));
    Input {
        name,
        source,
        limits,
    }
}

/// JSON Schema of the trip file.
///
/// # Errors
/// Only if the schema cannot stand in JSON.
pub fn schema() -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&schema::of::<Trip>(Default::default()))?;
    text.push('\n');
    Ok(text)
}

/// Checks what a trip file says on its own, without route and ice.
///
/// # Errors
/// Every figure, mass, rope and gap width that cannot be.
pub fn check(trip: &Trip, place: &Place, limits: &InputLimits) -> Result<(), Vec<Fault>> {
    let mut laid = Laid::of(Rules::with_practice(&set::Source::Named(
        set::EMBEDDED[0].0,
    ))?);
    let gap_m = trip.gap_m;
    let results = [
        trip.lay_over(&mut laid, place, &Origin::Trip),
        trip.party(place, &laid.rules, limits).map(|_| ()),
        trip.ropes(place, limits).map(|_| ()),
        Err(trip.halt_faults(place)),
        Given { gap_m }
            .fault(place)
            .map_or(Ok(()), |fault| Err(vec![fault])),
    ];
    let faults: Vec<Fault> = results
        .into_iter()
        .filter_map(Result::err)
        .flatten()
        .collect();
    if faults.is_empty() {
        Ok(())
    } else {
        Err(faults)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rules() -> Rules {
        Rules::with_practice(&set::Source::Named("arm-span")).unwrap()
    }

    #[test]
    fn a_party_comes_in_three_forms() {
        let place = Place::file("trip.toml");
        let people = |text: &str| {
            trip("trip.toml", text)
                .unwrap()
                .party(&place, &rules(), &InputLimits::default())
                .unwrap()
                .unwrap()
        };
        assert_eq!(people("party = 3").people.len(), 3);
        assert_eq!(
            people("party = [82, 75.5]").people[1].mass_kg.to_string(),
            "75.5"
        );
        let named = people("[[party]]\nname = \"Ada\"\nmass_kg = 70\n[[party]]\nname = \"Ben\"\n");
        assert_eq!(
            (
                named.people[0].called.name.as_deref(),
                named.people[1].mass_given
            ),
            (Some("Ada"), false)
        );
    }

    #[test]
    fn every_wrong_figure_is_told_with_its_place() {
        let trip = trip("trip.toml", "[assume]\nmargin_m = -5\nmargin = 3\n").unwrap();
        let faults = trip
            .lay_over(
                &mut Laid::of(rules()),
                &Place::file("trip.toml"),
                &Origin::Trip,
            )
            .unwrap_err();
        let told: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(
            told,
            [
                "error[unknown-name]: there is no figure \"margin\"\n  at: trip.toml, `margin`\n  do: perhaps `margin_m` is meant",
                "error[bad-number]: margin_m -5 m is outside 0 to 1000 m\n  at: trip.toml, `margin_m`\n  do: give a number from 0 to 1000 m",
            ]
        );
    }

    #[test]
    fn every_member_at_fault_is_told_in_the_order_of_the_file() {
        let text = "party = 3\nfoo = 1\nstages = 2\nrope = [60]\n";
        let told: Vec<String> = trip("t.toml", text)
            .unwrap_err()
            .iter()
            .map(ToString::to_string)
            .collect();
        assert_eq!(
            told,
            [
                "error[unknown-name]: a trip file has no `foo`\n  at: t.toml, line 2 column 1, `foo`\n  do: take it out; the schema of the trip file shows every member",
                "error[unknown-name]: a trip file has no `stages`\n  at: t.toml, line 3 column 1, `stages`\n  do: perhaps `stage` is meant",
                "error[bad-trip]: `rope` does not take [60]\n  at: t.toml, line 4 column 8, `rope`\n  do: write each rope in braces: `rope = [{ length_m = 60 }]`",
            ]
        );
    }

    #[test]
    fn a_member_that_means_nothing_is_refused_with_its_line() {
        let fault = &trip("trip.toml", "gap_m = 6\nropes = 3\n").unwrap_err()[0];
        assert_eq!(fault.at.to_string(), "trip.toml, line 2 column 1, `ropes`");
    }
}
