### Personen, Seile, Knoten, Stürze und Bergungen einer Seileinteilung.

person-unnamed = Person { $number }
rope-named = Seil „{ $name }“ ({ $length })
rope-unnamed = das Seil von { $length }

## Schnee und Höhen

snow-soft = weicher Schnee
snow-settled = gesetzter Schnee
snow-firm = fester Schnee
snow-refrozen = wieder gefrorener Schnee
snow-ice = Eis
snow-word-soft = weich
snow-word-settled = gesetzt
snow-word-firm = fest
snow-word-refrozen = wieder gefroren
snow-word-ice = Eis
heights-route-file = Routendatei
heights-terrain-model = Geländemodell
height-above = { $by } über
height-below = { $by } unter
height-level = auf einer Höhe mit

## Warum Bremsknoten geknüpft werden oder nicht

knots-would-not-bite = Blankeis oder zu wenig Schnee: sie würden nicht greifen
knots-unwanted = { $by } will keine
knots-many = zu viert und mehr nicht üblich (gängige Praxis)
knots-three = zu dritt nur, wenn jemand deutlich schwerer ist, im steilen Abstieg oder auf Wunsch der Leitung (gängige Praxis){ $heights ->
    [known] { "" }
   *[unknown] ; keine Höhen bekannt
}
knots-no-room = gewünscht ({ $wanted }), aber kein Satz passt in { $spacing }
knots-fewer = { $wanted }; nur { $tied } der { $asked } Knoten eines Satzes passen in { $spacing }
knots-wanted-word = { $by } will sie
knots-wanted-alone = eine Person allein muss halten
knots-wanted-heavier = { $who } ist deutlich schwerer als die anderen
knots-wanted-steep = steiler Abstieg, { $slope }
by-practice-set = der Regelsatz
by-trip-file = die Leitung (Tourdatei)
by-flag = die Leitung (Befehlszeile)

## Warum die Abstände so sind

spacing-habit = üblich
    .means = für so viele Personen gebräuchlich
spacing-least = mindest
    .means = Blankeis, jede Spalte sichtbar
spacing-knots = Knoten
    .means = Platz für die Bremsknoten
spacing-gap = Spalte
    .means = von der Spalte verlangt
spacing-cap = Grenze
    .means = das Größte, und zu wenig

## Was nach einem Sturz geschieht

held-all = in allen angenommenen Fällen gehalten
usual-fall = der übliche Sturz, { $who } vorn durch eine Brücke: { $verdict ->
    [all] in allen angenommenen Fällen gehalten
    [none] nicht gehalten, auch nicht unter den günstigsten Annahmen
   *[depends] nur unter manchen der Annahmen gehalten
}
usual-fall-brief = { $who } vorn: { $verdict ->
    [all] in allen Fällen
    [none] in keinem
   *[depends] in manchen Fällen
}
in-the-middle = { $ahead } vor und { $behind } hinter der Spalte, das Seil im V geknickt: jede Seite hält für sich
held-depends = vielleicht gehalten; es entscheidet: { $parameters }{ $alone ->
    [yes] { "" }
   *[no] , nur zusammen
}
held-none = im Modell nicht gehalten, auch nicht unter den günstigsten Annahmen{ $given ->
    [yes] { "" }
   *[no] , beurteilt, als wäre die Spalte ohne Breite: keine Breite ist angegeben
}
depends-mu-before = wie rutschig es ist, bevor sie bremsen
depends-mu-after = wie gut sie bremsen
depends-lip = wie tief das Seil einschneidet
depends-knot-force = wie viel ein Bremsknoten hält
depends-knot-bite = wie lange ein Bremsknoten greift
depends-delay = wie schnell sie reagieren
depends-slack = Schlappseil
depends-break-point = wo die Brücke bricht
depends-rope-damping = wie schnell das Seil ausfedert
order-better = im Modell ist in dieser Reihenfolge der schlimmste Fall besser: { $order }
order-as-good = im Modell macht keine andere Reihenfolge den schlimmsten Fall deutlich besser

