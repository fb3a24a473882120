//! The plan of the second implementation: legs that tile the line, each roped one with its rope.

use super::{
    case::Case,
    figures::MEETS_M,
    ice,
    line::Line,
    meet::Stretch,
    rope::{
        Carried, LONGEST_SOLD_M, Ledger, Reach, beyond_limits, carried, chosen, covers_m, ledger,
        reaches, sold_m, suited_gap_m,
    },
    slope::{Slopes, slopes},
    stretch::{Met, Roped, habit_m, roped, stepped, suits_m},
};

/// The rope of a roped leg.
#[derive(Debug)]
pub(super) struct Setup {
    pub(super) ledger: Ledger,
    pub(super) beyond_limits: bool,
    /// Whether the whole layout of knots asks for more than habit does.
    pub(super) layout_asks: bool,
    /// None where the rope is too short to be tied so.
    pub(super) as_tied_gap_m: Option<f64>,
    pub(super) as_tied_along_m: Option<f64>,
    pub(super) covers_m: Option<f64>,
    /// With a rope at hand: which, what is carried, and how deep it reaches.
    pub(super) at_hand: Option<(usize, Carried, Vec<Reach>)>,
    /// With heights.
    pub(super) slopes: Option<Slopes>,
}

/// One leg.
#[derive(Debug)]
pub(super) struct Leg {
    pub(super) stretch: Stretch,
    /// Indices of the zones met, margin included.
    pub(super) zones: Vec<usize>,
    pub(super) roped: Option<(Roped, Setup)>,
    /// Whether it is on ice that nobody has drawn.
    pub(super) undrawn: bool,
}

/// All of it.
#[derive(Debug)]
pub(super) struct Planned {
    pub(super) met: Met,
    pub(super) legs: Vec<Leg>,
    /// Whether the whole layout of knots lengthened a spacing.
    pub(super) lengthened: bool,
}

impl Planned {
    /// Whether the line meets a drawn zone, margin included.
    pub(super) fn meets_a_zone(&self) -> bool {
        self.met.zones.iter().any(|z| !z.touches.is_empty())
    }

    /// Whether there is nothing to plan for: that is an error, for a plan without ice would look like an all-clear.
    pub(super) fn meets_nothing(&self) -> bool {
        !self.meets_a_zone() && self.met.ice.is_empty()
    }
}

/// Where no rope is at hand the team buys one for the whole trip, and carries it on every leg.
fn bought_m(demand_m: f64) -> f64 {
    sold_m(demand_m).unwrap_or(LONGEST_SOLD_M)
}

fn setup(
    case: &Case,
    line: &Line,
    leg: &Roped,
    ledger: Ledger,
    (rope, bought_m): (Option<usize>, f64),
    undrawn: &[Stretch],
) -> Setup {
    let held_m = rope.map_or(bought_m, |r| case.ropes[r].length_m);
    let at_hand = rope.map(|r| {
        let carried = carried(case, &ledger, &case.ropes[r]);
        let reaches = reaches(case, leg.spacing_m, carried.coil_m);
        (r, carried, reaches)
    });
    let is_short = match rope {
        Some(_) => held_m < ledger.total_m() - 1e-9,
        None => sold_m(ledger.total_m()).is_none(),
    };
    let as_tied = |gap_m: f64| (!is_short).then_some(gap_m);
    let drawn = leg.zones.iter().flat_map(|(_, touches)| touches);
    let ice: Vec<Stretch> = drawn.chain(undrawn).copied().collect();
    Setup {
        ledger,
        beyond_limits: beyond_limits(case, leg),
        layout_asks: ledger.knots > 0
            && stepped(habit_m(case, &leg.zones, leg.undrawn)) < case.layout.needs_m(case.people),
        as_tied_gap_m: as_tied(suited_gap_m(case, line, leg, leg.spacing_m)),
        as_tied_along_m: as_tied(suits_m(case.people, leg.spacing_m)),
        covers_m: covers_m(case, line, leg, held_m),
        at_hand,
        slopes: slopes(case, line, leg.stretch, leg.spacing_m, &ice),
    }
}

fn unroped(met: &Met, from_m: f64, to_m: f64) -> Option<Leg> {
    let stretch = Stretch { from_m, to_m };
    if stretch.length_m() <= MEETS_M {
        return None;
    }
    let on = |touches: &[Stretch]| touches.iter().any(|t| t.common(stretch).is_some());
    let zones = met.zones.iter().enumerate();
    Some(Leg {
        stretch,
        zones: zones
            .filter(|(_, z)| on(&z.touches))
            .map(|(number, _)| number)
            .collect(),
        roped: None,
        undrawn: on(&met.ice),
    })
}

/// Plans a trip.
pub(super) fn plan(case: &Case) -> Planned {
    let line = Line::of(&case.segments);
    let met = ice::met(case, &line);
    let stretches = roped(case, &line, &met);
    let ledgers: Vec<Ledger> = stretches
        .iter()
        .map(|leg| {
            let knots = leg.ties_knots(case, &line);
            ledger(case, leg.spacing_m, knots)
        })
        .collect();
    let demand_m = ledgers.iter().map(Ledger::total_m).fold(0.0, f64::max);
    let rope = chosen(case, demand_m);
    let lengthened = stretches.iter().any(|s| s.lengthened);
    let (mut legs, mut at_m) = (Vec::new(), 0.0);
    for (leg, ledger) in stretches.into_iter().zip(ledgers) {
        legs.extend(unroped(&met, at_m, leg.stretch.from_m));
        at_m = leg.stretch.to_m;
        let rope = (rope, bought_m(demand_m));
        let setup = setup(case, &line, &leg, ledger, rope, &met.undrawn);
        legs.push(Leg {
            stretch: leg.stretch,
            zones: leg.zones.iter().map(|(z, _)| *z).collect(),
            undrawn: leg.undrawn,
            roped: Some((leg, setup)),
        });
    }
    legs.extend(unroped(&met, at_m, line.length_m()));
    Planned {
        met,
        legs,
        lengthened,
    }
}
