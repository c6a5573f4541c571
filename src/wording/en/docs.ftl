### The pages of the documentation: headings, labels and the words of tables. What stands under them is the description.

docs-title = Requests and answers
docs-lead = Everything that the service is asked, with the fields, an example and the answer of each request.
docs-skip = Skip to the requests
docs-pages = Pages
docs-all = All requests
docs-guide = Guide for integrators
docs-changes = Changes
docs-description = Description with all examples
docs-compact-description = Description without answers
docs-try = Try it
docs-filter = Filter
docs-filter-hint = Part of an address, or words of what it is about. Enter opens the first.
docs-shown = Shown:
docs-nothing-fits = No request has all of these words. Take one away.
docs-group = { $group ->
    [calculations] Calculations
    [drawings] Drawings and papers
    [reference] Reference tables
   *[service] The service itself
}
docs-more = All about this request
docs-not-loaded = It could not be loaded. Open its page, or try again in a moment.

## One request

docs-parameters = Parameters
docs-request = Request
docs-fields = Fields of the request
docs-answer = Answer
docs-answer-fields = Fields of the answer
docs-answer-file = Open this answer by itself
docs-picture = The drawing that the first example is answered with
docs-statuses = Statuses
docs-status = Status

## Tables of fields

docs-field = Field
docs-value = Value
docs-meaning = Meaning
docs-required = required
docs-list-of = list of
docs-map-of = by names of your own:
docs-kind = { $kind ->
    [quantity] text with its unit
    [text] text
    [time] date and time
    [number] number
    [integer] whole number
    [boolean] true or false
    [file] file
   *[object] object
}
docs-bounds = { $bounds ->
    [both] { $least } to { $greatest }
    [least] at least { $least }
   *[greatest] at most { $greatest }
}{ $things ->
    [entries] {" "}entries
    [characters] {" "}characters
   *[none] {""}
}
docs-units = Units:
docs-for-example = For example
