### What to load, how long it takes and what it costs.

## The cuts: their depth, what they come near to, blade and rod.

materials-cut-through-slab = { $place ->
    [lead_in] El corte del cable de conexión
   *[loop] Un corte
} de { $slot_depth } de profundidad atraviesa la losa. No corte. Use un alambre más delgado, menos vueltas o menos recubrimiento, de modo que baste con { $enough }.
materials-cut-weakens-slab = { $place ->
    [lead_in] El corte del cable de conexión
   *[loop] Un corte
} de { $slot_depth } es más profundo que un tercio de la losa y la debilita. Use menos vueltas, un alambre más delgado o menos recubrimiento, de modo que baste con { $enough }, o consulte a quien responde por la losa.
materials-steel-near-cut = { $place ->
    [lead_in] El corte del cable de conexión
   *[loop] Un corte
} de { $slot_depth } llega a menos de { $steel_clearance } del acero, que está a { $steel_depth } de profundidad. No corte tan profundo: nunca corte acero. Use menos vueltas, un alambre más delgado o menos recubrimiento, de modo que baste con { $enough }.
materials-no-blade-reaches = Ningún disco común corta { $slot_depth } de profundidad. Use menos vueltas, un alambre más delgado o menos recubrimiento, de modo que baste con { $enough }.
materials-blade-too-small = Un disco de { $blade_diameter } no alcanza { $slot_depth } de profundidad. Use uno de { $enough }: la estimación cuenta con ese y con su sobrecorte de { $run_out }.
materials-overrun-leaves-slab = Para cortar a toda la profundidad, el disco se pasa { $reach } del lazo, y el borde está a { $edge_distance }. Perfore las esquinas, use un disco más pequeño o termine los extremos con cincel.
materials-rod-stands-out = El cordón de respaldo, de { $rod_height } de alto, no cabe entre { $place ->
    [lead_in] el par del cable de conexión
   *[loop] el alambre
} y la superficie terminada del sellador. Use un cordón más delgado o corte a { $needed_depth } de profundidad.

## Whether sealant can flow round what lies in a slot.

materials-fit-agency-minimum = { $agency } pide al menos { $agency_slot_width }. Corte con un ancho de { $advised_width }.
materials-fit-right = Hay espacio para el sellador por todos lados, y no más.
materials-fit-generous = Funciona, pero requiere { $fraction ->
    [one_third] un tercio
    [one_half] la mitad
   *[other] un { $share }
} más de ranura, y por tanto de sellador, que con { $advised_width }.

## The whole job: rod, wire, jackets, heat, joints, stock, and what is left out.

