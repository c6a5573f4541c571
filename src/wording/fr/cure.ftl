### Whether to seal, and when traffic may return.

## The weather at the start, and until the sealant is safe

cure-slab-frozen = { $moment ->
    [later] Le { $time }, la dalle
   *[start] La dalle
} { $surface_origin ->
    [assumed] est supposée à { $surface }, comme les heures précédentes l'ont laissée
   *[measured] est à { $surface }
} : gelée, avec du givre dessus ou près de se former, et rien n'y adhère. L'air doux ne réchauffe pas la dalle. Attendez que la dalle elle-même soit au-dessus de { $warm } et sèche.
cure-frozen-dry-slab = La dalle { $surface_origin ->
    [assumed] est supposée
   *[measured] est
} à { $surface } : gelée, mais déclarée sèche, sans givre, et assez chaude d'après la fiche technique de ce scellant. Essuyez la saignée avec un chiffon sec et cherchez du givre avant chaque cartouche; une saignée sciée à l'eau par ce froid contient de la glace.
cure-slab-below-minimum = { $moment ->
    [later] Le { $time }, la dalle
   *[start] La dalle
} { $surface_origin ->
    [assumed] est supposée à { $surface }, comme les heures précédentes l'ont laissée
   *[measured] est à { $surface }
}, sous les { $minimum } que ce scellant demande. Attendez que la dalle et l'air les atteignent et continuent de monter.
cure-measure-slab = Mesurez la température de la dalle avant de décider.
cure-air-below-minimum = { $moment ->
    [later] Le { $time }, l'air
   *[start] L'air
} est à { $air }, sous les { $minimum } que ce scellant demande. Attendez que la dalle et l'air les atteignent et continuent de monter.
cure-above-maximum = { $moment ->
    [later] Le { $time }, { $field ->
        [air] l'air
       *[surface] la dalle
    }
   *[start] { $field ->
        [air] L'air
       *[surface] La dalle
    }
} est à { $hottest }, au-dessus des { $maximum } que permet la fiche technique. Travaillez aux heures plus fraîches, à l'abri du soleil.
cure-near-dew-point = { $moment ->
    [later] Le { $time }, la dalle
   *[start] La dalle
} { $surface_origin ->
    [assumed] est supposée
   *[measured] est
} à { $surface }, { $side ->
    [at] au point de rosée de { $dew_point } : de l'eau s'y condense
    [below] { $distance } sous le point de rosée de { $dew_point } : de l'eau s'y condense
   *[above] seulement { $distance } au-dessus du point de rosée de { $dew_point } : de l'eau peut s'y condenser
}. Attendez qu'elle soit { $least_margin } au-dessus, ou séchez et réchauffez la saignée.
cure-rain-before-safe = Le { $time }, { $outlook ->
    [likely] de la pluie ou de la neige est probable ({ $probability })
    [amount] { $fall } de pluie ou de neige sont attendus
   *[due] de la pluie ou de la neige est attendue
}, avant le moment où { $safe_event }. Commencez pendant une période sèche, ou prenez un scellant qui prend plus tôt.
cure-cold-before-safe = Le { $time }, l'air descend à { $air }, sous les { $minimum } demandés, avant le moment où { $safe_event }. Commencez plus tôt, par une journée plus chaude, ou prenez un scellant qui prend plus vite.
cure-cold-after-skin = Le { $time }, l'air descend à { $air }. { $skin ->
    [formed] La peau se forme avant le froid
   *[forming] La peau devrait se former avant le froid, sans que ce soit certain
}, et le froid ne fait que ralentir le mûrissement derrière elle. Avant le retour des roues, vérifiez que rien ne colle, quoi que dise l'horloge.
cure-saw-water-freezes = Le { $time }, pendant le sciage des saignées, { $field ->
    [air] l'air
   *[surface] la dalle
} est à { $coldest } : l'eau de la scie gèle dans la saignée et sur la voie. Sciez quand la dalle et l'air sont au-dessus du point de congélation.
cure-rain-possible = Le { $time }, { $outlook ->
    [likely] de la pluie ou de la neige est possible ({ $probability })
    [amount] il peut tomber { $fall } de pluie ou de neige
   *[due] de la pluie ou de la neige est possible
}, avant que le scellant n'y résiste. Ayez sous la main une protection qui ne touche pas le scellant.
cure-rain-after-safe = Le { $time }, { $outlook ->
    [likely] de la pluie ou de la neige est probable ({ $probability })
    [amount] { $fall } de pluie ou de neige sont attendus
   *[due] de la pluie ou de la neige est attendue
}, peu après le moment où { $safe_event }, au plus tard le { $safe_at }. Commencez à l'heure, et ayez sous la main une protection qui ne touche pas le scellant.
cure-rained-before = De la pluie ou de la neige était attendue jusqu'au { $rained_until }. Une saignée qui paraît sèche ne l'est pas forcément : soufflez-la, réchauffez-la et pressez un essuie-tout sec sur le fond avant d'appliquer le scellant.
cure-rain-unknown = Les prévisions fournies ne disent pas s'il pleut avant que le scellant résiste à l'eau. Regardez le ciel, ou prenez des prévisions qui donnent la probabilité de pluie.
cure-weather-ends-before-sealed = Les prévisions s'arrêtent le { $weather_end }, avant que le dernier bout soit scellé. Ce qui vient ensuite n'est pas deviné : prenez des prévisions sur plus d'heures.
cure-weather-too-short = Les prévisions s'arrêtent le { $weather_end }, avant le moment où { $safe_event }. Ce qui vient ensuite n'est pas deviné : prenez des prévisions sur plus d'heures.
cure-surface-unknown = Personne n'a mesuré la dalle, et la météo fournie ne commence que le { $weather_begin } : on ne sait pas ce que la nuit a laissé dans la dalle. Elle est supposée à { $surface }, et c'est trop froid pour s'y fier. Mesurez la dalle à côté de la saignée, et donnez sa température.
cure-surface-assumed-by-few-hours = Personne n'a mesuré la dalle, et la météo fournie ne commence que le { $weather_begin } : on ne sait pas ce que les heures précédentes ont laissé dans la dalle. Elle est supposée à { $surface }. Mesurez-la à côté de la saignée avant de décider, et donnez sa température.
cure-surface-measured-before = La dalle a été mesurée quelques heures plus tôt. Elle est supposée à { $surface } : refroidie depuis autant que l'air, et pas réchauffée. Mesurez-la de nouveau à côté de la saignée.
cure-surface-assumed = Personne n'a mesuré la dalle; elle est supposée à { $surface }, la température de l'air la plus basse des 12 dernières heures, et moins la nuit. Mesurez-la à côté de la saignée, et donnez sa température.
cure-hot-slab = Il fait { $warmest }, et personne n'a dit par quelle chaleur ce scellant peut être appliqué : à la chaleur, il forme vite une peau, et le gaz sous la peau fait des bulles. Cherchez la température la plus élevée sur la fiche technique, ou travaillez aux heures plus fraîches.
cure-short-pot-life = À { $warmest }, le scellant mélangé { $limit ->
    [pot_life] se travaille pendant
   *[set] prend en
} environ { $band ->
    [one] { $least }
   *[range] { $least } à { $most }
}. Mélangez peu, coulez aussitôt et gardez les deux composants à l'ombre.
cure-sets-before-emptied = À { $warmest }, ce scellant { $limit ->
    [pot_life] se travaille pendant
   *[set] prend en
} environ { $band ->
    [one] { $least }
   *[range] { $least } à { $most }
}, moins que les { $cartridge } que demande une cartouche : il prend dans la buse.
cure-cooler-hours = Travaillez aux heures plus fraîches : commencez { $windows }.
cure-window = entre le { $from } et le { $until }
cure-cooler-hours-stopped = Des heures plus fraîches viennent, mais autre chose y empêche le travail.
cure-no-cooler-hours = Aucune heure de ces prévisions n'est assez fraîche : prenez un autre jour, ou un scellant qui prend plus lentement.
cure-fit-to-apply = La saignée est sèche, la dalle est à { $surface }, { $margin } au-dessus du point de rosée, et la pluie est peu probable avant le moment où { $safe_event }, au plus tard le { $safe_at }. Commencez.

