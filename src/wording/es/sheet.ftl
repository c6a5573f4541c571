### Lo que dice la hoja de trabajo.

## El encabezado

sheet-page-title = Hoja de trabajo: { $opening }
sheet-name = Hoja de trabajo
sheet-job = Trabajo
sheet-date = Fecha
sheet-by = Por
sheet-do-not-build = No construya como está planeado
sheet-do-not-seal = No construya como está planeado: no selle el { $start }
sheet-warnings = Advertencias

## Qué cortar

sheet-cut = { $sawn ->
    [yes] Cortar
   *[no] Trazar
}
sheet-column-loop = Lazo
sheet-column-size = A lo largo × a lo ancho
sheet-column-turns = Vueltas
sheet-column-nearest-wire = Alambre más cercano
sheet-column-slot = { $sawn ->
    [yes] Ranura
   *[no] Recubrimiento
}
sheet-column-corners = { $sawn ->
    [yes] Corte de esquinas
   *[no] Esquinas
}
sheet-loop = { $role-label }{ $count ->
    [one] {""}
   *[other] , { $count } lado a lado
}
sheet-turns = { $turns }{ $cells ->
    [two] {" "}en cada una de dos celdas
   *[one] {""}
}
sheet-slot = { $width_is ->
    [known] { $width } × { $depth } de profundidad
   *[open] { $depth } de profundidad
}
sheet-not-sawn = sin corte
sheet-under-surface = { $cover } bajo la superficie
sheet-corner = { $corner ->
    [drilled] perforadas
   *[square] rectas
}
sheet-lead-in-slot = { $shared ->
    [yes] compartida{" "}
   *[no] {""}
}{ $width } × { $depth } de profundidad
sheet-saw-cut = { $total } de corte en total, cables de conexión { $lead_in }{ $slots_differ ->
    [yes] {" "}({ $slots })
   *[no] {""}
}; { $passes ->
    [one] { $passes } pasada
   *[other] { $passes } pasadas
}; el disco pasa más allá de { $ends ->
    [one] { $ends } extremo
   *[other] { $ends } extremos
}{ $drilled ->
    [0] {""}
    [one] ; { $drilled } esquina perforada
   *[other] ; { $drilled } esquinas perforadas
}.

## Qué cargar y cuánto tarda

sheet-load = Cargar
sheet-packs = { $quantity } { $pack ->
    [cartridge] { $quantity ->
        [one] cartucho
       *[other] cartuchos
    }
    [spool] { $quantity ->
        [one] carrete
       *[other] carretes
    }
   *[lot] { $quantity ->
        [one] lote
       *[other] lotes
    }
}
sheet-hours = Horas de la cuadrilla: { $hours }

## Qué devanar

sheet-wind = Devanar
sheet-parts = { $parts }.
sheet-winding = { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
}, { $construction }{ $sense ->
    [row] , de izquierda a derecha: { $senses }
    [same] , todas en el mismo sentido
   *[any] {""}
}
sheet-sense = { $sense ->
    [clockwise] en el sentido de las manecillas del reloj
   *[anticlockwise] en sentido contrario a las manecillas del reloj
}
sheet-pull = tienda { $length } de { $gauge }{ $how ->
    [spliced] {""}
   *[in_one_length] {" "}de un solo tramo
}{ $each ->
    [yes] {" "}para cada uno
   *[no] {""}
}{ $how ->
    [to_the_box] , incluido su par hasta la caja de paso
    [spliced] , incluido el cable de conexión, empalmado en la caja de paso
   *[in_one_length] , incluido el cable de conexión
}{ $more ->
    [yes] , y { $allowance } más
   *[no] {""}
}
sheet-from-stock = de existencias: { $sku }
sheet-label-pair = rotule su par { $mark } en ambos extremos: { $way }
sheet-lead-in = Cable de conexión: { $orders }, holgura incluida.

## Qué medir, ajustar y probar

sheet-measure = Mida en el extremo del cable de conexión
sheet-column-reading = Lectura
sheet-column-sound = En buen estado
sheet-column-limit = Límite
sheet-stage = { $stage ->
    [after_winding] después de devanar
    [before_sealing] antes de sellar
    [after_sealing] después de sellar
    [before_covering] antes de cubrir
   *[after_covering] después de cubrir
}
sheet-reading = { $reading ->
    [resistance] Resistencia
    [inductance] Inductancia
    [quality_factor] Factor de calidad
   *[insulation] Aislamiento
}
sheet-settings = Ajuste la unidad
sheet-column-channel = Canal
sheet-column-threshold = Umbral
sheet-column-output = Salida, a
sheet-column-failure = Si falla el lazo
sheet-column-unit = Unidad, serie
sheet-column-as-left = Como quedó
sheet-output = { $output }{ $lets_go ->
    [yes] , suelta después de { $held }
   *[never] {""}
}, { $input ->
    [open] abrir
    [hold_or_reverse] retener o invertir
    [hold_while_still] retener mientras está quieto
    [close] cerrar
   *[presence] presencia
}
sheet-frequency = Frecuencia
sheet-trials = Pruebe
sheet-vehicles = Vehículos que se deben detectar: { $vehicles }.

