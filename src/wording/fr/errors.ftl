### What is wrong with a field, and what to send instead.

## Quantities

errors-dimension = { $dimension ->
    [length] une longueur
    [temperature] une température
    [temperature_difference] un écart de température
    [speed] une vitesse
    [volume] un volume
    [duration] une durée
    [inductance_per_length] une inductance par longueur
    [depth_per_day] une profondeur par jour
    [wire_size] un calibre de fil
    [share] une part en pour cent
    [amount_of_money] une somme d'argent
   *[quantity] une grandeur
}
errors-dimension-at-start = { $dimension ->
    [length] Une longueur
    [temperature] Une température
    [temperature_difference] Un écart de température
    [speed] Une vitesse
    [volume] Un volume
    [duration] Une durée
    [inductance_per_length] Une inductance par longueur
    [depth_per_day] Une profondeur par jour
    [wire_size] Un calibre de fil
    [share] Une part en pour cent
   *[quantity] Une grandeur
}
errors-dimension-without-article = { $dimension ->
    [length] de longueur
    [temperature] de température
    [temperature_difference] d'écart de température
    [speed] de vitesse
    [volume] de volume
    [duration] de durée
    [inductance_per_length] d'inductance par longueur
    [depth_per_day] de profondeur par jour
    [wire_size] de calibre de fil
    [share] de part en pour cent
   *[quantity] de cette grandeur
}
errors-examples = « { $us_example } » ou « { $metric_example } »
errors-text-too-long = Le texte compte plus de { $max_characters } caractères.
errors-unit-counts-whole = Cette unité se compte en nombres entiers.
errors-no-number = { errors-dimension-at-start } commence par un nombre; « { $text } » n'en a aucun qui puisse être lu.
errors-number-form = Le nombre de « { $text } » a une forme qui n'est pas lue.
errors-write-number = Écrivez { errors-examples }.
errors-comma = « { $text } » a une virgule dans son nombre.
errors-write-point = Écrivez « { $with_point } », avec un point.
errors-write-joined-or-point = Écrivez « { $without_separator } », sans séparateur, ou « { $with_point } », avec un point.
errors-write-without-comma = Écrivez le nombre sans virgule, avec un point pour les décimales, comme { errors-examples }.
errors-no-unit = { errors-dimension-at-start } demande une unité; « { $text } » n'en a pas.
errors-unit-unknown = « { $unit } » n'est pas une unité connue ici.
errors-unit-wrong-dimension = « { $unit } » n'est pas une unité { errors-dimension-without-article }.
errors-write-quantity = Écrivez { errors-dimension } comme { errors-examples }.
errors-out-of-range = « { $text } » est en dehors de la plage de { $least } à { $greatest }.
errors-send-in-range = Envoyez { errors-dimension } de { $least } à { $greatest }, comme { errors-examples }.
errors-write-joined = Écrivez « { $without_separator } », sans séparateur de milliers.
errors-parts = « { $text } » contient autre chose qu'un nombre et son unité, ou des parties qui ne vont pas ensemble.
errors-meant-quantity = Vouliez-vous dire « { $suggestion } »? Sinon, écrivez { errors-dimension } comme { errors-examples }.

## Counts, sizes of lists and lengths of texts

errors-not-allowed = La valeur est en dehors de ce que ce champ permet : { errors-allowed }.
errors-send-allowed = Envoyez { errors-allowed }.
errors-allowed = { $bounds ->
    [both] de { $least } à { $greatest }{ errors-things }
    [least] au moins { $least }{ errors-things }
    [greatest] au plus { $greatest }{ errors-things }
   *[none] une autre valeur
}
errors-things = { $things ->
    [items] {" "}éléments
    [characters] {" "}caractères
   *[none] {""}
}

## The structure of a body

