### A loop that is in the ground already: what it is, and whether to keep it.

## The verdict

existing-keep = Consérvelo: sus mediciones son buenas, la unidad se sintoniza con él y todos los vehículos producen señal suficiente. Pase con cada vehículo por encima antes de confiar en él.
existing-verdict = { $verdict-label }: { $reasons }.

## What stands behind it

existing-open = el circuito está abierto, así que nada puede conservarse tal como está; si el alambre se cortó en el cable de conexión o en el empalme, repárelo y mida de nuevo
existing-insulation-unknown = no se midió el aislamiento a tierra, y sin él nadie sabe si el lazo está en buen estado
existing-leaks = el aislamiento a tierra es de { $insulation }, { $degree ->
    [failed] una fuga total; si está en el empalme o en el cable de conexión, repárela y mida de nuevo
   *[fair] y un lazo en buen estado tiene { $sound_from } o más
}
existing-inductance-unknown = no se midió la inductancia, así que las vueltas son una suposición
existing-resistance-unknown = no se midió la resistencia, así que no se ve ni qué alambre es ni si hay un mal empalme
existing-fits-none = las lecturas no son las de ningún lazo usual de este tamaño; busque un mal empalme, una vuelta en cortocircuito u otro tamaño
existing-tuning = { $fit ->
    [does_not_tune] la unidad no se sintoniza con él
   *[marginal] no es seguro que la unidad se sintonice con él
} ({ $limits }){ $remedy ->
    [mend_splice] ; la resistencia es la de una mala unión: haga de nuevo el empalme y mida otra vez antes de cortar nada
    [another_unit] ; otra unidad, cuya ficha técnica abarque lo que hay, evitaría un corte nuevo
   *[none] {""}
}
existing-tunes-inductance = { $inductance_low-number } a { $inductance_high } en sus terminales, donde admite { $inductance_min-number } a { $inductance_max }
existing-tunes-quality = un factor de calidad de { $quality } a su propia frecuencia, donde exige { $quality_factor_min } o más
existing-tunes-frequency = trabajaría a { $frequency_low-number } a { $frequency_high }, y trabaja a { $frequency_min-number } a { $frequency_max }
existing-tunes-unmeasured = aquello de lo que depende no se midió por completo
existing-inductance-over-range = la inductancia estaba fuera de escala, aunque el circuito está cerrado: mídala de nuevo
existing-unseen = producen muy poca señal para el paso de sensibilidad usual más fino de la unidad: { $vehicles }
existing-unseen-two-wheelers = 1 ft / 0.3 m por dentro del alambre lateral producen muy poca señal para la unidad: { $vehicles }; deje que otro dispositivo los vea, o corte un lazo con ranura central
existing-dropped = la unidad suelta antes de que pase la parte trasera de: { $vehicles }
existing-thin = dejan un margen escaso: { $vehicles }
existing-drive-over-failed = se pasó con un vehículo por encima y la unidad no lo detectó o lo soltó
existing-over-steel = { $known ->
    [told] hay acero debajo
   *[likely] parece haber acero debajo
}, así que las vueltas no son seguras y los vehículos producen menos señal; compruébelo con el vehículo más alto
existing-holds-gate = impide que se cierre un portón, y todavía no se ha pasado con ningún vehículo por encima

## The test that settles it

existing-settles = { $minutes } minutos; { faults-disturbs }. { $settles ->
    [objection] Esta prueba responde a lo más grave de lo que hay en contra del lazo.
    [turns] Esta prueba indica cuál de los números de vueltas probables es el correcto.
   *[proof] Es la última comprobación antes de confiar en el lazo.
}

## Why a default was taken

existing-usual-uncertainty = Los lados que se miden a pasos a lo largo de una ranura sellada rara vez son más exactos.
existing-usual-lane = El lazo y la franja libre usual a cada lado.
