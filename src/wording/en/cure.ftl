### Whether to seal, and when traffic may return.

## The weather at the start, and until the sealant is safe

cure-slab-frozen = { $moment ->
    [later] At { $time } the slab
   *[start] The slab
} { $surface_origin ->
    [assumed] is taken to be at { $surface }, as the hours before left it
   *[measured] is at { $surface }
}: frozen, with frost on it or near it, and nothing bonds to that. Warm air does not make a warm slab. Wait until the slab itself is above { $warm } and dry.
cure-frozen-dry-slab = The slab { $surface_origin ->
    [assumed] is taken to be
   *[measured] is
} at { $surface }: frozen, but called dry, clear of frost, and warm enough for this sealant's sheet. Wipe the slot with a dry cloth and look for rime before every cartridge; a slot that was sawn wet in this cold holds ice.
cure-slab-below-minimum = { $moment ->
    [later] At { $time } the slab
   *[start] The slab
} { $surface_origin ->
    [assumed] is taken to be at { $surface }, as the hours before left it
   *[measured] is at { $surface }
}, below the { $minimum } that this sealant asks for. Wait until slab and air are there and rising.
cure-measure-slab = Measure the slab temperature before you decide.
cure-air-below-minimum = { $moment ->
    [later] At { $time } the air
   *[start] The air
} is at { $air }, below the { $minimum } that this sealant asks for. Wait until slab and air are there and rising.
cure-above-maximum = { $moment ->
    [later] At { $time } the
   *[start] The
} { $field ->
    [air] air
   *[surface] slab
} is at { $hottest }, above the { $maximum } that the sheet allows. Work in the cooler hours, out of the sun.
cure-near-dew-point = { $moment ->
    [later] At { $time } the slab
   *[start] The slab
} { $surface_origin ->
    [assumed] is taken to be
   *[measured] is
} at { $surface }, { $side ->
    [at] at the dew point of { $dew_point }: water condenses
    [below] { $distance } below the dew point of { $dew_point }: water condenses
   *[above] only { $distance } above the dew point of { $dew_point }: water may condense
} on it. Wait until it is { $least_margin } above, or dry and warm the slot.
cure-rain-before-safe = At { $time } { $outlook ->
    [likely] rain or snow is likely ({ $probability })
    [amount] { $fall } of rain or snow is due
   *[due] rain or snow is due
}, before { $safe_event }. Start in a dry window, or take a sealant that sets before it.
cure-cold-before-safe = At { $time } the air falls to { $air }, below the { $minimum } that is asked for, before { $safe_event }. Start earlier on a warmer day, or take a sealant that sets faster.
cure-cold-after-skin = At { $time } the air falls to { $air }. { $skin ->
    [formed] The skin is there before the cold
   *[forming] The skin should be there before the cold, though not surely
}, which only slows the cure behind it. Before wheels return, see that nothing tracks, whatever the clock says.
cure-saw-water-freezes = At { $time }, while the slots are sawn, the { $field ->
    [air] air
   *[surface] slab
} is at { $coldest }: the water of the saw freezes in the slot and on the lane. Saw when slab and air are above freezing.
cure-rain-possible = At { $time } { $outlook ->
    [likely] rain or snow is possible ({ $probability })
    [amount] { $fall } of rain or snow may fall
   *[due] rain or snow is possible
}, before the sealant keeps it out. Have a cover ready that does not touch the sealant.
cure-rain-after-safe = At { $time } { $outlook ->
    [likely] rain or snow is likely ({ $probability })
    [amount] { $fall } of rain or snow is due
   *[due] rain or snow is due
}, soon after { $safe_event }, by { $safe_at }. Begin on time, and have a cover ready that does not touch the sealant.
cure-rained-before = Rain or snow was due until { $rained_until }. A slot that looks dry may not be: blow it out, warm it, and press a dry paper towel to the bottom before the sealant goes in.
cure-rain-unknown = The weather that is known does not say whether it rains before the sealant keeps water out. Look at the sky, or take a forecast that tells the chance of rain.
cure-weather-ends-before-sealed = The weather ends at { $weather_end }, before the last foot is sealed. What comes after is not guessed: take a forecast of more hours.
cure-weather-too-short = The weather ends at { $weather_end }, before { $safe_event }. What comes after is not guessed: take a forecast of more hours.
cure-surface-unknown = Nobody measured the slab, and the weather that is known begins only at { $weather_begin }: what the night left in the slab is not known. It is taken to be at { $surface }, and that is too cool to go by. Measure the slab beside the slot, and say what it is.
cure-surface-assumed-by-few-hours = Nobody measured the slab, and the weather that is known begins only at { $weather_begin }: what the hours before left in the slab is not known. It is taken to be at { $surface }. Measure it beside the slot before you decide, and say what it is.
cure-surface-measured-before = The slab was measured some hours before. It is taken to be at { $surface }, as much colder since as the air, and no warmer. Measure it again beside the slot.
cure-surface-assumed = Nobody measured the slab; it is taken to be at { $surface }, the lowest air of the last 12 hours and less at night. Measure it beside the slot, and say what it is.
cure-hot-slab = It is { $warmest }, and nobody said how hot this sealant may be applied: in heat it skins over fast, and gas below the skin blows bubbles. Look for the highest temperature on the data sheet, or work in the cooler hours.
cure-short-pot-life = At { $warmest } mixed sealant { $limit ->
    [pot_life] can be worked for
   *[set] sets in
} about { $band ->
    [one] { $least }
   *[range] { $least } to { $most }
}. Mix little, pour at once, and keep both parts in the shade.
cure-sets-before-emptied = At { $warmest } this sealant { $limit ->
    [pot_life] can be worked for
   *[set] sets in
} about { $band ->
    [one] { $least }
   *[range] { $least } to { $most }
}, less than the { $cartridge } that a cartridge takes: it sets in the nozzle.
cure-cooler-hours = Work in the cooler hours: begin { $windows }.
cure-window = from { $from } to { $until }
cure-cooler-hours-stopped = Cooler hours come, but something else stops the work in them.
cure-no-cooler-hours = No hour of this weather is cool enough: take another day, or a sealant that sets slower.
cure-fit-to-apply = The slot is dry, the slab is at { $surface }, { $margin } above the dew point, and rain is unlikely before { $safe_event }, by { $safe_at }. Begin.

