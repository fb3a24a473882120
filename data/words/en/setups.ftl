### Teams, ropes and what they are set up with.

rope-at-hand = rope at hand: { $rope }, { $length }
