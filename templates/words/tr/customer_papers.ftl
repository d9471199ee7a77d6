# What stands on papers and letters to customers, whatever they are about.

paper-page = Sayfa { $page } / { $pages }
paper-licence = yetki { $licence }
paper-demonstration = TANITIM
paper-demonstration-notice = TANITIM. Servis, araç ve kişiler uydurmadır. Bu belge hiçbir şeyi kanıtlamaz.
paper-fuel-lpg = LPG
paper-fuel-cng = CNG
paper-due-what = Ne
paper-due-when = En geç
paper-due-at = { $km } olunca
paper-due-every = { $span } yol
paper-due-months = { $n ->
    [one] 1 ay
   *[other] { $n } ay
}
paper-due-either = { $first } veya { $second }, hangisi önce gelirse
paper-cautions = Uyarılar

# -- what falls due --
duty-kind-first-check = İlk kontrol
duty-kind-filter = Filtre
duty-kind-container = Tank
duty-kind-cylinder-inspection = Tüp muayenesi
duty-kind-pressure-test = İç muayene ve basınç testi
duty-kind-cylinder-life = Tüpün ömür sonu
duty-kind-inspection = Periyodik muayene
duty-kind-valve-clearance = Supap boşluğu
duty-kind-warranty = Garanti bitişi
duty-kind-fill-stop = %80’de dolum kesme
duty-kind-authority-test = Resmî kurum testi
duty-kind-authority-paper = Resmî kurum belgesi
duty-kind-other = Diğer
duty-kind-recall = Geri çağırma

# -- parts --
part-category-container = Tank
part-category-multivalve = Multivalf
part-category-gas-tight-housing = Gaz sızdırmaz muhafaza
part-category-filling-unit = Dolum ağzı
part-category-vaporiser = Buharlaştırıcı
part-category-shut-off-valve = Kesme valfi
part-category-filter = Filtre
part-category-injector-rail = Enjektör rampası
part-category-control-unit = Kontrol ünitesi
part-category-sensor = Sensör
part-category-rigid-line = Sert boru
part-category-hose = Hortum
part-category-cylinder = Tüp
part-category-cylinder-valve = Tüp valfi
part-category-pressure-regulator = Basınç regülatörü
part-category-other = Diğer

# -- certificates --
certificate-kind-conversion = Dönüşüm belgesi
certificate-kind-inspection = Muayene belgesi
certificate-kind-removal = Söküm belgesi
certificate-kind-container = Tank belgesi
certificate-kind-cylinder = Tüp belgesi
