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
