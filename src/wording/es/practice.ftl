### What the trade knows.

## What a reading of insulation means, behind the reading

practice-insulation-band = { $insulation_band ->
    [strictest_agency] se acepta como lazo nuevo en el estado de Washington (200 megohm)
    [stricter_agency] se acepta en California (100 megohm), pero no en el estado de Washington (200 megohm)
    [lenient_agency] se acepta según FP-96 (10 megohm), pero ya no como lazo nuevo según agencias más estrictas; anótelo y vuelva a probar con tiempo lluvioso y con tiempo seco
    [poor] es deficiente: está entrando agua, y son de esperar fallas después de la lluvia
   *[failed] ha fallado: encuentre la fuga antes que nada
}
