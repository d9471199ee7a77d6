# Papers about the price of a job: the estimate, the receipt of a deposit, the final price list.

# Names of their files: letters without accents, and hyphens.
estimate-paper-file = begroting
price-list-file = prijslijst
receipt-file = kwitantie

estimate-paper-title = Prijsbegroting
estimate-paper-number = { $number }, versie { $version }
estimate-paper-lead = Wat het werk aan uw voertuig naar berekening gaat kosten.

# -- what these papers share --
priced-parties = Klant en voertuig
priced-customer = Klant
priced-address = Adres
priced-vehicle = Voertuig
priced-plate = Kenteken
priced-job = Opdracht
priced-lines = Onderdelen en werk
priced-what = Omschrijving
priced-kind = Soort
priced-quantity = Aantal
priced-price = Prijs per stuk, { $currency }
priced-amount = Bedrag, { $currency }
priced-total = Totaal
priced-terms = Voorwaarden
priced-until = Deze begroting geldt tot en met { $day }.
priced-no-until = Voor deze begroting is geen laatste dag bepaald. Vraag het na voordat u er later op rekent.
priced-change = Een wijziging wordt met u afgesproken vóór het werk waar zij over gaat: hoeveel, hoe, door wie en wanneer.
priced-no-invoice = Dit is geen belastingfactuur.
priced-agreed = Afgesproken { $how } met { $name } op { $day }: { $amount }. Genoteerd door { $person }.
priced-not-agreed = Nog niet afgesproken. Geen werk begint voordat u akkoord bent.
priced-sign = Akkoord (naam, dag, handtekening)
line-kind-part = Onderdeel
line-kind-work = Werk
line-kind-other = Overig
line-kind-discount = Korting
agreed-how-in-person = mondeling
agreed-how-phone = per telefoon
agreed-how-writing = schriftelijk

# -- final price list --
price-list-title = Definitieve prijslijst
price-list-lead = Wat het werk heeft gekost, wat eerder is betaald en wat nog te betalen is.
price-list-paid = Eerder betaald
price-list-nothing-paid = Er is eerder niets betaald.
price-list-day = Dag
price-list-how = Hoe
price-list-by = Door
price-list-taken-back = Terugbetaald. Reden: { $reason }
price-list-sums = Wat overblijft
price-list-sums-what = Post
price-list-remains = Nog te betalen
price-list-back = Aan u terug te betalen
price-list-version = De regels zijn die van versie { $version } van de begroting.
price-list-not-agreed = Deze versie is niet afgesproken zoals zij hier staat.

# -- receipt of a deposit --
receipt-title = Kwitantie voor een aanbetaling
receipt-number = { $number }, aanbetaling { $deposit }
receipt-lead = { $amount } ontvangen van { $name }, als aanbetaling voor het werk aan het voertuig.
receipt-deposit = Aanbetaling
receipt-amount = Bedrag
receipt-how = Hoe betaald
receipt-day = Dag
receipt-by = Ontvangen door
receipt-returned = Terugbetaald op { $day } door { $name }, { $how }. Reden: { $reason }
receipt-counts = De aanbetaling gaat van de prijs van het werk af.
receipt-sign = Ontvangen (handtekening)
