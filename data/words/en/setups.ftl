### People, ropes, knots, falls and hauls of one set-up.

person-unnamed = person { $number }
rope-named = rope "{ $name }" ({ $length })
rope-unnamed = the { $length } rope

## Snow and heights

snow-soft = soft snow
snow-settled = settled snow
snow-firm = firm snow
snow-refrozen = refrozen snow
snow-ice = ice
snow-word-soft = soft
snow-word-settled = settled
snow-word-firm = firm
snow-word-refrozen = refrozen
snow-word-ice = ice
heights-route-file = route file
heights-terrain-model = terrain model
height-above = { $by } above
height-below = { $by } below
height-level = within a metre of

## Why brake knots are tied or not

knots-would-not-bite = bare ice or too little snow: they would not bite
knots-unwanted = { $by } wants none
knots-many = not usual with four or more (common practice)
knots-three = for three only where one is clearly heavier, on a steep descent, or where the leader wants them (common practice){ $heights ->
    [known] { "" }
   *[unknown] ; no heights known
}
knots-no-room = wanted ({ $wanted }), but no set fits into { $spacing }
knots-fewer = { $wanted }; only { $tied } of the { $asked } knots of a set fit into { $spacing }
knots-wanted-word = { $by } wants them
knots-wanted-alone = one person alone must hold
knots-wanted-heavier = { $who } is clearly heavier than the others
knots-wanted-steep = steep descent, { $slope }
by-practice-set = the practice set
by-trip-file = the leader (trip file)
by-flag = the leader (flag)

## Why people walk so far apart

spacing-habit = habit
    .means = usual for so many
spacing-least = least
    .means = bare ice, gaps in sight
spacing-knots = knots
    .means = room for the brake knots
spacing-gap = gap
    .means = for the gap
spacing-cap = cap
    .means = the most there is, and too little

## What happens after a fall

held-all = held in all assumed cases
usual-fall = the usual fall, { $who } first through a bridge: { $verdict ->
    [all] held in all assumed cases
    [none] not held, not even with the most favourable assumptions
   *[depends] held with some of the assumptions only
}
usual-fall-brief = { $who } first: { $verdict ->
    [all] in all cases
    [none] in none
   *[depends] in some cases
}
in-the-middle = { $ahead } ahead and { $behind } behind the gap, the rope bent in a V: each side holds for itself
held-depends = may be held: decided by { $parameters }{ $alone ->
    [yes] { "" }
   *[no] , only together
}
held-none = not held in the model, not even with the most favourable assumptions{ $given ->
    [yes] { "" }
   *[no] , judged as if the gap had no width: no width is given
}
depends-mu-before = how slippery it is before they brake
depends-mu-after = how well they brake
depends-lip = how deep the rope cuts in
depends-knot-force = how much a brake knot holds
depends-knot-bite = how long a brake knot bites
depends-delay = how fast they react
depends-slack = slack in the rope
depends-break-point = where the bridge breaks
depends-rope-damping = how fast the rope stops bouncing
order-better = in the model this order gives the better worst case: { $order }
order-as-good = in the model no other order gives a clearly better worst case

system-loop-at-lip = 2:1 drop loop from the lip
system-loop-at-anchor = 2:1 drop loop from the anchor
system-three-loaded = 3:1 on the loaded strand
system-three-new = 3:1 on a new strand
system-six-loop-on-three = 6:1 (loop on 3:1)
system-nine = 9:1 (3:1 on 3:1)
can-no = no
can-perhaps = perhaps
can-yes = yes
haul-yes = { $haulers ->
    [1] one person alone
   *[other] { $haulers } people
} could pull { $system }, on these figures
haul-perhaps = { $haulers ->
    [1] one person alone
   *[other] { $haulers } people
} could perhaps pull { $system }, on these figures, if strong and standing well
haul-no = { $haulers ->
    [1] one person alone
   *[other] { $haulers } people
} could not pull hard enough with any haul the free rope allows, on these figures
haul-too-short = { $haulers ->
    [1] one person
   *[other] { $haulers } people
} left; even a { $system } misses { $missing } of free rope, hands and hitches counted
haul-anchor-too-near = { $haulers ->
    [1] one person
   *[other] { $haulers } people
} left, and the anchor is too near for any haul

## Where falls are held

slope-beside = { ", " }{ $way ->
    [up] the line climbing at { $slope }
    [down] the line descending at { $slope }
   *[level] on level ground
}
lip-slope = { $way ->
    [up] { $slope } uphill to the lip
    [down] { $slope } downhill to the lip
   *[level] level
}

## How deep a drop loop reaches

reach-whoever = reaches them anywhere on this rope
reach-lip = just reaches the lip
reach-depth = reaches { $depth } below the lip
reach-short = ends { $depth } short of the lip
reach-untied = { $reaches }, once { $who } { $count ->
    [one] has
   *[other] have
} untied, secured first
reach-of = for { $who } it { $reaches }

## What is tied where

mark-tie-in = { $who } ties in
mark-knot = brake knot
mark-end = { $bag ->
    [yes] end: the rest goes into the bag
   *[no] end of the rope
}
mark-end-short = rope ends here, { $short } short
mark-knots-counted = { $knots ->
    [one] 1 brake knot
   *[other] { $knots } brake knots
}
mark-no-place = no place for { $what }

## What goes into the packs

carry = { $length } rope for { $why }
carry-one-team = { $people } people
carry-team = team { $team }, { $people } people
carry-rope = { $who }, rope "{ $name }" ({ $length })
needed-there = { $needed } needed{ $given ->
    [yes] { " " }on { $legs }{ $more ->
        [0] { "" }
       *[other] { " " }and { $more } more
    }
   *[no] { "" }
}
carry-longest = { needed-there }, the longest set-up
carry-too-short = too short, { needed-there }

carry-left = { $short }; team { $other } carries a longer one: { $gain ->
    [graver] with the two exchanged legs with graver falls would be outside
    [fewer] with the two exchanged { $exchanged ->
        [one] 1 leg
       *[other] { $exchanged } legs
    } would be outside, not { $outside }
   *[none] exchanging the two would bring no leg inside
}

side-ahead = ahead
side-behind = behind
