# Was eingetragen wird: Beschriftungen, Aussagen zum Bestätigen (jede kann wahr sein oder nicht), Antworten zur Auswahl.
# Zuerst wird input-STEP-INPUT gesucht, dann input-INPUT.

## Annahme: das Fahrzeug

input-use = Verwendung des Fahrzeugs
option-road = Straße
option-fast-road = Straße, sportlich gefahren
option-track = Rundstrecke

input-driver-side = Fahrersitz
option-left = Links
option-right = Rechts

input-wheelbase = Radstand
input-track = Spurweite
input-total = Gesamtmasse auf den Waagen mit Fahrerballast
input-cg-height = Höhe des Schwerpunkts
input-roll-axis-height = Höhe der Rollachse am Schwerpunkt

input-drive = Angetriebene Räder
option-front-drive = Vorn
option-rear-drive = Hinten
option-all-drive = Alle vier

input-springing = Federung
option-each-wheel = An jedem Rad Federteller oder verstellbares Federbein
option-not-adjustable = Nicht einstellbar: messen und beurteilen
option-single-spring = Eine Feder für zwei Räder: messen und beurteilen
option-interconnected = Verbunden: messen und beurteilen
option-active = Aktiv: messen und beurteilen

input-high-voltage = Hochvolt an Bord
option-no-high-voltage = Nein
option-has-high-voltage = Hochvolt an Bord

input-parking-brake = Feststellbremse
option-mechanical-brake = Mechanisch
option-electric-brake = Elektrisch

input-extinguisher = Fest eingebauter Feuerlöscher
option-no-extinguisher = Keiner
option-plumbed-extinguisher = Fest eingebaut

input-lifting-mode = Hebebühnenmodus der Federung
option-no-lifting-mode = Das Fahrzeug hat keinen und braucht keinen
option-has-lifting-mode = Das Fahrzeug hat einen

input-bar-front = Stabilisator vorn
option-front-none = Kein Stabilisator
option-front-fixed = Mit festen Koppelstangen
option-front-adjustable = Mit einstellbarer Koppelstange
input-front-bar-rate = Rate des Stabilisators vorn an den Rädern (0: unbekannt)
input-front-link-lead = Koppelstange vorn: Änderung am Rad je Umdrehung (0: unbekannt)

input-bar-rear = Stabilisator hinten
option-rear-none = Kein Stabilisator
option-rear-fixed = Mit festen Koppelstangen
option-rear-adjustable = Mit einstellbarer Koppelstange
input-rear-bar-rate = Rate des Stabilisators hinten an den Rädern (0: unbekannt)
input-rear-link-lead = Koppelstange hinten: Änderung am Rad je Umdrehung (0: unbekannt)

input-ratio-way = Von den Federn bekannt
option-ratio-spring-per-wheel = Rate, Verhältnis Feder / Rad
option-ratio-wheel-per-spring = Rate, Verhältnis Rad / Feder
option-ratio-above-one = Rate, Feder / Rad über 1,2
option-rate-known = Nur die Rate
option-springs-unknown = Nichts

input-sprung-like = Gefedert wie
option-like-road = Ein Straßenauto
option-like-fast-road = Ein Rallye- oder Sportfahrwerk
option-like-track = Ein Rundstreckenauto
option-like-downforce = Ein Auto mit viel Abtrieb
option-like-any = Weiß niemand

input-spring = Federrate

input-motion-ratio = Übersetzungsverhältnis
input-tyre = Reifenrate
input-unsprung = Ungefederte Masse einer Ecke
input-tyre-radius = Radius des unbelasteten Reifens

