# Was der laufende Auftrag sagt: Befunde, Ablehnungen, Messungen, Aufzeichnung, Protokoll.

## Titel und Stellen im Auftrag

job-title = { $car }, Auftrag { $number }
job-unnamed = Auftrag { $number }
person = { $initials }, { $rank }
start = Einen beiseitegelegten Auftrag aufnehmen oder einen neuen beginnen.
start-empty = Noch ist kein Auftrag offen. Einen Übungsauftrag beginnen, um die Schritte zu lernen, oder einen Auftrag an einem wirklichen Fahrzeug.
sign-on-first = Zuerst mit dem Namenskürzel anmelden. Alles Aufgezeichnete trägt einen Namen.
held = Angehalten seit { $at }, durch { $by }: „{ $reason }“. Wer weitermacht, prüft zuerst das Fahrzeug.
ended-sealed = Dieser Auftrag ist versiegelt. Das Protokoll wird im Prüffenster geschrieben.
ended-stopped = Dieser Auftrag wurde abgebrochen und das Fahrzeug gesichert. Hier wird nichts mehr aufgezeichnet.
count-step = { $stage }, Schritt { $number } von { $of }
count-round = { $stage }, Runde { $round }
because = Zuerst, weil { $need }.
action-record = Eintragen
action-decide = Diese Entscheidung eintragen
acknowledged = { $by }, { $at }, von Hand
state-done = erledigt
state-now = jetzt
state-again = noch einmal
state-to-come = folgt
timer-settle = Das Fahrzeug ruhen lassen
may-waive = { $rank } oder höher kann dies mit Begründung zulassen, wenn nicht an diesem Schritt beteiligt.

## Felder

check-yes = Ja
check-no = Nein, nicht in Ordnung
field-last = { $at }: { $text }
text-none = „keine“ schreiben, wo nichts gemeint ist.
range = { $min } bis { $max } { $unit }
range-looks = { $min } bis { $max } { $unit }, bis zu drei Ablesungen mit Leerzeichen dazwischen
shows-paper = Auftragspapiere
shows-pad = Waage zeigt
shows-height-gauge = Höhenmessgerät zeigt
shows-laser = Laser zeigt
shows-shims = Unterlagen bereitgelegt
shows-pressure-gauge = Messgerät zeigt
shows-angle-gauge = Messgerät zeigt
shows-link = Schraube gleitet hinein bei
shows-worked-out = Berechnet
shows-agreed = Vereinbart
shows-nothing = Das Übungsfahrzeug zeigt nichts

## Was zu drehen ist

turn-count = Ecke { $number } von 4
turn-raise-car = Fahrzeug { $corner } heben
turn-lower-car = Fahrzeug { $corner } senken
turn-leave-car = { $corner } lassen, wie es ist
turn-collar = Federteller { $turns } { $spring }, { $way } von oben gesehen: { $mm } Weg.
turn-leave-collar = Diesen Federteller nicht drehen. 0 eintragen.
turn-towards = zur Feder hin
turn-away = von der Feder weg
turn-clockwise = im Uhrzeigersinn
turn-anticlockwise = gegen den Uhrzeigersinn
turns-quarter = eine Viertelumdrehung
turns-half = eine halbe Umdrehung
turns-three-quarters = eine Dreiviertelumdrehung
turns-one = eine Umdrehung
turns-whole = { $whole } Umdrehungen
turns-and-quarter = { $whole } und eine Viertelumdrehung
turns-and-half = { $whole } und eine halbe Umdrehung
turns-and-three-quarters = { $whole } und eine Dreiviertelumdrehung
turns-part = { $part } einer Umdrehung
turns-and-part = { $whole } { $part } Umdrehungen
aim-turn-cross = das Kreuzgewicht
aim-turn-front = die Vorderachse
aim-turn-rear = die Hinterachse
aim-turn-place = ein Kreuzgewicht von { $cross }
worth-turn = Gedreht wird { $collars }; die Aussicht, dass { $aim } und die Höhen im Fenster liegen, steigt von { $now } auf { $planned }.
worth-nothing = Kein Drehen hebt die Aussicht, dass { $aim } und die Höhen im Fenster liegen, um mehr, als die Messung zeigen kann: Sie ist jetzt { $now } und bestenfalls { $best }.
worth-costs = Das Auto bleibt am besten, wie es ist: Die Aussicht ist jetzt { $now }, und was sie auf { $best } höbe, kostet anderswo mehr.
worth-limits = Die Grenzen der Höhen sind jetzt überschritten, und kein Drehen, das den Federtellern bleibt, behebt das ganz.
against-excess = Danach stehen die Höhen noch { $mm } über ihren Grenzen, weniger ist nicht zu haben.
against-up = Mehr würde helfen, aber der Federteller { $corner } lässt sich nicht weiter hochdrehen.
against-down = Mehr würde helfen, aber der Federteller { $corner } lässt sich nicht weiter herunterdrehen.
against-height = Mehr würde helfen, aber die Achse { $axle } stünde dann schiefer als ihre Grenze von { $limit }.
against-other = Mehr würde helfen, aber eine Grenze des Autos oder der Runde steht dagegen.
against-unreachable = Federteller allein erreichen hier nicht jeden Wunsch: Masse zu verschieben würde es.
against-heights = Keine Grenze steht dagegen, und keine Höhe ändert sich um mehr als { $mm }.
follows-none = Kein Plan: { $why }

