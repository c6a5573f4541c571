### Whether a detector unit tunes to loops, and how to set it.

## The checks

compatibility-inductance = Une fois construite, elle mesure de { $as_built_low-number } à { $as_built_high }, { $verdict ->
    [suitable] entièrement dans
    [marginal] en partie hors de
   *[unsuitable] hors de
} la plage de { $inductance_min-number } à { $inductance_max } où le détecteur s'accorde.
compatibility-quality-factor = Le facteur de qualité est au mieux de { $quality_factor }, et il faut au détecteur { $quality_factor_min }; la chaussée et l'acier en prennent une partie, il faut donc { $wanted } ou plus.
compatibility-dc-quality-factor = La réactance à 50 kHz divisée par la résistance au courant continu est de { $dc_quality_factor }; un organisme accepte { $limit } ou plus.
compatibility-dc-resistance = La boucle et le câble de liaison ont une résistance de { $dc_resistance } à 20 °C; un organisme accepte au plus { $limit-number }.
compatibility-lead-in-share = { $lead_in_share } d'un changement à la boucle parvient au détecteur. À partir de { $wanted }, la boucle a le double de l'inductance de son câble de liaison; au-dessous de 50 %, le câble de liaison l'emporte sur elle.
compatibility-frequency = Elle fonctionnera de { $slow-number } à { $fast }; le détecteur fonctionne de { $frequency_min-number } à { $frequency_max }.
compatibility-vehicle = À son endroit le plus difficile, un véhicule de type { $vehicle } la modifie de { $change }. Au cran de { $threshold }, le détecteur commute à partir de { $threshold }; il faut { $wanted }.
compatibility-drops-out = Le détecteur relâche la boucle { compatibility-this-loop } sous un véhicule de type { $vehicle } avant que l'arrière du véhicule ait atteint la boucle. Prenez un cran plus fin ou une boucle plus longue dans le sens de la marche.

## Neighbours

compatibility-position-unknown = Dites où se trouve chaque boucle, et le couplage des voisines vous sera indiqué.
compatibility-coupling = { $outcome ->
    [disturbs] Elles se couplent de { $coupling } et fonctionneraient à { $frequency_separation } l'une de l'autre avec le même réglage : un détecteur peut suivre l'autre. Réglez-les à des fréquences différentes ou prenez un seul détecteur qui balaie les deux tour à tour.
    [harmless] Elles se couplent de { $coupling }, trop peu pour que cela compte.
    [scanned_together] Elles se couplent de { $coupling }, et un seul détecteur les balaie tour à tour : une seule est active à la fois, et elles ne se perturbent pas.
    [same_place] Elles sont l'une sur l'autre et se couplent de { $coupling } : aucun réglage ne les distingue.
   *[far_apart] Elles se couplent de { $coupling } et fonctionnent à { $frequency_separation } l'une de l'autre, assez loin.
}
# Loops of a plan have a mark and a role, others the name that the caller gave them.
compatibility-this-loop = { $named_by ->
    [mark] { $mark } ({ $loop })
   *[label] { $loop }
}
compatibility-that-loop = { $named_by ->
    [mark] { $other_mark } ({ $other_loop })
   *[label] { $other_loop }
}
compatibility-loop-of-channel = { $mark } ({ $channel })
# $sentence is the one above.
compatibility-crosstalk = Boucles { compatibility-this-loop } et { compatibility-that-loop } : { $sentence }
compatibility-same-place = Les boucles { compatibility-this-loop } et { compatibility-that-loop } sont l'une sur l'autre, sur des canaux différents. { $roles ->
    [same] Mettez-y une seule boucle ou déplacez l'une des deux.
   *[different] Prenez une seule boucle pour les deux fonctions, avec une sortie pour chacune, ou déplacez l'une des deux.
}
compatibility-set-another-frequency = Réglez la boucle { compatibility-that-loop } à une autre fréquence que la boucle { compatibility-this-loop }, aussi éloignée que le permettent les commutateurs.
compatibility-take-scanning-unit = Prenez un seul détecteur à plusieurs canaux qui balaie ses boucles tour à tour : une seule est active à la fois.
compatibility-wind-more-turns = Bobinez la boucle { compatibility-this-loop } avec { $turns } tours : { $terminal_inductance }, à { $frequency_separation } d'écart en fréquence.
compatibility-move-apart = Écartez-les jusqu'à ce que leurs milieux soient à { $distance }; là, elles se couplent de moins de { $harmless_coupling }.

## How to set a channel

compatibility-usual-role = Il n'est pas dit à quoi sert la boucle : son canal est réglé comme celui d'une boucle qui retient un portail, le côté sûr. Dites à quoi elle sert.

