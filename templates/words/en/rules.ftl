# What the rules ask, and why a proof stands as it does. Numbers and dates come ready made.

# ---- Proofs ----
proof-vehicle = Vehicle identified
proof-keeper = Keeper known
proof-odometer = Odometer at arrival
proof-photo-odometer = Photo of the odometer
proof-photo-vin-plate = Photo of the VIN plate
proof-suitable = Suitable for conversion, on petrol
proof-nozzle = Nozzle sized
proof-container-sized = Container sized
proof-part-container = Container fitted
proof-part-multivalve = Multivalve fitted
proof-part-vaporiser = Vaporiser fitted
proof-part-shut-off = Shut-off valve fitted
proof-part-injectors = Gas injectors fitted
proof-part-filling-unit = Filling unit fitted
proof-part-control-unit = Control unit fitted
proof-part-cylinder = Cylinder fitted
proof-part-regulator = Pressure regulator fitted
proof-traceable = Every part can be traced
proof-marks = Approval marks fit the fuel
proof-not-recalled = No recalled part
proof-storage-in-date = Container or cylinder in date
proof-engine-cylinders = Engine cylinders answer one by one
proof-fixing = Container or cylinder fixed
proof-housing = Gas-tight housing
proof-clearances = Clearances
proof-marks-readable = Marks of the parts readable
proof-refitted = What was taken off is as it was
proof-requalified = Cylinder requalified before use
proof-removed = Gas system removed
proof-lines = Lines, hoses and joints
proof-wiring = Wiring
proof-level-sensing = Level sensing
proof-photo-container-plate = Photo of the plate on the container or cylinder
proof-calibrated-warm = Calibrated warm
proof-calibrated-clean = Calibrated in closed loop, no fault codes
proof-nozzle-adequate = Nozzle adequate
proof-trims = Trims alike on both fuels
proof-road-covered = Driven enough on both fuels
proof-road-alike = Both fuels alike on the road
proof-after-drive = No fault codes after driving on both fuels
proof-leak-lpg-liquid = Leak test, LPG liquid side
proof-leak-lpg-vapour = Leak test, LPG vapour side
proof-leak-cng-high = Leak test, CNG high pressure
proof-leak-cng-low = Leak test, CNG low pressure
proof-leak-petrol = Petrol side tight
proof-exhaust-petrol = Exhaust on petrol
proof-exhaust-gas = Exhaust on gas
proof-exhaust-petrol-touched = Exhaust on petrol, where engine or calibration was touched
proof-exhaust-gas-touched = Exhaust on gas, where engine or calibration was touched
proof-changeover = Changeover, and back to petrol when empty
proof-shut-off = Shut-off with ignition off and engine stalled
proof-fill-stop = Filling stops at 80 %
proof-level = Level shows right
proof-vent = Housing vent open, excess-flow valve present
proof-label = Label in place
proof-label-kept = Label in place, or replaced where it was lost
proof-deficiencies = Deficiencies listed
proof-vessel-checked = Container or cylinder looked at
proof-findings = Findings decided
proof-instructed = Driver instructed, manuals given
proof-received = Taken over with a signature

# ---- Reasons ----
why-not-recorded = Not recorded yet
why-waived = { $person } lets it pass: { $reason }
why-not-applicable = Does not apply, says { $person }: { $reason }

why-instrument-unknown = The instrument named is not in the books. Record the test again with one that is
why-instrument-out-since = { $code } was out of calibration that day; its certificate ended { $since }. Use another, or enter its certificate
why-instrument-never-calibrated = { $code } has no calibration certificate. Use another, or enter its certificate
why-instrument-not-checked = { $code } was not checked that day before the measurement. Check it and measure again
why-instrument-failed-check = { $code } failed its check before the measurement. Use another and measure again
why-instrument-retired = { $code } has been out of use since { $since }. Use another and measure again

