### The labels and descriptions of the closed lists of `practice::fault_signs`: a message for each member, `List-code`.

## Observation

Observation-fault_after_rain = Défaut après la pluie
    .description = Le défaut vient avec la pluie et part quand le sol sèche.
Observation-fault_in_frost = Défaut par gel
    .description = Le défaut vient avec le gel.
Observation-stuck_in_detect = Détection permanente
    .description = La sortie reste active sans rien sur la boucle.
Observation-never_detects = Ne détecte jamais
    .description = La sortie ne commute jamais, quoi qu'il y ait sur la boucle.
Observation-intermittent = Intermittent
    .description = Le défaut va et vient sans cause évidente.
Observation-detects_the_gate = Détecte le portail
    .description = La sortie commute quand le portail bouge.
Observation-detects_next_lane = Détecte la voie voisine
    .description = La sortie commute avec la circulation d'une autre voie ou sur une autre boucle.
Observation-drifts = Dérive
    .description = Le détecteur se réaccorde souvent, ou sa lecture varie.
Observation-fault_when_pavement_flexes = Défaut quand la chaussée fléchit
    .description = Le défaut vient quand un véhicule lourd charge la chaussée, ou quand on bouge les fils.
Observation-drops_high_vehicles = Relâche les véhicules hauts
    .description = La sortie relâche sous les camions et les autres véhicules hauts, ou ne les détecte jamais, alors que les voitures sont détectées.
Observation-misses_two_wheelers = Ne détecte pas les deux-roues
    .description = Les motos et les vélos ne sont pas détectés, alors que les voitures le sont.
Observation-stays_on_after_power_up = Active dès la mise sous tension
    .description = La sortie reste active dès le moment où le détecteur est mis sous tension ou réinitialisé.
Observation-misses_after_power_up = Omet après la mise sous tension
    .description = Des véhicules sont omis depuis que le détecteur a été mis sous tension ou réinitialisé : celui qui était alors sur la boucle est appris comme vide.
Observation-never_closes = Ne se ferme jamais
    .description = Le portail ou la barrière reste ouvert, comme si quelque chose était toujours dans son passage.
