//! Which zones a map shows, and what it says of them.

use crate::{
    plan::{Plan, ZoneSummary},
    say::{arg::Arg, name, plain, span::Said, voice::Voice},
    trip::zone::Zone,
    write::{
        parts::{findings, sentence},
        sheet::Sheet,
    },
};

/// So many zones that the route does not meet are still drawn; more of them are left out, since they hide those that are met
/// and make a file that a telephone does not open. Our judgement.
const NOT_MET_MOST: usize = 12;

/// A zone on a map.
#[derive(Clone, Copy)]
pub(crate) struct ZoneShown<'a> {
    pub(crate) zone: &'a Zone,
    pub(crate) summary: &'a ZoneSummary,
    /// Whether the route meets it, margin included.
    pub(crate) met: bool,
}

/// The zones of a map.
pub(crate) struct ZonesShown<'a> {
    /// In the order of the file.
    pub(crate) zones: Vec<ZoneShown<'a>>,
    /// How many are not drawn. The route meets none of them.
    pub(crate) left_out: usize,
}

impl<'a> ZonesShown<'a> {
    pub(crate) fn of(sheet: &Sheet<'a>) -> Self {
        let met = sheet.plan.zones_met();
        let all = sheet.zones.iter().zip(&sheet.plan.zones);
        let mut zones: Vec<ZoneShown<'a>> = all
            .map(|(zone, summary)| ZoneShown {
                zone,
                summary,
                met: met.binary_search(&zone.number).is_ok(),
            })
            .collect();
        let (all, not_met) = (zones.len(), zones.iter().filter(|z| !z.met).count());
        if not_met > NOT_MET_MOST {
            zones.retain(|zone| zone.met);
        }
        let left_out = all - zones.len();
        Self { zones, left_out }
    }

    /// What a map says first: which legs stop or want a look; and where some are,
    /// `44 zones that the route does not meet are left out.`
    pub(crate) fn first_line(&self, plan: &Plan, voice: Voice) -> Said {
        let count = [("count", Arg::Count(self.left_out))];
        let left_out = (self.left_out > 0).then(|| voice.say("left-out-of-map", &count));
        let first = [findings::first_line(plan, voice)];
        Said::join(first.into_iter().chain(left_out), " ")
    }
}

impl ZoneShown<'_> {
    /// `Zone 3 "Upper icefall": gaps up to 20 m`; `Zone 4, not met: gaps up to 6 m (assumed)`.
    pub(crate) fn title(&self, voice: Voice) -> Said {
        let args = [
            ("zone", Arg::Said(name::zone(&self.zone.into(), voice))),
            ("met", Arg::yes(self.met)),
            ("gap", Arg::Needed(self.zone.gap.max_m)),
            ("assumed", Arg::yes(self.zone.gap.assumed)),
        ];
        voice.say("zone-title", &args).capital()
    }
}

/// What is known of a zone in sentences, with what the leader wrote of it.
pub(crate) fn told(zone: &Zone, voice: Voice) -> Said {
    let told = [
        sentence::zone_description(zone, voice),
        sentence::zone_told(zone, voice),
    ];
    let told = told.into_iter().filter(|said| !said.is_empty());
    Said::join(told, " ").map_names(plain::line)
}
