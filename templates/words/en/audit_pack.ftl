# The audit pack of a period: its screen and its paper.

audit-pack-title = Audit pack
audit-pack-open = Audit pack
audit-pack-says = One paper over a period: numbers, instruments, persons, waivers, corrections, late entries, findings, and ten job files that chance picks. That it was drawn, by whom and for which days, is a line of the log.
audit-pack-draw = Draw the audit pack
audit-pack-ends-before = The last day is before the first

audit-pack-from = First day
audit-pack-to = Last day
audit-pack-seed = Seed
    .hint = Empty: chance chooses one, and it is printed. The same seed picks the same job files again.

audit-pack-span = { $from } to { $to }
audit-pack-lead = This pack shows what the shop’s records of the period hold. It judges nothing.
audit-pack-drawn = Drawn { $at } for { $name }.
audit-pack-local-law = Local code prevails. Names of customers are left out; they stand in the job files.

audit-pack-register = Number register
audit-pack-no-register = No paper was issued in the period, and nothing became of an earlier one.
audit-pack-series-whole = { $kind }: { $first } to { $last }, { $n }, none missing.
audit-pack-series-broken = { $kind }: { $first } to { $last }, { $n }; MISSING: { $missing }.
audit-pack-void = void
audit-pack-head-number = Number
audit-pack-head-issued = Issued, signed by
audit-pack-head-vehicle = Vehicle, job
audit-pack-head-stands = Stands today
audit-pack-head-became = What became of it

audit-pack-instruments = Instruments and their certificates
audit-pack-no-instruments = No instrument was in use.
audit-pack-head-instrument = Instrument
audit-pack-head-certificate = Certificates in the period
audit-pack-head-valid = Validity in the period
audit-pack-head-checks = Daily checks
audit-pack-certificate = { $number }, { $laboratory }, { $from } to { $to }
audit-pack-no-certificate = none
audit-pack-valid-throughout = in calibration throughout
audit-pack-not-valid = NOT in calibration { $days }
audit-pack-checks = { $passed } passed, { $failed } failed
audit-pack-no-daily-check = none asked

audit-pack-persons = Persons
audit-pack-no-persons = Nobody had a role.
audit-pack-head-person = Person
audit-pack-head-role = Role
audit-pack-head-held = Held
audit-pack-account-ends = account ends { $on }
audit-pack-since = since { $from }
audit-pack-from-to = { $from } to { $to }

audit-pack-authorisations = Authorisations to sign
audit-pack-no-authorisations = Nobody was authorised to sign.
audit-pack-head-authorisation = Authorisation
audit-pack-head-expires = Last day

audit-pack-waivers = Waivers, and what does not apply
audit-pack-no-waivers = None.
audit-pack-head-job = Job
audit-pack-head-proof = Proof
audit-pack-head-how = How
audit-pack-head-by = By
audit-pack-head-reason = Reason
audit-pack-taken-back = taken back { $on }

audit-pack-corrections = Corrections
audit-pack-no-corrections = None.
audit-pack-head-what = What
audit-pack-head-first = First entered
audit-pack-head-corrected = Corrected

audit-pack-late = Entered later than measured
audit-pack-no-late = None.
audit-pack-head-measured = Measured
audit-pack-head-entered = Entered

audit-pack-findings = Findings and decisions
audit-pack-no-findings = None was open.
audit-pack-head-opened = Opened
audit-pack-head-about = About
audit-pack-head-finding = Finding
audit-pack-head-decision = Decision
audit-pack-head-papers = Papers decided
audit-pack-still-open = still open
audit-pack-paper-decided = { $number }: { $decision }, { $name }: { $reason }

audit-pack-picked = Job files picked by chance
audit-pack-seed-says = Seed: { $seed }. { $n } of { $all } job files that were open in the period.
audit-pack-how-picked = How to pick them again: of each job number, SHA-256 over the seed, a line feed and the number; the ten that come first in the order of their hexadecimal digits.
audit-pack-job = Job file { $number }
audit-pack-fact-kind = Kind
audit-pack-fact-vehicle = Vehicle
audit-pack-fact-plate = Plate
audit-pack-fact-vin = VIN or chassis
audit-pack-fact-opened = Opened
audit-pack-fact-state = State
audit-pack-fact-ended = Ended
audit-pack-fact-papers = Papers
audit-pack-name-left-out = (name left out)
audit-pack-proofs = Proofs as they stand today
audit-pack-no-proofs = No proof is asked of this job.
audit-pack-head-state = State
audit-pack-head-why = Why
audit-pack-entries = Entries
audit-pack-no-entries = Nothing was recorded.
audit-pack-head-with = With, by
audit-pack-corrects = corrects the entry of { $at }: { $reason }

deed-audit-pack-drawn = Drew the audit pack of a period
deed-papers-exported = Wrote every issued paper into a folder
deed-second-copy-made = Printed a second copy of a paper
