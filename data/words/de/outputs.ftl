### Sätze und Wörter, die mehreren Ausgaben gemeinsam sind.

## Eine Seileinteilung in einer Zeile

team-spacing = { $people } Personen, { $spacing } Abstand
knots-none = ohne Knoten
knots-some = { $bite ->
    [yes] { $knots ->
        [one] 1 Knoten
       *[other] { $knots } Knoten
    }
   *[doubtful] { $knots ->
        [one] 1 Knoten?
       *[other] { $knots } Knoten?
    }
}
coils-short = Restseil je { $coil } (nötig { $needed })
coils-none = kein Restseil
coils-some = Restseil je { $coil }
coil-none = kein Restseil

## Urteile

verdict-unroped = ohne Seil
verdict-inside = im Rahmen
verdict-look = prüfen
verdict-outside = nicht im Rahmen
verdict-stop = Stopp
means-unroped = ohne Seil
means-inside = im Rahmen der Planungsgrenzen
means-look = prüfen: etwas zu entscheiden oder zu beachten
means-outside = nicht im Rahmen: keine Seileinteilung hält die Grenzen ein, oder kein Seil lang genug dafür
means-stop = Stopp: hier nicht wie geplant

word-in-part = { $verdict } bei { $where }; sonst { $rest }
word-span = { $span }
word-spans = { $spans }{ $more ->
    [0] { "" }
   *[other] {" "}und { $more } mehr
}, { $length }
word-on-leg = Abschnitt { $leg } bei { $where }
word-on-legs = { $verdict }: { $places }

## Ein Abschnitt und eine Zone in Sätzen

leg-back = dort { $spacing } Abstand, an { $rope }
leg-title = Abschnitt { $leg }: { $how }, { $verdict }
leg-title-unroped = Abschnitt { $leg }: { $verdict }
and = { " und " }
leg-title-gap = { $kind ->
    [none] Spalten unbekannt
   *[other] Spalten { width-told }
}
leg-line = Abschnitt { $leg }: { $span }, { $length }.
leg-gap = { $kind ->
    [none] Spaltenbreiten unbekannt
    [askew] Spalten bis { width-told }, { $along } in Gehrichtung
   *[square] Spalten bis { width-told }
}{ $known ->
    [no] { $kind ->
        [none] { "" }
       *[other] , andere unbekannt
    }
   *[yes] { "" }
}
row-gap-assumed = { $gap } angenommen
width-told = { $assumed ->
    [yes] { $gap } (angenommen)
   *[no] { $gap }
}
leg-alarm = { $word }: { $says }.
team-line = { $teams ->
    [1] { $setup }; Seil gebraucht { $needed }, { $rope }.
   *[other] Seilschaft { $team }: { $setup }; Seil gebraucht { $needed }, { $rope }.
}
team-rope-at-hand = Seil vorhanden { $length }
team-rope-sold = mitnehmen { $length }
team-rope-none = länger als jedes Seil im Handel
zone-title = { $zone }{ $met ->
    [yes] { "" }
   *[no] , nicht am Weg
}: Spalten bis { width-told }
left-out-of-map = { $count ->
    [one] 1 Zone, auf die die Route nicht kommt, ist weggelassen.
   *[other] { $count } Zonen, auf die die Route nicht kommt, sind weggelassen.
}
zone-gaps = Spalten bis { $gap }
zone-width-assumed = Breite angenommen
zone-hidden = unter Schnee verdeckt
zone-bare = Blankeis
zone-snow = Schnee { $depth }
zone-strike = Verlauf { $strike } ± { $doubt }
zone-strike-exact = Verlauf { $strike }, als genau genommen
zone-always = vorgegeben: immer am Seil
zone-never = vorgegeben: nie am Seil
zone-observed = Beobachtet { $text }.
zone-source = Quelle: { $text }.
zone-note = Bemerkung: { $text }.

## Wechsel der Seileinteilung, und Zeiten

