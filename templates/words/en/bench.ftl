# The Bench: sums without a job.

nav-bench = Bench
bench-title = Bench
bench-lead = Sums for the shop, without a job. What is typed stands in the address, so that a link gives the answer again; nothing is kept.
bench-caution = Nothing here replaces local codes, the approval holder’s manual and a licensed person’s judgement.
bench-example = Worked example
bench-afresh = Start afresh
bench-answer = Answer
bench-results = Further results
bench-column-quantity = Quantity
bench-column-value = Value
bench-ground = What this rests on
bench-method = Method
bench-uncertainty = Uncertainty
bench-sources = Sources
bench-link = Link to this answer

bench-shelf-fuel = What is this fuel?

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
