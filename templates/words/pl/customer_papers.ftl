# What stands on papers and letters to customers, whatever they are about.

paper-page = Strona { $page } z { $pages }
paper-licence = uprawnienie { $licence }
paper-demonstration = DEMONSTRACJA
paper-demonstration-notice = DEMONSTRACJA. Warsztat, pojazd i osoby są zmyślone. Ten dokument niczego nie potwierdza.
paper-fuel-lpg = LPG
paper-fuel-cng = CNG
paper-due-what = Co
paper-due-when = Do
paper-due-at = przy { $km }
paper-due-every = { $span } przebiegu
paper-due-months = { $n ->
    [one] 1 miesiąc
    [few] { $n } miesiące
    [many] { $n } miesięcy
   *[other] { $n } miesiąca
}
paper-due-either = { $first } lub { $second }, zależnie od tego, co nastąpi wcześniej
paper-cautions = Ostrzeżenia

# -- what falls due --
duty-kind-first-check = Pierwszy przegląd
duty-kind-filter = Filtr
duty-kind-container = Zbiornik gazu
duty-kind-cylinder-inspection = Badanie butli
duty-kind-pressure-test = Oględziny wnętrza i próba ciśnieniowa
duty-kind-cylinder-life = Koniec okresu użytkowania butli
duty-kind-inspection = Badanie okresowe
duty-kind-valve-clearance = Luzy zaworowe
duty-kind-warranty = Koniec gwarancji
duty-kind-fill-stop = Zatrzymanie napełniania przy 80 %
duty-kind-authority-test = Badanie urzędowe
duty-kind-authority-paper = Dokument urzędowy
duty-kind-other = Inne
duty-kind-recall = Akcja przywoławcza

# -- parts --
part-category-container = Zbiornik gazu
part-category-multivalve = Wielozawór
part-category-gas-tight-housing = Obudowa gazoszczelna
part-category-filling-unit = Zawór tankowania
part-category-vaporiser = Reduktor-parownik
part-category-shut-off-valve = Zawór odcinający
part-category-filter = Filtr
part-category-injector-rail = Listwa wtryskiwaczy
part-category-control-unit = Sterownik
part-category-sensor = Czujnik
part-category-rigid-line = Przewód sztywny
part-category-hose = Przewód elastyczny
part-category-cylinder = Butla
part-category-cylinder-valve = Zawór butli
part-category-pressure-regulator = Reduktor ciśnienia
part-category-other = Inne

# -- certificates --
certificate-kind-conversion = Zaświadczenie o montażu instalacji gazowej
certificate-kind-inspection = Zaświadczenie o badaniu
certificate-kind-removal = Zaświadczenie o demontażu
certificate-kind-container = Zaświadczenie o zbiorniku
certificate-kind-cylinder = Zaświadczenie o butli
