### The labels and descriptions of the closed lists of `practice::cautions`: a message for each member, `List-code`.

## CautionCode

CautionCode-not_for_people = Une boucle ne détecte pas les personnes
    .description = Une boucle pour véhicules détecte le métal, pas les personnes, et n'est pas un dispositif de protection contre le coincement. Le portail a besoin de ses propres dispositifs homologués, et les piétons, de leur propre passage.
CautionCode-local_codes = Les codes locaux décident
    .description = Les codes locaux, les fiches techniques des fabricants et les titulaires de licence décident. L'accès et la sortie des pompiers se règlent avec l'autorité locale.
CautionCode-gate_can_move = Le portail peut bouger
    .description = Avant de débrancher une boucle ou de couper et de rétablir l'alimentation d'un détecteur, isolez et cadenassez la motorisation du portail (secteur, batterie et solaire) ou bloquez le vantail mécaniquement, tenez les gens hors de sa course et postez un surveillant. Rebranchez toutes les boucles et vérifiez par un essai tous les dispositifs de protection avant de partir.
CautionCode-silica = Poussière de silice
    .description = Scier la chaussée produit de la silice respirable. Sciez à l'eau avec un apport d'eau continu; portez une protection respiratoire comme la règle le demande : à l'intérieur toujours, et à l'extérieur avec une scie tenue à la main au-delà de quatre heures par quart de travail.
CautionCode-saw = La scie
    .description = Protecteur de lame en place; protection des yeux, de l'ouïe et des pieds. Aucune scie à moteur thermique à l'intérieur : monoxyde de carbone. Une scie électrique à l'eau seulement sur une alimentation protégée contre les fuites à la terre.
CautionCode-buried_services = Services enfouis
    .description = Faites repérer et marquer les services enfouis avant toute coupe ou tranchée.
CautionCode-slab_steel = Acier dans la dalle
    .description = Ne coupez jamais l'acier d'armature. Réglez la scie au-dessus de lui.
CautionCode-tensioned_slab = Dalles précontraintes
    .description = Les dalles post-contraintes et les tabliers de pont ou suspendus ne se coupent jamais sans balayage de détection et sans l'accord de l'ingénieur.
CautionCode-snow_melt = Systèmes de fonte de neige
    .description = Repérez d'abord les tuyaux et les câbles chauffants, et isolez les câbles de leur alimentation avant la coupe.
CautionCode-work_zone = Circulation dans la zone de travail
    .description = Planifiez la signalisation et la gestion de la circulation, piétons compris, avant le début du travail.
CautionCode-sealant = Scellants
    .description = Beaucoup de scellants contiennent des isocyanates, qui sensibilisent les voies respiratoires et la peau pour la vie; le scellant fondu brûle, et la vapeur le fait éclabousser. La fiche technique décide.
CautionCode-insulation_tester = Mégohmmètre
    .description = Faites l'essai d'isolement seulement avec le détecteur et les parafoudres débranchés, et déchargez la boucle ensuite.
CautionCode-hot_work = Travail à chaud
    .description = Fondoirs, chalumeaux et bouteilles de combustible : écartez ou protégez tout ce qui peut brûler à moins de 35 ft, maintenez une surveillance incendie pendant et après, et ne coulez qu'avec les vêtements que demande la fiche technique.
CautionCode-classified_area = Carburant et autres zones classées
    .description = Sur les aires de ravitaillement et dans les autres zones classées, travaillez seulement avec le permis du site.
CautionCode-power_up_empty = Mettre sous tension à boucles vides
    .description = Un détecteur mis sous tension ou réinitialisé sous un véhicule l'apprend comme vide : il ne détecte pas ce véhicule, et le portail peut se fermer sur lui. Dégagez d'abord toutes les boucles, et passez ensuite sur chacune avec un véhicule.
CautionCode-live_parts = Pièces sous tension
    .description = Seules des personnes qualifiées ouvrent les boîtiers qui contiennent des pièces sous tension.
