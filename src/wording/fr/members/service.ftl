### The labels and descriptions of closed lists of the service: problems, faults, choices of a drawing.

## DrawingUnits

DrawingUnits-auto = Selon la largeur
    .description = Le système dans lequel la largeur est écrite.
DrawingUnits-us = Unités américaines
    .description = D'abord les pieds et les pouces, avec des cotes rondes dans ces unités.
DrawingUnits-metric = Métrique
    .description = D'abord les mètres et les millimètres, avec des cotes rondes dans ces unités.

## ProblemCode

ProblemCode-malformed_json = Le corps n'est pas du JSON
    .description = Le corps n'est pas un seul texte JSON : erreur de syntaxe, texte qui n'est pas en UTF-8, nombre hors limites, ou objets et listes imbriqués trop profondément. Envoyez un seul objet JSON.
ProblemCode-preflight_refused = Appel de cette page refusé
    .description = Une page a demandé si elle peut appeler, et elle ne le peut pas : son origine, sa méthode ou son en-tête n'est pas de ceux qui sont acceptés des pages d'autres sites. L'exploitant fixe les origines.
ProblemCode-unauthorized = Clé requise
    .description = Le service ne répond qu'aux clients dont il connaît la clé. Envoyez ainsi la clé que son exploitant vous a donnée : Authorization: Bearer KEY.
ProblemCode-key_not_for_here = Clé non destinée à cet usage
    .description = La clé est destinée à certaines pages et à certaines adresses, et cette requête ne vient pas d'une de ces pages ou n'est pas pour une de ces adresses. L'exploitant du service inscrit les origines et les adresses de chaque clé de ce genre.
ProblemCode-not_found = Rien ici
    .description = L'adresse n'existe pas. La description à /openapi.json énumère celles qui existent.
ProblemCode-method_not_allowed = Méthode non permise
    .description = L'adresse existe, mais pas pour cette méthode. L'en-tête Allow énumère les méthodes.
ProblemCode-request_timeout = Corps non reçu à temps
    .description = Le corps n'est pas arrivé dans le délai. Envoyez-le d'un seul trait; tous les appels peuvent être répétés sans risque.
ProblemCode-body_too_large = Corps trop volumineux
    .description = Le corps est plus volumineux que ce que cette adresse accepte. Envoyez-en moins, ou plusieurs requêtes.
ProblemCode-unsupported_media_type = Type de média non pris en charge
    .description = Envoyez le corps en application/json, en UTF-8 et sans encodage du contenu.
ProblemCode-validation_failed = Des champs sont inutilisables
    .description = Le corps est du JSON, mais son contenu ne peut pas être calculé. Chaque champ fautif est nommé, avec ce qu'il faut envoyer à la place.
ProblemCode-rate_limited = Trop de requêtes
    .description = Le client a envoyé plus de requêtes qu'il n'en a le droit. Répétez la requête après les secondes indiquées par Retry-After. Ce qui dure coûte plus, et un élément d'un lot coûte autant qu'une requête.
ProblemCode-head_too_large = En-tête de requête trop grand
    .description = La ligne de requête et ses en-têtes sont plus grands que ce qui est accepté. Envoyez moins d'en-têtes, ou de plus courts; ce qui est à calculer va dans le corps.
ProblemCode-internal_error = Erreur chez nous
    .description = Quelque chose a échoué ici. Signalez l'identifiant de la requête à l'exploitant; la requête peut être répétée.
ProblemCode-unavailable = Pas prêt
    .description = L'instance démarre ou s'arrête. Répétez la requête après les secondes indiquées par Retry-After.
ProblemCode-overloaded = Trop de travail en cours
    .description = Il y a plus en attente que l'instance n'accepte, ou la requête a attendu aussi longtemps qu'elle le peut. Répétez la requête après les secondes indiquées par Retry-After.
ProblemCode-forecast_failed = Prévision inutilisable
    .description = Le service météo n'a pas pu être joint, ou a répondu par ce qui n'est pas une prévision. Envoyez le temps heure par heure à la place du lieu, ou répétez la requête plus tard.
ProblemCode-forecast_timeout = Prévision trop tardive
    .description = Le service météo n'a pas répondu à temps. Envoyez le temps heure par heure à la place du lieu, ou répétez la requête plus tard.
