# Photos and other kept files.

photos-title = Photos and files
photos-lead = Photos are turned upright and kept without the place they were taken at. Files go up to 25 MB.
file-checksum = SHA-256
field-file_odometer = Photo of the odometer
field-file_vin_plate = Photo of the VIN plate
field-file_container_plate = Photo of the plate on the container or cylinder
field-file_deficiency = Photos of the deficiency
field-file_photo = Photos
field-file_control_unit_file = As the control unit’s own tool saved it; kept byte for byte, not looked into
field-file_document = PDF, or photos of a paper
field-file_signature = Drawn signature, or a photo of one
file-keep = Keep
file-taken = Taken { $at }
file-came = Kept { $at }

wrong-file-cut-off = The file “{ $file }” is cut off before its end: send it again
wrong-file-too-many-pixels = The picture “{ $file }” has more than { $most } megapixels: make it smaller and send it again
wrong-files = { $sentences }
wrong-signature = What was drawn did not arrive whole: draw it again, or choose a photo of the signature
