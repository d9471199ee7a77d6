# The places on a job file where an entry or a photo stands; `.lead` is said above its form.

slot-engine-calibration = Afstellen
    .lead = Warm, in gesloten regelkring, zonder foutcodes. Instellingen in uw eigen woorden; het programma van de regeleenheid zelf blijft van de fabrikant.
slot-trims = Brandstoftrims op beide brandstoffen
    .lead = Op dezelfde punten, warm, in gesloten regelkring. Een open regelkring bewijst niets: vollast, warmdraaien, afremmen op de motor, direct na het omschakelen.
slot-after-drive = Na het rijden op beide brandstoffen
    .lead = Foutcodes en gereedheid van de monitoren, opnieuw uitgelezen.

slot-photo-odometer = Kilometerteller
slot-photo-vin-plate = Constructieplaat (VIN)
slot-photo-container-plate = Plaatje van LPG-tank of cilinder
slot-photo-photo = Andere foto’s
slot-photo-document = Documenten
slot-photo-control-unit-file = Bestand van de regeleenheid
slot-photo-signature = Handtekeningen

slot-cylinder-table = Motorcilinders
    .lead = Welke gasinjector bij welke motorcilinder hoort. Schakel elke motorcilinder apart over op benzine: de motor moet reageren.
slot-checklist = Controlelijst
    .lead = Wat open blijft, mag later worden beantwoord. Een antwoord dat niet verandert, houdt de paraaf en de tijd waarmee het is gegeven.
slot-level-sensing = Niveaumeting
    .lead = Hoe de bestuurder weet hoeveel gas er nog is.

slot-heat-sizing = Warmte
    .lead = Wat verdamper of drukregelaar bij nominaal vermogen moet leveren, en of de gekozen dat kan.
slot-line-sizing = Slangen en leidingen
    .lead = Drukverlies en snelheid bij nominaal vermogen: met een te nauwe slang komt de motor bovenin gas tekort.
slot-cylinder-sizing = Cilinder
    .lead = Wat de cilinder bevat, hoe zijn manometer met de temperatuur meeloopt, hoe ver het voertuig ermee komt, en of de as hem draagt.
slot-discharge = Doorstroomcoëfficiënt, gemeten
    .lead = Wat een sproeier van deze werkplaats werkelijk doorlaat. Het sproeierblad opent er dan mee.

slot-hand-over = Overdracht
    .lead = Leg elk onderwerp bij het voertuig uit voordat het wordt afgevinkt. Wat niet is afgevinkt, blijft open bij de bewijzen.

slot-deficiencies = Gebreken
    .lead = Wat is gevonden, punt voor punt. Leg de lijst ook vast als er niets is gevonden: ze zegt dat iemand heeft gekeken.
slot-vessel-check = LPG-tank of cilinder bekeken
    .lead = Elke tank of cilinder: hoe hij is bekeken, wat is gevonden, en wat dat betekent.
slot-photo-deficiency = Gebreken

slot-arrival = Hoe het binnenkwam
    .lead = Kilometerstand, wat de klant zegt, en elke gasinstallatie die al in het voertuig zit.

slot-leak-joints-lpg-liquid = Verbindingen, vloeistofzijde
    .lead = LPG-tank tot verdamper op werkdruk. Een plaats die niet nat is gemaakt, bewijst niets.
slot-leak-joints-lpg-vapour = Verbindingen, dampzijde
    .lead = Verdamper tot injectoren op werkdruk. Een plaats die niet nat is gemaakt, bewijst niets.
slot-leak-joints-cng-high = Verbindingen, hoge druk
    .lead = Cilinder tot drukregelaar op werkdruk. Draai een verbinding nooit onder druk aan.
slot-leak-joints-cng-low = Verbindingen, lage druk
    .lead = Drukregelaar tot injectoren op werkdruk. Een plaats die niet nat is gemaakt, bewijst niets.
slot-exhaust-petrol = Uitlaatgas op benzine
    .lead = Motor warm, sonde diep in de uitlaat, eerst stationair, dan verhoogd stationair zonder belasting.
slot-exhaust-gas = Uitlaatgas op gas
    .lead = Motor en gas warm, sonde diep in de uitlaat, eerst stationair, dan verhoogd stationair zonder belasting.
slot-function-checks = Functiecontroles
    .lead = Wat moet werken voordat het voertuig vertrekt. Voor gas dat open blijft en voor een ontluchting die dicht is, is geen vrijstelling mogelijk.
slot-leak-decay-lpg-liquid = Drukval, vloeistofzijde
slot-leak-decay-lpg-vapour = Drukval, dampzijde
slot-leak-decay-cng-high = Drukval, hoge druk
slot-leak-decay-cng-low = Drukval, lage druk

slot-road = Vergelijkingsrit
    .lead = Benzine-inspuittijd op beide brandstoffen bij hetzelfde toerental en dezelfde belasting, warm en in gesloten regelkring. Waar gas arm is, verlengt het motormanagement; waar het rijk is, verkort het.

slot-nozzle-sizing = Sproeier
    .lead = De kleinste sproeier die binnen de beschikbare tijd nog de brandstof voor nominaal vermogen levert, en stationair doseert.
slot-container-sizing = LPG-tank
    .lead = Wat de LPG-tank bij de vulstop bevat, hoe heet hij mag worden, hoe ver het voertuig ermee komt, en of de as hem draagt.

slot-suitability = Geschiktheid
    .lead = De motor op benzine, warm, vóór enig werk. Wat hier wordt gevonden, aanvaardt de klant eerst.
