### Worauf ein Plan beruht, nach dem Namen, unter dem es zu ändern ist. Die englischen Sätze stehen in `data/*.toml`.

says-practice = der Regelsatz
says-party = Masse von Person { $number } mit Rucksack
says-rope = Seil { $number } der Gruppe
says-terrain = Geländemodell { $number }
says-gap_m = Spaltenbreite, wo eine Zone keine angibt
says-sold_lengths_m = Längen, in denen es Seile zu kaufen gibt

## Wörter und Zeiten

says-travel = wie die Gruppe unterwegs ist
says-knots = wann Bremsknoten geknüpft werden
says-reserve = wie das Restseil bemessen wird
says-cover = wessen Sturz das Restseil erreichen muss
says-rope_on_bare = ob auf Blankeis angeseilt wird, wo die Zone nichts sagt
says-undrawn_ice = ob auf Eis des Inventars ohne gezeichnete Zone angeseilt oder nur gemeldet wird
says-pace = nach welcher Regel Gehzeiten gerechnet werden
says-use_proposed_strike = ob ein aus dem Gelände geschätzter Spaltenverlauf zählt
says-snow = worauf die Seilschaft im Sturzmodell steht, wo Schnee liegt
says-start = wann jede Etappe begonnen wird
says-start_at_km = wo diese Uhrzeit gilt, wenn nicht am Anfang einer Etappe
says-bridges_until = bis wann über Schneebrücken gegangen wird
says-back_by = wann die Linie zu Ende sein soll
says-date = der Tag der Tour
says-utc_offset = ihre Uhr gegen UTC

## Was diese Wörter heißen

says-practice-arm-span = Abstand in Armspannen, (10 − n) bei n Personen; Schlaufe der Losen Rolle anderthalbmal so lang
says-practice-short-alpine = fester Abstand, kürzer je mehr gehen; Schlaufe der Losen Rolle anderthalbmal so lang
says-practice-constant = derselbe Abstand, wie viele auch gehen; Schlaufe der Losen Rolle doppelt so lang
says-practice-club-coils = kurzer fester Abstand, der Rest des Seils in Brustschlingen an beiden Enden

says-language-en = Englisch
says-language-de = Deutsch
says-travel-foot = zu Fuß
says-travel-snowshoe = auf Schneeschuhen
says-travel-ski = auf Ski
says-knots-auto = zu zweit, wo der Schnee sie wirken lässt; zu dritt, wo das Halten schwerer ist; sonst keine
says-knots-always = zu zweit und zu dritt immer
says-knots-never = niemand knüpft sie
says-reserve-reach = so viel, wie eine Lose Rolle braucht: Reichweitenfaktor mal Abstand
says-reserve-chest-coils = eine Anzahl Schlingen um die Brust
says-cover-ends = eine Person am Ende; was für die in der Mitte fehlt, wird gesagt
says-cover-anyone = alle am Seil
says-undrawn_ice-rope = es wird mit dem kleinsten Abstand angeseilt, die Spalten sind unbekannt
says-undrawn_ice-tell = es wird gemeldet, und angeseilt nur, wo eine Zone es sagt: der Rest auf das Wort der Führung
says-pace-din = Weg und Höhe, das Längere und die Hälfte des Kürzeren (DIN 33466)
says-pace-munter = Kilometer und hundert Höhenmeter nach einem Maß hinauf, einem hinab und einem auf Ski
says-pace-naismith = Weg und Aufstieg; für den Abstieg nichts
says-snow-soft = Neuschnee oder Nassschnee: man sinkt ein
says-snow-settled = gesetzter Altschnee
says-snow-firm = fester Firn: Tritte bleiben flach
says-snow-refrozen = hart gefroren: Schuhe greifen kaum
says-snow-ice = Eis unter den Füßen: verdeckte Spalten bleiben verdeckt

## Wo angeseilt wird, und Abstände

