### The labels and descriptions of the closed lists of `practice::roles`: a message for each member, `List-code`.

## Role

Role-exit = Salida
    .description = Dentro del claro: un vehículo que sale pide que se abra la barrera.
Role-obstruction_outside = Obstrucción, afuera
    .description = Justo afuera de la barrera: un vehículo sobre él mantiene abierta la barrera.
Role-obstruction_inside = Obstrucción, adentro
    .description = Justo adentro de la barrera: un vehículo sobre él mantiene abierta la barrera.
Role-between_leaves = Entre las hojas
    .description = En el barrido de las hojas batientes: un vehículo allí retiene las hojas donde están.
Role-arming = Activación
    .description = Antes de un poste de boletos o tarjetas: un vehículo sobre él despierta el poste.
Role-closing = Cierre
    .description = Bajo un brazo de barrera: un vehículo sobre él mantiene arriba el brazo, y al salir de él lo deja bajar.
Role-presence = Presencia
    .description = Ante una ventanilla, una puerta o una línea de alto: se informa de un vehículo sobre él.
