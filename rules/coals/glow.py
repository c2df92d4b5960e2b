"""One briquette: the heat it gives, how it fades, and the share of it that reaches the pot (handbook chapter 5)."""

from __future__ import annotations

from functools import lru_cache

from rules.coals.burn import Ember
from rules.coals.figures import figure
from rules.table import Row, read


@lru_cache(maxsize=64)
def ember(faster: float = 1.0) -> Ember:
    """One briquette under or on a pot; wind that makes it burn `faster` shortens its life in step."""
    steepness = round(figure("steepness").value)
    calm = Ember(
        reaching_w=first_heat_w() * figure("share reaching").value,
        tau_min=figure("time constant").value,
        steepness=steepness,
    )
    return Ember(reaching_w=calm.reaching_w, tau_min=calm.tau_min / faster, steepness=steepness)


@lru_cache(maxsize=1)
def first_heat_w() -> float:
    """What a briquette gives when it has just gone on [W]: its heat, less the chimney's, over the burn curve."""
    joules = figure("mass").value / 1000 * figure("heating value").value * 1e6
    curve = Ember(
        reaching_w=1.0,
        tau_min=figure("time constant").value,
        steepness=round(figure("steepness").value),
    )
    return joules * (1 - figure("burnt in chimney").value) / (curve.minutes_in_all * 60)


class Life(Row, frozen=True, kw_only=True):
    """A printed sentence on how long briquettes last, read as the share of the first heat `left` [min]."""

    id: str
    after_min: float
    left: float


def useful_min() -> float:
    """How long the trade counts on a briquette's heat [min]."""
    return next(row.after_min for row in read("briquette_life.csv", Life) if row.id == "useful")
