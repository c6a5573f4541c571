### Ce que disent les formulaires : noms, aide et ce qui est pris quand un champ reste vide.

## Sections

forms-section-opening = Ouverture
forms-section-loops = Boucles et véhicules
forms-section-pavement = Chaussée et dalle
forms-section-lead-in = Câble de liaison
forms-section-wire = Fil de la boucle
forms-section-cuts = Traits de scie
forms-section-detector = Détecteur
forms-section-sealant = Scellant
forms-section-day = Jour du scellement
forms-section-work = Rythme de l'équipe
forms-section-prices = Prix
forms-section-plan = Ce que contient le plan

## L'ouverture

forms-width = Largeur libre
forms-width-help = Mesurez là où passent les véhicules, de poteau à poteau ou de bordure à bordure.
forms-barrier = Type de portail ou de barrière
forms-barrier-help = Choisissez ce qui ferme l'ouverture. Un guichet, une borne ou une ligne d'arrêt n'a pas de barrière.
forms-approach-speed = Vitesse d'approche
forms-approach-speed-help = À quelle vitesse les véhicules arrivent de l'intérieur. Avec le temps pour ouvrir, elle place la boucle de sortie.
forms-opening-time = Temps pour ouvrir
forms-opening-time-help = Mesurez le temps de la détection du véhicule jusqu'à ce que le passage soit libre.
forms-exit-time-default = À moins d'indiquer à la fois la vitesse et le temps pour ouvrir, la boucle de sortie est à sa place usuelle.
forms-edge-setback-help = La bande libre à laisser à chaque bord de l'ouverture.
forms-edge-setback-default = { $strip } / { $strip_metric }; { $beside_traffic } / { $beside_traffic_metric } à côté d'une autre circulation.
forms-drive-length = Allée droite à l'intérieur
forms-drive-length-help = Sur quelle distance l'allée intérieure va tout droit jusqu'à l'ouverture. La boucle de sortie y reste.
forms-drive-length-default = Aussi longue que la boucle de sortie le demande.
forms-leaf-height-help = Seulement pour un vantail métallique : mesurez-le du bord inférieur au bord supérieur. Il perturbe les boucles voisines.
forms-leaf-height-default = { $leaf } / { $leaf_metric }; { $door } / { $door_metric } pour une porte relevable.
forms-leaf-gap-help = Seulement pour un vantail métallique : mesurez de la chaussée au vantail fermé.
forms-leaf-gap-default = { $leaf } / { $leaf_metric }; { $door } / { $door_metric } pour une porte relevable.
forms-leaf-open-help = Seulement pour une porte relevable : choisissez où se trouve le vantail quand la porte est ouverte.
forms-unit-side-help = Le côté où se trouve le détecteur en sortant. Les câbles de liaison y quittent la chaussée.
forms-seen-otherwise = Un autre dispositif surveille la ligne du portail
forms-seen-otherwise-help = Répondez oui seulement si un faisceau ou une caméra la surveille d'un bord à l'autre. Sinon, un véhicule peut s'y trouver sans être détecté, et le portail peut se refermer sur lui.

## Boucles et véhicules

forms-roles = À quoi servent les boucles
forms-roles-help = Choisissez chaque tâche d'une boucle; sans une boucle qui le retienne, un portail peut se refermer sur un véhicule. Aucune boucle ne protège une personne.
forms-roles-default = Ce qu'une barrière de ce type demande d'habitude.
forms-vehicles-help = Choisissez chaque type qui circule ici, aussi le plus haut et le plus petit. Ce qui n'est pas choisi peut passer sans être détecté.
forms-seen-by-others = Véhicules qu'un autre dispositif détecte
forms-seen-by-others-help = Choisissez seulement les véhicules qu'un faisceau ou une caméra détecte partout où une boucle ne les détecte pas; sinon, un véhicule peut rester sans être détecté.
forms-construction-help = Les boucles sont enroulées sur place, ou arrivent préformées pour un trait de scie ou pour l'enfouissement.
forms-construction-default = Ce que demande la chaussée.

