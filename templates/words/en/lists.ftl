# The members of every closed list, under `list-code`.

booking-state-expected = Expected
booking-state-arrived = Arrived
booking-state-did-not-come = Did not come
booking-state-cancelled = Cancelled

paper-size-a4 = A4
paper-size-letter = Letter

reminder-basis-consent = Consent
reminder-basis-contract = Contract
reminder-basis-none = No reminders

due-by-date = By date
due-by-distance = By distance

closed-how-job = By a job here
closed-how-elsewhere = Done elsewhere, not by us
closed-how-scrapped = Scrapped
closed-how-exported = Exported
closed-how-stolen = Stolen
closed-how-gas-removed = Gas removed
closed-how-replaced = Another duty took its place

check-answer-pass = Pass
check-answer-fail = Fail
check-answer-not-applicable = Does not apply

received-how-drawn = Signed here
received-how-paper = Signed on paper

suitability-verdict-suitable = Suitable
suitability-verdict-with-conditions = Suitable with conditions
suitability-verdict-not-suitable = Not suitable

pressure-kind-gauge = Gauge
pressure-kind-absolute = Absolute

fill-stop-how-tested = Tested
fill-stop-how-first-fill = At the first fill
fill-stop-how-later = Later, as a duty

fuel-lpg = LPG
fuel-cng = CNG

job-state-open = Open
job-state-held = On hold
job-state-handed-over = Handed over
job-state-released = Released without certificate
job-state-cancelled = Cancelled

waiver-kind-waived = Waived
waiver-kind-not-applicable = Does not apply

message-state-waiting = Waits to be sent
message-state-sending = Sending
message-state-sent = Sent
message-state-unknown = Not known whether it went out
message-state-failed = Failed
message-state-held = Waits for the manager
message-state-letter = As a letter

message-kind-reminder = Reminder
message-kind-test = Test

date-precision-day = To the day
date-precision-month = To the month
date-precision-year = To the year

vehicle-category-M1 = M1
vehicle-category-M2 = M2
vehicle-category-M3 = M3
vehicle-category-N1 = N1
vehicle-category-N2 = N2
vehicle-category-N3 = N3
vehicle-category-other = Other

aspiration-natural = Naturally aspirated
aspiration-boosted = Boosted

petrol-injection-port = Port
petrol-injection-direct = Direct
petrol-injection-single-point = Single point
petrol-injection-carburettor = Carburettor

odometer-unit-km = km
odometer-unit-mi = miles

vehicle-role-owner = Owner
vehicle-role-keeper = Keeper
vehicle-role-payer = Payer
vehicle-role-contact = Contact

odometer-explained-plain = Nothing to explain
odometer-explained-typing-error-before = The earlier reading was a typing error
odometer-explained-replaced = The odometer was replaced
odometer-explained-was-miles = It was read in miles
odometer-explained-as-read = It reads so

deadline-issue = Before issue
deadline-hand-over = Before hand-over
deadline-after = After hand-over, as a duty

waive-never = Nobody may let it pass
waive-signatory = A signatory may let it pass

decision-rule-simple = The reading alone against the limit
decision-rule-guarded = The limit drawn in by the uncertainty

quantity-compression-spread-percent = Compression spread between engine cylinders, %
quantity-coolant-c = Coolant temperature, °C
quantity-vaporiser-c = Vaporiser temperature, °C
quantity-trim-difference-percent = Trims, gas less petrol, %
quantity-leak-cm3-h = Loss of a section, cm³/h
quantity-shut-off-s = Time until the gas is shut off, s
quantity-idle-co-percent = CO at idle, % vol
quantity-raised-co-percent = CO at raised idle, % vol
quantity-raised-lambda = Lambda at raised idle
quantity-raised-rpm = Engine speed of raised idle, /min
quantity-fill-percent = Filling, % of water capacity
quantity-container-age-months = Age of the container at fitting, months
quantity-raised-hc-ppm = HC at raised idle, ppm
quantity-housing-vent-mm2 = Free opening of the housing’s vent, mm²
quantity-housing-tight-gauge-kpa = Pressure the housing holds, kPa
quantity-under-vehicle-mm = Below the underside, beside a lower part of the vehicle, mm
quantity-heat-distance-mm = Distance from the exhaust without a shield, mm
quantity-ground-clearance-mm = Ground clearance, mm
quantity-fixing-lengthwise-g = Fixing of the full vessel, lengthwise, g
quantity-fixing-across-g = Fixing of the full vessel, across, g
quantity-relief-valve-gauge-kpa = Relief valve begins to open, kPa
quantity-relief-device-c = Heat-triggered relief device opens, °C
quantity-after-drive-km = Driving on each fuel, km
quantity-road-visits = Visits of an operating point on each fuel
quantity-road-cells = Operating points judged on the road
quantity-road-deviates-percent = Deviation on the road, surely beyond, %
quantity-road-good-percent = Deviation on the road, surely within, %

anchor-fitted = fitting or hand-over
anchor-made = manufacture of the part
anchor-registered = first registration of the vehicle
anchor-in-service = entry into service with gas; of a retrofit, its fitting
anchor-last-inspection = the last inspection; the fitting counts as the first
anchor-last-check = the last check; the maker’s own counts as the first
anchor-label-end = the last month on the label
anchor-main-inspection = the main inspection
anchor-defect-found = the test that found the defect
anchor-exam = month of the examination
anchor-event = the day it happens

marked-r110 = Approved under UN R110
marked-national = Approved nationally

other-fuel-lng = LNG
other-fuel-hydrogen = Hydrogen

idle-other-fuel = no job here can have this gas
idle-no-label-date = the last month on the label is not kept with the part
idle-no-main-inspection = the day of the main inspection is not kept
idle-no-exam = examinations of persons are not kept
idle-no-origin = whether the vehicle’s maker fitted the system is not kept
idle-national-dates = which vehicles it is for follows national dates; the stricter value counts for all
idle-component = it limits one component on a test bench, not a vehicle; a shop may adopt it as its own limit
idle-information = good to know, measured on no job
idle-no-brackets = brackets are not reckoned

count-day = To the day
count-month-end = To the end of the month

proof-state-stops = Stops
proof-state-undecided = Undecided
proof-state-missing = Missing
proof-state-met = Met
proof-state-waived = Waived
proof-state-not-applicable = Not applicable
