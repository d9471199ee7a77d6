# What stands on papers and letters to customers, whatever they are about.

paper-page = Página { $page } de { $pages }
paper-licence = licencia { $licence }
paper-demonstration = DEMOSTRACIÓN
paper-demonstration-notice = DEMOSTRACIÓN. Taller, vehículo y personas son inventados. Este documento no prueba nada.
paper-fuel-lpg = GLP
paper-fuel-cng = GNC
paper-due-what = Qué
paper-due-when = Hasta
paper-due-at = a los { $km }
paper-due-every = { $span } recorridos
paper-due-months = { $n ->
    [one] 1 mes
   *[other] { $n } meses
}
paper-due-either = { $first } o { $second }, lo que ocurra antes
paper-cautions = Precauciones

# -- what falls due --
duty-kind-first-check = Primera revisión
duty-kind-filter = Filtro
duty-kind-container = Depósito
duty-kind-cylinder-inspection = Inspección de los cilindros
duty-kind-pressure-test = Examen interior y prueba de presión
duty-kind-cylinder-life = Fin de la vida útil del cilindro
duty-kind-inspection = Inspección periódica
duty-kind-valve-clearance = Holgura de válvulas
duty-kind-warranty = Fin de la garantía
duty-kind-fill-stop = Parada de llenado al 80 %
duty-kind-authority-test = Prueba de la autoridad
duty-kind-authority-paper = Documento de la autoridad
duty-kind-other = Otros
duty-kind-recall = Llamada a revisión

# -- parts --
part-category-container = Depósito
part-category-multivalve = Multiválvula
part-category-gas-tight-housing = Carcasa estanca
part-category-filling-unit = Boca de carga
part-category-vaporiser = Vaporizador
part-category-shut-off-valve = Válvula de corte
part-category-filter = Filtro
part-category-injector-rail = Rampa de inyectores
part-category-control-unit = Unidad de control
part-category-sensor = Sensor
part-category-rigid-line = Tubo rígido
part-category-hose = Manguera
part-category-cylinder = Cilindro
part-category-cylinder-valve = Válvula del cilindro
part-category-pressure-regulator = Regulador de presión
part-category-other = Otros

# -- certificates --
certificate-kind-conversion = Certificado de conversión
certificate-kind-inspection = Certificado de inspección
certificate-kind-removal = Certificado de desmontaje
certificate-kind-container = Certificado del depósito
certificate-kind-cylinder = Certificado del cilindro
