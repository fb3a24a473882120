# What a leader holds in the hand: the field table, the list of gear, the trip with something missing.

## The field table

field-bare = bare ice, gaps in sight
field-snow = snow, no knots
field-snow-with-knots = snow, brake knots tied
field-nowhere = no leg is roped
field-holds = { $on } ({ $ground }): { $rope } is long enough to be spaced for gaps up to { $gap } along the line of travel{ $more ->
        [yes] ; { $ways }
       *[no] { "" }
    }
    .short = { $on } ({ $ground }): re-tied, { $rope } is long enough to { $gap }{ $more ->
        [yes] ; { $ways }
       *[no] { "" }
    }
field-holds-otherwise = { $on } ({ $ground }): { $rope } is too short as is taught; { $ways }
field-otherwise = { $several ->
        [yes] ({ $way }){ " " }
       *[no] { "" }
    }{ $spacing } apart it is long enough to be spaced for gaps up to { $gap } along the line of travel{ $tied ->
        [yes] , with { $changes }
       *[no] { "" }
    }
    .short = { $several ->
        [yes] ({ $way }){ " " }
       *[no] { "" }
    }{ $spacing } apart long enough to { $gap }{ $tied ->
        [yes] , with { $changes }
       *[no] { "" }
    }
field-holds-none = { $on } ({ $ground }): { $rope } is too short for any set-up
field-unknown = { $on } ({ $ground }): no rope is named
field-for-team = team { $team }, { $on }
field-sold = a rope of { $length }
field-askew = Met at { $angle } a gap counts { $widths } times its width{ $along ->
    [yes] { " " }and more: the team runs along it
   *[no] { "" }
}.
field-square = Coils and rope as needed; what is left over goes into the coils. Gaps are measured along the line of travel. Met flatter than { $angle }: do not walk one behind the other, walk in echelon. By the spacing rule, which says nothing about holding a fall.
field-fits = rope is enough
field-fits-not = rope too short
field-fits-otherwise = rope too short; { $spacing } apart it is enough{ $tied ->
    [yes] , tied as said above{ $several ->
        [yes] {" "}({ $way })
       *[no] { "" }
    }
   *[no] { "" }
}
field-no-set-up = none within the limits
field-two-over = { $over } over one gap

## Gear by person

gear-row = { $what }: { $for }
gear-harness = { $count ->
    [one] 1 harness
   *[other] { $count } harnesses
}
gear-helmet = { $count ->
    [one] 1 helmet
   *[other] { $count } helmets
}
gear-ice-axe = { $count ->
    [one] 1 ice axe
   *[other] { $count } ice axes
}
gear-snow-anchor = { $count ->
    [one] 1 thing to bury as an anchor
   *[other] { $count } things to bury as anchors
}
gear-ice-screw = { $count ->
    [one] 1 ice screw
   *[other] { $count } ice screws
}
gear-sling = { $count ->
    [one] 1 sling
   *[other] { $count } slings
}
gear-prusik-cord = { $count ->
    [one] 1 prusik cord
   *[other] { $count } prusik cords
}
gear-karabiner = { $count ->
    [one] 1 locking karabiner
   *[other] { $count } locking karabiners
}
gear-pulley = { $count ->
    [one] 1 pulley
   *[other] { $count } pulleys
}
gear-crampons = { $count ->
    [one] 1 pair of crampons
   *[other] { $count } pairs of crampons
}
gear-headlamp = { $count ->
    [one] 1 headlamp
   *[other] { $count } headlamps
}
gear-probe = { $count ->
    [one] 1 probe
   *[other] { $count } probes
}
gear-for-tie-in = to be tied to the rope
gear-for-head = against what falls, and in a fall
gear-for-brake = to brake a slide, and to dig
gear-for-anchor-in-snow = the anchor in snow
gear-for-anchor-in-ice = the anchor in ice
gear-for-join-anchor = to join the anchor and the rope
gear-for-longer-loop = { $length } long, in the drop loop: the coils are shorter for it
gear-for-climb-rope = to climb the rope out of a crevasse
gear-for-clip = to tie in, and to clip cords and slings
gear-for-haul-turns = where the rope of a { $system } turns
gear-for-haul-grips = to grip the rope of a { $system }, and to hold it between pulls
gear-for-haul-ease = to lose less at the first turn of a { $system } than it is reckoned with
gear-for-stand-on-ice = to stand on bare ice
gear-for-light = to see by, in the dark and in a crevasse
gear-for-find-gaps = to find gaps under the snow, and how thick their bridges are

## The trip with something missing

rope-lost = Lost: { $rope }
one-hurt = Hurt: { $who }, carried by { $carrier }; { $people ->
    [one] 1 person walks
   *[other] { $people } people walk
}
one-hurt-alone = Hurt: { $who }, with nobody left to carry and hold
without-refused = { $label }: { $why }
without-same = { $label }: no leg comes out worse than planned
without-graver = { $label }: { $changes }
without-legs = { $legs } { $verdict }
without-rope = { $teams ->
    [1] the rope is too short on { $legs }
   *[other] the rope of team { $team } is too short on { $legs }
}
without-takes = { $ropes }, which no set-up of the plan needs, is taken along
without-weight = their weight counts in the fall and the haul of who carries them; they hold nothing and haul nothing
rope-none-left = no rope is left for { $who }
