# Beschriftungen der Fenster; jede Kennung beginnt mit ui-. Eine Beschriftung hat keine Variablen und steht auf einer Zeile.
# Ein Wort in eckigen Klammern füllt das Fenster mit dem, was die Person daneben sieht: [who] steht für das Kürzel.

ui-app-name = Bayhand
ui-no-answer = Das Programm hat nicht geantwortet, also wurde nichts aufgezeichnet. Das Eingetippte bleibt hier stehen: noch einmal versuchen, und wenn es wieder geschieht, die Fenster schließen und das Programm neu starten. Die Aufzeichnung bis hierher ist sicher.
ui-key-enter = Eingabe
ui-path = Abschnitte des Auftrags

## Start
ui-start-practice = Am simulierten Fahrzeug üben
ui-start-practice-says = Nichts kann kaputtgehen: Fahrzeug, Fehler und Messwerte kommen aus einer Zahl.
ui-start-practice-car = Übungsfahrzeug
ui-start-practice-begin = Übungsauftrag beginnen
ui-start-seed = Nummer des Fahrzeugs (gleiche Nummer, gleiches Fahrzeug)
ui-start-seed-wrong = Das ist keine ganze Zahl mit höchstens 15 Stellen, daraus wird kein Fahrzeug. Eine schreiben, zum Beispiel 1.
ui-start-real = Ein Fahrzeug in der Halle
ui-start-real-says = Der Auftrag beginnt mit der Annahme: Herstellerdaten und Wünsche des Kunden bereithalten.
ui-start-car = Name des Fahrzeugs
ui-start-real-begin = Auftrag beginnen
ui-start-open = Einen beiseitegelegten Auftrag aufnehmen
ui-start-open-none = Keiner. Oben einen beginnen.

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
ui-job-practice = Simuliertes Fahrzeug
ui-job-aside = Beiseitelegen

## Gefahren
ui-hazards = Gefahren dieses Schritts
ui-hazards-first = Lesen und bestätigen, was oben steht. Danach öffnet sich der Schritt.
ui-hazard-acknowledge = Ich, [who], habe dies gelesen
ui-hazard-acknowledge-nobody = Zuerst sagen, wer handelt

## Ein Schritt
ui-step-why = Warum?
ui-step-hold = Auftrag anhalten
ui-step-reopen = Einen Schritt wieder öffnen
ui-step-stop = Auftrag abbrechen
ui-step-stopping = Der Auftrag wird abgebrochen: diese Schritte sichern zuerst das Fahrzeug.
ui-step-seal-in-review = Eine Aufsicht, die nicht daran gearbeitet hat, versiegelt diesen Auftrag im Prüffenster oder gibt ihn zurück.
ui-field-unit = Einheit
ui-corner-fl = Vorn links
ui-corner-fr = Vorn rechts
ui-corner-rl = Hinten links
ui-corner-rr = Hinten rechts
ui-verdict-inside = Innerhalb
ui-verdict-outside = Außerhalb
ui-verdict-cannot-tell = Noch nicht entscheidbar
ui-gate-waive = Mit Begründung zulassen
ui-timer-over = Die Wartezeit ist um.
ui-turn-from-above = von oben gesehen
ui-turn-towards = zur Feder hin
ui-turn-away = von der Feder weg
ui-turn-leave = lassen, wie es ist
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
ui-plot-came = gekommen, mit Unsicherheit
ui-plot-predicted = vorher vorhergesagt

## Halle
ui-bay-silent = Das Programm antwortet nicht. Auf das Fenster am Fahrzeug sehen.

## Prüfung
ui-review-jobs = Aufträge
ui-review-record = Schritt für Schritt
ui-review-number = Nr.
ui-review-when = Wann
ui-review-what = Was
ui-review-who = Wer
ui-review-entered = Eingetragen
ui-review-used = Verwendet
ui-review-note = Bemerkung
ui-review-line = Auf der Ausgleichslinie gewählt
ui-review-footprints = Lasten bei Übergabe
ui-review-figures = Werte
ui-review-seal = Als Aufsicht versiegeln
ui-review-send-back = An einen Schritt zurückgeben
ui-review-verify = Kette prüfen
ui-review-sheet = Protokoll schreiben