system-loop-at-lip = Lose Rolle 2:1 vom Spaltenrand
system-loop-at-anchor = Lose Rolle 2:1 von der Verankerung
system-three-loaded = Flaschenzug 3:1 am belasteten Strang
system-three-new = Flaschenzug 3:1 an einem neuen Strang
system-six-loop-on-three = Flaschenzug 6:1 (Lose Rolle auf 3:1)
system-nine = Flaschenzug 9:1 (3:1 auf 3:1)
can-no = nein
can-perhaps = vielleicht
can-yes = ja
haul-yes = { $haulers ->
    [1] eine Person allein könnte
   *[other] { $haulers } Personen könnten
} nach diesen Zahlen ziehen: { $system }
haul-perhaps = { $haulers ->
    [1] eine Person allein könnte
   *[other] { $haulers } Personen könnten
} nach diesen Zahlen vielleicht ziehen, kräftig und mit gutem Stand: { $system }
haul-no = { $haulers ->
    [1] eine Person allein könnte
   *[other] { $haulers } Personen könnten
} nach diesen Zahlen bei keiner Bergung, für die das freie Seil reicht, stark genug ziehen
haul-too-short = { $haulers ->
    [1] eine Person bleibt
   *[other] { $haulers } Personen bleiben
}; selbst dafür fehlen { $missing } freies Seil, Hände und Klemmknoten mitgezählt: { $system }
haul-anchor-too-near = { $haulers ->
    [1] eine Person bleibt
   *[other] { $haulers } Personen bleiben
}, und die Verankerung ist für jede Bergung zu nah

## Wo Stürze gehalten werden

slope-beside = { ", " }{ $way ->
    [up] die Linie steigt mit { $slope }
    [down] die Linie fällt mit { $slope }
   *[level] im Flachen
}
lip-slope = { $way ->
    [up] { $slope } bergauf zum Spaltenrand
    [down] { $slope } bergab zum Spaltenrand
   *[level] eben
}

## Wie tief eine Lose Rolle reicht

reach-whoever = reicht bei diesem Seil überall hin
reach-lip = reicht gerade bis zum Spaltenrand
reach-depth = reicht { $depth } unter den Spaltenrand
reach-short = endet { $depth } vor dem Spaltenrand
reach-untied = { $reaches }, sobald { $who } sich gesichert ausgebunden { $count ->
    [one] hat
   *[other] haben
}
reach-of = für { $who }: { $reaches }

## Was wo eingebunden ist

mark-tie-in = { $who } bindet sich ein
mark-knot = Bremsknoten
mark-end = { $bag ->
    [yes] Ende: der Rest kommt in den Beutel
   *[no] Ende des Seils
}
mark-end-short = Seil endet hier, { $short } zu kurz
mark-knots-counted = { $knots ->
    [one] 1 Bremsknoten
   *[other] { $knots } Bremsknoten
}
mark-no-place = kein Platz für { $what }

## Was in die Rucksäcke kommt

carry = { $length } Seil für { $why }
carry-one-team = { $people } Personen
carry-team = Seilschaft { $team }, { $people } Personen
carry-rope = { $who }, Seil „{ $name }“ ({ $length })
needed-there = { $needed } gebraucht{ $given ->
    [yes] { " " }auf { $legs }{ $more ->
        [0] { "" }
       *[other] { " " }und { $more } weiteren
    }
   *[no] { "" }
}
carry-longest = { needed-there }, die längste Seileinteilung
carry-too-short = zu kurz, { needed-there }

carry-left = { $short }; Seilschaft { $other } trägt ein längeres: { $gain ->
    [graver] bei Tausch der beiden wären Abschnitte mit ernsteren Stürzen nicht im Rahmen
    [fewer] bei Tausch der beiden { $exchanged ->
        [one] wäre 1 Abschnitt
       *[other] wären { $exchanged } Abschnitte
    } nicht im Rahmen, jetzt { $outside }
   *[none] ein Tausch der beiden brächte keinen Abschnitt in die Grenzen
}

side-ahead = vorn
side-behind = hinten
