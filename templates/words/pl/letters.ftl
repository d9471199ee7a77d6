# Letters and mails to customers.

# Name of the file of a letter: letters without accents, and hyphens.
letter-file-name = list

# -- reminder --
mail-demo = DEMONSTRACJA.
mail-subject-one = { $whose }: { $what }, { $by }
mail-subject-many = { $n ->
    [one] { $shop }: { $n } termin dla Państwa pojazdu
    [few] { $shop }: { $n } terminy dla Państwa pojazdu
    [many] { $shop }: { $n } terminów dla Państwa pojazdu
   *[other] { $shop }: { $n } terminu dla Państwa pojazdu
}
mail-dear = Dzień dobry, { $name },
mail-lead = { $n ->
    [one] zbliża się termin dotyczący instalacji gazowej Państwa pojazdu:
   *[other] zbliżają się terminy dotyczące instalacji gazowej Państwa pojazdu:
}
mail-by = do { $day }
mail-by-or-km = do { $day } lub przy { $km } km, zależnie od tego, co nastąpi wcześniej
mail-was-due = termin minął { $day }
mail-slot = Proszę zadzwonić lub napisać, a znajdziemy dogodny termin:
mail-link = Dokumenty Państwa pojazdu, zbliżające się terminy i prośba o wizytę:
mail-link-act = Zobacz swój pojazd i poproś o wizytę
mail-caution = Gdy czuć gaz: przełączyć na benzynę lub się zatrzymać, zamknąć zawór przy zbiorniku, nie zbliżać ognia ani iskier i zadzwonić do nas. Zrobiono to już gdzie indziej? Proszę dać znać, odnotujemy to.
mail-why = Otrzymują Państwo tę wiadomość, ponieważ montowaliśmy lub sprawdzaliśmy instalację gazową w Państwa pojeździe, a to, co tu wymieniono, dotyczy jej bezpieczeństwa lub dokumentów.
mail-stop = Bez dalszych przypomnień: otworzyć ten adres i nacisnąć przycisk.
mail-stop-act = Bez dalszych przypomnień
mail-stop-by-phone = Jeśli nie chcą Państwo więcej przypomnień, proszę nam powiedzieć, a przestaniemy.
mail-calendar-summary = { $what }, { $plate }
mail-calendar-description = { $vehicle }, { $by }. { $shop }, { $phone }

# -- answer slip of a letter --
letter-answer = Państwa odpowiedź
letter-answer-lead = Odciąć i odesłać albo zadzwonić.
letter-answer-come = Chcę przyjechać; najlepiej dnia:
letter-answer-elsewhere = Zrobiono gdzie indziej, dnia (data), w (warsztat):
letter-answer-sold = Pojazd sprzedano, dnia (data):
letter-answer-no-more = Nie chcę więcej przypomnień.
letter-sign = Data, podpis

# -- about safety --
letter-dear = Dzień dobry, { $name },
letter-without-consent = Otrzymują Państwo ten list niezależnie od zgody na przypomnienia, ponieważ dotyczy bezpieczeństwa Państwa pojazdu.
letter-reach-us = Jeśli coś jest niejasne, proszę dzwonić pod { $phone }.

    { $shop }
letter-re-test = W Państwa pojeździe { $plate } trzeba powtórzyć badanie
letter-re-test-text = Państwa pojazd { $plate } ({ $vehicle }) ma nasze zaświadczenie { $number }. Stwierdziliśmy coś, co podważa badanie, na którym się ono opiera: { $found }

    { $reason }

    Powtórzymy badanie bez kosztów dla Państwa i zarezerwowaliśmy na nie termin: { $at }. Jeśli nie odpowiada, proszę zadzwonić. Do tego czasu zaświadczenie jest weryfikowane.

    Jeśli czuć gaz lub pojazd źle pracuje na gazie, proszę jeździć na benzynie i natychmiast do nas zadzwonić.
letter-withdrawn = Nasze zaświadczenie { $number } dla Państwa pojazdu { $plate } zostało wycofane
letter-withdrawn-text = wycofaliśmy nasze zaświadczenie { $number } dla Państwa pojazdu { $plate } ({ $vehicle }): { $found }

    { $reason }

    Proszę jeździć na benzynie i zlecić zamknięcie gazu do czasu ponownego zbadania instalacji. Proszę zadzwonić, naprawimy to. Proszę zapytać urząd lub ubezpieczyciela, czy tymczasem wolno jeździć.
letter-recall = Część w Państwa pojeździe { $plate } jest objęta akcją przywoławczą
letter-recall-text = { $who } wzywa do serwisu w sprawie części, którą ma Państwa pojazd { $plate }: { $part }. Dokument: { $document } z dnia { $on }.

    { $remedy }

    Proszę zadzwonić, uzgodnimy dzień.