## What makes rain and cold harmless, behind "before"

cure-event-skinned-over = the sealant has surely skinned over
cure-event-set = the sealant has surely set
cure-event-cold = the sealant is surely cold

## The slot and the wire in it

cure-slot-wet-for-hot-sealant = There is water in the slot, and molten sealant makes it steam that spatters. Blow it out and dry the slot first.
cure-slot-wet-by-rain = Rain or snow was due until { $rained_until }, and nobody said that the slot is dry since: it is taken to be wet.
cure-slot-dries = In this weather it is dry by { $dry }. Look at it then, or blow it out and dry it before.
cure-slot-stays-wet = It does not dry in this weather. Blow it out, dry it with hot air, and say what it looks like then.
cure-slot-wet = There is water in the slot: it spoils the seal. Blow it out, dry the slot and let no more in, then begin.
cure-frost-on-slab = Frost or ice lies on the slab, and nothing bonds to it. Melt it, dry the slot, and warm the slab itself before you begin.
cure-slot-damp-for-hot-sealant = The slot is damp, and molten sealant makes steam of it: bubbles, spatter, no bond. Dry the slot with hot air first.
cure-slot-damp-not-allowed = The slot is damp, and { $kind-code ->
    [one_part_moisture_cure] one-part
    [two_part_reactive] two-part
   *[hot_applied] hot-applied
} sealant does not bond to damp unless its data sheet says so. Dry the slot first.
cure-slot-damp = The slot is damp. Blow it out and dry it until nothing shows on a paper towel; a film of water lets the seal go.
cure-surface-condition-assumed = Nobody said whether the slot is dry. See that it is, to the bottom, before the sealant goes in.
cure-insulation-too-low = The insulation stands { $rating }, and the sealant is poured at { $pour }: it would soften and the wires would touch. Take wire and jacket rated for the pour, or a sealant that is applied cold.
cure-insulation-unknown = Nobody said what the insulation and the jacket stand. Look for the rating on the wire's sheet, and say what it is: it must be at least the { $pour } of the pour.

