//! What lies behind the sheet: what each fold holds, and how much. What is unfolded is printed.

use maud::{Markup, html};

use super::same::grouped;
use crate::{
    fault::Level,
    plan::Plan,
    practice::Origin,
    say::{arg::Arg, cautions, span::Said, voice::Voice},
    write::{
        parts::{change, findings},
        sheet::Sheet,
    },
};

/// All parts under one title, with a switch that unfolds them without any script.
pub(super) fn behind(sections: Markup, voice: Voice) -> Markup {
    html! {
        div class="annex" {
            h2 { (voice.say("annex-title", &[])) }
            p class="unfold" {
                input type="checkbox" id="unfold";
                label for="unfold" { (voice.say("annex-unfold", &[])) }
            }
            (sections)
        }
    }
}

/// What each part holds, in a few words.
pub(super) struct Holds<'a> {
    sheet: &'a Sheet<'a>,
    plan: &'a Plan,
    voice: Voice,
}

impl<'a> Holds<'a> {
    pub(super) fn of(sheet: &'a Sheet<'a>) -> Self {
        Self {
            sheet,
            plan: sheet.plan,
            voice: sheet.look.voice,
        }
    }

    fn say(&self, key: &str) -> Said {
        self.voice.say(key, &[])
    }

    fn count(&self, key: &str, count: usize) -> Said {
        self.voice.say(key, &[("count", Arg::Count(count))])
    }

    fn of_legs(&self, key: &str) -> Said {
        let legs = Arg::Count(self.plan.legs.len());
        self.voice.say(key, &[("legs", legs)])
    }

    fn set_ups(&self) -> usize {
        grouped(&self.plan.legs).len()
    }

    pub(super) fn map(&self) -> Said {
        self.say("annex-map")
    }

    pub(super) fn profile(&self) -> Said {
        self.say("annex-profile")
    }

    pub(super) fn title_of_figures(&self) -> String {
        self.say("annex-figures-title").to_string()
    }

    pub(super) fn figures(&self) -> Said {
        self.of_legs("annex-figures")
    }

    pub(super) fn legs(&self) -> Said {
        self.of_legs("annex-legs")
    }

    pub(super) fn carry(&self) -> Said {
        let ropes = Arg::Count(self.plan.carry.len());
        self.voice.say("annex-carry", &[("ropes", ropes)])
    }

    pub(super) fn changes(&self) -> Said {
        self.count("annex-changes", change::changes(self.sheet).len())
    }

    pub(super) fn clock(&self) -> Said {
        self.say("annex-clock")
    }

    pub(super) fn findings(&self) -> Said {
        let groups = findings::groups(self.plan, self.voice);
        let notes = groups.iter().filter(|g| g.finding.level() == Level::Note);
        let args = [
            ("count", Arg::Count(groups.len())),
            ("notes", Arg::Count(notes.count())),
        ];
        self.voice.say("annex-findings", &args)
    }

    pub(super) fn ropes(&self) -> Said {
        self.count("annex-ropes", self.set_ups())
    }

    pub(super) fn insets(&self) -> Said {
        let roped = self.plan.legs.iter().filter(|leg| leg.roped);
        self.count("annex-insets", roped.count())
    }

    pub(super) fn zones(&self) -> Said {
        self.count("annex-zones", self.plan.zones_met().len())
    }

    pub(super) fn limits(&self) -> Said {
        self.say("annex-limits")
    }

    pub(super) fn holding(&self) -> Said {
        self.count("annex-holding", self.set_ups())
    }

    pub(super) fn field(&self) -> Said {
        self.count("annex-field", self.plan.field.rows.len())
    }

    pub(super) fn gear(&self) -> Said {
        self.count("annex-gear", self.plan.gear.len())
    }

    pub(super) fn party(&self) -> Said {
        self.count("annex-party", self.sheet.scene.others.len())
    }

    pub(super) fn cautions(&self) -> Said {
        self.count("annex-cautions", cautions::cautions(self.voice).count())
    }

    pub(super) fn notes(&self) -> Said {
        self.say("annex-notes")
    }

    pub(super) fn assumptions(&self) -> Said {
        let all = &self.plan.assumptions;
        let set = all.iter().filter(|a| a.origin != Origin::Default);
        let args = [
            ("count", Arg::Count(all.len())),
            ("set", Arg::Count(set.count())),
        ];
        self.voice.say("annex-assumptions", &args)
    }
}
