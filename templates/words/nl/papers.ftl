# What papers say around the facts of their content.

## Every paper

paper-rules = Regels: { $rules }
paper-check = Controle: { $how }
paper-key = sleutel { $key }
paper-preview = PROEFAFDRUK
paper-preview-notice = PROEFAFDRUK. Niet afgegeven, niet ondertekend. Dit document bewijst niets.
paper-photos = Foto’s
paper-photo = Foto
paper-photo-missing = Dit bestand wordt bij de opdracht bewaard, maar kan hier niet worden afgedrukt.
paper-not-signed = Een werkdocument, niet ondertekend. Bepalend is het dossier van de opdracht.
paper-end = Einde van { $number }
paper-software = Gemaakt met Fuelwright { $version }
paper-rule-set = Regelset { $name } { $version }, SHA-256 { $sum }
paper-code-alt = QR-code die naar { $address } leidt
paper-file-signed = De ondertekende inhoud van dit document
paper-file-keeper = De gegevens van de houder, die de ondertekende inhoud als hashwaarde bevat
paper-beside = Hetzelfde in een andere taal ({ $language }), om ernaast te lezen. Bepalend is de tekst op de pagina’s hiervoor ({ $original }).
paper-copy = Hetzelfde in een andere taal ({ $language }), om ernaast te lezen. Bepalend is de oorspronkelijke tekst ({ $original }).

paper-person-authorised = { $name }, bevoegdheid { $number }
paper-person-authorised-until = { $name }, bevoegdheid { $number } tot en met { $until }

## Vehicle, keeper, system, parts

paper-vehicle = Voertuig
paper-make-model = Merk, handelsbenaming
paper-plate = Kenteken
paper-not-registered = niet geregistreerd
paper-vin = VIN
paper-vin-derived = VIN eindigt op
paper-chassis-number = Chassisnummer
paper-chassis-number-derived = Eindigt op
paper-vin-ends = { $last7 }, laatste vier { $last4 }
paper-first-registered = Eerste toelating
paper-odometer = Kilometerstand
paper-no-odometer = geen kilometerteller
paper-type-code = Type, variant
paper-category = Voertuigcategorie
paper-engine = Motor
paper-engine-code = Motorcode, -nummer
paper-power = { $power } bij { $rpm }/min
paper-engine-cylinders = { $n ->
    [one] 1 motorcilinder
   *[other] { $n } motorcilinders
}

paper-keeper = Houder
paper-name = Naam
paper-address = Adres
paper-phone = Telefoon
paper-mail = E-mail

paper-gas-system = Gasinstallatie
paper-fuel = Brandstof
paper-system = Systeem
paper-system-approval = Systeemgoedkeuring
paper-approval-holder = Goedkeuringshouder
paper-control-unit = Regeleenheid

paper-parts = Ingebouwde onderdelen
paper-part = Onderdeel
paper-maker-and-type = Fabrikant, type
paper-approval-mark = Goedkeurmerk
paper-serial = Serienr., batch
paper-made = Fabricage
paper-next-duty = Volgende termijn

paper-container-of = { $all ->
    [one] LPG-tank
   *[other] LPG-tank { $n } van { $all }
}
paper-cylinder-of = { $all ->
    [one] Cilinder
   *[other] Cilinder { $n } van { $all }
}
paper-maker = Fabrikant
paper-shape = Vorm of type
paper-water-capacity = Waterinhoud
paper-capacity-both = { $stamped }, in hele liters { $floor } L
paper-fill-limit = Vulgrens
paper-fill-both = { $percent } %, gevuld tot { $litres } L
paper-working-pressure = Werkdruk
paper-test-pressure = Testdruk
paper-last-tested = Laatst gekeurd
paper-inspection-kind = Keuring
paper-next-test = Volgende keuring uiterlijk
paper-container-end-of-life = Einde levensduur
paper-cylinder-end-of-life = Einde levensduur
paper-no-end-of-life = door de regels niet bepaald
paper-location = Plaats in het voertuig
paper-findings = Hieraan gevonden:

## Measured