why-no-deficiencies = Looked, nothing found
why-deficiencies-listed = { $count } listed
why-plate-unreadable = Its plate cannot be read: nobody can say how old it is
why-vessel-still-listed = { $serial } still stands in the books as on the vehicle. Take it off among the parts
why-nothing-taken-off = No part is recorded as taken off in this job. Take each off among the parts; what others fitted is entered as found first
why-vessel-not-acceptable = { $serial }: { $words }
why-vessel-not-looked-at = { $serial } was not looked at
why-vessels-looked-at = Looked at, nothing against use

why-field-missing = { $field } is not entered
why-vin-malformed = The VIN has a wrong length or a letter that no VIN has. Read it from the vehicle again
why-vehicle-known = { $identity }
why-keeper-unreachable = The keeper has no phone, mail or address. Enter one: recalls and inspections go there
why-keeper-known = { $name }
why-odometer = { $km } km
why-photo = { $name }
why-not-suitable = Not suitable: { $reasons }
why-direct-injection = The engine injects petrol directly. A signatory decides, with conditions: its petrol injectors go without cooling on gas
why-engine-cold = Coolant was { $got }; at least { $least } is wanted. Warm up and measure again
why-compression-spread = Compression differs by { $got } % between engine cylinders; { $most } % is the limit. Find out why, or accept with conditions
why-conditions-not-accepted = The conditions are not accepted by the customer yet
why-suitable = Compression within { $spread } % between engine cylinders
why-suitable-with-conditions = Suitable with conditions that the customer accepted

why-nozzle-fits = { $chosen } chosen; { $needed } needed
why-nozzle-fits-not = { $verdict }. Choose another set and reckon again
why-axle-overloaded = The full container is more than the axle can still carry. Choose a smaller one
why-container-sized = { $liquid } of liquid at the fill limit; full of liquid at { $full }
why-container-sized-never-full = { $liquid } of liquid at the fill limit; not full of liquid below the critical region
why-part = { $maker } { $type }, { $serial }
why-no-new-parts = No new part was fitted
why-part-without-serial = { $part }: neither serial nor batch is entered
why-part-doubled = The serial { $serial } is entered twice. Correct it, or a signatory states that two parts share it
why-parts-traceable = { $count } parts, each with serial or batch
why-mark-missing = { $part }: no approval mark is entered
why-mark-other-fuel = { $part }: the mark { $mark } is for another fuel. The part must be changed
why-mark-unreadable = { $part }: { $mark } is no approval mark that can be read. Look at the part again
why-marks-fit = { $count } marks fit the fuel
why-made-missing = The date of manufacture is not entered
why-nothing-recalled = No part on the vehicle is under an open recall
why-part-recalled = { $part } is recalled: { $by }. It must be changed, or show that it was put right
why-part-perhaps-recalled = { $part } may be recalled: { $by }. Write down its maker, type, batch and serial, and look again
why-storage-expired = { $serial } was in date until { $on } ({ $line } of { $set }). It must be changed, or tested where the authority allows it
why-storage-in-date = { $serial }, made { $made }, in date until { $on } ({ $line } of { $set })
why-storage-no-limit = { $serial }, made { $made }; no rule in force limits its age
why-cylinders-incomplete = { $have } of { $wanted } engine cylinders are in the table
why-injector-doubled = Gas injector { $injector } stands at two engine cylinders
why-cylinder-silent = Engine cylinder { $cylinder } does not answer when its gas is cut. Check wiring and injector
why-cylinders-answer = All { $count } engine cylinders answer
why-check-fails = { $line }. { $note }
why-checklist-open = { $done } of { $all } lines answered
why-checklist-done = All { $all } lines pass or do not apply
why-level-sensing = { $how }
why-fill-routine-not-explained = The level is reckoned from injection time: explain to the driver how to tell it about each filling

