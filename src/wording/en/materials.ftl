### What to load, how long it takes and what it costs.
