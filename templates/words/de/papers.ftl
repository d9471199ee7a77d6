# What papers say around the facts of their content.

## Every paper

paper-rules = Regeln: { $rules }
paper-check = Prüfen: { $how }
paper-key = Schlüssel { $key }
paper-preview = VORSCHAU
paper-preview-notice = VORSCHAU. Nicht ausgestellt, nicht signiert. Dieses Papier beweist nichts.
paper-photos = Fotos
paper-photo = Foto
paper-photo-missing = Diese Datei liegt beim Auftrag, lässt sich hier aber nicht drucken.
paper-not-signed = Arbeitspapier, nicht signiert. Maßgebend ist die Auftragsakte.
paper-end = Ende von { $number }
paper-software = Erstellt mit Fuelwright { $version }
paper-rule-set = Regelwerk { $name } { $version }, SHA-256 { $sum }
paper-code-alt = QR-Code, der zu { $address } führt
paper-file-signed = Der signierte Inhalt dieses Papiers
paper-file-keeper = Die Halterdaten, die der signierte Inhalt als Hashwert enthält
paper-beside = Dasselbe zum Mitlesen ({ $language }). Maßgebend ist der Text auf den Seiten davor ({ $original }).
paper-copy = Dasselbe zum Mitlesen ({ $language }). Maßgebend ist der ursprüngliche Text ({ $original }).

paper-person-authorised = { $name }, Berechtigung { $number }
paper-person-authorised-until = { $name }, Berechtigung { $number } bis { $until }

## Vehicle, keeper, system, parts

paper-vehicle = Fahrzeug
paper-make-model = Marke, Modell
paper-plate = Kennzeichen
paper-not-registered = nicht zugelassen
paper-vin = FIN
paper-vin-derived = FIN endet auf
paper-chassis-number = Fahrgestellnummer
paper-chassis-number-derived = Endet auf
paper-vin-ends = { $last7 }, letzte vier { $last4 }
paper-first-registered = Erstzulassung
paper-odometer = Kilometerstand
paper-no-odometer = kein Kilometerzähler
paper-type-code = Typ, Variante
paper-category = Fahrzeugklasse
paper-engine = Motor
paper-engine-code = Motorcode, -nummer
paper-power = { $power } bei { $rpm }/min
paper-engine-cylinders = { $n ->
    [one] 1 Zylinder
   *[other] { $n } Zylinder
}

paper-keeper = Halter
paper-name = Name
paper-address = Anschrift
paper-phone = Telefon
paper-mail = E-Mail

paper-gas-system = Gasanlage
paper-fuel = Kraftstoff
paper-system = Anlage
paper-system-approval = Systemgenehmigung
paper-approval-holder = Genehmigungsinhaber
paper-control-unit = Steuergerät

paper-parts = Eingebaute Teile
paper-part = Teil
paper-maker-and-type = Hersteller, Typ
paper-approval-mark = Genehmigungszeichen
paper-serial = Seriennr., Charge
paper-made = Hergestellt
paper-next-duty = Nächster Termin

paper-container-of = { $all ->
    [one] Gasbehälter
   *[other] Gasbehälter { $n } von { $all }
}
paper-cylinder-of = { $all ->
    [one] Gasflasche
   *[other] Gasflasche { $n } von { $all }
}
paper-maker = Hersteller
paper-shape = Form oder Typ
paper-water-capacity = Wasserinhalt
paper-capacity-both = { $stamped }, in ganzen Litern { $floor } L
paper-fill-limit = Füllgrenze
paper-fill-both = { $percent } %, gefüllt bis { $litres } L
paper-working-pressure = Betriebsdruck
paper-test-pressure = Prüfdruck
paper-last-tested = Zuletzt geprüft
paper-inspection-kind = Prüfung
paper-next-test = Nächste Prüfung bis
paper-container-end-of-life = Ende der Nutzungsdauer
paper-cylinder-end-of-life = Ende der Nutzungsdauer
paper-no-end-of-life = von den Regeln nicht festgelegt
paper-location = Einbauort
paper-findings = Daran festgestellt:

## Measured

