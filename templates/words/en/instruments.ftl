# Instruments, their certificates and checks.

instruments-title = Instruments
instruments-lead = A measurement counts only with an instrument that is in calibration, and checked that day where it needs it.
instruments-none = No instrument is entered yet. Enter the gauges, analysers and detectors in use.
instrument-new = Add an instrument
instrument-edit = Change
instrument-keep = Keep
instrument-facts = What it is
instrument-reading = What one reading is worth
instrument-on-the-paper = As the certificate says

instrument-code = Code
    .hint = What is written on it: G-03
instrument-kind = Kind
instrument-state = State
instrument-last-check = Last check
instrument-maker = Maker
instrument-type_name = Type
instrument-serial = Serial
instrument-unit = Unit it reads in
    .hint = kPa, °C, % vol
instrument-resolution = Resolution
    .hint = Smallest step it shows, in its unit
instrument-standard_uncertainty = Standard uncertainty of one reading
    .hint = In its unit. Left empty, the certificate’s figure is used, which is larger
instrument-needs_daily_check = Needs a check each day of use
    .hint = Zero, bump test or leak check. Without one, that day’s readings prove nothing

instrument-is-retired = Out of use since { $on }
instrument-is-out = Out of calibration; the last certificate ended { $on }
instrument-is-never-calibrated = No calibration certificate is entered
instrument-is-failed = Failed its check today
instrument-is-not-checked = In calibration, not checked today
instrument-is-due = { $n ->
    [0] In date, due today
    [one] In date, due tomorrow, { $on }
   *[other] In date, due in { $n } days, { $on }
}
instrument-is-in-date = In date until { $on }
instrument-is-usable = In use; needs no certificate

instrument-check-act = Enter a check
instrument-certificate-act = Enter a certificate
instrument-retire-act = Take out of use
instrument-return-act = Take into use again

instrument-certificates = Calibration certificates
instrument-certificates-none = No certificate is entered.
instrument-certificates-title = Calibration certificate of { $code }
instrument-certificates-lead = From the calibration day to the last day it serves, measurements can rest on it. Its uncertainty goes into the sums.
instrument-certificate-number = Certificate
instrument-certificate_number = Number of the certificate
instrument-laboratory = Laboratory
instrument-calibrated_on = Calibrated on
instrument-due_on = Serves until
    .hint = Twelve months after calibration is common practice; an authority may ask for less
instrument-expanded_uncertainty = Expanded uncertainty
    .hint = U, in the instrument’s unit
instrument-coverage_factor = Coverage factor
    .hint = k; 2 unless the certificate says otherwise
instrument-found_wrong = Found out of its limits before adjustment
    .hint = What and by how much. Leave empty when it was as it should be; anything here opens a finding
instrument-paper = The certificate itself
    .hint = PDF, or a photo of it; 25 MB at most
instrument-paper-open = Open
instrument-uncertainty-said = { $value }, k = { $factor }

instrument-checks = Checks
instrument-checks-none = No check is entered.
instrument-checks-title = Check of { $code }
instrument-checks-lead = Zero, bump test or leak check, before the first measurement of the day. A check that fails opens a finding: what was measured since the last good one is in doubt.
instrument-check-passed = As it should be
instrument-check-failed = Wrong
instrument-checked_at = Checked
instrument-has_passed = Result
instrument-as_found_error = Error found
    .hint = Reading less true value, in its unit
instrument-check_note = What was seen
    .hint = May stay empty when it was as it should be
instrument-check-note = Note
instrument-say-what-is-wrong = Say what is wrong: the finding opens with it

instrument-retirement-title = Take { $code } out of use
instrument-retirement-lead = From that day on nothing can rest on it. Its certificates and checks are kept for the papers that name it.
instrument-return-title = Take { $code } into use again
instrument-retired_on = From
instrument-saved-meanwhile = Somebody saved this instrument since you opened it. What it says now stands beside each field that differs; keep again to write over it

instrument-in-doubt = Measured with it while in doubt
instrument-in-doubt-lead = Look at each: it still holds, or the test is made again.
instrument-resting-job = Job
instrument-resting-what = Measurement
instrument-resting-when = Measured

act-back = Back
