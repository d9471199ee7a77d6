# Whether the vehicle can be converted.

suitability-group-compression = Compression
suitability-note-compression = Engine warm, throttle open, all plugs out. A unit may stand behind each number.
suitability-compression-of = Engine cylinder { $n }
suitability-compression = Compression
suitability-compression_unit = Read in
suitability-compression_spread = Spread, lowest against highest
suitability-spread-said = Compression: the lowest is { $spread } % below the highest.
suitability-gauge_id = Compression gauge
suitability-reader_id = Diagnostic reader

suitability-group-warm = Warm, on petrol
suitability-coolant_c = Coolant reached
    .hint = A thermostat that never warms up leaves gas cold.
suitability-trim_idle_percent = Fuel trim at idle
    .hint = Short and long together.
suitability-trim_raised_percent = Fuel trim at 2 500 /min
    .hint = Short and long together.
suitability-idle_co_percent = CO at idle
    .hint = Baseline on petrol.
suitability-fault_codes = Fault codes read
    .hint = Empty when there are none.
suitability-no-codes = None

suitability-group-seen = Examined
suitability-is_ignition_sound = Ignition parts are sound
suitability-is_valve_clearance_sound = Valve clearance is in range, or adjusts itself
suitability-has_valve_seat_risk = The valve seats of this engine wear on gas

suitability-group-reasons = Findings and conditions
suitability-note-reasons = Each with what it rests on: a measurement, the maker, a document.
suitability-finding = Finding or condition
suitability-source = Rests on
suitability-reasons = Findings and conditions
suitability-reason-needed = Say why, and what it rests on.

suitability-group-result = Result
suitability-verdict = Result
suitability-accepted_by = Findings accepted by
    .hint = Who, of the customer's side, accepts the faults found before work.
suitability-note-direct = Direct injection: gas injectors leave the petrol injectors without cooling. Suitable at best with conditions, and a signatory decides.
suitability-direct-conditions-only = Direct injection is suitable with conditions at best. Name the conditions.
suitability-direct-for-signatory = Direct injection: only a signatory records the conditions. Record what you measured as suitable; it is held until a signatory decides.
suitability-held = Direct injection: held until a signatory records the conditions.
