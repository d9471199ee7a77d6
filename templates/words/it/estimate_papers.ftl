# Papers about the price of a job: the estimate, the receipt of a deposit, the final price list.

# Names of their files: letters without accents, and hyphens.
estimate-paper-file = preventivo
price-list-file = elenco-prezzi
receipt-file = ricevuta

estimate-paper-title = Preventivo
estimate-paper-number = { $number }, versione { $version }
estimate-paper-lead = Quanto si calcola che costi il lavoro sul Suo veicolo.

# -- what these papers share --
priced-parties = Cliente e veicolo
priced-customer = Cliente
priced-address = Indirizzo
priced-vehicle = Veicolo
priced-plate = Targa
priced-job = Commessa
priced-lines = Pezzi e lavoro
priced-what = Descrizione
priced-kind = Tipo
priced-quantity = Quantità
priced-price = Prezzo unitario, { $currency }
priced-amount = Importo, { $currency }
priced-total = Totale
priced-terms = Condizioni
priced-until = Ultimo giorno in cui vale questo preventivo: { $day }.
priced-no-until = Per questo preventivo non è fissato un ultimo giorno. Chieda prima di farvi affidamento più avanti.
priced-change = Ogni modifica è concordata con Lei prima del lavoro che riguarda: quanto, come, da chi e quando.
priced-no-invoice = Questo documento non è una fattura fiscale.
priced-agreed = Concordato { $how } con { $name }, { $day }: { $amount }. Annotato da { $person }.
priced-not-agreed = Non ancora concordato. Nessun lavoro comincia prima del Suo accordo.
priced-sign = D’accordo (nome, giorno, firma)
line-kind-part = Pezzo
line-kind-work = Lavoro
line-kind-other = Altro
line-kind-discount = Sconto
agreed-how-in-person = di persona
agreed-how-phone = per telefono
agreed-how-writing = per iscritto

# -- final price list --
price-list-title = Elenco finale dei prezzi
price-list-lead = Quanto è costato il lavoro, che cosa è stato pagato prima e che cosa resta da pagare.
price-list-paid = Pagato prima
price-list-nothing-paid = Prima non è stato pagato niente.
price-list-day = Giorno
price-list-how = Come
price-list-by = Da chi
price-list-taken-back = Restituito. Motivo: { $reason }
price-list-sums = Che cosa resta
price-list-sums-what = Voce
price-list-remains = Resta da pagare
price-list-back = Da restituire a Lei
price-list-version = Le righe sono quelle della versione { $version } del preventivo.
price-list-not-agreed = Questa versione non è stata concordata così come sta qui.

# -- receipt of a deposit --
receipt-title = Ricevuta di acconto
receipt-number = { $number }, acconto { $deposit }
receipt-lead = Ricevuto { $amount } da { $name }, come acconto per il lavoro sul veicolo.
receipt-deposit = Acconto
receipt-amount = Importo
receipt-how = Come è stato pagato
receipt-day = Giorno
receipt-by = Ricevuto da
receipt-returned = Restituito, { $day }, da { $name }, { $how }. Motivo: { $reason }
receipt-counts = L’acconto è detratto dal prezzo del lavoro.
receipt-sign = Ricevuto (firma)