input-pitch = Tellerweg je Umdrehung
input-steps-per-turn = Schritte je Umdrehung
input-hand = Gangrichtung des Gewindes
option-right-hand = Rechtsgewinde
option-left-hand = Linksgewinde
input-spring-seat = Lage der Feder
option-spring-above = Über dem Teller
option-spring-below = Unter dem Teller
input-turns-up = Umdrehungen frei, die heben
input-turns-down = Umdrehungen frei, die senken
input-fixed-point = Messpunkt der Tellerstellung
input-turn-under-load = Drehen unter Last
option-never-under-load = Nie unter Last
option-maker-allows-load = Vom Hersteller schriftlich erlaubt
input-reach = Zugang zu den Federtellern
option-reach-wheels-on = Räder montiert
option-reach-wheels-off = Räder abgenommen

## Annahme: was vereinbart wurde

input-cold = Vereinbarter Druck, kalt
input-working = Vereinbarter Druck, Betrieb
input-points = Messpunkte der Höhen
input-agreed-height = Vereinbarte Fahrzeughöhe
input-front-axle = Vorderräder
option-front-independent = Einzeln aufgehängt
option-front-beam = An einer Starrachse
input-front-spring-base = Abstand der vorderen Federn quer zum Fahrzeug
input-rear-axle = Hinterräder
option-rear-independent = Einzeln aufgehängt
option-rear-beam = An einer Starrachse
input-rear-spring-base = Abstand der hinteren Federn quer zum Fahrzeug
input-stops = Federweg bei vereinbarter Höhe
option-stops-unknown = Nicht bekannt
option-stops-known = Bekannt
input-bump-travel = Radweg bis zum Anschlagpuffer
input-droop-travel = Radweg bis ganz ausgefedert
input-travel-kept = Radweg, der in beide Richtungen frei bleibt
input-body = Torsionssteifigkeit der Karosserie
option-body-stiff = Nicht bekannt, als steif angenommen
option-body-twists = Bekannt
input-torsion = Karosserie, Vorderachse gegen Hinterachse
input-agreed-camber = Vereinbarter Sturz
input-agreed-toe = Vereinbarte Spur eines Rades, halbe Gesamtspur der Achse
input-agreed-caster = Vereinbarter Nachlauf
input-angle-window = Fenster des Sturzes, plus oder minus
input-caster-window = Fenster des Nachlaufs, plus oder minus
input-toe-window = Fenster der Spur eines Rades, plus oder minus
input-toe-per-turn = Eine Umdrehung: Spur des Rades
input-toe-steps = Spur: Schritte je Umdrehung
input-camber-per-turn = Eine Umdrehung: Sturz
input-camber-steps = Sturz: Schritte je Umdrehung
input-caster-per-turn = Eine Umdrehung des Nachlaufverstellers
input-caster-steps = Nachlauf: Schritte je Umdrehung
input-inclination = Spreizung der Lenkachse
input-bump-camber = Sturz je mm Einfedern
input-bump-toe = Spur je mm Einfedern
input-bump = Kurve über den Federweg
option-bump-unknown = Nicht bekannt
option-bump-known = Bekannt
option-bump-measured = Gemessen
input-bump-travelled = Radweg beim Einfedern
input-bump-camber-change = Sturz änderte sich um
input-bump-toe-change = Spur änderte sich um
input-couplings = Was die Versteller nebenbei verschieben
option-couplings-unknown = Nicht bekannt
option-couplings-known = Bekannt
input-camber-moves-toe = Eine Umdrehung Sturz: Spur
input-caster-moves-camber = Eine Umdrehung Nachlauf: Sturz
input-caster-moves-toe = Eine Umdrehung Nachlauf: Spur
input-cross-target = Gewünschtes Kreuzgewicht, vorn rechts und hinten links
input-cross-window = Fenster des Kreuzgewichts, plus oder minus
input-axle-window = Fenster von links minus rechts an einer Achse, plus oder minus
input-height-window = Fenster der Höhen, plus oder minus
input-side-limit = Größter Höhenunterschied zwischen den Seiten
input-first = Wunsch mit Vorrang
option-cross-first = Kreuzgewicht: gleiches Verhalten links und rechts
option-front-first = Vorderachse ausgeglichen: Bremsen
option-rear-first = Hinterachse ausgeglichen: Traktion beim Anfahren
input-driver = Masse des Fahrers mit Ausrüstung
input-fuel-level = Vereinbarter Kraftstoffstand
input-fluids = Vereinbarter Stand der anderen Flüssigkeiten

