# What stands on papers and letters to customers, whatever they are about.

paper-page = Pagina { $page } di { $pages }
paper-licence = autorizzazione { $licence }
paper-demonstration = DIMOSTRAZIONE
paper-demonstration-notice = DIMOSTRAZIONE. Officina, veicolo e persone sono inventati. Questo documento non prova nulla.
paper-fuel-lpg = GPL
paper-fuel-cng = metano
paper-due-what = Che cosa
paper-due-when = Entro
paper-due-at = a { $km }
paper-due-every = { $span } percorsi
paper-due-months = { $n ->
    [one] 1 mese
   *[other] { $n } mesi
}
paper-due-either = { $first } o { $second }, secondo ciò che si verifica prima
paper-cautions = Avvertenze

# -- what falls due --
duty-kind-first-check = Primo controllo
duty-kind-filter = Filtro
duty-kind-container = Serbatoio
duty-kind-cylinder-inspection = Ispezione delle bombole
duty-kind-pressure-test = Esame interno e prova a pressione
duty-kind-cylinder-life = Fine vita della bombola
duty-kind-inspection = Controllo periodico
duty-kind-valve-clearance = Gioco valvole
duty-kind-warranty = Fine della garanzia
duty-kind-fill-stop = Arresto del riempimento all’80 %
duty-kind-authority-test = Prova dell’autorità
duty-kind-authority-paper = Documento dell’autorità
duty-kind-other = Altro
duty-kind-recall = Richiamo

# -- parts --
part-category-container = Serbatoio
part-category-multivalve = Multivalvola
part-category-gas-tight-housing = Camera stagna
part-category-filling-unit = Presa di carica
part-category-vaporiser = Vaporizzatore
part-category-shut-off-valve = Elettrovalvola di intercettazione
part-category-filter = Filtro
part-category-injector-rail = Rail iniettori
part-category-control-unit = Centralina
part-category-sensor = Sensore
part-category-rigid-line = Tubo rigido
part-category-hose = Tubo flessibile
part-category-cylinder = Bombola
part-category-cylinder-valve = Valvola della bombola
part-category-pressure-regulator = Riduttore di pressione
part-category-other = Altro

# -- certificates --
certificate-kind-conversion = Certificato di conversione
certificate-kind-inspection = Certificato di controllo
certificate-kind-removal = Certificato di rimozione
certificate-kind-container = Certificato del serbatoio
certificate-kind-cylinder = Certificato della bombola
