# Von der Grobeinstellung bis zu den spannungsfrei angeschlossenen Koppelstangen.

stage-rough = Grobeinstellung
stage-baseline = Ausgangszustand
stage-loop = Einstellrunden
stage-lock = Sichern
stage-locked = Kontrollmessung
stage-back = Koppelstangen an

step-rough-set = Federteller zu den vereinbarten Höhen hin drehen.
    .short = Federteller grob gedreht
    .detail =
        Ein Fahrzeug, das weit neben seinen Höhen steht, wird zuerst in ihre Nähe gebracht, denn große Änderungen verschieben später Lasten und Winkel wieder.
        Nur drehen, wenn die Achse frei hängt, der Konterring lose und das Gewinde sauber ist.
        Laut zählen und für jedes Rad eintragen, was wirklich gedreht wurde, plus hebt das Fahrzeug; null ist auch eine Antwort.
        Beim Tieferdrehen darauf achten, dass jede Feder zwischen ihren Sitzen gefangen bleibt.

step-rough-heights = Die vier Fahrzeughöhen messen.
    .short = Höhen grob gemessen
    .detail =
        An den vereinbarten Punkten senkrecht von der Waage messen, ohne sich an das Fahrzeug zu lehnen.
        Nahe genug sind fünf Millimeter neben dem Vereinbarten und drei im Unterschied der Seiten.
        Sind sie weiter weg, das Einstellen wählen, dann geht das Fahrzeug hoch; ist es so gewollt, lässt es eine Fachkraft mit Begründung zu.
        Ohne freigesetzte Reifen bedeuten diese Zahlen nichts, deshalb hat sich das Fahrzeug vorher gesetzt.

step-rough-set-angles = Sturz und Spur in die Nähe der vereinbarten Werte stellen.
    .short = Winkel grob eingestellt
    .detail =
        Ein halbes Grad ist hier nahe genug; genau eingestellt wird nach dem Ausgleich.
        Eintragen, was an jedem Versteller wirklich gedreht wurde, und 0, wo nichts gedreht wurde. Das Berechnete steht nur daneben.

step-rough-angles = Sturz und Spur an jedem Rad messen.
    .short = Winkel grob gemessen
    .detail =
        Diese Messung ist grob: ein halbes Grad ist jetzt nahe genug.
        Winkel, die weit danebenliegen, ziehen die Reifen beim Setzen zur Seite, und das hält das Fahrzeug hoch.
        Was weiter weg ist, wird vor dem Ausgangszustand in die Nähe gestellt, oder eine Fachkraft schreibt, warum nicht.

step-baseline-placed = Prüfen, dass jeder Reifen mitten auf seiner Waage steht.
    .short = Reifen mittig
    .detail =
        Höchstens dreißig Millimeter neben der Mitte ist gut; ein Reifen nahe am Rand belastet den Rahmen der Waage und verfälscht die Anzeige.
        Das Fahrzeug muss frei rollen können: Bremse gelöst, kein Gang, nichts an einem Reifen.
        Steht ein Reifen daneben, das Fahrzeug rollen oder neu anheben; die Waage nicht unter Last schieben.

step-baseline-read-1 = Lasten und Höhen ablesen, erstes Setzen.
    .short = Ausgangszustand, erstes Setzen
    .detail =
        Jede Waage dreimal im Abstand weniger Sekunden ablesen, ohne das Fahrzeug zu berühren, und alle drei Werte eintragen.
        Danach die Höhen an den vereinbarten Punkten messen, von vorn nach hinten, immer in derselben Reihenfolge.
        Hier beginnt das Fahrzeug, und alles Weitere wird damit verglichen; Zeit nehmen.
        Von den Waagen zurücktreten und andere vom Anlehnen abhalten.

step-baseline-read-2 = Lasten und Höhen ablesen, zweites Setzen.
    .short = Ausgangszustand, zweites Setzen
    .detail =
        Das Fahrzeug wurde noch einmal freigesetzt, durchgefedert und in Ruhe gelassen; sonst wurde nichts geändert.
        Nicht auf die ersten Zahlen hinarbeiten: ein bis drei Kilogramm Unterschied an einer Ecke sind üblich.
        Dieser Unterschied zeigt, wie gut sich das Fahrzeug wiederholt; die Ablesungen bei einem Setzen können das nicht.

