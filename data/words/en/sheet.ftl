### The sheet: two sides of A5 that a leader holds in the hand, and the first of the report.

sheet-kind = Rope plan
sheet-title = { $name } – rope plan
sheet-route = Route: { $name }
sheet-who = { $who }{ $dated ->
    [yes] {" "}· { $date }
   *[no] { "" }
}
sheet-person = { $number } { $name }
sheet-team-who = team { $team }: { $people }
sheet-people = { $people ->
    [0] nobody roped
    [one] 1 person
   *[other] { $people } people
}
sheet-inside = nothing stops, nothing to look at: inside the planning limits
sheet-unroped = no leg is walked on the rope
sheet-next = First on the rope: { $place }; { $setup }
sheet-foot = Computed by { $program } for the assumptions of the plan. What is seen on the spot comes first.

## The legs

sheet-legs = The legs
sheet-legs-caption = A row stands where its leg begins: the rope goes on for a roped leg, and off for the next one. Gap: across, in brackets along the line. Rope: needed/carried
sheet-high = high { $unit }
sheet-at = at
sheet-team = { $count ->
    [one] team { $teams }: { $setup }
   *[other] teams { $teams }: { $setup }
}
sheet-tied = { $setup } · rope { $rope } { $unit }
sheet-ice = { $given ->
    [yes] {" "}· gap { $gap } { $unit }
   *[no] { "" }
}{ $met ->
    [0] { "" }
    [one] {" "}· zone { $zones }
   *[other] {" "}· zones { $zones }
}

## The rope

sheet-ropes = The rope, and what is left after a fall
sheet-ropes-caption = Tie in so many { $unit } from the free end of the first, who walks ahead. Who unties is secured first. Falls: a model.
sheet-set-up = { $people } people, { $spacing } apart, { $knots }, { $coils }
sheet-set-up-of = { $legs }: { $setup }
sheet-drawn = { $legs }: the rope with { $people } people, from the first one’s free end
sheet-only = { $legs }: { $text }
sheet-fall = worst fall { $who }: { $holders } { $held ->
    [all] hold in all assumed cases
    [depends] hold in some assumed cases only
   *[none] do not hold in any assumed case
}
sheet-no-fall = the model has no answer on falls
sheet-loops = rope to drop reaches below the lip: { $loops }
sheet-loop = { $who } { $how ->
    [short] none, { $depth } short
    [lip] just to the lip
   *[below] { $depth }
}, { $from ->
    [coil] coil
   *[end] end
} of { $holder }{ $untie ->
    [nobody] { "" }
    [holder] , who unties
   *[others] , once { $untied } untie
}
sheet-place = ({ $place })
sheet-no-loop = no rope is left to drop: { $none }
sheet-haulers = { $haulers ->
    [one] one person alone
   *[other] { $haulers } people
}
sheet-haul = hauling { $who } from { $depth } down: { $can ->
    [yes] { sheet-haulers } could pull { $system }
    [perhaps] { sheet-haulers } could perhaps pull { $system }
    [no] { sheet-haulers } could not pull hard enough with any haul
    [short] { sheet-haulers }, { $missing } of rope missing for { $system }
   *[near] { sheet-haulers }, the anchor too near for any haul
}

## The field table

sheet-field = If the gap is another one
sheet-field-caption = For the gap that is seen, by the spacing rule, which says nothing about holding a fall; between two widths the wider. Rope left over goes into the coils. Met flatter than { $angle }: not in file.
sheet-gap-along = Gap along the line, { $unit }
sheet-gap-across = across, met at { $angle }
sheet-apart = apart
sheet-knots = knots
sheet-coil = each coil
sheet-rope = rope needed
sheet-over = over it at once
sheet-fits = rope long enough
sheet-yes = yes
sheet-no = no
sheet-closer = at { $apart }
sheet-closer-means = “at 12”: the rope is too short as is taught, and long enough tied so far apart.

## What comes behind the sheet

annex-title = All there is behind it
annex-unfold = Unfold all of it; what is unfolded is printed
annex-map = where the legs, zones and changes lie
annex-profile = heights, legs and zones along the way
annex-figures-title = The day in figures
annex-figures = { $legs } legs by their words, the hours, where heights come from
annex-legs = { $legs } legs with their lengths, climbs, times and zones
annex-carry = { $ropes ->
    [one] 1 rope
   *[other] { $ropes } ropes
}, and which set-ups could be kept
annex-changes = { $count ->
    [one] 1 place
   *[other] { $count } places
} with degrees, grid and bearings
annex-clock = latest start, last turn, a slower party, the sun
annex-findings = { $count } in whole sentences, { $notes } of them notes
annex-ropes = { $count ->
    [one] 1 set-up
   *[other] { $count } set-ups
} with every mark and where the rope goes
annex-insets = { $count ->
    [one] 1 map
   *[other] { $count } maps
}
annex-zones = { $count ->
    [one] 1 zone
   *[other] { $count } zones
} met, in words
annex-limits = up to which gap each set-up is spaced
annex-holding = falls, rope to drop and hauls of { $count ->
    [one] 1 set-up
   *[other] { $count } set-ups
}
annex-field = { $count } rows, one for each gap and ground
annex-gear = { $count } lines to check before setting out
annex-party = { $count ->
    [one] 1 other trip
   *[other] { $count } other trips
}: with fewer or more, a rope lost, somebody hurt
annex-cautions = { $count } cautions
annex-notes = empty lines
annex-assumptions = { $count } figures, { $set } of them set for this trip
annex-decisive = Deciding whether a fall is held here
annex-defaults = The other { $count }, as they always are
annex-defaults-caption = What nobody changed and what decides no fall here
