# What stands on papers and letters to customers, whatever they are about.

paper-page = Page { $page } sur { $pages }
paper-licence = agrément { $licence }
paper-demonstration = DÉMONSTRATION
paper-demonstration-notice = DÉMONSTRATION. Atelier, véhicule et personnes sont inventés. Ce document ne prouve rien.
paper-fuel-lpg = GPL
paper-fuel-cng = GNV
paper-due-what = Quoi
paper-due-when = Au plus tard
paper-due-at = à { $km }
paper-due-every = { $span } parcourus
paper-due-months = { $n ->
    [one] 1 mois
   *[other] { $n } mois
}
paper-due-either = { $first } ou { $second }, au premier des deux
paper-cautions = Précautions

# -- what falls due --
duty-kind-first-check = Premier contrôle
duty-kind-filter = Filtre
duty-kind-container = Réservoir de gaz
duty-kind-cylinder-inspection = Inspection des bouteilles
duty-kind-pressure-test = Examen intérieur et épreuve de pression
duty-kind-cylinder-life = Fin de vie de la bouteille
duty-kind-inspection = Contrôle périodique
duty-kind-valve-clearance = Jeu aux soupapes
duty-kind-warranty = Fin de la garantie
duty-kind-fill-stop = Arrêt du remplissage à 80 %
duty-kind-authority-test = Contrôle de l’autorité
duty-kind-authority-paper = Document de l’autorité
duty-kind-other = Autre
duty-kind-recall = Rappel

# -- parts --
part-category-container = Réservoir de gaz
part-category-multivalve = Polyvanne
part-category-gas-tight-housing = Capot étanche
part-category-filling-unit = Embout de remplissage
part-category-vaporiser = Vapo-détendeur
part-category-shut-off-valve = Électrovanne de coupure
part-category-filter = Filtre
part-category-injector-rail = Rampe d’injecteurs
part-category-control-unit = Calculateur
part-category-sensor = Capteur
part-category-rigid-line = Canalisation rigide
part-category-hose = Flexible
part-category-cylinder = Bouteille
part-category-cylinder-valve = Robinet de bouteille
part-category-pressure-regulator = Détendeur
part-category-other = Autre

# -- certificates --
certificate-kind-conversion = Certificat de transformation
certificate-kind-inspection = Certificat de contrôle
certificate-kind-removal = Certificat de dépose
certificate-kind-container = Certificat de réservoir
certificate-kind-cylinder = Certificat de bouteille
