### A job in a few lines, for a customer or a clerk: no name of a field, no code.

# $sorts are the next.
summary-headline = { $sorts }; { $outlook ->
    [stop] ne le construisez pas tel quel : { $things ->
        [one] une raison s'y oppose
       *[other] { $things } raisons s'y opposent
    }
    [watch] { $things ->
        [one] un point
       *[other] { $things } points
    } à surveiller
   *[sound] rien ne s'y oppose
}.
summary-sort = { $loops ->
    [one] { $loops } boucle
   *[other] { $loops } boucles
} de { $along_travel-number } x { $across_lane } à { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
}
summary-role = { $role-label }
summary-size = { $loops ->
    [one] { $along_travel-number } x { $across_lane }
   *[other] { $loops } de { $along_travel-number } x { $across_lane }
}
summary-place = { $side ->
    [outside] { $distance } à l'extérieur { summary-barrier }
    [inside] { $distance } à l'intérieur { summary-barrier }
   *[on_the_line] à cheval sur la ligne { summary-barrier }
}
summary-barrier = { $barrier-code ->
    [barrier_arm] de la lisse
    [overhead_door] de la porte
   *[other] du portail
}
summary-place-without-barrier = { $side ->
    [outside] { $distance } avant le guichet, la borne ou la ligne d'arrêt
    [inside] { $distance } après le guichet, la borne ou la ligne d'arrêt
   *[on_the_line] au guichet, à la borne ou à la ligne d'arrêt
}

## What to order

summary-preformed = { $construction-label }, { $along_travel-number } x { $across_lane }, { $turns ->
    [one] un tour
   *[other] { $turns } tours
}, avec { $lead_in_length } de câble de liaison
# One length for each loop.
summary-wire = Fil pour boucles { $wire } en longueurs entières, câble de liaison et { $allowance } pour les coins et les bouts compris : { $lengths }
summary-wire-length = { $loops ->
    [one] { $length }
   *[other] { $loops } de { $length }
}

## What to watch

summary-finding = { $finding-description }
