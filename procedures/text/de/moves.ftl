# Was kommt, wann immer es gebraucht wird: anheben, Räder, ablassen, setzen, wiederherstellen; und das Sichern beim Abbruch.

stage-raise = Anheben
stage-wheels = Räder
stage-lower = Ablassen
stage-settle = Setzen
stage-restore = Wie vorher
stage-stop = Sichern

step-raise-check = Prüfen, dass niemand im Fahrzeug ist und nichts rutschen kann.
    .short = Frei zum Anheben
    .detail =
        In das Fahrzeug schauen und laut sagen, dass es leer ist; dort hat schon ein Kind oder ein Kunde gesessen.
        Am Ballast ziehen: verzurrt heißt, dass er sich nicht bewegt.
        Türen, Haube und Heckklappe sind zu, die Bremse ist angezogen oder die Räder sind verkeilt, und alle in der Nähe wissen, dass das Fahrzeug hochgeht.
        Das geschieht bei jedem Anheben, denn jedes Anheben ist neu.

step-raise-clear = Fahrzeug anheben, bis die Räder gerade frei sind.
    .short = Räder gerade frei
    .detail =
        Anhalten, sobald ein Blatt Karton unter alle vier Reifen passt.
        Jeden Aufnahmepunkt ansehen, während er die Last übernimmt: flach, mittig, nichts eingeklemmt.
        Kommt ein Rad viel später frei als die anderen, hängt das Fahrzeug schief: ablassen und neu ansetzen.
        Solange es sich bewegt, treten alle zurück.

step-raise-rock = Fahrzeug von Hand kräftig rütteln.
    .short = Fahrzeug gerüttelt
    .detail =
        Neben dem Fahrzeug stehend an einer Ecke längs und quer drücken, die Füße dort, wo sie beim Herunterkommen sicher wären.
        Es soll sich als Ganzes auf seinen Punkten bewegen und zurückkommen; es darf nicht rutschen, knarren oder sich auf einem Teller drehen.
        Besser fällt es aus Handbreite als von über dem Kopf.
        Rutscht es, ablassen und neu beginnen.

step-raise-abort-ground = Fahrzeug wieder auf den Boden ablassen.
    .short = Wieder auf dem Boden
    .detail =
        Ein Fahrzeug, das mit gerade freien Rädern nicht ruhig steht, wird nicht höher gehoben.
        Langsam ablassen, jeden Aufnahmepunkt ansehen und das Anheben mit eigener Bestätigung neu beginnen.

step-raise-abort-pads = Fahrzeug wieder auf die Waagen ablassen.
    .short = Wieder auf den Waagen
    .detail =
        Ein Fahrzeug, das mit gerade freien Rädern nicht ruhig steht, wird nicht höher gehoben.
        Langsam auf die Waagen ablassen, jeden Aufnahmepunkt ansehen und das Anheben mit eigener Bestätigung neu beginnen.

step-raise-lock = Fahrzeug in Arbeitshöhe auf Sperren oder Böcke setzen.
    .short = Fahrzeug auf Sperren
    .detail =
        Ohne Halt anheben, auf beiden Seiten das Einrasten der Sperren hören, dann ablassen, bis sie die Last tragen.
        Beim Wagenheber tragfähige Böcke auf beiden Seiten gleich hoch unter die Herstellerpunkte stellen und den Heber ablassen, bis sie tragen: erst Böcke, dann Hände.
        Von außen ansehen, dass jede Sperre oder jeder Bock trägt, bevor die erste Hand darunter kommt.
        Für eine Messung muss die Höhe jedes Mal dieselbe sein.

step-wheels-crack = Jede Radmutter um eine Vierteldrehung lösen.
    .short = Muttern angelöst
    .detail =
        Das geschieht, solange das Fahrzeug auf den Rädern steht: kräftiger Zug an einer Mutter kann ein angehobenes Fahrzeug von seinen Stützen ziehen.
        Eine Vierteldrehung genügt; die Muttern bleiben drauf, bis das Rad frei hängt.

step-wheels-off = An den Arbeitsecken die Räder abnehmen.
    .short = Räder ab
    .detail =
        Jedes Rad und seinen Platz markieren, damit es dorthin zurückkommt.
        An das Gleichgewicht denken: erst eine Achse, dann die andere, und nie kräftig an einer Mutter ziehen, solange das Fahrzeug oben ist.
        Die Räder flach ablegen, nicht in den Laufweg und nicht unter das Fahrzeug.
        Zu zweit oder mit einem Radheber heben.