change-rope-up = anseilen
change-unrope = ausbinden
change-off-by-word = Seil ab, so vorgegeben
change-ends-on-ice = Route endet auf Eis
change-onto-ice = aufs Eis, ohne Seil, so vorgegeben
change-title = { $letter }. { $what }
halt-title = Halt, { $minutes }
halt-title-named = Halt „{ $name }“, { $minutes }
change-end = Ende von Abschnitt { $leg }, sobald die letzte Person hier ist.
change-end-by-word = Ende von Abschnitt { $leg }, auf Eis: das Seil kommt ab, weil es so vorgegeben ist, nicht weil das Eis endet.
change-end-on-ice = Ende von Abschnitt { $leg }, auf Eis: was danach kommt, ist nicht geplant.
change-begin-on-ice = Ab hier liegt Abschnitt { $leg } auf Eis, ohne Seil, weil es so vorgegeben ist.
change-at = { $stages ->
    [1] { $what } bei { $at }
   *[other] { $what } auf Etappe { $stage }, { $at }
}
change-height = Höhe { $height }
change-bearing = dann { $bearing }
bearing-true = { $bearing } rechtweisend
hours = Gehen { $walking }, An- und Ausbinden { $rope }, Pausen { $breaks }{ $halted ->
    [yes] , Aufenthalte { $halts }
   *[no] { "" }
}{ $belays ->
    [asked] , Sicherungen { $belay }
   *[other] { "" }
}: { $total } insgesamt{ $heights ->
    [yes] { "" }
   *[no] , die Höhen nicht gezählt
}{ $belays ->
    [none] , Sicherungen nicht gezählt
   *[other] { "" }
}
hours-clock = ; von { $start } bis { $end }
hours-effort = ; so anstrengend wie { $effort } km im Flachen

## Die Uhr