step-baseline-read-3 = Lasten und Höhen ablesen, drittes Setzen.
    .short = Ausgangszustand, drittes Setzen
    .detail =
        Mit drei Setzvorgängen ist die Streuung verlässlich.
        Weicht eine Ecke um mehr als drei Kilogramm ab, zuerst die Ursache suchen: eine klemmende Platte, eine schleifende Bremse, ein Reifen am Rand der Waage, ein Kabel unter dem Fahrzeug, ein schwergängiges Gelenk.
        Keine Umdrehung eines Tellers ist mehr wert, als diese Streuung zulässt.

step-loop-turn-FL = Federteller vorn links wie geplant drehen.
    .short = Teller vorn links gedreht
    .detail =
        Den Plan zuerst als Bewegung des Fahrzeugs lesen, dann als Weg des Tellers, dann als Umdrehungen; passen die drei nicht zusammen, aufhören und fragen.
        Ring lose, Gewinde sauber, Schlüssel ganz auf dem Teller; laut zählen und den Teller markieren, damit eine volle Umdrehung zu sehen ist.
        Eintragen, was wirklich gedreht wurde, plus hebt das Fahrzeug, auch wenn es nicht der Plan war; null ist eine Antwort.
        Den Teller die ganze Zeit fühlen: wird er schwergängig, zurückdrehen und reinigen.

step-loop-turn-FR = Federteller vorn rechts wie geplant drehen.
    .short = Teller vorn rechts gedreht
    .detail =
        Auf der anderen Seite ist die Hand gespiegelt, der Teller nicht: im Uhrzeigersinn gilt immer von oben gesehen.
        Ring lose, Gewinde sauber, Schlüssel ganz auf dem Teller; laut zählen.
        Eintragen, was wirklich gedreht wurde, plus hebt das Fahrzeug; null ist eine Antwort.
        Nachsehen, dass das Federende nicht von seinem Anschlag gewandert ist.

step-loop-turn-RL = Federteller hinten links wie geplant drehen.
    .short = Teller hinten links gedreht
    .detail =
        Prüfen, dass es das Rad ist, das die Anzeige nennt: die falsche Ecke kostet eine ganze Runde.
        Ring lose, Gewinde sauber, Schlüssel ganz auf dem Teller; laut zählen, von oben gesehen.
        Eintragen, was wirklich gedreht wurde, plus hebt das Fahrzeug; null ist eine Antwort.
        Wo Feder und Dämpfer getrennt stehen, nachsehen, dass die Feder in beiden Sitzen sitzt.

step-loop-turn-RR = Federteller hinten rechts wie geplant drehen.
    .short = Teller hinten rechts gedreht
    .detail =
        Prüfen, dass es das Rad ist, das die Anzeige nennt.
        Ring lose, Gewinde sauber, Schlüssel ganz auf dem Teller; laut zählen, von oben gesehen.
        Eintragen, was wirklich gedreht wurde, plus hebt das Fahrzeug; null ist eine Antwort.
        Vor dem Weggehen noch einmal alle vier ansehen: Ringe lose, kein Werkzeug am Fahrzeug.

step-loop-read-1 = Lasten und Höhen nach dieser Runde ablesen, erstes Setzen.
    .short = Runde gemessen, erstes Setzen
    .detail =
        Drei Ablesungen an jeder Waage, Hände weg vom Fahrzeug, dann die Höhen in der üblichen Reihenfolge.
        Gemessen wird das Fahrzeug nach dem Drehen, also zählt die Messung nur mit demselben Ballast, Kraftstoff, Druck und denselben Türen wie vorher.
        Weicht sie stark von der Vorhersage ab, jetzt sagen: eine falsche Ecke oder Richtung zeigt sich hier zuerst.