## What makes rain and cold harmless, behind "before"

cure-event-skinned-over = le scellant a sûrement formé une peau
cure-event-set = le scellant a sûrement pris
cure-event-cold = le scellant a sûrement refroidi

## The slot and the wire in it

cure-slot-wet-for-hot-sealant = Il y a de l'eau dans la saignée, et le scellant fondu en fait de la vapeur qui éclabousse. Soufflez et séchez d'abord la saignée.
cure-slot-wet-by-rain = De la pluie ou de la neige était attendue jusqu'au { $rained_until }, et personne n'a dit que la saignée est sèche depuis : elle est supposée mouillée.
cure-slot-dries = Par ce temps, elle est sèche le { $dry }. Regardez-la à ce moment-là, ou soufflez-la et séchez-la avant.
cure-slot-stays-wet = Elle ne sèche pas par ce temps. Soufflez-la, séchez-la à l'air chaud, et dites alors dans quel état elle est.
cure-slot-wet = Il y a de l'eau dans la saignée : elle gâche le scellement. Soufflez-la, séchez la saignée, ne laissez plus entrer d'eau, puis commencez.
cure-frost-on-slab = Du givre ou de la glace couvre la dalle, et rien n'y adhère. Faites fondre cette glace, séchez la saignée et réchauffez la dalle elle-même avant de commencer.
cure-slot-damp-for-hot-sealant = La saignée est humide, et le scellant fondu en fait de la vapeur : des bulles, des éclaboussures, aucune adhérence. Séchez d'abord la saignée à l'air chaud.
cure-slot-damp-not-allowed = La saignée est humide, et le scellant { $kind-code ->
    [one_part_moisture_cure] à un composant
    [two_part_reactive] à deux composants
   *[hot_applied] appliqué à chaud
} n'adhère pas à l'humide, sauf si sa fiche technique le dit. Séchez d'abord la saignée.
cure-slot-damp = La saignée est humide. Soufflez-la et séchez-la jusqu'à ce qu'un essuie-tout ne montre plus rien; un film d'eau fait lâcher le scellement.
cure-surface-condition-assumed = Personne n'a dit si la saignée est sèche. Vérifiez qu'elle l'est, jusqu'au fond, avant d'appliquer le scellant.
cure-insulation-too-low = L'isolant supporte { $rating } et le scellant est coulé à { $pour } : il ramollirait et les fils se toucheraient. Prenez un fil et une gaine prévus pour la coulée, ou un scellant qui s'applique à froid.
cure-insulation-unknown = Personne n'a dit quelle température l'isolant et la gaine supportent. Cherchez cette valeur sur la fiche technique du fil et donnez-la : elle doit être au moins égale aux { $pour } de la coulée.

