### The labels and descriptions of the closed lists of `practice::job_steps`: a message for each member, `List-code`.

## PlanPart

PlanPart-detector = Unidad detectora
    .description = Si la unidad se sintoniza con los lazos, y cómo ajustarla.
PlanPart-materials = Materiales
    .description = Qué cargar, cuánto tiempo toma y cuánto cuesta.
PlanPart-cure = Curado
    .description = Si sellar con este tiempo, y cuándo puede volver el tránsito.
PlanPart-commissioning = Puesta en servicio
    .description = Qué medir y qué probar antes de dejar el sitio.

## PlanExtra

PlanExtra-drawings = Dibujos
    .description = La planta, la sección de la ranura, la respuesta de un vehículo y los tiempos de curado, como dibujos SVG.

## JobStep

JobStep-locate = Localizar lo que hay debajo
    .description = Haga localizar y marcar los servicios enterrados, la calefacción y el acero antes de empezar el trabajo.
JobStep-guard = Proteger la zona de trabajo
    .description = Cierre el carril, guíe a las personas a su alrededor y manténgalo protegido hasta que vuelva a soportar tránsito.
JobStep-isolate = Aislar el portón
    .description = Bloquee y etiquete el accionamiento del portón, la red eléctrica, la batería y la energía solar, o sujete la hoja mecánicamente, y ponga un vigilante.
JobStep-mark_out = Trazar
    .description = Trace con tiza los lazos y el recorrido de los cables de conexión, y mídalos dos veces.
JobStep-cut = Cortar
    .description = En húmedo, por pasadas, más allá de los extremos que deben ser profundos.
JobStep-clean = Limpiar y secar
    .description = Lave el lodo, aspire, sople hasta secar; busque filos y rebabas.
JobStep-bed = Asentar
    .description = Coloque el lazo y su tubo conduit en su lecho, planos, y fíjelos.
JobStep-lay = Tender el alambre
    .description = Sin dobleces y sin herramientas que lo dañen; todas las vueltas en el mismo sentido; sujételo abajo.
JobStep-measure_open = Medir antes de cerrar
    .description = Resistencia, inductancia y aislamiento, antes de que el sellador o el relleno cubra el alambre; anótelos.
JobStep-seal = Sellar
    .description = Llene la ranura alrededor y por encima del alambre, de abajo hacia arriba, sin aire.
JobStep-cover = Cubrir
    .description = Cubra el lazo antes de tender la superficie, y mantenga las máquinas lejos de él.
JobStep-protect = Mantener fuera el tránsito
    .description = Hasta que soporte el tránsito sin que las ruedas arrastren sellador, diga lo que diga el reloj.
JobStep-terminate = Rematar los extremos
    .description = Trence el par, suelde o estañe los extremos, selle todos los empalmes.
JobStep-measure_sealed = Medir una vez cerrado
    .description = Las mismas lecturas al final del cable de conexión; son el registro para la próxima visita.
JobStep-power_up = Encender y sintonizar
    .description = Ajuste la unidad y deje que se sintonice con los carriles vacíos y el portón cerrado.
JobStep-prove = Comprobar
    .description = Pruebe con vehículos y con el portón lo que la unidad debe y no debe detectar.
JobStep-restore = Restablecer y entregar
    .description = Todos los lazos conectados, cada dispositivo de protección del portón comprobado por separado, las lecturas entregadas.

## Trial

Trial-tune_empty = Sintonizar con los carriles vacíos
    .description = Encienda sin ningún vehículo a menos de 10 ft (3 m) y con el portón cerrado: todos los canales se sintonizan y no muestran detección.
Trial-cycle_gate = Abrir y cerrar el portón tres veces
    .description = Abra y cierre el portón tres veces con los carriles vacíos: ningún canal detecta.
Trial-next_lane = Tránsito en el carril vecino
    .description = Haga pasar vehículos por el carril vecino: ningún canal detecta.
Trial-smallest_vehicle = El vehículo más pequeño, muy lento
    .description = Pase muy despacio sobre cada lazo con el vehículo más pequeño que se debe detectar, por el centro y por ambos bordes: la detección se mantiene desde el primer alambre hasta el último.
Trial-highest_vehicle = El vehículo más alto, muy lento
    .description = Lo mismo con el vehículo más alto; deténgalo con su parte más alta sobre el lazo: la detección se mantiene todo el tiempo.
Trial-power_fail = Corte de energía con vehículo en el lazo
    .description = Estacione sobre un lazo que retiene el portón, corte la energía y restablézcala: el portón queda como está, y el lazo sigue detectando el vehículo o da detección.
Trial-protective_devices = Comprobar los dispositivos de protección
    .description = Compruebe por separado cada dispositivo de protección contra atrapamiento del portón, como piden su fabricante y el código: ningún lazo lo reemplaza.
