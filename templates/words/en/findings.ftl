# Findings: faults found, open until decided.

findings-title = Findings
findings-lead = A fault found, open until somebody decides what becomes of it. An open finding stops the certificate of its job.
findings-none = No finding.
finding-title = Finding
finding-new = Add a finding
finding-open = Open the finding
finding-in-job = Job { $number }
finding-text = What is wrong
finding-source = What it rests on
    .hint = A measurement, a document, what was seen
finding-decision = Decision
    .hint = What was done or decided, and why
finding-decide = Decide
finding-opened = Opened { $at }. { $source }
finding-decided = Decided { $at }: { $decision }
finding-decided-meanwhile = Somebody decided this meanwhile; what they wrote stands above
finding-you-wrote = What you wrote, not kept:
finding-suspect-since = In doubt: everything measured with it since it was last known to be right, { $since }
finding-suspect-ended = In doubt: everything measured with it since its calibration ended, { $since }
finding-suspect-always = In doubt: everything measured with it; no good check or calibration came before
finding-out-of-date = { $code } is used after its calibration ended on { $ended }. What is measured with it proves nothing until a new certificate covers the day; whether earlier results hold shows at the next calibration.
finding-source-instrument-check = Found by a check
finding-source-instrument-calibration = Found by the laboratory
finding-source-instrument-out-of-date = Its calibration has ended
