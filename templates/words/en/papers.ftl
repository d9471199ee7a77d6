# What papers say around the facts of their content.

## Every paper

paper-rules = Rules: { $rules }
paper-check = Check: { $how }
paper-key = key { $key }
paper-preview = PREVIEW
paper-preview-notice = PREVIEW. Not issued, not signed. This paper proves nothing.
paper-photos = Photos
paper-photo = Photo
paper-photo-missing = This file is kept with the job, but cannot be printed here.
paper-not-signed = A working paper, not signed. The job file is what counts.
paper-end = End of { $number }
paper-software = Made with Fuelwright { $version }
paper-rule-set = Rule set { $name } { $version }, SHA-256 { $sum }
paper-code-alt = QR code that leads to { $address }
paper-file-signed = The signed content of this paper
paper-file-keeper = The keeper's data that the signed content holds as a digest
paper-beside = The same in { $language }, to be read beside it. What counts is the text in { $original } on the pages before.
paper-copy = The same in { $language }, to be read beside it. What counts is the text in { $original }.

paper-person-authorised = { $name }, authorisation { $number }
paper-person-authorised-until = { $name }, authorisation { $number } to { $until }

## Vehicle, keeper, system, parts

paper-vehicle = Vehicle
paper-make-model = Make, model
paper-plate = Plate
paper-not-registered = not registered
paper-vin = VIN
paper-vin-derived = VIN ends in
paper-chassis-number = Chassis number
paper-chassis-number-derived = It ends in
paper-vin-ends = { $last7 }, last four { $last4 }
paper-first-registered = First registered
paper-odometer = Odometer
paper-no-odometer = none fitted
paper-type-code = Type, variant
paper-category = Category
paper-engine = Engine
paper-engine-code = Engine code, number
paper-power = { $power } at { $rpm }/min
paper-engine-cylinders = { $n ->
    [one] 1 engine cylinder
   *[other] { $n } engine cylinders
}

paper-keeper = Keeper
paper-name = Name
paper-address = Address
paper-phone = Phone
paper-mail = Mail

paper-gas-system = Gas system
paper-fuel = Fuel
paper-system = System
paper-system-approval = System approval
paper-approval-holder = Approval holder
paper-control-unit = Control unit

paper-parts = Parts fitted
paper-part = Part
paper-maker-and-type = Maker, type
paper-approval-mark = Approval mark
paper-serial = Serial, batch
paper-made = Made
paper-next-duty = Next duty

paper-container-of = { $all ->
    [one] Container
   *[other] Container { $n } of { $all }
}
paper-cylinder-of = { $all ->
    [one] Cylinder
   *[other] Cylinder { $n } of { $all }
}
paper-maker = Maker
paper-shape = Shape or type
paper-water-capacity = Water capacity
paper-capacity-both = { $stamped }, in whole litres { $floor } L
paper-fill-limit = Fill limit
paper-fill-both = { $percent } %, filled to { $litres } L
paper-working-pressure = Working pressure
paper-test-pressure = Test pressure
paper-last-tested = Last tested
paper-inspection-kind = Inspection
paper-next-test = Next test by
paper-container-end-of-life = End of life
paper-cylinder-end-of-life = End of life
paper-no-end-of-life = none set by the rules
paper-location = Place in the vehicle
paper-findings = Found on it:

## Measured

paper-measured = What was measured
paper-test = Test
paper-result = Result
paper-limit = Limit
paper-decision = Decision
paper-instrument = Instrument
paper-limit-source = Limits: { $source }
paper-from-outside = result from outside: { $body }
paper-record = record { $record }
paper-entered-later = entered later

paper-verdict-passes-guarded = passes, guarded
paper-verdict-passes-simple = passes, simple
paper-verdict-passes-observed = passes
paper-verdict-fails-guarded = fails, guarded
paper-verdict-fails-simple = fails, simple
paper-verdict-fails-observed = fails
paper-verdict-cannot-tell-guarded = cannot tell
paper-verdict-cannot-tell-simple = cannot tell
paper-verdict-cannot-tell-observed = cannot tell

paper-rule-guarded = Guarded: the result and its expanded uncertainty (k = { $k }) lie within the limit. Risk of a wrong pass below 2.5 % (ILAC-G8:09/2019, 4.2.2).
paper-rule-simple = Simple: the result lies within the limit. Risk of a wrong pass up to 50 % for a result at the limit (ILAC-G8:09/2019, 4.2.1).

paper-instruments = Instruments
paper-what = What
paper-calibration = Calibration certificate
paper-good-until = Good until

paper-late-entries = Entered later than it happened
paper-happened = Happened
paper-entered = Entered
paper-by = By
paper-reason = Reason

## Proofs, inspection, conformity

paper-proof = Proof
paper-exception = Standing
paper-decided-by = Decided by
paper-exception-waived = waived
paper-exception-not-applicable = does not apply
paper-exception-shop-limit = met under a limit of the shop

