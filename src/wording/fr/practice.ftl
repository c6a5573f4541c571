### What the trade knows.

## What a reading of insulation means, behind the reading

practice-insulation-band = { $insulation_band ->
    [strictest_agency] passes as a new loop in Washington State (200 megohm)
    [stricter_agency] passes in California (100 megohm), not in Washington State (200 megohm)
    [lenient_agency] passes under FP-96 (10 megohm) but no longer as a new loop by stricter agencies; note it and test again in wet and in dry weather
    [poor] is poor: water is getting in, and faults after rain are to be expected
   *[failed] has failed: find the leak before anything else
}
