"""Fat for the hot pot: told where the batter goes over it, not where the recipe puts the butter into the oven.

A kitchen melts the butter while it mixes; over coals it would burn by then.
"""

from __future__ import annotations

from collections.abc import Iterator

from rules.instructions.own import Sentence
from rules.method import Graph, Taking
from rules.method.graph import OVEN
from rules.plan import FatUse
from rules.recipe import Action


class HotFat:
    """The takings of fat that wait for their batter."""

    def __init__(self, graph: Graph, fat: tuple[FatUse, ...], takings: dict[int, list[Taking]]) -> None:
        self.graph = graph
        self.fats = frozenset(use.ingredient for use in fat if use.goes == "hot pot first")
        self._takings = takings
        self._waiting: list[Taking] = []
        self._actions: list[Action] = []
        #: foods that sentences told after it take: the fat itself, where the recipe speaks of it again
        self._named: set[int] = set()

    def is_only(self, found: Sentence) -> bool:
        """Whether a sentence does nothing but bring the fat into the hot pot."""
        takings = [taking for at, _ in found.actions for taking in self._takings.get(at, [])]
        return bool(takings) and all(taking.ingredient in self.fats for taking in takings)

    def wait(self, found: Sentence) -> None:
        """Keep its fat for the sentence that pours the batter."""
        self._waiting += (taking for at, _ in found.actions for taking in self._takings.get(at, []))
        self._actions += (action for _, action in found.actions)

    def due(self, found: Sentence) -> list[Taking]:
        """The fat that this sentence pours over, or bakes; it waits no longer."""
        last = found.actions[-1][0]
        bakes = any(action.does in OVEN for _, action in found.actions)
        again = {taking.ingredient for at, _ in found.actions for taking in self._takings.get(at, [])}
        due = [
            taking
            for taking in self._waiting
            if bakes or taking.ingredient in again or self._covered_at(taking) <= last
        ]
        self._named |= again
        self._waiting = [taking for taking in self._waiting if taking not in due]
        return due

    def melting(self, takings: list[Taking]) -> Iterator[Action]:
        """The actions that melted it, for the coals of their stage."""
        return iter(self._actions if takings else [])

    def is_said(self, takings: list[Taking]) -> bool:
        """Whether the recipe itself says that something is poured over it."""
        return any(taking.ingredient in self._named or self._covered_at(taking) < NEVER for taking in takings)

    def _covered_at(self, taking: Taking) -> float:
        """The action at which something goes over the fat."""
        joined = [
            thing.joined_at
            for thing in self.graph.things
            if thing.into == taking.thing and thing.joined_at is not None and thing.joined_at > taking.at
        ]
        own = self.graph.things[taking.thing].joined_at
        if own is not None:
            joined.append(own)
        later = [other.at for other in self.graph.inside(taking.thing) if other.at > taking.at]
        return min([*joined, *later], default=NEVER)


NEVER = float("inf")
