# The places on a job file where an entry or a photo stands; `.lead` is said above its form.

slot-engine-calibration = Einstellen
    .lead = Warm, mit aktiver Lambdaregelung, ohne Fehlercodes. Einstellungen in eigenen Worten; das Programm des Steuergeräts selbst bleibt das seines Herstellers.
slot-trims = Trimmwerte mit beiden Kraftstoffen
    .lead = An denselben Punkten, warm, mit aktiver Lambdaregelung. Ohne Lambdaregelung beweist es nichts: Volllast, Warmlauf, Schub, gleich nach dem Umschalten.
slot-after-drive = Nach der Fahrt mit beiden Kraftstoffen
    .lead = Fehlercodes und Prüfbereitschaft, erneut ausgelesen.

slot-photo-odometer = Kilometerstand
slot-photo-vin-plate = FIN-Schild
slot-photo-container-plate = Behälter- oder Flaschenschild
slot-photo-photo = Weitere Fotos
slot-photo-document = Dokumente
slot-photo-control-unit-file = Datei des Steuergeräts
slot-photo-signature = Unterschriften

slot-cylinder-table = Zylinder
    .lead = Welcher Gasinjektor welchen Zylinder versorgt. Jeden Zylinder einzeln auf Benzin schalten: Der Motor muss reagieren.
slot-checklist = Checkliste
    .lead = Was offen bleibt, lässt sich später beantworten. Eine Antwort, die sich nicht ändert, behält das Kürzel und die Zeit, mit denen sie gegeben wurde.
slot-level-sensing = Füllstandsmessung
    .lead = Woher der Fahrer weiß, wie viel Gas noch da ist.

slot-heat-sizing = Wärme
    .lead = Was Verdampfer oder Druckregler bei Nennleistung aufbringen muss und ob der gewählte es kann.
slot-line-sizing = Schläuche und Leitungen
    .lead = Druckabfall und Geschwindigkeit bei Nennleistung: Durch einen zu engen Schlauch bekommt der Motor im oberen Bereich zu wenig Gas.
slot-cylinder-sizing = Gasflasche
    .lead = Was die Flasche fasst, wie sich ihre Druckanzeige mit der Temperatur bewegt, wie weit sie reicht und ob die Achse sie trägt.
slot-discharge = Durchflusszahl, gemessen
    .lead = Was eine Düse dieser Werkstatt wirklich durchlässt. Das Düsenblatt öffnet sich dann damit.

slot-hand-over = Übergabe
    .lead = Jedes Thema neben dem Fahrzeug erklären, bevor es abgehakt wird. Was nicht abgehakt ist, bleibt in den Nachweisen offen.

slot-deficiencies = Mängel
    .lead = Was festgestellt wurde, Punkt für Punkt. Die Liste auch erfassen, wenn nichts festgestellt wurde: Sie sagt, dass jemand nachgesehen hat.
slot-vessel-check = Behälter oder Flasche geprüft
    .lead = Jeder Behälter, jede Flasche: wie geprüft wurde, was festgestellt wurde und was das bedeutet.
slot-photo-deficiency = Mängel

slot-arrival = Zustand bei Annahme
    .lead = Kilometerstand, was der Kunde sagt und jede Gasanlage, die schon im Fahrzeug ist.

slot-leak-joints-lpg-liquid = Verbindungen, Flüssigphase
    .lead = Behälter bis Verdampfer bei Betriebsdruck. Eine nicht benetzte Stelle beweist nichts.
slot-leak-joints-lpg-vapour = Verbindungen, Gasphase
    .lead = Verdampfer bis Injektoren bei Betriebsdruck. Eine nicht benetzte Stelle beweist nichts.
slot-leak-joints-cng-high = Verbindungen, Hochdruck
    .lead = Flasche bis Druckregler bei Betriebsdruck. Nie eine Verbindung unter Druck nachziehen.
slot-leak-joints-cng-low = Verbindungen, Niederdruck
    .lead = Druckregler bis Injektoren bei Betriebsdruck. Eine nicht benetzte Stelle beweist nichts.
slot-exhaust-petrol = Abgas mit Benzin
    .lead = Motor warm, Sonde tief im Auspuff, zuerst im Leerlauf, dann im erhöhten Leerlauf ohne Last.
slot-exhaust-gas = Abgas mit Gas
    .lead = Motor und Gas warm, Sonde tief im Auspuff, zuerst im Leerlauf, dann im erhöhten Leerlauf ohne Last.
slot-function-checks = Funktionsprüfungen
    .lead = Was funktionieren muss, bevor das Fahrzeug die Werkstatt verlässt. Für Gas, das offen bleibt, und eine Entlüftung, die zu ist, gibt es keine Ausnahme.
slot-leak-decay-lpg-liquid = Druckabfall, Flüssigphase
slot-leak-decay-lpg-vapour = Druckabfall, Gasphase
slot-leak-decay-cng-high = Druckabfall, Hochdruck
slot-leak-decay-cng-low = Druckabfall, Niederdruck

slot-road = Vergleichsfahrt
    .lead = Benzin-Einspritzzeit mit beiden Kraftstoffen bei gleicher Drehzahl und Last, warm und mit aktiver Lambdaregelung. Wo Gas mager ist, verlängert das Benzinsteuergerät; wo es fett ist, verkürzt es.

slot-nozzle-sizing = Düse
    .lead = Die kleinste Düse, die in der verfügbaren Zeit noch den Kraftstoff für Nennleistung liefert und im Leerlauf dosiert.
slot-container-sizing = Gasbehälter
    .lead = Was der Behälter am Füllstopp fasst, wie warm er werden darf, wie weit er reicht und ob die Achse ihn trägt.

slot-suitability = Eignung
    .lead = Der Motor mit Benzin, warm, vor jeder Arbeit. Was hier festgestellt wird, akzeptiert zuerst der Kunde.
