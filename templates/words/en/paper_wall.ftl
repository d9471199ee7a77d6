# Today's sheet for the wall.
wall-title = Today, { $day }
wall-lead = What stands in each bay, and who is expected.
wall-printed = Printed { $at }. The bay plan on the screen is what counts.
wall-no-bay = The shop has no bay yet.
wall-free = Free.
wall-none = In no bay
wall-plate = Vehicle
wall-job = Job
wall-stage = Stage
wall-proofs = Proofs
wall-done = Note
wall-count = { $settled } of { $asked }
wall-time = Time
wall-whose = Expected
wall-purpose = For
wall-state = State
wall-open = Sheet for the wall
