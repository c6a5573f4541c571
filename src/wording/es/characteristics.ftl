### What the electrical figures of a loop mean.

characteristics-lead-in-outweighs-loop = The lead-in { $weight ->
    [more] has more inductance than the loop
   *[over_half] has over half the loop's inductance
}: only { $loop_share } of a change at the loop reaches the unit. Add a turn, shorten the lead-in, or set a finer sensitivity.
characteristics-below-envelope = Finished, it will measure { $as_built_low-number } to { $as_built_high } at the unit, and a unit tunes from { $inductance_min }: { $outcome ->
    [untunable] no such unit tunes to it
   *[doubtful] it may not tune
}. Wind one turn more.
characteristics-above-envelope = Finished, it will measure { $as_built_low-number } to { $as_built_high } at the unit, and a unit tunes up to { $inductance_max }: { $outcome ->
    [untunable] no such unit tunes to it
   *[doubtful] it may not tune
}. Wind one turn less or shorten the lead-in.
characteristics-high-resistance = Loop and lead-in have { $dc_resistance }; one agency accepts at most { $limit-number }. Take a heavier or shorter lead-in.
characteristics-low-quality = The quality factor is at best { $quality_factor }, and the unit needs { $quality_factor_min }. Take heavier wire or a shorter lead-in.
characteristics-near-self-resonance = With that capacitance the loop resonates by itself at { $self_resonance }. At { $frequency } a meter or unit sees more inductance than there is. Use a lower frequency or fewer turns.
characteristics-steel-below = Steel { $depth_below_loop } below takes at most { $inductance_drop_bound } of the loop's inductance, as if it were a solid sheet, and lowers the height at which metal is seen. Mesh takes less. Lay the loop as high above the steel as the cover allows.

## Why a default was taken.

characteristics-usual-frequency = The frequency of an agency's acceptance test.
characteristics-usual-temperature = The temperature at which wire tables hold.
characteristics-no-shunt-capacitance = No public figure for the capacitance of slots and cables exists.
