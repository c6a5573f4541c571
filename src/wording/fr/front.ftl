### La page d'accueil, et la page qui contient l'assistant pour un cadre.

front-title = Quelles boucles faut-il à cette ouverture?
front-lead = Loopwright répond à ce qu’on demande à un spécialiste des boucles de détection : quelles boucles il faut à un portail, une barrière, un service au volant ou une voie, combien de tours, si le détecteur s’accorde, quoi charger dans le camion, si l’on peut sceller aujourd’hui et ce qui est en panne. Une boutique en ligne, un logiciel de soumission ou l’application d’un installateur pose la question; la réponse est calculée, dit ce qu’elle suppose et donne ses mises en garde, et vient en pieds et en mètres, en trois langues.
front-skip = Aller à la question
front-pages = Pages
front-requests = Questions et réponses
front-guide = Guide des intégrateurs (en anglais)
front-changes = Changements (en anglais)
front-description = Description OpenAPI
front-languages = Langues
front-language = Français
front-try = Demandez pour votre ouverture
front-no-script = Ceci demande des scripts. Les questions ci-dessous n’en demandent pas.
front-behind = Ce qu’il y a derrière
front-behind-lead = Tout programme peut demander la même chose. Ceux-ci demandent ce que vous avez demandé plus haut.
front-answer = La réponse
front-embed = Sur une page à vous
front-embed-lead = Un script et une balise. Le condensé fixe le fichier, qui reste servi sans changement tant que dure cette version du contrat du service.
front-frame = Quelles boucles faut-il à mon ouverture?
