//! The field table, by the functions that set up the legs: the same spacing, knots, ledger and rope.

use std::collections::BTreeMap;

use crate::{
    legs::{
        knots::{self, Hardship},
        over::Over,
        spacing,
        worst::{Meeting, widths},
    },
    plan::{
        field::{
            Field, FieldAskew, FieldGround, FieldLimit, FieldOtherwise, FieldRow, FieldSetUp,
            RowOtherwise,
        },
        name::RopeName,
    },
    practice::{Rule, Rules},
    rope::{
        carried::{Carried, RopeLoad},
        cure::{OnRope, Tying},
        draft::Draft,
        legs::RopedLeg,
        share::{self, Shared},
    },
    trip::{job::Brief, party::RopeTeam, rope::Rope},
};

/// The widths in the table, metres along the line of travel. Our judgement: from a step to the widest that is taught.
const GAPS_M: [f64; 9] = [2.0, 4.0, 6.0, 8.0, 10.0, 15.0, 20.0, 25.0, 30.0];

/// The angles at which a gap met askew is told, degrees. Our judgement: halfway, and where the team begins to run along.
const MET_DEG: [f64; 2] = [45.0, 30.0];

/// The table for these teams, on every ground that they are roped on, and the ropes that they carry.
pub(crate) fn field(
    job: &Brief<'_>,
    teams: &[RopeTeam],
    legs: &[RopedLeg<'_>],
    ropes: &Shared,
) -> Field {
    let (mut rows, mut limits) = (Vec::new(), Vec::new());
    let roped = legs.iter().any(|leg| leg.sketch.roped);
    for team in teams {
        let rope = ropes.of_team(team.number, job.ropes);
        let bought_m = ropes.bought_m(team.number).filter(|_| roped);
        for (ground, on) in grounds(team, legs, job.rules) {
            let table = Table {
                team,
                ground,
                on: &on,
                rules: job.rules,
            };
            let own = rope.map(|(_, r)| r);
            let limit = table.limit(rope, bought_m);
            let mut of_team = GAPS_M.map(|gap_m| table.row(gap_m, own, bought_m));
            let otherwise =
                own.map_or_else(Vec::new, |r| table.tie_otherwise(&mut of_team, &limit, r));
            rows.extend(of_team);
            limits.push(FieldLimit { otherwise, ..limit });
        }
    }
    Field {
        rows,
        limits,
        askew: askew(job.rules).to_vec(),
        along_below_deg: job.rules[Rule::AlongDeg],
    }
}

/// Legs that are one ground for a team; what lies under the first of them stands for all.
struct Ground<'a> {
    over: Over<'a>,
    hardship: Hardship,
    legs: Vec<usize>,
}

/// The grounds that a team is roped on. Where no leg is roped: snow whose depth nobody gave.
fn grounds<'a>(
    team: &RopeTeam,
    legs: &'a [RopedLeg<'a>],
    rules: &Rules,
) -> BTreeMap<FieldGround, Ground<'a>> {
    let mut all: BTreeMap<FieldGround, Ground<'a>> = BTreeMap::new();
    for leg in legs.iter().filter(|leg| leg.sketch.roped) {
        let (over, hardship) = (leg.over(), leg.hardship);
        let ground = all
            .entry(ground(team, over, hardship, rules))
            .or_insert_with(|| Ground {
                over,
                hardship,
                legs: Vec::new(),
            });
        ground.legs.push(leg.number);
    }
    if all.is_empty() {
        let (zones, undrawn, hardship) = (&[], true, Hardship::default());
        let (over, legs) = (Over { zones, undrawn }, Vec::new());
        let nowhere = Ground {
            over,
            hardship,
            legs,
        };
        all.insert(ground(team, over, hardship, rules), nowhere);
    }
    all
}

fn ground(team: &RopeTeam, over: Over<'_>, hardship: Hardship, rules: &Rules) -> FieldGround {
    if over.bare_only() {
        FieldGround::Bare
    } else if knots::least_m(team, over, || hardship, rules) > 0.0 {
        FieldGround::SnowWithKnots
    } else {
        FieldGround::Snow
    }
}

/// The part of the table for one team on one ground.
struct Table<'a> {
    team: &'a RopeTeam,
    ground: FieldGround,
    on: &'a Ground<'a>,
    rules: &'a Rules,
}

