### Which loops an opening needs.

## Whether a loop can be built

sizing-no-working-turns = Ningún número de vueltas lleva este lazo, con este cable de conexión, por completo dentro de lo que la unidad puede sintonizar. Acorte el cable de conexión, use alambre más grueso o elija una unidad de intervalo más amplio.
sizing-near-least-inductance = Una vez construido puede medir { $as_built_low }, cerca de los { $inductance_min } que la unidad necesita como mínimo para sintonizar; aquí otra vuelta no lo mejora. Mida antes de cerrarlo.

## Which vehicles it sees

sizing-side-by-side = Un solo lazo a todo lo ancho del claro es demasiado poco sensible: { $loops } lazos se lo reparten, cada uno en su propio canal de una unidad que los explora por turno, con las salidas en paralelo y los vecinos bobinados en sentidos opuestos.
sizing-leaves-pass-over = Las hojas pasan sobre este lazo mientras se mueven, y el lazo las detecta. Conéctelo a la entrada del accionamiento del portón que solo se vigila mientras las hojas están quietas, abiertas o cerradas por completo; mientras se mueven, otro dispositivo debe detectar el vehículo que entra.
sizing-vehicle-too-wide = Un vehículo del tipo { $vehicle } mide { $vehicle_width } de ancho y no pasa por un claro de { $opening_width }. Verifique el ancho o deje fuera este vehículo.
sizing-vehicle-not-seen = Un vehículo del tipo { $vehicle } cambia este lazo en { $change }, y la unidad conmuta a { $threshold }: no se detecta.
sizing-vehicle-not-seen-at-edge = Pegado al borde o sobre un hueco entre lazos, un vehículo del tipo { $vehicle } cambia los lazos solo en { $least_change_across }, y la unidad conmuta a { $threshold }: ahí no se detecta. Deje que los lazos lleguen más cerca del borde o angoste el carril con postes.
sizing-arm-falls-early = Cuando la unidad suelta un vehículo del tipo { $vehicle } a { $threshold }, la parte trasera del vehículo está { $tail_from_arm } { $place ->
    [short] antes de
   *[past] después de
} la línea del brazo de barrera, y se requiere que la haya pasado por { $wanted }: el brazo le caería encima. Ajuste un paso de sensibilidad más fino si la unidad lo tiene, use un lado más largo en el sentido de la marcha o, donde los vehículos pasan en un solo sentido, coloque el lazo más adelante en ese sentido.
sizing-drops-out = La unidad suelta un vehículo del tipo { $vehicle } antes de que su parte trasera llegue al lazo. Ajuste una sensibilidad más fina, alargue el lazo en el sentido de la marcha o agregue un segundo lazo detrás.
sizing-thin-margin = Un vehículo del tipo { $vehicle } cambia este lazo en { $least_change_across }{ $place ->
    [hardest] {" "}en su punto más difícil
   *[anywhere] {""}
}, menos del doble de los { $threshold } a los que conmuta la unidad; el pavimento, la edad y el clima se llevan su parte.
# It follows the three above that speak of too small a change.
sizing-finer-or-shorter = Ajuste una sensibilidad más fina si la unidad la tiene, acorte el cable de conexión o reparta el claro en más carriles.
sizing-blind-strip = En { $blind_strip } del carril, { $place ->
    [centre] incluido su centro
   *[aside] fuera de su centro
}, un vehículo del tipo { $vehicle } no se detecta: solo se acoplan con él los alambres tendidos en el sentido de la marcha. { $cure ->
    [other_device] Ahí debe detectarlo el otro dispositivo.
    [line] Marque la línea por la que se debe circular o deje que otro dispositivo detecte los vehículos de dos ruedas.
   *[line_or_quadrupole] Marque la línea por la que se debe circular, use un cuadrupolo o deje que otro dispositivo detecte los vehículos de dos ruedas.
}
sizing-sensitivity = Ajuste { $channels ->
    [every] todos los canales
   *[this] este canal
} al paso de sensibilidad que conmuta a { $threshold }. Lo más difícil de detectar: { $hardest }.

## Where the loops lie

