# Papers about the price of a job: the estimate, the receipt of a deposit, the final price list.

# Names of their files: letters without accents, and hyphens.
estimate-paper-file = kosztorys
price-list-file = lista-cen
receipt-file = pokwitowanie

estimate-paper-title = Kosztorys
estimate-paper-number = { $number }, wersja { $version }
estimate-paper-lead = Ile według wyliczenia będą kosztować prace przy Państwa pojeździe.

# -- what these papers share --
priced-parties = Klient i pojazd
priced-customer = Klient
priced-address = Adres
priced-vehicle = Pojazd
priced-plate = Numer rejestracyjny
priced-job = Zlecenie
priced-lines = Części i robocizna
priced-what = Nazwa
priced-kind = Rodzaj
priced-quantity = Ilość
priced-price = Cena jednostkowa, { $currency }
priced-amount = Kwota, { $currency }
priced-total = Razem
priced-terms = Warunki
priced-until = Ten kosztorys obowiązuje do { $day }.
priced-no-until = Dla tego kosztorysu nie podano ostatniego dnia. Prosimy zapytać, zanim się Państwo później na nim oprą.
priced-change = Zmiana jest uzgadniana z Państwem przed pracami, których dotyczy: ile, w jaki sposób, przez kogo i kiedy.
priced-no-invoice = To nie jest faktura podatkowa.
priced-agreed = Uzgodniono { $how }, { $name }, { $day }: { $amount }. Zapisał(a): { $person }.
priced-not-agreed = Jeszcze nie uzgodniono. Żadne prace nie zaczną się przed Państwa zgodą.
priced-sign = Zgoda (nazwisko, dzień, podpis)
line-kind-part = Część
line-kind-work = Robocizna
line-kind-other = Inne
line-kind-discount = Rabat
agreed-how-in-person = osobiście
agreed-how-phone = telefonicznie
agreed-how-writing = na piśmie

# -- final price list --
price-list-title = Końcowa lista cen
price-list-lead = Ile kosztowały prace, co zapłacono wcześniej i co pozostaje do zapłaty.
price-list-paid = Zapłacono wcześniej
price-list-nothing-paid = Wcześniej nic nie zapłacono.
price-list-day = Dzień
price-list-how = W jaki sposób
price-list-by = Przez kogo
price-list-taken-back = Zwrócono. Powód: { $reason }
price-list-sums = Co pozostaje
price-list-sums-what = Pozycja
price-list-remains = Pozostaje do zapłaty
price-list-back = Do zwrotu dla Państwa
price-list-version = Pozycje pochodzą z wersji { $version } kosztorysu.
price-list-not-agreed = Tej wersji nie uzgodniono w takiej postaci, jak tutaj.

# -- receipt of a deposit --
receipt-title = Pokwitowanie zaliczki
receipt-number = { $number }, zaliczka { $deposit }
receipt-lead = Otrzymano { $amount }, wpłaca { $name }, jako zaliczkę na prace przy pojeździe.
receipt-deposit = Zaliczka
receipt-amount = Kwota
receipt-how = Sposób zapłaty
receipt-day = Dzień
receipt-by = Przyjął / przyjęła
receipt-returned = Zwrócono { $day }, { $name }, { $how }. Powód: { $reason }
receipt-counts = Zaliczkę odlicza się od ceny prac.
receipt-sign = Otrzymano (podpis)
