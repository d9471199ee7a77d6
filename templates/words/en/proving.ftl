# Proving: leak tests, exhaust, function checks.

leak-joints-method = Method
leak-joints-pressure_gauge_kpa = Pressure while searching, gauge
    .hint = Above ambient, as the gauge shows it.
leak-joints-with = With what
leak-joints-foam_batch = Batch of the foam
    .hint = With foam.
leak-joints-foam_expires_on = Last day of the foam
    .hint = With foam; it stands on the can.
leak-joints-detector_id = Detector
    .hint = With a detector. Bump test before use.
leak-joints-joints = Joints
leak-joints-note = Common practice for this section: change the names, add lines, clear the name of a joint that is not there. Foam: a minute in good light, each joint all round. Detector: below a joint for LPG, above it for CNG, moved slowly.
leak-joints-name = Joint
leak-joints-verdict = What it showed
leak-joints-said = { $name }: { $verdict }
leak-joints-none = Name at least one joint
leak-joints-foam-needs-date = Foam proves nothing without its last day
leak-joints-which-detector = Choose the detector that was used

# Joints that a section commonly has, one a line (common practice).
joints-lpg-liquid =
    Multivalve, liquid outlet
    Filling hose at the multivalve
    Filling unit
    Pipe under the floor, rear joint
    Pipe under the floor, front joint
    Shut-off valve with filter, inlet
    Shut-off valve with filter, outlet
    Vaporiser, liquid inlet
joints-lpg-vapour =
    Vaporiser, gas outlet
    Vapour filter, inlet
    Vapour filter, outlet
    Injector rail, inlet
    Pressure sensor hose
    Injector nozzles, one by one
    Relief valve of the vaporiser
joints-cng-high =
    Cylinder valve, outlet
    Filling unit
    Non-return valve of the filling line
    Pipe, rear joint
    Pipe, front joint
    Manual shut-off valve
    Pressure gauge or sensor
    Regulator, high-pressure inlet
joints-cng-low =
    Regulator, outlet
    Relief valve of the regulator
    Gas filter, inlet
    Gas filter, outlet
    Injector rail, inlet
    Pressure sensor hose
    Injector nozzles, one by one

leak-guide-begin = One joint after the other
leak-guide-with = Before the first joint
leak-guide-start = To the first joint
leak-guide-at = Joint { $n } of { $all }
leak-guide-foam = Foam all round, a minute in good light. A place not wetted proves nothing.
leak-guide-detector-lpg = Detector below the joint, moved slowly: LPG sinks.
leak-guide-detector-cng = Detector above the joint, moved slowly: CNG rises.
leak-guide-dry-foam = Dry, no bubble
leak-guide-dry-detector = Below the alarm
leak-guide-leaks-foam = Bubbles
leak-guide-leaks-detector = Alarm
leak-guide-skip = Not now
leak-guide-back = Back
leak-guide-so-far = So far
leak-guide-leaking = A joint leaks. Vent the section, mend it, begin again. Never tighten under pressure.

exhaust-analyser_id = Gas analyser
exhaust-analyser_set_to = The analyser is set to
    .hint = Left on petrol it reads lean gas leaner than it is.
exhaust-coolant_c = Coolant
exhaust-idle = Idle
exhaust-raised = Raised idle
exhaust-idle_rpm = Engine speed
exhaust-idle_co_percent = CO
exhaust-idle_co2_percent = CO₂
exhaust-idle_o2_percent = O₂
exhaust-idle_hc_ppm = HC, as hexane
exhaust-idle_analyser_lambda = Lambda on the analyser
exhaust-idle_read = Idle
exhaust-raised_rpm = Engine speed
exhaust-raised_co_percent = CO
exhaust-raised_co2_percent = CO₂
exhaust-raised_o2_percent = O₂
exhaust-raised_hc_ppm = HC, as hexane
exhaust-raised_analyser_lambda = Lambda on the analyser
exhaust-raised_read = Raised idle
exhaust-lambda_note = Why our lambda and the analyser’s differ
    .hint = Asked only where they are more than 0.01 apart: fuel setting, air at the probe, a drifting sensor.
analyser-set-to-petrol = petrol
analyser-set-to-lpg = LPG
analyser-set-to-cng = CNG

