### Whether a detector unit tunes to loops, and how to set it.

## The checks

compatibility-inductance = Una vez construido mide de { $as_built_low-number } a { $as_built_high }, { $verdict ->
    [suitable] por completo dentro de
    [marginal] en parte fuera de
   *[unsuitable] fuera de
} los { $inductance_min-number } a { $inductance_max } que la unidad sintoniza.
compatibility-quality-factor = El factor de calidad es, en el mejor de los casos, de { $quality_factor }, y la unidad necesita { $quality_factor_min }; el pavimento y el acero se llevan una parte, por lo que se requiere { $wanted } o más.
compatibility-dc-quality-factor = La reactancia a 50 kHz dividida entre la resistencia a la corriente directa es de { $dc_quality_factor }; una agencia acepta { $limit } o más.
compatibility-dc-resistance = El lazo y el cable de conexión tienen una resistencia de { $dc_resistance } a 20 °C; una agencia acepta { $limit-number } como máximo.
compatibility-lead-in-share = A la unidad llega { $lead_in_share } de un cambio en el lazo. A partir de { $wanted }, el lazo tiene el doble de la inductancia de su cable de conexión; por debajo de 50 %, el cable de conexión pesa más que él.
compatibility-frequency = Funcionará de { $slow-number } a { $fast }; la unidad funciona de { $frequency_min-number } a { $frequency_max }.
compatibility-vehicle = En su punto más difícil, un vehículo del tipo { $vehicle } lo cambia en { $change }. En el paso de sensibilidad de { $threshold }, la unidad conmuta a partir de { $threshold }; se requieren { $wanted }.
compatibility-drops-out = La unidad suelta el lazo { compatibility-this-loop } bajo un vehículo del tipo { $vehicle } antes de que la parte trasera del vehículo llegue al lazo. Use un paso de sensibilidad más fino o un lazo más largo en el sentido de la marcha.

## Neighbours

compatibility-position-unknown = Indique dónde queda cada lazo, y se le dirá cómo se acoplan los vecinos.
compatibility-coupling = { $outcome ->
    [disturbs] Se acoplan en { $coupling } y con el mismo ajuste funcionarían con { $frequency_separation } de diferencia: una unidad puede seguir a la otra. Ajústelos a frecuencias distintas o use una sola unidad que explore ambos por turno.
    [harmless] Se acoplan en { $coupling }, muy poco para que importe.
    [scanned_together] Se acoplan en { $coupling }, y una sola unidad los explora por turno: solo uno está activo a la vez, y no se perturban entre sí.
    [same_place] Están uno sobre otro y se acoplan en { $coupling }: ningún ajuste los distingue.
   *[far_apart] Se acoplan en { $coupling } y funcionan con { $frequency_separation } de diferencia, lo suficiente.
}
# Loops of a plan have a mark and a role, others the name that the caller gave them.
compatibility-this-loop = { $named_by ->
    [mark] { $mark } ({ $loop })
   *[label] { $loop }
}
compatibility-that-loop = { $named_by ->
    [mark] { $other_mark } ({ $other_loop })
   *[label] { $other_loop }
}
compatibility-loop-of-channel = { $mark } ({ $channel })
# $sentence is the one above.
compatibility-crosstalk = Lazos { compatibility-this-loop } y { compatibility-that-loop }: { $sentence }
compatibility-same-place = Los lazos { compatibility-this-loop } y { compatibility-that-loop } están uno sobre otro en canales distintos. { $roles ->
    [same] Use ahí un solo lazo o mueva uno de los dos.
   *[different] Use un solo lazo para ambas funciones, con una salida para cada una, o mueva uno de los dos.
}
compatibility-set-another-frequency = Ajuste el lazo { compatibility-that-loop } a una frecuencia distinta de la del lazo { compatibility-this-loop }, tan alejada como permitan los interruptores.
compatibility-take-scanning-unit = Use una sola unidad de varios canales que explore sus lazos por turno: solo uno está activo a la vez.
compatibility-wind-more-turns = Bobine el lazo { compatibility-this-loop } con { $turns } vueltas: { $terminal_inductance }, con { $frequency_separation } de diferencia en frecuencia.
compatibility-move-apart = Sepárelos hasta que sus centros queden a { $distance }; ahí se acoplan en menos de { $harmless_coupling }.

## How to set a channel

compatibility-usual-role = No se dice para qué es el lazo: su canal se ajusta como el de un lazo que retiene un portón, que es lo seguro. Indique para qué es.

