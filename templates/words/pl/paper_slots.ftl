# The places on a job file where an entry or a photo stands; `.lead` is said above its form.

slot-engine-calibration = Kalibracja
    .lead = Na rozgrzanym silniku, w pętli zamkniętej, bez kodów błędów. Ustawienia własnymi słowami; program sterownika należy do jego producenta.
slot-trims = Korekty wtrysku na obu paliwach
    .lead = W tych samych punktach, na rozgrzanym silniku, w pętli zamkniętej. Pętla otwarta niczego nie dowodzi: pełne obciążenie, nagrzewanie, hamowanie silnikiem, tuż po przełączeniu.
slot-after-drive = Po jeździe na obu paliwach
    .lead = Kody błędów i gotowość monitorów, odczytane ponownie.

slot-photo-odometer = Licznik przebiegu
slot-photo-vin-plate = Tabliczka VIN
slot-photo-container-plate = Tabliczka zbiornika lub butli
slot-photo-photo = Inne zdjęcia
slot-photo-document = Dokumenty
slot-photo-control-unit-file = Plik sterownika
slot-photo-signature = Podpisy

slot-cylinder-table = Cylindry silnika
    .lead = Który wtryskiwacz gazu obsługuje który cylinder silnika. Przełączać każdy cylinder osobno na benzynę: silnik musi zareagować.
slot-checklist = Lista kontrolna
    .lead = Na pozycje bez odpowiedzi można odpowiedzieć później. Niezmieniona odpowiedź zachowuje inicjały i czas, z którymi ją podano.
slot-level-sensing = Pomiar poziomu
    .lead = Skąd kierowca wie, ile gazu zostało.

slot-heat-sizing = Ciepło
    .lead = Ile musi dostarczyć reduktor-parownik lub reduktor ciśnienia przy mocy znamionowej i czy wybrany to potrafi.
slot-line-sizing = Przewody elastyczne i sztywne
    .lead = Spadek ciśnienia i prędkość przy mocy znamionowej: za wąski przewód głodzi silnik w górze zakresu.
slot-cylinder-sizing = Butla
    .lead = Ile butla mieści, jak jej manometr zmienia się z temperaturą, na jaki zasięg wystarcza i czy oś ją uniesie.
slot-discharge = Współczynnik wypływu, zmierzony
    .lead = Ile dysza tego warsztatu naprawdę przepuszcza. Arkusz dyszy otwiera się potem z tą wartością.

slot-hand-over = Wydanie pojazdu
    .lead = Każdy temat objaśnić przy pojeździe przed zaznaczeniem. Niezaznaczone pozostaje otwarte wśród potwierdzeń.

slot-deficiencies = Usterki
    .lead = Co stwierdzono, pozycja po pozycji. Zapisać listę także wtedy, gdy niczego nie znaleziono: mówi, że ktoś sprawdził.
slot-vessel-check = Sprawdzenie zbiornika lub butli
    .lead = Każdy zbiornik i każda butla: jak sprawdzono, co stwierdzono i co to oznacza.
slot-photo-deficiency = Usterki

slot-arrival = Stan przy przyjęciu
    .lead = Stan licznika, co mówi klient i jaka instalacja gazowa jest już w pojeździe.

slot-leak-joints-lpg-liquid = Złącza, faza ciekła
    .lead = Od zbiornika do reduktora-parownika przy ciśnieniu roboczym. Niezwilżone miejsce niczego nie dowodzi.
slot-leak-joints-lpg-vapour = Złącza, faza lotna
    .lead = Od reduktora-parownika do wtryskiwaczy przy ciśnieniu roboczym. Niezwilżone miejsce niczego nie dowodzi.
slot-leak-joints-cng-high = Złącza, wysokie ciśnienie
    .lead = Od butli do reduktora ciśnienia przy ciśnieniu roboczym. Nigdy nie dokręcać złącza pod ciśnieniem.
slot-leak-joints-cng-low = Złącza, niskie ciśnienie
    .lead = Od reduktora ciśnienia do wtryskiwaczy przy ciśnieniu roboczym. Niezwilżone miejsce niczego nie dowodzi.
slot-exhaust-petrol = Spaliny na benzynie
    .lead = Silnik rozgrzany, sonda analizatora głęboko w rurze wydechowej, najpierw na biegu jałowym, potem przy podwyższonych obrotach bez obciążenia.
slot-exhaust-gas = Spaliny na gazie
    .lead = Silnik i gaz rozgrzane, sonda analizatora głęboko w rurze wydechowej, najpierw na biegu jałowym, potem przy podwyższonych obrotach bez obciążenia.
slot-function-checks = Próby działania
    .lead = Co musi działać, zanim pojazd wyjedzie. Dla gazu, który pozostaje otwarty, i dla zamkniętego odpowietrzenia nie ma odstępstwa.
slot-leak-decay-lpg-liquid = Spadek ciśnienia, faza ciekła
slot-leak-decay-lpg-vapour = Spadek ciśnienia, faza lotna
slot-leak-decay-cng-high = Spadek ciśnienia, wysokie ciśnienie
slot-leak-decay-cng-low = Spadek ciśnienia, niskie ciśnienie

slot-road = Porównanie w jeździe
    .lead = Czas wtrysku benzyny na obu paliwach przy tych samych obrotach i obciążeniu, na rozgrzanym silniku i w pętli zamkniętej. Gdzie na gazie jest za ubogo, sterownik benzynowy wydłuża; gdzie za bogato, skraca.

slot-nozzle-sizing = Dysza
    .lead = Najmniejsza dysza, która w dostępnym czasie podaje jeszcze dawkę paliwa dla mocy znamionowej i dozuje na biegu jałowym.
slot-container-sizing = Zbiornik gazu
    .lead = Ile zbiornik mieści przy zatrzymaniu napełniania, jak bardzo może się nagrzać, na jaki zasięg wystarcza i czy oś go uniesie.

slot-suitability = Zdatność do montażu gazu
    .lead = Silnik na benzynie, rozgrzany, przed rozpoczęciem prac. To, co tu stwierdzono, najpierw akceptuje klient.
