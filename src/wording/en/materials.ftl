### What to load, how long it takes and what it costs.

## The cuts: their depth, what they come near to, blade and rod.

materials-cut-through-slab = { $place ->
    [lead_in] The lead-in's cut
   *[loop] A cut
} of { $slot_depth } goes through the slab. Do not cut; take a thinner wire, fewer turns or less cover, so that { $enough } is enough.
materials-cut-weakens-slab = { $place ->
    [lead_in] The lead-in's cut
   *[loop] A cut
} of { $slot_depth } is deeper than a third of the slab and weakens it. Take fewer turns, thinner wire or less cover, so that { $enough } is enough, or ask whoever answers for the slab.
materials-steel-near-cut = { $place ->
    [lead_in] The lead-in's cut
   *[loop] A cut
} of { $slot_depth } comes within { $steel_clearance } of steel that lies { $steel_depth } deep. Do not cut it so deep: never cut steel. Take fewer turns, thinner wire or less cover, so that { $enough } is enough.
materials-no-blade-reaches = No common blade cuts { $slot_depth }. Take fewer turns, thinner wire or less cover, so that { $enough } is enough.
materials-blade-too-small = A blade of { $blade_diameter } does not reach { $slot_depth }. Take one of { $enough }: the estimate counts with that, and its run-out of { $run_out }.
materials-overrun-leaves-slab = For full depth the blade runs { $reach } past the loop, and the edge is { $edge_distance } away. Drill the corners, take a smaller blade, or finish the ends with a chisel.
materials-rod-stands-out = Rod { $rod_height } high does not fit between the { $place ->
    [lead_in] pair of the lead-in
   *[loop] wire
} and the finished sealant. Take thinner rod, or cut { $needed_depth } deep.

## Whether sealant can flow round what lies in a slot.

materials-fit-agency-minimum = { $agency } asks for { $agency_slot_width } at the least. Cut it { $advised_width } wide.
materials-fit-right = Room for sealant all round, and no more.
materials-fit-generous = It works and takes { $fraction ->
    [one_third] one third
    [one_half] one half
   *[other] { $share }
} more slot, and so sealant, than { $advised_width } would.

## The whole job: rod, wire, jackets, heat, joints, stock, and what is left out.

materials-pairs-apart = Loose pairs couple where they lie together: stacked for 50 ft by 0.9 %, interleaved by 3.6 %. Each is counted in a slot of its own. Twist them three times a foot (ten a metre) or take jacketed pairs to share one.
materials-corner-stands-alone = { $by ->
    [run_out] The sides run { $run_out } on, past the { $corner_cut } that the diagonal spares,
   *[full_cut] The sides are cut full to the corner and a diagonal across it,
} so that a triangle of pavement stands alone at each corner and may break out. { $by ->
    [run_out] Take a smaller blade or a longer corner cut, or drill the corners.
   *[full_cut] End the sides at the diagonal, or drill the corners.
}
materials-continuous-rod = Continuous backer rod keeps sealant from flowing round the wire. Use short pieces with gaps between.
materials-continuous-rod-freezes = Here it freezes: water that follows the rod lifts the sealant out.
materials-buried-at-steel = The loop is to lie { $cover } down and the steel begins at { $steel_depth }: it would lie at the steel or under it, which takes much of what vehicles make. Tie it above the steel, with { $enough } of concrete over it, or lower the steel there.
materials-wire-loose = Nothing holds the single wire down: it floats up in wet sealant. Take short pieces of rod, or say on site what else holds it.
materials-rod-melts = Hot-applied sealant melts common foam rod. Take rod that its sheet allows for the temperature of the pour.
materials-rod-not-needed = A jacketed loop stays down by itself: no backer rod is counted for it.
materials-splice-forced = A loop with its lead-in needs { $needed } in one length, and no spool holds that. The loop ends in a pull box beside the pavement and is spliced to the lead-in there, soldered and sealed, never in the slot: kits and boxes are on the bill. A longer spool spares them.
materials-jacket-assumed = Whether a preformed loop fits its slot is only assumed. Measure it over the jacket, or take that from the loop's sheet, before the slot is cut.
materials-insulation-too-low = The insulation stands { $rating }, and the sealant is poured at { $pour }: it would soften and the wires would touch. Take wire and jacket rated for the pour, or a sealant that is applied cold.
materials-insulation-unknown = Nobody said what insulation and jacket stand. Look for the rating on the wire's sheet: it must be at least the { $pour } of the pour.
materials-joint-not-counted = There is a joint, and no crossing is counted. Count where wire crosses a joint or a crack, so that sleeves are loaded.
materials-no-stock-fits = No loop in stock is { $along_travel } x { $across_lane } with { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
} and { $lead_in_length } of lead-in, its spare included. Order it made to size, or have the loops of this job sized anew from what is in stock.
materials-suspended-slab = Treat a suspended slab as post-tensioned until drawings or a scan show otherwise: no cut without a scan and the engineer's written word. Say that it is approved only once you have both.
materials-suspended-slab-approved = Keep the scan and the engineer's written word on site, and cut only where and as deep as they allow.
materials-lead-in-unaccounted = { $rest } of the lead-in lies neither in a saw cut nor in conduit, and nothing is counted for it. Tell how much of it lies in a cut and how much in conduit.
materials-left-out = Not counted here: { $left_out }.
materials-left-out-burial = digging, and what is laid over a buried loop
materials-left-out-conduit = the hours to lay conduit