step-wheels-on = Jedes Rad wieder auf seine Nabe setzen.
    .short = Räder auf den Naben
    .detail =
        Anlageflächen von Nabe und Rad sind sauber und trocken; ein Rostblättchen löst später ein Rad.
        Jede Mutter mehrere Umdrehungen von Hand ansetzen, damit kein Gewinde verkantet.
        Jedes Rad kommt an seinen markierten Platz.

step-wheels-nuts = Radmuttern über Kreuz anlegen.
    .short = Muttern angelegt
    .detail =
        Über Kreuz in kleinen Schritten anziehen, damit sich das Rad flach an die Nabe legt.
        Das Rad dabei halten und danach drehen: es muss rund laufen.
        Angelegt ist nicht festgezogen: das Drehmoment des Herstellers folgt auf den Rädern, mit einer zweiten Person, bevor gefahren wird.

step-wheels-springs = Prüfen, dass jede Feder in ihren Sitzen gefangen ist.
    .short = Federn im Sitz
    .detail =
        Mit einer Lampe den oberen und unteren Sitz jeder Feder ringsum ansehen.
        Das Drahtende steht an seinem Anschlag, eine Hilfsfeder ist nicht verkantet.
        Eine Feder auf der Kante ihres Sitzes springt unter Last mit einem Knall hinein und verschiebt alles Eingestellte.
        Finger nicht zwischen Windung und Sitz bringen.

step-lower-zeros = Wenn nichts die Waagen berührt, ihre Nullpunkte ablesen.
    .short = Nullpunkte neu gelesen
    .detail =
        Alle vier vor dem Ablassen ansehen: jede muss im Rahmen ihrer Auflösung null zeigen.
        Eine, die das nicht tut, wurde angestoßen, hat einen Stein oder ein Kabel auf sich oder ist gewandert; klären, dann nullen.
        Ein verschobener Nullpunkt stellt alle Lasten seit dem letzten guten infrage; also notieren.

step-lower-people = Alle Personen unter dem Fahrzeug herauszählen.
    .short = Personen herausgezählt
    .detail =
        Jeden Namen sagen und jedes Gesicht sehen; ein Paar Schuhe hinter dem fernen Rad wurde schon übersehen.
        Dann noch einmal herumgehen: Werkzeuge, Lampen, Wannen, Kabel und Böcke unter Fahrzeug und Tragarmen heraus.
        Von jetzt an geht niemand mehr darunter.

step-lower-pads = Wenn jeder Reifen über seiner Waage steht, das Fahrzeug langsam ablassen.
    .short = Auf die Waagen abgelassen
    .detail =
        Von den Sperren nehmen, beide Seiten ansehen und mit dem Blick auf die Reifen ablassen.
        Eine Handbreit über den Waagen anhalten und prüfen, dass jeder Reifen mittig aufsetzt.
        Liegt einer daneben, anheben und die Waage verschieben, nie die Waage unter Last.
        Sofort anhalten, wenn etwas hängt oder kippt.

step-lower-ground = Wenn der Boden frei ist, das Fahrzeug auf den Boden ablassen.
    .short = Auf den Boden abgelassen
    .detail =
        Noch einmal herumgehen: nichts und niemand, wo Reifen und Arme herunterkommen.
        Von den Sperren nehmen, beide Seiten ansehen und langsam ablassen, den Blick am Fahrzeug.
        Vor dem Wegschwenken der Arme die Bremse anziehen oder verkeilen.

step-settle-brake-on = Feststellbremse anziehen.
    .short = Bremse angezogen
    .detail =
        Von Hand probieren, ob sie hält; eine Bremse, an der gerade gearbeitet wurde, hält vielleicht nicht.
        Niemand greift unter ein Fahrzeug auf seinen Rädern, bevor Bremse oder Keile es halten.
        Mit angezogener Bremse wird nicht gemessen, deshalb verlangt das Programm später, sie wieder zu lösen.

step-settle-brake-on-electric = Elektrische Feststellbremse einschalten.
    .short = Elektrische Bremse an
    .detail =
        Manche schließen von selbst, wenn die Zündung ausgeht, und öffnen, wenn eine Tür zufällt.
        Die Anleitung des Herstellers befolgen und von Hand probieren, dass das Fahrzeug gehalten ist.

