### What a vehicle over a loop means.
