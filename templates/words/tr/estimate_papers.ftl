# Papers about the price of a job: the estimate, the receipt of a deposit, the final price list.

# Names of their files: letters without accents, and hyphens.
estimate-paper-file = on-fiyat
price-list-file = fiyat-listesi
receipt-file = makbuz

estimate-paper-title = Ön fiyat hesabı
estimate-paper-number = { $number }, sürüm { $version }
estimate-paper-lead = Aracınızdaki işin hesaplanan tutarı.

# -- what these papers share --
priced-parties = Müşteri ve araç
priced-customer = Müşteri
priced-address = Adres
priced-vehicle = Araç
priced-plate = Plaka
priced-job = İş
priced-lines = Parça ve işçilik
priced-what = Açıklama
priced-kind = Tür
priced-quantity = Miktar
priced-price = Birim fiyat, { $currency }
priced-amount = Tutar, { $currency }
priced-total = Toplam
priced-terms = Koşullar
priced-until = Bu ön fiyat hesabı { $day } tarihine kadar geçerlidir.
priced-no-until = Bu ön fiyat hesabı için son gün belirlenmedi. İleride ona güvenmeden önce sorun.
priced-change = Her değişiklik, ilgili iş yapılmadan önce sizinle kararlaştırılır: ne kadar, nasıl, kim tarafından ve ne zaman.
priced-no-invoice = Bu belge vergi faturası değildir.
priced-agreed = Kararlaştırıldı: { $name }, { $how }, { $day }, { $amount }. Not eden: { $person }.
priced-not-agreed = Henüz kararlaştırılmadı. Siz kabul etmeden hiçbir iş başlamaz.
priced-sign = Kabul ediyorum (ad, gün, imza)
line-kind-part = Parça
line-kind-work = İşçilik
line-kind-other = Diğer
line-kind-discount = İndirim
agreed-how-in-person = yüz yüze
agreed-how-phone = telefonla
agreed-how-writing = yazılı olarak

# -- final price list --
price-list-title = Son fiyat listesi
price-list-lead = İşin tutarı, önceden ödenen ve ödenecek kalan.
price-list-paid = Önceden ödenen
price-list-nothing-paid = Önceden bir şey ödenmedi.
price-list-day = Gün
price-list-how = Nasıl
price-list-by = Kim
price-list-taken-back = Geri ödendi. Neden: { $reason }
price-list-sums = Kalan
price-list-sums-what = Kalem
price-list-remains = Ödenecek kalan
price-list-back = Size geri ödenecek
price-list-version = Satırlar ön fiyat hesabının { $version } numaralı sürümünden alınmıştır.
price-list-not-agreed = Bu sürüm burada yazıldığı biçimde kararlaştırılmadı.

# -- receipt of a deposit --
receipt-title = Kapora makbuzu
receipt-number = { $number }, kapora { $deposit }
receipt-lead = Araçtaki iş için kapora olarak { $amount } alındı. Ödeyen: { $name }.
receipt-deposit = Kapora
receipt-amount = Tutar
receipt-how = Nasıl ödendi
receipt-day = Gün
receipt-by = Alan
receipt-returned = Geri ödendi: { $day }, { $name }, { $how }. Neden: { $reason }
receipt-counts = Kapora işin fiyatından düşülür.
receipt-sign = Alındı (imza)
