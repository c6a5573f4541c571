### Lo que dicen los formularios: nombres, ayuda y lo que se toma donde un campo queda vacío.

## Secciones

forms-section-opening = Claro
forms-section-loops = Lazos y vehículos
forms-section-pavement = Pavimento y losa
forms-section-lead-in = Cable de conexión
forms-section-wire = Alambre del lazo
forms-section-cuts = Cortes
forms-section-detector = Unidad detectora
forms-section-sealant = Sellador
forms-section-day = Día del sellado
forms-section-work = Ritmo de la cuadrilla
forms-section-prices = Precios
forms-section-plan = Lo que contiene el plan

## El claro

forms-width = Ancho libre
forms-width-help = Mida por donde pasan los vehículos, de poste a poste o de bordillo a bordillo.
forms-barrier = Tipo de portón o barrera
forms-barrier-help = Elija lo que cierra el claro. Una ventanilla, un poste o una línea de alto no tiene barrera.
forms-approach-speed = Velocidad de llegada
forms-approach-speed-help = Con qué rapidez llegan los vehículos desde adentro. Con el tiempo para abrir, ubica el lazo de salida.
forms-opening-time = Tiempo para abrir
forms-opening-time-help = Mida el tiempo desde la detección del vehículo hasta que el paso queda libre.
forms-exit-time-default = Si no se indican ambos, velocidad y tiempo para abrir, el lazo de salida queda en su lugar usual.
forms-edge-setback-help = La franja libre que se deja en cada borde del claro.
forms-edge-setback-default = { $strip } / { $strip_metric }; { $beside_traffic } / { $beside_traffic_metric } junto a otro tránsito.
forms-drive-length = Tramo recto por dentro
forms-drive-length-help = Qué distancia corre el acceso interior en línea recta hasta el claro. El lazo de salida queda en ese tramo.
forms-drive-length-default = Tan largo como lo necesite el lazo de salida.
forms-leaf-height-help = Solo para una hoja metálica: mídala del borde inferior al superior. Perturba los lazos cercanos.
forms-leaf-height-default = { $leaf } / { $leaf_metric }; { $door } / { $door_metric } para una puerta levadiza.
forms-leaf-gap-help = Solo para una hoja metálica: mida del pavimento a la hoja cerrada.
forms-leaf-gap-default = { $leaf } / { $leaf_metric }; { $door } / { $door_metric } para una puerta levadiza.
forms-leaf-open-help = Solo para una puerta levadiza: elija dónde queda la hoja con la puerta abierta.
forms-unit-side-help = El lado en que está la unidad detectora al salir. Los cables de conexión dejan allí el pavimento.
forms-seen-otherwise = Otro dispositivo vigila la línea del portón
forms-seen-otherwise-help = Conteste sí solo si un haz fotoeléctrico o una cámara la vigila de borde a borde. Si no, un vehículo puede quedar allí sin ser detectado y el portón puede cerrarse sobre él.

## Lazos y vehículos

forms-roles = Para qué sirven los lazos
forms-roles-help = Elija cada tarea de un lazo; sin uno que lo retenga, un portón puede cerrarse sobre un vehículo. Ningún lazo protege a una persona.
forms-roles-default = Lo que suele necesitar una barrera de este tipo.
forms-vehicles-help = Elija cada tipo que circula aquí, también el más alto y el más pequeño. Lo que no se elija puede pasar sin ser detectado.
forms-seen-by-others = Vehículos que otro dispositivo detecta
forms-seen-by-others-help = Elija solo los vehículos que un haz fotoeléctrico o una cámara detecta en todos los puntos donde un lazo no los detecta; si no, un vehículo puede quedar sin ser detectado.
forms-construction-help = Los lazos se bobinan en el lugar, o vienen preformados para un corte o para enterrar.
forms-construction-default = Lo que pide el pavimento.

## Pavimento y losa

forms-surface-help = Elija en qué quedan los lazos, ahora o una vez colocado.
forms-hazards = Obstáculos y peligros del lugar
forms-hazards-help = Elija todo lo que haya y averígüelo antes de cortar: un tendón o una línea eléctrica que se cortan pueden matar.
forms-slab-thickness = Espesor de la losa
forms-slab-thickness-help = Limita la profundidad a que se puede cortar la losa.
forms-steel-depth = Profundidad del acero
forms-steel-depth-help = De la superficie al acero más alto de la losa, según un escaneo.
forms-steel-depth-default = Donde hay malla, se supone a la profundidad usual bajo el lazo.
forms-slab-edge = Distancia al borde más cercano
forms-slab-edge-help = De los alambres al borde, bordillo o junta más cercano de la losa.
forms-slab-suspended = La losa está suspendida
forms-slab-suspended-help = Un tablero, una rampa o un piso con espacios debajo. No la corte antes de que el ingeniero lo apruebe por escrito.
forms-cut-approved = El corte está aprobado
forms-cut-approved-help = Conteste sí solo si se hizo un escaneo y el ingeniero aprobó el corte por escrito. Un tendón cortado puede matar.

## Cable de conexión y alambre

