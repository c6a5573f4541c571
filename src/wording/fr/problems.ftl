### What happened to a request that is not answered, for whoever writes or runs the program that sent it.

## The body

problems-body-larger = Le corps dépasse { $limit } octets, le maximum que cette adresse accepte. Envoyez-en moins, ou plusieurs requêtes.
problems-body-broke-off = Le corps s’est interrompu : { $reason }.
problems-body-empty = Le corps est vide. Envoyez un objet JSON.
problems-body-not-json = Le corps n’est pas un texte JSON : { $reason }. Envoyez un objet JSON.
problems-body-too-deep = Le corps imbrique plus de { $depth } objets et listes. Aucune requête n’en demande autant; envoyez un objet JSON.
problems-header-twice = L’en-tête { $header } figure plus d’une fois. N’en envoyez qu’un.
problems-fields = { $listed ->
    [one] Un champ ne peut pas être utilisé; la liste des erreurs dit quoi envoyer à la place.
    [all] { $fields } champs ne peuvent pas être utilisés; la liste des erreurs dit quoi envoyer à la place.
   *[first] { $fields } champs ne peuvent pas être utilisés; la liste des erreurs contient les { $most } premiers et dit quoi envoyer à la place.
}

## The address, the page and the key

problems-no-such-kind = Ce genre de problème n’existe pas; /v1/reference/problems en donne la liste.
problems-methods = Cette adresse accepte { $methods }.
problems-head-larger = La ligne de requête et ses en-têtes dépassent { $limit } octets. Envoyez moins d’en-têtes, ou de plus courts; ce qui doit être calculé va dans le corps.
problems-page-method = Les pages d’autres sites appellent avec { $methods }; la méthode demandée n’est pas acceptée.
problems-page-origin = L’origine de la page n’est pas de celles qui peuvent appeler. L’exploitant du service les fixe.
problems-page-headers = N’est pas accepté des pages d’autres sites : { $refused }. Retirez-le; sont acceptés { $taken }.
problems-key-expired = La clé a expiré le { $end }. Demandez-en une autre à l’exploitant du service et envoyez-la ainsi : Authorization: Bearer KEY.
problems-key-unknown = Le service ne connaît pas cette clé. Envoyez celle que son exploitant vous a donnée, ainsi : Authorization: Bearer KEY.
problems-key-no-origin = La clé est destinée à des pages, et la requête n’en nomme aucune : il lui manque l’en-tête Origin, que les navigateurs envoient. Depuis un programme, appelez avec une clé secrète, que remet l’exploitant du service.
problems-key-origin = La clé n’est pas destinée aux pages de l’origine { $origin }. L’exploitant du service doit ajouter cette origine à la clé, exactement ainsi.
problems-key-path = La clé n’est pas destinée à l’adresse { $path }. Appelez une de ses adresses exactement comme l’exploitant du service l’a inscrite, ou demandez-lui d’ajouter celle-ci à la clé.

## What is too much at once

problems-arriving = { $whose ->
    [all] Les corps en cours de réception atteignent le maximum que l’instance accepte. Répétez la requête après les secondes indiquées par Retry-After.
   *[caller] Vos corps en cours de réception atteignent le maximum que l’instance accepte d’un seul appelant. Envoyez-en moins à la fois, chacun d’un seul coup.
}
problems-batches = { $whose ->
    [all] L’instance traite autant de lots qu’elle en accepte.
   *[caller] Vous avez autant de lots en traitement qu’un seul appelant peut en avoir.
} Répétez la requête après les secondes indiquées par Retry-After.
problems-item-not-begun = { $reason ->
    [out_of_time] Le lot a manqué de temps avant que cet élément soit commencé. Renvoyez-le, dans un lot plus petit.
   *[answer_too_large] La réponse au lot avait atteint sa taille maximale avant que cet élément soit commencé. Renvoyez-le, dans un autre lot.
}
problems-forecast-paused = Le service météo ne veut pas de questions pour un moment. Envoyez la météo heure par heure au lieu du lieu, ou répétez la requête après les secondes indiquées par Retry-After.

## The pages of problems

problems-page-status = État { $status }, code
problems-page-fields = Codes de champs individuels
