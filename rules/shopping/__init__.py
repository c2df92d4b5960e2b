"""Shopping: whole purchase units, what the plan needs of each, and what is left over (handbook, section 8)."""

from rules.shopping.cart import purchase_of
from rules.shopping.list import FUEL_AISLE, shopping
from rules.shopping.need import OPEN, Need, asked, bought_as, needs_of
from rules.shopping.walk import walked

__all__ = [
    "FUEL_AISLE",
    "OPEN",
    "Need",
    "asked",
    "bought_as",
    "needs_of",
    "purchase_of",
    "shopping",
    "walked",
]
