### Which loops an opening needs.

## Whether a loop can be built

sizing-no-working-turns = Aucun nombre de tours n'amène cette boucle, avec ce câble de liaison, entièrement dans la plage où le détecteur s'accorde. Raccourcissez le câble de liaison, prenez du fil plus gros ou choisissez un détecteur de plage plus large.
sizing-near-least-inductance = Une fois construite, elle peut mesurer { $as_built_low }, près des { $inductance_min } que le détecteur exige au moins pour s'accorder; un tour de plus n'y change rien de bon. Mesurez avant de refermer.

## Which vehicles it sees

sizing-side-by-side = Une seule boucle sur toute l'ouverture est trop peu sensible : { $loops } boucles se la partagent, chacune sur son propre canal d'un détecteur qui les balaie tour à tour, les sorties en parallèle, les voisines bobinées en sens opposés.
sizing-leaves-pass-over = Les vantaux passent au-dessus de cette boucle pendant leur mouvement, et elle les détecte. Raccordez-la à l'entrée de la motorisation du portail qui n'est surveillée que lorsque les vantaux sont immobiles, entièrement ouverts ou entièrement fermés; pendant leur mouvement, un autre dispositif doit détecter un véhicule qui entre.
sizing-vehicle-too-wide = Un véhicule de type { $vehicle } mesure { $vehicle_width } de largeur et ne passe pas par une ouverture de { $opening_width }. Vérifiez la largeur ou laissez ce véhicule de côté.
sizing-vehicle-not-seen = Un véhicule de type { $vehicle } modifie cette boucle de { $change }, et le détecteur commute à { $threshold } : il n'est pas détecté.
sizing-vehicle-not-seen-at-edge = Tout contre le bord ou au-dessus d'un intervalle, un véhicule de type { $vehicle } ne modifie les boucles que de { $least_change_across }, et le détecteur commute à { $threshold } : il n'y est pas détecté. Laissez les boucles s'approcher davantage du bord ou rétrécissez la voie avec des poteaux.
sizing-arm-falls-early = Quand le détecteur relâche un véhicule de type { $vehicle } à { $threshold }, l'arrière du véhicule est { $tail_from_arm } { $place ->
    [short] avant
   *[past] après
} la ligne de la lisse de barrière, et il faut qu'il l'ait dépassée de { $wanted } : la lisse lui tomberait dessus. Réglez un cran plus fin si le détecteur en a un, prenez un côté plus long dans le sens de la marche ou, là où les véhicules passent dans un seul sens, posez la boucle plus loin dans ce sens.
sizing-drops-out = Le détecteur relâche un véhicule de type { $vehicle } avant que son arrière ait atteint la boucle. Réglez une sensibilité plus fine, allongez la boucle dans le sens de la marche ou ajoutez-en une seconde derrière elle.
sizing-thin-margin = Un véhicule de type { $vehicle } modifie cette boucle de { $least_change_across }{ $place ->
    [hardest] {" "}à son endroit le plus difficile
   *[anywhere] {""}
}, moins du double des { $threshold } auxquels le détecteur commute; la chaussée, l'âge et les intempéries en prennent leur part.
# It follows the three above that speak of too small a change.
sizing-finer-or-shorter = Réglez une sensibilité plus fine si le détecteur en a une, raccourcissez le câble de liaison ou répartissez l'ouverture entre plus de voies.
sizing-blind-strip = Sur { $blind_strip } de la voie, { $place ->
    [centre] son milieu compris
   *[aside] hors de son milieu
}, un véhicule de type { $vehicle } n'est pas détecté : seuls les fils posés dans le sens de la marche se couplent avec lui. { $cure ->
    [other_device] L'autre dispositif doit le détecter à cet endroit.
    [line] Tracez la ligne sur laquelle rouler ou laissez un autre dispositif détecter les deux-roues.
   *[line_or_quadrupole] Tracez la ligne sur laquelle rouler, prenez un quadripôle ou laissez un autre dispositif détecter les deux-roues.
}
sizing-sensitivity = Réglez { $channels ->
    [every] chaque canal
   *[this] ce canal
} au cran qui commute à { $threshold }. Le plus difficile à détecter : { $hardest }.

