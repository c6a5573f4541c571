### The labels and descriptions of closed lists of the service: problems, faults, choices of a drawing.

## DrawingUnits

DrawingUnits-auto = Según el ancho
    .description = El sistema en que está escrito el ancho.
DrawingUnits-us = Usual en EE. UU.
    .description = Primero pies y pulgadas, con medidas redondas en ellos.
DrawingUnits-metric = Métrico
    .description = Primero metros y milímetros, con medidas redondas en ellos.

## ProblemCode

ProblemCode-malformed_json = El cuerpo no es JSON
    .description = El cuerpo no es un texto JSON único: hay un error de sintaxis, texto que no es UTF-8, un número fuera de rango, u objetos y listas anidados a demasiada profundidad. Envíe un solo objeto JSON.
ProblemCode-preflight_refused = Llamada de esta página rechazada
    .description = Una página preguntó si puede llamar, y no puede: su origen, método o encabezado no está entre los que se aceptan de páginas de otros sitios. El operador establece los orígenes.
ProblemCode-unauthorized = Se necesita clave
    .description = El servicio responde solo a clientes cuya clave conoce. Envíe la clave que le dio su operador así: Authorization: Bearer KEY.
ProblemCode-key_not_for_here = La clave no es para aquí
    .description = La clave es para ciertas páginas y ciertas rutas, y esta solicitud no viene de una de esas páginas o no es para una de esas rutas. El operador del servicio registra los orígenes y las rutas de cada clave de este tipo.
ProblemCode-not_found = No hay nada aquí
    .description = La ruta no existe. La descripción en /openapi.json enumera las que existen.
ProblemCode-method_not_allowed = Método no permitido
    .description = La ruta existe, pero no para este método. El encabezado Allow enumera los métodos.
ProblemCode-request_timeout = Cuerpo no enviado a tiempo
    .description = El cuerpo no llegó dentro del plazo. Envíelo de una vez; todas las llamadas pueden repetirse sin riesgo.
ProblemCode-body_too_large = Cuerpo demasiado grande
    .description = El cuerpo es más grande de lo que acepta esta ruta. Envíe menos, o varias solicitudes.
ProblemCode-unsupported_media_type = Tipo de medio no admitido
    .description = Envíe el cuerpo como application/json, en UTF-8 y sin codificación de contenido.
ProblemCode-validation_failed = Hay campos que no se pueden usar
    .description = El cuerpo es JSON, pero su contenido no se puede calcular. Se nombra cada campo erróneo, con lo que hay que enviar en su lugar.
ProblemCode-rate_limited = Demasiadas solicitudes
    .description = El cliente envió más solicitudes de las que puede. Repita la solicitud cuando pasen los segundos que indica Retry-After. Lo que tarda más cuesta más, y un elemento de un lote, tanto como una solicitud.
ProblemCode-head_too_large = Encabezado demasiado grande
    .description = La línea de solicitud y sus encabezados son más grandes de lo que se acepta. Envíe menos encabezados, o más cortos; lo que se ha de calcular va en el cuerpo.
ProblemCode-internal_error = Falla nuestra
    .description = Algo falló aquí. Comunique al operador el identificador de la solicitud; la solicitud puede repetirse.
ProblemCode-unavailable = No está listo
    .description = La instancia está arrancando o deteniéndose. Repita la solicitud cuando pasen los segundos que indica Retry-After.
ProblemCode-overloaded = Demasiado trabajo en curso
    .description = Hay más en espera de lo que acepta la instancia, o la solicitud esperó todo lo que podía. Repita la solicitud cuando pasen los segundos que indica Retry-After.
ProblemCode-forecast_failed = Pronóstico no utilizable
    .description = No se pudo contactar al servicio meteorológico, o lo que respondió no es un pronóstico. Envíe el tiempo hora por hora en vez del lugar, o repita la solicitud más tarde.
ProblemCode-forecast_timeout = Pronóstico demasiado tarde
    .description = El servicio meteorológico no respondió a tiempo. Envíe el tiempo hora por hora en vez del lugar, o repita la solicitud más tarde.