step-loop-read-2 = Lasten und Höhen nach dieser Runde ablesen, zweites Setzen.
    .short = Runde gemessen, zweites Setzen
    .detail =
        Das Fahrzeug wurde freigesetzt, durchgefedert und wieder in Ruhe gelassen.
        Zwei Setzvorgänge, die an jeder Ecke auf drei Kilogramm übereinstimmen, genügen für das Urteil über eine Runde.
        Stimmen sie nicht überein, vor jedem weiteren Drehen suchen, was das Fahrzeug festhält.

step-loop-judge = Entscheiden, wie es weitergeht.
    .short = Runde beurteilt
    .detail =
        Die Linie ansehen: wo das Fahrzeug steht, wie sicher das ist und welche Punkte die Teller erreichen.
        Weitergehen ist richtig, wenn Kreuzgewicht und Höhen in ihren Fenstern liegen oder der nächste Gewinn einen Höhenunterschied kostet, der nicht vereinbart war.
        Es ist auch richtig, wenn der Rest kleiner ist, als die Messungen auflösen; wer für weniger dreht, verschiebt nur das Rauschen.
        Die Begründung in Worten schreiben, die der Kunde lesen kann.

step-loop-advise = Empfehlung für dieses Fahrzeug schreiben.
    .short = Empfehlung geschrieben
    .detail =
        Die Federn dieses Fahrzeugs lassen sich mit diesem Verfahren nicht einstellen; der Kunde erhält die Messung.
        Schreiben, was die Zahlen zeigen, was zu tun wäre (Masse verlegen, Teile ändern, Verfahren des Herstellers) und was nicht getan wurde.
        Nichts versprechen, was nicht gemessen wurde.

step-lock-rings = Jeden Konterring festziehen, ohne den Federteller zu bewegen.
    .short = Federteller gesichert
    .detail =
        Mit einem Schlüssel den Teller halten und mit dem anderen den Ring dagegen festziehen; die Markierung beobachten, denn ein Teller, der wandert, nimmt den Ausgleich mit.
        Voll ausgefedert versuchen, jede Feder von Hand zu drehen: sie muss in beiden Sitzen gefangen sein.
        Es muss mindestens so viel Gewinde tragen, wie der Hersteller des Verstellers verlangt.
        Den Abstand zum Anschlagpuffer notieren, wie er in Fahrhöhe sein wird.

step-lock-gap = Abstand zum Anschlagpuffer an jeder Ecke messen.
    .short = Pufferabstand gemessen
    .detail =
        Das Fahrzeug steht dabei auf den Rädern in der gemessenen Höhe; der Abstand ist der Weg, der bleibt.
        Ein viel kleinerer Abstand als vorher bedeutet, dass das Fahrzeug auf den Puffern fährt; der Fachkraft melden.

step-lock-bushes = Gummibuchsen in Fahrhöhe festziehen.
    .short = Buchsen festgezogen
    .detail =
        Eine Gummibuchse, die bei hängendem Rad geklemmt wird, wird zur Feder, die das Fahrzeug hochhält, und reißt früh.
        Mit dem Fahrzeug auf den Rädern die inneren Schrauben dieser Lenker lösen, durchfedern und in Fahrhöhe mit dem Drehmoment des Herstellers festziehen.
        Bremse angezogen oder beidseitig verkeilt, und nur der Arm kommt unter das Fahrzeug.
        Wo Lenker nur Kugelgelenke haben oder der Hersteller es anders vorgibt, das eintragen und befolgen.

step-lock-nuts = Radmuttern über Kreuz mit dem Drehmoment des Herstellers festziehen.
    .short = Radmuttern festgezogen
    .detail =
        Das Drehmoment für dieses Fahrzeug und dieses Rad aus den Herstellerdaten nehmen und eintragen, wie es am Schlüssel eingestellt ist.
        Über Kreuz in zwei Durchgängen festziehen, das Fahrzeug auf den Rädern und die Bremse angezogen.
        Gewinde und Sitze sind sauber und trocken, wenn der Hersteller nichts anderes sagt.
        Der Schlüssel knackt einmal; Weiterziehen streckt den Bolzen.

