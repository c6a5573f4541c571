### The labels and descriptions of the closed lists of `practice::wires`: a message for each member, `List-code`.
### What an id cannot hold of a code, a space or a point, is an underscore: `WireGauge-1_5_mm2`.

## WireGauge

WireGauge-10_AWG = 10 AWG
    .description = Plus gros qu'il n'en faut aux boucles.
WireGauge-12_AWG = 12 AWG
    .description = Boucles dont le fil peut être tiré fort.
WireGauge-14_AWG = 14 AWG
    .description = Le fil de boucle et le câble de liaison usuels.
WireGauge-16_AWG = 16 AWG
    .description = Fil de boucle léger, boucles préformées.
WireGauge-18_AWG = 18 AWG
    .description = Boucles préformées et câbles de liaison courts.
WireGauge-20_AWG = 20 AWG
    .description = Câbles de liaison courts seulement.
WireGauge-1_mm2 = 1 mm²
    .description = Boucles préformées et câbles de liaison courts.
WireGauge-1_5_mm2 = 1,5 mm²
    .description = Le fil de boucle et le câble de liaison métriques usuels.
WireGauge-2_5_mm2 = 2,5 mm²
    .description = Boucles dont le fil peut être tiré fort.
