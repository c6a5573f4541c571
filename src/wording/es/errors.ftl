### What is wrong with a field, and what to send instead.

## Quantities

errors-dimension = { $dimension ->
    [length] una longitud
    [temperature] una temperatura
    [temperature_difference] una diferencia de temperatura
    [speed] una velocidad
    [volume] un volumen
    [duration] una duración
    [inductance_per_length] una inductancia por longitud
    [depth_per_day] una profundidad por día
    [wire_size] un calibre de alambre
    [share] una proporción en por ciento
    [amount_of_money] un importe de dinero
   *[quantity] una cantidad
}
errors-dimension-at-start = { $dimension ->
    [length] Una longitud
    [temperature] Una temperatura
    [temperature_difference] Una diferencia de temperatura
    [speed] Una velocidad
    [volume] Un volumen
    [duration] Una duración
    [inductance_per_length] Una inductancia por longitud
    [depth_per_day] Una profundidad por día
    [wire_size] Un calibre de alambre
    [share] Una proporción en por ciento
   *[quantity] Una cantidad
}
errors-dimension-without-article = { $dimension ->
    [length] longitud
    [temperature] temperatura
    [temperature_difference] diferencia de temperatura
    [speed] velocidad
    [volume] volumen
    [duration] duración
    [inductance_per_length] inductancia por longitud
    [depth_per_day] profundidad por día
    [wire_size] calibre de alambre
    [share] proporción en por ciento
   *[quantity] esta cantidad
}
errors-examples = “{ $us_example }” o “{ $metric_example }”
errors-text-too-long = El texto tiene más de { $max_characters } caracteres.
errors-unit-counts-whole = Esta unidad se cuenta en números enteros.
errors-no-number = { errors-dimension-at-start } empieza con un número; “{ $text }” no tiene ninguno que se pueda leer.
errors-number-form = El número de “{ $text }” tiene una forma que no se lee.
errors-write-number = Escriba { errors-examples }.
errors-comma = “{ $text }” tiene una coma en su número.
errors-write-point = Escriba “{ $with_point }”, con punto.
errors-write-joined-or-point = Escriba “{ $without_separator }”, sin separador, o “{ $with_point }”, con punto.
errors-write-without-comma = Escriba el número sin coma y con punto para los decimales, como { errors-examples }.
errors-no-unit = { errors-dimension-at-start } necesita una unidad; “{ $text }” no tiene ninguna.
errors-unit-unknown = “{ $unit }” no es una unidad que se conozca aquí.
errors-unit-wrong-dimension = “{ $unit }” no es una unidad de { errors-dimension-without-article }.
errors-write-quantity = Escriba { errors-dimension } como { errors-examples }.
errors-out-of-range = “{ $text }” está fuera del intervalo de { $least } a { $greatest }.
errors-send-in-range = Envíe { errors-dimension } de { $least } a { $greatest }, como { errors-examples }.
errors-write-joined = Escriba “{ $without_separator }”, sin separador de miles.
errors-parts = “{ $text }” tiene algo más que un número y su unidad, o partes que no van juntas.
errors-meant-quantity = ¿Quiso decir “{ $suggestion }”? Si no, escriba { errors-dimension } como { errors-examples }.

## Counts, sizes of lists and lengths of texts

errors-not-allowed = El valor está fuera de lo que permite este campo: { errors-allowed }.
errors-send-allowed = Envíe { errors-allowed }.
errors-allowed = { $bounds ->
    [both] de { $least } a { $greatest }{ errors-things }
    [least] al menos { $least }{ errors-things }
    [greatest] como máximo { $greatest }{ errors-things }
   *[none] otro valor
}
errors-things = { $things ->
    [items] {" "}elementos
    [characters] {" "}caracteres
   *[none] {""}
}

## The structure of a body

