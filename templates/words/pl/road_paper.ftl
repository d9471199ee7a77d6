# What a road comparison says, on screen and in the calibration record.

road-phase-before = Przed poprawkami
road-phase-after = Po poprawkach
road-stated-petrol = benzyna
road-stated-gas = gaz
road-title-alike = Tak samo na obu paliwach
road-title-apart = Gaz różni się od benzyny
road-title-cannot-tell = Jeszcze nie można rozstrzygnąć
road-said-alike = Punkty pracy z dostateczną liczbą przejazdów (co najmniej { $visits } na każdym paliwie): { $judged }; każdy mieści się w granicach { $within } %.
road-said-apart = Punkty pracy z odchyleniem ponad { $deviates } %: { $apart } z { $judged } mających dostateczną liczbę przejazdów (co najmniej { $visits } na każdym paliwie).
road-said-cannot-tell = Punkty pracy z dostateczną liczbą przejazdów (co najmniej { $visits } na każdym paliwie): { $judged }, w tym zgodne: { $good }, nierozstrzygnięte: { $undecided }. Punkty, w których jazdy było za mało: { $few }.
road-said-lean = Najdalej: { $region }, na gazie za ubogo o { $percent }.
road-said-rich = Najdalej: { $region }, na gazie za bogato o { $percent }.
road-fuel-logged = Zarejestrowano, które paliwo było spalane.
road-fuel-stated = Paliwo podano, nie zarejestrowano.
road-interval = { $low } do { $high }
road-on-petrol = na benzynie
road-on-gas = na gazie
road-on-both = na każdym paliwie
road-drive-title = Co przejechać następnie
road-drive = { $visits ->
        [one] Jeszcze 1 przejazd
        [few] Jeszcze { $visits } przejazdy
        [many] Jeszcze { $visits } przejazdów
       *[other] Jeszcze { $visits } przejazdu
    } przy { $region }, { $fuel }
road-drive-more = { $n ->
        [one] i jeszcze jeden zakres
        [few] i jeszcze { $n } zakresy
        [many] i jeszcze { $n } zakresów
       *[other] i jeszcze { $n } zakresu
    }