## Where the loops lie

sizing-the-loop = { $role-code ->
    [exit] la boucle de sortie
    [obstruction_outside] la boucle d'obstruction extérieure
    [obstruction_inside] la boucle d'obstruction intérieure
    [between_leaves] la boucle entre les vantaux
    [arming] la boucle d'activation
    [closing] la boucle de fermeture
   *[presence] la boucle de présence
}
sizing-leaf-seen = À { $clearance }, le vantail { $state ->
    [closed] fermé
    [open] ouvert
   *[moving] en mouvement
} modifie { sizing-the-loop } de { $change_by_leaf }, plus de la moitié de ce à quoi le détecteur commute. { $place ->
    [decided] Changez ce qui a été décidé de son emplacement.
    [device_helps] Si un autre dispositif surveille la ligne du portail, les boucles peuvent être plus éloignées.
   *[none] Il n'y a pas de meilleur emplacement pour elle.
} Mettez le détecteur sous tension portail fermé et prouvez sur place, portail fermé, ouvert et en mouvement, que le vantail ne provoque aucune détection.
sizing-leaf-clearance = Gardez les côtés de toutes les boucles à { $clearance } ou plus du vantail métallique : { $state ->
    [closed] fermé
    [open] ouvert
   *[moving] en mouvement
}, il modifie { sizing-the-loop } de { $change_by_leaf }, moins de la moitié de ce à quoi le détecteur commute. Le câble de liaison traverse la ligne du portail torsadé ou gainé : dans un conduit sous un rail ou une semelle, ailleurs dans sa saignée.
sizing-leaf-holds-the-gate = À { $clearance }, le vantail { $state ->
    [closed] fermé
    [open] ouvert
   *[moving] en mouvement
} modifie { sizing-the-loop } de { $change_by_leaf }, et le détecteur commute à cette valeur : le portail s'actionnerait ou se retiendrait lui-même. Réduisez la boucle, posez-la plus loin du vantail ou laissez un autre dispositif faire son travail.
sizing-edge-setback-reduced = L'ouverture est étroite : la boucle reste à { $edge_setback } de chaque bord au lieu de { $usual_edge_setback }. Vérifiez que les poteaux métalliques et la voie voisine ne sont pas détectés.
sizing-exit-time-unknown = Dites à quelle vitesse arrivent les conducteurs et combien de temps le portail met à s'ouvrir, et la boucle de sortie sera placée de façon que le portail soit ouvert à leur arrivée. Sans ces deux données, elle est aussi près que le permettent les autres boucles, et les conducteurs attendent.
sizing-exit-reopens = Un véhicule qui entre traverse la boucle de sortie et rouvre le portail. Réglez la minuterie de fermeture à { $close_timer_min } ou plus : c'est le temps que met un véhicule au pas pour atteindre l'endroit où il est retenu.
sizing-drive-too-short = L'allée mesure { $drive_length } de longueur, et la boucle de sortie finit à { $needed } du portail. Laissez la boucle de sortie de côté et ouvrez à ceux qui sortent par un autre dispositif (un bouton, un émetteur).
sizing-exit-far-away = Pour que le portail soit ouvert à l'arrivée, la boucle de sortie devrait être à { $run_up }. Elle est à { $distance_from_barrier }, et un conducteur attend environ { $wait }. Une approche à { $serving_speed }, une motorisation plus rapide ou un second dispositif sur le chemin (une autre boucle, un émetteur) y remédie.
sizing-exit-beyond-lead-in = { $row ->
    [row] Les boucles ({ $role }) forment une rangée de { $row_width } de milieu à milieu, à { $distance_from_barrier } de la ligne,
   *[single] À { $distance_from_barrier } du portail se trouve { sizing-the-loop },
} et le câble de liaison mesure { $lead_in_length } de longueur. Il est prévu avec { $order_length } : commandez cela d'une seule pièce.
sizing-nothing-holds-the-gate = Aucune de ces boucles n'empêche la barrière de se fermer sur un véhicule. Ajoutez une boucle d'obstruction à l'extérieur et une à l'intérieur (avec une lisse de barrière, une boucle de fermeture), ou assurez-vous qu'un autre dispositif le fait.
sizing-leaves-swing-inwards = On suppose que les vantaux s'ouvrent vers l'intérieur{ $hinges ->
    [one_side] , les gonds à gauche en entrant
   *[both_sides] {""}
}. Si les vantaux s'ouvrent vers l'extérieur, lisez intérieur au lieu d'extérieur, et inversement{ $hinges ->
    [one_side] ; si les gonds sont à droite, lisez droite au lieu de gauche
   *[both_sides] {""}
}.
sizing-pair-advised = Un seul vantail de { $leaf } balaie un quart de cercle de la même longueur, et les boucles qui s'y trouvent détectent les véhicules hauts avec une faible marge. À partir de { $longest }, une paire de vantaux convient mieux : elle balaie deux fois moins loin.
sizing-between-leaves-missing = Ajoutez une boucle entre les vantaux : sans elle, aucune boucle ne détecte un véhicule dans le balayage d'un vantail, et le vantail se ferme sur lui.
sizing-between-leaves-beyond-sweep = Le vantail balaie { $sweep } vers l'intérieur, et la boucle entre les vantaux, telle qu'elle a été décidée, est au-delà : rien ne détecte un véhicule dans le balayage, et le vantail se ferme sur lui. Décidez d'une distance plus courte ou laissez la distance ouverte.
sizing-no-leaf-sweeps = Cette barrière n'a pas de vantaux qui balaient. Une boucle d'obstruction de chaque côté fait ce que ferait une boucle entre les vantaux.
sizing-closing-under-leaf = Une boucle de fermeture est à cheval sur la ligne de la barrière, et sous un vantail métallique elle détecte le vantail lui-même. Posez plutôt ici une boucle d'obstruction à l'extérieur et une à l'intérieur.
sizing-one-side-only = Les boucles qui retiennent la barrière ne sont que d'un côté : un véhicule qui s'arrête de l'autre côté n'est pas détecté. Ajoutez une boucle d'obstruction de ce côté.
sizing-unseen-stretch = Entre deux boucles qui retiennent le portail, un véhicule de { $unseen_stretch } reste sans être détecté : { $vehicle ->
    [car] une voiture
    [short_car] une voiture courte
   *[two_wheeler] un véhicule de type { $rider }
} y tient. { $watched ->
    [yes] L'autre dispositif qui surveille la ligne du portail doit le détecter à cet endroit.
   *[no] Faites surveiller la ligne du portail par un autre dispositif (un faisceau en travers).
}
sizing-kept-loop = { $kept-code ->
    [exit] la boucle de sortie
    [obstruction_outside] la boucle d'obstruction extérieure
    [obstruction_inside] la boucle d'obstruction intérieure
    [between_leaves] la boucle entre les vantaux
    [arming] la boucle d'activation
    [closing] la boucle de fermeture
   *[presence] la boucle de présence
}
sizing-left-out-loop = { $left_out-code ->
    [exit] boucle de sortie
    [obstruction_outside] boucle d'obstruction extérieure
    [obstruction_inside] boucle d'obstruction intérieure
    [between_leaves] boucle entre les vantaux
    [arming] boucle d'activation
    [closing] boucle de fermeture
   *[presence] boucle de présence
}
sizing-same-place = La { sizing-left-out-loop } serait dans une même saignée avec { sizing-kept-loop }. { $cure ->
    [move] Changez la distance ou le côté qui a été décidé pour l'une des deux.
   *[leave_out] Une seule boucle sert aux deux fins : laissez de côté la { sizing-left-out-loop }.
}
sizing-scanning-unit = Les boucles { $loops } se couplent jusqu'à { $coupling } et n'ont pas de meilleur emplacement. Mettez-les sur un seul détecteur qui balaie ses canaux tour à tour, afin qu'une seule soit active à la fois; sur des détecteurs séparés, donnez-leur des fréquences aussi éloignées que le permettent les commutateurs.
sizing-loop-mark = { $mark }
sizing-road-holds-the-gate = La circulation d'une route qui passe sur la boucle extérieure ou près d'elle retient le portail : gardez la boucle hors de la route.
sizing-saw-plan = Coupez chaque boucle séparément, avec ses quatre côtés; laissez { $gap } de chaussée entière entre les saignées voisines et ne posez jamais deux boucles dans une même saignée. Bobinez la première dans le sens horaire, la suivante dans le sens antihoraire, et ainsi de suite. { $slots ->
    [row] Sortez chaque paire de { $own_slot }, hors des saignées des boucles, jusque dans une seule saignée de { $shared_slot } à côté de la rangée.
    [shared] Sortez chaque paire de { $own_slot }, hors des saignées des boucles, jusque dans une seule saignée de { $shared_slot } que partagent les paires de son détecteur.
    [own] Sortez chaque paire dans sa propre saignée; jamais deux dans une même saignée.
   *[none] {""}
}

