### The nouns of requests: why a default was taken.

## The loop and its wire

input-usual-shape = The usual shape.
input-square-corners = Square corners unless a cut is given.
input-least-cover = The least cover that one agency asks for.
input-usual-loop-wire = The usual loop wire.
input-usual-over-insulation = The usual diameter of insulated 14 AWG loop wire.
input-same-insulation = This conductor with the insulation that 14 AWG loop wire usually has.
input-gauge-gives-way = The thickest size that goes, with insulation of its own, into the diameter that was given.
input-insulation-gives-way = No thicker than the jacket that was given.

## The lead-in

input-usual-lead-in-length = A usual way to the cabinet; measure yours.
input-usual-spare = Slack of the pair, coiled in the pull box.
input-price-key-unknown = The price of "{ $name }" belongs to nothing on the bill. Did you mean { $meant }?
input-stock-short = { $needed } of { $sku } are planned and { $available ->
    [one] { $available } is
   *[other] { $available } are
} there: order { $missing } more, or lay other loops.
input-usual-unit-side = The unit stands inside, at the edge of the pavement on the right as one leaves; say so where it stands on the left.
input-usual-lead-in-wire = The usual lead-in.
input-loose-lead-in-inductance = Two wires of 14 AWG that lie half an inch apart, from their geometry.
input-usual-lead-in-inductance = The middle of 20 to 24 µH per 100 ft of twisted 14 AWG pair.

## The slot

input-usual-slot-width = Room for sealant to flow round the wire, and no more.
input-usual-slot-depth = The usual depth for this construction; deeper where the turns need it.
input-usual-slot-cover = The usual cover for this construction.
input-wide-slot = The narrowest blade that leaves sealant room round what lies in the slot.
input-cover-gives-way = What the depth leaves over the wires: the usual cover gives way to it.
input-cover-by-depth = The usual cover gives way: in the slot that was given, the share that it has of the usual depth.
input-slot-too-shallow = { $place ->
    [lead_in] The pair,
   *[loop] Wires
} { $wires_height } high under { $cover } of cover{ $finish ->
    [below_surface] {" "}and a finish { $finish_below_surface } below the surface
   *[flush] {""}
} need a slot { $needed_depth } deep.{ $outcome ->
    [bare] {" "}As asked for, the sealant leaves it bare.
    [full] {" "}The slot as it was given has no depth left for sealant.
   *[covered] {""}
} Cut that deep if the slab allows it, or take thinner wire or { $outcome ->
    [full] fewer turns
   *[other] less cover
}.
input-thin-cover = { $place ->
    [lead_in] The lead-in's slot
   *[loop] The slot
} of { $slot_depth } leaves { $cover_left } of sealant over wires { $wires_height } high, and { $least_cover } is the least that should be. Cut it { $enough } deep if the slab allows it, or take thinner wire or fewer turns.
input-slot-fit = { $place ->
    [lead_in] The lead-in's slot
   *[loop] The slot
} of { $slot_width }: { $advice }
input-fit-does-not-go-in = { $stiffest } does not go in. Cut it { $advised_width } wide.
input-fit-no-room = Sealant cannot flow round { $widest }: air pockets, then false calls, water and frost heave. Cut it { $advised_width } wide.

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

# The other limit was given, and this one is a default.
input-least-gives-way = The envelope's least { $what } gives way to the greatest that was given: { $share } of it; the unit's own sheet governs.
input-greatest-gives-way = The envelope's greatest { $what } gives way to the least that was given: { $factor } times it; the unit's own sheet governs.

## The weather

input-forecast = The weather service's forecast for the place that was given.
input-forecast-stale = The weather service's forecast for the place that was given, { $age } old: the service gives no newer one now.

## What several questions say

input-fine-threshold = { $threshold } is finer than the finest class of the standard ({ $finest_class }). The unit's own sheet must show that it switches there.

## The loops of a list

input-usual-label = Its number in the list; give it a name of your own to find it again.
