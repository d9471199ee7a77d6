# The page on which anybody asks how a paper stands.

register-number = Numero
register-kind = Tipo
register-result = Esito
register-issued = Rilasciato
register-stands = Stato
register-key = Chiave

# -- how it stands --
standing-valid = Valido
standing-valid-says = { $number } vale come è stato rilasciato.
standing-superseded = Sostituito
standing-superseded-says = Al posto di { $number } vale un documento successivo.
standing-withdrawn = Ritirato
standing-withdrawn-says = L’officina ha ritirato { $number }. Non certifica più nulla.
standing-under-review = In riesame
standing-under-review-says = L’officina riesamina ciò su cui si basa { $number }.
standing-duty-passed = Valido, una scadenza è passata
standing-duty-passed-says = { $number } vale come è stato rilasciato, ma un controllo che vi è indicato è scaduto.

# -- asking --
verify-title = Verificare un documento
verify-lead = Inserire il codice stampato in fondo al documento.
verify-code = Codice
verify-ask = Verifica
verify-unknown = Nessun documento ha qui questo codice. Lo confronti con la stampa; 0 e O, 1 e I contano come uguali.
verify-compare = Confronti numero, data e VIN o numero di telaio con il documento che ha in mano. Se non coincidono, non è questo documento.
verify-demonstration = DIMOSTRAZIONE: questo documento non prova nulla.

# -- what an inspection came to --
paper-outcome-pass = Esito positivo
paper-outcome-pass-with-minor = Esito positivo, con carenze lievi
paper-outcome-fail = Esito negativo
