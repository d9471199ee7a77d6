# The label on the vehicle.
label-title = { $fuel } system
label-vehicle = { $plate } · { $last4 }
label-approval = Approval { $mark }
label-no-approval = No approval as a whole; parts are approved one by one
label-fitted = fitted { $day }
label-container-lpg = Container
label-container-cng = Cylinder
label-container-filled = { $litres } L, filled to { $percent } %
label-container-pressure = { $litres } L, { $bar } bar
label-container-made = made { $day }
label-container-test = next test by { $day }
label-next = Next
label-ask = Dates and shop:
label-code = Code { $code }
label-call = Ask { $shop }, { $phone }
label-code-alt = QR code that leads to the public page of this vehicle
label-demonstration = DEMONSTRATION

# -- its code, and the page behind it --
register-label = Vehicle label
register-make-label = Make the vehicle label
register-make-label-lead = A code is drawn for this vehicle. It opens a public page with the next dates and the shop; no papers, no names. Print at 100 %, 105 mm by 74 mm. Plates and stickers that a country prescribes come from there, not from here.
deed-label-made = Made a vehicle’s label
