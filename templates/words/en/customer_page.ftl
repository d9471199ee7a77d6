# The customer's own page behind a link, and what it shares with every page.

language-name = English

# -- the page --
own-lead = For { $name }, from { $shop }. This address is yours alone; whoever has it sees this page.
own-duties = What falls due
own-duties-none = Nothing is noted for this vehicle.
own-papers = Papers
own-papers-none = No paper was issued for this vehicle yet.
own-slot = Ask for a time
own-wish = What, and which days suit you
own-phone = Phone to reach you
own-slot-ask = Ask
own-slot-asked = Your wish is with the shop. They call or write with a time.
own-reminders = Reminders
own-reminders-lead = Without reminders you watch the dates yourself. Recalls and safety letters still come.
own-reminders-off = No more reminders
own-reminders-are-off = Reminders are off. Tell the shop if you want them again.

# -- the public page behind a label --
register-shop = Shop
register-make = Make
register-vin-last-4 = Last four of the VIN
register-chassis-last-4 = Last four of the chassis number
vehicle-page-title = Gas vehicle
vehicle-page-over = overdue
vehicle-page-unknown = No vehicle has this code here. Compare it with the label.

# -- shared with every page --
app-description = Job files, proofs and papers of an LPG and CNG workshop
skip-to-content = Skip to the content
notice-demo = DEMONSTRATION. Everything here is invented; no paper from it is valid.
notice-insecure = This address is not encrypted. Anybody on this network can read what is typed here.
kit-optional = optional
kit-problems-title = Nothing is saved yet
kit-problems = { $n ->
    [one] { $n } entry needs a look
   *[other] { $n } entries need a look
}
kit-error = Error:

# -- what is wrong with an entry --
wrong-empty = Nothing is entered here
wrong-too-long = Takes { $most } characters at most; this has { $got }
wrong-control-characters = Holds characters that cannot be printed
wrong-damaged = Letters arrived damaged, shown as �. Type them again
wrong-line-break = Takes one line
