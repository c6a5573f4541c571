### What happened to a request that is not answered, for whoever writes or runs the program that sent it.

## The body

problems-body-larger = El cuerpo tiene más de { $limit } bytes, el máximo que acepta esta ruta. Envíe menos, o varias solicitudes.
problems-body-broke-off = El cuerpo se interrumpió: { $reason }.
problems-body-empty = El cuerpo está vacío. Envíe un objeto JSON.
problems-body-not-json = El cuerpo no es un texto JSON: { $reason }. Envíe un objeto JSON.
problems-body-too-deep = El cuerpo anida más de { $depth } objetos y listas. Ninguna solicitud necesita tantos; envíe un objeto JSON.
problems-header-twice = El encabezado { $header } aparece más de una vez. Envíe uno solo.
problems-fields = { $listed ->
    [one] Un campo no se puede usar; la lista de errores dice qué enviar en su lugar.
    [all] { $fields } campos no se pueden usar; la lista de errores dice qué enviar en su lugar.
   *[first] { $fields } campos no se pueden usar; la lista de errores tiene los primeros { $most } y dice qué enviar en su lugar.
}

## The address, the page and the key

problems-no-such-kind = No existe ese tipo de problema; /v1/reference/problems los enumera.
problems-methods = Esta ruta acepta { $methods }.
problems-head-larger = La línea de la solicitud y sus encabezados tienen más de { $limit } bytes. Envíe menos encabezados o más cortos; lo que se debe calcular va en el cuerpo.
problems-page-method = Las páginas de otros sitios llaman con { $methods }; el método que se pidió no se acepta.
problems-page-origin = El origen de la página no está entre los que pueden llamar. Los fija el operador del servicio.
problems-page-headers = No se acepta de páginas de otros sitios: { $refused }. Omítalo; se aceptan { $taken }.
problems-key-expired = La clave venció el { $end }. Pida otra al operador del servicio y envíela así: Authorization: Bearer KEY.
problems-key-unknown = El servicio no conoce esa clave. Envíe la que le dio su operador así: Authorization: Bearer KEY.
problems-key-no-origin = La clave es para páginas, y la solicitud no nombra ninguna: le falta el encabezado Origin, que envían los navegadores. Desde un programa, llame con una clave secreta, que entrega el operador del servicio.
problems-key-origin = La clave no es para páginas del origen { $origin }. El operador del servicio debe agregar ese origen a la clave, exactamente así.
problems-key-path = La clave no es para la ruta { $path }. Llame a una de sus rutas exactamente como la registró el operador del servicio, o pídale que agregue esta a la clave.

## What is too much at once

problems-arriving = { $whose ->
    [all] Los cuerpos que están llegando suman lo máximo que acepta la instancia. Repita la solicitud después de los segundos que indica Retry-After.
   *[caller] Los cuerpos suyos que están llegando suman lo máximo que la instancia acepta de un solo cliente. Envíe menos a la vez, cada uno de una sola vez.
}
problems-batches = { $whose ->
    [all] La instancia tiene en proceso todos los lotes que acepta.
   *[caller] Usted tiene en proceso todos los lotes que se permiten a un solo cliente.
} Repita la solicitud después de los segundos que indica Retry-After.
problems-item-not-begun = { $reason ->
    [out_of_time] El tiempo del lote se agotó antes de empezar este elemento. Envíelo otra vez, en un lote más pequeño.
   *[answer_too_large] La respuesta del lote llegó a su tamaño máximo antes de empezar este elemento. Envíelo otra vez, en otro lote.
}
problems-forecast-paused = El servicio meteorológico no quiere consultas por un tiempo. Envíe el tiempo hora por hora en lugar del sitio, o repita la solicitud después de los segundos que indica Retry-After.

## The pages of problems

problems-page-status = Estado { $status }, código
problems-page-fields = Códigos de campos individuales
