### Was beim Lesen auffällt und in Ausgaben steht, und was auf der Seite zum Zeichnen noch fehlt. Andere Fehler, die einen
### Plan verhindern, bleiben englisch.

trip-nobody-said = niemand hat gesagt, wie viele gehen
    .hint = { $interface ->
        [flags] `--party 3`, oder die Massen mit Rucksack: `--party 82,75,90`
        [page] unter Tour alle eintragen, die mitgehen, mit der Masse samt Rucksack
       *[members] `party = 3`, oder die Massen mit Rucksack: `party = [82, 75, 90]`
     }
trip-no-rope = kein Seil ist mehr da, also kann sich niemand anseilen
    .hint = { $interface ->
        [page] dem Eis fernbleiben; auf dem Eis Hilfe rufen, statt ungeseilt weiterzugehen. Ein Seil, das doch da ist, wird unter Tour eingetragen
       *[members] jedes Seil, das dabei ist, in einer Tabelle `[[rope]]` mit seiner `length_m` nennen; `rope` weglassen, solange die Seile nicht gewählt sind
     }
trip-no-start = über Brücken soll es nur bis { $until } gehen, aber niemand hat gesagt, wann die Gruppe startet
    .hint = { $interface ->
        [flags] `--start 04:30`, oder `start = "04:30"` in der Tourdatei
        [page] unter Tour den Start angeben
       *[members] `start = "04:30"`
     }
trip-no-start-back = die Linie soll bis { $by } zu Ende sein, aber niemand hat gesagt, wann die Gruppe startet
    .hint = { $interface ->
        [flags] `--start 04:30`, oder `start = "04:30"` in der Tourdatei
        [page] unter Tour den Start angeben
       *[members] `start = "04:30"`
     }
zones-none = { $features ->
    [0] { $interface ->
        [page] noch ist kein Eis gezeichnet
       *[members] darin ist nichts gezeichnet
     }
   *[other] { $others ->
        [0] darin ist kein Polygon mit einer Fläche gezeichnet
       *[other] darin sind { $left-out } und kein Polygon
     }
 }
    .hint = { $interface ->
        [page] das zerrissene Eis auf der Karte zeichnen oder entlang der Route malen, und seine Spaltenbreite angeben: die der breitesten, mit der zu rechnen ist
       *[members] { $features ->
            [0] das zerrissene Eis in einem Karteneditor als Polygone zeichnen
           *[other] das zerrissene Eis als Polygone zeichnen
         }, jedes mit `gap_m`, der Breite der breitesten Spalte, mit der zu rechnen ist, in Metern
     }

zones-gap-not-given = { $count ->
    [one] { $count } Zone gibt keine Spaltenbreite an
   *[other] { $count } Zonen geben keine Spaltenbreite an
 }{ $interface ->
    [page] { "" }
   *[members] : { $zones }
 }{ $others ->
    [0] { "" }
   *[other] {" "}(gefunden wurde dort: { $found })
 }
    .hint = { $renamed ->
        [all] `{ $near }` in `gap_m` umbenennen
        [units] { $metres-known ->
            [yes] `gap_m` ist in Metern: `"gap_m": { $metres }` schreiben statt `{ $near }`{ $count ->
                [one] { "" }
               *[other] , und so in jeder Zone
             }
           *[no] `gap_m` ist in Metern: es statt `{ $near }` schreiben, mit der Breite in Metern
         }
        [some] `{ $near }` in `gap_m` umbenennen; für die anderen { write-gap }
       *[none] { write-gap }
     }{ $guessed ->
        [none] { "" }
       *[some] ; wo eine Breite dazukommt, die jemand gesehen hat, `gap_assumed` herausnehmen
     }
write-gap = { $interface ->
    [page] { $count ->
        [one] der Zone
       *[other] jeder Zone
     } ihre Spaltenbreite geben, die der breitesten, mit der zu rechnen ist, in Metern, oder unter Tour sagen, was anzunehmen ist
   *[members] { $count ->
        [one] dem Polygon
       *[other] jedem Polygon
     } im Karteneditor ein `gap_m` geben, die Breite der breitesten Spalte, mit der zu rechnen ist, in Metern, oder sagen, was anzunehmen ist, { $interface ->
        [flags] mit `--gap`, etwa `--gap 6`
       *[members] mit `gap_m` der Tour, etwa `gap_m = 6`
     }
 }
zones-gap-assumed = { $lower ->
    [given] { $gap }, oder das angegebene untere Ende, wo es breiter ist, als Spaltenbreite angenommen für { which-zones }: { $zones }
   *[none] { $gap } als Spaltenbreite angenommen für { which-zones }: { $zones }
 }
    .hint = `gap_m` in die Datei schreiben, wo das Eis bekannt ist{ $guessed ->
        [none] { "" }
       *[some] , und `gap_assumed` dort herausnehmen
     }
