# Hand-over: explained, signed for, what falls due.

hand-over-explained = Explained
hand-over-topics = Topics
hand-over-manuals_given = User manual and papers given
hand-over-due = What falls due
hand-over-next = From today: { $duties }.
hand-over-no-duties = Nothing falls due from this job.
hand-over-duty = { $what } by { $on }
hand-over-duty-or = { $what } by { $on } or at { $km }
hand-over-consents_to_reminders = The keeper wishes to be reminded
    .hint = Asked, never assumed: with yes, reminders rest on consent from the day of hand-over. Recall and safety letters go out without it.
hand-over-received = Received
hand-over-received_by = Received by
hand-over-received_how = How it is signed
hand-over-signature = Signature
    .hint = Drawn here, or the signed paper as a photo or PDF. After an error it is given once more.
