### What a plan finds, by code. Each message is the sentence without a full stop; `.hint` says what to do about it.

-snow-depth = { $interface ->
    [page] “Snow on the ice” of the zone
   *[members] `snow_depth_m` in the zones file
}
-gap-width = { $interface ->
    [page] the gaps of the zone
   *[members] `gap_m` in the zones file
}
-strike = { $interface ->
    [page] the strike of the zone
   *[members] `strike_deg`
}
-rope-auto = { $interface ->
    [page] the rope “as the plan finds”
   *[members] `rope` = `auto`
}

never-on-hidden-gaps = { $zone } says never to rope, and its gaps are hidden under snow
    .hint = set { -rope-auto } in the zone: then it is planned roped
    .short = { $zone }: hidden gaps without a rope, by your word
    .cure = { -rope-auto } in the zone
    .act = rope up here: the gaps are hidden

hidden-gaps-skied-unroped = { $zone } says never to rope: on skis, { $snow } of snow, gaps up to { $gap }; skis spread the load and hold no bridge up
    .hint = rope up where the snow thins, where it sags, and where you stop
    .short = { $zone } skied without a rope: { $snow } of snow, gaps up to { $gap }
    .cure = rope up where the snow thins or sags, and where you stop
    .act = rope up where the snow thins or sags, and where you stop

-by-rope = { $interface ->
    [flags] : `--rope 60`
   *[members] { "" }
}
-by-terrain = { $interface ->
    [flags] : `--terrain FILE`
   *[members] { "" }
}
-by-glaciers = { $interface ->
    [flags] : `--glaciers FILE`
   *[members] { "" }
}
-more-terrain = { $interface ->
    [flags] `--terrain` can be given again
   *[members] several models can be given
}
-options-weigh = { $interface ->
    [flags] `schrund options` weighs
    [page] “Ways to split the party and use the ropes” under Trip and under Field weighs
   *[members] the options weigh
}

no-setup = gaps of { $gap } along the route ask { $people } people for a spacing of { $need }; the greatest is { $cap }
    .hint = another line, a detour round the ends of the crevasses, or more people on the rope
    .short = gaps of { $gap } along the route ask for { $need } between people; the most is { $cap }
    .cure = a way round, another line, or more people
    .act = turn back, go round the gaps, or belay each across from an anchor

no-rope-fits = { $lack ->
    [short] the set-up takes { $needed } of rope; { $rope } is { $short } short
    [none-left] no rope is left for team { $team }; it needs { $needed }
   *[none-sold] the set-up takes { $needed } of rope, more than any single rope sold
}
    .hint = { $lack ->
    [none-left] turn back, or belay each across from an anchor; or name another rope{ -by-rope }
   *[other] { $cured ->
        [yes] { $cure }
       *[no] turn back, or belay each across from an anchor; { -options-weigh } other ropes and splits of the party
    }
}
    .short = { $lack ->
        [short] { $needed } of rope needed; { $rope } is { $short } short
        [none-left] { $needed } of rope needed, and none is left for team { $team }
       *[none-sold] { $needed } of rope needed, more than any sold
    }
    .act = { $cured ->
        [yes] { $cure }; else turn back
       *[no] { $lack ->
            [short] { $short } of rope too little: turn back, or belay each across from an anchor
           *[none-left] too little rope: turn back, or belay each across from an anchor
        }
    }
    .too = { $lack ->
        [short] { $short } of rope too little
       *[none-left] too little rope
    }
bend-blocks-the-loaded-strand = two ropes are joined in this one: no haul on the loaded strand runs over the bend

rope-cure = { $how }: { $rope } is long enough{ $gap-given ->
    [each] , spaced for the gaps of each leg
    [yes] , spaced for gaps up to { $gap }
   *[no] { "" }
}{ $costs }
rope-cure-joined = { $how }: together they are long enough{ $gap-given ->
    [each] , spaced for the gaps of each leg
    [yes] , spaced for gaps up to { $gap }
   *[no] { "" }
}{ $costs }
rope-cure-costs = ; but { $costs }
rope-cure-fall = a fall might not be held: belay
rope-cure-over = { $over } people over one gap at once, { $left } left to hold
rope-cure-coil = coils of { $coil } instead of { $planned }
rope-cure-loop = { $count ->
    [one] a drop loop for { $who } ends
   *[other] drop loops for { $who } end
} { $short } short of the lip
rope-cure-spacing = walk { $spacing } apart instead of { $planned }

