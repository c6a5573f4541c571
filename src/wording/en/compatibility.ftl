### Whether a detector unit tunes to loops.
