# Vom Rundgang bis zum Fahrzeug, wie es gefahren wird.

stage-walk = Rundgang
stage-lift = Erstes Anheben
stage-raised = Sichtprüfung oben
stage-pads = Waagen
stage-links = Koppelstangen ab
stage-used = Fahrzustand

step-walk-tyres = Reifen mit der Vereinbarung vergleichen.
    .short = Reifen geprüft
    .detail =
        Größe und Datum auf allen vier Flanken lesen; ungleiche Reifen haben ungleiche Radien und Steifigkeiten, und die Waagen zeigen dann den Reifen statt der Feder.
        Nach Schnitten, Beulen, Cordfäden und Nägeln sehen und tasten, auch an der inneren Schulter.
        Ungleichmäßiger Verschleiß ist eine Nachricht der alten Einstellung: notieren.
        Ein Reifen, der nach Hersteller oder Gesetz nicht in Ordnung ist, beendet den Auftrag.

step-walk-leaks = Nach Lecks, Kraftstoffgeruch und losen Teilen suchen.
    .short = Lecks und lose Teile
    .detail =
        Zuerst auf den Boden unter dem Fahrzeug sehen, dann unter die Haube und um jede Bremse.
        Bei Kraftstoffgeruch sofort aufhören: keine Lampe, kein Schalter, keine Bühne, bis die Quelle gefunden und die Luft rein ist.
        Abstand zu Auspuff und Bremsscheiben halten; ein gefahrenes Fahrzeug bleibt eine Stunde heiß.
        Ein lose hängendes Blech oder ein loser Unterboden wird jetzt befestigt, denn er fällt sonst auf die Person darunter.

step-walk-extinguisher = Sicherungsstift des eingebauten Feuerlöschers einsetzen.
    .short = Löscher gesichert
    .detail =
        Flasche, Zuggriff und äußeren Auslöser finden, bevor man sich in das Fahrzeug beugt.
        Den Stift oder Sicherungsschalter einsetzen, den der Hersteller der Anlage vorsieht, und einen Anhänger dorthin hängen, wo der Fahrer ihn sieht.
        Eine auslösende Anlage füllt den Innenraum sofort mit Pulver oder Gas, während jemand darin sitzen kann.
        Am Ende kommt der Stift wieder heraus, und das Programm fragt danach.

step-walk-high-voltage = Hochvoltsystem nach Herstellerverfahren freischalten.
    .short = Hochvolt freigeschaltet
    .detail =
        Das tut nur, wer für Hochvolt geschult und befugt ist, mit dem Herstellerverfahren in der Hand.
        Bis zum Ende befolgen: abgeschaltet, gegen Wiedereinschalten gesichert, gewartet, Spannungsfreiheit festgestellt.
        Wo der Hersteller diese Arbeit ohne Freischalten erlaubt, das im Auftrag vermerken.
        Ein orangefarbenes Kabel nahe Federteller, Koppelstange oder Aufnahmepunkt bleibt in jedem Fall außer Reichweite der Werkzeuge.

step-walk-lifting-mode = Hebebühnenmodus der Federung einschalten.
    .short = Hebebühnenmodus an
    .detail =
        Niveauregulierung, Luft- und Hydraulikfederung bewegen sich von selbst, wenn die Räder hängen, eine Tür aufgeht oder das Fahrzeug abkühlt.
        Den Modus nach Herstellerverfahren einschalten und an Anzeige oder Lampe bestätigen lassen.
        Dabei die Hände aus den Radhäusern lassen und feststellen, was den Modus beendet: oft der erste gefahrene Meter.

step-walk-lifting-points = Aufnahmepunkte in den Herstellerdaten suchen.
    .short = Aufnahmepunkte gefunden
    .detail =
        Nachschlagen; ein Schweller, der stark aussieht, kann eine Verkleidung sein.
        Mit einer Lampe zu jedem Punkt gehen und sehen, dass er da, trocken, nicht durchgerostet und nicht geflickt ist.
        Wo Boden, Batterie oder Verkleidung ihn verdecken, nennt der Hersteller den Adapter.
        Eintragen, wo die Punkte gefunden wurden, damit die nächste Person nicht raten muss.