## Chaussée et dalle

forms-surface-help = Choisissez ce qui reçoit les boucles, maintenant ou une fois en place.
forms-hazards = Obstacles et dangers du lieu
forms-hazards-help = Choisissez tout ce qui s'y trouve et renseignez-vous avant de couper : un câble de précontrainte ou une ligne électrique coupés peuvent tuer.
forms-slab-thickness = Épaisseur de la dalle
forms-slab-thickness-help = Elle limite la profondeur à laquelle la dalle peut être coupée.
forms-steel-depth = Profondeur de l'acier
forms-steel-depth-help = De la surface à l'acier le plus haut de la dalle, selon un balayage de détection.
forms-steel-depth-default = S'il y a un treillis, il est supposé à la profondeur usuelle sous la boucle.
forms-slab-edge = Distance au bord le plus proche
forms-slab-edge-help = Des fils au bord, à la bordure ou au joint le plus proche de la dalle.
forms-slab-suspended = La dalle est suspendue
forms-slab-suspended-help = Un tablier, une rampe ou un plancher avec des locaux dessous. Ne la coupez pas avant l'accord écrit de l'ingénieur.
forms-cut-approved = La coupe est approuvée
forms-cut-approved-help = Répondez oui seulement si un balayage de détection a été fait et que l'ingénieur a approuvé la coupe par écrit. Un câble de précontrainte coupé peut tuer.

## Câble de liaison et fil

forms-lead-in-length-help = Mesurez le trajet de la paire de la boucle la plus éloignée au détecteur, montées et descentes comprises. Chaque boucle reçoit cette longueur.
forms-in-slot-help = Quelle part du câble de liaison se trouve dans un trait de scie.
forms-in-slot-default = Le trajet le plus court de la boucle au bord de la chaussée.
forms-in-conduit-help = Quelle part du câble de liaison passe dans un conduit.
forms-in-conduit-default = Ce qui ne se trouve pas dans une saignée.
forms-pair = Type de paire
forms-pair-help = Choisissez comment les deux fils du câble de liaison sont tenus ensemble. Des paires libres demandent chacune leur saignée.
forms-pair-default = Torsadée si la boucle est enroulée sur place, gainée si elle arrive préformée.
forms-spare-help = Mou à enrouler au détecteur, en plus du trajet mesuré.
forms-lead-in-gauge-help = La taille de chaque conducteur, selon le touret ou la fiche technique.
forms-lead-in-inductance-help = Selon la fiche technique du câble, par pied ou mètre de paire.
forms-lead-in-inductance-default = Davantage pour une paire libre.
forms-wire-gauge-help = La taille du conducteur dont la boucle est enroulée.
forms-over-insulation-help = Le diamètre sur l'isolant, selon la fiche technique du fil.
forms-over-insulation-default = Sur un autre calibre, le même isolant.
forms-over-jacket = Diamètre sur la gaine
forms-over-jacket-help = Seulement pour une boucle préformée : mesurez en travers de la gaine qui tient tous ses tours.
forms-over-jacket-default = Les tours sont posés l'un sur l'autre, comme des fils simples.
forms-insulation-rating = Chaleur que supporte l'isolant
forms-insulation-rating-help = La température la plus haute que supportent l'isolant et la gaine, selon la fiche technique du fil; pas celle de court-circuit. Un scellant coulé plus chaud les fait fondre.

## Traits de scie

