# What papers say around the facts of their content.

## Every paper

paper-rules = Wymagania: { $rules }
paper-check = Sprawdzenie: { $how }
paper-key = klucz { $key }
paper-preview = PODGLĄD
paper-preview-notice = PODGLĄD. Niewystawiony, niepodpisany. Ten dokument niczego nie dowodzi.
paper-photos = Zdjęcia
paper-photo = Zdjęcie
paper-photo-missing = Ten plik jest przechowywany przy zleceniu, ale nie można go tu wydrukować.
paper-not-signed = Dokument roboczy, niepodpisany. Rozstrzygają zapisy w zleceniu.
paper-end = Koniec dokumentu { $number }
paper-software = Sporządzono w programie Fuelwright { $version }
paper-rule-set = Zbiór wymagań { $name } { $version }, SHA-256 { $sum }
paper-code-alt = Kod QR prowadzący pod adres { $address }
paper-file-signed = Podpisana treść tego dokumentu
paper-file-keeper = Dane posiadacza, które podpisana treść zawiera w postaci skrótu
paper-beside = Ten sam tekst w innym języku ({ $language }), do czytania obok. Wiążący jest tekst na poprzednich stronach ({ $original }).
paper-copy = Ten sam tekst w innym języku ({ $language }), do czytania obok. Wiążący jest tekst oryginału ({ $original }).

paper-person-authorised = { $name }, upoważnienie { $number }
paper-person-authorised-until = { $name }, upoważnienie { $number } do { $until }

## Vehicle, keeper, system, parts

paper-vehicle = Pojazd
paper-make-model = Marka, model
paper-plate = Nr rejestracyjny
paper-not-registered = niezarejestrowany
paper-vin = VIN
paper-vin-derived = Końcówka VIN
paper-chassis-number = Numer podwozia
paper-chassis-number-derived = Końcówka numeru
paper-vin-ends = { $last7 }, ostatnie cztery { $last4 }
paper-first-registered = Pierwsza rejestracja
paper-odometer = Stan licznika
paper-no-odometer = brak licznika
paper-type-code = Typ, wariant
paper-category = Kategoria
paper-engine = Silnik
paper-engine-code = Kod, numer silnika
paper-power = { $power } przy { $rpm }/min
paper-engine-cylinders = { $n ->
    [one] 1 cylinder
    [few] { $n } cylindry
    [many] { $n } cylindrów
   *[other] { $n } cylindra
}

paper-keeper = Posiadacz
paper-name = Imię, nazwisko lub nazwa
paper-address = Adres
paper-phone = Telefon
paper-mail = E-mail

paper-gas-system = Instalacja gazowa
paper-fuel = Paliwo
paper-system = Instalacja
paper-system-approval = Homologacja instalacji
paper-approval-holder = Posiadacz homologacji
paper-control-unit = Sterownik

paper-parts = Zamontowane części
paper-part = Część
paper-maker-and-type = Producent, typ
paper-approval-mark = Znak homologacji
paper-serial = Nr seryjny, partia
paper-made = Produkcja
paper-next-duty = Najbliższy termin

paper-container-of = { $all ->
    [one] Zbiornik gazu
   *[other] Zbiornik gazu { $n } z { $all }
}
paper-cylinder-of = { $all ->
    [one] Butla
   *[other] Butla { $n } z { $all }
}
paper-maker = Producent
paper-shape = Kształt lub typ
paper-water-capacity = Pojemność wodna
paper-capacity-both = { $stamped }, w pełnych litrach { $floor } L
paper-fill-limit = Granica napełnienia
paper-fill-both = { $percent } %, napełnienie do { $litres } L
paper-working-pressure = Ciśnienie robocze
paper-test-pressure = Ciśnienie próbne
paper-last-tested = Ostatnie badanie
paper-inspection-kind = Zakres badania
paper-next-test = Następne badanie do
paper-container-end-of-life = Koniec użytkowania
paper-cylinder-end-of-life = Koniec użytkowania
paper-no-end-of-life = wymagania go nie określają
paper-location = Miejsce w pojeździe
paper-findings = Co stwierdzono:

## Measured

