# The label on the vehicle.
label-title = Sistema de { $fuel }
label-vehicle = { $plate } · { $last4 }
label-approval = Homologación { $mark }
label-no-approval = Sin homologación de conjunto; las piezas están homologadas una a una
label-fitted = montado el { $day }
label-container-lpg = Depósito
label-container-cng = Cilindro
label-container-filled = { $litres } L, llenado hasta el { $percent } %
label-container-pressure = { $litres } L, { $bar } bar
label-container-made = fabricado en { $day }
label-container-test = próxima prueba hasta el { $day }
label-next = Próximos vencimientos
label-ask = Fechas y taller:
label-code = Código { $code }
label-call = Pregunte a { $shop }, { $phone }
label-code-alt = Código QR que lleva a la página pública de este vehículo
label-demonstration = DEMOSTRACIÓN

# -- its code, and the page behind it --
register-label = Etiqueta del vehículo
register-make-label = Hacer la etiqueta del vehículo
register-make-label-lead = Se genera un código para este vehículo. Abre una página pública con las próximas fechas y el taller; sin documentos ni nombres. Imprima al 100 %, 105 mm por 74 mm. Las placas y los adhesivos que prescribe un país se obtienen allí, no aquí.
deed-label-made = Hizo la etiqueta de un vehículo
