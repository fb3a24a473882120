### Wörter der Seite zum Zeichnen. Sie nehmen keine Angaben auf; was über Pläne gesagt wird, steht anderswo.

draw-title = Das Eis zeichnen
draw-needs-script = Diese Seite zeichnet und plant mit einem Skript, und hier läuft keines. Sie gehört in einen Browser, nicht in einen Betrachter von Dateien.

## Felder

draw-tabs = Teile der Seite
draw-tab-plan = Plan
draw-tab-zone = Zone
draw-tab-trip = Tour
draw-tab-field = Gelände
draw-tab-files = Dateien
draw-language = Sprache
draw-language-en = English
draw-language-de = Deutsch
draw-undo = Zurück
draw-redo = Vor
draw-save = Sichern
draw-starting = Das Programm wird ausgepackt
draw-planning = Der Plan kommt, sobald es eine Route und eine Gruppe gibt.
draw-no-route = Noch keine Route. Eine GPX-Datei öffnen oder hierher ziehen.
draw-gave-up = Das Programm in dieser Seite läuft hier nicht; was folgt, ist der Plan vom Stand, als die Seite entstand.
draw-broken = Das Programm ist abgebrochen und macht mit der nächsten Änderung weiter.
draw-no-plan = Noch kein Plan
draw-fault-go = Zu dieser Zone
draw-legs = { report-legs }
draw-notices = Was aufgefallen ist
draw-team = Seilschaft
draw-not-given = nicht angegeben
draw-verdict-unroped = { verdict-unroped }
draw-verdict-inside = { verdict-inside }
draw-verdict-look = { verdict-look }
draw-verdict-outside = { verdict-outside }
draw-verdict-stop = { verdict-stop }
draw-figure-spacing = Abstand
draw-figure-knots = Knoten
draw-figure-coils = Restseil
draw-figure-rope = Seil
draw-unit-m = m
draw-unit-km = km
draw-unit-mm = mm
draw-unit-kg = kg
draw-unit-deg = °

## Die gewählte Zone

draw-zone = Zone
draw-zone-choice = Gewählte Zone
draw-zone-none = keine Zone gewählt
draw-zone-pick = Eine Zone auf der Karte oder in der Liste wählen, oder eine zeichnen.
draw-gap = Spalten
draw-gap-kind = Eine Breite oder von–bis
draw-gap-one = eine Breite
draw-gap-range = von–bis
draw-gap-width = Breiteste erwartete Spalte
draw-gap-from = Von
draw-gap-to = Bis; dieses Ende zählt
draw-snow-and-rope = Schnee und Seil
draw-snow-depth = Schnee auf dem Eis
draw-surface = Oberfläche
draw-surface-snow = Schnee: Spalten verdeckt
draw-surface-bare = Blankeis: Spalten sichtbar
draw-rope = Seil hier
draw-rope-auto = wie der Plan es ergibt
draw-rope-always = immer, auf Wort der Leitung
draw-rope-never = nie, auf Wort der Leitung
draw-strike = Richtung, in der die Spalten verlaufen
draw-strike-deg = Verlauf
draw-strike-doubt = Auf oder ab
draw-zone-about = Zu dieser Zone
draw-zone-name = Name
draw-zone-observed-on = Gesehen am
draw-zone-source = Quelle
draw-zone-note = Notiz
draw-zone-copy = Angaben merken
draw-zone-copied = Angaben gemerkt: die nächste Zone wählen und dort einsetzen.
draw-zone-paste = Hier einsetzen
draw-zone-delete = Zone löschen

## Die Tour

draw-people = Gruppe
draw-person = Person
draw-person-add = Noch eine Person
draw-person-drop = Person streichen:
draw-person-mass = Mit Gepäck
draw-ropes = Seile, die da sind
draw-rope-add = Noch ein Seil
draw-rope-drop = Seil streichen:
draw-rope-name = Seil
draw-rope-length = Länge
draw-rope-diameter = Dick
draw-day = Der Tag
draw-how = Wie
draw-trip-name = Name der Tour
draw-trip-date = Datum
draw-trip-utc-offset = Uhr gegen UTC
draw-trip-start = Start
draw-trip-bridges-until = Schneebrücken tragen bis
draw-trip-back-by = Zurück bis
draw-trip-gap-m = Spaltenbreite für Zonen, die keine angeben
draw-trip-practice = Regelsatz
draw-trip-travel = Zu Fuß oder auf Ski
draw-trip-snow = Schnee, auf dem die Gruppe steht
draw-trip-knots = Bremsknoten
draw-trip-undrawn-ice = Eis, auf dem keine Zone gezeichnet ist
draw-trip-cover = Wessen Sturz das Restseil erreichen muss
draw-trip-reserve = Wie das Restseil bemessen wird
draw-trip-pace = Gehzeiten
draw-assume = Zahlen der Regeln
draw-assume-search = Zahlen suchen
draw-assume-back = Zurück auf

