# Labels and hints of fields. One name is field, label, hint and error id: `field-odometer_km`.
# A label that only one screen uses stands in the file of that screen.

field-name = Name
field-note = Note
field-reason = Reason
field-odometer_km = Odometer