## Other loops for the same role

sizing-alternative = { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
}, { $cost } { $cost_kind ->
    [more_saw_cut] de trait de scie en plus
    [less_saw_cut] de trait de scie en moins
    [more_wire] de fil en plus
   *[less_wire] de fil en moins
} par boucle; le métal est détecté { $height ->
    [equal] à la même hauteur
    [higher] { $height_change } plus haut
   *[lower] { $height_change } plus bas
}.
sizing-alternative-cannot-be-built = Aucun de ses nombres de tours ne convient à ce détecteur et à cette saignée.
sizing-quadrupole-offered = Un quadripôle de la même taille change de { $change_at_centre } sous un véhicule de type { $vehicle } en son milieu, là où le rectangle change de { $change_at_centre_of_rectangle }. Il coûte de la hauteur : le métal plat est détecté jusqu'à { $seen_height } au lieu de { $seen_height_of_rectangle }.
sizing-stock-fits = { $along_travel } x { $across_lane } avec { $lead_in_length } de câble de liaison : { $proof ->
    [tunes] entre dans l'ouverture, atteint le détecteur et s'accorde
   *[turns_unknown] entre dans l'ouverture et atteint le détecteur; demandez combien de tours elle a
}.
sizing-no-stock-fits = Aucune boucle en stock ne convient.
sizing-nearest-in-stock = La plus proche, { $sku }, { $reason ->
    [other_construction] est faite pour un autre mode de pose
    [not_as_decided] n'est pas comme il a été décidé
    [too_short] est trop courte dans le sens de la marche
    [too_long] est trop longue dans le sens de la marche
    [too_wide] est trop large pour l'ouverture
    [too_narrow] laisse une trop grande partie de l'ouverture non détectée
    [lead_in_too_short] a un câble de liaison trop court
   *[does_not_tune_or_see] ne s'accorde pas avec ce détecteur et ce câble de liaison, ou ne détecte pas tous les véhicules
}.
sizing-order-instead = Commandez { $along_travel } x { $across_lane }, { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
}, { $construction }, avec { $lead_in_length } de câble de liaison.

