# The label on the vehicle.
label-title = Instalacja { $fuel }
label-vehicle = { $plate } · { $last4 }
label-approval = Homologacja { $mark }
label-no-approval = Bez homologacji całości; części homologowane osobno
label-fitted = montaż { $day }
label-container-lpg = Zbiornik gazu
label-container-cng = Butla
label-container-filled = { $litres } L, napełnienie do { $percent } %
label-container-pressure = { $litres } L, { $bar } bar
label-container-made = produkcja { $day }
label-container-test = następne badanie do { $day }
label-next = Najbliższe terminy
label-ask = Terminy i warsztat:
label-code = Kod { $code }
label-call = Pytania: { $shop }, { $phone }
label-code-alt = Kod QR prowadzący do publicznej strony tego pojazdu
label-demonstration = DEMONSTRACJA

# -- its code, and the page behind it --
register-label = Naklejka pojazdu
register-make-label = Utwórz naklejkę pojazdu
register-make-label-lead = Dla tego pojazdu losuje się kod. Otwiera on publiczną stronę z najbliższymi terminami i warsztatem; bez dokumentów, bez nazwisk. Drukować w skali 100 %, 105 mm na 74 mm. Tabliczki i naklejki wymagane w danym kraju pochodzą stamtąd, nie stąd.
deed-label-made = Sporządzono naklejkę pojazdu
