//! What the models of falls and hauls take as given, each figure with who put it in force.

use std::collections::BTreeMap;

use crate::physics::{
    assumed::Assumed,
    bound::{self, Bound},
    gear::{Gear, RopeMass},
};
use crate::{
    fault::refusal::Refusal,
    practice::standing::{Origin, Standing},
};

/// The assumptions of the fall model and the figures of gear, open to change by name.
///
/// ```
/// use schrund::practice::{Nature, Origin};
///
/// let mut nature = Nature::built_in()?;
/// assert!(nature.knows("pull.strong_n") && nature.knows("delay_s") && !nature.knows("pull"));
/// nature.set("pull.strong_n", 350.0, Origin::Flag)?;
/// assert_eq!(nature.gear.pull.strong_n, 350.0);
/// nature.set("slack_m.favourable", 2.0, Origin::Flag)?;
/// assert!(nature.check().is_err(), "more slack than at the adverse end, 1.5 m");
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Nature {
    /// What the fall model assumes.
    pub assumed: Assumed,
    /// Ropes, turning points, pull.
    pub gear: Gear,
    /// Who changed which figure.
    origins: BTreeMap<String, Origin>,
}

/// One figure of nature, ready to be listed.
///
/// ```
/// use schrund::practice::{Nature, nature::NatureFigure};
///
/// let figures: Vec<NatureFigure> = Nature::built_in()?.figures();
/// let thick = figures.iter().find(|figure| figure.name == "rope_g_per_m.9_5mm").expect("it is listed");
/// assert_eq!((thick.value, thick.unit.as_str(), thick.standing.as_str()), (60.0, "g/m", "from memory"));
/// # Ok::<(), schrund::fault::refusal::Refusal>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct NatureFigure {
    /// The name [`Nature::set`] takes.
    pub name: String,
    /// What it is.
    pub says: String,
    /// The number, in `unit`.
    pub value: f64,
    /// Its unit; `1` for a pure one.
    pub unit: String,
    /// What stands behind it.
    pub standing: String,
    /// Who put it in force.
    pub origin: Origin,
}

/// How one figure of gear is reached.
struct Slot<'a> {
    name: String,
    says: &'static str,
    unit: &'static str,
    bound: Bound,
    standing: &'a str,
    value: &'a mut f64,
}

const DROP_FACTOR: Bound = Bound::new("fall factor of the drop test", "", 0.1, 2.0);
const MASS_G: Bound = Bound::new("mass of rope", "g/m", 5.0, 200.0);
const ENDS: [&str; 3] = ["adverse", "central", "favourable"];

impl Nature {
    /// The figures that come with the program.
    ///
    /// # Errors
    /// What an embedded file lacks, when one is broken.
    pub fn built_in() -> Result<Self, Refusal> {
        Ok(Self {
            assumed: Assumed::built_in()?,
            gear: Gear::built_in()?,
            origins: BTreeMap::new(),
        })
    }

    /// Whether a figure, or a range with both ends, has that name.
    #[must_use]
    pub fn knows(&self, name: &str) -> bool {
        let whole = match name.rsplit_once('.') {
            Some((whole, end)) if ENDS.contains(&end) => whole,
            _ => name,
        };
        let in_range = |f: &str| f.rsplit_once('.').is_some_and(|(range, _)| range == whole);
        self.assumed.figures().any(|f| in_range(&f.name))
            || slots(&mut self.gear.clone()).iter().any(|s| s.name == name)
    }

    /// Puts another value in force.
    ///
    /// # Errors
    /// The figure, the value and its bounds, or that there is no such figure.
    pub fn set(&mut self, name: &str, value: f64, origin: Origin) -> Result<(), Refusal> {
        if let Some(slot) = slots(&mut self.gear).into_iter().find(|s| s.name == name) {
            let checked = slot.bound.check(value);
            *slot.value = checked.map_err(|out| out.under(name))?;
        } else {
            self.assumed.set(name, value)?;
        }
        self.origins.insert(name.to_owned(), origin);
        Ok(())
    }

    /// Whether all ranges are in order once everything is set.
    ///
    /// # Errors
    /// The first range that is not, or a rope that is no spring.
    pub fn check(&self) -> Result<(), Refusal> {
        self.assumed.check()?;
        self.gear.rope.usual.modulus_n().map(|_| ())
    }

