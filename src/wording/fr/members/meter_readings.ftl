### The labels and descriptions of the closed lists of `practice::meter_readings`: a message for each member, `List-code`.

## ReadingPlace

ReadingPlace-detector_end = Côté détecteur
    .description = Au bout du câble de liaison côté détecteur, le détecteur étant débranché : le câble de liaison et la boucle sont mesurés ensemble.
ReadingPlace-loop_end = Côté boucle
    .description = Aux propres bouts de la boucle, l'épissure étant ouverte : la boucle est mesurée seule.

## SubstitutionPoint

SubstitutionPoint-unit_terminals = Bornes du détecteur
    .description = Aux bornes du détecteur, sans rien d'autre qui y soit branché.
SubstitutionPoint-harness_end = Bout du faisceau
    .description = Au bout éloigné du faisceau, à la place du câble de liaison.
SubstitutionPoint-lead_in_end = Bout du câble de liaison
    .description = Au bout éloigné du câble de liaison, à la place de la boucle, l'épissure étant ouverte.

## InsulationState

InsulationState-dry = Sec
    .description = La saignée, l'épissure et le câble de liaison étaient secs : une bonne mesure dit peu d'un défaut qui vient avec la pluie.
InsulationState-wet = Mouillé
    .description = Après la pluie, ou après avoir mouillé la saignée, l'épissure et le câble de liaison : ce qui ne fuit que mouillé fuit maintenant.