forms-lead-in-length-help = Mida el recorrido del par desde el lazo más lejano hasta la unidad detectora, con subidas y bajadas. Cada lazo recibe este largo.
forms-in-slot-help = Qué parte del cable de conexión queda en un corte.
forms-in-slot-default = El recorrido más corto del lazo al borde del pavimento.
forms-in-conduit-help = Qué parte del cable de conexión va en tubo conduit.
forms-in-conduit-default = Lo que no queda en una ranura.
forms-pair = Tipo de par
forms-pair-help = Elija cómo van unidos los dos alambres del cable de conexión. Los pares sueltos necesitan una ranura cada uno.
forms-pair-default = Trenzado donde el lazo se bobina en el lugar, con cubierta donde viene preformado.
forms-spare-help = Holgura para enrollar en la unidad, además del recorrido medido.
forms-lead-in-gauge-help = El tamaño de cada conductor, según el carrete o la ficha técnica.
forms-lead-in-inductance-help = De la ficha técnica del cable, por cada pie o metro del par.
forms-lead-in-inductance-default = Más para un par suelto.
forms-wire-gauge-help = El tamaño del conductor con que se bobina el lazo.
forms-over-insulation-help = El diámetro sobre el aislamiento, según la ficha técnica del alambre.
forms-over-insulation-default = En otro calibre, el mismo aislamiento.
forms-over-jacket = Diámetro sobre la cubierta
forms-over-jacket-help = Solo para un lazo preformado: mida a través de la cubierta que reúne todas sus vueltas.
forms-over-jacket-default = Las vueltas quedan una sobre otra, como alambres sencillos.
forms-insulation-rating = Calor que soporta el aislamiento
forms-insulation-rating-help = La temperatura más alta que soportan el aislamiento y la cubierta, según la ficha técnica del alambre; no la de cortocircuito. Un sellador que se vierte más caliente los funde.

## Cortes

forms-slot-width-help = El ancho del corte.
forms-slot-width-default = Más ancho donde el alambre lo necesite.
forms-slot-depth-help = Del pavimento al fondo de la ranura. Una profundidad indicada no se rebasa.
forms-slot-depth-default = { $wound } / { $wound_metric } para un lazo bobinado, { $jacketed } / { $jacketed_metric } para uno preformado; más profunda donde lo pidan las vueltas y el recubrimiento, menos donde la losa o el acero dejen menos.
forms-cover-help = El sellador que queda sobre el alambre superior; sobre un lazo enterrado, lo que lo cubre.
forms-cover-default = { $wound } / { $wound_metric } para un lazo bobinado, { $jacketed } / { $jacketed_metric } para uno preformado.
forms-crossings = Juntas y grietas cruzadas
forms-crossings-help = Cuántas juntas y grietas cruzan los alambres.
forms-lead-in-slot-width-help = El ancho del corte de los cables de conexión.
forms-lead-in-slot-width-default = Como la ranura del lazo, más ancha donde los pares lo necesiten.
forms-lead-in-slot-depth-help = Del pavimento al fondo de la ranura de los cables de conexión.
forms-lead-in-slot-depth-default = Como la ranura del lazo, más profunda donde los pares lo necesiten.
forms-lead-in-slot-cover-help = El sellador que queda sobre los pares.
forms-lead-in-slot-cover-default = Como sobre el lazo.
forms-blade-help = Un disco corta más allá del final de la ranura: cuanto más grande, más lejos.
forms-corner-help = Cómo pasa el alambre por las esquinas de la ranura.
forms-corner-default = En diagonal donde el lazo lleva cortes de esquina; si no, en ángulo recto.
forms-core-diameter-help = Solo para esquinas que se perforan: el diámetro del agujero.
forms-blade-life = Vida útil de un disco
forms-blade-life-help = Cuánto corta un disco antes de gastarse.
forms-owns-blades = La cuadrilla tiene sus discos
forms-owns-blades-help = Conteste sí si los discos se llevan y no se compran para este trabajo.
forms-rod-form-help = Cómo se sujeta abajo el alambre sencillo en la ranura hasta sellarla.
forms-rod-piece-help = Solo para trozos: el largo de cada uno.
forms-rod-spacing-help = Solo para trozos: de uno al siguiente.
forms-rod-diameter-help = Mídalo antes de presionarlo en la ranura.
forms-rod-diameter-default = Un poco más que el ancho de la ranura.
forms-agency = Autoridad
forms-agency-help = Indique quién pide un ancho mínimo de la ranura.
forms-agency-width = Ancho mínimo de ranura de la autoridad
forms-agency-width-help = El ancho mínimo que pide.
forms-wire-allowance = Alambre adicional, %
forms-wire-allowance-help = Alambre para esquinas, puntas y recortes, además del largo medido.

## La unidad detectora

