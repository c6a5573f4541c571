### The labels and descriptions of closed lists of the service: kinds of problems and of faults.
