### The whole job.

## What was taken for what nobody said

plan-square-corners = La sierra no corta diagonales, así que se omite el corte de esquina que suelen llevar los lazos: sus esquinas son rectas.

## The steps of the work: what to do, and the figures of this job

plan-step = { $step-description }
plan-for-each-loop = { $loops }.
plan-line = { $line ->
    [reference] la ventanilla, el poste o la línea de alto
   *[barrier] la barrera
}
plan-place = { $mark } ({ $role }): { $along_travel } en el sentido de la marcha, { $across_lane } a lo ancho, { $side ->
    [outside] { $distance } por fuera de { plan-line }
    [inside] { $distance } por dentro de { plan-line }
   *[on_the_line] sobre la línea{ $shift_side ->
        [inside] , su centro { $shift } hacia adentro
       *[none] {""}
    }
}{ $across_side ->
    [left] , su centro { $offset } a la izquierda del centro del carril al entrar
    [right] , su centro { $offset } a la derecha del centro del carril al entrar
   *[none] {""}
}
plan-slot-depth = { $mark } ({ $role }): { $slot_depth } de profundidad
plan-cut = { $total } de corte en total, en { $passes ->
    [one] una pasada
   *[other] { $passes } pasadas
}; el disco sigue más allá de { $cut_ends ->
    [one] { $cut_ends } extremo
   *[other] { $cut_ends } extremos
}.
plan-lead-in-way = { $mark } ({ $role }), recorrido de su par: { $way }
plan-splice-in-box = En la caja de paso termina el par propio del lazo con su punta; empálmelo ahí con un juego de empalme, soldado y sellado, con { $to ->
    [home_run] el cable que va directo a la unidad
   *[next_piece] el par del siguiente carrete
}: nunca en la ranura.
plan-turns = { $mark } ({ $role }): { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
}
plan-measured = { $mark } ({ $role }): de { $as_built_low-number } a { $as_built_high }, { $dc_resistance }
plan-sealant-loaded = { $cartridges ->
    [one] { $cartridges } cartucho cargado
   *[other] { $cartridges } cartuchos cargados
}.
plan-seal-verdict = Al inicio que se pidió: { $verdict }.
plan-seal-in-window = No al inicio que se pidió: empiece entre { $from } y { $until }.
plan-seal-once-dry = No en la ranura tal como está: séquela, revísela y empiece entre { $from } y { $until }.
plan-seal-another-day = No con este tiempo: busque otro día.
plan-open-between = Calculado: entre { $earliest } y { $latest }.
plan-open-from = Calculado: a partir de { $earliest } como muy pronto; el pronóstico termina antes de que sea seguro.
plan-open-beyond-forecast = No antes de que termine el pronóstico.
plan-switch-at = Debe conmutar a { $steps }.
plan-step-for-all = { $threshold }
plan-step-for-one = { $threshold } para { $mark }

## What to try

plan-trial = { $trial-description }
plan-trial-vehicles = Aquí: { $vehicles }.
plan-trial-step = Ajustada para conmutar a { $steps }.

## What to measure

plan-reading-resistance = A 20 °C (68 °F); la banda es la del alambre entre -20 y 40 °C. Más indica un mal empalme; circuito abierto, un alambre roto.
plan-reading-inductance = Con el portón cerrado y ningún vehículo cerca. Muy por debajo de la banda: una vuelta en cortocircuito, una vuelta de menos o acero; los límites son lo que la unidad sintoniza.
plan-reading-quality-factor = A 50 kHz; calculado sin las pérdidas del pavimento y del acero, por lo que un medidor indica menos.
plan-reading-insulation = A tierra, con { $voltage }; la unidad y los supresores desconectados, y descargado después. A partir de { $best }, { $best_meaning }; a partir de { $accepted }, { $accepted_meaning }.
