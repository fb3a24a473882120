### Was ein Plan findet, nach Code. Jede Nachricht ist der Satz ohne Punkt; `.hint` sagt, was zu tun ist.

-snow-depth = { $interface ->
    [page] „Schnee auf dem Eis“ der Zone
   *[members] `snow_depth_m` in der Zonendatei
}
-gap-width = { $interface ->
    [page] die Spalten der Zone
   *[members] `gap_m` in der Zonendatei
}
-strike = { $interface ->
    [page] den Spaltenverlauf der Zone
   *[members] `strike_deg`
}
-rope-auto = { $interface ->
    [page] Seil „wie der Plan es ergibt“
   *[members] `rope` = `auto`
}

never-on-hidden-gaps = { $zone } ist als nie am Seil vorgegeben, und ihre Spalten liegen verdeckt unter Schnee
    .hint = in der Zone { -rope-auto } setzen: dann ist sie am Seil geplant
    .short = { $zone }: verdeckte Spalten ohne Seil, so vorgegeben
    .cure = { -rope-auto } in der Zone
    .act = hier anseilen: die Spalten sind verdeckt

hidden-gaps-skied-unroped = { $zone } ist als nie am Seil vorgegeben: auf Ski, { $snow } Schnee, Spalten bis { $gap }; Ski verteilen die Last und tragen keine Brücke
    .hint = anseilen, wo der Schnee dünner wird, wo er einsinkt und wo ihr haltet
    .short = { $zone } auf Ski ohne Seil: { $snow } Schnee, Spalten bis { $gap }
    .cure = anseilen, wo der Schnee dünn wird oder einsinkt und wo ihr haltet
    .act = anseilen, wo der Schnee dünn wird oder einsinkt, und beim Halten

-by-rope = { $interface ->
    [flags] : `--rope 60`
   *[members] { "" }
}
-by-terrain = { $interface ->
    [flags] : `--terrain FILE`
   *[members] { "" }
}
-by-glaciers = { $interface ->
    [flags] : `--glaciers FILE`
   *[members] { "" }
}
-more-terrain = { $interface ->
    [flags] `--terrain` geht auch mehrmals
   *[members] es können mehrere Modelle angegeben werden
}
-options-weigh = { $interface ->
    [flags] `schrund options` zeigt
    [page] „Varianten: Gruppe und Seile anders aufgeteilt“ unter Tour und Unterwegs zeigt
   *[members] der Vergleich der Varianten zeigt
}

no-setup = Spalten von { $gap } in Gehrichtung verlangen von { $people } Personen { $need } Abstand; der größte ist { $cap }
    .hint = eine andere Linie, ein Umweg um die Enden der Spalten, oder mehr Leute am Seil
    .short = Spalten von { $gap } in Gehrichtung verlangen { $need } Abstand; höchstens { $cap } sind möglich
    .cure = außen herum, eine andere Linie, oder mehr Leute
    .act = umkehren, die Spalten umgehen, oder einzeln vom Fixpunkt gesichert hinüber

no-rope-fits = { $lack ->
    [short] die Seileinteilung braucht { $needed } Seil; { $rope } ist { $short } zu kurz
    [none-left] kein Seil ist übrig für Seilschaft { $team }; sie braucht { $needed }
   *[none-sold] die Seileinteilung braucht { $needed } Seil, mehr als ein einzelnes Seil lang ist
}
    .hint = { $lack ->
    [none-left] umkehren, oder am Fixpunkt einzeln hinübersichern; oder ein weiteres Seil nennen{ -by-rope }
   *[other] { $cured ->
        [yes] { $cure }
       *[no] umkehren, oder am Fixpunkt einzeln hinübersichern; { -options-weigh } andere Seile und Aufteilungen der Gruppe
    }
}
    .short = { $lack ->
        [short] { $needed } Seil nötig; { $rope } ist { $short } zu kurz
        [none-left] { $needed } Seil nötig, und keines ist übrig für Seilschaft { $team }
       *[none-sold] { $needed } Seil nötig, mehr als ein Seil lang ist
    }
    .act = { $cured ->
        [yes] { $cure }; sonst umkehren
       *[no] { $lack ->
            [short] { $short } Seil zu wenig: umkehren, oder einzeln vom Fixpunkt gesichert hinüber
           *[none-left] zu wenig Seil: umkehren, oder einzeln vom Fixpunkt gesichert hinüber
        }
    }
    .too = { $lack ->
        [short] { $short } Seil zu wenig
       *[none-left] zu wenig Seil
    }
bend-blocks-the-loaded-strand = dieses Seil ist aus zweien verbunden: kein Flaschenzug am belasteten Strang läuft über die Verbindung

