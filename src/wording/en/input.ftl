### The nouns of requests: why a default was taken.

## The loop and its wire

input-usual-shape = The usual shape.
input-square-corners = Square corners unless a cut is given.
input-least-cover = The least cover that one agency asks for.
input-usual-loop-wire = The usual loop wire.
input-usual-over-insulation = The usual diameter of insulated 14 AWG loop wire.

## The lead-in

input-usual-lead-in-length = A usual way to the cabinet; measure yours.
input-usual-spare = Slack of the pair, coiled in the pull box.
input-usual-lead-in-wire = The usual lead-in.
input-usual-lead-in-inductance = The middle of 20 to 24 µH per 100 ft of twisted 14 AWG pair.

## The slot

input-usual-slot-width = Room for sealant to flow round the wire, and no more.
input-usual-slot-depth = The usual depth for this construction; deeper where the turns need it.
input-usual-slot-cover = The usual cover for this construction.

## The surface and the sealant: several parts of a plan take these, and a plan says each once

input-usual-surface = The usual surface.
input-usual-sealant = The usual loop sealant.
input-usual-pour-temperature = What one agency's hot-applied sealant is poured at.

## The opening

input-usual-leaf-height = A usual gate leaf.
input-usual-leaf-open = Most overhead doors lie level under the ceiling while they stand open.
input-usual-leaf-gap = A usual ground gap.
input-usual-vehicles = What comes to most openings, and sits highest.

## The detector unit

input-usual-envelope = What a unit built to the standard tunes at least; the unit's own sheet governs.

## The weather

input-forecast = The weather service's forecast for weather.location.

## What several questions say

input-fine-threshold = { $threshold } is finer than the finest class of the standard ({ $finest_class }). The unit's own sheet must show that it switches there.
