//! [`Trip`] → a trip file, and one trip laid over another.

use serde_json::Value;
use toml::ser::Error;

use super::form::Trip;

impl Trip {
    /// What is said here, and where nothing is said what the other one says; figures and words one by one.
    ///
    /// ```
    /// use schrund::read::trip::trip;
    ///
    /// let file = trip("trip.toml", "party = 3\nstart = \"04:30\"\n[assume]\nmargin_m = 35\nperson_kg = 75\n")?;
    /// let flags = trip("flags", "party = [82, 90]\nassume.margin_m = 10\n")?;
    /// let both = flags.over(file);
    /// assert_eq!(both.toml().as_deref(), Ok(
    ///     "party = [82.0, 90.0]\nstart = \"04:30\"\n\n[assume]\nmargin_m = 10.0\nperson_kg = 75.0\n"
    /// ));
    /// # Ok::<(), Vec<schrund::fault::Fault>>(())
    /// ```
    #[must_use]
    pub fn over(self, other: Self) -> Self {
        let mut assume = other.assume;
        assume.extend(self.assume);
        Self {
            name: self.name.or(other.name),
            language: self.language.or(other.language),
            practice: self.practice.or(other.practice),
            party: self.party.or(other.party),
            teams: first(self.teams, other.teams),
            rope: self.rope.or(other.rope),
            gap_m: self.gap_m.or(other.gap_m),
            stage: self.stage.or(other.stage),
            travel: self.travel.or(other.travel),
            knots: self.knots.or(other.knots),
            reserve: self.reserve.or(other.reserve),
            cover: self.cover.or(other.cover),
            rope_on_bare: self.rope_on_bare.or(other.rope_on_bare),
            undrawn_ice: self.undrawn_ice.or(other.undrawn_ice),
            pace: self.pace.or(other.pace),
            use_proposed_strike: self.use_proposed_strike.or(other.use_proposed_strike),
            // Where an hour counts goes with the hour.
            start_at_km: match self.start {
                Some(_) => self.start_at_km,
                None => self.start_at_km.or(other.start_at_km),
            },
            start: self.start.or(other.start),
            bridges_until: self.bridges_until.or(other.bridges_until),
            back_by: self.back_by.or(other.back_by),
            date: self.date.or(other.date),
            utc_offset: self.utc_offset.or(other.utc_offset),
            halt: first(self.halt, other.halt),
            terrain: first(self.terrain, other.terrain),
            glaciers: self.glaciers.or(other.glaciers),
            emergency: first(self.emergency, other.emergency),
            snow: self.snow.or(other.snow),
            assume,
        }
    }

    /// As a trip file, its members in their order; what was never said is not there.
    ///
    /// # Errors
    /// A number that TOML does not have.
    pub fn toml(&self) -> Result<String, Error> {
        toml::to_string(self)
    }

    /// Its members in JSON; what was never said is not there.
    ///
    /// # Errors
    /// A number that JSON does not have.
    pub fn json(&self) -> Result<Value, serde_json::Error> {
        serde_json::to_value(self).map(said)
    }
}

/// The one that says something.
fn first<T>(these: Vec<T>, those: Vec<T>) -> Vec<T> {
    if these.is_empty() { those } else { these }
}

/// A value without members that hold nothing.
fn said(value: Value) -> Value {
    match value {
        Value::Object(members) => {
            let members = members.into_iter().filter(|(_, value)| !value.is_null());
            members.map(|(name, value)| (name, said(value))).collect()
        }
        Value::Array(all) => all.into_iter().map(said).collect(),
        other => other,
    }
}

/// A trip in JSON as a trip file. What no trip can hold is written too, so that whoever reads the file tells of it.
///
/// # Errors
/// It is no object, or holds what TOML does not have.
///
/// ```
/// use schrund::read::trip::toml_of_json;
///
/// assert_eq!(toml_of_json(r#"{"start": "04:30", "party": 3}"#).as_deref(), Ok("party = 3\nstart = \"04:30\"\n"));
/// assert_eq!(toml_of_json(r#"{"party": "three of us"}"#).as_deref(), Ok("party = \"three of us\"\n"));
/// assert!(toml_of_json("[3]").is_err());
/// ```
pub fn toml_of_json(json: &str) -> Result<String, String> {
    let value: Value = serde_json::from_str(json).map_err(|why| why.to_string())?;
    let value = said(value);
    let written = match serde_json::from_value::<Trip>(value.clone()) {
        Ok(trip) => trip.toml(),
        Err(_) => toml::to_string(&value),
    };
    written.map_err(|why| why.to_string())
}

#[cfg(test)]
mod tests {
    use super::super::trip;

    #[test]
    fn what_is_written_is_read_as_the_same() {
        let text = include_str!("../../../examples/vordalen/trip.toml");
        let read = trip("trip.toml", text).unwrap();
        let written = read.toml().unwrap();
        assert_eq!(trip("written", &written).unwrap(), read, "{written}");
        let json = read.json().unwrap().to_string();
        assert_eq!(super::toml_of_json(&json).unwrap(), written);
    }
}