rope-cure = { $how }: { $rope } ist lang genug{ $gap-given ->
    [each] , mit Abstand für die Spalten jedes Abschnitts
    [yes] , mit Abstand für Spalten bis { $gap }
   *[no] { "" }
}{ $costs }
rope-cure-joined = { $how }: zusammen sind sie lang genug{ $gap-given ->
    [each] , mit Abstand für die Spalten jedes Abschnitts
    [yes] , mit Abstand für Spalten bis { $gap }
   *[no] { "" }
}{ $costs }
rope-cure-costs = ; aber { $costs }
rope-cure-fall = ein Sturz ist vielleicht nicht zu halten: sichern
rope-cure-over = { $over } Personen gleichzeitig über einer Spalte, { $left } zum Halten
rope-cure-coil = Restseile von { $coil } statt { $planned }
rope-cure-loop = { $count ->
    [one] für eine Lose Rolle
   *[other] für Lose Rollen
} zu { $who } fehlen { $short } Seil
rope-cure-spacing = mit { $spacing } Abstand gehen statt { $planned }

too-steep-to-rope-without-anchors = { $of ->
    [ground] das Gelände ist
   *[line] die Linie ist
} auf { $length } Strecke bis { $slope } steil, { $all ->
    [yes] bei { $span }
   *[no] am kritischsten bei { $span }
}: gemeinsam am Seil ohne Fixpunkte ist nicht mehr die Antwort
    .hint = an Fixpunkten sichern, oder eine andere Linie
    .short = bis { $slope } steil auf { $length } Strecke, { $all ->
        [yes] { $span }
       *[no] am kritischsten { $span }
    }: zu steil für ein Seil ohne Fixpunkte
    .cure = an Fixpunkten sichern, oder eine andere Linie
    .act = an Fixpunkten sichern, oder eine andere Linie gehen

held-without-width = { $given ->
    [yes] { "" }
   *[no] ; beurteilt, als wäre die Spalte ohne Breite: keine Breite ist angegeben
}
held-better-in-order = { $better ->
    [no] { "" }
   *[yes] in der Reihenfolge { $order };{ " " }
}
held-or-in-order = { $better ->
    [no] { "" }
   *[yes] {" "}die Reihenfolge { $order } oder
}

fall-held-in-none = im Modell wird ein Sturz von { $who } nicht gehalten, auch nicht unter den günstigsten Annahmen, auf { $length } Strecke, { $all ->
    [yes] bei { $span }
   *[no] am kritischsten bei { $span }
} ({ $snow }{ $slope }){ held-without-width }
    .hint = an einem Fixpunkt sichern, oder eine andere Linie; sonst { held-better-in-order }mehr Leute am Seil
    .short = im Modell wird ein Sturz von { $who } in keinem Fall gehalten: { $length }, { $all ->
        [yes] { $span }
       *[no] am kritischsten { $span }
    }
    .cure = an einem Fixpunkt sichern oder eine andere Linie; sonst{ held-or-in-order } mehr Leute
    .act = kein Sturz wird gehalten: am Fixpunkt sichern, oder eine andere Linie
    .too = kein Sturz wird gehalten

fall-held-in-none-at-one-place = im Modell wird ein Sturz von { $who } nicht gehalten, auch nicht unter den günstigsten Annahmen, bei { $span }, { $length } ({ $snow }{ $slope }){ held-without-width }
    .hint = diese Stelle einzeln queren, an einem Fixpunkt gesichert; sonst { held-better-in-order }eine andere Linie
    .short = im Modell wird ein Sturz von { $who } in keinem Fall gehalten auf { $length } Strecke, { $span }
    .cure = einzeln und gesichert queren; sonst{ held-or-in-order } eine andere Linie
    .act = diese Stelle einzeln, an einem Fixpunkt gesichert

fall-not-held-in-the-middle-case = im Modell wird ein Sturz von { $who } nur unter günstigen Annahmen gehalten, nicht unter mittleren, auf { $length } Strecke, { $all ->
    [yes] bei { $span }
   *[no] am kritischsten bei { $span }
} ({ $snow }{ $slope })
    .hint = dort an einem Fixpunkt sichern; sonst { held-better-in-order }mehr Leute am Seil
    .short = Sturz von { $who } eventuell nicht zu halten auf { $length }, { $all ->
        [yes] { $span }
       *[no] am kritischsten { $span }
    }
    .cure = dort an einem Fixpunkt sichern; sonst{ held-or-in-order } mehr Leute
    .act = Sturz eventuell nicht zu halten: am Fixpunkt sichern
    .too = ein Sturz eventuell nicht zu halten

bare-ice-too-steep = am Seil ohne Fixpunkte auf { $length } Blankeis bis { $slope } steil, { $all ->
    [yes] bei { $span }
   *[no] am kritischsten bei { $span }
}: ein Ausrutscher reißt alle mit, und keine Seilschaft hält einen Sturz auf Eis
    .hint = an Fixpunkten sichern, eine andere Linie, oder ohne Seil, wo jede Spalte sichtbar ist
    .short = bis { $slope } steil auf { $length } Blankeis, { $all ->
        [yes] { $span }
       *[no] am kritischsten { $span }
    }: ein Ausrutscher reißt alle mit
    .cure = an Fixpunkten sichern, andere Linie, oder ohne Seil, wo jede Spalte sichtbar ist
    .act = an Fixpunkten sichern, oder eine andere Linie gehen

