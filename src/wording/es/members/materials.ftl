### The labels and descriptions of the closed lists of `practice::materials`: a message for each member, `List-code`.

## Corner

Corner-square_overrun = Recta, con corte pasado
    .description = Los cortes se cruzan y se prolongan en esquinas rectas, para que la ranura tenga toda su profundidad donde gira el alambre.
Corner-diagonal = Corte diagonal
    .description = Un corte diagonal en cada esquina evita al alambre un doblez agudo. Los lados terminan donde lo encuentran, y allí se prolongan para tener toda su profundidad.
Corner-diagonal_full = Corte recto completo, luego diagonales
    .description = Los lados se cortan completos hasta esquinas vivas y luego se cortan diagonales que las cruzan: en cada esquina queda entonces un triángulo de pavimento suelto.
Corner-cored = Esquina perforada
    .description = Un agujero perforado en cada esquina da toda la profundidad sin un corte que la pase, y redondea el doblez.

## RodForm

RodForm-none = Sin cordón de respaldo
    .description = Un lazo con cubierta se ajusta a su ranura y se queda abajo por sí solo.
RodForm-pieces = Trozos cortos
    .description = Trozos cortos de cordón de espuma a intervalos y en las esquinas: el sellador rodea el alambre entre ellos.
RodForm-continuous = Continuo
    .description = Un solo tramo de cordón sobre todo el alambre: separa el sellador del alambre, y el agua encuentra camino a lo largo de él.

## MaterialItem

MaterialItem-sealant_cartridge = Cartucho de sellador
    .description = Cartuchos (juegos, si es de dos partes) de sellador aplicado en frío.
MaterialItem-hot_sealant = Sellador en caliente
    .description = Sellador para fundir, por volumen.
MaterialItem-mixing_nozzle = Boquilla mezcladora
    .description = Una boquilla por cada lazo que se sella de una vez con sellador de dos partes.
MaterialItem-blending_sand = Arena de acabado
    .description = Arena de color para el sellador fresco, donde no debe notarse.
MaterialItem-loop_wire = Alambre de lazo
    .description = Alambre sencillo para las vueltas y el cable de conexión trenzado, por carrete o por longitud.
MaterialItem-preformed_loop = Lazo preformado
    .description = Un lazo con cubierta y su cable de conexión, hecho a medida.
MaterialItem-backer_rod = Cordón de respaldo
    .description = Cordón de espuma que sujeta el alambre abajo.
MaterialItem-home_run_cable = Cable principal
    .description = Cable de calibre propio desde la caja de paso hasta la unidad.
MaterialItem-splice_kit = Juego de empalme
    .description = Soldadura, manguitos y sello para los dos empalmes de un par, en la caja de paso.
MaterialItem-pull_box = Caja de paso
    .description = Una caja junto al pavimento, donde los pares salen de él y se empalman al cable principal.
MaterialItem-lead_in_conduit = Tubo conduit para el cable de conexión
    .description = Tubo conduit fuera de la losa o debajo de ella.
MaterialItem-bedding_sand = Arena de asiento
    .description = Arena debajo y encima de un lazo enterrado, sin piedras.
MaterialItem-tie = Amarre
    .description = Un amarre o una abrazadera de plástico que sujeta en su lugar un lazo enterrado hasta que se cubre; nunca alambre.
MaterialItem-joint_sleeve = Manguito de junta
    .description = Un manguito donde el alambre cruza una junta o grieta, 4 in a cada lado, con holgura adentro.
MaterialItem-termination = Extremo soldado o estañado
    .description = Un extremo de alambre, estañado o soldado contra la oxidación.
MaterialItem-line_device = Dispositivo a través de la línea
    .description = Un haz fotoeléctrico u otro dispositivo que vigila la línea del portón, donde un vehículo puede quedar sin ser detectado entre dos lazos.
MaterialItem-saw_blade = Disco de corte
    .description = Un disco de diamante tan ancho como la ranura y lo bastante grande para su profundidad.

## WorkStep

WorkStep-set_up = Preparar y trazar
    .description = Control del tránsito, servicios localizados comprobados, lazos trazados.
WorkStep-saw = Cortar
    .description = Todos los cortes, con sus prolongaciones.
WorkStep-core = Perforar las esquinas
    .description = Un agujero en cada esquina.
WorkStep-clean_and_dry = Limpiar y secar la ranura
    .description = Lave el lodo, aspire, sople hasta secar: el sellador se adhiere solo a una pared limpia y seca.
WorkStep-wind = Tender el alambre
    .description = Una pasada por cada vuelta de alambre sencillo; una por todas las vueltas de un lazo preformado.
WorkStep-bury = Asentar y cubrir
    .description = Asiente un lazo de enterrado directo y su tubo conduit, y cúbralo.
WorkStep-test_before_sealing = Probar antes de cerrar
    .description = Resistencia, inductancia y aislamiento antes de que el sellador o el relleno cubra el alambre.
WorkStep-seal = Sellar
    .description = Llene la ranura alrededor y por encima del alambre.
WorkStep-terminate = Rematar los extremos
    .description = Suelde o estañe los extremos, empalme en la caja, selle el empalme.
WorkStep-test_after_sealing = Probar una vez cerrado
    .description = Las mismas lecturas otra vez; anótelas para la próxima visita.
