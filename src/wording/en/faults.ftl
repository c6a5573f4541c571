### What has failed, and what to test next.

## What the readings and the substitution mean

faults-insulation-reading = { $reading } { $meaning }.
faults-insulation-asked = The unit's sheet asks for { $insulation_min }.
faults-test-voltage = Insulation was tested at { $test_voltage }; the agencies' limits hold at { $usual_test_voltage }, and a leak may hide at less. Repeat it at { $usual_test_voltage } if the wire and everything still connected bear that.
faults-reading-temperature = At { $temperature } copper has { $difference } { $direction ->
    [more] more
   *[less] less
} resistance than at 20 °C: a sound loop shows { $expected_low-number } to { $expected_high }, and the suspects are judged by that.
faults-contradictory-readings = No single fault explains these readings together: { $readings }. One of them is wrong, or there are two faults. Measure each again with the leads checked, before you act on the suspects.
faults-substitution-void = The known inductor has { $inductance } and the unit tunes { $inductance_min-number } to { $inductance_max }: whether it runs says nothing. Repeat the test with an inductor from the middle of that range.
faults-substitute-does-not-run = On a known inductor the unit does not run: the fault is in { $connected_at-code ->
    [unit_terminals] the unit or its supply
    [harness_end] the unit, its supply or the harness
   *[lead_in_end] the unit, its supply, the harness or the lead-in
}, not in the loop.
faults-substitute-does-not-switch = On a known inductor the unit runs but does not switch: look at the unit, its sensitivity and its output first.
faults-substitute-runs = On a known inductor the unit runs: { $connected_at-code ->
    [unit_terminals] the unit or its supply will do, and the fault is in the harness, the lead-in or the loop
    [harness_end] the unit, its supply or the harness will do, and the fault is in the lead-in or the loop
   *[lead_in_end] the unit, its supply, the harness or the lead-in will do, and the fault is in the splice or the loop
}.

## A reading, at the beginning of a sentence or in a list

faults-reading = { $meter ->
    [insulation_megohm] Insulation
    [resistance_ohm] Resistance
    [inductance_uh] Inductance
   *[quality_factor] Quality factor
} { $range ->
    [over_range] over range
   *[number] of { $measured }
}

## What speaks for and against a fault

faults-reading-evidence = { $reading } { $verdict ->
    [for] fits this fault
   *[against] does not fit this fault
}{ $expected ->
    [range] {" "}({ $expected_low } to { $expected_high } expected)
    [over_range] {" "}(over range expected)
   *[unknown] {""}
}.
faults-observation-evidence = "{ $observation-label }" { $verdict ->
    [for] is usual with this fault
   *[against] is unusual with this fault
}.
faults-substitution-evidence = The unit { $outcome ->
    [runs] runs
   *[does_not_run] does not run
} on a known inductor ({ $connected_at-label }), which { $verdict ->
    [for] agrees with this fault
   *[against] speaks against a fault at that place
}.

## The form of a fault, behind its name

faults-in-loop = in the loop
faults-in-lead-in = in the lead-in
faults-in-lead-in-or-splice = in the lead-in or at the splice
faults-at-splice = at the splice of loop and lead-in
faults-along-lead-in = along the lead-in
faults-turn-of-count-closed = one turn of { $turns } closed on itself
faults-turn-closed = one turn closed on itself
faults-turn-bridged = the turn bridged
faults-bridged-at-tails = the loop bridged at its tails
faults-bridged-along-lead-in = the pair bridged along the lead-in
faults-wrong-turns = { $turns } turns instead of { $designed_turns }
faults-turns-too-few = turns too few
faults-turns-too-many = turns too many
faults-other-loop-connected = another loop is connected
faults-wires-of-two-loops-connected = one wire of each of two loops is connected

## What a test can show

faults-seen-leak = below 10 megohm
faults-seen-sound = sound
faults-seen-loop-leaks = the loop leaks
faults-seen-lead-in-leaks = the lead-in leaks
faults-seen-both-sound = both are sound once apart
faults-seen-open-circuit = open circuit
faults-seen-too-high = too high
faults-seen-as-expected = as expected
faults-seen-too-low = too low
faults-seen-no-reading = no sensible reading
faults-seen-next-to-nothing = next to nothing
faults-seen-unit-does-not-run = the unit does not run
faults-seen-unit-runs = the unit runs
faults-seen-fault-goes = the fault goes
faults-seen-fault-stays = the fault stays
faults-seen-reading-jumps = the reading jumps
faults-seen-reading-steady = the reading is steady
faults-seen-metal = metal is found
faults-seen-no-metal = no metal is found

## Why a default was taken

faults-usual-place = Where meters are connected first.
faults-inductance-by-tank = What makes the unit run at its frequency with the tank capacitance of its sheet.
