### What has failed, and what to test next.

## What the readings and the substitution mean

faults-insulation-reading = { $reading } { $meaning }.
faults-insulation-asked = La ficha técnica de la unidad pide { $insulation_min }.
faults-test-voltage = El aislamiento se probó a { $test_voltage }; los límites de las agencias valen a { $usual_test_voltage }, y con menos puede quedar oculta una fuga. Repita la prueba a { $usual_test_voltage } si el alambre y todo lo que siga conectado lo soportan.
faults-reading-temperature = A { $temperature } el cobre tiene { $difference } { $direction ->
    [more] más
   *[less] menos
} de resistencia que a 20 °C: un lazo en buen estado muestra de { $expected_low-number } a { $expected_high }, y con eso se juzgan los sospechosos.
faults-contradictory-readings = Ninguna falla única explica juntas estas lecturas: { $readings }. Una de ellas es errónea, o hay dos fallas. Mida cada una de nuevo, revisando antes las puntas de prueba, antes de actuar sobre los sospechosos.
faults-contradictory-substitutions = Con un inductor conocido, la unidad funciona con más del circuito conectado que donde no funciona: una de las pruebas es errónea, o la falla va y viene. Ninguna descarta nada; repita ambas, primero la más cercana.
faults-substitution-void = El inductor conocido tiene { $inductance } y la unidad se sintoniza de { $inductance_min-number } a { $inductance_max }: que funcione o no, no dice nada. Repita la prueba con un inductor del centro de ese intervalo.
faults-substitute-does-not-run = Con un inductor conocido la unidad no funciona: la falla está en { $connected_at-code ->
    [unit_terminals] la unidad o su alimentación
    [harness_end] la unidad, su alimentación o el arnés
   *[lead_in_end] la unidad, su alimentación, el arnés o el cable de conexión
}, no en el lazo.
faults-substitute-does-not-switch = Con un inductor conocido la unidad funciona pero no conmuta: revise primero la unidad, su sensibilidad y su salida.
faults-substitute-runs = Con un inductor conocido la unidad funciona: { $connected_at-code ->
    [unit_terminals] la unidad y su alimentación están bien, y la falla está en el arnés, el cable de conexión o el lazo
    [harness_end] la unidad, su alimentación y el arnés están bien, y la falla está en el cable de conexión o el lazo
   *[lead_in_end] la unidad, su alimentación, el arnés y el cable de conexión están bien, y la falla está en el empalme o el lazo
}.

faults-insulation-dry = La falla aparece con la lluvia y el suelo estaba seco, así que una buena lectura no descarta nada: moje la ranura, el empalme y el cable de conexión, y mida de nuevo.
faults-break-place = El par abierto tiene { $capacitance } de los { $whole_capacitance } que tiene uno entero: { $place ->
    [lead_in] el alambre está abierto dentro del cable de conexión, aproximadamente al { $share } del recorrido de la unidad al lazo
    [unknown] es más de lo que este cable de conexión con un lazo puede tener, así que una de las dos cifras es de otro cable; mida un par igual y vuelva a leer
   *[splice_or_loop] llega hasta el empalme, así que el alambre está abierto en el empalme o en el lazo; abra el empalme y mida el lazo solo
}.
faults-break-distance = Busque a { $distance } de la unidad, a lo largo del cable.
faults-gate-seen = Un lazo que detecta su propio portón se investiga con los lazos conectados: lea el nivel o la frecuencia de la unidad con el portón cerrado y abierto, o mueva la hoja a mano con el accionamiento del portón bloqueado y etiquetado y con el recorrido de la hoja vigilado. Nunca desconecte un lazo que retiene el portón mientras el portón pueda moverse. Ajuste un paso menos sensible solo si con él todavía se detecta cada vehículo; si no, hay que mover el lazo o la hoja.

## A reading, at the beginning of a sentence or in a list

faults-reading = { $meter ->
    [insulation_megohm] Aislamiento
    [resistance_ohm] Resistencia
    [inductance_uh] Inductancia
    [capacitance_nf] Capacitancia
   *[quality_factor] Factor de calidad
} { $range ->
    [over_range] fuera de escala
   *[number] de { $measured }
}

## What speaks for and against a fault

