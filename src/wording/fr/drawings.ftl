### Ce que disent les dessins.

## Sur tous

drawings-do-not-build = Ne construisez pas selon ce dessin
drawings-warnings = Avertissements
drawings-more = Et { $more } de plus qui ne figurent pas ici : lisez-les tous avant de commencer le travail.
drawings-footer = Une boucle détecte le métal, pas les personnes : elle ne protège personne. Les codes locaux, les fiches techniques et les titulaires de licence décident. Loopwright { $engine }
drawings-and = { $first } et { $last }
drawings-date = { $day }{ $day ->
    [1] er
   *[other] {""}
} { $month ->
    [1] janv.
    [2] févr.
    [3] mars
    [4] avr.
    [5] mai
    [6] juin
    [7] juill.
    [8] août
    [9] sept.
    [10] oct.
    [11] nov.
   *[12] déc.
}
drawings-span = { $from } { $day ->
    [same] à
   *[other] au
} { $until }

## Valeurs prises pour ce que personne n'a indiqué

drawings-value-or = { $first } ou { $last }
drawings-value-wide = { $value } de largeur
drawings-value-high = { $value } de hauteur
drawings-value-turns = { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
}
drawings-value-corners = en diagonale là où les coins d'une boucle sont coupés, droits ailleurs
drawings-value-allowed = { $allowed ->
    [yes] oui
   *[no] non
}

## Le plan d'une ouverture

drawings-plan-title = Plan : { $opening }
drawings-plan-lane = voie sans barrière, { $width } de largeur
drawings-plan-opening = { $barrier }, ouverture de { $width }
drawings-plan-width = ouverture
drawings-plan-direction = sens de circulation
drawings-plan-inside = intérieur
drawings-plan-way-in = extérieur, entrée
drawings-plan-way-out = intérieur, sortie
# La ligne où commence le ruban : deux mots, ou ce qui tient en deux lignes courtes.
drawings-plan-line = { $barrier-code ->
    [slide_gate] portail coulissant
    [swing_gate] portail battant
    [swing_gate_pair] portails battants
    [barrier_arm] lisse de barrière
    [vertical_lift_gate] portail levant
    [overhead_door] porte relevable
   *[none] ligne de repère
}
drawings-plan-the-line = { $line ->
    [reference] la ligne de repère
   *[barrier] la barrière
}
drawings-plan-distance = { $gap ->
    [none] juste
   *[some] à { $distance }
}
drawings-plan-position = { $side ->
    [across] en travers de { drawings-plan-the-line }
    [across_moved] en travers de { drawings-plan-the-line }, son milieu { $moved } vers l'intérieur
    [outside] { drawings-plan-distance } à l'extérieur de { drawings-plan-the-line }
    [inside] { drawings-plan-distance } à l'intérieur de { drawings-plan-the-line }
    [before] { drawings-plan-distance } avant { drawings-plan-the-line }
   *[past] { drawings-plan-distance } après { drawings-plan-the-line }
}{ $offset_side ->
    [left] , son milieu { $offset } à gauche de celui de la voie en entrant
    [right] , son milieu { $offset } à droite de celui de la voie en entrant
   *[none] {""}
}
drawings-plan-name = { $role-label } : { $position }
drawings-plan-made = { $count ->
    [one] {""}
   *[other] { $count } côte à côte, enroulées comme le montrent les pointes de flèche, chacune de{" "}
}{ $size }, { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
}{ $cells ->
    [two] {" "}autour de chacune des deux cellules
   *[one] {""}
}{ $corners ->
    [cut] , coins coupés { $corner_cut }
   *[square] {""}
}{ $slot ->
    [sawn] , saignée de { $slot_depth } de profondeur
   *[none] {""}
}; { $inductance } au détecteur.
drawings-plan-from-stock = En stock : { $sku }.
drawings-plan-made-as = Comme { $mark }.
drawings-plan-order = { $orders }
drawings-plan-order-pairs = { $length } de paire pour chaque boucle
drawings-plan-order-longer = { $length } pour { $mark }
drawings-plan-order-home-runs = de la boîte de tirage au détecteur { $cables }
drawings-plan-order-cable = { $length } de câble { $gauge } pour { $mark }
drawings-plan-tape = Ruban : de la ligne aux fils. Commandez { $orders }.
drawings-plan-unit = U est le détecteur, à { $side ->
    [left] gauche
   *[right] droite
} en sortant.
drawings-plan-double-lines = Les lignes doubles sont des saignées de paires.
drawings-plan-row-slot = Les paires d'une rangée partagent la saignée qui la longe : { $marks }.
drawings-plan-slot-short = La saignée de { $mark } s'arrête { $short } avant le bord.
drawings-plan-past-edge = Au-delà du bord, les saignées continuent{ $until ->
    [unit] {" "}jusqu'au détecteur
   *[conduit] {""}
}, dessinées raccourcies : { $marks }.
drawings-plan-conduit = En tirets à partir de là : conduit, selon ce que permet le site.
drawings-plan-pull-box = Un carré barré d'une croix est une boîte de tirage : { $to ->
    [home_run] la paire de la boucle s'y termine et y est épissée au câble qui va au détecteur
   *[next_piece] la paire y est épissée à celle du touret suivant
}.
drawings-plan-crossing = { $pairs ->
    [one] La paire de { $marks } croise
   *[other] Les paires de { $marks } croisent
} la ligne au point, { $under ->
    [conduit_track] en conduit sous le rail
    [conduit] en conduit
    [slot_track] dans la saignée, au-delà du rail
   *[slot] dans la saignée
}.
drawings-plan-parking = En tirets sur la ligne, interrompu : là où le vantail se range et son recul, dessiné du côté du détecteur. Cette zone reste libre, sur toute la longueur du vantail.
drawings-plan-unseen = Sans détection entre les boucles qui retiennent la barrière : { $stretch }.
drawings-plan-sweep = Les vantaux sont supposés s'ouvrir vers l'intérieur; les traits mixtes montrent leur balayage.
drawings-plan-scale = À l'échelle{ $broken ->
    [yes] , sauf la portion entre les lignes en zigzag, qui est raccourcie
   *[no] {""}
}.

