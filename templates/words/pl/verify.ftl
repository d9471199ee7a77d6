# The page on which anybody asks how a paper stands.

register-number = Numer
register-kind = Rodzaj
register-result = Wynik
register-issued = Wystawiono
register-stands = Stan
register-key = Klucz

# -- how it stands --
standing-valid = Ważne
standing-valid-says = { $number } obowiązuje tak, jak zostało wystawione.
standing-superseded = Zastąpione
standing-superseded-says = Zamiast { $number } obowiązuje późniejszy dokument.
standing-withdrawn = Wycofane
standing-withdrawn-says = Warsztat wycofał { $number }. Dokument niczego już nie poświadcza.
standing-under-review = W ponownym sprawdzeniu
standing-under-review-says = Warsztat jeszcze raz sprawdza, na czym opiera się { $number }.
standing-duty-passed = Ważne, termin minął
standing-duty-passed-says = { $number } obowiązuje tak, jak zostało wystawione, ale wymienione w nim badanie jest zaległe.

# -- asking --
verify-title = Sprawdź dokument
verify-lead = Proszę wpisać kod wydrukowany u dołu dokumentu.
verify-code = Kod
verify-ask = Sprawdź
verify-unknown = Żaden dokument nie ma tu takiego kodu. Proszę porównać go z wydrukiem; 0 i O, 1 i I liczą się jako to samo.
verify-compare = Proszę porównać numer, datę i numer VIN lub nadwozia z dokumentem w ręku. Jeśli się różnią, to nie ten dokument.
verify-demonstration = POKAZ: ten dokument niczego nie dowodzi.

# -- what an inspection came to --
paper-outcome-pass = Wynik pozytywny
paper-outcome-pass-with-minor = Wynik pozytywny, z drobnymi usterkami
paper-outcome-fail = Wynik negatywny
