### What the trade knows.