## Cuándo sellar y abrir

sheet-seal = Sellar y abrir
sheet-no-weather = No se planeó con pronóstico: selle una ranura seca y limpia dentro de los límites de la ficha técnica del sellador, y deje volver el tránsito cuando las ruedas no arrastren nada de sellador.
sheet-slab = Losa
sheet-air = Aire
sheet-sealed-at = Sellado a las
sheet-opened-at = Abierto a las
sheet-verdict = { $verdict-label }{ $starts ->
    [yes] , { $start }
   *[no] {""}
}
sheet-sealant-and-slot = { $sealant }; ranura, { $seen ->
    [no] según se supone:{" "}
   *[yes] estado:{" "}
}{ $condition }.
sheet-begin = Empiece
sheet-begin-once-dry = Cuando la ranura esté seca, empiece
sheet-window = { $from } a { $until }
sheet-windows = { $which ->
    [none] a ninguna hora hasta el { $until }
    [more] { $windows }; más después
   *[all] { $windows }
}.
sheet-column-begun = Empezado el { $from }, último tramo sellado el { $sealed }
sheet-column-earliest = Lo más temprano
sheet-column-latest = Lo más tarde
sheet-beyond-forecast = más allá del pronóstico
sheet-clock = Las horas son del reloj del sitio ({ $clock }); el pronóstico termina el { $until }.

## Pasos, precauciones, lo que se supuso

sheet-steps = Pasos
sheet-caution-mark = { $count ->
    [one] Precaución
   *[other] Precauciones
} { $numbers }
sheet-cautions = Precauciones
sheet-notes = Notas
sheet-assumed = Se supuso: verifique en el sitio
# Los campos de la solicitud cuyo valor pudo tomar la hoja; una prueba pide los de los ejemplos.
sheet-field = { $field ->
    [backer_rod-diameter] diámetro del cordón de respaldo
    [backer_rod-form] cordón de respaldo
    [backer_rod-piece_length] largo de los trozos de cordón
    [backer_rod-spacing] separación de los trozos de cordón
    [construction] construcción
    [detector-envelope] lo que sintoniza la unidad
    [detector-inductance_max_uh] inductancia máxima de la unidad, µH
    [detector-inductance_min_uh] inductancia mínima de la unidad, µH
    [detector-frequency_max_khz] frecuencia máxima de la unidad, kHz
    [detector-frequency_min_khz] frecuencia mínima de la unidad, kHz
    [detector-threshold_steps_percent] pasos de sensibilidad de la unidad, %
    [frequency_khz] frecuencia, kHz
    [lead_in-gauge] calibre del cable de conexión
    [lead_in-in_conduit] cable de conexión en tubo conduit
    [lead_in-in_slot] cable de conexión en ranura
    [lead_in-inductance] inductancia del cable de conexión
    [lead_in-length] largo del cable de conexión
    [lead_in-spare] cable de conexión de reserva
    [lead_in_slot-cover] recubrimiento en la ranura del cable de conexión
    [lead_in_slot-depth] profundidad de la ranura del cable de conexión
    [lead_in_slot-width] ancho de la ranura del cable de conexión
    [opening-edge_setback] distancia a los bordes
    [opening-leaf_ground_gap] espacio bajo la hoja
    [opening-leaf_height] altura de la hoja
    [opening-leaf_open] dónde queda la puerta abierta
    [opening-unit_side] lado de la unidad
    [roles] lazos
    [saw-blade_diameter] diámetro del disco
    [saw-core_diameter] diámetro de los agujeros de esquina
    [saw-corner] esquinas
    [sealant-cartridge] cartucho de sellador
    [sealant-data_sheet-activation_energy_kj_per_mol] energía de activación del sellador, kJ/mol
    [sealant-data_sheet-at_relative_humidity_percent] humedad de la ficha técnica, %
    [sealant-data_sheet-at_temperature] temperatura de la ficha técnica
    [sealant-data_sheet-damp_slot_allowed] ranura húmeda permitida
    [sealant-data_sheet-minimum_application_temperature] temperatura mínima de aplicación
    [sealant-data_sheet-skin_over] tiempo para formar piel
    [sealant-finish_below_surface] sellador bajo la superficie
    [sealant-kind] sellador
    [sealant-data_sheet-pour_temperature] temperatura de vertido
    [sealant-shelf_life] vida útil del sellador
    [slot-cover] recubrimiento
    [slot-depth] profundidad de la ranura
    [slot-width] ancho de la ranura
    [start] inicio del sellado
    [surface] pavimento
    [surface_condition] ranura
    [temperature] temperatura del alambre
    [vehicles] vehículos que se deben detectar
    [weather-conditions] clima
    [weather-conditions-surface] temperatura de la losa
    [wire-gauge] calibre del alambre
    [wire-over_insulation] alambre sobre su aislamiento
    [wire-over_jacket] cubierta del cable
    [wiring] conexión
    [work_duration] tiempo para sellar
   *[other] otro valor que nadie indicó
}
