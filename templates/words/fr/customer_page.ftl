# The customer's own page behind a link, and what it shares with every page.

language-name = Français

# -- the page --
own-lead = Pour { $name }, de { $shop }. Cette adresse n’est qu’à vous ; qui la possède voit cette page.
own-duties = Ce qui arrive à échéance
own-duties-none = Rien n’est noté pour ce véhicule.
own-papers = Papiers
own-papers-none = Aucun papier n’a encore été délivré pour ce véhicule.
own-slot = Demander un rendez-vous
own-wish = De quoi il s’agit et quels jours vous conviennent
own-phone = Téléphone où vous joindre
own-slot-ask = Envoyer
own-slot-asked = L’atelier a votre demande. Il vous appelle ou vous écrit avec un horaire.
own-reminders = Rappels d’échéance
own-reminders-lead = Sans rappels, vous surveillez vous-même les dates. Les rappels de pièces et les lettres de sécurité continuent d’arriver.
own-reminders-off = Plus de rappels
own-reminders-are-off = Les rappels sont arrêtés. Dites à l’atelier si vous en voulez de nouveau.

# -- the public page behind a label --
register-shop = Atelier
register-make = Marque
register-vin-last-4 = Quatre derniers caractères du VIN
register-chassis-last-4 = Quatre derniers caractères du numéro de châssis
vehicle-page-title = Véhicule au gaz
vehicle-page-over = en retard
vehicle-page-unknown = Aucun véhicule n’a ce code ici. Comparez-le avec l’étiquette.

# -- shared with every page --
app-description = Dossiers, preuves et papiers d’un atelier GPL et GNV
skip-to-content = Aller au contenu
notice-demo = DÉMONSTRATION. Tout ici est inventé ; aucun papier qui en sort n’est valable.
notice-insecure = Cette adresse n’est pas chiffrée. N’importe qui sur ce réseau peut lire ce qui est saisi ici.
kit-optional = facultatif
kit-problems-title = Rien n’est encore enregistré
kit-problems = { $n ->
    [one] { $n } saisie à revoir
   *[other] { $n } saisies à revoir
}
kit-error = Erreur :

# -- what is wrong with an entry --
wrong-empty = Rien n’est saisi ici
wrong-too-long = { $most } caractères au plus ; il y en a { $got }
wrong-control-characters = Contient des caractères qui ne s’impriment pas
wrong-damaged = Des lettres sont arrivées abîmées, montrées par �. Ressaisissez-les
wrong-line-break = Une seule ligne