compatibility-frequency-setting = Empiece con la más alta que ofrece la unidad; dé ajustes distintos a los vecinos, y cambie cuando no detecte o detecte sin motivo.
# What the gate does when a loop of this role fails. Common practice.
compatibility-failure-consequence = { $on_loop_failure-code ->
    [detect] { $role-code ->
        [exit] El portón se abre y se queda abierto: cualquiera que llegue puede entrar.
        [arming] El poste se queda despierto y puede expedir sin que haya nadie.
        [presence] Se informa de un vehículo donde no hay ninguno.
       *[other] El portón se queda abierto hasta que se repare el lazo.
    }
   *[no_detect] { $role-code ->
        [exit] El portón ya no se abre para quienes salen; deles otra manera de abrirlo.
        [arming] El poste se queda dormido hasta que alguien oprima el botón.
        [presence] No se informa de un vehículo que está ahí.
       *[other] El portón se cierra sin que este lazo lo resguarde.
    }
}
compatibility-channel-untunable = Los lazos { $channel } en un solo canal dan de { $as_built_low-number } a { $as_built_high } en la unidad, y esta sintoniza de { $inductance_min-number } a { $inductance_max }. Dé a cada lazo un canal propio.
compatibility-steel-below = Hay acero debajo { $count ->
    [one] del lazo
   *[other] de los lazos
} { $loops }. El extremo bajo de la banda de construcción es el que se da sobre una lámina maciza, y una malla quita menos. Lo que producen los vehículos se calcula sin el acero: compruébelo con el vehículo más alto.
compatibility-mixed-roles = Los lazos { $channel } comparten un canal, y solo algunos de ellos retienen el portón: el accionamiento del portón no los puede distinguir. Dé a los lazos que lo retienen un canal propio.
compatibility-pulse-holds-nothing = El lazo { compatibility-this-loop } retiene un portón y está ajustado a pulso: después del pulso, el portón se cierra sobre lo que todavía está ahí. Ajústelo a presencia.
compatibility-presence-runs-out = El lazo { compatibility-this-loop } retiene un portón y suelta un vehículo que se queda. Ajuste su tiempo de presencia a ilimitado.
compatibility-fails-to-no-detect = El lazo { compatibility-this-loop } retiene un portón y al fallar pasa a no detectar: con un lazo roto, el portón se cierra sin resguardo. Ajústelo a detectar, para que el portón se quede abierto y alguien avise.

## What would turn a check

# What is changed, before or after: turns, a wiring or a gauge as in requests, or a length; and the loop that it is changed on.
compatibility-changed-value = { $value }
compatibility-changed-loop = { $loop }
compatibility-change-turns = { $place ->
    [first] Bobine
   *[next] bobine
} { $count ->
    [one] el lazo
   *[other] los lazos
} { $loops } con { $to ->
    [one] { $to } vuelta
   *[other] { $to } vueltas
}{ $count ->
    [one] {""}
   *[other] {" "}cada uno
} en vez de { $from }
compatibility-instead-of-wiring = { $from ->
    [separate] en vez de dar a cada uno un canal propio
    [series] en vez de en serie
   *[parallel] en vez de en paralelo
}
compatibility-change-wiring = { $place ->
    [first] { $to ->
        [separate] Dé a cada lazo un canal propio en vez de unir todos { $from ->
            [series] en serie
           *[parallel] en paralelo
        }
        [series] Una los lazos en serie { compatibility-instead-of-wiring }
       *[parallel] Una los lazos en paralelo { compatibility-instead-of-wiring }
    }
   *[next] { $to ->
        [separate] dé a cada lazo un canal propio en vez de unir todos { $from ->
            [series] en serie
           *[parallel] en paralelo
        }
        [series] una los lazos en serie { compatibility-instead-of-wiring }
       *[parallel] una los lazos en paralelo { compatibility-instead-of-wiring }
    }
}
compatibility-change-lead-in-gauge = { $place ->
    [first] Use
   *[next] use
} alambre de { $to } para { $count ->
    [one] el cable de conexión del lazo
   *[other] los cables de conexión de los lazos
} { $loops } en vez de { $from }
compatibility-change-lead-in-length = { $place ->
    [first] Lleve
   *[next] lleve
} { $count ->
    [one] el cable de conexión del lazo
   *[other] los cables de conexión de los lazos
} { $loops } a { $to } en vez de { $from }
compatibility-change-along-travel = { $place ->
    [first] Haga
   *[next] haga
} { $count ->
    [one] el lazo
   *[other] los lazos
} { $loops } de { $to } de largo en el sentido de la marcha en vez de { $from }
compatibility-remedy = { $changes }: { $check ->
    [inductance] la inductancia en la unidad es entonces de { $value }
    [quality_factor] el factor de calidad es entonces, en el mejor de los casos, de { $value }
    [dc_quality_factor] la reactancia a 50 kHz dividida entre la resistencia a la corriente directa es entonces de { $value }
    [dc_resistance] el lazo y el cable de conexión tienen entonces una resistencia de { $value }
    [lead_in_share] a la unidad llega entonces { $value } de un cambio en el lazo
    [frequency] funciona entonces a { $value }
   *[vehicle] un vehículo del tipo { $vehicle } lo cambia entonces en { $value } en su punto más difícil
}, y nada más queda peor. { $outcome ->
    [suitable] El canal es entonces apto.
   *[better] El canal necesita más que eso para ser apto.
}

compatibility-search-bounded = La búsqueda de lo que remediaría una verificación se terminó antes de tiempo, porque el trabajo pide más de lo que una respuesta puede calcular. Todas las verificaciones están completas; puede haber más remedios, y más pequeños. Para una búsqueda completa, pida menos lazos o vehículos a la vez.

## Why a default was taken

compatibility-usual-lane-width = El lazo, o la fila de lazos, y la distancia usual al borde de cada lado.
compatibility-usual-wiring = Cada lazo tiene su propio canal.
compatibility-usual-steps = Pasos de las clases de sensibilidad de la norma; uno más fino debe constar en la hoja de datos de la unidad.
