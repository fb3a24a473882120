//! One plan of the library, as JSON, against one of the second implementation.

use serde_json::Value;

use super::{
    case::Case,
    parts::{Difference, MARGIN_OFF_M, NOT_YET, Part, Slight},
    plan::{Leg, Planned, Setup},
    rope::sold_m,
    stretch::Roped,
};

/// Chainages agree to this, metres.
const PLACE_M: f64 = 1e-3;
/// Slopes agree to this, degrees: a height every few metres, each kept to a tenth of a millimetre or so.
const SLOPE_DEG: f64 = 0.01;
/// What is worked out from whole figures agrees to this.
const FIGURE: f64 = 1e-6;

/// What was found so far.
pub(super) struct Found {
    pub(super) all: Vec<Difference>,
    leg: String,
    /// How far places along the line may be off, and lengths that hang on them.
    place_m: f64,
}

impl Found {
    pub(super) fn add(&mut self, part: Part, says: impl AsRef<str>) {
        let says = format!("{}{}", self.leg, says.as_ref());
        self.all.push(Difference {
            part,
            says,
            slight: None,
        });
    }

    /// A number that may be missing on both sides.
    fn number(&mut self, part: Part, name: &str, got: &Value, want: Option<f64>, tolerance: f64) {
        let same = match (got.as_f64(), want) {
            (Some(got), Some(want)) => (got - want).abs() <= tolerance,
            (got, want) => got.is_none() && want.is_none(),
        };
        if !same {
            self.add(part, format!("{name}: library {got}, second {want:?}"));
        }
    }

    fn equal(&mut self, part: Part, name: &str, got: &Value, want: impl Into<Value>) {
        let want = want.into();
        if *got != want {
            self.add(part, format!("{name}: library {got}, second {want}"));
        }
    }
}

fn list<'v>(value: &'v Value, name: &str) -> &'v [Value] {
    value[name].as_array().map_or(&[], Vec::as_slice)
}

fn has(leg: &Value, code: &str) -> bool {
    list(leg, "findings").iter().any(|f| f["code"] == code)
}

fn crossings(found: &mut Found, json: &Value, plan: &Planned) {
    for (number, (got, want)) in list(json, "zones").iter().zip(&plan.met.zones).enumerate() {
        let got: Vec<(f64, f64)> = list(got, "crossings")
            .iter()
            .map(|c| {
                (
                    c["enter_m"].as_f64().unwrap(),
                    c["exit_m"].as_f64().unwrap(),
                )
            })
            .collect();
        let want: Vec<(f64, f64)> = want.crossings.iter().map(|c| (c.from_m, c.to_m)).collect();
        let near = |(a, b): (&(f64, f64), &(f64, f64))| {
            (a.0 - b.0).abs() <= PLACE_M && (a.1 - b.1).abs() <= PLACE_M
        };
        if got.len() != want.len() || !got.iter().zip(&want).all(near) {
            found.add(
                Part::Crossings,
                format!("zone {}: library {got:?}, second {want:?}", number + 1),
            );
        }
    }
}

/// Whether the legs are the same, so that the rest can be compared.
fn legs(found: &mut Found, json: &Value, plan: &Planned) -> bool {
    let show = |roped: bool, from: f64, to: f64| {
        let rope = if roped { "=" } else { "-" };
        format!("{from:.4} {rope} {to:.4}")
    };
    let got: Vec<String> = list(json, "legs")
        .iter()
        .map(|l| {
            let at = |name: &str| l[name].as_f64().unwrap();
            show(l["roped"] == true, at("start_m"), at("end_m"))
        })
        .collect();
    let want: Vec<String> = plan
        .legs
        .iter()
        .map(|l| show(l.roped.is_some(), l.stretch.from_m, l.stretch.to_m))
        .collect();
    let off = |got: &Value, want: &Leg| {
        let off = |name: &str, m: f64| (got[name].as_f64().unwrap() - m).abs();
        let other = (got["roped"] == true) != want.roped.is_some();
        let start = off("start_m", want.stretch.from_m);
        let end = off("end_m", want.stretch.to_m);
        if other { f64::INFINITY } else { start.max(end) }
    };
    let legs = list(json, "legs");
    let off_m = if legs.len() == plan.legs.len() {
        let all = legs.iter().zip(&plan.legs).map(|(a, b)| off(a, b));
        all.fold(0.0, f64::max)
    } else {
        f64::INFINITY
    };
    if off_m > PLACE_M {
        found.add(
            Part::Legs,
            format!("legs: library {got:?}, second {want:?}"),
        );
        found.all.last_mut().unwrap().slight = Some(Slight::Off(off_m));
        found.place_m = MARGIN_OFF_M;
    }
    off_m <= MARGIN_OFF_M
}

