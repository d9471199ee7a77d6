# What stands on papers and letters to customers, whatever they are about.

paper-page = Seite { $page } von { $pages }
paper-licence = Anerkennung { $licence }
paper-demonstration = VORFÜHRUNG
paper-demonstration-notice = VORFÜHRUNG. Werkstatt, Fahrzeug und Personen sind erfunden. Dieses Papier beweist nichts.
paper-fuel-lpg = Flüssiggas (LPG)
paper-fuel-cng = Erdgas (CNG)
paper-due-what = Was
paper-due-when = Bis
paper-due-at = bei { $km }
paper-due-every = { $span } Fahrstrecke
paper-due-months = { $n ->
    [one] 1 Monat
   *[other] { $n } Monate
}
paper-due-either = { $first } oder { $second }, was zuerst eintritt
paper-cautions = Sicherheitshinweise

# -- what falls due --
duty-kind-first-check = Erste Kontrolle
duty-kind-filter = Filter
duty-kind-container = Gasbehälter
duty-kind-cylinder-inspection = Prüfung der Gasflaschen
duty-kind-pressure-test = Innenbesichtigung und Druckprüfung
duty-kind-cylinder-life = Ende der Nutzungsdauer der Gasflasche
duty-kind-inspection = Wiederkehrende Prüfung
duty-kind-valve-clearance = Ventilspiel
duty-kind-warranty = Ende der Gewährleistung
duty-kind-fill-stop = Füllstopp bei 80 %
duty-kind-authority-test = Prüfung durch die Behörde
duty-kind-authority-paper = Papier der Behörde
duty-kind-other = Sonstiges
duty-kind-recall = Rückruf

# -- parts --
part-category-container = Gasbehälter
part-category-multivalve = Multiventil
part-category-gas-tight-housing = Gasdichtes Gehäuse
part-category-filling-unit = Füllanschluss
part-category-vaporiser = Verdampfer
part-category-shut-off-valve = Absperrventil
part-category-filter = Filter
part-category-injector-rail = Einblasleiste
part-category-control-unit = Steuergerät
part-category-sensor = Sensor
part-category-rigid-line = Starre Gasleitung
part-category-hose = Schlauch
part-category-cylinder = Gasflasche
part-category-cylinder-valve = Flaschenventil
part-category-pressure-regulator = Druckregler
part-category-other = Sonstiges

# -- certificates --
certificate-kind-conversion = Umrüstbescheinigung
certificate-kind-inspection = Prüfbescheinigung
certificate-kind-removal = Bescheinigung über den Ausbau
certificate-kind-container = Behälterbescheinigung
certificate-kind-cylinder = Flaschenbescheinigung