ProblemCode-forecast_unavailable = Pronóstico no consultado
    .description = No se consultó al servicio meteorológico: falló varias veces seguidas, o hay demasiados pronósticos en curso. Envíe el tiempo hora por hora en vez del lugar, o repita la solicitud cuando pasen los segundos que indica Retry-After.

## FieldErrorCode

FieldErrorCode-unit_missing = Falta la unidad
    .description = La cantidad no tiene unidad. Envíe un texto con número y unidad.
FieldErrorCode-unit_unknown = Unidad desconocida
    .description = La unidad no está entre las que se leen aquí. La descripción del campo enumera las que sí.
FieldErrorCode-unit_wrong_dimension = Unidad de otra dimensión
    .description = La unidad mide algo distinto de lo que contiene este campo.
FieldErrorCode-decimal_comma = Coma decimal
    .description = La coma del número puede ser de miles: la siguen tres cifras, o hay varios signos. Envíe un punto para los decimales y ningún separador de miles.
FieldErrorCode-number_invalid = Número no válido
    .description = No se puede leer ningún número: un número puede ser 7; 7.2; 7,2; 3/16 o 1-1/4, en 40 caracteres como máximo, sin exponente.
FieldErrorCode-out_of_range = Fuera de rango
    .description = El valor está fuera de lo que admite el campo, donde los modelos son válidos.
FieldErrorCode-list_size = Tamaño de lista
    .description = La lista tiene muy pocos elementos o demasiados.
FieldErrorCode-text_size = Tamaño de texto
    .description = El texto está vacío o es demasiado largo.
FieldErrorCode-text_form = Forma del texto
    .description = El texto tiene una forma que el campo no admite. La sugerencia dice cuál admite.
FieldErrorCode-time_invalid = Hora no válida
    .description = El texto no es una hora en la forma de RFC 3339 con desfase horario, ni una fecha, entre 1970 y 2200.
FieldErrorCode-time_order = Horas en desorden
    .description = Las horas de una lista deben avanzar de fila en fila; el mismo instante puede figurar una sola vez.
FieldErrorCode-time_gap = Hueco entre horas
    .description = La fila está demasiado lejos de la anterior: el tiempo no se adivina a través de un hueco.
FieldErrorCode-field_missing = Falta un campo
    .description = No se envió un campo que es necesario.
FieldErrorCode-field_unknown = Campo desconocido
    .description = El campo no existe aquí. Corrija su nombre u omítalo.
FieldErrorCode-field_duplicate = Campo enviado dos veces
    .description = El mismo campo figura dos veces en un objeto. Envíelo una vez.
FieldErrorCode-value_unknown = Valor desconocido
    .description = El valor no está en la lista cerrada. La sugerencia da la lista.
FieldErrorCode-null_not_allowed = Nulo
    .description = Es nulo un campo obligatorio, un elemento de una lista o una entrada de un mapa. Un campo opcional puede ser nulo, y cuenta como ausente.
FieldErrorCode-type_wrong = Tipo JSON incorrecto
    .description = El campo admite otro tipo JSON.
FieldErrorCode-contradiction = Contradicción
    .description = Dos campos no pueden valer a la vez.
FieldErrorCode-forecast_off = Pronósticos desactivados
    .description = Se envió un lugar para su pronóstico, pero el operador de esta instancia no configuró ningún servicio meteorológico. Envíe en su lugar el tiempo hora por hora.
FieldErrorCode-forecast_not_covered = Sin pronóstico para el lugar
    .description = El servicio meteorológico no tiene pronóstico por hora para el lugar. Revise los signos de latitud y longitud, o envíe en su lugar el tiempo hora por hora.

## DrawingTheme

DrawingTheme-auto = Según el dispositivo
    .description = Claro u oscuro, según pida el dispositivo de quien lee.
DrawingTheme-light = Claro
    .description = Tinta oscura sobre papel claro.
DrawingTheme-dark = Oscuro
    .description = Tinta clara sobre papel oscuro.

## DrawingContent

DrawingContent-full = Todo
    .description = La imagen con título, leyenda, notas y avisos, y con su propia hoja de estilos.
DrawingContent-figure = Solo la imagen
    .description = La imagen con sus medidas, para una página que dice el resto y tiene su propia hoja de estilos. Si el trabajo no debe hacerse, la imagen lo dice de todos modos.
