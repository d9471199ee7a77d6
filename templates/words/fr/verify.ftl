# The page on which anybody asks how a paper stands.

register-number = Numéro
register-kind = Nature
register-result = Résultat
register-issued = Délivré
register-stands = État
register-key = Clé

# -- how it stands --
standing-valid = Valable
standing-valid-says = { $number } vaut tel qu’il a été délivré.
standing-superseded = Remplacé
standing-superseded-says = Un document ultérieur tient lieu de { $number }.
standing-withdrawn = Retiré
standing-withdrawn-says = L’atelier a retiré { $number }. Il n’atteste plus rien.
standing-under-review = En réexamen
standing-under-review-says = L’atelier réexamine ce sur quoi repose { $number }.
standing-duty-passed = Valable, une échéance est passée
standing-duty-passed-says = { $number } vaut tel qu’il a été délivré, mais un contrôle qu’il mentionne est en retard.

# -- asking --
verify-title = Vérifier un document
verify-lead = Saisissez le code imprimé au bas du document.
verify-code = Le code
verify-ask = Vérifier
verify-unknown = Aucun document n’a ce code ici. Comparez-le avec l’imprimé ; 0 et O, 1 et I comptent pour un.
verify-compare = Comparez numéro, date et VIN ou numéro de châssis avec le document que vous tenez. S’ils diffèrent, ce n’est pas ce document.
verify-demonstration = DÉMONSTRATION : ce document ne prouve rien.

# -- what an inspection came to --
paper-outcome-pass = Favorable
paper-outcome-pass-with-minor = Favorable, avec défaillances mineures
paper-outcome-fail = Défavorable
