//! Whether a rope team holds the fall of any of its members: corners of everything assumed, no probability.
//!
//! *Model:* `hold_dynamic`, run with all assumptions favourable, central and adverse; where these disagree, from
//! the centre with one assumption at a time swung to either end. "Held" means that the slide stops before the
//! first holder reaches the lip; the room for it is the spacing less the way from the lip to where the bridge broke.
//! *Valid:* one person falls, the others stand on the rope's line; the answer gets better monotonically from each
//! adverse end to its favourable one, which holds where people can lie still by themselves (μ > tan β).
//! *Error:* a verdict on assumptions is no measurement; see the ranges. *Source:* `[ours]`, `[derived]`.
//! *Checked:* tests/physics (patterns published for such tests, laws).

mod asking;
pub mod limits;
pub mod order;
mod team;

use super::{
    assumed::{Assumed, Case, Corner, Parameter},
    bound::{self, Bound},
    capstan,
    hold_dynamic::{Fall, Followed, GapSide, Outcome},
};
use crate::fault::refusal::Refusal;

pub use team::{BrakeKnots, Faller, Holding, HoldingAnswer, Team};

/// People on one rope the model answers for `[ours]`; five is the planner's own limit.
const PEOPLE: Bound = Bound::new("people on one rope", "", 2.0, 12.0);
const KNOTS: Bound = Bound::new("brake knots on one side", "", 0.0, 20.0);
const CORNERS: [Corner; 3] = [Corner::Favourable, Corner::Central, Corner::Adverse];

impl Team {
    /// The answer for everybody's fall.
    ///
    /// # Errors
    /// Names the first figure that lies outside what it can be.
    pub fn holding(&self, assumed: &Assumed) -> Result<Holding, Refusal> {
        self.answer(assumed, &mut Followed::default(), |_, _| true)
    }

    /// The same in a fraction of the time: what the answer depends on is named for the worst faller only, and left
    /// empty for the others.
    ///
    /// # Errors
    /// As [`Team::holding`].
    pub fn worst_holding(
        &self,
        assumed: &Assumed,
        followed: &mut Followed,
    ) -> Result<Holding, Refusal> {
        self.answer(assumed, followed, |index, worst| index == worst)
    }

    /// The verdicts and figures alone: what an answer depends on is named for nobody.
    ///
    /// # Errors
    /// As [`Team::holding`].
    pub fn verdicts(&self, assumed: &Assumed, followed: &mut Followed) -> Result<Holding, Refusal> {
        self.answer(assumed, followed, |_, _| false)
    }

    /// `names(index, worst)` says for whom the parameters are looked for.
    fn answer(
        &self,
        assumed: &Assumed,
        followed: &mut Followed,
        names: impl Fn(usize, usize) -> bool,
    ) -> Result<Holding, Refusal> {
        self.check()?;
        assumed.check()?;
        let mut fallers = (0..self.masses_kg.len())
            .map(|index| self.faller(index, assumed, followed))
            .collect::<Result<Vec<_>, _>>()?;
        let worst = fallers
            .iter()
            .max_by(|(a, _), (b, _)| a.severity().total_cmp(&b.severity()))
            .map(|(faller, _)| faller.index)
            .ok_or(Refusal::NobodyOnRope)?;
        for (faller, central) in &mut fallers {
            let open = matches!(faller.verdict, HoldingAnswer::DependsOn(_));
            if open && names(faller.index, worst) {
                (faller.verdict, faller.alone) =
                    self.depends(faller.index, assumed, followed, central)?;
            }
        }
        let fallers: Vec<Faller> = fallers.into_iter().map(|(faller, _)| faller).collect();
        let of_worst = fallers.get(worst).ok_or(Refusal::NobodyOnRope)?;
        Ok(Holding {
            verdict: of_worst.verdict.clone(),
            alone: of_worst.alone,
            worst,
            slide_m: span(fallers.iter().flat_map(|f| [f.slide_m.0, f.slide_m.1])),
            peak_holder_force_n: span(
                fallers
                    .iter()
                    .flat_map(|f| [f.peak_holder_force_n.0, f.peak_holder_force_n.1]),
            ),
            fallers,
        })
    }

    fn check(&self) -> Result<(), Refusal> {
        let people = u32::try_from(self.masses_kg.len()).unwrap_or(u32::MAX);
        PEOPLE.check(f64::from(people))?;
        for mass_kg in &self.masses_kg {
            bound::MASS_KG.check(*mass_kg)?;
        }
        bound::SPACING_M.check(self.spacing_m)?;
        bound::GAP_M.check(self.gap_m)?;
        for down_deg in self.down_deg {
            bound::SLOPE_DEG.check(down_deg)?;
        }
        bound::ROPE_N.check(self.rope_ea_n)?;
        if let Some(knots) = self.knots {
            KNOTS.check(f64::from(knots.count_per_side))?;
            bound::LENGTH_M.check(knots.first_m)?;
            bound::LENGTH_M.check(knots.step_m)?;
        }
        Ok(())
    }

