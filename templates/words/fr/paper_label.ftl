# The label on the vehicle.
label-title = Système { $fuel }
label-vehicle = { $plate } · { $last4 }
label-approval = Homologation { $mark }
label-no-approval = Pas d’homologation d’ensemble ; pièces homologuées une à une
label-fitted = monté le { $day }
label-container-lpg = Réservoir
label-container-cng = Bouteille
label-container-filled = { $litres } L, rempli à { $percent } %
label-container-pressure = { $litres } L, { $bar } bar
label-container-made = fabrication { $day }
label-container-test = épreuve au plus tard le { $day }
label-next = Prochaines échéances
label-ask = Dates et atelier :
label-code = Code { $code }
label-call = Renseignements : { $shop }, { $phone }
label-code-alt = Code QR menant à la page publique de ce véhicule
label-demonstration = DÉMONSTRATION

# -- its code, and the page behind it --
register-label = Étiquette du véhicule
register-make-label = Établir l’étiquette du véhicule
register-make-label-lead = Un code est tiré pour ce véhicule. Il ouvre une page publique avec les prochaines dates et l’atelier ; ni papiers, ni noms. Imprimez à 100 %, 105 mm sur 74 mm. Les plaques et autocollants qu’un pays prescrit viennent de ce pays, pas d’ici.
deed-label-made = A établi l’étiquette d’un véhicule
