# The places on a job file where an entry or a photo stands; `.lead` is said above its form.

slot-engine-calibration = Calibration
    .lead = À chaud, en boucle fermée, sans code défaut. Les réglages dans vos propres mots ; le programme du calculateur reste celui de son fabricant.
slot-trims = Corrections de richesse avec les deux carburants
    .lead = Aux mêmes points, à chaud, en boucle fermée. La boucle ouverte ne prouve rien : pleine charge, mise en température, coupure en décélération, juste après un changement de carburant.
slot-after-drive = Après conduite avec les deux carburants
    .lead = Codes défaut et état des moniteurs, relus.

slot-photo-odometer = Compteur kilométrique
slot-photo-vin-plate = Plaque VIN
slot-photo-container-plate = Plaque du réservoir ou de la bouteille
slot-photo-photo = Autres photos
slot-photo-document = Documents
slot-photo-control-unit-file = Fichier du calculateur
slot-photo-signature = Signatures

slot-cylinder-table = Cylindres du moteur
    .lead = Quel injecteur gaz dessert quel cylindre. Passez chaque cylindre à l’essence seule : le moteur doit réagir.
slot-checklist = Liste de contrôle
    .lead = Ce qui reste ouvert peut recevoir sa réponse plus tard. Une réponse qui ne change pas garde les initiales et l’heure avec lesquelles elle a été donnée.
slot-level-sensing = Mesure du niveau
    .lead = Comment le conducteur sait combien de gaz il reste.

slot-heat-sizing = Chaleur
    .lead = Ce que le vapo-détendeur ou le détendeur doit fournir à la puissance nominale, et si celui choisi le peut.
slot-line-sizing = Flexibles et canalisations
    .lead = Perte de charge et vitesse à la puissance nominale : un flexible trop étroit prive le moteur de gaz en haut de sa plage.
slot-cylinder-sizing = Bouteille
    .lead = Ce que contient la bouteille, comment son manomètre varie avec la température, quelle autonomie elle donne, et si l’essieu la porte.
slot-discharge = Coefficient de débit, mesuré
    .lead = Ce qu’une buse de cet atelier laisse vraiment passer. La fiche des buses s’ouvre alors avec cette valeur.

slot-hand-over = Remise du véhicule
    .lead = Expliquez chaque sujet près du véhicule avant de le cocher. Ce qui n’est pas coché reste ouvert dans les preuves.

slot-deficiencies = Défaillances
    .lead = Ce qui a été constaté, point par point. Consignez la liste même quand rien n’a été constaté : elle dit que quelqu’un a regardé.
slot-vessel-check = Examen du réservoir ou de la bouteille
    .lead = Chaque récipient : comment il a été examiné, ce qui a été constaté, et ce que cela signifie.
slot-photo-deficiency = Défaillances

slot-arrival = État à l’arrivée
    .lead = Kilométrage, ce que dit le client, et tout système de gaz déjà dans le véhicule.

slot-leak-joints-lpg-liquid = Raccords, phase liquide
    .lead = Du réservoir au vapo-détendeur, à la pression de service. Un endroit non mouillé ne prouve rien.
slot-leak-joints-lpg-vapour = Raccords, phase gazeuse
    .lead = Du vapo-détendeur aux injecteurs, à la pression de service. Un endroit non mouillé ne prouve rien.
slot-leak-joints-cng-high = Raccords, haute pression
    .lead = De la bouteille au détendeur, à la pression de service. Ne serrez jamais un raccord sous pression.
slot-leak-joints-cng-low = Raccords, basse pression
    .lead = Du détendeur aux injecteurs, à la pression de service. Un endroit non mouillé ne prouve rien.
slot-exhaust-petrol = Échappement à l’essence
    .lead = Moteur chaud, sonde bien enfoncée dans l’échappement, d’abord au ralenti, puis au ralenti accéléré sans charge.
slot-exhaust-gas = Échappement au gaz
    .lead = Moteur et gaz chauds, sonde bien enfoncée dans l’échappement, d’abord au ralenti, puis au ralenti accéléré sans charge.
slot-function-checks = Contrôles de fonctionnement
    .lead = Ce qui doit fonctionner avant le départ du véhicule. Ni un gaz qui reste ouvert, ni un évent fermé n’admettent de dérogation.
slot-leak-decay-lpg-liquid = Chute de pression, phase liquide
slot-leak-decay-lpg-vapour = Chute de pression, phase gazeuse
slot-leak-decay-cng-high = Chute de pression, haute pression
slot-leak-decay-cng-low = Chute de pression, basse pression

slot-road = Comparaison sur route
    .lead = Temps d’injection essence avec les deux carburants, au même régime et à la même charge, à chaud et en boucle fermée. Là où le gaz est pauvre, le calculateur essence allonge ; là où il est riche, il raccourcit.

slot-nozzle-sizing = Buse
    .lead = La plus petite buse qui fournit encore le débit nominal dans le temps disponible, et qui dose au ralenti.
slot-container-sizing = Réservoir
    .lead = Ce que contient le réservoir à l’arrêt du remplissage, quelle température il peut atteindre, quelle autonomie il donne, et si l’essieu le porte.

slot-suitability = Aptitude
    .lead = Le moteur à l’essence, chaud, avant tout travail. Ce qui est constaté ici est d’abord accepté par le client.
