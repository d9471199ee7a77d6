# Letters and mails to customers.

# Name of the file of a letter: letters without accents, and hyphens.
letter-file-name = mektup

# -- reminder --
mail-demo = TANITIM.
mail-subject-one = { $whose }: { $what }, { $by }
mail-subject-many = { $shop }: aracınız için { $n } tarih yaklaşıyor
mail-dear = Sayın { $name },
mail-lead = { $n ->
    [one] aracınızın gaz sistemi için şunun süresi doluyor:
   *[other] aracınızın gaz sistemi için şunların süresi doluyor:
}
mail-by = en geç { $day }
mail-by-or-km = en geç { $day } veya { $km } km olunca, hangisi önce gelirse
mail-was-due = süresi { $day } tarihinde doldu
mail-slot = Bizi arayın veya yazın, size uygun bir zaman bulalım:
mail-link = Aracınızın belgeleri, süresi dolacaklar ve randevu isteği:
mail-link-act = Aracınızı görün ve randevu isteyin
mail-caution = Gaz kokusu alırsanız: benzine geçin veya durun, tanktaki vanayı kapatın, alev ve kıvılcımı uzak tutun ve bizi arayın. Başka yerde yapıldı mı? Bize söyleyin, kaydedelim.
mail-why = Bu iletiyi, aracınıza bir gaz sistemi taktığımız veya kontrol ettiğimiz ve burada yazılanlar onun güvenliğini veya belgelerini ilgilendirdiği için alıyorsunuz.
mail-stop = Artık hatırlatma istemiyorsanız: bu adresi açın ve düğmeye basın.
mail-stop-act = Artık hatırlatma istemiyorum
mail-stop-by-phone = Artık hatırlatma istemiyorsanız bize söyleyin, keselim.
mail-calendar-summary = { $what }, { $plate }
mail-calendar-description = { $vehicle }, { $by }. { $shop }, { $phone }

# -- answer slip of a letter --
letter-answer = Yanıtınız
letter-answer-lead = Kesip geri gönderin veya bizi arayın.
letter-answer-come = Gelmek istiyorum; en uygun gün:
letter-answer-elsewhere = Başka yerde yapıldı, (tarih), (servis):
letter-answer-sold = Araç satıldı, (tarih):
letter-answer-no-more = Artık hatırlatma istemiyorum.
letter-sign = Tarih, imza

# -- about safety --
letter-dear = Sayın { $name },
letter-without-consent = Bu mektubu, hatırlatmalara onay verip vermediğinize bakılmaksızın alıyorsunuz, çünkü aracınızın güvenliğiyle ilgilidir.
letter-reach-us = Anlaşılmayan bir şey varsa bizi arayın: { $phone }.

    { $shop }
letter-re-test = { $plate } plakalı aracınızda bir test yinelenmeli
letter-re-test-text = { $plate } plakalı aracınızın ({ $vehicle }) { $number } numaralı belgemiz var. Bu belgenin dayandığı bir testi şüpheli kılan bir şey bulduk: { $found }

    { $reason }

    Testi sizden ücret almadan yineliyoruz ve bunun için şu zamanı ayırdık: { $at }. Size uymazsa bizi arayın. O zamana kadar belge incelemededir.

    Gaz kokusu alırsanız veya araç gazla kötü çalışırsa benzinle sürün ve bizi hemen arayın.
letter-withdrawn = { $plate } plakalı aracınız için { $number } numaralı belgemiz geri çekildi
letter-withdrawn-text = { $plate } plakalı aracınız ({ $vehicle }) için { $number } numaralı belgemizi geri çektik: { $found }

    { $reason }

    Benzinle sürün ve sistem yeniden test edilene kadar gazı kapattırın. Bizi arayın, düzeltelim. Bu arada aracı sürüp süremeyeceğinizi yetkili kuruma veya sigortanıza sorun.
letter-recall = { $plate } plakalı aracınızın bir parçası geri çağrılıyor
letter-recall-text = { $who }, { $plate } plakalı aracınızda bulunan bir parçayı geri çağırıyor: { $part }. Belge: { $document }, { $on }.

    { $remedy }

    Bizi arayın, bir gün kararlaştıralım.
