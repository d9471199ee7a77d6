# Papers about the price of a job: the estimate, the receipt of a deposit, the final price list.

# Names of their files: letters without accents, and hyphens.
estimate-paper-file = presupuesto
price-list-file = lista-de-precios
receipt-file = recibo

estimate-paper-title = Presupuesto
estimate-paper-number = { $number }, versión { $version }
estimate-paper-lead = Lo que se calcula que costará el trabajo en su vehículo.

# -- what these papers share --
priced-parties = Cliente y vehículo
priced-customer = Cliente
priced-address = Dirección
priced-vehicle = Vehículo
priced-plate = Matrícula
priced-job = Trabajo
priced-lines = Piezas y mano de obra
priced-what = Concepto
priced-kind = Tipo
priced-quantity = Cantidad
priced-price = Precio por unidad, { $currency }
priced-amount = Importe, { $currency }
priced-total = Suma
priced-terms = Condiciones
priced-until = Este presupuesto es válido hasta el { $day }.
priced-no-until = Este presupuesto no tiene fijado un último día. Pregunte antes de contar con él más adelante.
priced-change = Todo cambio se acuerda con usted antes del trabajo al que se refiere: cuánto, cómo, por quién y cuándo.
priced-no-invoice = Esto no es una factura fiscal.
priced-agreed = Acordado { $how } con { $name } el { $day }: { $amount }. Anotado por { $person }.
priced-not-agreed = Aún no acordado. Ningún trabajo empieza antes de que usted esté de acuerdo.
priced-sign = De acuerdo (nombre, día, firma)
line-kind-part = Pieza
line-kind-work = Mano de obra
line-kind-other = Otros
line-kind-discount = Descuento
agreed-how-in-person = en persona
agreed-how-phone = por teléfono
agreed-how-writing = por escrito

# -- final price list --
price-list-title = Lista final de precios
price-list-lead = Lo que costó el trabajo, lo que se pagó antes y lo que queda por pagar.
price-list-paid = Pagado antes
price-list-nothing-paid = Antes no se pagó nada.
price-list-day = Día
price-list-how = Cómo
price-list-by = Por quién
price-list-taken-back = Devuelto. Motivo: { $reason }
price-list-sums = Lo que queda
price-list-sums-what = Partida
price-list-remains = Queda por pagar
price-list-back = A devolverle a usted
price-list-version = Las líneas son las de la versión { $version } del presupuesto.
price-list-not-agreed = Esta versión no se acordó tal como está aquí.

# -- receipt of a deposit --
receipt-title = Recibo de anticipo
receipt-number = { $number }, anticipo { $deposit }
receipt-lead = Recibido { $amount } de { $name }, como anticipo para el trabajo en el vehículo.
receipt-deposit = Anticipo
receipt-amount = Importe
receipt-how = Cómo se pagó
receipt-day = Día
receipt-by = Recibido por
receipt-returned = Devuelto el { $day } por { $name }, { $how }. Motivo: { $reason }
receipt-counts = El anticipo se descuenta del precio del trabajo.
receipt-sign = Recibido (firma)
