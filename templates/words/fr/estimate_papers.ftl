# Papers about the price of a job: the estimate, the receipt of a deposit, the final price list.

# Names of their files: letters without accents, and hyphens.
estimate-paper-file = devis
price-list-file = liste-de-prix
receipt-file = recu

estimate-paper-title = Devis
estimate-paper-number = { $number }, version n° { $version }
estimate-paper-lead = Ce que coûtera, selon le calcul, le travail sur votre véhicule.

# -- what these papers share --
priced-parties = Client et véhicule
priced-customer = Client
priced-address = Adresse
priced-vehicle = Véhicule
priced-plate = Immatriculation
priced-job = Dossier
priced-lines = Pièces et main-d’œuvre
priced-what = Désignation
priced-kind = Nature
priced-quantity = Quantité
priced-price = Prix unitaire, { $currency }
priced-amount = Montant, { $currency }
priced-total = Total général
priced-terms = Conditions
priced-until = Ce devis est valable jusqu’au { $day }.
priced-no-until = Aucun dernier jour n’est fixé pour ce devis. Renseignez-vous avant de vous y fier plus tard.
priced-change = Tout changement est convenu avec vous avant le travail qu’il concerne : combien, comment, par qui et quand.
priced-no-invoice = Ceci n’est pas une facture au sens fiscal.
priced-agreed = Convenu { $how } avec { $name } le { $day } : { $amount }. Noté par { $person }.
priced-not-agreed = Pas encore convenu. Aucun travail ne commence avant votre accord.
priced-sign = D’accord (nom, jour, signature)
line-kind-part = Pièce
line-kind-work = Main-d’œuvre
line-kind-other = Autre
line-kind-discount = Remise
agreed-how-in-person = de vive voix
agreed-how-phone = par téléphone
agreed-how-writing = par écrit

# -- final price list --
price-list-title = Liste finale des prix
price-list-lead = Ce que le travail a coûté, ce qui a été payé avant et ce qui reste à payer.
price-list-paid = Payé avant
price-list-nothing-paid = Rien n’a été payé avant.
price-list-day = Jour
price-list-how = Comment
price-list-by = Par qui
price-list-taken-back = Remboursé. Motif : { $reason }
price-list-sums = Ce qui reste
price-list-sums-what = Poste
price-list-remains = Reste à payer
price-list-back = À vous rembourser
price-list-version = Les lignes sont celles de la version { $version } du devis.
price-list-not-agreed = Cette version n’a pas été convenue telle qu’elle figure ici.

# -- receipt of a deposit --
receipt-title = Reçu d’acompte
receipt-number = { $number }, acompte { $deposit }
receipt-lead = Reçu { $amount } de { $name }, à titre d’acompte pour le travail sur le véhicule.
receipt-deposit = Acompte
receipt-amount = Montant
receipt-how = Mode de paiement
receipt-day = Jour
receipt-by = Reçu par
receipt-returned = Remboursé le { $day } par { $name }, { $how }. Motif : { $reason }
receipt-counts = L’acompte est déduit du prix du travail.
receipt-sign = Reçu (signature)