## Annahme: Arbeitsplatz und Messgeräte

input-lift = Art des Anhebens
option-four-post = Viersäulenbühne
option-two-post = Zweisäulenbühne
option-stands = Wagenheber und Böcke
input-freeing = Freisetzen der Reifen
option-slip-plates = Schiebeplatten
option-run-offs = Rollen über ebene Rollflächen
input-wait = Wartezeit nach jedem Setzen
input-checker = Wer prüft
input-pads-id = Waagen
input-pads-due = Waagen, Kalibrierung fällig
input-pads-resolution = Waagen, Auflösung
input-pads-zero = Waagen, Nullpunkt über den Auftrag, ±
input-pads-calibration = Waagen, Kalibrierung, ± der Last
input-laser-id = Laser
input-laser-due = Laser, Kalibrierung fällig
input-laser-accuracy = Laser, Genauigkeit über die Waagen
input-height-gauge-id = Höhenmessgerät
input-height-gauge-due = Höhenmessgerät, Kalibrierung fällig
input-pressure-gauge-id = Druckmessgerät
input-pressure-gauge-due = Druckmessgerät, Kalibrierung fällig
input-angle-gauge-id = Winkelmessgerät
input-angle-gauge-due = Winkelmessgerät, Kalibrierung fällig
input-gauge-accuracy = Genauigkeit des Neigungsmessers
input-plate-accuracy = Genauigkeit einer Drehplatte
input-plate-scale = Genauigkeit der Skala einer Drehplatte
input-line-accuracy = Genauigkeit eines Abstands zur Linie
input-across-accuracy = Genauigkeit eines Abstands quer zum Fahrzeug

## Rundgang und erstes Anheben

input-tyres-match = Die Reifen entsprechen der Vereinbarung
input-tyres-sound = Die Reifen sind in Ordnung
input-no-leaks = Nichts leckt
input-no-fuel-smell = Es riecht nicht nach Kraftstoff
input-no-loose-parts = Kein Teil hängt lose
input-extinguisher-pinned = Der Sicherungsstift steckt, und sein Anhänger hängt
input-maker-high-voltage = Das Herstellerverfahren wurde bis zum Ende befolgt
input-trained-high-voltage = Die ausführende Person ist dafür geschult und befugt
input-lifting-mode-set = Der Hebebühnenmodus ist an, und das Fahrzeug zeigt es
input-points-found = Jeder Aufnahmepunkt ist gefunden und in Ordnung
input-points-source = Stelle in den Herstellerdaten
input-lift-in-service = Bühne oder Heber und Böcke sind geprüft und nicht überfällig
input-lift-rated = Die Tragfähigkeit liegt über dem Fahrzeug mit Kraftstoff und Ballast
input-arms-at-points = Arme oder Böcke stehen für die Herstellerpunkte
input-locks-engaged = Jede Sperre oder jeder Bock trägt die Last
input-points-seated = Jeder Punkt sitzt flach und mittig, nichts ist eingeklemmt

## Sichtprüfung oben

input-bearings-sound = Die Radlager laufen ruhig und ohne Spiel
input-joints-sound = Die Gelenke haben kein Spiel
input-bushes-sound = Die Buchsen sind heil
input-dampers-dry = Die Dämpfer sind trocken
input-springs-in-seats = Jede Feder sitzt in ihren Sitzen
input-clicks = Dämpferklicks wie vorgefunden, von ganz hart
input-collars-free = Jeder Federteller dreht sich frei
input-threads-clean = Die Gewinde sind sauber
input-rings-loosened = Jeder Konterring ist lose
input-bars-sound = Stabilisatoren und Koppelstangen sind in Ordnung
input-links-move = Gelenke und Kontermuttern der Koppelstangen sind gängig

