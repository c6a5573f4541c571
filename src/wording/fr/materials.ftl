### What to load, how long it takes and what it costs.

## The cuts: their depth, what they come near to, blade and rod.

materials-cut-through-slab = { $place ->
    [lead_in] Le trait de scie du câble de liaison
   *[loop] Un trait de scie
} de { $slot_depth } de profondeur traverse la dalle. Ne sciez pas. Prenez un fil plus mince, moins de tours ou moins de recouvrement, de sorte que { $enough } suffisent.
materials-cut-weakens-slab = { $place ->
    [lead_in] Le trait de scie du câble de liaison
   *[loop] Un trait de scie
} de { $slot_depth } est plus profond que le tiers de la dalle et l'affaiblit. Prenez moins de tours, un fil plus mince ou moins de recouvrement, de sorte que { $enough } suffisent, ou consultez la personne qui répond de la dalle.
materials-steel-near-cut = { $place ->
    [lead_in] Le trait de scie du câble de liaison
   *[loop] Un trait de scie
} de { $slot_depth } arrive à moins de { $steel_clearance } de l'acier, qui se trouve à { $steel_depth } de profondeur. Ne sciez pas aussi profond : ne coupez jamais l'acier. Prenez moins de tours, un fil plus mince ou moins de recouvrement, de sorte que { $enough } suffisent.
materials-no-blade-reaches = Aucune lame courante ne scie à { $slot_depth } de profondeur. Prenez moins de tours, un fil plus mince ou moins de recouvrement, de sorte que { $enough } suffisent.
materials-blade-too-small = Une lame de { $blade_diameter } n'atteint pas { $slot_depth } de profondeur. Prenez-en une de { $enough } : l'estimation compte avec celle-ci et son dépassement de { $run_out }.
materials-overrun-leaves-slab = Pour scier à pleine profondeur, la lame dépasse la boucle de { $reach }, et le bord est à { $edge_distance }. Percez les coins, prenez une lame plus petite ou finissez les extrémités au ciseau.
materials-rod-stands-out = Le fond de joint, haut de { $rod_height }, n'entre pas entre { $place ->
    [lead_in] la paire du câble de liaison
   *[loop] le fil
} et la surface finie du scellant. Prenez un fond de joint plus mince, ou sciez à { $needed_depth } de profondeur.

## Whether sealant can flow round what lies in a slot.

materials-fit-agency-minimum = { $agency } demande au moins { $agency_slot_width }. Sciez sur une largeur de { $advised_width }.
materials-fit-right = Le scellant a de la place tout autour, et pas plus qu'il n'en faut.
materials-fit-generous = Cela fonctionne, mais demande { $fraction ->
    [one_third] un tiers
    [one_half] la moitié
   *[other] { $share }
} de saignée en plus, donc de scellant, par rapport à { $advised_width }.

## The whole job: rod, wire, jackets, heat, joints, stock, and what is left out.

