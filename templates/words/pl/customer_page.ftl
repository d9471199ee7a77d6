# The customer's own page behind a link, and what it shares with every page.

language-name = Polski

# -- the page --
own-lead = Dla: { $name }, od: { $shop }. Ten adres jest tylko dla Państwa; kto go ma, widzi tę stronę.
own-duties = Zbliżające się terminy
own-duties-none = Dla tego pojazdu nic nie odnotowano.
own-papers = Dokumenty
own-papers-none = Dla tego pojazdu nie wystawiono jeszcze żadnego dokumentu.
own-slot = Prośba o wizytę
own-wish = O co chodzi i które dni pasują
own-phone = Telefon kontaktowy
own-slot-ask = Wyślij
own-slot-asked = Warsztat ma Państwa prośbę. Zadzwoni lub napisze z terminem.
own-reminders = Przypomnienia
own-reminders-lead = Bez przypomnień pilnują Państwo terminów sami. Wezwania serwisowe i listy o bezpieczeństwie będą nadal przychodzić.
own-reminders-off = Bez dalszych przypomnień
own-reminders-are-off = Przypomnienia są wyłączone. Aby je przywrócić, proszę powiedzieć warsztatowi.

# -- the public page behind a label --
register-shop = Warsztat
register-make = Marka
register-vin-last-4 = Ostatnie cztery znaki VIN
register-chassis-last-4 = Ostatnie cztery znaki numeru podwozia
vehicle-page-title = Pojazd na gaz
vehicle-page-over = po terminie
vehicle-page-unknown = Żaden pojazd nie ma tu tego kodu. Proszę porównać go z naklejką.

# -- shared with every page --
app-description = Zlecenia, potwierdzenia i dokumenty warsztatu LPG i CNG
skip-to-content = Przejdź do treści
notice-demo = DEMONSTRACJA. Wszystko tu jest zmyślone; żaden dokument stąd nie jest ważny.
notice-insecure = Ten adres nie jest szyfrowany. Każdy w tej sieci może przeczytać, co się tu wpisuje.
kit-optional = nieobowiązkowe
kit-problems-title = Nic jeszcze nie zapisano
kit-problems = { $n ->
    [one] { $n } wpis do sprawdzenia
    [few] { $n } wpisy do sprawdzenia
    [many] { $n } wpisów do sprawdzenia
   *[other] { $n } wpisu do sprawdzenia
}
kit-error = Błąd:

# -- what is wrong with an entry --
wrong-empty = Nic tu nie wpisano
wrong-too-long = Dozwolona liczba znaków: { $most }; tu jest: { $got }
wrong-control-characters = Zawiera znaki, których nie da się wydrukować
wrong-damaged = Litery dotarły uszkodzone, widać je jako �. Proszę wpisać ponownie
wrong-line-break = Tylko jeden wiersz
