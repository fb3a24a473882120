//! Who goes, and whom to call.

use crate::practice::{Rule, Rules};

/// Least and greatest number of people on one rope: those for whom practice sets give figures.
/// Common practice, no source.
pub const ON_ONE_ROPE: std::ops::RangeInclusive<usize> = 2..=5;

/// What the leader calls somebody.
///
/// ```
/// use schrund::trip::party::{Called, Party};
///
/// let called: Vec<Called> = schrund::example::job()?.party.people.into_iter().map(|person| person.called).collect();
/// assert_eq!(called[2], Called { number: 3, name: Some("Cy".to_owned()) });
/// assert_eq!(Party::weighing(&[82.0]).people[0].called, Called::number(1), "a number is no name");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, schemars::JsonSchema)]
pub struct Called {
    /// From 1, in the order in which the leader named the party.
    pub number: usize,
    /// The name, where one was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
}

impl Called {
    /// Somebody without a name.
    #[must_use]
    pub fn number(number: usize) -> Self {
        Self { number, name: None }
    }
}

/// One person with what they carry.
///
/// ```
/// use schrund::{practice::Rule, trip::party::{Called, Party, Person}};
///
/// let rules = schrund::example::job()?.rules;
/// let unnamed = &Party::of(2, &rules).people[1];
/// let taken = Person { called: Called::number(2), mass_kg: rules[Rule::PersonKg], mass_given: false };
/// assert_eq!(*unnamed, taken, "the mass is that of the rules, and a plan says so");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Person {
    /// What the leader calls them.
    pub called: Called,
    /// Kilograms with pack.
    pub mass_kg: f64,
    /// Whether the mass was given or taken from the rules.
    pub mass_given: bool,
}

/// Everybody who goes, in the order the leader named them.
///
/// ```
/// use schrund::trip::party::{Party, RopeTeam};
///
/// let sizes = |party: Party| party.rope_teams().iter().map(RopeTeam::size).collect::<Vec<_>>();
/// assert_eq!(sizes(Party::weighing(&[80.0; 5])), [5], "up to five go on one rope");
/// assert_eq!(sizes(Party::weighing(&[80.0; 10])), [4, 3, 3], "more in threes and fours: nobody is left in a pair");
/// let two = Party { teams: vec![3, 2], ..Party::weighing(&[80.0; 5]) };
/// assert_eq!(sizes(two), [3, 2], "the leader's word");
/// ```
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Party {
    /// The people.
    pub people: Vec<Person>,
    /// Sizes of the rope teams by the leader's word; empty where nobody said.
    pub teams: Vec<usize>,
}

/// Somebody to call in an emergency, as the leader wrote it.
///
/// ```
/// use schrund::{read::trip, trip::party::EmergencyContact};
///
/// let file = "[[emergency]]\nname = \"Mountain rescue\"\ncontact = \"channel 34\"\n";
/// let trip = trip::trip("trip.toml", file)?;
/// let (name, contact) = ("Mountain rescue".to_owned(), "channel 34".to_owned());
/// assert_eq!(trip.emergency, [EmergencyContact { name, contact, note: None }]);
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Debug, PartialEq, serde::Deserialize, serde::Serialize, schemars::JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct EmergencyContact {
    /// Who.
    pub name: String,
    /// How to reach them: a number, a channel, a frequency.
    pub contact: String,
    /// What else matters.
    pub note: Option<String>,
}

/// People on one rope, in rope order: the first walks ahead.
///
/// ```
/// use schrund::trip::party::Party;
///
/// let team = &Party::weighing(&[60.0, 90.0, 60.0]).rope_teams()[0];
/// let heavy = team.heavier_by(1.5).expect("90 kg is 1.5 times the mean of the others");
/// assert_eq!((team.size(), heavy.called.number), (3, 2));
/// assert!(team.heavier_by(1.6).is_none());
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct RopeTeam {
    /// From 1, in walking order.
    pub number: usize,
    /// The people.
    pub people: Vec<Person>,
}

impl Party {
    /// A party of so many people without names, all of the mass that the rules assume.
    #[must_use]
    pub fn of(number: usize, rules: &Rules) -> Self {
        let person = |i: usize| Person {
            called: Called::number(i),
            mass_kg: rules[Rule::PersonKg],
            mass_given: false,
        };
        Self {
            people: (1..=number).map(person).collect(),
            teams: Vec::new(),
        }
    }

    /// A party of people without names with these masses in kilograms.
    #[must_use]
    pub fn weighing(masses_kg: &[f64]) -> Self {
        let person = |(i, &mass_kg): (usize, &f64)| Person {
            called: Called::number(i + 1),
            mass_kg,
            mass_given: true,
        };
        Self {
            people: masses_kg.iter().enumerate().map(person).collect(),
            teams: Vec::new(),
        }
    }

