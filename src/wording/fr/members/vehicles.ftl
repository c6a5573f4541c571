### The labels and descriptions of the closed lists of `practice::vehicles`: a message for each member, `List-code`.

## VehicleClass

VehicleClass-passenger_car = Voiture
    .description = Une voiture, d'environ 4,5 m de long.
VehicleClass-pickup = Camionnette ou fourgon
    .description = Une camionnette ou un fourgon, d'environ 5,3 m de long.
VehicleClass-high_bed_truck = Camion à plateau haut
    .description = Un camion porteur dont le plateau est de 0,9 à 1,2 m au-dessus de la chaussée.
VehicleClass-tractor_trailer = Tracteur et remorque
    .description = Un tracteur routier avec une remorque dont le plancher est à 1,2 m au-dessus de la chaussée, et le vide au timon.
VehicleClass-small_motorcycle = Petite moto
    .description = Une petite moto, un cyclomoteur ou un scooter.
VehicleClass-large_motorcycle = Grosse moto
    .description = Une grosse moto.
VehicleClass-bicycle = Vélo
    .description = Un vélo à jantes métalliques.
VehicleClass-car_with_trailer = Voiture avec remorque
    .description = Une voiture suivie d'une remorque légère à un essieu, et le vide au timon.
VehicleClass-bus = Autobus
    .description = Un autobus ou un autocar, d'environ 12 m de long.
VehicleClass-forklift = Chariot élévateur
    .description = Un chariot élévateur, d'environ 2,3 m de long sans ses fourches, dont le dessous plein est bas.
VehicleClass-golf_cart = Voiturette de golf
    .description = Une voiturette de golf, d'environ 2,4 m de long, avec peu de métal dans son plancher.