## Coupes de saignées

drawings-section-title = { $sections ->
    [buried] Coupe : boucles enfouies, rien n'est scié
    [one] Coupe de la saignée
   *[several] Coupes des saignées : { $count }
}
drawings-section-several = { $name } ({ $count } boucles)
drawings-section-heading = { $place ->
    [loop] Saignée de la boucle
    [lead_in] Saignée du câble de liaison
    [shared] Saignée partagée par des paires
   *[buried] Enfouie
} : { $labels }
drawings-section-buried = { $construction-label }, son câble de liaison en conduit.
drawings-section-verdict = { $construction-label }, { $width } de largeur et { $depth } de profondeur. { $verdict ->
    [too_narrow] Trop étroite
    [right] Bonne
   *[generous] Large
} : { $free ->
    [some] { $clearance } de la largeur restent libres, la moitié de chaque côté
   *[nothing] rien de la largeur ne reste libre
}.
drawings-section-sealant = Scellant : { $sealant }. Chaque coupe a sa propre échelle; l'acier est dessiné à sa profondeur, ses barres ne sont pas à l'échelle.
drawings-section-rod-note = Fond de joint, { $form } : entre eux, le scellant remplit la saignée autour du fil.
drawings-section-slab = Dalle de { $thickness } d'épaisseur{ $drawn ->
    [broken_off] {" "}(interrompue ici)
   *[whole] {""}
}
drawings-section-steel = Acier à { $depth } de profondeur{ $drawn ->
    [below] , plus bas que le dessin
   *[whole] {""}
}
drawings-section-bed = Lit en dessous { $depth }
drawings-section-cover = { $over ->
    [pair] Recouvrement sur la paire du haut
    [wire] Recouvrement sur le fil du haut
   *[it] Recouvrement au-dessus
} { $depth }
drawings-section-uncovered = Rien ne le recouvre
drawings-section-finish = { $finish ->
    [flush] Scellant, au ras de la surface
   *[below] Scellant, { $depth } sous la surface
}
drawings-section-wires = { $count ->
    [one] { $count } fil de
   *[other] { $count } fils, l'un sur l'autre, chacun de
} { $diameter } sur son isolant
drawings-section-pairs = { $count ->
    [one] Paire torsadée
   *[other] { $count } paires torsadées, l'une sur l'autre
}, chaque fil de { $diameter } sur son isolant
drawings-section-jacketed-pairs = { $count ->
    [one] { $count } paire gainée, { $diameter }
   *[other] { $count } paires gainées, l'une sur l'autre, chacune de { $diameter }
}
drawings-section-jacket = Gaine{ $size ->
    [given] {" "}de { $diameter }
   *[not_given] , diamètre non indiqué
}, avec { $holds ->
    [pair] une paire
   *[turns] { drawings-value-turns }
} dedans
drawings-section-rod = { $form ->
    [pieces] Fond de joint, en morceaux (tirets)
   *[continuous] Fond de joint, continu
}

## La réponse d'une boucle

