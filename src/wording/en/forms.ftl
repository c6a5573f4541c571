### What stands in forms: labels, help, and what is taken where a field is left out. Labels that the job sheet has too stand there.

## Sections

forms-section-opening = Opening
forms-section-loops = Loops and vehicles
forms-section-pavement = Pavement and slab
forms-section-lead-in = Lead-in
forms-section-wire = Loop wire
forms-section-cuts = Saw cuts
forms-section-detector = Detector unit
forms-section-sealant = Sealant
forms-section-day = Day of the sealing
forms-section-work = Pace of the crew
forms-section-prices = Prices
forms-section-plan = What the plan holds

## The opening

forms-width = Clear width
forms-width-help = Measure where vehicles pass, from post to post or from kerb to kerb.
forms-barrier = Kind of gate or barrier
forms-barrier-help = Choose what closes the opening. A window, a post or a stop line has no barrier.
forms-approach-speed = Speed of approach
forms-approach-speed-help = How fast vehicles drive up from inside. With the time to open, it places the exit loop.
forms-opening-time = Time to open
forms-opening-time-help = Measure from the moment a vehicle is seen until the way is clear.
forms-exit-time-default = Unless both speed and time to open are given, the exit loop lies at its usual place.
forms-edge-setback-help = The clear strip to leave at each edge of the opening.
forms-edge-setback-default = { $strip } / { $strip_metric }; { $beside_traffic } / { $beside_traffic_metric } beside other traffic.
forms-drive-length = Straight drive inside
forms-drive-length-help = How far the drive inside runs straight up to the opening. The exit loop stays on it.
forms-drive-length-default = As long as the exit loop needs.
forms-leaf-height-help = Only for a metal leaf: measure it from its lower to its upper edge. It disturbs loops beside it.
forms-leaf-height-default = { $leaf } / { $leaf_metric }; { $door } / { $door_metric } for an overhead door.
forms-leaf-gap-help = Only for a metal leaf: measure from the pavement up to the closed leaf.
forms-leaf-gap-default = { $leaf } / { $leaf_metric }; { $door } / { $door_metric } for an overhead door.
forms-leaf-open-help = Only for an overhead door: choose where its leaf is while the door stands open.
forms-unit-side-help = The side on which the detector unit stands as one leaves. Lead-ins leave the pavement there.
forms-seen-otherwise = Another device watches the line of the gate
forms-seen-otherwise-help = Say yes only if a beam or a camera watches it from edge to edge. Otherwise a vehicle may stand there unseen, and the gate may close on it.

## Loops and vehicles

forms-roles = What the loops are for
forms-roles-help = Choose each job that a loop must do; without one that holds it, a gate can close on a vehicle. No loop protects a person.
forms-roles-default = What a barrier of this kind usually needs.
forms-vehicles-help = Choose every kind that drives here, the highest and the smallest too. What is not chosen may be missed.
forms-seen-by-others = Vehicles that another device sees
forms-seen-by-others-help = Choose only what a beam or a camera sees wherever a loop is blind to it; otherwise a vehicle may stand there unseen.
forms-construction-help = Loops are wound on site, or come ready made for a saw cut or for burial.
forms-construction-default = What the pavement asks for.

## Pavement and slab

forms-surface-help = Choose what the loops lie in, now or once it is laid.
forms-hazards = Obstacles and hazards on site
forms-hazards-help = Choose all that is there, and find out before anything is cut: a cut tendon or power line can kill.
forms-slab-thickness = Thickness of the slab
forms-slab-thickness-help = It limits how deep the slab may be cut.
forms-steel-depth = Depth of the steel
forms-steel-depth-help = From the surface down to the highest steel in the slab, as a scan shows it.
forms-steel-depth-default = Where there is mesh, it is taken to lie at the usual depth under the loop.
forms-slab-edge = Distance to the nearest edge
forms-slab-edge-help = From the wires to the nearest edge, kerb or joint of the slab.
forms-slab-suspended = The slab is suspended
forms-slab-suspended-help = A deck, a ramp or a floor with rooms below. Do not cut it before the engineer agrees in writing.
forms-cut-approved = The cut is approved
forms-cut-approved-help = Say yes only if a scan was made and the engineer agreed to the cut in writing. A cut tendon can kill.

