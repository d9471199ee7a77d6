# Today: four columns of short lines.

today-take-in = Take a vehicle in
today-book = Book a time
today-here = In the shop
today-here-empty = No vehicle is in the shop, and nobody is expected today.
today-stuck = Stuck
today-stuck-empty = Nothing is stuck.
today-due = Falls due
today-due-empty = Nothing falls due in the next 30 days.
today-sign = Waits for a signature
today-sign-empty = Nothing waits for a signature.
today-all-met = All proofs are met
today-released = Left without certificate: { $reason }
today-no-plate = Job { $number }
today-expected = Expected: { $kind }
today-instrument = Calibration of the instrument
today-hours = { $n ->
    [0] just now
    [one] { $n } hour
   *[other] { $n } hours
}
today-days = { $n ->
    [one] { $n } day
   *[other] { $n } days
}
today-in-days = { $n ->
    [0] today
    [one] tomorrow
   *[other] in { $n } days
}
today-overdue = { $n ->
    [one] { $n } day overdue
   *[other] { $n } days overdue
}
today-no-public-url = The shop has no public address: papers carry code, phone and fingerprint, and no QR link.
today-licence-ended = The shop’s licence has run out: no certificate can be issued.
today-no-bay = The shop has no bay yet. Add the first.
today-held-messages = { $n ->
    [one] { $n } message waits for your word
   *[other] { $n } messages wait for your word
}