forms-envelope-help = Lo que reemplaza los datos que no se indican. Manda la ficha técnica de la unidad.
forms-from-unit-sheet = Tome el dato de la ficha técnica de la unidad detectora.
forms-limit-default = Si solo se indica el otro límite y este no concuerda, este se ajusta.
forms-quality-factor = Factor de calidad mínimo de la unidad
forms-tuning-capacitance = Capacitancia de sintonía de la unidad, nF
forms-threshold = Umbral de la unidad, %
forms-threshold-help = El cambio de inductancia con que conmuta la unidad.
forms-threshold-default = El menos sensible que detecta bien todos los vehículos.
forms-threshold-steps-help = Los cambios con que conmutan sus pasos de sensibilidad, según la ficha técnica de la unidad.
forms-threshold-steps-default = Los pasos usuales de tales unidades.
forms-wiring-help = Cómo llegan los lazos a la unidad detectora. Un canal por lazo es la regla.

## Sellador y día

forms-sealant-kind-help = Del tipo depende cuánto tiempo queda cerrado el carril y con qué clima se puede sellar.
forms-cartridge-help = El volumen de un cartucho, ambas partes juntas.
forms-finish-help = Del pavimento al sellador terminado. Lo usual es al ras.
forms-waste = Sellador perdido, %
forms-waste-help = Lo que se pierde en cartuchos, excesos y derrames, como parte de lo que llena las ranuras.
forms-made-on = Fecha de fabricación
forms-made-on-help = Según el envase. No se debe usar sellador vencido.
forms-shelf-life-help = Cuánto se conserva el sellador sin abrir.
forms-from-sealant-sheet = De la ficha técnica del sellador, con la temperatura y la humedad que indica.
forms-by-sealant-default = El valor usual de este tipo de sellador, si lo tiene.
forms-traffic-time = Tiempo hasta abrir al tránsito
forms-full-cure = Tiempo hasta el curado completo
forms-cured-depth = Profundidad que cura el primer día
forms-pot-life = Tiempo de trabajo una vez mezclado o abierto
forms-sheet-temperature-help = La temperatura a la que valen los tiempos de la ficha técnica.
forms-sheet-humidity-help = La humedad del aire a la que valen los tiempos de la ficha técnica.
forms-coldest-help = Por debajo de esta temperatura no se debe aplicar el sellador.
forms-hottest = Temperatura máxima de aplicación
forms-hottest-help = Por encima de esta temperatura no se debe aplicar el sellador.
forms-activation-help = Cuánto acelera el calor el curado; pregunte al fabricante.
forms-pour-help = Solo para sellador que se vierte caliente. El aislamiento del alambre debe soportarla.
forms-damp-slot-help = Conteste sí solo si la ficha técnica del sellador permite una ranura húmeda.
forms-start-help = Cuándo se aplica el primer sellador, en la hora del lugar. Cuenta donde se conoce el clima, y junto con él decide si se sella.
forms-needed-open = Tránsito de vuelta a más tardar
forms-needed-open-help = Cuándo debe volver el tránsito, en la hora del lugar. Cuenta donde se conoce el clima.
forms-slot-state = Estado de la ranura
forms-slot-state-help = Mire y toque antes de sellar: en una ranura mojada o con escarcha no va sellador. Su respuesta cuenta donde se conoce el clima.
forms-slot-state-default = Seca, o mojada si el clima indica lluvia que aún no se ha secado.
forms-work-duration-help = Del primer tramo que se sella al último, para todo el trabajo. Cuenta donde se conoce el clima.
forms-work-duration-default = Lo que dice la estimación del trabajo.

## La cuadrilla, sus precios, el plan

forms-set-up = Tiempo de preparación
forms-set-up-help = Para preparar, trazar y proteger la zona de trabajo, una vez por trabajo.
forms-saw-speed = Velocidad de la sierra
forms-saw-speed-help = Con qué rapidez avanza la sierra en una pasada.
forms-saw-speed-default = Según el pavimento y la profundidad.
forms-core-time = Tiempo para perforar una esquina
forms-core-time-help = Por cada esquina que se perfora.
forms-cleaning-speed = Velocidad de limpieza
forms-cleaning-speed-help = Con qué rapidez se lavan y secan las ranuras.
forms-pull-time = Tiempo para tender alambre
forms-pull-time-help = Por cada vuelta, o por todas las vueltas de un lazo preformado.
forms-burial-time = Tiempo para enterrar un lazo
forms-burial-time-help = Para asentar y cubrir un lazo que no va en un corte.
forms-sealing-speed = Velocidad de sellado
forms-sealing-speed-help = Con qué rapidez se llenan las ranuras.
forms-termination-time = Tiempo para terminar las puntas
forms-termination-time-help = Para soldar, empalmar y sellar las puntas de un lazo.
forms-test-time = Tiempo para medir
forms-test-time-help = Para tomar una vez las lecturas de un lazo.
forms-currency = Moneda
forms-currency-help = Tres letras, como USD o CAD.
forms-hourly-rate = Tarifa por hora de la cuadrilla
forms-hourly-rate-help = El precio de una hora de toda la cuadrilla. Si queda vacío, las horas no se cobran en el cálculo.
forms-parts = Partes del plan
forms-parts-help = Elija qué planear además de los lazos mismos.
forms-parts-default = Todas; la del curado, solo si se indica el clima.
forms-include = También en el plan
forms-include-help = Elija qué más debe contener el plan.