## Die Ausgleichslinie, Aufstandsbilder und Werte

mark-front-even = vorn ausgeglichen
mark-cross-wanted = Kreuzgewicht wie gewünscht
mark-rear-even = hinten ausgeglichen
line-window = Fenster ± { $window }
line-now = Fahrzeug jetzt
line-band = ± { $u }
line-after = nach diesem Plan
line-says = Kreuzgewicht, vorn rechts und hinten links: { $cross } ± { $u }: { $verdict }
print-heavy = { $kg } zu schwer
print-light = { $kg } zu leicht
print-right = wie gewünscht
print-scale = Unterschiede sind { $times }-fach vergrößert gezeichnet.
figure-cross-pct = Kreuzgewicht, vorn rechts + hinten links
figure-front-diff-kg = Vorn, links minus rechts
figure-rear-diff-kg = Hinten, links minus rechts
figure-front-pct = Anteil vorn
figure-left-pct = Anteil links
figure-total-kg = Gesamt
figure-side-front-mm = Höhe vorn, links minus rechts
figure-side-rear-mm = Höhe hinten, links minus rechts
figure-wanted = { $target } ± { $window }
figure-with-u = { $value } ± { $u }
figure-first = Der Wunsch mit Vorrang
figure-side-front = Höhe vorn, links minus rechts
figure-side-rear = Höhe hinten, links minus rechts
plot-title = Kreuzgewicht, vorn rechts und hinten links
plot-load = Last, { $corner }
plot-found = vorgefunden
plot-round = Runde { $round }

## Was die Prüfpunkte fanden