one-slip-pulls-all = am Seil ohne Fixpunkte auf { $length } Blankeis bis { $slope } steil, { $all ->
    [yes] bei { $span }
   *[no] am kritischsten bei { $span }
}: ein Ausrutscher reißt alle mit
    .hint = ohne Seil, wo jede Spalte sichtbar ist, oder an Fixpunkten sichern
    .short = bis { $slope } steil auf { $length } Blankeis, { $all ->
        [yes] { $span }
       *[no] am kritischsten { $span }
    }: ein Ausrutscher reißt alle mit
    .cure = ohne Seil, wo jede Spalte sichtbar ist, oder an Fixpunkten sichern
    .act = ohne Seil, wo jede Spalte zu sehen ist, oder an Fixpunkten sichern

unroped-on-steep-bare-ice = ohne Seil auf { $length } Blankeis bis { $slope } steil, { $all ->
    [yes] bei { $span }
   *[no] am kritischsten bei { $span }
}: nichts hält einen Ausrutscher
    .hint = dort Fixpunkte, Steigeisen, die greifen, oder eine andere Linie
    .short = kein Seil auf { $length } Blankeis bis { $slope } steil, { $all ->
        [yes] { $span }
       *[no] am kritischsten { $span }
    }
    .cure = dort Fixpunkte, Steigeisen, die greifen, oder eine andere Linie
    .act = Fixpunkte setzen, oder eine andere Linie gehen

along-the-crevasses = die Seilschaft geht parallel zu den Spalten von { $zone } bei { $at }
    .hint = dort gestaffelt gehen, oder andere Linie
    .short = parallel zu den Spalten von { $zone } bei { $at }
    .cure = gestaffelt, oder andere Linie
    .act = gestaffelt gehen, oder andere Linie

two-over-one-gap = { $over } Personen können gleichzeitig über einer Spalte von { $gap } stehen, bei { $spacing } Abstand; { $left } zum Halten
    .hint = { $alone ->
    [yes] mit { $apart } Abstand ist immer nur eine Person darüber, mit { $needed } Seil{ $named ->
        [yes] {" "}(so geplant, auf jedem Abschnitt mit verdeckten Spalten, mit `{ $figure }` unter `[assume]`)
       *[no] { "" }
    }; oder jede einzeln, an einem Fixpunkt gesichert, hinüber
   *[no] so eingebunden ist niemand allein darüber: jede Person einzeln, an einem Fixpunkt gesichert, hinüber, oder eine andere Linie
}
    .short = { $over } Personen gleichzeitig über einer Spalte von { $gap }, { $left } zum Halten
    .cure = { $alone ->
        [yes] mit { $apart } Abstand nur eine darüber, mit { $needed } Seil; oder jede einzeln vom Fixpunkt gesichert hinüber
       *[no] jede einzeln vom Fixpunkt gesichert, oder andere Linie
    }
    .act = einzeln vom Fixpunkt gesichert hinüber

halt-on-hidden-gaps = der Halt von { $minutes } bei { $at } liegt { $beside ->
    [yes] innerhalb des Randstreifens von
   *[no] auf
} { $drawn ->
    [yes] verdeckten Spalten in { $zone }
   *[no] Eis, auf dem keine Zone gezeichnet ist und dessen Spalten niemand kennt
}
    .hint = verteilt und am gestrafften Seil bleiben{ $off ->
    [yes] , oder bei { $rest } rasten, abseits von allem gezeichneten und bekannten Eis
   *[no] { "" }
}
    .short = Halt von { $minutes } bei { $at } { $beside ->
        [yes] neben
       *[no] auf
    } { $drawn ->
        [yes] verdeckten Spalten in { $zone }
       *[no] Eis, das niemand gezeichnet hat
    }
    .act = verteilt am gespannten Seil bleiben

loop-ends-short-of-the-lip = stürzt { $who }, endet eine Lose Rolle { $short } vor dem Spaltenrand, mit dem Seil, wie es getragen wird
    .hint = { $named ->
    [longer] dort in { $rope } einbinden, daran reicht eine Lose Rolle unter den Spaltenrand; oder eine andere Bergung vorsehen
    [spare] { $rope } als Reserve dafür mitnehmen, im Rucksack von jemand anderem; oder eine andere Bergung vorsehen
   *[none] { $anyone ->
        [yes] eine andere Bergung vorsehen, oder ein längeres Seil
       *[no] eine andere Bergung vorsehen, ein längeres Seil, oder { $interface ->
            [page] „{ says-cover-anyone }“ bei „{ draw-trip-cover }“
           *[members] `cover = "anyone"`
        }
    }
}
    .short = Lose Rolle für { $who } endet { $short } vor dem Spaltenrand
    .cure = { $named ->
        [longer] dort in { $rope } einbinden, oder eine andere Bergung
        [spare] { $rope } als Reserve mitnehmen
       *[none] eine andere Bergung, oder ein längeres Seil
    }

