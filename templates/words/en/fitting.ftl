# Fitting: wiring by engine cylinder, the checklist, how the level is known.

cylinder-table-engine_cylinder = Engine cylinder
cylinder-table-row = Engine cylinder { $n }
cylinder-table-petrol_connector = Petrol connector
cylinder-table-control_pin = Control pin
cylinder-table-branch_mark = Mark on the branch
cylinder-table-gas_injector = Gas injector
cylinder-table-nozzle_mm = Nozzle
cylinder-table-answers = Answers alone
cylinder-table-usual-connector = Plug { $n }
cylinder-table-usual-pin = Pin { $n }
cylinder-table-note = Connectors, pins and injectors are filled in one to one; change what is wired otherwise.
cylinder-table-note-sized = Nozzle { $size } as the sizing sheet chose it; write what is truly fitted.
cylinder-table-note-not-sized = No nozzle is sized yet; write what is fitted.
cylinder-table-note-count-unknown = The vehicle’s file does not say how many engine cylinders there are; the proof waits for it.
cylinder-table-injector-doubled = This gas injector stands at engine cylinder { $cylinder } already.
cylinder-table-injector-said = gas injector { $n }
cylinder-table-answered = answers
cylinder-table-silent = does not answer
cylinder-table-silent-title = Not every engine cylinder answers
cylinder-table-silent-row = Engine cylinder { $n } does not answer when its gas is cut. Check wiring and injector, and test again.

checklist-line = Line
checklist-answer = Answer
checklist-note = Note
checklist-by = { $initials }, { $when }
checklist-source-unread = { $source }, to be confirmed with your authority
checklist-note-needed = Say what is wrong, or why it does not apply.
checklist-note-without-answer = There is a note but no answer.
checklist-always-applies = This line applies to every vehicle: pass or fail.
checklist-nothing-answered = Answer one line at least.
checklist-all-well = Every line passes or does not apply
checklist-open-lines = { $n ->
    [one] { $n } line is still open
   *[other] { $n } lines are still open
}
checklist-failed-lines = { $n ->
    [one] { $n } line fails
   *[other] { $n } lines fail
}

level-sensing-how = The level comes from
level-sensing-is_routine_explained = The fill-up routine was explained to the driver
    .hint = Asked for when the level is reckoned from injection time: it is only right if each filling is told to it.