title-clock = Uhr
hour-day-after = { $hour } am Tag danach
hour-day-of-start = { $hour } am Aufbruchstag
hour-day-before = { $hour } am Tag davor
hour-days-away = { $hour } ({ $days } Tage)
clock-of-stage = Etappe { $stage }: { $text }
clock-latest-start = spätester Aufbruch { $at }{ $late ->
    [yes] , nicht { $start } ({ $earlier } zu spät), um bis { $until } von allen Brücken zu sein{ $belays }
   *[no] { $belays }{ $without }, um bis { $until } von allen Brücken zu sein
}{ $others }{ $without-late }
clock-latest-here = { $late ->
    [yes] { $hour } bei { $place } ist { $earlier } zu spät: { "" }
   *[no] { $hour } bei { $place }: { "" }
}bis { $by } von dort weiter, um bis { $until } von allen Schneebrücken herunter zu sein{ $others }
clock-latest-start-none = kein Aufbruch an diesem Tag ist früh genug{ $belays }, um bis { $until } von allen Schneebrücken herunter zu sein{ $without }{ $others }
clock-latest-start-none-without = ; ohne sie { $at }
clock-latest-start-without = , ohne { $at }
clock-latest-start-without-late = ; ohne Sicherungen bis { $at }
clock-belays = { $belays ->
    [1] { " " }mit einer Sicherung auf { $legs } ({ $more })
   *[other] { " " }mit etwa { $belays } Sicherungen auf { $legs } ({ $more })
}
clock-latest-start-back = spätester Aufbruch { $at }{ $late ->
    [yes] , nicht { $start } ({ $earlier } zu spät), um bis { $by } am Ende zu sein{ $belays }
   *[no] { $belays }, um bis { $by } am Ende zu sein
}{ $others }
clock-latest-start-back-never = ; mit keinem Aufbruch an diesem Tag bis { $by } am Ende
clock-latest-start-bridges = ; für die Brücken bis { $at }, um bis { $until } von allen herunter zu sein
clock-latest-start-slower = ; eine langsamere Gruppe { $at }
clock-latest-start-dark = ; dann dunkel: { $legs }
clock-latest-start-dark-belays = ; wie geplant liegen Sicherungen auf { $on } im Dunkeln
clock-latest-start-slower-none = ; Langsamere: zu spät
clock-at-until = um { $until } ist die Gruppe bei { $place }, auf Abschnitt { $leg }{ $others }
clock-at-until-slower = ; eine langsamere Gruppe bei { $place }, auf Abschnitt { $leg }
clock-turn-leg = Abschnitt { $leg }
clock-turn-before = vor Abschnitt { $leg }
clock-turn = { $kind ->
    [of] die Umkehr bei { $place } bis { $at }{ $belays } verlassen, um bis { $by } am Ende zu sein
   *[off] letzte Umkehrstelle{ $firm ->
        [yes] { " " }auf festem Grund
       *[no] { "" }
    }: { $place }, { $leg }, bis { $at }{ $belays }; der Rückweg auf der Linie endet dann um { $by }
}{ $over }{ $others }
clock-turn-over = , auf Schneebrücken bis { $left }
clock-turn-bridges = { $kind ->
    [of] die Umkehr bei { $place } bis { $at }{ $belays } verlassen, um bis { $until } von allen Schneebrücken des Rückwegs zu sein
   *[off] { $late ->
        [yes] spätestens { $at } { $firm ->
            [yes] auf festem Grund bei
           *[no] und nicht hinter
        } { $place }, { $leg }, umkehren{ $belays }:
       *[no] letzte Umkehrstelle{ $firm ->
            [yes] { " " }auf festem Grund
           *[no] { "" }
        }: { $place }, { $leg }, bis { $at }{ $belays }, dann
    } bis { $until } von allen Schneebrücken herunter
}{ $others }
clock-turn-never = { $kind ->
    [of] so früh die Umkehr bei { $place } auch verlassen wird, der Rückweg liegt nach { $until } auf Schneebrücken
   *[off] keine Umkehr jenseits der ersten Schneebrücken ist bis { $until } wieder von ihnen herunter
}{ $belayed ->
    [yes] , wenn auf dem Rückweg so oft zu sichern ist wie auf dem Hinweg
   *[no] { "" }
}
clock-turn-led-back = ; zurück geht der Letzte voran, gesichert wie auf dem Hinweg
clock-begins-on-hidden = ; die Linie beginnt auf ihnen: was davor liegt, ist nicht gezählt
clock-ends-on-hidden = ; die Linie endet auf ihnen: was danach kommt, ist nicht gezählt
clock-turn-back-by = { $kind ->
    [of] wer die Umkehr erst um { $at } verlässt, ist bis { $by } am Ende
   *[off] wer erst um { $at } bei { $place } umkehrt, ist bis { $by } am Ende
}, aber bis { $left } auf Schneebrücken: zu spät
clock-turn-slower = { $kind ->
    [of] ; eine langsamere Gruppe bis { $at }
   *[off] ; eine langsamere Gruppe bei { $place } bis { $at }
}
clock-turn-slower-first = ; Langsamere schon bei { $place }, bis { $at }
clock-turn-slower-due = ; eine langsamere Gruppe hätte schon umkehren sollen
clock-on-the-way-turn = { $late ->
    [yes] zu spät für die ganze Tour: { "" }
   *[no] { "" }
}{ $kind ->
    [of] die Umkehr bei { $place } bis { $at } verlassen
   *[off] bis { $at } umkehren, spätestens bei { $place }
}{ $others }
clock-on-the-way-never = wer über die ersten Schneebrücken geht, ist bis { $until } nicht wieder von ihnen herunter
clock-on-the-way-late = { $passed ->
    [yes] Umkehrpunkt { $place }: beide Wege nach { $until } auf Brücken: sondieren, oder vom Eis, bis es friert
   *[no] zu spät für die ganze Tour: nach { $until } noch auf Schneebrücken: jede sondieren, oder umkehren
}
clock-on-the-way-back = { $passed ->
    [yes] Umkehrpunkt ({ $place }) erreicht: jetzt umkehren, sonst nach { $until } noch auf Brücken
   *[no] zu spät für die ganze Tour: jetzt umkehren, sonst nach { $until } noch auf Brücken
}
clock-arrival = am Ende um { $at }{ $belays }{ $others }
clock-arrival-slower = ; eine langsamere Gruppe um { $at }
clock-arrival-without = ; ohne Sicherungen um { $at }
clock-sun = { $sun ->
    [up] die Sonne geht am { $date } nicht unter
    [down] die Sonne geht am { $date } nicht auf
    [sets] kein Sonnenaufgang, Untergang { $sunset } am { $date } ({ $offset }), bei ebenem Horizont (Reda and Andreas 2004)
    [rises] Sonnenaufgang { $sunrise }, danach kein Untergang am { $date } ({ $offset }), bei ebenem Horizont (Reda and Andreas 2004)
   *[both] Sonnenaufgang { $sunrise }, Untergang { $sunset } am { $date } ({ $offset }), bei ebenem Horizont (Reda and Andreas 2004)
}
clock-halt = { $what } bei { $place }{ $height }{ $when }
clock-halt-turn = Umkehr
clock-halt-rest = Halt
clock-halt-named = { $what } „{ $name }“
clock-halt-height = , { $height }
clock-halt-when = : { $arrive } bis { $depart }
clock-halt-passed = : { $arrive }
clock-slower = eine langsamere Gruppe braucht für Gehen, Pausen, Sicherungen und Seil { $factor }-mal so lang
clock-belays-counted = die Sicherungen sind geschätzt: eine auf { $every } verdeckte Spalten und auf { $pitch } zu steiles Gelände, je { $min } und { $each } für jede Person an diesem Seil
leg-when = Von { $begin }, bis { $end }.

