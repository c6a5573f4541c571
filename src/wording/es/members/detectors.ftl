### The labels and descriptions of the closed lists of `practice::detectors`: a message for each member, `List-code`.

## DetectorEnvelope

DetectorEnvelope-standard_minimum = Mínimo de la norma
    .description = Lo mínimo que sintoniza una unidad construida según la norma norteamericana: de 50 a 700 µH con Q de 5 o más, de 20 a 100 kHz. Manda la ficha técnica de la propia unidad.

## Wiring

Wiring-separate = Cada uno en su propio canal
    .description = Cada lazo tiene su propio canal: es la regla.
Wiring-series = En serie en un canal
    .description = Las inductancias se suman, y un vehículo sobre un lazo cambia menos el grupo.
Wiring-parallel = En paralelo en un canal
    .description = La inductancia baja, y un vehículo sobre un lazo cambia menos el grupo.

## OutputMode

OutputMode-presence = Presencia
    .description = La salida se mantiene mientras el vehículo está ahí.
OutputMode-pulse = Pulso
    .description = La salida da un solo pulso cuando llega el vehículo.

## FailureBehaviour

FailureBehaviour-detect = Detección
    .description = La salida pasa a detección, como si hubiera un vehículo.
FailureBehaviour-no_detect = Sin detección
    .description = La salida pasa a sin detección, como si no hubiera nada.