## Lead-in and wire

forms-lead-in-length-help = Measure the way of the pair from the farthest loop to the detector unit, up and down included. Each loop is given this length.
forms-in-slot-help = How much of the lead-in lies in a saw cut.
forms-in-slot-default = The shortest way from the loop to the edge of the pavement.
forms-in-conduit-help = How much of the lead-in lies in conduit.
forms-in-conduit-default = What does not lie in a slot.
forms-pair = Kind of pair
forms-pair-help = Choose how the two wires of the lead-in are held together. Loose pairs need a slot each.
forms-pair-default = Twisted where the loop is wound on site, jacketed where it comes ready made.
forms-spare-help = Slack to coil at the unit, beyond the measured way.
forms-lead-in-gauge-help = The size of each conductor, as its spool or data sheet says.
forms-lead-in-inductance-help = From the data sheet of the cable, for each foot or metre of the pair.
forms-lead-in-inductance-default = More for a loose pair.
forms-wire-gauge-help = The size of the conductor that the loop is wound of.
forms-over-insulation-help = The diameter over the insulation, from the data sheet of the wire.
forms-over-insulation-default = On another gauge, the same insulation.
forms-over-jacket = Diameter over the jacket
forms-over-jacket-help = Only for a ready-made loop: measure across the jacket that holds all its turns.
forms-over-jacket-default = The turns lie one on the other, as single wires do.
forms-insulation-rating = Heat that the insulation stands
forms-insulation-rating-help = The highest temperature that insulation and jacket stand, from the data sheet of the wire; not its short-circuit figure. Sealant that is poured hotter melts them.

## Saw cuts

forms-slot-width-help = The width of the saw cut.
forms-slot-width-default = Wider where the wire needs it.
forms-slot-depth-help = From the pavement down to the bottom of the slot. A depth that is given is not exceeded.
forms-slot-depth-default = { $wound } / { $wound_metric } for a wound loop, { $jacketed } / { $jacketed_metric } for a ready-made one; deeper where turns and cover need it, shallower where slab or steel leave less.
forms-cover-help = The sealant to keep over the top wire; over a buried loop, what covers it.
forms-cover-default = { $wound } / { $wound_metric } for a wound loop, { $jacketed } / { $jacketed_metric } for a ready-made one.
forms-crossings = Joints and cracks crossed
forms-crossings-help = How many joints and cracks the wires cross.
forms-lead-in-slot-width-help = The width of the saw cut of the lead-ins.
forms-lead-in-slot-width-default = As the slot of the loop, wider where pairs need it.
forms-lead-in-slot-depth-help = From the pavement down to the bottom of the slot of the lead-ins.
forms-lead-in-slot-depth-default = As the slot of the loop, deeper where pairs need it.
forms-lead-in-slot-cover-help = The sealant to keep over the pairs.
forms-lead-in-slot-cover-default = As over the loop.
forms-blade-help = A round blade cuts on past the end of a slot: the larger, the farther.
forms-corner-help = How the wire is brought round the corners of the slot.
forms-corner-default = Diagonal where the loop has corner cuts, otherwise square.
forms-core-diameter-help = Only for corners that are drilled: the diameter of the hole.
forms-blade-life = Life of a blade
forms-blade-life-help = How much a blade cuts before it is worn.
forms-owns-blades = The crew owns its blades
forms-owns-blades-help = Say yes if blades are taken along and not bought for this job.
forms-rod-form-help = How single wire is held down in the slot until it is sealed.
forms-rod-piece-help = Only for pieces: how long each is.
forms-rod-spacing-help = Only for pieces: from one to the next.
forms-rod-diameter-help = Measure it before it is pressed into the slot.
forms-rod-diameter-default = A little more than the slot is wide.
forms-agency = Agency
forms-agency-help = Name who asks for a least width of the slot.
forms-agency-width = Least slot width of the agency
forms-agency-width-help = The least width that it asks for.
forms-wire-allowance = Extra wire, %
forms-wire-allowance-help = Wire for corners, ends and what is cut off, beyond the measured length.

## The detector unit

