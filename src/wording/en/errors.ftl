### What is wrong with a field, and what to send instead.

## Quantities

errors-dimension = { $dimension ->
    [length] a length
    [temperature] a temperature
    [temperature_difference] a temperature difference
    [speed] a speed
    [volume] a volume
    [duration] a duration
    [inductance_per_length] an inductance per length
    [depth_per_day] a depth per day
    [wire_size] a wire size
    [share] a share in percent
    [amount_of_money] an amount of money
   *[quantity] a quantity
}
errors-dimension-at-start = { $dimension ->
    [length] A length
    [temperature] A temperature
    [temperature_difference] A temperature difference
    [speed] A speed
    [volume] A volume
    [duration] A duration
    [inductance_per_length] An inductance per length
    [depth_per_day] A depth per day
    [wire_size] A wire size
    [share] A share in percent
   *[quantity] A quantity
}
errors-dimension-without-article = { $dimension ->
    [length] length
    [temperature] temperature
    [temperature_difference] temperature difference
    [speed] speed
    [volume] volume
    [duration] duration
    [inductance_per_length] inductance per length
    [depth_per_day] depth per day
    [wire_size] wire size
    [share] share in percent
   *[quantity] this quantity
}
errors-examples = "{ $us_example }" or "{ $metric_example }"
errors-text-too-long = The text is longer than { $max_characters } characters.
errors-unit-counts-whole = This unit counts in whole numbers.
errors-no-number = { errors-dimension-at-start } starts with a number; "{ $text }" has none that can be read.
errors-number-form = The number in "{ $text }" has a form that is not read.
errors-write-number = Write { errors-examples }.
errors-comma = "{ $text }" has a comma in its number.
errors-write-point = Write "{ $with_point }", with a point.
errors-write-joined-or-point = Write "{ $without_separator }", without a separator, or "{ $with_point }", with a point.
errors-write-without-comma = Write the number without a comma, with a point for decimals, as { errors-examples }.
errors-no-unit = { errors-dimension-at-start } needs a unit; "{ $text }" has none.
errors-unit-unknown = "{ $unit }" is not a unit that is known here.
errors-unit-wrong-dimension = "{ $unit }" is not a unit of { errors-dimension-without-article }.
errors-write-quantity = Write { errors-dimension } as { errors-examples }.
errors-out-of-range = "{ $text }" lies outside { $least } to { $greatest }.
errors-send-in-range = Send { errors-dimension } from { $least } to { $greatest }, such as { errors-examples }.
errors-write-joined = Write "{ $without_separator }", without a separator.
errors-parts = "{ $text }" has more than a number and its unit, or parts that do not go together.
errors-meant-quantity = Did you mean "{ $suggestion }"? Otherwise write { errors-dimension } as { errors-examples }.

## Counts, sizes of lists and lengths of texts

errors-not-allowed = The value lies outside what this field allows: { errors-allowed }.
errors-send-allowed = Send { errors-allowed }.
errors-allowed = { $bounds ->
    [both] from { $least } to { $greatest }{ errors-things }
    [least] at least { $least }{ errors-things }
    [greatest] at most { $greatest }{ errors-things }
   *[none] another value
}
errors-things = { $things ->
    [items] {" "}items
    [characters] {" "}characters
   *[none] {""}
}

## The structure of a body

errors-field-unknown = There is no field { $field } here.
errors-did-you-mean = Did you mean { $meant }?
errors-meant = { $meant }
errors-known-fields = Known here: { $known }.
errors-field-missing = The field { $field } is needed and was not sent.
errors-add-field = Add { $field }; its description says what it takes.
errors-field-twice = The field { $field } stands twice in one object.
errors-send-once = Send it once.
errors-value-unknown = "{ $value }" is not a value that this field takes.
errors-known-values = One of: { $known }.
errors-id-prefix = "{ $value }" cannot begin an id.
errors-send-id-prefix = Send a letter, then letters, digits, hyphens or underscores, at most { $max_characters } in all.
errors-null = This cannot be left empty.
errors-send-value = Send a value.
errors-list-too-long = The list has more than { $max_items } items, the most that this service takes in any list.
errors-send-fewer-items = Send at most { $max_items } items.
errors-value-not-taken = The field does not take { $value }.
errors-send-whole-number = Send a whole number within the range of the field; its description gives it.
errors-type-wrong = { $sent ->
    [array] An array
    [object] An object
    [text] Text
    [number] A number
    [truth_value] A truth value
   *[other] Another value
} stands where { $expected } belongs.
errors-send-type = Send { $expected }.
errors-type = { $type ->
    [text] text
    [number] a number
    [whole_number] a whole number
    [truth_value] true or false
    [array] an array
    [object] an object
    [listed_text] one of the listed texts
   *[other] another type
}
errors-type-of-text = { errors-dimension } as text, such as "{ $example }"
errors-type-other = { $type }

