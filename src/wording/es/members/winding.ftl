### The labels and descriptions of the closed lists of `calculation::input::winding`: a message for each member, `List-code`.

## Shape

Shape-rectangle = Rectángulo
    .description = Una celda de cuatro lados.
Shape-quadrupole = Cuadrupolo
    .description = Dos celdas lado a lado cuyas corrientes se suman en la ranura central: detecta vehículos de dos ruedas en el centro y pierde altura.