sizing-the-loop = { $role-code ->
    [exit] lazo de salida
    [obstruction_outside] lazo de obstrucción exterior
    [obstruction_inside] lazo de obstrucción interior
    [between_leaves] lazo entre las hojas
    [arming] lazo de activación
    [closing] lazo de cierre
   *[presence] lazo de presencia
}
sizing-leaf-seen = A { $clearance }, la hoja { $state ->
    [closed] cerrada
    [open] abierta
   *[moving] en movimiento
} cambia el { sizing-the-loop } en { $change_by_leaf }, más de la mitad de aquello a lo que conmuta la unidad. { $place ->
    [decided] Cambie lo que se decidió de su lugar.
    [device_helps] Si otro dispositivo vigila la línea del portón, los lazos pueden quedar más lejos.
   *[none] No hay mejor lugar para él.
} Encienda la unidad con el portón cerrado y compruebe en el sitio, con el portón cerrado, abierto y en movimiento, que la hoja no provoca ninguna detección.
sizing-leaf-clearance = Mantenga los lados de todos los lazos a { $clearance } o más de la hoja metálica: { $state ->
    [closed] cerrada
    [open] abierta
   *[moving] en movimiento
}, cambia el { sizing-the-loop } en { $change_by_leaf }, menos de la mitad de aquello a lo que conmuta la unidad. El cable de conexión cruza la línea del portón trenzado o con cubierta: en tubo conduit bajo un riel o una cimentación; en los demás casos, en su ranura.
sizing-leaf-holds-the-gate = A { $clearance }, la hoja { $state ->
    [closed] cerrada
    [open] abierta
   *[moving] en movimiento
} cambia el { sizing-the-loop } en { $change_by_leaf }, y ahí conmuta la unidad: el portón se activaría o se retendría a sí mismo. Haga el lazo más pequeño, colóquelo más lejos de la hoja o deje que otro dispositivo haga su trabajo.
sizing-edge-setback-reduced = El claro es angosto: el lazo queda a { $edge_setback } de cada borde en vez de { $usual_edge_setback }. Verifique que los postes metálicos y el carril vecino no se detecten.
sizing-exit-time-unknown = Indique a qué velocidad llegan los conductores y cuánto tarda el portón en abrir, y el lazo de salida se colocará de modo que el portón esté abierto al llegar. Sin ambos datos queda tan cerca como lo permiten los demás lazos, y los conductores esperan.
sizing-exit-reopens = Un vehículo que entra cruza el lazo de salida y vuelve a abrir el portón. Ajuste el temporizador de cierre a { $close_timer_min } o más: ese tiempo tarda un vehículo a paso de peatón en llegar a donde se le retiene.
sizing-drive-too-short = La entrada de vehículos mide { $drive_length } de largo, y el lazo de salida termina a { $needed } del portón. Omita el lazo de salida y abra a quienes salen con otro dispositivo (un botón, un transmisor).
sizing-exit-far-away = Para que el portón esté abierto al llegar, el lazo de salida tendría que estar a { $run_up }. Está a { $distance_from_barrier }, y el conductor espera unos { $wait }. Se remedia con una llegada a { $serving_speed }, un accionamiento más rápido o un segundo dispositivo en el camino (otro lazo, un transmisor).
sizing-exit-beyond-lead-in = { $row ->
    [row] Los lazos ({ $role }) forman una fila de { $row_width } de centro a centro, a { $distance_from_barrier } de la línea,
   *[single] El { sizing-the-loop } queda a { $distance_from_barrier } del portón,
} y el cable de conexión mide { $lead_in_length } de largo. Se planea con { $order_length }: pídalo en una sola pieza.
sizing-nothing-holds-the-gate = Ninguno de estos lazos impide que la barrera se cierre sobre un vehículo. Agregue un lazo de obstrucción por fuera y otro por dentro (con un brazo de barrera, un lazo de cierre), o asegúrese de que otro dispositivo lo haga.
sizing-leaves-swing-inwards = Se supone que las hojas abren hacia adentro{ $hinges ->
    [one_side] , con las bisagras a la izquierda al entrar
   *[both_sides] {""}
}. Si las hojas abren hacia afuera, lea adentro donde dice afuera y viceversa{ $hinges ->
    [one_side] ; si las bisagras están a la derecha, lea derecha donde dice izquierda
   *[both_sides] {""}
}.
sizing-pair-advised = Una sola hoja de { $leaf } barre un cuarto de círculo de ese mismo largo, y los lazos que quedan dentro detectan los vehículos altos con poco margen. A partir de { $longest } conviene más un par de hojas: barre la mitad.
sizing-between-leaves-missing = Agregue un lazo entre las hojas: sin él, ningún lazo detecta un vehículo que está en el barrido de una hoja, y la hoja se cierra sobre él.
sizing-between-leaves-beyond-sweep = La hoja barre { $sweep } hacia adentro, y el lazo entre las hojas, tal como se decidió, queda más allá: nada detecta un vehículo que está en el barrido, y la hoja se cierra sobre él. Decida una distancia menor o deje la distancia abierta.
sizing-no-leaf-sweeps = Esta barrera no tiene hojas que barran. Un lazo de obstrucción de cada lado hace lo que haría un lazo entre las hojas.
sizing-closing-under-leaf = Un lazo de cierre queda a ambos lados de la línea de la barrera, y bajo una hoja metálica detecta la hoja misma. Coloque aquí en su lugar un lazo de obstrucción por fuera y otro por dentro.
sizing-one-side-only = Los lazos que retienen la barrera están de un solo lado: un vehículo que se detiene del otro lado no se detecta. Agregue un lazo de obstrucción de ese lado.
sizing-unseen-stretch = Entre dos lazos que retienen el portón, un vehículo de { $unseen_stretch } queda sin detectar: cabe { $vehicle ->
    [car] un automóvil
    [short_car] un automóvil corto
   *[two_wheeler] un vehículo del tipo { $rider }
}. { $watched ->
    [yes] El otro dispositivo que vigila la línea del portón debe detectarlo ahí.
   *[no] Haga que otro dispositivo (un haz de lado a lado) vigile la línea del portón.
}
sizing-kept-loop = { $kept-code ->
    [exit] lazo de salida
    [obstruction_outside] lazo de obstrucción exterior
    [obstruction_inside] lazo de obstrucción interior
    [between_leaves] lazo entre las hojas
    [arming] lazo de activación
    [closing] lazo de cierre
   *[presence] lazo de presencia
}
sizing-left-out-loop = { $left_out-code ->
    [exit] lazo de salida
    [obstruction_outside] lazo de obstrucción exterior
    [obstruction_inside] lazo de obstrucción interior
    [between_leaves] lazo entre las hojas
    [arming] lazo de activación
    [closing] lazo de cierre
   *[presence] lazo de presencia
}
sizing-same-place = El { sizing-left-out-loop } quedaría en una misma ranura con el { sizing-kept-loop }. { $cure ->
    [move] Cambie la distancia o el lado que se decidió para uno de los dos.
   *[leave_out] Un solo lazo sirve para ambos: omita el { sizing-left-out-loop }.
}
sizing-scanning-unit = Los lazos { $loops } se acoplan hasta en { $coupling } y no tienen mejor lugar. Conéctelos a una sola unidad que explore sus canales por turno, para que solo uno esté activo a la vez; en unidades separadas, deles frecuencias tan distintas como permitan los interruptores.
sizing-loop-mark = { $mark }
sizing-road-holds-the-gate = El tránsito de un camino que pasa sobre el lazo exterior o cerca de él retiene el portón: mantenga el lazo fuera de la calzada.
sizing-saw-plan = Corte cada lazo por separado, con sus cuatro lados; deje { $gap } de pavimento entero entre las ranuras vecinas y no tienda dos lazos en una misma ranura. Bobine el primero en el sentido de las manecillas del reloj, el siguiente en sentido contrario, y así sucesivamente. { $slots ->
    [row] Saque cada par { $own_slot } fuera de las ranuras de los lazos, hasta una sola ranura de { $shared_slot } al lado de la fila.
    [shared] Saque cada par { $own_slot } fuera de las ranuras de los lazos, hasta una sola ranura de { $shared_slot } que comparten los pares de su unidad.
    [own] Saque cada par por una ranura propia; nunca dos en una misma ranura.
   *[none] {""}
}

