### Sentences and words that several outputs share.

## A set-up in a row

team-spacing = { $people } people, { $spacing } apart
knots-none = no knots
knots-some = { $bite ->
    [yes] { $knots ->
        [one] 1 knot
       *[other] { $knots } knots
    }
   *[doubtful] { $knots ->
        [one] 1 knot?
       *[other] { $knots } knots?
    }
}
coils-short = coils { $coil } ({ $needed } needed)
coils-none = no coils
coils-some = coils { $coil }
coil-none = no coil

## Verdicts

verdict-unroped = unroped
verdict-inside = inside
verdict-look = look
verdict-outside = outside
verdict-stop = stop
means-unroped = unroped
means-inside = inside the planning limits
means-look = look: something to decide or to watch
means-outside = outside: no set-up within the limits, or no rope long enough for it
means-stop = stop: not as planned here

word-in-part = { $verdict } at { $where }; the rest { $rest }
word-span = { $span }
word-spans = { $spans }{ $more ->
    [0] { "" }
   *[other] {" "}and { $more } more
}, { $length }
word-on-leg = leg { $leg } at { $where }
word-on-legs = { $verdict }: { $places }

## A leg and a zone in sentences

leg-back = walk { $spacing } apart there, on { $rope }
leg-title = Leg { $leg }: { $how }, { $verdict }
leg-title-unroped = Leg { $leg }: { $verdict }
and = { " and " }
leg-title-gap = { $kind ->
    [none] gap unknown
   *[other] gap { width-told }
}
leg-line = Leg { $leg }: { $span }, { $length }.
leg-gap = { $kind ->
    [none] gap widths unknown
    [askew] gaps up to { width-told }, { $along } along the line
   *[square] gaps up to { width-told }
}{ $known ->
    [no] { $kind ->
        [none] { "" }
       *[other] , others unknown
    }
   *[yes] { "" }
}
row-gap-assumed = { $gap } assumed
width-told = { $assumed ->
    [yes] { $gap } (assumed)
   *[no] { $gap }
}
leg-alarm = { $word }: { $says }.
team-line = { $teams ->
    [1] { $setup }; rope needed { $needed }, { $rope }.
   *[other] Team { $team }: { $setup }; rope needed { $needed }, { $rope }.
}
team-rope-at-hand = rope at hand { $length }
team-rope-sold = take { $length }
team-rope-none = more than any rope sold
zone-title = { $zone }{ $met ->
    [yes] { "" }
   *[no] , not met
}: gaps up to { width-told }
left-out-of-map = { $count ->
    [one] 1 zone that the route does not meet is left out.
   *[other] { $count } zones that the route does not meet are left out.
}
zone-gaps = gaps up to { $gap }
zone-width-assumed = width assumed
zone-hidden = hidden under snow
zone-bare = bare ice
zone-snow = snow { $depth }
zone-strike = strike { $strike } ± { $doubt }
zone-strike-exact = strike { $strike }, taken as exact
zone-always = the leader says: always rope
zone-never = the leader says: never rope
zone-observed = Observed { $text }.
zone-source = Source: { $text }.
zone-note = Note: { $text }.

## Changes of the set-up, and hours

change-rope-up = rope up
change-unrope = unrope
change-off-by-word = rope off by your word
change-ends-on-ice = route ends on ice
change-onto-ice = on to ice, unroped by your word
change-title = { $letter }. { $what }
halt-title = Halt, { $minutes }
halt-title-named = Halt "{ $name }", { $minutes }
change-end = End of leg { $leg }, once the last person is here.
change-end-by-word = End of leg { $leg }, on ice: the rope comes off because you say so, not because the ice ends.
change-end-on-ice = End of leg { $leg }, on ice: what comes after it is not planned.
change-begin-on-ice = From here leg { $leg } is on ice, without a rope because you say so.
change-at = { $stages ->
    [1] { $what } at { $at }
   *[other] { $what } at stage { $stage }, { $at }
}
change-height = height { $height }
change-bearing = then { $bearing }
bearing-true = { $bearing } true
hours = Walking { $walking }, roping up and unroping { $rope }, breaks { $breaks }{ $halted ->
    [yes] , halts { $halts }
   *[no] { "" }
}{ $belays ->
    [asked] , belays { $belay }
   *[other] { "" }
}: { $total } in all{ $heights ->
    [yes] { "" }
   *[no] , the heights not counted
}{ $belays ->
    [none] , no belay counted
   *[other] { "" }
}
hours-clock = ; from { $start } to { $end }
hours-effort = ; as hard as { $effort } km on the flat

