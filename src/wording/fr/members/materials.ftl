### The labels and descriptions of the closed lists of `practice::materials`: a message for each member, `List-code`.

## Corner

Corner-square_overrun = Droit, coupe prolongée
    .description = Les coupes se croisent et se prolongent aux coins droits, pour que la saignée ait toute sa profondeur là où le fil tourne.
Corner-diagonal = Coupe diagonale
    .description = Une coupe diagonale à chaque coin évite au fil un pli vif. Les côtés finissent où ils la rencontrent, et s'y prolongent pour avoir toute leur profondeur.
Corner-diagonal_full = Coupe droite entière, puis diagonales
    .description = Les côtés sont coupés entiers jusqu'aux coins vifs, puis des diagonales en travers : un triangle de chaussée reste alors isolé à chaque coin.
Corner-cored = Coin carotté
    .description = Un trou percé à chaque coin donne toute la profondeur sans coupe au-delà, et arrondit le pli.

## RodForm

RodForm-none = Sans fond de joint
    .description = Une boucle gainée s'ajuste à sa saignée et reste d'elle-même au fond.
RodForm-pieces = Morceaux courts
    .description = Des morceaux courts de fond de joint en mousse à intervalles et aux coins : le scellant coule autour du fil entre eux.
RodForm-continuous = Continu
    .description = Une seule longueur de fond de joint sur tout le fil : il tient le scellant loin du fil, et l'eau trouve son chemin le long de lui.

## MaterialItem

MaterialItem-sealant_cartridge = Cartouche de scellant
    .description = Cartouches (ensembles, pour deux composants) de scellant appliqué à froid.
MaterialItem-hot_sealant = Scellant à chaud
    .description = Scellant à fondre, au volume.
MaterialItem-mixing_nozzle = Buse mélangeuse
    .description = Une buse pour chaque boucle scellée d'un seul trait avec du scellant à deux composants.
MaterialItem-blending_sand = Sable de finition
    .description = Sable coloré pour le scellant frais, là où il ne doit pas se voir.
MaterialItem-loop_wire = Fil de boucle
    .description = Fil simple pour les tours et le câble de liaison torsadé, au touret ou à la longueur.
MaterialItem-preformed_loop = Boucle préformée
    .description = Une boucle gainée avec son câble de liaison, faite sur mesure.
MaterialItem-backer_rod = Fond de joint
    .description = Boudin de mousse qui tient le fil au fond.
MaterialItem-home_run_cable = Câble principal
    .description = Câble de son propre calibre de la boîte de tirage au détecteur.
MaterialItem-splice_kit = Ensemble d'épissure
    .description = Soudure, manchons et scellement pour les deux épissures d'une paire, dans la boîte de tirage.
MaterialItem-pull_box = Boîte de tirage
    .description = Une boîte au bord de la chaussée, où les paires la quittent et sont épissées au câble principal.
MaterialItem-lead_in_conduit = Conduit pour le câble de liaison
    .description = Conduit hors de la dalle ou dessous.
MaterialItem-bedding_sand = Sable de lit
    .description = Sable sous une boucle enfouie et au-dessus, sans pierres.
MaterialItem-tie = Attache
    .description = Une attache ou un clip de plastique qui tient en place une boucle enfouie jusqu'à ce qu'elle soit couverte; jamais du fil métallique.
MaterialItem-joint_sleeve = Manchon de joint
    .description = Un manchon là où le fil traverse un joint ou une fissure, 4 in de chaque côté, avec du mou à l'intérieur.
MaterialItem-termination = Bout soudé ou étamé
    .description = Un bout de fil, étamé ou soudé contre l'oxydation.
MaterialItem-line_device = Dispositif en travers de la ligne
    .description = Un faisceau photoélectrique ou un autre dispositif qui surveille la ligne du portail, là où un véhicule peut se trouver sans être détecté entre deux boucles.
MaterialItem-saw_blade = Lame de scie
    .description = Une lame diamantée aussi large que la saignée et assez grande pour sa profondeur.

## WorkStep

WorkStep-set_up = Installer et tracer
    .description = Gestion de la circulation, services repérés vérifiés, boucles tracées.
WorkStep-saw = Scier
    .description = Toutes les coupes, avec leurs prolongements.
WorkStep-core = Carotter les coins
    .description = Un trou à chaque coin.
WorkStep-clean_and_dry = Nettoyer et sécher la saignée
    .description = Lavez la boue, aspirez, soufflez jusqu'à sec : le scellant ne tient que sur une paroi propre et sèche.
WorkStep-wind = Poser le fil
    .description = Un passage pour chaque tour de fil simple; un seul pour tous les tours d'une boucle préformée.
WorkStep-bury = Poser et couvrir
    .description = Posez sur son lit une boucle à enfouissement direct et son conduit, et couvrez-la.
WorkStep-test_before_sealing = Essayer avant de fermer
    .description = Résistance, inductance et isolement avant que le scellant ou le remblai recouvre le fil.
WorkStep-seal = Sceller
    .description = Remplissez la saignée autour et au-dessus du fil.
WorkStep-terminate = Finir les bouts
    .description = Soudez ou étamez les bouts, épissez dans la boîte, scellez l'épissure.
WorkStep-test_after_sealing = Essayer une fois fermé
    .description = Les mêmes mesures encore une fois; notez-les pour le prochain appel.