ProblemCode-forecast_unavailable = Prévision non demandée
    .description = Le service météo n'a pas été interrogé : il a échoué plusieurs fois de suite, ou trop de prévisions sont en cours. Envoyez le temps heure par heure à la place du lieu, ou répétez la requête après les secondes indiquées par Retry-After.

## FieldErrorCode

FieldErrorCode-unit_missing = Unité manquante
    .description = La quantité n'a pas d'unité. Envoyez un texte avec un nombre et une unité.
FieldErrorCode-unit_unknown = Unité inconnue
    .description = L'unité n'est pas de celles qui sont lues ici. La description du champ énumère celles qui le sont.
FieldErrorCode-unit_wrong_dimension = Unité d'une autre grandeur
    .description = L'unité mesure autre chose que ce que contient ce champ.
FieldErrorCode-decimal_comma = Virgule décimale
    .description = La virgule du nombre peut séparer les milliers : trois chiffres la suivent, ou il y a plusieurs signes. Envoyez un point pour les décimales et aucun séparateur de milliers.
FieldErrorCode-number_invalid = Nombre non valide
    .description = Aucun nombre ne peut être lu : un nombre peut être 7; 7.2; 7,2; 3/16 ou 1-1/4, en 40 caractères au plus, sans exposant.
FieldErrorCode-out_of_range = Hors limites
    .description = La valeur est hors de ce que le champ admet, là où les modèles sont valables.
FieldErrorCode-list_size = Taille de la liste
    .description = La liste a trop peu ou trop d'éléments.
FieldErrorCode-text_size = Taille du texte
    .description = Le texte est vide ou trop long.
FieldErrorCode-text_form = Forme du texte
    .description = Le texte a une forme que le champ ne prend pas. L'indication dit laquelle il prend.
FieldErrorCode-time_invalid = Heure non valide
    .description = Le texte n'est pas une heure sous la forme de la RFC 3339 avec un décalage, ni une date, de 1970 à 2200.
FieldErrorCode-time_order = Heures en désordre
    .description = Les heures d'une liste doivent avancer de ligne en ligne; le même instant ne peut figurer qu'une fois.
FieldErrorCode-time_gap = Trou entre les heures
    .description = La ligne est trop loin de la précédente : le temps n'est pas deviné à travers un trou.
FieldErrorCode-field_missing = Champ manquant
    .description = Un champ nécessaire n'a pas été envoyé.
FieldErrorCode-field_unknown = Champ inconnu
    .description = Le champ n'existe pas ici. Corrigez son nom ou omettez-le.
FieldErrorCode-field_duplicate = Champ envoyé deux fois
    .description = Le même champ figure deux fois dans un objet. Envoyez-le une fois.
FieldErrorCode-value_unknown = Valeur inconnue
    .description = La valeur n'est pas dans la liste fermée. L'indication donne la liste.
FieldErrorCode-null_not_allowed = Valeur nulle
    .description = Un champ obligatoire, un élément d'une liste ou une entrée d'une table est nul. Un champ facultatif peut être nul, et compte comme absent.
FieldErrorCode-type_wrong = Mauvais type JSON
    .description = Le champ prend un autre type JSON.
FieldErrorCode-contradiction = Contradiction
    .description = Deux champs ne peuvent pas valoir ensemble.
FieldErrorCode-forecast_off = Prévisions désactivées
    .description = Un lieu a été envoyé pour sa prévision, mais l'exploitant de cette instance n'a configuré aucun service météo. Envoyez plutôt le temps heure par heure.
FieldErrorCode-forecast_not_covered = Aucune prévision pour le lieu
    .description = Le service météo n'a pas de prévision horaire pour le lieu. Vérifiez les signes de la latitude et de la longitude, ou envoyez plutôt le temps heure par heure.

## DrawingTheme

DrawingTheme-auto = Selon l'appareil
    .description = Clair ou foncé, selon l'appareil du lecteur.
DrawingTheme-light = Clair
    .description = Encre foncée sur papier clair.
DrawingTheme-dark = Foncé
    .description = Encre claire sur papier foncé.

## DrawingContent

DrawingContent-full = Tout
    .description = L'image avec titre, légende, notes et avertissements, et avec sa propre feuille de style.
DrawingContent-figure = L'image seule
    .description = L'image avec ses cotes, pour une page qui dit le reste et a sa propre feuille de style. Si le travail ne doit pas être fait, l'image le dit quand même.
