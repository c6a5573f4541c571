### The labels and descriptions of the closed lists of `practice::site`: a message for each member, `List-code`.

## Barrier

Barrier-slide_gate = Portail coulissant
    .description = Un vantail qui glisse le long de l'ouverture. Il se déplace dans son propre plan, les boucles peuvent donc être proches des deux côtés.
Barrier-swing_gate = Portail battant, un vantail
    .description = Un vantail aussi long que l'ouverture. Il balaye un quart de cercle du côté intérieur.
Barrier-swing_gate_pair = Portail battant, deux vantaux
    .description = Deux vantaux, chacun de la moitié de l'ouverture. Ils balayent deux quarts de cercle du côté intérieur.
Barrier-barrier_arm = Lisse de barrière
    .description = Une lisse qui se lève. Elle est mince, une boucle peut donc se trouver juste dessous.
Barrier-vertical_lift_gate = Portail à levée verticale
    .description = Un vantail qui monte dans son propre plan.
Barrier-overhead_door = Porte relevable
    .description = Une porte qui s'enroule ou se replie au-dessus de l'ouverture.
Barrier-none = Aucune barrière
    .description = Une ouverture ou une voie sans barrière : un guichet, une borne ou une ligne d'arrêt sert de repère.

## LeafOpen

LeafOpen-level = À plat sous le plafond
    .description = Le vantail est à plat au-dessus du sol intérieur, à la hauteur de l'ouverture.
LeafOpen-coiled = Enroulé en haut
    .description = Le vantail est enroulé ou replié au-dessus de l'ouverture.

## UnitSide

UnitSide-left = À gauche
    .description = À gauche en sortant.
UnitSide-right = À droite
    .description = À droite en sortant.

## Surface

Surface-existing_asphalt = Asphalte existant
    .description = Asphalte déjà posé : la boucle va dans un trait de scie.
Surface-existing_concrete = Béton existant
    .description = Béton mûri : la boucle va dans un trait de scie.
Surface-new_asphalt = Asphalte neuf
    .description = Asphalte à poser : une boucle à enfouissement direct va sous la dernière couche.
Surface-new_concrete = Béton neuf
    .description = Béton à couler : une boucle à enfouissement direct est attachée en place avant la coulée.
Surface-gravel = Gravier
    .description = Surface meuble : une boucle à enfouissement direct dans un lit de sable.
Surface-soil = Sol
    .description = Terre ou gazon : une boucle à enfouissement direct dans un lit de sable.
Surface-pavers = Pavés
    .description = Surface en pavés : une boucle à enfouissement direct dans le lit sous les pavés.

## SiteHazard

SiteHazard-reinforcing_mesh = Treillis d'armature
    .description = Un treillis ou des barres d'acier dans la dalle abaissent l'inductance et la hauteur à laquelle le métal est détecté.
SiteHazard-post_tensioned_slab = Dalle post-contrainte
    .description = Câbles tendus : un câble de précontrainte coupé peut tuer et peut faire tomber la dalle.
SiteHazard-bridge_deck = Tablier de pont ou suspendu
    .description = Un tablier porteur : de l'acier peu profond, et peut-être des câbles de précontrainte tendus.
SiteHazard-snow_melt_cable = Câble de fonte de neige
    .description = Des câbles chauffants sous tension dans la dalle.
SiteHazard-snow_melt_pipe = Tuyau de fonte de neige
    .description = Des tuyaux chauffants dans la dalle.
SiteHazard-overhead_power_line = Ligne électrique aérienne
    .description = Une ligne électrique au-dessus peut induire un ronflement qui perturbe le détecteur.
SiteHazard-buried_power_line = Ligne électrique enfouie
    .description = Une ligne électrique au-dessous : un danger pour la personne qui scie, et une source de ronflement.
SiteHazard-adjacent_traffic = Circulation à côté
    .description = Une voie à côté de la boucle dont les véhicules ne doivent pas être détectés.
SiteHazard-freezing_climate = Climat de gel
    .description = L'eau dans la saignée gèle et soulève le scellant.
SiteHazard-pavement_joint = Joint de chaussée
    .description = Un joint que la saignée ou le câble de liaison doit traverser bouge avec les saisons.
SiteHazard-cracked_pavement = Chaussée fissurée
    .description = Une chaussée qui bouge et laisse entrer l'eau.
SiteHazard-old_loop_cut = Ancien trait de scie
    .description = Le trait de scie d'une boucle antérieure est au même endroit.

## Construction

Construction-hand_wound = Enroulée sur place dans un trait de scie
    .description = Un fil simple est posé tour par tour dans un trait de scie et tenu au fond avant d'être scellé.
Construction-preformed_saw_cut = Préformée, dans un trait de scie
    .description = Une boucle gainée faite sur mesure va d'un seul coup dans un trait de scie.
Construction-preformed_direct_burial = Préformée, à enfouissement direct
    .description = Une boucle gainée faite sur mesure va dans une chaussée neuve, du sable ou du sol, son câble de liaison en conduit.
