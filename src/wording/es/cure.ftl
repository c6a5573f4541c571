### Whether to seal, and when traffic may return.

## The weather at the start, and until the sealant is safe

cure-slab-frozen = { $moment ->
    [later] El { $time } la losa
   *[start] La losa
} { $surface_origin ->
    [assumed] se supone a { $surface }, como la dejaron las horas anteriores
   *[measured] está a { $surface }
}: congelada, con escarcha o cerca de tenerla, y nada se adhiere a eso. El aire tibio no calienta la losa. Espere a que la losa misma esté por encima de { $warm } y seca.
cure-frozen-dry-slab = La losa { $surface_origin ->
    [assumed] se supone
   *[measured] está
} a { $surface }: congelada, pero declarada seca, libre de escarcha y con temperatura suficiente según la ficha técnica de este sellador. Pase un paño seco por la ranura y busque escarcha antes de cada cartucho; una ranura que se cortó con agua en este frío tiene hielo.
cure-slab-below-minimum = { $moment ->
    [later] El { $time } la losa
   *[start] La losa
} { $surface_origin ->
    [assumed] se supone a { $surface }, como la dejaron las horas anteriores
   *[measured] está a { $surface }
}, por debajo de los { $minimum } que pide este sellador. Espere a que la losa y el aire lleguen a esa temperatura y sigan subiendo.
cure-measure-slab = Mida la temperatura de la losa antes de decidir.
cure-air-below-minimum = { $moment ->
    [later] El { $time } el aire
   *[start] El aire
} está a { $air }, por debajo de los { $minimum } que pide este sellador. Espere a que la losa y el aire lleguen a esa temperatura y sigan subiendo.
cure-above-maximum = { $moment ->
    [later] El { $time } { $field ->
        [air] el aire
       *[surface] la losa
    }
   *[start] { $field ->
        [air] El aire
       *[surface] La losa
    }
} está a { $hottest }, por encima de los { $maximum } que permite la ficha técnica. Trabaje en las horas más frescas, fuera del sol.
cure-near-dew-point = { $moment ->
    [later] El { $time } la losa
   *[start] La losa
} { $surface_origin ->
    [assumed] se supone
   *[measured] está
} a { $surface }, { $side ->
    [at] en el punto de rocío de { $dew_point }: se condensa agua
    [below] { $distance } por debajo del punto de rocío de { $dew_point }: se condensa agua
   *[above] solo { $distance } por encima del punto de rocío de { $dew_point }: puede condensarse agua
} sobre ella. Espere a que esté { $least_margin } por encima, o seque y caliente la ranura.
cure-rain-before-safe = El { $time } { $outlook ->
    [likely] es probable que llueva o nieve ({ $probability })
    [amount] se esperan { $fall } de lluvia o nieve
   *[due] se espera lluvia o nieve
}, antes de que { $safe_event }. Empiece en un intervalo seco, o use un sellador que fragüe antes.
cure-cold-before-safe = El { $time } el aire baja a { $air }, por debajo de los { $minimum } que se piden, antes de que { $safe_event }. Empiece más temprano en un día más cálido, o use un sellador que fragüe más rápido.
cure-cold-after-skin = El { $time } el aire baja a { $air }. { $skin ->
    [formed] La piel se forma antes del frío
   *[forming] La piel debería formarse antes del frío, aunque no es seguro
}, y el frío solo retrasa el curado detrás de ella. Antes de que vuelvan las ruedas, compruebe que nada se pegue, diga lo que diga el reloj.
cure-saw-water-freezes = El { $time }, mientras se cortan las ranuras, { $field ->
    [air] el aire
   *[surface] la losa
} está a { $coldest }: el agua de la sierra se congela en la ranura y sobre el carril. Corte cuando la losa y el aire estén por encima del punto de congelación.
cure-rain-possible = El { $time } { $outlook ->
    [likely] es posible que llueva o nieve ({ $probability })
    [amount] pueden caer { $fall } de lluvia o nieve
   *[due] es posible que llueva o nieve
}, antes de que el sellador la resista. Tenga lista una cubierta que no toque el sellador.
cure-rain-after-safe = El { $time } { $outlook ->
    [likely] es probable que llueva o nieve ({ $probability })
    [amount] se esperan { $fall } de lluvia o nieve
   *[due] se espera lluvia o nieve
}, poco después de que { $safe_event }, a más tardar el { $safe_at }. Empiece a tiempo y tenga lista una cubierta que no toque el sellador.
cure-rained-before = Se esperaba lluvia o nieve hasta el { $rained_until }. Una ranura que parece seca puede no estarlo: sóplela, caliéntela y presione una toalla de papel seca contra el fondo antes de poner el sellador.
cure-rain-unknown = El pronóstico indicado no dice si llueve antes de que el sellador resista el agua. Mire el cielo, o use un pronóstico que indique la probabilidad de lluvia.
cure-weather-ends-before-sealed = El pronóstico termina el { $weather_end }, antes de sellar el último tramo. Lo que viene después no se adivina: use un pronóstico de más horas.
cure-weather-too-short = El pronóstico termina el { $weather_end }, antes de que { $safe_event }. Lo que viene después no se adivina: use un pronóstico de más horas.
cure-surface-unknown = Nadie midió la losa, y el tiempo indicado empieza apenas el { $weather_begin }: no se sabe qué dejó la noche en la losa. Se supone a { $surface }, y eso es demasiado frío para confiarse. Mida la losa junto a la ranura e indique su temperatura.
cure-surface-assumed-by-few-hours = Nadie midió la losa, y el tiempo indicado empieza apenas el { $weather_begin }: no se sabe qué dejaron en la losa las horas anteriores. Se supone a { $surface }. Mídala junto a la ranura antes de decidir e indique su temperatura.
cure-surface-measured-before = La losa se midió unas horas antes. Se supone a { $surface }: desde entonces se ha enfriado tanto como el aire, y no se ha calentado. Mídala de nuevo junto a la ranura.
cure-surface-assumed = Nadie midió la losa; se supone a { $surface }, la temperatura más baja del aire en las últimas 12 horas, y menos de noche. Mídala junto a la ranura e indique su temperatura.
cure-hot-slab = La temperatura es de { $warmest }, y nadie indicó con cuánto calor puede aplicarse este sellador: con calor forma piel rápido y el gas debajo de la piel hace burbujas. Busque la temperatura más alta en la ficha técnica, o trabaje en las horas más frescas.
cure-short-pot-life = A { $warmest } el sellador mezclado { $limit ->
    [pot_life] se puede trabajar durante
   *[set] fragua en
} unos { $band ->
    [one] { $least }
   *[range] { $least } a { $most }
}. Mezcle poco, vierta de inmediato y mantenga ambas partes a la sombra.
cure-sets-before-emptied = A { $warmest } este sellador { $limit ->
    [pot_life] se puede trabajar durante
   *[set] fragua en
} unos { $band ->
    [one] { $least }
   *[range] { $least } a { $most }
}, menos que los { $cartridge } que toma un cartucho: fragua en la boquilla.
cure-cooler-hours = Trabaje en las horas más frescas: empiece { $windows }.
cure-window = entre el { $from } y el { $until }
cure-cooler-hours-stopped = Vienen horas más frescas, pero otra cosa impide el trabajo en ellas.
cure-no-cooler-hours = Ninguna hora de este pronóstico es lo bastante fresca: elija otro día, o un sellador que fragüe más despacio.
cure-fit-to-apply = La ranura está seca, la losa está a { $surface }, { $margin } por encima del punto de rocío, y es improbable que llueva antes de que { $safe_event }, a más tardar el { $safe_at }. Empiece.