too-steep-to-rope-without-anchors = { $of ->
    [ground] the ground is
   *[line] the line is
} up to { $slope } steep along { $length }, { $all ->
    [yes] at { $span }
   *[no] worst at { $span }
}: roping together without anchors is no longer the answer
    .hint = belay from anchors, or another line
    .short = up to { $slope } steep along { $length }, { $all ->
        [yes] { $span }
       *[no] worst at { $span }
    }: too steep for a rope without anchors
    .cure = belay from anchors, or another line
    .act = belay from anchors, or go another line

held-without-width = { $given ->
    [yes] { "" }
   *[no] ; judged as if the gap had no width: no width is given
}
held-better-in-order = { $better ->
    [no] { "" }
   *[yes] the order { $order };{ " " }
}
held-or-in-order = { $better ->
    [no] { "" }
   *[yes] {" "}order { $order }, or
}

fall-held-in-none = the model does not hold a fall of { $who }, not even with the most favourable assumptions, along { $length }, { $all ->
    [yes] at { $span }
   *[no] worst at { $span }
} ({ $snow }{ $slope }){ held-without-width }
    .hint = a belay from an anchor, or another line; else { held-better-in-order }more people on the rope
    .short = the model holds a fall of { $who } in no case: { $length }, { $all ->
        [yes] { $span }
       *[no] worst at { $span }
    }
    .cure = belay from an anchor, or go another line; else{ held-or-in-order } more people
    .act = no fall is held: belay from an anchor, or another line
    .too = no fall is held

fall-held-in-none-at-one-place = the model does not hold a fall of { $who }, not even with the most favourable assumptions, at { $span }, { $length } ({ $snow }{ $slope }){ held-without-width }
    .hint = cross that place one by one, belayed from an anchor; else { held-better-in-order }another line
    .short = the model holds a fall of { $who } in no case along { $length }, { $span }
    .cure = cross it one by one, from an anchor; else{ held-or-in-order } another line
    .act = cross that place one by one, from an anchor

fall-not-held-in-the-middle-case = the model holds a fall of { $who } with favourable assumptions only, not with middling ones, along { $length }, { $all ->
    [yes] at { $span }
   *[no] worst at { $span }
} ({ $snow }{ $slope })
    .hint = a belay from an anchor there; else { held-better-in-order }more people on the rope
    .short = a fall of { $who } might not be held along { $length }, { $all ->
        [yes] { $span }
       *[no] worst { $span }
    }
    .cure = belay from an anchor; else{ held-or-in-order } more people
    .act = a fall may not be held: belay from an anchor
    .too = a fall may not be held

bare-ice-too-steep = roped without anchors on { $length } of bare ice up to { $slope } steep, { $all ->
    [yes] at { $span }
   *[no] worst at { $span }
}: one slip pulls all, and no team holds a fall on ice
    .hint = belay from anchors, another line, or unroped where every gap is in sight
    .short = up to { $slope } steep on { $length } of bare ice, { $all ->
        [yes] { $span }
       *[no] worst at { $span }
    }: one slip pulls all
    .cure = belay from anchors, another line, or no rope where every gap is in sight
    .act = belay from anchors, or go another line

one-slip-pulls-all = roped without anchors on { $length } of bare ice up to { $slope } steep, { $all ->
    [yes] at { $span }
   *[no] worst at { $span }
}: one slip pulls all
    .hint = unroped where every gap is in sight, or belay from anchors
    .short = up to { $slope } steep on { $length } of bare ice, { $all ->
        [yes] { $span }
       *[no] worst at { $span }
    }: one slip pulls all
    .cure = no rope where every gap is in sight, or belay from anchors
    .act = no rope where every gap is in sight, or belay from anchors

