### Lo que dicen los dibujos.

## En todos ellos

drawings-do-not-build = No construya como está dibujado
drawings-warnings = Advertencias
drawings-more = Y { $more } más que no se muestran aquí: léalas todas antes de empezar el trabajo.
drawings-footer = Un lazo detecta metal, no personas: no protege a nadie. Deciden los códigos locales, las fichas técnicas y los profesionales autorizados. Loopwright { $engine }
drawings-and = { $first } y { $last }
drawings-date = { $day } { $month ->
    [1] ene
    [2] feb
    [3] mar
    [4] abr
    [5] may
    [6] jun
    [7] jul
    [8] ago
    [9] sep
    [10] oct
    [11] nov
   *[12] dic
}
drawings-span = { $from } { $day ->
    [same] a
   *[other] al
} { $until }

## Valores que se tomaron para lo que nadie indicó

drawings-value-or = { $first } o { $last }
drawings-value-wide = { $value } de ancho
drawings-value-high = { $value } de alto
drawings-value-turns = { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
}
drawings-value-corners = diagonal donde se cortan las esquinas del lazo, recta en los demás
drawings-value-allowed = { $allowed ->
    [yes] sí
   *[no] no
}

## El plano de un claro

drawings-plan-title = Plano: { $opening }
drawings-plan-lane = carril sin barrera, { $width } de ancho
drawings-plan-opening = { $barrier }, claro de { $width }
drawings-plan-width = claro
drawings-plan-direction = sentido de circulación
drawings-plan-inside = interior
drawings-plan-way-in = exterior, entrada
drawings-plan-way-out = interior, salida
# La línea donde empieza la cinta: dos palabras, o lo que cabe en dos líneas cortas.
drawings-plan-line = { $barrier-code ->
    [slide_gate] portón corredizo
    [swing_gate] portón batiente
    [swing_gate_pair] portones batientes
    [barrier_arm] brazo de barrera
    [vertical_lift_gate] portón vertical
    [overhead_door] puerta levadiza
   *[none] línea de base
}
drawings-plan-the-line = { $line ->
    [reference] la línea de base
   *[barrier] la barrera
}
drawings-plan-distance = { $gap ->
    [none] justo
   *[some] a { $distance },
}
drawings-plan-position = { $side ->
    [across] sobre { drawings-plan-the-line }
    [across_moved] sobre { drawings-plan-the-line }, su centro { $moved } hacia adentro
    [outside] { drawings-plan-distance } afuera de { drawings-plan-the-line }
    [inside] { drawings-plan-distance } adentro de { drawings-plan-the-line }
    [before] { drawings-plan-distance } antes de { drawings-plan-the-line }
   *[past] { drawings-plan-distance } después de { drawings-plan-the-line }
}{ $offset_side ->
    [left] , su centro { $offset } a la izquierda del centro del carril al entrar
    [right] , su centro { $offset } a la derecha del centro del carril al entrar
   *[none] {""}
}
drawings-plan-name = { $role-label }: { $position }
drawings-plan-made = { $count ->
    [one] {""}
   *[other] { $count } lado a lado, devanados como muestran las puntas de flecha, cada uno de{" "}
}{ $size }, { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
}{ $cells ->
    [two] {" "}alrededor de cada una de dos celdas
   *[one] {""}
}{ $corners ->
    [cut] , esquinas cortadas { $corner_cut }
   *[square] {""}
}{ $slot ->
    [sawn] , ranura de { $slot_depth } de profundidad
   *[none] {""}
}; { $inductance } en la unidad.
drawings-plan-from-stock = De existencias: { $sku }.
drawings-plan-made-as = Igual que { $mark }.
drawings-plan-order = { $orders }
drawings-plan-order-pairs = { $length } de par para cada lazo
drawings-plan-order-longer = { $length } para { $mark }
drawings-plan-order-home-runs = de la caja de paso a la unidad { $cables }
drawings-plan-order-cable = { $length } de cable { $gauge } para { $mark }
drawings-plan-tape = Cinta: de la línea a los alambres. Pida { $orders }.
drawings-plan-unit = U es la unidad, a la { $side ->
    [left] izquierda
   *[right] derecha
} al salir.
drawings-plan-double-lines = Las líneas dobles son ranuras de pares.
drawings-plan-row-slot = Los pares de una fila comparten la ranura que va a su lado: { $marks }.
drawings-plan-slot-short = La ranura de { $mark } termina { $short } antes del borde.
drawings-plan-past-edge = Pasado el borde, las ranuras siguen{ $until ->
    [unit] {" "}hasta la unidad
   *[conduit] {""}
}, dibujadas acortadas: { $marks }.
drawings-plan-conduit = De ahí en adelante, a rayas: tubo conduit, según lo permita el sitio.
drawings-plan-pull-box = Un cuadro con una cruz es una caja de paso: { $to ->
    [home_run] ahí termina el par del lazo y se empalma con el cable que va hasta la unidad
   *[next_piece] ahí el par se empalma con el del siguiente carrete
}.
drawings-plan-crossing = { $pairs ->
    [one] El par de { $marks } cruza
   *[other] Los pares de { $marks } cruzan
} la línea en el punto, { $under ->
    [conduit_track] en tubo conduit por debajo del riel
    [conduit] en tubo conduit
    [slot_track] en la ranura, más allá del riel
   *[slot] en la ranura
}.
drawings-plan-parking = A rayas sobre la línea, cortado: donde se guarda la hoja y su recorrido, dibujado del lado de la unidad. Queda despejado, tan largo como la hoja.
drawings-plan-unseen = Sin detección entre los lazos que retienen la barrera: { $stretch }.
drawings-plan-sweep = Se supone que las hojas abren hacia adentro; las líneas de trazo y punto muestran su barrido.
drawings-plan-scale = A escala{ $broken ->
    [yes] , salvo el tramo entre las líneas en zigzag, que está acortado
   *[no] {""}
}.

