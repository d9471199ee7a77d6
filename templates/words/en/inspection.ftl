# Inspections: deficiencies, the result, what comes after; vessels looked at.

# -- deficiencies --
deficiency-number = Deficiency { $n }
deficiencies-note = Leave a place empty that is not needed. A proof that failed counts as major, whether or not it stands here.
deficiencies-note-repeat = What failed the first inspection stands here. Clear what is in order now, keep what is not.
deficiencies-item = Found on
deficiencies-class = Class of the inspection code
    .hint = Sets the least severity. Left empty: your own judgement.
deficiencies-severity = Severity
deficiencies-words = What, and where
deficiencies-photo = Photo
    .hint = From the photos of deficiencies in this job.
deficiencies-danger = When something is dangerous
    .lead = Nobody has to run the engine or open the gas of a vehicle that is dangerous. Say why the rest was not tested; the certificate prints it, and the result is a fail.
deficiencies-is_gas_shut_off = Gas shut off, and the keeper told not to drive
deficiencies-not_tested_reason = Why the remaining tests were not made
deficiencies-found = Deficiencies
deficiency-milder-than-class = This class is at least { $least }. Choose another class, or the graver severity.
deficiency-dangerous-shut-off = Something is dangerous: say whether the gas is shut off and the keeper was told.
deficiency-not-tested-needs-danger = Only something dangerous excuses a test. Record the tests, or class the deficiency as dangerous.
deficiency-class-613a = tank or pipes insecure
deficiency-class-613b = fuel leaks, or filler cap missing or not closing
deficiency-class-613c = pipes chafed or damaged
deficiency-class-613d = fuel shut-off does not work
deficiency-class-613e = danger of fire: leak, shielding, engine bay
deficiency-class-613f = gas system not as required, or a part of it defective
deficiency-class-8212 = exhaust over its limits
severity-minor = minor
severity-major = major
severity-dangerous = dangerous

# -- the result --
inspection-open = No result yet
inspection-counts = { $severity }: { $what }
inspection-not-tested = Not tested, because something is dangerous: { $tests }
inspection-still-open = Still to record: { $proofs }

# -- what comes after --
again-title = Repeat
again-rule-failed-only = Within the term, until { $by }, only what failed is looked at again. { $source }
again-rule-whole = The vehicle is brought again by { $by }, to a whole inspection. { $source }
again-rule-none = The rules in force set no term for a repeat: the vehicle comes to a whole new inspection.
again-follows-partial = Repeats { $number } of { $on }: what failed then is looked at again.
again-follows-whole = A whole inspection after { $number } of { $on }: its term is over, or the rules want everything looked at.
again-follows-job = A whole inspection after job { $job }, which a repair ended.
again-repeat = Open the repeat
    .lead = A new job for the same vehicle. It quotes the number and date of the certificate that says fail.
again-repeated = Repeated in
again-repair = End this inspection by a repair
    .lead = Under the rules in force nothing is repaired inside an inspection: the repair ends it, and a new one begins.
again-repaired = What is repaired
refused-repeated-already = This inspection has been repeated already.
refused-nothing-failed = Only an inspection whose certificate says fail is repeated.
refused-repair-goes-on = The rules in force let a repair go on inside this job.
refused-inspection-finished = The certificate was issued: the inspection is finished. Open a repair as a job of its own.
refused-repair-restarts = Under the rules in force nothing is fitted or taken off inside an inspection. End it by a repair first.
refused-certificate-says-otherwise = The certificate that stands says another result than the evidence does now. Replace it first.

# -- vessels --
vessel-check-looked = Looked at
vessel-check-none = No container or cylinder stands in the books of this vehicle. Enter it among the parts first.
vessel-check-findings = Findings
    .lead = One line a finding. What is not acceptable keeps the certificate back.
vessel-check-vessel = On
vessel-check-level = Level
vessel-check-words = What was found
vessel-check-action = What was done
vessel-check-photo = Photo
vessel-check-by = Who looked
vessel-check-inspector_level = Level or training of the inspector
vessel-check-from_outside = Another body that tested it
    .hint = Empty when it was looked at here.
vessel-check-outside_on = Day of its test
vessel-check-nothing = Tick at least one way in which a vessel was looked at.
vessel-check-outside-day = Enter the day of the other body's test.

# -- parts found, parts taken off --
part-origin-fitted = Fitted here
part-origin-found = Found on the vehicle
part-origin = Where it comes from
    .hint = What somebody else fitted is found: it is described, not claimed.
part-working_pressure_kpa = Working pressure
part-last_tested_on = Last tested
part-end_of_life_on = End of life
    .hint = The last day on its label.
part-life-before-made = It ends before it was made. Read the plate again.
part-said-found = found on the vehicle, looked at { $value }
part-said-last-tested = last tested { $value }
part-said-end-of-life = to be used until { $value }
part-removal-whereabouts = Where it goes
    .hint = A container or cylinder is never lost sight of: kept, handed to its owner, sent to a tester, scrapped; with name and paper.
refused-whereabouts = Say where the container or cylinder goes.

# -- signing --
signing-photos_seen = Photos seen
    .hint = Look at each, then tick it. The certificate records what you saw.
refused-photos-not-seen = Look at each photo that the rules ask for, and tick it.
refused-own-measurement-signing = Who measured does not sign for it: this shop asks for four eyes.
refused-test-record-is-the-paper = A repair of the low-pressure side alone ends with its test record; no certificate is issued.
register-test-record-is-the-paper = A repair of the low-pressure side alone ends with its test record; no certificate is issued.

shop-eyes = Four eyes
    .lead = Who measured neither signs for it nor lets it pass. Certificates and waivers need a second person.
shop-eyes-save = Keep
shop-four_eyes = Four eyes are asked for

# -- papers --

deed-inspection-repeated = opened the repeat of an inspection
deed-inspection-ended-by-repair = ended an inspection by a repair: { $what }
