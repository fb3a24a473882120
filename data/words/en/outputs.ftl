### Headings, labels and sentences of the outputs.

verdict = { $verdict ->
    [unroped] unroped
    [inside] inside the limits you gave
    [outside] outside the limits you gave
   *[look] look: near a limit or resting on a guess
 }

legs = { $n ->
    [one] leg { $legs }
   *[other] legs { $legs }
 }
