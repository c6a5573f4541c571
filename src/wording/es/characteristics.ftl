### What the electrical figures of a loop mean.

characteristics-lead-in-outweighs-loop = El cable de conexión { $weight ->
    [more] tiene más inductancia que el lazo
   *[over_half] tiene más de la mitad de la inductancia del lazo
}: solo { $loop_share } de un cambio en el lazo llega a la unidad. Agregue una vuelta, acorte el cable de conexión o ajuste una sensibilidad más fina.
characteristics-below-envelope = Terminado, medirá de { $as_built_low-number } a { $as_built_high } en la unidad, y una unidad sintoniza a partir de { $inductance_min }: { $outcome ->
    [untunable] ninguna unidad así lo sintoniza
   *[doubtful] es posible que no sintonice
}. Dele una vuelta más.
characteristics-above-envelope = Terminado, medirá de { $as_built_low-number } a { $as_built_high } en la unidad, y una unidad sintoniza hasta { $inductance_max }: { $outcome ->
    [untunable] ninguna unidad así lo sintoniza
   *[doubtful] es posible que no sintonice
}. Dele una vuelta menos o acorte el cable de conexión.
characteristics-high-resistance = El lazo y el cable de conexión tienen una resistencia de { $dc_resistance }; una agencia acepta { $limit-number } como máximo. Use un cable de conexión más grueso o más corto.
characteristics-low-quality = El factor de calidad es, en el mejor de los casos, de { $quality_factor }, y la unidad necesita { $quality_factor_min }. Use alambre más grueso o un cable de conexión más corto.
characteristics-near-self-resonance = Con esa capacitancia, el lazo resuena por sí solo a { $self_resonance }. A { $frequency }, un medidor o una unidad ve más inductancia de la que hay. Use una frecuencia más baja o menos vueltas.
characteristics-steel-below = El acero que está { $depth_below_loop } más abajo quita como máximo { $inductance_drop_bound } de la inductancia del lazo, como si fuera una lámina maciza, y reduce la altura a la que se detecta el metal. Una malla quita menos. Coloque el lazo tan por encima del acero como lo permita el recubrimiento.

## Why a default was taken.

characteristics-usual-frequency = La frecuencia de la prueba de aceptación de una agencia.
characteristics-usual-temperature = La temperatura para la que valen las tablas de alambres.
characteristics-no-shunt-capacitance = No existe un dato público de la capacitancia de ranuras y cables.
