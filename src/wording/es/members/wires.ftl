### The labels and descriptions of the closed lists of `practice::wires`: a message for each member, `List-code`.
### What an id cannot hold of a code, a space or a point, is an underscore: `WireGauge-1_5_mm2`.

## WireGauge

WireGauge-10_AWG = 10 AWG
    .description = Más grueso de lo que necesitan los lazos.
WireGauge-12_AWG = 12 AWG
    .description = Lazos cuyo alambre puede sufrir tirones fuertes.
WireGauge-14_AWG = 14 AWG
    .description = El alambre de lazo y el cable de conexión usuales.
WireGauge-16_AWG = 16 AWG
    .description = Alambre de lazo ligero, lazos preformados.
WireGauge-18_AWG = 18 AWG
    .description = Lazos preformados y cables de conexión cortos.
WireGauge-20_AWG = 20 AWG
    .description = Solo cables de conexión cortos.
WireGauge-1_mm2 = 1 mm²
    .description = Lazos preformados y cables de conexión cortos.
WireGauge-1_5_mm2 = 1.5 mm²
    .description = El alambre de lazo y el cable de conexión métricos usuales.
WireGauge-2_5_mm2 = 2.5 mm²
    .description = Lazos cuyo alambre puede sufrir tirones fuertes.
