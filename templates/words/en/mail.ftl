# Messages to the shop, and the page that prints a letter. What customers read stands in letters.ftl.

mail-slot-asked-subject = { $plate }: the keeper asks for a time
mail-slot-asked-text = { $name } asks for a time for { $vehicle }.
    { $wish }
    Phone: { $phone }

letter-title = Letter
letter-as-pdf = The same as a PDF
letter-print = Print this page, post it, then note it here.