## Other loops for the same role

sizing-alternative = { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
}, { $cost } { $cost_kind ->
    [more_saw_cut] más de corte
    [less_saw_cut] menos de corte
    [more_wire] más de alambre
   *[less_wire] menos de alambre
} por lazo; el metal se detecta { $height ->
    [equal] a la misma altura
    [higher] { $height_change } más arriba
   *[lower] { $height_change } más abajo
}.
sizing-alternative-cannot-be-built = Ninguno de sus números de vueltas es apto para esta unidad y esta ranura.
sizing-quadrupole-offered = Un cuadrupolo del mismo tamaño cambia { $change_at_centre } con un vehículo del tipo { $vehicle } en su centro, donde el rectángulo cambia { $change_at_centre_of_rectangle }. Cuesta altura: el metal plano se detecta hasta { $seen_height } en vez de { $seen_height_of_rectangle }.
sizing-stock-fits = { $along_travel } x { $across_lane } con { $lead_in_length } de cable de conexión: { $proof ->
    [tunes] cabe en el claro, llega a la unidad y sintoniza
   *[turns_unknown] cabe en el claro y llega a la unidad; pregunte cuántas vueltas tiene
}.
sizing-no-stock-fits = Ninguno en existencia sirve.
sizing-nearest-in-stock = El más cercano, { $sku }, { $reason ->
    [other_construction] está hecho para otro tipo de instalación
    [not_as_decided] no es como se decidió
    [too_short] es demasiado corto en el sentido de la marcha
    [too_long] es demasiado largo en el sentido de la marcha
    [too_wide] es demasiado ancho para el claro
    [too_narrow] deja sin detectar una parte demasiado grande del claro
    [lead_in_too_short] tiene el cable de conexión demasiado corto
   *[does_not_tune_or_see] no sintoniza con esta unidad y este cable de conexión, o no detecta todos los vehículos
}.
sizing-order-instead = Pida { $along_travel } x { $across_lane }, { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
}, { $construction }, con { $lead_in_length } de cable de conexión.