## The clock

title-clock = Clock
hour-day-after = { $hour } the day after
hour-day-of-start = { $hour } on the day of the start
hour-day-before = { $hour } the day before
hour-days-away = { $hour } ({ $days } days)
clock-of-stage = stage { $stage }: { $text }
clock-latest-start = { $late ->
    [yes] start by { $at }, not { $start } ({ $earlier } too late), to be off all bridges by { $until }{ $belays }
   *[no] latest start { $at }{ $belays }{ $without }, off all bridges by { $until }
}{ $others }{ $without-late }
clock-latest-here = { $late ->
    [yes] { $hour } at { $place } is { $earlier } too late: { "" }
   *[no] { $hour } at { $place }: { "" }
}leave there by { $by } to be off all bridges by { $until }{ $others }
clock-latest-start-none = no start of the day is early enough{ $belays } to be off snow bridges by { $until }{ $without }{ $others }
clock-latest-start-none-without = ; without them { $at }
clock-latest-start-without = , { $at } without
clock-latest-start-without-late = ; without belays by { $at }
clock-belays = { $belays ->
    [1] { " " }with a belay on { $legs } ({ $more })
   *[other] { " " }with about { $belays } belays on { $legs } ({ $more })
}
clock-latest-start-back = { $late ->
    [yes] start by { $at }, not { $start } ({ $earlier } too late), to be done by { $by }{ $belays }
   *[no] latest start { $at }{ $belays }, done by { $by }
}{ $others }
clock-latest-start-back-never = ; with no start of the day done by { $by }
clock-latest-start-bridges = ; for the bridges by { $at }, off all by { $until }
clock-latest-start-slower = ; a slower party { $at }
clock-latest-start-dark = ; then dark: { $legs }
clock-latest-start-dark-belays = ; as planned belays on { $on } are in the dark
clock-latest-start-slower-none = ; too late if slower
clock-at-until = at { $until } the team is at { $place }, on leg { $leg }{ $others }
clock-at-until-slower = ; a slower party at { $place }, on leg { $leg }
clock-turn-leg = leg { $leg }
clock-turn-before = before leg { $leg }
clock-turn = { $kind ->
    [of] leave the turn at { $place } by { $at }{ $belays }, to be done by { $by }
   *[off] { $firm ->
        [yes] last firm turning place
       *[no] last turning place
    }: { $place }, { $leg }, by { $at }{ $belays }; the way back along the line is then done by { $by }
}{ $over }{ $others }
clock-turn-over = , on snow bridges until { $left }
clock-turn-bridges = { $kind ->
    [of] leave the turn at { $place } by { $at }{ $belays }, to be back over all snow bridges by { $until }
   *[off] { $late ->
        [yes] turn by { $at } { $firm ->
            [yes] on firm ground at
           *[no] and no farther than
        } { $place }, { $leg }{ $belays }:
       *[no] { $firm ->
            [yes] last firm turning place
           *[no] last turning place
        }: { $place }, { $leg }, by { $at }{ $belays },
    } off all snow bridges by { $until }
}{ $others }
clock-turn-never = { $kind ->
    [of] however early the turn at { $place } is left, the way back is on snow bridges after { $until }
   *[off] no turn beyond the first snow bridges is off them again by { $until }
}{ $belayed ->
    [yes] , as long as the way back takes as many belays as the way out
   *[no] { "" }
}
clock-turn-led-back = ; the last leads back, belays as on the way out
clock-begins-on-hidden = ; the line begins on them: what lies before it is not counted
clock-ends-on-hidden = ; the line ends on them: what comes after is not counted
clock-turn-back-by = { $kind ->
    [of] who leaves the turn as late as { $at } is done by { $by }
   *[off] who turns as late as { $at }, at { $place }, is done by { $by }
}, but on snow bridges until { $left }: too late
clock-turn-slower = { $kind ->
    [of] ; a slower party by { $at }
   *[off] ; a slower party at { $place } by { $at }
}
clock-turn-slower-first = ; whoever is slower turns at { $place } already, there by { $at }
clock-turn-slower-due = ; a slower party should have turned by here
clock-on-the-way-turn = { $late ->
    [yes] too late for all of it: { "" }
   *[no] { "" }
}{ $kind ->
    [of] leave the turn at { $place } by { $at }
   *[off] turn back by { $at }, at { $place } at the latest
}{ $others }
clock-on-the-way-never = who is over the first snow bridges is not back off them by { $until }
clock-on-the-way-late = { $passed ->
    [yes] turning place ({ $place }) reached: bridges after { $until } both ways: probe each, or wait off the ice till it freezes
   *[no] too late for all of it: on snow bridges after { $until }: probe each, or turn back
}
clock-on-the-way-back = { $passed ->
    [yes] turning place ({ $place }) reached: turn back now; going on, still on bridges after { $until }
   *[no] too late for all of it: turn back now; going on, still on bridges after { $until }
}
clock-arrival = done at { $at }{ $belays }{ $others }
clock-arrival-slower = ; a slower party at { $at }
clock-arrival-without = ; without belays at { $at }
clock-sun = { $sun ->
    [up] the sun does not set on { $date }
    [down] the sun does not rise on { $date }
    [sets] no sunrise, sunset { $sunset } on { $date } ({ $offset }), at a level horizon (Reda and Andreas 2004)
    [rises] sunrise { $sunrise }, no sunset after it on { $date } ({ $offset }), at a level horizon (Reda and Andreas 2004)
   *[both] sunrise { $sunrise }, sunset { $sunset } on { $date } ({ $offset }), at a level horizon (Reda and Andreas 2004)
}
clock-halt = { $what } at { $place }{ $height }{ $when }
clock-halt-turn = turn
clock-halt-rest = halt
clock-halt-named = { $what } "{ $name }"
clock-halt-height = , { $height }
clock-halt-when = : { $arrive } to { $depart }
clock-halt-passed = : { $arrive }
clock-slower = a slower party takes { $factor } times as long for walking, rests, belays and the rope
clock-belays-counted = the belays are an estimate: one for every { $every } of hidden gaps and every { $pitch } too steep, { $min } and { $each } for each on that rope
leg-when = From { $begin }, to { $end }.