materials-pairs-apart = Les paires libres se couplent là où elles sont côte à côte : empilées sur 50 ft, de 0,9 %; entremêlées, de 3,6 %. Chacune est comptée dans sa propre saignée. Torsadez-les à raison de trois torsions par pied (dix par mètre), ou prenez des paires gainées, pour qu'elles en partagent une.
materials-corner-stands-alone = { $by ->
    [run_out] Les côtés continuent sur { $run_out }, au-delà des { $corner_cut } que la diagonale épargne,
   *[full_cut] Les côtés sont sciés jusqu'au bout du coin et une diagonale les traverse,
} si bien qu'un triangle de chaussée reste isolé à chaque coin et peut se détacher. { $by ->
    [run_out] Prenez une lame plus petite ou une coupe de coin plus longue, ou percez les coins.
   *[full_cut] Arrêtez les côtés à la diagonale, ou percez les coins.
}
materials-continuous-rod = Un fond de joint continu empêche le scellant d'entourer le fil. Prenez de courts morceaux, espacés.
materials-continuous-rod-freezes = Il gèle à cet endroit : l'eau qui suit le fond de joint soulève le scellant et le sort de la saignée.
materials-buried-at-steel = La boucle doit se trouver à { $cover } de profondeur et l'acier commence à { $steel_depth } : elle serait contre l'acier ou dessous, ce qui ôte une grande part du signal que produisent les véhicules. Attachez-la au-dessus de l'acier, avec { $enough } de béton par-dessus, ou abaissez l'acier à cet endroit.
materials-wire-loose = Rien ne retient le fil simple au fond : il remonte dans le scellant frais. Prenez de courts morceaux de fond de joint, ou précisez sur place ce qui le retient.
materials-rod-melts = Le scellant appliqué à chaud fait fondre le fond de joint en mousse ordinaire. Prenez-en un que sa fiche technique autorise à la température de la coulée.
materials-rod-not-needed = Une boucle gainée reste au fond d'elle-même : aucun fond de joint n'est compté pour elle.
materials-splice-forced = Une boucle avec son câble de liaison demande { $needed } d'un seul tenant, et aucun touret ne les contient. La boucle se termine dans une boîte de tirage à côté de la chaussée et y est épissée au câble de liaison, par une épissure soudée et scellée, jamais dans la saignée : les ensembles d'épissure et les boîtes sont sur la liste. Un touret plus long les évite.
materials-jacket-assumed = On suppose seulement qu'une boucle préformée entre dans sa saignée. Mesurez-la par-dessus la gaine, ou relevez cette mesure sur la fiche technique de la boucle, avant de scier la saignée.
materials-insulation-too-low = L'isolant supporte { $rating } et le scellant est coulé à { $pour } : il ramollirait et les fils se toucheraient. Prenez un fil et une gaine prévus pour la coulée, ou un scellant qui s'applique à froid.
materials-insulation-unknown = Personne n'a dit quelle température l'isolant et la gaine supportent. Cherchez cette valeur sur la fiche technique du fil : elle doit être au moins égale aux { $pour } de la coulée.
materials-joint-not-counted = Il y a un joint, et aucun passage n'est compté. Comptez les endroits où le fil traverse un joint ou une fissure, pour que les manchons soient chargés.
materials-no-stock-fits = Aucune boucle en stock ne mesure { $along_travel } x { $across_lane } avec { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
} et { $lead_in_length } de câble de liaison, réserve comprise. Commandez-la sur mesure, ou faites redimensionner les boucles de ce chantier d'après ce qui est en stock.
materials-suspended-slab = Traitez une dalle suspendue comme une dalle post-contrainte tant que des plans ou un balayage ne montrent pas le contraire : aucun trait de scie sans balayage et sans autorisation écrite de l'ingénieur. Ne déclarez le sciage approuvé qu'une fois que vous avez les deux.
materials-suspended-slab-approved = Gardez sur place le balayage et l'autorisation écrite de l'ingénieur, et ne sciez que là où ils le permettent et pas plus profond qu'ils ne le permettent.
materials-lead-in-unaccounted = { $rest } du câble de liaison ne sont ni dans un trait de scie ni dans un conduit, et rien n'est compté pour eux. Dites quelle longueur passe dans un trait de scie et quelle longueur passe dans un conduit.
materials-left-out = Non compté ici : { $left_out }.
materials-left-out-burial = l'excavation et ce qui est posé sur une boucle enfouie
materials-left-out-conduit = les heures de pose du conduit

## What to load: how each quantity comes about.

