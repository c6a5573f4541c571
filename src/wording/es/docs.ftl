### The pages of the documentation: headings, labels and the words of tables. What stands under them is the description.

docs-title = Solicitudes y respuestas
docs-lead = Todo lo que se le puede pedir al servicio, con los campos, un ejemplo y la respuesta de cada solicitud.
docs-skip = Ir a las solicitudes
docs-pages = Páginas
docs-all = Todas las solicitudes
docs-guide = Guía para integradores
docs-changes = Cambios
docs-description = Descripción con todos los ejemplos
docs-compact-description = Descripción sin respuestas
docs-try = Probar
docs-filter = Filtrar
docs-filter-hint = Parte de una dirección o palabras del tema. Con Intro se abre la primera.
docs-shown = Se muestran:
docs-nothing-fits = Ninguna solicitud tiene todas estas palabras. Quite alguna.
docs-group = { $group ->
    [calculations] Cálculos
    [drawings] Dibujos y hojas
    [reference] Tablas de referencia
   *[service] El servicio mismo
}
docs-more = Todo sobre esta solicitud
docs-not-loaded = No se pudo cargar. Abra su página o pruebe de nuevo en un momento.

## One request

docs-parameters = Parámetros
docs-request = Solicitud
docs-fields = Campos de la solicitud
docs-answer = Respuesta
docs-answer-fields = Campos de la respuesta
docs-answer-file = Abrir esta respuesta aparte
docs-picture = El dibujo con el que se responde al primer ejemplo
docs-statuses = Estados
docs-status = Estado

## Tables of fields

docs-field = Campo
docs-value = Valor
docs-meaning = Significado
docs-required = obligatorio
docs-list-of = lista de
docs-map-of = por nombres propios:
docs-kind = { $kind ->
    [quantity] texto con su unidad
    [text] texto
    [time] fecha y hora
    [number] número
    [integer] número entero
    [boolean] verdadero o falso
    [file] archivo
   *[object] objeto
}
docs-bounds = { $bounds ->
    [both] de { $least } a { $greatest }
    [least] al menos { $least }
   *[greatest] como máximo { $greatest }
}{ $things ->
    [entries] {" "}elementos
    [characters] {" "}caracteres
   *[none] {""}
}
docs-units = Unidades:
docs-for-example = Por ejemplo
