### The labels and descriptions of the closed lists of `practice::faults`: a message for each member, `List-code`.

## LoopFault

LoopFault-insulation_breach = Aislamiento dañado
    .description = El aislamiento del lazo o del cable de conexión está cortado o gastado, y el agua conecta el cobre a tierra.
LoopFault-wet_splice = Empalme mojado
    .description = El empalme entre el lazo y el cable de conexión tomó agua y tiene fuga a tierra.
LoopFault-broken_conductor = Conductor roto
    .description = El circuito está abierto: un alambre se cortó en el lazo o en el cable de conexión.
LoopFault-torn_wire = Alambre arrancado
    .description = Un alambre se cortó y su extremo queda desnudo en suelo mojado: el circuito está a la vez abierto y a tierra, por una sola falla.
LoopFault-high_resistance_joint = Unión de alta resistencia
    .description = Un empalme o borne está corroído o flojo y agrega resistencia.
LoopFault-shorted_turn = Vuelta o par en cortocircuito
    .description = Los alambres se tocan: una vuelta está cerrada sobre sí misma, o el lazo o su par está puenteado.
LoopFault-wrong_turn_count = Número de vueltas incorrecto
    .description = El lazo se enrolló con una o dos vueltas más o menos de las que dice su registro.
LoopFault-swapped_pair = Par intercambiado
    .description = Los alambres de dos lazos están intercambiados: está conectado otro lazo, o un alambre de cada uno.
LoopFault-steel_nearby = Acero cercano
    .description = Una malla, una tapa o una hoja metálica cerca del lazo le quita parte de su inductancia.
LoopFault-outside_envelope = Fuera del rango de la unidad
    .description = El lazo está en buen estado, pero su inductancia o su factor de calidad está fuera de lo que sintoniza la unidad.
LoopFault-detector_unit = Unidad detectora o su alimentación
    .description = La unidad o su alimentación falló.
LoopFault-settings = Ajustes de la unidad
    .description = La unidad está en buen estado y mal ajustada: su paso de sensibilidad, su modo o lo que hace su salida en caso de falla.
LoopFault-surge_damage = Daño por sobretensión
    .description = Un rayo o una sobretensión de la red dañó la entrada de la unidad o el supresor de sobretensiones que la precede.
LoopFault-harness = Arnés
    .description = Falló el cableado desde los bornes de la unidad hasta el cable de conexión, con su enchufe y su base.
LoopFault-crosstalk = Interferencia mutua
    .description = Otro lazo u otra unidad que trabaja casi a la misma frecuencia perturba a este.
LoopFault-none = Ninguna falla encontrada
    .description = No hay nada mal en el lazo, el cableado o la unidad, o la falla no está ahora.
