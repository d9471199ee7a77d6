# What papers say around the facts of their content.

## Every paper

paper-rules = Kurallar: { $rules }
paper-check = Denetleme: { $how }
paper-key = anahtar { $key }
paper-preview = ÖN İZLEME
paper-preview-notice = ÖN İZLEME. Düzenlenmedi, imzalanmadı. Bu belge hiçbir şeyi kanıtlamaz.
paper-photos = Fotoğraflar
paper-photo = Fotoğraf
paper-photo-missing = Bu dosya iş dosyasında saklanır, ama burada basılamaz.
paper-not-signed = Çalışma belgesidir, imzasızdır. Esas olan iş dosyasıdır.
paper-end = { $number } sonu
paper-software = Fuelwright { $version } ile hazırlandı
paper-rule-set = Kural seti { $name } { $version }, SHA-256 { $sum }
paper-code-alt = Şu adrese götüren QR kodu: { $address }
paper-file-signed = Bu belgenin imzalı içeriği
paper-file-keeper = İmzalı içeriğin özet değer olarak taşıdığı araç sahibi verileri
paper-beside = Aynı metin, yanında okunmak üzere; dil: { $language }. Geçerli olan, önceki sayfalardaki metindir; dil: { $original }.
paper-copy = Aynı metin, yanında okunmak üzere; dil: { $language }. Geçerli olan asıl metindir; dil: { $original }.

paper-person-authorised = { $name }, yetki no { $number }
paper-person-authorised-until = { $name }, yetki no { $number }, { $until } tarihine kadar

## Vehicle, keeper, system, parts

paper-vehicle = Araç
paper-make-model = Marka, model
paper-plate = Plaka
paper-not-registered = tescilsiz
paper-vin = VIN
paper-vin-derived = VIN sonu
paper-chassis-number = Şasi numarası
paper-chassis-number-derived = Sonu
paper-vin-ends = { $last7 }, son dört karakter { $last4 }
paper-first-registered = İlk tescil
paper-odometer = Kilometre sayacı
paper-no-odometer = takılı değil
paper-type-code = Tip, varyant
paper-category = Kategori
paper-engine = Motor
paper-engine-code = Motor kodu, numarası
paper-power = { $power }, { $rpm }/min
paper-engine-cylinders = { $n ->
    [one] 1 silindir
   *[other] { $n } silindir
}

paper-keeper = Araç sahibi
paper-name = Ad
paper-address = Adres
paper-phone = Telefon
paper-mail = E-posta

paper-gas-system = Gaz sistemi
paper-fuel = Yakıt
paper-system = Sistem
paper-system-approval = Sistem onayı
paper-approval-holder = Onay sahibi
paper-control-unit = Kontrol ünitesi

paper-parts = Takılan parçalar
paper-part = Parça
paper-maker-and-type = Üretici, tip
paper-approval-mark = Onay işareti
paper-serial = Seri no, parti
paper-made = İmal tarihi
paper-next-duty = Sonraki işlem

paper-container-of = { $all ->
    [one] Tank
   *[other] Tank { $n } / { $all }
}
paper-cylinder-of = { $all ->
    [one] Tüp
   *[other] Tüp { $n } / { $all }
}
paper-maker = Üretici
paper-shape = Biçim veya tip
paper-water-capacity = Su hacmi
paper-capacity-both = { $stamped }, tam litre olarak { $floor } L
paper-fill-limit = Dolum sınırı
paper-fill-both = %{ $percent }, { $litres } L’ye kadar dolum
paper-working-pressure = Çalışma basıncı
paper-test-pressure = Test basıncı
paper-last-tested = Son test
paper-inspection-kind = Muayene
paper-next-test = Sonraki test, en geç
paper-container-end-of-life = Ömür sonu
paper-cylinder-end-of-life = Ömür sonu
paper-no-end-of-life = kurallarda belirlenmemiş
paper-location = Araçtaki yeri
paper-findings = Üzerindeki bulgular:

## Measured

