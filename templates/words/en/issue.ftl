# Issuing papers: what goes into their content, the register, verifying.

# -- into the content of papers --
issue-test-joints = Leak, { $section }, { $method } on { $n } joints
issue-section-lpg-liquid = liquid side
issue-section-lpg-vapour = vapour side
issue-section-cng-high = high-pressure side
issue-section-cng-low = low-pressure side
issue-method-foam = foam
issue-method-detector = detector
issue-test-decay = Leak, { $section }, pressure decay { $minutes }
issue-test-co = CO on { $fuel }, idle / raised idle
issue-test-lambda = Lambda on { $fuel }, raised idle
issue-test-shut-off = Shut-off, ignition off / engine stalled
issue-test-fill-stop = Fill stop
issue-fuel-petrol = petrol
issue-fuel-lpg = LPG
issue-fuel-cng = CNG
issue-limit-of-maker = the vehicle maker's value
issue-shop-limit = shop limit: { $source } ({ $line })
issue-limit-of-line = { $source } ({ $line }, { $set })
issue-limit-unread = { $source } ({ $line }, { $set }; to be confirmed with your authority)
issue-to-be-confirmed = { $source } (to be confirmed with your authority)
issue-nozzles = nozzles { $sizes } mm
issue-covers-all-proofs = all proofs asked for by these rules
issue-change-fuel = Fuel: petrol and { $fuel }
issue-change-petrol = Fuel: petrol only
issue-authority-test = The authority's own test, where the law asks for it
issue-caution-lpg = Local code and licensed practice prevail. LPG is heavier than air; do not leave the vehicle over a pit or drain when gas is smelt.
issue-caution-cng = Local code and licensed practice prevail. Natural gas is lighter than air; ventilate high when gas is smelt.
issue-test-record = Test record
issue-methods = leak-joints 1, leak-decay 1, exhaust-idle 1, function 1
issue-tested-system = Gas system as fitted
issue-coolant-on = Coolant on { $fuel }

# -- the papers of a job --
signing-password = Your password
    .hint = Signing asks for it each time.
signing-supersedes_reason = Why it is replaced
    .hint = Printed on the new paper, which names the old one.
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
register-work-sheet = Work sheet
register-fitting-record = Fitting record
register-calibration-record = Calibration record
