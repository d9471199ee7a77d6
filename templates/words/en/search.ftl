# What the one box finds.

search-title = Found
search-none = Nothing is found by “{ $q }”. The box looks for plate, VIN, name, phone, job number, serial and certificate.
search-nothing-asked = The box above looks for plate, VIN, name, phone, job number, serial and certificate.
search-parts = Parts
search-part = { $category } { $serial }
search-part-on = on { $plate }
search-part-off = was on { $plate }