step-lift-equipment = Hebezeug an den Herstellerpunkten vorbereiten.
    .short = Hebezeug vorbereitet
    .detail =
        Das Typenschild lesen: geprüft, nicht überfällig, und die Tragfähigkeit liegt über dem Fahrzeug mit Kraftstoff und Ballast.
        Arme oder Böcke genau an die Punkte setzen, mit den Adaptern, die der Hersteller nennt.
        Auf zwei Säulen gehört der Schwerpunkt zwischen die Säulen; bedenken, wo Motor, Batterie und Ballast sitzen.
        Beim Wagenheber die Räder in beide Richtungen verkeilen und die Böcke bereitstellen: erst Böcke, dann Hände.

step-lift-look = Wenn das Fahrzeug auf den Sperren steht, jeden Aufnahmepunkt ansehen.
    .short = Punkte angesehen
    .detail =
        Zuerst von außen ringsum sehen, erst dann darunter gehen.
        Jeder Punkt sitzt mittig und flach auf seinem Gummi, nichts ist verbogen, nichts eingeklemmt: kein Rohr, kein Kabel, kein Falz.
        Ein Fahrzeug, das gleich rutscht, gibt kleine Zeichen: ein gedrehter Teller, frisches Metall, ein Knarren.
        Sieht etwas falsch aus, ablassen und neu ansetzen.

step-raised-play = Lager, Gelenke und Buchsen auf Spiel prüfen.
    .short = Spiel geprüft
    .detail =
        Jedes Rad oben und unten, dann links und rechts fassen und kräftig rütteln; danach an jedem Gelenk und jeder Buchse behutsam hebeln.
        Mit Spiel steht das Rad jedes Mal anders, keine Einstellung hält und keine Messung wiederholt sich.
        Beim Drehen der freien Räder auf rauen Lauf achten.
        Verschleiß nach den Grenzen des Herstellers beurteilen; ein verschlissenes Sicherheitsteil wird vor dem Einstellen ersetzt.

step-raised-dampers = Dämpfer und Federn Ecke für Ecke prüfen.
    .short = Dämpfer und Federn
    .detail =
        Ein schwitzender Dämpfer ist verschlissen, und ein Gasdruckdämpfer hebt seine Ecke ein wenig; beides gehört in den Auftrag.
        Jede Feder muss gerade sitzen, das Federende an seinem Anschlag.
        Die Klicks nach Herstellerangabe von ganz hart zählen, Zahl und Richtung notieren und wieder so einstellen, wie es war.
        Hat ein Dämpfer keine Klicks, ‚keine‘ eintragen.

step-raised-collars = Konterring jedes Federtellers lösen.
    .short = Konterringe gelöst
    .detail =
        Zuerst das Gewinde bürsten und wischen; ein Sandkorn kann einen Aluminiumteller auf seinem Rohr festfressen.
        Mit einem Schlüssel den Teller halten und mit dem anderen den Ring lösen, damit der Teller bleibt, wo er war.
        Probieren, ob sich der Teller mit seinem Schlüssel frei dreht; nie einen Hammer nehmen und nie ein trockenes Gewinde zwingen.
        Voll ausgefedert muss die Feder noch zwischen ihren Sitzen gefangen sein.

step-raised-bushes = Geklemmte Gummibuchsen lösen.
    .short = Buchsen gelöst
    .detail =
        Eine geklemmte Gummibuchse ist selbst eine Feder: sie hält die Höhe, in der sie festgezogen wurde.
        Diejenigen lösen, die der Hersteller in Fahrhöhe klemmt, damit der Ausgangszustand ohne sie gemessen wird; festgezogen werden sie beim Sichern in Fahrhöhe.