exhaust-least-rpm = At least { $least }, without load.
exhaust-limit-idle = Limits here: CO at idle { $most } at most
exhaust-limit-raised = CO at raised idle { $most } at most
exhaust-limit-lambda = lambda { $span }
exhaust-limit-none = No line in force limits the exhaust of this vehicle.
exhaust-lambda-differs = From these gases lambda is { $ours }; the analyser shows { $its }. Check the reading, or say below why they differ
exhaust-lambda-why = Say why they differ; both are printed
exhaust-raised-not-raised = Raised idle is not above idle
exhaust-point = { $rpm } · CO { $co } · CO₂ { $co2 } · O₂ { $o2 } · HC { $hc }{ $own }
exhaust-passes = Within its limits
exhaust-fails = Outside its limits
exhaust-cannot-tell = Cannot tell
exhaust-unconfirmed = To be confirmed with your authority
exhaust-no-limits = Nothing limits it here
exhaust-value-idle-co = CO at idle
exhaust-value-raised-co = CO at raised idle
exhaust-value-hc = HC at raised idle
exhaust-value-lambda = Lambda at raised idle
exhaust-probe = **Too little exhaust in this gas.** The probe is not in the exhaust, or the system leaks: read again.
exhaust-too-slow = Raised idle was { $got }, and counts from { $least }: **read again**.
# { $line } is the rule line that decided, { $set } the set it stands in.
limit-line = { $source }; { $line } of { $set }
limit-line-unread = { $source }; { $line } of { $set }, to be confirmed with your authority
exhaust-at-most = at most { $most }
exhaust-at-least = at least { $least }
exhaust-by-maker = the maker’s own value
exhaust-rule-simple = simple acceptance, the reading as it is
exhaust-rule-guarded = guard band w = U, the risk of a wrong pass below 2.5 %
exhaust-says-pass = passes
exhaust-says-fail = fails
exhaust-says-cannot-tell = cannot tell
exhaust-says-unconfirmed = within, to be confirmed with your authority
exhaust-value = { $name } { $read }, { $limit } ({ $source }; { $rule }): **{ $said }**.
exhaust-unlimited = { $name } { $read }; nothing limits it.
exhaust-beside = Lambda from these gases { $ours }; the analyser shows { $its }.
exhaust-beside-differs = Lambda from these gases **{ $ours }**; the analyser shows **{ $its }**: more than 0.01 apart.
exhaust-set-wrong = The analyser stood on { $set } while the engine ran on { $burns }: so set it shows { $shown } for this gas, where lambda is { $ours }.

function-checks-changeover = Changeover
function-checks-changeover_works = Changes over to gas and back
function-checks-returns_when_empty = Returns to petrol when empty
    .hint = Shut the container’s hand valve with the engine on gas.
function-checks-starts_on_gas = Starts on gas without petrol
starts-on-gas-yes = Yes
starts-on-gas-no = No
starts-on-gas-not-fitted = Not fitted
function-checks-shut-off = Shut-off
function-checks-shut_off_ignition_s = Gas shut after ignition off
function-checks-stays_open_ignition = It stayed open with the ignition off
function-checks-shut_off_stalled_s = Gas shut after the engine stalled
function-checks-stays_open_stalled = It stayed open with the engine stalled
function-checks-either = Either a time, or it stayed open
function-checks-stayed-open = stayed open
function-checks-limit = { $most } at most ({ $source }).
function-checks-fill-stop = Fill stop
function-checks-fill_stop_how = How it was shown
function-checks-fill_stop_l = Litres at the stop
    .hint = As the pump shows, into an empty container.
function-checks-fill_ticket = Ticket of the first fill
function-checks-later-has-litres = Litres belong to a stop that was seen: choose the test or the first fill, or clear them
function-checks-ticket = The first fill counts with its ticket
function-checks-seen = Seen
function-checks-level_shows = Level shows right
function-checks-vent_is_open = Housing vent open to the outside
function-checks-excess_flow_present = Excess-flow valve present and approved
function-checks-label_in_place = Plate or label in place

leak-decay-lead-lpg-liquid = Pressure decay from the container to the vaporiser, emptied of liquid.
leak-decay-lead-lpg-vapour = Pressure decay from the vaporiser to the injectors.
leak-decay-lead-cng-high = Pressure decay from the cylinder to the regulator; large volumes at high pressure take days.
leak-decay-lead-cng-low = Pressure decay from the regulator to the injectors.
leak-decay-limit = The limit is { $most } ({ $source }).
leak-decay-shop-limit = The shop’s limit is { $most }; UN texts give none for a vehicle.
leak-decay-no-limit = No line in force limits the loss of this section: prove it by foam or a detector.
leak-decay-shop-line = the shop’s limit

leak-decay-with = With what
leak-decay-gauge_id = Gauge
    .hint = Its record gives step and uncertainty.
leak-decay-thermometer_id = Thermometer
    .hint = On the metal or in the gas; no sun, no engine heat.
leak-decay-instruments = Gauge and thermometer
leak-decay-test_gas = Test gas
    .hint = Never oxygen. No air in a line that held fuel.
leak-decay-pressure_kind = The gauge shows
leak-decay-ambient_kpa = Ambient pressure
    .hint = Standard atmosphere, unless you read it.
leak-decay-lowest_rating_gauge_kpa = Rating of the lowest-rated part
    .hint = Gauge; it stands on the part. Isolate what may not take the pressure.
leak-decay-section = The section
leak-decay-volume_l = Volume of the section
    .hint = Lines, filter, rail and hoses together.
leak-decay-volume_uncertainty_percent = How well it is known
    .hint = Standard uncertainty. By expansion from a known volume 2 %, reckoned from lengths 10 % (common practice).
leak-decay-volume_how = How it is known
    .hint = Measured by expansion, reckoned from lengths, estimated.