    /// Everything but the parameters that an open answer depends on, and the central fall.
    fn faller(
        &self,
        index: usize,
        assumed: &Assumed,
        followed: &mut Followed,
    ) -> Result<(Faller, Outcome), Refusal> {
        let runs = self.corners(index, assumed, followed)?;
        let [favourable, central, adverse] = runs;
        let verdict = match runs.map(|r| r.held) {
            [true, true, true] => HoldingAnswer::HeldInAll,
            [false, false, false] => HoldingAnswer::HeldInNone,
            _ => HoldingAnswer::DependsOn(Vec::new()),
        };
        let over = |f: fn(&Outcome) -> f64| span([f(&favourable), f(&central), f(&adverse)]);
        let faller = Faller {
            index,
            verdict,
            alone: true,
            held_in_centre: central.held,
            slide_m: over(|r| r.slide_m),
            slide_share: over(|r| r.slide_share),
            peak_holder_force_n: over(|r| r.holder_n),
        };
        Ok((faller, central))
    }

    /// The fall of one person with all assumptions favourable, central, adverse.
    fn corners(
        &self,
        index: usize,
        assumed: &Assumed,
        followed: &mut Followed,
    ) -> Result<[Outcome; 3], Refusal> {
        let mut run = |corner| self.outcome(index, &self.case(assumed, |_| corner), followed);
        let [favourable, central, adverse] = CORNERS;
        Ok([run(favourable)?, run(central)?, run(adverse)?])
    }

    /// The parameters whose swing alone flips the central answer; where none does, those that flip it together,
    /// and none of them can be left out.
    fn depends(
        &self,
        index: usize,
        assumed: &Assumed,
        followed: &mut Followed,
        central: &Outcome,
    ) -> Result<(HoldingAnswer, bool), Refusal> {
        let toward = if central.held {
            Corner::Adverse
        } else {
            Corner::Favourable
        };
        let mut swings = Vec::new();
        for parameter in Parameter::ALL.into_iter().filter(|p| self.rests_on(*p)) {
            let case = self.case(assumed, |p| pick(p == parameter, toward));
            let run = self.outcome(index, &case, followed)?;
            swings.push((parameter, run));
        }
        let alone: Vec<Parameter> = swings
            .iter()
            .filter(|(_, run)| run.held != central.held)
            .map(|(p, _)| *p)
            .collect();
        if !alone.is_empty() {
            return Ok((HoldingAnswer::DependsOn(alone), true));
        }
        let moved = |run: &Outcome| (run.slide_share - central.slide_share).abs();
        swings.sort_by(|a, b| moved(&b.1).total_cmp(&moved(&a.1)));
        let all: Vec<Parameter> = swings.into_iter().map(|(p, _)| p).collect();
        let mut flips = |named: &[Parameter]| {
            let case = self.case(assumed, |p| pick(named.contains(&p), toward));
            Ok(self.outcome(index, &case, followed)?.held != central.held)
        };
        Ok((HoldingAnswer::DependsOn(fewest(&all, &mut flips)?), false))
    }

    /// Whether a fall can be another one when this is swung.
    fn rests_on(&self, parameter: Parameter) -> bool {
        let of_knots = matches!(parameter, Parameter::KnotForce | Parameter::KnotBite);
        self.knots.is_some() || !of_knots
    }

    fn case(&self, assumed: &Assumed, corner_of: impl Fn(Parameter) -> Corner) -> Case {
        assumed.case(self.snow, self.on_skis, corner_of)
    }

    /// One fall on the worse ground: for the first person where it falls most in walking direction, for the last where it
    /// falls least; in the middle both are tried and the worse one counts.
    fn outcome(
        &self,
        index: usize,
        case: &Case,
        followed: &mut Followed,
    ) -> Result<Outcome, Refusal> {
        let most = followed.run(&self.fall_of(index, case))?;
        let [least_deg, most_deg] = self.down_deg;
        if !self.in_middle(index) || least_deg.to_bits() == most_deg.to_bits() || !most.held {
            return Ok(most);
        }
        let least = followed.run(&self.fall(index, case, least_deg))?;
        let worse = |o: &Outcome| (!o.held, o.slide_share);
        Ok(Outcome {
            room_left_m: least.room_left_m.min(most.room_left_m),
            ..if worse(&least) > worse(&most) {
                least
            } else {
                most
            }
        })
    }

    fn in_middle(&self, index: usize) -> bool {
        index > 0 && index + 1 < self.masses_kg.len()
    }

    /// The fall of one person with given assumptions, for looking into the model: on the worse ground for the first and
    /// the last, in the middle where it falls most.
    #[must_use]
    pub fn fall_of(&self, index: usize, case: &Case) -> Fall {
        let [least_deg, most_deg] = self.down_deg;
        let last = index > 0 && !self.in_middle(index);
        self.fall(index, case, if last { least_deg } else { most_deg })
    }