found-unknown = Das lässt sich nicht beurteilen: { $why }.
found-checks = Nicht in Ordnung: { $wrong }. In Ordnung bringen und den Schritt neu eintragen, oder den Auftrag abbrechen.
found-car = Ein solches Fahrzeug kann es nicht geben: { $why }. Die Fahrzeugdaten noch einmal ansehen.
found-instruments = Nicht gültig, oder das Datum ist nicht wie 2027-03-31 geschrieben: { $wrong }.
found-resolve = Bei drei Setzvorgängen lassen diese Messgeräte ± { $u } am Kreuzgewicht (Fenster ± { $window }) und ± { $axle } an einer Achse (Fenster ± { $axlewindow }).
found-second = { $by } hat den Schritt selbst getan. Jemand anders meldet sich an und prüft.
found-counted = { $off } Teile kamen ab, { $on } zurück. Den Rest finden, bevor das Fahrzeug bewegt wird.
found-pads = Verwindung { $twist } (Grenze für dieses Fahrzeug { $twistlimit }), Querneigung { $tilt } (Grenze { $tiltlimit }).
found-pressures = Mehr als { $within } neben dem vereinbarten Druck: { $wrong }. Einstellen und neu messen.
found-heights = Eine Höhe liegt { $worst } neben dem Vereinbarten (Grenze { $within }); zwischen den Seiten { $sides } (Grenze { $side }). Zuerst die Höhen einstellen oder begründen.
found-angles = Mehr als { $within } neben dem Vereinbarten: { $wrong }. Die Winkel ändern oder begründen.
found-camber-at = Sturz { $where } { $has } (vereinbart { $wants })
found-toe-at = Gesamtspur { $where } { $has } (vereinbart { $wants })
found-settles = Die Setzvorgänge unterscheiden sich an einer Ecke um { $spread } (Grenze { $within }). Reifen freisetzen, durchfedern und neu messen.
found-total = Die vier Lasten ergeben { $sum }; erwartet wurden { $total }. Ballast, Kraftstoff, Einheiten und alles, was das Fahrzeug berührt, ansehen.
found-sides = { $axle }: { $left } links und { $right } rechts sind zu ungleich. Reihenfolge der Ecken und alles, was das Fahrzeug berührt, ansehen.
found-window = { $name }: { $value } ± { $u }, gewünscht { $target } ± { $window }: { $verdict }.
found-moved = Etwas hat sich bewegt: { $wrong }.
found-moved-at = { $where } { $load }, { $height } (die Setzstreuung erklärt { $u }, { $hu })
found-same = { $now } jetzt, { $then } beim ersten Mal. Es muss dasselbe sein.
found-wait = { $left } der Wartezeit fehlen noch.
found-travel = Der Federteller { $where } stünde { $turns } Umdrehungen von seinem Anfang; er hat { $least } bis { $most }.

## Ablehnungen

refused-stale = Der Auftrag ist weitergegangen, seit dieses Fenster gezeichnet wurde. Nichts wurde aufgezeichnet. Den Schritt noch einmal ansehen.
refused-no-job = Kein Auftrag ist offen. Einen beginnen oder aufnehmen.
refused-job-open = Ein Auftrag ist schon offen. Ihn zuerst beiseitelegen.
refused-car-name = Dem Fahrzeug einen Namen mit höchstens 60 Zeichen geben.
refused-name = Den Namen eintragen.
refused-rank-unknown = Auszubildende, Fachkraft oder Aufsicht wählen.
refused-seal-in-review = Ein Auftrag wird im Prüffenster versiegelt, von einer Aufsicht, die nicht daran gearbeitet hat.
refused-review-only = Das Prüffenster versiegelt einen Auftrag oder gibt ihn zurück. Alles andere geschieht am Fahrzeug.
refused-no-sheet = Das Protokoll wird geschrieben, sobald der Auftrag versiegelt ist.
refused-unreadable = Dieser Auftrag lässt sich nicht lesen: { $why }. Nichts daran wurde geändert.
refused-no-such-step = Im Verfahren dieses Auftrags gibt es keinen Schritt { $step }.
refused-not-now = { $step } ist nicht der anstehende Schritt. Es steht an: { $now }.
refused-not-signed-on = { $by } ist an diesem Auftrag nicht angemeldet. Zuerst anmelden.
refused-already-signed-on = { $by } ist schon angemeldet. Ein anderes Kürzel wählen.
refused-initials = Ein Kürzel hat einen bis vier Buchstaben, nicht „{ $given }“.
refused-rank = { $by } ist { $rank }; hierfür braucht es { $needed } oder höher.
refused-at-work = { $by } arbeitet an diesem Schritt und kann seinen Prüfpunkt nicht zulassen. Jemand anders fragen.
refused-worked = { $by } hat an diesem Auftrag gearbeitet. Ihn versiegelt eine Aufsicht, die das nicht hat.
refused-hazard-open = Zuerst die Gefahr lesen und bestätigen: { $hazard }.
refused-no-such-hazard = Die Gefahr { $hazard } gehört nicht zu diesem Schritt.
refused-already-acknowledged = Diese Gefahr ist schon bestätigt: { $hazard }.
refused-missing = { $field } fehlt.
refused-not-asked = { $field } wird bei diesem Schritt nicht gefragt.
refused-no-such-option = { $field }: „{ $text }“ ist keine der Antworten.
refused-program-fault = Ein Fehler des Programms: { $what }. Nichts wurde aufgezeichnet. Den Auftrag anhalten und es melden.
refused-nothing-to-waive = Bei { $step } gibt es nichts zuzulassen.
refused-not-waivable = { $step } kann niemand zulassen.
refused-no-reason = Die Begründung eintragen. Sie steht in der Aufzeichnung.
refused-not-done = { $step } ist nicht erledigt und kann nicht wieder geöffnet werden.
refused-on-hold = Der Auftrag ist angehalten. Zuerst weitermachen.
refused-not-on-hold = Der Auftrag ist nicht angehalten.
refused-ended = Der Auftrag ist beendet. Darin wird nichts mehr aufgezeichnet.
refused-stopping = Der Auftrag wird abgebrochen. Das Fahrzeug sichern.
refused-by-seal-only = Diesen Schritt beendet das Siegel, im Prüffenster.
refused-not-ready = Noch nicht bereit für das Siegel. Zuerst zu tun: { $step }.