why-vaporiser-cold = The vaporiser was at { $got }; at least { $least } is wanted. Warm up and calibrate again
why-calibrated-warm = Vaporiser or regulator outlet at { $vaporiser }
why-open-loop = The engine was not in closed loop. Calibrate again when it is
why-fault-codes = Fault codes: { $codes }. Mend and read again
why-calibrated-clean = Closed loop, no fault codes
why-nozzle-must-change = The nozzle was not enough. Go back to Sizing
why-nozzle-differs = { $fitted } is fitted, { $chosen } was chosen. Fit the chosen one, or size again
why-nozzle-adequate = The nozzle served over the whole range
why-trims-apart = Trims differ by { $worst } % between gas and petrol. Calibrate again
why-trims-alike = Trims differ by { $worst } % at most between gas and petrol
why-road-covered = { $got } operating points judged on the road
why-road-few-cells = { $got } operating points judged on the road; { $least } are wanted. Drive on both fuels
why-road-few-cells-drive = { $got } operating points judged on the road; { $least } are wanted. Next: { $visits } visits more at { $rpm_from } to { $rpm_to } /min, { $load_from } to { $load_to }, { $fuel }
why-road-load-not-driven = High load was not driven on both fuels
why-road-older-limits = Judged by looser limits than the rules ask. Match its columns again, or hand the logs in again
why-road-alike = { $cells } operating points alike on both fuels, within { $percent }
why-road-lean = { $cells } operating points differ. Farthest: { $rpm_from } to { $rpm_to } /min, { $load_from } to { $load_to }, gas is { $percent } lean. Correct and drive again
why-road-rich = { $cells } operating points differ. Farthest: { $rpm_from } to { $rpm_to } /min, { $load_from } to { $load_to }, gas is { $percent } rich. Correct and drive again
why-road-undecided = { $cells } operating points are undecided. Drive more there on both fuels
why-road-undecided-drive = { $cells } operating points are undecided. Next: { $visits } visits more at { $rpm_from } to { $rpm_to } /min, { $load_from } to { $load_to }, { $fuel }
why-road-nozzle-too-small = Driven, gas was { $percent } lean all over at high load: the nozzle is too small. Size it again
why-road-nozzle-too-large = Driven, gas was { $percent } rich at idle: the nozzle is too large. Size it again
why-drive-short = { $got } km driven on the lesser fuel; { $least } km are wanted on each
why-clean-after-drive = No fault codes. Not ready yet: { $not_ready }

