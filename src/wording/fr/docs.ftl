### The pages of the documentation: headings, labels and the words of tables. What stands under them is the description.

docs-title = Requêtes et réponses
docs-lead = Tout ce qu'on peut demander au service, avec les champs, un exemple et la réponse de chaque requête.
docs-skip = Aller aux requêtes
docs-pages = Pages
docs-all = Toutes les requêtes
docs-guide = Guide d'intégration
docs-changes = Changements
docs-description = Description avec tous les exemples
docs-compact-description = Description sans réponses
docs-try = Essayer
docs-filter = Filtrer
docs-filter-hint = Une partie d'une adresse ou des mots du sujet. La touche Entrée ouvre la première.
docs-shown = Affichées :
docs-nothing-fits = Aucune requête ne contient tous ces mots. Enlevez-en un.
docs-group = { $group ->
    [calculations] Calculs
    [drawings] Dessins et fiches
    [reference] Tables de référence
   *[service] Le service lui-même
}
docs-more = Tout sur cette requête
docs-not-loaded = Le chargement a échoué. Ouvrez sa page ou réessayez dans un moment.

## One request

docs-parameters = Paramètres
docs-request = Requête
docs-fields = Champs de la requête
docs-answer = Réponse
docs-answer-fields = Champs de la réponse
docs-answer-file = Ouvrir cette réponse à part
docs-picture = Le dessin qui répond au premier exemple
docs-statuses = États
docs-status = État

## Tables of fields

docs-field = Champ
docs-value = Valeur
docs-meaning = Signification
docs-required = obligatoire
docs-list-of = liste de
docs-map-of = selon vos propres noms :
docs-kind = { $kind ->
    [quantity] texte avec son unité
    [text] texte
    [time] date et heure
    [number] nombre
    [integer] nombre entier
    [boolean] vrai ou faux
    [file] fichier
   *[object] objet
}
docs-bounds = { $bounds ->
    [both] de { $least } à { $greatest }
    [least] au moins { $least }
   *[greatest] au plus { $greatest }
}{ $things ->
    [entries] {" "}éléments
    [characters] {" "}caractères
   *[none] {""}
}
docs-units = Unités :
docs-for-example = Par exemple
