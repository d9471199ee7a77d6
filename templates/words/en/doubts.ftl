# A finding worked to its end: what is in doubt, how wrong it was, what becomes of each paper.

findings-open-lead = What waits for a decision. A paper that rests on something in doubt is under review until a signatory has decided it.
finding-source-corrected-evidence = Evidence was corrected under a paper
finding-source-recall = Recall
finding-source-rule-line = A rule line changed
finding-corrected = A measurement of job { $job } was corrected after its certificate was issued: { $reason }
finding-lines-changed = Rule lines changed from { $on } on; what was measured that day or later is judged differently
finding-recalled = { $who } recalls a part ({ $document }): { $part }
finding-outside-span = Not in the time in doubt any more
finding-error-of-check = The check that failed
finding-retest-note = Re-test for { $number }. { $found }
finding-papers-open = Papers that rest on this wait for a signatory; each needs a decision first

doubt-cause = Cause
doubt-cause-instrument = Instrument found wrong
doubt-cause-evidence = Evidence corrected under a paper
doubt-cause-recall = Recalled part
doubt-cause-rule-line = Rule line changed
doubt-instrument = Instrument
doubt-certificate = Calibration certificate
doubt-certificate-said = { $number }, { $laboratory }, { $on }
doubt-found-at = Found wrong
doubt-in-doubt = In doubt
doubt-remedy = What is to be done
doubt-span = From { $from }, when it was last known to be right, to { $to }
doubt-span-ended = From { $from }, when its calibration had ended, to { $to }
doubt-span-stated = From { $from } (stated: { $reason }) to { $to }
doubt-span-ever = Everything up to { $to }; no good check or calibration came before
doubt-span-day = Measured on or after { $from }

doubt-report = Print the report
doubt-step-found = What was found
doubt-step-error = The error as it was found
doubt-step-results = What rests on it
doubt-step-papers = The papers
doubt-step-close = The end

doubt-state-span = State another beginning
doubt-keep-span = Keep the beginning
finding-stated_from = Suspect from
    .hint = Leave empty to go back to the last time it was known to be right
finding-stated_reason = Why from then
    .hint = What shows that it was right until then
wrong-after-found = This is after it was found wrong

doubt-no-sum = This instrument sees or does not see; no sum takes its error out. What rests on it stays in doubt until somebody looks at the vehicle or a signatory decides.
doubt-error-none = Not entered yet. Until then everything that rests on it is in doubt.
doubt-enter-error = Enter the error
doubt-error-lead = By how much it reads high. A minus says that it reads low. The error is taken out of each reading as it was found, the same for the whole time in doubt; the readings themselves stay as they were written.
doubt-keep-error = Reckon again
finding-pressure_kpa = Pressure: reads high by
    .hint = The same at every reading
finding-pressure_percent = Pressure: reads high by a share
    .hint = Of the true value
finding-temperature_error = Temperature: reads high by
finding-co_percent = CO: reads high by
finding-co2_percent = CO₂: reads high by
finding-o2_percent = O₂: reads high by
finding-hc_ppm = HC: reads high by
finding-how_known = How this is known
    .hint = Number of the certificate, or with what it was compared

as-found-pressure-kpa = Pressure
as-found-pressure-percent = Pressure, share of the true value
as-found-temperature-k = Temperature
as-found-co-percent = CO
as-found-co2-percent = CO₂
as-found-o2-percent = O₂
as-found-hc-ppm = HC
as-found-high = { $what }: reads high by { $by }
as-found-low = { $what }: reads low by { $by }
as-found-right = { $what }: reads right

doubt-results = Results
doubt-job = Job
doubt-what = Result
doubt-as-written = As written
doubt-again = Reckoned again
doubt-stands = How it stands
doubt-tally = { $all ->
    [one] One result rests on it.
   *[other] { $all } results rest on it.
    } Still holds: { $holds }. In doubt: { $doubt }. Fails: { $fails }.
doubt-nothing-rests = Nothing that was recorded rests on it.
doubt-sort-holds = Still holds
doubt-sort-in-doubt = In doubt
doubt-sort-fails = Fails
again-rate = Leak rate
again-idle-co = CO at idle
again-raised-co = CO at raised idle
again-lambda = Lambda
again-raised-hc = HC at raised idle
again-no-limit = no limit
again-most = at most { $most }
again-least = at least { $least }
again-between = { $least } to { $most }
again-passes = passes
again-fails = fails
again-cannot-tell = cannot tell
again-why-passes = It passes when it is reckoned again
again-why-fails = It does not pass any more
again-why-cannot-tell = Too near its limit for its uncertainty
again-why-no-limit = Nothing limits it, so nothing says whether it still holds
again-why-unconfirmed = It passes only by a line whose source nobody has read
again-why-no-error = The error as found is not entered yet
again-why-detector = A detector that failed may have missed a leak; its joints have to be searched again
again-why-foam = Foam that failed may have missed a leak; its joints have to be searched again
again-why-state = It was a state of that engine on that day; no sum can make it again
again-why-below-zero = With the error taken out a gas falls below zero, so the error was another on that day
again-why-no-sum = No sum can be made of these readings
again-why-over-rating = With the error taken out the section was under more than its lowest-rated part may hold
again-why-no-proof = No proof asks for it
again-why-proof-met = The proof it meets is met
again-why-proof-stops = It stops its proof now
again-why-proof-open = Its proof is not met now
again-why-part-recalled = On the vehicle now
again-why-part-perhaps = On the vehicle now; what the recall names is not written down of it
again-why-part-gone = Not on the vehicle any more