says-margin_m = Randstreifen längs und neben der Linie für das, was Karten und Empfänger daneben liegen
says-least_unroped_m = kürzestes Stück ohne Seil: für weniger bindet sich niemand aus
says-turn_back_m = eine Linie, die auf ihrem Rückweg länger als so in ihrem eigenen Randstreifen bleibt, kehrt dort um
says-along_deg = unter diesem Winkel zwischen Gehrichtung und Spalten geht die Seilschaft parallel zu ihnen
says-gap_most_widths = der Weg über eine schräg getroffene Spalte ist bis zu so vielen Breiten gerechnet; darüber geht die Seilschaft parallel
says-spacing_2_m = kleinster Abstand zu zweit, wo die Spalten nicht mehr verlangen
says-spacing_3_m = kleinster Abstand zu dritt, wo die Spalten nicht mehr verlangen
says-spacing_4_m = kleinster Abstand zu viert, wo die Spalten nicht mehr verlangen
says-spacing_5_m = kleinster Abstand zu fünft, wo die Spalten nicht mehr verlangen
says-neighbour_room_m = Platz jenseits der Spalte für die zweite Person eines Paars: stehen, gezogen werden, halten
says-gap_share_three = Abstand zu dritt als Anteil der Spalte
says-gap_share_four = Abstand zu viert und mehr als Anteil der Spalte
says-spacing_floor_m = kleinster Abstand
says-spacing_cap_m = größter Abstand: die weiteste gedruckte Zahl
says-spacing_step_m = Abstände werden auf diesen Schritt aufgerundet
says-heavier_factor = eine Person ist ab so vielen Mal dem Mittel der anderen deutlich schwerer
says-steep_descent_deg = ein Abstieg ab dieser Neigung macht das Halten schwerer: auch zu dritt mit Bremsknoten

## Knoten, Restseil, Seil

says-knots_no_bite_m = Schnee auf dem Eis, bis zu dem Bremsknoten nicht greifen
says-knots_bite_m = Schnee auf dem Eis, über dem Bremsknoten greifen
says-knot_first_m = Strecke von der Person am Ende zum ersten Bremsknoten
says-knot_step_m = Strecke von einem Bremsknoten zum nächsten
says-tight_first_m = dasselbe bei enger geknüpften Knoten, die der Vergleich der Varianten wählen kann
says-tight_step_m = Strecke von einem Bremsknoten zum nächsten, enger geknüpft
says-knot_count = Bremsknoten je Satz
says-knot_rope_m = Seil in einem dicken Bremsknoten (Achterknoten als Schlaufe, die Schlaufe noch einmal herumgeführt)
says-butterfly_rope_m = Seil in einem Schmetterlingsknoten, der weniger greift
says-knot_clear_m = freies Seil zwischen zwei Sätzen von Knoten, oder hinter einem
says-tie_in_m = Seil je Einbindung
says-reach_factor = freies Seil für eine Lose Rolle als Vielfaches des Abstands, vor ihren Enden
says-obliged_reach_factor = freies Seil, das eine Lose Rolle mindestens braucht, wo Bremsknoten den belasteten Strang sperren, als Vielfaches des Abstands
says-loop_ends_m = Seil für die Enden einer Losen Rolle
says-sling_m = lange Schlinge in der Losen Rolle; sie verkürzt jedes Restseil
says-chest_coil_m = Seil in einer Schlinge um die Brust
says-chest_coils_2 = Schlingen um die Brust an jedem Ende, zu zweit
says-chest_coils_3 = Schlingen um die Brust an jedem Ende, zu dritt
says-chest_coils_4 = Schlingen um die Brust an jedem Ende, zu viert
says-chest_coils_5 = Schlingen um die Brust an jedem Ende, zu fünft
says-person_kg = Masse einer Person mit Rucksack, wo keine angegeben ist
says-arm_span_m = eine Armspanne, um Seil von Hand zu messen
says-near_cap_m = ein Abstand, der so nah am größten liegt, ist nahe der Grenze
says-thin_rope_mm = ein Seil, in das sich jemand einbindet oder das mitkommt und das dünner als das ist, wird genannt: so dünn ist meist Reepschnur
says-near_lip_m = eine Lose Rolle, die weniger als das unter dem Spaltenrand endet, erreicht niemanden, der hängt: ein Seil daneben kommt mit
says-near_rope_m = ein Seil, von dem weniger als das übrig ist, ist nahe der Grenze
says-rope_diameter_mm = Durchmesser eines Seils, wo keiner angegeben ist, für seine Masse
says-coil_most_m = ein längeres Restseil ist eine Last und schwer in Ordnung zu halten
says-coil_most_kg = ein schwereres Restseil ist eine Last für eine Person
says-holder_clear_m = wer einen Sturz hält, bleibt mindestens so weit vom Spaltenrand; tiefer als der Rest des Seils wird also niemand erreicht
says-long_sling_m = was eine lange Schlinge zur Losen Rolle beiträgt, wo sie versucht wird, damit ein Seil reicht
says-join_bend_m = Seil in der Verbindung zweier Seile
says-anchor_share = wie weit vom Spaltenrand die Verankerung zur Bergung liegt, als Anteil des Abstands

## Neigung und Gelände