## What to load: how each quantity comes about.

materials-blade = { $slot_width } wide and { $blade_diameter } across, for { $saw_cut } of cut down to { $slot_depth }; at an end that must be deep it runs { $run_out } on: where a kerb, a box or an edge stands in the way, finish with a chisel or a drill. { $charge ->
    [wear] Priced by the length that it cuts; take { $blades } along, at { $blade_life } each.
    [owned] The crew's own, which is not bought; a blade cuts { $blade_life }.
   *[bought] A blade cuts { $blade_life }.
}
materials-preformed-loop = { $label }: { $along_travel } x { $across_lane }, { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
}, with { $lead_in_length } of lead-in{ $supply ->
    [in_stock] , from stock
    [in_stock_longer] , from stock; cut the lead-in to { $lead_in_needed } at the unit
   *[made_to_size] ; order it made to size
}.
materials-spools = Spools of { $spool_length }.
materials-wire = { $wire_length } of { $gauge } wire, { $over_insulation } over insulation, in { $pieces ->
    [one] { $pieces } length
   *[other] { $pieces } lengths
}: the turns, and twice each lead-in with its spare, with { $allowance } for corners and ends, each { $supply ->
    [on_spools] from one spool where a spool holds it
   *[by_length] without a splice
}.
materials-rod = { $form-label } of rod { $rod_diameter } across, { $rod_length } in all.
materials-conduit = { $size } conduit for the way of the lead-ins to the unit, { $runs ->
    [one] { $runs } run
   *[other] { $runs } runs
}, { $cables ->
    [one] one cable in each, which fills at most { $fill } of it
   *[other] up to { $cables } cables in each, which fill at most { $fill } of it
}; sealed against water at both ends.
materials-home-run-cable = { $cable_length } of { $gauge } cable from the pull box to the unit, its spare there included, with { $allowance } for corners and ends.
materials-splice-kits = { $to ->
    [home_run] One for each pair, for its two splices to the home run
   *[next_piece] One wherever a pair goes on from another spool, for its two splices
}: soldered and sealed, in the pull box and never in the slot.
materials-pull-boxes = One where pairs leave the pavement and are spliced, and at each splice on a longer way.
materials-sleeves = One at each joint or crack, { $each_side } to each side, with slack wire inside.
materials-sealant = { $sealant_net } of slot less wire and rod, and { $waste_percent } for waste{ $pavement ->
    [concrete] ; grey, to blend in with concrete
    [asphalt] ; black, to blend in with asphalt
   *[other] {""}
}{ $supply ->
    [in_cartridges] ; cartridges of { $cartridge }
   *[by_volume] {""}
}.
materials-nozzles = One for each loop: what stands in a nozzle sets while the next loop is laid.
materials-sand = Sand of the colour of the { $pavement ->
    [concrete] concrete
   *[asphalt] asphalt
} over the wet sealant, so that it blends in.
materials-bedding-sand = Sand without stones in a trench { $trench_width } wide, { $bed_under } under the loop and { $bed_over } over it, along { $path }.
materials-ties = { $ties } plastic ties, one every { $tie_spacing } and one at each corner; no tie of wire, which makes a turn of its own.
materials-burial-sand = Dig { $trench_depth } deep, lay the loop flat on { $bed_under } of sand and cover it with { $bed_over } more before the fill goes back: the loop ends up { $cover } under the surface. Compact by hand over it, and lay a warning tape in the fill.
materials-burial-blocks = Lay the loop before the blocks, flat in the bedding course with { $bed_under } of it underneath, so that it ends up { $cover } under the top of the blocks. No edge of a block and no vibrator may rest on it before the blocks lie.
materials-burial-asphalt = Lay the loop on the compacted course before the final lift, fix it flat every { $tie_spacing } and cover it by hand with fine mix: it ends up { $cover } under the surface. The jacket must stand the heat of the mix, and no roller runs over it bare.
materials-burial-concrete = Tie the loop in the form before the pour, every { $tie_spacing } with plastic ties, flat and as far above the steel as it goes: { $cover } of concrete come over it. Measure it once more before the truck comes; nobody steers a vibrator along it.
materials-terminations = Two ends for each loop, tinned or soldered and sealed.
materials-line-device = A beam or the like, where a vehicle stands unseen between two loops.

