# What papers say around the facts of their content.

## Every paper

paper-rules = Regole: { $rules }
paper-check = Verifica: { $how }
paper-key = chiave { $key }
paper-preview = ANTEPRIMA
paper-preview-notice = ANTEPRIMA. Non rilasciato, non firmato. Questo documento non prova nulla.
paper-photos = Foto
paper-photo = Foto
paper-photo-missing = Questo file è conservato con la commessa, ma qui non si può stampare.
paper-not-signed = Documento di lavoro, non firmato. Fa fede la commessa.
paper-end = Fine di { $number }
paper-software = Redatto con Fuelwright { $version }
paper-rule-set = Insieme di regole { $name } { $version }, SHA-256 { $sum }
paper-code-alt = Codice QR che porta a { $address }
paper-file-signed = Il contenuto firmato di questo documento
paper-file-keeper = I dati dell’intestatario, presenti come impronta nel contenuto firmato
paper-beside = Lo stesso documento (lingua: { $language }), da leggere a fianco. Fa fede il testo delle pagine precedenti (lingua: { $original }).
paper-copy = Lo stesso documento (lingua: { $language }), da leggere a fianco. Fa fede il testo originale (lingua: { $original }).

paper-person-authorised = { $name }, autorizzazione { $number }
paper-person-authorised-until = { $name }, autorizzazione { $number }, scadenza { $until }

## Vehicle, keeper, system, parts

paper-vehicle = Veicolo
paper-make-model = Marca, modello
paper-plate = Targa
paper-not-registered = non immatricolato
paper-vin = VIN
paper-vin-derived = VIN termina con
paper-chassis-number = Numero di telaio
paper-chassis-number-derived = Termina con
paper-vin-ends = { $last7 }, ultimi quattro { $last4 }
paper-first-registered = Prima immatricolazione
paper-odometer = Contachilometri
paper-no-odometer = non presente
paper-type-code = Tipo, variante
paper-category = Categoria
paper-engine = Motore
paper-engine-code = Codice motore, numero
paper-power = { $power } a { $rpm }/min
paper-engine-cylinders = { $n ->
    [one] 1 cilindro
   *[other] { $n } cilindri
}

paper-keeper = Intestatario
paper-name = Nome
paper-address = Indirizzo
paper-phone = Telefono
paper-mail = E-mail

paper-gas-system = Impianto a gas
paper-fuel = Carburante
paper-system = Impianto
paper-system-approval = Omologazione impianto
paper-approval-holder = Titolare omologazione
paper-control-unit = Centralina

paper-parts = Componenti montati
paper-part = Componente
paper-maker-and-type = Costruttore, tipo
paper-approval-mark = Marchio di omologazione
paper-serial = Matricola, lotto
paper-made = Fabbricazione
paper-next-duty = Prossima scadenza

paper-container-of = { $all ->
    [one] Serbatoio
   *[other] Serbatoio { $n } di { $all }
}
paper-cylinder-of = { $all ->
    [one] Bombola
   *[other] Bombola { $n } di { $all }
}
paper-maker = Costruttore
paper-shape = Forma o tipo
paper-water-capacity = Capacità in acqua
paper-capacity-both = { $stamped }, in litri interi { $floor } L
paper-fill-limit = Limite di riempimento
paper-fill-both = { $percent } %, riempimento fino a { $litres } L
paper-working-pressure = Pressione di esercizio
paper-test-pressure = Pressione di prova
paper-last-tested = Ultimo collaudo
paper-inspection-kind = Ispezione
paper-next-test = Prossimo collaudo entro
paper-container-end-of-life = Fine vita
paper-cylinder-end-of-life = Fine vita
paper-no-end-of-life = non prevista dalle regole
paper-location = Posizione nel veicolo
paper-findings = Rilievi:

## Measured

