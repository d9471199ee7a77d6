# The customer's own page behind a link, and what it shares with every page.

language-name = Español

# -- the page --
own-lead = Para { $name }, de { $shop }. Esta dirección es solo suya; quien la tenga ve esta página.
own-duties = Qué vence
own-duties-none = No hay nada anotado para este vehículo.
own-papers = Documentos
own-papers-none = Todavía no se ha emitido ningún documento para este vehículo.
own-slot = Pedir cita
own-wish = Qué necesita y qué días le convienen
own-phone = Teléfono para localizarle
own-slot-ask = Enviar
own-slot-asked = El taller tiene su petición. Le llamará o escribirá con una hora.
own-reminders = Recordatorios
own-reminders-lead = Sin recordatorios, usted vigila las fechas. Las llamadas a revisión y las cartas de seguridad siguen llegando.
own-reminders-off = No más recordatorios
own-reminders-are-off = Los recordatorios están desactivados. Diga al taller si los quiere de nuevo.

# -- the public page behind a label --
register-shop = Taller
register-make = Marca
register-vin-last-4 = Últimos cuatro caracteres del VIN
register-chassis-last-4 = Últimos cuatro caracteres del número de bastidor
vehicle-page-title = Vehículo de gas
vehicle-page-over = vencido
vehicle-page-unknown = Ningún vehículo tiene aquí este código. Compárelo con la etiqueta.

# -- shared with every page --
app-description = Expedientes, pruebas y documentos de un taller de GLP y GNC
skip-to-content = Ir al contenido
notice-demo = DEMOSTRACIÓN. Aquí todo es inventado; ningún documento que salga de aquí es válido.
notice-insecure = Esta dirección no está cifrada. Cualquiera en esta red puede leer lo que se escribe aquí.
kit-optional = opcional
kit-problems-title = Todavía no se ha guardado nada
kit-problems = { $n ->
    [one] { $n } dato por revisar
   *[other] { $n } datos por revisar
}
kit-error = Error:

# -- what is wrong with an entry --
wrong-empty = Aquí no se ha escrito nada
wrong-too-long = Como máximo { $most } caracteres; aquí hay { $got }
wrong-control-characters = Contiene caracteres que no se pueden imprimir
wrong-damaged = Algunas letras llegaron dañadas y se ven como �. Escríbalas de nuevo
wrong-line-break = Una sola línea
