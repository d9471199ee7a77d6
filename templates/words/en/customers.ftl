# Customers and notes; the words that all lists of the desk share.

list-find = Find
list-save = Save
list-back = Back
list-change = Change

contact-masked = hidden from auditors

customers-title = Customers
customers-new = New customer
customers-add = Add a customer
customers-find = Name, phone or mail
customers-none = Nobody is in the books yet.
customers-none-found = Nobody is found by “{ $q }”. Try part of the name, or the end of the phone number.
customers-name = Name
customers-phone = Phone
customers-mail = Mail
customers-no-mail = none, reminders go out as letters
customers-mail-bad = mail came back twice; letters go out instead
customers-language = Language
customers-vehicles = Vehicles
customers-no-vehicle = No vehicle is known of this customer yet.
customers-add-vehicle = Add a vehicle
customers-take-in = Take a vehicle in
customers-basis-since = { $basis }, since { $day }
customers-beyond-fonts = Something cannot be printed
customers-mail-shared = One address, many customers
customers-mail-shared-more = { $n } customers share this mail address. Ask whose it is: reminders of all of them go there.

customer-name = Name
    .hint = As the person writes it.
customer-name_in_latin = Name in Latin letters
    .hint = Printed beside the name where a paper’s font lacks its letters.
customer-address = Address
    .hint = As on an envelope, a line each.
customer-phone = Phone
customer-mail = Mail address
customer-language = Language
    .hint = Owner’s sheet, letters, mails and the page behind their link are in it.
customer-reminder_basis = Reminders rest on
    .hint = Consent was given; or the contract covers it. Without either only recall and safety letters go out.
customer-reminder_basis_on = Since

wrong-own-mail = This is the shop’s own address: reminders would come back here. Leave it empty where there is none.
wrong-language-tag = Takes a language tag, like en
wrong-beyond-fonts = Has letters the papers cannot print; write it in Latin letters
wrong-basis-without-day = Say since when

notes-title = Notes
notes-write = Write the note
note-text = A note
    .hint = It keeps your name and the time, and is not changed later.
note-by = { $name }, { $at }

deed-customer-added = Wrote a customer down
deed-customer-changed = Changed a customer’s details
deed-note-written = Wrote a note