## Cortes de ranuras

drawings-section-title = { $sections ->
    [buried] Sección: lazos enterrados, no se corta nada
    [one] Sección de la ranura
   *[several] Secciones de las ranuras: { $count }
}
drawings-section-several = { $name } ({ $count } lazos)
drawings-section-heading = { $place ->
    [loop] Ranura del lazo
    [lead_in] Ranura del cable de conexión
    [shared] Ranura compartida por pares
   *[buried] Enterrado
}: { $labels }
drawings-section-buried = { $construction-label }, su cable de conexión en tubo conduit.
drawings-section-verdict = { $construction-label }, { $width } de ancho y { $depth } de profundidad. { $verdict ->
    [too_narrow] Demasiado angosta
    [right] Correcta
   *[generous] Holgada
}: { $free ->
    [some] quedan libres { $clearance } del ancho, la mitad a cada lado
   *[nothing] no queda libre nada del ancho
}.
drawings-section-sealant = Sellador: { $sealant }. Cada sección tiene su propia escala; el acero está dibujado a su profundidad, sus varillas no están a escala.
drawings-section-rod-note = Cordón de respaldo, { $form }: entre ellos el sellador llena la ranura alrededor del alambre.
drawings-section-slab = Losa de { $thickness } de espesor{ $drawn ->
    [broken_off] {" "}(cortada aquí)
   *[whole] {""}
}
drawings-section-steel = Acero a { $depth } de profundidad{ $drawn ->
    [below] , debajo de lo dibujado
   *[whole] {""}
}
drawings-section-bed = Cama debajo { $depth }
drawings-section-cover = { $over ->
    [pair] Recubrimiento sobre el par superior
    [wire] Recubrimiento sobre el alambre superior
   *[it] Recubrimiento encima
} { $depth }
drawings-section-uncovered = Nada lo recubre
drawings-section-finish = { $finish ->
    [flush] Sellador, al ras de la superficie
   *[below] Sellador, { $depth } bajo la superficie
}
drawings-section-wires = { $count ->
    [one] { $count } alambre de
   *[other] { $count } alambres, uno sobre otro, cada uno de
} { $diameter } sobre su aislamiento
drawings-section-pairs = { $count ->
    [one] Par trenzado
   *[other] { $count } pares trenzados, uno sobre otro
}, cada alambre de { $diameter } sobre su aislamiento
drawings-section-jacketed-pairs = { $count ->
    [one] { $count } par con cubierta, { $diameter }
   *[other] { $count } pares con cubierta, uno sobre otro, cada uno de { $diameter }
}
drawings-section-jacket = Cubierta{ $size ->
    [given] {" "}de { $diameter }
   *[not_given] , diámetro no indicado
}, con { $holds ->
    [pair] un par
   *[turns] { drawings-value-turns }
} adentro
drawings-section-rod = { $form ->
    [pieces] Cordón de respaldo, en trozos (a rayas)
   *[continuous] Cordón de respaldo, continuo
}

## La respuesta de un lazo