## How long each step takes: phrases.

materials-work-once = once for the job
materials-work-per-corner = { $pieces ->
    [one] { $pieces } corner
   *[other] { $pieces } corners
}, { $each } each
materials-work-per-pull = { $pieces ->
    [one] { $pieces } pull
   *[other] { $pieces } pulls
}, { $each } each
materials-work-per-loop = { $pieces ->
    [one] { $pieces } loop
   *[other] { $pieces } loops
}, { $each } each
materials-work-per-cut = { $saw_cut } of cut

## What it costs, and the same job in each construction.

materials-unpriced = The total does not count what has no price yet: { $unpriced }. Give these prices, too.
materials-unpriced-name = { $unpriced }
materials-unpriced-item = { $item }
materials-unpriced-labour = labour
materials-unpriced-spool = Wire on a spool is priced by the spool's own number: give it one.
materials-compare-hand-wound = Wire from the spool, { $pulls ->
    [one] { $pulls } pull
   *[other] { $pulls } pulls
}, held down with backer rod: nothing to wait for, and any size. The wire has no jacket.
materials-compare-saw-cut = { $pulls ->
    [one] { $pulls } pull
   *[other] { $pulls } pulls
}, one for each loop, and no backer rod; the jacket spares the wire. The loop must be in stock or made to size.
materials-compare-direct-burial = No cut and no sealant, but only before the surface is laid; bedding and cover come on top, and the lead-in in conduit.
materials-compare-unpriced = Its sum does not count what has no price: { $unpriced }.

materials-pooled-line = { $exact }{ $unit ->
    [cartridge] {" "}cartridges
    [spool] {" "}spools
    [each] {""}
    [lot] {""}
    [ft3] {" "}ft³
    [m3] {" "}m³
   *[other] {" "}{ $unit }
} in all for { $jobs ->
    [one] { $jobs } job
   *[other] { $jobs } jobs
}, rounded up once{ $pavement ->
    [concrete] ; grey, to blend in with concrete
    [asphalt] ; black, to blend in with asphalt
   *[other] {""}
}.
# It follows the one above, on sealant.
materials-pooled-sealant = { $sealant-label }.
materials-pooled-bill = One bill for { $jobs ->
    [one] { $jobs } job
   *[other] { $jobs } jobs
}: what is alike is added up and rounded once.{ $prices ->
    [differ] {" "}The jobs have different prices, so it has no sum: give one list of prices for all of them.
   *[other] {""}
}{ $left_out ->
    [0] {""}
    [one] {" "}It does not count { $left_out } item without a bill.
   *[other] {" "}It does not count { $left_out } items without a bill.
}

## Why a default was taken.

materials-usual-width = Room for sealant to flow round what lies in it, and no more; never less than a named agency asks for.
materials-depth-gives-way = What wires, cover and finish need: the usual depth gives way to slab and steel.
materials-usual-depth = The usual depth for this construction; deeper where wires, cover and finish need it.
materials-lead-in-width = That of the loop's slot; wider where the pair or a named agency needs it.
materials-lead-in-depth = That of the loop's slot; deeper where the pair needs it.
materials-lead-in-cover = That over the loop.
materials-usual-corner = Diagonal where the loop has corner cuts, else square.
materials-usual-rod-diameter = 1/16 in more than its slot, to sit snug.
materials-flat-jacket = Without the diameter over it the jacket is taken to lie flat: one wire wide, its turns high, nothing added.
materials-usual-waste = Sealant stays in cartridges, overfills and spills.
materials-usual-blade = A usual blade; it sets how far cuts run on for their full depth.
materials-usual-blade-life = No public figure for the life of a blade exists; give your own.
materials-usual-allowance = Wire is pulled a little longer than it measures: corners, ends and what is cut off.
materials-lead-in-to-box = A home run begins in a box at the edge of the pavement; say how long the cut is where the box lies farther.
materials-usual-core = Room for the wire to bend.
materials-usual-cartridge = A quart-size cartridge.
materials-usual-finish = Flush with the pavement; agencies ask for flush to 1/8 in below.
materials-usual-rod-form = Short pieces hold single wire down and let sealant round it; a jacketed loop gets none.
materials-agency-asks = What one agency asks for.
materials-no-public-pace = No public figure for the pace of a crew exists; give your own.
materials-usual-construction = What the surface asks for.
materials-usual-corner-cut = The usual corner cut, for diagonal corners are asked for.
materials-lead-in-in-slot = What is not in conduit lies in a saw cut; say how long the cut is where it ends before the unit.
materials-lead-in-to-edge = The shortest way to the edge of the pavement on the side of the unit; beyond it, conduit. Say how long the cut is where it goes farther.
materials-lead-in-in-conduit = What lies in no saw cut lies in conduit.
materials-buried-lead-in = The lead-in of a buried loop lies in conduit all the way.