## Fewer changes

keep-costs = as planned you tie in anew { $planned ->
    [one] once
   *[other] { $planned } times
}, { $planned-time }; kept like this { $kept ->
    [0] never
    [one] once
   *[other] { $kept } times
}, { $kept-time } (slower walking counted)
keep-team = { $spacing }, { $knots }, { $coils }, rope { $rope }
keep-team-of = team { $team }{ " " }
keep-stretch = { $span }
keep-stretches = roped { $spans }
keep-knots = { $knots ->
    [one] 1 knot
   *[other] { $knots } knots
} from each end

## A set-up in a block: labels have at most nine letters

block-label-rope = rope
block-label-people = people
block-label-tie = tie
block-label-knots = knots
block-label-reserve = reserve
block-label-hauling = hauling
block-label-fall = a fall
block-label-order = order
block-label-gaps = gaps
block-title = { $teams ->
    [1] { $legs }: { $people } people, { $spacing } apart, { $rope }
   *[other] { $legs }, team { $team }: { $people } people, { $spacing } apart, { $rope }
}
block-rope-short = { $needed } of rope, rope { $rope } is only { $length } long
block-rope = { $needed } of rope { $rope } ({ $length })
block-rope-sold = { $needed } of rope, sold as { $length }
block-rope-none = { $needed } of rope, more than any sold
block-person = { $who } ({ $mass })
block-person-at = { $position } { $who } ({ $mass })
block-person-position = place { $position }: { $who } ({ $mass })
block-people = { $people }; the first walks ahead
block-ties = { $unit } from the free end: { $marks }
block-knots-none = none: { $why }
block-knots-deep = snow deep enough for them by the rule
block-knots-from = count on them only above { $snow } of snow
block-knots = { $each ->
    [1] 1 from each end person, after { $first }
   *[other] { $each } from each end person, the first after { $first }, then every { $step }
}; { $bite }; { $why }
block-coils = { $carried } in the coil of each end person, { $needed } of it needed
block-coils-short = { $carried } in the coil of each end person, where { $needed } are needed
block-bag = { $bag } more in a bag
block-reserve = { $coils }; a drop loop from where the holder stands: { $reach }
block-reserve-none = { $none }: the rope ends before it, so no loop and no haul is told
block-snow-assumed = snow assumed: { $snow }
block-ground = { $snow }, { $slope }
block-ground-flat = { $snow }, slope unknown, taken as flat
block-fall = { $usual }worst if { $who } falls{ $middle }: { $held } ({ $ground }; { $verdict ->
    [none] holder dragged to the lip, after { $least } to { $most }
    [depends] holder dragged { $least } at best, { $most } and to the lip at worst
   *[all] holder dragged { $least } to { $most }
}; { $least-force } to { $most-force } on the holder)
block-usual = { $says }; { "" }
block-middle = { " (" }{ $says })
block-haul = getting { $who } out, { $depth } below the lip: { $answer }{ $pull }{ $own ->
    [yes] ; it needs a strand of its own, the loaded one is blocked
   *[no] { "" }
}
block-pull = { " (" }{ $force } to pull)
block-pull-least = { " (at least " }{ $force } to pull)
block-spaced = { $long-enough ->
    [yes] as tied: gaps to { $tied }; re-tied { $apart } apart: to { $gap }
   *[no] as tied: none, the rope is too short; re-tied { $apart } apart: gaps to { $gap }
}
block-spaced-unknown = not reckoned, nobody gave a gap width here
block-spaced-nothing = none: the rope is too short
block-spaced-not = { $spaced }; not covered: { $not }
block-not-wider = wider gaps
block-not-loop = a drop loop for { $who }
block-not-two = two people in a gap at once
block-legs = { $legs }: { $text }