rope-thin-as-cord = { $ropes } { $count ->
    [1] ist { $across } dick
   *[other] sind dünner als { $limit }
}: was so dünn ist, ist meist Reepschnur und für keinen Sturz gemacht
    .hint = nur mitnehmen, wenn es für Seilschaften auf Gletschern verkauft wird, mit darauf erprobten Reepschnüren und Klemmen; sonst ein dickeres Seil
    .short = { $ropes }, { $across }: dünn wie Reepschnur
    .cure = nur, wenn für Gletscher verkauft; sonst ein dickeres Seil

no-rope-for-the-reserve = Bremsknoten sperren den belasteten Strang, und jedem Restseil fehlen { $short } zu den { $coil }, die ein Strang zur Bergung braucht: das Seil ist dafür { $rope-short } zu kurz
    .hint = ein längeres Seil, Schmetterlingsknoten statt dicker Knoten, eine lange Schlinge, oder die Knoten enger
    .short = jedem Restseil fehlen { $short } zu { $coil } für die Bergung, das Seil ist { $rope-short } zu kurz
    .act = { $rope-short } Seil zu wenig für eine Bergung: umkehren, oder einzeln vom Fixpunkt gesichert hinüber
    .too = { $rope-short } Seil zu wenig für eine Bergung

reserve-left-short = Bremsknoten sperren den belasteten Strang, und jedem Restseil fehlen { $short } zu den { $coil }, die ein Strang zur Bergung braucht
    .hint = längere Restseile, eine lange Schlinge, oder ein Regelsatz, der sie nach `reach_factor` bemisst
    .short = jedem Restseil fehlen { $short } zu { $coil } für die Bergung neben den Knoten

spacing-near-limit = der Abstand von { $spacing } liegt nahe am größten, { $cap }
    .short = { $spacing } Abstand liegt nahe am größten, { $cap }

rope-near-limit = { $rope } hat { $spare } übrig
    .short = { $rope } hat nur { $spare } übrig

knots-doubtful = für Bremsknoten liegt vielleicht zu wenig Schnee in { $zones }: knüpfen, aber nicht auf sie zählen
    .short = vielleicht zu wenig Schnee für Bremsknoten in { $zones }
    .cure = knüpfen, aber nicht auf sie zählen
    .act = nicht auf die Knoten zählen

fewer-knots-than-a-layout = { $tied ->
    [one] nur 1 Bremsknoten
   *[other] nur { $tied } Bremsknoten
} je Satz, wo { $layout } dazugehören: jeder hält seinen Teil und nicht mehr
    .hint = den ganzen Satz knüpfen, mit mehr Abstand gehen, oder eine dritte Person
    .short = { $tied ->
        [one] nur 1 Bremsknoten
       *[other] nur { $tied } Bremsknoten
    } je Satz, wo { $layout } dazugehören

snow-depth-not-given = keine Schneehöhe ist angegeben in { $zones }: ob die Knoten dort greifen, ist unbekannt
    .hint = { -snow-depth } angeben
    .short = ob Knoten greifen, ist unbekannt: keine Schneehöhe ist angegeben
    .cure = { -snow-depth }

knots-do-not-bite-everywhere = Bremsknoten greifen nicht in { $zones }
    .short = Bremsknoten greifen nicht in { $zones }

knots-always-and-none-tied = `knots` = `always`, und hier sind keine geknüpft: { $why }
    .short = Bremsknoten sind gewünscht und keine geknüpft: { $why }

pair-without-knots = eine Person allein muss halten, ohne Bremsknoten: { $why }
    .hint = eine dritte Person, oder eine andere Linie
    .short = eine allein muss halten, ohne Bremsknoten: { $why }

cut-off-by-route-end = { $end ->
    [begin] die Route beginnt auf dem Eis: der Abschnitt ist dort abgeschnitten
   *[end] die Route endet auf dem Eis: der Abschnitt ist dort abgeschnitten
}
    .short = { $end ->
        [begin] die Route beginnt auf dem Eis
       *[end] die Route endet auf dem Eis
    }

last-person-still-on-ice = die Route endet, bevor die letzte Person vom Eis und seinem Randstreifen ist
    .short = die Route endet, während die letzte Person noch auf dem Eis ist

jump-over-ice = { $count ->
    [1] die Linie springt { $longest } bei { $at }, gerade über { $ice }: für dieses Eis ist nichts geplant
   *[other] die Linie springt { $count }-mal, zusammen { $all }, gerade über { $ice }; der längste Sprung ist { $longest } bei { $at }: für dieses Eis ist nichts geplant
}
    .hint = wird dort gegangen, das fehlende Stück der Linie zeichnen
    .short = { $count ->
        [1] die Linie springt { $longest } bei { $at }, über { $ice }: nicht geplant
       *[other] die Linie springt { $count }-mal über { $ice }, am weitesten { $longest } bei { $at }: nicht geplant
    }
    .cure = wird dort gegangen, zeichnen

