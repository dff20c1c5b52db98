# Das Buch nach Fahrzeugen, nach Messmitteln, und woher eine Größe kommt.

## Fahrzeuge
cars-empty = Noch kein Fahrzeug war hier. Am Fahrzeug einen Auftrag beginnen: Von da an steht das Fahrzeug hier.
cars-not-found = Kein Fahrzeug, kein Kürzel und keine Auftragsnummer passt zu dieser Suche.
car-row = Besuche: { $count }. { $last }
car-practice = Simuliertes Fahrzeug der Nummer { $seed }.
car-visit = { $job }. Angemeldet: { $people }. Abweichungen: { $count }
car-learned = Gelernt am { $on } (Tage seither: { $days }) aus dem, was gedreht und abgelesen wurde. Der nächste Besuch beginnt damit. Jeder Wert mit ± erweiterter Unsicherheit (k = 2).
car-learned-none = Von diesem Fahrzeug ist noch nichts gelernt. Ein versiegelter Auftrag, in dem Federteller gedreht wurden, lehrt es.
car-learned-settle = Ein Setzen bewegt { $kg } vorne links entlang des Diagonalmusters (ein Sigma).
learned-spring = Federrate, { $corners }
learned-ratio = Federübersetzung, { $corners }
learned-of-entered = { $percent } ± { $u } des Eingegebenen; vorher galt es als auf ± { $before } bekannt
learned-of-assumed = { $percent } ± { $u } des Angenommenen, denn eingegeben wurde nichts; vorher war es auf ± { $before } bekannt
car-left = Wie übergeben am { $on }, Auftrag { $number }; daneben wie vorgefunden.
car-left-none = Noch wurde nichts übergeben. Die Einstellungen stehen hier, sobald ein Auftrag an diesem Fahrzeug versiegelt ist.
refused-no-such-car = Dieses Fahrzeug steht nicht im Buch. Noch einmal in die Liste der Fahrzeuge sehen.

## Messmittel
instruments-empty = Noch ist kein Messmittel aufgeschrieben. Die Annahme fragt bei jedem Auftrag nach Waagen, Laser und Messgeräten; von da an stehen sie hier.
instrument-jobs = Aufträge, in denen es verwendet wurde: { $count }
due-in-date = Gültig: fällig am { $due } (Tage bis dahin: { $days })
due-overdue = Überfällig: war fällig am { $due } (Tage seither: { $days })
due-unknown = Unbekannt: als Fälligkeit steht „{ $text }“ da, nicht etwa 2027-03-31
due-not-recorded = Unbekannt: keine Fälligkeit aufgezeichnet
calibrated-not-recorded = Nicht aufgezeichnet: die Annahme fragt nach dem Tag, an dem sie fällig ist
checks-not-recorded = Nicht aufgezeichnet: kein Schritt fragt nach einer Prüfung
check-zeros = Nullpunkte der leeren Waagen { $count } Mal abgelesen, zuletzt { $at }, { $by } (Auftrag { $job }, Nr. { $entry })
check-set-ups = Waagen von zwei Aufstellungen aus gelesen, höchstens { $mm } auseinander: { $at }, { $by } (Auftrag { $job }, Nr. { $entry })
check-turned = Umgedreht am Rad angesetzt: { $direct } und { $turned }: { $at }, { $by } (Auftrag { $job }, Nr. { $entry })

## Woher eine Größe kommt
figure-load-kg = Last { $corner }
figure-height-mm = Höhe { $corner }
origin-found = Wie vorgefunden: { $value }
origin-left = Wie übergeben: { $value }
origin-settle = Setzvorgang { $number } von { $count }
origin-looks = { $typed } (Mittel { $mean })
origin-no-instrument = Messmittel nicht aufgezeichnet
stood-front-link-absent = kein Stabilisator vorn
stood-front-link-fixed = Koppelstange vorn fest
stood-front-link-connected = Koppelstange vorn montiert
stood-front-link-released = Koppelstange vorn gelöst
stood-rear-link-absent = kein Stabilisator hinten
stood-rear-link-fixed = Koppelstange hinten fest
stood-rear-link-connected = Koppelstange hinten montiert
stood-rear-link-released = Koppelstange hinten gelöst
stood-ballast-out = ohne Ballast
stood-ballast-strapped = Ballast verzurrt
stood-pressures-as-found = Drücke wie vorgefunden
stood-pressures-working = Arbeitsdrücke
stood-pressures-cold = Kaltdrücke
stood-fuel-as-found = Kraftstoff wie vorgefunden
stood-fuel-agreed = Kraftstoff und Flüssigkeiten wie vereinbart
stood-collars-as-found = Federteller wie vorgefunden
stood-collars-turned = Federteller gedreht seit Beginn des Auftrags: { $turns }
refused-no-such-figure = Diese Größe hat der Auftrag nicht. Noch einmal in seine Größen sehen.
