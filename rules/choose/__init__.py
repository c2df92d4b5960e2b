"""Plans in the other direction: what can be cooked with these pots, this cooler, this much charcoal."""

from rules.choose.model import Candidate, Choice, Choices, Means, Need
from rules.choose.rank import choose

__all__ = ["Candidate", "Choice", "Choices", "Means", "Need", "choose"]