why-detector-missing = No detector is named
why-foam-expiry-missing = The expiry of the foam is not entered
why-foam-expired = The foam expired { $on }. Test again with fresh foam
why-joint-leaks = { $joint } leaks. Mend it and test again
why-joints-open = { $dry } of { $all } joints dry ({ $how })
why-joints-dry = All { $all } joints dry ({ $how })
why-decay-passes = Loss { $rate } ± { $uncertainty } cm³/h; the shop’s limit is { $limit }
why-decay-fails = Loss { $rate } ± { $uncertainty } cm³/h, over the shop’s limit of { $limit }. Find the leak and test again
why-decay-needs-time = Cannot tell yet: loss { $rate } ± { $uncertainty } cm³/h, limit { $limit }. Test for { $needed } minutes in all
why-decay-no-time-helps = Cannot tell: loss { $rate } ± { $uncertainty } cm³/h, limit { $limit }. No longer test helps; use better instruments, or foam
why-decay-over-rating = { $got } is over the { $rating } that the section’s lowest-rated part bears. The test proves nothing; examine that part
why-decay-liquid = A line full of liquid cannot be tested by pressure decay. Use foam or a detector
why-decay-air = Air in a line that held fuel is dangerous and proves nothing. Use nitrogen
why-decay-no-limit = No limit is in force for this section. Prove it by foam, or adopt a shop limit
why-decay-outside = { $what } is outside what the sum holds for. Look at what was entered
why-analyser-missing = No gas analyser is named
why-raised-idle-slow = Raised idle was { $got } /min; at least { $least } /min is wanted. Measure again
why-probe-not-in-exhaust = The gases do not add up to an exhaust. Push the probe in, check for leaks before it, measure again
why-exhaust-passes = CO { $idle } % at idle, { $raised } % raised; lambda { $lambda }
why-exhaust-fails = CO { $idle } % at idle, { $raised } % raised; lambda { $lambda }: over a limit. Mend and measure again
why-exhaust-near-limit = CO { $idle } % at idle, { $raised } % raised; lambda { $lambda }: too near a limit to tell with this analyser
why-exhaust-no-limit = CO { $idle } % at idle, { $raised } % raised; lambda { $lambda }. No limit in force covers this vehicle; to be confirmed with your authority
why-exhaust-unconfirmed = CO { $idle } % at idle, { $raised } % raised; lambda { $lambda }: within { $line } of { $set }, whose source was not read. To be confirmed with your authority
why-limit-unconfirmed = Within { $line } of { $set }, whose source was not read. To be confirmed with your authority
why-does-not-work = Does not work. Mend it and check again
why-changeover-works = Changes over, and back to petrol when the gas is out
why-level-shows = Shows right
why-vent-open = Vent open, excess-flow valve present
why-label-in-place = In place
why-gas-stays-open = The gas is not shut off. Do not let the vehicle go; mend it and check again
why-shut-off = { $ignition } s with ignition off, { $stalled } s with engine stalled; { $most } s is the limit ({ $line } of { $set })
why-shut-off-slow = { $ignition } s with ignition off, { $stalled } s with engine stalled, over the limit of { $most } s ({ $line } of { $set }). Mend it and check again
why-shut-off-no-limit = { $ignition } s with ignition off, { $stalled } s with engine stalled; no limit is in force
why-fill-stop-later = At the first filling; it becomes a duty
why-fill-litres-missing = The litres at which filling stopped are not entered
why-capacity-missing = The water capacity of the container is not entered
why-fill-no-limit = No limit is in force for the filling
why-fill-stop = Stops at { $litres } l, { $percent } % of the capacity; { $most } % is the limit ({ $line } of { $set })
why-fill-stop-late = Stops at { $litres } l, { $percent } % of the capacity, over the limit of { $most } % ({ $line } of { $set }). Change or adjust the valve; do not fill before
why-findings-open = Findings that wait for a decision: { $count }
why-no-open-findings = No open finding

why-topics-open = Topics still to explain, or manuals to give: { $open }
why-instructed = All topics explained, manuals given
why-signature-missing = Name or signature is missing
why-received = Received by { $name }

# ---- Lines of the checklist ----
check-fixing-permanent = Container or cylinder fixed for good, with the straps or bolts its maker names
check-fixing-ground = Ground clearance: at least 200 mm unless shielded by the vehicle
check-fixing-contact = No metal rubs on metal; felt, rubber or plastic between strap and vessel
check-housing-vent = Housing vents to the outside, at least 450 mm² free, not into a wheel arch or at the exhaust
check-housing-tight = Housing holds 10 kPa without loss
check-clear-exhaust = At least 100 mm from the exhaust, or a heat shield between
check-clear-underside = Lines under the floor within the outline, clear of jacking points and moving parts
check-line-joints = Joints in reach for testing; none inside the cabin or the boot without a housing
check-line-clips = Lines clipped, free of strain, bends without kinks
check-line-hoses = Hoses approved for the fuel, dated, with clamps that fit
check-sensor-ports = Pressure sensor above the gas path, hose ports downward
check-wire-fuse = Own fuse near the battery, of the size the maker names
check-wire-route = Wiring away from ignition leads, heat and moving parts
check-parts-readable = Approval marks and serials of container or cylinder, valves, vaporiser or regulator readable
check-refit-fixing = Container or cylinder and parts fixed as before, straps and bolts as their maker names
check-refit-clearances = Distances to exhaust, ground and moving parts as before
check-refit-housing = Gas-tight housing closed, its vent open to the outside
check-cylinder-requalified = A cylinder that was used before was looked at and requalified by somebody entitled to it; name the report. A new one: does not apply
check-removed-parts = Gas emptied by a safe way; container or cylinder, lines, valves and injectors taken out, serials noted
check-removed-openings = Openings in body and manifold closed
check-removed-wiring = Wiring of the petrol injectors as the vehicle's maker had it
check-removed-plate = Plate, label and stickers taken off
check-petrol-joints = Petrol joints that were opened searched with the engine running: dry
check-wire-control-unit = Control unit upright or connector downward, away from heat and water

