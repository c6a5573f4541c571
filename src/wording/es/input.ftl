### The nouns of requests: why a default was taken.

## The loop and its wire

input-usual-shape = La forma usual.
input-square-corners = Esquinas rectas, salvo que se indique un corte.
input-least-cover = El recubrimiento mínimo que pide una agencia.
input-usual-loop-wire = El alambre usual para lazos.
input-usual-over-insulation = El diámetro usual del alambre aislado para lazos de 14 AWG.
input-same-insulation = Este conductor con el aislamiento que suele tener el alambre para lazos de 14 AWG.
input-gauge-gives-way = El calibre más grueso que cabe, con su propio aislamiento, en el diámetro que se indicó.
input-insulation-gives-way = No más grueso que la cubierta que se indicó.

## The lead-in

input-usual-lead-in-length = Una distancia usual hasta el gabinete; mida la suya.
input-usual-spare = Holgura del par, enrollada en la caja de paso.
input-price-key-unknown = El precio de “{ $name }” no corresponde a nada de la cuenta. ¿Quiso decir { $meant }?
input-stock-short = Se planean { $needed } de { $sku } y { $available ->
    [one] hay { $available }
   *[other] hay { $available }
}: pida { $missing } más o instale otros lazos.
input-usual-unit-side = La unidad está adentro, en el borde del pavimento, a la derecha al salir; indíquelo si está a la izquierda.
input-usual-lead-in-wire = El cable de conexión usual.
input-loose-lead-in-inductance = Dos alambres de 14 AWG separados media pulgada, según su geometría.
input-usual-lead-in-inductance = El punto medio de 20 a 24 µH por 100 ft de par trenzado de 14 AWG.

## The slot

input-usual-slot-width = Espacio para que el sellador fluya alrededor del alambre, y nada más.
input-usual-slot-depth = La profundidad usual para este tipo de instalación; mayor donde las vueltas lo requieren.
input-usual-slot-cover = El recubrimiento usual para este tipo de instalación.
input-wide-slot = El disco más angosto que deja espacio para el sellador alrededor de lo que va en la ranura.
input-cover-gives-way = Lo que la profundidad deja sobre los alambres: el recubrimiento usual cede ante ella.
input-cover-by-depth = El recubrimiento usual cede: en la ranura que se indicó, la parte que le toca de la profundidad usual.
input-slot-too-shallow = { $place ->
    [lead_in] El par requiere
   *[loop] Los alambres requieren
} una ranura de { $needed_depth } de profundidad para { $wires_height } de alto bajo { $cover } de recubrimiento{ $finish ->
    [below_surface] {" "}y un acabado { $finish_below_surface } por debajo de la superficie
   *[flush] {""}
}.{ $outcome ->
    [bare] {" "}Tal como se pidió, el sellador lo deja al descubierto.
    [full] {" "}A la ranura, tal como se indicó, no le queda profundidad para el sellador.
   *[covered] {""}
} Corte a esa profundidad si la losa lo permite, o use alambre más delgado o { $outcome ->
    [full] menos vueltas
   *[other] menos recubrimiento
}.
input-thin-cover = { $place ->
    [lead_in] La ranura del cable de conexión
   *[loop] La ranura
} de { $slot_depth } deja { $cover_left } de sellador sobre alambres de { $wires_height } de alto, y lo mínimo que debe haber son { $least_cover }. Córtela a { $enough } de profundidad si la losa lo permite, o use alambre más delgado o menos vueltas.
input-slot-fit = { $place ->
    [lead_in] La ranura del cable de conexión
   *[loop] La ranura
} de { $slot_width }: { $advice }
input-fit-does-not-go-in = Lo que mide { $stiffest } no entra. Córtela de { $advised_width } de ancho.
input-fit-no-room = El sellador no puede fluir alrededor de { $widest }: bolsas de aire, luego detecciones falsas, agua y levantamiento por heladas. Córtela de { $advised_width } de ancho.

## The surface and the sealant: several parts of a plan take these, and a plan says each once

input-usual-surface = La superficie usual.
input-usual-sealant = El sellador usual para lazos.
input-usual-pour-temperature = La temperatura a la que se vierte el sellador de aplicación en caliente de una agencia.

## The opening

input-usual-leaf-height = Una hoja de portón usual.
input-usual-leaf-open = La mayoría de las puertas levadizas quedan horizontales bajo el techo mientras están abiertas.
input-usual-leaf-gap = Una separación usual del suelo.
input-usual-vehicles = Lo que llega a la mayoría de los claros y lo que queda más alto.

## The detector unit

input-usual-envelope = Lo que sintoniza como mínimo una unidad construida según la norma; rige la hoja de datos de la propia unidad.

# The other limit was given, and this one is a default.
input-least-gives-way = El mínimo de { $what ->
    [frequency] frecuencia
   *[inductance] inductancia
} del intervalo cede ante el máximo que se indicó: { $share } de él; rige la hoja de datos de la propia unidad.
input-greatest-gives-way = El máximo de { $what ->
    [frequency] frecuencia
   *[inductance] inductancia
} del intervalo cede ante el mínimo que se indicó: { $factor } veces ese valor; rige la hoja de datos de la propia unidad.

## The weather

input-forecast = El pronóstico del servicio meteorológico para el lugar que se indicó.
input-forecast-stale = El pronóstico del servicio meteorológico para el lugar que se indicó, de hace { $age }: el servicio no da ahora uno más reciente.

## What several questions say

input-fine-threshold = { $threshold } es más fino que la clase más fina de la norma ({ $finest_class }). La hoja de datos de la propia unidad debe mostrar que conmuta ahí.

## The loops of a list

input-usual-label = Su número en la lista; póngale un nombre propio para volver a encontrarlo.
