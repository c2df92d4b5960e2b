"""A stage before it has coals: its kind, its minutes, its temperature; and the figures that fill what a text leaves open."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

from rules.coals.counts import Way
from rules.coals.pieces import Piece
from rules.plan import StageKind
from rules.recipe import Family, Struct
from rules.table import Figure, Row, figures, read

#: Kinds of stage that a cook counts as one: the plan keeps at most two of a group.
GROUPS: tuple[frozenset[StageKind], ...] = (
    frozenset({"fry", "brown"}),
    frozenset({"bake", "roast"}),
    frozenset({"boil"}),
    frozenset({"simmer"}),
    frozenset({"rise"}),
    frozenset({"brown top"}),
)
MOST_OF_A_GROUP = 2


class FamilyHeat(Row, frozen=True, kw_only=True):
    """How a family of dish is usually cooked: main stage, way, temperature [°F], minutes."""

    id: Family
    stage: StageKind
    way: Way
    temp_f: float | None = None
    low_min: float
    high_min: float


class UsualMinutes(Row, frozen=True, kw_only=True):
    """How long a spell of heat usually takes [min]."""

    id: str
    low_min: float
    high_min: float


@cache
def family_heat(family: Family) -> FamilyHeat:
    """The usual heat of a family; that of `other` where the table has none."""
    rows: tuple[FamilyHeat, ...] = read("family_heat.csv", FamilyHeat)
    return next((row for row in rows if row.id == family), next(row for row in rows if row.id == "other"))


@cache
def usual(key: str) -> UsualMinutes:
    """The usual minutes of a spell."""
    rows: tuple[UsualMinutes, ...] = read("piece_minutes.csv", UsualMinutes)
    return next(row for row in rows if row.id == key)


def heat_figure(key: str) -> Figure:
    """A figure of `heat_figures.csv`."""
    return figures("heat_figures.csv")[key]


class Draft(Struct, frozen=True, kw_only=True):
    """A stage without its coals. `look` is the key of what to look for, `is_main` marks what makes the dish.

    Before it the food waits `pause_min` minutes off the coals.
    """

    kind: StageKind
    way: Way
    low_min: float
    high_min: float
    temp_f: float | None = None
    look: str
    is_main: bool = False
    is_guess: bool = False
    pause_min: float = 0.0

    @property
    def middle_min(self) -> float:
        """The middle of its minutes."""
        return (self.low_min + self.high_min) / 2


def joined(first: Draft, second: Draft) -> Draft:
    """Two spells of the same kind as one: minutes added up, the longer one's way and heat."""
    lead = first if first.middle_min >= second.middle_min else second
    return Draft(
        kind=lead.kind,
        way=lead.way,
        low_min=first.low_min + second.low_min,
        high_min=first.high_min + second.high_min,
        temp_f=lead.temp_f,
        look=lead.look,
        is_main=first.is_main or second.is_main,
    )


def merged(drafts: Sequence[Draft], most: int = MOST_OF_A_GROUP) -> list[Draft]:
    """Neighbours of one kind and way joined, then the shortest of a group until `most` of it are left."""
    found: list[Draft] = []
    for draft in drafts:
        last = found[-1] if found else None
        if last is not None and (last.kind, last.way, last.temp_f) == (draft.kind, draft.way, draft.temp_f):
            found[-1] = joined(last, draft)
        else:
            found.append(draft)
    for group in GROUPS:
        while sum(draft.kind in group for draft in found) > most:
            _join_shortest(found, group)
    return found


def _join_shortest(found: list[Draft], group: frozenset[StageKind]) -> None:
    places = [place for place, draft in enumerate(found) if draft.kind in group]
    shortest = min(places, key=lambda place: (found[place].middle_min, -place))

    def near(place: int) -> tuple[bool, int]:
        return found[place].kind != found[shortest].kind, abs(places.index(place) - places.index(shortest))

    other = min((place for place in places if place != shortest), key=near)
    first, second = sorted((shortest, other))
    found[other] = joined(found[first], found[second])
    del found[shortest]


def minutes(group: Sequence[Piece], usual_key: str) -> tuple[float, float]:
    """The minutes of a spell: the text's added up, and not less than usual where another step of it has no time."""
    low = sum(piece.low_min or 0.0 for piece in group)
    high = sum(piece.high_min or 0.0 for piece in group)
    timed_steps = {piece.step for piece in group if piece.is_timed}
    if any(piece.step not in timed_steps for piece in group):
        row = usual(usual_key)
        low, high = max(low, row.low_min), max(high, row.high_min)
    return low, high
