//! Where along the rope each tie-in and knot comes, so that it can be laid out and tied in one pass. What would lie beyond
//! the end of the rope has no place.

use crate::{
    plan::leg::{KnotSet, Mark, MarkKind, NoPlace},
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
/// let wider_m = team.spacing_m + 0.5;
/// let layout = RopeLayout { people: 2, spacing_m: wider_m, knots: &team.knots, coil_m: team.coil_m, rope_m: None };
/// let (laid, _) = marks(&layout, &job.rules);
/// assert_eq!((laid.len(), laid[0].at_m), (team.marks.len(), team.coil_m), "as many knots, behind a shorter coil");
/// let end_m = laid.last().map(|mark| mark.at_m).expect("an end");
/// assert!((end_m - team.ledger.total_m - 0.5).abs() < 1e-9, "half a metre more between the two");
/// // On a rope of 20 m, without coils, only the first of them finds a place, and no knot beyond 18.8 m does.
/// let (laid, beyond) = marks(&RopeLayout { coil_m: 0.0, rope_m: Some(20.0), ..layout }, &job.rules);
/// assert!(laid.iter().all(|mark| mark.at_m <= 20.0) && laid.last().map(|mark| mark.at_m) == Some(20.0));
/// assert_eq!(beyond.last().and_then(|mark| mark.person), Some(2));
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
    /// Length of the rope at hand, metres, where one is: what would lie beyond it has no place.
    pub rope_m: Option<f64>,
}

/// The marks from the first person's free end, in metres before anything is tied. A tie-in or knot
/// begins at its mark and takes its rope from there on. Beside them stands what has no place on the rope.
#[must_use]
pub fn marks(layout: &RopeLayout<'_>, rules: &Rules) -> (Vec<Mark>, Vec<NoPlace>) {
    let people = layout.people;
    let mut tape = Tape {
        at_m: 0.0,
        arm_span_m: rules[Rule::ArmSpanM],
        rope_m: layout.rope_m.unwrap_or(f64::INFINITY),
        marks: Vec::new(),
        no_place: Vec::new(),
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
    tape.end();
    (tape.marks, tape.no_place)
}

/// A tape laid along the rope.
struct Tape {
    at_m: f64,
    arm_span_m: f64,
    rope_m: f64,
    marks: Vec<Mark>,
    no_place: Vec<NoPlace>,
}

/// A rope cut off by less than this is still long enough, metres: noise of sums.
const NOISE_M: f64 = 1e-6;

impl Tape {
    fn run(&mut self, length_m: f64) {
        self.at_m += length_m;
    }

    fn tie(&mut self, kind: MarkKind, person: Option<usize>, takes_m: f64) {
        let missing_m = self.at_m + takes_m - self.rope_m;
        if missing_m > NOISE_M {
            self.no_place.push(NoPlace {
                kind,
                person,
                missing_m,
            });
        } else {
            self.mark(self.at_m, kind, person);
        }
        self.run(takes_m);
    }

    /// The end of the rope, wherever the set-up would end.
    fn end(&mut self) {
        let at_m = if self.at_m > self.rope_m - NOISE_M {
            self.rope_m
        } else {
            self.at_m
        };
        self.mark(at_m, MarkKind::End, None);
    }

    fn mark(&mut self, at_m: f64, kind: MarkKind, person: Option<usize>) {
        self.marks.push(Mark {
            at_m,
            at_arm_spans: at_m / self.arm_span_m,
            kind,
            person,
        });
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        plan::{leg::Bite, why::KnotsWhy},
        practice::set::Source,
    };

    /// Where a pair at 10 m with coils of 3 m comes on a rope: the marks, their arm spans, and what is missing for whom has no
    /// place. With a metre for each it takes 18 m.
    fn laid(rope_m: f64) -> (Vec<f64>, Vec<f64>, Vec<f64>) {
        let rules = Rules::with_practice(&Source::Named("arm-span")).unwrap();
        let knots = KnotSet {
            count: 0,
            each_end: 0,
            first_m: 3.0,
            step_m: 2.0,
            rope_each_m: 1.2,
            bite: Bite::Yes,
            why: KnotsWhy::Many,
        };
        let layout = RopeLayout {
            people: 2,
            spacing_m: 10.0,
            knots: &knots,
            coil_m: 3.0,
            rope_m: Some(rope_m),
        };
        let (marks, no_place) = marks(&layout, &rules);
        (
            marks.iter().map(|mark| mark.at_m).collect(),
            marks.iter().map(|mark| mark.at_arm_spans).collect(),
            no_place.iter().map(|none| none.missing_m).collect(),
        )
    }

    #[test]
    fn marks_come_in_metres_and_arm_spans_and_end_with_the_rope() {
        let (at_m, spans, none) = laid(18.0);
        assert_eq!((at_m, none), (vec![3.0, 14.0, 18.0], vec![]));
        // An arm span is 1.8 m (common practice).
        let want = [3.0 / 1.8, 14.0 / 1.8, 10.0];
        let near = |(got, want): (&f64, &f64)| (got - want).abs() < 1e-9;
        assert!(spans.iter().zip(&want).all(near), "{spans:?}");
        assert_eq!(laid(20.0).0, [3.0, 14.0, 18.0], "the rest lies in a bag");
        assert_eq!(laid(16.0).0, [3.0, 14.0, 16.0], "a shorter coil");
        let noise_m = 18.0 + 1e-8;
        assert_eq!(
            laid(noise_m).0,
            [3.0, 14.0, noise_m],
            "noise of sums is no bag"
        );
        let (at_m, _, none) = laid(14.5);
        assert_eq!(
            (at_m, none),
            (vec![3.0, 14.5], vec![0.5]),
            "no place for the second"
        );
    }
}
