# The job file: head, rail, stages, slots, recording.

job-vin = VIN { $vin }
job-chassis-number = Chassis number { $vin }
job-power = { $power } at { $rpm }/min
job-engine-cylinders = { $n ->
    [one] 1 engine cylinder
   *[other] { $n } engine cylinders
}
job-kind-and-fuel = { $kind }, { $fuel }
job-keeper = Keeper: { $name }, { $contact }
job-bay-since = { $bay }, since { $since }
job-since = Here since { $since }
job-standing-held = On hold: { $reason }
job-standing-handed-over = Handed over with certificate
job-standing-released = Released without certificate: { $reason }
job-standing-cancelled = Cancelled: { $reason }
job-proofs-title = Proofs for the certificate
job-photos = Photos and files
job-parts = Parts
job-findings = Findings
job-papers = Papers
    .lead = The certificate is the printed form of the proof list. What is missing is on the list beside it.
job-ending = Hold, hand over, release, cancel
proof-never-waived = cannot be waived
proof-waive = let it pass, with a reason

stage-intake = Intake
    .lead = Who brings what, and whether it can be converted. Measured on petrol, before any work.
stage-sizing = Sizing
    .lead = Which nozzle, heat, hoses and storage this vehicle needs. Each result shows its inputs and their source.
stage-fitting = Fitting
    .lead = What was fitted, by serial number, and how. Every engine cylinder is switched back to petrol once to see that the right one answers.
stage-calibration = Calibration
    .lead = Gas against petrol, engine and vaporiser warm, in closed loop.
stage-proving = Proving
    .lead = Tight, clean, working: shown with instruments that are in calibration today.
stage-hand-over = Hand-over
    .lead = Papers, instruction of the driver, signature, and what falls due next.

arrival-odometer = Odometer
    .hint = As it reads; the unit of this vehicle's odometer.
arrival-explained = What explains this reading
arrival-reported_faults = Reported faults
arrival-existing_system = Gas system already fitted
    .hint = Maker and type in words; leave empty for none.
arrival-parts_found = Gas parts found, not fitted by us

field-measured_at = Measured
    .hint = More than ten minutes ago is printed as entered later.
field-replaces_reason = Why it is corrected
    .hint = The earlier entry stays on record with this reason.

record-when = When
record-save = Record
record-save-correction = Record the correction
record-back = Back
record-record = Record
record-correct = Correct
record-by = { $name }, { $when }
record-corrected = Earlier: { $said }. Corrected: { $reason }
record-meanwhile = Somebody recorded this while the form was open. Theirs stands above; send yours as a correction with a reason, or go back.
record-meanwhile-by = Recorded meanwhile by { $name }, { $when }
instrument-choice-due = { $code }, due { $due }
instrument-choice-not-trusted = { $code }, proves nothing today

caution-intake-lpg = Local code and licensed practice prevail. Ventilate; LPG collects in pits and drains.
caution-intake-cng = Local code and licensed practice prevail. Ventilate high; natural gas collects under roofs.
caution-sizing-lpg = Results rest on the inputs shown. The approval holder's manual and licensed practice prevail.
caution-sizing-cng = Results rest on the inputs shown. The approval holder's manual and licensed practice prevail.
caution-fitting-lpg = Shut the container valve, run the engine dry, wait, vent slowly outside. Assume liquid between two valves.
caution-fitting-cng = Never loosen a joint under pressure. Depressurise through the drain; protect ears and face.
caution-calibration-lpg = Ventilate; lead the exhaust outside. No source of ignition.
caution-calibration-cng = Ventilate; lead the exhaust outside. No source of ignition.
caution-proving-lpg = Local code and licensed practice prevail. Never test with oxygen. Ventilate; no source of ignition while gas is vented.
caution-proving-cng = Local code and licensed practice prevail. Never test with oxygen. Ventilate; no source of ignition while gas is vented.
caution-hand-over-lpg = Tell the driver what to do at a smell of gas before handing over the key.
caution-hand-over-cng = Tell the driver what to do at a smell of gas before handing over the key.
