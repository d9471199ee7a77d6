# The outbox: what is owed to whom, and what can be done about it.

outbox-title = Outbox
outbox-views = Where messages stand
outbox-waiting = Waiting
outbox-sending = Being sent
outbox-sent = Sent
outbox-unknown = Not known
outbox-failed = Failed
outbox-held = Held
outbox-letter = Letters
outbox-dropped = Set aside
outbox-empty = No message stands here.
outbox-subject = Message
outbox-to = To
outbox-when = When
outbox-state = State
outbox-by-post = By post
outbox-posted = Posted
outbox-address-hidden = Address hidden
outbox-is-paused = Sending is stopped. Messages are written and wait until a manager lets them go.
outbox-held-run = { $n ->
    [one] { $n } message of a large run waits
   *[other] { $n } messages of a large run wait
}
outbox-held-run-lead = This is more than three usual days at once. Look at some of them; if they are right, let them go.
outbox-release-run = Let the run go
outbox-settings = Reminders
outbox-reminder_leads = Days before the day
    .hint = Whole days with commas; below zero is after the day. The usual: 60, 30, 7, -14
outbox-sending_paused = Stop all sending
outbox-settings-keep = Keep
wrong-leads = Takes whole days from 365 before to 60 after, with commas: 60, 30, 7, -14
outbox-history = History
outbox-made = Written { $when }
outbox-sent-at = Out { $when }
outbox-attempts = { $n ->
    [one] { $n } attempt
   *[other] { $n } attempts
}
outbox-not-before = Not before
outbox-last-error = Said last
outbox-text = Text
outbox-html = The same as a mail program gets it
outbox-calendar = Calendar part
outbox-link-later = [the link is made when the message goes out]
outbox-print = Print as a letter
outbox-act-hold = Hold
outbox-act-release = Let it go
outbox-act-retry = Try again
outbox-act-letter = Send by post instead
outbox-act-posted = It is posted
outbox-act-drop = Set aside
