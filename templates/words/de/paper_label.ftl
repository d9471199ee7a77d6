# The label on the vehicle.
label-title = Gasanlage { $fuel }
label-vehicle = { $plate } · { $last4 }
label-approval = Genehmigung { $mark }
label-no-approval = Keine Genehmigung als Ganzes; Teile sind einzeln genehmigt
label-fitted = eingebaut am { $day }
label-container-lpg = Behälter
label-container-cng = Flasche
label-container-filled = { $litres } L, gefüllt bis { $percent } %
label-container-pressure = { $litres } L, { $bar } bar
label-container-made = hergestellt { $day }
label-container-test = nächste Prüfung bis { $day }
label-next = Nächste Termine
label-ask = Termine und Werkstatt:
label-code = Code { $code }
label-call = Fragen an { $shop }, { $phone }
label-code-alt = QR-Code, der zur öffentlichen Seite dieses Fahrzeugs führt
label-demonstration = VORFÜHRUNG

# -- its code, and the page behind it --
register-label = Fahrzeugschild
register-make-label = Fahrzeugschild erstellen
register-make-label-lead = Für dieses Fahrzeug wird ein zufälliger Code vergeben. Er öffnet eine öffentliche Seite mit den nächsten Terminen und der Werkstatt; keine Papiere, keine Namen. Mit 100 % drucken, 105 mm mal 74 mm. Schilder und Aufkleber, die ein Land vorschreibt, kommen von dort, nicht von hier.
deed-label-made = Fahrzeugschild erstellt