errors-field-unknown = Aquí no hay ningún campo { $field }.
errors-did-you-mean = ¿Quiso decir { $meant }?
errors-meant = { $meant }
errors-known-fields = Aquí se conocen: { $known }.
errors-field-missing = El campo { $field } es necesario y no se envió.
errors-add-field = Agregue { $field }; su descripción indica qué admite.
errors-field-twice = El campo { $field } aparece dos veces en un mismo objeto.
errors-send-once = Envíelo una sola vez.
errors-value-unknown = “{ $value }” no es un valor que admita este campo.
errors-known-values = Uno de estos valores: { $known }.
errors-id-prefix = “{ $value }” no puede ser el comienzo de un identificador.
errors-send-id-prefix = Envíe una letra y después letras sin acento, cifras, guiones o guiones bajos, { $max_characters } como máximo en total.
errors-null = Esto no puede quedar vacío.
errors-send-value = Envíe un valor.
errors-list-too-long = La lista tiene más de { $max_items } elementos, lo máximo que este servicio admite en una lista.
errors-send-fewer-items = Envíe como máximo { $max_items } elementos.
errors-value-not-taken = El campo no admite { $value }.
errors-send-whole-number = Envíe un número entero dentro del intervalo del campo; su descripción lo indica.
errors-type-wrong = Hay { $sent ->
    [array] una lista
    [object] un objeto
    [text] un texto
    [number] un número
    [truth_value] un valor verdadero o falso
   *[other] otro valor
} donde corresponde { $expected }.
errors-send-type = Envíe { $expected }.
errors-type = { $type ->
    [text] un texto
    [number] un número
    [whole_number] un número entero
    [truth_value] verdadero o falso (true o false)
    [array] una lista
    [object] un objeto
    [listed_text] uno de los textos de la lista
   *[other] otro tipo
}
errors-type-of-text = { errors-dimension } como texto, por ejemplo “{ $example }”
errors-type-other = { $type }

## Batches

errors-batch-too-large = { $items } elementos son más de los que puede tener aquí un lote.
errors-batch-over-burst = Quien llama puede enviar { $max_items } solicitudes a la vez, y un elemento de un lote cuenta como una.
errors-batch-item-location = Un lote no obtiene el pronóstico para un solo elemento.
errors-batch-item-location-hint = Envíe el tiempo hora por hora, o un solo lugar para todos los elementos.

## Forecasts

errors-no-forecasts = Este servicio no obtiene pronósticos.
errors-forecast-not-covered = El servicio meteorológico no tiene pronóstico por horas para este lugar.
errors-send-conditions = Envíe en su lugar el tiempo hora por hora.

## Between fields

