# The label on the vehicle.
label-title = { $fuel }-installatie
label-vehicle = { $plate } · { $last4 }
label-approval = Goedkeuring { $mark }
label-no-approval = Geen goedkeuring als geheel; de onderdelen zijn elk apart goedgekeurd
label-fitted = ingebouwd op { $day }
label-container-lpg = LPG-tank
label-container-cng = Cilinder
label-container-filled = { $litres } L, gevuld tot { $percent } %
label-container-pressure = { $litres } L, { $bar } bar
label-container-made = gemaakt { $day }
label-container-test = volgende keuring uiterlijk { $day }
label-next = Wat volgt
label-ask = Data en werkplaats:
label-code = Code { $code }
label-call = Vraag { $shop }, { $phone }
label-code-alt = QR-code die naar de openbare pagina van dit voertuig leidt
label-demonstration = DEMONSTRATIE

# -- its code, and the page behind it --
register-label = Voertuiglabel
register-make-label = Voertuiglabel maken
register-make-label-lead = Voor dit voertuig wordt een code getrokken. Die opent een openbare pagina met de volgende data en de werkplaats; geen papieren, geen namen. Druk af op 100 %, 105 mm bij 74 mm. Plaatjes en stickers die een land voorschrijft, komen daarvandaan, niet van hier.
deed-label-made = Maakte een voertuiglabel
