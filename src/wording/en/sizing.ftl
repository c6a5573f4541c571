### Which loops an opening needs.

## Whether a loop can be built

sizing-no-working-turns = No number of turns brings this loop, with this lead-in, wholly inside what the unit tunes to. Shorten the lead-in, take heavier wire, or choose a unit with a wider range.
sizing-near-least-inductance = As built it may measure { $as_built_low }, close to the { $inductance_min } that the unit tunes to at least; another turn is no better here. Measure before it is closed.

## Which vehicles it sees

sizing-side-by-side = One loop across the whole opening is too insensitive: { $loops } loops share it, each on its own channel of a unit that scans them in turn, their outputs paralleled, neighbours wound in opposite senses.
sizing-leaves-pass-over = The leaves pass over this loop while they move, and it sees them. Wire it to the operator's input that is watched only while the leaves stand, fully open or fully closed; while they move, another device must see a vehicle that drives in.
sizing-vehicle-too-wide = A { $vehicle } is { $vehicle_width } wide and does not pass an opening of { $opening_width }. Check the width, or leave this vehicle out.
sizing-vehicle-not-seen = A { $vehicle } changes this loop by { $change }, and the unit switches at { $threshold }: it is not seen.
sizing-vehicle-not-seen-at-edge = Hard against the edge or over a gap a { $vehicle } changes the loops by { $least_change_across } only, and the unit switches at { $threshold }: it is not seen there. Let the loops reach nearer to the edge, or narrow the lane with posts.
sizing-arm-falls-early = When the unit lets go of a { $vehicle } at { $threshold }, its tail is { $tail_from_arm } { $place ->
    [short] short of
   *[past] past
} the line of the arm, and { $wanted } past it is wanted: the arm would fall on it. Set a finer step if the unit has one, take a longer leg along travel, or lay the loop farther along in the direction of driving where vehicles come one way only.
sizing-drops-out = The unit lets go under a { $vehicle } before its tail has reached the loop. Set a finer sensitivity, lengthen the loop along travel, or add a second one behind it.
sizing-thin-margin = A { $vehicle } changes this loop by { $least_change_across }{ $place ->
    [hardest] {" "}at its hardest place
   *[anywhere] {""}
}, less than twice the { $threshold } that the unit switches at; pavement, age and weather take their part.
# It follows the three above that speak of too small a change.
sizing-finer-or-shorter = Set a finer sensitivity if the unit has one, shorten the lead-in, or share the opening among more lanes.
sizing-blind-strip = Over { $blind_strip } of the lane, { $place ->
    [centre] its centre included
   *[aside] away from its centre
}, a { $vehicle } is not seen: only wires along travel couple with it. { $cure ->
    [other_device] The other device must see it there.
    [line] Mark the line to ride on, or let another device see two-wheelers.
   *[line_or_quadrupole] Mark the line to ride on, take a quadrupole, or let another device see two-wheelers.
}
sizing-sensitivity = Set { $channels ->
    [every] every channel
   *[this] this channel
} to the step that switches at { $threshold }: the { $hardest } is the hardest to see.

## Where the loops lie

