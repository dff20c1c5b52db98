# Beschriftungen der Fenster; jede Kennung beginnt mit ui-. Eine Beschriftung hat keine Variablen und steht auf einer Zeile.
# Ein Wort in eckigen Klammern füllt das Fenster mit dem, was die Person daneben sieht: [who] steht für das Kürzel.

ui-lang = de
ui-app-name = Bayhand
ui-no-answer = Das Programm hat nicht geantwortet, also wurde nichts aufgezeichnet. Das Eingetippte bleibt hier stehen: noch einmal versuchen, und wenn es wieder geschieht, die Fenster schließen und das Programm neu starten. Die Aufzeichnung bis hierher ist sicher.
ui-key-enter = Eingabe
ui-path = Stationen des Auftrags

## Start
ui-start-practice = Am simulierten Fahrzeug üben
ui-start-practice-says = Nichts kann kaputtgehen: Fahrzeug, Fehler und Messwerte kommen aus einer Zahl.
ui-start-practice-car = Übungsfahrzeug
ui-start-practice-begin = Übungsauftrag beginnen
ui-start-scenario = Welcher Übungsauftrag
ui-start-scenario-none = Ein Fahrzeug nach seiner Nummer
ui-start-seed = Nummer des Fahrzeugs (gleiche Nummer, gleiches Fahrzeug)
ui-start-seed-wrong = Das ist keine ganze Zahl mit höchstens 15 Stellen, daraus wird kein Fahrzeug. Eine schreiben, zum Beispiel 1.
ui-start-wrong = Was nicht stimmt
ui-start-wrong-none = Nichts
ui-start-wrong-one = Eine Sache
ui-start-wrong-two = Zwei Sachen
ui-start-real = Ein Fahrzeug in der Halle
ui-start-real-says = Der Auftrag beginnt mit der Annahme: Herstellerdaten und Wünsche des Kunden bereithalten.
ui-start-car = Name des Fahrzeugs
ui-start-real-begin = Auftrag beginnen
ui-start-open = Einen beiseitegelegten Auftrag aufnehmen
ui-start-first = Vor dem ersten Auftrag
ui-start-first-people = Die Personen eintragen: wer arbeitet, eine zweite Person, eine Aufsicht, die versiegelt.
ui-start-first-enter = Personen
ui-start-first-practice = Gehen Sie einen Übungsauftrag durch: Jede Station kommt vor, und nichts kann kaputtgehen.
ui-start-first-board = Wählen Sie den Bildschirm der Tafel, seine Größe, und aus welchem Abstand sie gelesen wird.
ui-start-first-pedal = Wählen Sie Ihre Einheiten, und lernen Sie die Taste des Fußpedals an, wenn es eines gibt.
ui-start-first-settings = Einheiten, Tafel und Pedal

ui-procedure = Verfahren
ui-procedure-change = Anderes Verfahren
ui-procedure-title = Das Verfahren des nächsten Auftrags
ui-procedure-place = Ein Verfahren dieser Werkstatt: Datei mit ganzem Pfad
ui-procedure-look = Ansehen
ui-procedure-looking = Es wird bewiesen, über alle seine Zustände. Das dauert einige Sekunden, bis zu einer Minute.
ui-procedure-shipped = Das mitgelieferte nehmen
ui-procedure-reason = Warum es trotzdem verwendet werden darf
ui-procedure-sign = Dafür zeichnen
ui-start-look = Nur erst ansehen
ui-start-look-says = Am simulierten Fahrzeug nur mit Namen üben: nichts kann kaputtgehen, und nichts davon zählt.

## Der erste Start
ui-first-title = Diese Werkstatt
ui-first-says = Die erste Person ist eine Aufsicht, die die anderen einträgt und Aufträge versiegelt.
ui-first-make = Die erste Aufsicht anlegen
ui-first-lost = PIN vergessen: eine Aufsicht gibt eine neue. Passphrase vergessen: niemand kann sie auslesen. Der Wiederherstellungscode, der gleich kommt, gibt eine neue, und frühere Siegel bleiben gültig. Auch der Code verloren: dann kann niemand mehr mit diesem Schlüssel versiegeln oder diese Liste führen.
ui-pin-form = PIN, 4 bis 12 Ziffern
ui-passphrase-form = Passphrase, mindestens 10 Zeichen
ui-recovery-title = Wiederherstellungscode
ui-recovery-says = Aufschreiben und fern von diesem Rechner aufbewahren. Er wird nur dieses eine Mal gezeigt. Wer ihn hat, kann einer Aufsicht eine neue PIN und Passphrase geben; das wird aufgezeichnet, und der Code ist damit verbraucht.
ui-recovery-kept = Er ist aufgeschrieben