step-raised-bars = Stabilisatoren und Koppelstangen prüfen.
    .short = Stabilisatoren geprüft
    .detail =
        Nach Rissen an den Biegungen, verschlissenen Lagern und verbogenen Koppelstangen sehen.
        Jede Koppelstange von Hand drehen: ein festes Kugelgelenk hält Spannung, gleich bei welcher Länge.
        Gewinde und Kontermuttern müssen gängig sein, damit sich die Koppelstange später einstellen lässt.

step-pads-place = Unter die Mitte jedes Rades eine Waage legen.
    .short = Waagen ausgelegt
    .detail =
        Die Waagen nach Radstand und Spurweite auslegen, damit jeder Reifen höchstens dreißig Millimeter neben der Mitte aufsetzt.
        Von der Seite einschieben und Kopf und Körper nicht unter das Fahrzeug bringen.
        Jede Waage muss auf allen Füßen stehen und darf nicht wackeln; werden Schiebeplatten benutzt, liegen auf allen vier gleich dicke.
        Kabel außen herum führen, aus dem Laufweg und aus der Bahn der Reifen.

step-pads-survey = Höhe jeder Waage mit dem Laser messen.
    .short = Waagen vermessen
    .detail =
        Den Laser dort aufstellen, wo er alle vier Waagen sieht, und ihn warm und ruhig werden lassen.
        In der Mitte jeder Waage mit derselben senkrecht gehaltenen Latte messen; eine höhere Waage erhält die größere Zahl.
        Den Strahl unter oder über Augenhöhe und von blankem Metall fernhalten.
        Diese vier Höhen sagen, wie dick die Unterlagen sein müssen.

step-pads-shims = Jede Waage nach der Vermessung unterlegen.
    .short = Waagen unterlegt
    .detail =
        Nur die Verwindung der vier Waagen verschiebt Last über Kreuz; eine leicht geneigte Ebene schadet kaum.
        Ein Millimeter Verwindung an einer Waage macht bei einem steifen kleinen Fahrzeug mehr als ein Kilogramm je Ecke aus.
        Feste, ebene Bleche unter jeden Fuß legen und die wirklich benutzte Dicke eintragen.
        Eine Waage, die danach wackelt, ist schlechter als eine, die zu tief liegt.

step-pads-level = Alle vier Waagen von zwei Standorten des Lasers messen.
    .short = Waagen ausgerichtet
    .detail =
        Den Laser um eine halbe Drehung drehen oder an das andere Ende stellen und alle vier noch einmal messen.
        Ein schiefer Laser ist beim zweiten Mal andersherum schief, der Mittelwert ist frei davon.
        Die erste Reihe nicht in die zweite abschreiben: ihr Unterschied zeigt, was der Laser taugt.
        Was sich nicht unterlegen lässt, wird rechnerisch korrigiert, und seine Unsicherheit bleibt im Ergebnis.

step-pads-zero = Wenn die Waagen warm und leer sind, auf null setzen.
    .short = Waagen auf null
    .detail =
        Den Waagen die Anwärmzeit geben, die ihr Hersteller verlangt; kalte Messzellen wandern.
        Nichts darf auf einer Waage liegen oder an ihr lehnen, außer Schiebeplatten, die dort bleiben.
        Jede Null eine halbe Minute beobachten: sie muss stehen.
        Die Nullpunkte werden jedes Mal gelesen, wenn das Fahrzeug oben ist, denn ein gewanderter Nullpunkt verdirbt alle Lasten seit dem letzten.

step-links-front-release = Wenn beide Vorderräder gleich hoch hängen, ein Ende einer vorderen Koppelstange lösen.
    .short = Vordere Koppelstange gelöst
    .detail =
        Stehen die Räder auf gleicher Höhe, ist der Stabilisator nicht verspannt, und die Schraube kommt ohne Sprung heraus.
        Sitzt die Schraube stramm, ist er noch verspannt: ein Rad mit dem Heber leicht anheben, bis sie frei ist, und Gesicht und Hände aus dem Weg der Koppelstange halten.
        Das lose Ende frei von Schlauch, Reifen und Welle festbinden und von Hand prüfen, dass sich der Stabilisator frei bewegt.
        Jedes abgenommene Teil zählen, auch die Scheiben, und dort ablegen, wo es wiedergefunden wird.

