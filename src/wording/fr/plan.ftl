### The whole job.

## What was taken for what nobody said

plan-square-corners = La scie ne coupe pas de diagonales, les coins coupés habituels des boucles sont donc abandonnés : leurs coins sont droits.

## The steps of the work: what to do, and the figures of this job

plan-step = { $step-description }
plan-for-each-loop = { $loops }.
plan-line = { $line ->
    [reference] du guichet, de la borne ou de la ligne d'arrêt
   *[barrier] de la barrière
}
plan-place = { $mark } ({ $role }) : { $along_travel } dans le sens de la marche, { $across_lane } en travers, { $side ->
    [outside] { $distance } à l'extérieur { plan-line }
    [inside] { $distance } à l'intérieur { plan-line }
   *[on_the_line] sur la ligne{ $shift_side ->
        [inside] , son milieu { $shift } vers l'intérieur
       *[none] {""}
    }
}{ $across_side ->
    [left] , son milieu { $offset } à gauche de celui de la voie en entrant
    [right] , son milieu { $offset } à droite de celui de la voie en entrant
   *[none] {""}
}
plan-slot-depth = { $mark } ({ $role }) : { $slot_depth } de profondeur
plan-cut = { $total } de coupe en tout, en { $passes ->
    [one] une passe
   *[other] { $passes } passes
}; la lame se prolonge au-delà de { $cut_ends ->
    [one] { $cut_ends } extrémité
   *[other] { $cut_ends } extrémités
}.
plan-lead-in-way = { $mark } ({ $role }), parcours de sa paire : { $way }
plan-splice-in-box = Dans la boîte de tirage, la paire de la boucle elle-même finit avec son bout; raccordez-la là par une épissure, avec une trousse, soudée et scellée, { $to ->
    [home_run] au câble qui va directement au détecteur
   *[next_piece] à la paire du touret suivant
} : jamais dans la saignée.
plan-turns = { $mark } ({ $role }) : { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
}
plan-measured = { $mark } ({ $role }) : de { $as_built_low-number } à { $as_built_high }, { $dc_resistance }
plan-sealant-loaded = { $cartridges ->
    [one] { $cartridges } cartouche chargée
   *[other] { $cartridges } cartouches chargées
}.
plan-seal-verdict = Au début demandé : { $verdict }.
plan-seal-in-window = Pas au début demandé : commencez entre { $from } et { $until }.
plan-seal-once-dry = Pas dans la saignée telle qu'elle est : séchez-la, examinez-la et commencez entre { $from } et { $until }.
plan-seal-another-day = Pas par ce temps : cherchez un autre jour.
plan-open-between = Calculé : entre { $earliest } et { $latest }.
plan-open-from = Calculé : à partir de { $earliest } au plus tôt; les prévisions finissent avant que ce soit sûr.
plan-open-beyond-forecast = Pas avant la fin des prévisions.
plan-switch-at = Il doit commuter à { $steps }.
plan-step-for-all = { $threshold }
plan-step-for-one = { $threshold } pour { $mark }

## What to try

plan-trial = { $trial-description }
plan-trial-vehicles = Ici : { $vehicles }.
plan-trial-step = Réglé pour commuter à { $steps }.

## What to measure

plan-reading-resistance = À 20 °C (68 °F); la plage est celle du fil entre -20 et 40 °C. Une valeur plus élevée révèle une mauvaise épissure; un circuit ouvert révèle un fil rompu.
plan-reading-inductance = Portail fermé et aucun véhicule à proximité. Bien au-dessous de la plage : un tour en court-circuit, un tour de moins ou de l'acier; les limites sont celles entre lesquelles le détecteur s'accorde.
plan-reading-quality-factor = À 50 kHz; calculé sans les pertes de la chaussée et de l'acier, un appareil de mesure indique donc moins.
plan-reading-insulation = À la terre sous { $voltage }, le détecteur et les parafoudres débranchés, puis déchargée. À partir de { $best }, la mesure { $best_meaning }; à partir de { $accepted }, elle { $accepted_meaning }.
