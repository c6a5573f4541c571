### A loop that is in the ground already: what it is, and whether to keep it.

## The verdict

existing-keep = Gardez-la : ses mesures sont bonnes, le détecteur s'accorde avec elle et chaque véhicule produit un signal suffisant. Passez dessus avec chaque véhicule avant de vous y fier.
existing-verdict = { $verdict-label } : { $reasons }.

## What stands behind it

existing-open = le circuit est ouvert, donc rien ne peut être gardé tel quel; si le fil s'est rompu dans le câble de liaison ou à l'épissure, réparez-le et mesurez de nouveau
existing-insulation-unknown = l'isolement à la terre n'a pas été mesuré, et sans lui personne ne sait si la boucle est en bon état
existing-leaks = l'isolement à la terre est de { $insulation }, { $degree ->
    [failed] une fuite franche; si elle est à l'épissure ou dans le câble de liaison, réparez et mesurez de nouveau
   *[fair] et une boucle en bon état a { $sound_from } ou plus
}
existing-inductance-unknown = l'inductance n'a pas été mesurée, donc le nombre de tours est une supposition
existing-resistance-unknown = la résistance n'a pas été mesurée, donc on ne voit ni quel fil c'est ni s'il y a une mauvaise épissure
existing-fits-none = les lectures ne sont celles d'aucune boucle habituelle de cette dimension; cherchez une mauvaise épissure, un tour en court-circuit ou une autre dimension
existing-tuning = { $fit ->
    [does_not_tune] le détecteur ne s'accorde pas avec elle
   *[marginal] il n'est pas certain que le détecteur s'accorde avec elle
} ({ $limits }){ $remedy ->
    [mend_splice] ; la résistance est celle d'un mauvais raccord : refaites l'épissure et mesurez de nouveau avant de scier quoi que ce soit
    [another_unit] ; un autre détecteur, dont la fiche technique couvre ce qui est en place, éviterait un nouveau trait de scie
   *[none] {""}
}
existing-tunes-inductance = { $inductance_low-number } à { $inductance_high } à ses bornes, où il accepte { $inductance_min-number } à { $inductance_max }
existing-tunes-quality = un facteur de qualité de { $quality } à sa propre fréquence, où il demande { $quality_factor_min } ou plus
existing-tunes-frequency = il fonctionnerait à { $frequency_low-number } à { $frequency_high }, et fonctionne à { $frequency_min-number } à { $frequency_max }
existing-tunes-unmeasured = ce dont cela dépend n'a pas été mesuré en entier
existing-inductance-over-range = l'inductance était au-dessus de la gamme, alors que le circuit est fermé : mesurez-la de nouveau
existing-unseen = produisent trop peu pour le cran de sensibilité habituel le plus fin du détecteur : { $vehicles }
existing-unseen-two-wheelers = à 1 ft / 0,3 m à l'intérieur du fil latéral, produisent trop peu pour le détecteur : { $vehicles }; laissez un autre appareil les détecter, ou sciez une boucle avec une saignée centrale
existing-dropped = le détecteur relâche avant l'arrière de : { $vehicles }
existing-thin = laissent une marge mince : { $vehicles }
existing-drive-over-failed = un véhicule est passé dessus et a été manqué ou relâché
existing-over-steel = { $known ->
    [told] il y a de l'acier dessous
   *[likely] il semble y avoir de l'acier dessous
}, donc le nombre de tours n'est pas sûr et les véhicules produisent moins; vérifiez-le avec le véhicule le plus haut
existing-holds-gate = elle empêche un portail de se fermer, et aucun véhicule n'est encore passé dessus

## The test that settles it

existing-settles = { $minutes } minutes; { faults-disturbs }. { $settles ->
    [objection] Cet essai répond à ce qui pèse le plus contre la boucle.
    [turns] Cet essai dit lequel des nombres de tours probables est le bon.
   *[proof] C'est la dernière preuve avant de se fier à la boucle.
}

## Why a default was taken

existing-usual-uncertainty = Des côtés mesurés au pas le long d'une saignée scellée sont rarement plus exacts.
existing-usual-lane = La boucle et la bande libre habituelle de chaque côté.
