### The labels and descriptions of the closed lists of `practice::sealants`: a message for each member, `List-code`.

## SealantKind

SealantKind-one_part_moisture_cure = À un composant, mûrit à l'humidité
    .description = Vient prêt en cartouche et mûrit de la surface vers le bas, avec l'humidité de l'air : des heures jusqu'à une peau, des jours jusqu'au mûrissement complet, plus longtemps par temps froid et en air sec.
SealantKind-two_part_reactive = À deux composants, réactif
    .description = Deux composants qui mûrissent en réagissant l'un avec l'autre, en minutes par temps chaud et sans humidité : pour la circulation qui doit revenir dans l'heure, et pour la pluie attendue.
SealantKind-hot_applied = Appliqué à chaud
    .description = Fondu dans un fondoir et coulé; il ne mûrit pas, il refroidit. L'isolant du fil doit supporter la coulée.
