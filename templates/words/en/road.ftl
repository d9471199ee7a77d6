# Road comparison: logs of a drive on both fuels, and what their columns are.

road-caution = Only on a system that was tested tight. One drives, another minds the log; traffic law and your licence come first.
road-act = Logs and comparison
road-sessions = Drives so far
road-column-driven = Driven
road-column-phase = When
road-column-logs = Logs
road-column-standing = How it stands
road-phase = When it was driven
road-standing-kept = Say what its columns are
road-standing-accepted = { $said }, accepted
road-standing-earlier = { $said }, accepted before another

road-group-drive = The drive
road-driven_at = Driven on
road-group-two = Two logs, one on each fuel
road-note-two = The fuel is as you state it, unless a column of the logs says it too. Papers print “fuel stated, not logged”.
road-group-one = Or one log of both fuels
road-note-one = A column of it must say which fuel burns.
road-log_petrol = Log driven on petrol
    .hint = Delimited text or a workbook, up to 200 MB.
road-log_gas = Log driven on gas
road-log_both = Log with both fuels
road-hand-in = Hand in
road-sending = Sending, { $percent } %
road-reading = All sent. Looking at it.
road-send-failed = The connection broke. Nothing was kept; send it again.
road-same-file = Both logs are the same file. A comparison needs one on each fuel.
road-other-missing = One log shows one fuel. The other one is missing.
road-one-or-two = Either two logs, one on each fuel, or one log of both; not all of them.
road-log-no-table = { $file } holds no table with a head and numbers under it{ $more }.
road-log-no-column = { $file } has no column “{ $more }”.
road-log-workbook = { $file } is a workbook that cannot be read: { $more }.
road-log-disk = { $file } cannot be read: { $more }.

road-columns-title = What the columns are
road-columns-lead = Say it once: it is remembered for logs laid out like this one. The first rows stand above; check that each number is what you think it is.
road-meanwhile = { $name } said what the columns are on { $when }. Compare again to put yours in its place.
road-log-stated-petrol = { $file }, on petrol as stated
road-log-stated-gas = { $file }, on gas as stated
road-log-both = { $file }, both fuels
road-layout = { $columns } columns; { $before ->
        [0] the head is its first line
        [one] one line before the head
       *[other] { $before } lines before the head
    }.
road-preview = First rows
road-group-columns = Columns
road-column-quantity = What
road-column-column = Column
road-column-unit = Unit, or what it says
road-unit-of = Unit of { $what }
road-needed = Needed.
road-time_s = Time
road-rpm = Engine speed
road-manifold_kpa = Manifold pressure
road-petrol_ms = Petrol injection time
road-gas_ms = Gas injection time
road-fuel = Fuel
road-coolant_c = Coolant
road-closed_loop = Closed loop
road-short_trim = Short fuel trim
road-long_trim = Long fuel trim
road-gas_kpa = Gas pressure over manifold
road-why-manifold_kpa = Absolute. Without it, load is told by injection time and trims.
road-why-gas_ms = Tells whether the nozzle has time enough.
road-why-fuel = Sets apart what burned.
road-why-coolant_c = Cold rows are set aside.
road-why-closed_loop = Rows in open loop prove nothing.
road-why-short_trim = Trims per regime.
road-why-long_trim = Trims per regime.
road-why-gas_kpa = Shown along the time.
road-gas_words = It says this on gas
    .hint = Several with commas between. Empty: plain words, or 1.
road-closed_words = It says this in closed loop
    .hint = Several with commas between. Empty: plain words, or 1.
road-column-twice = “{ $column }” stands for something else already.
road-compare = Compare
road-refused-one-fuel = The fuel column says { $fuel } for every row. A comparison needs both fuels.
road-refused-nothing = No row could be used. { $why }
road-refused-range = { $what }: { $share } of the rows hold what no engine shows. Another unit, or another column.
road-refused-rank = Injection time does not follow engine speed and load as it does in any engine. Another column?

road-session-before = Road comparison, before the corrections
road-session-after = Road comparison, after the corrections
road-came = Driven { $driven }; handed in by { $name }, { $when }.
road-lean-title = Lean at high load
road-nozzle-title = The nozzle must change
road-to-sizing = Back to Sizing

road-corrections-title = What to correct
road-corrections-lead = At most 10 % a round and 3 % from one point to the next. Then drive again.
road-corrections = Corrections by region
road-column-region = Region
road-corrections-take = Take them into the calibration
road-side-title = Before and after
road-side-by-side = Deviation at the points of both drives
road-column-before = Before, %
road-column-after = After, %
road-log-sum = { $file }, SHA-256 { $sum }…
road-accept = Accept as evidence
road-accept-instead = Accept in the place of the one accepted before
road-accept-meanwhile = Somebody accepted or read a drive meanwhile. What stands now is shown; say why this one takes its place.
road-is-accepted = Accepted as evidence.
road-was-accepted = Was accepted as evidence; another drive took its place.
road-columns-again = Match its columns again
road-all = All drives
road-judged = Operating points judged
road-log = Log

deed-road-logs-kept = Handed in logs of a drive
deed-road-compared = Compared both fuels on the road
