### The labels and descriptions of the closed lists of `calculation::input::winding`: a message for each member, `List-code`.

## Shape

Shape-rectangle = Rectangle
    .description = Une cellule à quatre côtés.
Shape-quadrupole = Quadripôle
    .description = Deux cellules côte à côte dont les courants s'ajoutent dans la saignée centrale : elle détecte les deux-roues au centre et perd de la hauteur.