paper-measured = Was gemessen wurde
paper-test = Prüfung
paper-result = Ergebnis
paper-limit = Grenzwert
paper-decision = Entscheidung
paper-instrument = Prüfmittel
paper-limit-source = Grenzwerte: { $source }
paper-from-outside = externes Ergebnis: { $body }
paper-record = Prüfbericht { $record }
paper-entered-later = nachgetragen

paper-verdict-passes-guarded = bestanden, abgesichert
paper-verdict-passes-simple = bestanden, einfach
paper-verdict-passes-observed = bestanden
paper-verdict-fails-guarded = nicht bestanden, abgesichert
paper-verdict-fails-simple = nicht bestanden, einfach
paper-verdict-fails-observed = nicht bestanden
paper-verdict-cannot-tell-guarded = nicht entscheidbar
paper-verdict-cannot-tell-simple = nicht entscheidbar
paper-verdict-cannot-tell-observed = nicht entscheidbar

paper-rule-guarded = Abgesichert (Sicherheitsband): Das Ergebnis und seine erweiterte Messunsicherheit (k = { $k }) liegen innerhalb des Grenzwerts. Risiko, fälschlich zu bestehen, unter 2,5 % (ILAC-G8:09/2019, 4.2.2).
paper-rule-simple = Einfach: Das Ergebnis liegt innerhalb des Grenzwerts. Risiko, fälschlich zu bestehen, bis zu 50 % bei einem Ergebnis am Grenzwert (ILAC-G8:09/2019, 4.2.1).

paper-instruments = Prüfmittel
paper-what = Was
paper-calibration = Kalibrierschein
paper-good-until = Gültig bis

paper-late-entries = Nachträglich eingetragen
paper-happened = Geschehen
paper-entered = Eingetragen
paper-by = Von
paper-reason = Grund

## Proofs, inspection, conformity

paper-proof = Nachweis
paper-exception = Stand
paper-decided-by = Entschieden von
paper-exception-waived = Ausnahme zugelassen
paper-exception-not-applicable = trifft nicht zu
paper-exception-shop-limit = mit Werkstattgrenzwert erbracht

paper-inspection = Prüfung
paper-place = Ort
paper-ended = Ende
paper-inspector = Prüfer
paper-next-inspection = Nächste Prüfung bis
paper-present-again = Wieder vorzuführen bis
paper-repeats = Nachprüfung zu
paper-no-deficiencies = Es wurden keine Mängel festgestellt.
paper-item = Prüfpunkt
paper-deficiency = Mangel
paper-severity = Einstufung
paper-severity-minor = gering
paper-severity-major = erheblich
paper-severity-dangerous = gefährlich

paper-conformity = Nachweise und Konformitätsaussage
paper-against = Grundlage
paper-covers = Umfang
paper-conformity-state = Aussage
paper-conforms = erfüllt
paper-conforms-not = nicht erfüllt

## What comes next

paper-vehicle-papers = In den Fahrzeugpapieren zu ändern: { $changes }
paper-next = Was als Nächstes ansteht
paper-due-when-first = Bis (was zuerst eintritt)
paper-due-decided-by = Maßgebend
paper-due-at-in-short = { $km }
paper-due-either-in-short = { $first } oder { $second }
paper-authority-test = Prüfung durch die Behörde
paper-still-to-come = steht noch aus
paper-remarks = Bemerkungen
paper-caution = Sicherheitshinweis: { $caution }

## Certificates

certificate-title-conversion = Bescheinigung über die Umrüstung auf { $fuel }
certificate-title-inspection = Prüfbescheinigung, Gasanlage für { $fuel }
certificate-title-removal = Bescheinigung über den Ausbau einer Gasanlage für { $fuel }
certificate-title-container = Behälterbescheinigung, { $fuel }
certificate-title-cylinder = Flaschenbescheinigung, { $fuel }

certificate-number-issued = { $number } · ausgestellt am { $date }
certificate-replaces = Dieses Papier ersetzt { $number }. Grund: { $reason }
certificate-issue-line = { $place } · Auftrag { $job } · Eingang { $received } · fertiggestellt { $finished }