step-settle-chocks-on = Keile vor und hinter die Räder legen.
    .short = Keile gelegt
    .detail =
        In beide Richtungen, mindestens an den Rädern einer Achse, und zwar einer, die auf ihren Rädern bleibt.
        Mit dem Fuß andrücken, die Hand aus dem Spalt.
        Vor jeder Messung kommen sie wieder weg, denn ein Keil am Reifen trägt Last.

step-settle-chocks-away = Keile wegnehmen.
    .short = Keile weg
    .detail =
        Sicherstellen, dass das Fahrzeug nicht an einem Keil lehnt: einer, der sich schwer ziehen lässt, hält das Fahrzeug.
        Seitlich herausziehen, neben dem Fahrzeug stehend.
        In Reichweite und frei von den Reifen ablegen.

step-settle-brake-off = Wenn eine Person neben dem Fahrzeug steht, Bremse lösen und Leerlauf einlegen.
    .short = Bremse gelöst, Leerlauf
    .detail =
        Von der Bremse gehaltene Reifen können beim Einfedern nicht rollen, und das Fahrzeug hängt an ihnen.
        Auf Waagen und Platten ist das Fahrzeug jetzt frei: eine Person bleibt daneben, niemand davor oder dahinter.
        Eine elektrische Bremse kann sich beim Öffnen einer Tür oder beim Ausschalten selbst wieder anziehen; den Servicemodus des Herstellers nutzen und darauf hören.

step-settle-brake-off-electric = Elektrische Feststellbremse ausschalten.
    .short = Elektrische Bremse aus
    .detail =
        Für die Messung müssen sich die Räder drehen können.
        Mit dem Servicemodus des Herstellers, wo es ihn gibt, verhindern, dass sich die Bremse selbst schließt, und das Fahrzeug nicht allein lassen.

step-settle-steering = Lenkung geradeaus stellen.
    .short = Lenkung gerade
    .detail =
        Durch den Nachlauf hebt ein eingeschlagenes Rad eine vordere Ecke und senkt die andere, und die Lasten folgen.
        Durch das Fenster greifen und sich nicht auf den Schweller stützen.
        Danach muss sich das Fahrzeug neu setzen.

step-settle-plates = Schiebeplatten unter allen vier Reifen freigeben.
    .short = Schiebeplatten frei
    .detail =
        Die Stifte ziehen und sehen, dass jede Platte in jeder Richtung einige Millimeter schwimmt.
        Eine Platte an ihrem Rand hält den Reifen fest wie Klebstoff.
        Stifte kommen in die Ablage, nicht auf den Boden, und niemand steht vor oder hinter dem Fahrzeug.

step-settle-roll = Fahrzeug von den Waagen und zurück rollen, mindestens eine Reifenumdrehung weit.
    .short = Herunter- und zurückgerollt
    .detail =
        Nur ein rollender Reifen lässt den seitlichen Halt los, der das Fahrzeug hochhält.
        Langsam an einem Rad oder einer festen Stelle schieben, eine Person steht zum Anhalten daneben.
        Die Rollflächen liegen eben mit den Waagen, und jeder Reifen kommt in die Mitte zurück.
        Nicht zum Anhalten bremsen: ausrollen lassen, sonst ist der Halt wieder da.

step-settle-bounce = Fahrzeug an beiden Enden von Hand durchfedern.
    .short = Beide Enden durchgefedert
    .detail =
        Drei- oder viermal über der Achsmitte drücken, damit beide Seiten gleich gehen, und das letzte Mal von selbst ausschwingen lassen.
        Auf eine feste Stelle der Karosserie drücken, nicht auf Blech, Flügel oder Leuchte.
        Das bringt die Reibung von Gelenken und Dämpfern zur Mitte.
        Das Fahrzeug danach nicht mit der Hand beruhigen.

step-settle-wait = Warten, bis die Zeit abgelaufen ist.
    .short = Fahrzeug in Ruhe
    .detail =
        Gummi kriecht nach einer Bewegung noch eine Weile, und die Waagen sehen es.
        Von den Waagen zurücktreten, niemanden dicht vorbeigehen lassen und bei Zug das Tor schließen.
        Vor dem Ablesen sollen die Zahlen stehen.

step-settle-touch = Prüfen, dass nur die Reifen das Fahrzeug tragen.
    .short = Nur Reifen tragen
    .detail =
        Herumgehen: Tragarme und Heber weg, Keile und Schläuche weg, kein gespanntes Kabel, keine angelehnte Tür, kein Messgerät am Rad, niemand im Fahrzeug und keine Hand am Kotflügel.
        Ein Wagen, der am Stoßfänger lehnt, hat schon manche Stunde gekostet.
        Was das Fahrzeug berührt, trägt einen Teil davon.

