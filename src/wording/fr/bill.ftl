### Le devis pour un tableur.

bill-item = code
bill-label = article
bill-sku = numéro d'article
bill-size = dimension
bill-quantity = quantité
bill-unit = unité
bill-exact = quantité exacte
bill-unit-price = prix unitaire
bill-amount = montant
bill-currency = devise
bill-note = remarque
bill-pack = { $pack ->
    [cartridge] cartouche
    [spool] touret
    [each] unité
   *[lot] lot
}
bill-labour = Heures de l'équipe
bill-not-bought = Non acheté. { $how }
