### Der Bericht: Titel, Spalten und Sätze, die sonst nirgends stehen.

report-kind = Seilplan
report-window = { $title } – Seilplan
report-foot = Gerechnet von schrund { $version } für die Annahmen oben. Was vor Ort zu sehen ist, geht vor.
report-label = { $column }, { $unit }

## Titel

report-map = Karte
report-legs = Abschnitte
report-carry = Was mitgenommen wird
report-profile = Höhenprofil
report-changes = Wo ihr für das Seil haltet
report-clock = Zeitplan
report-findings = Was zu prüfen ist
report-ropes = Das ausgelegte Seil
report-insets = Jeder Abschnitt am Seil
report-zones = Zonen am Weg
report-limits = Für wie breite Spalten der Abstand reicht
report-holding = Wenn jemand stürzt
report-field = Wenn die Spalte anders ist, eine Zeile je Breite
report-gear = Wer was bei sich hat
report-party = Wenn etwas fehlt
report-cautions = Mit diesem Plan zu lesen
report-emergency = Im Notfall
report-notes = Notizen
report-assumptions = Worauf er beruht

## Spalten

report-leg = Nr.
report-stage = Etappe
report-from-to = Von–bis
report-length = Länge
report-height = Höhe
report-time = Zeit
report-there = Dort
report-zone-column = Zonen
report-gap = Spalte
report-verdict = Urteil
report-rope = Seil
report-knots = Knoten
report-coils = Restseile
report-spacing = Abstand
report-fits = Seil dabei
report-set-up = Seileinteilung

## Der Kopf

report-route = Route: { $route }
report-up = Aufstieg
report-down = Abstieg
report-on-the-rope = Am Seil
report-time-in-all = Zeit gesamt
report-people = Gruppe
report-carried = Mitnehmen
report-nobody-roped = niemand am Seil
report-on-ropes = { $ropes ->
    [1] an einem Seil
   *[other] an { $ropes } Seilen
}
report-no-rope = kein Seil
report-heights = Höhen: { $heights }.
report-count = { $legs ->
    [one] 1 Abschnitt
   *[other] { $legs } Abschnitte
}, { $length }
report-at = bei { $where }
report-worst-unroped = Kein Abschnitt wird am Seil gegangen.
report-worst-inside = Jeder Abschnitt am Seil liegt im Rahmen der Planungsgrenzen.
report-worst-look = Prüfen: es gibt etwas zu entscheiden oder zu beachten.
report-worst-outside = Ein Abschnitt ist nicht im Rahmen: keine Seileinteilung, oder kein Seil, das dafür reicht.
report-worst-stop = Stopp: ein Abschnitt ist nicht zu gehen wie geplant.

## Karten

report-map-says = Karte der Route, Norden oben: { $zones } Zonen in der Datei, { $legs } Abschnitte, { $roped } davon am Seil. Dasselbe steht in Worten in den Tabellen darunter.
report-map-of-leg = Karte von Abschnitt { $leg }, Norden oben, mit Zonen und Wechseln
report-inset = Abschnitt { $leg },
legend-change = Seil an oder Seil ab, mit Buchstaben wie unten
legend-leg = Nummer des Abschnitts, in seiner Farbe
legend-unroped = ohne Seil
legend-inside = am Seil, im Rahmen der Planungsgrenzen
legend-look = prüfen: etwas zu entscheiden oder zu beachten
legend-outside = nicht im Rahmen der Grenzen
legend-stop = Stopp: nicht wie geplant
legend-zones = Zonen, dunkler bei breiteren Spalten; Z und ihre Nummer, dann die Breite, mit „?“ angenommen; blass, wo die Route nicht hinkommt
map-zone = Z{ $zone }
legend-strike = wie ihre Spalten verlaufen, wo es gezeichnet ist
legend-ice = bekanntes Eis
legend-along = parallel zu Spalten
legend-fall = wo ein Sturz am schlechtesten gehalten wird
legend-steep = zu steil für ein Seil ohne Fixpunkte
legend-roll-over = das Gelände wird steiler: hier sind Spalten zu erwarten

## Das Höhenprofil

profile-none = Auf dieser Etappe sind keine Höhen bekannt, also ist kein Profil gezeichnet.
profile-says = Höhenprofil von { $stage }: von { $low } bis { $high } { $unit }. Zonen, Abschnitte und steile Stücke liegen unter demselben Maßstab.
profile-zones = Zonen
profile-legs = Nr.
profile-steep = steil
profile-nowhere = nirgends
profile-key = Zonen und Abschnitte nach Nummer. Steil: { $slope } oder mehr längs der Linie, über { $length }.

## Abschnitte, Zonen und Wechsel

legs-caption = Abschnitte, mit der Seileinteilung jeder Seilschaft
legs-fine = Spalte: die breiteste quer; in Klammern der Weg darüber in Gehrichtung, wo er länger ist. Orte gelten für die erste Person.
legs-without-rope = Ohne Seil gegangen; siehe, was zu prüfen ist.
legs-team = Seilschaft { $team }
legs-rope = Seil
legs-of = von { $length }
legs-take = , mitnehmen { $length }
legs-none-sold = , länger als jedes Seil im Handel
legs-zone = Zone { $zone }
changes-none = Das Seil bleibt im Rucksack.
changes-caption = Orte, an denen die Seileinteilung wechselt, mit Buchstaben wie auf den Karten
changes-number = Nr.
changes-clock = Uhr
changes-do = Tun
changes-at = Bei
changes-height = , Höhe
changes-degrees = Breite, Länge
changes-utm = UTM
changes-leg = { $what }, Abschnitt { $leg }

