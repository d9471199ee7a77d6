# What a road comparison says, on screen and in the calibration record.

road-phase-before = Antes de las correcciones
road-phase-after = Después de las correcciones
road-stated-petrol = gasolina
road-stated-gas = gas
road-title-alike = Igual con ambos combustibles
road-title-apart = El gas difiere de la gasolina
road-title-cannot-tell = Todavía no concluyente
road-said-alike = Puntos de funcionamiento con al menos { $visits } pasadas con cada combustible: { $judged }; cada uno queda dentro del { $within } %.
road-said-apart = De { $judged } puntos de funcionamiento con al menos { $visits } pasadas con cada combustible, { $apart ->
        [one] 1 se desvía
       *[other] { $apart } se desvían
    } más del { $deviates } %.
road-said-cannot-tell = Puntos de funcionamiento con al menos { $visits } pasadas con cada combustible: { $judged }; iguales: { $good }, sin decidir: { $undecided }. Sin conducción suficiente: { $few }.
road-said-lean = Lo más alejado: { $region }, donde la mezcla con gas es un { $percent } más pobre.
road-said-rich = Lo más alejado: { $region }, donde la mezcla con gas es un { $percent } más rica.
road-fuel-logged = Qué combustible se quemaba está registrado.
road-fuel-stated = Combustible declarado, no registrado.
road-interval = { $low } a { $high }
road-on-petrol = con gasolina
road-on-gas = con gas
road-on-both = con cada combustible
road-drive-title = Qué conducir a continuación
road-drive = { $visits ->
        [one] 1 pasada más
       *[other] { $visits } pasadas más
    } en { $region }, { $fuel }
road-drive-more = { $n ->
        [one] y un intervalo más
       *[other] y { $n } intervalos más
    }
road-lean-at-load = La mezcla con gas es un { $percent } más pobre donde más trabaja el motor. Ahí la unidad de control de gasolina no mira la sonda lambda, así que nada la corrige: las válvulas de escape y sus asientos se queman, los pistones se sobrecalientan. No fuerce el vehículo hasta que se haya corregido.
road-nozzle-small = La mezcla con gas es un { $percent } más pobre en toda la zona de carga alta: más de lo que arregla una corrección. La boquilla es demasiado pequeña.
road-nozzle-open = El inyector de gas está abierto el { $duty } del tiempo a carga alta, y ahí la mezcla con gas es un { $percent } más pobre: no queda tiempo entre dos inyecciones. La boquilla es demasiado pequeña.
road-nozzle-large = La mezcla con gas es un { $percent } más rica al ralentí: más de lo que arregla una corrección. La boquilla es demasiado grande.
road-warning-no-coolant = El refrigerante no se registró: no se pudieron apartar las filas con motor frío.
road-warning-no-closed-loop = El bucle cerrado no se registró: no se pudieron apartar las filas en bucle abierto, y ahí los tiempos de inyección son iguales sea cual sea la mezcla.
road-warning-no-manifold = La presión del colector no se registró: la carga se deduce del tiempo de inyección sin los ajustes de combustible.
road-warning-load-unknown = No se registraron ni la presión del colector ni los ajustes de combustible: no se puede valorar nada.
road-warning-one-trim = Solo se registró uno de los dos ajustes de combustible; lo que debe compararse son los totales.
road-warning-load-unseen = La carga alta se condujo solo en bucle abierto: ahí no se sabe nada. Use una lectura de banda ancha si la hay.
road-warning-short-times = Algunos tiempos de inyección son inferiores a 4 ms: el tiempo muerto del inyector desvía ahí las correcciones unos pocos puntos porcentuales.
road-warning-broken = No se pudo leer el { $percent } de las líneas.
road-cells = Puntos de funcionamiento
road-column-speed = Régimen, /min
road-column-manifold = Colector, kPa
road-column-injection = Inyección, ms
road-column-visits = Pasadas con gasolina, con gas
road-column-deviation = Desviación, %
road-column-verdict = Valoración
road-column-correction = Corregir, %
road-cell-good = Igual
road-cell-lean = Pobre con gas
road-cell-rich = Rica con gas
road-cell-undecided = Sin decidir
road-cell-few = Falta conducir aquí: { $petrol } más con gasolina, { $gas } con gas
road-cell-no-feedback = Aquí sin regulación: bucle abierto
road-cell-load-unknown = Carga desconocida
road-trims = Ajustes de combustible con ambos combustibles
road-column-regime = Dónde
road-regime-idle = Ralentí
road-regime-raised-idle = Ralentí acelerado
road-regime-cruise = Crucero
road-regime-load = Carga
road-aside = Filas apartadas
road-column-why = Motivo
road-column-rows = Filas
road-rows = Filas leídas: { $petrol } con gasolina, { $gas } con gas.
road-aside-cold = Motor frío
road-aside-changeover = Demasiado pronto tras cambiar de combustible
road-aside-fuel-cut = Sin inyección: retención
road-aside-transient = Régimen o carga en cambio rápido
road-aside-open-loop = Bucle abierto
road-aside-out-of-range = Un valor que no da ningún motor
road-aside-gap = Falta un valor
road-aside-time-back = El tiempo no avanza
road-aside-other-fuel = Otro combustible que el de su registro
road-aside-short-visit = Permanencia demasiado corta
road-aside-broken = Línea ilegible
road-aside-counted = { $why }: { $rows }
road-logs-title = Registros
road-fuel_known = Combustible
calibration-record-road = Comparación en carretera
calibration-record-no-road = No se ha aceptado ninguna comparación en carretera.
calibration-record-road-verdict = Resultado
calibration-record-road-phase = Conducido
calibration-record-road-rows = Filas
calibration-record-road-no-cells = Ningún punto de funcionamiento se condujo con ambos combustibles.
calibration-record-road-interval = Intervalo, %
calibration-record-road-advice = Correcciones aconsejadas
calibration-record-road-no-advice = Nada que corregir.
calibration-record-road-no-aside = Ninguna.
calibration-record-road-stated = { $fuel }: declarado, no registrado
road-chart-title = Desviación según régimen y carga
road-chart-description = Puntos de funcionamiento con ambos combustibles: { $good } dentro del { $within } %, { $apart } con diferencia segura, { $undecided } sin decidir. La tabla contiene los números.
road-chart-good = igual
road-chart-deviates = difiere
road-chart-undecided = sin decidir
road-chart-not-enough = conducción insuficiente
road-chart-no-feedback = aquí sin regulación
road-coverage-title = Pasadas con cada combustible
road-coverage-description = Cuántas veces se condujo cada punto de funcionamiento; { $enough } pasadas bastan. La tabla contiene los números.
road-coverage-petrol = Pasadas con gasolina
road-coverage-gas = Pasadas con gas
road-coverage-few = menos de { $enough }
road-coverage-enough = { $enough } o más
road-trims-description = Ajuste a corto y a largo plazo juntos, con gasolina y con gas. La tabla contiene los números.
road-trims-percent = Ajuste total, %
road-strip-petrol = Registro con gasolina a lo largo del tiempo
road-strip-gas = Registro con gas a lo largo del tiempo
road-strip-both = Registro a lo largo del tiempo
road-strip-description = Régimen, carga y tiempo de inyección; sombreado donde se apartaron filas. La tabla las cuenta.
road-strip-time = Tiempo, s