step-lock-nuts-second = Als zweite Person das Drehmoment jeder Radmutter prüfen.
    .short = Radmuttern, zweite Person
    .detail =
        Die zweite Person ist da, weil die erste sicher sein und trotzdem irren kann.
        Den Schlüssel selbst einstellen, nach der Angabe des Herstellers und nicht nach der ersten Person, und jede Mutter jedes Rades anfassen und zählen.
        Dreht sich eine Mutter noch vor dem Knacken, wird das ganze Rad neu angezogen.
        Der zweite Name steht neben dem ersten.

step-locked-read = Lasten und Höhen im gesicherten Zustand ablesen.
    .short = Kontrollmessung nach dem Sichern
    .detail =
        Das Sichern darf nichts bewegen: diese Messung gleicht der letzten im Rahmen der Setzstreuung.
        Hat eine Diagonale gewonnen und die andere verloren, ist ein Teller beim Festziehen seines Rings gewandert.
        In Fahrhöhe festgezogene Buchsen bewegen wenig; bewegen sie etwas, ist die neue Zahl die wahre.
        Vor dem Weitergehen klären, was davon zutrifft.

step-back-front = Vordere Koppelstange einstellen, bis sich die Schraube von Hand einschieben lässt.
    .short = Vordere Koppelstange zurück
    .detail =
        Das Fahrzeug steht mit Ballast auf den Waagen, wie es gefahren wird; in anderer Höhe wäre die Koppelstange für ein anderes Fahrzeug richtig.
        Nur die gelöste Koppelstange wird eingestellt: drehen, bis die Löcher fluchten und die Schraube mit zwei Fingern hineingeht, ohne Hebel und ohne Hammer.
        Die gedrehten Umdrehungen eintragen, Kontermuttern und Befestigung mit dem Drehmoment des Herstellers festziehen und jedes Teil zurückzählen.
        Bremse angezogen oder verkeilt, und nur der Arm kommt darunter.

step-back-front-read = Lasten und Höhen mit vorderer Koppelstange ablesen.
    .short = Vordere Koppelstange gemessen
    .detail =
        Das Fahrzeug ist wieder frei: Keile weg, Bremse gelöst, gesetzt.
        Lasten und Höhen müssen die der gesicherten Messung im Rahmen der Setzstreuung sein; eine Änderung heißt, dass der Stabilisator verspannt ist und Last trägt.
        Vorn wird vor dem Anschließen hinten gemessen, denn zwei Verspannungen können sich in den Lasten aufheben, während sich der Aufbau neigt.
        Hat sich etwas bewegt, das erneute Einstellen der Koppelstange wählen.

step-back-rear = Hintere Koppelstange einstellen, bis sich die Schraube von Hand einschieben lässt.
    .short = Hintere Koppelstange zurück
    .detail =
        Wie vorn: auf den Waagen, mit Ballast, Bremse angezogen oder verkeilt, nur der Arm unter dem Fahrzeug.
        Die gelöste Koppelstange drehen, bis sich die Schraube mit zwei Fingern einschieben lässt.
        Kontermuttern und Befestigung mit dem Drehmoment des Herstellers festziehen und den Freigang zu Schlauch, Reifen und Welle ansehen.
        Jedes Teil zurückzählen; bleibt eine Scheibe übrig, noch einmal nachsehen.

step-back-rear-read = Lasten und Höhen mit beiden Koppelstangen ablesen.
    .short = Beide Koppelstangen gemessen
    .detail =
        Keile weg, Bremse gelöst, gesetzt; drei Ablesungen, dann die Höhen.
        Mit der gesicherten Messung vergleichen, Lasten und Höhen, denn ein verspannter Stabilisator kann den Aufbau neigen und die Lasten fast unberührt lassen.
        Hat sich etwas bewegt, kommt nur die hintere Koppelstange infrage, denn die vordere war für sich allein richtig.

step-back-fixed = Verspannung der festen Koppelstangen notieren.
    .short = Feste Koppelstangen notiert
    .detail =
        Eine nicht einstellbare Koppelstange behält ihre Spannung, und das übergebene Kreuzgewicht ist das mit ihr.
        Schreiben, was ohne Lösen zu sehen und zu fühlen ist: eine von Hand leicht drehbare trägt wenig, eine stramme trägt Last.
        Bei großer Verspannung soll der Kunde wissen, dass eine einstellbare Koppelstange sie herausnimmt.
