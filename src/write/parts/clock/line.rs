//! What all lines about hours have.

use crate::say::{arg::Arg, span::Said, voice::Voice};

/// A line, the stage named before it where the plan has several.
pub(in crate::write) fn named(line: Said, stage: usize, stages: usize, voice: Voice) -> Said {
    if stages < 2 {
        return line;
    }
    let args = [("stage", Arg::Count(stage)), ("text", Arg::Said(line))];
    voice.say("clock-of-stage", &args)
}

/// What is known of a slower party, and without belays, put behind; nothing where nothing is.
pub(super) fn beside(
    others: impl IntoIterator<Item = Option<Said>>,
) -> (&'static str, Arg<'static>) {
    let said = others.into_iter().flatten();
    let said = said.fold(Said::default(), |all, one| all.then(one));
    ("others", Arg::Said(said))
}
