//! Teams that are set up alike are told once.

use crate::{
    plan::leg::TeamSetup,
    say::{arg::Arg, span::Said, voice::Voice},
    write::parts::row::{LegRow, TeamRow},
};

/// Teams with the same set-up said once: `teams 1, 3: `, or `1, 3: ` by number alone, and nothing in front of the only team.
pub(super) fn teams<'r>(
    row: &'r LegRow<'_>,
    by_number: bool,
    voice: Voice,
) -> Vec<(String, &'r TeamRow<'r>)> {
    let mut groups: Vec<(Vec<usize>, &TeamRow<'_>)> = Vec::new();
    for team in &row.teams {
        match groups
            .iter_mut()
            .find(|(_, other)| alike(other.setup, team.setup))
        {
            Some((numbers, _)) => numbers.push(team.setup.team),
            None => groups.push((vec![team.setup.team], team)),
        }
    }
    let who = |numbers: &[usize]| {
        let named: Vec<String> = numbers.iter().map(usize::to_string).collect();
        let args = [
            ("count", Arg::Count(named.len())),
            ("teams", Arg::Said(Said::figure(named.join(", ")))),
        ];
        let key = match by_number {
            true => "message-team-numbers",
            false => "message-team-names",
        };
        match row.teams.len() {
            ..=1 => String::new(),
            _ => voice.say(key, &args).to_string(),
        }
    };
    groups
        .into_iter()
        .map(|(n, team)| (who(&n), team))
        .collect()
}

/// Whether the message tells the same of two teams.
fn alike(a: &TeamSetup, b: &TeamSetup) -> bool {
    let told = |t: &TeamSetup| {
        let rope_m = t.rope.as_ref().map(|r| r.length_m);
        let lengths = [t.spacing_m, t.coil_carried_m, t.ledger.total_m];
        (t.people, t.knots.count, t.knots.bite, rope_m, lengths)
    };
    told(a) == told(b)
}