fn spacing_and_gaps(found: &mut Found, got: &Value, team: &Value, case: &Case, want: &Roped) {
    let spacing = Some(want.spacing_m);
    found.number(
        Part::Spacing,
        "spacing_m",
        &team["spacing_m"],
        spacing,
        FIGURE,
    );
    let widest = want.zones.iter().map(|(z, _)| case.zones[*z].gap_m);
    let widest = widest.reduce(f64::max);
    found.number(Part::Gaps, "gap_m", &got["gap_m"], widest, FIGURE);
    let effective = want.effective.map(|e| e.gap_m);
    let name = "effective_gap_m";
    found.number(Part::Gaps, name, &got[name], effective, found.place_m);
    let along = want.effective.is_some_and(|e| e.along);
    found.equal(Part::Gaps, "along", &got["along"], along);
}

/// Where a leg may begin a little elsewhere its pieces do too, and how steep they are is another question.
fn slopes(found: &mut Found, got: &Value, want: &Setup) {
    if found.place_m > PLACE_M {
        return;
    }
    let slopes = want.slopes.as_ref();
    let each = [
        ("steepest_deg", slopes.map(|s| s.steepest_deg)),
        ("lip_slope_deg", slopes.map(|s| s.lip_deg)),
        ("lip_slope_behind_deg", slopes.map(|s| s.lip_behind_deg)),
    ];
    for (name, want) in each {
        found.number(Part::Slopes, name, &got[name], want, SLOPE_DEG);
    }
}

fn rope(found: &mut Found, team: &Value, want: &Setup) {
    let ledger = &want.ledger;
    let knots = &team["knots"]["count"];
    found.equal(Part::Knots, "knots", knots, u64::from(ledger.knots));
    let coil = Some(ledger.coil_m);
    found.number(Part::Coils, "coil_m", &team["coil_m"], coil, FIGURE);
    let lines = [
        ("spans_m", ledger.spans_m),
        ("knots_m", ledger.knots_m),
        ("tie_ins_m", ledger.tie_ins_m),
        ("coils_m", ledger.coils_m),
        ("total_m", ledger.total_m()),
    ];
    for (name, want) in lines {
        let got = &team["ledger"][name];
        found.number(Part::Ledger, name, got, Some(want), FIGURE);
    }
    let sold = sold_m(ledger.total_m());
    let name = "sold_length_m";
    found.number(Part::Ledger, name, &team[name], sold, FIGURE);
    let covers = [
        ("as_tied_gap_m", want.as_tied_gap_m),
        ("as_tied_along_m", want.as_tied_along_m),
        ("covers_gap_m", want.covers_m),
    ];
    // What a pair with fewer knots than the layout would cover is no answer any more.
    let part = if want.layout_asks {
        Part::WholeLayouts
    } else {
        Part::Covers
    };
    for (name, want) in covers {
        found.number(part, name, &team[name], want, found.place_m);
    }
}

fn limits(found: &mut Found, got: &Value, case: &Case, roped: &Roped, setup: &Setup) {
    let effective_m = roped.effective.map_or(0.0, |e| e.gap_m);
    let short_m = setup
        .at_hand
        .as_ref()
        .is_some_and(|(rope, ..)| case.ropes[*rope].length_m < setup.ledger.total_m() - FIGURE);
    let unsold = case.ropes.is_empty() && sold_m(setup.ledger.total_m()).is_none();
    let want = [
        ("no-setup", setup.beyond_limits),
        ("two-over-one-gap", roped.spacing_m < effective_m - FIGURE),
        ("no-rope-fits", short_m || unsold),
    ];
    for (code, want) in want {
        let before = found.all.len();
        found.equal(Part::Limits, code, &has(got, code).into(), want);
        let even = (roped.spacing_m - effective_m).abs() <= 1e-9;
        if code == "two-over-one-gap" && even && found.all.len() > before {
            found.all[before].slight = Some(Slight::Even);
        }
    }
}

/// Whether somebody has no place on the rope, so that the plan tells of no loop.
fn ends_too_soon(found: &mut Found, team: &Value) -> bool {
    let mut no_place = list(team, "no_place").iter();
    let unplaced = no_place.any(|none| none.get("person").is_some());
    if unplaced && !list(team, "reach").is_empty() {
        found.add(Part::Reach, "reach: told of a rope that ends too soon");
    }
    unplaced
}

