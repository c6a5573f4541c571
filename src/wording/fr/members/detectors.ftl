### The labels and descriptions of the closed lists of `practice::detectors`: a message for each member, `List-code`.

## DetectorEnvelope

DetectorEnvelope-standard_minimum = Minimum de la norme
    .description = Ce sur quoi un détecteur construit selon la norme nord-américaine s'accorde au moins : de 50 à 700 µH avec Q de 5 ou plus, de 20 à 100 kHz. La fiche technique du détecteur même prévaut.

## Wiring

Wiring-separate = Chacune sur son propre canal
    .description = Chaque boucle a son propre canal : c'est la règle.
Wiring-series = En série sur un canal
    .description = Les inductances s'additionnent, et un véhicule sur une boucle change moins le groupe.
Wiring-parallel = En parallèle sur un canal
    .description = L'inductance baisse, et un véhicule sur une boucle change moins le groupe.

## OutputMode

OutputMode-presence = Présence
    .description = La sortie tient aussi longtemps que le véhicule est là.
OutputMode-pulse = Impulsion
    .description = La sortie donne une seule impulsion quand le véhicule arrive.

## FailureBehaviour

FailureBehaviour-detect = Détection
    .description = La sortie passe en détection, comme si un véhicule était là.
FailureBehaviour-no_detect = Non-détection
    .description = La sortie passe en non-détection, comme si rien n'était là.