## The age of the sealant

cure-past-shelf-life = The sealant's shelf life { $moment ->
    [past] ended on { $ends_on }
   *[during] ends on { $ends_on }, before the last foot is sealed
}. Take fresh sealant; old sealant cures badly or not at all.
cure-shelf-life-short = The sealant's shelf life ends on { $ends_on }, { $days_left ->
    [0] the day of the start
    [one] in { $days_left } day
   *[other] in { $days_left } days
}. Use it first, and try it on a scrap.

## When traffic may return

cure-weather-ends-before-traffic = The weather ends before traffic may surely return, so nobody can say whether { $needed_open_by } is met. Take a forecast of more hours.
cure-may-open-late = Traffic may return between { $earliest } and { $latest }, and is needed at { $needed_open_by }. Have a way round ready.
cure-may-open-after-weather = Traffic may return from { $earliest } on, but perhaps only after the weather that is known ends; it is needed at { $needed_open_by }. Have a way round ready.
cure-opens-late = Traffic may return at { $earliest } at the earliest, and is needed at { $needed_open_by }.
cure-opens-after-weather = Traffic may not return within the weather that is known, and is needed at { $needed_open_by }.
cure-no-alternative = Nothing in this weather meets it: take a later time, or another day.
cure-alternatives = What would meet it, in a dry slot: { $alternatives }.
cure-alternative-own = this sealant from { $earliest_start }
cure-alternative-other = { $kind } sealant from { $earliest_start }
cure-traffic-by-skin = No data sheet says when traffic may return, so a cured skin of { $skin } stands in: a choice made here. Below it the sealant stays soft for days. Keep wheels off until nothing tracks; where they must be back the same day, take two-part sealant.

## What the times rest on

cure-front-calibrated = Without a data sheet the depth of cure is calibrated to practice, not validated: a slot of 1-1/4 in (32 mm) cures through in 3 to 7 days at 23 °C (73 °F) and 50 % humidity. Say what the sheet gives: the depth that cures in a day, or the time to full cure.
cure-usual-times = What the data sheet does not give is usual: set in 10 to 15 min at 23 °C (73 °F), traffic after 25 to 60 min and full cure within 60 min at 25 °C (77 °F). Say what the sheet gives: the times until it has a skin, until it carries traffic and until it is fully cured.
cure-cools-in-usual-time = Hot-applied sealant does not cure, it cools: it carries traffic when it is cold and nothing tracks, taken as 15 to 60 min after the pour. Say after what time the sheet lets traffic return.
cure-cools-in-time-of-sheet = Hot-applied sealant does not cure, it cools. The sheet's time holds for its own slot and weather: see that nothing tracks.

## Why a default was taken

cure-usual-work = Nobody said how long the sealing takes, and no estimate was made.
cure-work-of-estimate = The sealing of all slots, as the labour of this plan has it; everything counts from the last foot.
cure-usual-surface-condition = Nobody said what the slot looks like; dry, unless rain has left it wet. See for yourself that it is dry.
cure-surface-by-air = The lowest air of the last 12 hours that are known, at night 2 °C (3.6 °F) less; for 3 hours after a measured slab that slab, less what the air has fallen. So for every hour without a measured slab.
cure-minimum-gives-way = The usual 40 °F gives way to the highest temperature of application that was told; the data sheet governs.
cure-usual-minimum-temperature = 40 °F and rising, for every kind of sealant; the data sheet governs.
cure-reference-climate = The laboratory climate that data sheets refer to.
cure-usual-skin-over = About what one-part sealant takes in mild weather; the earliest is two thirds of it.
cure-usual-activation-energy = The latest times hold with it, the earliest without: cold slows the cure more than dry air alone.
cure-damp-slot-not-allowed = A damp slot only where the sheet allows it.
cure-usual-shelf-life = One year from the date of manufacture.
