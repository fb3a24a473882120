### What is told of zones that were made by kilometre.

strip-source = strip along { $route }, { $where }, { $half } to either side
strip-unnumbered = a zone
strip-unnumbered-named = a zone "{ $name }"
strip-wrote = { $file }: { $zone }, { $where }: { $length } of the line, { $half } to either side{ $ours ->
    [yes] {" "}(our judgement; `--half-width` sets it)
   *[no] { "" }
 }, { $area }{ $gap-given ->
    [yes] ; gaps up to { $gap }
   *[no] { "" }
 }{ $snow-given ->
    [yes] , { $snow } of snow
   *[no] { "" }
 }
strip-again = the line is in { $zone } at { $where }{ $more ->
    [0] { "" }
    [one] {" "}and 1 more place
   *[other] {" "}and { $more } more places
 } too, where it comes back or bends: all of it counts
strip-no-gap = no gap width: a plan asks for it. Give it here with `--gap 6`, the widest gap that you expect in metres, or write it into the file as `gap_m`
strip-zones = { $zones ->
    [one] { $file } holds 1 zone now
   *[other] { $file } holds { $zones } zones now
 }
strip-zones-unknown = something is wrong with other zones of { $file }: `schrund check { $file }` tells it