says-avalanche_deg = ab dieser Neigung ist Lawinengelände Sache des Lageberichts
says-anchors_deg = über dieser Neigung ist gemeinsam am Seil ohne Fixpunkte nicht mehr die Antwort
says-bare_slip_deg = Neigung, über der auf Blankeis ein Ausrutscher alle mitreißt, die ohne Fixpunkte am Seil sind
says-bare_stop_deg = Neigung, über der Blankeis kein Gelände für eine Seilschaft ohne Fixpunkte ist
says-skied_snow_m = verdeckte Spalten, auf Ski ohne Seil vorgegeben, ergeben Stopp, außer es liegt so viel Schnee darauf
says-skied_gap_m = und außer sie sind nicht breiter als das
says-thin_snow_m = verdeckte Spalten unter nicht mehr Schnee als das werden genannt: Brücken tragen dort vielleicht niemanden
says-observed_days = Zonen, die mehr Tage als das vor der Tour beobachtet sind, werden genannt: Spalten und Brücken ändern sich
says-ascent_threshold_m = kleineres Auf und Ab zählt nicht
says-climb_unknown_m = auf längeren Stücken ohne Höhe sind Anstiege und Zeiten zu klein, und keine Uhrzeit ist zurückgerechnet
says-climb_cells = Höhen eines Geländemodells zählen für Anstiege als Mittel über so viele Zellen längs der Linie; Neigungen nehmen sie, wie sie sind
says-ascents_apart_share = Anstiege nach Routendatei und Geländemodell, die um mehr als diesen Anteil des kleineren auseinandergehen, stehen beide da
says-steep_over_m = Länge, über die die Neigung längs der Linie genommen wird
says-lone_height_m = eine Höhe der Routendatei, die allein heraussticht oder absackt, entscheidet keine Neigung, wo die Höhen daneben nicht weiter weg sind
says-ground_step_m = höchstens so dicht längs der Linie wird das Gelände nach seiner Neigung gefragt, oder je halbe Zelle
says-heights_apart_m = Höhen von Routendatei und Geländemodell, die weiter auseinanderliegen, sind zweifelhaft
says-fall_line_deg = unter dieser Neigung hat das Gelände keine Falllinie, aus der ein Spaltenverlauf zu schätzen wäre
says-proposed_strike_deg = ein quer zur Falllinie geschätzter Spaltenverlauf kann um so viel falsch sein
says-convex_deg = Gelände, das in der Falllinie um so viel steiler wird, ist eine Kante zum Hinschauen
says-convex_over_m = Länge über und unter einem Ort, über die eine Kante genommen wird, oder zwei Zellen
says-convex_most = Kanten, die auf einem Abschnitt genannt werden
says-straight_m = ein Abschnitt, der so nah an seiner Sehne bleibt, ist gerade und hat eine Richtung

## Zeiten

says-timed_piece_m = längstes Stück eines Abschnitts, dessen Zeit für sich gerechnet wird; wechselt darin die Neigung, ist eine Uhrzeit unterwegs um ein Stück davon falsch
says-one_place_m = so nahe Halte liegen an einem Ort
says-rope_up_min = Minuten zum Anseilen
says-change_min = Minuten, um die Seileinteilung zu wechseln oder sich auszubinden
says-belay_min = Minuten, die eine Sicherung braucht, bevor jemand hinüber oder hinauf ist: ein Fixpunkt, und ihn wieder abbauen
says-belay_each_min = Minuten, die eine Sicherung für jede Person am Seil braucht
says-belay_every_m = für so viele Meter eines Abschnitts, auf dem etwas nach Sicherung über verdeckten Spalten verlangt, wird eine gezählt
says-belay_pitch_m = für so viele Meter Gelände, das für ein gemeinsames Seil ohne Fixpunkte zu steil ist, wird eine Sicherung gezählt
says-walk_kmh = Gehtempo im Flachen
says-climb_m_per_h = Aufstieg je Stunde
says-descend_m_per_h = Abstieg je Stunde
says-descend_on_skis_m_per_h = Abfahrt je Stunde auf Ski
says-descend_roped_on_skis_m_per_h = Abfahrt je Stunde auf Ski am Seil: nicht schneller als zu Fuß
says-snowshoe_factor = so vielmal so lang dauert das Gehen auf Schneeschuhen
says-munter_up = Leistungseinheiten (km und hundert Höhenmeter) im Aufstieg je Stunde
says-munter_down = Leistungseinheiten zu Fuß im Abstieg oder im Flachen je Stunde
says-munter_ski_down = Leistungseinheiten in der Abfahrt auf Ski je Stunde
says-munter_ski_down_roped = Leistungseinheiten in der Abfahrt auf Ski am Seil je Stunde: nicht schneller als zu Fuß
says-naismith_kmh = Tempo im Flachen: drei Meilen je Stunde
says-naismith_m_per_h = Höhe, für die eine Stunde dazukommt
says-break_min_per_h = Minuten Pause je Stunde Gehen
says-longest_stage_h = eine Etappe, auf der eine Gruppe länger unterwegs ist, Rasten und Sichern nicht gezählt, wird gemeldet
says-slower_factor = so vielmal so lang braucht eine langsamere Gruppe für Gehen, Pausen, Sicherungen und Seil; Halte bleiben, wie sie sind
says-effort_climb_m = Höhenmeter hinauf, die als ein Leistungskilometer zählen
says-effort_descent_m = Höhenmeter steil hinab, die als ein Leistungskilometer zählen
says-effort_steep_share = Abstiege, die steiler sind als dieses Verhältnis, zählen als Leistung
says-wide_min_per_km_m = Minuten, die je Kilometer und Meter Abstand über den Bedarf des Abschnitts hinaus verloren gehen: Stimme, Handzeichen, Schlappseil

