"""What the cook's own log teaches: the heat of each pot and charcoal, its split, the cook's minutes."""

from rules.habit.fit import fit
from rules.habit.own import coal_factor, minutes_factor, split_factor
from rules.habit.record import Cooked, Told, cooked

__all__ = ["Cooked", "Told", "coal_factor", "cooked", "fit", "minutes_factor", "split_factor"]
