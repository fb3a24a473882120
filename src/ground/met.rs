//! A route that has met its ice: contacts and the ground under them, stage by stage.

use std::sync::Arc;

use crate::{
    fault::Fault,
    ground::{known::KnownLines, line::GroundLine, underfoot::Underfoot},
    meet::{
        Contact, Ice,
        contact::Of,
        touching::Touching,
        undrawn::{crossed, undrawn},
    },
    practice::{Rule, Rules},
    trip::{
        job::Brief,
        route::{Jump, Stage, Stretch},
    },
};

/// A route that has met its ice. It rests on the line, the ice, the terrain and a few figures, not on who walks:
/// plans for several parties and all ways of the options share one.
#[derive(Debug)]
pub(crate) struct Met {
    /// One for each stage of the route, in order.
    pub(crate) stages: Vec<MetStage>,
}

/// One stage of it.
#[derive(Debug)]
pub(crate) struct MetStage {
    /// The zones that the stage meets, and where; at last the ice of the inventory that nobody drew.
    pub(crate) contacts: Vec<Contact>,
    /// The same by where they touch the stage.
    pub(crate) touching: Touching,
    /// Where the line is on any ice, drawn or of the inventory, in walking order.
    pub(crate) ice: Vec<Stretch>,
    /// What lies under the line.
    pub(crate) under: Underfoot,
    /// Jumps of the line whose straight way passes over ice.
    pub(crate) jumps: Vec<JumpOverIce>,
    /// The same of the gap between the end of the stage before and the beginning of this one.
    pub(crate) gap: Option<JumpOverIce>,
}

/// A jump whose straight way passes over ice. What is no longer than the margin is left out: whatever lies under it is
/// touched by the line on both sides.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct JumpOverIce {
    /// The jump.
    pub(crate) jump: Jump,
    /// Indices of the zones.
    pub(crate) zones: Vec<usize>,
    /// Indices of the ice of the inventory.
    pub(crate) glaciers: Vec<usize>,
}

/// The ice of a case, made ready once for all stages and all rules.
#[derive(Debug)]
pub(crate) struct Prepared<'a> {
    /// The zones.
    pub(crate) zones: Arc<Ice<'a>>,
    /// The ice of the inventory.
    pub(crate) glaciers: Arc<Ice<'a>>,
    /// Lines whose ground is known.
    pub(crate) lines: KnownLines,
}

impl<'a> Prepared<'a> {
    /// Makes the ice of a case ready.
    #[must_use]
    pub(crate) fn of(case: &Brief<'a>, lines: KnownLines) -> Self {
        Self {
            lines,
            zones: Arc::new(Ice::of(case.zones)),
            glaciers: Arc::new(Ice::of(case.glaciers)),
        }
    }
}

/// The figures that a meeting rests on beside those of the line.
const RESTS_ON: [Rule; 3] = [Rule::FallLineDeg, Rule::ProposedStrikeDeg, Rule::ConvexDeg];

impl Met {
    /// Lets every stage meet the ice and reads the ground under it.
    ///
    /// # Errors
    /// A terrain file is broken where it is read.
    pub(crate) fn of(case: &Brief<'_>, ice: &Prepared<'_>) -> Result<Self, Fault> {
        let terrain = case.terrain.filter(|terrain| !terrain.is_empty());
        let lines = ice.lines.under(&case.route.stages, terrain, case.rules)?;
        let stages = case.route.stages.iter().zip(lines);
        let stages = stages.map(|(stage, line)| MetStage::of(case, ice, stage, line));
        let mut stages = stages.collect::<Result<Vec<MetStage>, Fault>>()?;
        let pairs = case.route.stages.windows(2);
        for (pair, met) in pairs.zip(stages.iter_mut().skip(1)) {
            let gap = pair[0].gap_to(&pair[1]);
            met.gap = gap.and_then(|gap| over_ice(case, ice, gap));
        }
        Ok(Self { stages })
    }

    /// The figures that a meeting under these rules rests on: two rules with the same ones can share it.
    #[must_use]
    pub(crate) fn rests_on(rules: &Rules) -> Vec<u64> {
        let own = RESTS_ON.map(|rule| rules[rule].to_bits());
        GroundLine::rests_on(rules).into_iter().chain(own).collect()
    }
}

impl MetStage {
    fn of(
        case: &Brief<'_>,
        ice: &Prepared<'_>,
        stage: &Stage,
        line: Arc<GroundLine>,
    ) -> Result<Self, Fault> {
        let margin_m = case.rules[Rule::MarginM];
        let mut contacts = ice.zones.contacts(stage, margin_m);
        let inventory = ice.glaciers.contacts(stage, 0.0);
        let jumps = stage.jumps().filter_map(|jump| over_ice(case, ice, jump));
        let jumps = jumps.collect();
        let ice = Stretch::merged([crossed(&contacts), crossed(&inventory)].concat(), 0.0);
        contacts.extend(undrawn(stage, &contacts, &inventory, margin_m));
        Ok(Self {
            under: Underfoot::of(case, line, &contacts, &ice),
            touching: Touching::of(&contacts),
            contacts,
            ice,
            jumps,
            gap: None,
        })
    }

    /// Where the line is on ice of the inventory that nobody drew.
    pub(crate) fn undrawn(&self) -> &[Stretch] {
        let known = self.contacts.iter().find(|c| c.of == Of::KnownIce);
        known.map_or(&[], |c| &c.crossings)
    }

    /// Whether a place is on any ice.
    pub(crate) fn on_ice(&self, at_m: f64) -> bool {
        let ahead = self.ice.partition_point(|s| s.to_m < at_m);
        self.ice.get(ahead).is_some_and(|s| s.from_m <= at_m)
    }
}

fn over_ice(case: &Brief<'_>, ice: &Prepared<'_>, jump: Jump) -> Option<JumpOverIce> {
    if jump.length_m <= case.rules[Rule::MarginM] {
        return None;
    }
    let over = JumpOverIce {
        zones: ice.zones.under(jump.from, jump.to),
        glaciers: ice.glaciers.under(jump.from, jump.to),
        jump,
    };
    (!over.zones.is_empty() || !over.glaciers.is_empty()).then_some(over)
}