stage-gap-over-ice = vom Ende der Etappe { $before } zum Anfang der Etappe { $after } sind es gerade { $length } über { $ice }: für dieses Eis ist nichts geplant
    .hint = wird dort gegangen, als Stück einer Etappe zeichnen
    .short = zwischen Etappe { $before } und { $after } { $length } über { $ice }: nicht geplant
    .cure = wird dort gegangen, zeichnen

unroped-on-ice-by-your-word = ohne Seil auf Eis, so vorgegeben: { $ice }
    .short = kein Seil auf Eis, so vorgegeben: { $ice }
ice-undrawn = Eis, auf dem keine Zone gezeichnet ist

ice-without-a-gap-width = Eis ohne Spaltenbreite, { $spans }: { $roped ->
    [yes] am Seil, mindestens mit dem Grundabstand, Spalten und Schnee unbekannt
   *[no] nur gemeldet, so vorgegeben
}
    .hint = dort eine Zone mit den erwarteten Spalten zeichnen
    .short = niemand gab eine Spaltenbreite an, { $spans }: { $roped ->
        [yes] am Seil wie üblich
       *[no] nur gemeldet, so vorgegeben
    }
    .cure = eine Zone mit den erwarteten Spalten zeichnen
ice-span = { $span }

bridges-late = { $just ->
    [yes] { $zone } wird knapp nach { $until } verlassen; nur bis dann soll es über Schneebrücken gehen
   *[no] { $zone } wird um { $left } verlassen; über Schneebrücken soll es nur bis { $until } gehen
}
    .hint = { $known ->
        [yes] bis { $start } aufbrechen, um rechtzeitig von allen Schneebrücken der Etappe herunter zu sein{ $turns ->
            [yes] , oder rechtzeitig umkehren
           *[no] { "" }
        }
        [unreckoned] früher aufbrechen, oder rechtzeitig umkehren; ohne Höhen ist beides nicht gerechnet
        [under-way] { $turns ->
            [yes] rechtzeitig umkehren
            [unbelayed] jetzt umkehren, wenn auf dem Rückweg nicht zu sichern ist; ist dort so oft zu sichern wie auf dem Hinweg, ist keine Umkehr rechtzeitig von ihnen herunter: dann { way-off-ice }
           *[no] { way-off-ice }: keine Umkehr von hier ist rechtzeitig von allen herunter
        }
       *[no] { $turns ->
            [yes] kein Aufbruch an diesem Tag ist früh genug: rechtzeitig umkehren, oder eine andere Linie nehmen
            [unbelayed] kein Aufbruch an diesem Tag ist früh genug, und keine Umkehr, Sichern auch auf dem Rückweg gezählt: eine andere Linie nehmen
           *[no] kein Aufbruch an diesem Tag ist früh genug, und keine Umkehr: eine andere Linie nehmen
        }
    }
    .short = nach { $until } noch auf Schneebrücken
    .cure = { $known ->
        [yes] bis { $start } aufbrechen{ $turns ->
            [yes] , oder rechtzeitig umkehren
           *[no] { "" }
        }
        [unreckoned] früher aufbrechen, oder rechtzeitig umkehren; ohne Höhen ist beides nicht gerechnet
        [under-way] { $turns ->
            [yes] rechtzeitig umkehren
            [unbelayed] jetzt umkehren, wenn auf dem Rückweg nicht zu sichern ist, sonst { way-off-ice }
           *[no] { way-off-ice }: keine Umkehr ist für alle rechtzeitig
        }
       *[no] { $turns ->
            [yes] rechtzeitig umkehren, oder eine andere Linie: kein Aufbruch an diesem Tag ist früh genug
            [unbelayed] eine andere Linie: kein Aufbruch an diesem Tag ist früh genug, und keine Umkehr, Sichern auch auf dem Rückweg gezählt
           *[no] eine andere Linie: kein Aufbruch an diesem Tag ist früh genug, und keine Umkehr
        }
    }
    .act = spät für Schneebrücken: jede sondieren
way-off-ice = { $off ->
    [back] zurück zu { $place }, um { $at } von den Brücken herunter{ $more ->
        [yes] , und dort warten (jenseits kommen weitere)
       *[no] { "" }
    }
    [on] weiter zu { $place }, um { $at } von den Brücken herunter{ $more ->
        [yes] , und dort warten (jenseits kommen weitere)
       *[no] { "" }
    }
    [begin] zurück, wo die Linie beginnt, um { $at } dort (was davor liegt, ist nicht gezählt)
   *[not-on] diesem Eis fernbleiben
}

bridges-in-soft-snow = der Schnee ist weich, neu oder nass: Brücken sind zu jeder Stunde schwach, auch früh
    .hint = jede sondieren, wo es zweifelhaft ist sichern, oder auf Frost warten: dann tragen Brücken besser, und Stürze sind schlechter zu halten
    .short = Brücken aus weichem Schnee sind zu jeder Stunde schwach
    .cure = jede sondieren, oder auf Frost warten (dann sind Stürze schlechter zu halten)