# ---- Topics of the hand-over ----
topic-fuel-choice = How to choose the fuel, and what the display shows
topic-filling = How to fill: engine off, no smoking, stops at 80 % by itself, never force it
topic-smell = What to do at a smell of gas: switch to petrol, close the valve, no spark, do not drive into a garage
topic-accident = After an accident or fire: have the gas system inspected before it is used
topic-parking = Where not to park, and that local rules decide
topic-authority-paper = Which paper or test of the authority is still to come, who sees to it, and by when
topic-service = What falls due, and when: first check, filter, container or cylinder

# ---- What a line says in a word ----
rule-note-leak-vehicle = On the vehicle nothing leaks: no bubble at any joint
rule-note-severity-6-1-3-f = A gas system not as required, or any defective part of it, is a dangerous deficiency

# ---- Office: rule sets ----
rules-title = Rule sets
rules-more = What is asked of a job, by which document; the shop’s own lines
rules-lead = What is asked in this branch, and by which document. Where several lines speak of one thing the strictest counts, and the result names it.
rules-caution = Local code and licensed practice prevail. A line whose source was not read is never the only ground for a pass: confirm it with your authority.
rules-version = Version { $version }, { $sum }
rules-all = All rule sets
rules-set = Set
rules-here = In this branch
rules-comes-from = Comes from
rules-stacked = In force for every vehicle
rules-by-country = For vehicles registered there
rules-left-out = Left out
rules-as-shipped = As the program ships it
rules-from-file = A file put in its place by { $person }, in force since { $on }
rules-replace = A file in the place of this set
rules-replace-note = The file { $place } in the data folder is read when you look at the difference, and kept as it was read. Its check sum and your name stand with it.
rules-take = What to put in force
rules-take-file = The file from the data folder
rules-take-shipped = The set as the program ships it
rules-stack-title = Rule sets of this branch
rules-stack-lead = A job is held against every set named here, and the strictest line counts. The shop’s own lines always stand on top.
rules-stack-base = Always in force: without it a job would be asked for nothing
rules-stack_by = Which sets
rules-stack-country = Those of the branch’s country
rules-stack-country-now = { $country }: { $sets }
rules-stack-chosen = Those ticked below
rules-rule_sets = Sets
    .hint = They count when “those ticked below” is chosen
rules-by_vehicle = Add the set of the country that a vehicle is registered in
    .hint = By the country of its plate; it can only make the list stricter
rules-second = A second person stands behind these lines
rules-second-line = { $id } asks less than { $base } of { $set }, by an authority’s leave
rules-second_name = Sign-in name of the second person
    .hint = Another manager, or somebody who may sign certificates
