# The places on a job file where an entry or a photo stands; `.lead` is said above its form.

slot-engine-calibration = Calibrazione
    .lead = A caldo, in anello chiuso, senza codici guasto. Impostazioni con parole proprie; il programma della centralina resta del suo costruttore.
slot-trims = Correttori con entrambi i carburanti
    .lead = Negli stessi punti, a caldo, in anello chiuso. L’anello aperto non prova nulla: pieno carico, riscaldamento, rilascio, subito dopo la commutazione.
slot-after-drive = Dopo la guida con entrambi i carburanti
    .lead = Codici guasto e stato dei monitor, letti di nuovo.

slot-photo-odometer = Contachilometri
slot-photo-vin-plate = Targhetta VIN
slot-photo-container-plate = Targhetta del serbatoio o della bombola
slot-photo-photo = Altre foto
slot-photo-document = Documenti
slot-photo-control-unit-file = File della centralina
slot-photo-signature = Firme

slot-cylinder-table = Cilindri
    .lead = Quale iniettore gas serve quale cilindro. Commutare a benzina un cilindro per volta: il motore deve reagire.
slot-checklist = Lista di controllo
    .lead = Ciò che resta aperto può avere risposta più tardi. Una risposta che non cambia conserva le iniziali e l’ora con cui è stata data.
slot-level-sensing = Rilevamento del livello
    .lead = Come il conducente sa quanto gas resta.

slot-heat-sizing = Calore
    .lead = Quanto calore il vaporizzatore o il riduttore di pressione deve fornire alla potenza nominale, e se quello scelto ci arriva.
slot-line-sizing = Tubi flessibili e rigidi
    .lead = Perdita di carico e velocità alla potenza nominale: un flessibile troppo stretto lascia il motore senza gas agli alti regimi.
slot-cylinder-sizing = Bombola
    .lead = Quanto contiene la bombola, come l’indicazione del suo manometro varia con la temperatura, quanta strada permette e se l’asse ne regge il peso.
slot-discharge = Coefficiente di efflusso, misurato
    .lead = Che cosa un ugello di questa officina lascia passare davvero. La scheda dell’ugello si apre poi con questo valore.

slot-hand-over = Consegna
    .lead = Spiegare ogni argomento accanto al veicolo prima di spuntarlo. Ciò che non è spuntato resta aperto tra i requisiti.

slot-deficiencies = Carenze
    .lead = Che cosa è stato rilevato, voce per voce. Registrare l’elenco anche se non è stato rilevato nulla: dice che qualcuno ha controllato.
slot-vessel-check = Ispezione di serbatoio o bombola
    .lead = Per ogni recipiente: come è stato ispezionato, che cosa è stato rilevato e che cosa significa.
slot-photo-deficiency = Carenze

slot-arrival = Come è arrivato
    .lead = Contachilometri, che cosa dice il cliente ed eventuale impianto a gas già presente nel veicolo.

slot-leak-joints-lpg-liquid = Giunzioni, fase liquida
    .lead = Dal serbatoio al vaporizzatore a pressione di esercizio. Un punto non bagnato non prova nulla.
slot-leak-joints-lpg-vapour = Giunzioni, fase gassosa
    .lead = Dal vaporizzatore agli iniettori a pressione di esercizio. Un punto non bagnato non prova nulla.
slot-leak-joints-cng-high = Giunzioni, alta pressione
    .lead = Dalla bombola al riduttore a pressione di esercizio. Non serrare mai una giunzione sotto pressione.
slot-leak-joints-cng-low = Giunzioni, bassa pressione
    .lead = Dal riduttore agli iniettori a pressione di esercizio. Un punto non bagnato non prova nulla.
slot-exhaust-petrol = Emissioni allo scarico a benzina
    .lead = Motore caldo, sonda a fondo nello scarico, prima al minimo, poi al minimo accelerato senza carico.
slot-exhaust-gas = Emissioni allo scarico a gas
    .lead = Motore e gas caldi, sonda a fondo nello scarico, prima al minimo, poi al minimo accelerato senza carico.
slot-function-checks = Controlli funzionali
    .lead = Che cosa deve funzionare prima che il veicolo esca. Un gas che resta aperto e uno sfiato chiuso non ammettono deroga.
slot-leak-decay-lpg-liquid = Caduta di pressione, fase liquida
slot-leak-decay-lpg-vapour = Caduta di pressione, fase gassosa
slot-leak-decay-cng-high = Caduta di pressione, alta pressione
slot-leak-decay-cng-low = Caduta di pressione, bassa pressione

slot-road = Confronto su strada
    .lead = Tempo di iniezione benzina con entrambi i carburanti, allo stesso regime e carico, a caldo e in anello chiuso. Dove la carburazione a gas è magra la centralina benzina lo allunga; dove è ricca lo accorcia.

slot-nozzle-sizing = Ugello
    .lead = L’ugello più piccolo che eroga ancora il carburante nominale nel tempo disponibile e dosa al minimo.
slot-container-sizing = Serbatoio
    .lead = Quanto contiene il serbatoio all’arresto del riempimento, quanto può scaldarsi, quanta strada permette e se l’asse ne regge il peso.

slot-suitability = Idoneità
    .lead = Il motore a benzina, caldo, prima di qualsiasi lavoro. Ciò che qui si rileva viene prima accettato dal cliente.