paper-measured = Misure eseguite
paper-test = Prova
paper-result = Risultato
paper-limit = Limite
paper-decision = Decisione
paper-instrument = Strumento
paper-limit-source = Limiti: { $source }
paper-from-outside = risultato da fornitore esterno: { $body }
paper-record = rapporto { $record }
paper-entered-later = inserimento tardivo

paper-verdict-passes-guarded = conforme, con banda di guardia
paper-verdict-passes-simple = conforme, regola semplice
paper-verdict-passes-observed = conforme
paper-verdict-fails-guarded = non conforme, con banda di guardia
paper-verdict-fails-simple = non conforme, regola semplice
paper-verdict-fails-observed = non conforme
paper-verdict-cannot-tell-guarded = non determinabile
paper-verdict-cannot-tell-simple = non determinabile
paper-verdict-cannot-tell-observed = non determinabile

paper-rule-guarded = Con banda di guardia: il risultato e la sua incertezza estesa (k = { $k }) rientrano nel limite. Rischio di falsa accettazione inferiore al 2,5 % (ILAC-G8:09/2019, 4.2.2).
paper-rule-simple = Regola semplice: il risultato rientra nel limite. Rischio di falsa accettazione fino al 50 % per un risultato pari al limite (ILAC-G8:09/2019, 4.2.1).

paper-instruments = Strumenti
paper-what = Che cosa
paper-calibration = Certificato di taratura
paper-good-until = Valido fino al

paper-late-entries = Inserimenti tardivi
paper-happened = Avvenuto
paper-entered = Inserito
paper-by = Da
paper-reason = Motivo

## Proofs, inspection, conformity

paper-proof = Requisito
paper-exception = Stato
paper-decided-by = Deciso da
paper-exception-waived = in deroga
paper-exception-not-applicable = non applicabile
paper-exception-shop-limit = soddisfatto con un limite dell’officina

paper-inspection = Controllo
paper-place = Luogo
paper-ended = Fine
paper-inspector = Ispettore
paper-next-inspection = Prossimo controllo entro
paper-present-again = Da ripresentare entro
paper-repeats = Ripete
paper-no-deficiencies = Non sono state rilevate carenze.
paper-item = Voce
paper-deficiency = Carenza
paper-severity = Gravità
paper-severity-minor = lieve
paper-severity-major = grave
paper-severity-dangerous = pericolosa

paper-conformity = Requisiti e dichiarazione di conformità
paper-against = Rispetto a
paper-covers = Comprende
paper-conformity-state = Esito
paper-conforms = conforme
paper-conforms-not = non conforme

## What comes next

paper-vehicle-papers = Da aggiornare nei documenti di circolazione: { $changes }
paper-next = Prossime scadenze
paper-due-when-first = Entro, secondo ciò che si verifica prima
paper-due-decided-by = Stabilito da
paper-due-at-in-short = { $km }
paper-due-either-in-short = { $first } o { $second }
paper-authority-test = Prova dell’autorità
paper-still-to-come = ancora da eseguire
paper-remarks = Annotazioni
paper-caution = Avvertenza: { $caution }

## Certificates

certificate-title-conversion = Certificato di conversione a { $fuel }
certificate-title-inspection = Certificato di controllo, impianto a { $fuel }
certificate-title-removal = Certificato di rimozione di un impianto a { $fuel }
certificate-title-container = Certificato del serbatoio per { $fuel }
certificate-title-cylinder = Certificato della bombola per { $fuel }

certificate-number-issued = { $number } · rilasciato in data { $date }
certificate-replaces = Questo documento sostituisce { $number }. Motivo: { $reason }
certificate-issue-line = { $place } · commessa { $job } · ricevuto in data { $received } · finito in data { $finished }