unroped-on-steep-bare-ice = unroped on { $length } of bare ice up to { $slope } steep, { $all ->
    [yes] at { $span }
   *[no] worst at { $span }
}: nothing stops a slip
    .hint = anchors there, crampons that bite, or another line
    .short = no rope on { $length } of bare ice up to { $slope } steep, { $all ->
        [yes] { $span }
       *[no] worst at { $span }
    }
    .cure = anchors there, crampons that bite, or another line
    .act = set anchors, or go another line

along-the-crevasses = the team runs along the crevasses of { $zone } near { $at }
    .hint = walk in echelon there, or take another line
    .short = along the crevasses of { $zone } near { $at }
    .cure = walk in echelon, or another line
    .act = walk in echelon, or go another line

two-over-one-gap = { $over } people can stand over one gap of { $gap } at once with { $spacing } between them; { $left } left to hold
    .hint = { $alone ->
    [yes] tied { $apart } apart only one is over it at a time, with { $needed } of rope{ $named ->
        [yes] {" "}(planned so, on every leg with hidden gaps, by `{ $figure }` under `[assume]`)
       *[no] { "" }
    }; or belay each across from an anchor
   *[no] as tied nobody is over it alone: belay each across from an anchor, or another line
}
    .short = { $over } people over one gap of { $gap } at once, { $left } left to hold
    .cure = { $alone ->
        [yes] { $apart } apart only one is over it, with { $needed } of rope; or belay each across
       *[no] belay each across from an anchor, or another line
    }
    .act = belay each across from an anchor

halt-on-hidden-gaps = the halt of { $minutes } at { $at } lies { $beside ->
    [yes] within the margin of
   *[no] on
} { $drawn ->
    [yes] the hidden gaps of { $zone }
   *[no] ice on which no zone is drawn, whose gaps nobody knows
}
    .hint = stay spread on a tight rope{ $off ->
    [yes] , or rest at { $rest }, off all ice that is drawn or known
   *[no] { "" }
}
    .short = halt of { $minutes } at { $at } { $beside ->
        [yes] beside
       *[no] on
    } { $drawn ->
        [yes] the hidden gaps of { $zone }
       *[no] ice that nobody drew
    }
    .act = stay spread on a tight rope

loop-ends-short-of-the-lip = if { $who } falls, a drop loop ends { $short } short of the lip, with the rope as carried
    .hint = { $named ->
    [longer] tie into { $rope } there, on which a loop reaches below the lip; or plan another rescue for them
    [spare] take { $rope } as a spare for that, in another's pack; or plan another rescue for them
   *[none] { $anyone ->
        [yes] plan another rescue for them, or a longer rope
       *[no] plan another rescue for them, a longer rope, or { $interface ->
            [page] “anyone” under “{ draw-trip-cover }”
           *[members] `cover = "anyone"`
        }
    }
}
    .short = a rescue loop for { $who } ends { $short } short of the lip
    .cure = { $named ->
        [longer] tie into { $rope } there, or another rescue
        [spare] take { $rope } as a spare
       *[none] another rescue, or a longer rope
    }

rope-thin-as-cord = { $ropes } { $count ->
    [1] is { $across } thick
   *[other] are thinner than { $limit }
}: most of what is so thin is cord, made for no fall
    .hint = take it only if it is sold for roped travel on glaciers, with cords and clamps tried on it; else a thicker rope
    .short = { $ropes }, { $across }: as thin as cord
    .cure = only if sold for glacier travel; else a thicker rope

no-rope-for-the-reserve = brake knots block the loaded strand, and each coil is { $short } short of the { $coil } that a rescue strand takes: the rope is { $rope-short } too short for it
    .hint = a longer rope, butterflies for bulky knots, a long sling, or the closer knot layout
    .short = each coil is { $short } short of the { $coil } for a rescue, the rope { $rope-short } too short
    .act = { $rope-short } of rope too little for a rescue: turn back, or belay each across
    .too = { $rope-short } of rope too little for a rescue

reserve-left-short = brake knots block the loaded strand, and each coil is { $short } short of the { $coil } that a rescue strand takes
    .hint = longer coils, a long sling, or a set that sizes them by `reach_factor`
    .short = each coil is { $short } short of the { $coil } for a rescue beside the knots

