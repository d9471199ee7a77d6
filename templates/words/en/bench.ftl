# The Bench: sums without a job.

nav-bench = Bench
bench-title = Bench
bench-lead = Sums for the shop, without a job. What is typed stands in the address, so that a link gives the answer again; nothing is kept.
bench-caution = Nothing here replaces local codes, the approval holder’s manual and a licensed person’s judgement.
bench-example = Worked example
bench-afresh = Start afresh
bench-answer = Answer
bench-problems-title = No answer yet
bench-results = Further results
bench-column-quantity = Quantity
bench-column-value = Value
bench-ground = What this rests on
bench-method = Method
bench-uncertainty = Uncertainty
bench-sources = Sources
bench-link = Link to this answer

origin-hint-reference = Reference temperature of ISO 13443: { $value }

bench-shelf-fuel = What is this fuel?
bench-shelf-nozzle = Which nozzle?
bench-shelf-heat = Is there heat and pressure enough?

bench-sum-fuel = Fuel properties
    .lead = Energy, air need, octane, Wobbe index, carbon dioxide, and how much of the charge the gas takes.
bench-fuel-energy = Energy, net
bench-fuel-air = Air need, stoichiometric
bench-fuel-octane = Motor octane number
    .note = Estimated by ASTM D2598 from liquid-volume shares.
bench-fuel-octane-none = not given
bench-fuel-wobbe = Wobbe index, gross
    .note = At 15 °C and 101.325 kPa, burnt at 15 °C.
bench-fuel-molar-mass = Molar mass
bench-fuel-h-c = Hydrogen per carbon, atoms
bench-fuel-net-wobbe = Wobbe index, net
bench-fuel-gross = Energy by gas volume, gross
bench-fuel-relative-density = Density over that of air
bench-fuel-co2 = Carbon dioxide at the tailpipe
bench-fuel-displaced = Share of the stoichiometric charge that is gas
bench-fuel-mixture = Energy of a cubic metre of stoichiometric mixture
bench-fuel-shares = The fuel by mole, mass and liquid volume
bench-column-component = Component
bench-column-mole = Mole, %
bench-column-mass = Mass, %
bench-column-liquid-volume = Liquid volume at 15 °C, %
bench-column-energy = Energy, net, MJ/kg
bench-column-air = Air need, kg/kg

method-fuel = Sums over the components: energies of ISO 6976, octane blending values of ASTM D2598, real-gas density.
    .uncertainty = 0.1 % (k = 1) for a known composition; the composition of a delivery is known far worse.

bench-group-container = In the container
bench-group-rail = In the rail
bench-note-rail = For the dew temperature: below it a gas of this mix rains at this pressure.
bench-group-state = State of the gas
bench-group-nozzle = Nozzle
bench-group-measured = Own discharge coefficient
bench-note-measured = A flow measured through this nozzle in this state, with nitrogen or air for instance. The coefficient is then reckoned from it, and the one above is not used.
bench-measured-both = The flow is given twice. Clear one of them.
bench-nothing-flows = Nothing flows: this is not below the pressure before the nozzle.
bench-group-fuel-rate = Fuel rate
bench-note-fuel-rate = From power and brake efficiency, or as measured. 0.28 aspirated and enriched, 0.30 at lambda 1, 0.32 boosted (common practice).
bench-fuel-rate-none = Give the power of the engine, or the fuel rate.
bench-fuel-rate-both = Power is given as well. Clear one of them.
bench-fuel-rate-beyond = With this efficiency the engine burns { $got }; the sum takes { $least } to { $most }.
bench-group-vaporiser = Vaporiser
bench-group-capacity = Engine it can serve
bench-note-capacity = The heat a vaporiser brings by its maker, where known.
bench-group-regulator = Regulator
bench-group-line = Line
bench-note-line = A liquid is taken as saturated and needs no pressure.

bench-temperature_c = Temperature
bench-pressure_kpa = Pressure, absolute
    .hint = Gauge reading plus the ambient pressure, 101.3 kPa at sea level.
bench-upstream_kpa = Pressure before the nozzle, absolute
    .hint = Gauge reading plus the ambient pressure, 101.3 kPa at sea level.