## Geheimnisse
ui-pin = PIN
ui-pin-of = PIN von [who]
ui-pin-new = Neue PIN
ui-pin-change = Meine PIN ändern
ui-pin-forgotten = PIN vergessen
ui-pin-rub = Die letzte Ziffer löschen
ui-pin-waits = Es wurden falsche PINs eingegeben. Nächster Versuch in [seconds] s.
ui-passphrase = Passphrase
ui-passphrase-new = Neue Passphrase
ui-secret-again = Noch einmal
ui-secret-differs = Die beiden sind nicht gleich. Beide neu eintippen.
ui-recover = Wiederherstellen
ui-recover-says = Eine Aufsicht, die PIN oder Passphrase verloren hat, bekommt neue für den Wiederherstellungscode dieses Buchs. Das wird aufgezeichnet, und der Code ist damit verbraucht.
ui-recovery-code = Wiederherstellungscode

## Die Liste der Personen
ui-people = Personen
ui-people-add = Person eintragen
ui-people-change = Ändern
ui-people-let-go = Austragen
ui-people-let-go-says = Sie kann sich nicht mehr anmelden. Was sie getan hat, bleibt unter ihrem Namen in der Aufzeichnung.
ui-people-reset-pin = Neue PIN
ui-people-reset-pin-says = Für jemanden, der seine vergessen hat. Beim nächsten Mal am Fahrzeug wird sie geändert.
ui-people-set-key = Neuer Schlüssel
ui-people-set-key-says = Der Schlüssel, mit dem eine Aufsicht versiegelt; ihre eigene Passphrase öffnet ihn. Siegel mit einem früheren Schlüssel bleiben gültig.
ui-people-by = Aufsicht
ui-people-passphrase = Ihre Passphrase
ui-people-alone = Darf allein tun, ohne höheren Rang am Auftrag
ui-people-name = Name
ui-people-key = Fingerabdruck des Schlüssels
ui-people-none = keiner
ui-people-left = ausgeschieden
ui-people-acts = Zu tun

## Wer arbeitet
ui-sign-initials = Kürzel
ui-sign-name = Name
ui-sign-rank = Rang
ui-sign-on = Anmelden
ui-sign-on-title = Zum Prüfen dieses Auftrags anmelden
ui-rank-trainee = Auszubildende
ui-rank-technician = Fachkraft
ui-rank-supervisor = Aufsicht
ui-who-nobody = Wer handelt?
ui-who-title = Wer handelt jetzt?
ui-who-another = Weitere Person anmelden
ui-who-take-over = Hier übernehmen
ui-who-leave = Das Fahrzeug verlassen
ui-job-practice = Simuliertes Fahrzeug
ui-job-aside = Beiseitelegen

## Gefahren
ui-hazards = Gefahren dieses Schritts
ui-hazards-first = Lesen und bestätigen, was oben steht. Danach öffnet sich der Schritt.
ui-hazard-acknowledge = Ich, [who], habe dies gelesen
ui-hazard-acknowledge-nobody = Zuerst sagen, wer handelt

## Ein Schritt
ui-step-why = Warum?
ui-step-hold = Anhalten
ui-step-again = Noch einmal
ui-step-undo = Zurücknehmen
ui-step-reopen = Wieder öffnen
ui-step-stop = Abbrechen
ui-step-stopping = Der Auftrag wird abgebrochen: diese Schritte sichern zuerst das Fahrzeug.
ui-step-seal-in-review = Eine Aufsicht, die nicht daran gearbeitet hat, versiegelt diesen Auftrag im Prüffenster oder gibt ihn zurück.
ui-field-unit = Einheit
ui-axle-front = Vorn
ui-axle-rear = Hinten
ui-corner-fl = Vorn links
ui-corner-fr = Vorn rechts
ui-corner-rl = Hinten links
ui-corner-rr = Hinten rechts
ui-verdict-inside = Innerhalb
ui-verdict-outside = Außerhalb
ui-verdict-cannot-tell = Noch unklar
ui-gate-waive = Mit Begründung zulassen
ui-timer-over = Die Wartezeit ist um.
ui-turn-from-above = von oben gesehen
ui-turn-towards = zur Feder hin
ui-turn-away = von der Feder weg
ui-turn-leave = lassen, wie es ist
ui-read-back = Haben Sie das abgelesen?
ui-read-back-right = Ja, eintragen
ui-read-back-change = Ändern
ui-line-aim = Stelle auf der Linie
ui-line-aim-none = keine Stelle gewählt
ui-line-aimed = Ziel: Kreuzgewicht
ui-line-steps-lead = ganze Schritte führen hierher
ui-judge-choose = Wählen Sie unter der Linie, oder ziehen Sie die Marke auf ihr: Was gedreht würde und was daraus würde, steht dann hier.
ui-judge-turns = Umdr.
ui-judge-came = Verlauf
ui-judge-then = So gedreht
ui-turn-worked-out = Berechnet, in Umdrehungen:

