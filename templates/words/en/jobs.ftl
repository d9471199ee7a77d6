# The list of job files.

jobs-title = Jobs
jobs-find = Number, plate, VIN or name
jobs-none = No job is open. Taking a vehicle in opens one.
jobs-none-found = No job is found by this.
jobs-number = Job
jobs-stage = Stage
jobs-any-stage = Any stage
jobs-keeper = Keeper
jobs-since = In for
jobs-state = State
jobs-state-live = In the shop
jobs-state-open = Open
jobs-state-held = On hold
jobs-state-ended = Ended
jobs-state-all = All
