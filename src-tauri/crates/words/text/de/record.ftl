# Personen, Berichtigungen, Kopien und Siegel.

people-unknown = Dieses Buch kennt noch niemanden. Namen gelten, wie sie eingetippt werden. Die erste Aufsicht anlegen, um das zu ändern.
people-known = Wer am Fahrzeug arbeitet, meldet sich mit seiner PIN an. Die Aufsicht versiegelt und führt diese Liste mit ihrer Passphrase.

refused-pin-first = Niemand ist mit PIN am Fahrzeug, oder dieses Fenster wurde eine Weile nicht berührt. Zuerst die PIN eingeben.
refused-with-pin = Dieses Buch kennt seine Personen. Mit der PIN anmelden.
refused-with-passphrase = Dieses Buch kennt seine Personen. Die Aufsicht versiegelt mit ihrer Passphrase.
refused-hand-over = { $by } ist nicht die Person am Fahrzeug. Zuerst mit der PIN von { $by } übergeben.
refused-not-alone = { $by } darf diesen Schritt nicht allein tun. Eine Fachkraft oder Aufsicht bitten, sich an diesem Auftrag anzumelden.
refused-amend = Das lässt sich nicht durch einen Text berichtigen: etwas beruht darauf. Den Schritt wieder öffnen und neu eintragen.
refused-amend-rank = Wer dies berichtigt, hat mindestens den Rang, den der Schritt verlangt.
refused-amend-text = Schreiben, was dort hätte stehen sollen.

row-corrected = Berichtigt: { $step }, Eintrag { $number }
row-corrected-by = Berichtigt in Eintrag { $number }: { $field }.
row-corrected-text = { $field }: statt „{ $from }“ hätte „{ $to }“ stehen sollen

copy-made = Das Buch wurde nach { $place } kopiert.
copy-failed = Am Ende dieses Auftrags wurde keine Kopie des Buchs gemacht. Der Auftrag selbst ist sicher. { $why }

sheet-code = Siegelcode
sheet-key = Siegelschlüssel

## Was die Liste der Personen nicht zulässt
refused-first-supervisor = Ein Auftrag an einem wirklichen Fahrzeug beginnt, sobald dieses Buch seine Personen kennt. Die erste Aufsicht anlegen, oder am simulierten Fahrzeug üben.
refused-person-unknown = { $by } steht nicht in der Liste der Personen. Eine Aufsicht um den Eintrag bitten, oder das Kürzel prüfen.
refused-not-a-supervisor = { $by } ist keine Aufsicht. Eine Aufsicht fragen.
refused-initials-taken = Das Kürzel { $by } ist vergeben. Ein anderes wählen: die Aufzeichnung muss Personen für immer unterscheiden.
refused-text-form = Der Name fehlt oder hat mehr als 200 Buchstaben.
refused-alone-is-for-trainees = Nur Auszubildende haben eine Liste dessen, was sie allein tun dürfen.
refused-first-is-a-supervisor = Die erste Person der Liste ist eine Aufsicht, die dann die anderen einträgt.
refused-not-the-first = In diesem Buch stehen schon Personen. Eine Aufsicht unter ihnen trägt die anderen ein.
refused-last-supervisor = { $by } ist die einzige Aufsicht. Zuerst eine weitere anlegen, sonst könnte niemand die Liste führen.
refused-pin-form = Eine PIN hat 4 bis 12 Ziffern, und nicht immer dieselbe.
refused-passphrase-form = Eine Passphrase hat mindestens 10 Zeichen. Ein Satz lässt sich leicht merken.
refused-wrong-pin = Das ist nicht die PIN von { $by }. Dass sie versucht wurde, steht in der Aufzeichnung.
refused-wait-for-pin = Für { $by } wurden falsche PINs eingegeben. Vor dem nächsten Versuch { $seconds } s warten.
refused-wrong-passphrase = Diese Passphrase öffnet den Schlüssel von { $by } nicht.
refused-no-key = { $by } hat keinen Schlüssel, oder seine Datei fehlt. Die Datei neben das Buch zurückbringen oder einen neuen Schlüssel setzen lassen.
refused-bad-key-file = Die Schlüsseldatei von { $by } ist nicht brauchbar. Die richtige zurückbringen oder einen neuen Schlüssel setzen lassen.
refused-wrong-code = Das ist nicht der Wiederherstellungscode dieses Buchs. Noch einmal nachsehen; jeder Code gilt einmal.
refused-no-customer = In diesem Buch stehen keine solchen Kundendaten, oder sie sind schon gelöscht.
refused-no-random = Das System liefert keine Zufallszahlen ({ $why }), also lässt sich kein Geheimnis bewahren. Den Rechner neu starten.