step-links-rear-release = Wenn beide Hinterräder gleich hoch hängen, ein Ende einer hinteren Koppelstange lösen.
    .short = Hintere Koppelstange gelöst
    .detail =
        Wie vorn: Räder auf gleicher Höhe, Stabilisator entlastet, eine Schraube, die herausgleitet.
        Gleitet sie nicht, ist der Stabilisator verspannt und schleudert die Koppelstange beim Lösen weg; zuerst entlasten.
        Das lose Ende frei von Schlauch, Reifen, Auspuff und Welle festbinden und den Stabilisator von Hand bewegen.
        Die Teile zählen; ebenso viele müssen wieder zurück.

step-used-fuel = Kraftstoff und Flüssigkeiten auf den vereinbarten Stand bringen.
    .short = Kraftstoff und Flüssigkeiten
    .detail =
        Zehn Liter Kraftstoff wiegen mehr als sieben Kilogramm und sitzen selten in der Mitte des Fahrzeugs.
        Nach Herstellerverfahren füllen oder ablassen, im Freien oder mit Absaugung, ohne Flamme, Lampe und Schalter in der Nähe und mit Feuerlöscher in Reichweite.
        Den Behälter vor dem Gießen mit dem Fahrzeug elektrisch verbinden.
        Verschüttetes aufwischen und warten, bis der Geruch weg ist.

step-used-kit = Lose Gegenstände aus dem Fahrzeug nehmen.
    .short = Lose Gegenstände heraus
    .detail =
        Kofferraum, Handschuhfach, Türtaschen und unter den Sitzen: alles, was im Fahrbetrieb nicht mitfährt.
        Eine Werkzeugtasche in einer hinteren Ecke sieht aus wie eine falsche Feder.
        Was vereinbart mitfährt, etwa ein Reserverad, bleibt an seinem Platz und ist verzurrt.

step-used-ballast = Ballast für den Fahrer im Sitz und im Fußraum verzurren.
    .short = Ballast verzurrt
    .detail =
        Sandsäcke, Wasserkanister oder Blei nehmen, nie einen Menschen: niemand sitzt in einem Fahrzeug, das angehoben wird oder unter dem jemand arbeitet.
        Etwa ein Fünftel gehört für die Beine in den Fußraum, der Rest tief in den Sitz.
        Jedes Stück so verzurren, dass es sich auch bei kräftigem Zug nicht bewegt; rutschender Ballast ändert jede Messung und kann das Fahrzeug auf der Bühne verschieben.
        Kleine Stücke tragen, den Rücken gerade halten und Sitzverkabelung und Airbag meiden.

step-used-pressures = Jeden Reifen auf seinen vereinbarten Betriebsdruck einstellen.
    .short = Betriebsdrücke eingestellt
    .detail =
        Für alle vier dasselbe Messgerät nehmen und den Wert jedes Mal von derselben Seite anfahren.
        Ein Reifen in der Sonne zeigt mehr als sein Nachbar im Schatten; zuerst auf gleiche Temperatur kommen lassen.
        Eintragen, was das Gerät zeigt, jeder höchstens drei hundertstel Bar neben dem Vereinbarten.
        Kappen wieder aufschrauben, denn ein undichtes Ventil verdirbt die Messungen des Nachmittags.

step-used-shut = Türen, Haube und Heckklappe schließen.
    .short = Fahrzeug geschlossen
    .detail =
        Eine offene Tür hängt Dutzende Kilogramm nach außen.
        Die Lenkung geradeaus stellen, notfalls durch das Fenster, damit das Fahrzeug nicht mehr berührt wird.
        Das Bremspedal pumpen, bis es fest ist: zurückgedrückte Beläge lassen beim ersten Tritt keine Bremse.