forms-envelope-help = What stands in for figures that are not given. The data sheet of the unit governs.
forms-from-unit-sheet = Take it from the data sheet of the detector unit.
forms-limit-default = Where only the other limit is given and this one does not fit it, this one is moved.
forms-quality-factor = Least quality factor of the unit
forms-tuning-capacitance = Tuning capacitance of the unit, nF
forms-threshold = Threshold of the unit, %
forms-threshold-help = The change of inductance at which the unit switches.
forms-threshold-default = The least sensitive that sees every vehicle well.
forms-threshold-steps-help = The changes that its sensitivity steps switch at, from the data sheet of the unit.
forms-threshold-steps-default = The usual steps of such units.
forms-wiring-help = How the loops come to the detector unit. A channel for each loop is the rule.

## Sealant and day

forms-sealant-kind-help = The kind decides how long the lane stays closed and in what weather it can be sealed.
forms-cartridge-help = The volume of one cartridge, both parts together.
forms-finish-help = From the pavement down to the finished sealant. Flush is usual.
forms-waste = Lost sealant, %
forms-waste-help = What is lost in cartridges, overfill and spill, as a share of what fills the slots.
forms-made-on = Date of manufacture
forms-made-on-help = As the package says. Sealant past its shelf life must not be used.
forms-shelf-life-help = How long the sealant keeps unopened.
forms-from-sealant-sheet = From the data sheet of the sealant, at the temperature and humidity that it names.
forms-by-sealant-default = The usual figure of this kind of sealant, where it has one.
forms-traffic-time = Time until traffic may return
forms-full-cure = Time to a full cure
forms-cured-depth = Depth that cures in the first day
forms-pot-life = Working time once mixed or opened
forms-sheet-temperature-help = The temperature that the times of the data sheet hold at.
forms-sheet-humidity-help = The humidity of the air that the times of the data sheet hold at.
forms-coldest-help = Below this temperature the sealant must not be applied.
forms-hottest = Highest temperature of application
forms-hottest-help = Above this temperature the sealant must not be applied.
forms-activation-help = How strongly warmth speeds up the cure; ask the maker.
forms-pour-help = Only for sealant that is poured hot. The insulation of the wire must stand it.
forms-damp-slot-help = Say yes only if the data sheet of the sealant allows a damp slot.
forms-start-help = When the first sealant goes in, on the clock of the site. It counts where the weather is known, and decides with it whether to seal.
forms-needed-open = Traffic back by
forms-needed-open-help = When traffic must be let back, on the clock of the site. It counts where the weather is known.
forms-slot-state = State of the slot
forms-slot-state-help = Look and touch before sealing: no sealant goes into a slot that is wet or has frost. Your answer counts where the weather is known.
forms-slot-state-default = Dry, or wet where the weather tells of rain that has not dried.
forms-work-duration-help = From the first foot that is sealed to the last, for the whole job. It counts where the weather is known.
forms-work-duration-default = What the estimate of the work says.

## The crew, its prices, the plan

forms-set-up = Time to set up
forms-set-up-help = To set up, mark out and guard the work zone, once for the job.
forms-saw-speed = Speed of the saw
forms-saw-speed-help = How fast the saw goes forward in one pass.
forms-saw-speed-default = By pavement and depth.
forms-core-time = Time to drill a corner
forms-core-time-help = For each corner that is drilled.
forms-cleaning-speed = Speed of cleaning
forms-cleaning-speed-help = How fast slots are washed and dried.
forms-pull-time = Time to pull wire
forms-pull-time-help = For each turn, or for all turns of a ready-made loop.
forms-burial-time = Time to bury a loop
forms-burial-time-help = To bed and cover one loop that lies in no saw cut.
forms-sealing-speed = Speed of sealing
forms-sealing-speed-help = How fast slots are filled.
forms-termination-time = Time to finish the ends
forms-termination-time-help = To solder, splice and seal the ends of one loop.
forms-test-time = Time to measure
forms-test-time-help = To take the readings of one loop once.
forms-currency = Currency
forms-currency-help = Three letters, such as USD or CAD.
forms-hourly-rate = Hourly rate of the crew
forms-hourly-rate-help = The price of one hour of the whole crew. Left empty, hours are not priced.
forms-parts = Parts of the plan
forms-parts-help = Choose what to plan beside the loops themselves.
forms-parts-default = All of them; the one on curing only where the weather is given.
forms-include = Also in the plan
forms-include-help = Choose what else the plan shall hold.