## Auf dem Eis

draw-field-back = Zurück zum Plan von vorher
draw-field-where = Wo bin ich?
draw-field-km = Kilometer
draw-field-height = Höhe
draw-field-nowhere = Kilometer oder Höhe eingeben, dann steht hier der Teil.
draw-field-not-there = Diesen Ort hat die Linie nicht.
draw-field-gap = Die Spalte hier ist anders
draw-field-gap-here = Spalte, wie sie da ist
draw-field-no-zone = Hier ist keine Zone gezeichnet.
draw-field-party = Jemand oder etwas fehlt
draw-field-one-more = + noch jemand
draw-field-rope-lost = Ohne Seil
draw-field-snow = Der Schnee ist anders

## Dateien

draw-open-title = Öffnen
draw-open-what = Route (GPX), Zonen oder Gletscherinventar (GeoJSON), Tour (TOML), Geländemodell (GeoTIFF oder .hgt). Sie lassen sich auch irgendwo auf die Seite ziehen.
draw-open = Dateien öffnen
draw-open-not = nicht zu brauchen
draw-open-as-inventory = Es ist das Gletscherinventar, nicht die Zonen
draw-kind-route = Route
draw-kind-zones = Zonen
draw-kind-inventory = Gletscherinventar
draw-kind-trip = Tour
draw-kind-terrain = Geländemodell
draw-kind-other = Datei
draw-save-title = Mitnehmen
draw-save-page = Diese Seite, wie sie jetzt ist
draw-save-zip = Alles in einem Archiv (.zip)
draw-save-zones = Zonen (GeoJSON)
draw-save-trip = Tourdatei (TOML)
draw-save-html = Bericht (HTML)
draw-save-sheet = Blatt zum Drucken (HTML)
draw-save-gpx = Fürs Gerät (GPX)
draw-save-geojson = Karte (GeoJSON)
draw-save-kml = Für Globen (KML)
draw-save-csv = Teile als Tabelle (CSV)
draw-save-json = Für Programme (JSON)
draw-save-text = Als Nachricht (Text)
draw-saved = Gesichert:
draw-save-not = Das geht noch nicht:

## Was getan wurde, für die, die der Seite zuhören

draw-did-undo = Zurückgenommen
draw-did-redo = Wieder getan
draw-did-restored = Arbeit vom letzten Mal
draw-did-delete = Zone gelöscht
draw-did-paste = Angaben eingesetzt
draw-did-gap-kind = Spalte als eine Breite oder von–bis
draw-did-gap-m = Spalte geändert
draw-did-gap-min-m = Spalte geändert
draw-did-gap-max-m = Spalte geändert
draw-did-snow-depth-m = Schnee geändert
draw-did-surface = Oberfläche geändert
draw-did-rope = Seil hier geändert
draw-did-strike-deg = Verlauf geändert
draw-did-strike-uncertainty-deg = Unsicherheit des Verlaufs geändert
draw-did-name = Name geändert
draw-did-observed-on = Tag geändert
draw-did-source = Quelle geändert
draw-did-note = Notiz geändert
draw-did-person-name = Name geändert
draw-did-person-mass-kg = Gewicht geändert
draw-did-person-add = Person dazugenommen
draw-did-person-drop = Person gestrichen
draw-did-rope-name = Seil geändert
draw-did-rope-length-m = Seil geändert
draw-did-rope-diameter-mm = Seil geändert
draw-did-rope-add = Seil dazugenommen
draw-did-rope-drop = Seil gestrichen
draw-did-trip = Tour geändert
draw-did-assume = Zahl geändert
draw-did-field-gap = Spalte hier geändert
draw-did-field-leave = Eine Person weniger
draw-did-field-join = Eine Person mehr
draw-did-field-rope = Ohne dieses Seil
draw-did-field-snow = Schnee geändert
draw-did-field-back = Der Plan von vorher
draw-did-open-route = Route geöffnet
draw-did-open-zones = Zonen geöffnet
draw-did-open-trip = Tour geöffnet
draw-did-open-terrain = Geländemodell geöffnet
draw-did-open-inventory = Gletscherinventar geöffnet
