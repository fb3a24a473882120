### Das Blatt: zwei A5-Seiten für die Hand, und der Anfang des Berichts.

sheet-kind = Seilplan
sheet-title = { $name } – Seilplan
sheet-route = Route: { $name }
sheet-who = { $who }{ $dated ->
    [yes] {" "}· { $date }
   *[no] { "" }
}
sheet-person = { $number } { $name }
sheet-team-who = Seilschaft { $team }: { $named ->
    [yes] { $people }
   *[no] Personen { $people }
}
sheet-people = { $people ->
    [0] niemand am Seil
    [one] 1 Person
   *[other] { $people } Personen
}
sheet-only-to-look-at = { $says } (wie geplant kein Stopp)
sheet-belay = auf { $legs } am Fixpunkt sichern: die Seilschaft allein hält einen Sturz dort vielleicht nicht
sheet-inside = auf keinem Abschnitt Stopp, auf keinem ist zu entscheiden: Seil und Abstand passen. Ob ein Sturz gehalten wird, steht unter „{ report-holding }“{ $notes ->
    [0] { "" }
    [one] ; ein Hinweis, auf den etwas zu tun ist, steht unter „{ report-findings }“
   *[other] ; { $notes } Hinweise, auf die etwas zu tun ist, stehen unter „{ report-findings }“
}
sheet-unroped = kein Abschnitt wird am Seil gegangen
sheet-next = Erster Anseilplatz: { $place }; { $setup }
sheet-foot = Gerechnet von { $program } für die Annahmen des Plans. Was vor Ort zu sehen ist, geht vor.

## Die Abschnitte

sheet-legs = Die Abschnitte
sheet-legs-caption = Buchstaben: Seil an oder ab. Spalte: quer, in Klammern längs. Seil nötig/dabei. UTM: WGS 84.{ $late ->
    [yes] {" "}Zweite Uhr: spätester Aufbruch.
   *[no] { "" }
} Im Rahmen: Abstand und Seil, nicht das Halten.
sheet-high = Höhe { $unit }
sheet-at = bei
sheet-grid = UTM
sheet-latest = { $one ->
    [yes] ab { $start }
   *[no] spätestens
}
sheet-team = { $count ->
    [one] Seilschaft { $teams }: { $setup }
   *[other] Seilschaften { $teams }: { $setup }
}
sheet-tied = { $setup } · Seil { $rope } { $unit }
sheet-gap = Spalte
sheet-zones = { $met ->
    [one] Zone
   *[other] Zonen
}

## Das Seil

sheet-ropes = Das Seil, und was nach einem Sturz bleibt
sheet-ropes-caption = Einbinden so viele { $unit } vom freien Ende der ersten Person, die vorangeht; jedes Einbinden braucht { $tie }. Unter jedem Seil, wenn jemand stürzt: ob gehalten wird, von wem die Lose Rolle kommt, wie tief unter dem Rand sie endet (tiefer erreicht sie niemanden), welchen Flaschenzug die anderen schaffen. Vor dem Losbinden sichern.
sheet-set-up = { $people } Personen, { $spacing } Abstand{ $knotted ->
    [yes] , { $knots }
   *[no] { "" }
}{ $wide ->
    [yes] , { $coils }
   *[no] { "" }
}
sheet-set-up-of = { $legs }: { $setup }
sheet-drawn = { $legs }: das Seil mit { $people } Personen, vom freien Ende der ersten
sheet-only = { $legs }: { $text }
sheet-fall = { $held ->
    [all] wer auch stürzt, wird in allen angenommenen Fällen gehalten
    [depends] wer auch stürzt, wird vielleicht gehalten: unter mittleren Annahmen ja
    [kind] wer auch stürzt, wird vielleicht nicht gehalten
   *[none] niemandes Sturz wird gehalten, auch nicht unter den günstigsten Annahmen
}
sheet-fall-of = { $who }: { $held ->
    [all] in allen angenommenen Fällen gehalten
    [depends] vielleicht gehalten, unter mittleren Annahmen ja
    [kind] vielleicht nicht gehalten
   *[none] nicht gehalten
}
sheet-fall-worst = wo es am schlimmsten ist, wird ein Sturz { $held ->
    [all] in allen angenommenen Fällen gehalten
    [depends] vielleicht gehalten: unter mittleren Annahmen ja
    [kind] vielleicht nicht gehalten
   *[none] nicht gehalten
}
sheet-no-fall = das Modell weiß keine Antwort auf Stürze
sheet-loop = { $who }: { $how ->
    [short] keine Lose Rolle: die von { $holder } endet { $depth } vor dem Rand
   *[other] { $crowded ->
        [yes] von
       *[no] Rolle von
    } { $holder }{ $untie ->
        [nobody] { "" }
        [holder] , bindet sich aus
       *[others] , sobald { $untied } ausgebunden sind
    }: { $how ->
        [lip] bis zum Rand, nicht darunter
       *[below] { $depth }{ $crowded ->
            [yes] { "" }
           *[no] { "" } unter dem Rand
        }
    }
}
sheet-place = ({ $place })
sheet-no-loop = kein Seil mehr zum Hinablassen: { $none }
sheet-haulers = { $haulers ->
    [one] eine Person allein
   *[other] { $haulers } Personen
}
sheet-untied = an { $ropes } ist niemand angeseilt: was davon im Rucksack ist, dient der Bergung. Unten steht, was allein das Seil hergibt, an dem ihr geht.
sheet-haul-anybody = wer auch stürzt
sheet-haul = Bergen aus { $depth } Tiefe, { $who }: { $can ->
    [yes] { sheet-haulers }: { $system } geht
    [perhaps] { sheet-haulers }: vielleicht { $system }
    [no] { sheet-haulers }: kein Flaschenzug ist stark genug
    [short] { sheet-haulers }: nicht, { $system } braucht { $missing } Seil mehr
   *[near] { sheet-haulers }: Verankerung zu nah für jeden Flaschenzug
}
sheet-haul-hardest = am schwersten zu bergen: { $who }, { $depth } tief; { sheet-hauled }
sheet-hauls-from = Bergen: aus { $depth } Tiefe gerechnet
sheet-system = { $named ->
    [loop-at-lip] 2:1 vom Rand
    [loop-at-anchor] 2:1 von der Verankerung
    [three-loaded] 3:1 am belasteten Strang
    [three-new] 3:1 am neuen Strang
    [six-loop-on-three] 6:1
   *[nine] 9:1
}
sheet-hauled = Bergen: { $can ->
    [yes] { sheet-system }, { sheet-haulers }
    [perhaps] vielleicht { sheet-system }, { sheet-haulers }
    [no] zu schwer für { sheet-haulers }
    [short] so nicht, mindestens { $missing } Seil fehlen
   *[near] nicht möglich, Verankerung zu nah
}