## Was mitgenommen wird, und die Tour, wenn etwas fehlt

carry-rope-for = Seil für { $why }
party-shown = Gezeigte Gruppe
party-roped = Am Seil: { $label }

## Was gefunden ist, und worauf es beruht

findings-none = Nichts gefunden, was gesagt werden muss.
findings-do = Tun: { $hint }.
assumptions-caption = Alles, worauf der Plan beruht, was dahinter steht und wer es in Kraft gesetzt hat
assumptions-what = Annahme
assumptions-value = Wert
assumptions-standing = Grundlage
assumptions-origin = Herkunft
assumptions-set = Für diese Tour gesetzt
assumptions-defaults = Vorgaben
origin-default = Vorgabe
origin-practice-set = Regelsatz
origin-trip-file = Tourdatei
origin-flag = Befehlszeile

## Das ausgelegte Seil

same-teams = { $legs }: { $count ->
    [one] Seilschaft { $teams }
   *[other] Seilschaften { $teams }
}
same-knots = Bremsknoten: { $knots }. { $why }.
same-knots-none = keine
same-knots-some = { $count }, je { $each } von jedem Ende
drawn-says = { $legs }: das Seil ausgelegt mit { $people } Personen, { $knots } Bremsknoten und je { $coil } Restseil an beiden Enden; die Tabelle daneben hat jede Marke
drawn-bag = { $length } im Beutel
marks-caption = Marken vom freien Ende der ersten Person
marks-what = Was
marks-at = Bei
marks-arm-spans = Armspannen
ledger-caption = Wohin das Seil kommt, { $unit }. Getragen: { $coil } Restseil an jedem Ende{ $rest }
ledger-short = ; das Seil ist { $short } zu kurz
ledger-sold = ; im Handel { $length }
ledger-spans = Ab­stände
ledger-knots = Knoten
ledger-tie-ins = Ein­binden
ledger-coils = Rest­seile
ledger-bag = Beutel
ledger-in-all = Ge­samt
ledger-needed = Ge­braucht
ledger-carried = Ge­tragen

## Für wie breite Spalten der Abstand reicht

limits-caption = Die breiteste Spalte, für die der Abstand jeder Seileinteilung nach der Regel reicht, wie eingebunden und mit demselben Seil neu eingebunden
limits-planned = Spalte im Plan
limits-as-tied = Reicht, wie eingebunden
limits-anew = Neu eingebunden
limits-fine = Spalten quer gemessen, Winkel wie auf diesem Abschnitt, nach der Abstandsregel, die nichts darüber sagt, ob ein Sturz gehalten wird; Restseile wie getragen.
limits-team = { $leg }, Seilschaft { $team }

## Wenn jemand stürzt

holding-what = Die Antwort eines Modells, nur für seine Annahmen: alles, worauf sie beruht, ist vom Besten zum Schlimmsten genommen, alles gemischt. „Gehalten“ heißt, dass die anderen vor dem Spaltenrand zum Stehen kommen. Wie Brücken brechen und wo jemand steht, ist nicht darin.
holding-fine =
    Stürzt, hält: Plätze am Seil, 1 vorn; stürzt jemand zwischen zweien, ist das Seil im V geknickt und jede
    Seite hält für sich. Vorn: der übliche Sturz, wer zuerst durch eine Brücke geht, wo er anders
    ausgeht. Rutschweg und Fangstoß: der ersten Person, die hält, über alle angenommenen Fälle.
    Strang: der mit der Last, oder ein eigener. Seil: über den belasteten Strang hinaus, Hände und
    Klemmknoten mitgezählt; „nötig“: das freie Seil reicht nicht; „Knoten“: sie sperren diesen Strang.
    Schaffen es: ob die anderen so stark ziehen können; vielleicht: Kräftige mit gutem Stand.
fall-caption = Der Sturz, der am schlechtesten gehalten wird
fall-falls = Stürzt
fall-holds = Hält
fall-in-the-model = Im Modell
fall-slide = Rutschweg
fall-peak = Fangstoß
fall-taken = Gerechnet mit
fall-no-answer = Das Modell hat hier keine Antwort.
loop-caption = Eine Lose Rolle von dort, wo die haltende Person steht, je nachdem, wer stürzt
loop-free = Frei
loop-loop = Die Lose Rolle
loop-none = { $none }: das Seil endet davor
haul-caption = Bergung von { $who }, { $depth } unter dem Spaltenrand: { $answer }
haul-system = Aufbau
haul-strand = Strang
haul-strokes = Hübe
haul-pull = Zugkraft
haul-can = Schaffen sie es? ({ $haulers })
haul-loaded = belastet
haul-own = eigener
haul-knots = Knoten
haul-short = nötig
haul-no-room = kein Platz

## In der Hand

gear-fine = Vor dem Aufbruch durchzusehen; wie viele, ist gängige Praxis oder unser Urteil, unten aufgeführt, und deine Sache zu ändern.
emergency-fill-in = Vor dem Aufbruch ausfüllen: Name, Nummer oder Kanal, was sonst zählt.