bench-downstream_kpa = Pressure behind the nozzle, absolute
bench-diameter_mm = Bore of the nozzle
bench-discharge_coefficient = Discharge coefficient
    .hint = 0.65 injector with nozzle, 0.84 nozzle alone.
bench-measured_g_s = Flow measured, by mass
bench-measured_l_min = Flow measured, by volume
    .hint = Litres at 15 °C and 101.325 kPa.
bench-rated_power_kw = Power of the engine
bench-brake_efficiency = Brake efficiency
bench-fuel_rate_g_s = Fuel rate
bench-container_c = Temperature in the container
bench-outlet_kpa = Pressure at the outlet, absolute
bench-outlet_c = Gas temperature at the outlet
bench-coolant_drop_k = Coolant may cool down by
bench-capacity_kw = Heat the vaporiser brings
bench-inlet_kpa = Pressure at the inlet, absolute
    .hint = Full cylinder.
bench-inlet_c = Gas temperature at the inlet
bench-carries = Carries
carries-gas = Gas
carries-liquid = Liquid
bench-bore_mm = Bore
bench-length_m = Length
bench-fitting_velocity_heads = Velocity heads lost in fittings

bench-sum-liquid = Vapour pressure and liquid density
    .lead = The pressure in a container, the temperature below which a rail rains, and how dense the liquid is.
bench-liquid-bubble = Vapour pressure, absolute
bench-liquid-gauge = Vapour pressure, gauge
    .note = At an ambient pressure of 101.3 kPa.
bench-liquid-density = Density of the liquid
bench-liquid-dew = Rains below
    .note = Dew temperature at the pressure in the rail.
bench-liquid-bubble-spread = Standard uncertainty of the vapour pressure
bench-liquid-density-spread = Standard uncertainty of the density
bench-liquid-curve = Vapour pressure and density over temperature
bench-liquid-vapour = Liquid, and the vapour above it
bench-column-temperature = Temperature
    .unit = °C
bench-column-bubble = Vapour pressure, absolute
    .unit = kPa
bench-column-bubble-gauge = Gauge
    .unit = kPa
bench-column-liquid-density = Density of the liquid, kg/m³
bench-column-in-liquid = In the liquid, mole %
bench-column-in-vapour = In the vapour, mole %

bench-sum-gas = State of a gas
    .lead = Density, compressibility, isentropic exponent and speed of sound at a pressure and a temperature.
bench-gas-density = Density
bench-gas-compressibility = Compressibility
bench-gas-exponent = Isentropic exponent
bench-gas-sound = Speed of sound
bench-gas-heat = Heat capacity at constant pressure
bench-gas-dew = Dew temperature at this pressure
bench-gas-dew-none = none found, or not asked at this pressure

bench-sum-nozzle-flow = Flow through a nozzle
    .lead = How much gas a bore passes, whether it is choked, and the discharge coefficient that a measured flow shows.
bench-flow-mass = Mass flow
bench-flow-own-coefficient = Discharge coefficient, from the measurement
    .note = Referred to the bore. Its uncertainty is that of the flow meter and of the bore, which enters squared.
bench-flow-throat = The throat
bench-flow-choked = choked: a lower pressure behind it brings no more
bench-flow-not-choked = not choked: the pressure behind it counts
bench-flow-spread = Standard uncertainty, coefficient not measured
bench-flow-volume = By volume, at 15 °C and 101.325 kPa
bench-flow-flux = Mass flux for a coefficient of 1
bench-flow-ratio = Pressure behind over before
bench-flow-choking = Chokes at and below

bench-sum-vaporiser = LPG vaporiser
    .lead = Heat and coolant for an engine, the temperature that changeover must wait for, and the engine a vaporiser can serve.
bench-heat = Heat
bench-coolant = Coolant
    .note = Half water, half glycol, at 80 °C.
bench-changeover = Changeover well above
    .note = Below this the gas at the outlet rains.
bench-serves = Engine this vaporiser can serve
bench-fuel-rate = Fuel rate
bench-heat-mass = Heat by mass of gas
bench-heat-power = Heat by fuel energy
bench-container-pressure = Pressure in the container, absolute
bench-container-gauge = Pressure in the container, gauge
bench-dew-margin = Outlet above its dew temperature by

bench-sum-regulator = CNG pressure regulator
    .lead = How cold the gas would blow, and the heat and coolant that keep the cold from the engine.