spacing-near-limit = the spacing of { $spacing } is close to the greatest, { $cap }
    .short = { $spacing } apart is close to the most, { $cap }

rope-near-limit = { $rope } has { $spare } to spare
    .short = { $rope } has only { $spare } to spare

knots-doubtful = the snow may be too thin for brake knots in { $zones }: tie them, do not count on them
    .short = perhaps too little snow for brake knots in { $zones }
    .cure = tie them, do not count on them
    .act = do not count on the knots

fewer-knots-than-a-layout = { $tied ->
    [one] only 1 brake knot
   *[other] only { $tied } brake knots
} in a set, where a layout has { $layout }: each holds its own share and no more
    .hint = tie the whole layout, walk farther apart, or a third person
    .short = { $tied ->
        [one] only 1 brake knot
       *[other] only { $tied } brake knots
    } in a set, where a layout has { $layout }

snow-depth-not-given = no snow depth is given in { $zones }: whether the knots bite there is unknown
    .hint = give { -snow-depth }
    .short = whether knots bite is unknown: no snow depth is given
    .cure = { -snow-depth }

knots-do-not-bite-everywhere = brake knots do not bite in { $zones }
    .short = brake knots do not bite in { $zones }

knots-always-and-none-tied = `knots` = `always`, and none are tied here: { $why }
    .short = brake knots are wanted and none are tied: { $why }

pair-without-knots = one person alone must hold, without brake knots: { $why }
    .hint = a third person, or another line
    .short = one alone must hold, without brake knots: { $why }

cut-off-by-route-end = { $end ->
    [begin] the route begins on the ice: the leg is cut off there
   *[end] the route ends on the ice: the leg is cut off there
}
    .short = { $end ->
        [begin] the route begins on the ice
       *[end] the route ends on the ice
    }

last-person-still-on-ice = the route ends before the last person is off the ice and its margin
    .short = the route ends with the last person still on the ice

jump-over-ice = { $count ->
    [1] the line jumps { $longest } near { $at }, straight over { $ice }: nothing is planned for that ice
   *[other] the line jumps { $count } times, { $all } in all, straight over { $ice }; the longest jump is { $longest } near { $at }: nothing is planned for that ice
}
    .hint = if it is walked, draw the missing piece of the line
    .short = { $count ->
        [1] the line jumps { $longest } near { $at }, over { $ice }: not planned
       *[other] the line jumps { $count } times over { $ice }, most { $longest } near { $at }: not planned
    }
    .cure = if it is walked, draw it

stage-gap-over-ice = from the end of stage { $before } to the beginning of stage { $after } it is { $length } straight over { $ice }: nothing is planned for that ice
    .hint = if it is walked, draw it as part of a stage
    .short = between stages { $before } and { $after } { $length } over { $ice }: not planned
    .cure = if it is walked, draw it

unroped-on-ice-by-your-word = unroped on ice by your word: { $ice }
    .short = no rope on ice, by your word: { $ice }
ice-undrawn = ice on which no zone is drawn

ice-without-a-gap-width = ice without a gap width, { $spans }: { $roped ->
    [yes] roped, at least with the base spacing, its gaps and its snow unknown; falls there are judged as if the gaps had no width
   *[no] only told, by your word
}
    .hint = draw a zone there with the gaps you expect
    .short = nobody gave a gap width, { $spans }: { $roped ->
        [yes] roped as is usual
       *[no] only told, by your word
    }
    .cure = draw a zone with the gaps you expect
ice-span = { $span }

