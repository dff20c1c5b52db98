# Gefahren. Der Name; `.line`: ein Gebot für die andere Seite der Halle; `.text`: Gebot, Gefahr und Folge, und wem zu folgen ist.
# Das Signalwort steht im Verfahren (ANSI Z535.4, ISO 3864): bei GEFAHR wird, bei WARNUNG kann jemand sterben oder schwer
# verletzt werden, bei VORSICHT kann jemand leichter verletzt werden, HINWEIS meint keine Verletzung.

-rules =
    Angaben der Hebebühnen- und Fahrzeughersteller und die örtlichen Vorschriften befolgen.
    An Sicherheitsteilen arbeiten nur geschulte und befugte Personen.
-rules-short = Die Herstellerangaben und die örtlichen Vorschriften befolgen.

hazard-raised-vehicle = Angehobenes Fahrzeug
    .line = Fernbleiben, bis es gesichert ist
    .text =
        Keinen Körperteil unter das Fahrzeug bringen, bis es gerüttelt ist und auf eingerasteten Sperren oder tragfähigen Böcken steht.
        Ein Wagenheber allein hält kein Fahrzeug.
        Ein Fahrzeug, das von seinem Hebezeug rutscht, kommt schneller herunter, als man ausweichen kann, und wird Menschen tödlich zerquetschen.
        { -rules }

hazard-people-aboard = Menschen im angehobenen Fahrzeug
    .line = Niemand im Fahrzeug
    .text =
        Vor dem Anheben alle aus dem Fahrzeug zählen und niemanden hineinlassen, solange es oben ist oder jemand darunter arbeitet.
        Wer sich darin bewegt, verschiebt das Gewicht auf der Bühne; das Fahrzeug wird fallen und Menschen darin und darunter tödlich verletzen.
        Ballast ersetzt den Fahrer.
        { -rules }

hazard-high-voltage = Hochvolt
    .line = Finger weg von orangen Kabeln
    .text =
        Hände und Werkzeuge von orangefarbenen Kabeln und ihren Anschlüssen fernhalten, bis eine für Hochvolt geschulte Person freigeschaltet und die Spannungsfreiheit festgestellt hat.
        Die Spannung wird bei Berührung das Herz zum Stillstand bringen, und ihr Lichtbogen verbrennt tief, auch bei ausgeschalteter Zündung.
        { -rules }

hazard-lowering = Fahrzeug kommt herunter
    .line = Zurücktreten, Fahrzeug kommt herunter
    .text =
        Dort stehen, wo das ganze Fahrzeug zu sehen ist, Füße und Hände von Reifen, Waagen und Tragarmen fernhalten und langsam mit dem Blick darauf ablassen.
        Ein Reifen oder Arm, der auf jemanden herunterkommt, oder ein Fahrzeug, das erst hängt und dann fällt, kann Gliedmaßen zerquetschen oder töten.
        Sofort anhalten, wenn etwas hängt, kippt oder knarrt.
        { -rules }

hazard-crush-low = Griff unter ein stehendes Fahrzeug
    .line = Bremse anziehen, dann erst greifen
    .text =
        Bremse anziehen oder Räder in beide Richtungen verkeilen, bevor jemand unter ein Fahrzeug auf seinen Rädern greift, und nur mit dem Arm, nie mit Kopf oder Brust.
        Ein Fahrzeug, das von einer Waage rollt oder einfedert, kann Arm, Hand oder Kopf zerquetschen.
        { -rules }

hazard-balance-shift = Gleichgewicht auf der Bühne
    .line = Auf das Gleichgewicht achten
    .text =
        Vor dem Abnehmen oder Zuladen von Gewicht bedenken, wohin der Schwerpunkt wandert, und die Änderung klein und gleichmäßig halten.
        Räder, Ballast oder schwere Teile an einem Ende können das Fahrzeug von seinen Aufnahmepunkten kippen, und ein fallendes Fahrzeug kann töten.
        { -rules }

