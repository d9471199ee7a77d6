# Parts of a job.

parts-lead = Each part by serial or batch, with its approval mark as it stands on the part.
parts-fit = Fit a part
parts-fit-kind = Fit: { $kind }
parts-correct = Correct a part
parts-remove = Take off
parts-look = Look before recording
parts-wanted = The rules still want
parts-fitted = On the vehicle
parts-none = No part is recorded yet.
parts-removed = Taken off in this job
parts-part = Part
parts-removed-on = Taken off
parts-removed-why = Why

part-group-what = What it is
part-group-which = Which one
part-note-which = Serial or batch, at least one of them: a recall is traced by it.
part-group-vessel = From the plate on the container or cylinder
part-group-place = Where and when
part-category = Kind
part-maker = Maker
part-type_name = Type
    .hint = As it stands on the part.
part-approval_mark = Approval mark
    .hint = As it stands on the part: E4 67R-011234. What cannot be read is kept, and said.
part-component_class = Class
    .hint = If it stands on the part.
part-serial = Serial
part-batch = Batch
part-made_on = Made
    .hint = A day, a month or a year: 2024-03-15, 03/2024, 2024.
part-capacity_l = Water capacity
part-test_pressure_kpa = Test pressure
part-place = Place on the vehicle
part-fitted_on = Fitted
part-shared_reason = Why both parts carry this serial
    .hint = A signatory's word; kept with name. Put photos of both plates with the files of the job.

part-made-unreadable = “{ $typed }” is no date of manufacture. Write a day, a month or a year: 2024-03-15, 03/2024, 2024.
part-made-counts-as = Counts as { $on }.
part-serial-or-batch = Enter the serial or the batch.

part-mark-read = Regulation { $regulation }, country { $country }, series { $series }, number { $number }
part-mark-none = No approval mark is entered.
part-mark-other-fuel = Regulation { $regulation } is not for { $fuel }. The proof of approval marks stops here.
part-doubt-country-unknown = Country { $country } is in no list known here. Look again; newer members are missing from the list.
part-doubt-small-e = A small e stands for an approval under EU directives, not under these Regulations. Look whether it is a capital E in a circle.
part-doubt-class-unknown = “{ $class }” is no class of this Regulation. Look again.
part-not-a-mark-empty = No approval mark is entered.
part-not-a-mark-no-country = Kept as typed, but it cannot be read: a mark begins with E and the number of a country.
part-not-a-mark-no-regulation = Kept as typed, but it cannot be read: after the country stands 67R, 110R or 115R.
part-not-a-mark-eu-directive = Kept as typed, but a small e marks an approval under EU directives, not under Regulation 67, 110 or 115.
part-not-a-mark-no-number = Kept as typed, but it cannot be read: two digits of series and three to six digits of number follow.

part-said-class = class { $value }
part-said-serial = serial { $value }
part-said-batch = batch { $value }
part-said-made = made { $value }
part-said-capacity = { $value }
part-said-test-pressure = test pressure { $value }
part-said-place = { $value }
part-said-fitted = fitted { $value }
part-said-shared = shares its serial: { $value }

part-doubled-title = This part is on a vehicle already
part-doubled-on = The same kind, maker, mark or type, and serial is recorded on { $plate }, fitted { $on }.
part-doubled-correct = Read the serial again and correct it below.
part-doubled-remove = If the part came from there, record that it was taken off:
part-doubled-remove-here = take the earlier entry off
part-doubled-remove-in-job = job { $number }, take it off
part-doubled-open-vehicle = open a job for that vehicle
part-doubled-requalify = A CNG cylinder that moves to another vehicle is requalified first.
part-doubled-share = If two parts truly carry one serial, a signatory states so with a reason.
part-doubled-share-anew = If two parts truly carry one serial, take this entry off and fit it anew; a signatory states so with a reason.

part-removal-reason = Why it is taken off
    .hint = Kept with the part.
part-removal-caution = Shut the container or cylinder valve and vent the line outside before a joint is opened. The entry stays on record.

refused-part-doubled = The same part is on a vehicle already. The three ways on stand above.
refused-part-of-other-job = Another job fitted this part; only that job could correct it. Take it off here instead.
refused-part-of-other-vehicle = This part is not on the vehicle of this job.
