### The labels and descriptions of the closed lists of `practice::site`: a message for each member, `List-code`.

## Barrier

Barrier-slide_gate = Portón corredizo
    .description = Una hoja que se desliza a lo largo del claro. Se mueve en su propio plano, así que los lazos pueden ir cerca por ambos lados.
Barrier-swing_gate = Portón batiente, una hoja
    .description = Una hoja tan larga como el claro. Barre un cuarto de círculo por el lado interior.
Barrier-swing_gate_pair = Portón batiente, dos hojas
    .description = Dos hojas, cada una de la mitad del claro. Barren dos cuartos de círculo por el lado interior.
Barrier-barrier_arm = Brazo de barrera
    .description = Un brazo que se levanta. Es delgado, así que un lazo puede ir justo debajo de él.
Barrier-vertical_lift_gate = Portón de elevación vertical
    .description = Una hoja que sube en su propio plano.
Barrier-overhead_door = Puerta levadiza
    .description = Una puerta que se enrolla o se pliega hacia arriba sobre el claro.
Barrier-none = Sin barrera
    .description = Un claro o carril sin barrera: la referencia es una ventanilla, un poste o una línea de alto.

## LeafOpen

LeafOpen-level = Horizontal bajo el techo
    .description = La hoja queda horizontal sobre el suelo interior, tan alta como el claro.
LeafOpen-coiled = Enrollada arriba
    .description = La hoja queda enrollada o plegada sobre el claro.

## UnitSide

UnitSide-left = A la izquierda
    .description = A la izquierda al salir.
UnitSide-right = A la derecha
    .description = A la derecha al salir.

## Surface

Surface-existing_asphalt = Asfalto existente
    .description = Asfalto ya tendido: el lazo va en un corte.
Surface-existing_concrete = Concreto existente
    .description = Concreto curado: el lazo va en un corte.
Surface-new_asphalt = Asfalto nuevo
    .description = Asfalto por tender: un lazo de enterrado directo va bajo la última capa.
Surface-new_concrete = Concreto nuevo
    .description = Concreto por colar: un lazo de enterrado directo se amarra en su lugar antes del colado.
Surface-gravel = Grava
    .description = Superficie suelta: un lazo de enterrado directo en un lecho de arena.
Surface-soil = Tierra
    .description = Tierra o pasto: un lazo de enterrado directo en un lecho de arena.
Surface-pavers = Adoquines
    .description = Pavimento de adoquines: un lazo de enterrado directo en el lecho bajo los adoquines.

## SiteHazard

SiteHazard-reinforcing_mesh = Malla de refuerzo
    .description = Una malla o varillas de acero en la losa bajan la inductancia y la altura a la que se detecta el metal.
SiteHazard-post_tensioned_slab = Losa postensada
    .description = Tendones tensados: un tendón cortado puede matar y puede derrumbar la losa.
SiteHazard-bridge_deck = Tablero de puente o suspendido
    .description = Un tablero que soporta carga: acero a poca profundidad y quizá tendones tensados.
SiteHazard-snow_melt_cable = Cable de deshielo
    .description = Cables de calefacción energizados en la losa.
SiteHazard-snow_melt_pipe = Tubo de deshielo
    .description = Tubos de calefacción en la losa.
SiteHazard-overhead_power_line = Línea eléctrica aérea
    .description = Una línea eléctrica arriba puede inducir un zumbido que perturba la unidad detectora.
SiteHazard-buried_power_line = Línea eléctrica enterrada
    .description = Una línea eléctrica abajo: un peligro para quien corta, y una fuente de zumbido.
SiteHazard-adjacent_traffic = Tránsito al lado
    .description = Un carril junto al lazo cuyos vehículos no deben detectarse.
SiteHazard-freezing_climate = Clima con heladas
    .description = El agua en la ranura se congela y levanta el sellador.
SiteHazard-pavement_joint = Junta del pavimento
    .description = Una junta que la ranura o el cable de conexión debe cruzar se mueve con las estaciones.
SiteHazard-cracked_pavement = Pavimento agrietado
    .description = Pavimento que se mueve y deja entrar agua.
SiteHazard-old_loop_cut = Corte de un lazo viejo
    .description = El corte de un lazo anterior está en el mismo lugar.

## Construction

Construction-hand_wound = Enrollado en el sitio en un corte
    .description = El alambre sencillo se tiende vuelta por vuelta en un corte y se sujeta abajo antes de sellarlo.
Construction-preformed_saw_cut = Preformado, en un corte
    .description = Un lazo con cubierta hecho a medida entra de una vez en un corte.
Construction-preformed_direct_burial = Preformado, de enterrado directo
    .description = Un lazo con cubierta hecho a medida va en pavimento nuevo, arena o tierra, con su cable de conexión en tubo conduit.
