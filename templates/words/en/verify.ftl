# The page on which anybody asks how a paper stands.

register-number = Number
register-kind = Kind
register-result = Result
register-issued = Issued
register-stands = Stands
register-key = Key

# -- how it stands --
standing-valid = Valid
standing-valid-says = { $number } stands as it was issued.
standing-superseded = Superseded
standing-superseded-says = A later paper stands in the place of { $number }.
standing-withdrawn = Withdrawn
standing-withdrawn-says = The shop took { $number } back. It certifies nothing.
standing-under-review = Under review
standing-under-review-says = The shop looks again at what { $number } rests on.
standing-duty-passed = Valid, a duty has passed
standing-duty-passed-says = { $number } stands as it was issued, but a check it names is overdue.

# -- asking --
verify-title = Check a paper
verify-lead = Type the code printed at the foot of the paper.
verify-code = Code
verify-ask = Check
verify-unknown = No paper has this code here. Compare it with the print; 0 and O, 1 and I count as one.
verify-compare = Compare number, date and VIN or chassis number with the paper in your hand. If they differ, the paper is not this one.
verify-demonstration = DEMONSTRATION: this paper proves nothing.

# -- what an inspection came to --
paper-outcome-pass = Pass
paper-outcome-pass-with-minor = Pass, with minor deficiencies
paper-outcome-fail = Fail