materials-pairs-apart = Los pares sueltos se acoplan donde van juntos: apilados a lo largo de 50 ft, un 0.9 %; intercalados, un 3.6 %. Cada uno se cuenta en su propia ranura. Tuérzalos tres vueltas por pie (diez por metro) o use pares con cubierta para que compartan una.
materials-corner-stands-alone = { $by ->
    [run_out] Los lados siguen { $run_out }, más allá de los { $corner_cut } que evita la diagonal,
   *[full_cut] Los lados se cortan completos hasta la esquina y una diagonal los cruza,
} de modo que en cada esquina queda suelto un triángulo de pavimento que puede desprenderse. { $by ->
    [run_out] Use un disco más pequeño o un corte de esquina más largo, o perfore las esquinas.
   *[full_cut] Termine los lados en la diagonal, o perfore las esquinas.
}
materials-continuous-rod = Un cordón de respaldo continuo impide que el sellador rodee el alambre. Use trozos cortos con espacios entre ellos.
materials-continuous-rod-freezes = Aquí hiela: el agua que corre a lo largo del cordón levanta el sellador y lo saca de la ranura.
materials-buried-at-steel = El lazo debe quedar a { $cover } de profundidad y el acero empieza a { $steel_depth }: quedaría junto al acero o debajo de él, lo que quita gran parte de la señal que producen los vehículos. Sujételo por encima del acero, con { $enough } de concreto encima, o baje el acero en ese lugar.
materials-wire-loose = Nada sujeta abajo el alambre sencillo: flota en el sellador fresco. Use trozos cortos de cordón de respaldo, o indique en el sitio qué otra cosa lo sujeta.
materials-rod-melts = El sellador de aplicación en caliente derrite el cordón de espuma común. Use un cordón cuya ficha técnica lo permita para la temperatura de vertido.
materials-rod-not-needed = Un lazo con cubierta se queda abajo por sí solo: para él no se cuenta cordón de respaldo.
materials-splice-forced = Un lazo con su cable de conexión necesita { $needed } en un solo tramo, y ningún carrete lo tiene. El lazo termina en una caja de paso junto al pavimento y allí se empalma con el cable de conexión, soldado y sellado, nunca en la ranura: los juegos de empalme y las cajas están en la lista. Un carrete más largo los evita.
materials-jacket-assumed = Solo se supone que un lazo preformado cabe en su ranura. Mídalo por fuera de la cubierta, o tome esa medida de la ficha técnica del lazo, antes de cortar la ranura.
materials-insulation-too-low = El aislamiento soporta { $rating } y el sellador se vierte a { $pour }: se ablandaría y los alambres se tocarían. Use alambre y cubierta aptos para el vertido, o un sellador que se aplique en frío.
materials-insulation-unknown = Nadie indicó qué temperatura soportan el aislamiento y la cubierta. Busque el valor en la ficha técnica del alambre: debe ser al menos los { $pour } del vertido.
materials-joint-not-counted = Hay una junta y no se cuenta ningún cruce. Cuente dónde el alambre cruza una junta o una grieta, para que se carguen los manguitos.
materials-no-stock-fits = Ningún lazo en existencia mide { $along_travel } x { $across_lane } con { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
} y { $lead_in_length } de cable de conexión, incluida su reserva. Pídalo hecho a la medida, o haga dimensionar de nuevo los lazos de este trabajo con lo que hay en existencia.
materials-suspended-slab = Trate una losa suspendida como postensada mientras los planos o un escaneo no muestren otra cosa: ningún corte sin un escaneo y la autorización por escrito del ingeniero. Indique que está aprobado solo cuando tenga ambos.
materials-suspended-slab-approved = Tenga en el sitio el escaneo y la autorización por escrito del ingeniero, y corte solo donde y hasta la profundidad que permitan.
materials-lead-in-unaccounted = { $rest } del cable de conexión no van ni en un corte ni en tubo conduit, y no se cuenta nada para ellos. Indique cuánto va en un corte y cuánto en tubo conduit.
materials-left-out = No se cuenta aquí: { $left_out }.
materials-left-out-burial = la excavación y lo que se coloca sobre un lazo enterrado
materials-left-out-conduit = las horas para tender el tubo conduit

## What to load: how each quantity comes about.