## What makes rain and cold harmless, behind "before"

cure-event-skinned-over = el sellador haya formado piel con seguridad
cure-event-set = el sellador haya fraguado con seguridad
cure-event-cold = el sellador se haya enfriado con seguridad

## The slot and the wire in it

cure-slot-wet-for-hot-sealant = Hay agua en la ranura, y el sellador fundido la convierte en vapor que salpica. Sople la ranura y séquela primero.
cure-slot-wet-by-rain = Se esperaba lluvia o nieve hasta el { $rained_until }, y nadie indicó que la ranura esté seca desde entonces: se supone mojada.
cure-slot-dries = Con este tiempo estará seca el { $dry }. Revísela entonces, o sóplela y séquela antes.
cure-slot-stays-wet = No se seca con este tiempo. Sóplela, séquela con aire caliente e indique entonces cómo se ve.
cure-slot-wet = Hay agua en la ranura: echa a perder el sello. Sóplela, seque la ranura, no deje entrar más agua y empiece después.
cure-frost-on-slab = Hay escarcha o hielo sobre la losa, y nada se adhiere a eso. Derrítalo, seque la ranura y caliente la losa misma antes de empezar.
cure-slot-damp-for-hot-sealant = La ranura está húmeda, y el sellador fundido convierte la humedad en vapor: burbujas, salpicaduras y ninguna adherencia. Seque primero la ranura con aire caliente.
cure-slot-damp-not-allowed = La ranura está húmeda, y el sellador { $kind-code ->
    [one_part_moisture_cure] de una parte
    [two_part_reactive] de dos partes
   *[hot_applied] de aplicación en caliente
} no se adhiere a lo húmedo, salvo que su ficha técnica lo diga. Seque primero la ranura.
cure-slot-damp = La ranura está húmeda. Sóplela y séquela hasta que no quede marca en una toalla de papel; una película de agua hace que el sello se suelte.
cure-surface-condition-assumed = Nadie indicó si la ranura está seca. Compruebe que lo esté, hasta el fondo, antes de poner el sellador.
cure-insulation-too-low = El aislamiento soporta { $rating } y el sellador se vierte a { $pour }: se ablandaría y los alambres se tocarían. Use alambre y cubierta aptos para el vertido, o un sellador que se aplique en frío.
cure-insulation-unknown = Nadie indicó qué temperatura soportan el aislamiento y la cubierta. Busque el valor en la ficha técnica del alambre e indíquelo: debe ser al menos los { $pour } del vertido.

