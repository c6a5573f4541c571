### The labels and descriptions of the closed lists of `practice::vehicles`: a message for each member, `List-code`.

## VehicleClass

VehicleClass-passenger_car = Automóvil
    .description = Un auto, de unos 4.5 m de largo.
VehicleClass-pickup = Pickup o furgoneta
    .description = Una pickup o furgoneta, de unos 5.3 m de largo.
VehicleClass-high_bed_truck = Camión de caja alta
    .description = Un camión unitario cuya caja está de 0.9 a 1.2 m por encima del pavimento.
VehicleClass-tractor_trailer = Tractocamión y remolque
    .description = Un tractocamión con un remolque cuyo piso está a 1.2 m por encima del pavimento, y el hueco en la lanza.
VehicleClass-small_motorcycle = Motocicleta pequeña
    .description = Una motocicleta pequeña, un ciclomotor o un scooter.
VehicleClass-large_motorcycle = Motocicleta grande
    .description = Una motocicleta grande.
VehicleClass-bicycle = Bicicleta
    .description = Una bicicleta con rines metálicos.
VehicleClass-car_with_trailer = Auto con remolque
    .description = Un auto y detrás un remolque ligero de un eje, y el hueco en la lanza.
VehicleClass-bus = Autobús
    .description = Un autobús o autocar, de unos 12 m de largo.
VehicleClass-forklift = Montacargas
    .description = Un montacargas, de unos 2.3 m de largo sin sus horquillas, con la parte inferior maciza y baja.
VehicleClass-golf_cart = Carrito de golf
    .description = Un carrito de golf, de unos 2.4 m de largo, con poco metal en su piso.
