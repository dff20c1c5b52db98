# Achseinstellung, Schlussmessung, Übergabezustand und Siegel.

stage-align = Achseinstellung
stage-final = Schlussmessung
stage-review = Prüfung und Siegel

step-align-plates = Lenkung auf Dreh- und Schiebeplatten in Waagenhöhe mittig stellen.
    .short = Platten und Lenkmitte
    .detail =
        Platten, die höher oder tiefer als die Waagen stehen, neigen das Fahrzeug und verschieben die Lasten; ihre Oberseiten liegen in der Ebene der Waagen.
        Mit angezogener Bremse oder verkeilten Rädern die Lenkung auf ihre wahre Mitte stellen, nach Marken oder der halben Zahl der Lenkradumdrehungen, und dort halten.
        Die Stifte erst ziehen, wenn das Fahrzeug ruhig steht.
        Kabel und Plattenstifte vom Laufweg fernhalten.

step-align-runout = Felgenschlag jedes Rades messen, Marke oben und unten.
    .short = Felgenschlag
    .detail =
        Eine Felge läuft nie ganz rund; deshalb eine Marke anbringen und jeden späteren Winkel mit der Marke oben ablesen.
        Den Neigungsmesser an die Felge hängen und einen Anschlag neben ihre vordere Kante stellen; beide mit der Marke oben ablesen, das Rad eine halbe Umdrehung drehen und beide noch einmal ablesen.
        Dann das Gerät selbst an einer Stelle ablesen, dort umdrehen und noch einmal ablesen.
        Die Hälften dieser Unterschiede werden aus Sturz, Spur und Nachlauf herausgerechnet.
        Das Gerät zeigt plus, wenn das Rad oben nach außen steht.

step-align-lines = Auf jeder Seite eine Linie aufbauen und die Abstände der Linien messen.
    .short = Linien aufgebaut
    .detail =
        Schnüre oder Laser in Höhe der Radmitten, außerhalb aller vier Räder, annähernd parallel; genau müssen sie es nicht sein, denn die Abweichung wird herausgerechnet.
        Vor und hinter dem Fahrzeug quer von Linie zu Linie messen, und an einer Linie entlang von der einen Stelle zur anderen.
        Der Abstand an der Felge ist der zwischen den zwei Stellen an ihrem Rand, die an jedem Rad abgelesen werden.
        Linien, die bewegt oder berührt wurden, neu aufbauen und messen.

step-align-change-rear = Sturz und Spur hinten wie geplant ändern.
    .short = Winkel hinten geändert
    .detail =
        Hinten kommt zuerst, denn die Vorderräder richten sich nach der Linie, auf der die Hinterachse fährt.
        Sturz vor Spur: der Sturz verstellt die Spur, und die gezeigten Umdrehungen rechnen damit.
        Auf jeder Seite die Umdrehungen zählen und eintragen, plus gibt mehr Vorspur und stellt das Rad oben nach außen.
        Den Versteller beim Festziehen der Mutter gegenhalten und danach noch einmal messen.

step-align-change-caster = Nachlauf vorn wie geplant ändern.
    .short = Nachlauf geändert
    .detail =
        Der Nachlauf kommt vor Sturz und Spur, denn er verschiebt beide.
        Die Versteller beider Seiten wie gezeigt drehen, beim Festziehen der Mutter gegenhalten und eintragen, was wirklich gedreht wurde.
        Danach wird er mit einem neuen Einschlag noch einmal gemessen.

step-align-change-front = Sturz und Spur vorn wie geplant ändern.
    .short = Winkel vorn geändert
    .detail =
        Sturz vor Spur, die Lenkung dabei in der Mitte halten.
        Jede Spurstange so drehen, wie es für ihre Seite gezeigt wird: nur so steht das Lenkrad danach gerade.
        Auf jeder Seite eintragen, was gedreht wurde, plus gibt mehr Vorspur und stellt das Rad oben nach außen.
        Nachsehen, dass in jeder Spurstange genug Gewinde trägt und die Manschetten nicht verdreht sind.

