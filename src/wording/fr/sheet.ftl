### Ce que dit la fiche de travail.

## L'en-tête

sheet-page-title = Fiche de travail : { $opening }
sheet-name = Fiche de travail
sheet-job = Chantier
sheet-date = Date
sheet-by = Par
sheet-do-not-build = Ne construisez pas comme prévu
sheet-do-not-seal = Ne construisez pas comme prévu : aucun scellement le { $start }
sheet-warnings = Avertissements

## Quoi scier

sheet-cut = { $sawn ->
    [yes] Scier
   *[no] Tracer
}
sheet-column-loop = Boucle
sheet-column-size = En long × en travers
sheet-column-turns = Tours
sheet-column-nearest-wire = Fil le plus proche
sheet-column-slot = { $sawn ->
    [yes] Saignée
   *[no] Recouvrement
}
sheet-column-corners = { $sawn ->
    [yes] Coupe des coins
   *[no] Coins
}
sheet-loop = { $role-label }{ $count ->
    [one] {""}
   *[other] , { $count } côte à côte
}
sheet-turns = { $turns }{ $cells ->
    [two] {" "}dans chacune des deux cellules
   *[one] {""}
}
sheet-slot = { $width_is ->
    [known] { $width } × { $depth } de profondeur
   *[open] { $depth } de profondeur
}
sheet-not-sawn = non sciée
sheet-under-surface = { $cover } sous la surface
sheet-corner = { $corner ->
    [drilled] percés
   *[square] droits
}
sheet-lead-in-slot = { $shared ->
    [yes] partagée{" "}
   *[no] {""}
}{ $width } × { $depth } de profondeur
sheet-saw-cut = { $total } de trait de scie en tout, câbles de liaison { $lead_in }{ $slots_differ ->
    [yes] {" "}({ $slots })
   *[no] {""}
}; { $passes ->
    [one] { $passes } passe
   *[other] { $passes } passes
}; la lame dépasse { $ends ->
    [one] { $ends } bout
   *[other] { $ends } bouts
}{ $drilled ->
    [0] {""}
    [one] ; { $drilled } coin percé
   *[other] ; { $drilled } coins percés
}.

## Quoi charger, et combien de temps

sheet-load = Charger
sheet-packs = { $quantity } { $pack ->
    [cartridge] { $quantity ->
        [one] cartouche
       *[other] cartouches
    }
    [spool] { $quantity ->
        [one] touret
       *[other] tourets
    }
   *[lot] { $quantity ->
        [one] lot
       *[other] lots
    }
}
sheet-hours = Heures de l'équipe : { $hours }

## Quoi enrouler

sheet-wind = Enrouler
sheet-parts = { $parts }.
sheet-winding = { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
}, { $construction }{ $sense ->
    [row] , de gauche à droite { $senses }
    [same] , tous dans le même sens
   *[any] {""}
}
sheet-sense = { $sense ->
    [clockwise] sens horaire
   *[anticlockwise] sens antihoraire
}
sheet-pull = tirez { $length } de { $gauge }{ $how ->
    [spliced] {""}
   *[in_one_length] {" "}d'une seule longueur
}{ $each ->
    [yes] {" "}pour chacune
   *[no] {""}
}{ $how ->
    [to_the_box] , sa paire jusqu'à la boîte de tirage comprise
    [spliced] , câble de liaison compris, épissé dans la boîte de tirage
   *[in_one_length] , câble de liaison compris
}{ $more ->
    [yes] , et { $allowance } de plus
   *[no] {""}
}
sheet-from-stock = en stock : { $sku }
sheet-label-pair = étiquetez sa paire { $mark } aux deux bouts : { $way }
sheet-lead-in = Câble de liaison : { $orders }, mou compris.

## Quoi mesurer, régler et essayer

sheet-measure = Mesurez au bout du câble de liaison
sheet-column-reading = Lecture
sheet-column-sound = Bon état
sheet-column-limit = Limite
sheet-stage = { $stage ->
    [after_winding] après l'enroule­ment
    [before_sealing] avant le scelle­ment
    [after_sealing] après le scelle­ment
    [before_covering] avant le recouvre­ment
   *[after_covering] après le recouvre­ment
}
sheet-reading = { $reading ->
    [resistance] Résistance
    [inductance] Inductance
    [quality_factor] Facteur de qualité
   *[insulation] Isolement
}
sheet-settings = Réglez le détecteur
sheet-column-channel = Canal
sheet-column-threshold = Seuil
sheet-column-output = Sortie, vers
sheet-column-failure = Si la boucle fait défaut
sheet-column-unit = Détecteur, série
sheet-column-as-left = Laissé à
sheet-output = { $output }{ $lets_go ->
    [yes] , lâche après { $held }
   *[never] {""}
}, { $input ->
    [open] ouvrir
    [hold_or_reverse] retenir ou inverser
    [hold_while_still] retenir si vantaux immobiles
    [close] fermer
   *[presence] présence
}
sheet-frequency = Fréquence
sheet-trials = Essayez
sheet-vehicles = Véhicules qui doivent être détectés : { $vehicles }.

