# What papers say around the facts of their content.

## Every paper

paper-rules = Reglas: { $rules }
paper-check = Comprobar: { $how }
paper-key = clave { $key }
paper-preview = VISTA PREVIA
paper-preview-notice = VISTA PREVIA. No emitido, no firmado. Este documento no prueba nada.
paper-photos = Fotos
paper-photo = Foto
paper-photo-missing = Este archivo se guarda con el expediente, pero no se puede imprimir aquí.
paper-not-signed = Documento de trabajo, sin firma. Lo que vale es el expediente.
paper-end = Fin de { $number }
paper-software = Hecho con Fuelwright { $version }
paper-rule-set = Conjunto de reglas { $name } { $version }, SHA-256 { $sum }
paper-code-alt = Código QR que lleva a { $address }
paper-file-signed = El contenido firmado de este documento
paper-file-keeper = Los datos del titular, que el contenido firmado lleva como huella electrónica
paper-beside = El mismo contenido en otro idioma ({ $language }), para leerlo junto al original. Lo que vale es el texto de las páginas anteriores ({ $original }).
paper-copy = El mismo contenido en otro idioma ({ $language }), para leerlo junto al original. Lo que vale es el texto original ({ $original }).

paper-person-authorised = { $name }, autorización { $number }
paper-person-authorised-until = { $name }, autorización { $number } hasta el { $until }

## Vehicle, keeper, system, parts

paper-vehicle = Vehículo
paper-make-model = Marca, modelo
paper-plate = Matrícula
paper-not-registered = sin matricular
paper-vin = VIN
paper-vin-derived = El VIN termina en
paper-chassis-number = Número de bastidor
paper-chassis-number-derived = Termina en
paper-vin-ends = { $last7 }, últimos cuatro { $last4 }
paper-first-registered = Primera matriculación
paper-odometer = Cuentakilómetros
paper-no-odometer = no lleva
paper-type-code = Tipo, variante
paper-category = Categoría
paper-engine = Motor
paper-engine-code = Código, n.º de motor
paper-power = { $power } a { $rpm }/min
paper-engine-cylinders = { $n ->
    [one] 1 cilindro del motor
   *[other] { $n } cilindros del motor
}

paper-keeper = Titular
paper-name = Nombre
paper-address = Dirección
paper-phone = Teléfono
paper-mail = Correo

paper-gas-system = Sistema de gas
paper-fuel = Combustible
paper-system = Sistema
paper-system-approval = Homologación del sistema
paper-approval-holder = Titular de homologación
paper-control-unit = Unidad de control

paper-parts = Piezas montadas
paper-part = Pieza
paper-maker-and-type = Fabricante, tipo
paper-approval-mark = Marca de homologación
paper-serial = N.º de serie, lote
paper-made = Fabricación
paper-next-duty = Próximo vencimiento

paper-container-of = { $all ->
    [one] Depósito
   *[other] Depósito { $n } de { $all }
}
paper-cylinder-of = { $all ->
    [one] Cilindro
   *[other] Cilindro { $n } de { $all }
}
paper-maker = Fabricante
paper-shape = Forma o tipo
paper-water-capacity = Capacidad de agua
paper-capacity-both = { $stamped }, en litros enteros { $floor } L
paper-fill-limit = Límite de llenado
paper-fill-both = { $percent } %, llenado hasta { $litres } L
paper-working-pressure = Presión de servicio
paper-test-pressure = Presión de prueba
paper-last-tested = Última prueba
paper-inspection-kind = Inspección
paper-next-test = Próxima prueba, hasta
paper-container-end-of-life = Fin de vida útil
paper-cylinder-end-of-life = Fin de vida útil
paper-no-end-of-life = las reglas no fijan ninguno
paper-location = Lugar en el vehículo
paper-findings = Se ha encontrado:

## Measured

paper-measured = Mediciones
paper-test = Ensayo
paper-result = Resultado
paper-limit = Límite
paper-decision = Decisión
paper-instrument = Instrumento
paper-limit-source = Límites: { $source }
paper-from-outside = resultado externo: { $body }
paper-record = registro { $record }
paper-entered-later = anotado después

paper-verdict-passes-guarded = cumple, con guarda
paper-verdict-passes-simple = cumple, simple
paper-verdict-passes-observed = cumple
paper-verdict-fails-guarded = no cumple, con guarda
paper-verdict-fails-simple = no cumple, simple
paper-verdict-fails-observed = no cumple
paper-verdict-cannot-tell-guarded = no concluyente
paper-verdict-cannot-tell-simple = no concluyente
paper-verdict-cannot-tell-observed = no concluyente

paper-rule-guarded = Con banda de guarda: el resultado y su incertidumbre expandida (k = { $k }) quedan dentro del límite. Riesgo de aceptación errónea inferior al 2,5 % (ILAC-G8:09/2019, 4.2.2).
paper-rule-simple = Aceptación simple: el resultado queda dentro del límite. Riesgo de aceptación errónea de hasta el 50 % con un resultado en el límite (ILAC-G8:09/2019, 4.2.1).

paper-instruments = Instrumentos
paper-what = Qué
paper-calibration = Certificado de calibración
paper-good-until = Válido hasta

paper-late-entries = Anotado después de ocurrir
paper-happened = Ocurrió
paper-entered = Anotado
paper-by = Por
paper-reason = Motivo

## Proofs, inspection, conformity

paper-proof = Prueba
paper-exception = Estado
paper-decided-by = Decidido por
paper-exception-waived = dispensada
paper-exception-not-applicable = no procede
paper-exception-shop-limit = cumplida con un límite del taller