bench-throttled = Without heat it blows at
bench-joule-thomson = Mean drop of temperature
bench-emptying = As the cylinder empties
bench-column-inlet = Inlet, absolute, MPa
bench-column-throttled = Without heat
    .unit = °C
bench-column-heat-mass = Heat, kJ/kg
bench-column-heat = Heat
    .unit = kW

bench-sum-hose = Hose or liquid line
    .lead = Pressure drop and velocity, for the bore at hand and for its neighbours.
bench-hose-calm = Wide enough
bench-hose-near = Wide enough, but fast
bench-hose-beyond = Beyond common practice
bench-hose-said = It takes **{ $drop }** and runs at **{ $velocity }**.
bench-hose-practice = Common practice for the common gas hose: below 2 kPa and below 30 to 40 m/s. Flow comes in pulses, and its peaks are higher than this mean.
bench-hose-drop = Pressure drop
bench-hose-velocity = Velocity
bench-hose-density = Density
bench-hose-viscosity = Viscosity
bench-hose-reynolds = Reynolds number
bench-hose-friction = Friction factor (Darcy)
bench-hose-bores = Other bores
bench-column-bore = Bore
    .unit = mm
bench-column-drop = Drop
    .unit = kPa
bench-column-velocity = Velocity, m/s

bench-sum-nozzle = Nozzle from rated power
    .lead = The smallest nozzle that still delivers rated fuel within the time there is, and doses at idle. Up to three sets side by side.
bench-sum-nozzle-from-petrol = Nozzle from petrol injection data
    .lead = The same from what the petrol injectors deliver: neither power nor efficiency is needed.
bench-note-engine = Boosted: ambient pressure plus boost stands in the manifold.
bench-note-power = 0.28 aspirated and enriched, 0.30 at lambda 1, 0.32 boosted (common practice).
bench-note-petrol = Measured at rated speed and full load. Lambda on gas is 1.00 where gas runs closed loop up to full load.
bench-note-gas = Common practice: LPG at 50 °C and 100 to 130 kPa over manifold, CNG at 40 °C and 150 to 250 kPa.
bench-group-shown = Shown in full
nozzle-sizing-shown = Set shown in full
bench-shown = shown in full
bench-nozzle-duty = Open at rated power
    .note = Of the time of two revolutions.
bench-nozzle-idle = Pulse at idle

method-nozzle = Fuel per cycle from power and efficiency; flow through the nozzle; open time of two revolutions less the dead time.
    .uncertainty = The bore 7 % (k = 1): brake efficiency 5 %, discharge coefficient 12 % unless it was measured, power 3 %, open time 4 %, supply 2 %.
method-nozzle-from-petrol = Petrol per cycle from injector flow and pulse; the same air on gas, less what the gas displaces; then as from power.
    .uncertainty = The bore 6 to 7 % (k = 1), most of it from the discharge coefficient.
method-vapour-pressure = Peng-Robinson equation, corrected to the saturation pressures of the pure components.
    .uncertainty = 1 % (k = 1) for a known composition, 3 % with propene. An unknown delivery is worth 10 % and more.
method-liquid-density = Saturated volume by COSTALD.
    .uncertainty = 0.2 % (k = 1) for a known composition.
method-gas-state = GERG-2008. Propene, which it lacks, by the ratio of two Peng-Robinson answers.
    .uncertainty = Density 0.1 % (k = 1); 0.2 % on LPG vapour. Heat capacity 1 %.
method-nozzle-flow = One-dimensional isentropic flow with the real isentropic exponent and density of the gas before the nozzle.
    .uncertainty = The flux 0.5 % (k = 1). The flow 8 to 12 % unless the coefficient was measured; 0.02 mm of bore are 2 % at 2 mm.
method-vaporiser = Enthalpy of the vapour less that of the saturated liquid, GERG-2008; propene counted as propane.
    .uncertainty = 2 % (k = 1) for a real delivery.
method-regulator = Throttling at constant enthalpy; heat by the difference of enthalpies, GERG-2008.
    .uncertainty = 0.1 K and 0.15 kJ/kg for a known composition, by comparison with reference equations.
method-hose = Friction by Darcy and Weisbach with constant density, laminar or by Haaland; roughness 2 µm.
    .uncertainty = 3 % on a smooth straight line; fittings are common practice.
