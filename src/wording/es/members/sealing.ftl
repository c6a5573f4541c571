### The labels and descriptions of the closed lists of `practice::sealing`: a message for each member, `List-code`.

## SurfaceCondition

SurfaceCondition-dry = Seca
    .description = No se ve ni se siente humedad en la ranura.
SurfaceCondition-damp = Húmeda
    .description = Oscura o fría al tacto, y sin agua libre: los selladores de dos partes y los aplicados en caliente esperan, salvo que la ficha técnica lo permita.
SurfaceCondition-wet = Mojada
    .description = Agua libre en la ranura: no se aplica ningún sellador.
SurfaceCondition-frost = Escarcha o hielo
    .description = Escarcha blanca o hielo en el pavimento o en la ranura: no se aplica ningún sellador.

## CureMilestone

CureMilestone-skin_over = Formación de piel
    .description = Se formó piel en el sellador de una parte; el sellador de dos partes fraguó.
CureMilestone-rain_safe = A salvo de la lluvia
    .description = La lluvia ya no lo arruina: se toma el momento en que hay piel.
CureMilestone-open_to_traffic = Apertura al tránsito
    .description = Una piel curada de 6 mm o de la mitad del recubrimiento, lo que sea menos; el sellador de dos partes, entre sin pegajosidad y totalmente curado; el aplicado en caliente, frío. En el sitio, la prueba es que las ruedas no arrastren nada de sellador.
CureMilestone-full_cure = Curado completo
    .description = El frente curado llegó al alambre superior; el sellador de dos partes reaccionó en todo su espesor.

## CureVerdict

CureVerdict-go = Proceda
    .description = Nada se opone.
CureVerdict-go_with_care = Proceda con cuidado
    .description = Puede hacerse; las razones dicen qué revisar primero.
CureVerdict-wait = Espere
    .description = No en este inicio; el pronóstico tiene horas que servirían; si la ranura no está seca, una vez que se haya secado.
CureVerdict-do_not_apply = No aplique
    .description = No en este inicio, y el pronóstico no tiene ninguna hora que sirva.

## CureHandling

CureHandling-store_warm = Guárdelo templado
    .description = Guarde el sellador de 10 a 29 °C (50 a 85 °F) hasta usarlo; saque lo que necesite para la próxima hora.
CureHandling-condition_cartridges = Acondiciónelo primero
    .description = El sellador que se guardó frío necesita un día en un cuarto templado antes de usarse; el sellador frío fluye mal y atrapa aire.
CureHandling-dry_and_warm_slot = Seque y caliente la ranura
    .description = Sople la ranura con aire seco y sin aceite y caliéntela con suavidad hasta que la propia losa, medida, esté lo bastante caliente; una lanza de aire caliente hace ambas cosas. Ninguna llama abierta cerca del alambre ni de combustible.
CureHandling-check_by_touch = Compruebe al tacto
    .description = Justo antes de aplicar el sellador, presione una toalla de papel seca contra el fondo de la ranura: el corte en húmedo y la lluvia dejan agua donde no se ve. Sople y caliente lo que marque la toalla.
CureHandling-cap_part_used = Tape el cartucho empezado
    .description = Cierre de inmediato el cartucho usado en parte y evite que entre humedad; lo que formó piel en la boquilla se tira.
CureHandling-mix_small = Mezcle poco, vierta enseguida
    .description = Con calor, no mezcle más de lo que se pueda verter en la mitad de la vida útil de la mezcla: una mezcla mayor se calienta sola y fragua aún antes.
CureHandling-keep_shaded = Manténgalo a la sombra
    .description = Mantenga el sellador y la ranura fuera del sol, y trabaje en las horas más frescas.
CureHandling-kettle_limit = Vigile la caldera
    .description = Vierta a la temperatura de la ficha técnica y nunca caliente más allá de su límite seguro; el sellador sobrecalentado arde, se degrada y daña el aislamiento.
CureHandling-keep_wheels_off = Mantenga fuera las ruedas
    .description = Mantenga fuera el tránsito hasta que las ruedas no arrastren nada de sellador, diga lo que diga el reloj; espolvoree con arena o cemento si no se puede evitar una rueda.
