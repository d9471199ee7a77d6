# The label on the vehicle.
label-title = { $fuel } sistemi
label-vehicle = { $plate } · { $last4 }
label-approval = Onay { $mark }
label-no-approval = Bütün olarak onay yok; parçalar tek tek onaylıdır
label-fitted = takıldı { $day }
label-container-lpg = Tank
label-container-cng = Tüp
label-container-filled = { $litres } L, dolum sınırı %{ $percent }
label-container-pressure = { $litres } L, { $bar } bar
label-container-made = imal { $day }
label-container-test = sonraki test, en geç { $day }
label-next = Sonraki
label-ask = Tarihler ve servis:
label-code = Kod { $code }
label-call = Sorular: { $shop }, { $phone }
label-code-alt = Bu aracın herkese açık sayfasına götüren QR kodu
label-demonstration = TANITIM

# -- its code, and the page behind it --
register-label = Araç etiketi
register-make-label = Araç etiketini hazırla
register-make-label-lead = Bu araç için bir kod üretilir. Kod, sonraki tarihleri ve servisi gösteren herkese açık bir sayfayı açar; belge yok, ad yok. %100 ölçekte, 105 mm × 74 mm basın. Bir ülkenin zorunlu tuttuğu sistem plakaları ve çıkartmalar oradan gelir, buradan değil.
deed-label-made = Bir araç etiketi hazırladı