## The lead-ins

sizing-way-of-pair = { $slot ->
    [none] sale por la { $unit_side ->
        [left] izquierda
       *[right] derecha
    } al salir
    [own] { $own_slot } en una ranura propia
    [row] { $own_slot } en una ranura propia y luego en la ranura compartida de { $shared_slot } al lado de la fila
   *[unit] { $own_slot } en una ranura propia y luego en una de { $shared_slot } con otros pares
}{ $slot_end ->
    [at_edge] { " " }hasta el borde, a la { $unit_side ->
        [left] izquierda
       *[right] derecha
    } al salir
    [before_edge] , que termina { $from_edge } antes del borde, a la { $unit_side ->
        [left] izquierda
       *[right] derecha
    } al salir
    [past_edge] , que pasa { $from_edge } más allá del borde, a la { $unit_side ->
        [left] izquierda
       *[right] derecha
    } al salir
   *[no_slot] {""}
}{ $goes_on ->
    [home_run] , ahí entra en una caja de paso; desde la caja, { $cable_length } de cable de { $gauge }, { $in_conduit } de ellos en tubo conduit
    [home_run_bare] , ahí entra en una caja de paso; desde la caja, { $cable_length } de cable de { $gauge }
    [conduit] , { $in_conduit } en tubo conduit
   *[slot] {""}
}, hasta la unidad { $unit }
sizing-slot-before-edge = La ranura del par termina { $from_edge } antes del borde del pavimento, y no puede haber tubo conduit dentro de la losa. { $field ->
    [length] El cable de conexión es demasiado corto para su lugar: solo hasta el borde necesita { $needed }.
    [in_conduit] Tienda menos de él en tubo conduit, de modo que queden { $needed } para la ranura, o deje abierto el largo en tubo conduit.
   *[in_slot] Tienda { $needed } o más en la ranura, o deje abierto ese largo, con lo que la ranura llega al borde.
}

sizing-jacketed-pair = El par viene trenzado dentro de su cubierta, así que su inductancia es fija; llévelo a la unidad sin ningún empalme en el pavimento.
sizing-lead-in-conduit = Lleve el cable de conexión por tubo conduit desde el borde del lazo hasta la unidad, sellado contra el agua en ambos extremos.
sizing-twist-the-tails = Trence las dos puntas al menos 3 vueltas por pie (10 por metro) en todo el recorrido. Suelto, el par tiene unos { $untwisted-number } en vez de { $twisted }, { $gained } más en { $lead_in_length }, y eso cambia cada vez que los alambres se mueven; además capta zumbido y detecta los vehículos que lo cruzan.

## The site