errors-field-unknown = Il n'y a pas de champ { $field } ici.
errors-did-you-mean = Vouliez-vous dire { $meant }?
errors-meant = { $meant }
errors-known-fields = Connus ici : { $known }.
errors-field-missing = Le champ { $field } est requis et n'a pas été envoyé.
errors-add-field = Ajoutez { $field }; sa description dit ce qu'il accepte.
errors-field-twice = Le champ { $field } figure deux fois dans un même objet.
errors-send-once = Envoyez-le une seule fois.
errors-value-unknown = « { $value } » n'est pas une valeur que ce champ accepte.
errors-known-values = L'une de ces valeurs : { $known }.
errors-id-prefix = « { $value } » ne peut pas commencer un identifiant.
errors-send-id-prefix = Envoyez une lettre, puis des lettres sans accent, des chiffres, des traits d'union ou des soulignés, { $max_characters } au plus en tout.
errors-null = Ceci ne peut pas rester vide.
errors-send-value = Envoyez une valeur.
errors-list-too-long = La liste compte plus de { $max_items } éléments, le maximum que ce service accepte dans une liste.
errors-send-fewer-items = Envoyez au plus { $max_items } éléments.
errors-value-not-taken = Le champ n'accepte pas { $value }.
errors-send-whole-number = Envoyez un nombre entier dans la plage du champ; sa description la donne.
errors-type-wrong = Il y a { $sent ->
    [array] une liste
    [object] un objet
    [text] un texte
    [number] un nombre
    [truth_value] une valeur vraie ou fausse
   *[other] une autre valeur
} là où il faut { $expected }.
errors-send-type = Envoyez { $expected }.
errors-type = { $type ->
    [text] un texte
    [number] un nombre
    [whole_number] un nombre entier
    [truth_value] vrai ou faux (true ou false)
    [array] une liste
    [object] un objet
    [listed_text] l'un des textes de la liste
   *[other] un autre type
}
errors-type-of-text = { errors-dimension } sous forme de texte, par exemple « { $example } »
errors-type-other = { $type }

## Batches

errors-batch-too-large = { $items } éléments dépassent ce qu'un lot peut compter ici.
errors-batch-over-burst = L'appelant peut envoyer { $max_items } demandes à la fois, et un élément d'un lot compte pour une.
errors-batch-item-location = Un lot ne va pas chercher de prévisions pour un seul élément.
errors-batch-item-location-hint = Envoyez la météo heure par heure, ou un seul lieu pour tous les éléments.

## Forecasts

errors-no-forecasts = Ce service ne va pas chercher de prévisions.
errors-forecast-not-covered = Le service météo n'a pas de prévisions horaires pour ce lieu.
errors-send-conditions = Envoyez plutôt la météo heure par heure.

## Between fields