## How many legs, and what is found of the whole

first-stop = stop on { $legs }
first-outside = outside the limits on { $legs }
first-look = look at { $legs }
first-whole = no leg stops; look at the whole
first-none = no leg stops or asks for a decision
count-stop = { $count ->
    [one] 1 leg with a stop
   *[other] { $count } legs with a stop
}
count-outside = { $count ->
    [one] 1 leg outside the limits
   *[other] { $count } legs outside the limits
}
count-look = { $count ->
    [one] 1 leg to look at
   *[other] { $count } legs to look at
}
count-none = no leg stops, is outside the limits or wants a look
count-whole = { $count ->
    [one] 1 thing of the trip as a whole to look at
   *[other] { $count } things of the trip as a whole to look at
}

## The head

route = Route
title = { $name }: { $length }, up { $up }, down { $down } ({ turns-not-counted })
turns-not-counted = rises and falls under { $threshold } not counted
title-without-heights = { $name }: { $length }
count-below = { $count }, below the legs
folded = { $teams ->
    [1] { $setup }; rope { $needed } { $unit }
   *[other] team { $team }: { $setup }; rope { $needed } { $unit }
}
folded-at-hand = { $teams ->
    [1] { $setup }; rope { $needed } of { $at-hand } { $unit }
   *[other] team { $team }: { $setup }; rope { $needed } of { $at-hand } { $unit }
}

## The snow that falls are reckoned on

