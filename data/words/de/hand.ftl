# Was man in der Hand hält: die Tabelle fürs Gelände, die Ausrüstung, die Tour, wenn etwas fehlt.

## Die Tabelle fürs Gelände

field-bare = Blankeis, Spalten sichtbar
field-snow = Schnee, ohne Knoten
field-snow-with-knots = Schnee, mit Bremsknoten
field-nowhere = kein Abschnitt am Seil
field-holds = { $on } ({ $ground }): { $rope } reicht für den Abstand bei Spalten bis { $gap } in Gehrichtung{ $more ->
        [yes] ; { $ways }
       *[no] { "" }
    }
    .short = { $on } ({ $ground }): neu angeseilt reicht { $rope } bis { $gap }{ $more ->
        [yes] ; { $ways }
       *[no] { "" }
    }
field-holds-otherwise = { $on } ({ $ground }): { $rope } ist zu kurz, wie es gelehrt wird; { $ways }
field-otherwise = { $several ->
        [yes] ({ $way }){ " " }
       *[no] { "" }
    }mit { $spacing } Abstand reicht es für Spalten bis { $gap } in Gehrichtung{ $tied ->
        [yes] , so: { $changes }
       *[no] { "" }
    }
    .short = { $several ->
        [yes] ({ $way }){ " " }
       *[no] { "" }
    }mit { $spacing } Abstand reicht es bis { $gap }{ $tied ->
        [yes] , so: { $changes }
       *[no] { "" }
    }
field-holds-none = { $on } ({ $ground }): { $rope } ist für jede Seileinteilung zu kurz
field-unknown = { $on } ({ $ground }): kein Seil ist genannt
field-for-team = Seilschaft { $team }, { $on }
field-sold = ein Seil von { $length }
field-askew = Unter { $angle } gequert zählt eine Spalte das { $widths }-fache ihrer Breite{ $along ->
    [yes] { " " }und mehr: die Seilschaft geht längs
   *[no] { "" }
}.
field-square = Restseile und Seil, wie sie gebraucht werden; was übrig ist, kommt ins Restseil. Spalten sind in Gehrichtung gemessen. Unter { $angle } gequert: nicht hintereinander gehen, sondern gestaffelt. Nach der Abstandsregel, die nichts darüber sagt, ob ein Sturz gehalten wird.
field-fits = Seil reicht
field-fits-not = Seil zu kurz
field-fits-otherwise = Seil zu kurz; mit { $spacing } Abstand schon{ $tied ->
    [yes] , wie oben gesagt angeseilt{ $several ->
        [yes] {" "}({ $way })
       *[no] { "" }
    }
   *[no] { "" }
}
field-no-set-up = keine im Rahmen der Grenzen
field-two-over = { $over } über einer Spalte

## Ausrüstung je Person

gear-row = { $what }: { $for }
gear-harness = { $count ->
    [one] 1 Gurt
   *[other] { $count } Gurte
}
gear-helmet = { $count ->
    [one] 1 Helm
   *[other] { $count } Helme
}
gear-ice-axe = { $count ->
    [one] 1 Pickel
   *[other] { $count } Pickel
}
gear-snow-anchor = { $count ->
    [one] 1 Gegenstand für einen T-Anker
   *[other] { $count } Gegenstände für T-Anker
}
gear-ice-screw = { $count ->
    [one] 1 Eisschraube
   *[other] { $count } Eisschrauben
}
gear-sling = { $count ->
    [one] 1 Bandschlinge
   *[other] { $count } Bandschlingen
}
gear-prusik-cord = { $count ->
    [one] 1 Prusikschlinge
   *[other] { $count } Prusikschlingen
}
gear-karabiner = { $count ->
    [one] 1 Verschlusskarabiner
   *[other] { $count } Verschlusskarabiner
}
gear-pulley = { $count ->
    [one] 1 Seilrolle
   *[other] { $count } Seilrollen
}
gear-crampons = { $count ->
    [one] 1 Paar Steigeisen
   *[other] { $count } Paar Steigeisen
}
gear-headlamp = { $count ->
    [one] 1 Stirnlampe
   *[other] { $count } Stirnlampen
}
gear-probe = { $count ->
    [one] 1 Sonde
   *[other] { $count } Sonden
}
gear-for-tie-in = zum Anseilen
gear-for-head = gegen alles, was fällt, und im Sturz
gear-for-brake = um ein Rutschen zu bremsen und zum Graben
gear-for-anchor-in-snow = die Verankerung im Schnee
gear-for-anchor-in-ice = die Verankerung im Eis
gear-for-join-anchor = um Verankerung und Seil zu verbinden
gear-for-longer-loop = { $length } lang, in der Losen Rolle: die Restseile sind darum kürzer
gear-for-climb-rope = um am Seil aus der Spalte zu steigen
gear-for-clip = zum Einbinden und für Schlingen
gear-for-haul-turns = wo das Seil umlenkt ({ $system })
gear-for-haul-grips = um das Seil zu greifen und zwischen den Zügen zu halten ({ $system })
gear-for-haul-ease = um an der ersten Umlenkung weniger zu verlieren, als gerechnet ist ({ $system })
gear-for-stand-on-ice = um auf blankem Eis zu stehen
gear-for-light = um im Dunkeln und in einer Spalte zu sehen
gear-for-find-gaps = um Spalten unter dem Schnee zu finden, und wie dick ihre Brücken sind

## Die Tour, wenn etwas fehlt

rope-lost = Verloren: { $rope }
one-hurt = Verletzt: { $who }, getragen von { $carrier }; { $people ->
    [one] 1 Person geht
   *[other] { $people } Personen gehen
}
one-hurt-alone = Verletzt: { $who }, und niemand ist da, der trägt und hält
without-refused = { $label }: { $why }
without-same = { $label }: kein Abschnitt steht schlechter da als geplant
without-graver = { $label }: { $changes }
without-legs = { $legs } { $verdict }
without-rope = { $teams ->
    [1] { $legs }: das Seil ist zu kurz
   *[other] { $legs }: das Seil von Seilschaft { $team } ist zu kurz
}
without-takes = { $ropes }, das keine Seileinteilung des Plans braucht, kommt mit
without-weight = ihr Gewicht zählt bei Sturz und Bergung dessen, der trägt; selbst hält und zieht die verletzte Person nichts
rope-none-left = kein Seil ist übrig für { $who }
