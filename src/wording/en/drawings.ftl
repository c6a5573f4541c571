### What stands on the drawings.

## On all of them

drawings-do-not-build = Do not build as drawn
drawings-warnings = Warnings
drawings-more = And { $more } more that are not shown here: read all of them before the work begins.
drawings-footer = A loop sees metal, not people: it protects nobody. Local codes, data sheets and licensed people decide. Loopwright { $engine }
drawings-and = { $first } and { $last }
drawings-date = { $month ->
    [1] Jan
    [2] Feb
    [3] Mar
    [4] Apr
    [5] May
    [6] Jun
    [7] Jul
    [8] Aug
    [9] Sep
    [10] Oct
    [11] Nov
   *[12] Dec
} { $day }
drawings-span = { $from } to { $until }

## Values that were taken for what nobody gave

drawings-value-or = { $first } or { $last }
drawings-value-wide = { $value } wide
drawings-value-high = { $value } high
drawings-value-turns = { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
}
drawings-value-corners = diagonal where the corners of a loop are cut, square elsewhere
drawings-value-allowed = { $allowed ->
    [yes] yes
   *[no] no
}

## The plan of an opening

drawings-plan-title = Plan: { $opening }
drawings-plan-lane = lane without a barrier, { $width } wide
drawings-plan-opening = { $barrier }, opening { $width }
drawings-plan-width = opening
drawings-plan-direction = direction of travel
drawings-plan-inside = inside
drawings-plan-way-in = outside, way in
drawings-plan-way-out = inside, way out
# The line that the tape begins at: two words, or what stands in two short lines.
drawings-plan-line = { $barrier-code ->
    [slide_gate] sliding gate
    [swing_gate] swing gate
    [swing_gate_pair] swing gates
    [barrier_arm] barrier arm
    [vertical_lift_gate] lift gate
    [overhead_door] overhead door
   *[none] reference line
}
drawings-plan-the-line = { $line ->
    [reference] the reference line
   *[barrier] the barrier
}
drawings-plan-distance = { $gap ->
    [none] right
   *[some] { $distance }
}
drawings-plan-position = { $side ->
    [across] across { drawings-plan-the-line }
    [across_moved] across { drawings-plan-the-line }, its middle { $moved } inside
    [outside] { drawings-plan-distance } outside { drawings-plan-the-line }
    [inside] { drawings-plan-distance } inside { drawings-plan-the-line }
    [before] { drawings-plan-distance } before { drawings-plan-the-line }
   *[past] { drawings-plan-distance } past { drawings-plan-the-line }
}{ $offset_side ->
    [left] , its middle { $offset } left of the lane's as one drives in
    [right] , its middle { $offset } right of the lane's as one drives in
   *[none] {""}
}
drawings-plan-name = { $role-label }: { $position }
drawings-plan-made = { $count ->
    [one] {""}
   *[other] { $count } side by side, wound as the arrow heads show, each{" "}
}{ $size }, { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
}{ $cells ->
    [two] {" "}round each of two cells
   *[one] {""}
}{ $corners ->
    [cut] , corners cut { $corner_cut }
   *[square] {""}
}{ $slot ->
    [sawn] , slot { $slot_depth } deep
   *[none] {""}
}; { $inductance } at the unit.
drawings-plan-from-stock = From stock: { $sku }.
drawings-plan-made-as = Made as { $mark }.
drawings-plan-order = { $orders }
drawings-plan-order-pairs = { $length } of pair for each loop
drawings-plan-order-longer = { $length } for { $mark }
drawings-plan-order-home-runs = from the pull box to the unit { $cables }
drawings-plan-order-cable = { $length } of { $gauge } cable for { $mark }
drawings-plan-tape = Tape: from the line to the wires. Order { $orders }.
drawings-plan-unit = U is the unit, on the { $side ->
    [left] left
   *[right] right
} as one leaves.
drawings-plan-double-lines = Double lines are slots of pairs.
drawings-plan-row-slot = The pairs of a row share the slot beside it: { $marks }.
drawings-plan-slot-short = The slot of { $mark } ends { $short } before the edge.
drawings-plan-past-edge = Past the edge slots go on{ $until ->
    [unit] {" "}all the way to the unit
   *[conduit] {""}
}, drawn shortened: { $marks }.
drawings-plan-conduit = Dashed from there on: conduit, as the site allows.
drawings-plan-pull-box = A crossed box is a pull box: { $to ->
    [home_run] the pair of the loop ends there and is spliced to the cable of its home run
   *[next_piece] there the pair is spliced to that from the next spool
}.
drawings-plan-crossing = The { $pairs ->
    [one] pair of { $marks } crosses
   *[other] pairs of { $marks } cross
} the line at the dot, { $under ->
    [conduit_track] in conduit under the track
    [conduit] in conduit
    [slot_track] in the slot, past the track
   *[slot] in the slot
}.
drawings-plan-parking = Dashed in the line, broken off: where the leaf parks and its run-back, drawn on the side of the unit. It stays clear, as long as the leaf.
drawings-plan-unseen = Unseen between the loops that hold the barrier: { $stretch }.
drawings-plan-sweep = Leaves are taken to swing inwards; chain lines show their sweep.
drawings-plan-scale = To scale{ $broken ->
    [yes] , but for the stretch between zigzag lines, which is shortened
   *[no] {""}
}.

