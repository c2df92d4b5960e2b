"""What there is, what a dish asks of it, and the choice that is made."""

from __future__ import annotations

from typing import Literal

from rules.circumstances import Day
from rules.recipe import Recipe, Struct

What = Literal["pot", "charcoal", "cooler", "time", "food", "fire"]


class Means(Struct, frozen=True, kw_only=True):
    """What there is. None or empty: nobody said, so it is no limit.

    `day` holds pots, cooler, people, weather and height; `minutes` is how long before the meal the first coal may be
    lit; `avoids` are allergens, foods or kinds of food in the cook's own words.
    """

    day: Day = Day()
    briquettes: int | None = None
    minutes: float | None = None
    avoids: tuple[str, ...] = ()


class Candidate(Struct, frozen=True, kw_only=True):
    """A recipe that could be cooked, under the name that the cook knows it by; `day` holds its own swaps and heat."""

    name: str
    recipe: Recipe
    day: Day = Day()


class Need(Struct, frozen=True, kw_only=True):
    """What a dish takes of one thing: `needed` of `had` (None: no limit), and the sentence that says so.

    `missing` is what would make it fit, None where it fits.
    """

    what: What
    said: str
    needed: float | None = None
    had: float | None = None
    unit: str | None = None
    missing: str | None = None

    @property
    def share(self) -> float:
        """How much of what there is it takes; 0 where there is no limit."""
        return self.needed / self.had if self.needed is not None and self.had else 0.0


class Choice(Struct, frozen=True, kw_only=True):
    """One dish held against what there is: `suits` from 0 to 1 for one that fits."""

    name: str
    title: str
    family: str
    suits: float
    needs: tuple[Need, ...]
    wishes: tuple[str, ...] = ()

    @property
    def missing(self) -> tuple[Need, ...]:
        """What stands against it."""
        return tuple(need for need in self.needs if need.missing is not None)


class Choices(Struct, frozen=True, kw_only=True):
    """The best that fit, the best first; where none does, `nearest` is the dish of which least is missing.

    `looked_at` counts all; `said` is the answer in a sentence.
    """

    best: tuple[Choice, ...] = ()
    nearest: Choice | None = None
    looked_at: int = 0
    said: str = ""