slower-bridges-late = { $just ->
    [yes] eine langsamere Gruppe ist von den letzten Schneebrücken knapp nach { $until } herunter
   *[no] eine langsamere Gruppe ist von den letzten Schneebrücken um { $left } herunter, nach { $until }
}

back-late = { $just ->
    [yes] die Linie ist knapp nach { $by } zu Ende; bis dann will die Leitung zurück sein
   *[no] die Linie ist um { $arrival } zu Ende; die Leitung will bis { $by } zurück sein
}
    .hint = { $known ->
        [unreckoned] früher aufbrechen, oder rechtzeitig umkehren; ohne Höhen ist beides nicht gerechnet
        [yes] { $turns ->
            [yes] spätestens { $start } aufbrechen, oder rechtzeitig umkehren
           *[no] spätestens { $start } aufbrechen
        }
        [no] { $turns ->
            [yes] kein Aufbruch an diesem Tag ist früh genug, mit den Brücken gerechnet: rechtzeitig umkehren, oder eine andere Linie nehmen
            [unbelayed] kein Aufbruch an diesem Tag ist früh genug, mit den Brücken gerechnet, und keine Umkehr, Sichern auch auf dem Rückweg gezählt: eine andere Linie nehmen
           *[no] kein Aufbruch an diesem Tag ist früh genug, mit den Brücken gerechnet, und keine Umkehr: eine andere Linie nehmen
        }
       *[under-way] { $turns ->
            [yes] rechtzeitig umkehren
            [unbelayed] jetzt umkehren, wenn auf dem Rückweg nicht zu sichern ist; ist dort so oft zu sichern wie auf dem Hinweg, ist keine Umkehr rechtzeitig: dann später zurück sein, oder bleiben, wo es sicher ist
           *[no] keine Umkehr von hier ist rechtzeitig, mit den Brücken gerechnet: später zurück sein, oder bleiben, wo es sicher ist
        }
    }
    .short = { $just ->
        [yes] zu Ende knapp nach { $by }
       *[no] zu Ende um { $arrival }, nach { $by }
    }

very-long-stage = { $time } unterwegs in einer Etappe, Rasten und Sichern nicht gezählt: mehr als { $most } ohne Schlaf
    .hint = der Linie jedes Tages einen eigenen Track geben, bis zum Schlafplatz
    .short = { $time } unterwegs in einer Etappe, Rasten und Sichern nicht gezählt
    .cure = ein eigener Track für jeden Tag

slower-back-late = { $just ->
    [yes] eine langsamere Gruppe ist knapp nach { $by } am Ende
   *[no] eine langsamere Gruppe ist um { $arrival } am Ende, nach { $by }
}

climb-partly-unknown = auf { $unknown } der Linie ist keine Höhe bekannt, zuerst ab { $first }: Anstiege und Zeiten sind zu klein, und keine Uhrzeit ist zurückgerechnet
    .hint = eine Route mit Höhen, oder ein Geländemodell, das die Linie abdeckt
    .short = keine Höhe auf { $unknown } der Linie, zuerst ab { $first }: die Zeiten sind zu klein
    .cure = eine Route mit Höhen, oder ein Geländemodell

hour-before-start = { $of ->
    [bridges_until] über Brücken soll es nur bis { $at } gehen
   *[back_by] die Linie soll bis { $at } zu Ende sein
}, das ist vor dem Start um { $start }: als derselbe Tag genommen
    .hint = für den nächsten Morgen `{ $name } = "{ $at } +1"` angeben; sonst früher aufbrechen
    .short = { $of ->
        [bridges_until] auf Brücken nur bis { $at }
       *[back_by] zu Ende bis { $at }
    }, vor dem Start um { $start }: als derselbe Tag genommen

line-turns-back = die Linie kehrt bei { $at } um: ihr Rückweg liegt auf { $back } auf ihr

dark-on-the-rope = { $rises ->
    [yes] { $since ->
        [yes] dunkel von { $from } bis { $until }
       *[no] dunkel bis { $until }
    }
   *[no] { $since ->
        [yes] dunkel ab { $from }, und am Tag danach keine Sonne
       *[no] den ganzen Tag keine Sonne
    }
} bei ebenem Horizont (Reda and Andreas 2004): { $time } der Abschnitte am Seil wie geplant

sun-in-utc = ein Tag ist angegeben und kein `utc_offset`: Auf- und Untergang der Sonne stehen in UTC
    .hint = `utc_offset = "+02:00"` angeben, wie die Uhren der Tour gehen

# Vom Planen: eine Zone. Was für eine ganze Datei angenommen wurde, steht bei den Fehlern.
gap-assumed-in-zone = keine Spaltenbreite ist angegeben für { $zone }; { $gap } sind angenommen
    .hint = { -gap-width } angeben
    .short = keine Spaltenbreite ist angegeben: { $gap } angenommen
    .cure = { -gap-width }

