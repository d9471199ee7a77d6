# Falling due: the list, one duty, closing it, calling its keeper. And what the log says of all that.

call-outcome-will-come = Will come
call-outcome-reached = Reached, nothing agreed
call-outcome-no-answer = Nobody answered
call-outcome-left-word = Word left
call-outcome-wrong-number = Wrong number
call-outcome-letter-returned = Letter came back
call-outcome-refuses = Does not want it done here

held-because-no = Not held
held-because-many = Part of a run far above the usual
held-because-hand = Held by hand
message-state-dropped = No longer wanted
message-kind-slot-asked = Asks for a slot

refused-duty-ended = This duty has ended already.
refused-message-gone-out = This message has gone out, or is no longer wanted.
refused-release-needs-manager = This run is far above the usual; a manager looks at it and lets it go.

deed-duties-made = Began what falls due for the vehicle
deed-duty-closed = Ended a duty
deed-duty-called = Tried to reach the keeper
deed-reminders-written = Wrote reminders
deed-message-held = Held a message
deed-message-released = Let a message go
deed-messages-released = Let a held run go
deed-message-retried = Tried a message again
deed-message-dropped = Set a message aside
deed-letter-posted = Posted a letter
deed-message-to-letter = Made a letter of a message
deed-message-sent = Sent a message
deed-message-failed = A message did not go out
deed-address-marked-bad = Marked a mail address as bad
deed-link-made = Made a customer’s link
deed-link-used = Came by the customer’s link
deed-reminders-off = Ended reminders
deed-slot-asked = Asked for a slot

due-title = Falling due
due-views = Views
due-show-open = Open
due-show-calls = Call list
due-show-ended = Ended
due-calls-lead = Every reminder is out, or none can go out: these keepers are called. Note each attempt; a duty stays here until it is closed.
due-kind = What
due-within = Falling due within
due-within-30 = 30 days
due-within-90 = 90 days
due-within-365 = A year
due-within-36500 = Any time
due-filter = Show
due-summary = { $n ->
    [one] { $n } duty
   *[other] { $n } duties
}, { $overdue } overdue
due-empty = Nothing falls due in this span.
due-vehicle = Vehicle
due-what = What
due-by = By
due-keeper = Keeper
due-told = Told so far
due-told-nothing = Nobody was told yet.
due-told-before = { $n } days before
due-told-after = { $n } days after
due-today = today
due-in = { $n ->
    [one] in { $n } day
   *[other] in { $n } days
}
due-over = { $n ->
    [one] { $n } day over
   *[other] { $n } days over
}
due-or-km = or at { $km } km
due-reckoned-date = by the calendar
due-reckoned-distance = by the distance, forecast from odometer readings
due-decided = Day reckoned
due-source = Rule
due-unchecked = to be confirmed with the authority
due-keeper-unknown = Nobody on record
due-way = Reminders
due-way-mail = By mail
due-way-letter = By letter
due-way-nobody = Nobody to write to: call
due-way-no-ground = No consent or other ground: call
due-way-no-address = No address on record: call
due-closed = Ended:
due-call-sheet = Tried to reach the keeper
due-call-keep = Note the attempt
due-close-sheet = End this duty
due-close-lead = Scrapped, exported, stolen and gas removed end every open duty of the vehicle.
due-close-keep = End the duty
calling-outcome = What came of it
calling-said = What was said
closing-how = What ended it
closing-job = Job
    .hint = With “by a job here”
closing-met_on = Done on
closing-note = Document, and who issued it
    .hint = Needed where it was done elsewhere
closing-starts_next = The next one begins to run from this day
