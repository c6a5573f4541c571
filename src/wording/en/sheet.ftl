### What stands on the job sheet.

## The head

sheet-page-title = Job sheet: { $opening }
sheet-name = Job sheet
sheet-job = Job
sheet-date = Date
sheet-by = By
sheet-do-not-build = Do not build as planned
sheet-do-not-seal = Do not build as planned: no sealing at { $start }
sheet-warnings = Warnings

## What to cut

sheet-cut = { $sawn ->
    [yes] Cut
   *[no] Lay out
}
sheet-column-loop = Loop
sheet-column-size = Along × across
sheet-column-turns = Turns
sheet-column-nearest-wire = Nearest wire
sheet-column-slot = { $sawn ->
    [yes] Slot
   *[no] Cover
}
sheet-column-corners = { $sawn ->
    [yes] Corners cut
   *[no] Corners
}
sheet-loop = { $role-label }{ $count ->
    [one] {""}
   *[other] , { $count } side by side
}
sheet-turns = { $turns }{ $cells ->
    [two] {" "}in each of two cells
   *[one] {""}
}
sheet-slot = { $width_is ->
    [known] { $width } × { $depth } deep
   *[open] { $depth } deep
}
sheet-not-sawn = not sawn
sheet-under-surface = { $cover } under the surface
sheet-corner = { $corner ->
    [drilled] drilled
   *[square] square
}
sheet-lead-in-slot = { $shared ->
    [yes] shared{" "}
   *[no] {""}
}{ $width } × { $depth } deep
sheet-saw-cut = { $total } of cut in all, lead-ins { $lead_in }{ $slots_differ ->
    [yes] {" "}({ $slots })
   *[no] {""}
}; { $passes ->
    [one] { $passes } pass
   *[other] { $passes } passes
}; the blade runs on past { $ends ->
    [one] { $ends } end
   *[other] { $ends } ends
}{ $drilled ->
    [0] {""}
    [one] ; { $drilled } corner drilled
   *[other] ; { $drilled } corners drilled
}.

## What to load, and how long it takes

sheet-load = Load
sheet-packs = { $quantity } { $pack ->
    [cartridge] { $quantity ->
        [one] cartridge
       *[other] cartridges
    }
    [spool] { $quantity ->
        [one] spool
       *[other] spools
    }
   *[lot] { $quantity ->
        [one] lot
       *[other] lots
    }
}
sheet-hours = Hours of the crew: { $hours }

## What to wind

sheet-wind = Wind
sheet-parts = { $parts }.
sheet-winding = { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
}, { $construction }{ $sense ->
    [row] , left to right { $senses }
    [same] , all the same way round
   *[any] {""}
}
sheet-sense = { $sense ->
    [clockwise] clockwise
   *[anticlockwise] anticlockwise
}
sheet-pull = pull { $length } of { $gauge }{ $how ->
    [spliced] {""}
   *[in_one_length] {" "}in one length
}{ $each ->
    [yes] {" "}for each
   *[no] {""}
}{ $how ->
    [to_the_box] , its pair to the pull box included
    [spliced] , lead-in included, spliced in the pull box
   *[in_one_length] , lead-in included
}{ $more ->
    [yes] , and { $allowance } more
   *[no] {""}
}
sheet-from-stock = from stock: { $sku }
sheet-label-pair = label its pair { $mark } at both ends: { $way }
sheet-lead-in = Lead-in: { $orders }, slack included.

## What to measure, to set and to try

sheet-measure = Measure at the end of the lead-in
sheet-column-reading = Reading
sheet-column-sound = Sound
sheet-column-limit = Limit
sheet-stage = { $stage ->
    [after_winding] after winding
    [before_sealing] before sealing
    [after_sealing] after sealing
    [before_covering] before covering
   *[after_covering] after covering
}
sheet-reading = { $reading ->
    [resistance] Resistance
    [inductance] Inductance
    [quality_factor] Quality factor
   *[insulation] Insulation
}
sheet-settings = Set the unit
sheet-column-channel = Channel
sheet-column-threshold = Switch at
sheet-column-output = Output, to
sheet-column-failure = When the loop fails
sheet-column-unit = Unit, serial
sheet-column-as-left = As left
sheet-output = { $output }{ $lets_go ->
    [yes] , lets go after { $held }
   *[never] {""}
}, { $input ->
    [open] open
    [hold_or_reverse] hold or reverse
    [hold_while_still] hold while still
    [close] close
   *[presence] presence
}
sheet-frequency = Frequency
sheet-trials = Try
sheet-vehicles = Vehicles that must be seen: { $vehicles }.

