### The labels and descriptions of the closed lists of `practice::lead_ins`: a message for each member, `List-code`.

## LeadInPair

LeadInPair-twisted = Torsadée
    .description = Trois tours par pied (dix par mètre) ou plus sur tout le trajet : les paires d'un même détecteur peuvent aller dans une même saignée.
LeadInPair-jacketed = Gainée
    .description = Une paire torsadée dans une gaine, comme en ont les boucles préformées : les paires d'un même détecteur peuvent aller dans une même saignée.
LeadInPair-screened = Blindée
    .description = Une paire torsadée dans un blindage mis à la terre au détecteur : les paires de détecteurs différents peuvent aller dans une même saignée.
LeadInPair-loose = Libre
    .description = Deux fils côte à côte, ou torsadés moins de trois fois par pied : chaque paire va dans sa propre saignée, car de telles paires se couplent.
