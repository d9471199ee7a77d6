# The sizing sheet, and the picture of the duty.

issue-sizing-sheet = Sizing sheet
register-sizing-sheet = Sizing sheet
sizing-sheet-number-printed = { $number } · printed { $date }
sizing-sheet-lead = Every sum that chose a part of this conversion, with its inputs and where they come from, its formula, the numbers put in, the result and its standard uncertainty (k = 1), and its source. Each step can be redone with a pocket calculator from what is printed here.
sizing-sheet-vehicle = Vehicle, and what the sums say
sizing-sheet-engine = Engine
sizing-sheet-sum = Sum
sizing-sheet-verdict = Verdict
sizing-sheet-recorded = Recorded
sizing-sheet-corrected = Corrected: { $reason }
sizing-sheet-measured-with = Measured with { $codes }
sizing-sheet-for = for { $state }: { $result }
sizing-sheet-not-signed = This sheet is not signed. It proves nothing by itself; the certificate says what was proved.

duty-chart-title = Duty of { $size } over engine speed
duty-chart-description = The nozzle of { $size } is open { $rated } of the time at { $at }; { $most } is allowed and reached at { $limit }.
duty-chart-speed = Speed, /min
duty-chart-duty = Open, % of the time
duty-chart-most = at most { $most }
duty-chart-rated = rated power: { $rated }
duty-chart-limit = { $limit }

# The stage page folds what is for redoing a sum.
sizing-redo = Steps and inputs, to redo the sum
