# Letters and mails to customers.

# Name of the file of a letter: letters without accents, and hyphens.
letter-file-name = lettre

# -- reminder --
mail-demo = DÉMONSTRATION.
mail-subject-one = { $whose } : { $what }, { $by }
mail-subject-many = { $shop } : { $n } échéances pour votre véhicule
mail-dear = Bonjour { $name },
mail-lead = { $n ->
    [one] voici ce qui arrive à échéance pour le système de gaz de votre véhicule :
   *[other] voici les points qui arrivent à échéance pour le système de gaz de votre véhicule :
}
mail-by = au plus tard le { $day }
mail-by-or-km = au plus tard le { $day } ou à { $km } km, au premier des deux
mail-was-due = était à faire pour le { $day }
mail-slot = Appelez-nous ou écrivez-nous, nous trouverons un horaire qui vous convient :
mail-link = Les papiers de votre véhicule, ce qui arrive à échéance et votre demande de rendez-vous :
mail-link-act = Voir votre véhicule et demander un rendez-vous
mail-caution = Si vous sentez le gaz : passez à l’essence ou arrêtez-vous, fermez le robinet du réservoir, éloignez flammes et étincelles, et appelez-nous. Déjà fait ailleurs ? Dites-le-nous, nous le notons.
mail-why = Vous recevez ce message parce que nous avons monté ou contrôlé un système de gaz dans votre véhicule et que ce qui est nommé ici touche à sa sécurité ou à ses papiers.
mail-stop = Plus de rappels : ouvrez cette adresse et appuyez sur le bouton.
mail-stop-act = Plus de rappels
mail-stop-by-phone = Si vous ne voulez plus de rappels, dites-le-nous et nous arrêtons.
mail-calendar-summary = { $what }, { $plate }
mail-calendar-description = { $vehicle }, { $by }. { $shop }, { $phone }

# -- answer slip of a letter --
letter-answer = Votre réponse
letter-answer-lead = À découper et à renvoyer, ou appelez-nous.
letter-answer-come = Je souhaite venir ; de préférence le :
letter-answer-elsewhere = Fait ailleurs, le (date), par (atelier) :
letter-answer-sold = Le véhicule est vendu, le (date) :
letter-answer-no-more = Je ne veux plus de rappels.
letter-sign = Date, signature

# -- about safety --
letter-dear = Bonjour { $name },
letter-without-consent = Vous recevez cette lettre que vous ayez accepté ou non les rappels, car elle concerne la sécurité de votre véhicule.
letter-reach-us = Si quelque chose n’est pas clair, appelez-nous au { $phone }.

    { $shop }
letter-re-test = Un contrôle de votre véhicule { $plate } est à refaire
letter-re-test-text = votre véhicule { $plate } ({ $vehicle }) a notre certificat { $number }. Nous avons trouvé quelque chose qui met en doute un contrôle sur lequel il repose : { $found }

    { $reason }

    Nous refaisons le contrôle sans frais pour vous et avons réservé ce rendez-vous : { $at }. Appelez-nous s’il ne vous convient pas. D’ici là, le certificat est en cours de réexamen.

    Si vous sentez le gaz ou si le véhicule fonctionne mal au gaz, roulez à l’essence et appelez-nous aussitôt.
letter-withdrawn = Notre certificat { $number } pour votre véhicule { $plate } est retiré
letter-withdrawn-text = nous avons retiré notre certificat { $number } pour votre véhicule { $plate } ({ $vehicle }) : { $found }

    { $reason }

    Roulez à l’essence et faites fermer le gaz jusqu’à ce que le système ait été contrôlé de nouveau. Appelez-nous, nous y remédions. Demandez à votre autorité ou à votre assureur si vous pouvez rouler entre-temps.
letter-recall = Une pièce de votre véhicule { $plate } est rappelée
letter-recall-text = { $who } rappelle une pièce que porte votre véhicule { $plate } : { $part }. Le document est { $document } du { $on }.

    { $remedy }

    Appelez-nous, nous conviendrons d’un jour.
