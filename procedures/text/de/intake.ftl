# Annahme: was das Fahrzeug ist, was vereinbart wurde und womit gemessen wird.

stage-intake = Annahme

step-intake-car = Fahrzeug und Verwendung eintragen.
    .short = Fahrzeug und Verwendung
    .detail =
        Radstand und Spurweite den Herstellerdaten entnehmen oder bei gerade stehenden Rädern zwischen den Radmitten messen.
        Die Gesamtmasse ist, was auf den Waagen stehen soll: das Fahrzeug mit vereinbartem Kraftstoff und dem Ballast für den Fahrer.
        Jede spätere Aussage über Ebenheit, Kreuzgewicht und Umdrehungen wird aus diesen Zahlen berechnet; ein Fehler hier verbiegt sie alle.
        Für die Höhe von Schwerpunkt und Rollachse gelten die Herstellerdaten oder die Werte eines vergleichbaren Fahrzeugs.

step-intake-layout = Federung, Antrieb und Bremse des Fahrzeugs angeben.
    .short = Aufbau des Fahrzeugs
    .detail =
        Unter das Fahrzeug und in die Herstellerdaten schauen, nicht aus dem Gedächtnis antworten.
        Die Federung entscheidet, ob in diesem Auftrag überhaupt eingestellt wird: eine Feder für zwei Räder sowie verbundene, aktive oder nicht einstellbare Federn werden nur gemessen und beurteilt.
        Hochvolt, fest eingebauter Feuerlöscher, elektrische Feststellbremse und Hebebühnenmodus haben jeweils eigene Gefahren und eigene Schritte.
        Im Zweifel die Antwort geben, die den zusätzlichen Schritt bringt.

step-intake-bars = Anbindung jedes Stabilisators angeben.
    .short = Stabilisatoren und Koppelstangen
    .detail =
        Ein Stabilisator verbindet links mit rechts; eine verspannte Koppelstange verdeckt, was die Federn tun.
        Einstellbar ist eine Koppelstange, wenn sich ihre Länge ändern lässt: Gewindestange und Kontermuttern suchen.
        Einstellbare Koppelstangen werden vor den Messungen gelöst und am Ende spannungsfrei wieder angeschlossen.
        Feste Koppelstangen bleiben angeschlossen; was sie an den Radlasten bewirken, steht auf dem Protokoll.

step-intake-springs = Federn, Reifen und ungefederte Massen jeder Achse eintragen.
    .short = Federn und Reifen
    .detail =
        Die Federrate steht auf der Feder oder in den Daten ihres Herstellers.
        Das Übersetzungsverhältnis ist Federweg durch Radweg oder umgekehrt: beides heißt so, und verkehrt herum verdirbt es jede vorhergesagte Umdrehung. Kaum eine Feder bewegt sich mehr als ihr Rad.
        Die ungefederte Masse gilt für eine Ecke: Rad, Reifen, Bremse, Nabe und etwa die Hälfte der Lenker.
        Kennt niemand die Federn, angeben, wie das Auto gefedert ist: Die erste Umdrehung ist dann geschätzt, und die Runden zeigen, was die Federn tun, wie sie auch zeigen, wo bekannte Zahlen danebenliegen.

step-intake-adjusters = Federteller jeder Achse beschreiben.
    .short = Federteller
    .detail =
        Die Steigung mit einer Gewindelehre oder über zehn Umdrehungen messen, nie schätzen.
        Die Drehrichtung folgt aus der Gangrichtung des Gewindes und daraus, ob die Feder über oder unter dem Teller sitzt; beides ansehen.
        In jeder Richtung die Umdrehungen zählen, bis Gewinde, Feder oder Reifen keinen Platz mehr haben.
        Einen festen Punkt wählen, der sich nicht mit dem Teller bewegt, und jede Tellerstellung von dort messen.
        Unter Last darf ein Teller nur gedreht werden, wenn der Hersteller des Verstellers es schriftlich erlaubt.

step-intake-pressures = Für jedes Rad den vereinbarten Kalt- und Betriebsdruck eintragen.
    .short = Vereinbarte Reifendrücke
    .detail =
        Kalt ist, was der Kunde morgens vorfindet; der Betriebsdruck stellt sich beim Fahren ein, und bei ihm wird gemessen.
        Vorn und hinten verschieden große Reifen haben eigene Drücke; links und rechts sind gleich, wenn nichts anderes vereinbart ist.
        Ein Reifen ist eine Feder: ein Zehntel Bar an einer Ecke ist auf den Waagen zu sehen.
        In den Grenzen bleiben, die Fahrzeug- und Reifenhersteller für Last und Geschwindigkeit zulassen.

