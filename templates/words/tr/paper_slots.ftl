# The places on a job file where an entry or a photo stands; `.lead` is said above its form.

slot-engine-calibration = Ayar
    .lead = Sıcakken, kapalı çevrimde, arıza kodu olmadan. Ayarları kendi sözlerinizle yazın; kontrol ünitesinin kendi programı üreticisine aittir.
slot-trims = Her iki yakıtta yakıt trimleri
    .lead = Aynı noktalarda, sıcakken, kapalı çevrimde. Açık çevrim hiçbir şey kanıtlamaz: tam yük, ısınma, motor freni, geçişin hemen sonrası.
slot-after-drive = Her iki yakıtla sürüşten sonra
    .lead = Arıza kodları ve monitörlerin hazır oluşu, yeniden okunmuş.

slot-photo-odometer = Kilometre sayacı
slot-photo-vin-plate = VIN plakası
slot-photo-container-plate = Tank veya tüp plakası
slot-photo-photo = Diğer fotoğraflar
slot-photo-document = Evrak
slot-photo-control-unit-file = Kontrol ünitesi dosyası
slot-photo-signature = İmzalar

slot-cylinder-table = Silindirler
    .lead = Hangi gaz enjektörünün hangi silindire hizmet ettiği. Her silindiri tek başına benzine alın: motor yanıt vermelidir.
slot-checklist = Kontrol listesi
    .lead = Açık kalan sonra yanıtlanabilir. Değişmeyen yanıt, verildiği paraf ve saatle kalır.
slot-level-sensing = Seviye ölçümü
    .lead = Sürücünün ne kadar gaz kaldığını nasıl bildiği.

slot-heat-sizing = Isı
    .lead = Buharlaştırıcı veya basınç regülatörünün anma gücünde ne vermesi gerektiği ve seçilenin bunu verip veremediği.
slot-line-sizing = Hortumlar ve borular
    .lead = Anma gücünde basınç kaybı ve akış hızı: çok dar bir hortum motoru yüksek güçte yakıtsız bırakır.
slot-cylinder-sizing = Tüp
    .lead = Tüpün ne kadar aldığı, göstergesinin sıcaklıkla nasıl değiştiği, ne kadar yol götürdüğü ve dingilin onu taşıyıp taşımadığı.
slot-discharge = Debi katsayısı, ölçülmüş
    .lead = Bu servisin bir memesinin gerçekte ne kadar geçirdiği. Meme hesabı bundan sonra bununla açılır.

slot-hand-over = Teslim
    .lead = Her konuyu işaretlemeden önce aracın başında anlatın. İşaretlenmeyen, kanıtlarda açık kalır.

slot-deficiencies = Kusurlar
    .lead = Bulunanlar, konu konu. Hiçbir şey bulunmasa da listeyi kaydedin: birinin baktığını söyler.
slot-vessel-check = Tank veya tüp incelemesi
    .lead = Her tank ve tüp: nasıl bakıldığı, ne bulunduğu ve bunun ne anlama geldiği.
slot-photo-deficiency = Kusurlar

slot-arrival = Geliş durumu
    .lead = Kilometre sayacı, müşterinin söylediği ve araçta önceden bulunan gaz sistemi.

slot-leak-joints-lpg-liquid = Bağlantılar, sıvı faz tarafı
    .lead = Tanktan buharlaştırıcıya, çalışma basıncında. Islatılmayan yer hiçbir şey kanıtlamaz.
slot-leak-joints-lpg-vapour = Bağlantılar, gaz faz tarafı
    .lead = Buharlaştırıcıdan enjektörlere, çalışma basıncında. Islatılmayan yer hiçbir şey kanıtlamaz.
slot-leak-joints-cng-high = Bağlantılar, yüksek basınç
    .lead = Tüpten regülatöre, çalışma basıncında. Basınç altındaki bir bağlantıyı asla sıkmayın.
slot-leak-joints-cng-low = Bağlantılar, alçak basınç
    .lead = Regülatörden enjektörlere, çalışma basıncında. Islatılmayan yer hiçbir şey kanıtlamaz.
slot-exhaust-petrol = Egzoz emisyonu, benzinle
    .lead = Motor sıcak, prob egzozun derininde; önce rölantide, sonra yüksüz yüksek rölantide.
slot-exhaust-gas = Egzoz emisyonu, gazla
    .lead = Motor ve gaz sıcak, prob egzozun derininde; önce rölantide, sonra yüksüz yüksek rölantide.
slot-function-checks = İşlev kontrolleri
    .lead = Araç çıkmadan önce nelerin çalışması gerektiği. Açık kalan gaz ve kapalı havalandırma muaf tutulamaz.
slot-leak-decay-lpg-liquid = Basınç düşümü, sıvı faz tarafı
slot-leak-decay-lpg-vapour = Basınç düşümü, gaz faz tarafı
slot-leak-decay-cng-high = Basınç düşümü, yüksek basınç
slot-leak-decay-cng-low = Basınç düşümü, alçak basınç

slot-road = Yol karşılaştırması
    .lead = Aynı devir ve yükte her iki yakıtta benzin enjeksiyon süresi, sıcakken ve kapalı çevrimde. Gaz fakirse benzin kontrol ünitesi süreyi uzatır; zenginse kısaltır.

slot-nozzle-sizing = Meme
    .lead = Anma gücünün yakıtını eldeki sürede hâlâ verebilen ve rölantide dozlayabilen en küçük meme.
slot-container-sizing = Tank
    .lead = Tankın dolum kesmede ne kadar aldığı, ne kadar ısınabileceği, ne kadar yol götürdüğü ve dingilin onu taşıyıp taşımadığı.

slot-suitability = Uygunluk
    .lead = Motor benzinde, sıcak, her işlemden önce. Burada bulunanı önce müşteri kabul eder.