impl Table<'_> {
    /// As on a leg with nothing but such gaps, met square.
    fn draft(&self, gap_m: f64) -> Draft {
        let square = |_| square(gap_m);
        let Ground { over, hardship, .. } = *self.on;
        let spacing = spacing::of_team(self.team, over, || hardship, self.rules, &square);
        Draft::new(self.team, spacing, over, hardship, self.rules)
    }

    fn row(&self, gap_m: f64, rope: Option<&Rope>, bought_m: Option<f64>) -> FieldRow {
        let draft = self.draft(gap_m);
        let (people, spacing, ledger) = (self.team.size(), draft.spacing, draft.ledger);
        let load = rope.map_or_else(
            || RopeLoad {
                // One that holds this row is taken, if the trip is not planned with a longer one.
                length_m: bought_m.unwrap_or_default().max(ledger.total_m),
                diameter_mm: None,
            },
            RopeLoad::of,
        );
        let set_up = spacing.enough.then(|| FieldSetUp {
            spacing_m: spacing.spacing_m,
            knots: draft.knots.count,
            coil_m: ledger.coils_m / 2.0,
            coil_carried_m: Carried::of(&ledger, load, self.rules).coil_m,
            rope_m: ledger.total_m,
            over_one_gap: spacing::over_one_gap(people, spacing.spacing_m, gap_m),
        });
        let held = |r: &Rope| spacing.enough && share::holds(r.length_m, ledger.total_m);
        FieldRow {
            team: self.team.number,
            ground: self.ground,
            gap_m,
            need_m: spacing.need_m,
            set_up,
            fits: rope.map(held),
            otherwise: None,
        }
    }

    fn limit(&self, rope: Option<(usize, &Rope)>, bought_m: Option<f64>) -> FieldLimit {
        let length_m = rope.map(|(_, r)| r.length_m).or(bought_m);
        let square = |_| 1.0;
        let closest = self.draft(0.0);
        let holds_to_gap_m = length_m.and_then(|m| closest.covers_gap_m(m, &square, self.rules));
        FieldLimit {
            team: self.team.number,
            people: self.team.size(),
            ground: self.ground,
            legs: self.on.legs.clone(),
            rope: rope.map(|(number, r)| RopeName::of(number, r)),
            length_m,
            holds_to_gap_m,
            otherwise: Vec::new(),
        }
    }

    /// Ties the team otherwise for the rows for which its rope is too short as is taught; gives the ways that are used.
    fn tie_otherwise(
        &self,
        rows: &mut [FieldRow],
        limit: &FieldLimit,
        rope: &Rope,
    ) -> Vec<FieldOtherwise> {
        if rows.iter().all(|row| row.fits != Some(false)) {
            return Vec::new();
        }
        let mut ways = Ways::new(self, rope);
        // The narrowest gap is no row.
        if limit.holds_to_gap_m.is_none() {
            ways.over(0.0);
        }
        for row in rows.iter_mut().filter(|row| row.fits == Some(false)) {
            row.otherwise = ways.over(row.gap_m);
        }
        let used = ways.used.into_iter();
        used.map(|(_, otherwise)| otherwise).collect()
    }
}

/// The ways to tie otherwise than is taught for a rope that is too short for that: for each gap the least changed that does.
struct Ways<'a> {
    table: &'a Table<'a>,
    rope_m: f64,
    all: Vec<Tying>,
    /// Those used so far, each with its place among all.
    used: Vec<(usize, FieldOtherwise)>,
}

impl<'a> Ways<'a> {
    fn new(table: &'a Table<'a>, rope: &Rope) -> Self {
        Self {
            table,
            rope_m: rope.length_m,
            all: Tying::all(&table.draft(0.0), table.rules),
            used: Vec::new(),
        }
    }

    /// How the team is tied over such gaps; `None` where the rope is too short however it is tied.
    fn over(&mut self, gap_m: f64) -> Option<RowOtherwise> {
        let all = self.all.iter().enumerate();
        let tied = |(place, tying)| Some((place, tying, self.tied(tying, gap_m)?));
        let (place, tying, draft) = { all }.find_map(tied)?;
        let (spacing_m, ledger) = (draft.spacing.spacing_m, draft.ledger);
        let mut used = self.used.iter();
        let known = used.position(|(known, _)| *known == place);
        let way = match known {
            Some(at) => at + 1,
            None => {
                let used = FieldOtherwise {
                    changes: tying.changes.clone(),
                    spacing_m,
                    to_gap_m: self.to_gap_m(tying, &draft)?,
                };
                self.used.push((place, used));
                self.used.len()
            }
        };
        Some(RowOtherwise {
            way,
            spacing_m,
            coil_m: ledger.coils_m / 2.0,
            rope_m: ledger.total_m,
        })
    }

    fn tied(&self, tying: &Tying, gap_m: f64) -> Option<Draft> {
        let Ground { over, hardship, .. } = *self.table.on;
        let on_rope = OnRope {
            team: self.table.team,
            over,
            hardship,
            rules: &tying.rules,
            rope_m: self.rope_m,
        };
        let square = |_| square(gap_m);
        match tying.closer {
            true => {
                let taught = self.table.draft(gap_m).spacing;
                on_rope.below(taught.spacing_m, &square)
            }
            false => on_rope.as_asked(&square),
        }
    }

    /// The widest gap that a way does for.
    fn to_gap_m(&self, tying: &Tying, draft: &Draft) -> Option<f64> {
        let (people, rules) = (self.table.team.size(), &tying.rules);
        match tying.closer {
            true => Some(spacing::suits_gap_m(people, draft.spacing.spacing_m, rules).max(0.0)),
            false => draft.covers_gap_m(self.rope_m, &|_| 1.0, rules),
        }
    }
}

/// Gaps of one width and nothing else, met square.
fn square(gap_m: f64) -> Meeting {
    Meeting {
        effective_gap_m: gap_m,
        factor: 1.0,
        greatest_factor: 1.0,
        zone: Some(0),
        along: None,
    }
}

/// By the arithmetic of the legs.
fn askew(rules: &Rules) -> [FieldAskew; 2] {
    let (along_deg, most) = (rules[Rule::AlongDeg], rules[Rule::GapMostWidths]);
    MET_DEG.map(|met_deg| {
        let (widths, along) = widths(met_deg, along_deg, most);
        FieldAskew {
            met_deg,
            widths,
            along,
        }
    })
}
