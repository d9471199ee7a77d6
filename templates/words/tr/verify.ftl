# The page on which anybody asks how a paper stands.

register-number = Numara
register-kind = Tür
register-result = Sonuç
register-issued = Düzenlendi
register-stands = Durum
register-key = Anahtar

# -- how it stands --
standing-valid = Geçerli
standing-valid-says = { $number } düzenlendiği gibi geçerlidir.
standing-superseded = Yerine yenisi geçti
standing-superseded-says = { $number } yerine daha sonraki bir belge geçerlidir.
standing-withdrawn = Geri alındı
standing-withdrawn-says = Servis { $number } belgesini geri aldı. Artık hiçbir şeyi belgelemez.
standing-under-review = İnceleniyor
standing-under-review-says = Servis, { $number } belgesinin dayandığı verileri yeniden inceliyor.
standing-duty-passed = Geçerli, bir süre doldu
standing-duty-passed-says = { $number } düzenlendiği gibi geçerlidir, ama içinde anılan bir kontrolün süresi geçti.

# -- asking --
verify-title = Bir belgeyi denetle
verify-lead = Belgenin altında basılı kodu yazın.
verify-code = Kod
verify-ask = Denetle
verify-unknown = Burada bu kodu taşıyan belge yok. Basılı kodla karşılaştırın; 0 ile O, 1 ile I aynı sayılır.
verify-compare = Numarayı, tarihi ve VIN ya da şasi numarasını elinizdeki belgeyle karşılaştırın. Farklıysa bu o belge değildir.
verify-demonstration = GÖSTERİM: bu belge hiçbir şey kanıtlamaz.

# -- what an inspection came to --
paper-outcome-pass = Geçti
paper-outcome-pass-with-minor = Geçti, hafif kusurlarla
paper-outcome-fail = Kaldı