## Ausrüstung

says-kit_harnesses = Gurte je Person
says-kit_helmets = Helme je Person
says-kit_axes = Pickel je Person
says-kit_slings = Bandschlingen je Person, um Verankerung und Seil zu verbinden
says-kit_cords = Prusikschlingen je Person, um am Seil zu steigen
says-kit_karabiners = Verschlusskarabiner je Person, zum Einbinden und für Schlingen
says-kit_snow_anchors = Dinge zum Eingraben als Verankerung je Person, wo Schnee auf dem Eis liegt
says-kit_ice_screws = Eisschrauben je Person, wo das Eis blank ist
says-kit_crampons = Paar Steigeisen je Person, wo das Eis blank ist
says-kit_lamps = Stirnlampen je Person
says-kit_probes = Sonden je Person am Ende, wo Schnee Spalten verdeckt: jede von ihnen kann vorausgehen
says-kit_pulleys = Seilrollen je Person am Ende, um an der ersten Umlenkung weniger zu verlieren, als gerechnet ist

## Sturz und Bergung

says-delay_s = Zeit vom ersten Zug, bis die anderen bremsen
says-slack_m = Seil, das zwischen zweien lose liegt
says-break_point = wie weit über der Spalte die Brücke bricht, als Anteil ihrer Breite
says-rope_damping = wie schnell das Seil ausfedert, als Anteil der kritischen Dämpfung
says-knot_bite_m = wie weit ein Bremsknoten durch den Spaltenrand gezogen wird, bis er draußen ist
says-skis-mu_before = Reibung einer Person auf Ski, bevor sie bremst
says-snow-mu_before = Reibung einer umgerissenen Person, bevor sie bremst
says-snow-mu_after = Reibung einer Person, die bremst
says-snow-lip = Faktor, um den ein rechtwinkliger Spaltenrand die Seilkraft mindert
says-snow-knot_n = Kraft, die ein Bremsknoten am Spaltenrand trägt
says-rope-peak_force_n = Fangstoß des üblichen Seils im Fallversuch
says-rope-test_mass_kg = Masse in diesem Versuch
says-rope-fall_factor = Sturzfaktor dieses Versuchs
says-rope_g_per_m = Masse eines Seils dieses Durchmessers, das schwerste
says-pull-weak_n = was eine müde oder leichte Person auf Schnee auf Dauer zieht
says-pull-strong_n = was eine kräftige Person mit gutem Stand zieht
says-haul-rest_m = Seil für Hände, Klemmknoten und Enden einer Bergung
says-haul-clearance_m = Teil des Wegs von der Verankerung zum Spaltenrand, den kein Hub nutzen kann
says-turn-karabiner = Anteil der Kraft, der nach einer Umlenkung im Karabiner bleibt
says-turn-pulley = Anteil der Kraft, der nach einer Umlenkung in der Seilrolle bleibt
says-case-adverse = { $says }, ungünstig
says-case-central = { $says }, mittel
says-case-favourable = { $says }, günstig

## Was dahinter steht

says-standing-published = veröffentlicht
says-standing-common-practice-no-source = gängige Praxis, ohne Quelle
says-standing-our-judgement = unser Urteil
says-standing-derived = abgeleitet
says-standing-from-memory = aus dem Gedächtnis
says-standing-the-leader-s-word = vorgegeben
says-standing-see-its-figures = siehe seine Zahlen
says-standing-makers-figures-no-single-source = Angaben der Hersteller, keine einzelne Quelle
says-standing-measured-rescue-training-publications = gemessen, Schriften zur Rettungsausbildung
says-standing-measured-frontiers-mech-eng-7-728722-2021-as-excerpted = gemessen, Frontiers Mech. Eng. 7:728722, 2021, nach Auszügen
says-standing-ours-bracketed-by-nachbauer2016 = unser Wert, eingegrenzt durch nachbauer2016
says-standing-ours-inside-the-limits-of-en-892 = unser Wert, innerhalb der Grenzen der EN 892