paper-inspection = Inspección
paper-place = Lugar
paper-ended = Terminada
paper-inspector = Inspector
paper-next-inspection = Próxima inspección, hasta
paper-present-again = Presentar de nuevo, hasta
paper-repeats = Repite
paper-no-deficiencies = No se han encontrado defectos.
paper-item = Elemento
paper-deficiency = Defecto
paper-severity = Calificación
paper-severity-minor = leve
paper-severity-major = grave
paper-severity-dangerous = muy grave

paper-conformity = Pruebas y declaración de conformidad
paper-against = Con respecto a
paper-covers = Alcance
paper-conformity-state = Estado
paper-conforms = cumple
paper-conforms-not = no cumple

## What comes next

paper-vehicle-papers = Por cambiar en la documentación del vehículo: { $changes }
paper-next = Próximos vencimientos
paper-due-when-first = Hasta, lo que ocurra antes
paper-due-decided-by = Decidido por
paper-due-at-in-short = { $km }
paper-due-either-in-short = { $first } o { $second }
paper-authority-test = Prueba propia de la autoridad
paper-still-to-come = pendiente
paper-remarks = Observaciones
paper-caution = Precaución: { $caution }

## Certificates

certificate-title-conversion = Certificado de conversión a { $fuel }
certificate-title-inspection = Certificado de inspección, sistema de { $fuel }
certificate-title-removal = Certificado de desmontaje de un sistema de { $fuel }
certificate-title-container = Certificado del depósito de { $fuel }
certificate-title-cylinder = Certificado del cilindro de { $fuel }

certificate-number-issued = { $number } · emitido el { $date }
certificate-replaces = Este documento sustituye a { $number }. Motivo: { $reason }
certificate-issue-line = { $place } · expediente { $job } · recibido el { $received } · terminado el { $finished }

certificate-lead-conversion = En este vehículo se ha montado el sistema de gas que se indica abajo.
certificate-lead-inspection = El sistema de gas de este vehículo se ha inspeccionado; el resultado figura abajo.
certificate-lead-removal = El sistema de gas que se indica abajo se ha desmontado de este vehículo, que funciona solo con gasolina.
certificate-lead-container = El depósito que se indica abajo se ha sometido a los trabajos o a la inspección que dice este documento.
certificate-lead-cylinder = El cilindro que se indica abajo se ha sometido a los trabajos o a la inspección que dice este documento.
certificate-fitting-check = Hemos comprobado el montaje, ya que la homologación del sistema no cubre por sí misma esa comprobación (UN R115, 1.3).
certificate-proofs-all = { $asked ->
    [one] Se ha cumplido la única prueba exigida.
   *[other] Se han cumplido las { $asked } pruebas exigidas.
}
certificate-proofs-all-but-found = Decide lo encontrado: se ha cumplido cada una de las pruebas exigidas ({ $asked }), pero abajo figura un defecto que no es leve.
certificate-proofs-some = Pruebas exigidas que se han cumplido: { $met } de { $asked }; las demás se indican abajo, con persona y motivo.
certificate-to-be-confirmed = Estas líneas se han aplicado, pero nadie las ha confirmado todavía. Por confirmar con su autoridad: { $lines }

certificate-keeper-apart = Los datos del titular se guardan aparte de esta copia.
certificate-keeper-digest = Huella electrónica de los datos del titular en el contenido firmado: { $digest }

certificate-signed-by = Firmante: { $person }. Firmado el { $at }.
certificate-worked-by = Trabajo y ensayos: { $person }.
certificate-holds = Los resultados valen solo para este vehículo en el día del ensayo. Prevalecen la normativa local y la práctica profesional autorizada.
certificate-check-online = Firmado electrónicamente. El código del pie muestra el estado de este documento a día de hoy; su PDF lleva el contenido firmado.
certificate-check-by-phone = Firmado electrónicamente; el PDF lleva el contenido firmado. Para conocer el estado de este documento a día de hoy, llame al { $phone } y dé el código del pie.
certificate-follows = Contenido del documento anterior de su serie, SHA-256 { $sum }
certificate-key-id = Clave de firma { $key }

## Test record

record-number-issued = { $number } · emitido el { $date }
record-lead = Los resultados siguientes se refieren solo al objeto ensayado, tal como se recibió y en el día en que se ensayó.
record-body = Informe
record-place = Lugar del ensayo
record-customer = Cliente
record-contact = Contacto
record-method = Método
record-received = Recibido
record-began = Inicio
record-ended = Fin
record-sampling = Muestreo
record-no-sampling = ninguno
record-deviations = Desviaciones del método
record-no-deviations = ninguna
record-job = Expediente
record-item = Objeto ensayado
record-vehicle = Vehículo
record-tested = Ensayado
record-condition = Estado al recibirlo
record-conditions = Condiciones
record-leak = Prueba de estanqueidad, { $section }
record-attempt = Intento
record-boundaries = Tramo cerrado
record-gas = Gas de ensayo
record-pressure-start-absolute = Presión inicial, absoluta
record-pressure-end-absolute = Presión final, absoluta
record-pressure-start-gauge = Presión inicial, relativa
record-pressure-end-gauge = Presión final, relativa
record-ambient-pressure = Presión atmosférica
record-temperature-start = Temperatura inicial
record-temperature-end = Temperatura final
record-temperature-ambient = Temperatura del aire
record-volume = Volumen
record-volume-known = Volumen conocido por
record-joints = Uniones, { $n }
record-rate = Tasa de fuga
record-rate-limit = Límite
record-limit-from = Origen del límite
record-repair = Reparado antes
record-customer-supplied = Declarado por el cliente, no comprobado por nosotros
record-authorised = Autorizado por
record-technician = Ensayado por
record-replaces = Este informe sustituye a { $number }. Motivo: { $reason }
record-whole = Este informe se copia entero o no se copia.