sizing-the-loop = { $role-code ->
    [exit] exit loop
    [obstruction_outside] outside obstruction loop
    [obstruction_inside] inside obstruction loop
    [between_leaves] loop between the leaves
    [arming] arming loop
    [closing] closing loop
   *[presence] presence loop
}
sizing-leaf-seen = At { $clearance } the { $state ->
    [closed] closed
    [open] open
   *[moving] moving
} leaf changes the { sizing-the-loop } by { $change_by_leaf }, over half of what the unit switches at. { $place ->
    [decided] Change what was decided of its place.
    [device_helps] Where another device watches the line of the gate, the loops may lie farther off.
   *[none] There is no better place for it.
} Switch the unit on with the gate closed, and prove on site, gate closed, open and moving, that the leaf makes no call.
sizing-leaf-clearance = Keep the legs of every loop { $clearance } or more from the metal leaf: { $state ->
    [closed] closed
    [open] open
   *[moving] moving
}, it changes the { sizing-the-loop } by { $change_by_leaf }, under half of what the unit switches at. The lead-in crosses the line of the gate twisted or jacketed: in conduit under a track or footing, elsewhere in its slot.
sizing-leaf-holds-the-gate = At { $clearance } the { $state ->
    [closed] closed
    [open] open
   *[moving] moving
} leaf changes the { sizing-the-loop } by { $change_by_leaf }, and the unit switches there: the gate would call or hold itself. Make the loop smaller, lay it farther from the leaf, or let another device do its work.
sizing-edge-setback-reduced = The opening is narrow: the loop keeps { $edge_setback } to each edge instead of { $usual_edge_setback }. Check that metal posts and the next lane stay unseen.
sizing-exit-time-unknown = Tell how fast drivers come and how long the gate takes to open, and the exit loop is placed so that the gate is open on arrival. Without both it lies as near as the other loops allow, and drivers wait.
sizing-exit-reopens = A vehicle that comes in crosses the exit loop and opens the gate again. Set the close timer to { $close_timer_min } or more: so long takes a vehicle at walking pace to where it is held.
sizing-drive-too-short = The drive is { $drive_length } long, and the exit loop ends { $needed } from the gate. Leave the exit loop out, and open for those who leave by another device (a button, a transmitter).
sizing-exit-far-away = For the gate to be open on arrival the exit loop would have to lie { $run_up } away. It lies { $distance_from_barrier } away, and a driver waits about { $wait }. An approach at { $serving_speed }, a faster opener, or a second device on the way (another loop, a transmitter) cures it.
sizing-exit-beyond-lead-in = { $row ->
    [row] The loops ({ $role }) lie in a row of { $row_width } from middle to middle, { $distance_from_barrier } from the line,
   *[single] The { sizing-the-loop } lies { $distance_from_barrier } from the gate,
} and the lead-in is { $lead_in_length } long. It is planned with { $order_length }: order that in one piece.
sizing-nothing-holds-the-gate = None of these loops keeps the barrier from closing on a vehicle. Add an obstruction loop outside and one inside (at a barrier arm a closing loop), or make sure that another device does it.
sizing-leaves-swing-inwards = The leaves are taken to swing inwards{ $hinges ->
    [one_side] , hung on the left as one drives in
   *[both_sides] {""}
}. For leaves that swing outwards read inside for outside, and the other way round{ $hinges ->
    [one_side] ; for one that hangs on the right, right for left
   *[both_sides] {""}
}.
sizing-pair-advised = A single leaf of { $leaf } sweeps a quarter circle of the same length, and the loops in it see high vehicles with a thin margin. From { $longest } on a pair of leaves serves better: it sweeps half as far.
sizing-between-leaves-missing = Add a loop between the leaves: without it a vehicle in the sweep of a leaf is seen by no loop, and the leaf closes on it.
sizing-between-leaves-beyond-sweep = The leaf sweeps { $sweep } inwards, and the loop between the leaves, as it was decided, lies beyond: nothing sees a vehicle in the sweep, and the leaf closes on it. Decide on a shorter distance, or leave the distance open.
sizing-no-leaf-sweeps = This barrier has no leaves that sweep. An obstruction loop on each side does what a loop between leaves would.
sizing-closing-under-leaf = A closing loop straddles the line of the barrier, and under a metal leaf it sees the leaf itself. Lay an obstruction loop outside and one inside here instead.
sizing-one-side-only = The loops that hold the barrier lie on one side only: a vehicle that stops on the other side is not seen. Add an obstruction loop on that side.
sizing-unseen-stretch = Between two loops that hold the gate a vehicle of { $unseen_stretch } stands unseen: { $vehicle ->
    [car] a car
    [short_car] a short car
   *[two_wheeler] a { $rider }
} fits. { $watched ->
    [yes] The other device that watches the line of the gate must see it there.
   *[no] Let another device (a beam across) watch the line of the gate.
}
sizing-kept-loop = { $kept-code ->
    [exit] exit loop
    [obstruction_outside] outside obstruction loop
    [obstruction_inside] inside obstruction loop
    [between_leaves] loop between the leaves
    [arming] arming loop
    [closing] closing loop
   *[presence] presence loop
}
sizing-left-out-loop = { $left_out-code ->
    [exit] exit loop
    [obstruction_outside] outside obstruction loop
    [obstruction_inside] inside obstruction loop
    [between_leaves] loop between the leaves
    [arming] arming loop
    [closing] closing loop
   *[presence] presence loop
}
sizing-same-place = The { sizing-left-out-loop } would lie in one slot with the { sizing-kept-loop }. { $cure ->
    [move] Change the distance or the leg that was decided for one of them.
   *[leave_out] One loop does for both: leave the { sizing-left-out-loop } out.
}
sizing-scanning-unit = Loops { $loops } couple by up to { $coupling } and have no better places. Put them on one unit that scans its channels in turn, so that one is alive at a time; on units of their own give them frequencies as far apart as the switches allow.
sizing-loop-mark = { $mark }
sizing-road-holds-the-gate = Traffic on a road that passes over or close to the outside loop holds the gate: keep the loop off the carriageway.
sizing-saw-plan = Cut each loop by itself with all four sides; leave { $gap } of whole pavement between the neighbouring slots and lay no two loops in one slot. Wind the first clockwise, the next anticlockwise, and so on. { $slots ->
    [row] Bring each pair { $own_slot } out, off the slots of the loops, into one slot of { $shared_slot } beside the row.
    [shared] Bring each pair { $own_slot } out, off the slots of the loops, into one slot of { $shared_slot } that pairs of its unit share.
    [own] Bring each pair out in a slot of its own; no two lie in one slot.
   *[none] {""}
}

