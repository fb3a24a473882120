### The sheet: two sides of A5 that a leader holds in the hand, and the first of the report.

sheet-kind = Rope plan
sheet-title = { $name } – rope plan
sheet-route = Route: { $name }
sheet-who = { $who }{ $dated ->
    [yes] {" "}· { $date }
   *[no] { "" }
}
sheet-person = { $number } { $name }
sheet-team-who = team { $team }: { $named ->
    [yes] { $people }
   *[no] people { $people }
}
sheet-people = { $people ->
    [0] nobody roped
    [one] 1 person
   *[other] { $people } people
}
sheet-only-to-look-at = { $says } (no stop as planned)
sheet-belay = belay from an anchor on { $legs }: the team alone may not hold a fall there
sheet-inside = no stop and nothing to decide on any leg: rope and spacing fit. Whether a fall is held stands under “{ report-holding }”{ $notes ->
    [0] { "" }
    [one] ; one note to act on stands under “{ report-findings }”
   *[other] ; { $notes } notes to act on stand under “{ report-findings }”
}
sheet-unroped = no leg is walked on the rope
sheet-next = Rope up first at { $place }; { $setup }
sheet-foot = Computed by { $program } for the assumptions of the plan. What is seen on the spot comes first.

## The legs

sheet-legs = The legs
sheet-legs-caption = Letters: rope on or off. Gap: across, in brackets along the line. Rope needed/carried. UTM on WGS 84.{ $late ->
    [yes] {" "}Second clock: for the latest start.
   *[no] { "" }
} Inside: spacing and rope, not whether a fall is held.
sheet-high = altitude { $unit }
sheet-at = at
sheet-grid = UTM
sheet-latest = { $one ->
    [yes] from { $start }
   *[no] latest
}
sheet-team = { $count ->
    [one] team { $teams }: { $setup }
   *[other] teams { $teams }: { $setup }
}
sheet-tied = { $setup } · rope { $rope } { $unit }
sheet-gap = gap
sheet-zones = { $met ->
    [one] zone
   *[other] zones
}

## The rope

sheet-ropes = The rope, and what is left after a fall
sheet-ropes-caption = Tie in so many { $unit } from the free end of the first, who walks ahead; each tie-in takes { $tie }. Below each rope, of each if they fall: whether they are held, whose rope makes the loop, how far below the lip it ends (who hangs deeper is not reached), and which haul those left can pull. Whoever unties is secured first.
sheet-set-up = { $people } people, { $spacing } apart{ $knotted ->
    [yes] , { $knots }
   *[no] { "" }
}{ $wide ->
    [yes] , { $coils } each
   *[no] { "" }
}
sheet-set-up-of = { $legs }: { $setup }
sheet-drawn = { $legs }: the rope with { $people } people, from the first one’s free end
sheet-only = { $legs }: { $text }
sheet-fall = { $held ->
    [all] whoever falls is held in all assumed cases
    [depends] whoever falls may be held: with middling assumptions they are
    [kind] whoever falls might not be held
   *[none] nobody’s fall is held, not even with the most favourable assumptions
}
sheet-fall-of = { $who }: { $held ->
    [all] held in all assumed cases
    [depends] may be held: with middling assumptions they are
    [kind] might not be held
   *[none] not held
}
sheet-fall-worst = where it is worst, a fall is { $held ->
    [all] held in all assumed cases
    [depends] perhaps held: with middling assumptions it is
    [kind] perhaps not held
   *[none] not held
}
sheet-no-fall = the model has no answer on falls
sheet-loop = { $who }: { $how ->
    [short] no loop: that of { $holder } ends { $depth } short of the lip
   *[other] { $crowded ->
        [yes] from
       *[no] loop from
    } { $holder }{ $untie ->
        [nobody] { "" }
        [holder] , who unties
       *[others] , once { $untied } untie
    }: { $how ->
        [lip] to the lip, not below
       *[below] { $depth }{ $crowded ->
            [yes] { "" }
           *[no] { "" } below the lip
        }
    }
}
sheet-place = ({ $place })
sheet-no-loop = no rope is left to drop: { $none }
sheet-haulers = { $haulers ->
    [one] one person alone
   *[other] { $haulers } people
}
sheet-untied = nobody is tied to { $ropes }: what is in a pack is there for the rescue. Below is what the rope alone allows to which you are tied.
sheet-haul-anybody = whoever falls
sheet-haul = hauling { $who } from { $depth } down: { $can ->
    [yes] { sheet-haulers } could pull { $system }
    [perhaps] { sheet-haulers } could perhaps pull { $system }
    [no] { sheet-haulers } could not pull hard enough with any haul
    [short] { sheet-haulers } could not: { $system } needs { $missing } more rope
   *[near] { sheet-haulers } could not: the anchor is too near
}
sheet-haul-hardest = hardest to haul: { $who }, { $depth } down; { sheet-hauled }
sheet-hauls-from = hauls reckoned from { $depth } below the lip
sheet-system = { $named ->
    [loop-at-lip] 2:1 from the lip
    [loop-at-anchor] 2:1 from the anchor
    [three-loaded] 3:1 on the loaded strand
    [three-new] 3:1 on a new strand
    [six-loop-on-three] 6:1
   *[nine] 9:1
}
sheet-hauled = haul: { $can ->
    [yes] { sheet-system } by { sheet-haulers }
    [perhaps] perhaps { sheet-system } by { sheet-haulers }
    [no] too heavy for { sheet-haulers }
    [short] none, at least { $missing } of rope missing
   *[near] none, the anchor is too near
}

## The field table

sheet-field = If the gap is another one
sheet-field-caption = Re-tie only for gaps wider than covered as tied (below). By the spacing rule; it says nothing of holding a fall. Between two widths take the wider. Over a gap wider than the spacing two stand at once. Met flatter than { $angle }: in echelon.
sheet-gap-along = Gap along the line, { $unit }
sheet-gap-across = across, met at { $angle }
sheet-apart = apart
sheet-knots = knots
sheet-coil = coil, at least
sheet-rope = rope (✕ too short)
sheet-over = over it at once
sheet-otherwise = or tied apart
sheet-otherwise-coil = its coil, at least

sheet-not = Not covered as tied above: { $what }

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
