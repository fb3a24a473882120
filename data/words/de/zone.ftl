### Was über Zonen gesagt wird, die nach Kilometern angelegt wurden.

strip-source = Streifen entlang { $route }, { $where }, { $half } nach beiden Seiten
strip-unnumbered = eine Zone
strip-unnumbered-named = eine Zone „{ $name }“
strip-wrote = { $file }: { $zone }, { $where }: { $length } der Linie, { $half } nach beiden Seiten{ $ours ->
    [yes] {" "}(unsere Einschätzung; `--half-width` ändert sie)
   *[no] { "" }
 }, { $area }{ $gap-given ->
    [yes] ; Spalten bis { $gap }
   *[no] { "" }
 }{ $snow-given ->
    [yes] , { $snow } Schnee
   *[no] { "" }
 }
strip-again = die Linie ist auch bei { $where }{ $more ->
    [0] { "" }
    [one] {" "}und an 1 weiteren Stelle
   *[other] {" "}und an { $more } weiteren Stellen
 } in { $zone }, wo sie zurückkommt oder abbiegt: alles davon zählt
strip-no-gap = keine Spaltenbreite: ein Plan fragt danach. Hier mit `--gap 6` angeben, die breiteste erwartete Spalte in Metern, oder als `gap_m` in die Datei schreiben
strip-zones = { $zones ->
    [one] { $file } enthält jetzt 1 Zone
   *[other] { $file } enthält jetzt { $zones } Zonen
 }
strip-zones-unknown = mit anderen Zonen in { $file } stimmt etwas nicht: `schrund check { $file }` sagt es
