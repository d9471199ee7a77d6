# The places on a job file where an entry or a photo stands; `.lead` is said above its form.

slot-engine-calibration = Calibrating
    .lead = Warm, in closed loop, without fault codes. Settings in your own words; the control unit’s own program stays its maker’s.
slot-trims = Fuel trims on both fuels
    .lead = At the same points, warm, in closed loop. Open loop proves nothing: full load, warm-up, overrun, right after changeover.
slot-after-drive = After driving on both fuels
    .lead = Fault codes and readiness, read again.

slot-photo-odometer = Odometer
slot-photo-vin-plate = VIN plate
slot-photo-container-plate = Container or cylinder plate
slot-photo-photo = Other photos
slot-photo-document = Documents
slot-photo-control-unit-file = Control unit’s file
slot-photo-signature = Signatures

slot-cylinder-table = Engine cylinders
    .lead = Which gas injector serves which engine cylinder. Switch each engine cylinder to petrol alone: the engine must answer.
slot-checklist = Checklist
    .lead = What stays open may be answered later. An answer that does not change keeps the initials and the time it was given with.
slot-level-sensing = Level sensing
    .lead = How the driver knows how much gas is left.

slot-heat-sizing = Heat
    .lead = What vaporiser or pressure regulator must bring at rated power, and whether the one chosen can.
slot-line-sizing = Hoses and lines
    .lead = Pressure drop and velocity at rated power: a hose that is too narrow starves the engine at the top.
slot-cylinder-sizing = Cylinder
    .lead = What the cylinder holds, how its gauge moves with the temperature, how far it goes, and whether the axle carries it.
slot-discharge = Discharge coefficient, measured
    .lead = What a nozzle of this shop really lets through. The nozzle sheet then opens with it.

slot-hand-over = Hand-over
    .lead = Explain each topic beside the vehicle before it is ticked. What is not ticked stays open in the proofs.

slot-deficiencies = Deficiencies
    .lead = What was found, item by item. Record the list also when nothing was found: it says that somebody looked.
slot-vessel-check = Container or cylinder looked at
    .lead = Each vessel: how it was looked at, what was found, and what that means.
slot-photo-deficiency = Deficiencies

slot-arrival = How it came in
    .lead = Odometer, what the customer says, and any gas system already in the vehicle.

slot-leak-joints-lpg-liquid = Joints, liquid side
    .lead = Container to vaporiser at working pressure. A place not wetted proves nothing.
slot-leak-joints-lpg-vapour = Joints, vapour side
    .lead = Vaporiser to injectors at working pressure. A place not wetted proves nothing.
slot-leak-joints-cng-high = Joints, high pressure
    .lead = Cylinder to regulator at working pressure. Never tighten a joint under pressure.
slot-leak-joints-cng-low = Joints, low pressure
    .lead = Regulator to injectors at working pressure. A place not wetted proves nothing.
slot-exhaust-petrol = Exhaust on petrol
    .lead = Engine warm, probe deep in the exhaust, first at idle, then at raised idle without load.
slot-exhaust-gas = Exhaust on gas
    .lead = Engine and gas warm, probe deep in the exhaust, first at idle, then at raised idle without load.
slot-function-checks = Function checks
    .lead = What must work before the vehicle leaves. Gas that stays open, and a vent that is shut, cannot be waived.
slot-leak-decay-lpg-liquid = Pressure decay, liquid side
slot-leak-decay-lpg-vapour = Pressure decay, vapour side
slot-leak-decay-cng-high = Pressure decay, high pressure
slot-leak-decay-cng-low = Pressure decay, low pressure

slot-road = Road comparison
    .lead = Petrol injection time on both fuels at the same engine speed and load, warm and in closed loop. Where gas is lean the petrol computer lengthens; where it is rich it shortens.

slot-nozzle-sizing = Nozzle
    .lead = The smallest nozzle that still delivers rated fuel within the time there is, and doses at idle.
slot-container-sizing = Container
    .lead = What the container holds at its fill stop, how hot it may become, how far it goes, and whether the axle carries it.

slot-suitability = Suitability
    .lead = The engine on petrol, warm, before any work. What is found here is accepted by the customer first.