errors-role-twice = La función “{ $role-label }” aparece dos veces.
errors-role-twice-hint = Envíe cada función una sola vez; varios lazos lado a lado resultan del ancho.
errors-observation-twice = “{ $observation-label }” aparece dos veces.
errors-observation-twice-hint = Envíe cada observación una sola vez.
errors-simulated-vehicle = Una unidad que no funciona no puede probarse con un vehículo.
errors-simulated-vehicle-hint = Omita lo que mostró el vehículo, o indique que la unidad funciona.
errors-nothing-observed = No hay nada de qué partir.
errors-nothing-observed-hint = Envíe al menos una lectura, una observación o una sustitución.
errors-empty-record = El registro de la puesta en servicio no tiene ninguna cifra.
errors-empty-record-hint = Envíe la inductancia, la resistencia o el factor de calidad del registro, u omita el registro.
errors-number-and-over-range = { $field ->
    [insulation_megohm] El aislamiento
    [resistance_ohm] La resistencia
    [inductance_uh] La inductancia
   *[other] La lectura
} es a la vez un número y una lectura fuera de escala.
errors-number-and-over-range-hint = Envíe el número, o indique que estaba fuera de escala, no ambas cosas.
errors-test-voltage-alone = Hay un voltaje de prueba y ninguna lectura de aislamiento.
errors-test-voltage-alone-hint = Envíe con él el aislamiento que se leyó, u omita el voltaje.
errors-whole-capacitance = La capacitancia no dice nada sin la del par entero.
errors-whole-capacitance-hint = Envíe la de un par igual que esté entero, o la cifra de la ficha técnica del cable por su longitud; u omita la capacitancia.
errors-test-twice = La prueba “{ $test-label }” aparece dos veces.
errors-test-twice-hint = Envíe cada prueba una sola vez, con lo último que mostró.
errors-test-outcome = La prueba “{ $test-label }” no puede mostrar esto: { $outcome-label }.
errors-test-outcome-hint = Envíe uno de estos resultados: { $outcomes }.
errors-sku-of-item = El número { $sku } es el nombre de un artículo de la lista de materiales.
errors-sku-of-item-hint = Asígnele un número propio de usted.
errors-label-twice = El nombre “{ $label }” aparece dos veces.
errors-label-twice-quantity-hint = Dé a cada lazo un nombre propio; los lazos iguales son uno solo con una cantidad.
errors-thin-jacket = La cubierta es más delgada que uno de los alambres que lleva dentro.
errors-thin-jacket-hint = Envíe el diámetro por fuera de la cubierta, o el diámetro sobre el aislamiento de los alambres que lleva dentro.
errors-corner-cut-unasked = Las esquinas se harán sin cortes diagonales (“{ $corner-label }”), y un lazo tiene cortes de esquina.
errors-corner-cut-unasked-hint = Omita el corte de esquina del lazo, o haga cortar las esquinas en diagonal.
errors-deep-cover = El recubrimiento es tan profundo como la ranura.
errors-deep-cover-hint = Envíe una ranura más profunda o menos recubrimiento.
errors-weather-not-fetched = No se obtuvo el tiempo del lugar.
errors-no-weather = No se sabe nada del tiempo.
errors-no-weather-hint = Envíe el tiempo hora por hora.
errors-weather-twice = El tiempo se indica dos veces, hora por hora y por un lugar.
errors-weather-twice-hint = Envíe las horas o el lugar, no ambos.
errors-start-outside-weather = El inicio queda fuera del tiempo indicado.
errors-start-outside-weather-hint = Envíe un inicio desde { $begin } hasta antes de { $end }, o datos del tiempo que lo alcancen.
errors-no-humidity = No se sabe nada del agua en el aire.
errors-no-humidity-hint = Envíe la humedad relativa o el punto de rocío.
errors-dew-point-above-air = El punto de rocío está por encima de la temperatura del aire.
errors-dew-point-above-air-hint = Envíe el punto de rocío de la misma hora que el aire, como máximo igual de alto.
errors-dew-point-differs = Con esta humedad el punto de rocío es { $dew_point }.
errors-dew-point-differs-hint = Envíe la humedad relativa o el punto de rocío, no ambos.
errors-row-twice = El mismo instante que la fila anterior, considerando la diferencia horaria.
errors-row-twice-hint = Envíe cada hora una sola vez.
errors-row-too-early = La fila es anterior a la que la precede, considerando la diferencia horaria.
errors-row-too-early-hint = Envíe las filas en orden de tiempo.
errors-gap-between-rows = Hay { $gap } entre esta fila y la anterior.
errors-gap-between-rows-hint = Envíe una fila por cada hora; entre dos puede haber como máximo 3 h.
errors-weather-too-long = Los datos del tiempo abarcan más de 14 días.
errors-weather-too-long-hint = Envíe como máximo 14 días.
errors-no-time = El texto no es una hora con diferencia horaria.
errors-no-time-hint = Envíe una hora como “2026-01-20T07:00:00-05:00” o “2026-01-20T12:00:00Z”, con su diferencia horaria, de 1970 a 2200.
errors-no-date = El texto no es una fecha.
errors-no-date-hint = Envíe una fecha como “2026-01-31”.
errors-application-temperatures = La temperatura máxima de aplicación no es más alta que la mínima.
errors-application-temperatures-hint = Envíe ambas de la ficha técnica del sellador, la más alta como máxima.
errors-made-after-start = El sellador se fabricó después del inicio.
errors-made-after-start-hint = Envíe la fecha de fabricación, o un inicio posterior.
errors-cure-times-order = { $later ->
    [open_to_traffic] El tiempo hasta abrir al tránsito
   *[full_cure] El tiempo hasta el curado completo
} es más corto que { $earlier ->
    [open_to_traffic] el tiempo hasta abrir al tránsito
   *[skin_over] el tiempo hasta formar piel
}.
errors-cure-times-order-hint = Envíe los tiempos hasta formar piel, hasta abrir al tránsito y hasta el curado completo, cada uno al menos tan largo como el anterior.
errors-needed-before-start = El tránsito se necesita antes de que empiece el trabajo.
errors-needed-before-start-hint = Envíe una hora posterior al inicio.
errors-cure-without-weather-hint = Envíe el tiempo, o pida el plan sin el curado.
errors-cure-without-weather = Se pide el curado sin el tiempo.
errors-weather-without-start-hint = Envíe cuándo se aplica el sellador, por ejemplo “2026-01-20T13:00:00-05:00”.
errors-weather-without-start = Se envió el tiempo sin un inicio.
errors-label-twice-hint = Dé a cada lazo un nombre propio.
errors-vehicle-and-plate = Se enviaron una clase de vehículo y una placa.
errors-vehicle-and-plate-hint = Envíe una de las dos.
errors-no-vehicle = No se envió ni una clase de vehículo ni una placa.
errors-no-vehicle-hint = Envíe una clase de vehículo, o una placa con su ancho, su largo y su altura sobre el lazo.
errors-wide-setback = Dos distancias al borde ocupan casi todo el ancho.
errors-wide-setback-hint = Envíe una distancia al borde de como máximo el 40 % del ancho.
errors-lead-in-parts = Lo que va en el corte y lo que va en tubo conduit son juntos más largos que el cable de conexión.
errors-batch-shared-field = Los elementos de un lote no comparten el campo { $name }.
errors-batch-shared-field-hint = Envíe un claro en cada elemento, y el tiempo junto a los elementos.
errors-batch-id-twice = Dos elementos tienen el nombre { $id }.
errors-batch-id-twice-hint = Dé a cada elemento un nombre propio, porque una sola lista para todos los distingue por él; u omita esa lista.
errors-lead-in-shared = Hay más cable de conexión previsto en una ranura compartida que en ranuras en total.
errors-lead-in-shared-hint = Envíe una longitud menor en la ranura compartida, o una mayor en ranuras en total, de la que aquella es parte.
errors-lead-in-parts-hint = Envíe una longitud que abarque ambas, o partes más cortas.
errors-thin-insulation = El diámetro sobre el aislamiento no es mayor que el conductor desnudo de { $gauge }.
errors-thin-insulation-hint = Envíe el diámetro sobre el aislamiento según la ficha técnica del alambre, o un calibre más delgado.
errors-large-corner-cut = Los cortes de esquina ocuparían casi todo un lado.
errors-large-corner-cut-hint = Envíe un corte de esquina de como máximo el 45 % del lado más corto (de una celda, si es un cuadrupolo).
errors-detector-limits = { $what ->
    [inductance] La inductancia mínima
   *[frequency] La frecuencia mínima
} ({ $least }) no es menor que la máxima ({ $greatest }).
errors-detector-limits-hint = Envíe ambos límites según la ficha técnica de la unidad, el menor como mínimo.
errors-detector-step = El paso { $step } está fuera del intervalo de 0.001 a 50 por ciento.
errors-detector-step-hint = Envíe el cambio en por ciento con el que conmuta este paso, de 0.001 a 50.
errors-no-money = “{ $text }” no es un importe de dinero.
errors-no-money-hint = Envíe un texto como “24.50”: hasta 9 dígitos, un punto, hasta 6 dígitos, sin signo y sin moneda.
errors-currency-upper-case = Envíe “{ $code }”, en mayúsculas.
errors-send-currency = Envíe un código como “USD” o “EUR”.
errors-no-currency = “{ $currency }” no es una moneda de ISO 4217.
errors-currency-without-minor-unit-hint = Envíe la moneda en la que paga, como “USD” o “EUR”.
errors-currency-without-minor-unit = “{ $currency }” no tiene unidad fraccionaria, así que los importes en ella no pueden redondearse.
errors-fixed-role-twice = El lazo de la función “{ $role-label }” se decide dos veces.
errors-fixed-role-twice-hint = Envíe una entrada por cada función.
errors-fixed-role-absent = La función “{ $role-label }” no está entre las funciones de este trabajo.
errors-fixed-role-absent-hint = Agréguela a ellas, u omita esta entrada.
errors-fixed-loop-wide = Este lazo es más ancho que el claro.
errors-fixed-loop-wide-hint = Envíe un lado a lo ancho que no sea más largo que el ancho del claro.
errors-fixed-distance-on-line = Un lazo de la función “{ $role-label }” queda a ambos lados de la línea y no tiene distancia a ella.
errors-fixed-distance-on-line-hint = Omita la distancia para esta función.
errors-no-steel-with-depth = Se indica que no hay acero debajo, y a qué profundidad está.
errors-no-steel-with-depth-hint = Omita la profundidad, o indique que hay acero.
