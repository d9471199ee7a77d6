# The customer's own page behind a link.

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
