# Letters and mails to customers.

# Name of the file of a letter: letters without accents, and hyphens.
letter-file-name = brief

# -- reminder --
mail-demo = DEMONSTRATIE.
mail-subject-one = { $whose }: { $what }, { $by }
mail-subject-many = { $shop }: { $n } data die voor uw voertuig verlopen
mail-dear = Geachte { $name },
mail-lead = { $n ->
    [one] Voor de gasinstallatie van uw voertuig verloopt dit:
   *[other] Voor de gasinstallatie van uw voertuig verlopen deze punten:
}
mail-by = uiterlijk { $day }
mail-by-or-km = uiterlijk { $day } of bij { $km } km, wat het eerst komt
mail-was-due = moest uiterlijk { $day }
mail-slot = Bel of schrijf ons, dan vinden we een tijd die u past:
mail-link = De papieren van uw voertuig, wat verloopt, en uw wens voor een afspraak:
mail-link-act = Bekijk uw voertuig en vraag een afspraak
mail-caution = Als u gas ruikt: schakel over op benzine of stop, sluit de afsluiter op de tank, houd vuur en vonken weg en bel ons. Al elders gedaan? Zeg het ons, dan noteren we het.
mail-why = U krijgt dit omdat wij een gasinstallatie in uw voertuig hebben ingebouwd of gecontroleerd en het genoemde haar veiligheid of papieren raakt.
mail-stop = Geen herinneringen meer: open dit adres en druk op de knop.
mail-stop-act = Geen herinneringen meer
mail-stop-by-phone = Wilt u geen herinneringen meer, zeg het ons en we stoppen.
mail-calendar-summary = { $what }, { $plate }
mail-calendar-description = { $vehicle }, { $by }. { $shop }, { $phone }

# -- answer slip of a letter --
letter-answer = Uw antwoord
letter-answer-lead = Afknippen en terugsturen, of bel ons.
letter-answer-come = Ik wil komen; liefst op:
letter-answer-elsewhere = Elders gedaan, op (datum) door (werkplaats):
letter-answer-sold = Het voertuig is verkocht, op (datum):
letter-answer-no-more = Ik wil geen herinneringen meer.
letter-sign = Datum, handtekening

# -- about safety --
letter-dear = Geachte { $name },
letter-without-consent = U krijgt deze brief ongeacht of u met herinneringen hebt ingestemd, omdat hij over de veiligheid van uw voertuig gaat.
letter-reach-us = Bel ons op { $phone } als iets niet duidelijk is.

    { $shop }
letter-re-test = Een test aan uw voertuig { $plate } moet opnieuw
letter-re-test-text = Uw voertuig { $plate } ({ $vehicle }) heeft ons certificaat { $number }. We hebben iets gevonden dat een test waarop het berust in twijfel trekt: { $found }

    { $reason }

    We doen de test opnieuw zonder kosten voor u en hebben daarvoor deze tijd vrijgehouden: { $at }. Bel ons als dat niet past. Tot dan is het certificaat in onderzoek.

    Als u gas ruikt of het voertuig slecht loopt op gas, rijd dan op benzine en bel ons meteen.
letter-withdrawn = Ons certificaat { $number } voor uw voertuig { $plate } is ingetrokken
letter-withdrawn-text = We hebben ons certificaat { $number } voor uw voertuig { $plate } ({ $vehicle }) ingetrokken: { $found }

    { $reason }

    Rijd op benzine en laat het gas afsluiten tot de installatie opnieuw getest is. Bel ons, dan maken we het in orde. Vraag uw overheid of verzekeraar of u intussen mag rijden.
letter-recall = Een onderdeel van uw voertuig { $plate } wordt teruggeroepen
letter-recall-text = { $who } roept een onderdeel terug dat uw voertuig { $plate } heeft: { $part }. Het document is { $document } van { $on }.

    { $remedy }

    Bel ons, dan spreken we een dag af.
