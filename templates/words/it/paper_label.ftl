# The label on the vehicle.
label-title = Impianto a { $fuel }
label-vehicle = { $plate } · { $last4 }
label-approval = Omologazione { $mark }
label-no-approval = Nessuna omologazione dell’insieme; i componenti sono omologati uno per uno
label-fitted = montaggio { $day }
label-container-lpg = Serbatoio
label-container-cng = Bombola
label-container-filled = { $litres } L, limite di riempimento { $percent } %
label-container-pressure = { $litres } L, { $bar } bar
label-container-made = fabbricazione { $day }
label-container-test = prossimo collaudo entro: { $day }
label-next = Prossime scadenze
label-ask = Date e officina:
label-code = Codice { $code }
label-call = Chiedere a { $shop }, { $phone }
label-code-alt = Codice QR che porta alla pagina pubblica di questo veicolo
label-demonstration = DIMOSTRAZIONE

# -- its code, and the page behind it --
register-label = Etichetta del veicolo
register-make-label = Creare l’etichetta del veicolo
register-make-label-lead = Per questo veicolo viene estratto un codice. Apre una pagina pubblica con le prossime date e l’officina; niente documenti, niente nomi. Stampare al 100 %, 105 mm per 74 mm. Le targhette e gli adesivi prescritti da un Paese vengono da lì, non da qui.
deed-label-made = Ha creato l’etichetta di un veicolo
