# What papers say around the facts of their content.

## Every paper

paper-rules = Règles : { $rules }
paper-check = Vérification : { $how }
paper-key = clé { $key }
paper-preview = APERÇU
paper-preview-notice = APERÇU. Ni délivré ni signé. Ce document ne prouve rien.
paper-photos = Photos
paper-photo = Photo
paper-photo-missing = Ce fichier est conservé avec le dossier, mais ne peut pas être imprimé ici.
paper-not-signed = Document de travail, non signé. Seul le dossier fait foi.
paper-end = Fin de { $number }
paper-software = Établi avec Fuelwright { $version }
paper-rule-set = Jeu de règles { $name } { $version }, SHA-256 { $sum }
paper-code-alt = Code QR menant à { $address }
paper-file-signed = Le contenu signé de ce document
paper-file-keeper = Les données du titulaire, dont le contenu signé porte l’empreinte
paper-beside = Le même texte ({ $language }), à lire en regard. Seul fait foi le texte des pages précédentes ({ $original }).
paper-copy = Le même texte ({ $language }), à lire en regard. Seul fait foi le texte original ({ $original }).

paper-person-authorised = { $name }, habilitation { $number }
paper-person-authorised-until = { $name }, habilitation { $number } jusqu’au { $until }

## Vehicle, keeper, system, parts

paper-vehicle = Véhicule
paper-make-model = Marque, modèle
paper-plate = Immatriculation
paper-not-registered = non immatriculé
paper-vin = VIN
paper-vin-derived = Fin du VIN
paper-chassis-number = Numéro de châssis
paper-chassis-number-derived = Fin du numéro
paper-vin-ends = { $last7 }, quatre derniers { $last4 }
paper-first-registered = 1re immatriculation
paper-odometer = Kilométrage
paper-no-odometer = sans compteur
paper-type-code = Type, variante
paper-category = Catégorie
paper-engine = Moteur
paper-engine-code = Code moteur, numéro
paper-power = { $power } à { $rpm }/min
paper-engine-cylinders = { $n ->
    [one] 1 cylindre
   *[other] { $n } cylindres
}

paper-keeper = Titulaire
paper-name = Nom
paper-address = Adresse
paper-phone = Téléphone
paper-mail = Courriel

paper-gas-system = Système de gaz
paper-fuel = Carburant
paper-system = Système
paper-system-approval = Homologation du système
paper-approval-holder = Homologation délivrée à
paper-control-unit = Calculateur

paper-parts = Pièces montées
paper-part = Pièce
paper-maker-and-type = Fabricant, type
paper-approval-mark = Marque d’homologation
paper-serial = N° de série, lot
paper-made = Fabrication
paper-next-duty = Prochaine échéance

paper-container-of = { $all ->
    [one] Réservoir
   *[other] Réservoir { $n } sur { $all }
}
paper-cylinder-of = { $all ->
    [one] Bouteille
   *[other] Bouteille { $n } sur { $all }
}
paper-maker = Fabricant
paper-shape = Forme ou type
paper-water-capacity = Capacité en eau
paper-capacity-both = { $stamped }, en litres entiers { $floor } L
paper-fill-limit = Limite de remplissage
paper-fill-both = { $percent } %, rempli à { $litres } L
paper-working-pressure = Pression de service
paper-test-pressure = Pression d’épreuve
paper-last-tested = Dernière épreuve
paper-inspection-kind = Inspection
paper-next-test = Épreuve au plus tard le
paper-container-end-of-life = Fin de vie
paper-cylinder-end-of-life = Fin de vie
paper-no-end-of-life = aucune fixée par les règles
paper-location = Emplacement
paper-findings = Constats :

## Measured

paper-measured = Ce qui a été mesuré
paper-test = Essai
paper-result = Résultat
paper-limit = Limite
paper-decision = Décision
paper-instrument = Instrument
paper-limit-source = Limites : { $source }
paper-from-outside = résultat externe : { $body }
paper-record = rapport { $record }
paper-entered-later = saisi après coup

paper-verdict-passes-guarded = conforme, bande de garde
paper-verdict-passes-simple = conforme, simple
paper-verdict-passes-observed = conforme
paper-verdict-fails-guarded = non conforme, bande de garde
paper-verdict-fails-simple = non conforme, simple
paper-verdict-fails-observed = non conforme
paper-verdict-cannot-tell-guarded = non concluant
paper-verdict-cannot-tell-simple = non concluant
paper-verdict-cannot-tell-observed = non concluant

paper-rule-guarded = Bande de garde : le résultat et son incertitude élargie (k = { $k }) sont dans la limite. Risque de fausse acceptation inférieur à 2,5 % (ILAC-G8:09/2019, 4.2.2).
paper-rule-simple = Simple : le résultat est dans la limite. Risque de fausse acceptation jusqu’à 50 % pour un résultat égal à la limite (ILAC-G8:09/2019, 4.2.1).

paper-instruments = Instruments
paper-what = Désignation
paper-calibration = Certificat d’étalonnage
paper-good-until = Valable jusqu’au

paper-late-entries = Saisies après coup
paper-happened = Fait le
paper-entered = Saisi le
paper-by = Par
paper-reason = Motif

## Proofs, inspection, conformity

paper-proof = Preuve
paper-exception = Statut
paper-decided-by = Décidé par
paper-exception-waived = dérogation
paper-exception-not-applicable = sans objet
paper-exception-shop-limit = apportée selon une limite de l’atelier