certificate-lead-conversion = In questo veicolo è stato montato l’impianto a gas indicato sotto.
certificate-lead-inspection = L’impianto a gas di questo veicolo è stato controllato; l’esito è riportato sotto.
certificate-lead-removal = L’impianto a gas indicato sotto è stato rimosso da questo veicolo, che ora va solo a benzina.
certificate-lead-container = Sul serbatoio indicato sotto sono stati eseguiti lavori o un’ispezione, come dice questo documento.
certificate-lead-cylinder = Sulla bombola indicata sotto sono stati eseguiti lavori o un’ispezione, come dice questo documento.
certificate-fitting-check = Il montaggio è stato controllato da noi, perché l’omologazione dell’impianto in sé non comprende quel controllo (UN R115, 1.3).
certificate-proofs-all = { $asked ->
    [one] L’unico requisito richiesto è stato soddisfatto.
   *[other] Requisiti richiesti: { $asked }, tutti soddisfatti.
}
certificate-proofs-all-but-found = Decide quanto rilevato: i requisiti richiesti ({ $asked }) sono tutti soddisfatti, ma una carenza riportata sotto non è lieve.
certificate-proofs-some = Requisiti richiesti e soddisfatti: { $met } su { $asked }; gli altri sono indicati sotto, con persona e motivo.
certificate-to-be-confirmed = Queste righe sono state applicate, ma nessuno le ha ancora confermate. Da confermare con l’autorità competente: { $lines }

certificate-keeper-apart = I dati dell’intestatario sono conservati separatamente da questa copia.
certificate-keeper-digest = Impronta dei dati dell’intestatario nel contenuto firmato: { $digest }

certificate-signed-by = Firmatario: { $person }. Firmato: { $at }.
certificate-worked-by = Lavori e prove: { $person }.
certificate-holds = I risultati valgono per questo veicolo solo nel giorno della prova. Prevalgono le norme locali e la prassi degli operatori autorizzati.
certificate-check-online = Firmato elettronicamente. Il codice a piè di pagina mostra lo stato attuale di questo documento; il suo PDF contiene il contenuto firmato.
certificate-check-by-phone = Firmato elettronicamente; il PDF contiene il contenuto firmato. Per conoscere lo stato attuale di questo documento, chiamare { $phone } e indicare il codice a piè di pagina.
certificate-follows = Contenuto del documento che precede questo nella sua serie, SHA-256 { $sum }
certificate-key-id = Chiave di firma { $key }

## Test record

record-number-issued = { $number } · emesso in data { $date }
record-lead = I risultati che seguono riguardano solo l’oggetto provato, come è stato ricevuto e nel giorno in cui è stato provato.
record-body = Rapporto
record-place = Luogo della prova
record-customer = Cliente
record-contact = Contatto
record-method = Metodo
record-received = Ricevuto
record-began = Inizio
record-ended = Fine
record-sampling = Campionamento
record-no-sampling = nessuno
record-deviations = Scostamenti dal metodo
record-no-deviations = nessuno
record-job = Commessa
record-item = Oggetto provato
record-vehicle = Veicolo
record-tested = Provato
record-condition = Stato al ricevimento
record-conditions = Condizioni di prova
record-leak = Prova di tenuta, { $section }
record-attempt = Tentativo
record-boundaries = Delimitazione
record-gas = Gas di prova
record-pressure-start-absolute = Pressione iniziale, assoluta
record-pressure-end-absolute = Pressione finale, assoluta
record-pressure-start-gauge = Pressione iniziale, relativa
record-pressure-end-gauge = Pressione finale, relativa
record-ambient-pressure = Pressione atmosferica
record-temperature-start = Temperatura iniziale
record-temperature-end = Temperatura finale
record-temperature-ambient = Temperatura dell’aria
record-volume = Volume
record-volume-known = Origine del volume
record-joints = Giunzioni, { $n }
record-rate = Tasso di perdita
record-rate-limit = Limite
record-limit-from = Fonte del limite
record-repair = Riparato prima
record-customer-supplied = Dichiarato dal cliente, non verificato da noi
record-authorised = Autorizzato da
record-technician = Prova eseguita da
record-replaces = Questo rapporto sostituisce { $number }. Motivo: { $reason }
record-whole = Questo rapporto si riproduce per intero o non si riproduce.
