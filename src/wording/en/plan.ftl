### The whole job.
