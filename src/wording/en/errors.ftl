### What is wrong with a field, and what to send instead.
