### Womit jeder Plan zu lesen ist.

caution-judged-on-the-spot = Schneebrücken und Spaltenbreiten werden vor Ort beurteilt; wo das Gelände anders ist, ist der Plan falsch.
caution-learned-from-people = Seiltechnik lernt man von Menschen und übt sie vor der Tour.
caution-pulled-off = Auf steilem hartem Schnee kann ein Ausrutscher eine ganze Seilschaft ohne Fixpunkte mitreißen.
caution-through-the-day = Schneebrücken werden im Lauf des Tages schwächer.
caution-never-alone = Nie allein.
caution-local-rules = Was Bergführer am Ort, Schutzgebiete und Bergrettung sagen, geht diesem Plan vor.
caution-assumptions-only = Eine gerechnete Antwort gilt nur für ihre Annahmen; diese lesen.
