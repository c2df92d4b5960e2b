"""The whole trip: several meals joined into one shopping list, one packing list, one cooler, one fire, one calendar."""