paper-measured = Wat is gemeten
paper-test = Test
paper-result = Resultaat
paper-limit = Grenswaarde
paper-decision = Oordeel
paper-instrument = Meetmiddel
paper-limit-source = Grenswaarden: { $source }
paper-from-outside = resultaat van derden: { $body }
paper-record = rapport { $record }
paper-entered-later = later ingevoerd

paper-verdict-passes-guarded = voldoet, met marge
paper-verdict-passes-simple = voldoet, eenvoudig
paper-verdict-passes-observed = voldoet
paper-verdict-fails-guarded = voldoet niet, met marge
paper-verdict-fails-simple = voldoet niet, eenvoudig
paper-verdict-fails-observed = voldoet niet
paper-verdict-cannot-tell-guarded = geen uitspraak
paper-verdict-cannot-tell-simple = geen uitspraak
paper-verdict-cannot-tell-observed = geen uitspraak

paper-rule-guarded = Met marge: het resultaat en zijn uitgebreide meetonzekerheid (k = { $k }) liggen binnen de grenswaarde. Kans op ten onrechte goedkeuren onder 2,5 % (ILAC-G8:09/2019, 4.2.2).
paper-rule-simple = Eenvoudig: het resultaat ligt binnen de grenswaarde. Kans op ten onrechte goedkeuren tot 50 % bij een resultaat op de grenswaarde (ILAC-G8:09/2019, 4.2.1).

paper-instruments = Meetmiddelen
paper-what = Wat
paper-calibration = Kalibratiecertificaat
paper-good-until = Geldig tot en met

paper-late-entries = Later ingevoerd dan gebeurd
paper-happened = Gebeurd
paper-entered = Ingevoerd
paper-by = Door
paper-reason = Reden

## Proofs, inspection, conformity

paper-proof = Bewijs
paper-exception = Stand
paper-decided-by = Besloten door
paper-exception-waived = vrijgesteld
paper-exception-not-applicable = niet van toepassing
paper-exception-shop-limit = geleverd onder een grens van de werkplaats

paper-inspection = Keuring
paper-place = Plaats
paper-ended = Einde
paper-inspector = Keurmeester
paper-next-inspection = Volgende keuring uiterlijk
paper-present-again = Opnieuw aanbieden uiterlijk
paper-repeats = Herkeuring van
paper-no-deficiencies = Er zijn geen gebreken gevonden.
paper-item = Punt
paper-deficiency = Gebrek
paper-severity = Ernst
paper-severity-minor = klein
paper-severity-major = groot
paper-severity-dangerous = gevaarlijk

paper-conformity = Bewijzen en verklaring van conformiteit
paper-against = Getoetst aan
paper-covers = Omvat
paper-conformity-state = Stand
paper-conforms = voldoet
paper-conforms-not = voldoet niet

## What comes next

paper-vehicle-papers = Te wijzigen op het kentekenbewijs: { $changes }
paper-next = Wat volgt
paper-due-when-first = Uiterlijk, wat het eerst komt
paper-due-decided-by = Bepaald door
paper-due-at-in-short = { $km }
paper-due-either-in-short = { $first } of { $second }
paper-authority-test = Keuring door de overheid
paper-still-to-come = volgt nog
paper-remarks = Opmerkingen
paper-caution = Waarschuwing: { $caution }

## Certificates

certificate-title-conversion = Certificaat van ombouw naar { $fuel }
certificate-title-inspection = Keuringscertificaat, { $fuel }-installatie
certificate-title-removal = Certificaat van uitbouw van een { $fuel }-installatie
certificate-title-container = Tankcertificaat, { $fuel }
certificate-title-cylinder = Cilindercertificaat, { $fuel }

certificate-number-issued = { $number } · afgegeven op { $date }
certificate-replaces = Dit document vervangt { $number }. Reden: { $reason }
certificate-issue-line = { $place } · opdracht { $job } · ontvangen op { $received } · gereed op { $finished }

