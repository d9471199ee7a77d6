# What the work sheet says around the facts of its job.

work-title = Work sheet
work-number = { $number } · { $kind }
work-place = Stands in
work-received = Received
work-promised = Promised
work-wishes = Notes
work-by = Done by, when
work-printed = Printed { $at }. The job file on the screen is what counts.
work-cautions = Mind
work-faults = Reported faults
work-findings = Found, not decided yet
work-no-proof = Nothing is asked for here.
work-mind-lpg-1 = Before opening the system: shut the valve, run the engine dry, wait, vent slowly into open air. Take it that there is liquid between two valves.
work-mind-lpg-2 = No flame, no spark, no pit or drain under the vehicle; air the place low down. Goggles and gloves against cold.
work-mind-cng-1 = Never loosen anything under pressure: let it down through the drain first. Hearing and face protection.
work-mind-cng-2 = No flame, no spark; air the place high up, under the roof.
work-mind-3 = Battery off before electrical work. Check the detector on the day. Usual cautions of the trade; local code and licensed practice prevail.