## Weniger Wechsel

keep-costs = nach Plan bindet ihr { $planned ->
    [one] einmal
   *[other] { $planned }-mal
} neu ein, { $planned-time }; so beibehalten { $kept ->
    [0] nie
    [one] einmal
   *[other] { $kept }-mal
}, { $kept-time } (langsameres Gehen gezählt)
keep-team = { $spacing }, { $knots }, { $coils }, Seil { $rope }
keep-team-of = Seilschaft { $team }{ " " }
keep-stretch = { $span }
keep-stretches = am Seil { $spans }
keep-knots = { $knots ->
    [one] 1 Knoten
   *[other] { $knots } Knoten
} von jedem Ende

## Eine Seileinteilung als Block: Schilder haben höchstens neun Buchstaben

block-label-rope = Seil
block-label-people = Personen
block-label-tie = Einbinden
block-label-knots = Knoten
block-label-reserve = Reserve
block-label-hauling = Bergung
block-label-fall = Sturz
block-label-order = Reihung
block-label-gaps = Spalten
block-title = { $teams ->
    [1] { $legs }: { $people } Personen, { $spacing } Abstand, { $rope }
   *[other] { $legs }, Seilschaft { $team }: { $people } Personen, { $spacing } Abstand, { $rope }
}
block-rope-short = { $needed } Seil, Seil { $rope } ist nur { $length } lang
block-rope = { $needed } von Seil { $rope } ({ $length })
block-rope-sold = { $needed } Seil, im Handel { $length }
block-rope-none = { $needed } Seil, länger als jedes im Handel
block-person = { $who } ({ $mass })
block-person-at = { $position } { $who } ({ $mass })
block-person-position = Platz { $position }: { $who } ({ $mass })
block-people = { $people }; die erste geht voraus
block-ties = { $unit } vom freien Ende: { $marks }
block-knots-none = keine: { $why }
block-knots-deep = nach der Regel liegt genug Schnee dafür
block-knots-from = erst ab { $snow } Schnee auf sie zählen
block-knots = { $each ->
    [1] 1 von jedem Ende, nach { $first }
   *[other] { $each } von jedem Ende, der erste nach { $first }, dann alle { $step }
}; { $bite }; { $why }
block-coils = { $carried } Restseil an jedem Ende, { $needed } davon gebraucht
block-coils-short = { $carried } Restseil an jedem Ende, wo { $needed } gebraucht werden
block-bag = { $bag } mehr im Beutel
block-reserve = { $coils }; eine Lose Rolle von dort, wo die haltende Person steht: { $reach }
block-reserve-none = { $none }: das Seil endet davor, also wird keine Lose Rolle und keine Bergung angegeben
block-snow-assumed = Schnee angenommen: { $snow }
block-ground = { $snow }, { $slope }
block-ground-flat = { $snow }, Neigung unbekannt, als eben genommen
block-fall = { $usual }am kritischsten, wenn { $who } stürzt{ $middle }: { $held } ({ $ground }; { $verdict ->
    [none] wer hält, wird bis zum Spaltenrand gezogen, nach { $least } bis { $most }
    [depends] wer hält, wird bestenfalls { $least } gezogen, schlimmstenfalls { $most } und bis zum Spaltenrand
   *[all] wer hält, wird { $least } bis { $most } gezogen
}; { $least-force } bis { $most-force } Zug)
block-usual = { $says }; { "" }
block-middle = { " (" }{ $says })
block-haul = für { $who }, { $depth } unter dem Spaltenrand: { $answer }{ $pull }{ $own ->
    [yes] ; dazu braucht es einen eigenen Strang, der belastete ist gesperrt
   *[no] { "" }
}
block-pull = { " (" }{ $force } Zug)
block-pull-least = { " (mindestens " }{ $force } Zug)
block-spaced = { $long-enough ->
    [yes] wie eingebunden: Spalten bis { $tied }; mit { $apart } Abstand neu eingebunden: bis { $gap }
   *[no] wie eingebunden: keine, das Seil ist zu kurz; mit { $apart } Abstand neu eingebunden: Spalten bis { $gap }
}
block-spaced-unknown = nicht gerechnet, niemand gab hier eine Spaltenbreite an
block-spaced-nothing = keine: das Seil ist zu kurz
block-spaced-not = { $spaced }; nicht abgedeckt: { $not }
block-not-wider = breitere Spalten
block-not-loop = eine Lose Rolle für { $who }
block-not-two = zwei gleichzeitig in einer Spalte
block-legs = { $legs }: { $text }