materials-blade = { $slot_width } de largeur et { $blade_diameter } de diamètre, pour { $saw_cut } de trait de scie jusqu'à { $slot_depth } de profondeur; à une extrémité qui doit avoir toute sa profondeur, la lame dépasse de { $run_out } : là où une bordure, une boîte ou un bord gêne, finissez au ciseau ou à la perceuse. { $charge ->
    [wear] Comptée au prix de la longueur sciée; emportez-en { $blades }, à raison de { $blade_life } chacune.
    [owned] Celle de l'équipe, qui ne s'achète pas; une lame scie { $blade_life }.
   *[bought] Une lame scie { $blade_life }.
}
materials-preformed-loop = { $label } : { $along_travel } x { $across_lane }, { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
}, avec { $lead_in_length } de câble de liaison{ $supply ->
    [in_stock] , en stock
    [in_stock_longer] , en stock; coupez le câble de liaison à { $lead_in_needed } au détecteur
   *[made_to_size] ; commandez-la sur mesure
}.
materials-spools = Tourets de { $spool_length }.
materials-wire = { $wire_length } de fil { $gauge }, de { $over_insulation } sur l'isolant, en { $pieces ->
    [one] { $pieces } longueur
   *[other] { $pieces } longueurs
} : les tours, et deux fois chaque câble de liaison avec sa réserve, plus { $allowance } pour les coins et les extrémités; { $supply ->
    [on_spools] chaque longueur tirée d'un seul touret, là où un touret la contient
   *[by_length] chaque longueur sans épissure
}.
materials-rod = { $form-label } : fond de joint de { $rod_diameter } de diamètre, { $rod_length } en tout.
materials-conduit = Conduit de { $size } pour le parcours des câbles de liaison jusqu'au détecteur, { $runs ->
    [one] { $runs } parcours
   *[other] { $runs } parcours
}, { $cables ->
    [one] un câble dans chacun, qui le remplit au plus à { $fill }
   *[other] jusqu'à { $cables } câbles dans chacun, qui le remplissent au plus à { $fill }
}; rendu étanche à l'eau aux deux bouts.
materials-home-run-cable = { $cable_length } de câble { $gauge } de la boîte de tirage au détecteur, réserve à cet endroit comprise, plus { $allowance } pour les coins et les extrémités.
materials-splice-kits = { $to ->
    [home_run] Un par paire, pour ses deux épissures avec le câble principal
   *[next_piece] Un partout où une paire continue d'un autre touret, pour ses deux épissures
} : soudées et scellées, dans la boîte de tirage et jamais dans la saignée.
materials-pull-boxes = Une là où les paires sortent de la chaussée et sont épissées, et une à chaque épissure d'un parcours plus long.
materials-sleeves = Un à chaque joint ou fissure, { $each_side } de chaque côté, avec du fil lâche à l'intérieur.
materials-sealant = { $sealant_net } de saignée, moins le fil et le fond de joint, et { $waste_percent } de perte{ $pavement ->
    [concrete] ; gris, pour se confondre avec le béton
    [asphalt] ; noir, pour se confondre avec l'asphalte
   *[other] {""}
}{ $supply ->
    [in_cartridges] ; cartouches de { $cartridge }
   *[by_volume] {""}
}.
materials-nozzles = Une par boucle : ce qui reste dans une buse durcit pendant la pose de la boucle suivante.
materials-sand = Sable de la couleur { $pavement ->
    [concrete] du béton
   *[asphalt] de l'asphalte
} sur le scellant frais, pour qu'il se confonde avec la surface.
materials-bedding-sand = Sable sans pierres dans une tranchée de { $trench_width } de largeur, { $bed_under } sous la boucle et { $bed_over } par-dessus, le long de { $path }.
materials-ties = { $ties } attaches de plastique, une tous les { $tie_spacing } et une à chaque coin; aucune attache en fil métallique, qui forme un tour à elle seule.
materials-burial-sand = Creusez à { $trench_depth } de profondeur, posez la boucle à plat sur { $bed_under } de sable et couvrez-la de { $bed_over } de plus avant de remettre le remblai : la boucle se trouve à { $cover } sous la surface. Compactez à la main au-dessus d'elle, et posez un ruban avertisseur dans le remblai.
materials-burial-blocks = Posez la boucle avant les pavés, à plat dans le lit de pose avec { $bed_under } de celui-ci dessous, de sorte qu'elle se trouve à { $cover } sous le dessus des pavés. Aucune arête de pavé ni aucun vibrateur ne doit reposer sur elle avant que les pavés soient en place.
materials-burial-asphalt = Posez la boucle sur la couche compactée avant la dernière couche, fixez-la à plat tous les { $tie_spacing } et couvrez-la à la main d'enrobé fin : elle se trouve à { $cover } sous la surface. La gaine doit supporter la chaleur de l'enrobé, et aucun rouleau ne doit passer sur elle à nu.
materials-burial-concrete = Attachez la boucle dans le coffrage avant la coulée, tous les { $tie_spacing } avec des attaches de plastique, à plat et aussi loin que possible au-dessus de l'acier : { $cover } de béton viennent par-dessus. Mesurez-la encore une fois avant l'arrivée du camion; personne ne doit promener un vibrateur le long d'elle.
materials-terminations = Deux extrémités par boucle, étamées ou soudées, et scellées.
materials-line-device = Une barrière photoélectrique ou un appareil semblable, là où un véhicule peut se trouver entre deux boucles sans être détecté.

## How long each step takes: phrases.

materials-work-once = une fois pour le chantier
materials-work-per-corner = { $pieces ->
    [one] { $pieces } coin
   *[other] { $pieces } coins
}, { $each } chacun
materials-work-per-pull = { $pieces ->
    [one] { $pieces } tirage
   *[other] { $pieces } tirages
}, { $each } chacun
materials-work-per-loop = { $pieces ->
    [one] { $pieces } boucle
   *[other] { $pieces } boucles
}, { $each } chacune
materials-work-per-cut = { $saw_cut } de trait de scie

## What it costs, and the same job in each construction.

materials-unpriced = Le total laisse de côté ce qui n'a pas encore de prix : { $unpriced }. Donnez aussi ces prix.
materials-unpriced-name = { $unpriced }
materials-unpriced-item = { $item }
materials-unpriced-labour = main-d'œuvre
materials-unpriced-spool = Le fil sur touret est compté sous le numéro du touret : donnez-lui-en un.
materials-compare-hand-wound = Fil tiré du touret, { $pulls ->
    [one] { $pulls } tirage
   *[other] { $pulls } tirages
}, retenu par du fond de joint : rien à attendre, et toutes les dimensions. Le fil n'a pas de gaine.
materials-compare-saw-cut = { $pulls ->
    [one] { $pulls } tirage
   *[other] { $pulls } tirages
}, un par boucle, et pas de fond de joint; la gaine protège le fil. La boucle doit être en stock ou faite sur mesure.
materials-compare-direct-burial = Ni trait de scie ni scellant, mais seulement avant la pose de la surface; le lit et le recouvrement s'y ajoutent, et le câble de liaison dans un conduit.
materials-compare-unpriced = Sa somme laisse de côté ce qui n'a pas de prix : { $unpriced }.

