# Coming in, the first start, and Office.

sign-in-title = Sign in
sign-in-welcome = I have a one-time code from my manager
sign-in-sign_in_name = Sign-in name
sign-in-password = Password

sign-in-come-in = Come in
sign-in-by-password = With your password
field-person = Who
field-pin = PIN
    .hint = Six digits, for the shop’s tablets.
field-pin_password = Your password

account-pin-title = A PIN for the shop’s tablets
account-choose-pin = Keep this PIN

keys-title = Signing keys
office-keys-more = Which key signs papers, which did, which is no longer trusted.
keys-lead = A paper is genuine when its signature fits a key of this shop. Old keys stay here for ever, so that old papers can be checked.
keys-column-key = Fingerprint
keys-column-since = Since
keys-column-vouched = Vouched for by
keys-column-stands = Stands
keys-first = First key
keys-signs-now = Signs now
keys-former = Signed before
keys-distrusted = Not trusted after { $after }
keys-begin = Begin a new key
keys-begin-more = The key of now signs a last statement that the new one follows it, and its secret part is deleted. Make a backup afterwards: an older one holds the old key.
keys-begin-do = Begin a new key
keys-distrust = A key has leaked
keys-distrust-more = What it signed after the moment you name is refused from now on, here and by whoever holds a newer standing list. Tell those who check papers the fingerprint of the key that signs now.
keys-distrust-do = Trust it no longer
key-begin-begin_password = Your password
key-distrust-distrusted_key = Key
key-distrust-after = Last moment when it was safe
key-distrust-reason = What happened
key-distrust-distrust_password = Your password
key-signs-now = This key signs now: begin a new one first
tablets-title = Tablets
tablets-lead = On a tablet of the shop people come in with six digits. It locks after ten minutes without a touch. What is signed still asks for the password.
tablets-since = since { $day }
tablets-end = Take out of use
tablets-enrol = Enrol this tablet
tablets-enrol-keep = Enrol the device in my hands
tablet-name = Name of the tablet
    .hint = As people know it: bay 1, desk.
office-tablets-more = Which tablets open with a PIN.
wrong-pin = Name and PIN do not belong together on this tablet
wrong-pin-weak = Takes six digits that are not simply counted up, down, or all alike

welcome-title = Choose your password
welcome-lead = Your manager gave you a one-time code. It works once, within 24 hours.
welcome-code = One-time code
welcome-keep = Keep this password

field-code = One-time code
field-new_password = New password
    .hint = At least 8 characters; several words in a row are easy to remember and hard to guess. Everything counts, spaces too.
field-new_password_again = New password, once more
field-current_password = Current password
field-password = Password
field-sign_in_name = Sign-in name
    .hint = Without spaces; capital and small letters count the same.

set-up-title = Set up the shop
set-up-lead = This is done once. Everything here can be changed later in Office.
set-up-code = The code
    .hint = Printed where the program was started; good for one hour.
set-up-manager = The first manager
set-up-keep = Open the shop

shop-title = The shop block
shop-lead = This stands on every paper from now on. Papers that are issued keep what they said.
shop-block = On every paper
shop-customs = Customs of the place
field-shop_name = Name of the shop
field-address = Address
field-phone = Phone
field-shop_mail = Mail address of the shop
field-licence_number = Licence number
    .hint = Under which the authority knows the shop.
field-licence_expires_on = Licence holds until
    .hint = After this day no certificate is issued.
field-country = Country
    .hint = Two letters (ISO 3166), like PT.
field-time_zone = Time zone
    .hint = A name like Europe/Lisbon.
field-currency = Currency
    .hint = Three letters (ISO 4217), like EUR.
field-language = Language for customers
    .hint = For customers who have none of their own here. Screens, certificates and records are in English.
shop-units = Units
shop-units-note = How quantities are shown, and how a number typed without its unit is read. Another unit can always be typed behind a number. What is kept, and what papers and steps of sums say, stays in kPa, °C, kW, mm and L.
field-pressure_unit = Pressure
field-temperature_unit = Temperature
field-power_unit = Power
field-length_unit = Length
field-volume_unit = Volume
field-paper_size = Paper

account-title = My account
account-password = Change the password
account-change-password = Change it and sign out elsewhere
account-sessions = Where you are signed in
account-seen = last seen { $at }
account-this = this browser
account-end = Sign out there

