# Papers about the price of a job: the estimate, the receipt of a deposit, the final price list.

# Names of their files: letters without accents, and hyphens.
estimate-paper-file = kostenvoranschlag
price-list-file = preisliste
receipt-file = quittung

estimate-paper-title = Kostenvoranschlag
estimate-paper-number = { $number }, Fassung { $version }
estimate-paper-lead = Was die Arbeit an Ihrem Fahrzeug voraussichtlich kostet.

# -- what these papers share --
priced-parties = Kunde und Fahrzeug
priced-customer = Kunde
priced-address = Anschrift
priced-vehicle = Fahrzeug
priced-plate = Kennzeichen
priced-job = Auftrag
priced-lines = Teile und Arbeit
priced-what = Bezeichnung
priced-kind = Art
priced-quantity = Menge
priced-price = Einzelpreis, { $currency }
priced-amount = Betrag, { $currency }
priced-total = Summe
priced-terms = Was gilt
priced-until = Dieser Kostenvoranschlag gilt bis { $day }.
priced-no-until = Für diesen Kostenvoranschlag ist kein letzter Tag gesetzt. Fragen Sie nach, bevor Sie sich später darauf verlassen.
priced-change = Eine Änderung wird vor der Arbeit, die sie betrifft, mit Ihnen vereinbart: wie viel, wie, durch wen und wann.
priced-no-invoice = Dies ist keine Rechnung im Sinne des Steuerrechts.
priced-agreed = Vereinbart { $how } mit { $name }, { $day }: { $amount }. Festgehalten von { $person }.
priced-not-agreed = Noch nicht vereinbart. Keine Arbeit beginnt, bevor Sie zustimmen.
priced-sign = Einverstanden (Name, Tag, Unterschrift)
line-kind-part = Teil
line-kind-work = Arbeit
line-kind-other = Sonstiges
line-kind-discount = Nachlass
agreed-how-in-person = persönlich
agreed-how-phone = am Telefon
agreed-how-writing = schriftlich

# -- final price list --
price-list-title = Endgültige Preisliste
price-list-lead = Was die Arbeit gekostet hat, was vorher bezahlt wurde und was noch zu zahlen ist.
price-list-paid = Vorher bezahlt
price-list-nothing-paid = Vorher wurde nichts bezahlt.
price-list-day = Tag
price-list-how = Wie
price-list-by = Durch
price-list-taken-back = Zurückgezahlt. Grund: { $reason }
price-list-sums = Was bleibt
price-list-sums-what = Posten
price-list-remains = Noch zu zahlen
price-list-back = An Sie zurückzuzahlen
price-list-version = Die Zeilen sind die der Fassung { $version } des Kostenvoranschlags.
price-list-not-agreed = Diese Fassung wurde so, wie sie hier steht, nicht vereinbart.

# -- receipt of a deposit --
receipt-title = Quittung über eine Anzahlung
receipt-number = { $number }, Anzahlung { $deposit }
receipt-lead = { $amount } von { $name } erhalten, als Anzahlung für die Arbeit am Fahrzeug.
receipt-deposit = Anzahlung
receipt-amount = Betrag
receipt-how = Wie bezahlt
receipt-day = Tag
receipt-by = Erhalten von
receipt-returned = Zurückgezahlt am { $day } durch { $name }, { $how }. Grund: { $reason }
receipt-counts = Die Anzahlung wird vom Preis der Arbeit abgezogen.
receipt-sign = Erhalten (Unterschrift)
