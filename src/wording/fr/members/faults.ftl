### The labels and descriptions of the closed lists of `practice::faults`: a message for each member, `List-code`.

## LoopFault

LoopFault-insulation_breach = Isolant percé
    .description = L'isolant de la boucle ou du câble de liaison est coupé ou usé, et l'eau relie le cuivre à la terre.
LoopFault-wet_splice = Épissure mouillée
    .description = L'épissure entre la boucle et le câble de liaison a pris l'eau et fuit à la terre.
LoopFault-broken_conductor = Conducteur rompu
    .description = Le circuit est ouvert : un fil s'est rompu dans la boucle ou dans le câble de liaison.
LoopFault-torn_wire = Fil arraché
    .description = Un fil s'est rompu et son bout est nu dans le sol mouillé : le circuit est à la fois ouvert et à la terre, par un seul défaut.
LoopFault-high_resistance_joint = Jonction à haute résistance
    .description = Une épissure ou une borne est corrodée ou desserrée et ajoute de la résistance.
LoopFault-shorted_turn = Tour ou paire en court-circuit
    .description = Des fils se touchent : un tour est fermé sur lui-même, ou la boucle ou sa paire est pontée.
LoopFault-wrong_turn_count = Mauvais nombre de tours
    .description = La boucle a été enroulée avec un ou deux tours de plus ou de moins que ne dit son dossier.
LoopFault-swapped_pair = Paire intervertie
    .description = Les fils de deux boucles sont échangés : une autre boucle est branchée, ou un fil de chacune.
LoopFault-steel_nearby = Acier à proximité
    .description = Un treillis, un couvercle ou un vantail métallique près de la boucle prend une partie de son inductance.
LoopFault-outside_envelope = Hors de la plage du détecteur
    .description = La boucle est en bon état, mais son inductance ou son facteur de qualité est en dehors de ce sur quoi le détecteur s'accorde.
LoopFault-detector_unit = Détecteur ou son alimentation
    .description = Le détecteur ou son alimentation est en panne.
LoopFault-settings = Réglages du détecteur
    .description = Le détecteur est en bon état et mal réglé : son cran de sensibilité, son mode ou ce que fait sa sortie en cas de défaillance.
LoopFault-surge_damage = Dommage de surtension
    .description = La foudre ou une surtension du secteur a endommagé l'entrée du détecteur ou le parafoudre qui la précède.
LoopFault-harness = Faisceau
    .description = Le câblage des bornes du détecteur jusqu'au câble de liaison, avec sa fiche et son socle, est en panne.
LoopFault-crosstalk = Interférence mutuelle
    .description = Une autre boucle ou un autre détecteur qui fonctionne presque à la même fréquence perturbe celui-ci.
LoopFault-none = Aucun défaut trouvé
    .description = Rien n'est fautif dans la boucle, le câblage ou le détecteur, ou le défaut n'est pas là en ce moment.