drawings-profile-title = Respuesta: { $vehicle } sobre un lazo de { $size }, { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
}
drawings-profile-plate = Una parte inferior plana
drawings-profile-change = Cambio en la unidad, %
drawings-profile-positions = Frente del vehículo más allá del borde de entrada, { $unit } [{ $other_unit }]
drawings-profile-vehicle = vehículo
drawings-profile-loop = lazo
drawings-profile-switching = { $what ->
    [on] activa
    [on_again] reactiva
    [lets_go] suelta
   *[off] desactiva
}
drawings-profile-front = { $length } { $side ->
    [before] antes
   *[past] después
} del borde de entrada
drawings-profile-peak = El cambio máximo es de { $change } con el frente { $front }, donde está dibujado el vehículo: { $times } veces el { $threshold } con que conmuta la unidad.
drawings-profile-on = Activa (rayado) con el frente { $on }, desactiva { $off }.
drawings-profile-lets-go = Suelta desde { $from } hasta { $until }.
drawings-profile-lets-go-early = Suelta antes de que la cola llegue al lazo, lo que ocurre con el frente { $tail }.
drawings-profile-silent = La unidad no conmuta.
drawings-profile-blind = No detecta en { $width } del carril{ $centre ->
    [included] , incluido el centro
   *[seen] {""}
}.
drawings-profile-way = { $vehicle }: { $length } de largo, { $line ->
    [left] { $offset } a la izquierda del centro
    [right] { $offset } a la derecha del centro
   *[middle] sobre el centro
} del lazo; { $model ->
    [calibrated] el modelo está calibrado
    [assumed] el modelo es supuesto
   *[plate] el modelo es la parte inferior plana que se indicó
}.

## Las horas de un curado

drawings-cure-title = Sellado, inicio { $start }: { $verdict }
drawings-cure-do-not-seal = No selle con este inicio
drawings-cure-job = { $sealant-label }; ranura, { $seen ->
    [no] según se supone:{" "}
   *[yes] estado:{" "}
}{ $condition }.
drawings-cure-needed = El tránsito debe volver a más tardar el { $time }.
drawings-cure-poured = Se vierte a { $temperature }: se enfría y no cura, así que sus tiempos no dependen del clima.
drawings-cure-key = Las barras van de lo más temprano a lo más tarde. El pronóstico termina el { $until }; más allá no se supone nada. En el sitio, la prueba es que las ruedas no arrastren nada de sellador.
drawings-cure-shelf = El sellador se conserva hasta el { $ends_on }.
drawings-cure-moment = { $moment ->
    [start] inicio
   *[needed] tránsito requerido
}
drawings-cure-slab = { $measured ->
    [all] losa, medida
    [none] losa, no medida: tomada del aire
   *[some] losa; { $assumed } de { $all } no medidas: tomadas del aire
}
drawings-cure-air = aire
drawings-cure-dew-point = punto de rocío, y los { $margin } por encima (sombreado) en los que la losa no debe estar: se condensa agua
drawings-cure-limits = mínimo para aplicar: { $least }{ $limits ->
    [two] ; máximo { $most }
   *[one] {""}
}
drawings-cure-rain = Lluvia o nieve: { $told ->
    [nothing] no se sabe: el pronóstico no lo dice
    [unlikely] improbable en todas las horas
   *[kinds] { $kinds }
}.
drawings-cure-rain-kind = { $rain ->
    [likely] probable donde está lleno
    [possible] posible donde está vacío
   *[not_known] no se sabe donde está rayado
}
drawings-cure-begin-at-start = Empiece: en el inicio indicado; el pronóstico termina antes de que uno posterior sea seguro (rayado).
drawings-cure-begin-never = Empiece: a ninguna hora de este pronóstico (rayado).
drawings-cure-begin = Empiece: { $windows }; no donde está rayado.
drawings-cure-begin-once-dry = Cuando la ranura esté seca, empiece: { $windows }.
drawings-cure-more-windows = y { $more } más
drawings-cure-work = { $begun ->
    [at_start] Trabajo
   *[later] Trabajo, empezado con el primer horario posible
}: { $span }, cuando queda sellado el último tramo.
drawings-cure-milestone = { $milestone-label }: { $reached ->
    [both] { $span }
    [earliest] { $earliest } lo más temprano, lo más tarde después de este pronóstico
   *[none] después de este pronóstico
}{ $progress ->
    [band] {" "}(al final de este, completado del { $low } al { $high })
    [one] {" "}(al final de este, completado el { $high })
   *[none] {""}
}.

## Las vueltas de un lazo existente

drawings-turns-title = Un lazo en el suelo, { $size }: { $verdict }
drawings-turns-do-not-rely = No confíe en este lazo
drawings-turns-panel = { $quantity ->
    [inductance] Inductancia, µH
   *[resistance] Resistencia, Ω
}: { $is_read ->
    [off_the_scale] lectura { $reading }, fuera de escala
    [yes] lectura { $reading }
   *[no] sin lectura
}
drawings-turns-candidate = { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
}{ $wire ->
    [known] , { $gauge }
   *[unknown] {""}
}, { $likelihood }
drawings-turns-key = Una barra es lo que mostraría el medidor con esas vueltas; la línea gruesa es lo que mostró. Las barras azules concuerdan con ambas lecturas.
drawings-turns-read-at = Lectura { $place ->
    [unit] en el extremo de la unidad del cable de conexión
   *[tails] en las puntas del propio lazo
}; el cable de conexión mide { $length }, y los lados pueden variar en { $uncertainty }.
drawings-turns-settle = Lo que lo aclararía: { $test-label }, { $minutes ->
    [one] { $minutes } minuto
   *[other] { $minutes } minutos
}.