## Wie viele Abschnitte, und was über das Ganze gefunden ist

first-stop = Stopp: { $legs }
first-outside = nicht im Rahmen: { $legs }
first-look = prüfen: { $legs }
first-whole = kein Abschnitt stoppt; das Ganze prüfen
first-none = keine Etappe mit Stopp, keine verlangt eine Entscheidung
count-stop = { $count ->
    [one] 1 Abschnitt mit Stopp
   *[other] { $count } Abschnitte mit Stopp
}
count-outside = { $count ->
    [one] 1 Abschnitt nicht im Rahmen
   *[other] { $count } Abschnitte nicht im Rahmen
}
count-look = { $count ->
    [one] 1 Abschnitt zu prüfen
   *[other] { $count } Abschnitte zu prüfen
}
count-none = kein Abschnitt stoppt, ist nicht im Rahmen oder zu prüfen
count-whole = { $count ->
    [one] 1 Punkt zur ganzen Tour zu prüfen
   *[other] { $count } Punkte zur ganzen Tour zu prüfen
}

## Der Kopf

route = Route
title = { $name }: { $length }, auf { $up }, ab { $down } ({ turns-not-counted })
turns-not-counted = Gegenanstiege unter { $threshold } nicht gezählt
title-without-heights = { $name }: { $length }
count-below = { $count }, unter den Abschnitten
folded = { $teams ->
    [1] { $setup }; Seil { $needed } { $unit }
   *[other] Seilschaft { $team }: { $setup }; Seil { $needed } { $unit }
}
folded-at-hand = { $teams ->
    [1] { $setup }; Seil { $needed } von { $at-hand } { $unit }
   *[other] Seilschaft { $team }: { $setup }; Seil { $needed } von { $at-hand } { $unit }
}

## Der Schnee, für den Stürze gerechnet sind

falls-on = { $worsens ->
    [yes] Wenn hart gefroren, { $worse } (gerechnet: { $snow }{ $assumed ->
        [yes] , angenommen
       *[no] { "" }
    })
   *[no] Stürze gerechnet für: { $snow }{ $assumed ->
        [yes] { " " }(angenommen)
       *[no] { "" }
    }
}
falls-on-stop = ist auf { $legs } kein Sturz zu halten: sichern
falls-on-look = ist ein Sturz auf { $legs } vielleicht nicht zu halten

## Eine Nachricht: wird in ASCII geschrieben, aus ä wird ae

