# What goes out: reminders by mail and by letter, and the calendar part.

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

mail-slot-asked-subject = { $plate }: the keeper asks for a time
mail-slot-asked-text = { $name } asks for a time for { $vehicle }.
    { $wish }
    Phone: { $phone }

letter-title = Letter
letter-answer = Your answer
letter-answer-lead = Cut off and send back, or call us.
letter-answer-come = I would like to come; best on:
letter-answer-elsewhere = Done elsewhere, on (date) by (shop):
letter-answer-sold = The vehicle is sold, on (date):
letter-answer-no-more = I want no more reminders.
letter-sign = Date, signature
letter-as-pdf = The same as a PDF
letter-print = Print this page, post it, then note it here.
