# The places on a job file where an entry or a photo stands; `.lead` is said above its form.

slot-engine-calibration = Calibración
    .lead = En caliente, en bucle cerrado, sin códigos de avería. Los valores fijados, con sus propias palabras; el programa propio de la unidad de control sigue siendo de su fabricante.
slot-trims = Ajustes de combustible con ambos combustibles
    .lead = En los mismos puntos, en caliente, en bucle cerrado. El bucle abierto no prueba nada: plena carga, calentamiento, retención, justo después de conmutar.
slot-after-drive = Después de conducir con ambos combustibles
    .lead = Códigos de avería y estado de los monitores, leídos de nuevo.

slot-photo-odometer = Cuentakilómetros
slot-photo-vin-plate = Placa del VIN
slot-photo-container-plate = Placa del depósito o cilindro
slot-photo-photo = Otras fotos
slot-photo-document = Documentos
slot-photo-control-unit-file = Archivo de la unidad de control
slot-photo-signature = Firmas

slot-cylinder-table = Cilindros del motor
    .lead = Qué inyector de gas alimenta cada cilindro del motor. Pase cada cilindro del motor a gasolina por separado: el motor debe responder.
slot-checklist = Lista de comprobación
    .lead = Lo que queda abierto se puede responder después. Una respuesta que no cambia conserva las iniciales y la hora con que se dio.
slot-level-sensing = Indicación de nivel
    .lead = Cómo sabe el conductor cuánto gas queda.

slot-heat-sizing = Calor
    .lead = Qué debe aportar el vaporizador o el regulador de presión a potencia nominal, y si el elegido puede hacerlo.
slot-line-sizing = Mangueras y tubos
    .lead = Pérdida de presión y velocidad a potencia nominal: una manguera demasiado estrecha deja al motor sin gas en la zona alta.
slot-cylinder-sizing = Cilindro
    .lead = Cuánto contiene el cilindro, cómo se mueve su manómetro con la temperatura, hasta dónde llega y si el eje lo soporta.
slot-discharge = Coeficiente de descarga, medido
    .lead = Lo que una boquilla de este taller deja pasar de verdad. La hoja de boquillas se abre entonces con ese valor.

slot-hand-over = Entrega
    .lead = Explique cada tema junto al vehículo antes de marcarlo. Lo que no se marca queda abierto en las pruebas.

slot-deficiencies = Defectos
    .lead = Lo que se ha encontrado, elemento por elemento. Registre la lista también cuando no se haya encontrado nada: dice que alguien ha mirado.
slot-vessel-check = Revisión de depósito o cilindro
    .lead = Cada recipiente: cómo se ha revisado, qué se ha encontrado y qué significa.
slot-photo-deficiency = Defectos

slot-arrival = Cómo llegó
    .lead = Cuentakilómetros, lo que dice el cliente y, si ya lo hay, el sistema de gas del vehículo.

slot-leak-joints-lpg-liquid = Uniones, fase líquida
    .lead = Del depósito al vaporizador, a presión de servicio. Un punto que no se moja no prueba nada.
slot-leak-joints-lpg-vapour = Uniones, fase gaseosa
    .lead = Del vaporizador a los inyectores, a presión de servicio. Un punto que no se moja no prueba nada.
slot-leak-joints-cng-high = Uniones, alta presión
    .lead = Del cilindro al regulador, a presión de servicio. No apriete nunca una unión con presión.
slot-leak-joints-cng-low = Uniones, baja presión
    .lead = Del regulador a los inyectores, a presión de servicio. Un punto que no se moja no prueba nada.
slot-exhaust-petrol = Gases de escape con gasolina
    .lead = Motor caliente, sonda bien dentro del escape, primero al ralentí, después al ralentí acelerado sin carga.
slot-exhaust-gas = Gases de escape con gas
    .lead = Motor y gas calientes, sonda bien dentro del escape, primero al ralentí, después al ralentí acelerado sin carga.
slot-function-checks = Comprobaciones de funcionamiento
    .lead = Lo que debe funcionar antes de que salga el vehículo. Un gas que no se corta y una ventilación cerrada no se pueden dispensar.
slot-leak-decay-lpg-liquid = Caída de presión, fase líquida
slot-leak-decay-lpg-vapour = Caída de presión, fase gaseosa
slot-leak-decay-cng-high = Caída de presión, alta presión
slot-leak-decay-cng-low = Caída de presión, baja presión

slot-road = Comparación en carretera
    .lead = Tiempo de inyección de gasolina con ambos combustibles, al mismo régimen y carga del motor, en caliente y en bucle cerrado. Donde la mezcla con gas es pobre, la unidad de control de gasolina lo alarga; donde es rica, lo acorta.

slot-nozzle-sizing = Boquilla
    .lead = La boquilla más pequeña que todavía entrega el caudal nominal de combustible en el tiempo disponible, y dosifica al ralentí.
slot-container-sizing = Depósito
    .lead = Cuánto contiene el depósito en su parada de llenado, cuánto puede calentarse, hasta dónde llega y si el eje lo soporta.

slot-suitability = Aptitud
    .lead = El motor con gasolina, en caliente, antes de cualquier trabajo. Lo que se encuentre aquí lo acepta primero el cliente.