## The age of the sealant

cure-past-shelf-life = La vida útil del sellador { $moment ->
    [past] terminó el { $ends_on }
   *[during] termina el { $ends_on }, antes de sellar el último tramo
}. Use sellador nuevo; el sellador viejo cura mal o no cura.
cure-shelf-life-short = La vida útil del sellador termina el { $ends_on }, { $days_left ->
    [0] el día del inicio
    [one] dentro de { $days_left } día
   *[other] dentro de { $days_left } días
}. Úselo primero y pruébelo en un retazo.

## When traffic may return

cure-weather-ends-before-traffic = El pronóstico termina antes de que se pueda abrir al tránsito con seguridad, así que nadie puede decir si se cumple con el { $needed_open_by }. Use un pronóstico de más horas.
cure-may-open-late = Se puede abrir al tránsito entre el { $earliest } y el { $latest }, y se necesita el { $needed_open_by }. Tenga listo un desvío.
cure-may-open-after-weather = Se puede abrir al tránsito desde el { $earliest }, pero quizá solo después de que termine el pronóstico indicado; se necesita el { $needed_open_by }. Tenga listo un desvío.
cure-opens-late = Se puede abrir al tránsito el { $earliest } como muy pronto, y se necesita el { $needed_open_by }.
cure-opens-after-weather = No se puede abrir al tránsito dentro del pronóstico indicado, y se necesita el { $needed_open_by }.
cure-no-alternative = Nada en este pronóstico lo cumple: elija una hora posterior, u otro día.
cure-alternatives = Lo que lo cumpliría, en una ranura seca: { $alternatives }.
cure-alternative-own = este sellador desde el { $earliest_start }
cure-alternative-other = sellador { $kind-code ->
    [one_part_moisture_cure] de una parte
    [two_part_reactive] de dos partes
   *[hot_applied] de aplicación en caliente
} desde el { $earliest_start }
cure-traffic-by-skin = Ninguna ficha técnica indica cuándo se puede abrir al tránsito, así que se toma en su lugar una piel curada de { $skin }: una decisión tomada aquí. Debajo de ella el sellador sigue blando durante días. Mantenga las ruedas fuera hasta que nada se pegue; donde deban volver el mismo día, use sellador de dos partes.

## What the times rest on

cure-front-calibrated = Sin ficha técnica, la profundidad de curado está calibrada según la práctica, no validada: una ranura de 1-1/4 in (32 mm) cura por completo en 3 a 7 días a 23 °C (73 °F) y 50 % de humedad. Indique lo que da la ficha técnica: la profundidad que cura en un día, o el tiempo hasta el curado completo.
cure-usual-times = Lo que la ficha técnica no indica es lo usual: fragua en 10 a 15 min a 23 °C (73 °F), tránsito después de 25 a 60 min y curado completo en 60 min a 25 °C (77 °F). Indique lo que da la ficha técnica: los tiempos hasta que forma piel, hasta que soporta el tránsito y hasta el curado completo.
cure-cools-in-usual-time = El sellador de aplicación en caliente no cura, se enfría: soporta el tránsito cuando está frío y nada se pega, lo que se toma como de 15 a 60 min después del vertido. Indique después de qué tiempo la ficha técnica permite abrir al tránsito.
cure-cools-in-time-of-sheet = El sellador de aplicación en caliente no cura, se enfría. El tiempo de la ficha técnica vale para su propia ranura y su propio clima: compruebe que nada se pegue.

## Why a default was taken

cure-usual-work = Nadie indicó cuánto tarda el sellado, y no se hizo ninguna estimación.
cure-work-of-estimate = El sellado de todas las ranuras, según la mano de obra de este plan; todo cuenta desde el último tramo.
cure-usual-surface-condition = Nadie indicó cómo se ve la ranura; seca, salvo que la lluvia la haya dejado mojada. Compruebe usted mismo que esté seca.
cure-surface-by-air = La temperatura más baja del aire en las últimas 12 horas indicadas, de noche 2 °C (3.6 °F) menos; durante 3 horas después de medir una losa, la de esa losa menos lo que haya bajado el aire. Así para cada hora sin losa medida.
cure-minimum-gives-way = Los 40 °F usuales ceden ante la temperatura máxima de aplicación indicada; manda la ficha técnica.
cure-usual-minimum-temperature = 40 °F y subiendo, para todo tipo de sellador; manda la ficha técnica.
cure-reference-climate = El clima de laboratorio al que se refieren las fichas técnicas.
cure-usual-skin-over = Aproximadamente lo que tarda el sellador de una parte con tiempo templado; lo más pronto es dos tercios de eso.
cure-usual-activation-energy = Los tiempos más tardíos valen con ella, los más tempranos sin ella: el frío retrasa el curado más que el solo aire seco.
cure-damp-slot-not-allowed = Una ranura húmeda solo donde la ficha técnica lo permite.
cure-usual-shelf-life = Un año desde la fecha de fabricación.
