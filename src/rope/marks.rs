//! Where along the rope each tie-in and knot comes, so that it can be laid out and tied in one pass.

use crate::{
    plan::leg::{KnotSet, Mark, MarkKind},
    practice::{Rule, Rules},
};

/// What the rope is laid out for.
///
/// ```
/// use schrund::rope::marks::{RopeLayout, marks};
///
/// let job = schrund::example::pair()?;
/// let team = &schrund::plan(&job)?.legs[1].teams[0];
/// // Tied with the coils needed instead of those carried, and half a metre wider.
/// let layout = RopeLayout { people: 2, spacing_m: team.spacing_m + 0.5, knots: &team.knots, coil_m: team.coil_m };
/// let laid = marks(&layout, &job.rules);
/// assert_eq!((laid.len(), laid[0].at_m), (team.marks.len(), team.coil_m), "as many knots, behind a shorter coil");
/// let end_m = laid.last().map(|mark| mark.at_m).expect("an end");
/// assert!((end_m - team.ledger.total_m - 0.5).abs() < 1e-9, "half a metre more between the two");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct RopeLayout<'a> {
    /// How many are on it.
    pub people: usize,
    /// Between neighbours, metres.
    pub spacing_m: f64,
    /// Brake knots.
    pub knots: &'a KnotSet,
    /// Coil carried by each end person, metres.
    pub coil_m: f64,
}

/// The marks from the first person's free end, in metres before anything is tied. A tie-in or knot
/// begins at its mark and takes its rope from there on.
#[must_use]
pub fn marks(layout: &RopeLayout<'_>, rules: &Rules) -> Vec<Mark> {
    let people = layout.people;
    let mut tape = Tape {
        at_m: 0.0,
        arm_span_m: rules[Rule::ArmSpanM],
        marks: Vec::new(),
    };
    tape.run(layout.coil_m);
    for i in 0..people {
        tape.tie(MarkKind::TieIn, Some(i + 1), rules[Rule::TieInM]);
        if i + 1 < people {
            let knots_m = layout.knots.in_span(i, people - 1, layout.spacing_m);
            tape.span(layout, &knots_m);
        }
    }
    tape.run(layout.coil_m);
    tape.tie(MarkKind::End, None, 0.0);
    tape.marks
}

/// A tape laid along the rope.
struct Tape {
    at_m: f64,
    arm_span_m: f64,
    marks: Vec<Mark>,
}

impl Tape {
    fn run(&mut self, length_m: f64) {
        self.at_m += length_m;
    }

    fn tie(&mut self, kind: MarkKind, person: Option<usize>, takes_m: f64) {
        self.marks.push(Mark {
            at_m: self.at_m,
            at_arm_spans: self.at_m / self.arm_span_m,
            kind,
            person,
        });
        self.run(takes_m);
    }

    fn span(&mut self, layout: &RopeLayout<'_>, knots_at_m: &[f64]) {
        let mut walked_m = 0.0;
        for knot_m in knots_at_m {
            self.run(knot_m - walked_m);
            let takes_m = layout.knots.rope_each_m;
            self.tie(MarkKind::Knot, None, takes_m);
            walked_m = *knot_m;
        }
        self.run(layout.spacing_m - walked_m);
    }
}