message-head = { $name }: { $length }, { $legs ->
    [one] 1 Abschnitt
   *[other] { $legs } Abschnitte
}; { $words }
message-carry = Mitnehmen: { $ropes }
message-carry-short = { $rope } ({ $short })
message-no-rope = Kein Abschnitt wird am Seil gegangen.
message-inside = Innerhalb der Grenzen sind Abstand und Seil; ob ein Sturz gehalten wird, ist eine andere Frage.
message-unroped = Ohne Seil: { $drawn ->
    [yes] dort ist kein Eis gezeichnet; anderes kennt der Plan nicht
   *[no] dort ist kein Eis gezeichnet, und das Inventar kennt keines
}.
message-read = Nur für seine Annahmen gerechnet; was vor Ort zu sehen ist, geht vor.
message-more = ! { $more } mehr
message-begins = Beginn: { $hours }
message-begins-leg = Nr. { $leg } um { $hour }
message-leg = Nr. { $leg }: { $span } { $roped ->
    [yes] SEIL, { $verdict }
    [no] ohne Seil, { $verdict }
   *[plain] ohne Seil
}
message-word-at = { $word } bei { $where }
message-team-names = { $count ->
    [one] Seilschaft { $teams }:{ " " }
   *[other] Seilschaften { $teams }:{ " " }
}
message-team = { $people } Personen { $spacing } Abstand, { $knots ->
    [0] ohne Knoten
   *[other] { $knots } Knoten{ $bite ->
        [yes] { "" }
       *[doubtful] {", "}die vielleicht nicht greifen
    }
}, { $coiled ->
    [yes] Restseil je { $coil }
   *[no] kein Restseil
}
    { $named ->
    [yes] braucht { $needed } Seil, hat { $rope }
   *[no] braucht { $needed } Seil
}
message-team-short = { $people } Pers. { $spacing } { $knots ->
    [0] ohne Knoten
   *[other] { $knots } Knoten{ $bite ->
        [yes] { "" }
       *[doubtful] {" "}fraglich
    }
} { $coiled ->
    [yes] Rest { $coil }
   *[no] kein Rest
} braucht { $needed }{ $named ->
    [yes] {" "}hat { $rope }
   *[no] {" "}Seil
}
message-team-terse = { $people } mit { $spacing } { $knots ->
    [0] ohne Knoten
   *[other] { $knots } Knoten{ $bite ->
        [yes] { "" }
       *[doubtful] ?
    }
} Rest { $coils } Seil { $named ->
    [yes] { $needs } von { $rope }
   *[no] { $needed }
}
message-team-numbers = { $teams }:{ " " }
message-team-least = { $people } mit { $apart } { $knots ->
    [0] ohne Knoten
   *[other] { $knots } Knoten{ $bite ->
        [yes] { "" }
       *[doubtful] ?
    }
} Rest { $coils } Seil { $named ->
    [yes] { $needs }/{ $rope }
   *[no] { $needed }
}
message-gap-terse = Spalte { $kind ->
    [none] unbekannt
    [askew] { $wide } schr. { $along }
   *[square] { $gap }
}{ $known ->
    [no] { $kind ->
        [none] { "" }
       *[other] {" "}oder mehr
    }
   *[yes] { "" }
}
message-gap = { $kind ->
    [none] Spaltenbreiten unbekannt
    [askew] Spalte { $gap }, in Gehrichtung { $along }
   *[square] Spalte { $gap }
}{ $known ->
    [no] { $kind ->
        [none] { "" }
       *[other] , andere unbekannt
    }
   *[yes] { "" }
}
message-gap-short = { $kind ->
    [none] Spalte unbekannt
    [askew] Spalte { $gap }, schräg { $along }
   *[square] Spalte { $gap }
}{ $known ->
    [no] { $kind ->
        [none] { "" }
       *[other] {" "}oder mehr
    }
   *[yes] { "" }
}
message-up = anseilen bei { $place }{ $high ->
    [yes] , { $height } hoch
   *[no] { "" }
}
message-up-short = Seil an { $place }{ $high ->
    [yes] {" "}{ $height }
   *[no] { "" }
}
message-zones = auf { $names }
message-teams = { $teams } Seilschaften, jede anders: siehe Bericht. Seil bis { $rope }
message-report = ! siehe Bericht
message-why = ! { $reasons }{ $more ->
    [0] { "" }
   *[other] { $worded ->
        [yes] ; { $more } mehr
       *[no] {" "}(+{ $more })
    }
}
short-spans = { $span }{ $more ->
    [0] { "" }
   *[other] {" "}und { $more } mehr
}
short-unroped = ohne Seil
short-inside = im Rahmen
short-look = prüfen
short-outside = nicht im Rahmen
short-stop = STOPP

## Womit ein Sturz gerechnet ist

taken = { $snow }, { $slope }{ $knots }
taken-knots-counted = , Knoten gezählt
taken-knots-from = , Knoten nicht gezählt: erst ab { $snow } Schnee

## Die Tour mit einer anderen Gruppe

as-planned = Wie geplant
one-fewer = Eine Person weniger: { $people ->
    [one] 1 Person
   *[other] { $people } Personen
}
one-more = Eine Person mehr: { $people ->
    [one] 1 Person
   *[other] { $people } Personen
}

