### Many tracks, and lines of one trip side by side.

survey-length = Length
survey-ascent = Up
survey-descent = Down
survey-ice = On ice
survey-hidden = On hidden gaps
survey-crossings = Crossings of ice
survey-longest = Longest crossing
survey-gap = Widest gap
survey-gap-doubted = { $gap }?
survey-roped-legs = Legs on the rope
survey-roped = Walked on the rope
survey-along = Along the crevasses
survey-steepest = Steepest on the rope
survey-time = Time on the way
survey-word = Word
survey-none = –
survey-line = { $number } = { $name }{ $file }
survey-line-file = {" "}({ $file })
survey-least = Least on hidden gaps: line { $number }, { $least }.
survey-least-all = All lines have as much of hidden gaps: { $least }.
survey-more = Line { $number } has { $more } more.
survey-gap-note = A gap with ? is not all: of some ice nobody gave a width, or it was assumed.
survey-apart = Where they go different ways, more than { $within } apart:
survey-apart-line = line { $number }: { $where }, { $length } in all, { $hidden } of it on hidden gaps
survey-together = They go the same way all along, nowhere more than { $within } apart.
survey-apart-none = line { $number }: nowhere
