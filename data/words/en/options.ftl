### Ways to split the party and to use the ropes, side by side.

change-practice = practice set { $name }
change-butterflies = butterflies for brake knots (they bite less)
    .short = butterflies
change-tighter-layout = brake knots closer: the first after { $first }, then every { $step }
    .short = knots closer ({ $first }, then every { $step })
change-long-sling = a long sling of { $sling } in the drop loop
    .short = a sling of { $sling }
change-closer = at most { $spacing } apart where no gap asks for more
change-joined-ropes = { $first } and { $second } joined, { $length } in all (the bend stops any haul on the loaded strand)

merit-verdict = best verdict
merit-nothing-changed = by the rules, unchanged
merit-left-to-hold = most people left to hold
merit-another-team = another rope team is there to help
merit-lightest-ropes = lightest ropes
merit-shortest-coil = least coil needed
merit-fewest-changes = fewest set-up changes
merit-only = no other way weighed is better in anything shown here
merit-none = no other way weighed beats it in everything

remark-too-small-for-two = the party is too small for two rope teams: nobody else is there to help
remark-too-many-for-one = more than { $most } on one rope are not planned for
-both-taught = two rope teams beat one for help after a fall; one team of four holds better than two of two: both are taught
remark-one-and-two = { -both-taught }, so both are shown
remark-only-one = { -both-taught }; the ropes and limits leave no way with two here
remark-only-two = { -both-taught }; the ropes and limits leave no way with one here
remark-none-inside = no way is inside the limits: as they are, none is a way to go on; those shown come nearest. What to do on each leg stands in the plan
remark-all-changed = as the rules stand no split fits the ropes at hand: every way shown changes something
remark-even-splits = of more than { $most } people only splits into rope teams of like sizes are weighed
remark-no-rope-named = no rope at hand was named: lengths sold are shown

## The table of ways

options-head = { $people } people, { $weighed ->
    [one] 1 way
   *[other] { $weighed } ways
} weighed, { $ways } worth comparing
options-more = { $more } more { $interface ->
    [flags] with `--format json`
    [page] not so good, not shown here
   *[members] in the JSON
 }
options-legend = left: fewest left to hold a fall · help: another rope team · coil: longest that one person needs; not compared: how deep rescue loops reach, ropes carried beside (not in the lines for the trip file)
options-cautions = Read with these ways
options-teams = teams
options-spacing = spacing { $unit }
options-rope = rope { $unit }
options-needs = needs { $unit }
options-mass = kg of rope
options-left = left
options-help = help
options-coil = coil { $unit }
yes = yes
no = no
options-folded = spacing { $spacing }, needs { $needs } { $unit }
options-with = with { $changes }
options-cord = as thin as cord: { $ropes }
options-trip = in the trip file: { $member }
options-short = { $short } missing this way
options-changes = { $count ->
    [one] the set-up changes once
   *[other] the set-up changes { $count } times
}

## The ways as cards

way-number = Way { $way }
way-team = { $who }: { $spacing } apart{ $varies ->
    [yes] {" "}(as the legs ask)
   *[no] {""}
 } on { $rope } of rope; leg { $leg } needs most, { $needed }
way-without = { $who }: { $spacing } apart{ $varies ->
    [yes] {" "}(as the legs ask)
   *[no] {""}
 }; leg { $leg } needs most, { $needed } of rope, and none is left
way-unroped = { $who }: no leg asks for the rope
way-left = Fewest left to hold a fall
way-help = Another rope team to help
way-coil = Longest coil: needed / carried
way-not-by-rope = the rope is long enough: a gap, a fall, a rescue or the ground speaks against it
way-legs = { $legs }: { $says }
way-belays = about { $belays ->
    [one] 1 belay
   *[other] { $belays } belays
} ({ $minutes })
ways-alike = The same in every usable way: { $says }
way-took = Planned with way { $way } now{ $changed ->
    [yes] : { $changes }
   *[no] { "" }
}
way-bridges = off all snow bridges at { $at }{ $later }
way-bridges-late = , later than { $until }