faults-reading-evidence = { $reading } { $verdict ->
    [for] concuerda con esta falla
   *[against] no concuerda con esta falla
}{ $expected ->
    [range] {" "}(se espera de { $expected_low } a { $expected_high })
    [over_range] {" "}(se espera fuera de escala)
   *[unknown] {""}
}.
faults-observation-evidence = “{ $observation-label }” { $verdict ->
    [for] es usual con esta falla
   *[against] es inusual con esta falla
}.
faults-substitution-evidence = La unidad { $outcome ->
    [runs] funciona
   *[does_not_run] no funciona
} con un inductor conocido ({ $connected_at-label }), lo que { $verdict ->
    [for] concuerda con esta falla
   *[against] contradice una falla en ese lugar
}.

faults-test-evidence = La prueba “{ $test-label }” mostró: { $outcome-label }. Eso { $verdict ->
    [for] concuerda con esta falla
   *[against] contradice esta falla
}.

## The form of a fault, behind its name

faults-in-loop = en el lazo
faults-in-lead-in = en el cable de conexión
faults-at-splice = en el empalme del lazo con el cable de conexión
faults-along-lead-in = a lo largo del cable de conexión
faults-turn-of-count-closed = una vuelta de { $turns } cerrada sobre sí misma
faults-turn-closed = una vuelta cerrada sobre sí misma
faults-turn-bridged = la vuelta puenteada
faults-bridged-at-tails = el lazo puenteado en sus puntas
faults-bridged-along-lead-in = el par puenteado a lo largo del cable de conexión
faults-wrong-turns = { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
} en lugar de { $designed_turns }
faults-turns-too-few = vueltas de menos
faults-turns-too-many = vueltas de más
faults-other-loop-connected = hay otro lazo conectado
faults-wires-of-two-loops-connected = hay conectado un alambre de cada uno de dos lazos
faults-metal-at-rest = metal que permanece allí
faults-metal-of-the-gate = el metal del propio portón al moverse
faults-in-unit = en la unidad
faults-in-arrester = en el supresor de sobretensiones

## The test to do next

faults-test-reason = { $minutes } minutos; { faults-disturbs }. De todas las pruebas que quedan, es la que más dice a ese costo. Lo más probable por ahora: { $suspects }.
faults-test-comes-first = { $minutes } minutos; { faults-disturbs }. { $test ->
    [insulation_test_wet] La falla aparece con la lluvia y el aislamiento era bueno con el suelo seco: nada más vale la pena antes de mojarlo.
   *[split_at_splice] El aislamiento es malo, y solo el empalme abierto indica si es el lazo, el cable de conexión o el propio empalme.
}
faults-test-confirms = { $minutes } minutos; { faults-disturbs }. La falla está prácticamente encontrada, y esto la confirma: lo que sigue es la reparación.
faults-test-proves = { $minutes } minutos; { faults-disturbs }. Ninguna prueba { $scope ->
    [allowed] dentro del tiempo que queda y de lo que se permite intervenir
   *[all] de las que quedan
} diría más: repare lo más probable y compruébelo así.
faults-join-splice-first = Una primero el empalme: el lazo debe estar conectado a su unidad antes de que el portón pueda moverse.
faults-disturbs = { $disturbs-code ->
    [nothing] no se desconecta nada más
    [plug] solo se abre un enchufe o unos terminales
    [splice] el empalme se abre y se hace de nuevo
   *[pavement] la ranura se abre y se vuelve a sellar
}
faults-seen = { $outcome-label }
faults-suspect-placed = { $suspect }{ $place ->
    [lead_in] {" "}en el cable de conexión
    [splice] {" "}en el empalme
    [loop] {" "}en el lazo
   *[anywhere] {""}
}
faults-dry-clears-nothing = El suelo está seco, así que una buena lectura no descarta nada: moje la ranura, el empalme y el cable de conexión, y mida de nuevo.
faults-outcome-means = { $certainty ->
    [settled] Entonces es esto: { $suspects }
    [leaning] Entonces lo más probable es esto: { $suspects }
   *[open] Entonces quedan estas posibilidades: { $suspects }
}.

## Why a default was taken

faults-usual-place = Donde primero se conectan los medidores.
faults-inductance-by-tank = La que hace que la unidad trabaje a su frecuencia con la capacitancia del circuito resonante de su ficha técnica.
faults-usual-ground = Nadie indicó que el suelo estuviera mojado; una buena lectura con el suelo seco no descarta nada que aparezca con la lluvia.
faults-usual-sizes = No se conoce el tamaño: los lazos en los claros rara vez son más pequeños o más grandes. Mídalo a pasos e indíquelo.
faults-usual-loops = No se conocen ni el diseño del lazo ni un registro de él: se toma en su lugar lo que los lazos suelen tener, así que solo se señala lo que difiere mucho de eso.