## Titel und Spalten der Tabelle

title-cautions = Mit diesem Plan zu lesen
title-changes = Wechsel
title-zones-met = Zonen am Weg
title-carry = Mitnehmen
title-fewer-changes = Weniger Wechsel
title-set-ups = Seileinteilungen
carry-none = kein Abschnitt wird am Seil gegangen
column-leg = Nr.
column-unit = { $unit }
column-height = Höhe
column-zones = Zonen
column-gap = { $along ->
    [yes] quer (längs) { $unit }
   *[no] Spalte { $unit }
}
column-set-up = Personen, Knoten, Restseil
column-rope = Seil { $unit }
column-verdict = Urteil
block-legend = In den Zeichnungen: ~ Restseil, das getragen wird, (1) Person in der Reihenfolge, x Bremsknoten, Abstände beim Gehen. Spalten: nach der Abstandsregel, die nichts darüber sagt, ob ein Sturz gehalten wird.
block-model = Stürze und Bergungen: die Antwort eines Modells für angenommene Spannen, unser Urteil.

## Die Seite: was zuerst gebraucht wird

page-first = { $name }: { $words }
page-avalanche = Lawinengelände, { $from } und steiler: { $legs }, bis { $slope } bei { $at }{ $stages ->
    [1] { "" }
   *[other] {" "}von Etappe { $stage }
}. Dort entscheidet der Lagebericht
page-figures = { $length }{ $travel ->
    [ski] {" "}auf Ski
    [snowshoe] {" "}auf Schneeschuhen
   *[foot] { "" }
}, { $roped } am Seil{ $heights ->
    [yes] ; auf { $up }, ab { $down }
   *[no] { "" }
}; { $clock }{ $total }{ $belays ->
    [asked] {" "}mit { $belay } für Sicherungen
    [none] {" "}ohne Sicherungen
   *[unroped] { "" }
}{ $heights ->
    [yes] { "" }
   *[no] , die Höhen nicht gezählt
}
page-clock = { $start } bis { $end },{ " " }
page-too = auch hier: { $what }
page-stage = { $stage }: { $length }
page-end = { $stages ->
    [1] Ende
   *[other] Ende der Etappe
}
page-legend = { $roped ->
    [yes] Buchstaben: Seil an oder ab{ $word ->
        [yes] , oder Eis, nach eigenem Wort ohne Seil
       *[no] { "" }
    }. Seil nötig/dabei.
   *[no] Buchstaben: es beginnt Eis, nach eigenem Wort ohne Seil.
} { $inside ->
    [yes] im Rahmen: keine Zusage für Stürze.{ " " }
   *[no] { "" }
}ohne Seil: kein Eis { $drawn ->
    [yes] gezeichnet
   *[no] bekannt
}{ $word ->
    [yes] , oder nach eigenem Wort
   *[no] { "" }
}
page-why = { $word } = { $means }
page-zones = Zonen: { $zones }
page-zones-of = Abschnitt { $leg }: { $zones }
page-apart = { $apart } { $why }
page-folded = { $teams ->
    [1] { "" }
   *[other] Seilschaft { $team }:{ " " }
}{ $people } Personen, { $spacing } Abstand ({ $why }){ $gap }; Seil { $rope } { $unit }
page-gap = ; Spalte { $gap } { $unit }
page-carry = { $teams ->
    [1] Mitnehmen:
   *[other] Seilschaft { $team } trägt
} { $rope }: { $why }
page-carry-none = Kein Seil hier ist lang genug: { needed-there }, das längste ist { $rope }
page-left = { $good-for ->
    [joining] Auch { $ropes } mit{ $by }: verbunden auf { $joined }{ $short ->
        [yes] , und Bergung auf { $legs }
       *[no] { "" }
    }
    [rescue] Auch { $ropes } mit{ $by }: Bergung auf { $legs }
    [instead] Stattdessen { $ropes } mitnehmen, Lose Rollen reichen damit unter den Spaltenrand; oder auch{ $by }: Bergung auf { $legs }
    [lacking] { $ropes } allein ist auch zu kurz: { -options-weigh } es verbunden
   *[none] Keine Seileinteilung braucht { $ropes }
}{ $carried ->
    [nobody] ; Hilfe nur, wenn bei denen bleibt, die ziehen, wer es trägt
   *[somebody] { "" }
}
page-left-or = {" "}oder{" "}
page-left-by = { $teams ->
    [1] { "" }
   *[other] , Seilschaft { $team }
}{ $carried ->
    [nobody] { "" }
   *[somebody] , bei { $who }
}
page-set-ups = Seileinteilungen{ $knots ->
    [yes] { "" }
   *[no] { " " }ohne Bremsknoten
}: Person, { $unit } vom freien Ende; Einbinden kostet je { $tie }
page-legs-of-team = { $legs }, Seilschaft { $team }
page-set-up = { $spacing } Abstand, { $knots }{ $coils }: { $marks }
page-set-up-knots = { $knots },{ " " }
page-knots = { $knots ->
    [0] ohne Knoten
   *[other] { $each ->
        [one] 1 Knoten von jedem Ende, nach { $first }
       *[other] { $each } Knoten von jedem Ende, der erste nach { $first }, dann alle { $step }
    }{ $bite ->
        [yes] { "" }
       *[doubtful] {" "}(greifen vielleicht nicht)
    }
}
page-not = Nicht abgedeckt: { $what }
page-not-wider = Spalten in Gehrichtung breiter als { $gaps }
page-not-any = { $legs } wie geplant für keine Spalte{ $alike ->
    [yes] { "" }
   *[no] , Seilschaft { $team }
}: das Seil ist zu kurz
page-not-on = { $gap } ({ $legs })
page-not-low = eine Lose Rolle hinab zu { $who }
page-not-haul = das Heraufziehen von { $who }
page-not-haul-of = { $who } ({ $legs })
page-not-two = zwei, die gleichzeitig stürzen
page-cautions = Vor Ort beurteilen: wo das Gelände anders ist, ist der Plan falsch. Was Bergführer am Ort, Schutzgebiete und Bergrettung sagen, geht vor. Nie allein.
page-rest = { $interface ->
    [flags] Alle Zahlen, { $notes ->
        [one] 1 Hinweis
       *[other] { $notes } Hinweise
    }: `--detail`; { $assumptions } Annahmen: der Bericht mit `--out DIR`
   *[members] { $notes ->
        [one] 1 Hinweis
       *[other] { $notes } Hinweise
    }, { $assumptions } Annahmen: im JSON und im Bericht
}
column-clock = Uhr
column-high = Höhe { $unit }
column-grid = Gitter
column-apart = { $unit } Abstand