bridges-late = { $just ->
    [yes] { $zone } is left just after { $until }, until when snow bridges are trusted
   *[no] { $zone } is left at { $left }; snow bridges are trusted until { $until }
}
    .hint = { $known ->
        [yes] start by { $start } to be off all of the stage in time{ $turns ->
            [yes] , or turn round in time
           *[no] { "" }
        }
        [unreckoned] start earlier, or turn round in time; without heights neither hour is reckoned
        [under-way] { $turns ->
            [yes] turn round in time
            [unbelayed] turn round now if the way back needs no belays; with those of the way out no turn is off them in time: then { way-off-ice }
           *[no] { way-off-ice }: no turn from here is off all of them in time
        }
       *[no] { $turns ->
            [yes] no start of the day is early enough: turn round in time, or take another line
            [unbelayed] no start of the day is early enough, nor, belays counted on the way back too, is any turn: take another line
           *[no] no start of the day is early enough, nor is any turn: take another line
        }
    }
    .short = on snow bridges after { $until }, when they are no longer trusted
    .cure = { $known ->
        [yes] start by { $start }{ $turns ->
            [yes] , or turn round in time
           *[no] { "" }
        }
        [unreckoned] start earlier, or turn round in time; without heights neither hour is reckoned
        [under-way] { $turns ->
            [yes] turn round in time
            [unbelayed] turn round now if the way back needs no belays, else { way-off-ice }
           *[no] { way-off-ice }: no turn is in time for all
        }
       *[no] { $turns ->
            [yes] turn round in time, or another line: no start of the day is early enough
            [unbelayed] another line: no start of the day is early enough, nor, belays counted on the way back too, is any turn
           *[no] another line: no start of the day is early enough, nor is any turn
        }
    }
    .act = late for snow bridges: probe each
way-off-ice = { $off ->
    [back] go back to { $place }, off the bridges at { $at }{ $more ->
        [yes] , and wait there (more lie beyond)
       *[no] { "" }
    }
    [on] go on to { $place }, off the bridges at { $at }{ $more ->
        [yes] , and wait there (more lie beyond)
       *[no] { "" }
    }
    [begin] go back to where the line begins, there at { $at } (what lies before it is not counted)
   *[not-on] stay off that ice
}

bridges-in-soft-snow = the snow is soft, fresh or wet: bridges are weak at any hour, early ones too
    .hint = probe each, belay over what is doubtful, or wait for a frost: bridges hold better then, falls are held worse
    .short = bridges in soft snow are weak at any hour
    .cure = probe each, or wait for a frost (falls are held worse then)

slower-bridges-late = { $just ->
    [yes] a slower party is off the last snow bridges just after { $until }
   *[no] a slower party is off the last snow bridges at { $left }, after { $until }
}

back-late = { $just ->
    [yes] the line is done just after { $by }, by when the leader wants to be back
   *[no] the line is done at { $arrival }; the leader wants to be back by { $by }
}
    .hint = { $known ->
        [unreckoned] start earlier, or turn round in time; without heights neither hour is reckoned
        [yes] { $turns ->
            [yes] start by { $start }, or turn round in time
           *[no] start by { $start }
        }
        [no] { $turns ->
            [yes] no start of the day is early enough, bridges counted: turn round in time, or take another line
            [unbelayed] no start of the day is early enough, bridges counted, nor, belays counted on the way back too, is any turn: take another line
           *[no] no start of the day is early enough, bridges counted, nor is any turn: take another line
        }
       *[under-way] { $turns ->
            [yes] turn round in time
            [unbelayed] turn round now if the way back needs no belays; with those of the way out no turn is in time: then be late, or stay where it is safe
           *[no] no turn from here is in time, bridges counted: be late, or stay where it is safe
        }
    }
    .short = { $just ->
        [yes] done just after { $by }
       *[no] done at { $arrival }, after { $by }
    }

very-long-stage = { $time } on the way in one stage, halts and belays not counted: more than { $most } without sleep
    .hint = give the line of each day a track of its own, up to where you sleep
    .short = { $time } on the way in one stage, halts and belays not counted
    .cure = a track of its own for each day

slower-back-late = { $just ->
    [yes] a slower party is done just after { $by }
   *[no] a slower party is done at { $arrival }, after { $by }
}

climb-partly-unknown = no height is known on { $unknown } of the line, first from { $first }: climbs and hours are too few, and no hour is worked backwards
    .hint = a route with heights, or a terrain model that covers the line
    .short = no height on { $unknown } of the line, first from { $first }: the hours are too few
    .cure = a route with heights, or a terrain model

hour-before-start = { $of ->
    [bridges_until] bridges are trusted until { $at }
   *[back_by] the line is to be done by { $at }
}, which is before the start at { $start }: taken to be the same day
    .hint = for the morning after give `{ $name } = "{ $at } +1"`; else start earlier
    .short = { $of ->
        [bridges_until] bridges trusted until { $at }
       *[back_by] to be done by { $at }
    }, before the start at { $start }: taken as the same day

