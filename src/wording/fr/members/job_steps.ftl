### The labels and descriptions of the closed lists of `practice::job_steps`: a message for each member, `List-code`.

## PlanPart

PlanPart-detector = Détecteur
    .description = Si le détecteur s'accorde sur les boucles, et comment le régler.
PlanPart-materials = Matériel
    .description = Quoi charger, combien de temps cela prend et ce que cela coûte.
PlanPart-cure = Mûrissement
    .description = S'il faut sceller par ce temps, et quand la circulation peut revenir.
PlanPart-commissioning = Mise en service
    .description = Quoi mesurer et quoi essayer avant de quitter les lieux.

## PlanExtra

PlanExtra-drawings = Dessins
    .description = Le plan, la coupe de la saignée, la réponse d'un véhicule et les temps de mûrissement, en dessins SVG.

## JobStep

JobStep-locate = Repérer ce qui est dessous
    .description = Faites repérer et marquer les services enfouis, le chauffage et l'acier avant le début du travail.
JobStep-guard = Protéger la zone de travail
    .description = Fermez la voie, guidez les gens autour, gardez-la protégée jusqu'à ce qu'elle porte de nouveau la circulation.
JobStep-isolate = Isoler le portail
    .description = Cadenassez la motorisation du portail, le secteur, la batterie et le solaire, ou bloquez le vantail mécaniquement, et postez un surveillant.
JobStep-mark_out = Tracer
    .description = Tracez à la craie les boucles et le trajet des câbles de liaison, et mesurez-les deux fois.
JobStep-cut = Couper
    .description = À l'eau, par passes, au-delà des bouts qui doivent être profonds.
JobStep-clean = Nettoyer et sécher
    .description = Lavez la boue, aspirez, soufflez jusqu'à sec; cherchez les arêtes vives et les bavures.
JobStep-bed = Lit de pose
    .description = Posez la boucle et son conduit dans leur lit, à plat, et fixez-les.
JobStep-lay = Poser le fil
    .description = Sans plis et sans outils qui l'entaillent; tous les tours dans le même sens; tenez-le au fond.
JobStep-measure_open = Mesurer avant de fermer
    .description = Résistance, inductance et isolement, avant que le scellant ou le remblai recouvre le fil; notez-les.
JobStep-seal = Sceller
    .description = Remplissez la saignée autour et au-dessus du fil, de bas en haut, sans air.
JobStep-cover = Couvrir
    .description = Couvrez la boucle avant que la surface soit posée, et tenez les machines à l'écart.
JobStep-protect = Interdire la circulation
    .description = Jusqu'à ce que le scellant porte la circulation sans que les roues en emportent, quoi que dise l'horloge.
JobStep-terminate = Finir les bouts
    .description = Torsadez la paire, soudez ou étamez les bouts, scellez chaque épissure.
JobStep-measure_sealed = Mesurer une fois fermé
    .description = Les mêmes mesures au bout du câble de liaison; elles sont le dossier pour le prochain appel.
JobStep-power_up = Alimenter et accorder
    .description = Réglez le détecteur, et laissez-le s'accorder, les voies étant vides et le portail fermé.
JobStep-prove = Prouver
    .description = Essayez avec des véhicules et avec le portail ce que le détecteur doit et ne doit pas détecter.
JobStep-restore = Rétablir et remettre
    .description = Chaque boucle branchée, chaque dispositif de protection du portail prouvé à lui seul, les mesures remises.

## Trial

Trial-tune_empty = Accorder, voies vides
    .description = Mettez sous tension sans véhicule à moins de 10 ft (3 m) et le portail fermé : chaque canal s'accorde et ne montre aucune détection.
Trial-cycle_gate = Ouvrir et fermer le portail trois fois
    .description = Ouvrez et fermez le portail trois fois, les voies étant vides : aucun canal ne détecte.
Trial-next_lane = Circulation dans la voie voisine
    .description = Laissez passer des véhicules dans la voie voisine : aucun canal ne détecte.
Trial-smallest_vehicle = Le plus petit véhicule, au pas
    .description = Passez au pas sur chaque boucle avec le plus petit véhicule à détecter, au milieu et le long des deux bords : la détection tient du premier fil au dernier.
Trial-highest_vehicle = Le véhicule le plus haut, au pas
    .description = De même avec le véhicule le plus haut; arrêtez-le, sa partie la plus haute au-dessus de la boucle : la détection tient tout du long.
Trial-power_fail = Panne de courant, véhicule sur la boucle
    .description = Stationnez sur une boucle qui retient le portail, coupez puis rétablissez le courant : le portail reste comme il est, et la boucle détecte encore le véhicule ou donne une détection.
Trial-protective_devices = Prouver les dispositifs de protection
    .description = Prouvez chaque dispositif de protection contre le coincement du portail à lui seul, comme le demandent son fabricant et le code : aucune boucle n'en tient lieu.