## The lead-ins

sizing-way-of-pair = { $slot ->
    [none] sort { $unit_side ->
        [left] à gauche
       *[right] à droite
    } en sortant
    [own] { $own_slot } dans sa propre saignée
    [row] { $own_slot } dans sa propre saignée, puis dans la saignée partagée de { $shared_slot } à côté de la rangée
   *[unit] { $own_slot } dans sa propre saignée, puis dans une saignée de { $shared_slot } avec d'autres paires
}{ $slot_end ->
    [at_edge] { " " }jusqu'au bord, { $unit_side ->
        [left] à gauche
       *[right] à droite
    } en sortant
    [before_edge] , qui finit { $from_edge } avant le bord, { $unit_side ->
        [left] à gauche
       *[right] à droite
    } en sortant
    [past_edge] , qui va { $from_edge } au-delà du bord, { $unit_side ->
        [left] à gauche
       *[right] à droite
    } en sortant
   *[no_slot] {""}
}{ $goes_on ->
    [home_run] , là dans une boîte de tirage; de la boîte, { $cable_length } de câble de { $gauge }, dont { $in_conduit } dans un conduit
    [home_run_bare] , là dans une boîte de tirage; de la boîte, { $cable_length } de câble de { $gauge }
    [conduit] , { $in_conduit } dans un conduit
   *[slot] {""}
}, jusqu'au détecteur { $unit }
sizing-slot-before-edge = La saignée de la paire finit { $from_edge } avant le bord de la chaussée, et il ne peut pas y avoir de conduit dans la dalle. { $field ->
    [length] Le câble de liaison est trop court pour son emplacement : jusqu'au bord seulement, il lui faut { $needed }.
    [in_conduit] Posez-en moins dans un conduit, de façon qu'il reste { $needed } pour la saignée, ou laissez ouverte la longueur dans un conduit.
   *[in_slot] Posez-en { $needed } ou plus dans la saignée, ou laissez cette longueur ouverte, ce qui mène la saignée jusqu'au bord.
}