## Die Halle

bay-no-job = Kein Auftrag ist offen.
bay-held = Der Auftrag ist angehalten.
bay-ended = Der Auftrag ist beendet.
bay-raised = FAHRZEUG ANGEHOBEN
bay-last-reading = Letzte Messung { $at }
time-under-a-minute = unter einer Minute
time-minutes = { $minutes } min
time-hours = { $hours } h { $minutes } min
read-apart = { $apart } auseinander
board-says = Die Schrift auf der Tafel ist { $mm } hoch: Großbuchstaben von 20 Bogenminuten in { $distance } m.
board-too-far = In { $distance } m nähme die Schrift { $share } der Höhe dieses Bildschirms, und nicht jeder Schritt hätte Platz. Ein größerer Bildschirm hilft, oder ein näherer.
refused-board-distance = Der Abstand ist eine Zahl von 0,5 bis 30 Metern. Nichts wurde geändert.
refused-board-diagonal = Die Diagonale ist eine Zahl von 7 bis 200 Zoll. Nichts wurde geändert.
refused-unit-of-other-kind = Diese Einheit misst etwas anderes. Nichts wurde geändert.
refused-language-unknown = In dieser Sprache gibt es keine Wörter. Nichts wurde geändert.
refused-settings-not-kept = Die Einstellungen gelten, bis das Programm endet, ließen sich aber nicht für den nächsten Start aufheben: { $why }.
refused-nothing-to-choose = Bei diesem Schritt ist keine Stelle auf der Linie zu wählen.

## Die Aufzeichnung

row-signed-on = Angemeldet
row-acknowledged = Bestätigt: { $hazard } ({ $step })
row-by-hand = { $by }, von Hand
row-waived = Zugelassen: { $step }
row-reopened = Wieder geöffnet: { $step }
row-held = Angehalten
row-resumed = Weitergemacht
row-stop = Abgebrochen; Fahrzeug ist zu sichern
row-sealed = Versiegelt
row-void = Später ungültig oder wiederholt.
row-checks = alle { $count } Prüfungen ja
departures-title = Abweichungen vom Verfahren: { $count }
departure-waived = Prüfpunkt zugelassen: { $step }
departure-waived-text = { $said } { $at }, { $by }: „{ $reason }“
departure-reopened = Wieder geöffnet: { $step }
departure-reopened-text = { $at }, { $by }: „{ $reason }“. Ungültig gewordene Schritte: { $count }.
departure-tried = Nicht beim ersten Mal bestanden: { $step }
departure-tried-text = { $said } { $at }, { $by }.
departure-stopped = Auftrag abgebrochen
departure-stopped-text = { $at }, { $by }: „{ $reason }“
review-empty = In diesem Buch ist noch kein Auftrag. Aufträge erscheinen hier, wenn sie am Fahrzeug begonnen werden.
review-summary = Arbeit: { $people }. { $from } bis { $to }. { $count } Einträge.
job-working = In Arbeit: { $stage }, { $at }
job-held = Angehalten: { $stage }, { $at }
job-stopping = Wird abgebrochen, { $at }
job-stopped = Abgebrochen, { $at }
job-sealed = Versiegelt, { $at }
job-for-review = Wartet auf Prüfung, { $at }
seal-ready = Alles ist erledigt. Die Aufzeichnung lesen, dann versiegeln oder zurückgeben.
seal-done = Dieser Auftrag ist versiegelt.
seal-stopped = Ein abgebrochener Auftrag wird nicht versiegelt.
seal-not-ready = Noch nicht bereit für das Siegel. Es steht an: { $step }.
send-back-alone = Nur dieser Schritt würde wiederholt.
send-back-voids = Damit zu wiederholen: { $steps }.
verified = Das Buch stimmt: { $jobs } Aufträge, { $entries } Einträge, jeder Hash in Ordnung, { $seals } Siegel. Dieser Auftrag: { $here } Einträge.
compromise = { $first }. „{ $reason }“

