# Topics of the hand-over, and the pages on which rule sets are read and changed.

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
rules-heads = Of papers and inspections
rules-languages = Certificates, records and labels are made in: { $languages }
rules-languages-source = Language of the authorities there. The shop’s own lines may say another
rules-language-unspoken = { $tag } (no papers yet; the branch’s language stands in for it)
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
