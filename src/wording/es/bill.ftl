### La cuenta para una hoja de cálculo.

bill-item = código
bill-label = artículo
bill-sku = número de artículo
bill-size = tamaño
bill-quantity = cantidad
bill-unit = unidad
bill-exact = cantidad exacta
bill-unit-price = precio unitario
bill-amount = importe
bill-currency = moneda
bill-note = nota
bill-pack = { $pack ->
    [cartridge] cartucho
    [spool] carrete
    [each] pieza
   *[lot] lote
}
bill-labour = Horas de la cuadrilla
bill-not-bought = No se compra. { $how }