compatibility-frequency-setting = Commencez par la plus haute que le détecteur offre; donnez aux voisines des réglages différents, et changez quand il manque des véhicules ou détecte sans raison.
# What the gate does when a loop of this role fails. Common practice.
compatibility-failure-consequence = { $on_loop_failure-code ->
    [detect] { $role-code ->
        [exit] Le portail s'ouvre et reste ouvert : quiconque arrive peut entrer.
        [arming] La borne reste éveillée et peut délivrer sans que personne soit là.
        [presence] Un véhicule est signalé là où il n'y en a pas.
       *[other] Le portail reste ouvert jusqu'à ce que la boucle soit réparée.
    }
   *[no_detect] { $role-code ->
        [exit] Le portail ne s'ouvre plus pour ceux qui sortent; donnez-leur une autre façon de l'ouvrir.
        [arming] La borne reste en veille jusqu'à ce que quelqu'un appuie.
        [presence] Un véhicule n'est pas signalé.
       *[other] Le portail se ferme sans que cette boucle le garde.
    }
}
compatibility-channel-untunable = Les boucles { $channel } sur un seul canal donnent de { $as_built_low-number } à { $as_built_high } au détecteur, et il s'accorde de { $inductance_min-number } à { $inductance_max }. Donnez à chaque boucle son propre canal.
compatibility-steel-below = Il y a de l'acier sous { $count ->
    [one] la boucle
   *[other] les boucles
} { $loops }. Le bas de la plage après construction est celui d'une tôle pleine, et un treillis en prend moins. Ce que produisent les véhicules est calculé sans l'acier : prouvez-le avec le véhicule le plus haut.
compatibility-mixed-roles = Les boucles { $channel } partagent un canal, et seules certaines d'entre elles retiennent le portail : la motorisation du portail ne peut pas les distinguer. Donnez aux boucles qui le retiennent leur propre canal.
compatibility-pulse-holds-nothing = La boucle { compatibility-this-loop } retient un portail et est réglée sur impulsion : après l'impulsion, le portail se ferme sur ce qui s'y trouve encore. Réglez-la sur présence.
compatibility-presence-runs-out = La boucle { compatibility-this-loop } retient un portail et relâche un véhicule qui reste. Réglez son temps de présence à illimité.
compatibility-fails-to-no-detect = La boucle { compatibility-this-loop } retient un portail et passe en non-détection en cas de défaillance : avec une boucle rompue, le portail se ferme sans garde. Réglez-la sur détection, afin que le portail reste ouvert et que quelqu'un appelle.

## What would turn a check

# What is changed, before or after: turns, a wiring or a gauge as in requests, or a length; and the loop that it is changed on.
compatibility-changed-value = { $value }
compatibility-changed-loop = { $loop }
compatibility-change-turns = { $place ->
    [first] Bobinez
   *[next] bobinez
} { $count ->
    [one] la boucle
   *[other] les boucles
} { $loops } avec { $to ->
    [one] { $to } tour
   *[other] { $to } tours
}{ $count ->
    [one] {""}
   *[other] {" "}chacune
} au lieu de { $from }
compatibility-instead-of-wiring = { $from ->
    [separate] au lieu de donner à chacune son propre canal
    [series] plutôt qu'en série
   *[parallel] plutôt qu'en parallèle
}
compatibility-change-wiring = { $place ->
    [first] { $to ->
        [separate] Donnez à chaque boucle son propre canal au lieu de les joindre toutes { $from ->
            [series] en série
           *[parallel] en parallèle
        }
        [series] Joignez les boucles en série { compatibility-instead-of-wiring }
       *[parallel] Joignez les boucles en parallèle { compatibility-instead-of-wiring }
    }
   *[next] { $to ->
        [separate] donnez à chaque boucle son propre canal au lieu de les joindre toutes { $from ->
            [series] en série
           *[parallel] en parallèle
        }
        [series] joignez les boucles en série { compatibility-instead-of-wiring }
       *[parallel] joignez les boucles en parallèle { compatibility-instead-of-wiring }
    }
}
compatibility-change-lead-in-gauge = { $place ->
    [first] Prenez
   *[next] prenez
} du fil de { $to } pour { $count ->
    [one] le câble de liaison de la boucle
   *[other] les câbles de liaison des boucles
} { $loops } au lieu de { $from }
compatibility-change-lead-in-length = { $place ->
    [first] Ramenez
   *[next] ramenez
} { $count ->
    [one] le câble de liaison de la boucle
   *[other] les câbles de liaison des boucles
} { $loops } à { $to } au lieu de { $from }
compatibility-change-along-travel = { $place ->
    [first] Donnez
   *[next] donnez
} { $count ->
    [one] à la boucle
   *[other] aux boucles
} { $loops } { $to } de longueur dans le sens de la marche au lieu de { $from }
compatibility-remedy = { $changes } : { $check ->
    [inductance] l'inductance au détecteur est alors de { $value }
    [quality_factor] le facteur de qualité est alors au mieux de { $value }
    [dc_quality_factor] la réactance à 50 kHz divisée par la résistance au courant continu est alors de { $value }
    [dc_resistance] la boucle et le câble de liaison ont alors une résistance de { $value }
    [lead_in_share] { $value } d'un changement à la boucle parvient alors au détecteur
    [frequency] elle fonctionne alors à { $value }
   *[vehicle] un véhicule de type { $vehicle } la modifie alors de { $value } à son endroit le plus difficile
}, et rien d'autre n'est pire. { $outcome ->
    [suitable] Le canal convient alors.
   *[better] Il faut plus que cela pour que le canal convienne.
}

compatibility-search-bounded = La recherche de ce qui remédierait à une vérification a été arrêtée avant la fin, car le travail demande plus qu'une réponse ne peut calculer. Toutes les vérifications sont complètes; il peut y avoir d'autres remèdes, et de plus petits. Pour une recherche complète, demandez moins de boucles ou de véhicules à la fois.

## Why a default was taken

compatibility-usual-lane-width = La boucle, ou la rangée de boucles, et le retrait habituel de chaque côté.
compatibility-usual-wiring = Chaque boucle a son propre canal.
compatibility-usual-steps = Crans des classes de sensibilité de la norme; un cran plus fin doit figurer sur la fiche du détecteur.