    /// The rope teams of the party: by the leader's word, as long as it names as many people as go; else up to five on
    /// one rope, then teams of three and four (our judgement). The heavier people are spread over them.
    #[must_use]
    pub fn rope_teams(&self) -> Vec<RopeTeam> {
        let number = self.people.len();
        if !self.teams.is_empty() && self.teams.iter().sum::<usize>() == number {
            return self.split_by(&self.teams);
        }
        let teams = if ON_ONE_ROPE.contains(&number) {
            1
        } else {
            number.div_ceil(4).max(1)
        };
        self.split_into(teams)
    }

    /// The party on so many ropes, sizes as equal as can be, the larger teams first.
    #[must_use]
    pub fn split_into(&self, teams: usize) -> Vec<RopeTeam> {
        let size = |team: usize| {
            let (share, rest) = (self.people.len() / teams, self.people.len() % teams);
            share + usize::from(team < rest)
        };
        let sizes: Vec<usize> = (0..teams).map(size).collect();
        self.split_by(&sizes)
    }

    /// The party on ropes of these sizes, the heavier people spread over them: dealt out to and fro, the heaviest
    /// first. Who finds no place goes to the team whose turn it is.
    #[must_use]
    pub fn split_by(&self, sizes: &[usize]) -> Vec<RopeTeam> {
        let teams = sizes.len();
        if teams == 0 {
            return Vec::new();
        }
        let mut members: Vec<Vec<usize>> = vec![Vec::new(); teams];
        for (deal, person) in self.heaviest_first().into_iter().enumerate() {
            let (round, place) = (deal / teams, deal % teams);
            let team = if round % 2 == 0 {
                place
            } else {
                teams - 1 - place
            };
            let open = (0..teams)
                .map(|k| (team + k) % teams)
                .find(|&t| members[t].len() < sizes[t]);
            members[open.unwrap_or(team)].push(person);
        }
        members
            .into_iter()
            .enumerate()
            .map(|(i, team)| self.team(i + 1, team))
            .collect()
    }

    fn heaviest_first(&self) -> Vec<usize> {
        let mut order: Vec<usize> = (0..self.people.len()).collect();
        order.sort_by(|&a, &b| self.people[b].mass_kg.total_cmp(&self.people[a].mass_kg));
        order
    }

    /// Within a team people walk in the order the leader named them.
    fn team(&self, number: usize, mut members: Vec<usize>) -> RopeTeam {
        members.sort_unstable();
        RopeTeam {
            number,
            people: members.iter().map(|&i| self.people[i].clone()).collect(),
        }
    }
}

impl RopeTeam {
    /// How many people.
    #[must_use]
    pub fn size(&self) -> usize {
        self.people.len()
    }

    /// Somebody whose mass is at least `factor` times the mean of the others.
    #[must_use]
    pub fn heavier_by(&self, factor: f64) -> Option<&Person> {
        let sum_kg: f64 = self.people.iter().map(|p| p.mass_kg).sum();
        #[expect(
            clippy::cast_precision_loss,
            reason = "a rope team has five people at most"
        )]
        let others = self.people.len().checked_sub(1).filter(|&n| n > 0)? as f64;
        self.people
            .iter()
            .find(|p| p.mass_kg >= factor * (sum_kg - p.mass_kg) / others)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_party_splits_into_threes_and_fours_and_never_leaves_a_pair() {
        let sizes = |n: usize| {
            let party = Party::weighing(&vec![80.0; n]);
            party
                .rope_teams()
                .iter()
                .map(RopeTeam::size)
                .collect::<Vec<_>>()
        };
        let taught: [(usize, &[usize]); 9] = [
            (2, &[2]),
            (3, &[3]),
            (4, &[4]),
            (5, &[5]),
            (6, &[3, 3]),
            (7, &[4, 3]),
            (8, &[4, 4]),
            (9, &[3, 3, 3]),
            (10, &[4, 3, 3]),
        ];
        for (people, want) in taught {
            assert_eq!(sizes(people), want, "{people} people");
        }
    }

    #[test]
    fn the_heavier_people_are_spread_over_the_teams() {
        let teams = Party::weighing(&[100.0, 95.0, 60.0, 60.0, 60.0, 60.0]).rope_teams();
        let masses: Vec<f64> = teams
            .iter()
            .map(|t| t.people.iter().map(|p| p.mass_kg).sum())
            .collect();
        assert!((masses[0] - masses[1]).abs() < 10.0, "{masses:?}");
    }
}
