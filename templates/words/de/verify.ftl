# The page on which anybody asks how a paper stands.

register-number = Nummer
register-kind = Art
register-result = Ergebnis
register-issued = Ausgestellt
register-stands = Stand
register-key = Schlüssel

# -- how it stands --
standing-valid = Gültig
standing-valid-says = { $number } gilt, wie sie ausgestellt wurde.
standing-superseded = Ersetzt
standing-superseded-says = An die Stelle von { $number } ist ein späteres Papier getreten.
standing-withdrawn = Zurückgezogen
standing-withdrawn-says = Die Werkstatt hat { $number } zurückgenommen. Sie bescheinigt nichts mehr.
standing-under-review = In Überprüfung
standing-under-review-says = Die Werkstatt sieht noch einmal an, worauf { $number } beruht.
standing-duty-passed = Gültig, eine Frist ist verstrichen
standing-duty-passed-says = { $number } gilt, wie sie ausgestellt wurde, aber eine darin genannte Prüfung ist überfällig.

# -- asking --
verify-title = Ein Papier prüfen
verify-lead = Den Code eingeben, der unten auf dem Papier steht.
verify-code = Code
verify-ask = Prüfen
verify-unknown = Diesen Code hat hier kein Papier. Vergleichen Sie ihn mit dem Ausdruck; 0 und O, 1 und I gelten als gleich.
verify-compare = Vergleichen Sie Nummer, Datum und FIN oder Fahrgestellnummer mit dem Papier in Ihrer Hand. Weichen sie ab, ist es nicht dieses Papier.
verify-demonstration = VORFÜHRUNG: Dieses Papier beweist nichts.

# -- what an inspection came to --
paper-outcome-pass = Bestanden
paper-outcome-pass-with-minor = Bestanden, mit geringen Mängeln
paper-outcome-fail = Nicht bestanden