coil-is-a-burden = vorn und hinten trägt je eine Person { $coil } Restseil, etwa { $mass }; mehr als { $most } oder { $most-mass } sind eine Last
    .hint = mehr Leute am Seil, eine lange Schlinge in der Losen Rolle, oder ein dünneres Seil

avalanche-terrain = { $of ->
    [ground] das Gelände hat { $slope } bei { $at }: Lawinengelände; dafür ist der Lagebericht da
   *[line] { $slope } bei { $at }: Lawinengelände; dafür ist der Lagebericht da
}

knots-block-the-loaded-strand = eine Bergung braucht hier einen eigenen Strang: Bremsknoten sperren den belasteten

haul-beyond-those-left = stürzt { $who }: { $answer }
    .hint = eine zweite Seilschaft in der Nähe, Seilrollen, oder eine Person, die am Seil selbst heraussteigen kann

model-has-no-answer = das Modell von Stürzen und Bergungen hat hier keine Antwort: { $reason }
    .short = zu Stürzen und Bergungen lässt sich nichts sagen: { $reason }

thin-snow-on-hidden-gaps = { $zone } hat verdeckte Spalten unter { $snow } Schnee: so dünne Brücken tragen vielleicht niemanden
    .hint = voraus sondieren und einzeln am straffen Seil gehen, oder eine andere Linie
    .short = { $zone }: Brücken aus { $snow } Schnee tragen vielleicht niemanden

snow-on-bare-ice = { $zone } ist als blank angegeben, und { $snow } Schnee liegt darauf: geplant als Schnee, der Spalten verdeckt
    .hint = sagen, was es ist: { $interface ->
        [page] die Oberfläche Schnee, oder kein „Schnee auf dem Eis“
       *[members] `surface` = `snow`, oder kein `snow_depth_m`
    }
    .short = { $zone } ist als blank angegeben, mit { $snow } Schnee darauf: geplant als Schnee

bare-ice-two-views = { $roped ->
    [yes] { $zone } ist Blankeis, hier am Seil; viele gehen ohne, wo jede Spalte sichtbar ist, weil ein Ausrutscher alle mitreißt und keine Seilschaft einen Sturz auf Eis hält
   *[no] { $zone } ist Blankeis, hier ohne Seil; andere seilen an, wo es stark zerrissen ist
}
    .hint = entscheiden: { $interface ->
        [page] „immer“ oder „nie“ in der Zone legt es fest
       *[members] `rope` = `always` oder `never` in der Zone legt es fest
    }
    .short = { $zone } ist Blankeis, { $roped ->
        [yes] hier am Seil: ein Ausrutscher reißt alle mit
       *[no] hier ohne Seil; andere seilen an, wo es stark zerrissen ist
    }
    .cure = vor dem Aufbruch entscheiden: Seil oder nicht
    .act = Seil oder nicht: hier entscheiden, nach dem, was zu sehen ist

strike-taken-as-exact = { $zone } sagt nicht, wie sicher ihr Spaltenverlauf ist: er gilt als genau
    .hint = `strike_uncertainty_deg` angeben; ein paar Grad können den Weg über eine Spalte verlängern

slope-unknown = keine Höhen sagen, wie steil es zum Spaltenrand ist: Stürze sind wie im Flachen gerechnet
    .hint = ein Geländemodell angeben{ -by-terrain }

slope-partly-unknown = { $count ->
    [1] auf { $longest } sind keine Höhen bekannt: wie steil es dort ist, weiß niemand; was zu Neigung und Stürzen dasteht, gilt für den Rest
   *[other] auf { $all } in { $count } Stücken, das längste { $longest }, sind keine Höhen bekannt: wie steil es dort ist, weiß niemand; was zu Neigung und Stürzen dasteht, gilt für den Rest
}
    .hint = ein Geländemodell angeben{ -by-terrain }

strike-not-given = { $zone } gibt keinen Spaltenverlauf an: ihre Spalten gelten als gerade gequert

observed-long-before = { $count ->
    [1] { $zones } ist { $days } Tage vor der Tour beobachtet ({ $day })
   *[other] { $count } Zonen sind bis zu { $days } Tage vor der Tour beobachtet ({ $day }): { $zones }
}; Spalten und Brücken sind seither anders
    .hint = vor dem Aufbruch noch einmal schauen und in die Zonen schreiben, was zu sehen ist
    .short = { $count ->
        [1] { $zones } ist { $days } Tage vor der Tour beobachtet
       *[other] { $count } Zonen sind bis zu { $days } Tage vor der Tour beobachtet
    }

zone-not-met = { $count ->
    [1] die Route berührt diese Zone nicht
   *[other] die Route berührt { $count } der Zonen nicht: { $numbers }
}

no-inventory = kein Gletscherinventar ist angegeben: der Plan kennt kein Eis außer den gezeichneten Zonen
    .hint = eines angeben{ -by-glaciers }

no-heights = die Route gibt keine Höhen an: weder Anstieg noch Neigung noch Zeit für den Anstieg sind bekannt
    .hint = ein Geländemodell angeben{ -by-terrain }