## Sections of slots

drawings-section-title = { $sections ->
    [buried] Section: buried loops, nothing is sawn
    [one] Section of the slot
   *[several] Sections of the slots: { $count }
}
drawings-section-several = { $name } ({ $count } loops)
drawings-section-heading = { $place ->
    [loop] Slot of the loop
    [lead_in] Slot of the lead-in
    [shared] Slot that pairs share
   *[buried] Buried
}: { $labels }
drawings-section-buried = { $construction-label }, its lead-in in conduit.
drawings-section-verdict = { $construction-label }, { $width } wide and { $depth } deep. { $verdict ->
    [too_narrow] Too narrow
    [right] Right
   *[generous] Generous
}: { $free ->
    [some] { $clearance } of the width is free, half at each side
   *[nothing] nothing of the width is free
}.
drawings-section-sealant = Sealant: { $sealant }. Each section has a scale of its own; steel is drawn at its depth, its bars are not to scale.
drawings-section-rod-note = Backer rod in { $form }: between them sealant fills the slot round the wire.
drawings-section-slab = Slab { $thickness } thick{ $drawn ->
    [broken_off] {" "}(broken off here)
   *[whole] {""}
}
drawings-section-steel = Steel { $depth } deep{ $drawn ->
    [below] , below what is drawn
   *[whole] {""}
}
drawings-section-bed = Bed under it { $depth }
drawings-section-cover = { $over ->
    [pair] Cover over the top pair
    [wire] Cover over the top wire
   *[it] Cover over it
} { $depth }
drawings-section-uncovered = Nothing covers it
drawings-section-finish = { $finish ->
    [flush] Sealant, flush with the surface
   *[below] Sealant, { $depth } below the surface
}
drawings-section-wires = { $count ->
    [one] { $count } wire
   *[other] { $count } wires, one on the other, each
} { $diameter } over its insulation
drawings-section-pairs = { $count ->
    [one] Twisted pair
   *[other] { $count } twisted pairs, one on the other
}, each wire { $diameter } over its insulation
drawings-section-jacketed-pairs = { $count ->
    [one] { $count } jacketed pair, { $diameter }
   *[other] { $count } jacketed pairs, one on the other, each { $diameter }
}
drawings-section-jacket = Jacket{ $size ->
    [given] {" "}{ $diameter }
   *[not_given] , its diameter not given
}, { $holds ->
    [pair] a pair
   *[turns] { drawings-value-turns }
} in it
drawings-section-rod = { $form ->
    [pieces] Backer rod, in pieces (dashed)
   *[continuous] Backer rod, continuous
}

## The response of a loop

