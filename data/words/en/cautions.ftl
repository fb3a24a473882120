### What every plan must be read with.

caution-judged-on-the-spot = Snow bridges and gap widths are judged on the spot; where the ground differs, the plan is wrong.
caution-learned-from-people = Rope techniques are learned from people and practised before the trip.
caution-pulled-off = On steep hard snow a roped team without anchors can be pulled off by the slip of one.
caution-through-the-day = Snow bridges weaken through the day.
caution-never-alone = Never alone.
caution-local-rules = What local guides, park services and rescue services say comes before this plan.
caution-assumptions-only = A computed answer holds for its assumptions only; read them.