## Das Verfahren, mit dem ein Auftrag beginnt
procedure-shipped = Das Verfahren, das mit dem Programm kommt. Die Tests des Programms beweisen es.
procedure-proved = Ein anderes Verfahren, eben bewiesen: jede Sicherheitseigenschaft gilt in allen seinen Zuständen.
procedure-not-proved = Dieses Verfahren ist nicht als sicher bewiesen. Kein Auftrag beginnt damit, wenn nicht eine Aufsicht dafür zeichnet.
procedure-signed = Nicht als sicher bewiesen. Eine Aufsicht hat gezeichnet, dass der nächste Auftrag damit beginnen darf; Aufzeichnung und Protokoll sagen es.
safety-broken = Nicht eingehalten: { $property }. Bei: { $steps }.
safety-fault = { $step }: { $says }.
safety-1 = niemand ist unter oder an einem angehobenen Fahrzeug, das bei diesem Heben nicht bestätigt und gesichert wurde
safety-2 = kein Federteller wird unter Last, mit angeschlossener Koppelstange oder gegen seinen Ring gedreht
safety-3 = kein Fahrzeug wird versiegelt oder gefahren, das nicht vollständig ist
safety-4 = kein Wert stammt aus einer ungültigen Messung oder aus Messungen ungleichen Zustands
safety-5 = jeder Schritt hat einen Namen, und nichts wird von der falschen Person zugelassen
safety-6 = kein Fahrzeug wird mit jemandem darin oder mit losem Ballast angehoben
safety-7 = kein Fahrzeug wird auf lose Teile oder auf jemanden abgelassen oder gerollt
safety-8 = niemand greift unter ein Fahrzeug, das rollen kann, und keine Messung geschieht an einem festgehaltenen
row-opened = Auftrag begonnen
row-opened-with = { $car }; Verfahren { $document }
remark-not-proved = Das Verfahren dieses Auftrags ist nicht als sicher bewiesen. { $name } ({ $by }) hat dafür gezeichnet: „{ $reason }“.
departure-not-proved = Verfahren nicht bewiesen
refused-procedure-not-proved = Das gewählte Verfahren ist nicht als sicher bewiesen. Zuerst zeichnet eine Aufsicht dafür, oder der Auftrag beginnt mit dem mitgelieferten.
refused-nothing-to-sign = Es gibt nichts zu zeichnen: das gewählte Verfahren ist bewiesen.
refused-procedure-file = Unter { $place } lässt sich kein Verfahren lesen: { $why }. Was vorher gewählt war, bleibt gewählt. Eine Datei dieses Rechners mit ganzem Pfad nennen.
refused-procedure-form = Was unter { $place } steht, ist kein Verfahren: { $why }. Was vorher gewählt war, bleibt gewählt. In Ordnung bringen und noch einmal ansehen.

## Das Buch
copies-none = Es ist kein Ort für Kopien genannt, also wurde keine gemacht. Einen Ordner auf einem anderen Datenträger nennen.
import-taken = Der Auftrag wurde geprüft und aufgenommen. Er steht in der Liste unten.
import-there = Genau dieser Stand des Auftrags ist schon hier. Nichts wurde geändert.
export-written = Geschrieben nach { $place }. Wer die Datei bekommt, kann sie prüfen; die Anleitung steht darin.
refused-import-file = Unter { $place } lässt sich kein ausgegebener Auftrag lesen: { $why }. Nichts wurde aufgenommen. Eine Datei dieses Rechners mit ganzem Pfad nennen.
refused-no-imported-job = In diesem Buch steht kein solcher Auftrag eines anderen Arbeitsplatzes.
refused-customer-text = Eintragen, was behalten werden soll, oder es löschen.
person-record = { $jobs } Aufträge: { $steps } Schritte getan, { $held } Versuche gehalten, davon { $waived } zugelassen.
