# The page on which anybody asks how a paper stands.

register-number = Nummer
register-kind = Soort
register-result = Uitslag
register-issued = Afgegeven
register-stands = Stand
register-key = Sleutel

# -- how it stands --
standing-valid = Geldig
standing-valid-says = { $number } geldt zoals het is afgegeven.
standing-superseded = Vervangen
standing-superseded-says = In de plaats van { $number } is een later document gekomen.
standing-withdrawn = Ingetrokken
standing-withdrawn-says = De werkplaats heeft { $number } ingetrokken. Het verklaart niets meer.
standing-under-review = In herbeoordeling
standing-under-review-says = De werkplaats kijkt opnieuw naar waar { $number } op berust.
standing-duty-passed = Geldig, een termijn is verstreken
standing-duty-passed-says = { $number } geldt zoals het is afgegeven, maar een keuring die erin staat is te laat.

# -- asking --
verify-title = Een document controleren
verify-lead = Typ de code die onder aan het document staat.
verify-code = De code
verify-ask = Controleer
verify-unknown = Geen document heeft hier deze code. Vergelijk hem met de afdruk; 0 en O, 1 en I gelden als gelijk.
verify-compare = Vergelijk nummer, datum en VIN of chassisnummer met het document in uw hand. Verschillen ze, dan is het dit document niet.
verify-demonstration = DEMONSTRATIE: dit document bewijst niets.

# -- what an inspection came to --
paper-outcome-pass = Goedgekeurd
paper-outcome-pass-with-minor = Goedgekeurd, met kleine gebreken
paper-outcome-fail = Afgekeurd
