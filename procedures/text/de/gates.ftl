# Was jeder Prüfpunkt verlangt; `.help`: was zu tun ist, wenn er nicht erfüllt ist.

gate-checks-yes = Jeder Punkt wurde in Ordnung gefunden.
    .help = In Ordnung bringen, was nicht stimmt, und den Schritt neu eintragen; wo das nicht geht, den Auftrag anhalten oder abbrechen.

gate-car-possible = Die Eingaben ergeben ein mögliches Fahrzeug.
    .help = Die genannte Zahl mit den Herstellerdaten vergleichen und nach falscher Einheit oder verrutschter Ziffer suchen.

gate-instruments-in-date = Kein Messgerät ist über seinem Kalibriertermin.
    .help = Ein anderes, gültig kalibriertes Messgerät nehmen oder die Aufsicht fragen, die es mit Begründung zulassen kann.

gate-instruments-resolve = Diese Messgeräte können die vereinbarten Fenster beurteilen.
    .help = Genauere Messgeräte nehmen, ein weiteres Fenster vereinbaren oder die Aufsicht fragen, die es mit Begründung zulassen kann.

gate-second-person = Jemand anders als die erste Person hat geprüft.
    .help = Eine zweite Person rufen, die sich anmeldet und jeden Punkt mit eigenen Händen prüft.

gate-counted-back = Ebenso viele Teile kamen zurück, wie abgenommen wurden.
    .help = Das fehlende Teil auf Werkbank, Boden und unter dem Fahrzeug suchen, dann neu zählen.

gate-pads-level = Die Waagen sind für die vereinbarten Fenster eben genug.
    .help = Die Waagen wie angezeigt unterlegen und von beiden Standorten neu messen oder die Aufsicht fragen, die es mit Begründung zulassen kann.

gate-pressures = Jeder Reifen hat seinen vereinbarten Druck.
    .help = Den genannten Reifen einstellen, alle vier auf gleiche Temperatur kommen lassen und neu messen.

gate-heights-near = Die Höhen und ihr Unterschied zwischen den Seiten liegen nahe am Vereinbarten.
    .help = Zuerst das Einstellen der Höhen wählen oder eine Fachkraft fragen, die es mit Begründung zulassen kann.

gate-angles-near = Sturz und Spur liegen nahe am Vereinbarten.
    .help = Den genannten Winkel ändern und neu messen oder eine Fachkraft fragen, die es mit Begründung zulassen kann.

gate-settles-agree = Die Setzvorgänge dieser Messung stimmen überein.
    .help = Nach klemmender Platte, schleifender Bremse, außermittigem Reifen oder Kabel unter dem Fahrzeug suchen, dann neu setzen und messen.

gate-plausible = Die Messung kann für dieses Fahrzeug stimmen.
    .help = Nach vertauschten Ecken, falscher Einheit, einer Tür, einer Hand oder einem Kabel am Fahrzeug suchen, dann neu messen.

gate-windows = Kreuzgewicht und Höhen liegen in ihren Fenstern.
    .help = Noch einmal drehen oder eine Fachkraft fragen, die es zulassen kann, mit der Begründung, warum dies der bessere Stand ist.

gate-unchanged = Lasten und Höhen sind im Rahmen der Setzstreuung die der Messung davor.
    .help = Noch einmal setzen und messen; bleibt es dabei, suchen, was sich bewegt hat (ein Teller, eine Buchse, eine verspannte Koppelstange), und es in Ordnung bringen.

gate-waited = Das Fahrzeug hat die ganze Wartezeit geruht.
    .help = Das Fahrzeug in Ruhe lassen, bis die Zeit abgelaufen ist, und neu durchfedern, wenn es jemand berührt hat.

gate-travel-left = Der Versteller hat den Weg, der eingetragen wurde.
    .help = Vorzeichen und Zahl der Umdrehungen prüfen; ist der Teller am Ende, aufhören und einen anderen Plan verlangen.

gate-bump-gap = Kein Rad steht auf seinem Anschlagpuffer, und jedes behält den vereinbarten Weg.
    .help = Am ruhenden Fahrzeug neu messen; ist der Abstand wirklich klein, vor dem Fahren nach Distanzstücken und der Fahrhöhe sehen.

gate-same-as = Die Zahl ist die beim ersten Mal eingetragene.
    .help = Neu wiegen; was zurückkommt, muss sein, was herausgenommen wurde.

gate-pads-still = Die Waagen stehen zueinander wie beim Nivellieren.
    .help = Nach dem Fuß der genannten Waage sehen und das Nivellieren wieder öffnen, oder eine Aufsicht lässt es mit Begründung durch.

gate-rims-true = Keine Felge hat mehr Schlag, als sie darf.
    .help = Nach der Felge sehen, eine verbogene tauschen und neu messen, oder eine Aufsicht lässt es mit Begründung durch.

gate-angles-agreed = Sturz, Spur und Nachlauf liegen in ihren Fenstern.
    .help = Den genannten Winkel ändern und neu messen oder eine Fachkraft fragen, die es mit Begründung zulassen kann.

gate-angles-resolve = Diese Geräte können über die Fenster der Winkel entscheiden.
    .help = Ein feineres Gerät nehmen, ein weiteres Fenster vereinbaren oder die Aufsicht fragen, die es mit Begründung zulassen kann.