    /// How steeply the ground falls towards the lip under those who hold the fall of one person, degrees, negative where
    /// it falls away from it: of a fall in the middle on the side where it falls more.
    #[must_use]
    pub fn toward_lip_deg(&self, index: usize) -> f64 {
        let [least_deg, most_deg] = self.down_deg;
        match (index, self.in_middle(index)) {
            (0, _) => most_deg,
            (_, false) => 0.0 - least_deg,
            (_, true) => most_deg.max(0.0 - least_deg),
        }
    }

    /// The fall of one person where the ground falls so much in walking direction: away from the lip under those ahead,
    /// towards it under those behind.
    fn fall(&self, index: usize, case: &Case, down_deg: f64) -> Fall {
        let behind_rad = down_deg.to_radians();
        let ahead_rad = 0.0 - behind_rad;
        let ahead = self.masses_kg.get(..index).unwrap_or_default();
        let behind = self
            .masses_kg
            .get(index.saturating_add(1)..)
            .unwrap_or_default();
        let walked_m = self.gap_m * case.break_point;
        let left_m = if behind.is_empty() {
            walked_m
        } else {
            self.gap_m - walked_m
        };
        let mut sides = Vec::new();
        if !ahead.is_empty() {
            let holders_kg = ahead.iter().rev().copied().collect();
            let knots_m = self.knots_m(index.saturating_sub(1), false);
            sides.push(self.side(case, holders_kg, knots_m, left_m, ahead_rad));
        }
        if !behind.is_empty() {
            let knots_m = self.knots_m(index, true);
            sides.push(self.side(case, behind.to_vec(), knots_m, walked_m, behind_rad));
        }
        Fall {
            victim_kg: self.masses_kg.get(index).copied().unwrap_or_default(),
            sides,
            modulus_n: self.rope_ea_n,
            rope_damping: case.rope_damping,
            delay_s: case.delay_s,
        }
    }

    fn side(
        &self,
        case: &Case,
        holders_kg: Vec<f64>,
        knots_m: Vec<f64>,
        beyond_m: f64,
        slope_rad: f64,
    ) -> GapSide {
        GapSide {
            holders_kg,
            spacing_m: self.spacing_m,
            slack_m: case.slack_m,
            beyond_m,
            slope_rad,
            lip_mu: capstan::mu_of_square_lip(case.lip),
            mu_before: case.mu_before,
            mu_after: case.mu_after,
            knots_m,
            knot_n: case.knot_n,
            bite_m: case.knot_bite_m,
        }
    }

    /// Knots in span `span` (between persons `span` and `span + 1`), m from the person at its front or its back.
    fn knots_m(&self, span: usize, from_front: bool) -> Vec<f64> {
        let Some(knots) = self.knots else {
            return Vec::new();
        };
        let mut from_front_m: Vec<f64> = Vec::new();
        if span == 0 {
            from_front_m.extend(knots.distances_m());
        }
        if span + 2 == self.masses_kg.len() {
            from_front_m.extend(knots.distances_m().map(|m| self.spacing_m - m));
        }
        from_front_m.retain(|m| *m > 0.0 && *m < self.spacing_m);
        if !from_front {
            for at_m in &mut from_front_m {
                *at_m = self.spacing_m - *at_m;
            }
        }
        from_front_m
    }
}

impl Faller {
    /// Higher is worse: first the verdict, then the centre, then how much of the room is used.
    fn severity(&self) -> f64 {
        let centre = if self.held_in_centre { 0.0 } else { 4.0 };
        10.0 * f64::from(self.verdict.rank()) + centre + self.slide_share.0 + self.slide_share.1
    }
}

fn pick(swung: bool, toward: Corner) -> Corner {
    if swung { toward } else { Corner::Central }
}

/// The shortest start of `parameters` that flips the answer, less what is not needed in it; all of them where even they do not.
/// Whatever flips it does so with more swung as well.
fn fewest(
    parameters: &[Parameter],
    flips: &mut dyn FnMut(&[Parameter]) -> Result<bool, Refusal>,
) -> Result<Vec<Parameter>, Refusal> {
    let (mut too_few, mut enough) = (0, parameters.len());
    while too_few + 1 < enough {
        let half = usize::midpoint(too_few, enough);
        if flips(parameters.get(..half).unwrap_or_default())? {
            enough = half;
        } else {
            too_few = half;
        }
    }
    let mut named = parameters.get(..enough).unwrap_or_default().to_vec();
    for parameter in named.clone() {
        let without: Vec<Parameter> = named.iter().copied().filter(|p| *p != parameter).collect();
        if !without.is_empty() && flips(&without)? {
            named = without;
        }
    }
    Ok(named)
}

/// Least and most of some numbers; zeros for none.
fn span(values: impl IntoIterator<Item = f64>) -> (f64, f64) {
    values
        .into_iter()
        .fold(None, |seen: Option<(f64, f64)>, v| {
            Some(seen.map_or((v, v), |(lo, hi)| (lo.min(v), hi.max(v))))
        })
        .unwrap_or_default()
}
