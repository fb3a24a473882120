### Varianten, die Gruppe aufzuteilen und die Seile zu nutzen, nebeneinander.

change-practice = Regelsatz { $name }
change-butterflies = Schmetterlingsknoten als Bremsknoten (sie greifen weniger)
    .short = Schmetterlingsknoten
change-tighter-layout = Bremsknoten enger: der erste nach { $first }, dann alle { $step }
    .short = Knoten enger ({ $first }, dann alle { $step })
change-long-sling = eine lange Schlinge von { $sling } in der Schlaufe der Losen Rolle
    .short = eine Schlinge von { $sling }
change-closer = höchstens { $spacing } Abstand, wo keine Spalte mehr verlangt
change-joined-ropes = { $first } und { $second } verbunden, zusammen { $length } (der Verbindungsknoten sperrt den Flaschenzug am belasteten Strang)

merit-verdict = bestes Urteil
merit-nothing-changed = nach den Regeln, wie bisher
merit-left-to-hold = am meisten Leute zum Halten
merit-another-team = eine zweite Seilschaft kann helfen
merit-lightest-ropes = leichteste Seile
merit-shortest-coil = braucht am wenigsten Restseil
merit-fewest-changes = am seltensten neu einbinden
merit-only = keine andere Variante, die verglichen wurde, ist in etwas besser, das hier steht
merit-none = keine andere Variante, die verglichen wurde, ist in allem besser

remark-too-small-for-two = die Gruppe ist zu klein für zwei Seilschaften: sonst ist niemand zum Helfen da
remark-too-many-for-one = mehr als { $most } an einem Seil werden nicht geplant
-both-taught = zwei Seilschaften helfen nach einem Sturz besser als eine; eine Seilschaft zu viert hält besser als zwei zu zweit: beides wird gelehrt
remark-one-and-two = { -both-taught }, also stehen beide da
remark-only-one = { -both-taught }; Seile und Grenzen lassen hier keine Variante mit zwei Seilschaften
remark-only-two = { -both-taught }; Seile und Grenzen lassen hier keine Variante mit einer
remark-none-inside = keine Variante ist im Rahmen: so wie sie sind, ist mit keiner weiterzugehen; die gezeigten kommen am nächsten. Was auf jedem Abschnitt zu tun ist, steht im Plan
remark-all-changed = wie die Regeln stehen, passt keine Aufteilung zu den Seilen: jede gezeigte Variante ändert etwas
remark-even-splits = bei mehr als { $most } Personen werden nur Aufteilungen in etwa gleich große Seilschaften verglichen
remark-no-rope-named = kein Seil ist genannt: gezeigt sind Längen, die es zu kaufen gibt

## Die Tabelle der Varianten

options-head = { $people } Personen, { $weighed ->
    [one] 1 Variante
   *[other] { $weighed } Varianten
} verglichen, { $ways ->
    [one] eine kommt
   *[other] { $ways } kommen
} in Frage
options-more = { $more } mehr { $interface ->
    [flags] mit `--format json`
    [page] weniger gute, hier nicht gezeigt
   *[members] im JSON
 }
options-legend = halten: wie wenige mindestens einen Sturz halten · Hilfe: eine zweite Seilschaft · Rest: längstes, das eine Person braucht; nicht verglichen: wie tief Lose Rollen reichen, Seile als Reserve (nicht in den Zeilen für die Tourdatei)
options-cautions = Mit diesen Varianten zu lesen
options-teams = Seilschaften
options-spacing = Abstand { $unit }
options-rope = Seil { $unit }
options-needs = braucht { $unit }
options-mass = kg Seil
options-left = halten
options-help = Hilfe
options-coil = Rest { $unit }
yes = ja
no = nein
options-folded = Abstand { $spacing }, braucht { $needs } { $unit }
options-with = geändert: { $changes }
options-cord = dünn wie Reepschnur: { $ropes }
options-trip = in der Tourdatei: { $member }
options-short = so fehlen { $short }
options-changes = { $count ->
    [one] die Seileinteilung wechselt einmal
   *[other] die Seileinteilung wechselt { $count }-mal
}

## Die Varianten als Karten

way-number = Variante { $way }
way-team = { $who }: { $spacing } Abstand{ $varies ->
    [yes] {" "}(je nach Abschnitt)
   *[no] {""}
 } an { $rope } Seil; am meisten braucht Abschnitt { $leg }, { $needed }
way-without = { $who }: { $spacing } Abstand{ $varies ->
    [yes] {" "}(je nach Abschnitt)
   *[no] {""}
 }; am meisten braucht Abschnitt { $leg }, { $needed } Seil, und keines ist übrig
way-unroped = { $who }: kein Abschnitt verlangt das Seil
way-left = Schlimmstenfalls halten
way-help = Zweite Seilschaft zur Hilfe
way-coil = Längstes Restseil: nötig / getragen
way-not-by-rope = das Seil ist lang genug: eine Spalte, ein Sturz, eine Bergung oder das Gelände spricht dagegen
way-legs = { $legs }: { $says }
way-belays = etwa { $belays ->
    [one] einmal sichern
   *[other] { $belays }-mal sichern
} ({ $minutes })
ways-alike = In allen brauchbaren Varianten gleich: { $says }
way-took = Jetzt mit Variante { $way } geplant{ $changed ->
    [yes] : { $changes }
   *[no] { "" }
}
way-bridges = von allen Schneebrücken herunter um { $at }{ $later }
way-bridges-late = , später als { $until }
