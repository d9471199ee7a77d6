# The customer's own page behind a link, and what it shares with every page.

language-name = Türkçe

# -- the page --
own-lead = { $name } için, gönderen { $shop }. Bu adres yalnızca sizindir; adresi bilen bu sayfayı görür.
own-duties = Süresi dolacaklar
own-duties-none = Bu araç için kayıtlı bir şey yok.
own-papers = Belgeler
own-papers-none = Bu araç için henüz belge düzenlenmedi.
own-slot = Randevu isteyin
own-wish = Ne için ve hangi günler size uygun
own-phone = Size ulaşılacak telefon
own-slot-ask = Gönder
own-slot-asked = İsteğiniz serviste. Bir zaman bildirmek için arar veya yazarlar.
own-reminders = Hatırlatmalar
own-reminders-lead = Hatırlatma olmadan tarihleri kendiniz izlersiniz. Geri çağırmalar ve güvenlik mektupları yine gelir.
own-reminders-off = Artık hatırlatma istemiyorum
own-reminders-are-off = Hatırlatmalar kapalı. Yeniden isterseniz servise söyleyin.

# -- the public page behind a label --
register-shop = Servis
register-make = Marka
register-vin-last-4 = VIN’in son dört karakteri
register-chassis-last-4 = Şasi numarasının son dört karakteri
vehicle-page-title = Gazlı araç
vehicle-page-over = süresi geçmiş
vehicle-page-unknown = Burada bu koda sahip araç yok. Etiketle karşılaştırın.

# -- shared with every page --
app-description = Bir LPG ve CNG servisinin iş dosyaları, kanıtları ve belgeleri
skip-to-content = İçeriğe geç
notice-demo = TANITIM. Buradaki her şey uydurmadır; buradan çıkan hiçbir belge geçerli değildir.
notice-insecure = Bu adres şifreli değil. Bu ağdaki herkes burada yazılanı okuyabilir.
kit-optional = isteğe bağlı
kit-problems-title = Henüz hiçbir şey kaydedilmedi
kit-problems = { $n ->
    [one] { $n } alana bakılmalı
   *[other] { $n } alana bakılmalı
}
kit-error = Hata:

# -- what is wrong with an entry --
wrong-empty = Buraya bir şey yazılmamış
wrong-too-long = En çok { $most } karakter; burada { $got } var
wrong-control-characters = Yazdırılamayan karakterler içeriyor
wrong-damaged = Harfler bozuk geldi, � olarak görünüyor. Yeniden yazın
wrong-line-break = Tek satır