## Quand sceller et remettre à la circulation

sheet-seal = Sceller et remettre à la circulation
sheet-no-weather = Aucune météo n'a servi à la planification : scellez une saignée sèche et propre dans les limites de la fiche technique du scellant, et laissez revenir la circulation quand les roues n'emportent plus de scellant.
sheet-slab = Dalle
sheet-air = Air
sheet-sealed-at = Scellé à
sheet-opened-at = Ouvert à
sheet-verdict = { $verdict-label }{ $starts ->
    [yes] , { $start }
   *[no] {""}
}
sheet-sealant-and-slot = { $sealant }; saignée, { $seen ->
    [no] selon l'hypothèse prise :{" "}
   *[yes] état :{" "}
}{ $condition }.
sheet-begin = Commencez
sheet-begin-once-dry = Une fois la saignée sèche, commencez
sheet-window = { $from } à { $until }
sheet-windows = { $which ->
    [none] à aucune heure jusqu'au { $until }
    [more] { $windows }; d'autres plus tard
   *[all] { $windows }
}.
sheet-column-begun = Commencé le { $from }, dernier bout scellé le { $sealed }
sheet-column-earliest = Au plus tôt
sheet-column-latest = Au plus tard
sheet-beyond-forecast = au-delà des prévisions
sheet-clock = Les heures sont celles de l'horloge du site ({ $clock }); les prévisions se terminent le { $until }.

## Étapes, mises en garde, hypothèses

sheet-steps = Étapes
sheet-caution-mark = { $count ->
    [one] Mise en garde
   *[other] Mises en garde
} { $numbers }
sheet-cautions = Mises en garde
sheet-notes = Notes
sheet-assumed = Hypothèses : à vérifier sur place
# Les champs de la demande dont la fiche a pu prendre la valeur; un essai demande ceux des exemples.
sheet-field = { $field ->
    [backer_rod-diameter] diamètre du fond de joint
    [backer_rod-form] fond de joint
    [backer_rod-piece_length] longueur des morceaux de fond de joint
    [backer_rod-spacing] espacement des morceaux de fond de joint
    [construction] construction
    [detector-envelope] ce sur quoi le détecteur s'accorde
    [detector-inductance_max_uh] inductance maximale du détecteur, µH
    [detector-inductance_min_uh] inductance minimale du détecteur, µH
    [detector-frequency_max_khz] fréquence maximale du détecteur, kHz
    [detector-frequency_min_khz] fréquence minimale du détecteur, kHz
    [detector-threshold_steps_percent] crans de sensibilité du détecteur, %
    [frequency_khz] fréquence, kHz
    [lead_in-gauge] calibre du câble de liaison
    [lead_in-in_conduit] câble de liaison en conduit
    [lead_in-in_slot] câble de liaison en saignée
    [lead_in-inductance] inductance du câble de liaison
    [lead_in-length] longueur du câble de liaison
    [lead_in-spare] réserve de câble de liaison
    [lead_in_slot-cover] recouvrement dans la saignée du câble de liaison
    [lead_in_slot-depth] profondeur de la saignée du câble de liaison
    [lead_in_slot-width] largeur de la saignée du câble de liaison
    [opening-edge_setback] distance aux bords
    [opening-leaf_ground_gap] jeu sous le vantail
    [opening-leaf_height] hauteur du vantail
    [opening-leaf_open] où se trouve la porte ouverte
    [opening-unit_side] côté du détecteur
    [roles] boucles
    [saw-blade_diameter] diamètre de la lame
    [saw-core_diameter] diamètre des trous de coin
    [saw-corner] coins
    [sealant-cartridge] cartouche de scellant
    [sealant-data_sheet-activation_energy_kj_per_mol] énergie d'activation du scellant, kJ/mol
    [sealant-data_sheet-at_relative_humidity_percent] humidité de la fiche technique, %
    [sealant-data_sheet-at_temperature] température de la fiche technique
    [sealant-data_sheet-damp_slot_allowed] saignée humide permise
    [sealant-data_sheet-minimum_application_temperature] température minimale d'application
    [sealant-data_sheet-skin_over] temps pour former une peau
    [sealant-finish_below_surface] scellant sous la surface
    [sealant-kind] scellant
    [sealant-data_sheet-pour_temperature] température de coulée
    [sealant-shelf_life] durée de conservation du scellant
    [slot-cover] recouvrement
    [slot-depth] profondeur de la saignée
    [slot-width] largeur de la saignée
    [start] début du scellement
    [surface] chaussée
    [surface_condition] saignée
    [temperature] température du fil
    [vehicles] véhicules qui doivent être détectés
    [weather-conditions] météo
    [weather-conditions-surface] température de la dalle
    [wire-gauge] calibre du fil
    [wire-over_insulation] fil sur son isolant
    [wire-over_jacket] gaine
    [wiring] raccordement
    [work_duration] temps pour sceller
   *[other] une autre valeur que personne n'a indiquée
}