sizing-jacketed-pair = La paire vient torsadée dans sa gaine, son inductance est donc fixe; amenez-la au détecteur sans aucune épissure dans la chaussée.
sizing-lead-in-conduit = Amenez le câble de liaison dans un conduit du bord de la boucle au détecteur, scellé contre l'eau aux deux bouts.
sizing-twist-the-tails = Torsadez les deux bouts d'au moins 3 tours par pied (10 par mètre) sur tout le parcours. Lâche, la paire a environ { $untwisted-number } au lieu de { $twisted }, soit { $gained } de plus sur { $lead_in_length }, et cela change chaque fois que les fils bougent; elle capte aussi du ronflement et détecte les véhicules qui la traversent.

## The site

sizing-nothing-to-saw = { $surface-code ->
    [pavers] On ne scie pas de pavés pour une boucle : elle bougerait avec eux et se romprait. Prenez une boucle préformée à enfouissement direct, posée dans le lit avant les pavés.
    [gravel] Le gravier ne tient pas un trait de scie. Prenez une boucle préformée à enfouissement direct, dans une tranchée avec un lit de sable.
    [soil] La terre ne tient pas un trait de scie. Prenez une boucle préformée à enfouissement direct, dans une tranchée avec un lit de sable.
   *[other] Il n'y a rien à scier avant que le revêtement soit posé. Prenez une boucle préformée à enfouissement direct, ou revenez avec la scie une fois qu'il aura pris.
}
sizing-burial-in-finished-pavement = Une boucle à enfouissement direct va sous un revêtement qui reste à poser. Dans une chaussée finie, prenez une boucle préformée dans un trait de scie, ou bobinez-en une sur place.
sizing-reinforcing-mesh = Repérez l'acier et gardez la boucle au moins 2 in (50 mm) au-dessus; ne le coupez jamais. Il prend de l'inductance, ce qui est compté comme si l'acier était une tôle pleine, et de la hauteur, ce qui n'est pas compté : prouvez sur place que le véhicule le plus haut est détecté.
sizing-cut-approved = Gardez sur place le balayage de détection et l'autorisation écrite de l'ingénieur, marquez les câbles de précontrainte et l'acier sur la chaussée, et ne coupez que là où ils le permettent et pas plus profond.
sizing-post-tensioned-slab = Ne sciez pas une dalle post-contrainte sans un balayage de détection des câbles de précontrainte et sans l'autorisation écrite de l'ingénieur. Un détecteur posé en surface ou d'un autre type évite le trait de scie.
sizing-bridge-deck = Traitez le tablier comme post-contraint tant que des plans ou un balayage de détection n'ont pas montré le contraire : aucune coupe sans l'autorisation écrite de l'ingénieur. Une boucle préformée au-dessus de l'acier supérieur, avant la couche de surface, évite la coupe.
sizing-place-before-the-pour = Fixez l'emplacement de la boucle avec l'ingénieur avant la coulée; gardez-la au-dessus de l'acier supérieur et à l'écart des câbles de précontrainte.
sizing-snow-melt-cable = Faites repérer, marquer et mettre hors tension les câbles chauffants avant toute coupe; une scie qui en traverse un est sous tension. Posez la boucle entre les parcours et attendez-vous à du ronflement pendant qu'ils chauffent.
sizing-snow-melt-pipe = Faites repérer et marquer les tuyaux chauffants avant toute coupe et réglez la scie au-dessus d'eux.
sizing-overhead-power-line = Le ronflement de la ligne peut perturber le détecteur : gardez le câble de liaison torsadé et en deçà de la ligne, et choisissez la fréquence sur place.
sizing-buried-power-line = Faites repérer et marquer la ligne avant toute coupe ou tranchée, et traversez-la à angle droit.
sizing-adjacent-traffic = Les véhicules de la voie voisine ne doivent pas être détectés : c'est pourquoi la boucle garde son retrait du bord. Prouvez-le avec de la circulation dans cette voie avant de partir.
sizing-next-lane = Dans la voie voisine, un véhicule de type { $vehicle } passe à { $distance } du fil et modifie la boucle de { $change }; le détecteur commute à { $threshold }{ $outcome ->
    [seen] {" "}: il est détecté. Gardez une bande plus large au bord
   *[nearly] , moins du double. Prouvez-le avec de la circulation dans cette voie
}.
sizing-freezing-climate = Remplissez la saignée complètement et à sec : l'eau qui y reste gèle et soulève le scellant. Mettez des attaches en morceaux courts, jamais continues.
sizing-pavement-joint = Éloignez la boucle du joint si vous le pouvez. Là où le fil doit le traverser, gainez-le sur 4 in (100 mm) de chaque côté et laissez du mou à l'intérieur.
sizing-cracked-pavement-hand-wound = Le fil simple se rompt dans une chaussée qui bouge. Une boucle gainée (préformée, dans un trait de scie) dure plus longtemps ici.
sizing-cracked-pavement-jacketed = La boucle gainée absorbe une partie du mouvement; scellez aussi les fissures, sinon l'eau suit la saignée.
sizing-old-loop-cut = Coupez la nouvelle saignée à côté de l'ancienne, à au moins une largeur de main, et laissez l'ancien fil hors tension et débranché : un ancien tour fermé vole de la sensibilité.

## The search

sizing-search-bounded = La recherche a été arrêtée avant la fin, car le travail demande plus qu'une réponse ne peut calculer. Ces boucles sont les meilleures trouvées jusqu'ici, et d'autres peuvent mieux convenir. Pour une recherche complète, demandez à la fois moins de boucles, de véhicules, de crans de sensibilité ou d'articles en stock.

## Why a default was taken

sizing-usual-roles = Ce qu'il faut d'ordinaire à cette barrière.
sizing-laid-over-the-loop = Ce revêtement se pose par-dessus la boucle.
sizing-jacketed-lasts-longer = Une boucle gainée dure plus longtemps dans une chaussée qui bouge.
sizing-stock-is-preformed = Les boucles en stock sont préformées.
sizing-surface-is-sawn = Un revêtement fini se scie, et le fil est à portée de main.
sizing-usual-burial-cover = La profondeur habituelle d'une boucle sous ce revêtement.
sizing-burial-cover-over-steel = Pour que la boucle soit au-dessus de l'acier.