step-intake-heights = Für jedes Rad die vereinbarte Fahrzeughöhe und den Messpunkt eintragen.
    .short = Vereinbarte Fahrzeughöhen
    .detail =
        Senkrecht von der Ebene der Waagen zu einem festen Punkt der Karosserie messen: Aufnahmepunkt, Schraube am Achsträger, bearbeitete Fläche.
        Nie die Radlaufkante verwenden, denn Blechteile sind nach Augenmaß angebaut und verbiegen sich.
        Die Punkte so beschreiben, dass jemand anders sie nächstes Jahr wiederfindet.
        Die Höhen müssen den Freigang lassen, den Hersteller und Gesetz verlangen.

step-intake-travel = Bauart jeder Achse, Radwege und Steifigkeit der Karosserie angeben.
    .short = Achsen und Radwege
    .detail =
        Eine Starrachse trägt beide Räder einer Achse; ihre Federn sehen Heben und Wanken verschieden, daher gerade quer von Feder zu Feder messen.
        Der Weg bis zu den Anschlägen ist der des Rades bei vereinbarter Fahrzeughöhe: aus den Herstellerdaten, oder mit ausgebauter Feder am gesicherten Fahrzeug gemessen.
        Kein Plan verbraucht dann mehr davon, als frei bleiben soll, denn ein Fahrzeug auf dem Anschlag lässt sich nicht auswiegen.
        Was nicht bekannt ist, so angeben; es wird nichts geraten, und der Plan kennt dann keinen Anschlag.
        Eine Karosserie, die sich verwindet, schluckt einen Teil der Verstellung; ohne Messung als steif stehen lassen.

step-intake-angles = Vereinbarten Sturz, Spur und Nachlauf eintragen.
    .short = Vereinbarte Radwinkel
    .detail =
        Der Sturz ist negativ, wenn das Rad oben nach innen steht; die Spur ist positiv, wenn das Rad vorn nach innen zeigt.
        Die Spur wird für ein Rad eingetragen; die Gesamtspur der Achse ist doppelt so groß.
        Ein Toleranzfenster sagt, wie weit ein Messwert vom Vereinbarten abweichen darf; ein engeres Fenster, als die Messgeräte auflösen, ergibt nur ‚noch unklar‘.
        Die Vorderräder richten sich nach der Linie, auf der die Hinterachse das Fahrzeug schiebt, damit das Lenkrad gerade steht.

step-intake-angle-adjusters = Eintragen, was eine Umdrehung jedes Verstellers bewirkt.
    .short = Winkelversteller
    .detail =
        Es steht in den Herstellerdaten; die erste Änderung, vor und nach der gemessen wird, berichtigt es.
        Ein Schritt ist der kleinste Teil einer Umdrehung, der sich stellen und beim Festziehen der Mutter halten lässt.
        Die Spreizung der Lenkachse steht in der Zeichnung des Herstellers; mit ihr wird der Nachlauf berechnet.

step-intake-angle-geometry = Eintragen, wie Radweg und Versteller die Winkel nebenbei verschieben.
    .short = Geometrie der Winkel
    .detail =
        Was Radweg beim Einfedern mit Sturz und Spur macht, sagt, wie weit eine Höhenänderung sie verschoben hat.
        Um es zu messen, Sturz und Spur eines Rades in zwei Höhen ablesen, bei ausgebauter Feder und gesichertem Fahrzeug; den Weg dazwischen und beide Änderungen eintragen.
        Wer den Sturz stellt, verschiebt auch die Spur, und der Nachlauf verschiebt beide: wo eine Zeichnung oder eine frühere Änderung sagt, um wie viel, trifft der erste Plan genauer.
        Eine Umdrehung zählt plus, wenn sie den Sturz nach außen oder den Nachlauf größer stellt; Vorspur, Sturz nach außen und mehr Nachlauf sind plus.
        Wo nicht, ‚nicht bekannt‘ wählen: dann wird es aus der ersten Änderung gelernt, vor und nach der gemessen wird.

