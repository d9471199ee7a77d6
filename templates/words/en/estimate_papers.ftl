# Papers about the price of a job: the estimate, the receipt of a deposit, the final price list.

# Names of their files: letters without accents, and hyphens.
estimate-paper-file = estimate
price-list-file = price-list
receipt-file = receipt

estimate-paper-title = Estimate
estimate-paper-number = { $number }, version { $version }
estimate-paper-lead = What the work on your vehicle is reckoned to cost.

# -- what these papers share --
priced-parties = Customer and vehicle
priced-customer = Customer
priced-address = Address
priced-vehicle = Vehicle
priced-plate = Plate
priced-job = Job
priced-lines = Parts and work
priced-what = What
priced-kind = Kind
priced-quantity = Quantity
priced-price = Price for one, { $currency }
priced-amount = Amount, { $currency }
priced-total = Total
priced-terms = What holds
priced-until = This estimate stands until { $day }.
priced-no-until = No last day is set for this estimate. Ask before you rely on it later.
priced-change = A change is agreed with you before the work it concerns: how much, how, by whom and when.
priced-no-invoice = This is no tax invoice.
priced-agreed = Agreed { $how } by { $name } on { $day }: { $amount }. Noted by { $person }.
priced-not-agreed = Not agreed yet. No work begins before you agree.
priced-sign = Agreed (name, day, signature)
line-kind-part = Part
line-kind-work = Work
line-kind-other = Other
line-kind-discount = Discount
agreed-how-in-person = in person
agreed-how-phone = by phone
agreed-how-writing = in writing

# -- final price list --
price-list-title = Final price list
price-list-lead = What the work came to, what was paid before, and what remains to pay.
price-list-paid = Paid before
price-list-nothing-paid = Nothing was paid before.
price-list-day = Day
price-list-how = How
price-list-by = By
price-list-taken-back = Paid back. Reason: { $reason }
price-list-sums = What remains
price-list-sums-what = Sum
price-list-remains = Remains to pay
price-list-back = To be paid back to you
price-list-version = The lines are those of version { $version } of the estimate.
price-list-not-agreed = This version was not agreed as it stands here.

# -- receipt of a deposit --
receipt-title = Deposit receipt
receipt-number = { $number }, deposit { $deposit }
receipt-lead = Received { $amount } from { $name }, as a deposit for the work on the vehicle.
receipt-deposit = Deposit
receipt-amount = Amount
receipt-how = How it was paid
receipt-day = Day
receipt-by = Received by
receipt-returned = Paid back on { $day } by { $name }, { $how }. Reason: { $reason }
receipt-counts = The deposit is taken off the price of the work.
receipt-sign = Received (signature)