rules-second_password = Their password
rules-version-second = and { $person }
rules-own = The shop’s own lines
rules-own-since = In force since { $on }
rules-own-shipped = As the program ships them; nobody has changed them yet
rules-own-next = From { $on } on a newer version counts
rules-own-edit = Change the shop’s own lines
rules-id = Line
rules-value = What it asks
rules-for = For
rules-source = Source
rules-standing = Standing
rules-checked = Source read
rules-unchecked = To be confirmed with your authority
rules-shop-line = The shop’s own
rules-proofs = Proofs
rules-limits = Limits
rules-intervals = What falls due
rules-checks = Checklist
rules-topics = Hand-over topics
rules-notes = In words
rules-idle = Recorded, not acted upon yet: { $why }
rules-asked-by = Asked by: { $what }
rules-asked-retest = The term for coming again after a failed inspection
rules-heads = Of inspections
rules-repair-restarts = A repair inside an inspection ends it: a new one begins and quotes the old
rules-retest-months = { $n ->
    [one] A vehicle that failed comes again within a month
   *[other] A vehicle that failed comes again within { $n } months
}
rules-retest-days = { $n ->
    [one] A vehicle that failed comes again within a day
   *[other] A vehicle that failed comes again within { $n } days
}
rules-retest-only-failed = The failed items alone may be looked at
rules-retest-whole = The whole inspection is made again
rules-retest-scope-open = Which items are looked at again is not said
rules-allowed = Looser by leave of { $authority }, { $document } of { $on }
rules-at-once = { $duty }: at once
rules-days = { $n ->
    [one] { $duty }: within a day
   *[other] { $duty }: within { $n } days
}
rules-label-day = { $duty }: on its day
rules-then = Then every { $n } months
rules-then-of = Then every { $n } months for { $classes }
rules-mass-up-to = Up to { $kg } kg gross mass
rules-mass-above = Above { $kg } kg gross mass
rules-not-low-pressure = Not after work on the low-pressure side only
rules-practice = Custom of the trade
rules-everything = Everything
rules-never-waived = Nobody may let it pass
rules-may-be-waived = A signatory may let it pass
rules-may-not-apply = May not apply
rules-least = { $quantity }: at least { $least }
rules-most = { $quantity }: at most { $most }
rules-between = { $quantity }: { $least } to { $most }
rules-decision = { $said } ({ $rule })
rules-months = { $n ->
    [one] { $duty }: every month
   *[other] { $duty }: every { $n } months
}
rules-once-months = { $n ->
    [one] { $duty }: after a month
   *[other] { $duty }: after { $n } months
}
rules-once-months-or-km = { $duty }: after { $n } months or { $km } km, first to come
rules-km = { $duty }: every { $km } km
rules-months-or-km = { $duty }: every { $n } months or { $km } km, first to come
rules-counted-from = Counted from: { $anchor }
rules-with-catalyst = With closed-loop catalyst
rules-without-catalyst = Without closed-loop catalyst
rules-registered-from = First registered from { $on }
rules-registered-to = First registered up to { $on }
rules-in-force-from = In force from { $on }
rules-in-force-to = In force to { $on }
rules-versions = Versions of the shop’s own lines
rules-version-from = In force from
rules-version-by = Written by
rules-version-at = Written
rules-version-sum = Check sum
rules-version-and-sum = Version and check sum
rules-preview = Look at the difference
rules-save = Put in force
rules-changes = What changes
rules-changes-none = No line changes.
rules-turn = Change
rules-before = Before
rules-after = After
rules-text = The shop’s own lines, as TOML
    .hint = Each line says what, how much, its source, and whether the source was read. A line may be stricter than the sets below it. Looser it may be only with the authority’s leave, named in the key “allowed” with authority, document and on, and with a second person’s password
rules-from_on = In force from
    .hint = Today or later: what was judged before stays judged by the lines of its day

turn-added = New
turn-removed = Gone
turn-stricter = Stricter
turn-looser = Looser than before
turn-other = Changed

wrong-rules = This is no rule set
wrong-rules-line = Line { $line }: { $why }
wrong-rules-whole = { $why }
wrong-rules-not-shop = These lines must say name = "shop" and is_shop = true: they are printed as the shop’s own
wrong-rules-looser = A line is looser than the one it stands on
wrong-rules-looser-line = Line { $line }, { $id }: looser than { $base } of { $set }, which decides. Ask as much or more, or leave the line out
wrong-rules-other-set = The file is no version of this set: its name differs, or it says is_shop
wrong-rules-no-file = There is no { $place } in the data folder, or it is larger than 200 kB
wrong-rules-without-base = The UN baseline stays in: without it a job would be asked for nothing
wrong-second-needed = A line asks less than the sets below: a second person signs in for it here
wrong-second-unknown = Nobody of this branch signs in by that name
wrong-second-same = That is you. Somebody else must stand behind it too
wrong-second-may-not = They neither manage this branch nor may sign certificates
wrong-rules-meanwhile = Somebody put another version in force since you opened this. The difference below is against theirs; put in force again to follow it with yours

deed-rules-changed = Put a version of a rule set in force
deed-looser-rules-signed = Stood behind a line that asks less than the sets below it
