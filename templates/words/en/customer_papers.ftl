# What stands on papers and letters to customers, whatever they are about.

paper-page = Page { $page } of { $pages }
paper-licence = licence { $licence }
paper-demonstration = DEMONSTRATION
paper-demonstration-notice = DEMONSTRATION. Shop, vehicle and people are invented. This paper proves nothing.
paper-fuel-lpg = LPG
paper-fuel-cng = CNG
paper-due-what = Duty
paper-due-when = By
paper-due-at = at { $km }
paper-due-every = { $span } driven
paper-due-months = { $n ->
    [one] 1 month
   *[other] { $n } months
}
paper-due-either = { $first } or { $second }, whichever comes first
paper-cautions = Cautions

# -- what falls due --
duty-kind-first-check = First check
duty-kind-filter = Filter
duty-kind-container = Container
duty-kind-cylinder-inspection = Cylinder inspection
duty-kind-pressure-test = Internal look and pressure test
duty-kind-cylinder-life = End of the cylinder’s life
duty-kind-inspection = Periodic inspection
duty-kind-valve-clearance = Valve clearance
duty-kind-warranty = Warranty ends
duty-kind-fill-stop = Fill stop at 80 %
duty-kind-authority-test = Authority’s own test
duty-kind-authority-paper = Authority’s own paper
duty-kind-other = Other
duty-kind-recall = Recall

# -- parts --
part-category-container = Container
part-category-multivalve = Multivalve
part-category-gas-tight-housing = Gas-tight housing
part-category-filling-unit = Filling unit
part-category-vaporiser = Vaporiser
part-category-shut-off-valve = Shut-off valve
part-category-filter = Filter
part-category-injector-rail = Injector rail
part-category-control-unit = Control unit
part-category-sensor = Sensor
part-category-rigid-line = Rigid line
part-category-hose = Hose
part-category-cylinder = Cylinder
part-category-cylinder-valve = Cylinder valve
part-category-pressure-regulator = Pressure regulator
part-category-other = Other

# -- certificates --
certificate-kind-conversion = Certificate of conversion
certificate-kind-inspection = Inspection certificate
certificate-kind-removal = Certificate of removal
certificate-kind-container = Container certificate
certificate-kind-cylinder = Cylinder certificate