step-restore-ballast = Ballast für den Fahrer wieder verzurren.
    .short = Ballast wieder drin
    .detail =
        Dieselbe Masse an denselben Stellen, Sitz und Fußraum, wie beim ersten Mal eingetragen.
        Jedes Stück verzurren und kräftig daran ziehen.
        Ballast, der eine Handbreit weiter außen liegt, ist auf den Waagen zu sehen.

step-restore-pressures = Jeden Reifen wieder auf seinen vereinbarten Betriebsdruck einstellen.
    .short = Betriebsdrücke wieder eingestellt
    .detail =
        Dasselbe Messgerät wie vorher, den Wert von derselben Seite angefahren.
        Nach einer Fahrt sind die Reifen warm; warten, bis alle vier dieselbe Temperatur haben.
        Kappen aufschrauben.

step-restore-fuel = Kraftstoff wieder auf den vereinbarten Stand bringen.
    .short = Kraftstoff wieder wie vereinbart
    .detail =
        Die Fahrt hat etwas verbraucht; eine Messung gilt nur für den vereinbarten Stand.
        Auf den eingetragenen Stand füllen oder ablassen, mit der Vorsicht, die Kraftstoff verlangt.

step-restore-onto-pads = Fahrzeug auf die Waagen rollen.
    .short = Wieder auf den Waagen
    .detail =
        Zuerst ansehen: Waagen, Platten und Rollflächen an ihrem Platz, Kabel aus der Bahn der Reifen, Platten verstiftet.
        Eine Person schiebt und lenkt neben dem Fahrzeug mit der Bremse in Reichweite, eine passt auf, und niemand steht davor oder dahinter.
        Mit jedem Reifen mitten auf seiner Waage anhalten, dann die Bremse anziehen und sehen, dass sie hält.

step-restore-off-pads = Fahrzeug von den Waagen auf den Boden rollen.
    .short = Von den Waagen gerollt
    .detail =
        Zwei Personen, auf jeder Seite eine, und jemand hält einen Keil bereit.
        Im Stand die Bremse anziehen; die Waagen bleiben liegen und ausgerichtet.

step-stop-people = Alle Personen unter und im Fahrzeug herauszählen.
    .short = Personen herausgezählt
    .detail =
        Beim Abbrechen eilen Menschen, deshalb mit den Menschen beginnen.
        Jeden Namen sagen und jedes Gesicht sehen.
        Niemand geht zurück hinein oder darunter, um etwas zu holen.

step-stop-car = Fahrzeug auf den Rädern abstellen oder auf den Sperren sichern.
    .short = Fahrzeug gesichert
    .detail =
        Am besten unten auf den Rädern, mit angezogener Bremse oder beidseitigen Keilen.
        Das Programm weiß, wie es steht: ein Fahrzeug mit gerade freien Rädern wird zuerst abgelassen.
        Fehlt ein Rad oder sitzt eine Feder nicht, bleibt es auf eingerasteten Sperren oder tragfähigen Böcken, und die Bühne wird abgeschaltet und abgeschlossen.
        Ein Fahrzeug nie auf einem Heber und nie mit gerade freien Rädern stehen lassen.

step-stop-loose = Alles aufschreiben, was an diesem Fahrzeug lose ist.
    .short = Lose Teile aufgeschrieben
    .detail =
        Wer als Nächstes kommt, weiß nichts: Koppelstangen, Federteller, Muttern, Räder, Drücke, Ballast und den Ort jedes Teils aufschreiben.
        Eine gelöste Koppelstange festbinden, damit sie beim Bewegen nirgends anschlägt.
        Ballast herausnehmen oder verzurren; sehen, dass an montierten Rädern jede Mutter angelegt ist.

step-stop-tag = Anhänger ‚Nicht fahren‘ an das Lenkrad hängen.
    .short = Fahrzeug gekennzeichnet
    .detail =
        Ein Anhänger am Lenkrad und der Schlüssel bei der verantwortlichen Person: ein Fahrzeug, das fertig aussieht, wird weggefahren.
        Der Anhänger sagt, was lose ist, wer abgebrochen hat und wen man fragt.
        Damit endet der Auftrag als abgebrochen; die Aufzeichnung bis hier bleibt erhalten.