step-intake-wishes = Vereinbartes Kreuzgewicht, Toleranzfenster und Grenzen eintragen.
    .short = Wünsche und Fenster
    .detail =
        Das Kreuzgewicht ist der Anteil der Masse auf vorn rechts und hinten links; gewünscht ist die Hälfte, wenn die Verwendung nichts anderes verlangt.
        Federteller verschieben Last nur auf einer einzigen Linie, deshalb lassen sich nicht alle Wünsche zugleich erfüllen: was Vorrang hat, muss vor der ersten Umdrehung feststehen.
        Verlangt die Verwendung ein anderes Kreuzgewicht als die Hälfte, etwa eine Strecke mit Kurven nach einer Seite, das vereinbarte eintragen.
        Traktion verlangt die Antriebsachse ausgeglichen, Bremsen die Vorderachse, gleiches Verhalten links und rechts das Kreuzgewicht.
        Wer sorgfältig einstellt, bleibt unter sieben bis acht Millimetern Höhenunterschied zwischen den Seiten und hört bei zehn auf.

step-intake-load = Fahrermasse, Kraftstoffstand und Flüssigkeiten eintragen.
    .short = Fahrer und Kraftstoff
    .detail =
        Das Fahrzeug wird so eingestellt, wie es gefahren wird; Ballast steht für den Fahrer mit Ausrüstung.
        Den Kraftstoffstand so angeben, dass er sich prüfen lässt: voll, oder halb nach Anzeige mit den nachgefüllten Litern.
        Für jede andere Flüssigkeit, auch Wasch- und Kühlwasser, die Marke nennen, an der sie steht.

step-intake-place = Hebezeug, Freisetzen der Reifen und Prüfperson an diesem Platz angeben.
    .short = Arbeitsplatz und Personen
    .detail =
        Reifen, die nicht gleiten können, halten das Fahrzeug durch Reibung hoch; deshalb braucht jedes Setzen Schiebeplatten oder ein Rollen über ebene Rollflächen.
        In der Wartezeit nach dem Setzen kriechen Gummi und Dämpfer zur Ruhe; eine halbe Minute ist ein guter Anfang.
        Wer die Radmuttern und das Protokoll prüft, muss jemand anders sein als die Person am Fahrzeug.

step-intake-pads = Waagen mit Genauigkeit und Kalibrierdatum eintragen.
    .short = Waagen und Termin
    .detail =
        Ein Messwert ist so viel wert wie die Waagen dahinter; deshalb werden sie mit ihrer Kennung genannt.
        Die Genauigkeit wird eingetragen, wie sie im Zertifikat steht, für etwa 95 %; steht dort keine, gilt die Toleranz des Herstellers.
        Der Nullpunkt ist, um wie viel eine leere Waage über den Auftrag wandern darf; die Kalibrierung, um welchen Teil der Last sie danebenliegen darf.

step-intake-instruments = Die übrigen Messgeräte mit ihren Kalibrierdaten eintragen.
    .short = Messgeräte und Termine
    .detail =
        Ein Messwert ist so viel wert wie das Messgerät dahinter; deshalb wird jedes mit seiner Kennung genannt.
        Der Nivellierlaser darf höchstens Klasse 2 haben und braucht ein Kalibrierdatum wie die Waagen.
        Das Programm sagt jetzt, ob diese Geräte die vereinbarten Fenster überhaupt beurteilen können; besser erfährt man es, bevor das Fahrzeug oben ist.
        Ist ein Termin überschritten, kann die Aufsicht es mit Begründung zulassen, und das Protokoll nennt es.
step-intake-angle-instruments = Jedes Messgerät der Achseinstellung mit seiner Genauigkeit eintragen.
    .short = Geräte der Achseinstellung
    .detail =
        Die Genauigkeit sagt, wie weit eine Ablesung in neunzehn von zwanzig Fällen höchstens abweicht, die Auflösung eingeschlossen.
        Der eigene Nullfehler des Neigungsmessers zählt hier nicht: er fällt durch Umdrehen des Geräts heraus.
        Linien können Schnüre oder Laser sein; es zählt, wie genau sich der Abstand einer Felge zu ihnen ablesen lässt.
        Das Programm sagt sofort, ob diese Geräte über die vereinbarten Fenster je entscheiden können.