line-turns-back = the line turns back on itself at { $at }: its way back lies along it for { $back }

dark-on-the-rope = { $rises ->
    [yes] { $since ->
        [yes] dark from { $from } until { $until }
       *[no] dark until { $until }
    }
   *[no] { $since ->
        [yes] dark from { $from }, and no sun the day after
       *[no] no sun all day
    }
} at a level horizon (Reda and Andreas 2004): { $time } of the roped legs as planned

sun-in-utc = a day is given and no `utc_offset`: sunrise and sunset are told in UTC
    .hint = give `utc_offset = "+02:00"`, as the clocks of the trip are

# From planning: one zone. What was assumed for a whole file stands in faults.ftl.
gap-assumed-in-zone = no gap width is given for { $zone }; { $gap } was assumed
    .hint = give { -gap-width }
    .short = no gap width is given: { $gap } assumed
    .cure = { -gap-width }

coil-is-a-burden = each end person carries a coil of { $coil }, about { $mass }; more than { $most } or { $most-mass } is a burden
    .hint = more people on the rope, a long sling in the loop, or a thinner rope

avalanche-terrain = { $of ->
    [ground] the ground has { $slope } near { $at }: avalanche terrain; that is a matter for the bulletin
   *[line] { $slope } near { $at }: avalanche terrain; that is a matter for the bulletin
}

knots-block-the-loaded-strand = a haul needs its own strand here: brake knots block the loaded one

haul-beyond-those-left = if { $who } falls, { $answer }
    .hint = a second rope team near by, pulleys, or a person who can climb out on the rope

model-has-no-answer = the model of falls and hauls has no answer here: { $reason }
    .short = nothing can be told of falls or hauls: { $reason }

thin-snow-on-hidden-gaps = { $zone } has hidden gaps under { $snow } of snow: bridges of so little may not hold a person
    .hint = probe ahead and cross one at a time on a tight rope, or take another line
    .short = { $zone }: bridges of { $snow } of snow may not hold a person

snow-on-bare-ice = { $zone } is called bare, and { $snow } of snow lies on it: planned as snow that hides gaps
    .hint = say which it is: { $interface ->
        [page] the surface snow, or no “Snow on the ice”
       *[members] `surface` = `snow`, or no `snow_depth_m`
    }
    .short = { $zone } is called bare, with { $snow } of snow on it: planned as snow

bare-ice-two-views = { $roped ->
    [yes] { $zone } is bare ice, roped here; many go unroped where every gap is in sight, because a slip of one pulls all and no team holds a fall on ice
   *[no] { $zone } is bare ice, unroped here; others rope where it is badly broken
}
    .hint = decide: { $interface ->
        [page] “always” or “never” in the zone settles it
       *[members] `rope` = `always` or `never` in the zone settles it
    }
    .short = { $zone } is bare ice, { $roped ->
        [yes] roped: one slip pulls all
       *[no] no rope here; others rope where it is badly broken
    }
    .cure = decide before you go: rope or not
    .act = rope or not: decide here, by what is in sight

strike-taken-as-exact = { $zone } does not say how sure its strike is: it is taken as exact
    .hint = give `strike_uncertainty_deg`; a few degrees can lengthen the way over a gap

slope-unknown = no heights say how steep it is towards the lip: falls are reckoned as on flat ground
    .hint = give a terrain model{ -by-terrain }

slope-partly-unknown = { $count ->
    [1] no heights are known for { $longest }: how steep it is there is unknown; what is told of slopes and falls is told of the rest
   *[other] no heights are known for { $all } in { $count } pieces, longest { $longest }: how steep it is there is unknown; what is told of slopes and falls is told of the rest
}
    .hint = give a terrain model{ -by-terrain }

strike-not-given = { $zone } gives no strike: its crevasses are taken to be crossed squarely

