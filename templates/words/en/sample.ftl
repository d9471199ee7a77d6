# The sample page that the kit is tried on.

sample-title = Leak test, vapour side
sample-lead = Pressure decay with nitrogen from the vaporiser to the injectors. The shop’s limit is 20 cm³/h; UN texts give none for a vehicle.
sample-start = Start, 10:42
sample-now = Now, 10:52
sample-start_kpa = Pressure, gauge
sample-start_c = Gas temperature
sample-volume_l = Volume of the section
sample-end_kpa = Pressure, gauge
sample-end_c = Gas temperature
sample-gauge = Gauge
sample-keep = Keep testing
sample-record = Record as it is
sample-foam = Prove by foam instead