## Karten und Geräte: ein Name auf einem Gerät ist reines ASCII, höchstens sechs Buchstaben und eine Zahl

folder-zones = Zonen
folder-legs = Abschnitte
folder-changes = Wechsel
folder-looks = Hinsehen
folder-halts = Aufenthalte
device-rope-up = AN { $number }
device-unrope = AUS { $number }
device-off-by-word = AUS! { $number }
device-ends-on-ice = EIS { $number }
device-onto-ice = EIS! { $number }
device-halt = HALT { $number }
device-look = { $level ->
    [stop] STOPP
   *[look] SIEH
} { $number }
device-look-sign = { $level ->
    [stop] !
   *[look] ?
}{ $number }

## Stellen zum Hinsehen

look-title = { $level ->
    [stop] Stopp
   *[look] Hinsehen
}: { $what }
look-place = { $level ->
    [stop] Stopp
   *[look] Hinsehen
}, Abschnitt { $leg }{ $named ->
    [yes] { "" }
   *[no] {" "}bei { $at }
}: { $says }.
look-roll-over = das Gelände wird steiler
look-for = nach Spalten sehen
look-steepens = darunter ist es um { $steeper } steiler → { look-for }

## Die Seileinteilung auf einer Uhr, in einer Zeile

device-warned = { $word ->
    [stop] STOPP
   *[outside] AUSSERHALB
}. { $line }
device-set-up = { $people } Pers. { $spacing } { $knots ->
    [0] ohne Knoten
   *[other] { $knots } Knoten{ $bite ->
        [yes] { "" }
       *[doubtful] {" "}fraglich
    }
} { $coiled ->
    [yes] Rest { $coil }
   *[no] kein Rest
}{ $named ->
    [yes] {" "}Seil { $needed } von { $rope }
   *[no] {" "}Seil { $needed }
}
