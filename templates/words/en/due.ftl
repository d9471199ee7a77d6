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