paper-inspection = Inspection
paper-place = Place
paper-ended = Ended
paper-inspector = Inspector
paper-next-inspection = Next inspection by
paper-present-again = Present again by
paper-repeats = Repeats
paper-no-deficiencies = No deficiencies were found.
paper-item = Item
paper-deficiency = Deficiency
paper-severity = Severity
paper-severity-minor = minor
paper-severity-major = major
paper-severity-dangerous = dangerous

paper-conformity = Proofs and statement of conformity
paper-against = Against
paper-covers = Covers
paper-conformity-state = State
paper-conforms = met
paper-conforms-not = not met

## What comes next

paper-vehicle-papers = To change in the vehicle's papers: { $changes }
paper-next = What comes next
paper-due-when-first = By, whichever comes first
paper-due-decided-by = Decided by
paper-due-at-in-short = { $km }
paper-due-either-in-short = { $first } or { $second }
paper-authority-test = Authority's own test
paper-still-to-come = still to come
paper-remarks = Remarks
paper-caution = Caution: { $caution }

## Certificates

certificate-title-conversion = Certificate of conversion to { $fuel }
certificate-title-inspection = Certificate of inspection, { $fuel } system
certificate-title-removal = Certificate of removal of an { $fuel } system
certificate-title-container = { $fuel } container certificate
certificate-title-cylinder = { $fuel } cylinder certificate

certificate-number-issued = { $number } · issued { $date }
certificate-replaces = This paper replaces { $number }. Reason: { $reason }
certificate-issue-line = { $place } · job file { $job } · received { $received } · finished { $finished }

certificate-lead-conversion = This vehicle has been fitted with the gas system named below.
certificate-lead-inspection = The gas system of this vehicle was inspected; the result stands below.
certificate-lead-removal = The gas system named below was taken out of this vehicle, and the vehicle runs on petrol alone.
certificate-lead-container = The container named below was worked on or inspected as this paper says.
certificate-lead-cylinder = The cylinder named below was worked on or inspected as this paper says.
certificate-fitting-check = The fitting was checked by us, as the approval of the system itself does not cover that check (UN R115, 1.3).
certificate-proofs-all = { $asked ->
    [one] The one proof asked for was met.
   *[other] All { $asked } proofs asked for were met.
}
certificate-proofs-all-but-found = What was found decides: each of the { $asked } proofs was met, but a deficiency below is not minor.
certificate-proofs-some = { $met } of { $asked } proofs asked for were met; the others are named below, with person and reason.
certificate-to-be-confirmed = These lines were applied, but nobody has confirmed them yet. To be confirmed with your authority: { $lines }

certificate-keeper-apart = The keeper's data are kept apart from this copy.
certificate-keeper-digest = Digest of the keeper's data in the signed content: { $digest }

certificate-signed-by = Signatory: { $person }. Signed { $at }.
certificate-worked-by = Work and tests: { $person }.
certificate-holds = Results hold for this vehicle on the day of test only. Local code and licensed practice prevail.
certificate-check-online = Signed electronically. The code in the foot shows how this paper stands today; its PDF carries the signed content.
certificate-check-by-phone = Signed electronically; the PDF carries the signed content. To learn how this paper stands today, call { $phone } and give the code in the foot.
certificate-follows = Content of the paper before this one in its series, SHA-256 { $sum }
certificate-key-id = Signing key { $key }

## Test record

record-number-issued = { $number } · issued { $date }
record-lead = The results below concern only the item tested, as it was received and on the day it was tested.
record-body = Record
record-place = Where tested
record-customer = Customer
record-contact = Contact
record-method = Method
record-received = Received
record-began = Began
record-ended = Ended
record-sampling = Sampling
record-no-sampling = none
record-deviations = Deviations from the method
record-no-deviations = none
record-job = Job file
record-item = Item tested
record-vehicle = Vehicle
record-tested = Tested
record-condition = Condition when received
record-conditions = Conditions
record-leak = Leak test, { $section }
record-attempt = Attempt
record-boundaries = Closed by
record-gas = Test gas
record-pressure-start-absolute = Pressure at start, absolute
record-pressure-end-absolute = Pressure at end, absolute
record-pressure-start-gauge = Pressure at start, gauge
record-pressure-end-gauge = Pressure at end, gauge
record-ambient-pressure = Air pressure
record-temperature-start = Temperature at start
record-temperature-end = Temperature at end
record-temperature-ambient = Air temperature
record-volume = Volume
record-volume-known = Volume known by
record-joints = Joints, { $n }
record-rate = Leak rate
record-rate-limit = Limit
record-limit-from = Limit from
record-repair = Repaired before
record-customer-supplied = Stated by the customer, not checked by us
record-authorised = Authorised by
record-technician = Tested by
record-replaces = This record replaces { $number }. Reason: { $reason }
record-whole = This record is copied as a whole or not at all.