hazard-self-levelling = Federung, die sich selbst bewegt
    .line = Hände aus den Radhäusern
    .text =
        Hände und Kopf aus den Radhäusern und unter den Schwellern weg halten, bis der Hebebühnenmodus eingeschaltet und bestätigt ist.
        Niveauregulierung, Luft- oder Hydraulikfederung und auch eine elektrische Feststellbremse können sich mit großer Kraft selbst bewegen; das kann eine Hand oder einen Kopf zerquetschen.
        { -rules }

hazard-stored-spring = Gespannte Feder
    .line = Hände weg von gespannten Federn
    .text =
        Hände und Gesicht aus der Richtung einer gespannten Feder halten und keinen Federteller drehen und keine Dämpfermutter lösen, solange die Feder nicht gefangen ist und das Herstellerverfahren befolgt wird.
        Eine Feder, die entweicht, schlägt wie ein Hammer; sie kann Knochen brechen, blind machen oder töten.
        { -rules }

hazard-wound-bar = Verspannter Stabilisator
    .line = Stabilisator entlasten, zur Seite treten
    .text =
        Beide Räder der Achse auf gleiche Höhe bringen, bevor eine Koppelstange gelöst wird, und Gesicht und Hände aus dem Weg halten, den sie nehmen kann.
        Ein verspannter Stabilisator schleudert seine Koppelstange beim Herausziehen der Schraube weg; das kann die Hand brechen oder ein Auge kosten.
        Augenschutz tragen.
        { -rules }

hazard-pinch = Quetschstellen
    .line = Finger aus den Spalten
    .text =
        Finger aus den Spalten zwischen Teller und Feder, Rad und Radhaus, Koppelstange und Halter lassen; das Werkzeug halten, nicht das Teil.
        Kommt die Last oder rutscht das Werkzeug ab, kann ein sich schließender Spalt einen Finger zerquetschen oder abtrennen.
        { -rules }

hazard-loose-nuts = Lose Radmuttern
    .line = Muttern festziehen, dann erst rollen
    .text =
        Jede Radmutter vor dem Fahren über Kreuz mit dem Drehmoment des Herstellers festziehen und von einer zweiten Person prüfen lassen.
        Ein Rad, das sich löst, kann Menschen im Fahrzeug und am Straßenrand töten.
        { -rules }

hazard-fuel-fire = Kraftstoff und Feuer
    .line = Flammen und Funken fernhalten
    .text =
        Flammen, Funken, heiße Lampen und Schalter von Kraftstoff und seinen Dämpfen fernhalten, die Luft absaugen und einen Feuerlöscher bereithalten.
        Dämpfe laufen über den Boden, entzünden sich an einem Funken, an den niemand dachte, und das kann durch Verbrennung töten.
        Bei Kraftstoffgeruch die Arbeit einstellen.
        { -rules }

hazard-airbag-seat = Airbag und Sitzverkabelung
    .line = Airbag-Verkabelung nicht berühren
    .text =
        Ballast so legen, dass er auf keinen Stecker, keinen Seitenairbag und keinen Gurtstraffer drückt; keinen Stecker ziehen, wenn das Herstellerverfahren nicht sagt, wie.
        Ein Airbag, der neben jemandem auslöst, kann Hals, Gesicht oder Arm brechen.
        { -rules }

hazard-moving-car = Fahrzeug kann rollen
    .line = Nicht davor, nicht dahinter stehen
    .text =
        Neben dem Fahrzeug stehen, nie davor oder dahinter, und eine Person zum Anhalten bereitstellen, bevor Keile oder Bremse gelöst werden.
        Ein Fahrzeug im Leerlauf, das von seinen Waagen rollt, kann überrollen oder an der Wand zerquetschen.
        { -rules }

