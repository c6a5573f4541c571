### La portada, y la página con el asistente para un marco.

front-title = ¿Qué lazos necesita este claro?
front-lead = Loopwright contesta lo que se le pregunta a un especialista en lazos detectores de vehículos: qué lazos necesita un portón, una barrera, un servicio en el automóvil o un carril, cuántas vueltas, si la unidad detectora sintoniza, qué cargar en la camioneta, si hoy se puede sellar y qué ha fallado. Una tienda en línea, un programa de cotización o la aplicación de un instalador hace la pregunta; la respuesta se calcula, dice qué supone y qué precauciones pide, y viene en pies y en metros, en tres idiomas.
front-skip = Ir a la pregunta
front-pages = Páginas
front-requests = Preguntas y respuestas
front-guide = Guía para integradores (en inglés)
front-changes = Cambios (en inglés)
front-description = Descripción OpenAPI
front-languages = Idiomas
front-language = Español
front-try = Pregunte por su claro
front-no-script = Esto necesita scripts. Las preguntas de abajo no los necesitan.
front-behind = Lo que hay detrás
front-behind-lead = Cualquier programa puede preguntar lo mismo. Estos preguntan lo que usted preguntó arriba.
front-answer = La respuesta
front-embed = En una página suya
front-embed-lead = Un script y una etiqueta. El hash fija el archivo, que se sirve sin cambios mientras dure esta versión del contrato del servicio.
front-frame = ¿Qué lazos necesita mi claro?