sizing-nothing-to-saw = { $surface-code ->
    [pavers] Los adoquines no se cortan para un lazo: se movería con ellos y se rompería. Use un lazo preformado de enterrado directo, colocado en el lecho antes que los adoquines.
    [gravel] La grava no sostiene un corte. Use un lazo preformado de enterrado directo, en una zanja con lecho de arena.
    [soil] La tierra no sostiene un corte. Use un lazo preformado de enterrado directo, en una zanja con lecho de arena.
   *[other] No hay nada que cortar antes de colocar la superficie. Use un lazo preformado de enterrado directo, o regrese con la sierra cuando haya fraguado.
}
sizing-burial-in-finished-pavement = Un lazo de enterrado directo va debajo de una superficie que aún no se ha colocado. En pavimento terminado use un lazo preformado en un corte, o bobínelo en el sitio.
sizing-reinforcing-mesh = Localice el acero y mantenga el lazo al menos 2 in (50 mm) por encima de él; nunca corte el acero. El acero quita inductancia, que se cuenta como si fuera una lámina maciza, y altura, que no se cuenta: compruebe en el sitio que se detecta el vehículo más alto.
sizing-cut-approved = Conserve en el sitio el escaneo y la autorización escrita del ingeniero, marque los tendones y el acero sobre el pavimento, y corte solo donde y hasta la profundidad que ellos permiten.
sizing-post-tensioned-slab = No corte una losa postensada sin un escaneo que localice los tendones y sin la autorización escrita del ingeniero. Un detector de superficie o de otro tipo evita el corte.
sizing-bridge-deck = Trate el tablero como postensado hasta que los planos o un escaneo demuestren lo contrario: ningún corte sin la autorización escrita del ingeniero. Un lazo preformado por encima del acero superior, antes de la sobrecapa, evita el corte.
sizing-place-before-the-pour = Acuerde el lugar del lazo con el ingeniero antes del colado; manténgalo por encima del acero superior y apartado de los tendones.
sizing-snow-melt-cable = Haga localizar, marcar y desenergizar los cables calefactores antes de cualquier corte; una sierra que atraviesa uno queda bajo tensión. Tienda el lazo entre los tramos, y cuente con zumbido mientras calientan.
sizing-snow-melt-pipe = Haga localizar y marcar los tubos de calefacción antes de cualquier corte, y ajuste la sierra para que quede por encima de ellos.
sizing-overhead-power-line = El zumbido de la línea puede perturbar la unidad: mantenga el cable de conexión trenzado y sin llegar hasta ella, y elija la frecuencia en el sitio.
sizing-buried-power-line = Haga localizar y marcar la línea antes de cualquier corte o zanja, y crúcela en ángulo recto.
sizing-adjacent-traffic = Los vehículos del carril vecino no se deben detectar: para eso el lazo guarda su distancia al borde. Compruébelo con tránsito ahí antes de irse.
sizing-next-lane = En el carril vecino, un vehículo del tipo { $vehicle } pasa a { $distance } del alambre y cambia el lazo en { $change }; la unidad conmuta a { $threshold }{ $outcome ->
    [seen] : se detecta. Deje una franja más ancha en el borde
   *[nearly] , menos del doble. Compruébelo con tránsito ahí
}.
sizing-freezing-climate = Rellene la ranura por completo y en seco: el agua que queda dentro se congela y levanta el sellador. Use sujetadores en piezas cortas, nunca continuos.
sizing-pavement-joint = Aparte el lazo de la junta si puede. Donde el alambre tenga que cruzarla, protéjalo con una funda de 4 in (100 mm) a cada lado y deje holgura dentro.
sizing-cracked-pavement-hand-wound = El alambre simple se rompe en un pavimento que se mueve. Un lazo con cubierta (preformado, en un corte) dura más aquí.
sizing-cracked-pavement-jacketed = El lazo con cubierta absorbe parte del movimiento; selle también las grietas, o el agua seguirá la ranura.
sizing-old-loop-cut = Corte la ranura nueva al lado de la vieja, al menos a un palmo, y deje el alambre viejo sin energía y sin conectar: una vuelta vieja cerrada roba sensibilidad.

## The search

sizing-search-bounded = La búsqueda se terminó antes de tiempo, porque el trabajo pide más de lo que una respuesta puede calcular. Estos lazos son los mejores que se han encontrado hasta ahora, y otros pueden servir mejor. Para una búsqueda completa, pida menos lazos, vehículos, pasos de sensibilidad o artículos en existencia a la vez.

## Why a default was taken

sizing-usual-roles = Lo que esta barrera suele necesitar.
sizing-laid-over-the-loop = Esta superficie se coloca sobre el lazo.
sizing-jacketed-lasts-longer = Un lazo con cubierta dura más en un pavimento que se mueve.
sizing-stock-is-preformed = Los lazos en existencia vienen preformados.
sizing-surface-is-sawn = Una superficie terminada se corta, y el alambre está a la mano.
sizing-usual-burial-cover = La profundidad a la que suele quedar un lazo bajo esta superficie.
sizing-burial-cover-over-steel = Para que el lazo quede por encima del acero.
