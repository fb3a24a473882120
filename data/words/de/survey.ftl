### Viele Tracks, und Linien einer Tour nebeneinander.

survey-length = Länge
survey-ascent = Aufstieg
survey-descent = Abstieg
survey-ice = Auf Eis
survey-hidden = Auf verdeckten Spalten
survey-crossings = Eisquerungen
survey-longest = Längste Querung
survey-gap = Breiteste Spalte
survey-gap-doubted = { $gap }?
survey-roped-legs = Abschnitte am Seil
survey-roped = Am Seil gegangen
survey-along = Entlang der Spalten
survey-steepest = Am Seil am steilsten
survey-time = Zeit unterwegs
survey-word = Wort
survey-none = –
survey-line = { $number } = { $name }{ $file }
survey-line-file = {" "}({ $file })
survey-least = Am wenigsten auf verdeckten Spalten: Linie { $number }, { $least }.
survey-least-all = Alle Linien haben gleich viel verdeckte Spalten: { $least }.
survey-more = Linie { $number } hat { $more } mehr.
survey-gap-note = Eine Spalte mit ? ist nicht alles: für manches Eis gab niemand eine Breite an, oder sie wurde angenommen.
survey-apart = Wo sie verschiedene Wege gehen, mehr als { $within } auseinander:
survey-apart-line = Linie { $number }: { $where }, zusammen { $length }, davon { $hidden } auf verdeckten Spalten
survey-together = Sie gehen überall denselben Weg, nirgends mehr als { $within } auseinander.
survey-apart-none = Linie { $number }: nirgends
