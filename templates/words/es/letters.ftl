# Letters and mails to customers.

# Name of the file of a letter: letters without accents, and hyphens.
letter-file-name = carta

# -- reminder --
mail-demo = DEMOSTRACIÓN.
mail-subject-one = { $whose }: { $what }, { $by }
mail-subject-many = { $shop }: { $n } vencimientos de su vehículo
mail-dear = Buenos días, { $name }:
mail-lead = { $n ->
    [one] En el sistema de gas de su vehículo vence lo siguiente:
   *[other] En el sistema de gas de su vehículo vencen los puntos siguientes:
}
mail-by = hasta el { $day }
mail-by-or-km = hasta el { $day } o a los { $km } km, lo que ocurra antes
mail-was-due = venció el { $day }
mail-slot = Llámenos o escríbanos y buscamos una hora que le convenga:
mail-link = Los documentos de su vehículo, qué vence y la petición de cita:
mail-link-act = Ver su vehículo y pedir cita
mail-caution = Si huele a gas: pase a gasolina o deténgase, cierre la válvula del depósito, mantenga lejos llamas y chispas, y llámenos. ¿Ya se hizo en otro sitio? Díganoslo y lo anotamos.
mail-why = Recibe este mensaje porque montamos o revisamos un sistema de gas en su vehículo y lo aquí indicado afecta a su seguridad o a sus documentos.
mail-stop = No más recordatorios: abra esta dirección y pulse el botón.
mail-stop-act = No más recordatorios
mail-stop-by-phone = Si no quiere más recordatorios, díganoslo y dejamos de enviarlos.
mail-calendar-summary = { $what }, { $plate }
mail-calendar-description = { $vehicle }, { $by }. { $shop }, { $phone }

# -- answer slip of a letter --
letter-answer = Su respuesta
letter-answer-lead = Recorte y devuelva, o llámenos.
letter-answer-come = Quiero ir; mejor el:
letter-answer-elsewhere = Hecho en otro sitio, el (fecha) por (taller):
letter-answer-sold = El vehículo está vendido, el (fecha):
letter-answer-no-more = No quiero más recordatorios.
letter-sign = Fecha, firma

# -- about safety --
letter-dear = Buenos días, { $name }:
letter-without-consent = Recibe esta carta haya aceptado o no los recordatorios, porque trata de la seguridad de su vehículo.
letter-reach-us = Si algo no está claro, llámenos al { $phone }.

    { $shop }
letter-re-test = Hay que repetir una prueba de su vehículo { $plate }
letter-re-test-text = Su vehículo { $plate } ({ $vehicle }) tiene nuestro certificado { $number }. Hemos encontrado algo que pone en duda una prueba en la que se basa: { $found }

    { $reason }

    Repetimos la prueba sin coste para usted y le hemos reservado esta cita: { $at }. Llámenos si no le conviene. Hasta entonces el certificado está en revisión.

    Si huele a gas o el vehículo funciona mal con gas, conduzca con gasolina y llámenos enseguida.
letter-withdrawn = Nuestro certificado { $number } de su vehículo { $plate } queda retirado
letter-withdrawn-text = Hemos retirado nuestro certificado { $number } de su vehículo { $plate } ({ $vehicle }): { $found }

    { $reason }

    Conduzca con gasolina y haga cerrar el gas hasta que el sistema se haya probado de nuevo. Llámenos y lo arreglamos. Pregunte a su autoridad o a su aseguradora si puede conducir entretanto.
letter-recall = Una pieza de su vehículo { $plate } está llamada a revisión
letter-recall-text = { $who } llama a revisión una pieza que lleva su vehículo { $plate }: { $part }. El documento es { $document }, del { $on }.

    { $remedy }

    Llámenos y acordamos un día.
