"""The cooler as a clock: what is frozen, what thaws when, how much ice it takes."""