fn at_hand(found: &mut Found, team: &Value, case: &Case, setup: &Setup) {
    let name = "rope";
    let Some((rope, carried, reaches)) = &setup.at_hand else {
        found.equal(Part::AtHand, name, &team[name], Value::Null);
        return;
    };
    let number = *rope as u64 + 1;
    found.equal(Part::AtHand, name, &team[name]["number"], number);
    let spare = case.ropes[*rope].length_m - setup.ledger.total_m();
    let got = &team[name]["spare_m"];
    found.number(Part::AtHand, "spare_m", got, Some(spare), FIGURE);
    let carried = [("coil_carried_m", carried.coil_m), ("bag_m", carried.bag_m)];
    for (name, want) in carried {
        if team.get(name).is_none() {
            found.add(Part::Carried, format!("{name}: {NOT_YET}"));
        } else {
            found.number(Part::Carried, name, &team[name], Some(want), FIGURE);
        }
    }
    if team.get("reach").is_none() {
        return found.add(Part::Reach, format!("reach: {NOT_YET}"));
    }
    if ends_too_soon(found, team) {
        return;
    }
    // The plan may name some persons only: one at the end there must be, and the worst place in the middle.
    let named: Vec<u64> = list(team, "reach")
        .iter()
        .filter_map(|r| r["person"].as_u64())
        .collect();
    let is_named = |p: usize| named.contains(&(p as u64));
    let middle = reaches[1..reaches.len() - 1].iter();
    let worst = middle.min_by(|a, b| a.depth_m.total_cmp(&b.depth_m));
    let worst_named = worst.is_none_or(|w| {
        let as_bad = reaches[1..reaches.len() - 1].iter();
        as_bad
            .filter(|r| r.depth_m <= w.depth_m + FIGURE)
            .any(|r| is_named(r.person))
    });
    if !(is_named(1) || is_named(case.people)) || !worst_named {
        found.add(Part::Reach, format!("reach: only persons {named:?}"));
    }
    for got in list(team, "reach") {
        let person = got["person"].as_u64().unwrap_or_default() as usize;
        let Some(want) = reaches.iter().find(|r| r.person == person) else {
            found.add(Part::Reach, format!("reach: no person {person}"));
            continue;
        };
        let name = format!("depth_m of {person}");
        let depth = Some(want.depth_m);
        found.number(Part::Reach, &name, &got["depth_m"], depth, FIGURE);
        // Whom it names is the plan's choice of words; whether somebody must untie is not.
        let untied = match &got["needs_untied"] {
            Value::Null | Value::Bool(false) => false,
            Value::Array(all) => !all.is_empty(),
            _ => true,
        };
        let name = format!("needs_untied of {person}");
        found.equal(Part::Reach, &name, &untied.into(), want.needs_untied);
    }
}

/// What a roped leg says of ice that the leader only wants told is left open by the rules, and not compared.
fn known_ice(found: &mut Found, got: &Value, case: &Case, want: &Leg) {
    let name = "gap_known";
    if got.get(name).is_none() {
        if want.undrawn {
            found.add(Part::KnownIce, format!("{name}: {NOT_YET}"));
        }
    } else if want.undrawn || (want.roped.is_some() && !case.only_tell) {
        found.equal(Part::KnownIce, name, &got[name], !want.undrawn);
    }
    let grave = ["look", "stop", "outside"];
    let verdict = got["verdict"].as_str().unwrap_or_default();
    if want.undrawn && !grave.contains(&verdict) {
        found.add(
            Part::KnownIce,
            format!("verdict on ice without a gap width: {verdict}"),
        );
    }
}

/// Every difference between the two plans of a trip.
pub(super) fn compare(case: &Case, json: &Value, plan: &Planned) -> Vec<Difference> {
    let mut found = Found {
        all: Vec::new(),
        leg: String::new(),
        place_m: PLACE_M,
    };
    if plan.meets_nothing() {
        found.add(Part::Crossings, "a plan, and no ice is met");
    }
    crossings(&mut found, json, plan);
    if legs(&mut found, json, plan) {
        for (got, want) in list(json, "legs").iter().zip(&plan.legs) {
            found.leg = format!("leg {}: ", got["leg"]);
            let zones: Vec<Value> = want.zones.iter().map(|z| (z + 1).into()).collect();
            found.equal(Part::Legs, "zones", &got["zones"], zones);
            known_ice(&mut found, got, case, want);
            if let Some((roped, setup)) = &want.roped {
                let team = &got["teams"][0];
                spacing_and_gaps(&mut found, got, team, case, roped);
                slopes(&mut found, got, setup);
                rope(&mut found, team, setup);
                limits(&mut found, got, case, roped, setup);
                at_hand(&mut found, team, case, setup);
            }
        }
    }
    if plan.lengthened {
        for one in &mut found.all {
            if one.part != Part::Crossings {
                one.part = Part::WholeLayouts;
            }
        }
    }
    found.all
}