paper-measured = Wyniki badań
paper-test = Badanie
paper-result = Wynik
paper-limit = Wartość dopuszczalna
paper-decision = Ocena
paper-instrument = Przyrząd
paper-limit-source = Wartości dopuszczalne: { $source }
paper-from-outside = wynik z zewnątrz: { $body }
paper-record = zapis { $record }
paper-entered-later = wpisano później

paper-verdict-passes-guarded = spełnia, z pasmem ochronnym
paper-verdict-passes-simple = spełnia, prosta akceptacja
paper-verdict-passes-observed = spełnia
paper-verdict-fails-guarded = nie spełnia, z pasmem ochronnym
paper-verdict-fails-simple = nie spełnia, prosta akceptacja
paper-verdict-fails-observed = nie spełnia
paper-verdict-cannot-tell-guarded = nierozstrzygnięte
paper-verdict-cannot-tell-simple = nierozstrzygnięte
paper-verdict-cannot-tell-observed = nierozstrzygnięte

paper-rule-guarded = Z pasmem ochronnym: wynik wraz z niepewnością rozszerzoną (k = { $k }) mieści się w wartościach dopuszczalnych. Ryzyko błędnej akceptacji poniżej 2,5 % (ILAC-G8:09/2019, 4.2.2).
paper-rule-simple = Prosta akceptacja: wynik mieści się w wartościach dopuszczalnych. Ryzyko błędnej akceptacji do 50 % dla wyniku równego wartości dopuszczalnej (ILAC-G8:09/2019, 4.2.1).

paper-instruments = Przyrządy
paper-what = Co
paper-calibration = Świadectwo wzorcowania
paper-good-until = Ważne do

paper-late-entries = Wpisano później, niż wykonano
paper-happened = Wykonano
paper-entered = Wpisano
paper-by = Kto
paper-reason = Powód

## Proofs, inspection, conformity

paper-proof = Potwierdzenie
paper-exception = Stan
paper-decided-by = Decyzja
paper-exception-waived = odstąpiono
paper-exception-not-applicable = nie dotyczy
paper-exception-shop-limit = spełnione wg limitu warsztatu

paper-inspection = Badanie
paper-place = Miejsce
paper-ended = Zakończono
paper-inspector = Badający
paper-next-inspection = Następne badanie do
paper-present-again = Ponownie przedstawić do
paper-repeats = Powtarza badanie
paper-no-deficiencies = Usterek nie stwierdzono.
paper-item = Pozycja
paper-deficiency = Usterka
paper-severity = Kategoria usterki
paper-severity-minor = drobna
paper-severity-major = poważna
paper-severity-dangerous = niebezpieczna

paper-conformity = Potwierdzenia i stwierdzenie zgodności
paper-against = Zgodność z
paper-covers = Obejmuje
paper-conformity-state = Stan
paper-conforms = spełnione
paper-conforms-not = niespełnione

## What comes next

paper-vehicle-papers = Do zmiany w dokumentach pojazdu: { $changes }
paper-next = Co dalej
paper-due-when-first = Termin, co nastąpi wcześniej
paper-due-decided-by = Podstawa
paper-due-at-in-short = { $km }
paper-due-either-in-short = { $first } lub { $second }
paper-authority-test = Badanie urzędowe
paper-still-to-come = jeszcze do wykonania
paper-remarks = Uwagi
paper-caution = Ostrzeżenie: { $caution }

## Certificates

certificate-title-conversion = Zaświadczenie o montażu instalacji gazowej { $fuel }
certificate-title-inspection = Zaświadczenie o badaniu instalacji gazowej { $fuel }
certificate-title-removal = Zaświadczenie o demontażu instalacji gazowej { $fuel }
certificate-title-container = Zaświadczenie o zbiorniku { $fuel }
certificate-title-cylinder = Zaświadczenie o butli { $fuel }

certificate-number-issued = { $number } · wystawiono { $date }
certificate-replaces = Ten dokument zastępuje { $number }. Powód: { $reason }
certificate-issue-line = { $place } · zlecenie { $job } · przyjęto { $received } · ukończono { $finished }