## Angehalten und beendet
ui-held = Angehalten
ui-held-resume = Mit dem Auftrag weitermachen
ui-ended = Dieser Auftrag ist beendet
ui-ended-leave = Diesen Auftrag verlassen

## Dialoge
ui-dialog-reason = Begründung für die Aufzeichnung
ui-dialog-step = Welcher Schritt
ui-dialog-cancel = Zurück
ui-hold-title = Auftrag anhalten
ui-hold-says = Der Auftrag wartet, wo er ist. Das Fahrzeug so verlassen, dass es für alle, die vorbeikommen, sicher ist.
ui-stop-title = Auftrag endgültig abbrechen
ui-stop-says = Zuerst wird das Fahrzeug Schritt für Schritt gesichert; dann endet der Auftrag und kann nicht wieder aufgenommen werden.
ui-reopen-title = Einen Schritt wieder öffnen
ui-reopen-says = Was darauf beruht, muss noch einmal getan werden.
ui-waive-title = Weitermachen, obwohl der Prüfpunkt nicht erfüllt ist
ui-waive-who = Wer es zulässt
ui-seal-title = Auftrag versiegeln
ui-seal-who = Wer ihn versiegelt
ui-send-back-title = Auftrag an einen Schritt zurückgeben
ui-send-back-who = Wer ihn zurückgibt

## Werte
ui-figures-name = Wert
ui-figures-found = Vorgefunden
ui-figures-left = Jetzt
ui-figures-wanted = Gewünscht
ui-figures-verdict = Urteil
ui-angles-name = Winkel
ui-angles-plan = Was gedreht würde
ui-figures-made-of = ± aus
ui-plot-came = gekommen, mit Unsicherheit
ui-plot-predicted = vorher vorhergesagt
ui-settings = Einstellungen
ui-settings-close = Fertig
ui-settings-shown = Einheiten und Tafel
ui-settings-spoken = Stimme und Pedal
ui-settings-units = Einheiten der Werkstatt
ui-settings-units-of = Einheiten für [who]
ui-settings-units-says = Lasten, Höhen, Drücke und Winkel werden darin gezeigt und eingegeben. Was getippt wurde, bleibt immer, wie es getippt wurde.
ui-settings-mass = Lasten
ui-settings-length = Höhen
ui-settings-pressure = Drücke
ui-settings-angle = Winkel
ui-settings-board = Tafel der Halle
ui-settings-screen = Bildschirm
ui-settings-screen-none = Ein Fenster
ui-settings-screen-here = dieser hier
ui-settings-distance = Gelesen aus, m
ui-settings-diagonal = Diagonale, Zoll
ui-settings-pedal = Fußpedal
ui-settings-pedal-learn = Taste anlernen
ui-settings-pedal-press = Jetzt das Pedal treten
ui-settings-pedal-forget = Kein Pedal
ui-settings-pedal-is = Das Pedal sendet [key]. Es geht im Schritt weiter und bestätigt nie eine Gefahr, erlässt nichts und versiegelt nichts.
ui-settings-pedal-none = Ein Pedal sendet eine Taste: Sie tut dann, was Enter tut, bestätigt aber nie eine Gefahr, erlässt nichts und versiegelt nichts.
ui-settings-pedal-unsuited = Diese Taste schreibt oder springt zwischen Feldern. Stellen Sie am Pedal eine andere ein, etwa F13 oder Bild ab.
ui-settings-language = Sprache
ui-settings-voice = Stimme
ui-settings-voice-of = Stimme für [who]
ui-settings-say = Schritte, Gefahren, Wartezeiten und Rückfragen sagen
ui-settings-say-on = Sagen
ui-settings-say-off = Still
ui-settings-volume = Lautstärke, %
ui-settings-speed = Wörter je Minute
ui-settings-voice-name = Stimme des Systems
ui-settings-voice-usual = die übliche
ui-notice = Hinweis: etwas fehlt
ui-notice-close = Gesehen
ui-settings-hearing = Gesprochene Antworten (Englisch)
ui-settings-hear = Gehört wird
ui-settings-hear-keys = nicht: nur Tasten und Berührung
ui-settings-hear-hold = solange eine Taste gehalten wird
ui-settings-hear-free = freihändig
ui-settings-talk-learn = Sprechtaste: [key]. Andere anlernen
ui-settings-model = Sprachmodell
ui-settings-model-usual = am üblichen Ort
ui-talk = Sprechtaste
ui-talk-listens = Hört zu
ui-talk-free = Sprechen oder halten
ui-heard = Gehört
ui-heard-right = Das stimmt
ui-heard-wrong = Nein