## Batches

errors-batch-too-large = { $items } items are more than a batch may have here.
errors-batch-over-burst = The caller may send { $max_items } requests at once, and an item of a batch counts as one.
errors-batch-item-location = A batch fetches no forecast for a single item.
errors-batch-item-location-hint = Send the weather hour by hour, or one place for all items.

## Forecasts

errors-no-forecasts = This service fetches no forecasts.
errors-forecast-not-covered = The weather service has no hourly forecast for this place.
errors-send-conditions = Send the weather hour by hour instead.

## Between fields

errors-role-twice = The role "{ $role-label }" stands twice.
errors-role-twice-hint = Send each role once; several loops side by side come from the width.
errors-observation-twice = "{ $observation-label }" stands twice.
errors-observation-twice-hint = Send each observation once.
errors-simulated-vehicle = A unit that does not run cannot be tried with a vehicle.
errors-simulated-vehicle-hint = Leave out what the vehicle showed, or say that the unit runs.
errors-nothing-observed = There is nothing to reason from.
errors-nothing-observed-hint = Send at least one reading, one observation, or a substitution.
errors-empty-record = The commissioning record holds no figure.
errors-empty-record-hint = Send the inductance, the resistance or the quality factor of the record, or leave the record out.
errors-number-and-over-range = { $field ->
    [insulation_megohm] Insulation
    [resistance_ohm] Resistance
    [inductance_uh] Inductance
   *[other] The reading
} is a number and over range at once.
errors-number-and-over-range-hint = Send the number, or say that it was over range, not both.
errors-test-voltage-alone = There is a test voltage and no reading of insulation.
errors-test-voltage-alone-hint = Send the insulation that was read with it, or leave the voltage out.
errors-whole-capacitance = Capacitance tells nothing without that of the whole pair.
errors-whole-capacitance-hint = Send that of a like pair that is whole, or the figure of the cable's sheet times its length; or leave the capacitance out.
errors-test-twice = The test "{ $test-label }" stands twice.
errors-test-twice-hint = Send each test once, with what it showed last.
errors-test-outcome = The test "{ $test-label }" cannot show this: { $outcome-label }.
errors-test-outcome-hint = Send one of these: { $outcomes }.
errors-sku-of-item = The number { $sku } is the name of an item of the list of materials.
errors-sku-of-item-hint = Give it a number of your own.
errors-label-twice = The label "{ $label }" stands twice.
errors-label-twice-quantity-hint = Give every loop a label of its own; loops that are alike are one with a quantity.
errors-thin-jacket = The jacket is thinner than one of the wires in it.
errors-thin-jacket-hint = Send the diameter over the jacket, or that over the insulation of the wires in it.
errors-corner-cut-unasked = The corners are to be made without diagonal cuts ("{ $corner-label }"), and a loop has corner cuts.
errors-corner-cut-unasked-hint = Leave the corner cut of the loop out, or have the corners cut diagonally.
errors-deep-cover = The cover is as deep as the slot.
errors-deep-cover-hint = Send a deeper slot or less cover.
errors-weather-not-fetched = The weather of the place was not fetched.
errors-no-weather = Nothing is known of the weather.
errors-no-weather-hint = Send the weather hour by hour.
errors-weather-twice = The weather is given twice, hour by hour and by a place.
errors-weather-twice-hint = Send the hours or the place, not both.
errors-start-outside-weather = The start lies outside the weather.
errors-start-outside-weather-hint = Send a start from { $begin } to before { $end }, or weather that reaches it.
errors-no-humidity = Nothing is known of the water in the air.
errors-no-humidity-hint = Send the relative humidity or the dew point.
errors-dew-point-above-air = The dew point lies above the air.
errors-dew-point-above-air-hint = Send the dew point of the same hour as the air, at most as high.
errors-dew-point-differs = At this humidity the dew point is { $dew_point }.
errors-dew-point-differs-hint = Send the relative humidity or the dew point, not both.
errors-row-twice = The same instant as the row before, offsets considered.
errors-row-twice-hint = Send each hour once.
errors-row-too-early = The row is earlier than the one before, offsets considered.
errors-row-too-early-hint = Send the rows in order of time.
errors-gap-between-rows = { $gap } lie between this row and the one before.
errors-gap-between-rows-hint = Send a row for every hour; at most 3 h may lie between two.
errors-weather-too-long = The weather is longer than 14 days.
errors-weather-too-long-hint = Send at most 14 days.
errors-no-time = The text is no time with an offset.
errors-no-time-hint = Send a time such as "2026-01-20T07:00:00-05:00" or "2026-01-20T12:00:00Z", with its offset, from 1970 to 2200.
errors-no-date = The text is no date.
errors-no-date-hint = Send a date such as "2026-01-31".
errors-application-temperatures = The highest temperature of application is no higher than the lowest.
errors-application-temperatures-hint = Send both from the sealant's sheet, the higher one as the highest.
errors-made-after-start = The sealant is made after the start.
errors-made-after-start-hint = Send the date of manufacture, or a later start.
errors-cure-times-order = { $later ->
    [open_to_traffic] The time until traffic may return
   *[full_cure] The time to full cure
} is shorter than { $earlier ->
    [open_to_traffic] that until traffic may return
   *[skin_over] that until a skin has formed
}.
errors-cure-times-order-hint = Send the times to a skin, to traffic and to full cure, each at least as long as the one before.
errors-needed-before-start = Traffic is needed before the work starts.
errors-needed-before-start-hint = Send a time after the start.
errors-cure-without-weather-hint = Send the weather, or ask for the plan without the cure.
errors-cure-without-weather = The cure is asked for without weather.
errors-weather-without-start-hint = Send when the sealant goes in, such as "2026-01-20T13:00:00-05:00".
errors-weather-without-start = The weather was sent without a start.
errors-label-twice-hint = Give every loop a label of its own.
errors-vehicle-and-plate = Both a vehicle class and a plate were sent.
errors-vehicle-and-plate-hint = Send one of the two.
errors-no-vehicle = Neither a vehicle class nor a plate was sent.
errors-no-vehicle-hint = Send a vehicle class, or a plate with its width, its length and its height above the loop.
errors-wide-setback = Two setbacks take almost the whole width.
errors-wide-setback-hint = Send a setback of at most 40 % of the width.
errors-lead-in-parts = What lies in the cut and what lies in conduit are together longer than the lead-in.
errors-batch-shared-field = The items of a batch do not share the field { $name }.
errors-batch-shared-field-hint = Send an opening in each item, and the weather beside the items.
errors-batch-id-twice = Two items have the name { $id }.
errors-batch-id-twice-hint = Give each item a name of its own, for one bill of all of them tells them apart by it; or leave that bill out.
errors-lead-in-shared = More of the lead-in is to lie in a shared slot than lies in a slot at all.
errors-lead-in-shared-hint = Send a shorter length in the shared slot, or a longer one in slots altogether, which it is a part of.
errors-lead-in-parts-hint = Send a length that covers both, or shorter parts.
errors-thin-insulation = The diameter over insulation is no larger than the bare conductor of { $gauge }.
errors-thin-insulation-hint = Send the diameter over insulation from the wire's sheet, or a smaller gauge.
errors-large-corner-cut = The corner cuts would take almost all of a leg.
errors-large-corner-cut-hint = Send a corner cut of at most 45 % of the shorter leg (of a cell, for a quadrupole).
errors-detector-limits = The least { $what } ({ $least }) is not below the greatest ({ $greatest }).
errors-detector-limits-hint = Send both limits from the unit's sheet, the smaller one as the minimum.
errors-detector-step = The step { $step } lies outside 0.001 to 50 percent.
errors-detector-step-hint = Send the change in percent that this step switches at, from 0.001 to 50.
errors-no-money = "{ $text }" is no amount of money.
errors-no-money-hint = Send text such as "24.50": up to 9 digits, a point, up to 6 digits, no sign and no currency.
errors-currency-upper-case = Send "{ $code }", in upper case.
errors-send-currency = Send a code such as "USD" or "EUR".
errors-no-currency = "{ $currency }" is no currency of ISO 4217.
errors-currency-without-minor-unit-hint = Send the currency that you pay in, such as "USD" or "EUR".
errors-currency-without-minor-unit = "{ $currency }" has no minor unit, so amounts in it cannot be rounded.
errors-fixed-role-twice = The loop of the role "{ $role-label }" is decided twice.
errors-fixed-role-twice-hint = Send one entry for each role.
errors-fixed-role-absent = The role "{ $role-label }" is not among the roles of this job.
errors-fixed-role-absent-hint = Add it to them, or leave this entry out.
errors-fixed-loop-wide = This loop is wider than the opening.
errors-fixed-loop-wide-hint = Send a leg across that is no longer than the width of the opening.
errors-fixed-distance-on-line = A loop of the role "{ $role-label }" straddles the line and has no distance from it.
errors-fixed-distance-on-line-hint = Leave the distance out for this role.
errors-no-steel-with-depth = It is said that no steel lies below, and how deep it lies.
errors-no-steel-with-depth-hint = Leave the depth out, or say that there is steel.
