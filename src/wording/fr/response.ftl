### What a vehicle over a loop means.

response-not-seen = The vehicle changes the loop by { $change } at most, and the unit switches at { $threshold }. Set a finer sensitivity, lengthen the short leg, add a turn, or shorten the lead-in.
response-thin-margin = The vehicle changes the loop by { $change }, less than twice the { $threshold } that the unit switches at. Pavement, age and weather take their part: set a finer sensitivity or enlarge the loop.
response-drops-out = The unit lets go with the front { $lets_go_at } past the loop's leading edge; the tail reaches the loop at { $tail_reaches_loop_at }. Set a finer sensitivity or lengthen the loop along travel; do not use this one to hold a gate.
response-blind-strip = Over { $blind_strip } of the lane, its centre included, the machine is not seen: only the wires along travel couple with it. A quadrupole sees the centre.
response-rough-answer = The underside lies lower than the solver resolves for its size ({ $least_height }): the figure is rough by more than 3 %.

## Why a default was taken.

response-usual-threshold = The step that this vehicle asks for.
response-usual-positions = Enough to draw the profile.
response-riding-line = Where two-wheelers are calibrated: 0.3 m inside the side wire, or over the centre slot.
response-over-middle = Over the middle of the loop.
response-usual-lane = The loop and the usual setback on each side.
