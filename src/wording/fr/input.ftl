### The nouns of requests: why a default was taken.

## The loop and its wire

input-usual-shape = La forme habituelle.
input-square-corners = Coins droits, sauf si une coupe est indiquée.
input-least-cover = Le recouvrement minimal que demande un organisme.
input-usual-loop-wire = Le fil habituel pour boucles.
input-usual-over-insulation = Le diamètre habituel du fil isolé de 14 AWG pour boucles.
input-same-insulation = Ce conducteur avec l'isolant qu'a d'ordinaire le fil de 14 AWG pour boucles.
input-gauge-gives-way = Le plus gros calibre qui entre, avec son propre isolant, dans le diamètre indiqué.
input-insulation-gives-way = Pas plus épais que la gaine indiquée.

## The lead-in

input-usual-lead-in-length = Une distance habituelle jusqu'à l'armoire; mesurez la vôtre.
input-usual-spare = Du mou de la paire, enroulé dans la boîte de tirage.
input-price-key-unknown = Le prix de « { $name } » ne correspond à rien sur le devis. Vouliez-vous dire { $meant }?
input-stock-short = Il est prévu { $needed } de { $sku }, et il y en a { $available ->
    [one] { $available }
   *[other] { $available }
} : commandez-en { $missing } de plus ou posez d'autres boucles.
input-usual-unit-side = Le détecteur est à l'intérieur, au bord de la chaussée, à droite en sortant; dites-le s'il est à gauche.
input-usual-lead-in-wire = Le câble de liaison habituel.
input-loose-lead-in-inductance = Deux fils de 14 AWG distants d'un demi-pouce, d'après leur géométrie.
input-usual-lead-in-inductance = Le milieu de 20 à 24 µH par 100 ft de paire torsadée de 14 AWG.

## The slot

input-usual-slot-width = De la place pour que le scellant coule autour du fil, sans plus.
input-usual-slot-depth = La profondeur habituelle pour ce mode de pose; plus grande là où les tours l'exigent.
input-usual-slot-cover = Le recouvrement habituel pour ce mode de pose.
input-wide-slot = La lame la plus étroite qui laisse de la place au scellant autour de ce qui est dans la saignée.
input-cover-gives-way = Ce que la profondeur laisse au-dessus des fils : le recouvrement habituel y cède.
input-cover-by-depth = Le recouvrement habituel cède : dans la saignée indiquée, la part qu'il a de la profondeur habituelle.
input-slot-too-shallow = { $place ->
    [lead_in] Il faut à la paire
   *[loop] Il faut aux fils
} une saignée de { $needed_depth } de profondeur pour { $wires_height } de hauteur sous { $cover } de recouvrement{ $finish ->
    [below_surface] {" "}et une finition { $finish_below_surface } sous la surface
   *[flush] {""}
}.{ $outcome ->
    [bare] {" "}Comme demandé, le scellant les laisse à nu.
    [full] {" "}La saignée, telle qu'indiquée, n'a plus de profondeur pour le scellant.
   *[covered] {""}
} Coupez à cette profondeur si la dalle le permet, ou prenez du fil plus mince ou { $outcome ->
    [full] moins de tours
   *[other] moins de recouvrement
}.
input-thin-cover = { $place ->
    [lead_in] La saignée du câble de liaison,
   *[loop] La saignée,
} de { $slot_depth }, laisse { $cover_left } de scellant sur des fils de { $wires_height } de hauteur, et il en faut au moins { $least_cover }. Coupez-la à { $enough } de profondeur si la dalle le permet, ou prenez du fil plus mince ou moins de tours.
input-slot-fit = { $place ->
    [lead_in] La saignée du câble de liaison,
   *[loop] La saignée,
} de { $slot_width } : { $advice }
input-fit-does-not-go-in = Ce qui mesure { $stiffest } n'y entre pas. Coupez-la à { $advised_width } de largeur.
input-fit-no-room = Le scellant ne peut pas couler autour de { $widest } : poches d'air, puis fausses détections, eau et soulèvement par le gel. Coupez-la à { $advised_width } de largeur.

## The surface and the sealant: several parts of a plan take these, and a plan says each once

input-usual-surface = Le revêtement habituel.
input-usual-sealant = Le scellant habituel pour boucles.
input-usual-pour-temperature = La température à laquelle se verse le scellant appliqué à chaud d'un organisme.

## The opening

input-usual-leaf-height = Un vantail de portail habituel.
input-usual-leaf-open = La plupart des portes relevables sont à l'horizontale sous le plafond quand elles sont ouvertes.
input-usual-leaf-gap = Un jeu habituel au-dessus du sol.
input-usual-vehicles = Ce qui se présente à la plupart des ouvertures, et ce qui est le plus haut.

## The detector unit

input-usual-envelope = La plage minimale où s'accorde tout détecteur construit selon la norme; la fiche du détecteur lui-même fait foi.

# The other limit was given, and this one is a default.
input-least-gives-way = Le minimum { $what ->
    [frequency] de fréquence
   *[inductance] d'inductance
} de la plage cède au maximum indiqué : { $share } de celui-ci; la fiche du détecteur lui-même fait foi.
input-greatest-gives-way = Le maximum { $what ->
    [frequency] de fréquence
   *[inductance] d'inductance
} de la plage cède au minimum indiqué : { $factor } fois celui-ci; la fiche du détecteur lui-même fait foi.

## The weather

input-forecast = Les prévisions du service météorologique pour le lieu indiqué.
input-forecast-stale = Les prévisions du service météorologique pour le lieu indiqué, vieilles de { $age } : le service n'en donne pas de plus récentes pour le moment.

## What several questions say

input-fine-threshold = { $threshold } est plus fin que la classe la plus fine de la norme ({ $finest_class }). La fiche du détecteur lui-même doit montrer qu'il commute à cette valeur.

## The loops of a list

input-usual-label = Son numéro dans la liste; donnez-lui votre propre nom pour la retrouver.
