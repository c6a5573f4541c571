### The labels and descriptions of the closed lists of `practice::existing_loops`: a message for each member, `List-code`.

## ExistingLoopVerdict

ExistingLoopVerdict-keep = Conservarlo
    .description = Sus mediciones son buenas, la unidad se sintoniza con él, y todo vehículo produce cambio suficiente.
ExistingLoopVerdict-keep_with_care = Conservarlo con cuidado
    .description = Puede servir, pero algo tiene poco margen, no se midió o no se comprobó: haga lo que nombra la respuesta antes de confiar en él.
ExistingLoopVerdict-recut = Cortar uno nuevo
    .description = Está averiado, la unidad no puede sintonizarse con él, o no se detecta un vehículo.

## LoopCondition

LoopCondition-sound = En buen estado
    .description = El aislamiento es bueno, y las lecturas son las de un lazo usual.
LoopCondition-doubtful = Dudoso
    .description = El aislamiento es solo regular, o una lectura no corresponde a ningún lazo usual.
LoopCondition-faulty = Averiado
    .description = Está abierto, o tiene fuga a tierra.
LoopCondition-not_measured = Sin medir
    .description = No se midió el aislamiento, la resistencia o la inductancia.

## TuningFit

TuningFit-tunes = Sintoniza
    .description = Lo medido está dentro de lo que sintoniza la unidad, con margen para el error del medidor.
TuningFit-marginal = Marginal
    .description = Está al borde de lo que sintoniza la unidad, o no se midió.
TuningFit-does_not_tune = No sintoniza
    .description = Está fuera de lo que sintoniza la unidad.
