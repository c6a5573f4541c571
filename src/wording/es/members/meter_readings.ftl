### The labels and descriptions of the closed lists of `practice::meter_readings`: a message for each member, `List-code`.

## ReadingPlace

ReadingPlace-detector_end = Extremo del detector
    .description = En el extremo del cable de conexión que va a la unidad, con la unidad desconectada: el cable de conexión y el lazo se miden juntos.
ReadingPlace-loop_end = Extremo del lazo
    .description = En las propias puntas del lazo, con el empalme abierto: el lazo se mide solo.

## SubstitutionPoint

SubstitutionPoint-unit_terminals = Bornes de la unidad
    .description = En los bornes de la unidad, sin nada más conectado a ellos.
SubstitutionPoint-harness_end = Final del arnés
    .description = En el extremo lejano del arnés, en lugar del cable de conexión.
SubstitutionPoint-lead_in_end = Final del cable de conexión
    .description = En el extremo lejano del cable de conexión, en lugar del lazo, con el empalme abierto.

## InsulationState

InsulationState-dry = Seco
    .description = La ranura, el empalme y el cable de conexión estaban secos: una buena lectura dice poco de una falla que aparece con la lluvia.
InsulationState-wet = Mojado
    .description = Después de la lluvia, o de mojar la ranura, el empalme y el cable de conexión: lo que solo tiene fuga mojado, la tiene ahora.
