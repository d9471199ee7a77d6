# The customer's own page behind a link, and what it shares with every page.

language-name = Nederlands

# -- the page --
own-lead = Voor { $name }, van { $shop }. Dit adres is alleen van u; wie het heeft, ziet deze pagina.
own-duties = Wat verloopt
own-duties-none = Voor dit voertuig is niets genoteerd.
own-papers = Papieren
own-papers-none = Voor dit voertuig is nog geen papier afgegeven.
own-slot = Vraag een afspraak
own-wish = Waarvoor, en welke dagen u passen
own-phone = Telefoon waarop we u bereiken
own-slot-ask = Versturen
own-slot-asked = Uw wens is bij de werkplaats. Ze belt of schrijft met een tijd.
own-reminders = Herinneringen
own-reminders-lead = Zonder herinneringen let u zelf op de data. Terugroepacties en veiligheidsbrieven blijven komen.
own-reminders-off = Geen herinneringen meer
own-reminders-are-off = Herinneringen staan uit. Zeg het de werkplaats als u ze weer wilt.

# -- the public page behind a label --
register-shop = Werkplaats
register-make = Merk
register-vin-last-4 = Laatste vier tekens van het VIN
register-chassis-last-4 = Laatste vier tekens van het chassisnummer
vehicle-page-title = Gasvoertuig
vehicle-page-over = te laat
vehicle-page-unknown = Geen voertuig heeft hier deze code. Vergelijk hem met het plaatje.

# -- shared with every page --
app-description = Opdrachten, bewijzen en papieren van een werkplaats voor LPG en CNG
skip-to-content = Naar de inhoud
notice-demo = DEMONSTRATIE. Alles hier is verzonnen; geen papier ervan is geldig.
notice-insecure = Dit adres is niet versleuteld. Iedereen op dit netwerk kan lezen wat hier wordt ingevuld.
kit-optional = niet verplicht
kit-problems-title = Er is nog niets opgeslagen
kit-problems = { $n ->
    [one] { $n } invoer vraagt een blik
   *[other] { $n } velden vragen een blik
}
kit-error = Fout:

# -- what is wrong with an entry --
wrong-empty = Hier is niets ingevuld
wrong-too-long = Hoogstens { $most } tekens; dit zijn er { $got }
wrong-control-characters = Bevat tekens die niet te drukken zijn
wrong-damaged = Letters kwamen beschadigd aan, getoond als �. Vul ze opnieuw in
wrong-line-break = Eén regel