certificate-lead-conversion = W tym pojeździe zamontowano wymienioną niżej instalację gazową.
certificate-lead-inspection = Zbadano instalację gazową tego pojazdu; wynik podano niżej.
certificate-lead-removal = Wymienioną niżej instalację gazową wymontowano z tego pojazdu, a pojazd jest zasilany wyłącznie benzyną.
certificate-lead-container = Przy wymienionym niżej zbiorniku wykonano prace albo badanie, jak podaje ten dokument.
certificate-lead-cylinder = Przy wymienionej niżej butli wykonano prace albo badanie, jak podaje ten dokument.
certificate-fitting-check = Montaż sprawdziliśmy sami, ponieważ homologacja instalacji nie obejmuje tego sprawdzenia (UN R115, 1.3).
certificate-proofs-all = { $asked ->
    [one] Jedyne wymagane potwierdzenie uzyskano.
   *[other] Uzyskano wszystkie wymagane potwierdzenia ({ $asked }).
}
certificate-proofs-all-but-found = Rozstrzyga to, co stwierdzono: uzyskano każde z wymaganych potwierdzeń ({ $asked }), ale niżej podano usterkę, która nie jest drobna.
certificate-proofs-some = Uzyskane potwierdzenia: { $met } z { $asked } wymaganych; pozostałe wymieniono niżej, z osobą i powodem.
certificate-to-be-confirmed = Te pozycje wymagań zastosowano, ale nikt ich jeszcze nie potwierdził. Do potwierdzenia we właściwym urzędzie: { $lines }

certificate-keeper-apart = Dane posiadacza przechowuje się oddzielnie od tego egzemplarza.
certificate-keeper-digest = Skrót danych posiadacza w podpisanej treści: { $digest }

certificate-signed-by = Osoba podpisująca: { $person }. Podpisano { $at }.
certificate-worked-by = Prace i badania: { $person }.
certificate-holds = Wyniki odnoszą się wyłącznie do tego pojazdu w dniu badania. Pierwszeństwo mają miejscowe przepisy i praktyka uprawnionych wykonawców.
certificate-check-online = Podpisano elektronicznie. Kod w stopce pokazuje, jaki jest dziś stan tego dokumentu; plik PDF zawiera podpisaną treść.
certificate-check-by-phone = Podpisano elektronicznie; plik PDF zawiera podpisaną treść. Aby poznać dzisiejszy stan tego dokumentu, zadzwonić pod { $phone } i podać kod ze stopki.
certificate-follows = Treść poprzedniego dokumentu tej serii, SHA-256 { $sum }
certificate-key-id = Klucz podpisu { $key }

## Test record

record-number-issued = { $number } · wystawiono { $date }
record-lead = Poniższe wyniki odnoszą się wyłącznie do badanego obiektu, w stanie, w jakim go przyjęto, i w dniu badania.
record-body = Sprawozdanie
record-place = Miejsce badania
record-customer = Klient
record-contact = Kontakt
record-method = Metoda
record-received = Przyjęto
record-began = Rozpoczęto
record-ended = Zakończono
record-sampling = Pobieranie próbek
record-no-sampling = brak
record-deviations = Odstępstwa od metody
record-no-deviations = brak
record-job = Zlecenie
record-item = Badany obiekt
record-vehicle = Pojazd
record-tested = Przedmiot badania
record-condition = Stan przy przyjęciu
record-conditions = Warunki badania
record-leak = Próba szczelności, { $section }
record-attempt = Podejście
record-boundaries = Granice odcinka
record-gas = Gaz próbny
record-pressure-start-absolute = Ciśnienie początkowe, bezwzględne
record-pressure-end-absolute = Ciśnienie końcowe, bezwzględne
record-pressure-start-gauge = Nadciśnienie początkowe
record-pressure-end-gauge = Nadciśnienie końcowe
record-ambient-pressure = Ciśnienie otoczenia
record-temperature-start = Temperatura początkowa
record-temperature-end = Temperatura końcowa
record-temperature-ambient = Temperatura otoczenia
record-volume = Objętość
record-volume-known = Objętość znana z
record-joints = Złącza ({ $n })
record-rate = Wielkość nieszczelności
record-rate-limit = Wartość dopuszczalna
record-limit-from = Wartość dop. według
record-repair = Naprawa przed próbą
record-customer-supplied = Podane przez klienta, niesprawdzone przez nas
record-authorised = Autoryzacja
record-technician = Wykonanie badania
record-replaces = To sprawozdanie zastępuje { $number }. Powód: { $reason }
record-whole = To sprawozdanie powiela się w całości albo wcale.
