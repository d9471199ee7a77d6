# Issuing papers: signing, the register, verifying.

# -- the papers of a job --
signing-password = Your password
    .hint = Signing asks for it each time.
signing-supersedes_reason = Why it is replaced
    .hint = Printed on the new paper, which names the old one.
signing-language = It is made in { $language }, the language of these rules.
signing-language-unread = Nobody of the trade has noted yet to have read: { $language }.
signing-beside = Also in { $language }, for the keeper
signing-beside-hint = On pages of its own behind the signature, to be read beside it.
refused-proofs-missing = Something is still missing; the list above leads to each.
refused-issued-already = This job has a certificate. Replace it, or withdraw it first.
refused-signatory-only = Only a signatory whose authorisation is in date may do this.
refused-restored-pending = This shop came from a backup. A manager first answers in Office whether it is now the only one.
refused-not-restored = Nothing waits for this answer.
refused-manager-only = Only a manager may do this.
refused-licence-expired = The shop's licence has run out; a manager enters the new date in Office.
refused-address-beyond-fonts = The address has letters the papers cannot print. Write it in Latin letters with the customer.
refused-signatory-beyond-fonts = Your name has letters the papers cannot print. A manager writes it in Latin letters under Office, People.
refused-vehicle-beyond-fonts = Make, model or plate has letters the papers cannot print. Write it in Latin letters with the vehicle.
refused-name-beyond-fonts = The name has letters the papers cannot print. Enter a spelling in Latin letters with the customer.
refused-paper-ended = This paper was withdrawn or superseded already.

register-preview = Preview of the certificate
register-test-record = Test record
register-owner-sheet = Owner's sheet
register-issued-papers = Issued
register-held-back = What holds the certificate back
register-issue = Issue the certificate
    .lead = It takes the next number, is frozen as it stands, and is signed with your name. It cannot be edited afterwards.
register-sign-and-issue = Sign and issue
register-waits-for-signatory = Everything asked for is there. A signatory issues the certificate.
register-replace = Replace
register-sign-and-replace = Sign and replace

# -- the register --
papers-title = Papers
papers-empty = No certificate was issued yet. One is issued from the hand-over of a job.
papers-standing-list = Signed list of how all papers stand
register-vehicle = Vehicle
register-vin = VIN
register-chassis-number = Chassis number
register-signed-by = Signed by
register-code = Code
register-open-pdf = Open the paper
register-signed-file = Signed file
register-to-job = To its job
register-events = What became of it
register-event-line = { $kind } by { $name }, { $when }: { $reason }
register-withdraw = Withdraw
withdrawal-reason = Why it is withdrawn
    .hint = Shown to nobody outside; the number answers "withdrawn".
withdrawal-password = Your password

paper-event-withdrawn = Withdrawn
paper-event-superseded = Superseded
paper-event-rests-on-corrected-evidence = Rests on corrected evidence
paper-event-review-opened = Review opened
paper-event-review-closed = Review closed
paper-event-second-copy = Second copy

second-copy-title = Second copy
second-copy-says = For a paper that was lost. It is the same paper, byte for byte; for whom or why is written down beside it.
second-copy-note = Write it down
field-copy_reason = For whom, or why

register-kind-any = Every kind
register-year = Year
register-year-any = Every year
register-standing = How it stands
register-standing-any = However it stands
register-none-found = No paper of the register is like that.
refused-no-certificate = This job has no standing certificate. Issue it first, or release the vehicle without certificate.

# -- papers drawn on asking --
register-for-keeper = In { $language }, for the keeper:
register-work-sheet = Work sheet
register-fitting-record = Fitting record
register-calibration-record = Calibration record
