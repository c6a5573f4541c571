### A loop that is in the ground already: what it is, and whether to keep it.

## The verdict

existing-keep = Keep it: it measures sound, the unit tunes to it, and every vehicle makes enough. Drive each vehicle over it before you rely on it.
existing-verdict = { $verdict-label }: { $reasons }.

## What stands behind it

existing-open = the circuit is open, so nothing can be kept as it is; if the wire has parted in the lead-in or at the splice, mend that and measure again
existing-insulation-unknown = insulation to earth was not measured, and without it nobody knows whether the loop is sound
existing-leaks = insulation to earth is { $insulation }, { $degree ->
    [failed] a dead leak; if it is the splice or the lead-in, mend that and measure again
   *[fair] and a sound loop has { $sound_from } or more
}
existing-inductance-unknown = inductance was not measured, so the turns are a guess
existing-resistance-unknown = resistance was not measured, so neither the wire nor a bad splice shows
existing-fits-none = the readings are those of no usual loop of this size; look for a bad splice, a shorted turn or another size
existing-tuning = { $fit ->
    [does_not_tune] the unit does not tune to it
   *[marginal] it is not sure that the unit tunes to it
} ({ $limits }){ $remedy ->
    [mend_splice] ; the resistance is that of a bad joint: make the splice anew and measure again before anything is cut
    [another_unit] ; another unit, whose sheet covers what is there, would spare a new cut
   *[none] {""}
}
existing-tunes-inductance = { $inductance_low-number } to { $inductance_high } at its terminals, where it takes { $inductance_min-number } to { $inductance_max }
existing-tunes-quality = a quality factor of { $quality } at its own frequency, where it wants { $quality_factor_min } or more
existing-tunes-frequency = it would run at { $frequency_low-number } to { $frequency_high }, and runs at { $frequency_min-number } to { $frequency_max }
existing-tunes-unmeasured = what that depends on was not measured in full
existing-inductance-over-range = inductance was over range, though the circuit is closed: measure it again
existing-unseen = too little for the unit's finest usual step is made by: { $vehicles }
existing-unseen-two-wheelers = too little for the unit is made 1 ft / 0.3 m inside the side wire by: { $vehicles }; let another device see them, or cut a loop with a centre slot
existing-dropped = the unit lets go before the tail of: { $vehicles }
existing-thin = a thin margin is left by: { $vehicles }
existing-drive-over-failed = a vehicle was driven over it and was missed or let go
existing-over-steel = steel { $known ->
    [told] lies below
   *[likely] seems to lie below
}, so the turns are not sure and vehicles make less; prove it with the highest vehicle
existing-holds-gate = it holds a gate, and no vehicle was driven over it yet

## The test that settles it

existing-settles = { $minutes } minutes, and { faults-disturbs }. { $settles ->
    [objection] It answers the gravest of what stands against the loop.
    [turns] It tells which of the likely turn counts is right.
   *[proof] It is the last proof before the loop is relied on.
}

## Why a default was taken

existing-usual-uncertainty = Legs that are paced out along a sealed slot are seldom nearer than that.
existing-usual-lane = The loop and the usual clear strip on each side.
