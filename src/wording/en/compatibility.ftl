### Whether a detector unit tunes to loops, and how to set it.

## The checks

compatibility-inductance = As built it measures { $as_built_low-number } to { $as_built_high }, { $verdict ->
    [suitable] wholly inside
    [marginal] partly outside
   *[unsuitable] outside
} the { $inductance_min-number } to { $inductance_max } that the unit tunes.
compatibility-quality-factor = The quality factor is at best { $quality_factor } and the unit needs { $quality_factor_min }; pavement and steel take part of it, so { $wanted } or more is wanted.
compatibility-dc-quality-factor = Reactance at 50 kHz over the resistance to direct current is { $dc_quality_factor }; one agency accepts { $limit } or more.
compatibility-dc-resistance = Loop and lead-in have { $dc_resistance } at 20 °C; one agency accepts at most { $limit-number }.
compatibility-lead-in-share = { $lead_in_share } of a change at the loop reaches the unit. From { $wanted } on the loop has twice the inductance of its lead-in; below 50 % the lead-in outweighs it.
compatibility-frequency = It will run at { $slow-number } to { $fast }; the unit runs at { $frequency_min-number } to { $frequency_max }.
compatibility-vehicle = At its hardest place a { $vehicle } changes it by { $change }. At the step of { $threshold } the unit switches from { $threshold } on; { $wanted } is wanted.
compatibility-drops-out = The unit lets go of loop { compatibility-this-loop } under a { $vehicle } before its tail has reached the loop. Take a finer step, or a longer loop along travel.

## Neighbours

compatibility-position-unknown = Tell where every loop lies, and the coupling of neighbours is told.
compatibility-coupling = { $outcome ->
    [disturbs] They couple by { $coupling } and would run { $frequency_separation } apart at the same setting: one unit can follow the other. Set them to different frequencies, or take one unit that scans both in turn.
    [harmless] They couple by { $coupling }, too little to matter.
    [scanned_together] They couple by { $coupling }, and one unit scans them in turn: only one is alive at a time, and they do not disturb each other.
    [same_place] They lie over one another and couple by { $coupling }: no setting tells them apart.
   *[far_apart] They couple by { $coupling }, and run { $frequency_separation } apart, far enough.
}
# Loops of a plan have a mark and a role, others the name that the caller gave them.
compatibility-this-loop = { $named_by ->
    [mark] { $mark } ({ $loop })
   *[label] { $loop }
}
compatibility-that-loop = { $named_by ->
    [mark] { $other_mark } ({ $other_loop })
   *[label] { $other_loop }
}
compatibility-loop-of-channel = { $mark } ({ $channel })
# $sentence is the one above.
compatibility-crosstalk = Loops { compatibility-this-loop } and { compatibility-that-loop }: { $sentence }
compatibility-same-place = Loops { compatibility-this-loop } and { compatibility-that-loop } lie over one another on different channels. { $roles ->
    [same] Take one loop there, or move one of them.
   *[different] Take one loop for both roles, with an output for each, or move one of them.
}
compatibility-set-another-frequency = Set loop { compatibility-that-loop } to another frequency than loop { compatibility-this-loop }, as far apart as the switches allow.
compatibility-take-scanning-unit = Take one multi-channel unit that scans its loops in turn: only one is alive at a time.
compatibility-wind-more-turns = Wind loop { compatibility-this-loop } with { $turns } turns: { $terminal_inductance }, { $frequency_separation } apart in frequency.
compatibility-move-apart = Move them until their middles are { $distance } apart; there they couple by less than { $harmless_coupling }.

## How to set a channel

compatibility-usual-role = It is not said what the loop is for: its channel is set for one that holds a gate, the safe side. Say what it is for.

