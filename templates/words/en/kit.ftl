# What every page shares: the frame, the pieces of a form, the marks.

app-name = Fuelwright
title-failed = Error: { $title }
title-in-shop = { $title }, { $shop }

nav-label = Main
nav-today = Today
nav-bay-plan = Bay plan
nav-jobs = Jobs
nav-vehicles = Vehicles
nav-customers = Customers
nav-due = Falling due
nav-papers = Papers
nav-instruments = Instruments
nav-outbox = Outbox
nav-office = Office
nav-more = More
nav-search = Find
nav-search-hint = Find plate, VIN, name, phone, serial
nav-sign-in = Sign in
nav-sign-out = Sign out
nav-me = Signed in as { $name }

role-manager = manager
role-desk = desk
role-technician = technician
role-auditor = auditor
role-signatory = signatory

kit-yes = Yes
kit-no = No
kit-choose = Choose
kit-read-as = Read as { $value }
kit-remove-row = Remove this line
kit-clear = Clear
kit-pad = Sign here with a finger or a pen
kit-files-again = Files are not kept after an error; choose them again.
kit-caution-label = Caution
kit-page-previous = Earlier
kit-page-next = Later
kit-pages = Pages

state-met = Met
state-missing = Missing
state-undecided = Cannot tell yet
state-stops = Stops the paper
state-waived = Waived
state-not-applicable = Does not apply
state-entered-later = Entered later
state-on-tablet = On this tablet only

rail-label = Stages
rail-count = { $met } of { $all }
rail-summary = { $done } of { $all } stages
rail-now = now
rail-done = done
rail-to-come = to come

life-today = Today

proofs-title = Proofs for the certificate
proofs-summary = { $met } of { $all } met.
proofs-to-go = { $n ->
    [0] Nothing to go.
   *[other] { $n } to go.
}
proofs-settled = { $n ->
    [one] Show the one that is met
   *[other] Show the { $n } that are met
}
proofs-to-go-and-stops = { $stops ->
    [one] { $n } to go, { $stops } stops the paper.
   *[other] { $n } to go, { $stops } stop the paper.
}