paper-measured = Ölçülenler
paper-test = Test
paper-result = Sonuç
paper-limit = Sınır
paper-decision = Karar
paper-instrument = Cihaz
paper-limit-source = Sınırların kaynağı: { $source }
paper-from-outside = dışarıdan alınan sonuç: { $body }
paper-record = kayıt { $record }
paper-entered-later = sonradan girildi

paper-verdict-passes-guarded = geçti, koruma bantlı
paper-verdict-passes-simple = geçti, basit
paper-verdict-passes-observed = geçti
paper-verdict-fails-guarded = kaldı, koruma bantlı
paper-verdict-fails-simple = kaldı, basit
paper-verdict-fails-observed = kaldı
paper-verdict-cannot-tell-guarded = karar verilemiyor
paper-verdict-cannot-tell-simple = karar verilemiyor
paper-verdict-cannot-tell-observed = karar verilemiyor

paper-rule-guarded = Koruma bantlı: sonuç ve genişletilmiş belirsizliği (k = { $k }) sınırın içindedir. Yanlış kabul riski %2,5’in altındadır (ILAC-G8:09/2019, 4.2.2).
paper-rule-simple = Basit: sonuç sınırın içindedir. Sınırdaki bir sonuçta yanlış kabul riski %50’ye kadar çıkar (ILAC-G8:09/2019, 4.2.1).

paper-instruments = Cihazlar
paper-what = Ne
paper-calibration = Kalibrasyon sertifikası
paper-good-until = Geçerlilik sonu

paper-late-entries = Sonradan girilenler
paper-happened = Olay zamanı
paper-entered = Giriş zamanı
paper-by = Giren
paper-reason = Gerekçe

## Proofs, inspection, conformity

paper-proof = Kanıt
paper-exception = Durum
paper-decided-by = Karar veren
paper-exception-waived = muaf tutuldu
paper-exception-not-applicable = uygulanmaz
paper-exception-shop-limit = servis sınırıyla sağlandı

paper-inspection = Muayene
paper-place = Yer
paper-ended = Bitiş
paper-inspector = Muayeneyi yapan
paper-next-inspection = Sonraki muayene, en geç
paper-present-again = Yeniden getirme, en geç
paper-repeats = Tekrarlanan muayene
paper-no-deficiencies = Kusur bulunmadı.
paper-item = Konu
paper-deficiency = Kusur
paper-severity = Kusur derecesi
paper-severity-minor = hafif
paper-severity-major = ağır
paper-severity-dangerous = emniyetsiz

paper-conformity = Kanıtlar ve uygunluk beyanı
paper-against = Esas alınan
paper-covers = Kapsam
paper-conformity-state = Durum
paper-conforms = sağlandı
paper-conforms-not = sağlanmadı

## What comes next

paper-vehicle-papers = Araç tescil belgesinde değiştirilecek: { $changes }
paper-next = Bundan sonra
paper-due-when-first = En geç, hangisi önce gelirse
paper-due-decided-by = Dayanak
paper-due-at-in-short = { $km }
paper-due-either-in-short = { $first } veya { $second }
paper-authority-test = Resmî kurum testi
paper-still-to-come = yapılacak
paper-remarks = Notlar
paper-caution = Uyarı: { $caution }

## Certificates

certificate-title-conversion = { $fuel } dönüşüm belgesi
certificate-title-inspection = { $fuel } sistemi muayene belgesi
certificate-title-removal = { $fuel } sistemi söküm belgesi
certificate-title-container = { $fuel } tankı belgesi
certificate-title-cylinder = { $fuel } tüpü belgesi

certificate-number-issued = { $number } · düzenlenme { $date }
certificate-replaces = Bu belge { $number } yerine geçer. Gerekçe: { $reason }
certificate-issue-line = { $place } · iş dosyası { $job } · kabul { $received } · bitiş { $finished }