falls-on = { $worsens ->
    [yes] If frozen hard, { $worse } (reckoned: { $snow }{ $assumed ->
        [yes] , assumed
       *[no] { "" }
    })
   *[no] Falls reckoned on { $snow }{ $assumed ->
        [yes] { " " }(assumed)
       *[no] { "" }
    }
}
falls-on-stop = no fall is held on { $legs }: belay
falls-on-look = a fall might not be held on { $legs }

## A message

message-head = { $name }: { $length }, { $legs ->
    [one] 1 leg
   *[other] { $legs } legs
}; { $words }
message-carry = Carry: { $ropes }
message-carry-short = { $rope } ({ $short })
message-no-rope = No leg is walked on the rope.
message-inside = Inside: spacing and rope are within the limits; whether a fall is held is another matter.
message-unroped = Unroped: { $drawn ->
    [yes] no ice is drawn there; the plan knows no other
   *[no] no ice is drawn there, nor known to the inventory
}.
message-read = Computed for its assumptions only; what is seen on the spot comes first.
message-more = ! { $more } more
message-begins = legs begin: { $hours }
message-begins-leg = { $leg } at { $hour }
message-leg = Leg { $leg } { $span } { $roped ->
    [yes] ROPED, { $verdict }
    [no] unroped, { $verdict }
   *[plain] unroped
}
message-word-at = { $word } at { $where }
message-team-names = { $count ->
    [one] team { $teams }:{ " " }
   *[other] teams { $teams }:{ " " }
}
message-team = { $people } people { $spacing } apart, { $knots ->
    [0] no knots
   *[other] { $knots } knots{ $bite ->
        [yes] { "" }
       *[doubtful] {" "}that may not bite
    }
}, { $coiled ->
    [yes] coil { $coil } each end
   *[no] no coils
}
    { $named ->
    [yes] needs { $needed } of rope, has { $rope }
   *[no] needs { $needed } of rope
}
message-team-short = { $people } people { $spacing } { $knots ->
    [0] no knots
   *[other] { $knots } knots{ $bite ->
        [yes] { "" }
       *[doubtful] {" "}in doubt
    }
} { $coiled ->
    [yes] coil { $coil }
   *[no] no coil
} needs { $needed }{ $named ->
    [yes] {" "}has { $rope }
   *[no] {" "}rope
}
message-team-terse = { $people } at { $spacing } { $knots ->
    [0] no knots
   *[other] { $knots } knots{ $bite ->
        [yes] { "" }
       *[doubtful] ?
    }
} coil { $coils } rope { $named ->
    [yes] { $needs } of { $rope }
   *[no] { $needed }
}
message-team-numbers = { $teams }:{ " " }
message-team-least = { $people } at { $apart } { $knots ->
    [0] no knots
   *[other] { $knots } knots{ $bite ->
        [yes] { "" }
       *[doubtful] ?
    }
} coil { $coils } rope { $named ->
    [yes] { $needs }/{ $rope }
   *[no] { $needed }
}
message-gap = { $kind ->
    [none] gap widths unknown
    [askew] gap { $gap }, { $along } along the way
   *[square] gap { $gap }
}{ $known ->
    [no] { $kind ->
        [none] { "" }
       *[other] , others unknown
    }
   *[yes] { "" }
}
message-gap-short = { $kind ->
    [none] gap unknown
    [askew] gap { $gap }, along { $along }
   *[square] gap { $gap }
}{ $known ->
    [no] { $kind ->
        [none] { "" }
       *[other] {" "}or more
    }
   *[yes] { "" }
}
message-gap-terse = gap { $kind ->
    [none] unknown
    [askew] { $wide } along { $along }
   *[square] { $gap }
}{ $known ->
    [no] { $kind ->
        [none] { "" }
       *[other] {" "}or more
    }
   *[yes] { "" }
}
message-up = rope up at { $place }{ $high ->
    [yes] , { $height } high
   *[no] { "" }
}
message-up-short = rope up { $place }{ $high ->
    [yes] {" "}{ $height }
   *[no] { "" }
}
message-zones = on { $names }
message-teams = { $teams } teams, each its own set-up: see the report. Rope up to { $rope }
message-report = ! see the report
message-why = ! { $reasons }{ $more ->
    [0] { "" }
   *[other] { $worded ->
        [yes] ; { $more } more
       *[no] {" "}(+{ $more })
    }
}
short-spans = { $span }{ $more ->
    [0] { "" }
   *[other] {" "}and { $more } more
}
short-unroped = unroped
short-inside = inside
short-look = look
short-outside = outside
short-stop = STOP

