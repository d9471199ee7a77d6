# The customer's own page behind a link, and what it shares with every page.

language-name = Deutsch

# -- the page --
own-lead = Für { $name }, von { $shop }. Diese Adresse ist nur für Sie; wer sie hat, sieht diese Seite.
own-duties = Was fällig wird
own-duties-none = Für dieses Fahrzeug ist nichts vermerkt.
own-papers = Papiere
own-papers-none = Für dieses Fahrzeug wurde noch kein Papier ausgestellt.
own-slot = Termin wünschen
own-wish = Worum es geht und welche Tage Ihnen passen
own-phone = Telefon, unter dem wir Sie erreichen
own-slot-ask = Absenden
own-slot-asked = Ihr Wunsch liegt der Werkstatt vor. Sie ruft an oder schreibt mit einem Termin.
own-reminders = Erinnerungen
own-reminders-lead = Ohne Erinnerungen achten Sie selbst auf die Termine. Rückrufe und Sicherheitsbriefe kommen weiterhin.
own-reminders-off = Keine Erinnerungen mehr
own-reminders-are-off = Erinnerungen sind aus. Sagen Sie der Werkstatt, wenn Sie wieder welche wünschen.

# -- the public page behind a label --
register-shop = Werkstatt
register-make = Marke
register-vin-last-4 = Letzte vier Zeichen der FIN
register-chassis-last-4 = Letzte vier Zeichen der Fahrgestellnummer
vehicle-page-title = Gasfahrzeug
vehicle-page-over = überfällig
vehicle-page-unknown = Diesen Code hat hier kein Fahrzeug. Vergleichen Sie ihn mit dem Schild.

# -- shared with every page --
app-description = Aufträge, Nachweise und Papiere einer Werkstatt für Flüssiggas und Erdgas
skip-to-content = Zum Inhalt
notice-demo = VORFÜHRUNG. Alles hier ist erfunden; kein Papier daraus gilt.
notice-insecure = Diese Adresse ist nicht verschlüsselt. Jeder in diesem Netz kann lesen, was hier eingegeben wird.
kit-optional = freiwillig
kit-problems-title = Noch ist nichts gespeichert
kit-problems = { $n ->
    [one] { $n } Eingabe braucht einen Blick
   *[other] { $n } Eingaben brauchen einen Blick
}
kit-error = Fehler:

# -- what is wrong with an entry --
wrong-empty = Hier ist nichts eingegeben
wrong-too-long = Höchstens { $most } Zeichen; hier sind es { $got }
wrong-control-characters = Enthält Zeichen, die sich nicht drucken lassen
wrong-damaged = Buchstaben kamen beschädigt an, gezeigt als �. Noch einmal eingeben
wrong-line-break = Nur eine Zeile