    /// Every figure, in the order of the files.
    #[must_use]
    pub fn figures(&self) -> Vec<NatureFigure> {
        let mut gear = self.gear.clone();
        let assumed = self.assumed.figures().map(|f| NatureFigure {
            says: match f.name.rsplit_once('.') {
                Some((_, end)) => format!("{}, {end}", f.says),
                None => f.says.to_owned(),
            },
            value: f.value,
            unit: f.unit.to_owned(),
            standing: self.standing(&f.name, f.standing),
            origin: self.origin(&f.name),
            name: f.name,
        });
        let gear = slots(&mut gear);
        let gear = gear.into_iter().map(|s| NatureFigure {
            says: s.says.to_owned(),
            value: *s.value,
            unit: s.unit.to_owned(),
            standing: self.standing(&s.name, s.standing),
            origin: self.origin(&s.name),
            name: s.name,
        });
        assumed.chain(gear).collect()
    }

    /// Who put a figure in force, by itself or with the range it is an end of.
    fn origin(&self, name: &str) -> Origin {
        let whole = name.rsplit_once('.').map(|(whole, _)| whole);
        let set = self.origins.get(name);
        set.or_else(|| self.origins.get(whole?))
            .cloned()
            .unwrap_or(Origin::Default)
    }

    fn standing(&self, name: &str, written: &str) -> String {
        if self.origin(name) != Origin::Default {
            return Standing::Leader.as_str().to_owned();
        }
        match written {
            "ours" | "given" => Standing::Judgement.as_str().to_owned(),
            "memory" => Standing::Memory.as_str().to_owned(),
            other => other.to_owned(),
        }
    }
}

/// The figures of gear that a plan can rest on.
fn slots(gear: &mut Gear) -> Vec<Slot<'_>> {
    let Gear {
        rope,
        mass,
        turn,
        pull,
        haul,
        ..
    } = gear;
    let usual = &mut rope.usual;
    let slot = |name: &str, says, unit, bound, standing, value| Slot {
        name: name.to_owned(),
        says,
        unit,
        bound,
        standing,
        value,
    };
    #[rustfmt::skip]
    let mut slots = vec![
        slot("rope.peak_force_n", "peak force of the usual rope in the drop test", "N",
             bound::FORCE_N, &usual.standing, &mut usual.peak_force_n),
        slot("rope.test_mass_kg", "mass dropped in that test", "kg",
             bound::MASS_KG, &usual.standing, &mut usual.test_mass_kg),
        slot("rope.fall_factor", "fall factor of that test", "1",
             DROP_FACTOR, &usual.standing, &mut usual.fall_factor),
        slot("pull.weak_n", "what a tired or light person pulls on snow, sustained", "N",
             bound::FORCE_N, &pull.standing, &mut pull.weak_n),
        slot("pull.strong_n", "what a strong person with a good stance pulls", "N",
             bound::FORCE_N, &pull.standing, &mut pull.strong_n),
        slot("haul.rest_m", "rope for hands, hitches and tails of a haul", "m",
             bound::LENGTH_M, &haul.standing, &mut haul.rest_m),
        slot("haul.clearance_m", "part of the way from anchor to lip that no stroke can use", "m",
             bound::LENGTH_M, &haul.standing, &mut haul.clearance_m),
    ];
    if let Some(turn) = turn.get_mut(TURN) {
        let says = "share of the force left after a turn round a karabiner";
        let value = &mut turn.efficiency;
        slots.push(slot(
            "turn.karabiner",
            says,
            "1",
            bound::SHARE,
            &turn.standing,
            value,
        ));
    }
    slots.extend(mass.iter_mut().map(mass_slot));
    slots
}

/// The turning point that hauls are reckoned with: what everybody carries.
pub const TURN: &str = "karabiner";

/// The heavier end counts: it is carried.
fn mass_slot(mass: &mut RopeMass) -> Slot<'_> {
    let [_, heavy] = &mut mass.g_per_m;
    Slot {
        name: format!(
            "rope_g_per_m.{}mm",
            mass.diameter_mm.to_string().replace('.', "_")
        ),
        says: "mass of a rope of that diameter, the heaviest",
        unit: "g/m",
        bound: MASS_G,
        standing: &mass.standing,
        value: heavy,
    }
}