materials-pooled-line = { $exact }{ $unit ->
    [cartridge] {" "}cartouches
    [spool] {" "}tourets
    [each] {""}
    [lot] {""}
    [ft3] {" "}ft³
    [m3] {" "}m³
   *[other] {" "}{ $unit }
} en tout pour { $jobs ->
    [one] { $jobs } chantier
   *[other] { $jobs } chantiers
}, arrondi une seule fois vers le haut{ $pavement ->
    [concrete] ; gris, pour se confondre avec le béton
    [asphalt] ; noir, pour se confondre avec l'asphalte
   *[other] {""}
}.
# It follows the one above, on sealant.
materials-pooled-sealant = { $sealant-label }.
materials-pooled-bill = Une seule liste pour { $jobs ->
    [one] { $jobs } chantier
   *[other] { $jobs } chantiers
} : ce qui est pareil est additionné et arrondi une seule fois.{ $prices ->
    [differ] {" "}Les chantiers ont des prix différents, elle n'a donc pas de somme : donnez une seule liste de prix pour tous.
   *[other] {""}
}{ $left_out ->
    [0] {""}
    [one] {" "}Elle laisse de côté { $left_out } chantier sans liste.
   *[other] {" "}Elle laisse de côté { $left_out } chantiers sans liste.
}

## Why a default was taken.

materials-usual-width = De la place pour que le scellant entoure ce qui s'y trouve, et pas plus; jamais moins que ce que demande l'organisme nommé.
materials-depth-gives-way = Ce que demandent les fils, le recouvrement et la finition : la profondeur habituelle cède devant la dalle et l'acier.
materials-usual-depth = La profondeur habituelle pour cette construction; plus grande là où les fils, le recouvrement et la finition le demandent.
materials-lead-in-width = Celle de la saignée de la boucle; plus grande là où la paire ou l'organisme nommé le demande.
materials-lead-in-depth = Celle de la saignée de la boucle; plus grande là où la paire le demande.
materials-lead-in-cover = Celui qui couvre la boucle.
materials-usual-corner = En diagonale là où la boucle a des coupes de coin, sinon à angle droit.
materials-usual-rod-diameter = 1/16 in de plus que sa saignée, pour qu'il soit bien serré.
materials-flat-jacket = Sans le diamètre extérieur, la gaine est supposée à plat : un fil de largeur, autant de fils de hauteur que de tours, rien de plus.
materials-usual-waste = Du scellant reste dans les cartouches, déborde et se répand.
materials-usual-blade = Une lame habituelle; elle détermine jusqu'où les traits de scie se prolongent pour avoir toute leur profondeur.
materials-usual-blade-life = Aucun chiffre public n'existe sur la durée de vie d'une lame; donnez le vôtre.
materials-usual-allowance = On tire un peu plus de fil que la mesure : les coins, les extrémités et ce qui est coupé.
materials-lead-in-to-box = Le câble principal commence dans une boîte au bord de la chaussée; dites quelle longueur a le trait de scie si la boîte est plus loin.
materials-usual-core = De la place pour que le fil se courbe.
materials-usual-cartridge = Une cartouche d'un quart de gallon américain.
materials-usual-finish = Au ras de la chaussée; les organismes demandent du ras jusqu'à 1/8 in plus bas.
materials-usual-rod-form = De courts morceaux retiennent le fil simple au fond et laissent le scellant l'entourer; une boucle gainée n'en reçoit pas.
materials-agency-asks = Ce que demande un organisme.
materials-no-public-pace = Aucun chiffre public n'existe sur le rythme d'une équipe; donnez le vôtre.
materials-usual-construction = Ce que demande la surface.
materials-usual-corner-cut = La coupe de coin habituelle, car des coins en diagonale sont demandés.
materials-lead-in-in-slot = Ce qui n'est pas dans un conduit est dans un trait de scie; dites quelle longueur a le trait de scie s'il s'arrête avant le détecteur.
materials-lead-in-to-edge = Le chemin le plus court jusqu'au bord de la chaussée du côté du détecteur; au-delà, un conduit. Dites quelle longueur a le trait de scie s'il va plus loin.
materials-lead-in-in-conduit = Ce qui n'est dans aucun trait de scie est dans un conduit.
materials-buried-lead-in = Le câble de liaison d'une boucle enfouie est dans un conduit sur tout le parcours.