certificate-lead-conversion = In dit voertuig is de hieronder genoemde gasinstallatie ingebouwd.
certificate-lead-inspection = De gasinstallatie van dit voertuig is gekeurd; de uitslag staat hieronder.
certificate-lead-removal = De hieronder genoemde gasinstallatie is uit dit voertuig uitgebouwd, en het voertuig rijdt alleen op benzine.
certificate-lead-container = Aan de hieronder genoemde LPG-tank is gewerkt, of hij is gekeurd, zoals dit document zegt.
certificate-lead-cylinder = Aan de hieronder genoemde cilinder is gewerkt, of hij is gekeurd, zoals dit document zegt.
certificate-fitting-check = De inbouw is door ons gecontroleerd, omdat de goedkeuring van het systeem zelf die controle niet omvat (UN R115, 1.3).
certificate-proofs-all = { $asked ->
    [one] Het ene gevraagde bewijs is geleverd.
   *[other] Alle { $asked } gevraagde bewijzen zijn geleverd.
}
certificate-proofs-all-but-found = Bepalend is wat is gevonden: elk van de { $asked } bewijzen is geleverd, maar een gebrek hieronder is niet klein.
certificate-proofs-some = { $met } van { $asked } gevraagde bewijzen zijn geleverd; de andere staan hieronder, met persoon en reden.
certificate-to-be-confirmed = Deze regels zijn toegepast, maar nog door niemand bevestigd. Te bevestigen bij de bevoegde overheid: { $lines }

certificate-keeper-apart = De gegevens van de houder worden los van dit exemplaar bewaard.
certificate-keeper-digest = Hashwaarde van de gegevens van de houder in de ondertekende inhoud: { $digest }

certificate-signed-by = Tekenbevoegde: { $person }. Ondertekend op { $at }.
certificate-worked-by = Werk en tests: { $person }.
certificate-holds = Resultaten gelden alleen voor dit voertuig op de dag van de test. De plaatselijke voorschriften en de erkende vakpraktijk gaan voor.
certificate-check-online = Elektronisch ondertekend. De code onder aan de pagina toont hoe dit document er vandaag voor staat; de PDF ervan bevat de ondertekende inhoud.
certificate-check-by-phone = Elektronisch ondertekend; de PDF bevat de ondertekende inhoud. Bel { $phone } en noem de code onder aan de pagina om te horen hoe dit document er vandaag voor staat.
certificate-follows = Inhoud van het vorige document in deze reeks, SHA-256 { $sum }
certificate-key-id = Ondertekeningssleutel { $key }

## Test record

record-number-issued = { $number } · afgegeven op { $date }
record-lead = De resultaten hieronder gelden alleen voor het geteste object, zoals het is ontvangen en op de dag waarop het is getest.
record-body = Rapport
record-place = Plaats van de test
record-customer = Klant
record-contact = Contactgegevens
record-method = Methode
record-received = Ontvangen
record-began = Begin
record-ended = Einde
record-sampling = Bemonstering
record-no-sampling = geen
record-deviations = Afwijkingen van de methode
record-no-deviations = geen
record-job = Opdracht
record-item = Getest object
record-vehicle = Voertuig
record-tested = Getest
record-condition = Toestand bij ontvangst
record-conditions = Omstandigheden
record-leak = Lektest, { $section }
record-attempt = Poging
record-boundaries = Afgesloten door
record-gas = Testgas
record-pressure-start-absolute = Druk bij begin, absoluut
record-pressure-end-absolute = Druk bij einde, absoluut
record-pressure-start-gauge = Druk bij begin, overdruk
record-pressure-end-gauge = Druk bij einde, overdruk
record-ambient-pressure = Luchtdruk
record-temperature-start = Temperatuur bij begin
record-temperature-end = Temperatuur bij einde
record-temperature-ambient = Luchttemperatuur
record-volume = Volume
record-volume-known = Volume bekend door
record-joints = Verbindingen, { $n }
record-rate = Leksnelheid
record-rate-limit = Grenswaarde
record-limit-from = Grenswaarde uit
record-repair = Vooraf gerepareerd
record-customer-supplied = Opgegeven door de klant, niet door ons gecontroleerd
record-authorised = Vrijgegeven door
record-technician = Getest door
record-replaces = Dit rapport vervangt { $number }. Reden: { $reason }
record-whole = Dit rapport wordt in zijn geheel gekopieerd of helemaal niet.