observed-long-before = { $count ->
    [1] { $zones } was observed { $days } days before the trip ({ $day })
   *[other] { $count } zones were observed up to { $days } days before the trip ({ $day }): { $zones }
}; gaps and bridges have changed since
    .hint = look again before you go, and write what you see into the zones
    .short = { $count ->
        [1] { $zones } was observed { $days } days before the trip
       *[other] { $count } zones were observed up to { $days } days before the trip
    }

zone-not-met = { $count ->
    [1] the route does not meet this zone
   *[other] the route does not meet { $count } of the zones: { $numbers }
}

no-inventory = no glacier inventory was given: the plan knows no ice but the zones drawn
    .hint = give one{ -by-glaciers }

no-heights = the route gives no heights: no ascent, slope or time for the climb is known
    .hint = give a terrain model{ -by-terrain }

on-skis = on skis many go unroped in good snow and rope up for danger signs; this is the roped set-up, and the way down on the rope is reckoned no faster than on foot

no-rope-named = no rope at hand was named: the plan says which length to take
    .hint = name the ropes you have{ -by-rope }

-heights-apart-hint = compare a known height, such as a hut, with the map; receivers and models may count from different zeros

heights-compared = the terrain model lies { $median } the heights of the route file in the median; at the worst { $worst } them, near { $at }; the { $used } is used for climbs and times, the steeper of both for slopes

heights-far-apart = the terrain model lies { $median } the heights of the route file in the median; at the worst { $worst } them, near { $at }; the { $used } is used for climbs and times, the steeper of both for slopes
    .hint = { -heights-apart-hint }
    .short = the heights of file and terrain model differ: the model lies { $worst } near { $at }
    .cure = compare a height that you know with the map

ascents-apart = up { $file } by the heights of the route file, up { $model } by those of the terrain model; the { $used } is used for climbs and times
    .hint = compare a climb that you know; `climb_cells` and `ascent_threshold_m` in the trip file say what counts

terrain-void = { $where ->
    [nowhere] the terrain model has no height along { $stage }
    [model] the terrain model has no height for { $metres } of the line, first from { $first }; climbs go straight across there
   *[file] the terrain model has no height for { $metres } of the line, first from { $first }; the heights of the route file are used instead
}
    .hint = { $other ->
    [yes] slopes of the ground are missing there; { -more-terrain }
   *[no] add a model that covers the line; { -more-terrain }
}
    .short = { $where ->
        [nowhere] the terrain model has no height here
        [model] the terrain model has no height on { $metres }, first from { $first }
       *[file] the terrain model has no height on { $metres }, first from { $first }: those of the route file are used
    }

terrain-flattens = slopes of the ground come from a model with cells of { $cell }: short steps and walls are flattened; nothing was relaxed because of it

strike-proposed = { $zone } gives no strike; guess from the terrain, across the fall line: { $strike } ± { $doubt } ({ $counts ->
    [yes] counted, as the leader wants
   *[no] not used
})

may-run-along = { $count ->
    [1] the line contours { $longest }: the team may run along crevasses that lie across the fall line
   *[other] the line contours { $count } times, { $all } in all, longest { $longest }: the team may run along crevasses that lie across the fall line
}
    .hint = look at the strike from afar and give { -strike }; where it runs along, walk in echelon or take another line

convex-ground = the ice rolls over near { $places }: look here for crevasses; what the model does not show may be broken too
convex-place = { $at } ({ $steeper } steeper below)

## Where a finding belongs

place-leg = leg { $leg }
place-leg-of-team = leg { $leg } ({ $count ->
    [one] team { $teams }
   *[other] teams { $teams }
})
place-legs = { $count ->
    [1] leg { $legs }
   *[other] legs { $legs }
}
place-on-legs = { place-legs }
place-more = { $named } and { $more } more
place-stage = stage { $stage }
place-stage-named = stage { $stage } "{ $name }"
place-zone = zone { $zone }
place-zone-named = zone { $zone } "{ $name }"
place-glacier = glacier { $glacier } of the inventory
place-glacier-named = glacier { $glacier } "{ $name }" of the inventory
place-route = route
place-zones = zones
place-ropes = ropes
place-terrain = terrain

## How much a finding matters

level-error = Wrong
level-stop = Stop: not as planned here
level-outside = Outside the limits
level-look = Look at this
level-note = Good to know