## Waagen

input-pads-at-wheels = Jede Waage liegt unter der Radmitte
input-pads-steady = Jede Waage steht auf allen Füßen
input-plates-equal = Schiebeplatten, falls benutzt, sind gleich dick
input-survey = Höhe der Waage, höher ist größer
input-shims = Dicke der Unterlagen unter der Waage
input-set-up-1 = Höhe der Waage, erster Standort des Lasers
input-set-up-2 = Höhe der Waage, zweiter Standort des Lasers
input-pads-warm = Die Waagen sind warm
input-zeros-read = Jede Waage zeigt unbelastet ruhig null

## Koppelstangen

input-wheels-equal = Beide Räder der Achse hängen gleich hoch
input-front-link-undone = Ein Ende einer vorderen Koppelstange ist gelöst
input-rear-link-undone = Ein Ende einer hinteren Koppelstange ist gelöst
input-link-tied = Die Koppelstange ist festgebunden, der Stabilisator hängt frei
input-parts = Abgenommene Teile
input-parts-place = Ablageort der Teile
input-back-front-parts = Zurückgebaute Teile
input-back-rear-parts = Zurückgebaute Teile
input-link-turns = Umdrehungen an der Koppelstange, plus drückt das linke Rad nach unten
input-front-bolt-by-hand = Die Schraube der vorderen Koppelstange lässt sich von Hand einschieben
input-rear-bolt-by-hand = Die Schraube der hinteren Koppelstange lässt sich von Hand einschieben
input-link-nut-tight = Befestigung und Kontermuttern haben das Drehmoment des Herstellers

## Fahrzustand

input-fuel-agreed = Der Kraftstoff steht wie vereinbart
input-fluids-agreed = Die anderen Flüssigkeiten stehen wie vereinbart
input-kit-out = Lose Gegenstände sind heraus
input-ballast = Ballast, insgesamt
input-footwell = Davon im Fußraum
input-ballast-strapped = Jedes Stück ist verzurrt und bewegt sich nicht
input-pressures = Reifendruck
input-doors-shut = Türen, Haube und Heckklappe sind zu
input-steering-straight = Die Lenkung steht gerade
input-pedal-firm = Das Bremspedal ist fest gepumpt

## Messwerte und Umdrehungen

input-loads = Last
input-heights = Fahrzeughöhe
input-camber = Sturz, negativ, wenn das Rad oben nach innen steht
input-toe = Spur, positiv, wenn das Rad vorn nach innen zeigt
input-turns = Gedrehte Umdrehungen, plus hebt das Fahrzeug

input-rough-heights-next = Sind die Höhen nahe genug
option-heights-near = Nahe genug, weiter
option-set-heights = Zuerst die Höhen einstellen

input-tyres-centred = Jeder Reifen steht höchstens dreißig Millimeter neben der Mitte seiner Waage
input-brake-free = Bremse gelöst, kein Gang, Keile weg

input-next = Wie es weitergeht
option-go-on = Weiter: sichern
option-turn-cross = Drehen, für das Kreuzgewicht
option-turn-front = Drehen, bis vorn gleich
option-turn-rear = Drehen, bis hinten gleich
option-turn-place = Drehen, bis zu einer Stelle
input-place = Angestrebtes Kreuzgewicht, vorn rechts + hinten links
input-reason = Begründung
input-advice = Empfehlung für dieses Fahrzeug

## Sichern