drawings-profile-title = Réponse : { $vehicle } sur une boucle de { $size }, { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
}
drawings-profile-plate = Un dessous plat
drawings-profile-change = Variation au détecteur, %
drawings-profile-positions = Avant du véhicule au-delà du bord d'entrée, { $unit } [{ $other_unit }]
drawings-profile-vehicle = véhicule
drawings-profile-loop = boucle
drawings-profile-switching = { $what ->
    [on] détecte
    [on_again] redétecte
    [lets_go] lâche
   *[off] relâche
}
drawings-profile-front = { $length } { $side ->
    [before] avant
   *[past] après
} le bord d'entrée
drawings-profile-peak = La variation culmine à { $change } avec l'avant { $front }, là où le véhicule est dessiné : { $times } fois les { $threshold } auxquels le détecteur commute.
drawings-profile-on = Détecte (hachuré) avec l'avant { $on }, relâche { $off }.
drawings-profile-lets-go = Lâche de { $from } jusqu'à { $until }.
drawings-profile-lets-go-early = Lâche avant que l'arrière atteigne la boucle, ce qui arrive avec l'avant { $tail }.
drawings-profile-silent = Le détecteur ne commute pas.
drawings-profile-blind = Sans détection sur { $width } de la voie{ $centre ->
    [included] , le centre compris
   *[seen] {""}
}.
drawings-profile-way = { $vehicle } : { $length } de longueur, { $line ->
    [left] { $offset } à gauche du milieu
    [right] { $offset } à droite du milieu
   *[middle] sur le milieu
} de la boucle; { $model ->
    [calibrated] le modèle est étalonné
    [assumed] le modèle est une hypothèse
   *[plate] le modèle est le dessous plat qui a été indiqué
}.

## Les heures d'un mûrissement

drawings-cure-title = Scellement, début { $start } : { $verdict }
drawings-cure-do-not-seal = Ne scellez pas à ce début
drawings-cure-job = { $sealant-label }; saignée, { $seen ->
    [no] selon l'hypothèse prise :{" "}
   *[yes] état :{" "}
}{ $condition }.
drawings-cure-needed = La circulation doit reprendre au plus tard le { $time }.
drawings-cure-poured = Coulé à { $temperature } : il refroidit et ne mûrit pas, donc ses temps ne suivent pas la météo.
drawings-cure-key = Les barres vont du plus tôt au plus tard. Les prévisions se terminent le { $until }; rien n'est deviné au-delà. Sur place, le critère est que les roues n'emportent aucun scellant.
drawings-cure-shelf = Le scellant se conserve jusqu'au { $ends_on }.
drawings-cure-moment = { $moment ->
    [start] début
   *[needed] circulation requise
}
drawings-cure-slab = { $measured ->
    [all] dalle, mesurée
    [none] dalle, non mesurée : prise de l'air
   *[some] dalle; { $assumed } sur { $all } non mesurées : prises de l'air
}
drawings-cure-air = air
drawings-cure-dew-point = point de rosée, et les { $margin } au-dessus (ombré) où la dalle ne doit pas se trouver : l'eau se condense
drawings-cure-limits = minimum pour appliquer : { $least }{ $limits ->
    [two] ; au plus { $most }
   *[one] {""}
}
drawings-cure-rain = Pluie ou neige : { $told ->
    [nothing] inconnue : les prévisions n'en disent rien
    [unlikely] peu probable à toute heure
   *[kinds] { $kinds }
}.
drawings-cure-rain-kind = { $rain ->
    [likely] probable là où c'est plein
    [possible] possible là où c'est vide
   *[not_known] inconnue là où c'est hachuré
}
drawings-cure-begin-at-start = Commencez : au début; les prévisions se terminent avant qu'un début plus tardif soit sûr (hachuré).
drawings-cure-begin-never = Commencez : à aucune heure de ces prévisions (hachuré).
drawings-cure-begin = Commencez : { $windows }; pas là où c'est hachuré.
drawings-cure-begin-once-dry = Une fois la saignée sèche, commencez : { $windows }.
drawings-cure-more-windows = et { $more } de plus
drawings-cure-work = { $begun ->
    [at_start] Travail
   *[later] Travail, commencé à la première plage possible
} : { $span }, quand le dernier bout est scellé.
drawings-cure-milestone = { $milestone-label } : { $reached ->
    [both] { $span }
    [earliest] { $earliest } au plus tôt, au plus tard après ces prévisions
   *[none] après ces prévisions
}{ $progress ->
    [band] {" "}(à leur fin, fait de { $low } à { $high })
    [one] {" "}(à leur fin, fait à { $high })
   *[none] {""}
}.

## Les tours d'une boucle existante

drawings-turns-title = Une boucle dans le sol, { $size } : { $verdict }
drawings-turns-do-not-rely = Ne vous fiez pas à cette boucle
drawings-turns-panel = { $quantity ->
    [inductance] Inductance, µH
   *[resistance] Résistance, Ω
} : { $is_read ->
    [off_the_scale] lu { $reading }, hors de l'échelle
    [yes] lu { $reading }
   *[no] non lue
}
drawings-turns-candidate = { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
}{ $wire ->
    [known] , { $gauge }
   *[unknown] {""}
}, { $likelihood }
drawings-turns-key = Une barre est ce que l'appareil montrerait avec ce nombre de tours; le trait épais est ce qu'il a montré. Les barres bleues concordent avec les deux lectures.
drawings-turns-read-at = Lu { $place ->
    [unit] à l'extrémité du câble de liaison, côté détecteur
   *[tails] aux bouts de la boucle même
}; le câble de liaison mesure { $length }, et les côtés peuvent varier de { $uncertainty }.
drawings-turns-settle = Ce qui trancherait : { $test-label }, { $minutes ->
    [one] { $minutes } minute
   *[other] { $minutes } minutes
}.
