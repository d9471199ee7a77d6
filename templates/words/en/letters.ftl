# Letters and mails to customers.

# Name of the file of a letter: letters without accents, and hyphens.
letter-file-name = letter

# -- reminder --
mail-demo = DEMONSTRATION.
mail-subject-one = { $whose }: { $what }, { $by }
mail-subject-many = { $shop }: { $n } things fall due for your vehicle
mail-dear = Dear { $name },
mail-lead = { $n ->
    [one] this falls due for the gas system of your vehicle:
   *[other] these fall due for the gas system of your vehicle:
}
mail-by = by { $day }
mail-by-or-km = by { $day } or at { $km } km, whichever comes first
mail-was-due = was due on { $day }
mail-slot = Call us or write to us, and we find a time that suits you:
mail-link = Your vehicle’s papers, what falls due, and a wish for a time:
mail-link-act = See your vehicle and ask for a time
mail-caution = If you smell gas: switch to petrol or stop, close the valve at the container, keep flames and sparks away, and call us. Done elsewhere already? Tell us, and we note it.
mail-why = You get this because we fitted or checked a gas system in your vehicle and what is named here bears on its safety or its papers.
mail-stop = No more reminders: open this address and press the button.
mail-stop-act = No more reminders
mail-stop-by-phone = If you want no more reminders, tell us and we stop.
mail-calendar-summary = { $what }, { $plate }
mail-calendar-description = { $vehicle }, { $by }. { $shop }, { $phone }

# -- answer slip of a letter --
letter-answer = Your answer
letter-answer-lead = Cut off and send back, or call us.
letter-answer-come = I would like to come; best on:
letter-answer-elsewhere = Done elsewhere, on (date) by (shop):
letter-answer-sold = The vehicle is sold, on (date):
letter-answer-no-more = I want no more reminders.
letter-sign = Date, signature

# -- about safety --
letter-dear = Dear { $name },
letter-without-consent = You get this letter whether or not you agreed to reminders, because it is about the safety of your vehicle.
letter-reach-us = Call us at { $phone } if anything is unclear.

    { $shop }
letter-re-test = A test on your vehicle { $plate } has to be made again
letter-re-test-text = your vehicle { $plate } ({ $vehicle }) has our certificate { $number }. We have found something that puts a test behind it in doubt: { $found }

    { $reason }

    We make the test again at no cost to you, and have held { $at } for it. Call us if that does not suit you. Until then the certificate is under review.

    If you smell gas or the vehicle runs badly on gas, drive on petrol and call us at once.
letter-withdrawn = Our certificate { $number } for your vehicle { $plate } is withdrawn
letter-withdrawn-text = we have withdrawn our certificate { $number } for your vehicle { $plate } ({ $vehicle }): { $found }

    { $reason }

    Drive on petrol and have the gas shut off until the system was tested again. Call us, and we make it good. Ask your authority or insurer whether you may drive meanwhile.
letter-recall = A part of your vehicle { $plate } is recalled
letter-recall-text = { $who } recalls a part that your vehicle { $plate } carries: { $part }. The document is { $document } of { $on }.

    { $remedy }

    Call us, and we agree on a day.