input-rings-tight = Jeder Konterring ist fest, und kein Teller hat sich bewegt
input-springs-captive = Jede Feder ist voll ausgefedert in ihren Sitzen gefangen
input-thread-engaged = An jedem Teller trägt mindestens das vorgeschriebene Gewinde
input-bump-gap = Abstand zum Anschlagpuffer
input-bushes-set = Die Buchsen sind in Fahrhöhe mit dem Drehmoment des Herstellers festgezogen
input-nuts-pattern = Jede Mutter wurde über Kreuz festgezogen
input-nuts-torque = Drehmoment des Herstellers, wie am Schlüssel eingestellt
input-nuts-checked = Ich habe jede Mutter jedes Rades selbst geprüft

## Koppelstangen an

input-back-front-read-next = Zustand der vorderen Koppelstange
input-back-rear-read-next = Zustand der hinteren Koppelstange
option-link-right = Richtig: sie trägt keine Last
option-link-again = Koppelstange noch einmal einstellen
input-preload-note = Was die festen Koppelstangen zeigen

## Achseinstellung

input-plates-level = Dreh- und Schiebeplatten stehen in Waagenhöhe
input-steering-centred = Die Lenkung ist mittig und gehalten
input-gauge-direct = Neigungsmesser an einer Stelle
input-gauge-turned = Neigungsmesser dort umgedreht
input-runout-camber-up = Neigung, Marke oben
input-runout-camber-down = Neigung, Marke unten
input-runout-edge-up = Vorderkante, Marke oben
input-runout-edge-down = Vorderkante, Marke unten
input-rim-between = Zwischen den Stellen an der Felge
input-lines-front = Quer von Linie zu Linie, vor dem Fahrzeug
input-lines-rear = Quer von Linie zu Linie, hinter dem Fahrzeug
input-lines-apart = Längs einer Linie, von der einen zur anderen
input-toe-turns = Umdrehungen am Spurversteller, plus gibt Vorspur
input-camber-turns = Umdrehungen am Sturzversteller, plus stellt das Rad oben nach außen
input-caster-turns = Umdrehungen am Nachlaufversteller, plus gibt mehr Nachlauf
input-sweep-left-plate = Links: Platte
input-sweep-left-gauge = Links: Neigung
input-sweep-right-plate = Rechts: Platte
input-sweep-right-gauge = Rechts: Neigung
input-align-read-camber = Neigung, plus oben außen
input-final-angles-camber = Neigung, plus oben außen
input-edge-front = Linie zur Vorderkante
input-edge-rear = Linie zur Hinterkante
input-hub = Linie zur Nabe
input-align-judge-next = Zustand der Winkel
option-angles-good = Gut, weiter
option-change-angles = Sturz und Spur ändern
option-change-caster = Auch den Nachlauf ändern

## Schlussmessung und Übergabezustand

input-road-test = Probefahrt
option-not-driven = Nicht gefahren
option-driven = Gefahren, durch eine befugte Person
input-road-test-note = Wer fuhr und was auffiel, oder ‚keine‘
input-ballast-out = Aller Ballast ist heraus, gegen das Eingelegte gezählt
input-final-cold-pressures = Reifendruck, kalt
input-final-dampers-clicks = Dämpferklicks wie zurückgestellt, von ganz hart
input-clicks-back = Alle Dämpfer stehen wieder auf ihren notierten Klicks
input-car-off-pads = Das Fahrzeug steht auf ebenem Boden mit angezogener Bremse
input-pads-away = Waagen, Platten und Kabel sind weggeräumt
input-lock-clear = Bei vollem Einschlag berührt sich nichts
input-bump-clear = Bei vollem Einfedern berührt sich nichts
input-brake-pedal-firm = Das Bremspedal ist fest
input-hoses-clipped = Schläuche und Leitungen sind befestigt
input-wheel-straight = Das Lenkrad steht gerade
input-extinguisher-live = Der Sicherungsstift ist heraus, das Manometer steht im grünen Feld
input-parts-counted = Jedes abgenommene Teil ist am Fahrzeug
input-tools-counted = Jedes Werkzeug ist an seinem Platz
input-retorque-told = Der Kunde weiß, wann die Muttern nachgezogen werden
input-lamps-told = Der Kunde weiß Bescheid über Scheinwerfer, Kamera und Radar

