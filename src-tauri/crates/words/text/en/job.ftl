# What the running job says: refusals, results, readings.
