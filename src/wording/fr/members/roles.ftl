### The labels and descriptions of the closed lists of `practice::roles`: a message for each member, `List-code`.

## Role

Role-exit = Sortie
    .description = À l'intérieur de l'ouverture : un véhicule qui part demande l'ouverture de la barrière.
Role-obstruction_outside = Obstruction, extérieur
    .description = Juste à l'extérieur de la barrière : un véhicule sur elle tient la barrière ouverte.
Role-obstruction_inside = Obstruction, intérieur
    .description = Juste à l'intérieur de la barrière : un véhicule sur elle tient la barrière ouverte.
Role-between_leaves = Entre les vantaux
    .description = Dans le balayage des vantaux battants : un véhicule à cet endroit retient les vantaux où ils sont.
Role-arming = Activation
    .description = Avant une borne à billets ou à cartes : un véhicule sur elle réveille la borne.
Role-closing = Fermeture
    .description = Sous une lisse de barrière : un véhicule sur elle tient la lisse levée, et en la quittant laisse tomber la lisse.
Role-presence = Présence
    .description = Devant un guichet, une porte ou une ligne d'arrêt : un véhicule sur elle est signalé.