certificate-lead-conversion = Bu araca aşağıda adı geçen gaz sistemi takıldı.
certificate-lead-inspection = Bu aracın gaz sistemi muayene edildi; sonuç aşağıdadır.
certificate-lead-removal = Aşağıda adı geçen gaz sistemi bu araçtan söküldü; araç yalnızca benzinle çalışır.
certificate-lead-container = Aşağıda adı geçen tank, bu belgede yazıldığı gibi işlem gördü veya muayene edildi.
certificate-lead-cylinder = Aşağıda adı geçen tüp, bu belgede yazıldığı gibi işlem gördü veya muayene edildi.
certificate-fitting-check = Montajı biz kontrol ettik, çünkü sistem onayının kendisi bu kontrolü kapsamaz (UN R115, 1.3).
certificate-proofs-all = { $asked ->
    [one] İstenen tek kanıt sağlandı.
   *[other] İstenen { $asked } kanıtın tümü sağlandı.
}
certificate-proofs-all-but-found = Bulunanlar belirleyicidir: istenen { $asked } kanıtın her biri sağlandı, ama aşağıda hafif olmayan bir kusur var.
certificate-proofs-some = İstenen { $asked } kanıttan { $met } tanesi sağlandı; diğerleri aşağıda kişi ve gerekçeyle yazılıdır.
certificate-to-be-confirmed = Bu kural satırları uygulandı, ama henüz kimse doğrulamadı. Yetkili kurumunuza doğrulatılacak: { $lines }

certificate-keeper-apart = Araç sahibinin verileri bu nüshadan ayrı tutulur.
certificate-keeper-digest = Araç sahibi verilerinin imzalı içerikteki özet değeri: { $digest }

certificate-signed-by = İmza yetkilisi: { $person }. İmzalandı: { $at }.
certificate-worked-by = İşlem ve testler: { $person }.
certificate-holds = Sonuçlar yalnızca bu araç ve test günü için geçerlidir. Yerel mevzuat ve yetkili mesleki uygulama önce gelir.
certificate-check-online = Elektronik olarak imzalandı. Sayfa altındaki kod bu belgenin bugünkü durumunu gösterir; PDF’si imzalı içeriği taşır.
certificate-check-by-phone = Elektronik olarak imzalandı; PDF imzalı içeriği taşır. Bu belgenin bugünkü durumunu öğrenmek için { $phone } numarasını arayın ve sayfa altındaki kodu verin.
certificate-follows = Dizide bu belgeden önceki belgenin içeriği, SHA-256 { $sum }
certificate-key-id = İmza anahtarı { $key }

## Test record

record-number-issued = { $number } · düzenlenme { $date }
record-lead = Aşağıdaki sonuçlar yalnızca test edilen öğeyi ilgilendirir: teslim alındığı hâliyle ve test edildiği gün.
record-body = Kayıt
record-place = Test yeri
record-customer = Müşteri
record-contact = İletişim
record-method = Yöntem
record-received = Kabul
record-began = Başlangıç
record-ended = Bitiş
record-sampling = Numune alma
record-no-sampling = yok
record-deviations = Yöntemden sapmalar
record-no-deviations = yok
record-job = İş dosyası
record-item = Test edilen öğe
record-vehicle = Araç
record-tested = Test edilen
record-condition = Kabuldeki durumu
record-conditions = Koşullar
record-leak = Sızdırmazlık testi, { $section }
record-attempt = Deneme
record-boundaries = Kapatılan bölüm
record-gas = Test gazı
record-pressure-start-absolute = Başlangıç basıncı, mutlak
record-pressure-end-absolute = Bitiş basıncı, mutlak
record-pressure-start-gauge = Başlangıç basıncı, gösterge
record-pressure-end-gauge = Bitiş basıncı, gösterge
record-ambient-pressure = Hava basıncı
record-temperature-start = Başlangıç sıcaklığı
record-temperature-end = Bitiş sıcaklığı
record-temperature-ambient = Hava sıcaklığı
record-volume = Hacim
record-volume-known = Hacmin dayanağı
record-joints = Bağlantılar, { $n }
record-rate = Kaçak debisi
record-rate-limit = Sınır
record-limit-from = Sınırın kaynağı
record-repair = Öncesinde onarılan
record-customer-supplied = Müşterinin beyanı, tarafımızdan kontrol edilmedi
record-authorised = Onaylayan
record-technician = Testi yapan
record-replaces = Bu kayıt { $number } yerine geçer. Gerekçe: { $reason }
record-whole = Bu kayıt ya bütünüyle çoğaltılır ya da hiç çoğaltılmaz.
