//! The maps: one of the whole route, and one of each roped leg.

use maud::{Markup, html};

use crate::{
    say::{arg::Arg, span::Said},
    write::report::{
        drawn::{LegLine, MapPicture, with_room},
        frame::{Strip, ticks},
        hatch,
        labels::Labels,
        layers, lettering,
        paper::{Paper, WIDTH, u},
        relief::{self, HeightLines},
    },
};

/// Ground shown round a leg: this share of its extent, and at least so many metres. Our judgement.
const ROUND_LEG: (f64, f64) = (0.12, 40.0);
/// Width of a leg's own map, units: two stand side by side where one of the route does.
const LEG_WIDTH: f64 = WIDTH / 2.0;

impl MapPicture<'_> {
    /// The map of the whole route; nothing for a route without a line.
    pub(super) fn overview(&self) -> Markup {
        let Some(paper) = self.paper() else {
            return html! {};
        };
        let legs = self.legs.iter().filter(|l| l.leg.roped).count();
        let args = [
            ("zones", Arg::Count(self.sheet.zones.len())),
            ("legs", Arg::Count(self.legs.len())),
            ("roped", Arg::Count(legs)),
        ];
        let says = self.sheet.look.voice.say("report-map-says", &args);
        self.svg(&paper, "overview", &says, true)
    }

    /// A map of one leg.
    pub(super) fn of_leg(&self, line: &LegLine<'_>) -> Markup {
        let Some(bounds) = line.bounds else {
            return html! {};
        };
        let paper = Paper::showing(&with_room(bounds, ROUND_LEG), LEG_WIDTH);
        let number = line.leg.leg;
        let leg = [("leg", Arg::Count(number))];
        let says = self.sheet.look.voice.say("report-map-of-leg", &leg);
        self.svg(&paper, &format!("leg{number}"), &says, false)
    }

    fn svg(&self, paper: &Paper, id: &str, says: &Said, whole: bool) -> Markup {
        let mut labels = Labels::on(paper.width, paper.height, whole);
        let strip = Strip::of(paper, self.sheet.look.voice);
        let zones = layers::zones(&self.zones, &self.met, paper);
        let ice = layers::zones(&self.ice, &[], paper);
        let ways = layers::ways(self, paper);
        let changes = lettering::changes(self, paper, &ways, &mut labels);
        let ticks = ticks(paper, &mut labels);
        let lines = layers::legs(&ways, &mut labels);
        let signs = lettering::signs(self, paper, (&zones, &ways, &changes), &mut labels);
        let relief = self.sheet.scene.relief.as_ref();
        let lines_of_height = relief.map(|relief| HeightLines::under(relief, paper));
        let heights = lines_of_height
            .as_ref()
            .map(|lines| lines.heights(&mut labels));
        let class = if whole { "drawing wide" } else { "drawing" };
        let clip = format!("clip-{id}");
        html! {
            svg class=(class) role="img" viewBox={ "0 0 " (u(paper.width)) " " (u(paper.height + Strip::HEIGHT)) }
                aria-labelledby={ "map-" (id) } {
                title id={ "map-" (id) } { (says) }
                defs { clipPath id=(clip) { rect width=(u(paper.width)) height=(u(paper.height)) {} } }
                g clip-path={ "url(#" (clip) ")" } {
                    rect class="paper" width=(u(paper.width)) height=(u(paper.height)) {}
                    @if let Some(relief) = relief.filter(|_| whole) { (relief::shading(relief, paper)) }
                    @if let Some(lines) = &lines_of_height { (lines.drawn()) }
                    (layers::ice(&ice))
                    (layers::zone_shapes(&zones))
                    (hatch::strikes(&zones, id))
                    @if let Some(heights) = heights { (heights) }
                    (ticks)
                    (lines)
                    (signs)
                }
                rect class="frame" x="0.5" y="0.5" width=(u(paper.width - 1.0)) height=(u(paper.height - 1.0)) {}
                (strip.drawn(paper))
            }
        }
    }
}