## Other loops for the same role

sizing-alternative = { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
}, { $cost } { $cost_kind ->
    [more_saw_cut] more saw cut
    [less_saw_cut] less saw cut
    [more_wire] more wire
   *[less_wire] less wire
} for each loop, metal is seen { $height ->
    [equal] equally high
    [higher] { $height_change } higher
   *[lower] { $height_change } lower
}.
sizing-alternative-cannot-be-built = No turn count of it suits this unit and slot.
sizing-quadrupole-offered = A quadrupole of the same size changes by { $change_at_centre } under a { $vehicle } at its centre, where the rectangle changes by { $change_at_centre_of_rectangle }. It costs height: flat metal is seen up to { $seen_height } instead of { $seen_height_of_rectangle }.
sizing-stock-fits = { $along_travel } x { $across_lane } with { $lead_in_length } of lead-in: { $proof ->
    [tunes] it fits the opening, reaches the unit and tunes
   *[turns_unknown] it fits the opening and reaches the unit; ask for its turns
}.
sizing-no-stock-fits = None in stock serves.
sizing-nearest-in-stock = The nearest, { $sku }, { $reason ->
    [other_construction] is made for another construction
    [not_as_decided] is not as it was decided
    [too_short] is too short along travel
    [too_long] is too long along travel
    [too_wide] is too wide for the opening
    [too_narrow] leaves too much of the opening unseen
    [lead_in_too_short] has too short a lead-in
   *[does_not_tune_or_see] does not tune with this unit and lead-in, or does not see every vehicle
}.
sizing-order-instead = Order { $along_travel } x { $across_lane }, { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
}, { $construction }, with { $lead_in_length } of lead-in.

## The lead-ins

sizing-way-of-pair = { $slot ->
    [none] out on the { $unit_side ->
        [left] left
       *[right] right
    } as one leaves
    [own] { $own_slot } in a slot of its own
    [row] { $own_slot } in a slot of its own, then in the shared slot of { $shared_slot } beside the row
   *[unit] { $own_slot } in a slot of its own, then in one of { $shared_slot } with other pairs
}{ $slot_end ->
    [at_edge] { " " }to the edge on the { $unit_side ->
        [left] left
       *[right] right
    } as one leaves
    [before_edge] , which ends { $from_edge } before the edge on the { $unit_side ->
        [left] left
       *[right] right
    } as one leaves
    [past_edge] , which goes { $from_edge } past the edge on the { $unit_side ->
        [left] left
       *[right] right
    } as one leaves
   *[no_slot] {""}
}{ $goes_on ->
    [home_run] , into a pull box there; from the box { $cable_length } of { $gauge } cable, { $in_conduit } of it in conduit
    [home_run_bare] , into a pull box there; from the box { $cable_length } of { $gauge } cable
    [conduit] , { $in_conduit } in conduit
   *[slot] {""}
}, to unit { $unit }
sizing-slot-before-edge = The slot of the pair ends { $from_edge } before the edge of the pavement, and conduit cannot lie in the slab. { $field ->
    [length] The lead-in is too short for its place: to the edge alone it needs { $needed }.
    [in_conduit] Lay less of it in conduit, so that { $needed } are left for the slot, or leave the length in conduit open.
   *[in_slot] Lay { $needed } or more in the slot, or leave that length open, which takes the slot to the edge.
}