materials-blade = { $slot_width } de ancho y { $blade_diameter } de diámetro, para { $saw_cut } de corte hasta { $slot_depth } de profundidad; en un extremo que debe tener toda la profundidad se pasa { $run_out }: donde estorbe un bordillo, una caja o un borde, termine con cincel o taladro. { $charge ->
    [wear] Se cobra por la longitud que corta; lleve { $blades }, a razón de { $blade_life } cada uno.
    [owned] Es de la cuadrilla y no se compra; un disco corta { $blade_life }.
   *[bought] Un disco corta { $blade_life }.
}
materials-preformed-loop = { $label }: { $along_travel } x { $across_lane }, { $turns ->
    [one] { $turns } vuelta
   *[other] { $turns } vueltas
}, con { $lead_in_length } de cable de conexión{ $supply ->
    [in_stock] , de las existencias
    [in_stock_longer] , de las existencias; corte el cable de conexión a { $lead_in_needed } en la unidad
   *[made_to_size] ; pídalo hecho a la medida
}.
materials-spools = Carretes de { $spool_length }.
materials-wire = { $wire_length } de alambre { $gauge }, de { $over_insulation } sobre el aislamiento, en { $pieces ->
    [one] { $pieces } tramo
   *[other] { $pieces } tramos
}: las vueltas y dos veces cada cable de conexión con su reserva, más { $allowance } para esquinas y extremos; { $supply ->
    [on_spools] cada tramo de un solo carrete, cuando un carrete lo tiene
   *[by_length] cada tramo sin empalme
}.
materials-rod = { $form-label }: cordón de respaldo de { $rod_diameter } de diámetro, { $rod_length } en total.
materials-conduit = Tubo conduit de { $size } para el recorrido de los cables de conexión hasta la unidad, { $runs ->
    [one] { $runs } tramo
   *[other] { $runs } tramos
}, { $cables ->
    [one] con un cable en cada uno, que lo llena como máximo al { $fill }
   *[other] con hasta { $cables } cables en cada uno, que lo llenan como máximo al { $fill }
}; sellado contra el agua en ambos extremos.
materials-home-run-cable = { $cable_length } de cable { $gauge } desde la caja de paso hasta la unidad, incluida la reserva en ella, más { $allowance } para esquinas y extremos.
materials-splice-kits = { $to ->
    [home_run] Uno por cada par, para sus dos empalmes con el cable principal
   *[next_piece] Uno en cada lugar donde un par sigue desde otro carrete, para sus dos empalmes
}: soldados y sellados, en la caja de paso y nunca en la ranura.
materials-pull-boxes = Una donde los pares salen del pavimento y se empalman, y una en cada empalme de un recorrido más largo.
materials-sleeves = Uno en cada junta o grieta, { $each_side } hacia cada lado, con alambre holgado adentro.
materials-sealant = { $sealant_net } de ranura menos el alambre y el cordón de respaldo, y { $waste_percent } de desperdicio{ $pavement ->
    [concrete] ; gris, para que se confunda con el concreto
    [asphalt] ; negro, para que se confunda con el asfalto
   *[other] {""}
}{ $supply ->
    [in_cartridges] ; cartuchos de { $cartridge }
   *[by_volume] {""}
}.
materials-nozzles = Una por cada lazo: lo que queda en una boquilla fragua mientras se coloca el lazo siguiente.
materials-sand = Arena del color del { $pavement ->
    [concrete] concreto
   *[asphalt] asfalto
} sobre el sellador fresco, para que no se note.
materials-bedding-sand = Arena sin piedras en una zanja de { $trench_width } de ancho, { $bed_under } debajo del lazo y { $bed_over } encima, a lo largo de { $path }.
materials-ties = { $ties } cinchos de plástico, uno cada { $tie_spacing } y uno en cada esquina; ningún amarre de alambre, que forma una vuelta propia.
materials-burial-sand = Excave a { $trench_depth } de profundidad, coloque el lazo plano sobre { $bed_under } de arena y cúbralo con { $bed_over } más antes de devolver el relleno: el lazo queda a { $cover } bajo la superficie. Compacte a mano sobre él y coloque una cinta de advertencia en el relleno.
materials-burial-blocks = Coloque el lazo antes que los adoquines, plano en la cama de asiento con { $bed_under } de ella debajo, de modo que quede a { $cover } bajo la cara superior de los adoquines. Antes de que estén puestos los adoquines, no debe apoyarse sobre él ningún borde de adoquín ni ningún vibrador.
materials-burial-asphalt = Coloque el lazo sobre la capa compactada antes de la última capa, fíjelo plano cada { $tie_spacing } y cúbralo a mano con mezcla fina: queda a { $cover } bajo la superficie. La cubierta debe soportar el calor de la mezcla, y ningún rodillo debe pasar sobre él sin cubrir.
materials-burial-concrete = Sujete el lazo en la cimbra antes del vaciado, cada { $tie_spacing } con cinchos de plástico, plano y tan por encima del acero como se pueda: encima van { $cover } de concreto. Mídalo una vez más antes de que llegue el camión; nadie debe pasar un vibrador a lo largo de él.
materials-terminations = Dos extremos por cada lazo, estañados o soldados, y sellados.
materials-line-device = Un haz fotoeléctrico o similar, donde un vehículo puede quedar sin ser detectado entre dos lazos.

## How long each step takes: phrases.

materials-work-once = una vez por trabajo
materials-work-per-corner = { $pieces ->
    [one] { $pieces } esquina
   *[other] { $pieces } esquinas
}, { $each } cada una
materials-work-per-pull = { $pieces ->
    [one] { $pieces } tendido
   *[other] { $pieces } tendidos
}, { $each } cada uno
materials-work-per-loop = { $pieces ->
    [one] { $pieces } lazo
   *[other] { $pieces } lazos
}, { $each } cada uno
materials-work-per-cut = { $saw_cut } de corte

## What it costs, and the same job in each construction.

materials-unpriced = El total no incluye lo que aún no tiene precio: { $unpriced }. Indique también estos precios.
materials-unpriced-name = { $unpriced }
materials-unpriced-item = { $item }
materials-unpriced-labour = mano de obra
materials-unpriced-spool = El alambre en carrete se cobra por el número propio del carrete: asígnele uno.
materials-compare-hand-wound = Alambre del carrete, { $pulls ->
    [one] { $pulls } tendido
   *[other] { $pulls } tendidos
}, sujeto con cordón de respaldo: nada que esperar, y cualquier tamaño. El alambre no tiene cubierta.
materials-compare-saw-cut = { $pulls ->
    [one] { $pulls } tendido
   *[other] { $pulls } tendidos
}, uno por cada lazo, y sin cordón de respaldo; la cubierta protege el alambre. El lazo debe estar en existencia o hacerse a la medida.
materials-compare-direct-burial = Sin corte y sin sellador, pero solo antes de colocar la superficie; se suman la cama y el material que cubre el lazo, y el cable de conexión en tubo conduit.
materials-compare-unpriced = Su suma no incluye lo que no tiene precio: { $unpriced }.

