# The customer's own page behind a link, and what it shares with every page.

language-name = Italiano

# -- the page --
own-lead = Per { $name }, da { $shop }. Questo indirizzo è solo Suo; chi lo ha vede questa pagina.
own-duties = Che cosa scade
own-duties-none = Per questo veicolo non è annotato nulla.
own-papers = Documenti
own-papers-none = Per questo veicolo non è ancora stato emesso alcun documento.
own-slot = Chiedere un appuntamento
own-wish = Di che cosa si tratta e quali giorni Le vanno bene
own-phone = Telefono a cui trovarLa
own-slot-ask = Inviare
own-slot-asked = La richiesta è arrivata all’officina, che La chiamerà o Le scriverà con un orario.
own-reminders = Promemoria
own-reminders-lead = Senza promemoria è Lei a seguire le scadenze. Richiami e lettere sulla sicurezza arrivano comunque.
own-reminders-off = Niente più promemoria
own-reminders-are-off = I promemoria sono disattivati. Se li vuole di nuovo, lo dica all’officina.

# -- the public page behind a label --
register-shop = Officina
register-make = Marca
register-vin-last-4 = Ultimi quattro caratteri del VIN
register-chassis-last-4 = Ultimi quattro caratteri del numero di telaio
vehicle-page-title = Veicolo a gas
vehicle-page-over = scaduto
vehicle-page-unknown = Nessun veicolo ha qui questo codice. Lo confronti con l’etichetta.

# -- shared with every page --
app-description = Commesse, prove e documenti di un’officina GPL e metano
skip-to-content = Vai al contenuto
notice-demo = DIMOSTRAZIONE. Qui tutto è inventato; nessun documento che ne esce è valido.
notice-insecure = Questo indirizzo non è cifrato. Chiunque sia in questa rete può leggere ciò che si scrive qui.
kit-optional = facoltativo
kit-problems-title = Nulla è ancora stato salvato
kit-problems = { $n ->
    [one] { $n } campo da rivedere
   *[other] { $n } campi da rivedere
}
kit-error = Errore:

# -- what is wrong with an entry --
wrong-empty = Qui non è stato inserito nulla
wrong-too-long = Al massimo { $most } caratteri; qui sono { $got }
wrong-control-characters = Contiene caratteri che non si possono stampare
wrong-damaged = Alcune lettere sono arrivate rovinate, mostrate come �. Le scriva di nuovo
wrong-line-break = Una sola riga
