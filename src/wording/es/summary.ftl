### A job in a few lines, for a customer or a clerk: no name of a field, no code.

# $sorts are the next.
summary-headline = { $sorts }; { $outlook ->
    [stop] do not build it as it stands: { $things ->
        [one] one reason stands
       *[other] { $things } reasons stand
    } against it
    [watch] { $things ->
        [one] one thing
       *[other] { $things } things
    } to watch
   *[sound] nothing stands against it
}.
summary-sort = { $loops ->
    [one] { $loops } loop
   *[other] { $loops } loops
} of { $along_travel-number } x { $across_lane } with { $turns ->
    [one] { $turns } turn
   *[other] { $turns } turns
}
summary-role = { $role-label }
summary-size = { $loops ->
    [one] { $along_travel-number } x { $across_lane }
   *[other] { $loops } of { $along_travel-number } x { $across_lane }
}
summary-place = { $side ->
    [outside] { $distance } outside the { summary-barrier }
    [inside] { $distance } inside the { summary-barrier }
   *[on_the_line] across the line of the { summary-barrier }
}
summary-barrier = { $barrier-code ->
    [barrier_arm] arm
    [overhead_door] door
   *[other] gate
}
summary-place-without-barrier = { $side ->
    [outside] { $distance } before the window, post or stop line
    [inside] { $distance } behind the window, post or stop line
   *[on_the_line] at the window, post or stop line
}

## What to order

summary-preformed = { $construction-label }, { $along_travel-number } x { $across_lane }, { $turns ->
    [one] one turn
   *[other] { $turns } turns
}, with { $lead_in_length } of lead-in
# One length for each loop.
summary-wire = { $wire } loop wire in whole lengths, lead-in and { $allowance } for corners and ends included: { $lengths }
summary-wire-length = { $loops ->
    [one] { $length }
   *[other] { $loops } of { $length }
}

## What to watch

summary-finding = { $finding-description }
