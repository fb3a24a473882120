### The report: titles, columns and sentences that stand nowhere else.

report-kind = Rope plan
report-window = { $title } – rope plan
report-foot = Computed by schrund { $version } for the assumptions above. What is seen on the spot comes first.
report-label = { $column }, { $unit }

## Titles

report-map = Map
report-legs = Legs
report-carry = What to carry
report-profile = Height profile
report-changes = Where to stop for the rope
report-clock = The clock
report-findings = What to look at
report-ropes = The rope laid out
report-insets = Each roped leg
report-zones = Zones on the way
report-limits = How wide a gap it is spaced for
report-holding = If somebody falls
report-field = The field table, a row a gap
report-gear = Who has what on them
report-party = If something is missing
report-cautions = Read with this plan
report-emergency = In an emergency
report-notes = Notes
report-assumptions = What it rests on

## Columns

report-leg = Leg
report-stage = Stage
report-from-to = From–to
report-length = Length
report-height = Height
report-time = Time
report-there = There
report-zone-column = Zones
report-gap = Gap
report-verdict = Verdict
report-rope = Rope
report-knots = Knots
report-coils = Coils
report-spacing = Spacing
report-fits = At hand
report-set-up = Set-up

## The head

report-route = Route: { $route }
report-up = Up
report-down = Down
report-on-the-rope = On the rope
report-time-in-all = Time in all
report-people = Party
report-carried = Carry
report-nobody-roped = nobody roped
report-on-ropes = { $ropes ->
    [1] on one rope
   *[other] on { $ropes } ropes
}
report-no-rope = no rope
report-heights = Heights: { $heights }.
report-count = { $legs ->
    [one] 1 leg
   *[other] { $legs } legs
}, { $length }
report-at = at { $where }
report-worst-unroped = No leg is walked on the rope.
report-worst-inside = Every roped leg is inside the planning limits.
report-worst-look = Look: there is something to decide or to watch.
report-worst-outside = A leg is outside the limits: no set-up, or no rope that holds it.
report-worst-stop = Stop: a leg is not to be walked as planned.

## Maps

report-map-says = Map of the route, north up: { $zones } zones in the file, { $legs } legs, { $roped } of them roped. The same stands in words in the tables below.
report-map-of-leg = Map of leg { $leg }, north up, with its zones and changes
report-inset = Leg { $leg },
legend-change = rope up or rope off, lettered as below
legend-leg = number of the leg, in its colour
legend-unroped = unroped
legend-inside = roped, inside the planning limits
legend-look = look: something to decide or to watch
legend-outside = outside the limits
legend-stop = stop: not as planned
legend-zones = zones, darker with wider gaps; Z and their number, then the width, "?" where it is assumed; faint where the route does not go
map-zone = Z{ $zone }
legend-strike = the direction in which its crevasses run, where it was drawn
legend-ice = known ice
legend-along = along the crevasses
legend-fall = where a fall is held worst
legend-steep = too steep for a rope without anchors
legend-roll-over = the ground steepens: gaps are to be expected

## The height profile

profile-none = No heights are known along this stage, so no profile is drawn.
profile-says = Height profile of { $stage }: from { $low } to { $high } { $unit }. Zones, legs and steep stretches lie under the same ruler.
profile-zones = zones
profile-legs = legs
profile-steep = steep
profile-nowhere = nowhere
profile-key = Zones and legs by number. Steep: { $slope } or more along the line, over { $length }.

## Legs, zones and changes

legs-caption = Legs, with the set-up of each rope team
legs-fine = Gap: the widest across; in brackets the way over it along the route, where that is longer. Places are those of the first person.
legs-without-rope = Walked without a rope; see what to look at.
legs-team = Team { $team }
legs-rope = rope
legs-of = of { $length }
legs-take = , take { $length }
legs-none-sold = , more than any rope sold
legs-zone = Zone { $zone }
changes-none = The rope stays in the pack.
changes-caption = Places where the set-up changes, lettered as on the maps
changes-number = Point
changes-clock = Clock
changes-do = Do
changes-at = At
changes-height = , height
changes-degrees = Latitude, longitude
changes-utm = UTM
changes-leg = { $what }, leg { $leg }

