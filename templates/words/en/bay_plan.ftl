# The bay plan, a booking, the bays.

plan-week-of = Week of { $day }
plan-earlier = Earlier
plan-later = Later
plan-today = Today
plan-day = By day
plan-week = By week
plan-book = Book
plan-book-at = Book { $bay }, { $day }
plan-bays = Bays
plan-no-bay = The shop has no bay yet. A manager adds the first.
plan-doubled = doubled: { $reason }

booking-new = Book a time
booking-sheet = The booking
booking-job = the job file
booking-arrived = Arrived: take it in
booking-did-not-come = Did not come
booking-cancel = Called off
booking-expect-again = Expected again
booking-name = Name
booking-phone = Phone
booking-plate = Plate
booking-bay_id = Bay
booking-starts_at = From
booking-ends_at = To
booking-job_kind = What for
booking-note = Note
booking-doubled_reason = Booked twice because
    .hint = Only a manager books a bay twice.
booking-state = What became of it

bay-add = Add a bay
bay-name = Name of the bay
bay-rename = Rename
bay-ended_on = Out of use from
bay-end = Take out of use

wrong-bay-held = The bay is held then
wrong-bay-held-by = { $name } holds the bay from { $from } to { $to }
wrong-doubling-needs-manager = Only a manager books a bay twice
wrong-bay-booked = Somebody is still expected in this bay from that day on: move or call off the bookings first
wrong-booking-too-long = Takes { $days } days at most
refused-booking-answered = It has been said already what became of this booking.

deed-bay-added = Added a bay
deed-bay-renamed = Renamed a bay
deed-bay-ended = Took a bay out of use
deed-booking-made = Booked a time
deed-booking-changed = Changed a booking
deed-booking-answered = Said what became of a booking