forms-slot-width-help = La largeur du trait de scie.
forms-slot-width-default = Plus large si le fil le demande.
forms-slot-depth-help = De la chaussée au fond de la saignée. Une profondeur indiquée n'est pas dépassée.
forms-slot-depth-default = { $wound } / { $wound_metric } pour une boucle enroulée sur place, { $jacketed } / { $jacketed_metric } pour une préformée; plus profonde si les tours et le recouvrement le demandent, moins si la dalle ou l'acier laissent moins.
forms-cover-help = Le scellant à garder sur le fil du haut; sur une boucle enfouie, ce qui la couvre.
forms-cover-default = { $wound } / { $wound_metric } pour une boucle enroulée sur place, { $jacketed } / { $jacketed_metric } pour une préformée.
forms-crossings = Joints et fissures traversés
forms-crossings-help = Combien de joints et de fissures les fils traversent.
forms-lead-in-slot-width-help = La largeur du trait de scie des câbles de liaison.
forms-lead-in-slot-width-default = Comme la saignée de la boucle, plus large si les paires le demandent.
forms-lead-in-slot-depth-help = De la chaussée au fond de la saignée des câbles de liaison.
forms-lead-in-slot-depth-default = Comme la saignée de la boucle, plus profonde si les paires le demandent.
forms-lead-in-slot-cover-help = Le scellant à garder sur les paires.
forms-lead-in-slot-cover-default = Comme sur la boucle.
forms-blade-help = Une lame ronde coupe au-delà du bout de la saignée : plus elle est grande, plus elle va loin.
forms-corner-help = Comment le fil passe les coins de la saignée.
forms-corner-default = En diagonale si la boucle a des coins coupés, sinon à angle droit.
forms-core-diameter-help = Seulement pour des coins percés : le diamètre du trou.
forms-blade-life = Durée de vie d'une lame
forms-blade-life-help = Ce qu'une lame coupe avant d'être usée.
forms-owns-blades = L'équipe a ses lames
forms-owns-blades-help = Répondez oui si les lames sont apportées et non achetées pour ce travail.
forms-rod-form-help = Comment le fil simple est retenu dans la saignée jusqu'au scellement.
forms-rod-piece-help = Seulement pour des morceaux : la longueur de chacun.
forms-rod-spacing-help = Seulement pour des morceaux : de l'un au suivant.
forms-rod-diameter-help = Mesurez-le avant de le presser dans la saignée.
forms-rod-diameter-default = Un peu plus que la largeur de la saignée.
forms-agency = Organisme
forms-agency-help = Indiquez qui demande une largeur minimale de la saignée.
forms-agency-width = Largeur minimale de saignée de l'organisme
forms-agency-width-help = La largeur minimale qu'il demande.
forms-wire-allowance = Fil en plus, %
forms-wire-allowance-help = Fil pour les coins, les bouts et les chutes, en plus de la longueur mesurée.

## Le détecteur

forms-envelope-help = Ce qui remplace les données qui ne sont pas indiquées. La fiche technique du détecteur l'emporte.
forms-from-unit-sheet = Relevez la valeur sur la fiche technique du détecteur.
forms-limit-default = Si seule l'autre limite est indiquée et que celle-ci n'y convient pas, celle-ci est ajustée.
forms-quality-factor = Facteur de qualité minimal du détecteur
forms-tuning-capacitance = Capacité d'accord du détecteur, nF
forms-threshold = Seuil du détecteur, %
forms-threshold-help = Le changement d'inductance auquel le détecteur commute.
forms-threshold-default = Le moins sensible qui détecte bien tous les véhicules.
forms-threshold-steps-help = Les changements auxquels ses crans de sensibilité commutent, selon la fiche technique du détecteur.
forms-threshold-steps-default = Les crans usuels de tels détecteurs.
forms-wiring-help = Comment les boucles arrivent au détecteur. Un canal par boucle est la règle.

## Scellant et jour