## What to carry, and the trip with something missing

carry-rope-for = rope for { $why }
party-shown = Party shown
party-roped = Roped legs: { $label }

## What is found, and what it rests on

findings-none = Nothing was found that must be said.
findings-do = Do: { $hint }.
assumptions-caption = Everything the plan rests on, with what stands behind it and who put it in force
assumptions-what = Assumption
assumptions-value = Value
assumptions-standing = Standing
assumptions-origin = Origin
assumptions-set = Set for this trip
assumptions-defaults = Defaults
origin-default = default
origin-practice-set = practice set
origin-trip-file = trip file
origin-flag = flag

## The rope laid out

same-teams = { $legs }: { $count ->
    [one] team { $teams }
   *[other] teams { $teams }
}
same-knots = Brake knots: { $knots }. { $why }.
same-knots-none = none
same-knots-some = { $count }, { $each } from each end
drawn-says = { $legs }: the rope laid out with { $people } people, { $knots } brake knots and coils of { $coil } at both ends; the table beside it has every mark
drawn-bag = { $length } in a bag
marks-caption = Marks from the first person’s free end
marks-what = What
marks-at = At
marks-arm-spans = Arm spans
ledger-caption = Where the rope goes, { $unit }. As carried: { $coil } in each end coil{ $rest }
ledger-short = ; the rope is { $short } short
ledger-sold = ; next sold { $length }
ledger-spans = Spans
ledger-knots = Knots
ledger-tie-ins = Tie-ins
ledger-coils = Coils
ledger-bag = Bag
ledger-in-all = In all
ledger-needed = Needed
ledger-carried = Carried

## How wide a gap it is spaced for

limits-caption = The widest gap for which each set-up is spaced by the rule, as it is tied and with its rope tied anew
limits-planned = Planned gap
limits-as-tied = Spaced for, as tied
limits-anew = Tied anew
limits-fine = Gaps across, met as on this leg, by the spacing rule, which says nothing about holding a fall; coils as carried.
limits-team = { $leg }, team { $team }

## If somebody falls

holding-what = A model's answer, for its assumptions only: each thing it rests on is taken from its best to its worst, all mixed. “Held” means that those left stop before the lip. How bridges break and where people stand is not in it.
holding-fine =
    Falls, holds: places on the rope, 1 ahead; for who falls between two the rope is bent in a V and each
    side holds for itself. First: the usual fall, of who goes first through a bridge, where it stands
    otherwise. Slide and peak: of the first who holds, over all assumed cases.
    Strand: the one that carries the weight, or one of its own. Rope: beyond the loaded strand, hands and
    hitches counted; “needed”: the free rope does not reach; “knots”: they block that strand.
    Can: whether those left can pull so hard; perhaps: strong ones who stand well.
fall-caption = The fall that is held worst
fall-falls = Falls
fall-holds = Holds
fall-in-the-model = In the model
fall-slide = Slide
fall-peak = Peak
fall-taken = Taken
fall-no-answer = The model has no answer here.
loop-caption = A drop loop from where the holder stands, by who falls
loop-free = Free
loop-loop = The loop
loop-none = { $none }: the rope ends before it
haul-caption = Hauling out { $who }, { $depth } below the lip: { $answer }
haul-system = System
haul-strand = Strand
haul-strokes = Strokes
haul-pull = Pull
haul-can = Can { $haulers }?
haul-loaded = loaded
haul-own = own
haul-knots = knots
haul-short = needed
haul-no-room = no room

## In the hand

gear-fine = To check before setting out; how many is common practice or our judgement, listed below, and yours to change.
emergency-fill-in = Fill in before you go: name, number or channel, what else matters.
