# The page on which anybody asks how a paper stands.

register-number = Número
register-kind = Tipo
register-result = Resultado
register-issued = Emitido
register-stands = Estado
register-key = Clave

# -- how it stands --
standing-valid = Válido
standing-valid-says = { $number } vale tal como se emitió.
standing-superseded = Sustituido
standing-superseded-says = En lugar de { $number } vale un documento posterior.
standing-withdrawn = Retirado
standing-withdrawn-says = El taller retiró { $number }. Ya no certifica nada.
standing-under-review = En revisión
standing-under-review-says = El taller vuelve a examinar en qué se basa { $number }.
standing-duty-passed = Válido, un plazo ha vencido
standing-duty-passed-says = { $number } vale tal como se emitió, pero un control que indica está vencido.

# -- asking --
verify-title = Comprobar un documento
verify-lead = Escriba el código impreso al pie del documento.
verify-code = Código
verify-ask = Comprobar
verify-unknown = Ningún documento tiene aquí este código. Compárelo con el impreso; 0 y O, 1 e I cuentan como iguales.
verify-compare = Compare número, fecha y VIN o número de bastidor con el documento que tiene en la mano. Si difieren, no es este documento.
verify-demonstration = DEMOSTRACIÓN: este documento no prueba nada.

# -- what an inspection came to --
paper-outcome-pass = Favorable
paper-outcome-pass-with-minor = Favorable, con defectos leves
paper-outcome-fail = Desfavorable
