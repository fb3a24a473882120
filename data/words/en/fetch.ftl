### What is told of data that came from a server.

fetched-source = outline of an inventory, { $address }, fetched { $day }{ $known ->
    [yes] , licence { $licence }
   *[no] { "" }
 }
fetched-outlines = { $near ->
    [one] 1 outline lies near the route
   *[other] { $near } outlines lie near the route
 }, of { $came } that { $found ->
    [yes] the file holds
   *[no] came
 }
fetched-no-gap = an outline tells where ice is and nothing of its gaps: write the widest gap that you expect into each zone, in metres, as `gap_m`, or plan with the inventory, on whose ice everybody is roped
fetched-heights = wrote { $file }: heights near the route{ $known ->
    [yes] , { $credit }
   *[no] ; whose they are the server does not say
 }
fetched-no-tile = the server has no { $address }: no relief there, as over the sea
