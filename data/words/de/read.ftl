### Was beim Lesen auffällt und in Ausgaben steht. Fehler, die einen Plan verhindern, bleiben englisch.

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
    .hint = `strike_deg` dazuschreiben, die Richtung, in der die Spalten verlaufen
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
    .hint = mindestens eine zweite Person mitnehmen: { $interface ->
        [flags] `--party 2`
       *[members] `party = 2`
     }
line-sort = { $sort ->
    [track] Spur
   *[route] Route
 }
place-line = Zeile { $line }
place-line-column = Zeile { $line } Spalte { $column }
item-line-named = { line-sort } { $number } „{ $name }“
item-segment = Segment { $number }
item-point = Punkt { $number }
item-detail = Einzelheit { $number }