road-lean-at-load = Na gazie jest za ubogo o { $percent } tam, gdzie silnik pracuje najciężej. Sterownik benzynowy nie korzysta tam z sondy lambda, więc nic tego nie koryguje: wypalają się zawory wydechowe i ich gniazda, przegrzewają się tłoki. Nie obciążać mocno silnika, dopóki nie zostanie to poprawione.
road-nozzle-small = Przy dużym obciążeniu na gazie jest wszędzie za ubogo o { $percent }: więcej, niż naprawi poprawka. Dysza jest za mała.
road-nozzle-open = Wtryskiwacz gazu jest przy dużym obciążeniu otwarty przez { $duty } czasu, a na gazie jest tam za ubogo o { $percent }: między dwoma wtryskami nie zostaje czasu. Dysza jest za mała.
road-nozzle-large = Na biegu jałowym na gazie jest za bogato o { $percent }: więcej, niż naprawi poprawka. Dysza jest za duża.
road-warning-no-coolant = Nie zarejestrowano temperatury cieczy chłodzącej: wierszy z zimnego silnika nie dało się pominąć.
road-warning-no-closed-loop = Nie zarejestrowano pętli zamkniętej: wierszy z pętli otwartej nie dało się pominąć, a czasy wtrysku są w nich jednakowe przy każdej mieszance.
road-warning-no-manifold = Nie zarejestrowano ciśnienia w kolektorze: obciążenie określa czas wtrysku po odjęciu korekt wtrysku.
road-warning-load-unknown = Nie zarejestrowano ani ciśnienia w kolektorze, ani korekt wtrysku: niczego nie można ocenić.
road-warning-one-trim = Zarejestrowano tylko jedną z dwóch korekt wtrysku; porównywać należy sumy.
road-warning-load-unseen = Z dużym obciążeniem jechano tylko w pętli otwartej: nic o nim nie wiadomo. Użyć odczytu sondy szerokopasmowej, jeśli jest.
road-warning-short-times = Niektóre czasy wtrysku są krótsze niż 4 ms: przez czas martwy wtryskiwacza poprawki mylą się tam o kilka procent.
road-warning-broken = Nie dało się odczytać { $percent } wierszy.
road-cells = Punkty pracy
road-column-speed = Obroty silnika, /min
road-column-manifold = Kolektor, kPa
road-column-injection = Wtrysk, ms
road-column-visits = Przejazdy na benzynie, na gazie
road-column-deviation = Odchylenie, %
road-column-verdict = Ocena
road-column-correction = Poprawić o, %
road-cell-good = Tak samo
road-cell-lean = Na gazie za ubogo
road-cell-rich = Na gazie za bogato
road-cell-undecided = Nierozstrzygnięte
road-cell-few = Za mało jazdy: jeszcze { $petrol } na benzynie, { $gas } na gazie
road-cell-no-feedback = Brak sprzężenia zwrotnego: pętla otwarta
road-cell-load-unknown = Obciążenie nieznane
road-trims = Korekty wtrysku na obu paliwach
road-column-regime = Gdzie
road-regime-idle = Bieg jałowy
road-regime-raised-idle = Podwyższone obroty
road-regime-cruise = Jazda ustalona
road-regime-load = Obciążenie
road-aside = Pominięte wiersze
road-column-why = Powód
road-column-rows = Wiersze
road-rows = Odczytane wiersze: { $petrol } na benzynie, { $gas } na gazie.
road-aside-cold = Silnik zimny
road-aside-changeover = Za wcześnie po zmianie paliwa
road-aside-fuel-cut = Brak wtrysku: hamowanie silnikiem
road-aside-transient = Obroty lub obciążenie szybko się zmieniają
road-aside-open-loop = Pętla otwarta
road-aside-out-of-range = Wartość niemożliwa w silniku
road-aside-gap = Brak wartości
road-aside-time-back = Czas nie biegnie naprzód
road-aside-other-fuel = Inne paliwo niż podane dla zapisu
road-aside-short-visit = Za krótki przejazd
road-aside-broken = Nie dało się odczytać wiersza
road-aside-counted = { $why }: { $rows }
road-logs-title = Zapisy jazdy
road-fuel_known = Paliwo
calibration-record-road = Porównanie w jeździe
calibration-record-no-road = Nie przyjęto żadnego porównania w jeździe.
calibration-record-road-verdict = Co z niego wynika
calibration-record-road-phase = Jazda
calibration-record-road-rows = Wiersze
calibration-record-road-no-cells = Żadnego punktu pracy nie przejechano na obu paliwach.
calibration-record-road-interval = Przedział, %
calibration-record-road-advice = Zalecane poprawki
calibration-record-road-no-advice = Nie ma czego poprawiać.
calibration-record-road-no-aside = Brak.
calibration-record-road-stated = { $fuel }: podano, nie zarejestrowano
road-chart-title = Odchylenie według obrotów i obciążenia
road-chart-description = Punkty pracy na obu paliwach: w granicach { $within } %: { $good }, na pewno różne: { $apart }, nierozstrzygnięte: { $undecided }. Liczby podaje tabela.
road-chart-good = tak samo
road-chart-deviates = różni się
road-chart-undecided = nierozstrzygnięte
road-chart-not-enough = za mało jazdy
road-chart-no-feedback = brak sprzężenia zwrotnego
road-coverage-title = Przejazdy na każdym paliwie
road-coverage-description = Ile razy przejechano każdy punkt pracy; dostateczna liczba przejazdów: { $enough }. Liczby podaje tabela.
road-coverage-petrol = Przejazdy na benzynie
road-coverage-gas = Przejazdy na gazie
road-coverage-few = mniej niż { $enough }
road-coverage-enough = { $enough } lub więcej
road-trims-description = Korekta krótko- i długoterminowa łącznie, na benzynie i na gazie. Liczby podaje tabela.
road-trims-percent = Korekta łącznie, %
road-strip-petrol = Zapis na benzynie w czasie
road-strip-gas = Zapis na gazie w czasie
road-strip-both = Zapis w czasie
road-strip-description = Obroty, obciążenie i czas wtrysku; zacieniowano pominięte wiersze. Ich liczbę podaje tabela.
road-strip-time = Czas, s