step-align-caster = Bei gehaltener Bremse die Lenkung nach links und nach rechts einschlagen.
    .short = Nachlauf gemessen
    .detail =
        Die Bremse mit Pedalstütze und Feststellbremse halten; ein Rad, das beim Einschlagen auf seiner Platte rollt, verfälscht die Messung.
        Marken oben, Platten bei gerader Lenkung auf null; nach links etwa so weit einschlagen wie nach rechts und jedes Mal Platte und Neigungsmesser an beiden Vorderrädern ablesen.
        Eine Platte zählt plus zur Fahrzeugseite ihres eigenen Rades; gleich müssen die Winkel nicht sein, es gilt das Abgelesene.
        Jedes Rad vor dem Ablesen zur Ruhe kommen lassen und die Finger nicht zwischen Reifen und Radhaus bringen.
        Danach die Lenkung wieder geradeaus stellen und die Pedalstütze herausnehmen.

step-align-read = Neigungsmesser und Abstände zu den Linien an allen vier Rädern ablesen.
    .short = Winkel gemessen
    .detail =
        Bremse frei, Fahrzeug gerollt oder durchgefedert und in Ruhe, Lenkung gerade und gehalten, an jeder Felge die Marke oben.
        An jedem Rad den Neigungsmesser ablesen, dann die Abstände der Linie zur vorderen und zur hinteren Felgenkante und zur Nabe.
        Alle vier Räder messen, bevor etwas geändert wird, und nach der letzten Änderung alle noch einmal: eine Spur verschiebt die Lenkmitte und mit ihr die andere.

step-align-judge = Wählen, ob die Winkel bleiben oder geändert werden.
    .short = Winkel beurteilt
    .detail =
        Jeder Winkel steht mit seiner Unsicherheit neben dem Vereinbarten; die Spur vorn gilt längs der Linie, auf der die Hinterachse das Fahrzeug schiebt.
        Ändern, was außerhalb liegt, hinten vor vorn; danach wird alles neu gemessen.
        Wo der Nachlauf zu ändern ist, jetzt wählen: er verschiebt Sturz und Spur seines Rades.
        Ein Rad zu neigen hebt oder senkt auch seine Ecke ein wenig, deshalb werden die Lasten am Ende neu gemessen.

step-align-fasteners = Jede Schraube der Achseinstellung mit dem Drehmoment des Herstellers festziehen.
    .short = Einstellschrauben festgezogen
    .detail =
        Kontermuttern der Spurstangen, Schrauben für Sturz und Nachlauf und alles, was zum Einstellen gelöst wurde.
        Die Spurstange beim Festziehen gegenhalten, damit sich die Spur nicht verstellt, und jede Schraube markieren.

step-align-fasteners-second = Als zweite Person jede Schraube der Achseinstellung prüfen.
    .short = Einstellschrauben, zweite Person
    .detail =
        Jemand anders als die Person, die festgezogen hat, setzt den Schlüssel an jeder an und sieht nach der Markierung.
        Das wird in jedem Auftrag verlangt, auch wenn kein Winkel geändert wurde: niemand hier weiß, wer zuletzt daran geschraubt hat, und das Siegel gilt für das ganze Fahrzeug.
        Eine vergessene Kontermutter ist so gefährlich wie eine vergessene Radmutter.

step-final-level = Alle vier Waagen mit dem Fahrzeug darauf von zwei Laserstandorten ablesen.
    .short = Waagen noch eben
    .detail =
        Füße sinken ein und Böden geben unter einem Fahrzeug nach; was die Waagen zeigten, gilt nur, solange sie stehen wie zuvor.
        Die Latte neben jedem Reifen auf die Waage setzen, den Laser zwischen den Reihen um eine halbe Drehung wenden und die erste Reihe nicht in die zweite abschreiben.
        Wo eine Waage gesunken ist, sind die Lasten seither zweifelhaft: die Waagen neu nivellieren, dann wird alles, was darauf beruht, neu gemessen.