forms-sealant-kind-help = Du type dépend combien de temps la voie reste fermée et par quelle météo on peut sceller.
forms-cartridge-help = Le volume d'une cartouche, les deux parties ensemble.
forms-finish-help = De la chaussée au scellant fini. À fleur est l'usage.
forms-waste = Scellant perdu, %
forms-waste-help = Ce qui se perd en cartouches, débordements et coulures, comme part de ce qui remplit les saignées.
forms-made-on = Date de fabrication
forms-made-on-help = Selon l'emballage. Un scellant périmé ne doit pas être employé.
forms-shelf-life-help = Combien de temps le scellant se garde fermé.
forms-from-sealant-sheet = Selon la fiche technique du scellant, à la température et à l'humidité qu'elle indique.
forms-by-sealant-default = La valeur usuelle de ce type de scellant, s'il en a une.
forms-traffic-time = Temps jusqu'à la remise à la circulation
forms-full-cure = Temps jusqu'au mûrissement complet
forms-cured-depth = Profondeur qui mûrit le premier jour
forms-pot-life = Temps de travail une fois mélangé ou ouvert
forms-sheet-temperature-help = La température à laquelle valent les temps de la fiche technique.
forms-sheet-humidity-help = L'humidité de l'air à laquelle valent les temps de la fiche technique.
forms-coldest-help = En dessous de cette température, le scellant ne doit pas être appliqué.
forms-hottest = Température maximale d'application
forms-hottest-help = Au-dessus de cette température, le scellant ne doit pas être appliqué.
forms-activation-help = Combien la chaleur accélère le mûrissement; demandez au fabricant.
forms-pour-help = Seulement pour un scellant coulé à chaud. L'isolant du fil doit la supporter.
forms-damp-slot-help = Répondez oui seulement si la fiche technique du scellant permet une saignée humide.
forms-start-help = Quand le premier scellant est appliqué, à l'heure du lieu. Compte si la météo est connue, et décide avec elle si l'on scelle.
forms-needed-open = Circulation rétablie au plus tard
forms-needed-open-help = Quand la circulation doit revenir, à l'heure du lieu. Compte si la météo est connue.
forms-slot-state = État de la saignée
forms-slot-state-help = Regardez et touchez avant de sceller : aucun scellant ne va dans une saignée mouillée ou givrée. Votre réponse compte si la météo est connue.
forms-slot-state-default = Sèche, ou mouillée si la météo indique une pluie qui n'a pas encore séché.
forms-work-duration-help = Du premier bout scellé au dernier, pour tout le travail. Compte si la météo est connue.
forms-work-duration-default = Ce que dit l'estimation du travail.

## L'équipe, ses prix, le plan

forms-set-up = Temps de préparation
forms-set-up-help = Pour préparer, tracer et protéger la zone de travail, une fois par travail.
forms-saw-speed = Vitesse de la scie
forms-saw-speed-help = À quelle vitesse la scie avance en une passe.
forms-saw-speed-default = Selon la chaussée et la profondeur.
forms-core-time = Temps pour percer un coin
forms-core-time-help = Pour chaque coin percé.
forms-cleaning-speed = Vitesse de nettoyage
forms-cleaning-speed-help = À quelle vitesse les saignées sont lavées et séchées.
forms-pull-time = Temps pour tirer le fil
forms-pull-time-help = Pour chaque tour, ou pour tous les tours d'une boucle préformée.
forms-burial-time = Temps pour enfouir une boucle
forms-burial-time-help = Pour asseoir et couvrir une boucle qui n'est dans aucun trait de scie.
forms-sealing-speed = Vitesse de scellement
forms-sealing-speed-help = À quelle vitesse les saignées sont remplies.
forms-termination-time = Temps pour finir les bouts
forms-termination-time-help = Pour souder, faire l'épissure et sceller les bouts d'une boucle.
forms-test-time = Temps pour mesurer
forms-test-time-help = Pour relever une fois les mesures d'une boucle.
forms-currency = Devise
forms-currency-help = Trois lettres, comme USD ou CAD.
forms-hourly-rate = Taux horaire de l'équipe
forms-hourly-rate-help = Le prix d'une heure de toute l'équipe. Si ce champ reste vide, les heures ne sont pas chiffrées.
forms-parts = Parties du plan
forms-parts-help = Choisissez quoi planifier en plus des boucles mêmes.
forms-parts-default = Toutes; celle du mûrissement, seulement si la météo est indiquée.
forms-include = Aussi dans le plan
forms-include-help = Choisissez ce que le plan doit contenir de plus.
