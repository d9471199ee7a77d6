# Letters and mails to customers.

# Name of the file of a letter: letters without accents, and hyphens.
letter-file-name = brief

# -- reminder --
mail-demo = VORFÜHRUNG.
mail-subject-one = { $whose }: { $what }, { $by }
mail-subject-many = { $shop }: { $n } Termine für Ihr Fahrzeug
mail-dear = Guten Tag { $name },
mail-lead = { $n ->
    [one] an der Gasanlage Ihres Fahrzeugs wird dies fällig:
   *[other] an der Gasanlage Ihres Fahrzeugs werden diese Punkte fällig:
}
mail-by = bis { $day }
mail-by-or-km = bis { $day } oder bei { $km } km, was zuerst eintritt
mail-was-due = war am { $day } fällig
mail-slot = Rufen Sie an oder schreiben Sie uns, wir finden einen passenden Termin:
mail-link = Papiere Ihres Fahrzeugs, was fällig wird, und Ihr Terminwunsch:
mail-link-act = Fahrzeug ansehen und Termin wünschen
mail-caution = Bei Gasgeruch: auf Benzin umschalten oder anhalten, das Ventil am Behälter schließen, Flammen und Funken fernhalten und uns anrufen. Schon anderswo erledigt? Sagen Sie es uns, wir vermerken es.
mail-why = Sie erhalten dies, weil wir in Ihrem Fahrzeug eine Gasanlage eingebaut oder geprüft haben und das Genannte ihre Sicherheit oder ihre Papiere betrifft.
mail-stop = Keine Erinnerungen mehr: diese Adresse öffnen und den Knopf drücken.
mail-stop-act = Keine Erinnerungen mehr
mail-stop-by-phone = Wenn Sie keine Erinnerungen mehr wünschen, sagen Sie es uns, und wir hören damit auf.
mail-calendar-summary = { $what }, { $plate }
mail-calendar-description = { $vehicle }, { $by }. { $shop }, { $phone }

# -- answer slip of a letter --
letter-answer = Ihre Antwort
letter-answer-lead = Abtrennen und zurücksenden, oder anrufen.
letter-answer-come = Ich möchte kommen; am besten am:
letter-answer-elsewhere = Anderswo erledigt, am (Datum) durch (Werkstatt):
letter-answer-sold = Das Fahrzeug ist verkauft, am (Datum):
letter-answer-no-more = Ich wünsche keine Erinnerungen mehr.
letter-sign = Datum, Unterschrift

# -- about safety --
letter-dear = Guten Tag { $name },
letter-without-consent = Sie erhalten diesen Brief unabhängig davon, ob Sie Erinnerungen zugestimmt haben, weil er die Sicherheit Ihres Fahrzeugs betrifft.
letter-reach-us = Rufen Sie uns unter { $phone } an, wenn etwas unklar ist.

    { $shop }
letter-re-test = An Ihrem Fahrzeug { $plate } muss eine Prüfung wiederholt werden
letter-re-test-text = für Ihr Fahrzeug { $plate } ({ $vehicle }) gilt unsere Bescheinigung { $number }. Wir haben etwas gefunden, das eine Prüfung, auf der sie beruht, in Zweifel stellt: { $found }

    { $reason }

    Wir wiederholen die Prüfung für Sie kostenlos und haben dafür diesen Termin freigehalten: { $at }. Rufen Sie an, wenn er Ihnen nicht passt. Bis dahin wird die Bescheinigung überprüft.

    Wenn Sie Gas riechen oder das Fahrzeug mit Gas schlecht läuft, fahren Sie mit Benzin und rufen Sie uns sofort an.
letter-withdrawn = Unsere Bescheinigung { $number } für Ihr Fahrzeug { $plate } ist zurückgezogen
letter-withdrawn-text = wir haben unsere Bescheinigung { $number } für Ihr Fahrzeug { $plate } ({ $vehicle }) zurückgezogen: { $found }

    { $reason }

    Fahren Sie mit Benzin und lassen Sie das Gas absperren, bis die Anlage erneut geprüft ist. Rufen Sie uns an, wir bringen es in Ordnung. Fragen Sie Ihre Behörde oder Ihre Versicherung, ob Sie bis dahin fahren dürfen.
letter-recall = Ein Teil Ihres Fahrzeugs { $plate } wird zurückgerufen
letter-recall-text = { $who } ruft ein Teil zurück, das Ihr Fahrzeug { $plate } hat: { $part }. Das Schreiben ist { $document } vom { $on }.

    { $remedy }

    Rufen Sie uns an, wir vereinbaren einen Tag.
