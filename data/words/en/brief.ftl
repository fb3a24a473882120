### What a plan finds, in the few words that a message has. Keyed by code; notes are not told there. `.short` is for a
### message with hardly any room.

brief-never-on-hidden-gaps = unroped over hidden gaps
    .short = hidden gaps
brief-too-steep-to-rope-without-anchors = too steep without anchors
    .short = too steep
brief-fall-held-in-none = fall not held
brief-bare-ice-too-steep = ice too steep without anchors
    .short = ice too steep
brief-no-setup = gap too wide
brief-no-rope-fits = { $lack ->
    [short] rope { $short } short
    [none-left] no rope left
   *[none-sold] no rope is so long
}
brief-no-rope-for-the-reserve = rope { $rope-short } short for a rescue
    .short = rope { $rope-short } short
brief-unroped-on-steep-bare-ice = steep ice: nothing stops a slip
brief-along-the-crevasses = runs along crevasses
    .short = along crevasses
brief-fall-held-in-none-at-one-place = fall not held at one place
    .short = fall not held
brief-fall-not-held-in-the-middle-case = belay: fall might not be held
    .short = fall in doubt: belay
brief-hidden-gaps-skied-unroped = skied unroped over hidden gaps
brief-two-over-one-gap = 2 over one gap
brief-halt-on-hidden-gaps = halt on hidden gaps
brief-loop-ends-short-of-the-lip = rescue loop too short
    .short = loop too short
brief-reserve-left-short = rescue rope short
brief-spacing-near-limit = spacing near its limit
brief-rope-near-limit = little rope to spare
brief-rope-thin-as-cord = rope as thin as cord
brief-knots-doubtful = knots may not bite
brief-fewer-knots-than-a-layout = fewer knots than taught
brief-snow-depth-not-given = snow depth unknown
brief-knots-do-not-bite-everywhere = knots bite in part only
brief-knots-always-and-none-tied = no knots, though wanted
brief-pair-without-knots = pair without knots
brief-cut-off-by-route-end = route begins or ends on ice
brief-last-person-still-on-ice = last one still on ice
brief-jump-over-ice = line jumps over ice
brief-stage-gap-over-ice = ice between stages
brief-unroped-on-ice-by-your-word = unroped on ice by the leader's word
brief-ice-without-a-gap-width = gap widths unknown
brief-thin-snow-on-hidden-gaps = thin snow on hidden gaps
brief-snow-on-bare-ice = bare or under snow?
brief-bridges-late = late on snow bridges
brief-bridges-in-soft-snow = weak bridges: soft snow
brief-climb-partly-unknown = heights missing
brief-hour-before-start = an hour before the start
brief-gap-assumed = gap width assumed
brief-observed-long-before = observed long ago
brief-one-slip-pulls-all = one slip pulls all
brief-bare-ice-two-views = bare ice: decide on the rope
    .short = rope: decide
brief-back-late = back late
brief-very-long-stage = a very long stage
brief-model-has-no-answer = no answer on falls
brief-heights-far-apart = heights in doubt
brief-terrain-void = heights missing