## What a fall was reckoned with

taken = { $snow }, { $slope }{ $knots }
taken-knots-counted = , knots counted
taken-knots-from = , knots not counted: only from { $snow } of snow

## The trip with another party

as-planned = As planned
one-fewer = One fewer: { $people ->
    [one] 1 person
   *[other] { $people } people
}
one-more = One more: { $people ->
    [one] 1 person
   *[other] { $people } people
}

## Titles and columns of the table

title-cautions = Read with this plan
title-changes = Changes
title-zones-met = Zones met
title-carry = Carry
title-fewer-changes = Fewer changes
title-set-ups = Set-ups
carry-none = no leg is walked on the rope
column-leg = leg
column-unit = { $unit }
column-height = height
column-zones = zones
column-gap = gap { $along ->
    [yes] (along) { $unit }
   *[no] { $unit }
}
column-set-up = people, knots, coils
column-rope = rope { $unit }
column-verdict = verdict
block-legend = In the drawings: ~ coil carried, (1) person in rope order, x brake knot, distances walked. Gaps: by the spacing rule, which says nothing about holding a fall.
block-model = Falls and hauls: a model's answer for assumed ranges, our judgement.

## The page: what a leader needs first

page-first = { $name }: { $words }
page-avalanche = Avalanche ground, { $from } and steeper, on { $legs }: up to { $slope } near { $at }{ $stages ->
    [1] { "" }
   *[other] {" "}of stage { $stage }
}. The bulletin decides there
page-figures = { $length }{ $travel ->
    [ski] {" "}on skis
    [snowshoe] {" "}on snowshoes
   *[foot] { "" }
}, { $roped } on the rope{ $heights ->
    [yes] ; up { $up }, down { $down }
   *[no] { "" }
}; { $clock }{ $total }{ $belays ->
    [asked] {" "}with { $belay } of belays
    [none] {" "}without belays
   *[unroped] { "" }
}{ $heights ->
    [yes] { "" }
   *[no] , the heights not counted
}
page-clock = { $start } to { $end },{ " " }
page-too = here too: { $what }
page-stage = { $stage }: { $length }
page-end = { $stages ->
    [1] end
   *[other] end of the stage
}
page-legend = { $roped ->
    [yes] Letters: rope on or off{ $word ->
        [yes] , or ice that you go unroped, by your word
       *[no] { "" }
    }. Rope needed/carried.
   *[no] Letters: ice begins that you go unroped, by your word.
} { $inside ->
    [yes] inside: no promise for falls.{ " " }
   *[no] { "" }
}unroped: no ice { $drawn ->
    [yes] drawn
   *[no] known
}{ $word ->
    [yes] , or your word
   *[no] { "" }
}
page-why = { $word } = { $means }
page-zones = Zones: { $zones }
page-zones-of = leg { $leg }: { $zones }
page-apart = { $apart } { $why }
page-folded = { $teams ->
    [1] { "" }
   *[other] team { $team }:{ " " }
}{ $people } people, { $spacing } apart ({ $why }){ $gap }; rope { $rope } { $unit }
page-gap = ; gap { $gap } { $unit }
page-carry = { $teams ->
    [1] Carry
   *[other] Team { $team } carries
} { $rope }: { $why }
page-carry-none = No rope here is long enough: { needed-there }, the longest is { $rope }
page-left = { $good-for ->
    [joining] Carry { $ropes } too{ $by }: joined on { $joined }{ $short ->
        [yes] , and for a rescue on { $legs }
       *[no] { "" }
    }
    [rescue] Carry { $ropes } too{ $by }: rescue on { $legs }
    [instead] Carry { $ropes } instead, its loops reach below the lip; or too{ $by }: rescue on { $legs }
    [lacking] { $ropes } alone is too short as well: { -options-weigh } it joined to another
   *[none] No set-up needs { $ropes }
}{ $carried ->
    [nobody] ; no help unless whoever carries it is left on the side that hauls
   *[somebody] { "" }
}
page-left-or = {" "}or{" "}
page-left-by = { $teams ->
    [1] { "" }
   *[other] , team { $team }
}{ $carried ->
    [nobody] { "" }
   *[somebody] , with { $who }
}
page-set-ups = Set-ups{ $knots ->
    [yes] { "" }
   *[no] { " " }without brake knots
}: person, { $unit } from the free end; a tie-in takes { $tie }
page-legs-of-team = { $legs }, team { $team }
page-set-up = { $spacing } apart, { $knots }{ $coils }: { $marks }
page-set-up-knots = { $knots },{ " " }
page-knots = { $knots ->
    [0] no knots
   *[other] { $each ->
        [one] 1 knot each end, after { $first }
       *[other] { $each } knots each end, the first after { $first }, then every { $step }
    }{ $bite ->
        [yes] { "" }
       *[doubtful] {" "}(they may not bite)
    }
}
page-not = Not covered: { $what }
page-not-wider = gaps along the line over { $gaps }
page-not-any = any gap on { $legs } as planned{ $alike ->
    [yes] { "" }
   *[no] , team { $team }
}: the rope is too short
page-not-on = { $gap } ({ $legs })
page-not-low = a loop down to { $who }
page-not-haul = a haul of { $who }
page-not-haul-of = { $who } ({ $legs })
page-not-two = two falling at once
page-cautions = Judge on the spot: where the ground differs, the plan is wrong. What local guides, park and rescue services say comes first. Never alone.
page-rest = { $interface ->
    [flags] All figures, { $notes ->
        [one] 1 note
       *[other] { $notes } notes
    }: `--detail`; { $assumptions } assumptions: the report of `--out DIR`
   *[members] { $notes ->
        [one] 1 note
       *[other] { $notes } notes
    }, { $assumptions } assumptions: in the JSON and in the report
}
column-clock = clock
column-high = alt { $unit }
column-grid = grid
column-apart = { $unit } apart

