//! What every plan must be read with.

use super::{span::Said, voice::Voice};

/// The keys, in the order of reading.
const CAUTIONS: [&str; 7] = [
    "caution-judged-on-the-spot",
    "caution-learned-from-people",
    "caution-pulled-off",
    "caution-through-the-day",
    "caution-never-alone",
    "caution-local-rules",
    "caution-assumptions-only",
];

/// The cautions, printed with every plan.
pub fn cautions(voice: Voice) -> impl Iterator<Item = Said> {
    CAUTIONS.iter().map(move |key| voice.say(key, &[]))
}
