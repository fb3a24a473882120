### What is wrong with the inputs. `.hint` says what to write instead. No capital at the start, no full stop at the end.

alone = a party of { $people } cannot rope up: nobody goes alone
    .hint = take at least one partner: `--party 2`

no-zone-met = { $zones ->
    [0] the zones file holds no zone
    [one] the one zone is not met by the route
   *[other] none of the { $zones } zones is met by the route
 }
    .hint =
        check that both files belong to the same place
        and that coordinates are longitude, latitude