sizing-jacketed-pair = The pair comes twisted inside its jacket, so its inductance is fixed; bring it to the unit without a splice in the pavement.
sizing-lead-in-conduit = Bring the lead-in through conduit from the edge of the loop to the unit, sealed against water at both ends.
sizing-twist-the-tails = Twist the two tails at least 3 turns per foot (10 per metre) all the way. Loose, the pair has about { $untwisted-number } instead of { $twisted }, { $gained } more over { $lead_in_length }, and that changes whenever the wires shift; it also picks up hum and sees vehicles that cross it.

## The site

sizing-nothing-to-saw = { $surface-code ->
    [pavers] Blocks are not sawn for a loop: it would move with them and break. Take a preformed direct-burial loop, laid in the bed before the blocks.
    [gravel] Gravel holds no saw cut. Take a preformed direct-burial loop, in a trench with a bed of sand.
    [soil] Soil holds no saw cut. Take a preformed direct-burial loop, in a trench with a bed of sand.
   *[other] There is nothing to saw before the surface is laid. Take a preformed direct-burial loop, or come back with the saw once it has set.
}
sizing-burial-in-finished-pavement = A direct-burial loop goes under a surface that is yet to be laid. In finished pavement take a preformed loop in a saw cut, or wind one on site.
sizing-reinforcing-mesh = Locate the steel and keep the loop at least 2 in (50 mm) above it; never cut it. It takes inductance, which is counted as if the steel were a solid sheet, and height, which is not: prove on site that the highest vehicle is seen.
sizing-cut-approved = Keep the scan and the engineer's written word on site, mark the tendons and the steel on the pavement, and cut only where and as deep as they allow.
sizing-post-tensioned-slab = Do not saw a post-tensioned slab without a scan for tendons and the engineer's written word. A surface-mounted or another kind of detector avoids the cut.
sizing-bridge-deck = Treat the deck as post-tensioned until drawings or a scan show otherwise: no cut without the engineer's written word. A preformed loop above the top steel before the overlay avoids the cut.
sizing-place-before-the-pour = Settle the loop's place with the engineer before the pour; keep it above the top steel and clear of tendons.
sizing-snow-melt-cable = Have the heating cables located, marked and isolated before any cut; a saw through one is live. Lay the loop between runs, and expect hum while they heat.
sizing-snow-melt-pipe = Have the heating pipes located and marked before any cut, and set the saw above them.
sizing-overhead-power-line = Hum from the line can disturb the unit: keep the lead-in twisted and short of it, and choose the frequency on site.
sizing-buried-power-line = Have the line located and marked before any cut or trench, and cross it at right angles.
sizing-adjacent-traffic = Vehicles in the next lane must stay unseen: the loop keeps its setback from the edge for that. Prove it with traffic there before you leave.
sizing-next-lane = In the next lane a { $vehicle } passes { $distance } from the wire and changes the loop by { $change }; the unit switches at { $threshold }{ $outcome ->
    [seen] : it is seen. Keep a wider strip at the edge
   *[nearly] , less than twice as much. Prove it with traffic there
}.
sizing-freezing-climate = Fill the slot completely and dry: water in it freezes and lifts the sealant. Use hold-downs in short pieces, never continuous.
sizing-pavement-joint = Move the loop off the joint if you can. Where wire must cross, sleeve it 4 in (100 mm) on each side and leave slack inside.
sizing-cracked-pavement-hand-wound = Single wire breaks in pavement that moves. A jacketed loop (preformed, in a saw cut) lasts longer here.
sizing-cracked-pavement-jacketed = The jacketed loop takes some of the movement; seal the cracks as well, or water follows the slot.
sizing-old-loop-cut = Cut the new slot beside the old one, at least a hand's width away, and leave the old wire dead and unconnected: a closed old turn steals sensitivity.

## The search

sizing-search-bounded = The search was ended early, for the job asks for more than one answer may compute. These loops are the best found so far, and others may serve better. For a full search ask for fewer loops, vehicles, sensitivity steps or items of stock at once.

## Why a default was taken

sizing-usual-roles = What this barrier usually needs.
sizing-laid-over-the-loop = This surface is laid over the loop.
sizing-jacketed-lasts-longer = A jacketed loop lasts longer in pavement that moves.
sizing-stock-is-preformed = Loops in stock come preformed.
sizing-surface-is-sawn = A finished surface is sawn, and wire is at hand.
sizing-usual-burial-cover = How deep a loop usually lies under this surface.
sizing-burial-cover-over-steel = So that the loop lies over the steel.