which-zones = { $which ->
    [only] die einzige Zone, die keine angibt
    [all] alle { $of } Zonen, die keine angeben
    [one] 1 von { $of } Zonen, die keine angibt
   *[some] { $count } von { $of } Zonen, die keine angeben
 }
silent-zone-guessed = { $feature } (nach `gap_assumed` war die Breite dort nur angenommen)
silent-zone-near = { $feature } (`{ $near }` ist kein Name; `gap_m` schreiben)
silent-zone-unit = { $feature } (`{ $near }` ist kein Name; in Metern ist es `"gap_m": { $metres }`)
silent-zone-lower = { $feature } (mindestens { $at-least } nach `gap_min_m`)
zones-not-polygons = { $left-out } weggelassen: nur Polygone sind Zonen
left-out-points = { $n ->
    [one] { $n } Punkt
   *[other] { $n } Punkte
 }
left-out-lines = { $n ->
    [one] { $n } Linie
   *[other] { $n } Linien
 }
left-out-empty = { $n ->
    [one] { $n } leere Geometrie
   *[other] { $n } leere Geometrien
 }
zones-rings-closed = { $n ->
    [one] { $n } Ring geschlossen: der letzte Punkt war nicht der erste
   *[other] { $n } Ringe geschlossen: der letzte Punkt war nicht der erste
 }
zones-strike-missing = eine Unsicherheit ohne Spaltenverlauf sagt nichts und wurde nicht verwendet
    .hint = { $typed ->
        [yes] `--strike`
       *[no] `strike_deg`
     } dazuschreiben, die Richtung, in der die Spalten verlaufen
terrain-egm96 = die Höhen sind EGM96-Höhen in ganzen Metern, wie es für alle .hgt-Kacheln heißt
terrain-heights = die Höhen sind { $name } (EPSG:{ $epsg })
terrain-ellipsoid = die Höhen zählen über dem Ellipsoid, nicht über dem Meer: bis { $most } neben denen der Karte, die Neigungen stimmen
terrain-unsaid = es sagt nicht, ob seine Höhen über dem Meer oder über dem Ellipsoid zählen: bis { $most } können dazwischen liegen, die Neigungen sind dieselben
terrain-shifted = gezeichnet in { $system }, um { $shift } nach WGS 84 verschoben
terrain-unbelievable = { $cells } abgelesene Zellen hatten Zahlen, die keine Höhen sein können, und gelten als leer
terrain-turned = seine Höhen sind in Meter umgerechnet, eine Einheit ist { $unit }
terrain-no-void = es nennt keinen Wert für leere Zellen: Höhen außerhalb von { $from } bis { $to } gelten als leer
gpx-jump = die Linie springt { $length } bei { $at }; der Sprung wird nicht gegangen und zählt nicht zur Länge
gpx-long-edge = kein Punkt auf { $length } ab { $at } ({ $place }); sonst ist die Linie fein gezeichnet
    .hint = war der Empfänger aus, oder war es eine Bahn? Die Linie gilt dort als gerade: das Stück zeichnen, oder dahinter ein neues Segment beginnen
gpx-lone-point = ein einzelner Punkt liegt { $aside } neben der Linie, der nächste wieder auf ihr, bei { $at } ({ $place })
    .hint = lag der Empfänger falsch? Nichts ist ausgebessert: den Punkt herausnehmen, wenn dort niemand war
gpx-lone-height = die Höhe { $height } liegt { $by } { $way ->
    [below] unter
   *[above] über
 } der ihrer Nachbarn, bei { $at } ({ $place })
    .hint = lag der Empfänger falsch? Nichts ist ausgebessert: `ele` dort berichtigen, oder herausnehmen
trip-pounds = { $people ->
    [one] eine Person wiegt
   *[other] alle { $people } wiegen
 } mit Rucksack mehr als { $most }: sind das Pfund?
    .hint = in kg sind es { $interface ->
        [flags] `--party { $typed }`
       *[members] `party = [{ $listed }]`
     }; wo es schon kg sind, ist nichts zu tun
alone = eine Gruppe von { $people } kann nicht anseilen: niemand geht allein
    .hint = { $interface ->
        [flags] mindestens eine zweite Person mitnehmen: `--party 2`
        [page] auf dem Eis Hilfe rufen, statt allein weiterzugehen. Wer geht, nimmt mindestens eine zweite Person mit, unter Tour eingetragen
       *[members] mindestens eine zweite Person mitnehmen: `party = 2`
     }
line-sort = { $sort ->
    [track] Spur
   *[route] Route
 }
place-line = Zeile { $line }
place-line-column = Zeile { $line } Spalte { $column }
item-line-named = { line-sort } { $number } „{ $name }“
item-feature = Objekt { $number }
item-feature-named = Objekt { $number } „{ $name }“
item-segment = Segment { $number }
item-point = Punkt { $number }
item-detail = Einzelheit { $number }
