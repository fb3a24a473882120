//! Why people walk so far apart, in a word.

use crate::{
    plan::why::SpacingWhy,
    say::{span::Said, voice::Voice},
};

/// Why a spacing is what it is, in a word: `habit`, `gap`.
#[must_use]
pub fn spacing_why(why: SpacingWhy, voice: Voice) -> Said {
    voice.say(spacing_key(why), &[])
}

/// What that word means: `usual for so many people`.
#[must_use]
pub fn spacing_why_means(why: SpacingWhy, voice: Voice) -> Said {
    let means = voice.attribute(spacing_key(why), "means", &[]);
    means.unwrap_or_default()
}

fn spacing_key(why: SpacingWhy) -> &'static str {
    match why {
        SpacingWhy::Habit => "spacing-habit",
        SpacingWhy::Least => "spacing-least",
        SpacingWhy::Knots => "spacing-knots",
        SpacingWhy::Gap => "spacing-gap",
        SpacingWhy::Cap => "spacing-cap",
    }
}
