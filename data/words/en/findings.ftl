### What a plan finds. `.hint` says what to do about it. No capital at the start, no full stop at the end.

coil-heavy =
    each end person carries a coil of { $coil }, about { $mass };
    more than { $most } or { $most-mass } is a burden
    .hint = more people on the rope, a long sling in the loop, or a thinner rope