leak-decay-start = Start
leak-decay-settling = Filling heats the gas. Read the temperature, wait three minutes, read it again: the test starts when both agree within what the thermometer can be wrong.
leak-decay-settled_c = Temperature three minutes ago
leak-decay-start_c = Gas temperature
leak-decay-start_kpa = Pressure
leak-decay-end_c = Gas temperature at the end
leak-decay-end_kpa = Pressure at the end
leak-decay-minutes = Time between
leak-decay-pressure_resolution_kpa = Step of the gauge
leak-decay-pressure_standard_uncertainty_kpa = Standard uncertainty of a pressure reading
leak-decay-temperature_standard_uncertainty_k = Standard uncertainty of a temperature reading
leak-decay-unsettled_reason = Why it starts before it has settled
    .hint = Only where two temperatures three minutes apart do not agree.
leak-decay-over_rating = The pressure is in the section already; start all the same, as a test that proves nothing
leak-decay-begin = Start the test
leak-decay-gauge-is = steps of { $step }, u { $u }
leak-decay-thermometer-is = u { $u }
leak-decay-no-figures = no figures in its record
leak-decay-enter-figures = Its record gives no step, uncertainty or unit that a pressure or temperature has: enter them there, or choose another
leak-decay-oxygen = Never oxygen: with oil or grease it burns. Take nitrogen
leak-decay-air = Air in a line that held fuel can make a mixture that burns. Take nitrogen
leak-decay-liquid = Liquid LPG cannot be decay-tested: its pressure follows the temperature. Search the joints with foam or a detector
leak-decay-not-settled = Two temperatures three minutes apart do not agree yet: wait, or say why it starts all the same
leak-decay-over-rating = { $got } is over the { $rating } that the lowest-rated part may hold: vent it. A test like this proves nothing
leak-decay-same-moment = A reading of this very moment is there already
leak-decay-second-reading = Read gauge and thermometer once more: a test has two ends

leak-decay-start-at = Start, { $time }
leak-decay-now-at = Now, { $time }
leak-decay-now_kpa = Pressure
leak-decay-now_c = Gas temperature
leak-decay-replaces_reason = Why the earlier test is corrected
    .hint = Asked when it is recorded; the earlier test stays on record with this reason.
leak-decay-passed = { $since } since the start; a tight section shows it after { $planned }.
leak-decay-decides-in = Can decide in { $left }.
leak-decay-decides-now = Can decide now: read gauge and thermometer.
leak-decay-settle = First temperature is read: count three minutes
leak-decay-settling-since = First temperature read at { $first }. Read it again from { $second } on.
leak-decay-settling-yet = Three minutes lie between the two temperatures: { $left } more
leak-decay-days = With these instruments a tight section of this volume and pressure would show it after { $days } days only. Prove it by foam or a detector
leak-decay-passed-only = { $since } since the start.
leak-decay-keep = Keep testing
leak-decay-record = Record as it is
leak-decay-foam = Prove by foam instead

leak-decay-passes = Passes
leak-decay-fails = Fails
leak-decay-cannot-tell = Cannot tell yet
leak-decay-proves-nothing = Proves nothing
leak-decay-loss = Loss { $rate } ± { $u }, limit { $limit } ({ $source }; { $rule }).
leak-decay-find-it = Find the leak with foam, mend it, test again.
leak-decay-after = At this rate the test can tell after **{ $needed }**; { $more } more to go.
leak-decay-any-moment = The rate stands at the edge of what can be told: read once more.
leak-decay-no-time = No time helps at this rate.
leak-decay-tight-after = A tight section would show it after { $needed }.
leak-decay-gauge = A gauge good to { $kpa } (standard uncertainty) would tell in the time taken.
leak-decay-bottleneck-temperature = Temperature is the bottleneck ({ $share } of the variance): a thermometer good to { $good } would show a tight section in { $minutes }.
leak-decay-bottleneck-settle = Temperature is the bottleneck ({ $share } of the variance): let the section settle, and take more time.
leak-decay-bottleneck-pressure = The gauge is the bottleneck ({ $share } of the variance).
leak-decay-bottleneck-volume = The volume is the bottleneck ({ $share } of the variance): measure it by expansion from a known one.
leak-decay-inconsistent = The pressure rose by more than it can be wrong: the temperature moved unseen, or something feeds the section. Let it settle and start again.
leak-decay-warn-ideal = Above 1 500 kPa the ideal gas law is not good enough for this: prove the section by foam or a detector.
leak-decay-warn-temperature = The temperature alone moved more than the limit is worth: let the section settle and repeat.
leak-decay-outside = { $what } is out of the range of this sum: { $got }

leak-chart-title = Pressure over time, at the temperature of the start
leak-chart-description = { $loss } Dotted: a tight section. Dashed: a leak at the limit. The band is what the readings can be wrong by.
leak-chart-tight = tight
leak-chart-limit = limit { $limit }
leak-table = Readings
leak-table-time = Time
leak-table-minutes = Minutes
leak-table-pressure = Pressure as read
    .unit = kPa
leak-table-temperature = Temperature
    .unit = °C
leak-table-corrected = Absolute, at the first temperature
    .unit = kPa

deed-leak-test-started = Started a decay test
deed-leak-test-read = Read a decay test
deed-leak-test-given-up = Gave a decay test up
