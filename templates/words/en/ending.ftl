# How a job waits, and how it ends.

ending-hold = Put on hold
    .lead = Work waits: for a part, for the customer, for a decision. Evidence may still be recorded.
ending-on-hold = On hold
ending-end-hold = Go on with the work
ending-hold_reason = What the job waits for
ending-hold-open = On hold since { $from }: { $reason }
ending-hold-ended = Was on hold { $from } to { $until }: { $reason }
ending-hand-over = Hand over with certificate
    .lead = The vehicle leaves with its certificate. The job ends, and what falls due next begins.
ending-release = Release without certificate
    .lead = The vehicle leaves and gets no certificate. The job stays in sight until the vehicle has one. Shut the gas off where its system is not proven.
ending-still-open = Still open:
ending-release_reason = Why it leaves without a certificate
ending-is_gas_shut_off = The gas is shut off
ending-signed_by = Name of the owner who was told and signed
ending-cancel = Cancel the job
    .lead = Nothing is done on the vehicle, or all of it was undone. What was recorded stays on record.
ending-cancel_reason = Why it is cancelled

refused-job-ended = This job has ended; nothing more is recorded in it.
refused-held-already = This job is on hold already.
refused-not-held = This job is not on hold.
refused-not-a-person = Only somebody who is signed in can do work on a job.