## Die Feldtabelle

sheet-field = Wenn die Spalte anders ist
sheet-field-caption = Neu anseilen nur, wo die Spalte breiter ist, als so angeseilt abgedeckt (unten). Nach der Abstandsregel, die nichts über das Halten sagt. Zwischen zwei Breiten gilt die größere. Über einer breiteren als der Abstand stehen zwei gleichzeitig. Flacher als { $angle }: gestaffelt.
sheet-gap-along = Spalte längs der Route, { $unit }
sheet-gap-across = quer, bei { $angle } getroffen
sheet-apart = Abstand
sheet-knots = Knoten
sheet-coil = Restseil, mindestens
sheet-rope = Seil (✕ zu kurz)
sheet-over = zugleich darüber
sheet-otherwise = oder Abstand
sheet-otherwise-coil = dazu Restseil je

sheet-not = So angeseilt nicht abgedeckt: { $what }

## Was hinter dem Blatt kommt

annex-title = Alles, was dahinter steht
annex-unfold = Alles aufklappen; was aufgeklappt ist, wird gedruckt
annex-map = wo die Abschnitte, Zonen und Wechsel liegen
annex-profile = Höhen, Abschnitte und Zonen am Weg
annex-figures-title = Der Tag in Zahlen
annex-figures = { $legs } Abschnitte nach ihren Wörtern, die Stunden, woher die Höhen sind
annex-legs = { $legs } Abschnitte mit Längen, Anstiegen, Zeiten und Zonen
annex-carry = { $ropes ->
    [one] 1 Seil
   *[other] { $ropes } Seile
}, und was angeseilt bleiben könnte
annex-changes = { $count ->
    [one] 1 Stelle
   *[other] { $count } Stellen
} mit Grad, Gitter und Richtung
annex-clock = spätester Aufbruch, letzte Umkehrstelle, eine langsamere Gruppe, die Sonne
annex-findings = { $count } in ganzen Sätzen, { $notes } davon Hinweise
annex-ropes = { $count ->
    [one] 1 Seileinteilung
   *[other] { $count } Seileinteilungen
} mit jeder Marke und wohin das Seil geht
annex-insets = { $count ->
    [one] 1 Karte
   *[other] { $count } Karten
}
annex-zones = { $count ->
    [one] 1 getroffene Zone
   *[other] { $count } getroffene Zonen
} in Worten
annex-limits = bis zu welcher Spalte jede Seileinteilung reicht
annex-holding = Stürze, Restseil und Bergen bei { $count ->
    [one] 1 Seileinteilung
   *[other] { $count } Seileinteilungen
}
annex-field = { $count } Zeilen, eine für jede Spalte und jeden Grund
annex-gear = { $count } Zeilen zum Prüfen vor dem Aufbruch
annex-party = { $count ->
    [one] 1 andere Tour
   *[other] { $count } andere Touren
}: mit weniger oder mehr Leuten, ein Seil verloren, jemand verletzt
annex-cautions = { $count } Mahnungen
annex-notes = leere Zeilen
annex-assumptions = { $count } Zahlen, { $set } davon für diese Tour gesetzt
annex-decisive = Hier entscheidend, ob ein Sturz gehalten wird
annex-defaults = Die übrigen { $count }, wie sie immer sind
annex-defaults-caption = Was niemand geändert hat und was hier keinen Sturz entscheidet