compatibility-frequency-setting = Start at the highest that the unit offers; give neighbours different settings, and change when it misses or calls for no reason.
# What the gate does when a loop of this role fails. Common practice.
compatibility-failure-consequence = { $on_loop_failure-code ->
    [detect] { $role-code ->
        [exit] The gate opens and stays open: whoever comes may drive in.
        [arming] The post stays awake and may issue to nobody.
        [presence] A vehicle is reported where none is.
       *[other] The gate stays open until the loop is repaired.
    }
   *[no_detect] { $role-code ->
        [exit] The gate no longer opens for those who leave; give them another way to open it.
        [arming] The post stays asleep until somebody presses.
        [presence] A vehicle is not reported.
       *[other] The gate closes unguarded by this loop.
    }
}
compatibility-channel-untunable = Loops { $channel } on one channel come to { $as_built_low-number } to { $as_built_high } at the unit, and it tunes { $inductance_min-number } to { $inductance_max }. Give each loop a channel of its own.
compatibility-steel-below = Steel lies below { $count ->
    [one] loop
   *[other] loops
} { $loops }. The low end of the as-built band is that over a solid sheet, and mesh takes less. What vehicles make is computed without the steel: prove it with the highest vehicle.
compatibility-mixed-roles = Loops { $channel } share one channel, and only some of them hold the gate: the operator cannot tell them apart. Give the loops that hold it a channel of their own.
compatibility-pulse-holds-nothing = Loop { compatibility-this-loop } holds a gate and is set to pulse: after the pulse the gate closes on what still stands there. Set it to presence.
compatibility-presence-runs-out = Loop { compatibility-this-loop } holds a gate and lets go of a vehicle that stays. Set its presence time to unlimited.
compatibility-fails-to-no-detect = Loop { compatibility-this-loop } holds a gate and fails to no detect: with a broken loop the gate closes unguarded. Set it to detect, so that the gate stays open and somebody calls.

## What would turn a check

# What is changed, before or after: turns, a wiring or a gauge as in requests, or a length; and the loop that it is changed on.
compatibility-changed-value = { $value }
compatibility-changed-loop = { $loop }
compatibility-change-turns = { $place ->
    [first] Wind
   *[next] wind
} { $count ->
    [one] loop
   *[other] loops
} { $loops } with { $to ->
    [one] { $to } turn
   *[other] { $to } turns
}{ $count ->
    [one] {""}
   *[other] {" "}each
} instead of { $from }
compatibility-instead-of-wiring = { $from ->
    [separate] instead of giving each a channel of its own
    [series] instead of in series
   *[parallel] instead of in parallel
}
compatibility-change-wiring = { $place ->
    [first] { $to ->
        [separate] Give each loop a channel of its own instead of joining all in { $from }
        [series] Join the loops in series { compatibility-instead-of-wiring }
       *[parallel] Join the loops in parallel { compatibility-instead-of-wiring }
    }
   *[next] { $to ->
        [separate] give each loop a channel of its own instead of joining all in { $from }
        [series] join the loops in series { compatibility-instead-of-wiring }
       *[parallel] join the loops in parallel { compatibility-instead-of-wiring }
    }
}
compatibility-change-lead-in-gauge = { $place ->
    [first] Take
   *[next] take
} { $to } wire for the { $count ->
    [one] lead-in of loop
   *[other] lead-ins of loops
} { $loops } instead of { $from }
compatibility-change-lead-in-length = { $place ->
    [first] Bring
   *[next] bring
} the { $count ->
    [one] lead-in of loop
   *[other] lead-ins of loops
} { $loops } to { $to } instead of { $from }
compatibility-change-along-travel = { $place ->
    [first] Make
   *[next] make
} { $count ->
    [one] loop
   *[other] loops
} { $loops } { $to } long in the direction of driving instead of { $from }
compatibility-remedy = { $changes }: { $check ->
    [inductance] the inductance at the unit is then { $value }
    [quality_factor] the quality factor is then at best { $value }
    [dc_quality_factor] reactance at 50 kHz over the resistance to direct current is then { $value }
    [dc_resistance] loop and lead-in then have { $value }
    [lead_in_share] { $value } of a change at the loop then reaches the unit
    [frequency] it then runs at { $value }
   *[vehicle] a { $vehicle } then changes it by { $value } at its hardest place
}, and nothing else stands worse. { $outcome ->
    [suitable] The channel is then suitable.
   *[better] The channel needs more than that to be suitable.
}

compatibility-search-bounded = The search for what would put a check right was ended early, for the job asks for more than one answer may compute. All checks are complete; there may be more remedies, and smaller ones. For a full search ask for fewer loops or vehicles at once.

## Why a default was taken

compatibility-usual-lane-width = The loop, or the row of loops, and the usual setback on each side.
compatibility-usual-wiring = Every loop has its own channel.
compatibility-usual-steps = Steps of the standard's sensitivity classes; a finer one must stand on the unit's sheet.