materials-pooled-line = { $exact }{ $unit ->
    [cartridge] {" "}cartuchos
    [spool] {" "}carretes
    [each] {""}
    [lot] {""}
    [ft3] {" "}ft³
    [m3] {" "}m³
   *[other] {" "}{ $unit }
} en total para { $jobs ->
    [one] { $jobs } trabajo
   *[other] { $jobs } trabajos
}, redondeado hacia arriba una sola vez{ $pavement ->
    [concrete] ; gris, para que se confunda con el concreto
    [asphalt] ; negro, para que se confunda con el asfalto
   *[other] {""}
}.
# It follows the one above, on sealant.
materials-pooled-sealant = { $sealant-label }.
materials-pooled-bill = Una sola lista para { $jobs ->
    [one] { $jobs } trabajo
   *[other] { $jobs } trabajos
}: lo que es igual se suma y se redondea una sola vez.{ $prices ->
    [differ] {" "}Los trabajos tienen precios distintos, así que no lleva suma: indique una sola lista de precios para todos.
   *[other] {""}
}{ $left_out ->
    [0] {""}
    [one] {" "}No incluye { $left_out } trabajo sin lista.
   *[other] {" "}No incluye { $left_out } trabajos sin lista.
}

## Why a default was taken.

materials-usual-width = Espacio para que el sellador rodee lo que hay en la ranura, y no más; nunca menos de lo que pide la agencia indicada.
materials-depth-gives-way = Lo que necesitan los alambres, el recubrimiento y el acabado: la profundidad usual cede ante la losa y el acero.
materials-usual-depth = La profundidad usual para esta construcción; mayor donde la necesitan los alambres, el recubrimiento y el acabado.
materials-lead-in-width = El de la ranura del lazo; mayor donde lo necesita el par o la agencia indicada.
materials-lead-in-depth = La de la ranura del lazo; mayor donde la necesita el par.
materials-lead-in-cover = El que hay sobre el lazo.
materials-usual-corner = En diagonal donde el lazo tiene cortes de esquina; si no, en escuadra.
materials-usual-rod-diameter = 1/16 in más que su ranura, para que quede ajustado.
materials-flat-jacket = Sin el diámetro exterior, se supone que la cubierta es plana: un alambre de ancho, tantos de alto como vueltas tiene, sin nada más.
materials-usual-waste = Parte del sellador se queda en los cartuchos, se desborda y se derrama.
materials-usual-blade = Un disco usual; determina cuánto se prolongan los cortes para tener toda su profundidad.
materials-usual-blade-life = No existe ninguna cifra pública sobre la vida de un disco; indique la suya.
materials-usual-allowance = Se tiende un poco más de alambre de lo que mide el recorrido: esquinas, extremos y lo que se recorta.
materials-lead-in-to-box = El cable principal empieza en una caja al borde del pavimento; indique qué largo tiene el corte si la caja está más lejos.
materials-usual-core = Espacio para que el alambre se doble.
materials-usual-cartridge = Un cartucho de un cuarto de galón estadounidense.
materials-usual-finish = A ras del pavimento; las agencias piden de a ras hasta 1/8 in por debajo.
materials-usual-rod-form = Los trozos cortos sujetan el alambre sencillo abajo y dejan que el sellador lo rodee; un lazo con cubierta no lleva ninguno.
materials-agency-asks = Lo que pide una agencia.
materials-no-public-pace = No existe ninguna cifra pública sobre el ritmo de una cuadrilla; indique el suyo.
materials-usual-construction = Lo que pide la superficie.
materials-usual-corner-cut = El corte de esquina usual, porque se piden esquinas en diagonal.
materials-lead-in-in-slot = Lo que no va en tubo conduit va en un corte; indique qué largo tiene el corte si termina antes de la unidad.
materials-lead-in-to-edge = El camino más corto al borde del pavimento del lado de la unidad; más allá, tubo conduit. Indique qué largo tiene el corte si va más lejos.
materials-lead-in-in-conduit = Lo que no va en ningún corte va en tubo conduit.
materials-buried-lead-in = El cable de conexión de un lazo enterrado va en tubo conduit todo el camino.