## The age of the sealant

cure-past-shelf-life = La durée de conservation du scellant { $moment ->
    [past] a pris fin le { $ends_on }
   *[during] prend fin le { $ends_on }, avant que le dernier bout soit scellé
}. Prenez du scellant frais; un vieux scellant mûrit mal ou pas du tout.
cure-shelf-life-short = La durée de conservation du scellant prend fin le { $ends_on }, { $days_left ->
    [0] le jour du début
    [one] dans { $days_left } jour
   *[other] dans { $days_left } jours
}. Utilisez-le en premier, et essayez-le sur une chute.

## When traffic may return

cure-weather-ends-before-traffic = Les prévisions s'arrêtent avant que la voie puisse sûrement être remise à la circulation; personne ne peut donc dire si l'échéance du { $needed_open_by } est tenue. Prenez des prévisions sur plus d'heures.
cure-may-open-late = La voie peut être remise à la circulation entre le { $earliest } et le { $latest }, et elle est requise le { $needed_open_by }. Prévoyez un détour.
cure-may-open-after-weather = La voie peut être remise à la circulation à partir du { $earliest }, mais peut-être seulement après la fin des prévisions fournies; elle est requise le { $needed_open_by }. Prévoyez un détour.
cure-opens-late = La voie peut être remise à la circulation le { $earliest } au plus tôt, et elle est requise le { $needed_open_by }.
cure-opens-after-weather = La voie ne peut pas être remise à la circulation dans la durée des prévisions fournies, et elle est requise le { $needed_open_by }.
cure-no-alternative = Rien dans ces prévisions ne le permet : prenez une heure plus tardive, ou un autre jour.
cure-alternatives = Ce qui le permettrait, dans une saignée sèche : { $alternatives }.
cure-alternative-own = ce scellant à partir du { $earliest_start }
cure-alternative-other = un scellant { $kind-code ->
    [one_part_moisture_cure] à un composant
    [two_part_reactive] à deux composants
   *[hot_applied] appliqué à chaud
} à partir du { $earliest_start }
cure-traffic-by-skin = Aucune fiche technique ne dit quand la voie peut être remise à la circulation; une peau mûrie de { $skin } en tient donc lieu : un choix fait ici. Dessous, le scellant reste mou pendant des jours. Tenez les roues à l'écart jusqu'à ce que rien ne colle; là où elles doivent revenir le jour même, prenez un scellant à deux composants.

