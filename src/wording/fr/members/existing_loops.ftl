### The labels and descriptions of the closed lists of `practice::existing_loops`: a message for each member, `List-code`.

## ExistingLoopVerdict

ExistingLoopVerdict-keep = La garder
    .description = Ses mesures sont bonnes, le détecteur s'accorde sur elle, et chaque véhicule produit assez de changement.
ExistingLoopVerdict-keep_with_care = La garder avec prudence
    .description = Elle peut servir, mais quelque chose a peu de marge, n'a pas été mesuré ou n'est pas prouvé : faites ce que la réponse nomme avant de vous y fier.
ExistingLoopVerdict-recut = En couper une nouvelle
    .description = Elle est défectueuse, le détecteur ne peut pas s'accorder sur elle, ou un véhicule n'est pas détecté.

## LoopCondition

LoopCondition-sound = En bon état
    .description = L'isolement est bon, et les mesures sont celles d'une boucle usuelle.
LoopCondition-doubtful = Douteuse
    .description = L'isolement n'est que passable, ou une mesure ne correspond à aucune boucle usuelle.
LoopCondition-faulty = Défectueuse
    .description = Elle est ouverte, ou fuit à la terre.
LoopCondition-not_measured = Non mesurée
    .description = L'isolement, la résistance ou l'inductance n'a pas été mesuré.

## TuningFit

TuningFit-tunes = S'accorde
    .description = Ce qui a été mesuré est à l'intérieur de ce sur quoi le détecteur s'accorde, avec une marge pour l'erreur de l'appareil de mesure.
TuningFit-marginal = Limite
    .description = C'est au bord de ce sur quoi le détecteur s'accorde, ou n'a pas été mesuré.
TuningFit-does_not_tune = Ne s'accorde pas
    .description = C'est en dehors de ce sur quoi le détecteur s'accorde.
