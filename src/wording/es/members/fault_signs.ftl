### The labels and descriptions of the closed lists of `practice::fault_signs`: a message for each member, `List-code`.

## Observation

Observation-fault_after_rain = Falla tras la lluvia
    .description = La falla aparece con la lluvia y desaparece al secarse el suelo.
Observation-fault_in_frost = Falla con helada
    .description = La falla aparece con las heladas.
Observation-stuck_in_detect = Detección permanente
    .description = La salida sigue activa sin nada sobre el lazo.
Observation-never_detects = Nunca detecta
    .description = La salida nunca conmuta, haya lo que haya sobre el lazo.
Observation-intermittent = Intermitente
    .description = La falla aparece y desaparece sin causa evidente.
Observation-detects_the_gate = Detecta el portón
    .description = La salida conmuta cuando el portón se mueve.
Observation-detects_next_lane = Detecta el carril vecino
    .description = La salida conmuta con el tránsito de otro carril o sobre otro lazo.
Observation-drifts = Deriva
    .description = La unidad se resintoniza con frecuencia, o su lectura varía.
Observation-fault_when_pavement_flexes = Falla al flexionar el pavimento
    .description = La falla aparece cuando un vehículo pesado carga el pavimento, o al mover los cables.
Observation-drops_high_vehicles = Suelta vehículos altos
    .description = La salida se suelta bajo camiones y otros vehículos altos, o nunca los detecta, mientras que los autos se detectan.
Observation-misses_two_wheelers = No detecta dos ruedas
    .description = No se detectan motocicletas ni bicicletas, mientras que los autos sí.
Observation-stays_on_after_power_up = Sigue activa al encender
    .description = La salida queda activa desde el momento en que se enciende o se reinicia la unidad.
Observation-misses_after_power_up = Omite vehículos al encender
    .description = Se omiten vehículos desde que la unidad se encendió o se reinició: el que entonces estaba sobre el lazo se aprende como vacío.
Observation-never_closes = Nunca cierra
    .description = El portón o la barrera queda abierto, como si siempre hubiera algo en su paso.