drawings-profile-title = Response: { $vehicle } over a loop of { $size }, { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
}
drawings-profile-plate = A flat underside
drawings-profile-change = Change at the unit, %
drawings-profile-positions = Front of the vehicle past the leading edge, { $unit } [{ $other_unit }]
drawings-profile-vehicle = vehicle
drawings-profile-loop = loop
drawings-profile-switching = { $what ->
    [on] on
    [on_again] on again
    [lets_go] lets go
   *[off] off
}
drawings-profile-front = { $length } { $side ->
    [before] before
   *[past] past
} the leading edge
drawings-profile-peak = The change peaks at { $change } with the front { $front }, where the vehicle is drawn: { $times } times the { $threshold } that the unit switches at.
drawings-profile-on = On (hatched) with the front { $on }, off { $off }.
drawings-profile-lets-go = Lets go from { $from } to { $until }.
drawings-profile-lets-go-early = Lets go before the tail reaches the loop, which is with the front { $tail }.
drawings-profile-silent = The unit does not switch.
drawings-profile-blind = Not seen over { $width } of the lane{ $centre ->
    [included] , the centre included
   *[seen] {""}
}.
drawings-profile-way = { $vehicle }: { $length } long, { $line ->
    [left] { $offset } left of the middle
    [right] { $offset } right of the middle
   *[middle] over the middle
} of the loop; { $model ->
    [calibrated] the model is calibrated
    [assumed] the model is assumed
   *[plate] the model is the flat underside that was given
}.

## The hours of a cure

drawings-cure-title = Sealing, start { $start }: { $verdict }
drawings-cure-do-not-seal = Do not seal at this start
drawings-cure-job = { $sealant-label }; slot { $seen ->
    [no] taken to be{" "}
   *[yes] {""}
}{ $condition }.
drawings-cure-needed = Traffic is needed by { $time }.
drawings-cure-poured = Poured at { $temperature }: it cools and does not cure, so its times do not follow the weather.
drawings-cure-key = Bars run from the earliest to the latest. The weather ends { $until }; nothing is guessed beyond. On site the test is that nothing tracks.
drawings-cure-shelf = The sealant keeps until { $ends_on }.
drawings-cure-moment = { $moment ->
    [start] start
   *[needed] traffic needed
}
drawings-cure-slab = { $measured ->
    [all] slab, measured
    [none] slab, not measured: taken from the air
   *[some] slab; { $assumed } of { $all } not measured: taken from the air
}
drawings-cure-air = air
drawings-cure-dew-point = dew point, and the { $margin } over it (shaded) in which the slab must not lie: water condenses
drawings-cure-limits = least to apply at: { $least }{ $limits ->
    [two] ; at most { $most }
   *[one] {""}
}
drawings-cure-rain = Rain or snow: { $told ->
    [nothing] not known: the weather does not say
    [unlikely] unlikely in every hour
   *[kinds] { $kinds }
}.
drawings-cure-rain-kind = { $rain ->
    [likely] likely where filled
    [possible] possible where open
   *[not_known] not known where hatched
}
drawings-cure-begin-at-start = Begin: at the start; the weather ends before a later one is sure (hatched).
drawings-cure-begin-never = Begin: at no time of this weather (hatched).
drawings-cure-begin = Begin: { $windows }; not where hatched.
drawings-cure-begin-once-dry = Once the slot is dry, begin: { $windows }.
drawings-cure-more-windows = and { $more } more
drawings-cure-work = { $begun ->
    [at_start] Work
   *[later] Work, begun with the first window
}: { $span }, when the last foot is sealed.
drawings-cure-milestone = { $milestone-label }: { $reached ->
    [both] { $span }
    [earliest] { $earliest } at the earliest, at the latest after this weather
   *[none] after this weather
}{ $progress ->
    [band] {" "}(by its end { $low } to { $high } done)
    [one] {" "}(by its end { $high } done)
   *[none] {""}
}.

## The turns of a loop in the ground

drawings-turns-title = A loop in the ground, { $size }: { $verdict }
drawings-turns-do-not-rely = Do not rely on this loop
drawings-turns-panel = { $quantity ->
    [inductance] Inductance, µH
   *[resistance] Resistance, ohm
}: { $is_read ->
    [off_the_scale] read { $reading }, off the scale
    [yes] read { $reading }
   *[no] not read
}
drawings-turns-candidate = { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
}{ $wire ->
    [known] , { $gauge }
   *[unknown] {""}
}, { $likelihood }
drawings-turns-key = A bar is what the meter would show with so many turns; the heavy line is what it showed. Blue bars fit both readings.
drawings-turns-read-at = Read { $place ->
    [unit] at the unit's end of the lead-in
   *[tails] at the loop's own tails
}; the lead-in is { $length } long, and the legs may be off by { $uncertainty }.
drawings-turns-settle = What would settle it: { $test-label }, { $minutes ->
    [one] { $minutes } minute
   *[other] { $minutes } minutes
}.