## Maps and devices: a name on a device is plain ASCII, six letters and a number at most

folder-zones = Zones
folder-legs = Legs
folder-changes = Changes
folder-looks = Look
folder-halts = Halts
device-rope-up = UP { $number }
device-unrope = OFF { $number }
device-off-by-word = OFF! { $number }
device-ends-on-ice = ICE { $number }
device-onto-ice = ICE! { $number }
device-halt = HALT { $number }
device-look = { $level ->
    [stop] STOP
   *[look] LOOK
} { $number }
device-look-sign = { $level ->
    [stop] !
   *[look] ?
}{ $number }

## Places to look at

look-title = { $level ->
    [stop] Stop
   *[look] Look
}: { $what }
look-place = { $level ->
    [stop] Stop
   *[look] Look
} on leg { $leg }{ $named ->
    [yes] { "" }
   *[no] {" "}at { $at }
}: { $says }.
look-roll-over = the ground steepens
look-for = look for crevasses
look-steepens = the ground below is { $steeper } steeper → { look-for }

## The set-up on a watch, in one line

device-warned = { $word ->
    [stop] STOP
   *[outside] OUTSIDE
}. { $line }
device-set-up = { $people } people { $spacing } { $knots ->
    [0] no knots
   *[other] { $knots } knots{ $bite ->
        [yes] { "" }
       *[doubtful] {" "}in doubt
    }
} { $coiled ->
    [yes] coil { $coil }
   *[no] no coil
}{ $named ->
    [yes] {" "}rope { $needed } of { $rope }
   *[no] {" "}rope { $needed }
}
