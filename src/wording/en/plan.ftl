### The whole job.

## What was taken for what nobody said

plan-square-corners = The saw cuts no diagonals, so the corner cut that loops usually get gives way: their corners are square.

## The steps of the work: what to do, and the figures of this job

plan-step = { $step-description }
plan-for-each-loop = { $loops }.
plan-line = { $line ->
    [reference] window, post or stop line
   *[barrier] barrier
}
plan-place = { $mark } ({ $role }): { $along_travel } along travel, { $across_lane } across, { $side ->
    [outside] { $distance } outside the { plan-line }
    [inside] { $distance } inside the { plan-line }
   *[on_the_line] on the line{ $shift_side ->
        [inside] , its middle { $shift } inside
       *[none] {""}
    }
}{ $across_side ->
    [left] , its middle { $offset } left of the lane's as one drives in
    [right] , its middle { $offset } right of the lane's as one drives in
   *[none] {""}
}
plan-slot-depth = { $mark } ({ $role }): { $slot_depth } deep
plan-cut = { $total } of cut in all, in { $passes ->
    [one] one pass
   *[other] { $passes } passes
}; the blade runs on past { $cut_ends ->
    [one] { $cut_ends } end
   *[other] { $cut_ends } ends
}.
plan-lead-in-way = { $mark } ({ $role }): its pair { $way }
plan-splice-in-box = In the pull box the loop's own pair ends with its tail; splice it there with a kit, soldered and sealed, to the { $to ->
    [home_run] home-run cable
   *[next_piece] pair from the next spool
}: never in the slot.
plan-turns = { $mark } ({ $role }): { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
}
plan-measured = { $mark } ({ $role }): { $as_built_low-number } to { $as_built_high }, { $dc_resistance }
plan-sealant-loaded = { $cartridges ->
    [one] { $cartridges } cartridge
   *[other] { $cartridges } cartridges
} loaded.
plan-seal-verdict = At the start that was asked for: { $verdict }.
plan-seal-in-window = Not at the start that was asked for: begin between { $from } and { $until }.
plan-seal-once-dry = Not in the slot as it is: dry it, look at it, and begin between { $from } and { $until }.
plan-seal-another-day = Not in this weather: look for another day.
plan-open-between = Computed: between { $earliest } and { $latest }.
plan-open-from = Computed: from { $earliest } at the earliest; the forecast ends before it is sure.
plan-open-beyond-forecast = Not before the forecast ends.
plan-switch-at = It is to switch at { $steps }.
plan-step-for-all = { $threshold }
plan-step-for-one = { $threshold } for { $mark }

## What to try

plan-trial = { $trial-description }
plan-trial-vehicles = Here: { $vehicles }.
plan-trial-step = Set to switch at { $steps }.

## What to measure

plan-reading-resistance = At 20 °C (68 °F); the band is that of wire between -20 and 40 °C. More is a poor splice, open is a broken wire.
plan-reading-inductance = With the gate closed and no vehicle near. Far below the band: a shorted turn, a turn too few, or steel; the limits are what the unit tunes to.
plan-reading-quality-factor = At 50 kHz; computed without the losses of pavement and steel, so a meter shows less.
plan-reading-insulation = To earth at { $voltage }, unit and arresters disconnected, discharged afterwards. From { $best } it { $best_meaning }; from { $accepted } it { $accepted_meaning }.