certificate-lead-conversion = In dieses Fahrzeug wurde die unten genannte Gasanlage eingebaut.
certificate-lead-inspection = Die Gasanlage dieses Fahrzeugs wurde geprüft; das Ergebnis steht unten.
certificate-lead-removal = Die unten genannte Gasanlage wurde aus diesem Fahrzeug ausgebaut; das Fahrzeug fährt nur noch mit Benzin.
certificate-lead-container = Am unten genannten Gasbehälter wurde gearbeitet oder er wurde geprüft, wie dieses Papier es angibt.
certificate-lead-cylinder = An der unten genannten Gasflasche wurde gearbeitet oder sie wurde geprüft, wie dieses Papier es angibt.
certificate-fitting-check = Den Einbau haben wir geprüft, da die Genehmigung des Systems selbst diese Prüfung nicht umfasst (UN R115, 1.3).
certificate-proofs-all = { $asked ->
    [one] Der eine verlangte Nachweis wurde erbracht.
   *[other] Alle { $asked } verlangten Nachweise wurden erbracht.
}
certificate-proofs-all-but-found = Der Befund entscheidet: Jeder der { $asked } Nachweise wurde erbracht, aber ein unten genannter Mangel ist nicht gering.
certificate-proofs-some = Erbracht: { $met } von { $asked } verlangten Nachweisen; die übrigen stehen unten, mit Person und Grund.
certificate-to-be-confirmed = Diese Vorgaben wurden angewandt, aber noch von niemandem bestätigt. Von Ihrer Behörde zu bestätigen: { $lines }

certificate-keeper-apart = Die Halterdaten werden getrennt von dieser Ausfertigung geführt.
certificate-keeper-digest = Hashwert der Halterdaten im signierten Inhalt: { $digest }

certificate-signed-by = Unterzeichner: { $person }. Signiert am { $at }.
certificate-worked-by = Arbeiten und Prüfungen: { $person }.
certificate-holds = Die Ergebnisse gelten nur für dieses Fahrzeug am Tag der Prüfung. Örtliches Recht und anerkannte Fachpraxis gehen vor.
certificate-check-online = Elektronisch signiert. Der Code in der Fußzeile zeigt, wie es heute um dieses Papier steht; das PDF enthält den signierten Inhalt.
certificate-check-by-phone = Elektronisch signiert; das PDF enthält den signierten Inhalt. Wie es heute um dieses Papier steht, erfahren Sie unter { $phone }; nennen Sie den Code in der Fußzeile.
certificate-follows = Inhalt des vorhergehenden Papiers dieser Reihe, SHA-256 { $sum }
certificate-key-id = Signaturschlüssel { $key }

## Test record

record-number-issued = { $number } · ausgestellt am { $date }
record-lead = Die folgenden Ergebnisse beziehen sich nur auf den geprüften Gegenstand, im Zustand bei Eingang und am Tag der Prüfung.
record-body = Prüfbericht
record-place = Prüfort
record-customer = Kunde
record-contact = Kontakt
record-method = Verfahren
record-received = Eingang
record-began = Beginn
record-ended = Ende
record-sampling = Probenahme
record-no-sampling = keine
record-deviations = Abweichungen vom Verfahren
record-no-deviations = keine
record-job = Auftrag
record-item = Prüfgegenstand
record-vehicle = Fahrzeug
record-tested = Geprüft
record-condition = Zustand bei Eingang
record-conditions = Prüfbedingungen
record-leak = Dichtheitsprüfung, { $section }
record-attempt = Versuch
record-boundaries = Abschnittsgrenzen
record-gas = Prüfgas
record-pressure-start-absolute = Anfangsdruck, absolut
record-pressure-end-absolute = Enddruck, absolut
record-pressure-start-gauge = Anfangsdruck, Überdruck
record-pressure-end-gauge = Enddruck, Überdruck
record-ambient-pressure = Luftdruck
record-temperature-start = Anfangstemperatur
record-temperature-end = Endtemperatur
record-temperature-ambient = Lufttemperatur
record-volume = Volumen
record-volume-known = Volumen bekannt durch
record-joints = Verbindungen, { $n }
record-rate = Leckrate
record-rate-limit = Grenzwert
record-limit-from = Grenzwert nach
record-repair = Davor repariert
record-customer-supplied = Angaben des Kunden, von uns nicht geprüft
record-authorised = Freigegeben von
record-technician = Geprüft von
record-replaces = Dieser Prüfbericht ersetzt { $number }. Grund: { $reason }
record-whole = Dieser Prüfbericht wird nur vollständig oder gar nicht vervielfältigt.