errors-role-twice = Le rôle « { $role-label } » figure deux fois.
errors-role-twice-hint = Envoyez chaque rôle une seule fois; plusieurs boucles côte à côte résultent de la largeur.
errors-observation-twice = « { $observation-label } » figure deux fois.
errors-observation-twice-hint = Envoyez chaque observation une seule fois.
errors-simulated-vehicle = Un détecteur qui ne fonctionne pas ne peut pas être essayé avec un véhicule.
errors-simulated-vehicle-hint = Omettez ce que le véhicule a montré, ou dites que le détecteur fonctionne.
errors-nothing-observed = Il n'y a rien sur quoi raisonner.
errors-nothing-observed-hint = Envoyez au moins une lecture, une observation ou une substitution.
errors-empty-record = Le relevé de mise en service ne contient aucun chiffre.
errors-empty-record-hint = Envoyez l'inductance, la résistance ou le facteur de qualité du relevé, ou omettez le relevé.
errors-number-and-over-range = { $field ->
    [insulation_megohm] L'isolement
    [resistance_ohm] La résistance
    [inductance_uh] L'inductance
   *[other] La lecture
} est à la fois un nombre et au-dessus de la gamme.
errors-number-and-over-range-hint = Envoyez le nombre, ou dites que la lecture était au-dessus de la gamme, pas les deux.
errors-test-voltage-alone = Il y a une tension d'essai et aucune lecture d'isolement.
errors-test-voltage-alone-hint = Envoyez avec elle l'isolement qui a été lu, ou omettez la tension.
errors-whole-capacitance = La capacité ne dit rien sans celle de la paire entière.
errors-whole-capacitance-hint = Envoyez celle d'une paire semblable qui est entière, ou le chiffre de la fiche technique du câble multiplié par sa longueur; ou omettez la capacité.
errors-test-twice = L'essai « { $test-label } » figure deux fois.
errors-test-twice-hint = Envoyez chaque essai une seule fois, avec ce qu'il a montré en dernier.
errors-test-outcome = L'essai « { $test-label } » ne peut pas montrer ceci : { $outcome-label }.
errors-test-outcome-hint = Envoyez l'un de ces résultats : { $outcomes }.
errors-sku-of-item = Le numéro { $sku } est le nom d'un article de la liste de matériel.
errors-sku-of-item-hint = Donnez-lui un numéro bien à vous.
errors-label-twice = Le nom « { $label } » figure deux fois.
errors-label-twice-quantity-hint = Donnez à chaque boucle un nom qui lui est propre; des boucles semblables n'en font qu'une avec une quantité.
errors-thin-jacket = La gaine est plus mince que l'un des fils qu'elle contient.
errors-thin-jacket-hint = Envoyez le diamètre par-dessus la gaine, ou le diamètre sur l'isolant des fils qu'elle contient.
errors-corner-cut-unasked = Les coins doivent être faits sans coupes diagonales (« { $corner-label } »), et une boucle a des coupes de coin.
errors-corner-cut-unasked-hint = Omettez la coupe de coin de la boucle, ou faites couper les coins en diagonale.
errors-deep-cover = Le recouvrement est aussi profond que la saignée.
errors-deep-cover-hint = Envoyez une saignée plus profonde ou moins de recouvrement.
errors-weather-not-fetched = La météo du lieu n'a pas été obtenue.
errors-no-weather = On ne sait rien de la météo.
errors-no-weather-hint = Envoyez la météo heure par heure.
errors-weather-twice = La météo est donnée deux fois, heure par heure et par un lieu.
errors-weather-twice-hint = Envoyez les heures ou le lieu, pas les deux.
errors-start-outside-weather = Le début est en dehors de la météo fournie.
errors-start-outside-weather-hint = Envoyez un début à partir de { $begin } et avant { $end }, ou une météo qui l'atteint.
errors-no-humidity = On ne sait rien de l'eau dans l'air.
errors-no-humidity-hint = Envoyez l'humidité relative ou le point de rosée.
errors-dew-point-above-air = Le point de rosée est au-dessus de la température de l'air.
errors-dew-point-above-air-hint = Envoyez le point de rosée de la même heure que l'air, tout au plus aussi haut.
errors-dew-point-differs = À cette humidité, le point de rosée est de { $dew_point }.
errors-dew-point-differs-hint = Envoyez l'humidité relative ou le point de rosée, pas les deux.
errors-row-twice = Le même instant que la ligne précédente, décalages horaires compris.
errors-row-twice-hint = Envoyez chaque heure une seule fois.
errors-row-too-early = La ligne est antérieure à la précédente, décalages horaires compris.
errors-row-too-early-hint = Envoyez les lignes dans l'ordre du temps.
errors-gap-between-rows = Il y a { $gap } entre cette ligne et la précédente.
errors-gap-between-rows-hint = Envoyez une ligne pour chaque heure; il peut y avoir au plus 3 h entre deux lignes.
errors-weather-too-long = La météo couvre plus de 14 jours.
errors-weather-too-long-hint = Envoyez au plus 14 jours.
errors-no-time = Le texte n'est pas une heure avec un décalage horaire.
errors-no-time-hint = Envoyez une heure comme « 2026-01-20T07:00:00-05:00 » ou « 2026-01-20T12:00:00Z », avec son décalage horaire, de 1970 à 2200.
errors-no-date = Le texte n'est pas une date.
errors-no-date-hint = Envoyez une date comme « 2026-01-31 ».
errors-application-temperatures = La température maximale d'application n'est pas plus haute que la minimale.
errors-application-temperatures-hint = Envoyez les deux d'après la fiche technique du scellant, la plus haute comme maximale.
errors-made-after-start = Le scellant est fabriqué après le début.
errors-made-after-start-hint = Envoyez la date de fabrication, ou un début plus tardif.
errors-cure-times-order = { $later ->
    [open_to_traffic] Le temps jusqu'à la remise à la circulation
   *[full_cure] Le temps jusqu'au mûrissement complet
} est plus court que { $earlier ->
    [open_to_traffic] celui jusqu'à la remise à la circulation
   *[skin_over] celui jusqu'à la formation d'une peau
}.
errors-cure-times-order-hint = Envoyez les temps jusqu'à la peau, jusqu'à la remise à la circulation et jusqu'au mûrissement complet, chacun au moins aussi long que le précédent.
errors-needed-before-start = La circulation est requise avant le début des travaux.
errors-needed-before-start-hint = Envoyez une heure après le début.
errors-cure-without-weather-hint = Envoyez la météo, ou demandez le plan sans le mûrissement.
errors-cure-without-weather = Le mûrissement est demandé sans météo.
errors-weather-without-start-hint = Envoyez le moment où le scellant est appliqué, comme « 2026-01-20T13:00:00-05:00 ».
errors-weather-without-start = La météo a été envoyée sans début.
errors-label-twice-hint = Donnez à chaque boucle un nom qui lui est propre.
errors-vehicle-and-plate = Une classe de véhicule et une plaque ont toutes deux été envoyées.
errors-vehicle-and-plate-hint = Envoyez l'une des deux.
errors-no-vehicle = Ni une classe de véhicule ni une plaque n'a été envoyée.
errors-no-vehicle-hint = Envoyez une classe de véhicule, ou une plaque avec sa largeur, sa longueur et sa hauteur au-dessus de la boucle.
errors-wide-setback = Deux retraits prennent presque toute la largeur.
errors-wide-setback-hint = Envoyez un retrait d'au plus 40 % de la largeur.
errors-lead-in-parts = Ce qui est dans le trait de scie et ce qui est dans un conduit sont ensemble plus longs que le câble de liaison.
errors-batch-shared-field = Les éléments d'un lot ne partagent pas le champ { $name }.
errors-batch-shared-field-hint = Envoyez une ouverture dans chaque élément, et la météo à côté des éléments.
errors-batch-id-twice = Deux éléments portent le nom { $id }.
errors-batch-id-twice-hint = Donnez à chaque élément un nom qui lui est propre, car une seule liste pour tous les distingue par lui; ou omettez cette liste.
errors-lead-in-shared = Plus de câble de liaison est prévu dans une saignée partagée que dans des saignées en tout.
errors-lead-in-shared-hint = Envoyez une longueur plus courte dans la saignée partagée, ou une plus longue dans les saignées en tout, dont elle fait partie.
errors-lead-in-parts-hint = Envoyez une longueur qui couvre les deux, ou des parties plus courtes.
errors-thin-insulation = Le diamètre sur l'isolant n'est pas plus grand que le conducteur nu de { $gauge }.
errors-thin-insulation-hint = Envoyez le diamètre sur l'isolant d'après la fiche technique du fil, ou un calibre plus petit.
errors-large-corner-cut = Les coupes de coin prendraient presque tout un côté.
errors-large-corner-cut-hint = Envoyez une coupe de coin d'au plus 45 % du côté le plus court (d'une cellule, pour un quadripôle).
errors-detector-limits = { $what ->
    [inductance] L'inductance minimale
   *[frequency] La fréquence minimale
} ({ $least }) n'est pas inférieure à la maximale ({ $greatest }).
errors-detector-limits-hint = Envoyez les deux limites d'après la fiche technique du détecteur, la plus petite comme minimum.
errors-detector-step = Le cran { $step } est en dehors de la plage de 0,001 à 50 pour cent.
errors-detector-step-hint = Envoyez la variation en pour cent à laquelle ce cran commute, de 0,001 à 50.
errors-no-money = « { $text } » n'est pas une somme d'argent.
errors-no-money-hint = Envoyez un texte comme « 24.50 » : jusqu'à 9 chiffres, un point, jusqu'à 6 chiffres, sans signe ni monnaie.
errors-currency-upper-case = Envoyez « { $code } », en majuscules.
errors-send-currency = Envoyez un code comme « USD » ou « EUR ».
errors-no-currency = « { $currency } » n'est pas une monnaie d'ISO 4217.
errors-currency-without-minor-unit-hint = Envoyez la monnaie dans laquelle vous payez, comme « USD » ou « EUR ».
errors-currency-without-minor-unit = « { $currency } » n'a pas de sous-unité, donc des sommes dans cette monnaie ne peuvent pas être arrondies.
errors-fixed-role-twice = La boucle du rôle « { $role-label } » est décidée deux fois.
errors-fixed-role-twice-hint = Envoyez une entrée par rôle.
errors-fixed-role-absent = Le rôle « { $role-label } » n'est pas parmi les rôles de ce chantier.
errors-fixed-role-absent-hint = Ajoutez-le à ceux-ci, ou omettez cette entrée.
errors-fixed-loop-wide = Cette boucle est plus large que l'ouverture.
errors-fixed-loop-wide-hint = Envoyez un côté en travers qui n'est pas plus long que la largeur de l'ouverture.
errors-fixed-distance-on-line = Une boucle du rôle « { $role-label } » est à cheval sur la ligne et n'a pas de distance à celle-ci.
errors-fixed-distance-on-line-hint = Omettez la distance pour ce rôle.
errors-no-steel-with-depth = Il est dit qu'il n'y a pas d'acier dessous, et à quelle profondeur il est.
errors-no-steel-with-depth-hint = Omettez la profondeur, ou dites qu'il y a de l'acier.