step-final-clearance = Freigang bei vollem Einschlag und vollem Einfedern prüfen.
    .short = Freigang geprüft
    .detail =
        Die Lenkung von Anschlag zu Anschlag drehen und an beiden Enden Reifen, Schlauch, Kabel und Radhaus ansehen.
        Volles Einfedern wird nach dem notierten Abstand und durch Herunterdrücken beurteilt; Arm und Lampe nehmen, nicht den Kopf.
        Das Bremspedal treten: fest und hoch, bevor jemand fährt.
        Nachsehen, dass das Lenkrad bei geraden Rädern gerade steht.

step-final-count = Teile und Werkzeuge zählen.
    .short = Teile und Werkzeuge gezählt
    .detail =
        Jedes abgenommene Teil ist wieder am Fahrzeug; eine Scheibe auf der Werkbank gehört irgendwohin.
        Schlüssel, Nüsse, Bleche, Lampen und Pedalstütze gegen den Wagen zählen: was fehlt, ist im Fahrzeug, oft auf dem Achsträger oder unter der Haube.
        Solange etwas fehlt, ist der Auftrag nicht zu Ende.

step-final-road-test = Wählen, ob vor der Schlussmessung gefahren wird.
    .short = Probefahrt gewählt
    .detail =
        Eine kurze Fahrt lässt Federn, Buchsen und Gelenke ihren Platz finden und gehört vor die letzte Messung, nie danach.
        Hier nur wählen; was das Fahrzeug vor der Fahrt braucht, wird Schritt für Schritt verlangt, ebenso was danach neu einzustellen ist.
        Wird nicht gefahren, das wählen und ‚keine‘ eintragen.

step-final-drive = Fahrzeug auf der freigegebenen Strecke fahren.
    .short = Probefahrt
    .detail =
        Nur eine befugte Person fährt, wo örtliche Vorschriften es erlauben, ohne Ballast und mit allen geprüften Muttern.
        Vor dem Verlassen des Hofs die Bremse im Schritttempo prüfen und beim ersten Anzeichen, dass etwas nicht stimmt, umkehren.
        Danach werden Muttern, Freigang, Kraftstoff, Drücke und Ballast wiederhergestellt und geprüft, und das Fahrzeug wird gemessen.

step-final-read-1 = Lasten und Höhen für das Protokoll ablesen, erstes Setzen.
    .short = Schlussmessung, erstes Setzen
    .detail =
        Das ist, was der Kunde bekommt: Ballast drin, Koppelstangen angeschlossen, alles gesichert, Muttern festgezogen.
        Drei Ablesungen an jeder Waage, Hände weg vom Fahrzeug, dann die Höhen.
        Bei jedem Zweifel über Türen, Kabel oder eine Hand am Fahrzeug neu setzen und neu messen.

step-final-read-2 = Lasten und Höhen für das Protokoll ablesen, zweites Setzen.
    .short = Schlussmessung, zweites Setzen
    .detail =
        Freigesetzt, durchgefedert, geruht, und abgelesen, als gäbe es die erste Messung nicht.
        Beide müssen übereinstimmen, und ihr Mittel wird an den vereinbarten Fenstern beurteilt.
        Was außerhalb liegt, bleibt auf dem Protokoll außerhalb, mit der gegebenen Begründung.

step-final-read-3 = Lasten und Höhen im Übergabezustand ablesen, zweites Setzen.
    .short = Übergabemessung, zweites Setzen
    .detail =
        Bei einem Fahrzeug, das gemessen und nicht eingestellt wurde, sind die Zahlen, wie sie sind, und kein Fenster wird verlangt.
        Freigesetzt, durchgefedert, geruht, und abgelesen, als gäbe es die erste Messung nicht; beide müssen übereinstimmen.
        Was neben dem Vereinbarten liegt, steht mit der Empfehlung auf dem Protokoll.

step-final-angles = Neigungsmesser und Abstände zu den Linien für das Blatt ablesen.
    .short = Winkel zum Schluss
    .detail =
        Dieselben Geräte, dieselben Marken oben, die Linien, wie sie stehen.
        Nach dieser Messung kommt kein Schlüssel mehr an das Fahrzeug: was jetzt gedreht wird, macht sie ungültig.
        Überrascht ein Winkel, ihn noch einmal messen, bevor man ihn glaubt oder ändert.