## When to seal and to open

sheet-seal = Seal and open
sheet-no-weather = No weather was planned with: seal a dry, clean slot within the limits of the sealant's data sheet, and let traffic back when nothing tracks.
sheet-slab = Slab
sheet-air = Air
sheet-sealed-at = Sealed at
sheet-opened-at = Opened at
sheet-verdict = { $verdict-label }{ $starts ->
    [yes] {" "}at { $start }
   *[no] {""}
}
sheet-sealant-and-slot = { $sealant }, slot { $seen ->
    [no] taken to be{" "}
   *[yes] {""}
}{ $condition }.
sheet-begin = Begin
sheet-begin-once-dry = Once the slot is dry, begin
sheet-window = { $from } to { $until }
sheet-windows = { $which ->
    [none] at no time until { $until }
    [more] { $windows }; more later
   *[all] { $windows }
}.
sheet-column-begun = Begun { $from }, last foot sealed { $sealed }
sheet-column-earliest = Earliest
sheet-column-latest = Latest
sheet-beyond-forecast = beyond the forecast
sheet-clock = Times are on the clock of the site ({ $clock }); the forecast ends { $until }.

## Steps, cautions, what was assumed

sheet-steps = Steps
sheet-caution-mark = Caution { $numbers }
sheet-cautions = Cautions
sheet-notes = Notes
sheet-assumed = Assumed: check on site
# The fields of the request whose value the job sheet may have taken; a test asks for those of the examples.
sheet-field = { $field ->
    [backer_rod-diameter] backer rod diameter
    [backer_rod-form] backer rod
    [backer_rod-piece_length] length of backer rod pieces
    [backer_rod-spacing] spacing of backer rod pieces
    [construction] construction
    [detector-envelope] what the unit tunes to
    [detector-inductance_max_uh] greatest inductance of the unit, µH
    [detector-inductance_min_uh] least inductance of the unit, µH
    [detector-frequency_max_khz] highest frequency of the unit, kHz
    [detector-frequency_min_khz] lowest frequency of the unit, kHz
    [detector-threshold_steps_percent] sensitivity steps of the unit, %
    [frequency_khz] frequency, kHz
    [lead_in-gauge] lead-in gauge
    [lead_in-in_conduit] lead-in in conduit
    [lead_in-in_slot] lead-in in a slot
    [lead_in-inductance] lead-in inductance
    [lead_in-length] lead-in length
    [lead_in-spare] spare lead-in
    [lead_in_slot-cover] cover in the lead-in's slot
    [lead_in_slot-depth] depth of the lead-in's slot
    [lead_in_slot-width] width of the lead-in's slot
    [opening-edge_setback] distance from the edges
    [opening-leaf_ground_gap] gap under the leaf
    [opening-leaf_height] height of the leaf
    [opening-leaf_open] where the open door is
    [opening-unit_side] side of the unit
    [roles] loops
    [saw-blade_diameter] blade diameter
    [saw-core_diameter] diameter of the corner holes
    [saw-corner] corners
    [sealant-cartridge] sealant cartridge
    [sealant-data_sheet-activation_energy_kj_per_mol] activation energy of the sealant, kJ/mol
    [sealant-data_sheet-at_relative_humidity_percent] humidity of the data sheet, %
    [sealant-data_sheet-at_temperature] temperature of the data sheet
    [sealant-data_sheet-damp_slot_allowed] damp slot allowed
    [sealant-data_sheet-minimum_application_temperature] lowest temperature of application
    [sealant-data_sheet-skin_over] time to skin over
    [sealant-finish_below_surface] sealant below the surface
    [sealant-kind] sealant
    [sealant-data_sheet-pour_temperature] pour temperature
    [sealant-shelf_life] shelf life of the sealant
    [slot-cover] cover
    [slot-depth] slot depth
    [slot-width] slot width
    [start] start of the sealing
    [surface] pavement
    [surface_condition] slot
    [temperature] wire temperature
    [vehicles] vehicles that must be seen
    [weather-conditions] weather
    [weather-conditions-surface] slab temperature
    [wire-gauge] wire gauge
    [wire-over_insulation] wire over its insulation
    [wire-over_jacket] jacket
    [wiring] wiring
    [work_duration] time to seal
   *[other] another value that nobody gave
}
