### A job in a few lines, for a customer or a clerk: no name of a field, no code.

# $sorts are the next.
summary-headline = { $sorts }; { $outlook ->
    [stop] no lo construya tal como está: hay { $things ->
        [one] una razón
       *[other] { $things } razones
    } en contra
    [watch] hay { $things ->
        [one] un punto
       *[other] { $things } puntos
    } que vigilar
   *[sound] nada en contra
}.
summary-sort = { $loops ->
    [one] { $loops } lazo
   *[other] { $loops } lazos
} de { $along_travel-number } x { $across_lane } con { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
}
summary-role = { $role-label }
summary-size = { $loops ->
    [one] { $along_travel-number } x { $across_lane }
   *[other] { $loops } de { $along_travel-number } x { $across_lane }
}
summary-place = { $side ->
    [outside] { $distance } por fuera { summary-barrier }
    [inside] { $distance } por dentro { summary-barrier }
   *[on_the_line] a ambos lados de la línea { summary-barrier }
}
summary-barrier = { $barrier-code ->
    [barrier_arm] del brazo
    [overhead_door] de la puerta
   *[other] del portón
}
summary-place-without-barrier = { $side ->
    [outside] { $distance } antes de la ventanilla, el poste o la línea de alto
    [inside] { $distance } después de la ventanilla, el poste o la línea de alto
   *[on_the_line] junto a la ventanilla, el poste o la línea de alto
}

## What to order

summary-preformed = { $construction-label }, { $along_travel-number } x { $across_lane }, { $turns ->
    [one] una vuelta
   *[other] { $turns } vueltas
}, con { $lead_in_length } de cable de conexión
# One length for each loop.
summary-wire = Alambre para lazos { $wire } en tramos enteros, incluidos el cable de conexión y { $allowance } para esquinas y extremos: { $lengths }
summary-wire-length = { $loops ->
    [one] { $length }
   *[other] { $loops } de { $length }
}

## What to watch

summary-finding = { $finding-description }
