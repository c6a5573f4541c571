### What the trade knows.

## What a reading of insulation means, behind the reading

practice-insulation-band = { $insulation_band ->
    [strictest_agency] convient pour une boucle neuve dans l'État de Washington (200 mégohms)
    [stricter_agency] convient en Californie (100 mégohms), pas dans l'État de Washington (200 mégohms)
    [lenient_agency] convient selon FP-96 (10 mégohms), mais plus pour une boucle neuve selon des organismes plus stricts; notez-le et refaites l'essai par temps humide et par temps sec
    [poor] indique un mauvais isolement : l'eau s'infiltre, et il faut s'attendre à des pannes après la pluie
   *[failed] révèle un isolement défaillant : trouvez la fuite avant toute autre chose
}
