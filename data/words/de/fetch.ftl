### Was über Daten gesagt wird, die von einem Server kamen.

fetched-source = Umriss aus einem Inventar, { $address }, geholt am { $day }{ $known ->
    [yes] , Lizenz { $licence }
   *[no] { "" }
 }
fetched-outlines = { $near ->
    [one] 1 Umriss liegt nahe der Route
   *[other] { $near } Umrisse liegen nahe der Route
 }, von { $came }, die { $found ->
    [yes] die Datei enthält
   *[no] kamen
 }
fetched-no-gap = ein Umriss sagt, wo Eis ist, und nichts über seine Spalten: die breiteste erwartete Spalte in Metern als `gap_m` in jede Zone schreiben, oder mit dem Inventar planen, auf dessen Eis alle am Seil gehen
fetched-heights = { $file } geschrieben: Höhen nahe der Route{ $known ->
    [yes] , { $credit }
   *[no] ; wem sie gehören, sagt der Server nicht
 }
fetched-no-tile = der Server hat { $address } nicht: dort kein Relief, wie über dem Meer