## Halle
ui-bay-silent = Das Programm antwortet nicht. Auf das Fenster am Fahrzeug sehen.
ui-bay-more = Das Übrige steht im Fenster am Fahrzeug.

## Prüfung
ui-review-jobs = Aufträge
ui-review-record = Schritt für Schritt
ui-review-number = Nr.
ui-review-when = Wann
ui-review-what = Was
ui-review-entered = Eingetragen
ui-review-used = Verwendet
ui-review-note = Bemerkung
ui-review-line = Auf der Ausgleichslinie gewählt
ui-review-footprints = Lasten bei Übergabe
ui-review-footprints-found = Lasten wie vorgefunden
ui-review-loads = Lasten über die Runden
ui-review-times = Zeit je Station
ui-review-all-plots = Auch beide Achsen
ui-review-figures = Werte
ui-review-instruments = Messgeräte, Kalibrierung fällig
ui-review-seal = Als Aufsicht versiegeln
ui-review-send-back = An einen Schritt zurückgeben
ui-review-verify = Kette prüfen
ui-review-sheet = Protokoll schreiben

ui-review-coach = Trainer
ui-coach-title = Was der Trainer sah
ui-coach-wrong = Nicht so, wie es angenommen war
ui-coach-slips = Anders aufgeschrieben als angezeigt
ui-coach-score = Was zählt
ui-close = Schließen
## Fahrzeuge des Buchs
ui-cars = Fahrzeuge
ui-cars-search = Suche: Name, Kürzel, Auftragsnummer
ui-car-visits = Besuche
ui-car-learned = Was gelernt wurde
ui-car-turn = Eine Umdrehung des Federtellers
ui-car-travel = bewegt ihn um
ui-car-load = Last dort
ui-car-height = Höhe dort
ui-car-left = Letzte Einstellungen
ui-instruments = Messgeräte
ui-instrument-stated = Angegebene Unsicherheit
ui-instrument-not-stated = Nicht aufgezeichnet
ui-instrument-calibrated = Kalibriert
ui-instrument-due = Kalibrierung fällig
ui-instrument-checks = Prüfungen
ui-instrument-earlier = Frühere Prüfungen
ui-origin-instrument = Mit
ui-origin-configuration = Fahrzeug
ui-origin-entry = Zum Eintrag Nr.

## Das Buch, und was getrennt davon steht
ui-book = Buch
ui-book-by = Wer
ui-book-copies = Kopien des Buchs
ui-book-copies-says = Eine Kopie am Tag, die letzte, am Ende jedes Auftrags im laufenden Betrieb gemacht und geprüft. Einen Ordner auf einem anderen Datenträger nennen.
ui-book-copies-place = Ordner für Kopien, mit ganzem Pfad; leer: es werden keine gemacht
ui-book-copy-now = Diesen Ort behalten und jetzt kopieren
ui-book-copying = Das Buch wird kopiert und geprüft.
ui-book-imported = Aufträge anderer Arbeitsplätze
ui-book-imported-says = Ein Auftrag, den ein anderer Arbeitsplatz ausgegeben hat, wird Eintrag für Eintrag und Siegel für Siegel geprüft und einmal aufgenommen.
ui-book-import-place = Ausgegebener Auftrag: Datei mit ganzem Pfad
ui-book-take-in = Aufnehmen
ui-book-taking-in = Der Auftrag wird geprüft und aufgenommen.
ui-book-reading = Der Auftrag wird gelesen.
ui-review-export = Auftrag ausgeben
ui-customer = Kundendaten
ui-customer-says = Das Wenigste, das nötig ist. Es steht getrennt von der Aufzeichnung und in keiner Ausgabe: nach dem Löschen lässt sich die Aufzeichnung noch immer prüfen.
ui-customer-keep = Behalten
ui-customer-erase = Löschen
ui-customer-erase-reason = Warum gelöscht wird; durch eine Aufsicht

## Berichtigungen, Filter, Nachweise
ui-correct = Berichtigen
ui-correct-says = Auf diesem Text beruht nichts. Was zuerst dort stand, bleibt neben der Berichtigung in der Aufzeichnung.
ui-correct-which = Welcher Text
ui-correct-text = Was dort hätte stehen sollen
ui-withdraw = Noch einmal tun
ui-filter = Filter
ui-filter-all = alle
ui-filter-car = Fahrzeug
ui-filter-person = Person
ui-filter-from = Von
ui-filter-until = Bis
ui-filter-departed = Vom Verfahren abgewichen
ui-person-record = Nachweis
ui-person-stage = Station
ui-person-done = Schritte getan
ui-person-held = Gehalten
ui-manual = Handbuch
ui-manual-search = Im Handbuch suchen
ui-manual-asks = Eingetragen wird
ui-manual-gates = Muss stimmen
ui-manual-none = Kein Schritt enthält diese Worte.