step-final-ballast-out = Ballast aus dem Fahrzeug nehmen.
    .short = Ballast heraus
    .detail =
        Die Stücke gegen die eingelegten zählen, auch die im Fußraum.
        Jedes Stück nah am Körper heben und auf Sitzverkabelung und Airbag achten.
        Die Messungen bleiben gültig: diese Schlussänderung war vorher vereinbart.

step-final-cold = Wenn die Reifen kalt sind, jeden auf seinen vereinbarten Kaltdruck einstellen.
    .short = Kaltdrücke eingestellt
    .detail =
        Kalt heißt, dass das Fahrzeug seit Stunden ohne Sonne bei der Temperatur des Tages steht.
        Die vier Werte eintragen, wie das Gerät sie zeigt; sie kommen auf das Protokoll.
        Ventilkappen aufschrauben.

step-final-dampers = Jeden Dämpfer auf seine notierten Klicks zurückstellen.
    .short = Dämpfer zurückgestellt
    .detail =
        In derselben Richtung und vom selben Ende zählen wie vorher.
        Die vier notierten Werte stehen auf dem Bildschirm; eintragen, was eingestellt wurde, nicht, was notiert war.
        Ein ganz weich gelassener Dämpfer fühlt sich für den Kunden wie ein verdorbenes Fahrzeug an.

step-final-off-pads = Fahrzeug von den Waagen auf den Boden bewegen.
    .short = Von den Waagen herunter
    .detail =
        Eine Person lenkt oder schiebt am offenen Fenster mit der Bremse in Reichweite, eine passt auf; niemand steht vor oder hinter dem Fahrzeug.
        Langsam über die Rollflächen rollen, auf ebenem Boden anhalten und die Bremse anziehen.
        Danach Waagen, Platten, Bleche und Kabel wegräumen, damit niemand darüberfährt oder stolpert.

step-final-lifting-mode = Hebebühnenmodus nach Herstellerverfahren beenden.
    .short = Hebebühnenmodus beendet
    .detail =
        Die Federung kann sich beim Aufwachen bewegen; Hände aus den Radhäusern lassen.
        Ein Fahrzeug, das im Hebebühnenmodus wegfährt, kann warnen, die Federung sperren oder in falscher Höhe stehen.

step-final-high-voltage = Hochvoltsystem wieder in Betrieb nehmen lassen.
    .short = Hochvolt wieder an
    .detail =
        Nur dafür geschulte Personen, nach Herstellerverfahren.
        Vor der Übergabe in der Anzeige nach Warnungen sehen.

step-final-extinguisher = Sicherungsstift aus dem Feuerlöscher ziehen.
    .short = Löscher wieder scharf
    .detail =
        Ein gesicherter Löscher ist kein Löscher, und der Kunde weiß es nicht.
        Beim Ziehen vom Auslöser fernbleiben und auf das Manometer sehen.
        Den Stift dorthin hängen, wo der Hersteller der Anlage ihn vorsieht, und den Anhänger abnehmen.

step-final-advice = Dem Kunden sagen, was wann zu prüfen ist.
    .short = Kunde informiert
    .detail =
        Die Radmuttern werden nach der Strecke nachgezogen, die Hersteller oder örtliche Vorschrift nennen.
        Scheinwerfer zeigen, wohin das Fahrzeug zeigt, Kamera und Radar auch: nach einer Änderung von Höhe oder Achseinstellung brauchen sie womöglich eine eigene Kalibrierung nach Herstellerverfahren.
        Auch sagen, was nicht erreicht wurde, bevor er es auf dem Protokoll findet.

step-review-seal = Wenn der ganze Auftrag in Ordnung ist, versiegeln.
    .short = Auftrag versiegelt
    .detail =
        Zuerst die Abweichungen lesen: was zugelassen wurde, von wem und warum, dann was wiederholt wurde.
        Fragen, ob jede Zahl auf dem Protokoll vom Fahrzeug stammt, wie es jetzt dasteht.
        Stimmt etwas nicht, mit Begründung zurückgeben; ein Siegel ist der eigene Name unter fremder Arbeit.
        Niemand versiegelt einen Auftrag, an dem er gearbeitet hat.
