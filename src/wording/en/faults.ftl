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
faults-contradictory-substitutions = On a known inductor the unit runs with more of the circuit than where it does not run: one of the tests is wrong, or the fault comes and goes. Neither clears anything; do both again, the nearer one first.
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

faults-insulation-dry = The fault comes with rain and the ground was dry, so a good reading clears nothing: wet slot, splice and lead-in, and measure again.
faults-break-place = The open pair has { $capacitance } of the { $whole_capacitance } that a whole one has: { $place ->
    [lead_in] the wire is open within the lead-in, about { $share } of the way from the unit to the loop
    [unknown] that is more than this lead-in and a loop can have, so one of the two figures is of another cable; measure a like pair and read it again
   *[splice_or_loop] it reaches the splice, so the wire is open at the splice or in the loop; open the splice and measure the loop alone
}.
faults-break-distance = Look { $distance } along it from the unit.
faults-gate-seen = A loop that sees its gate is looked into with the loops connected: read the unit's level or frequency with the gate closed and open, or move the leaf by hand with the operator locked out and its path watched. Never disconnect a loop that holds the gate while the gate can move. Set a coarser step only where every vehicle is still seen at it; else the loop or the leaf must move.

## A reading, at the beginning of a sentence or in a list

faults-reading = { $meter ->
    [insulation_megohm] Insulation
    [resistance_ohm] Resistance
    [inductance_uh] Inductance
    [capacitance_nf] Capacitance
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

faults-test-evidence = The test "{ $test-label }" showed: { $outcome-label }. That { $verdict ->
    [for] agrees with this fault
   *[against] speaks against this fault
}.

## The form of a fault, behind its name

faults-in-loop = in the loop
faults-in-lead-in = in the lead-in
faults-at-splice = at the splice of loop and lead-in
faults-along-lead-in = along the lead-in
faults-turn-of-count-closed = one turn of { $turns } closed on itself
faults-turn-closed = one turn closed on itself
faults-turn-bridged = the turn bridged
faults-bridged-at-tails = the loop bridged at its tails
faults-bridged-along-lead-in = the pair bridged along the lead-in
faults-wrong-turns = { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
} instead of { $designed_turns }
faults-turns-too-few = turns too few
faults-turns-too-many = turns too many
faults-other-loop-connected = another loop is connected
faults-wires-of-two-loops-connected = one wire of each of two loops is connected
faults-metal-at-rest = metal that lies there
faults-metal-of-the-gate = the gate's own metal as it moves
faults-in-unit = in the unit
faults-in-arrester = in the arrester

## The test to do next

faults-test-reason = { $minutes } minutes, and { faults-disturbs }. Of all tests that are left it tells most for that. What leads now: { $suspects }.
faults-test-comes-first = { $minutes } minutes, and { faults-disturbs }. { $test ->
    [insulation_test_wet] The fault comes with rain and insulation was good in dry ground: nothing else is worth doing before it is wetted.
   *[split_at_splice] Insulation is bad, and only the open splice tells whether it is the loop, the lead-in or the splice itself.
}
faults-test-confirms = { $minutes } minutes, and { faults-disturbs }. The fault is as good as found, and this confirms it: the repair is next.
faults-test-proves = { $minutes } minutes, and { faults-disturbs }. No test { $scope ->
    [allowed] in the time that is left, with what may be disturbed,
   *[all] that is left
} would tell more: mend what leads, then prove it so.
faults-join-splice-first = Join the splice first: the loop must be on its unit before the gate can move.
faults-disturbs = { $disturbs-code ->
    [nothing] nothing more is disconnected
    [plug] only a plug or terminals are opened
    [splice] the splice is opened and made anew
   *[pavement] the slot is opened and sealed again
}
faults-seen = { $outcome-label }
faults-suspect-placed = { $suspect }{ $place ->
    [lead_in] {" "}in the lead-in
    [splice] {" "}at the splice
    [loop] {" "}in the loop
   *[anywhere] {""}
}
faults-dry-clears-nothing = The ground is dry, so a good reading clears nothing: wet slot, splice and lead-in, and measure again.
faults-outcome-means = { $certainty ->
    [settled] Then it is this: { $suspects }
    [leaning] Then it is most likely this: { $suspects }
   *[open] Then these are left: { $suspects }
}.

## Why a default was taken

faults-usual-place = Where meters are connected first.
faults-inductance-by-tank = What makes the unit run at its frequency with the tank capacitance of its sheet.
faults-usual-ground = Nobody said that the ground was wet; a good reading in dry ground clears nothing that comes with rain.
faults-usual-sizes = The size is not known: loops at openings are seldom smaller or larger. Pace it out and say what it is.
faults-usual-loops = Neither the design of the loop nor a record of it is known: what loops usually have stands in, so only what differs much from it is told.
