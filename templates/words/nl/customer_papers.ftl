# What stands on papers and letters to customers, whatever they are about.

paper-page = Pagina { $page } van { $pages }
paper-licence = erkenning { $licence }
paper-demonstration = DEMONSTRATIE
paper-demonstration-notice = DEMONSTRATIE. Werkplaats, voertuig en personen zijn verzonnen. Dit papier bewijst niets.
paper-fuel-lpg = LPG
paper-fuel-cng = CNG
paper-due-what = Wat
paper-due-when = Uiterlijk
paper-due-at = bij { $km }
paper-due-every = { $span } gereden
paper-due-months = { $n ->
    [one] 1 maand
   *[other] { $n } maanden
}
paper-due-either = { $first } of { $second }, wat het eerst komt
paper-cautions = Waarschuwingen

# -- what falls due --
duty-kind-first-check = Eerste controle
duty-kind-filter = Gasfilter
duty-kind-container = LPG-tank
duty-kind-cylinder-inspection = Keuring van de cilinders
duty-kind-pressure-test = Inwendig onderzoek en druktest
duty-kind-cylinder-life = Einde levensduur van de cilinder
duty-kind-inspection = Periodieke keuring
duty-kind-valve-clearance = Klepspeling
duty-kind-warranty = Einde van de garantie
duty-kind-fill-stop = Vulstop bij 80 %
duty-kind-authority-test = Keuring door de overheid
duty-kind-authority-paper = Papier van de overheid
duty-kind-other = Overig
duty-kind-recall = Terugroepactie

# -- parts --
part-category-container = LPG-tank
part-category-multivalve = Multiklep
part-category-gas-tight-housing = Gasdichte kast
part-category-filling-unit = Vulaansluiting
part-category-vaporiser = Verdamper
part-category-shut-off-valve = Afsluiter
part-category-filter = Gasfilter
part-category-injector-rail = Injectorrail
part-category-control-unit = Regeleenheid
part-category-sensor = Sensor
part-category-rigid-line = Starre leiding
part-category-hose = Slang
part-category-cylinder = Cilinder
part-category-cylinder-valve = Cilinderafsluiter
part-category-pressure-regulator = Drukregelaar
part-category-other = Overig

# -- certificates --
certificate-kind-conversion = Ombouwcertificaat
certificate-kind-inspection = Keuringscertificaat
certificate-kind-removal = Certificaat van uitbouw
certificate-kind-container = Tankcertificaat
certificate-kind-cylinder = Cilindercertificaat
