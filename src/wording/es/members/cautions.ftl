### The labels and descriptions of the closed lists of `practice::cautions`: a message for each member, `List-code`.

## CautionCode

CautionCode-not_for_people = Un lazo no detecta personas
    .description = Un lazo vehicular detecta metal, no personas, y no es un dispositivo de protección contra atrapamiento. El portón necesita sus propios dispositivos certificados, y quien va a pie necesita su propio paso.
CautionCode-local_codes = Deciden los códigos locales
    .description = Deciden los códigos locales, las fichas técnicas de los fabricantes y los profesionales con licencia. El acceso y la salida de los bomberos se acuerdan con la autoridad local.
CautionCode-gate_can_move = El portón puede moverse
    .description = Antes de desconectar un lazo o de apagar y encender una unidad detectora, aísle, bloquee y etiquete el accionamiento del portón (red eléctrica, batería y energía solar) o sujete la hoja mecánicamente, mantenga a las personas fuera de su recorrido y ponga un vigilante. Vuelva a conectar todos los lazos y compruebe todos los dispositivos de protección antes de irse.
CautionCode-silica = Polvo de sílice
    .description = Cortar pavimento produce sílice respirable. Corte en húmedo con suministro continuo de agua; use protección respiratoria según la norma: en interiores siempre, y al aire libre con cortadora manual cuando se pasa de cuatro horas por turno.
CautionCode-saw = La cortadora
    .description = Guarda del disco en su lugar; protección de ojos, oídos y pies. Ninguna cortadora de combustión en interiores: monóxido de carbono. Una cortadora eléctrica en húmedo, solo con alimentación protegida contra fallas a tierra.
CautionCode-buried_services = Servicios enterrados
    .description = Haga localizar y marcar los servicios enterrados antes de cualquier corte o zanja.
CautionCode-slab_steel = Acero en la losa
    .description = Nunca corte el acero de refuerzo. Ajuste la cortadora por encima de él.
CautionCode-tensioned_slab = Losas tensadas
    .description = Las losas postensadas y los tableros de puente o suspendidos nunca se cortan sin un escaneo y la autorización del ingeniero.
CautionCode-snow_melt = Sistemas de deshielo
    .description = Localice primero los tubos y cables de calefacción, y aísle los cables de su alimentación antes del corte.
CautionCode-work_zone = Tránsito en la zona de trabajo
    .description = Planifique el control del tránsito, incluidas las personas a pie, antes de empezar el trabajo.
CautionCode-sealant = Selladores
    .description = Muchos selladores contienen isocianatos, que sensibilizan las vías respiratorias y la piel de por vida; el sellador fundido quema, y el vapor hace que salpique. Decide la ficha técnica.
CautionCode-insulation_tester = Probador de aislamiento
    .description = Pruebe el aislamiento solo con la unidad detectora y los supresores de sobretensiones desconectados, y descargue el lazo después.
CautionCode-hot_work = Trabajo en caliente
    .description = Calderas, sopletes y cilindros de combustible: retire o proteja todo lo que pueda arder a menos de 35 ft, mantenga vigilancia contra incendios durante el trabajo y después, y vierta solo con la ropa que pide la ficha técnica.
CautionCode-classified_area = Combustible y otras áreas clasificadas
    .description = En gasolineras y en otras áreas clasificadas, trabaje solo con el permiso del sitio.
CautionCode-power_up_empty = Encienda con los lazos vacíos
    .description = Una unidad que se enciende o se reinicia bajo un vehículo lo aprende como vacío: no detecta ese vehículo, y el portón puede cerrarse sobre él. Despeje antes todos los lazos, y después pase con un vehículo sobre cada uno.
CautionCode-live_parts = Partes energizadas
    .description = Solo personal calificado abre gabinetes con partes energizadas.
