### The front page, and the page that holds the helper for a frame.

front-title = Which vehicle loops does this opening need?
front-lead = Loopwright answers what a specialist for vehicle loops is asked: which loops a gate, barrier, drive-through or lane needs, how many turns, whether the detector unit tunes, what to load on the van, whether it can be sealed today, and what has failed. A web shop, a quoting program or an installer’s app asks; the answer is computed, names its assumptions and cautions, and comes in feet and metres, in three languages.
front-skip = Skip to the question
front-pages = Pages
front-requests = Requests and answers
front-guide = Guide for integrators
front-changes = Changes
front-description = OpenAPI description
front-languages = Languages
front-language = English
front-try = Ask for your opening
front-no-script = This needs scripts. The requests below need none.
front-behind = What stands behind it
front-behind-lead = Any program may ask the same. These ask what you have asked above.
front-answer = The answer
front-embed = On a page of your own
front-embed-lead = One script and one tag. The hash pins the file; it is served unchanged for as long as this version of the service’s contract lasts.
front-frame = Which loops does my opening need?
