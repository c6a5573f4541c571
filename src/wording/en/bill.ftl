### The bill for a spreadsheet. The names of the columns are what programs read, too.

bill-item = item
bill-label = label
bill-sku = sku
bill-size = size
bill-quantity = quantity
bill-unit = unit
bill-exact = exact
bill-unit-price = unit_price
bill-amount = amount
bill-currency = currency
bill-note = note
bill-pack = { $pack ->
    [cartridge] cartridge
    [spool] spool
    [each] each
   *[lot] lot
}
bill-labour = Hours of the crew
bill-not-bought = Not bought. { $how }