paper-inspection = Contrôle
paper-place = Lieu
paper-ended = Fin
paper-inspector = Contrôleur
paper-next-inspection = Contrôle au plus tard le
paper-present-again = À représenter jusqu’au
paper-repeats = Fait suite à
paper-no-deficiencies = Aucune défaillance n’a été constatée.
paper-item = Point
paper-deficiency = Défaillance
paper-severity = Gravité
paper-severity-minor = mineure
paper-severity-major = majeure
paper-severity-dangerous = critique

paper-conformity = Preuves et déclaration de conformité
paper-against = Référentiel
paper-covers = Portée
paper-conformity-state = État
paper-conforms = conforme
paper-conforms-not = non conforme

## What comes next

paper-vehicle-papers = À modifier sur le certificat d’immatriculation : { $changes }
paper-next = Ce qui vient ensuite
paper-due-when-first = Au plus tard, au premier des deux
paper-due-decided-by = Fixé par
paper-due-at-in-short = { $km }
paper-due-either-in-short = { $first } ou { $second }
paper-authority-test = Contrôle de l’autorité
paper-still-to-come = reste à faire
paper-remarks = Remarques
paper-caution = Attention : { $caution }

## Certificates

certificate-title-conversion = Certificat de transformation au { $fuel }
certificate-title-inspection = Certificat de contrôle du système { $fuel }
certificate-title-removal = Certificat de dépose d’un système { $fuel }
certificate-title-container = Certificat de réservoir { $fuel }
certificate-title-cylinder = Certificat de bouteille { $fuel }

certificate-number-issued = { $number } · délivré le { $date }
certificate-replaces = Ce document remplace { $number }. Motif : { $reason }
certificate-issue-line = { $place } · dossier { $job } · reçu le { $received } · terminé le { $finished }

certificate-lead-conversion = Ce véhicule a été équipé du système de gaz désigné ci-dessous.
certificate-lead-inspection = Le système de gaz de ce véhicule a été contrôlé ; le résultat figure ci-dessous.
certificate-lead-removal = Le système de gaz désigné ci-dessous a été déposé de ce véhicule, qui roule à l’essence seule.
certificate-lead-container = Le réservoir désigné ci-dessous a fait l’objet de travaux ou d’une inspection, comme ce document l’indique.
certificate-lead-cylinder = La bouteille désignée ci-dessous a fait l’objet de travaux ou d’une inspection, comme ce document l’indique.
certificate-fitting-check = Nous avons contrôlé le montage, car l’homologation du système lui-même ne couvre pas ce contrôle (UN R115, 1.3).
certificate-proofs-all = { $asked ->
    [one] La seule preuve demandée a été apportée.
   *[other] Les { $asked } preuves demandées ont toutes été apportées.
}
certificate-proofs-all-but-found = Ce qui a été constaté décide : chacune des preuves demandées ({ $asked }) a été apportée, mais une défaillance ci-dessous n’est pas mineure.
certificate-proofs-some = Preuves demandées et apportées : { $met } sur { $asked } ; les autres sont nommées ci-dessous, avec la personne et le motif.
certificate-to-be-confirmed = Ces lignes ont été appliquées, mais personne ne les a encore confirmées. À confirmer auprès de votre autorité : { $lines }

certificate-keeper-apart = Les données du titulaire sont conservées à part de cet exemplaire.
certificate-keeper-digest = Empreinte des données du titulaire dans le contenu signé : { $digest }

certificate-signed-by = Signataire : { $person }. Signé le { $at }.
certificate-worked-by = Travaux et essais : { $person }.
certificate-holds = Les résultats ne valent que pour ce véhicule et pour le jour de l’essai. La réglementation locale et la pratique professionnelle agréée priment.
certificate-check-online = Signé électroniquement. Le code en pied de page montre l’état de ce document à ce jour ; son PDF porte le contenu signé.
certificate-check-by-phone = Signé électroniquement ; le PDF porte le contenu signé. Pour connaître l’état de ce document à ce jour, appelez le { $phone } et donnez le code en pied de page.
certificate-follows = Contenu du document précédent de sa série, SHA-256 { $sum }
certificate-key-id = Clé de signature { $key }

## Test record

record-number-issued = { $number } · délivré le { $date }
record-lead = Les résultats ci-dessous ne concernent que l’objet soumis à l’essai, tel qu’il a été reçu et au jour de l’essai.
record-body = Rapport
record-place = Lieu de l’essai
record-customer = Client
record-contact = Contact
record-method = Méthode
record-received = Réception
record-began = Début
record-ended = Fin
record-sampling = Échantillonnage
record-no-sampling = aucun
record-deviations = Écarts à la méthode
record-no-deviations = aucun
record-job = Dossier
record-item = Objet soumis à l’essai
record-vehicle = Véhicule
record-tested = Essai portant sur
record-condition = État à la réception
record-conditions = Conditions d’essai
record-leak = Essai d’étanchéité, { $section }
record-attempt = Essai n°
record-boundaries = Fermé entre
record-gas = Gaz d’essai
record-pressure-start-absolute = Pression initiale, abs.
record-pressure-end-absolute = Pression finale, abs.
record-pressure-start-gauge = Pression initiale, rel.
record-pressure-end-gauge = Pression finale, rel.
record-ambient-pressure = Pression atmosphérique
record-temperature-start = Température initiale
record-temperature-end = Température finale
record-temperature-ambient = Température de l’air
record-volume = Volume
record-volume-known = Volume connu par
record-joints = Raccords, { $n }
record-rate = Débit de fuite
record-rate-limit = Limite
record-limit-from = Source de la limite
record-repair = Réparé auparavant
record-customer-supplied = Déclaré par le client, non vérifié par nous
record-authorised = Autorisé par
record-technician = Essai réalisé par
record-replaces = Ce rapport remplace { $number }. Motif : { $reason }
record-whole = Ce rapport se reproduit en entier ou pas du tout.
