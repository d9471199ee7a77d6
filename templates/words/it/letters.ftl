# Letters and mails to customers.

# Name of the file of a letter: letters without accents, and hyphens.
letter-file-name = lettera

# -- reminder --
mail-demo = DIMOSTRAZIONE.
mail-subject-one = { $whose }: { $what }, { $by }
mail-subject-many = { $shop }: { $n } scadenze per il Suo veicolo
mail-dear = Gentile { $name },
mail-lead = { $n ->
    [one] per l’impianto a gas del Suo veicolo è in scadenza:
   *[other] per l’impianto a gas del Suo veicolo sono in scadenza:
}
mail-by = entro il { $day }
mail-by-or-km = entro il { $day } o a { $km } km, secondo ciò che si verifica prima
mail-was-due = è scaduto il { $day }
mail-slot = Ci chiami o ci scriva, troveremo un orario che Le va bene:
mail-link = I documenti del Suo veicolo, che cosa scade e la richiesta di un appuntamento:
mail-link-act = Vedere il veicolo e chiedere un appuntamento
mail-caution = Se sente odore di gas: passi a benzina o si fermi, chiuda la valvola del serbatoio, tenga lontane fiamme e scintille e ci chiami. Già fatto altrove? Ce lo dica e lo annotiamo.
mail-why = Riceve questo messaggio perché abbiamo montato o controllato un impianto a gas nel Suo veicolo e quanto indicato riguarda la sua sicurezza o i suoi documenti.
mail-stop = Niente più promemoria: apra questo indirizzo e prema il pulsante.
mail-stop-act = Niente più promemoria
mail-stop-by-phone = Se non vuole più promemoria, ce lo dica e smettiamo.
mail-calendar-summary = { $what }, { $plate }
mail-calendar-description = { $vehicle }, { $by }. { $shop }, { $phone }

# -- answer slip of a letter --
letter-answer = La Sua risposta
letter-answer-lead = Da ritagliare e rispedire, oppure ci chiami.
letter-answer-come = Vorrei venire; preferibilmente il:
letter-answer-elsewhere = Fatto altrove, il (data) da (officina):
letter-answer-sold = Il veicolo è stato venduto, il (data):
letter-answer-no-more = Non voglio più promemoria.
letter-sign = Data, firma

# -- about safety --
letter-dear = Gentile { $name },
letter-without-consent = Riceve questa lettera anche se non ha acconsentito ai promemoria, perché riguarda la sicurezza del Suo veicolo.
letter-reach-us = Se qualcosa non è chiaro, ci chiami al { $phone }.

    { $shop }
letter-re-test = Una prova sul Suo veicolo { $plate } va ripetuta
letter-re-test-text = il Suo veicolo { $plate } ({ $vehicle }) ha il nostro certificato { $number }. Abbiamo trovato qualcosa che mette in dubbio una prova su cui si basa: { $found }

    { $reason }

    Ripetiamo la prova senza costi per Lei e abbiamo riservato questo appuntamento: { $at }. Ci chiami se non Le va bene. Fino ad allora il certificato è in riesame.

    Se sente odore di gas o il veicolo funziona male a gas, guidi a benzina e ci chiami subito.
letter-withdrawn = Il nostro certificato { $number } per il Suo veicolo { $plate } è ritirato
letter-withdrawn-text = abbiamo ritirato il nostro certificato { $number } per il Suo veicolo { $plate } ({ $vehicle }): { $found }

    { $reason }

    Guidi a benzina e faccia chiudere il gas finché l’impianto non sarà stato provato di nuovo. Ci chiami e rimediamo. Chieda alla Sua autorità o assicurazione se nel frattempo può guidare.
letter-recall = Un componente del Suo veicolo { $plate } è oggetto di richiamo
letter-recall-text = { $who } richiama un componente montato sul Suo veicolo { $plate }: { $part }. Il documento è { $document } del { $on }.

    { $remedy }

    Ci chiami e concordiamo un giorno.