doubt-papers = Papers
doubt-paper = Paper
doubt-standing = Stands
doubt-worst = Worst result
doubt-decision = Decision
doubt-letter = Letter, re-test
doubt-no-papers = No paper that stands rests on it.
doubt-decide = Decide
doubt-decide-review = What it rests on, and the decision
doubt-needs-none = Ended; needs no decision
doubt-decided = Decided
doubt-decided-by = { $name }, { $at }
doubt-booked = Re-test { $at }
doubt-booking = Booking of the re-test
doubt-rests-on = What it rests on
doubt-beside = { $name }: { $old } as written, { $new } reckoned again ({ $under }).

paper-decision-stands = Stands
paper-decision-re-test = Re-test called
paper-decision-withdrawn = Withdrawn
finding-paper_decision = What becomes of this paper
finding-reason = Reason
    .hint = It is printed, and goes into the letter
finding-bay_id = Bay
finding-starts_at = Begins
doubt-re-test-when = When the test is made again
doubt-re-test-lead = Only for a re-test. The time is held for two hours and the keeper is written to; the paper stays under review until a signatory decides again.
doubt-sign = Signature
doubt-sign-lead = The decision is signed with your name, your authorisation and the time. A re-test or a withdrawal writes to the keeper in the same step.
doubt-sign-act = Sign the decision

today-finding = Finding: { $text }
doubt-next-error = Next: the error as found
doubt-next-error-says = Enter by how much the instrument reads high; every result that rests on it is reckoned again.
doubt-next-papers = Next: decide the papers
doubt-next-papers-says = { $n ->
    [one] One paper waits for a signatory.
   *[other] { $n } papers wait for a signatory.
}
doubt-next-close = Next: close
doubt-next-close-says = No paper waits for a signatory. Say what was done about the cause, and close.
doubt-next-re-test = Closed; a re-test is still to come
doubt-next-re-test-says = A paper stays under review until its vehicle was tested again and a signatory has decided.
doubt-next-closed = Closed
doubt-next-closed-says = Nothing is open. The report prints the whole of it.
doubt-still-open = Not decided yet:
doubt-close = Close the finding

refused-doubt-has-no-span = Only an instrument has a time in doubt
refused-doubt-has-no-error = No error of this kind can be taken out of what rests on it
refused-finding-decided = This finding is closed
refused-paper-decided = This paper is decided, withdrawn or superseded

recall-new = Enter a recall
recall-lead = A recalled part stops every certificate of its vehicle until it is changed, or until its duty is closed with what put it right. Papers that rest on such a part come under review, and each part gets a duty, due today.
recall-paper = Who recalls, and by what
recall-recalled_by = Recalled by
recall-document = Document
recall-dated_on = Dated
recall-what = What is recalled
recall-what-lead = Left empty means any. At least one of them narrows it down. A part of which the shop did not write down what is named here counts as perhaps recalled.
recall-category = Kind of part
recall-maker = Maker
recall-type_name = Type
recall-batch = Batch
recall-serial_from = First serial
recall-serial_to = Last serial
recall-remedy = What the keeper is to do
    .hint = For the letter, in plain words: drive on petrol until it is changed, come in this week
recall-open = Enter it
recall-names-nothing = Name the maker, the type, the batch or the serials
recall-batch-said = batch { $batch }
recall-serials-said = serials { $from } to { $to }
recall-letters-due = { $n ->
    [0] Every keeper of such a vehicle has been written to.
    [one] One keeper is not written to yet.
   *[other] { $n } keepers are not written to yet.
}
recall-write-letters = Write to them

rule-line-new = A rule line changed
rule-line-lead = When a line of a set changed, what was measured from its first day on is held against its new value. Results that are judged the same as before are left alone. A set that is put in force here, the shop’s own lines among them, does this by itself.
finding-rule_line = Line
finding-rule_from_on = Its new value counts from

message-kind-safety = About safety
message-kind-recall = Recall

report-title = Finding report
report-number = { $number }, printed { $date }
report-no-error = Not entered yet.
doubt-error-told = { $error }. Known from: { $how }. Entered by { $name }, { $at }.
report-error-lead = The error is taken out of each reading as it was found, the same for the whole time in doubt. The readings stay as they were written.
report-undecided = Not decided yet
report-decided-by = Signed by
report-then = Re-test, letter
report-letter = Letter: { $state }, { $at }
report-re-test = Re-test ({ $kind }) { $at }: { $job }
report-signature = Signed with key { $key } over SHA-256 { $sum }: { $signature }
report-paper-waits = { $number } waits for a signatory.
report-paper-re-test = { $number } stays under review until its vehicle was tested again.
report-only-close = Nothing but the close.
report-in-doubt-without-paper = Results in doubt on which no paper rests are to be measured again before one is issued.
report-local-law = Where the law or the authority asks for more than is said here (notice, re-test, withdrawal), that counts.
report-kept = Evidence, errors and decisions are kept as they were entered; none is changed by this report.

deed-doubt-dated = Time in doubt stated
deed-error-entered = Error as found entered
deed-paper-reviewed = Paper put under review, or out of it
deed-paper-decided = Paper in doubt decided and signed
deed-recall-entered = Recall entered
deed-recall-letters = Recall letters written