## What the times rest on

cure-front-calibrated = Sans fiche technique, la profondeur de mûrissement est calée sur la pratique, non validée : une saignée de 1-1/4 in (32 mm) mûrit à cœur en 3 à 7 jours à 23 °C (73 °F) et 50 % d'humidité. Donnez ce qu'indique la fiche technique : la profondeur qui mûrit en un jour, ou le temps jusqu'au mûrissement complet.
cure-usual-times = Ce que la fiche technique ne donne pas est l'habituel : prise en 10 à 15 min à 23 °C (73 °F), circulation après 25 à 60 min et mûrissement complet en 60 min au plus à 25 °C (77 °F). Donnez ce qu'indique la fiche technique : les temps jusqu'à la peau, jusqu'à la remise à la circulation et jusqu'au mûrissement complet.
cure-cools-in-usual-time = Le scellant appliqué à chaud ne mûrit pas, il refroidit : il supporte la circulation quand il est froid et que rien ne colle, ce qui est pris pour 15 à 60 min après la coulée. Donnez le temps après lequel la fiche technique permet la remise à la circulation.
cure-cools-in-time-of-sheet = Le scellant appliqué à chaud ne mûrit pas, il refroidit. Le temps de la fiche technique vaut pour sa propre saignée et sa propre météo : vérifiez que rien ne colle.

## Why a default was taken

cure-usual-work = Personne n'a dit combien de temps dure le scellement, et aucune estimation n'a été faite.
cure-work-of-estimate = Le scellement de toutes les saignées, d'après la main-d'œuvre de ce plan; tout compte à partir du dernier bout.
cure-usual-surface-condition = Personne n'a dit dans quel état est la saignée; sèche, sauf si la pluie l'a laissée mouillée. Vérifiez vous-même qu'elle est sèche.
cure-surface-by-air = La température de l'air la plus basse des 12 dernières heures fournies, la nuit 2 °C (3,6 °F) de moins; pendant 3 heures après la mesure d'une dalle, celle de cette dalle, moins ce que l'air a perdu. De même pour chaque heure sans dalle mesurée.
cure-minimum-gives-way = Les 40 °F habituels cèdent devant la température maximale d'application fournie; la fiche technique fait foi.
cure-usual-minimum-temperature = 40 °F et en hausse, pour toute sorte de scellant; la fiche technique fait foi.
cure-reference-climate = Le climat de laboratoire auquel les fiches techniques se rapportent.
cure-usual-skin-over = À peu près ce que met un scellant à un composant par temps doux; au plus tôt, les deux tiers.
cure-usual-activation-energy = Les temps les plus tardifs valent avec elle, les plus précoces sans elle : le froid ralentit le mûrissement plus que l'air sec à lui seul.
cure-damp-slot-not-allowed = Une saignée humide seulement là où la fiche technique le permet.
cure-usual-shelf-life = Un an à partir de la date de fabrication.