on-skis = auf Ski gehen viele bei gutem Schnee ohne Seil und seilen bei Anzeichen von Gefahr an; dies ist die Seileinteilung, und hinunter am Seil ist nicht schneller gerechnet als zu Fuß

no-rope-named = kein Seil ist genannt: der Plan sagt, welche Länge mitkommt
    .hint = die Seile nennen, die ihr habt{ -by-rope }

-heights-apart-hint = eine bekannte Höhe, etwa eine Hütte, mit der Karte vergleichen; Empfänger und Modelle zählen vielleicht von verschiedenen Nullen

heights-compared = das Geländemodell liegt im Median { $median } den Höhen der Routendatei; schlimmstenfalls { $worst } ihnen, bei { $at }; für Anstiege und Zeiten gilt: { $used }, für Neigungen das Steilere von beiden

heights-far-apart = das Geländemodell liegt im Median { $median } den Höhen der Routendatei; schlimmstenfalls { $worst } ihnen, bei { $at }; für Anstiege und Zeiten gilt: { $used }, für Neigungen das Steilere von beiden
    .hint = { -heights-apart-hint }
    .short = die Höhen von Datei und Geländemodell gehen auseinander: das Modell liegt { $worst } ihnen bei { $at }
    .cure = eine bekannte Höhe mit der Karte vergleichen

ascents-apart = Anstieg { $file } nach den Höhen der Routendatei, { $model } nach denen des Geländemodells; für Anstiege und Zeiten gilt: { $used }
    .hint = einen bekannten Anstieg vergleichen; `climb_cells` und `ascent_threshold_m` in der Tourdatei sagen, was zählt

terrain-void = { $where ->
    [nowhere] das Geländemodell hat keine Höhe längs { $stage }
    [model] das Geländemodell hat für { $metres } der Linie keine Höhe, zuerst ab { $first }; Anstiege gehen dort gerade hinüber
   *[file] das Geländemodell hat für { $metres } der Linie keine Höhe, zuerst ab { $first }; dort gelten die Höhen der Routendatei
}
    .hint = { $other ->
    [yes] dort fehlen Neigungen des Geländes; { -more-terrain }
   *[no] ein Modell dazunehmen, das die Linie abdeckt; { -more-terrain }
}
    .short = { $where ->
        [nowhere] das Geländemodell hat hier keine Höhe
        [model] das Geländemodell hat auf { $metres } keine Höhe, zuerst ab { $first }
       *[file] das Geländemodell hat auf { $metres } keine Höhe, zuerst ab { $first }: die der Routendatei gelten
    }

terrain-flattens = Neigungen des Geländes kommen aus einem Modell mit Zellen von { $cell }: kurze Stufen und Wände sind geglättet; nichts wurde deshalb gelockert

strike-proposed = { $zone } gibt keinen Spaltenverlauf an; aus dem Gelände geschätzt, quer zur Falllinie: { $strike } ± { $doubt } ({ $counts ->
    [yes] gezählt, so vorgegeben
   *[no] nicht verwendet
})

may-run-along = { $count ->
    [1] die Linie quert auf { $longest } am Hang: die Seilschaft geht vielleicht parallel zu Spalten, die quer zur Falllinie liegen
   *[other] die Linie quert { $count }-mal am Hang, zusammen { $all }, am längsten { $longest }: die Seilschaft geht vielleicht parallel zu Spalten, die quer zur Falllinie liegen
}
    .hint = den Spaltenverlauf aus der Ferne ansehen und { -strike } angeben; wo es längs geht, gestaffelt gehen oder eine andere Linie nehmen

convex-ground = das Eis kippt ins Steile bei { $places }: hier nach Spalten schauen; auch was das Modell nicht zeigt, kann zerrissen sein
convex-place = { $at } (darunter { $steeper } steiler)

## Wohin ein Befund gehört

place-leg = Abschnitt { $leg }
place-leg-of-team = Abschnitt { $leg } ({ $count ->
    [one] Seilschaft { $teams }
   *[other] Seilschaften { $teams }
})
place-legs = { $count ->
    [1] Abschnitt { $legs }
   *[other] Abschnitte { $legs }
}
place-on-legs = { $count ->
    [1] Abschnitt { $legs }
   *[other] den Abschnitten { $legs }
}
place-more = { $named } und { $more } mehr
place-stage = Etappe { $stage }
place-stage-named = Etappe { $stage } „{ $name }“
place-zone = Zone { $zone }
place-zone-named = Zone { $zone } „{ $name }“
place-glacier = Gletscher { $glacier } des Inventars
place-glacier-named = Gletscher { $glacier } „{ $name }“ des Inventars
place-route = Route
place-zones = Zonen
place-ropes = Seile
place-terrain = Gelände

## Wie schwer ein Befund wiegt

level-error = Falsch
level-stop = Stopp: hier nicht wie geplant
level-outside = Nicht im Rahmen der Grenzen
level-look = Prüfen
level-note = Gut zu wissen