hazard-road-test = Probefahrt
    .line = Nur mit Befugnis fahren
    .text =
        Nur mit Führerschein, Versicherung und Befugnis fahren, mit angeschlossenen Koppelstangen, doppelt geprüften Radmuttern, ohne Ballast, mit fester Bremse und scharfem Feuerlöscher.
        Ein unfertiges oder ungewohnt lenkendes Fahrzeug kann von der Straße abkommen und Menschen töten.
        { -rules }

hazard-extinguisher = Fest eingebauter Feuerlöscher
    .line = Auslöser nicht berühren
    .text =
        Zuerst Auslöser und Seilzug suchen und Hände, Knie und Werkzeuge davon fernhalten, während der Stift eingesetzt oder gezogen wird.
        Ein Auslösen im geschlossenen Fahrzeug nimmt für einen Moment Sicht und Atem und kann Augen und Lunge reizen.
        { -rules-short }

hazard-hot-parts = Heiße Teile
    .line = Heiße Teile abkühlen lassen
    .text =
        Auspuff, Bremsen und Motor abkühlen lassen oder Handschuhe tragen, die der Hitze standhalten.
        Sie bleiben lange nach dem Abstellen heiß, und eine Berührung kann die Haut verbrennen.
        { -rules-short }

hazard-trip = Kabel und Pedale am Boden
    .line = Laufweg freihalten
    .text =
        Waagenkabel, Luftschläuche und Fußpedal außen herum führen und den Laufweg frei von Blechen, Platten und Werkzeugen halten.
        Ein Sturz gegen Bühne oder Fahrzeug kann das Handgelenk verstauchen oder eine Platzwunde geben.
        { -rules-short }

hazard-laser = Laserlicht
    .line = Nie in den Strahl sehen
    .text =
        Höchstens einen Laser der Klasse 2 verwenden, ihn unter oder über Augenhöhe aufstellen, von Spiegeln und blankem Metall fernhalten und nie auf Menschen richten oder in den Strahl sehen.
        Der Strahl blendet, und langes Hineinsehen kann die Augen schädigen.
        { -rules-short }

hazard-lifting-weight = Heben von Hand
    .line = Schweres zu zweit heben
    .text =
        Aus den Beinen, nah am Körper und in kleinen Stücken heben, für Räder, Waagen und Ballast eine zweite Person holen, Sicherheitsschuhe und Handschuhe tragen.
        Ein schweres Teil am ausgestreckten Arm oder eines, das fällt, kann den Rücken zerren oder den Fuß prellen.
        { -rules-short }

hazard-parking-brake = Feststellbremse, die sich selbst bewegt
    .line = Hände weg von den Bremssätteln
    .text =
        Hände von den hinteren Bremssätteln fernhalten und vor dem Schalten der Bremse allen Bescheid sagen.
        Eine elektrische Feststellbremse kann sich mit großer Kraft von selbst schließen oder öffnen; das kann einen Finger zerquetschen oder das Fahrzeug rollen lassen.
        { -rules }

hazard-loose-fasteners = Lose Schraube an Lenkung oder Fahrwerk
    .line = Jede berührte Schraube festziehen
    .text =
        Jede Schraube, die berührt wurde, mit dem Drehmoment des Herstellers festziehen und markieren.
        Eine lose Spurstange oder ein loser Lenker kann sich auf der Straße lösen, und ein unlenkbares Fahrzeug kann töten oder verstümmeln.
        { -rules }

hazard-platform-fall = Fahrbahnen der Viersäulenbühne
    .line = Auf die Kante achten, Enden sichern
    .text =
        Die Abrollsicherungen der Fahrbahnen setzen, bevor das Fahrzeug rollen darf, auf dem Laufweg der Bühne bleiben und die Bühne niedrig halten, solange jemand darauf steht.
        Ein Fahrzeug, das von der Fahrbahn rollt, kann Menschen zerquetschen, und ein Schritt zurück über die Kante kann Bein oder Genick brechen.
        { -rules }