office-account-more = Your password, and where you are signed in.
office-people-more = Who works here, what they may do, who signs.
office-languages-more = In which languages papers are made and customers are written to, and who of the trade has read them.
office-log-more = Everything that was done, by whom and when.
office-shop-more = Name, address, licence, time zone, currency, paper.
office-save = Save

people-title = People
people-add = Add somebody
people-add-lead = They choose their own password with a one-time code that you hand on.
people-add-keep = Add and show the code
people-name = Name
people-roles = May act as
people-signing = Signs until
people-ended = Account ends

field-initials = Initials
    .hint = Stand beside each tick of a checklist.
field-mail = Mail address
field-roles = May act as
    .hint = Manager: everything. Desk: customers, bookings, hand-over, messages. Technician: stages, evidence, instruments, stores. Auditor: reads everything, changes nothing.
field-ended_on = Account ends on
    .hint = From this day on nobody signs in with it; what they signed before stays signed.
field-sees_contacts = An auditor sees phone numbers and mail addresses
field-authorisation_number = Authorisation number
field-expires_on = Holds until
field-roles_password = Your own password
field-signing_password = Your own password

person-sheet = Who they are
person-roles-sheet = What they may do
person-roles-lead = A change signs them out everywhere and counts at once.
person-roles-keep = Change what they may do
person-signing-sheet = The right to sign
person-signing-lead = For a technician or manager with an authorisation. Empty both fields to end it.
person-signing-keep = Change the right to sign
person-coming-in = Coming in
person-sessions = { $n ->
    [0] Not signed in anywhere.
    [one] Signed in on { $n } browser.
   *[other] Signed in on { $n } browsers.
}
person-make-code = Make a one-time code for a new password
person-end-sessions = Sign them out everywhere

code-title = One-time code
code-lead = Give this to { $name }. With it they choose a password under Sign in, “I have a one-time code”. It works once, within 24 hours, and is not shown again.
code-again = { $name } is already added. The code was shown the first time; a new one can be made on their page.

languages-title = Languages of papers
languages-lead = The owner’s sheet, letters, mails and the customer’s page are in the customer’s language; certificates, records and the label in that of the rules. Each was translated with the program. Let somebody of the trade who speaks it read it before you rest on it, safety sentences first; the owner’s sheet, a letter of the Outbox and the preview of a certificate show most of it. The papers themselves carry no note of this.
languages-not-reviewed = Translation not reviewed
languages-reviewed = Read by { $name } on { $day }
languages-reviewed-before = Read by { $name } on { $day }, in version { $version } of the program; its words may have changed since
languages-mark = Note who has read it
languages-keep = Note it
languages-withdraw = Count it as not reviewed again
review-reviewed_by = Read by
    .hint = Name and trade of whoever has read every sentence.
review-reviewed_on = On

log-title = Log
log-lead = Each line carries the fingerprint of the one before; a line changed or taken out shows.
log-at = When
log-who = Who
log-deed = What

wrong-sign-in-name = Takes a name without spaces
wrong-code = This code is wrong, used, or too old
wrong-sign-in = Name or password is wrong, or the account has ended
wrong-password = This is not your password
password-short = Takes at least 8 characters
password-long = Takes at most 4096 characters
password-common = This is among the first that somebody would guess; take another

restored-title = Is this now the only one?
restored-lead = This shop came from a backup. Until a manager answers, no message goes out and no certificate is issued: two copies at work would give two papers the same number.
restored-yes = Yes, no other copy is at work
restored-no = If another copy may still be at work, leave it as it is and stop one of the two first.

deed-shop-set-up = Set the shop up
deed-shop-restored = Brought the shop back from a backup
deed-only-one-confirmed = Said that no other copy of the shop works any more
deed-branch-changed = Changed the shop block
deed-key-begun = Began a new signing key
deed-key-distrusted = Trusts a signing key no longer
deed-setting-changed = Changed a setting
deed-signed-in = Signed in
deed-signed-out = Signed out
deed-person-added = Added somebody
deed-person-changed = Changed somebody’s details
deed-roles-changed = Changed what somebody may do
deed-signing-granted = Gave somebody the right to sign
deed-signing-ended = Ended somebody’s right to sign
deed-password-set = Chose a password
deed-password-code-made = Made a one-time code
deed-pin-set = Chose a PIN
deed-sessions-ended = Signed somebody out
deed-device-enrolled = Enrolled a tablet
deed-device-ended = Took a tablet out of use
