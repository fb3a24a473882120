//! What a trip file can hold, for telling everything in one that it cannot.

use crate::{
    fault::{
        Fault, Wrong,
        toml::{InToml, Meant, Takes, TomlTable},
    },
    physics::assumed::Snow,
    practice::{
        Choices, Cover, Knots, Pace, Reserve, Rule, Travel, UndrawnIce,
        form::{MemberForm, NUMBER, Sorted, TEXT, TEXTS, TRUTH, TableForm, ValueForm, WordForm},
        toml_text::TomlText,
    },
    trip::{
        clock::Clock,
        day::{Day, UtcOffset},
        language::Language,
    },
};

static TRIP: TableForm = TableForm {
    of: TomlTable::Trip,
    members: &[
        MemberForm::may("name", TEXT),
        MemberForm::may("language", WordForm::<Language>::FORM),
        MemberForm::may("practice", TEXT),
        MemberForm::may("party", PEOPLE),
        MemberForm::may("teams", TEAMS),
        MemberForm::may("rope", ROPES),
        MemberForm::may("gap_m", NUMBER),
        MemberForm::may("stage", STAGE),
        MemberForm::may("travel", WordForm::<Travel>::FORM),
        MemberForm::may("knots", WordForm::<Knots>::FORM),
        MemberForm::may("reserve", WordForm::<Reserve>::FORM),
        MemberForm::may("cover", WordForm::<Cover>::FORM),
        MemberForm::may("rope_on_bare", TRUTH),
        MemberForm::may("pace", WordForm::<Pace>::FORM),
        MemberForm::may("undrawn_ice", WordForm::<UndrawnIce>::FORM),
        MemberForm::may("use_proposed_strike", TRUTH),
        MemberForm::may("start", TIME),
        MemberForm::may("start_at_km", NUMBER),
        MemberForm::may("bridges_until", TIME),
        MemberForm::may("back_by", TIME),
        MemberForm::may("date", DATE),
        MemberForm::may("utc_offset", OFFSET),
        MemberForm::may("halt", HALTS),
        MemberForm::may("terrain", TEXTS),
        MemberForm::may("glaciers", TEXT),
        MemberForm::may("emergency", CONTACTS),
        MemberForm::may("snow", WordForm::<Snow>::FORM),
        MemberForm::may("assume", ASSUMPTIONS),
    ],
    others: None,
};

static PERSON: TableForm = TableForm {
    of: TomlTable::Person,
    members: &[
        MemberForm::must("name", TEXT),
        MemberForm::may("mass_kg", NUMBER),
    ],
    others: None,
};

static ROPE: TableForm = TableForm {
    of: TomlTable::Rope,
    members: &[
        MemberForm::must("length_m", NUMBER),
        MemberForm::may("diameter_mm", NUMBER),
        MemberForm::may("name", TEXT),
        MemberForm::may("joined", TRUTH),
    ],
    others: None,
};

static CONTACT: TableForm = TableForm {
    of: TomlTable::Contact,
    members: &[
        MemberForm::must("name", TEXT),
        MemberForm::must("contact", TEXT),
        MemberForm::may("note", TEXT),
    ],
    others: None,
};

static HALT: TableForm = TableForm {
    of: TomlTable::Halt,
    members: &[
        MemberForm::may("at_km", NUMBER),
        MemberForm::may("stage", STAGE),
        MemberForm::may("name", TEXT),
        MemberForm::must("minutes", NUMBER),
    ],
    others: None,
};

const PEOPLE: ValueForm = ValueForm {
    sorts: &[Sorted::Count, Sorted::Numbers, Sorted::Tables(&PERSON)],
    takes: || Takes::People,
};
const TEAMS: ValueForm = ValueForm {
    sorts: &[Sorted::Numbers],
    takes: || Takes::Teams,
};
const ROPES: ValueForm = ValueForm {
    sorts: &[Sorted::Tables(&ROPE), Sorted::Nothing],
    takes: || Takes::Ropes,
};
const CONTACTS: ValueForm = ValueForm {
    sorts: &[Sorted::Tables(&CONTACT), Sorted::Nothing],
    takes: || Takes::Contacts,
};
const STAGE: ValueForm = ValueForm {
    sorts: &[Sorted::Count, Sorted::Text(|_| true)],
    takes: || Takes::Stage,
};
const TIME: ValueForm = ValueForm {
    sorts: &[Sorted::Text(|text| Clock::parse(text).is_ok())],
    takes: || Takes::Time,
};
const DATE: ValueForm = ValueForm {
    sorts: &[Sorted::Text(|text| Day::parse(text).is_ok())],
    takes: || Takes::Date,
};
const OFFSET: ValueForm = ValueForm {
    sorts: &[Sorted::Text(|text| UtcOffset::parse(text).is_ok())],
    takes: || Takes::Offset,
};
const HALTS: ValueForm = ValueForm {
    sorts: &[Sorted::Tables(&HALT), Sorted::Nothing],
    takes: || Takes::Halts,
};
const ASSUMPTIONS: ValueForm = ValueForm {
    sorts: &[Sorted::Map(&ASSUMPTION)],
    takes: || Takes::Assumptions,
};
static ASSUMPTION: ValueForm = ValueForm {
    sorts: &[
        Sorted::Number,
        Sorted::Truth,
        Sorted::Text(|_| true),
        Sorted::Map(&ASSUMPTION),
    ],
    takes: || Takes::Assumption,
};

/// Everything in a trip file that it cannot hold.
pub(super) fn faults(text: &TomlText<'_>) -> Vec<Fault> {
    let mut faults = text.check(&TRIP);
    for fault in &mut faults {
        if let Wrong::Toml(InToml::NoMember { of, name, meant }) = &mut fault.what {
            let is_figure = Rule::named(name).is_some() || Choices::words(name).is_some();
            if *of == TomlTable::Trip && is_figure {
                *meant = Some(Meant::Figure);
            }
        }
    }
    faults
}

#[cfg(test)]
mod tests {
    use schemars::JsonSchema;

    use super::*;
    use crate::{
        read::trip::{HaltEntry, PersonEntry, RopeEntry, Trip},
        trip::party::EmergencyContact,
    };

    fn members<T: JsonSchema>() -> Vec<String> {
        let schema = schemars::schema_for!(T);
        let properties = schema.get("properties").and_then(|p| p.as_object());
        properties.unwrap().keys().cloned().collect()
    }

    #[test]
    fn the_forms_have_the_members_of_what_is_read() {
        for (form, members) in [
            (&TRIP, members::<Trip>()),
            (&PERSON, members::<PersonEntry>()),
            (&ROPE, members::<RopeEntry>()),
            (&HALT, members::<HaltEntry>()),
            (&CONTACT, members::<EmergencyContact>()),
        ] {
            let mut names: Vec<&str> = form.members.iter().map(|m| m.name).collect();
            let mut members = members.clone();
            names.sort_unstable();
            members.sort_unstable();
            assert_eq!(names, members, "{:?}", form.of);
        }
    }
}
