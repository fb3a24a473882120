### Was ein Plan findet, in den paar Worten, die eine Nachricht hat. Nach Code; Hinweise stehen dort nicht.

brief-never-on-hidden-gaps = ohne Seil über verdeckten Spalten
    .short = verdeckte Spalten
brief-too-steep-to-rope-without-anchors = zu steil ohne Fixpunkte
    .short = zu steil
brief-fall-held-in-none = Sturz nicht gehalten
brief-bare-ice-too-steep = Eis zu steil ohne Fixpunkte
    .short = Eis zu steil
brief-no-setup = Spalte zu breit
brief-no-rope-fits = { $lack ->
    [short] Seil { $short } zu kurz
    [none-left] kein Seil übrig
   *[none-sold] so lang ist kein Seil
}
brief-no-rope-for-the-reserve = Seil { $rope-short } zu kurz für die Bergung
    .short = Seil { $rope-short } zu kurz
brief-unroped-on-steep-bare-ice = steiles Eis: nichts hält einen Ausrutscher
brief-along-the-crevasses = parallel zu Spalten
    .short = parallel zu Spalten
brief-fall-held-in-none-at-one-place = Sturz an einer Stelle nicht gehalten
    .short = Sturz nicht gehalten
brief-fall-not-held-in-the-middle-case = sichern: Sturz eventuell nicht zu halten
    .short = Sturz fraglich: sichern
brief-hidden-gaps-skied-unroped = auf Ski ohne Seil über verdeckten Spalten
brief-two-over-one-gap = 2 über einer Spalte
brief-halt-on-hidden-gaps = Halt auf verdeckten Spalten
brief-loop-ends-short-of-the-lip = Schlaufe für die Bergung zu kurz
    .short = Rolle zu kurz
brief-reserve-left-short = Restseil für die Bergung zu kurz
brief-spacing-near-limit = Abstand nahe am Größten
brief-rope-near-limit = kaum Seil übrig
brief-rope-thin-as-cord = Seil dünn wie Reepschnur
brief-knots-doubtful = Knoten greifen vielleicht nicht
brief-fewer-knots-than-a-layout = weniger Knoten als gelehrt
brief-snow-depth-not-given = Schneehöhe unbekannt
brief-knots-do-not-bite-everywhere = Knoten greifen nur zum Teil
brief-knots-always-and-none-tied = keine Knoten, obwohl gewünscht
brief-pair-without-knots = zu zweit ohne Knoten
brief-cut-off-by-route-end = Route beginnt oder endet auf Eis
brief-last-person-still-on-ice = Letzter noch auf dem Eis
brief-jump-over-ice = Linie springt über Eis
brief-stage-gap-over-ice = Eis zwischen Etappen
brief-unroped-on-ice-by-your-word = ohne Seil auf Eis, so vorgegeben
brief-ice-without-a-gap-width = Spaltenbreiten unbekannt
brief-thin-snow-on-hidden-gaps = wenig Schnee auf Spalten
brief-snow-on-bare-ice = blank oder verschneit?
brief-bridges-late = spät auf Brücken
brief-bridges-in-soft-snow = schwache Brücken: weicher Schnee
brief-climb-partly-unknown = Höhen fehlen
brief-hour-before-start = eine Uhrzeit vor dem Start
brief-gap-assumed = Spaltenbreite angenommen
brief-observed-long-before = vor langem beobachtet
brief-one-slip-pulls-all = ein Ausrutscher reißt alle mit
brief-bare-ice-two-views = Blankeis: Seil ja oder nein?
    .short = Seil: entscheiden
brief-back-late = spät zurück
brief-very-long-stage = sehr lange Etappe
brief-model-has-no-answer = keine Antwort zu Stürzen
brief-heights-far-apart = Höhen zweifelhaft
brief-terrain-void = Höhen fehlen