## Das Protokoll

sheet-title = Radlasten und Achseinstellung
sheet-car = Fahrzeug
sheet-use = Verwendung
sheet-first = Vorrang hatte
sheet-ballast = Fahrerballast
sheet-fuel = Kraftstoff
sheet-date = Datum
sheet-figures = Werte
sheet-figures-note = Mit ± erweiterter Unsicherheit (k = 2) aus Ablesungen, Setzen und Ebenheit der Waagen; die Kalibrierung der Waagen selbst ist nicht enthalten. Kreuzgewicht auf vorn rechts und hinten links. Gemessen mit Ballast, Betriebsdrücken und vereinbartem Kraftstoff; vorgefunden mit gelösten, übergeben mit angeschlossenen Koppelstangen.
sheet-corners = Ecken: Last, Höhe
sheet-corners-note = Gewünscht: Höhe.
sheet-angles = Winkel: Sturz, Spur
sheet-angles-note = Sturz negativ nach innen geneigt; Spur jedes Rades positiv nach innen zeigend.
sheet-pressures = Reifendrücke
sheet-working = Betrieb
sheet-cold = kalt
sheet-pressures-note = Mit den Kaltdrücken übergeben.
sheet-found = vorgefunden
sheet-left = übergeben
sheet-wanted = gewünscht
sheet-camber-toe = { $camber }, { $toe }
sheet-turned = Federteller: Umdrehungen, Weg
sheet-turns = { $turns }, { $mm }
sheet-compromise = Kompromiss und Begründung
sheet-departures = Abweichungen vom Verfahren
sheet-cautions = Bitte beachten
sheet-people = Personen
sheet-worked = Gearbeitet
sheet-sealed-by = Versiegelt durch
sheet-sealed = { $by }, { $at }
sheet-instruments = Messgeräte, Kalibrierung fällig
sheet-due = { $id }, fällig { $due }
sheet-seal = Siegel
sheet-head = Kopf der Aufzeichnung
sheet-procedure = Verfahren
sheet-program = Programm
instrument-pads = Waagen
instrument-laser = Laser
instrument-height-gauge = Höhenmessgerät
instrument-pressure-gauge = Druckmessgerät
instrument-angle-gauge = Winkelmessgerät
caution-retorque = Die Radmuttern nach der vom Hersteller genannten Strecke mit dessen Drehmoment nachziehen lassen.
caution-lamps = Scheinwerfer und Sensoren der Fahrassistenz brauchen nach einer Änderung von Höhe oder Achseinstellung womöglich eine eigene Kalibrierung.
caution-maker = Die Anleitungen des Fahrzeugherstellers und die örtlichen Vorschriften gehen vor. Arbeiten an Sicherheitsteilen nur durch geschulte und befugte Personen.
remark-names = Namen auf diesem Protokoll sind wie am Fahrzeug eingegeben. Sie sind noch nicht beglaubigt.
remark-practice = Dies war ein Übungsauftrag an einem simulierten Fahrzeug.