## Anheben, Räder, Ablassen

input-nobody-aboard = Niemand ist im Fahrzeug
input-load-secured = Ballast ist verzurrt oder heraus, und nichts kann rutschen
input-wheels-clear = Alle Räder sind gerade frei, jeder Punkt sitzt flach und mittig
input-wheels-off-stored = Die Räder sind markiert und liegen flach aus dem Weg
input-wheels-on-hubs = Jedes Rad sitzt auf seiner Nabe, jede Mutter ist von Hand angesetzt
input-nuts-seated = Jede Mutter ist über Kreuz angelegt
input-people-out = Alle sind unter dem Fahrzeug heraus, mit Namen gezählt
input-tools-out = Werkzeuge, Lampen und Böcke sind heraus
input-tyres-over-pads = Jeder Reifen steht über der Mitte seiner Waage
input-floor-clear = Der Boden unter Reifen und Armen ist frei

## Setzen und Wiederherstellen

input-brake-holds = Die Bremse ist angezogen und hält
input-chocks-both-ways = Keile liegen in beide Richtungen fest an
input-chocks-away = Alle Keile sind weg
input-brake-off = Die Bremse ist gelöst
input-in-neutral = Das Fahrzeug ist im Leerlauf
input-plates-free = Jede Schiebeplatte schwimmt frei
input-rolled-off-on = Das Fahrzeug ist mindestens eine Reifenumdrehung gerollt
input-bounced-both-ends = Beide Enden sind durchgefedert
input-only-tyres-touch = Nur die Reifen tragen das Fahrzeug

## Sichern beim Abbruch

input-car-secured = Bremse oder Keile halten es, oder die Sperren tragen es
input-stop-car-springs-in-seats = Jede Feder sitzt in ihren Sitzen, oder ihre Ecke bleibt vom Boden frei
input-loose-parts = Was lose ist und wo es liegt
input-links-tied = Gelöste Koppelstangen sind festgebunden, oder keine ist gelöst
input-ballast-safe = Ballast ist heraus oder verzurrt
input-wheels-safe = Räder sind montiert mit angelegten Muttern oder liegen sicher neben dem Fahrzeug
input-tag-on-wheel = Der Anhänger hängt am Lenkrad
input-stop-note = Was auf dem Anhänger steht

## Anheben und Ablassen, Räder, Koppelstangen: weitere Prüfungen

input-rock = Von Hand gerüttelt, steht das Fahrzeug
option-steady = Ruhig: es darf weiter hoch
option-not-steady = Unruhig: es kommt wieder herunter
input-area-clear = Niemand und nichts ist unter dem Fahrzeug oder nahe daran
input-nuts-cracked = Jede Mutter ist um eine Vierteldrehung angelöst, nicht mehr
input-bushes-slack = Geklemmte Gummibuchsen sind gelöst, oder es gibt keine
input-pads-still-level = Die Waagen sind mit dem Fahrzeug darauf noch eben

## Winkel grob

input-rough-angles-next = Sind die Winkel nahe genug
option-angles-near = Nahe genug
option-set-angles = Zuerst die Winkel einstellen

## Schrauben, Fahrt, zurück auf die Straße

input-fasteners-tight = Kontermuttern der Spurstangen und Schrauben für Sturz und Nachlauf haben das Drehmoment des Herstellers
input-fasteners-torque = Verwendete Drehmomente
input-fasteners-checked = Jede berührte Schraube wurde noch einmal geprüft
input-drive-allowed = Befugte Person, freigegebene Strecke und fahrtüchtiges Fahrzeug
input-drive-done = Die Fahrt ist beendet, nichts fiel auf
input-lifting-mode-ended = Der Hebebühnenmodus ist beendet, das Fahrzeug steht in normaler Höhe
input-high-voltage-back = Hochvolt ist nach Herstellerverfahren wieder in Betrieb
