"""Which pot, how many, how full, and what that does to the time (handbook chapter 4)."""

from rules.pot.choice import choose
from rules.pot.iron import Oven, depth_of, fill_of, oven, ovens
from rules.pot.minutes import minutes_factor
from rules.pot.pans import Pan, pan_of, read_pan
from rules.pot.scaling import scaling
from rules.pot.volume import raw_volume

__all__ = [
    "Oven",
    "Pan",
    "choose",
    "depth_of",
    "fill_of",
    "minutes_factor",
    "oven",
    "ovens",
    "pan_of",
    "raw_volume",
    "read_pan",
    "scaling",
]
