"""The coal plan: how many briquettes, where, for how long, and when the next ones are lit."""
