### The labels and descriptions of the closed lists of `practice::sealants`: a message for each member, `List-code`.

## SealantKind

SealantKind-one_part_moisture_cure = De una parte, cura con humedad
    .description = Viene listo en cartucho y cura de la superficie hacia abajo, con la humedad del aire: horas hasta formar piel, días hasta el curado completo, más tiempo con frío y con aire seco.
SealantKind-two_part_reactive = De dos partes, reactivo
    .description = Dos componentes que curan al reaccionar entre sí, en minutos cuando hace calor y sin humedad: para tránsito que debe volver en la misma hora, y para cuando se espera lluvia.
SealantKind-hot_applied = Aplicado en caliente
    .description = Se funde en una caldera y se vierte; no cura, se enfría. El aislamiento del alambre debe resistir el vertido.
